#pragma once

// Private to the library: `press_side` for many darts of one outline.

#include <map>
#include <string>
#include <vector>

#include "dartwright/pattern/press.hpp"

namespace dartwright {

/// Towards which side the darts of an outline are pressed, with the answers of `press_side`. What is asked of
/// the outline is worked out with the first question: O(items), and again for each edge that is named; then
/// O(log items) a dart, but for two ways that are equally long to rounding, which are walked. The outline
/// must outlive it.
class PressSides {
  public:
    explicit PressSides(const Outline& outline) : outline_(outline) {}

    /// As if the dart's `press` named this edge. Precondition: the item is a dart.
    std::optional<PressSide> towards(std::size_t dart, const std::string& edge);

  private:
    double lead_mm(std::size_t dart, const std::vector<std::size_t>& of_edge) const;
    const std::vector<std::size_t>& items_of(const std::string& edge);

    const Outline& outline_;
    std::vector<double>
        walked_;  ///< from the outline's start to each item's, along its edges; then the whole
    std::map<std::string, std::vector<std::size_t>> items_;  ///< by the names that were asked for
};

}  // namespace dartwright
