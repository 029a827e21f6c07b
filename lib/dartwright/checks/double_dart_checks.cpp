#include "dartwright/checks/double_dart_checks.hpp"

#include <array>
#include <cmath>

#include "dartwright/checks/dart_finding.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {
namespace {

// Double darts are closed shapes of four sides inside the piece.
using Corners = std::array<Point, 4>;
Corners corners_of(const DoubleDart& dart) {
    return {dart.from, dart.widest[0], dart.to, dart.widest[1]};
}

// What a double dart runs into, by name; empty if nothing.
std::string met_by(const PieceContext& piece, std::size_t which) {
    const Corners corners = corners_of(piece.piece->double_darts[which]);
    const FlatOutline& flat = piece.flat;
    for (std::size_t k = 0; k < 4; ++k) {
        const Segment side{corners[k], corners[(k + 1) % 4]};
        for (std::size_t i = 0; i < flat.points.size(); ++i) {
            const Segment of_outline{flat.points[i], flat.points[(i + 1) % flat.points.size()]};
            if (meeting_of(side, of_outline) != Meeting::crossing) continue;
            const OutlineItem& item = piece.outline().items[flat.item_of_side[i]];
            return item.as_edge() ? item.as_edge()->edge : item.as_dart()->name;
        }
        for (std::size_t other = 0; other < which; ++other) {
            const Corners others = corners_of(piece.piece->double_darts[other]);
            for (std::size_t i = 0; i < 4; ++i) {
                if (meeting_of(side, {others[i], others[(i + 1) % 4]}) == Meeting::crossing) {
                    return piece.piece->double_darts[other].name;
                }
            }
        }
    }
    return "";
}

Finding finding_on(const PieceContext& piece, const DoubleDart& dart, const char* check) {
    Finding finding;
    finding.check = check;
    finding.piece = piece.name();
    finding.dart = dart.name;
    return finding;
}

// Behind the outline's items, in the order of the list.
PlacedFinding placed_inside(const Finding& finding, const PieceContext& piece, std::size_t which) {
    return {finding, piece.index, piece.outline().items.size(), static_cast<double>(which)};
}

PlacedFindings crossing(const PieceContext& piece, std::size_t which) {
    const DoubleDart& dart = piece.piece->double_darts[which];
    const std::string met = met_by(piece, which);
    const bool is_outside = where_in_polygon(piece.flat.points, dart.from) == Where::outside;
    if (met.empty() && !is_outside) return {};
    Finding finding = finding_on(piece, dart, "dart-crossing");
    finding.at = dart.from;
    finding.message =
        subject(finding) + (met.empty() ? "it lies outside the piece." : "it crosses " + met + ".");
    finding.remedy = "Shorten or move the dart until it lies clear inside the piece.";
    return {placed_inside(finding, piece, which)};
}

// The two legs that are sewn to each other at one of the points.
struct LegsAt {
    const char* point;
    double first_mm;
    double second_mm;
    double difference_mm() const { return second_mm - first_mm; }
};

std::string words_of(const LegsAt& legs, Unit unit) {
    return measure_in_sentence(legs.first_mm, unit) + " and " + measure_in_sentence(legs.second_mm, unit) +
           " from its point `" + legs.point + "`, " +
           difference_in_sentence(std::abs(legs.difference_mm()), unit) + " apart";
}

PlacedFindings legs(const PieceContext& piece, std::size_t which, const Tolerances& tolerances) {
    const DoubleDart& dart = piece.piece->double_darts[which];
    const std::array<double, 4> lengths = leg_lengths(dart);
    const LegsAt from{"from", lengths[0], lengths[1]};
    const LegsAt to{"to", lengths[2], lengths[3]};
    const LegsAt& worse = std::abs(to.difference_mm()) > std::abs(from.difference_mm()) ? to : from;
    if (std::abs(worse.difference_mm()) <= tolerances.legs_mm) return {};
    Finding finding = finding_on(piece, dart, "dart-legs");
    finding.at = dart.widest[1];
    finding.measured = worse.second_mm;
    finding.expected = worse.first_mm;
    finding.difference = worse.difference_mm();
    finding.allowed = tolerances.legs_mm;
    finding.message = subject(finding) + "the legs to the widest places are " + words_of(from, piece.unit) +
                      ", and " + words_of(to, piece.unit) + ".";
    finding.remedy =
        "True the dart: draw its centre line from point to point, and mark the widest places square across "
        "from it, equally far on either side.";
    return {placed_inside(finding, piece, which)};
}

}  // namespace

PlacedFindings double_dart_findings(const PieceContext& piece, const Tolerances& tolerances) {
    PlacedFindings findings;
    for (std::size_t i = 0; i < piece.piece->double_darts.size(); ++i) {
        findings = joined(std::move(findings), joined(legs(piece, i, tolerances), crossing(piece, i)));
    }
    return findings;
}

}  // namespace dartwright
