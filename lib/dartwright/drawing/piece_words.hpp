#pragma once

#include "dartwright/drawing/label_places.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

struct WordsWanted {
    bool lengths = true;
    bool names = true;
    Unit unit = Unit::mm;
    std::string sides = {};  ///< whose left and right the names speak of; empty if that is nothing to say
};

/// The words on and around one piece, in its own coordinates, each put where it meets no line and no other
/// word as far as there is such a place: names and sewn lengths along the edges, name, intake and angle
/// beside each dart, what is gathered or eased in, 'grain', 'fold', names of marks, and the piece's own name
/// with how it is cut. They are added to what is taken.
DrawnGroup words_of(const Piece& piece, const std::vector<Run>& runs, const WordsWanted& wanted,
                    TakenPlaces& taken);

/// How often and how a piece is cut: `cut 1 on the fold`, `cut 2 (a pair)`, `cut 2 alike`.
std::string cut_words(const Cut& cut);

}  // namespace dartwright
