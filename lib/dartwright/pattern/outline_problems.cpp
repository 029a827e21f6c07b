// Covered by tests/drawing/sound_entry_test.cpp and tests/files/pattern_reader_test.cpp.
#include "dartwright/pattern/outline_problems.hpp"

#include <algorithm>

#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/outline_direction.hpp"
#include "dartwright/words/quoted.hpp"

namespace dartwright {

void look_at_dart_name(ProblemList& to, const Step& at, NameTable& darts, const std::string& dart) {
    if (to.name(at, dart) && !darts.add(dart)) to.add(at, named_again("dart", dart));
}

void look_for_pressed(ProblemList& to, const Step& at, const KnownRuns& runs, const std::string& edge) {
    if (!edge.empty()) look_for_edge(to, at, runs, edge);
}

namespace {

void look_at_item(ProblemList& to, const Step& at, const EdgeItem& edge) {
    const Step named = under(at, "edge");
    if (to.name(named, edge.edge)) {
        const std::string what = wanted_instead_of_edge_name(edge.edge);
        if (!what.empty()) to.add(named, in_quotes(edge.edge), what);
    }
    if (const auto* cubic = std::get_if<CubicShape>(&edge.shape))
        to.points(under(at, "curve"), cubic->controls);
    if (const auto* spline = std::get_if<SplineShape>(&edge.shape)) {
        const Step through = under(at, "through");
        to.entries(through, spline->through.size());
        to.points(through, spline->through);
        const std::string what = wanted_of_measured_points(spline->through.size());
        if (!what.empty()) to.add(through, "an empty list", what);
    }
    to.length(under(at, "fullness"), edge.fullness);
}

void look_at_item(ProblemList& to, const Step& at, const DartItem& dart, NameTable& darts) {
    look_at_dart_name(to, under(at, "dart"), darts, dart.name);
    to.point(under(at, "point"), dart.point);
    if (dart.pivot) to.point(under(at, "pivot"), *dart.pivot);
    to.length(under(at, "back_off"), dart.back_off);
    if (dart.legs) {
        const Step legs = under(at, "legs");
        to.points(under(legs, 0), (*dart.legs)[0]);
        to.points(under(legs, 1), (*dart.legs)[1]);
    }
    to.length(under(at, "stitched"), dart.stitched);
}

KnownRuns runs_of_names(ProblemList& to, const Step& items, const Outline& outline, bool is_every_name_read) {
    const std::vector<std::string_view> edges = edges_of(outline);
    if (is_every_name_read) to.add(items, edges_missing(edges.size()));
    const NamedStretches stretches = stretches_of(edges);
    if (!stretches.again.empty()) {
        std::vector<std::size_t> item_of_edge;
        for (std::size_t i = 0; i < outline.items.size(); ++i)
            if (outline.items[i].as_edge()) item_of_edge.push_back(i);
        for (const NameAgain& again : stretches.again) {
            to.item = item_of_edge[again.item];
            const Step at = under(items, *to.item);
            to.add(under(at, "edge"), again.complaint);
        }
        to.item.reset();
    }
    KnownRuns out;
    out.is_sound = is_every_name_read && !edges.empty() && stretches.again.empty();
    for (const std::string_view name : stretches.names) out.names.add(name);
    return out;
}

void look_at_measured_points(ProblemList& to, const Step& items, const Outline& outline) {
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        const EdgeItem* edge = outline.items[i].as_edge();
        const SplineShape* spline = edge ? std::get_if<SplineShape>(&edge->shape) : nullptr;
        if (!spline) continue;
        to.item = i;
        const Step at = under(items, i);
        const Step through = under(at, "through");
        Point last = start_of_item(outline, i);
        for (std::size_t k = 0; k < spline->through.size(); ++k) {
            to.add(under(through, k), measured_point_trouble(last, spline->through[k]));
            last = spline->through[k];
        }
        to.add(under(through, spline->through.size() - 1),
               last_measured_point_trouble(last, outline.items[i].to));
    }
    to.item.reset();
}

// Of an outline that is right so far, save that it may run clockwise.
void look_at_geometry(ProblemList& to, const Step& at, const Outline& outline) {
    if (is_clockwise(outline)) to.add(at, "a clockwise outline", "an anticlockwise one (put_right turns it)");
    const Step items = under(at, "items");
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        to.item = i;
        const Step step = under(items, i);
        const EdgeItem* edge = outline.items[i].as_edge();
        if (edge && edge->fullness != 0)
            to.wanted(under(step, "fullness"),
                      wanted_instead_of_fullness(edge->fullness, length_of_item(outline, i)), edge->fullness);
        const DartItem* dart = outline.items[i].as_dart();
        if (!dart || !dart->stitched) continue;
        const DartFigures figures = figures_of(outline, i);
        to.wanted(under(step, "stitched"),
                  wanted_instead_of_stitched(*dart->stitched, std::min(figures.leg_a, figures.leg_b)),
                  *dart->stitched);
    }
    to.item.reset();
}

}  // namespace

KnownRuns look_at_outline(ProblemList& to, const Step& at, const Outline& outline, NameTable& darts) {
    const std::size_t before = to.problems.size();
    to.point(under(at, "start"), outline.start);
    const Step items = under(at, "items");
    to.entries(items, outline.items.size());
    bool is_every_name_read = true;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        to.item = i;
        const Step step = under(items, i);
        to.point(under(step, "to"), outline.items[i].to);
        if (const EdgeItem* edge = outline.items[i].as_edge()) {
            look_at_item(to, step, *edge);
            is_every_name_read = is_every_name_read && !edge->edge.empty();
        } else {
            look_at_item(to, step, *outline.items[i].as_dart(), darts);
        }
    }
    to.item.reset();
    const KnownRuns found = runs_of_names(to, items, outline, is_every_name_read);
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        const DartItem* dart = outline.items[i].as_dart();
        if (!dart || dart->press.empty()) continue;
        to.item = i;
        const Step step = under(items, i);
        look_for_pressed(to, under(step, "press"), found, dart->press);
    }
    to.item.reset();
    if (to.problems.size() == before) look_at_measured_points(to, items, outline);
    if (to.problems.size() == before) look_at_geometry(to, at, outline);
    return found;
}

}  // namespace dartwright
