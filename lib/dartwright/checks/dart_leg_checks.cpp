#include "dartwright/checks/dart_leg_checks.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/checks/dart_finding.hpp"
#include "dartwright/geometry/arc_length_table.hpp"
#include "dartwright/pattern/mirrored.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {
namespace {

bool has_own_pivot(const DartFigures& dart) {
    return dart.point != dart.pivot;
}

struct LegDifferences {
    double sewn = 0;   // of the legs, B's less A's
    double drawn = 0;  // of the lines to the pivot; 0 if the point is the pivot
    double worse() const { return std::abs(drawn) > std::abs(sewn) ? drawn : sewn; }
};

LegDifferences leg_differences(const DartFigures& dart) {
    return {dart.leg_b - dart.leg_a, has_own_pivot(dart) ? dart.pivot_leg_b - dart.pivot_leg_a : 0};
}

PlacedFinding unequal(const PieceContext& piece, std::size_t item, const Tolerances& tolerances) {
    const DartFigures& dart = *piece.darts[item];
    const LegDifferences differences = leg_differences(dart);
    const bool is_at_pivot = std::abs(differences.drawn) > std::abs(differences.sewn);
    Finding finding = finding_on_dart(piece, item, "dart-legs");
    finding.at = dart.b;
    finding.measured = is_at_pivot ? dart.pivot_leg_b : dart.leg_b;
    finding.expected = is_at_pivot ? dart.pivot_leg_a : dart.leg_a;
    finding.difference = differences.worse();
    finding.allowed = tolerances.legs_mm;
    finding.message = subject(finding) + "the legs are " + measure_in_sentence(dart.leg_a, piece.unit) +
                      " and " + measure_in_sentence(dart.leg_b, piece.unit) + ", " +
                      difference_in_sentence(std::abs(differences.sewn), piece.unit) + " apart";
    if (has_own_pivot(dart)) {
        finding.message += "; from the pivot the mouth ends are " +
                           measure_in_sentence(dart.pivot_leg_a, piece.unit) + " and " +
                           measure_in_sentence(dart.pivot_leg_b, piece.unit) + " away, " +
                           difference_in_sentence(std::abs(differences.drawn), piece.unit) + " apart";
    }
    finding.message += ".";
    finding.remedy =
        "True the dart: measure the shorter leg off along the longer one (from the pivot too) and redraw the "
        "edge to that mark.";
    finding.command = command_for_dart("true", finding);
    return placed(finding, piece, item);
}

// In how many even steps curved legs are compared: with 64, legs of 150 mm every 2.3 mm. A bulge over a
// quarter of the leg or more, as a cubic makes, is told too small by less than a hundredth of it.
constexpr int compared_steps = 64;

// The places that are sewn to each other where the two lie furthest apart, the first mirrored in the centre
// line.
struct Apart {
    double by_mm = 0;
    Point at;  // on the leg that ends at B
};

Apart furthest_apart(const Legs& legs, const MirrorLine& centre_line, double stitched_mm) {
    const Curve from_b = reversed(legs.from_point);
    const ArcLengthTable along_a(legs.to_point);
    const ArcLengthTable along_b(from_b);
    Apart furthest{0, start_of(from_b)};
    for (int step = 0; step <= compared_steps; ++step) {
        const double distance_mm = stitched_mm * step / compared_steps;
        const Point on_a = point_at(legs.to_point, along_a.parameter_at(distance_mm));
        const Point on_b = point_at(from_b, along_b.parameter_at(distance_mm));
        const double apart_mm = distance(mirrored(centre_line, on_a), on_b);
        if (apart_mm > furthest.by_mm) furthest = {apart_mm, on_b};
    }
    return furthest;
}

// The bisector of the angle at the point, in which the cloth is folded when the dart is sewn.
MirrorLine centre_line_of(const DartFigures& dart) {
    return {dart.point, apply(turn_by(dart.sewn_angle_rad / 2), unit(dart.a - dart.point))};
}

PlacedFindings unlike(const PieceContext& piece, std::size_t item, const Tolerances& tolerances) {
    const DartFigures& dart = *piece.darts[item];
    const DartItem& drawn = dart_at(piece, item);
    if (!drawn.legs || dart.a == dart.point || dart.b == dart.point) return {};
    const double shorter_mm = std::min(dart.leg_a, dart.leg_b);
    const Apart apart = furthest_apart(legs_of_item(piece.outline(), item), centre_line_of(dart),
                                       std::min(shorter_mm, drawn.stitched.value_or(shorter_mm)));
    if (apart.by_mm <= tolerances.legs_mm) return {};
    Finding finding = finding_on_dart(piece, item, "dart-legs");
    finding.severity = Severity::note;
    finding.at = apart.at;
    finding.measured = finding.difference = apart.by_mm;
    finding.expected = 0;
    finding.allowed = tolerances.legs_mm;
    finding.message = subject(finding) +
                      "the curved legs are of one length but not mirror images of each other: folded on the "
                      "centre line, they lie up to " +
                      difference_in_sentence(apart.by_mm, piece.unit) + " apart.";
    finding.remedy =
        "If the two are meant to be alike, fold the dart on its centre line and trace one leg through to the "
        "other.";
    return {placed(finding, piece, item)};
}

}  // namespace

bool are_legs_true(const DartFigures& dart, const Tolerances& tolerances) {
    return std::abs(leg_differences(dart).worse()) <= tolerances.legs_mm;
}

PlacedFindings leg_findings(const PieceContext& piece, std::size_t item, const Tolerances& tolerances) {
    if (are_legs_true(*piece.darts[item], tolerances)) return unlike(piece, item, tolerances);
    return {unequal(piece, item, tolerances)};
}

}  // namespace dartwright
