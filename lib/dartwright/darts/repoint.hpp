#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "dartwright/darts/account.hpp"
#include "dartwright/darts/true_dart.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// Exactly one of back-off, point and pivot is given.
struct RepointRequest {
    std::string piece;
    std::string dart;  ///< whose point; for a new pivot, a dart that aims at the old one (or empty)
    std::optional<double> back_off_mm;
    std::optional<Point> point;
    std::optional<Point> pivot;
    std::optional<Point> from;      ///< the old pivot, where no dart is named
    double span_mm = true_span_mm;  ///< how far to each side of a turned mouth the edge is redrawn
};

struct RepointedDart {
    std::string dart;
    DartFigures before;
    DartFigures after;
    /// Corner of the edge over the mouth, the dart closed as sewn, degrees; none for a dart in a corner.
    std::optional<double> mouth_before_deg;
    std::optional<double> mouth_after_deg;
    double turned_rad = 0;            ///< how far the mouth was turned, anticlockwise positive
    std::array<double, 2> span_mm{};  ///< redrawn before and after the mouth
};

struct RepointAccount {
    std::string piece;
    std::vector<RepointedDart> darts;  ///< in outline order
    std::vector<std::string> marks;    ///< names of the drill marks that moved along
    std::vector<RunChange> runs;
    std::vector<std::string> notes;
};
struct RepointResult {
    Pattern pattern;
    RepointAccount account;
};

/// Gives a dart a new point, or the darts that aim at one pivot a new pivot, with legs of equal length.
///
/// Along the centre line only the point moves: every edge stays as it is. A pivot beside the centre line
/// turns the mouth square to the line to it; the middle of the mouth stays at its distance from the new
/// pivot, the edge is drawn smooth over the folded dart as `true` does, and the mouth opens so that what lies
/// on each side of it keeps its length. So no run, notch or seam changes; intake and dart angle do, and the
/// account says by how much. A dart that has no pivot apart from its point turns about its point, so that a
/// new point is a new pivot for it. Drill marks at the old pivot and at the old points go along. The request
/// is appended to `made`. Throws Impossible (geometry; legs that differ by more than the tolerance),
/// UnknownName, BadWords. O(d n log n) for d darts, in the flattened outline's vertices.
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
RepointResult repoint(const Pattern& pattern, const RepointRequest& request);

}  // namespace dartwright
