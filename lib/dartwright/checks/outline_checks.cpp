#include "dartwright/checks/outline_checks.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/checks/cut_checks.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {
namespace {

Finding finding_on(const PieceContext& piece, const char* check) {
    Finding finding;
    finding.check = check;
    finding.piece = piece.name();
    return finding;
}

const std::string& edge_name(const Outline& outline, std::size_t item) {
    return outline.items[item].as_edge()->edge;
}

PlacedFindings crossings(const PieceContext& piece) {
    const Outline& outline = piece.outline();
    PlacedFindings findings;
    for (const OutlineMeeting& meeting : piece.meetings) {
        if (!outline.items[meeting.first].as_edge() || !outline.items[meeting.second].as_edge()) continue;
        Finding finding = finding_on(piece, "outline-crossing");
        finding.edge = edge_name(outline, meeting.first);
        const std::string& other = edge_name(outline, meeting.second);
        finding.at = meeting.place;
        finding.message = piece.name() + ": " + finding.edge + " crosses or touches " +
                          (other == finding.edge ? "itself" : other) + ".";
        finding.remedy =
            other == finding.edge
                ? "Redraw the edge without the loop, so that the outline goes round the piece once."
                : "Redraw one of the two edges so that the outline goes round the piece once.";
        findings.push_back({finding, piece.index, meeting.first,
                            distance(start_of_item(outline, meeting.first), meeting.place)});
    }
    return findings;
}

// The corner between two neighbouring edge items of one run, degrees.
double kink_deg(const Outline& outline, std::size_t before, std::size_t after) {
    return degrees(
        std::abs(angle_from(direction_at_end(outline, before), direction_at_start(outline, after))));
}

struct Joint {
    std::size_t before;
    std::size_t after;
    const Run* run;
};

// The joints inside runs at which two edge items meet without a dart between them.
std::vector<Joint> joints_of(const PieceContext& piece) {
    const std::size_t count = piece.outline().items.size();
    std::vector<Joint> joints;
    for (const Run& run : piece.runs) {
        for (std::size_t i = 0; i + 1 < run.items.size(); ++i) {
            if (run.items[i + 1] == (run.items[i] + 1) % count) {
                joints.push_back({run.items[i], run.items[i + 1], &run});
            }
        }
    }
    return joints;
}

PlacedFindings kinks(const PieceContext& piece, const std::vector<Joint>& joints,
                     const Tolerances& tolerances) {
    const Outline& outline = piece.outline();
    PlacedFindings findings;
    for (const auto [before, after, run] : joints) {
        const double kink = kink_deg(outline, before, after);
        // Ruling a bowed fold straight takes its corners away; fold-straight says so once.
        if (kink <= tolerances.kink_deg || is_bowed_fold(piece, *run, tolerances)) continue;
        Finding finding = finding_on(piece, "outline-kink");
        finding.edge = edge_name(outline, after);
        finding.at = start_of_item(outline, after);
        finding.measured = finding.difference = kink;
        finding.expected = 0;
        finding.allowed = tolerances.kink_deg;
        finding.message = piece.name() + ": " + finding.edge + " has a corner of " +
                          degrees_in_sentence(kink) + " within the edge.";
        finding.remedy =
            "Redraw the edge as one smooth line there, or give its two parts different names if the corner "
            "is meant.";
        finding.command = {"true", "--piece", finding.piece, "--edge", finding.edge};
        findings.push_back({finding, piece.index, after, 0});
    }
    return findings;
}

// For each item, whether it runs on smoothly into a neighbour of its run, so that no edge but only a division
// of one is short.
std::vector<bool> smoothly_set_in(const PieceContext& piece, const std::vector<Joint>& joints,
                                  const Tolerances& tolerances) {
    std::vector<bool> out(piece.outline().items.size(), false);
    for (const Joint& joint : joints) {
        if (kink_deg(piece.outline(), joint.before, joint.after) > tolerances.kink_deg) continue;
        out[joint.before] = true;
        out[joint.after] = true;
    }
    return out;
}

PlacedFindings strays(const PieceContext& piece, const std::vector<Joint>& joints,
                      const Tolerances& tolerances) {
    const Outline& outline = piece.outline();
    const std::vector<bool> is_smooth = smoothly_set_in(piece, joints, tolerances);
    PlacedFindings findings;
    for (const Run& run : piece.runs) {
        for (const std::size_t item : run.items) {
            // The chord is a lower bound of the length, and free.
            if (distance(start_of_item(outline, item), outline.items[item].to) >= stray_edge_mm) continue;
            const double length = length_of_item(outline, item);
            if (length >= stray_edge_mm) continue;
            Finding finding = finding_on(piece, "outline-stray");
            const bool is_harmless = is_smooth[item];
            finding.severity = is_harmless ? Severity::note : Severity::fault;
            finding.edge = run.edge;
            finding.at = start_of_item(outline, item);
            finding.measured = length;
            finding.allowed = stray_edge_mm;
            finding.message = piece.name() + ": " +
                              (run.items.size() > 1 ? "a part of " + run.edge : run.edge) + " is only " +
                              difference_in_sentence(length, piece.unit) + " long" +
                              (is_harmless ? ", and lies smooth" : "") + ".";
            finding.remedy =
                is_harmless ? "Nothing need be done; join it to the part beside it if the edge is redrawn."
                            : "Take the short edge out and bring its neighbours together, or draw it at its "
                              "full length.";
            findings.push_back({finding, piece.index, item, 0});
        }
    }
    return findings;
}

// Items of no length are passed over by everything else, and are said here.
PlacedFindings spares(const PieceContext& piece) {
    const Outline& outline = piece.piece->outline;
    if (outline.items.size() == piece.outline().items.size()) return {};
    const std::vector<std::size_t> kept = without_spare_items(outline).items;
    PlacedFindings findings;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (std::binary_search(kept.begin(), kept.end(), i)) continue;
        Finding finding = finding_on(piece, "outline-stray");
        finding.severity = Severity::note;
        finding.edge = edge_name(outline, i);
        finding.at = outline.items[i].to;
        finding.measured = 0;
        finding.allowed = stray_edge_mm;
        finding.message =
            piece.name() + ": a part of " + finding.edge + " has no length, and is passed over.";
        finding.remedy = "Nothing need be done; take it out if the edge is redrawn.";
        findings.push_back({finding, piece.index, i, 0});
    }
    return findings;
}

}  // namespace

PlacedFindings gap_findings(const PieceContext& piece, const Tolerances& tolerances) {
    if (piece.is_closed) return {};
    const Outline& outline = piece.piece->outline;
    Finding finding = finding_on(piece, "outline-gap");
    finding.at = outline.items.empty() ? outline.start : outline.items.back().to;
    finding.measured = finding.difference = piece.gap;
    finding.expected = 0;
    finding.allowed = tolerances.gap_mm;
    finding.message =
        piece.name() + ": the outline ends " + difference_in_sentence(piece.gap, piece.unit) +
        " from its start, so that the other checks of this piece and of its seams are left out.";
    finding.remedy = "Bring the end of the last edge to the start of the first.";
    return {{finding, piece.index, outline.items.size(), 0}};
}

PlacedFindings outline_findings(const PieceContext& piece, const Tolerances& tolerances) {
    const std::vector<Joint> joints = joints_of(piece);
    return joined(joined(joined(crossings(piece), strays(piece, joints, tolerances)), spares(piece)),
                  kinks(piece, joints, tolerances));
}

}  // namespace dartwright
