#pragma once

#include <optional>

#include "dartwright/pattern/outline.hpp"

namespace dartwright {

/// The side of its seam on which the folded cloth of a dart lies.
enum class PressSide {
    before,  ///< over the edge that leads to the mouth in outline order: at the end A
    after    ///< over the edge that goes on from the mouth: at the end B
};

/// How much nearer the edge is along the outline going on from a dart's B than going back from its A, mm; 0
/// for the edge that the dart stands in, and for a name that no edge has. O(items).
double lead_after_mm(const Outline& outline, std::size_t dart, const std::string& edge);

/// Two ways along the outline that differ by less than this are equally long, mm: arc lengths of some metres
/// are good to 1e-9 of themselves.
inline constexpr double same_way_mm = 1e-6;

/// The side towards which the dart is pressed: that of the mouth end from which the edge named by `press` is
/// reached first along the outline. Empty if `press` is, or does not tell the sides apart: it names the edge
/// that the dart stands in, or one that is equally far both ways. Precondition: the item is a dart
/// (std::invalid_argument). O(items).
std::optional<PressSide> press_side(const Outline& outline, std::size_t dart);

}  // namespace dartwright
