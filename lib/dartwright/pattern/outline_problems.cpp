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

// What a first walk along the outline finds, so that nothing is walked again for what no item has, and no
// name is read again that is the same as the one before it.
struct Found {
    std::vector<std::string_view> names;  // of the stretches of one name, in outline order
    std::vector<std::size_t> heads;       // the item with which each begins
    bool is_every_name_read = true;
    bool has_darts = false;
    bool has_splines = false;
    bool has_fullness = false;
};

bool look_at_edge_name(ProblemList& to, const Step& at, const std::string& edge) {
    if (!to.name(at, edge)) return false;
    const std::string what = wanted_instead_of_edge_name(edge);
    if (!what.empty()) to.add(at, in_quotes(edge), what);
    return what.empty();
}

void look_at_shape(ProblemList& to, const Step& at, const Shape& shape) {
    if (const auto* cubic = std::get_if<CubicShape>(&shape)) to.points(under(at, "curve"), cubic->controls);
    const auto* spline = std::get_if<SplineShape>(&shape);
    if (!spline) return;
    const Step through = under(at, "through");
    to.entries(through, spline->through.size());
    to.points(through, spline->through);
    const std::string what = wanted_of_measured_points(spline->through.size());
    if (!what.empty()) to.add(through, "an empty list", what);
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

// The items in order; those of one name that follow each other have one that is looked at once.
class ItemsLook {
  public:
    ItemsLook(ProblemList& to, const Step& items, NameTable& darts) : to_(to), items_(items), darts_(darts) {
        constexpr std::size_t usual = 16;
        found_.names.reserve(usual);
        found_.heads.reserve(usual);
    }

    Found at(const Outline& outline) {
        for (std::size_t i = 0; i < outline.items.size(); ++i) {
            to_.item = i;
            const Step step = under(items_, i);
            const OutlineItem& item = outline.items[i];
            to_.point(under(step, "to"), item.to);
            if (const EdgeItem* edge = item.as_edge()) {
                look_at(step, *edge, i);
            } else {
                found_.has_darts = true;
                look_at_item(to_, step, *item.as_dart(), darts_);
            }
        }
        to_.item.reset();
        return std::move(found_);
    }

  private:
    void look_at(const Step& at, const EdgeItem& edge, std::size_t item) {
        const bool is_new = found_.names.empty() || found_.names.back() != edge.edge;
        if (is_new) {
            found_.names.emplace_back(edge.edge);
            found_.heads.push_back(item);
            found_.is_every_name_read = found_.is_every_name_read && !edge.edge.empty();
        }
        if (is_new || !is_name_right_) is_name_right_ = look_at_edge_name(to_, under(at, "edge"), edge.edge);
        if (!std::holds_alternative<StraightShape>(edge.shape)) look_at_shape(to_, at, edge.shape);
        found_.has_splines = found_.has_splines || std::holds_alternative<SplineShape>(edge.shape);
        found_.has_fullness = found_.has_fullness || edge.fullness != 0;
        to_.length(under(at, "fullness"), edge.fullness);
    }

    ProblemList& to_;
    const Step& items_;
    NameTable& darts_;
    bool is_name_right_ = false;
    Found found_;
};

KnownRuns runs_of_names(ProblemList& to, const Step& items, const Found& found) {
    if (found.is_every_name_read) to.add(items, edges_missing(found.names.size()));
    const NamedStretches stretches = stretches_of(found.names);
    for (const NameAgain& again : stretches.again) {
        to.item = found.heads[again.item];
        const Step at = under(items, *to.item);
        to.add(under(at, "edge"), again.complaint);
    }
    to.item.reset();
    KnownRuns out;
    out.is_sound = found.is_every_name_read && !found.names.empty() && stretches.again.empty();
    for (const std::string_view name : stretches.names) out.names.add(name);
    return out;
}

void look_at_press_sides(ProblemList& to, const Step& items, const Outline& outline, const KnownRuns& runs) {
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        const DartItem* dart = outline.items[i].as_dart();
        if (!dart || dart->press.empty()) continue;
        to.item = i;
        const Step step = under(items, i);
        look_for_pressed(to, under(step, "press"), runs, dart->press);
    }
    to.item.reset();
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

// Gathers and stitched lengths beside the lengths that bound them.
void look_at_bounded_lengths(ProblemList& to, const Step& items, const Outline& outline) {
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
    const Found found = ItemsLook(to, items, darts).at(outline);
    const KnownRuns runs = runs_of_names(to, items, found);
    if (found.has_darts) look_at_press_sides(to, items, outline, runs);
    if (found.has_splines && to.problems.size() == before) look_at_measured_points(to, items, outline);
    if (to.problems.size() != before) return runs;
    // What follows asks for an outline that is right so far, save that it may run clockwise.
    if (is_clockwise(outline)) to.add(at, "a clockwise outline", "an anticlockwise one (put_right turns it)");
    if (found.has_fullness || found.has_darts) look_at_bounded_lengths(to, items, outline);
    return runs;
}

}  // namespace dartwright
