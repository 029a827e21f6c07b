#include "dartwright/checks/seam_checks.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/checks/allowance_along.hpp"
#include "dartwright/checks/words.hpp"

namespace dartwright {
namespace {

Finding finding_on(const WalkedSeam& seam, const WalkedPart& part, const char* check) {
    Finding finding;
    finding.check = check;
    finding.piece = part.piece->name();
    finding.edge = part.run->edge;
    finding.seam = seam.seam->name;
    return finding;
}

PlacedFinding placed_at_end(Finding finding, const SeamCorner& where) {
    const WalkedPart& part = *where.part;
    finding.at = end_point(part.piece->outline(), *part.run, where.end);
    const bool is_start = where.end == RunEnd::start;
    const std::size_t item = is_start ? part.run->items.front() : part.run->items.back();
    return {std::move(finding), part.piece->index, item, is_start ? 0 : part.run->length};
}

std::string length_remedy(const std::string& longer, const std::string& shorter, double by) {
    return "Shorten " + longer + " or lengthen " + shorter + " by " + words::mm(by) +
           " at one end and redraw the edge that crosses there, or allow for the difference as ease.";
}

PlacedFindings lengths(const WalkedSeam& seam, const Tolerances& tolerances) {
    const double difference = seam.difference();
    if (std::abs(difference) <= tolerances.seam_mm) return {};
    const std::array<std::string, 2> names = side_names(seam);
    const std::size_t longer = difference > 0 ? 1 : 0;
    const std::size_t shorter = 1 - longer;
    const WalkedPart& part = seam.sides[longer].parts.back();
    Finding finding = finding_on(seam, part, "seam-length");
    finding.measured = seam.sides[1].length;
    finding.expected = seam.sides[0].length + seam.ease;
    finding.difference = difference;
    finding.allowed = tolerances.seam_mm;
    const std::string ease =
        words::number(std::abs(seam.ease)) + (seam.ease == 0 ? "" : " mm on " + names[seam.ease > 0 ? 1 : 0]);
    finding.message = seam.seam->name + ": " + names[longer] + " is " + words::mm(std::abs(difference)) +
                      " longer than " + names[shorter] +
                      (seam.ease == 0 ? "" : " with the ease allowed for") + " (" + names[0] + " " +
                      words::mm(seam.sides[0].length) + ", " + names[1] + " " +
                      words::mm(seam.sides[1].length) + ", ease " + ease + ").";
    finding.remedy = length_remedy(names[longer], names[shorter], std::abs(difference));
    return {placed_at_end(finding, {&part, part.far_end()})};
}

bool is_free(const std::map<std::string, CornerIs>& ends, const SeamCorner& where) {
    return std::any_of(ends.begin(), ends.end(), [&where](const auto& entry) {
        return entry.second == CornerIs::free && end_named(*where.part->run, entry.first) == where.end;
    });
}

double corner_deg(const SeamCorner& where) {
    return degrees(corner_angle(where.part->piece->outline(), *where.part->run, where.end));
}

// What crosses the seam at two ends that meet there.
std::string crossing_edges(const SeamCorner& first, const SeamCorner& second) {
    const std::string& one = neighbour_at(*first.part->run, first.end);
    const std::string& other = neighbour_at(*second.part->run, second.end);
    return one == other ? one : one + " and " + other;
}

PlacedFindings corner(const WalkedSeam& seam, const SeamCorner& first, const SeamCorner& second,
                      const Tolerances& tolerances) {
    const double first_deg = corner_deg(first);
    const double second_deg = corner_deg(second);
    const double sum = first_deg + second_deg;
    if (std::abs(sum - 180) <= tolerances.corner_deg) return {};
    Finding finding = finding_on(seam, *first.part, "seam-corner");
    finding.measured = sum;
    finding.expected = 180;
    finding.difference = sum - 180;
    finding.allowed = tolerances.corner_deg;
    const std::string crossing = crossing_edges(first, second);
    finding.message = seam.seam->name + ": where it meets " + crossing + ", " + first.part->piece->name() +
                      " (" + words::degrees(first_deg) + ") and " + second.part->piece->name() + " (" +
                      words::degrees(second_deg) + ") make " + words::degrees(sum) +
                      " together and not 180, so that " + crossing + (sum > 180 ? " dips" : " peaks") +
                      " at the seam.";
    finding.remedy =
        "Lay the two pieces together along the seam at that end, redraw " + crossing +
        " smooth across it, and walk the seam again; or say that the end is free if the corner is meant.";
    return {placed_at_end(finding, first)};
}

PlacedFindings corners_at(const WalkedSeam& seam, SeamEnd end, const Tolerances& tolerances) {
    const SeamCorner first = corner_of(seam.sides[0], end);
    const SeamCorner second = corner_of(seam.sides[1], end);
    if (is_free(seam.seam->ends, first) || is_free(seam.seam->ends, second)) return {};
    return corner(seam, first, second, tolerances);
}

bool has_edge(const SeamSide& side, const std::string& piece, const std::string& edge) {
    return std::any_of(side.begin(), side.end(),
                       [&](const SeamPart& part) { return part.piece == piece && part.edge == edge; });
}

bool are_joined(const std::vector<Seam>& seams, const SeamCorner& a, const SeamCorner& b) {
    const std::string& edge_a = neighbour_at(*a.part->run, a.end);
    const std::string& edge_b = neighbour_at(*b.part->run, b.end);
    const std::string& piece_a = a.part->piece->name();
    const std::string& piece_b = b.part->piece->name();
    return std::any_of(seams.begin(), seams.end(), [&](const Seam& seam) {
        return (has_edge(seam.joins[0], piece_a, edge_a) && has_edge(seam.joins[1], piece_b, edge_b)) ||
               (has_edge(seam.joins[1], piece_a, edge_a) && has_edge(seam.joins[0], piece_b, edge_b));
    });
}

PlacedFindings inner_corners(const WalkedSeam& seam, const WalkedSide& side,
                             const std::vector<Seam>& all_seams, const Tolerances& tolerances) {
    PlacedFindings findings;
    for (std::size_t i = 0; i + 1 < side.parts.size(); ++i) {
        const SeamCorner before{&side.parts[i], side.parts[i].far_end()};
        const SeamCorner after{&side.parts[i + 1], side.parts[i + 1].from};
        // Two runs of one piece that follow each other meet in a corner of its own that was drawn so.
        const bool is_one_corner = before.part->piece == after.part->piece &&
                                   neighbour_at(*before.part->run, before.end) == after.part->run->edge;
        if (is_one_corner || are_joined(all_seams, before, after)) continue;
        if (is_free(seam.seam->ends, before) || is_free(seam.seam->ends, after)) continue;
        findings = joined(std::move(findings), corner(seam, before, after, tolerances));
    }
    return findings;
}

PlacedFindings corners(const WalkedSeam& seam, const std::vector<Seam>& all_seams,
                       const Tolerances& tolerances) {
    PlacedFindings findings =
        joined(corners_at(seam, SeamEnd::start, tolerances), corners_at(seam, SeamEnd::far, tolerances));
    for (std::size_t s = 0; s < (seam.is_with_itself() ? 1u : 2u); ++s) {
        findings = joined(std::move(findings), inner_corners(seam, seam.sides[s], all_seams, tolerances));
    }
    return findings;
}

std::string width_text(const std::optional<double>& width) {
    return width ? words::mm(*width) : "not decided";
}

PlacedFinding allowance_finding(const WalkedSeam& seam, const WidthsBeside& widths) {
    const WalkedPart& part = part_at(seam.sides[1], widths.at);
    const bool is_decided = widths.first && widths.second;
    Finding finding = finding_on(seam, part, "seam-allowance");
    finding.severity = is_decided ? Severity::fault : Severity::note;
    const double on_run = part.on_run(widths.at);
    const RunPlace place = place_on_run(part.piece->outline(), *part.run, on_run);
    finding.at = place.point;
    finding.measured = widths.second;
    finding.expected = widths.first;
    if (is_decided) finding.difference = *widths.second - *widths.first;
    finding.allowed = same_width_mm;
    const std::array<std::string, 2> names = side_names(seam);
    finding.message = seam.seam->name + ": the allowance is " + width_text(widths.first) + " on " + names[0] +
                      " and " + width_text(widths.second) + " on " + names[1] +
                      (widths.at > 0 ? ", from " + words::mm(widths.at) + " along the seam." : ".");
    finding.remedy = is_decided ? "Give both edges one width, or the layers cannot be laid edge to edge."
                                : "Decide the width on the other side too.";
    return {finding, part.piece->index, place.item, place.along_item};
}

// The first place where the widths differ, and the first where only one is decided.
PlacedFindings allowances(const WalkedSeam& seam, const Tolerances& tolerances) {
    if (seam.is_with_itself()) return {};
    PlacedFindings findings;
    bool has_fault = false;
    bool has_note = false;
    // Stretches that end at one notch end as far apart as the notch and the ease allow.
    const double shortest = tolerances.notch_mm + std::abs(seam.ease);
    for (const WidthsBeside& widths : widths_beside(seam, shortest)) {
        const bool is_decided = widths.first && widths.second;
        if (!widths.first && !widths.second) continue;
        if (is_decided && std::abs(*widths.first - *widths.second) <= same_width_mm) continue;
        bool& is_told = is_decided ? has_fault : has_note;
        if (!is_told) findings.push_back(allowance_finding(seam, widths));
        is_told = true;
    }
    return findings;
}

}  // namespace

PlacedFindings seam_findings(const WalkedSeam& seam, const std::vector<Seam>& all_seams,
                             const Tolerances& tolerances) {
    return joined(joined(lengths(seam, tolerances), corners(seam, all_seams, tolerances)),
                  allowances(seam, tolerances));
}

}  // namespace dartwright
