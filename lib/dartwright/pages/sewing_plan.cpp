#include "dartwright/pages/sewing_plan.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "dartwright/checks/walk.hpp"
#include "dartwright/checks/walked_seam.hpp"
#include "dartwright/darts/cap.hpp"
#include "dartwright/drawing/fullness_words.hpp"
#include "dartwright/drawing/piece_words.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/press_name.hpp"
#include "dartwright/pattern/run.hpp"
#include "dartwright/pattern/sound_entry.hpp"

namespace dartwright {
namespace {

int times_made_up(const Piece& piece) {
    if (!piece.cut) return 1;
    return piece.cut->quantity << fold_edges(piece).size();
}

double where_shortening_begins(double length_mm) {
    return length_mm - std::min(shortening_over_mm, length_mm / 2);
}

PlannedDart planned(const Piece& piece, std::size_t item, const Tolerances& tolerances) {
    const DartItem& dart = *piece.outline.items[item].as_dart();
    const DartFigures figures = figures_of(piece.outline, item);
    PlannedDart out;
    out.kind = dart.stitched ? PlannedDart::Kind::tuck : PlannedDart::Kind::dart;
    out.piece = piece.name;
    out.dart = dart.name;
    out.times = times_made_up(piece);
    out.intake_mm = figures.intake;
    out.length_mm = dart.stitched.value_or((figures.leg_a + figures.leg_b) / 2);
    out.shorten_from_mm = dart.stitched ? out.length_mm : where_shortening_begins(out.length_mm);
    out.press = press_name(piece, item);
    if (const auto cap = cap_if_any(piece, item, tolerances)) out.after = cap->beside;
    return out;
}

PlannedDart planned(const Piece& piece, const DoubleDart& dart) {
    const std::array<double, 4> legs = leg_lengths(dart);
    const double from_leg = (legs[0] + legs[1]) / 2;
    const double to_leg = (legs[2] + legs[3]) / 2;
    PlannedDart out;
    out.kind = PlannedDart::Kind::two_points;
    out.piece = piece.name;
    out.dart = dart.name;
    out.times = times_made_up(piece);
    out.intake_mm = intake_of(dart);
    out.length_mm = from_leg + to_leg;
    out.shorten_from_mm = where_shortening_begins(std::min(from_leg, to_leg));
    out.press = press_name(piece, dart);
    return out;
}

// One after another in the given order, each as soon as those that it waits for have come. Two that wait for
// each other come in the given order.
template <class Item, class Waits>
std::vector<Item> in_turn(std::vector<Item> items, const Waits& waits_for) {
    std::vector<Item> out;
    while (!items.empty()) {
        auto next = std::find_if(items.begin(), items.end(), [&](const Item& item) {
            return std::none_of(items.begin(), items.end(),
                                [&](const Item& other) { return &other != &item && waits_for(item, other); });
        });
        if (next == items.end()) next = items.begin();
        out.push_back(std::move(*next));
        items.erase(next);
    }
    return out;
}

std::vector<PlannedDart> darts_of(const Piece& piece, const Tolerances& tolerances) {
    std::vector<PlannedDart> darts;
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        if (piece.outline.items[i].as_dart()) darts.push_back(planned(piece, i, tolerances));
    }
    for (const DoubleDart& dart : piece.double_darts) darts.push_back(planned(piece, dart));
    return in_turn(std::move(darts), [](const PlannedDart& dart, const PlannedDart& other) {
        return std::find(dart.after.begin(), dart.after.end(), other.dart) != dart.after.end();
    });
}

/// The end of a side, by the edge that it runs into.
std::string end_of_side(const Pattern& pattern, const SeamSide& side, SeamEnd end) {
    const SeamPart& part = end == SeamEnd::start ? side.front() : side.back();
    const std::vector<Run> runs = runs_of(piece_named(pattern, part.piece).outline);
    const Run& run = run_named(runs, part.edge, part.piece);
    const RunEnd from = end_named(run, part.from).value_or(RunEnd::start);
    const bool is_from = (from == RunEnd::start) == (end == SeamEnd::start);
    return name_of_end(run, is_from ? RunEnd::start : RunEnd::end);
}

/// What both sides call their end, else what one that has a name calls it.
std::string end_of_seam(const Pattern& pattern, const Seam& seam, SeamEnd end) {
    for (const SeamSide& side : seam.joins) {
        const std::string name = end_of_side(pattern, side, end);
        if (name != "start" && name != "end" && !name.empty()) return "the " + name + " end";
    }
    return end == SeamEnd::start ? "one end" : "the other end";
}

class EaseOfSeam {
  public:
    EaseOfSeam(const Pattern& pattern, const Seam& seam) : pattern_(pattern), seam_(seam) {}

    void add(PlannedSeam& out, const SeamWalk& walk) const {
        double reached = 0;
        std::string from = end_of_seam(pattern_, seam_, SeamEnd::start);
        for (const WalkRow& row : walk.rows) {
            if (!row.difference) continue;
            if (row.mark == WalkMark::notch) ++out.notches;
            const std::string to = met(row, out.notches);
            const double eased = (*row.difference - reached) * (walk.ease < 0 ? -1 : 1);
            if (walk.ease != 0 && eased >= least_fullness_mm)
                out.eased.push_back({from, to, walk.ease > 0 ? 2 : 1, eased});
            reached = *row.difference;
            from = to;
        }
        if (out.eased.empty() && std::abs(walk.ease) >= least_fullness_mm) out.eased.push_back(whole(walk));
    }

    EasedStretch whole(const SeamWalk& walk) const {
        return {end_of_seam(pattern_, seam_, SeamEnd::start), end_of_seam(pattern_, seam_, SeamEnd::far),
                walk.ease > 0 ? 2 : 1, std::abs(walk.ease)};
    }

  private:
    std::string met(const WalkRow& row, int notches) const {
        switch (row.mark) {
            case WalkMark::start:
                return end_of_seam(pattern_, seam_, SeamEnd::start);
            case WalkMark::end:
                return end_of_seam(pattern_, seam_, SeamEnd::far);
            case WalkMark::notch:
                return "the " + ordinal_words(static_cast<std::size_t>(notches)) + " notch";
            case WalkMark::dart:
                return row.name;
            case WalkMark::part_corner:
                break;
        }
        return "the seam of " + row.name;
    }

    const Pattern& pattern_;
    const Seam& seam_;
};

/// How often a seam is in the garment: as often as the piece that comes least often, of those whose number is
/// known. One that joins a piece to its own mirror image takes two of it.
int times_sewn(const Pattern& pattern, const Seam& seam) {
    std::map<std::string, std::array<bool, 2>> images;
    for (const SeamSide& side : seam.joins)
        for (const SeamPart& part : side) images[part.piece][part.mirrored ? 1 : 0] = true;
    std::optional<int> least;
    for (const auto& [name, has] : images) {
        const Piece& piece = piece_named(pattern, name);
        if (!piece.cut) continue;
        const int each = times_made_up(piece);
        const int times = has[0] && has[1] ? std::max(1, each / 2) : each;
        least = std::min(least.value_or(times), times);
    }
    return least.value_or(1);
}

/// What a check finds wrong with a seam, as far as it bears on its ease.
SeamIs truth_of(const std::vector<Finding>& findings, const std::string& seam) {
    SeamIs is = SeamIs::told;
    for (const Finding& finding : findings) {
        if (finding.seam != seam || finding.severity != Severity::fault) continue;
        if (finding.check == "seam-length") return SeamIs::wrong_in_length;
        if (finding.check.rfind("notch-", 0) == 0) is = SeamIs::wrong_in_notches;
    }
    return is;
}

PlannedSeam planned(const Pattern& pattern, const Seam& seam, const std::vector<Finding>& findings) {
    const SeamWalk walk = walk_seam(pattern, seam.name);
    PlannedSeam out;
    out.seam = seam.name;
    out.sides = walk.side_names;
    out.lengths_mm = walk.lengths;
    out.ease_mm = walk.ease;
    out.difference_mm = walk.difference;
    out.times = times_sewn(pattern, seam);
    out.is = truth_of(findings, seam.name);
    const EaseOfSeam ease(pattern, seam);
    ease.add(out, walk);
    if (out.is != SeamIs::told) out.eased.clear();
    if (out.is == SeamIs::wrong_in_notches && std::abs(walk.ease) >= least_fullness_mm)
        out.eased.push_back(ease.whole(walk));
    return out;
}

bool has_piece(const SeamSide& side, const std::string& piece) {
    return std::any_of(side.begin(), side.end(), [&](const SeamPart& part) { return part.piece == piece; });
}

// Whether the seam joins two pieces that are both in one side of the other: it ends inside that side.
bool ends_inside(const Seam& seam, const Seam& other) {
    for (const SeamSide& side : other.joins) {
        if (side.size() < 2) continue;
        const bool has_first = has_piece(side, seam.joins[0].front().piece);
        if (has_first && has_piece(side, seam.joins[1].front().piece)) return true;
    }
    return false;
}

enum class Turn { shoulder, other, side };
Turn turn_of(const Seam& seam) {
    const auto says = [&](const char* word) { return seam.name.find(word) != std::string::npos; };
    if (says("shoulder") || says("Shoulder")) return Turn::shoulder;
    return says("side") || says("Side") ? Turn::side : Turn::other;
}

/// Which of the plan's gathers and eases lie in the edges of a seam.
std::vector<std::size_t> fullness_in(const std::vector<PlannedFullness>& all, const Seam& seam) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto is_there = [&](const SeamSide& side) {
            return std::any_of(side.begin(), side.end(), [&](const SeamPart& part) {
                return part.piece == all[i].piece && part.edge == all[i].stretch.edge;
            });
        };
        if (is_there(seam.joins[0]) || is_there(seam.joins[1])) found.push_back(i);
    }
    return found;
}

std::vector<PlannedSeam> seams_of(const Pattern& pattern, const std::vector<Finding>& findings,
                                  SewingPlan& plan) {
    std::vector<Seam> seams = pattern.seams;
    std::stable_sort(seams.begin(), seams.end(),
                     [](const Seam& a, const Seam& b) { return turn_of(a) < turn_of(b); });
    seams = in_turn(std::move(seams),
                    [](const Seam& seam, const Seam& other) { return ends_inside(other, seam); });
    std::vector<PlannedSeam> out;
    for (const Seam& seam : seams) {
        try {
            out.push_back(planned(pattern, seam, findings));
            out.back().fullness = fullness_in(plan.fullness, seam);
        } catch (const Impossible& refused) {
            plan.notes.push_back("the seam \"" + seam.name + "\" is left out: " + refused.what());
        }
    }
    return out;
}

PlannedTracing tracing_of(const Piece& piece) {
    PlannedTracing out{piece.name, piece.cut ? cut_words(*piece.cut) : "cutting not decided", {}};
    out.what.push_back("the stitching line of every edge that is sewn");
    for (const OutlineItem& item : piece.outline.items) {
        if (item.as_dart()) out.what.push_back(item.as_dart()->name + ": both legs and the point");
    }
    for (const DoubleDart& dart : piece.double_darts)
        out.what.push_back(dart.name + ": both points and where it is widest");
    if (!piece.notches.empty()) {
        out.what.push_back(std::to_string(piece.notches.size()) +
                           (piece.notches.size() == 1 ? " notch" : " notches"));
    }
    for (const Mark& mark : piece.marks) {
        const bool is_drill = std::holds_alternative<DrillMark>(mark.what);
        // A line that darts or seams divide is one line to whoever carries it over.
        const bool is_said = !is_drill && !mark.name.empty() &&
                             std::find(out.what.begin(), out.what.end(), mark.name) != out.what.end();
        if (is_said) continue;
        out.what.push_back(mark.name.empty() ? (is_drill ? "a drill mark" : "a line") : mark.name);
    }
    if (piece.grain) out.what.push_back("the grain");
    return out;
}

}  // namespace

SewingPlan sewing_plan(const Pattern& pattern) {
    const SoundEntry sound(pattern);
    return sewing_plan(pattern, check(pattern));
}

SewingPlan sewing_plan(const Pattern& pattern, const CheckReport& report) {
    const SoundEntry sound(pattern);
    SewingPlan plan;
    const Tolerances tolerances = tolerances_of(pattern);
    for (const Piece& piece : pattern.pieces) {
        plan.tracings.push_back(tracing_of(piece));
        for (PlannedDart& dart : darts_of(piece, tolerances)) plan.darts.push_back(std::move(dart));
        for (FullStretch& stretch : full_stretches(piece, runs_of(piece.outline)))
            plan.fullness.push_back({piece.name, times_made_up(piece), std::move(stretch)});
    }
    plan.seams = seams_of(pattern, report.findings, plan);
    for (const PlannedDart& dart : plan.darts) {
        if (dart.press.empty())
            plan.notes.push_back("it is not decided which way \"" + dart.dart + "\" of \"" + dart.piece +
                                 "\" is pressed");
    }
    return plan;
}

}  // namespace dartwright
