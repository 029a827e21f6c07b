#pragma once

#include <optional>
#include <string>

#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// Whose left and right the names of a piece speak of.
enum class WhoseSides {
    wearers,
    as_drawn,  ///< as the piece lies before you, its grain arrow pointing away
    not_said   ///< the piece has such names, and nothing tells
};

/// Empty if no edge or dart of the piece is called `left ...` or `right ...`. The wearer's if the piece says
/// how it is worn, as drawn if it was opened without saying so. O(items + made).
std::optional<WhoseSides> whose_sides(const Pattern& pattern, const Piece& piece);
/// `left and right are the wearer's`, `left and right as drawn`, `it is not said whose left and right`.
std::string words_of(WhoseSides sides);

/// Whether a name begins with `left ` or `right `, and the rest of it.
struct SidedName {
    std::string side;  ///< empty if it does not
    std::string rest;
};
SidedName sided_name(const std::string& name);

}  // namespace dartwright
