#pragma once

#include <cstddef>
#include <vector>

#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// An edge item all of whose points lie within this of its start is empty, mm: a point, whose direction means
/// nothing. A hundredth of what a length is told to, and far above rounding. Larger: short edges that were
/// drawn would be passed over; smaller: the direction of rounding would be judged as a corner.
inline constexpr double empty_item_mm = 1e-6;

/// Whether it is an edge item without length. O(1), or O(measured points).
bool is_empty_item(const Outline& outline, std::size_t item);

/// An outline without some of its items.
struct OutlineOfLength {
    Outline outline;
    std::vector<std::size_t> items;  ///< of each item, its number in the outline as it was
};

/// Spare items are empty ones that their run can do without; of a run that is one point the first item stays.
/// What is judged and moved is the outline without them: the same shape and runs, to `empty_item_mm` for each;
/// closed exactly if it was. A dart that only a spare item parts from a corner stands in the corner. O(n log n).
bool has_spare_items(const Outline& outline);
bool has_spare_items(const Pattern& pattern);
OutlineOfLength without_spare_items(const Outline& outline);
Pattern without_spare_items(const Pattern& pattern);

/// The same without all empty items, and so without the runs that are one point. Unchanged where nothing
/// else is left.
OutlineOfLength without_empty_items(const Outline& outline);
bool has_empty_items(const Outline& outline);

}  // namespace dartwright
