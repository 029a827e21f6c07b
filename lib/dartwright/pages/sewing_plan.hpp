#pragma once

#include <array>
#include <string>
#include <vector>

#include "dartwright/checks/check.hpp"
#include "dartwright/pattern/fullness.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// A machine stitch for calico, mm, and how it is shortened towards the point of a dart: to 1.5 mm for the
/// last 6 mm (Threads no. 170), and step by step over about the last 50 mm (common practice, no source).
inline constexpr double seam_stitch_mm = 2.5;
inline constexpr double point_stitch_mm = 1.5;
inline constexpr double shortest_stitches_over_mm = 6;
inline constexpr double shortening_over_mm = 50;

struct PlannedDart {
    enum class Kind { dart, tuck, two_points };
    Kind kind = Kind::dart;
    std::string piece;
    std::string dart;
    int times = 1;         ///< in the garment: 2 for a piece on the fold or a pair
    double intake_mm = 0;  ///< at its widest
    double length_mm = 0;  ///< of the line to stitch, from the mouth (two points: from one to the other)
    double shorten_from_mm = 0;  ///< so far from where it is widest the stitch begins to be shortened: the
                                 ///< last 50 mm, or half of a shorter line
    std::string press;           ///< where it is pressed to (`press_name`); empty if undecided
    std::vector<std::string> after;  ///< darts to be sewn and pressed before it, as it lies over their mouths
};

/// What is gathered or eased away in an edge itself, before its seam is sewn.
struct PlannedFullness {
    std::string piece;
    int times = 1;
    FullStretch stretch;
};

/// A stretch of a seam between two things that are met on both sides, over which one side is eased in.
struct EasedStretch {
    std::string from;  ///< `the neck end`, `the first notch`, ...
    std::string to;
    int side = 1;  ///< 1 or 2: the longer one
    double eased_mm = 0;
};
/// Why a seam's ease is not told stretch by stretch.
enum class SeamIs {
    told,             ///< `eased` says it all; nothing to ease in if that is empty
    wrong_in_length,  ///< a check finds it too long or short: what differs is a fault and no ease
    wrong_in_notches  ///< a check finds fault with a notch: only the whole ease can be told
};
struct PlannedSeam {
    std::string seam;
    int times = 1;
    std::array<std::string, 2> sides;
    std::array<double, 2> lengths_mm{};
    double ease_mm = 0;        ///< meant: positive where the second side is the longer
    double difference_mm = 0;  ///< second - first - ease
    int notches = 0;           ///< that meet
    SeamIs is = SeamIs::told;
    std::vector<EasedStretch> eased;    ///< as it is meant, each of `least_fullness_mm` or more
    std::vector<std::size_t> fullness;  ///< those of the plan's gathers and eases that lie in its edges
};

/// What is carried from a piece to the cloth.
struct PlannedTracing {
    std::string piece;
    std::string how_cut;
    std::vector<std::string> what;
};

/// The order of work for a pattern, each figure from the pattern itself.
struct SewingPlan {
    std::vector<PlannedTracing> tracings;
    std::vector<PlannedDart> darts;
    std::vector<PlannedFullness> fullness;  ///< piece by piece, in outline order
    std::vector<PlannedSeam> seams;
    std::vector<std::string> notes;
};

/// Darts come piece by piece in outline order, one that is folded over the mouth of another after it. A seam
/// whose end lies inside a side of another comes before that one; otherwise shoulders come before sides (a
/// seam is a shoulder or a side by the words in its name), and the rest in the pattern's order. A
/// seam is sewn as often as the piece of it that the garment has fewest of; a centre seam half as often. A
/// seam or dart that cannot be walked or folded is a note. O(darts^2 + seams^2).
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
SewingPlan sewing_plan(const Pattern& pattern);
/// The same with what a check of the pattern found.
SewingPlan sewing_plan(const Pattern& pattern, const CheckReport& report);

}  // namespace dartwright
