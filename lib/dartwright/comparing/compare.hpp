#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "dartwright/geometry/motion.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// A figure of both patterns; absent where one of them does not have the thing measured.
struct BeforeAfter {
    std::optional<double> before;
    std::optional<double> after;
    /// after - before, where both are there.
    std::optional<double> difference() const {
        if (!before || !after) return std::nullopt;
        return *after - *before;
    }
};

struct ComparedRun {
    std::string edge;
    BeforeAfter sewn_mm;
};

/// The darts about one pivot.
struct ComparedPivot {
    std::vector<std::string> darts_before;
    std::vector<std::string> darts_after;
    BeforeAfter angle_rad;  ///< of the darts together
    std::optional<double>
        strays_mm;  ///< from where the parts beside it carried it; absent if it is not in both
};

struct ComparedNotch {
    std::string edge;
    std::array<std::string, 2> from;  ///< the names of the run's ends, the anticlockwise start first
    std::optional<NotchKind> kind_before;
    std::optional<NotchKind> kind_after;
    std::array<BeforeAfter, 2> at_mm;  ///< sewn distances from the two ends
};

/// A stretch of the outline without a mouth in either pattern: it must have been moved as one.
struct PartStretch {
    std::string edge;
    double from_share = 0;  ///< of the run's sewn length, from its anticlockwise start
    double to_share = 1;
};
struct ComparedPart {
    std::vector<PartStretch> stretches;  ///< in outline order
    double length_mm = 0;                ///< sewn, before
    Motion motion;                       ///< the rigid motion that fits it best
    double strays_mm = 0;                ///< the most that a place of it lies off after that motion
};

/// Where a dart is.
struct DartSeen {
    std::string place;  ///< `EDGE@DISTANCE/FROM`
    std::string edge;
    double share = 0;  ///< of the run's sewn length, from its anticlockwise start
    double angle_rad = 0;
    double intake_mm = 0;
    double back_off_mm = 0;
};
enum class DartChange { kept, moved, changed, gone, opened };
struct ComparedDart {
    std::string name;
    DartChange change = DartChange::kept;
    std::optional<DartSeen> before;
    std::optional<DartSeen> after;
};

/// The most that any place of either outline, darts drawn to their points, lies from the other.
struct OutlineDistance {
    double at_least_mm = 0;  ///< a place that far was found
    double at_most_mm = 0;
};

struct ComparedPiece {
    std::string name;
    /// The pieces of `after` that it was separated into along a seam: runs and area are those of all
    /// together, and what follows the runs is not compared. Empty for a piece that is one still.
    std::vector<std::string> separated_into;
    bool is_mirrored = false;  ///< the piece of `after` lies the other way up
    double turned_rad = 0;     ///< how its longest part lies turned and shifted
    Vector shifted_mm;
    bool is_recut = false;  ///< how it is to be cut (quantity, fold) has changed
    BeforeAfter area_mm2;
    double area_allowed_mm2 = 0;
    std::vector<ComparedRun> runs;
    std::vector<ComparedPivot> pivots;
    std::vector<ComparedNotch> notches;
    std::vector<ComparedPart> parts;
    std::vector<ComparedDart> darts;
    std::optional<OutlineDistance>
        outline;  ///< after the rigid motion that fits best; absent without a run in both
};

struct ComparedSeam {
    std::string name;
    BeforeAfter difference_mm;  ///< second - first - signed ease, the sides in the order of `before`
};

/// Something that did not survive. Lengths mm, areas mm^2, angles degrees; texts that do not apply are empty.
struct Loss {
    std::string what;  ///< a stable name, such as `run-length`
    std::string piece;
    std::string edge;
    std::vector<std::string> darts;
    std::string seam;
    BeforeAfter amount;
    std::optional<double> allowed;
    std::string message;
    std::string remedy;
};

struct Comparison {
    std::vector<ComparedPiece> pieces;  ///< those in both, in the order of `before`
    std::vector<ComparedSeam> seams;    ///< of both; those of `before` first
    std::vector<Loss> losses;
    /// What is otherwise and costs no shape: points, legs, press and stitching of darts that stayed where
    /// they were, marks, grain, allowances, how pieces are cut and worn, how seams are sewn, tolerances.
    /// Operations make such changes; a comparison says them, and is kept nevertheless.
    std::vector<Loss> changes;
    std::vector<std::string> notes;  ///< what is new or lies otherwise, and is no loss
    bool is_kept() const { return losses.empty(); }
    /// Nothing is lost, and nothing is otherwise beside darts that were moved.
    bool is_unchanged() const { return losses.empty() && changes.empty(); }
};

/// Compares two patterns piece by piece, matched by name (so are runs, darts and seams), wherever they lie
/// and whichever way up: what moving darts must keep, and what was moved. A piece that is gone, or that lost
/// an edge or some of it, and whose edges are found in two or three pieces together, of which all but one are
/// new, counts as separated into these. Double darts must lie where the part that they are in carried them.
/// Neither the names of patterns, units, `made`, tolerances, the rule for cutting nor the back-off asked for
/// of a dart are compared: they are no shape. Nothing is read from `made`. Allowed are: the tolerance `seam`
/// for lengths and seams, `notch` for notches and pivots, `grain` for angles, and `fold`, by which an edge
/// may stray sideways, for shapes and areas. Impossible if an outline does not close. O((n + p) log n) for n
/// curves and p places looked at, which are at most 4 mm apart on parts, and O(d^2) for d darts and for marks
/// of one name.
/// Requires sound patterns (problems_of is empty): UnsoundPattern.
Comparison compare(const Pattern& before, const Pattern& after, const Tolerances& tolerances);
/// With the tolerances of `before`.
Comparison compare(const Pattern& before, const Pattern& after);

}  // namespace dartwright
