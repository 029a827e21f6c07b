#pragma once

// Private to the room: where the sides of a closed line cross each other, as one who walks it asks for it.

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "dartwright/geometry/all_self_crossings.hpp"

namespace dartwright::cutting {

/// A crossing come to on one of its two sides.
struct Passage {
    std::size_t side = 0;
    std::size_t crossing = 0;
    double along = 0;  ///< the square of the distance from the side's start
    Point place;
};

/// The crossings of each side in a list of no order: a walk along the outer line asks few sides for their
/// next one, while most crossings lie among sides that it never comes to. The points must outlive it.
class SideCrossings {
  public:
    explicit SideCrossings(std::span<const Point> points);

    std::size_t size() const { return found_.size(); }
    bool is_crossed(std::size_t side) const { return view_of_side_[side] != none; }
    /// From the side's start, empty if nothing crosses it. O(crossings of the side).
    std::optional<Passage> first_on(std::size_t side) const;
    /// The next on the same side. O(crossings of the side).
    std::optional<Passage> after(const Passage& last) const;
    /// The same crossing on the other side.
    Passage changed_over(const Passage& at) const;

  private:
    static constexpr std::size_t none = static_cast<std::size_t>(-1);

    Passage passage(std::size_t side, std::size_t view) const;
    std::optional<Passage> nearest(std::size_t side, const Passage* after) const;

    std::span<const Point> points_;
    std::vector<MetSides> found_;
    // View 2 k and 2 k + 1 are those of crossing k from its first and second side.
    std::vector<std::size_t> view_of_side_;  // any of each side
    std::vector<std::size_t> next_view_;     // of the same side
};

}  // namespace dartwright::cutting
