#include "dartwright/checks/dart_checks.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/checks/dart_finding.hpp"
#include "dartwright/checks/dart_leg_checks.hpp"
#include "dartwright/checks/double_dart_checks.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/words/lengths.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {
namespace {

// Darts of one run that follow one another without an edge between, in outline order.
std::vector<std::vector<std::size_t>> mouths_of(const Run& run, std::size_t count) {
    std::vector<std::vector<std::size_t>> mouths;
    for (const std::size_t dart : run.darts) {
        if (mouths.empty() || (mouths.back().back() + 1) % count != dart) mouths.emplace_back();
        mouths.back().push_back(dart);
    }
    return mouths;
}

enum class ClosedAbout { point, pivot };

// The turn that closes the dart; none for a dart without legs, which has no angle.
Motion closing(const DartFigures& dart, ClosedAbout about) {
    const Point centre = about == ClosedAbout::point ? dart.point : dart.pivot;
    if (dart.a == centre || dart.b == centre) return {};
    return about == ClosedAbout::point ? closing_about_point(dart) : closing_about_pivot(dart);
}

// The corner that the edge makes over closed darts, degrees: the edge beyond the last one is turned back by
// each of them.
double mouth_kink_deg(const PieceContext& piece, const std::vector<std::size_t>& darts, ClosedAbout about) {
    const std::size_t count = piece.outline().items.size();
    const Vector in = direction_at_end(piece.outline(), (darts.front() + count - 1) % count);
    Vector out = direction_at_start(piece.outline(), (darts.back() + 1) % count);
    for (const std::size_t item : darts) {
        out = apply(closing(*piece.darts[item], about), out);
    }
    return std::abs(degrees(angle_from(in, out)));
}

PlacedFindings mouth(const PieceContext& piece, const std::vector<std::size_t>& darts,
                     const Tolerances& tolerances) {
    const double kink = mouth_kink_deg(piece, darts, ClosedAbout::point);
    if (kink <= tolerances.mouth_deg) return {};
    const double kink_about_pivot = mouth_kink_deg(piece, darts, ClosedAbout::pivot);
    const bool is_true_about_pivot = kink_about_pivot <= tolerances.mouth_deg;
    Finding finding = finding_on_dart(piece, darts.front(), "dart-mouth");
    finding.severity = is_true_about_pivot ? Severity::note : Severity::fault;
    finding.at = piece.darts[darts.front()]->a;
    finding.measured = finding.difference = kink;
    finding.expected = 0;
    finding.allowed = tolerances.mouth_deg;
    finding.message = subject(finding) + "with the dart sewn, " + finding.edge + " has a corner of " +
                      degrees_in_sentence(kink) + " over the mouth" +
                      (is_true_about_pivot ? ", although it is smooth when closed about the pivot." : ".");
    finding.remedy =
        "True the dart: fold it closed to its point, redraw the edge smooth across the mouth, cut, and "
        "unfold.";
    const bool is_one_dart = darts.size() == 1;
    if (is_one_dart) finding.command = command_for_dart("true", finding);
    return {placed(finding, piece, darts.front())};
}

PlacedFindings mouths(const PieceContext& piece, const Tolerances& tolerances) {
    PlacedFindings findings;
    for (const Run& run : piece.runs) {
        for (const std::vector<std::size_t>& darts : mouths_of(run, piece.outline().items.size())) {
            findings = joined(std::move(findings), mouth(piece, darts, tolerances));
        }
    }
    return findings;
}

bool is_crossed(const PieceContext& piece, std::size_t item) {
    return std::any_of(piece.meetings.begin(), piece.meetings.end(), [item](const OutlineMeeting& meeting) {
        return meeting.first == item || meeting.second == item;
    });
}

// By the piece with this dart's wedge left in.
bool is_point_outside(const PieceContext& piece, std::size_t item) {
    std::vector<Point> polygon;
    polygon.reserve(piece.flat.points.size());
    Point point = dart_at(piece, item).point;
    for (std::size_t i = 0; i < piece.flat.points.size(); ++i) {
        const std::size_t before = i == 0 ? piece.flat.points.size() - 1 : i - 1;
        const bool is_on_leg = piece.flat.item_of_side[i] == item && piece.flat.item_of_side[before] == item;
        if (!is_on_leg) polygon.push_back(piece.flat.points[i]);
        // Drawn in one place with the points that count as one with it.
        if (is_on_leg && distance(piece.flat.points[i], point) < one_point_mm) point = piece.flat.points[i];
    }
    return where_in_polygon(polygon, point) == Where::outside;
}

std::string length_to_type(double length_mm, Unit unit) {
    if (unit != Unit::inch) return decimal(rounded_figure(length_mm)) + "mm";
    return decimal(rounded_figure(length_mm / mm_in(Unit::inch))) + "in";
}

Finding point_finding(const PieceContext& piece, std::size_t item) {
    Finding finding = finding_on_dart(piece, item, "dart-point");
    finding.at = piece.darts[item]->point;
    return finding;
}

PlacedFindings point_along_bisector(const PieceContext& piece, std::size_t item,
                                    const Tolerances& tolerances) {
    const DartFigures& dart = *piece.darts[item];
    Finding finding = point_finding(piece, item);
    finding.measured = dart.back_off;
    if (dart.back_off < -tolerances.gap_mm) {
        finding.expected = 0;
        finding.difference = dart.back_off;
        finding.allowed = tolerances.gap_mm;
        finding.message = subject(finding) + "the point lies " +
                          difference_in_sentence(-dart.back_off, piece.unit) + " beyond the pivot.";
        finding.remedy = "Draw the point on the dart's centre line, at the pivot or short of it.";
        finding.command = command_for_dart("repoint", finding, {"--back-off", "0"});
        return {placed(finding, piece, item)};
    }
    const double asked = dart_at(piece, item).back_off.value_or(0);
    if (dart.back_off >= asked - tolerances.legs_mm) return {};
    finding.expected = asked;
    finding.difference = dart.back_off - asked;
    finding.allowed = tolerances.legs_mm;
    finding.message = subject(finding) + "the point is " + measure_in_sentence(dart.back_off, piece.unit) +
                      " from the pivot, but " + measure_in_sentence(asked, piece.unit) + " are asked for.";
    finding.remedy = "Shorten the dart along its centre line until the point is " +
                     measure_in_sentence(asked, piece.unit) + " from the pivot, and redraw the legs.";
    finding.command = command_for_dart("repoint", finding, {"--back-off", length_to_type(asked, piece.unit)});
    return {placed(finding, piece, item)};
}

PlacedFindings point_off_bisector(const PieceContext& piece, std::size_t item, const Tolerances& tolerances) {
    const DartFigures& dart = *piece.darts[item];
    if (!are_legs_true(dart, tolerances) || std::abs(dart.off_bisector) <= tolerances.legs_mm) return {};
    Finding finding = point_finding(piece, item);
    finding.measured = finding.difference = dart.off_bisector;
    finding.expected = 0;
    finding.allowed = tolerances.legs_mm;
    finding.message = subject(finding) + "the point lies " +
                      difference_in_sentence(std::abs(dart.off_bisector), piece.unit) +
                      " beside the dart's centre line.";
    finding.remedy =
        "Draw the centre line from the middle of the mouth to the pivot and put the point on it.";
    finding.command = command_for_dart("true", finding);
    return {placed(finding, piece, item)};
}

PlacedFindings point_outside(const PieceContext& piece, std::size_t item) {
    if (is_crossed(piece, item) || !is_point_outside(piece, item)) return {};
    Finding finding = point_finding(piece, item);
    finding.message = subject(finding) + "the point lies outside the piece.";
    finding.remedy = "Draw the dart into the piece, from the same mouth.";
    return {placed(finding, piece, item)};
}

// Whether an earlier meeting is of the same two items: both legs, or one leg twice, are one thing to mend.
bool is_told_before(const std::vector<OutlineMeeting>& meetings, std::size_t which) {
    return std::any_of(meetings.begin(), meetings.begin() + static_cast<std::ptrdiff_t>(which),
                       [&](const OutlineMeeting& earlier) {
                           return earlier.first == meetings[which].first &&
                                  earlier.second == meetings[which].second;
                       });
}

PlacedFindings dart_crossings(const PieceContext& piece) {
    const Outline& outline = piece.outline();
    PlacedFindings findings;
    for (std::size_t i = 0; i < piece.meetings.size(); ++i) {
        const OutlineMeeting& meeting = piece.meetings[i];
        const DartItem* first = outline.items[meeting.first].as_dart();
        const DartItem* second = outline.items[meeting.second].as_dart();
        if ((!first && !second) || is_told_before(piece.meetings, i)) continue;
        const std::size_t item = first ? meeting.first : meeting.second;
        const std::size_t other = first ? meeting.second : meeting.first;
        Finding finding = finding_on_dart(piece, item, "dart-crossing");
        finding.at = meeting.place;
        if (const EdgeItem* edge = outline.items[other].as_edge()) finding.edge = edge->edge;
        const std::string other_name = other == item     ? "the other leg"
                                       : first && second ? second->name
                                                         : finding.edge;
        finding.message = subject(finding) + "a leg crosses or touches " + other_name + ".";
        finding.remedy = "Shorten or move the dart until its legs lie clear of " + other_name + ".";
        findings.push_back(placed(finding, piece, item));
    }
    return findings;
}

}  // namespace

PlacedFindings dart_findings(const PieceContext& piece, const Tolerances& tolerances) {
    PlacedFindings findings = joined(mouths(piece, tolerances),
                                     joined(dart_crossings(piece), double_dart_findings(piece, tolerances)));
    for (std::size_t item = 0; item < piece.darts.size(); ++item) {
        if (!piece.darts[item]) continue;
        for (PlacedFindings more :
             {leg_findings(piece, item, tolerances), point_along_bisector(piece, item, tolerances),
              point_off_bisector(piece, item, tolerances), point_outside(piece, item)}) {
            findings = joined(std::move(findings), std::move(more));
        }
    }
    return findings;
}

}  // namespace dartwright
