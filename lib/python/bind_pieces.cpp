// Pieces and what lies on them, as values to read.

#include "bindings.hpp"
#include "dartwright/geometry/flatten.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright::python {
namespace {

// A dart by itself: what its outline says of it.
struct DartOfPiece {
    std::string name;
    DartFigures figures;
    std::string press;
    std::optional<double> stitched_mm;
};
struct RunOfPiece {
    Run run;
    std::vector<std::string> darts;
    double fullness_mm = 0;
};

std::vector<DartOfPiece> darts_of(const Piece& piece) {
    std::vector<DartOfPiece> darts;
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        if (const DartItem* dart = piece.outline.items[i].as_dart())
            darts.push_back({dart->name, figures_of(piece.outline, i), dart->press, dart->stitched});
    }
    return darts;
}

DartOfPiece dart_of(const Piece& piece, const std::string& name) {
    const std::size_t item = dart_named(piece, name);
    const DartItem& dart = *piece.outline.items[item].as_dart();
    return {name, figures_of(piece.outline, item), dart.press, dart.stitched};
}

RunOfPiece named_run(const Piece& piece, const Run& run) {
    RunOfPiece named{run, {}, 0};
    for (const std::size_t item : run.items)
        named.fullness_mm += piece.outline.items[item].as_edge()->fullness;
    for (const std::size_t item : run.darts) named.darts.push_back(piece.outline.items[item].as_dart()->name);
    return named;
}

std::vector<RunOfPiece> runs_of_piece(const Piece& piece) {
    std::vector<RunOfPiece> runs;
    for (const Run& run : runs_of(piece.outline)) runs.push_back(named_run(piece, run));
    return runs;
}

RunOfPiece run_of_piece(const Piece& piece, const std::string& edge) {
    return named_run(piece, run_named(runs_of(piece.outline), edge, piece.name));
}

std::optional<std::string> worn_word(const std::optional<Worn>& worn) {
    if (!worn) return std::nullopt;
    return *worn == Worn::front ? "front" : "back";
}

double checked_chord_error(double chord_error_mm) {
    // Finer than rounding itself would never end.
    if (chord_error_mm >= 1e-6 && chord_error_mm <= 1000) return chord_error_mm;
    throw BadWords("the chord error is " + std::to_string(chord_error_mm) + " mm; expected 0.000001 to 1000");
}

std::vector<Point> outline_points(const Piece& piece, double chord_error_mm, const std::string& darts_to) {
    if (darts_to != "points" && darts_to != "pivots")
        throw BadWords("darts are drawn to \"" + darts_to + "\"; expected points or pivots");
    const auto drawn = darts_to == "points" ? DartsDrawn::to_points : DartsDrawn::to_pivots;
    return flat_outline(piece.outline, drawn, checked_chord_error(chord_error_mm)).points;
}

std::vector<std::vector<Point>> edge_points(const Piece& piece, const std::string& edge,
                                            double chord_error_mm) {
    checked_chord_error(chord_error_mm);
    std::vector<std::vector<Point>> lines;
    const std::vector<Run> runs = runs_of(piece.outline);
    for (const std::size_t item : run_named(runs, edge, piece.name).items) {
        std::vector<Point> line{start_of_item(piece.outline, item)};
        for (const Curve& curve : curves_of_item(piece.outline, item))
            flatten_onto(line, curve, chord_error_mm);
        lines.push_back(std::move(line));
    }
    return lines;
}

void bind_parts(py::module_& module) {
    Value<Cut>(module, "Cut", "How a piece is cut from the cloth.")
        .field("quantity", &Cut::quantity, "How many are cut; 2 is a mirrored pair unless `same`.")
        .field(
            "fold", [](const Cut& cut) { return text_or_none(cut.fold); },
            "The edge laid on the fold, or None.")
        .field(
            "second_fold", [](const Cut& cut) { return text_or_none(cut.second_fold); },
            "Another edge laid on a fold, where the cloth is folded twice, or None.")
        .field("same", &Cut::same, "Copies are not mirrored.");
    Value<Grain>(module, "Grain", "The direction of the grain.")
        .field("start", &Grain::from, "Where the arrow begins, mm.")
        .field("end", &Grain::to, "Where the arrow ends, mm.")
        .field(
            "along", [](const Grain& grain) { return text_or_none(grain.along); },
            "The edge that it is parallel to, or None.");
    Value<Notch>(module, "Notch", "A mark on a run where two sides meet.")
        .field("edge", &Notch::edge, "The run that it is on.")
        .field("measured_from", &Notch::from,
               "The neighbouring edge at the end from which `at_mm` is measured.")
        .field("at_mm", &Notch::at, "Sewn distance along the run, mm.")
        .field(
            "kind", [](const Notch& notch) { return word_of(notch.kind); }, "`single`, `double` or `triple`.")
        .field("begins", &Notch::begins, "A seam walks this closed run from here.");
    Value<Mark>(module, "Mark", "A line or a drill hole marked on a piece.")
        .field("name", &Mark::name, "Its name, such as `bust line`.")
        .field(
            "points",
            [](const Mark& mark) {
                if (const auto* line = std::get_if<LineMark>(&mark.what)) return line->points;
                return std::vector<Point>{std::get<DrillMark>(mark.what).at};
            },
            "The points of the line, or the one of the hole, mm.")
        .field(
            "is_drill", [](const Mark& mark) { return std::holds_alternative<DrillMark>(mark.what); },
            "It is a hole rather than a line.");
}

void bind_runs_and_darts(py::module_& module) {
    Value<RunOfPiece>(module, "Run", "All of a named edge, walked with the darts that interrupt it closed.")
        .field(
            "edge", [](const RunOfPiece& run) { return run.run.edge; }, "Its name.")
        .field(
            "length_mm", [](const RunOfPiece& run) { return run.run.length; },
            "Sewn length, mm: darts closed, fullness taken off.")
        .field("fullness_mm", &RunOfPiece::fullness_mm,
               "How much longer it lies flat than sewn, mm: what is gathered or eased away.")
        .field(
            "before", [](const RunOfPiece& run) { return run.run.before; },
            "The neighbouring edge at its anticlockwise start.")
        .field(
            "after", [](const RunOfPiece& run) { return run.run.after; }, "The neighbouring edge at its end.")
        .field("darts", &RunOfPiece::darts, "The names of the darts in it, in walking order.");
    const auto figure = [](auto DartFigures::*member) {
        return [member](const DartOfPiece& dart) { return dart.figures.*member; };
    };
    Value<DartOfPiece>(module, "Dart", "A fold of cloth from the outline to a point.")
        .field("name", &DartOfPiece::name, "Its name.")
        .field(
            "mouth",
            [](const DartOfPiece& dart) {
                return std::array{dart.figures.a, dart.figures.b};
            },
            "The two leg ends on the outline, in outline order, mm.")
        .field("point", figure(&DartFigures::point), "Where the stitching ends, mm.")
        .field("pivot", figure(&DartFigures::pivot), "Where the shaping turns, mm.")
        .field(
            "legs_mm",
            [](const DartOfPiece& dart) {
                return std::array{dart.figures.leg_a, dart.figures.leg_b};
            },
            "The lengths of the two legs, mm, in the order of `mouth`.")
        .field("intake_mm", figure(&DartFigures::intake), "The straight distance across the mouth, mm.")
        .field(
            "angle_deg", [](const DartOfPiece& dart) { return degrees(dart.figures.angle_rad); },
            "The dart angle, at the pivot, degrees: what a move keeps.")
        .field(
            "sewn_angle_deg", [](const DartOfPiece& dart) { return degrees(dart.figures.sewn_angle_rad); },
            "The angle at the point, about which it closes as it is sewn, degrees.")
        .field("back_off_mm", figure(&DartFigures::back_off),
               "How far the point stops short of the pivot along the bisector, mm.")
        .field("off_bisector_mm", figure(&DartFigures::off_bisector),
               "Signed distance of the point from the bisector of the dart angle, mm.")
        .field(
            "press", [](const DartOfPiece& dart) { return text_or_none(dart.press); },
            "The edge towards which it is pressed, or None.")
        .field("stitched_mm", &DartOfPiece::stitched_mm,
               "How far a tuck is stitched along its legs from the mouth, mm; None for a dart.");
}

void bind_piece(py::module_& module) {
    py::class_<Piece> piece(module, "Piece",
                            "One shape to cut: a closed outline with its darts, notches and marks.");
    piece.def_readonly("name", &Piece::name, "Its name.")
        .def_readonly("cut", &Piece::cut, "How it is cut, or None if that is not said.")
        .def_property_readonly(
            "worn", [](const Piece& self) { return worn_word(self.worn); },
            "The part of the body that it covers, `front` or `back`, or None if that is not said: left and\n"
            "right are then as drawn.")
        .def_property_readonly(
            "side_up", [](const Piece& self) { return self.side_up == SideUp::right ? "right" : "wrong"; },
            "The side of the cloth that lies up as it is drawn, `right` or `wrong`.")
        .def_readonly("grain", &Piece::grain, "The grain, or None if there is none.")
        .def_readonly("notches", &Piece::notches, "Its notches, in the file's order.")
        .def_readonly("marks", &Piece::marks, "Its lines and drill holes.")
        .def_property_readonly("runs", runs_of_piece, "Its runs, in outline order (anticlockwise).")
        .def_property_readonly("darts", darts_of, "Its darts, in outline order.")
        .def_property_readonly(
            "area_mm2", cloth_area,
            "Cloth: the outline's area with the darts' wedges, drawn to the pivots, taken out, mm^2.")
        .def("run", run_of_piece, py::arg("edge"), "The run of that name. UnknownName.")
        .def("dart", dart_of, py::arg("name"), "The dart of that name. UnknownName.")
        .def("outline_points", outline_points, py::arg("chord_error_mm") = decision_chord_error_mm,
             py::arg("darts_to") = "points",
             "The outline as a closed polygon, anticlockwise, mm; the last point is joined to the first. "
             "Curves lie\n"
             "within the chord error (mm) of it; darts are drawn to their `points` or to their `pivots`.")
        .def("edge_points", edge_points, py::arg("edge"), py::arg("chord_error_mm") = decision_chord_error_mm,
             "A run as it is drawn: the points of each of its stretches, mm, one list between two darts or "
             "joints.")
        .def("__repr__",
             [](const Piece& self) { return "<Piece " + std::string(py::repr(py::str(self.name))) + ">"; });
}

}  // namespace

void bind_pieces(py::module_& module) {
    bind_parts(module);
    bind_runs_and_darts(module);
    bind_piece(module);
}

}  // namespace dartwright::python
