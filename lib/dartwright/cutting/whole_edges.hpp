#pragma once

// Private to the room: an outline without the joints that mean nothing.

#include <optional>

#include "dartwright/pattern/empty_items.hpp"

namespace dartwright::cutting {

/// How far two parts may be from the one line or cubic that both are taken for, mm: as far as an item of no
/// length between them may put them, and far below the error of the line. Smaller: rounding parts them again.
inline constexpr double whole_edge_mm = 2 * empty_item_mm;

/// The outline with collinear lines of one run, and adjacent parts of one cubic, made one item again, so that
/// corners and chords do not depend on how an edge was divided; empty if there are none. Of such an item the
/// number is that of its first part. It may begin at another item, but not where one run is the whole
/// outline, since that begins where it is written. Items gathered differently stay apart. O(n).
std::optional<OutlineOfLength> with_whole_edges(const Outline& outline);

}  // namespace dartwright::cutting
