#include "dartwright/checks/seam_checks.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/checks/allowance_along.hpp"
#include "dartwright/checks/seam_corners.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {
namespace {

std::string length_remedy(const std::string& longer, const std::string& shorter, double by) {
    return "Shorten " + longer + " or lengthen " + shorter + " by " + mm_in_sentence(by) +
           " at one end and redraw the edge that crosses there, or allow for the difference as ease.";
}

/// `back is only 2.7 mm longer than front; 5.6 mm of ease was meant: 2.9 mm too little`.
std::string ease_words(const WalkedSeam& seam, const std::array<std::string, 2>& names) {
    const std::size_t eased = seam.ease > 0 ? 1 : 0;
    const double longer_by = seam.sides[eased].length - seam.sides[1 - eased].length;
    const double ease = std::abs(seam.ease);
    const bool is_too_little = longer_by < ease;
    const std::string only = is_too_little && longer_by > 0 ? "only " : "";
    return names[eased] + " is " + only + mm_in_sentence(std::abs(longer_by)) +
           (longer_by < 0 ? " shorter than " : " longer than ") + names[1 - eased] + "; " +
           mm_in_sentence(ease) + " of ease was meant: " + mm_in_sentence(std::abs(longer_by - ease)) +
           (is_too_little ? " too little" : " too much");
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
    const std::string what = seam.ease != 0 ? ease_words(seam, names)
                                            : names[longer] + " is " + mm_in_sentence(std::abs(difference)) +
                                                  " longer than " + names[shorter];
    finding.message = seam.seam->name + ": " + what + " (" + names[0] + " " +
                      mm_in_sentence(seam.sides[0].length) + ", " + names[1] + " " +
                      mm_in_sentence(seam.sides[1].length) + (seam.ease == 0 ? ", ease 0" : "") + ").";
    finding.remedy = length_remedy(names[longer], names[shorter], std::abs(difference));
    return {placed_at_end(finding, {&part, part.far_end()})};
}

std::string width_text(const std::optional<double>& width) {
    return width ? mm_in_sentence(*width) : "not decided";
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
                      (widths.at > 0 ? ", from " + mm_in_sentence(widths.at) + " along the seam." : ".");
    finding.remedy = is_decided ? "Give both edges one width, or the layers cannot be laid edge to edge."
                                : "Decide the width on the other side too.";
    return {finding, part.piece->index, place.item, place.along_item};
}

// The first place where the widths differ, and the first where only one is decided.
PlacedFindings allowances(const WalkedSeam& seam, const Tolerances& tolerances) {
    if (seam.is_with_itself() || seam.seam->allowances_differ) return {};
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

PlacedFindings seam_findings(const WalkedSeam& seam, const std::vector<WalkedSeam>& all_seams,
                             const Tolerances& tolerances) {
    return joined(joined(lengths(seam, tolerances), seam_corner_findings(seam, all_seams, tolerances)),
                  allowances(seam, tolerances));
}

}  // namespace dartwright
