#pragma once

// Private to this room: the allowances of a seam's two sides, laid along each other.

#include <optional>
#include <vector>

#include "dartwright/checks/walked_seam.hpp"

namespace dartwright {

/// The widths that lie beside each other over a stretch of the walk; absent where not decided.
struct WidthsBeside {
    double at = 0;  ///< walked distance at which the stretch begins, mm
    double to = 0;
    std::optional<double> first;
    std::optional<double> second;
};

/// The stretches from the seam's starting end as far as the shorter side goes, without those shorter than
/// `shortest_mm` (unless the whole seam is). Precondition: the seam is measurable.
std::vector<WidthsBeside> widths_beside(const WalkedSeam& seam, double shortest_mm);

}  // namespace dartwright
