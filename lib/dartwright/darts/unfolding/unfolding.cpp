#include "dartwright/darts/unfolding/unfolding.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/press.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {
namespace {

double distance_off_line(const Unfolding& u, const std::vector<std::size_t>& items) {
    double most = 0;
    const FlatOutline flat = flat_outline(u.half.outline, DartsDrawn::to_points, decision_chord_error_mm);
    for (std::size_t i = 0; i < flat.points.size(); ++i) {
        if (std::find(items.begin(), items.end(), flat.item_of_side[i]) == items.end()) continue;
        most = std::max(most, std::abs(cross(u.line.along, flat.points[i] - u.line.at)));
    }
    return most;
}

// The half lies to the left of the fold as the outline walks it, and so on the left side if the arrow points
// that way.
void name_sides(Unfolding& u) {
    Vector up{0, 1};
    if (u.half.grain) up = u.half.grain->to - u.half.grain->from;
    double forward = dot(up, u.line.along);
    // An arrow square to the fold says nothing of its ends.
    if (std::abs(forward) <= 1e-9 * norm(up)) forward = u.line.along.y != 0 ? u.line.along.y : u.line.along.x;
    u.drawn_side = forward > 0 ? "left" : "right";
    u.added_side = forward > 0 ? "right" : "left";
}

void close_outline(Unfolding& u, double gap_mm) {
    const double gap = gap_of(u.half.outline);
    if (gap > gap_mm) {
        throw Impossible(
            "the outline of " + quoted(u.half.name) + " does not close, by " + difference_told(gap),
            "close it first");
    }
    u.half.outline = with_gap_closed(u.half.outline);
}

const Run& fold_run(const Unfolding& u) {
    const Run& run = run_named(u.half_runs, u.fold, u.half.name);
    if (!run.darts.empty()) {
        throw Impossible("a dart stands in the fold " + quoted(u.fold), "move it out of the fold first");
    }
    if (u.half_runs.size() < 2) throw Impossible("the fold is the whole outline", "name the edges beside it");
    return run;
}

// The items of the half without the fold, from the fold's end round to its start.
std::vector<OutlineItem> items_of_half(const Unfolding& u) {
    const Run& fold = *find_run(u.half_runs, u.fold);
    const std::vector<OutlineItem>& items = u.half.outline.items;
    std::vector<OutlineItem> out;
    for (std::size_t i = (fold.items.back() + 1) % items.size(); i != fold.items.front();
         i = (i + 1) % items.size()) {
        out.push_back(items[i]);
    }
    return out;
}

Outline named(const Unfolding& u, Half half, Outline outline) {
    for (OutlineItem& item : outline.items) {
        if (EdgeItem* edge = item.as_edge()) edge->edge = u.name(half, edge->edge);
        if (DartItem* dart = item.as_dart()) dart->name = u.name(half, dart->name);
    }
    return outline;
}

// How the darts of the half are pressed, told for the whole.
class Presses {
  public:
    Presses(const Unfolding& u, const Outline& whole) : u_(u), whole_(whole) {
        const std::vector<OutlineItem> items = items_of_half(u);
        const auto is_edge = [](const OutlineItem& item) { return item.as_edge() != nullptr; };
        first_edge_ = std::find_if(items.begin(), items.end(), is_edge)->as_edge()->edge;
        last_edge_ = std::find_if(items.rbegin(), items.rend(), is_edge)->as_edge()->edge;
    }

    std::string of(std::size_t item_in_whole, const std::string& dart_of_half, Half half) const {
        const std::size_t in_half = *find_dart(u_.half, dart_of_half);
        const std::string& old = u_.half.outline.items[in_half].as_dart()->press;
        if (old.empty()) return "";
        const double nearer = lead_after_mm(u_.half.outline, in_half, old);
        const Half other = half == Half::drawn ? Half::added : Half::drawn;
        const std::string beyond = u_.name(other, nearer >= 0 ? last_edge_ : first_edge_);
        if (old == u_.fold) return beyond;
        const std::string same = u_.name(half, old);
        if (nearer == 0) return same;
        const double nearer_in_whole = lead_after_mm(whole_, item_in_whole, same);
        const bool is_as_it_was =
            (nearer > 0) == (half == Half::drawn ? nearer_in_whole > 0 : nearer_in_whole < 0);
        return is_as_it_was ? same : beyond;
    }

  private:
    const Unfolding& u_;
    const Outline& whole_;
    std::string first_edge_;
    std::string last_edge_;
};

void press_darts(Outline& whole, const Unfolding& u) {
    const Presses presses(u, whole);
    const std::size_t of_half = whole.items.size() / 2;
    std::vector<std::string> chosen(whole.items.size());
    for (std::size_t i = 0; i < whole.items.size(); ++i) {
        const DartItem* dart = whole.items[i].as_dart();
        if (!dart) continue;
        const Half half = i < of_half ? Half::drawn : Half::added;
        chosen[i] = presses.of(i, dart->name.substr(u.side(half).size() + 1), half);
    }
    for (std::size_t i = 0; i < whole.items.size(); ++i) {
        if (DartItem* dart = whole.items[i].as_dart()) dart->press = chosen[i];
    }
}

}  // namespace

Unfolding unfolding_of(const Piece& piece, const Tolerances& tolerances, Notes notes) {
    if (!piece.cut || piece.cut->fold.empty())
        throw Impossible(quoted(piece.name) + " is not cut on a fold",
                         "only a piece on the fold can be opened");
    if (!piece.cut->second_fold.empty()) {
        throw Impossible(quoted(piece.name) + " has two folds, and opening " + quoted(piece.cut->fold) +
                             " would leave " + quoted(piece.cut->second_fold) + " in two halves",
                         "open it on paper along both, or give the piece one fold");
    }
    Unfolding u;
    u.half = piece;
    u.fold = piece.cut->fold;
    close_outline(u, tolerances.gap_mm);
    u.half_runs = runs_of(u.half.outline);
    const Run& fold = fold_run(u);
    u.from = start_of_item(u.half.outline, fold.items.front());
    u.to = u.half.outline.items[fold.items.back()].to;
    if (u.from == u.to) throw Impossible("the fold " + quoted(u.fold) + " has no length", "draw it first");
    u.line = {u.from, unit(u.to - u.from)};
    const double off = distance_off_line(u, fold.items);
    if (off > tolerances.fold_mm) {
        throw Impossible("the fold " + quoted(u.fold) + " is not straight, by " + difference_told(off),
                         "draw it straight first");
    }
    if (off > 1e-6)
        notes.push_back("the fold was " + difference_told(off, 2) + " off straight; its ends were kept");
    name_sides(u);
    return u;
}

bool is_left_on_right(Worn worn, SideUp side_up) {
    return (worn == Worn::front) == (side_up == SideUp::right);
}

void name_as_worn(Unfolding& u, Worn worn, SideUp side_up) {
    if (is_left_on_right(worn, side_up)) std::swap(u.drawn_side, u.added_side);
}

Outline unfolded_outline(const Unfolding& u) {
    Outline half{u.to, items_of_half(u)};
    Outline added = named(u, Half::added, mirrored(u.line, half));
    Outline whole = named(u, Half::drawn, half);
    // The mirror leaves the ends of the fold where they are but for rounding.
    added.items.back().to = u.to;
    whole.items.insert(whole.items.end(), added.items.begin(), added.items.end());
    press_darts(whole, u);
    return whole;
}

std::string end_in_whole(const Unfolding& u, Half half, const std::string& edge, const std::string& from) {
    const Run* run = find_run(u.half_runs, edge);
    const Run* whole = find_run(u.whole_runs, u.name(half, edge));
    if (!run || !whole) return "";
    const auto end = end_named(*run, from);
    if (!end) return "";
    const bool is_start = (*end == RunEnd::start) == (half == Half::drawn);
    return name_of_end(*whole, is_start ? RunEnd::start : RunEnd::end);
}

}  // namespace dartwright
