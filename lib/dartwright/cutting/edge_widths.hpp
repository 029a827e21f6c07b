#pragma once

// Private to the room: how wide the allowance of each edge item is.

#include <vector>

#include "dartwright/cutting/cutting_line.hpp"

namespace dartwright::cutting {

/// The run that an edge item belongs to, by its number, and the width of its allowance.
struct ItemWidth {
    std::size_t run = 0;
    double width_mm = 0;  ///< where it has no stretches
};
/// A width over a stretch of an item.
struct WidthOnItem {
    double to_mm = 0;  ///< geometric distance from the item's start
    double width_mm = 0;
};
struct EdgeWidths {
    std::vector<ItemWidth> items;  ///< one an item of the outline; of a dart it means nothing
    std::vector<std::vector<WidthOnItem>> stretches;  ///< so too, or empty where no edge has stretches
    std::vector<UndecidedStretch> undecided;
    std::size_t runs = 0;
    std::size_t curved = 0;  ///< items
    bool has_darts = false;
};

/// Names are compared here once: whoever asks later whether two items are of one run compares numbers.
/// Precondition: the outline is closed. Throws BadWidth.
EdgeWidths edge_widths(const Piece& piece, const CuttingRequest& request);

}  // namespace dartwright::cutting
