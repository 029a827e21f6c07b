#include "dartwright/drawing/sewing_plan.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/checks/walk.hpp"
#include "dartwright/darts/cap.hpp"
#include "dartwright/drawing/piece_words.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/run.hpp"
#include "dartwright/pattern/sound_entry.hpp"

namespace dartwright {
namespace {

// Ease of less than this between two notches is a rounding of the draft, mm.
constexpr double least_ease_mm = 0.5;

int times_made_up(const Piece& piece) {
    if (!piece.cut) return 1;
    return piece.cut->fold.empty() ? piece.cut->quantity : 2 * piece.cut->quantity;
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
    out.press = dart.press;
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
    out.press = dart.press;
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

const char* ordinal(int number) {
    static constexpr std::array<const char*, 9> words{"first", "second",  "third",  "fourth", "fifth",
                                                      "sixth", "seventh", "eighth", "ninth"};
    const auto index = static_cast<std::size_t>(number - 1);
    return index < words.size() ? words[index] : "next";
}

std::string met(const WalkRow& row, int notches) {
    switch (row.mark) {
        case WalkMark::start:
            return "the start";
        case WalkMark::end:
            return "the end";
        case WalkMark::notch:
            return "the " + std::string(ordinal(notches)) + " notch";
        case WalkMark::dart:
            return row.name;
        case WalkMark::part_corner:
            break;
    }
    return "the seam of " + row.name;
}

void add_rows(PlannedSeam& seam, const SeamWalk& walk) {
    double reached = 0;
    std::string from = "the start";
    for (const WalkRow& row : walk.rows) {
        if (!row.difference) continue;
        if (row.mark == WalkMark::notch) ++seam.notches;
        const std::string to = met(row, seam.notches);
        const double eased = *row.difference - reached;
        if (std::abs(eased) >= least_ease_mm)
            seam.eased.push_back({from, to, eased > 0 ? 2 : 1, std::abs(eased)});
        reached = *row.difference;
        from = to;
    }
}

bool is_mirrored(const Seam& seam) {
    const auto has_mirrored = [](const SeamSide& side) {
        return std::any_of(side.begin(), side.end(), [](const SeamPart& part) { return part.mirrored; });
    };
    return has_mirrored(seam.joins[0]) || has_mirrored(seam.joins[1]);
}

PlannedSeam planned(const Pattern& pattern, const Seam& seam) {
    const SeamWalk walk = walk_seam(pattern, seam.name);
    PlannedSeam out;
    out.seam = seam.name;
    out.sides = walk.side_names;
    out.lengths_mm = walk.lengths;
    out.ease_mm = walk.ease;
    if (!is_mirrored(seam)) {
        for (const SeamSide& side : seam.joins) {
            for (const SeamPart& part : side)
                out.times = std::max(out.times, times_made_up(piece_named(pattern, part.piece)));
        }
    }
    add_rows(out, walk);
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

std::vector<PlannedSeam> seams_of(const Pattern& pattern, std::vector<std::string>& notes) {
    std::vector<Seam> seams = pattern.seams;
    std::stable_sort(seams.begin(), seams.end(),
                     [](const Seam& a, const Seam& b) { return turn_of(a) < turn_of(b); });
    seams = in_turn(std::move(seams),
                    [](const Seam& seam, const Seam& other) { return ends_inside(other, seam); });
    std::vector<PlannedSeam> out;
    for (const Seam& seam : seams) {
        try {
            out.push_back(planned(pattern, seam));
        } catch (const Impossible& refused) {
            notes.push_back("the seam \"" + seam.name + "\" is left out: " + refused.what());
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
        out.what.push_back(mark.name.empty() ? (is_drill ? "a drill mark" : "a line") : mark.name);
    }
    if (piece.grain) out.what.push_back("the grain");
    return out;
}

}  // namespace

SewingPlan sewing_plan(const Pattern& pattern) {
    const SoundEntry sound(pattern);
    SewingPlan plan;
    const Tolerances tolerances = tolerances_of(pattern);
    for (const Piece& piece : pattern.pieces) {
        plan.tracings.push_back(tracing_of(piece));
        for (PlannedDart& dart : darts_of(piece, tolerances)) plan.darts.push_back(std::move(dart));
    }
    plan.seams = seams_of(pattern, plan.notes);
    for (const PlannedDart& dart : plan.darts) {
        if (dart.press.empty())
            plan.notes.push_back("it is not decided which way \"" + dart.dart + "\" of \"" + dart.piece +
                                 "\" is pressed");
    }
    return plan;
}

}  // namespace dartwright
