#pragma once

// Private to this room: findings with the place by which they are put in order.

#include <cstddef>
#include <vector>

#include "dartwright/checks/finding.hpp"

namespace dartwright {

/// A finding and where it stands: the piece's index, the outline item's, and how far along that item (mm).
struct PlacedFinding {
    Finding finding;
    std::size_t piece = 0;
    std::size_t item = 0;
    double along = 0;
};
using PlacedFindings = std::vector<PlacedFinding>;

/// Adds the second list to the end of the first.
PlacedFindings joined(PlacedFindings first, PlacedFindings second);

/// The findings by check (as listed), then piece, then place along the outline; otherwise as given.
/// std::logic_error if a check is not on the list.
std::vector<Finding> in_order(PlacedFindings findings);

}  // namespace dartwright
