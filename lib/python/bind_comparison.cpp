// Comparing two patterns.

#include "bindings.hpp"
#include "dartwright/comparing/compare.hpp"

namespace dartwright::python {
namespace {

BeforeAfter in_degrees(BeforeAfter angle) {
    if (angle.before) angle.before = degrees(*angle.before);
    if (angle.after) angle.after = degrees(*angle.after);
    return angle;
}

const char* word_of(DartChange change) {
    switch (change) {
        case DartChange::kept:
            return "kept";
        case DartChange::moved:
            return "moved";
        case DartChange::changed:
            return "changed";
        case DartChange::gone:
            return "gone";
        case DartChange::opened:
            break;
    }
    return "opened";
}

std::optional<std::string> kind_or_none(const std::optional<NotchKind>& kind) {
    if (!kind) return std::nullopt;
    return python::word_of(*kind);
}

void bind_small_parts(py::module_& module) {
    Value<BeforeAfter>(module, "BeforeAfter",
                       "A figure of both patterns; None where one does not have what was measured.")
        .field("before", &BeforeAfter::before, "In the first pattern.")
        .field("after", &BeforeAfter::after, "In the second.")
        .field("difference", &BeforeAfter::difference, "After less before, where both are there.");
    Value<ComparedRun>(module, "ComparedRun", "A run of both patterns.")
        .field("edge", &ComparedRun::edge, "The run.")
        .field("sewn_mm", &ComparedRun::sewn_mm, "Its sewn length, mm.");
    Value<ComparedPivot>(module, "ComparedPivot", "The darts about one pivot.")
        .field("darts_before", &ComparedPivot::darts_before, "Their names in the first pattern.")
        .field("darts_after", &ComparedPivot::darts_after, "Their names in the second.")
        .field(
            "angle_deg", [](const ComparedPivot& pivot) { return in_degrees(pivot.angle_rad); },
            "Their dart angles together, degrees.")
        .field("strays_mm", &ComparedPivot::strays_mm,
               "How far it lies from where the parts beside it carried it, mm; None if it is not in both.");
    Value<ComparedNotch>(module, "ComparedNotch", "A notch of either pattern.")
        .field("edge", &ComparedNotch::edge, "The run that it is on.")
        .field("ends", &ComparedNotch::from, "The names of the run's ends, the anticlockwise start first.")
        .field(
            "kind_before", [](const ComparedNotch& notch) { return kind_or_none(notch.kind_before); },
            "`single`, `double`, `triple`, or None if the first pattern does not have it.")
        .field(
            "kind_after", [](const ComparedNotch& notch) { return kind_or_none(notch.kind_after); },
            "And in the second.")
        .field("at_mm", &ComparedNotch::at_mm, "Sewn distances from the two ends, mm.");
}

void bind_darts(py::module_& module) {
    Value<DartSeen>(module, "DartSeen", "Where a dart is.")
        .field("place", &DartSeen::place, "As `EDGE@DISTANCE/FROM`.")
        .field("edge", &DartSeen::edge, "The run that it is in.")
        .field("share", &DartSeen::share, "Of the run's sewn length, from its anticlockwise start, 0 to 1.")
        .field(
            "angle_deg", [](const DartSeen& dart) { return degrees(dart.angle_rad); },
            "The dart angle, degrees.")
        .field("intake_mm", &DartSeen::intake_mm, "The straight distance across its mouth, mm.")
        .field("back_off_mm", &DartSeen::back_off_mm, "How far the point stops short of the pivot, mm.");
    Value<ComparedDart>(module, "ComparedDart", "A dart of either pattern.")
        .field("name", &ComparedDart::name, "The dart.")
        .field(
            "change", [](const ComparedDart& dart) { return word_of(dart.change); },
            "`kept`, `moved`, `changed`, `gone` or `opened`.")
        .field("before", &ComparedDart::before, "Where it is in the first pattern, or None.")
        .field("after", &ComparedDart::after, "And in the second.");
}

void bind_pieces_and_losses(py::module_& module) {
    Value<ComparedPiece>(module, "ComparedPiece",
                         "A piece of both patterns, wherever it lies and whichever way up.")
        .field("name", &ComparedPiece::name, "The piece.")
        .field("separated_into", &ComparedPiece::separated_into,
               "The pieces that it was separated into along a seam; empty for one that is one still.")
        .field("is_mirrored", &ComparedPiece::is_mirrored, "It lies the other way up in the second pattern.")
        .field(
            "turned_deg", [](const ComparedPiece& piece) { return degrees(piece.turned_rad); },
            "How its longest part lies turned, degrees anticlockwise.")
        .field("shifted_mm", &ComparedPiece::shifted_mm, "And shifted, mm.")
        .field("is_recut", &ComparedPiece::is_recut, "How it is to be cut (quantity, fold) has changed.")
        .field("area_mm2", &ComparedPiece::area_mm2, "Its cloth, mm^2.")
        .field("runs", &ComparedPiece::runs, "Its runs.")
        .field("pivots", &ComparedPiece::pivots, "Its pivots.")
        .field("notches", &ComparedPiece::notches, "Its notches.")
        .field("darts", &ComparedPiece::darts, "Its darts.")
        .field(
            "outlines_apart_mm",
            [](const ComparedPiece& piece) -> std::optional<double> {
                if (!piece.outline) return std::nullopt;
                return piece.outline->at_most_mm;
            },
            "The most that any place of either outline lies from the other after the best rigid fit, mm;\n"
            "None without a run in both.");
    Value<ComparedSeam>(module, "ComparedSeam", "A seam of either pattern.")
        .field("name", &ComparedSeam::name, "The seam.")
        .field("difference_mm", &ComparedSeam::difference_mm, "Second side less first less ease, mm.");
    const auto text = [](std::string Loss::*member) {
        return [member](const Loss& loss) { return text_or_none(loss.*member); };
    };
    Value<Loss>(module, "Loss", "Something that did not survive. What does not apply is None.")
        .field("what", &Loss::what, "A stable name, such as `run-length`.")
        .field("piece", text(&Loss::piece), "The piece.")
        .field("edge", text(&Loss::edge), "The run.")
        .field("darts", &Loss::darts, "The darts.")
        .field("seam", text(&Loss::seam), "The seam.")
        .field("amount", &Loss::amount, "What changed: mm, mm^2 or degrees.")
        .field("allowed", &Loss::allowed, "By how much it may: mm, mm^2 or degrees.")
        .field("message", &Loss::message, "One sentence: what was lost.")
        .field("remedy", &Loss::remedy, "One sentence: what to do about it.");
    Value<Comparison>(module, "Comparison",
                      "Two patterns compared: what moving darts must keep, and what was moved.")
        .field("is_kept", &Comparison::is_kept, "Nothing was lost.")
        .field("is_unchanged", &Comparison::is_unchanged,
               "Nothing was lost, and nothing is otherwise beside darts that were moved.")
        .field("losses", &Comparison::losses, "What did not survive.")
        .field("changes", &Comparison::changes, "What is otherwise and costs no shape.")
        .field("notes", &Comparison::notes, "What is new or lies otherwise, and is no loss.")
        .field("pieces", &Comparison::pieces, "Those in both, in the order of the first.")
        .field("seams", &Comparison::seams, "Those of both; the first pattern's first.");
}

}  // namespace

void bind_comparison(py::module_& module) {
    bind_small_parts(module);
    bind_darts(module);
    bind_pieces_and_losses(module);
    module.def(
        "compare",
        [](const Pattern& before, const Pattern& after, const std::map<std::string, double>& tolerances) {
            return compare(before, after, tolerances_with(before, tolerances));
        },
        py::arg("before"), py::arg("after"), py::arg("tolerances") = std::map<std::string, double>{},
        Unlocked(),
        "Compares two patterns piece by piece, matched by name, wherever they lie and whichever way up.\n"
        "Tolerances by name, mm or degrees, go before those of `before`. Impossible if an outline does not\n"
        "close; UnknownName, BadWords for the tolerances.");
}

}  // namespace dartwright::python
