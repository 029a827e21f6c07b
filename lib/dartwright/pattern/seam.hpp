#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "dartwright/pattern/piece.hpp"

namespace dartwright {

/// One run of a seam's side and from which end it is walked.
struct SeamPart {
    std::string piece;
    std::string edge;
    std::string from;
    bool mirrored = false;
    friend bool operator==(const SeamPart&, const SeamPart&) = default;
};
using SeamSide = std::vector<SeamPart>;  ///< in walking order; one or more

struct Ease {
    int side = 1;          ///< 1 or 2: the side that is meant to be longer
    double amount = 0;     ///< mm, not negative
    bool by_side = false;  ///< the file named the side by number rather than by piece
    friend bool operator==(const Ease&, const Ease&) = default;
};

/// How the two pieces of a seam lie when it is sewn: opened flat, or one on the other (facing, collar, cuff,
/// lining).
enum class LaidAs { flat, on_each_other };

struct Seam {
    std::string name;
    std::array<SeamSide, 2> joins;
    std::optional<Ease> ease;
    std::map<std::string, CornerIs> ends;
    LaidAs laid = LaidAs::flat;
    bool allowances_differ = false;  ///< two widths of allowance are meant (a flat-felled seam)
    friend bool operator==(const Seam&, const Seam&) = default;
};

/// The ease as a share in the seam's difference, mm: positive on the second side, negative on the first; 0 if
/// there is none.
double signed_ease(const Seam& seam);

struct Pattern;
/// Sewn length of the second side less that of the first, less the signed ease, mm. UnknownName for a piece
/// or edge that there is none of. O(items of the pieces that it joins).
double seam_difference(const Pattern& pattern, const Seam& seam);

}  // namespace dartwright
