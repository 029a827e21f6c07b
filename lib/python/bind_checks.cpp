// Checking, walking and measuring.

#include "bindings.hpp"
#include "dartwright/checks/check.hpp"
#include "dartwright/checks/measure_line.hpp"
#include "dartwright/checks/walk.hpp"
#include "dartwright/pattern/errors.hpp"

namespace dartwright::python {
namespace {

const char* word_of(WalkMark mark) {
    switch (mark) {
        case WalkMark::start:
            return "start";
        case WalkMark::notch:
            return "notch";
        case WalkMark::dart:
            return "dart";
        case WalkMark::part_corner:
            return "corner";
        case WalkMark::end:
            break;
    }
    return "end";
}

void bind_findings(py::module_& module) {
    const auto text = [](std::string Finding::*member) {
        return [member](const Finding& finding) { return text_or_none(finding.*member); };
    };
    Value<Finding>(module, "Finding", "One thing that is not true. What does not apply is None.")
        .field("check", &Finding::check, "The stable name of the check, such as `seam-length`.")
        .field(
            "severity",
            [](const Finding& finding) { return finding.severity == Severity::fault ? "fault" : "note"; },
            "`fault`, which must be mended before cutting, or `note`.")
        .field("piece", text(&Finding::piece), "The piece.")
        .field("edge", text(&Finding::edge), "The run.")
        .field("dart", text(&Finding::dart), "The dart.")
        .field("seam", text(&Finding::seam), "The seam.")
        .field("at", &Finding::at, "The place on the piece, mm.")
        .field("measured", &Finding::measured, "Mm or degrees, as the check is about lengths or angles.")
        .field("expected", &Finding::expected, "Mm or degrees.")
        .field("difference", &Finding::difference, "Mm or degrees.")
        .field("allowed", &Finding::allowed, "The tolerance, mm or degrees.")
        .field("message", &Finding::message, "One sentence: what is wrong.")
        .field("remedy", &Finding::remedy, "One sentence: what to do about it.")
        .field(
            "command", &Finding::command,
            "The words of the command that does it, without the program and the file; empty if none does.");
}

void bind_report(py::module_& module) {
    Value<SeamVerdict>(module, "SeamVerdict", "The verdict on one seam.")
        .field("name", &SeamVerdict::name, "The seam.")
        .field("side_names", &SeamVerdict::side_names, "What its two sides are.")
        .field("lengths_mm", &SeamVerdict::lengths,
               "Sewn lengths of its sides, mm; None where an outline does not close.")
        .field("ease_mm", &SeamVerdict::ease, "Meant, mm; positive when the second side is the longer.")
        .field("difference_mm", &SeamVerdict::difference,
               "Second less first less ease, mm; None as the lengths.")
        .field("passed", &SeamVerdict::passed, "No fault names this seam.");
    Value<DartVerdict>(module, "DartVerdict", "The verdict on one dart.")
        .field("piece", &DartVerdict::piece, "The piece that it is on.")
        .field("name", &DartVerdict::name, "The dart.")
        .field("legs_mm", &DartVerdict::legs, "The lengths of its legs, mm.")
        .field("intake_mm", &DartVerdict::intake, "The straight distance across its mouth, mm.")
        .field("angle_deg", &DartVerdict::angle_deg, "The dart angle, at the pivot, degrees.")
        .field("passed", &DartVerdict::passed, "No fault names this dart.");
    Value<CheckReport>(module, "CheckReport", "All that the checks found.")
        .field("name", &CheckReport::name, "The pattern's name.")
        .field("passed", &CheckReport::passed, "No finding is a fault.")
        .field("findings", &CheckReport::findings, "In the order of the list of checks, pieces and places.")
        .field("seams", &CheckReport::seams, "A verdict on every seam.")
        .field("darts", &CheckReport::darts, "A verdict on every dart.");
}

void bind_walk(py::module_& module) {
    Value<WalkRow>(module, "WalkRow", "One thing met when two edges are laid along each other.")
        .field(
            "mark", [](const WalkRow& row) { return word_of(row.mark); },
            "`start`, `notch`, `dart`, `corner` (of two runs of one side) or `end`.")
        .field(
            "name", [](const WalkRow& row) { return text_or_none(row.name); },
            "The notch's kind, the dart's name, the edges at the corner, or None.")
        .field("sides_mm", &WalkRow::sides,
               "Sewn distance from the start on each side, mm; None where it has none.")
        .field("difference_mm", &WalkRow::difference, "Second less first, mm, where both have it.");
    Value<SeamWalk>(module, "SeamWalk", "A seam, walked.")
        .field("name", &SeamWalk::name, "The seam.")
        .field("side_names", &SeamWalk::side_names, "What its two sides are.")
        .field("rows", &SeamWalk::rows, "What is met, in order.")
        .field("lengths_mm", &SeamWalk::lengths, "Sewn lengths of its sides, mm.")
        .field("ease_mm", &SeamWalk::ease, "Meant, mm; positive when the second side is the longer.")
        .field("difference_mm", &SeamWalk::difference, "Second less first less ease, mm.")
        .field("corners_deg", &SeamWalk::corners_deg,
               "The two sides' angles together at the start and at the end, degrees; 180 runs on smoothly.");
}

void bind_measures(py::module_& module) {
    Value<MeasuredOnPiece>(module, "MeasuredOnPiece", "A line on one piece.")
        .field("piece", &MeasuredOnPiece::piece, "The piece.")
        .field("length_mm", &MeasuredOnPiece::length_mm, "On the piece as it is drawn, mm.")
        .field("copies", &MeasuredOnPiece::copies,
               "2 for a piece on the fold and for a mirrored pair, else 1.")
        .field("total_mm", &MeasuredOnPiece::total_mm, "In all, mm.");
    Value<MeasuredLine>(module, "MeasuredLine", "A line measured across all pieces, darts closed.")
        .field("name", &MeasuredLine::name, "The line.")
        .field("pieces", &MeasuredLine::pieces, "The pieces that have it, in the pattern's order.")
        .field("total_mm", &MeasuredLine::total_mm, "Across all of them, mm.");
}

}  // namespace

void bind_checks(py::module_& module) {
    bind_findings(module);
    bind_report(module);
    bind_walk(module);
    bind_measures(module);
    module.def(
        "check",
        [](const Pattern& pattern, const std::map<std::string, double>& tolerances) {
            return check(pattern, tolerances_with(pattern, tolerances));
        },
        py::arg("pattern"), py::arg("tolerances") = std::map<std::string, double>{}, Unlocked(),
        "Every check on every piece and seam. Tolerances by name, mm or degrees, go before the pattern's "
        "own:\n"
        "seam, legs, notch, gap, fold (mm); corner, mouth, kink, grain (degrees). UnknownName, BadWords.");
    module.def(
        "walk", &walk_seam, py::arg("pattern"), py::arg("seam"), Unlocked(),
        "Lays one side of a seam along the other. UnknownName; Impossible if an outline does not close.");
    module.def(
        "measure", &measure_line, py::arg("pattern"), py::arg("line"), Unlocked(),
        "The run or marked line of that name across all pieces, darts closed, twice for a fold or a pair.\n"
        "UnknownName; Impossible if an outline does not close.");
    module.def(
        "measure_level", measure_level, py::arg("pattern"), py::arg("place"), Unlocked(),
        "The line square to the grain through a place such as `side@60/armhole`, in every piece that has\n"
        "that edge. UnknownName, BadWords, Impossible.");
}

}  // namespace dartwright::python
