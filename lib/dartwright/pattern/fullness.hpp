#pragma once

#include <string>
#include <vector>

#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/pattern/piece.hpp"
#include "dartwright/pattern/run.hpp"

namespace dartwright {

/// Fullness of more than this share of the sewn length is gathered, up to it eased. The file has one key for
/// both; the share is common practice, no source: no cloth takes a seventh more without gathers that show.
inline constexpr double most_eased_share = 0.15;
/// Fullness or ease of less than this cannot be laid in by hand and is not spoken of, mm.
inline constexpr double least_fullness_mm = 1;
/// A notch nearer than this to an end of a stretch marks it, mm: the thickness of its nick.
inline constexpr double notch_marks_mm = 1;

/// A stretch of a run over which cloth is gathered or eased away evenly.
struct FullStretch {
    std::string edge;
    std::vector<std::size_t> items;  ///< of the outline, in outline order; those of no length left out
    double from_mm = 0;              ///< sewn, from the run's anticlockwise start
    double to_mm = 0;
    double fullness_mm = 0;  ///< how much longer it lies flat than sewn

    double sewn_mm() const { return to_mm - from_mm; }
    double flat_mm() const { return sewn_mm() + fullness_mm; }
    bool is_gathered() const { return fullness_mm > most_eased_share * sewn_mm() + sum_rounding_mm; }
};

/// The stretches of a piece with fullness of `least_fullness_mm` or more, by run in outline order. Items that
/// follow each other with no dart between them and with the same share of fullness are one stretch, so that
/// it does not matter how an edge is divided; one that goes round past the beginning of a run that is the
/// whole outline ends beyond the run's length. Precondition: the runs are those of the piece's outline.
/// O(items).
std::vector<FullStretch> full_stretches(const Piece& piece, const std::vector<Run>& runs);

/// What marks the ends of a stretch: a notch, counted from the run's start, an end of the run, or nothing.
struct StretchEnd {
    enum class Kind { run_end, notch, unmarked };
    Kind kind = Kind::unmarked;
    std::size_t notch = 0;  ///< from 1
};
struct StretchEnds {
    StretchEnd from;
    StretchEnd to;
    std::size_t notches = 0;  ///< of the run
};
/// O(notches log notches).
StretchEnds ends_of_stretch(const Piece& piece, const Run& run, const FullStretch& stretch);

}  // namespace dartwright
