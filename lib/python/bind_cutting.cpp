// The line along which a piece is cut.

#include <algorithm>

#include "bindings.hpp"
#include "dartwright/cutting/applied_rule.hpp"
#include "dartwright/cutting/cutting_line.hpp"

namespace dartwright::python {
namespace {

CuttingLine cutting_line_of(const Pattern& pattern, const std::string& piece,
                            std::optional<double> undecided_mm) {
    const std::size_t index = piece_index(pattern, piece);
    const AppliedRule rule = apply_rule(pattern, pattern.cutting.value_or(CuttingRule{}), undecided_mm);
    CuttingRequest request = rule.pieces[index].request;
    request.tells_trimmed = true;
    return cutting_line(rule.pattern.pieces[index], request);
}

}  // namespace

void bind_cutting(py::module_& module) {
    Value<CutCorner>(module, "CutCorner", "A corner of two edges on the cutting line, as it was made.")
        .field("edges", &CutCorner::edges, "The two edges, in outline order.")
        .field("at", &CutCorner::at, "On the stitching line, mm.")
        .field(
            "kind", [](const CutCorner& corner) { return to_text(corner.kind); },
            "`met`, `squared`, `mirrored`, `carried on` or `blunted`.")
        .field("is_step", &CutCorner::is_step,
               "The wider allowance ends square, the narrower runs up to it.");
    Value<UndecidedStretch>(module, "UndecidedStretch", "A stretch of a run that has no allowance.")
        .field("edge", &UndecidedStretch::edge, "The run.")
        .field("start_mm", &UndecidedStretch::from_mm,
               "Sewn distance from the run's anticlockwise start, mm.")
        .field("end_mm", &UndecidedStretch::to_mm, "And of its end, mm.");
    Value<TrimmedPlace>(
        module, "TrimmedPlace",
        "Where allowances ran into each other and were trimmed: a stretch of a run, or the cloth "
        "of a dart.")
        .field("edge", &TrimmedPlace::edge, "The run; empty at a dart.")
        .field("dart", &TrimmedPlace::dart, "The dart; empty at a run.")
        .field("start_mm", &TrimmedPlace::from_mm, "Sewn distance from the run's anticlockwise start, mm.")
        .field("end_mm", &TrimmedPlace::to_mm, "And of its end, mm.")
        .field("at", &TrimmedPlace::at, "On the stitching line, in its middle, mm.");
    Value<CuttingLine>(module, "CuttingLine", "The line along which a piece is cut.")
        .field("points", &CuttingLine::points,
               "A closed polygon, anticlockwise, mm; the last point is joined to the first.")
        .field("corners", &CuttingLine::corners, "Its corners, in outline order.")
        .field("undecided", &CuttingLine::undecided,
               "Stretches without an allowance, cut on the stitching line.")
        .field("notes", &CuttingLine::notes, "What is not as asked.")
        .field("is_cleaned", &CuttingLine::is_cleaned, "Allowances that ran into each other were trimmed.")
        .field("trimmed", &CuttingLine::trimmed, "Where, if by half a millimetre or more.");
    module.def(
        "cutting_line", cutting_line_of, py::arg("pattern"), py::arg("piece"),
        py::arg("undecided_mm") = py::none(), Unlocked(),
        "Outside the stitching line of a piece by the allowance of each edge, by the pattern's own rule if\n"
        "it carries one; `undecided_mm` where nothing decides. UnknownName, Impossible.");
}

}  // namespace dartwright::python
