#include "dartwright/checks/seam_checks.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/checks/allowance_along.hpp"
#include "dartwright/checks/seam_corners.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {
namespace {

std::string length_remedy(const std::string& longer, const std::string& shorter, double by, Unit unit) {
    return "Shorten " + longer + " or lengthen " + shorter + " by " + difference_in_sentence(by, unit) +
           " at one end and redraw the edge that crosses there, or allow for the difference as ease.";
}

/// `back is only 2.7 mm longer than front; 5.6 mm of ease was meant: 2.9 mm too little`.
std::string ease_words(const WalkedSeam& seam, const std::array<std::string, 2>& names) {
    const std::size_t eased = seam.ease > 0 ? 1 : 0;
    const double longer_by = seam.sides[eased].length - seam.sides[1 - eased].length;
    const double ease = std::abs(seam.ease);
    const bool is_too_little = longer_by < ease;
    const std::string only = is_too_little && longer_by > 0 ? "only " : "";
    return names[eased] + " is " + only + difference_in_sentence(std::abs(longer_by), seam.unit) +
           (longer_by < 0 ? " shorter than " : " longer than ") + names[1 - eased] + "; " +
           difference_in_sentence(ease, seam.unit) +
           " of ease was meant: " + difference_in_sentence(std::abs(longer_by - ease), seam.unit) +
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
                                            : names[longer] + " is " +
                                                  difference_in_sentence(std::abs(difference), seam.unit) +
                                                  " longer than " + names[shorter];
    finding.message = seam.seam->name + ": " + what + " (" + names[0] + " " +
                      measure_in_sentence(seam.sides[0].length, seam.unit) + ", " + names[1] + " " +
                      measure_in_sentence(seam.sides[1].length, seam.unit) +
                      (seam.ease == 0 ? ", ease 0" : "") + ").";
    finding.remedy = length_remedy(names[longer], names[shorter], std::abs(difference), seam.unit);
    finding.command = command_for_end(seam, {&part, part.far_end()});
    return {placed_at_end(finding, {&part, part.far_end()})};
}

std::string width_text(const std::optional<double>& width, Unit unit) {
    return width ? measure_in_sentence(*width, unit) : "not decided";
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
    finding.message =
        seam.seam->name + ": the allowance is " + width_text(widths.first, seam.unit) + " on " + names[0] +
        " and " + width_text(widths.second, seam.unit) + " on " + names[1] +
        (widths.at > 0 ? ", from " + measure_in_sentence(widths.at, seam.unit) + " along the seam." : ".");
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
