#include "dartwright/checks/notch_checks.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/checks/notches_along.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {
namespace {

const char* kind_text(NotchKind kind) {
    switch (kind) {
        case NotchKind::single:
            return "single";
        case NotchKind::double_:
            return "double";
        case NotchKind::triple:
            return "triple";
    }
    return "";
}

PlacedFinding placed_on_run(Finding finding, const PieceContext& piece, const Run& run, double on_run) {
    const RunPlace place = place_on_run(piece.outline(), run, on_run);
    finding.piece = piece.name();
    finding.edge = run.edge;
    finding.at = place.point;
    return {std::move(finding), piece.index, place.item, place.along_item};
}

std::string notch_text(const Notch& notch, Unit unit) {
    return std::string(kind_text(notch.kind)) + " notch " + measure_in_sentence(notch.at, unit) + " from " +
           notch.from;
}

PlacedFinding beyond_run(const PieceContext& piece, const Run& run, const Notch& notch,
                         const Tolerances& tolerances) {
    Finding finding;
    finding.check = "notch-place";
    finding.measured = notch.at;
    finding.expected = run.length;
    finding.difference = notch.at - run.length;
    finding.allowed = tolerances.notch_mm;
    finding.message = piece.name() + ", " + run.edge + ": the " + notch_text(notch, piece.unit) +
                      " lies beyond the end of the edge, which is " +
                      measure_in_sentence(run.length, piece.unit) + " long.";
    finding.remedy = "Measure the notch again from " + notch.from + " and mark it on the edge.";
    const bool is_beyond_end = end_named(run, notch.from) == RunEnd::start;
    return placed_on_run(finding, piece, run, is_beyond_end ? run.length : 0);
}

struct Mouth {
    std::size_t dart;
    double at;  // sewn distance from the run's start, mm
};

// Inside the run and in the corners at its ends.
std::vector<Mouth> mouths_on(const PieceContext& piece, const Run& run) {
    std::vector<Mouth> mouths;
    for (const std::size_t dart : run.corner_darts_before) mouths.push_back({dart, 0});
    if (!run.darts.empty()) {
        const std::vector<double> distances = dart_distances(piece.outline(), run);
        for (std::size_t i = 0; i < run.darts.size(); ++i) mouths.push_back({run.darts[i], distances[i]});
    }
    for (const std::size_t dart : run.corner_darts_after) mouths.push_back({dart, run.length});
    return mouths;
}

PlacedFindings in_dart(const PieceContext& piece, const Run& run, const Notch& notch, double on_run) {
    for (const Mouth& mouth : mouths_on(piece, run)) {
        const double apart = on_run - mouth.at;
        if (std::abs(apart) >= notch_clear_of_mouth_mm) continue;
        Finding finding;
        finding.check = "notch-in-dart";
        finding.dart = piece.outline().items[mouth.dart].as_dart()->name;
        finding.measured = std::abs(apart);
        finding.allowed = notch_clear_of_mouth_mm;
        finding.message = piece.name() + ", " + run.edge + ": the " + notch_text(notch, piece.unit) +
                          " lies " + difference_in_sentence(std::abs(apart), piece.unit) +
                          " from the mouth of " + finding.dart + ", where it is folded away with the dart.";
        finding.remedy = "Move the notch, and its partner, along the edge and clear of the dart.";
        return {placed_on_run(finding, piece, run, on_run)};
    }
    return {};
}

std::string seam_subject(const WalkedSeam& seam) {
    return seam.seam->name + ": ";
}

Finding seam_finding(const WalkedSeam& seam, const char* check) {
    Finding finding;
    finding.check = check;
    finding.seam = seam.seam->name;
    return finding;
}

PlacedFinding placed_at_notch(const Finding& finding, const WalkedNotch& notch) {
    return placed_on_run(finding, *notch.part->piece, *notch.part->run, notch.on_run);
}

PlacedFindings place_of_pair(const WalkedSeam& seam, const WalkedNotch& first, const WalkedNotch& second,
                             const Tolerances& tolerances) {
    const double off = misplacement(seam, first.walked, second.walked);
    if (std::abs(off) <= tolerances.notch_mm) return {};
    const std::array<std::string, 2> names = side_names(seam);
    Finding finding = seam_finding(seam, "notch-place");
    finding.measured = second.walked;
    finding.expected = second.walked - off;
    finding.difference = off;
    finding.allowed = tolerances.notch_mm;
    finding.message = seam_subject(seam) + "the " + kind_text(second.notch->kind) + " notch of " + names[1] +
                      " is " + measure_in_sentence(second.walked, seam.unit) +
                      " along the seam and its partner on " + names[0] + " " +
                      measure_in_sentence(first.walked, seam.unit) + ", " +
                      difference_in_sentence(std::abs(off), seam.unit) + " too far " +
                      (off > 0 ? "on" : "back") + (seam.ease == 0 ? "." : " with the ease allowed for.");
    finding.remedy =
        "Walk the two edges from the same end and mark both notches where they lie on each other.";
    return {placed_at_notch(finding, second)};
}

// A notch whose partner is the corner between two parts of the other side.
PlacedFindings place_at_corner(const WalkedSeam& seam, const NotchAtCorner& at,
                               const Tolerances& tolerances) {
    if (std::abs(at.off) <= tolerances.notch_mm) return {};
    const std::array<std::string, 2> names = side_names(seam);
    const WalkedSide& other = seam.sides[1 - at.side];
    const auto after = std::find_if(other.parts.begin(), other.parts.end(),
                                    [&](const WalkedPart& part) { return part.begins == at.corner_walked; });
    const std::string corner = std::prev(after)->piece->name() + " and " + after->piece->name();
    Finding finding = seam_finding(seam, "notch-place");
    finding.measured = at.notch.walked;
    // How far the notch lies on or back, whichever side it is on.
    const double off = at.side == 0 ? -at.off : at.off;
    finding.expected = at.notch.walked - off;
    finding.difference = off;
    finding.allowed = tolerances.notch_mm;
    finding.message = seam_subject(seam) + "the " + kind_text(at.notch.notch->kind) + " notch of " +
                      names[at.side] + " is " + measure_in_sentence(at.notch.walked, seam.unit) +
                      " along the seam and the corner of " + corner + " that it meets " +
                      measure_in_sentence(at.corner_walked, seam.unit) + ", " +
                      difference_in_sentence(std::abs(off), seam.unit) + " too far " +
                      (off > 0 ? "on" : "back") + (seam.ease == 0 ? "." : " with the ease allowed for.");
    finding.remedy = "Walk the two edges from the same end and mark the notch where the corner comes to lie.";
    return {placed_at_notch(finding, at.notch)};
}

PlacedFindings kind_of_pair(const WalkedSeam& seam, const WalkedNotch& first, const WalkedNotch& second) {
    if (first.notch->kind == second.notch->kind) return {};
    const std::array<std::string, 2> names = side_names(seam);
    Finding finding = seam_finding(seam, "notch-kind");
    finding.message = seam_subject(seam) + "the notch " + measure_in_sentence(second.walked, seam.unit) +
                      " along the seam is " + kind_text(second.notch->kind) + " on " + names[1] +
                      " and its partner is " + kind_text(first.notch->kind) + " on " + names[0] + ".";
    finding.remedy = "Mark both notches of the pair alike.";
    return {placed_at_notch(finding, second)};
}

// A notch on side `has` without a partner on the other side.
PlacedFinding missing_partner(const WalkedSeam& seam, const WalkedNotch& notch, std::size_t has) {
    const WalkedSide& bare = seam.sides[1 - has];
    const double walked = std::min(notch.walked, bare.length);
    const WalkedPart& part = part_at(bare, walked);
    const std::array<std::string, 2> names = side_names(seam);
    Finding finding = seam_finding(seam, "notch-missing");
    finding.expected = walked - part.begins;
    finding.message = seam_subject(seam) + "the " + notch_text(*notch.notch, seam.unit) + " on " +
                      names[has] + " has no partner on " + names[1 - has] + ".";
    finding.remedy = "Mark one on " + part.run->edge + " of " + part.piece->name() + ", " +
                     measure_in_sentence(walked - part.begins, seam.unit) + " from " +
                     name_of_end(*part.run, part.from) + ", or take the other one out.";
    return placed_on_run(finding, *part.piece, *part.run, part.on_run(walked));
}

}  // namespace

PlacedFindings notch_findings(const PieceContext& piece, const Tolerances& tolerances) {
    PlacedFindings findings;
    for (const Notch& notch : piece.piece->notches) {
        const Run& run = run_named(piece.runs, notch.edge, piece.name());
        const std::optional<double> on_run = distance_on_run(notch, run);
        if (!on_run) {
            throw UnknownName("end", notch.from,
                              {name_of_end(run, RunEnd::start), name_of_end(run, RunEnd::end)},
                              piece.name() + ", " + run.edge);
        }
        if (is_on_run(*on_run, run, tolerances)) {
            findings = joined(std::move(findings), in_dart(piece, run, notch, *on_run));
        } else {
            findings.push_back(beyond_run(piece, run, notch, tolerances));
        }
    }
    return findings;
}

PlacedFindings notch_findings(const WalkedSeam& seam, const Tolerances& tolerances) {
    if (seam.is_with_itself()) return {};
    const SeamNotches all = notches_of(seam, tolerances);
    const std::vector<WalkedNotch>& first = all.sides[0];
    const std::vector<WalkedNotch>& second = all.sides[1];
    const NotchPairs& notches = all.pairs;
    PlacedFindings findings;
    for (const NotchAtCorner& at : all.at_corners)
        findings = joined(std::move(findings), place_at_corner(seam, at, tolerances));
    for (const auto& [i, j] : notches.pairs) {
        findings = joined(std::move(findings), place_of_pair(seam, first[i], second[j], tolerances));
        findings = joined(std::move(findings), kind_of_pair(seam, first[i], second[j]));
    }
    for (const std::size_t i : notches.left_over_first)
        findings.push_back(missing_partner(seam, first[i], 0));
    for (const std::size_t j : notches.left_over_second)
        findings.push_back(missing_partner(seam, second[j], 1));
    return findings;
}

}  // namespace dartwright
