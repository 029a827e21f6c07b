#pragma once

// Private to this room: a piece of a draft on what was asked, as an inline SVG of a page.

#include <string>
#include <vector>

#include "dartwright/assessing/assessment.hpp"

namespace dartwright {

/// A number at a place of the draft.
struct PictureTag {
    std::size_t number = 0;
    Point at;
    std::string piece;  ///< in the exercise's names; empty if it is not said
};

/// The tags that belong to the piece of that index: those that name it, and of those that name none the ones
/// nearest to it. O(points).
std::vector<PictureTag> tags_on(const std::vector<OverlaidPiece>& pieces, std::size_t index,
                                const std::vector<PictureTag>& tags);

/// A figure with its caption: what was found as a heavy line, what was asked as a thin broken one, tags as
/// numbers in rings. Empty if the piece has no points. O(points).
std::string overlay_picture(const OverlaidPiece& piece, const std::vector<PictureTag>& tags);

/// What the two lines mean, with a sample of each.
std::string overlay_key();

}  // namespace dartwright
