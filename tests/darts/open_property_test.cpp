// What unfolding gives, over generated halves: twice the half, alike on both sides.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/checks/check.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/replay.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pattern/mirrored.hpp"
#include "support/evenly.hpp"
#include "support/generated_half.hpp"
#include "support/shape_laws.hpp"

namespace dartwright::testing {
namespace {

struct Opened {
    Pattern half;
    OpenResult result;
    const Piece& half_piece() const { return half.pieces[0]; }
    const Piece& whole() const { return result.pattern.pieces[0]; }
};

OpenResult opened_or_discarded(const Pattern& half) {
    try {
        return open(half, {"half"});
    } catch (const Impossible&) {
        RC_DISCARD("the dart's wedge leaves the generated half");
    }
}

Opened any_opened() {
    Opened out;
    out.half = any_half();
    out.result = opened_or_discarded(out.half);
    return out;
}

double size_of(const Piece& piece) {
    double around = 0;
    for (const auto& run : runs_of(piece.outline)) around += run.length;
    return around;
}

RC_GTEST_PROP(OpenGives, TwiceTheHalf, ()) {
    const Opened o = any_opened();
    RC_ASSERT(std::abs(cloth_area(o.whole()) - 2 * cloth_area(o.half_piece())) <=
              1e-10 * cloth_area(o.whole()));
    const auto half = runs_of(o.half_piece().outline);
    const auto whole = runs_of(o.whole().outline);
    RC_ASSERT(whole.size() == 2 * (half.size() - 1));
    for (const auto& run : half) {
        if (run.edge == "fold") continue;
        for (const char* side : {"left ", "right "}) {
            const auto* same = find_run(whole, side + run.edge);
            RC_ASSERT(same != nullptr);
            RC_ASSERT(std::abs(same->length - run.length) <= length_rounding(run.length));
        }
    }
    RC_ASSERT(o.whole().cut->quantity == 1);
    RC_ASSERT(o.whole().cut->fold.empty());
}

RC_GTEST_PROP(OpenGives, BothDartsAsTheOneWas, ()) {
    const Opened o = any_opened();
    const DartFigures was = figures_of(o.half_piece().outline, *find_dart(o.half_piece(), "dart"));
    for (const char* name : {"left dart", "right dart"}) {
        const DartFigures is = figures_of(o.whole().outline, dart_named(o.whole(), name));
        RC_ASSERT(std::abs(is.angle_rad - was.angle_rad) <= 1e-12);
        RC_ASSERT(std::abs(is.intake - was.intake) <= rounding_mm);
        RC_ASSERT(std::abs(is.back_off - was.back_off) <= rounding_mm);
        RC_ASSERT(std::abs(is.leg_a + is.leg_b - was.leg_a - was.leg_b) <= rounding_mm);
    }
}

// Of each left edge the mirror image in the fold is the right edge walked the other way.
RC_GTEST_PROP(OpenGives, AMirrorImage, ()) {
    const Opened o = any_opened();
    const auto runs = runs_of(o.whole().outline);
    const double tolerance = 4e-9 * size_of(o.whole()) + rounding_mm;
    for (const auto& left : runs) {
        if (left.edge.find("left ") != 0) continue;
        const auto& right = *find_run(runs, "right " + left.edge.substr(5));
        for (int k = 0; k < 9; ++k) {
            const double share = (k + off_joints) / 9;
            const Point p = place_on_run(o.whole().outline, left, share * left.length).point;
            const Point q = place_on_run(o.whole().outline, right, (1 - share) * right.length).point;
            RC_ASSERT(distance(Point{-p.x, p.y}, q) <= tolerance);
        }
    }
}

// A notch, or the end of a stretch of allowance, by its place in the plane.
Point place_of(const Piece& piece, const std::string& edge, const std::string& from, double at) {
    const auto runs = runs_of(piece.outline);
    const auto& run = *find_run(runs, edge);
    const auto end = end_named(run, from);
    RC_ASSERT(end.has_value());
    return place_on_run(piece.outline, run, *end == RunEnd::start ? at : run.length - at).point;
}

RC_GTEST_PROP(OpenKeeps, NotchesAndAllowancesOnBothHalves, ()) {
    const Opened o = any_opened();
    const double tolerance = 4e-9 * size_of(o.whole()) + rounding_mm;
    RC_ASSERT(o.whole().notches.size() == 2 * o.half_piece().notches.size());
    for (std::size_t i = 0; i < o.whole().notches.size(); ++i) {
        const Notch& half = o.half_piece().notches[i / 2];
        const Notch& whole = o.whole().notches[i];
        Point was = place_of(o.half_piece(), half.edge, half.from, half.at);
        if (i % 2 == 1) was.x = -was.x;
        RC_ASSERT(distance(was, place_of(o.whole(), whole.edge, whole.from, whole.at)) <= tolerance);
    }
    RC_ASSERT(o.whole().allowance.size() == 2 * o.half_piece().allowance.size());
    for (std::size_t i = 0; i < o.whole().allowance.size(); ++i) {
        const auto& [half_edge, half] = o.half_piece().allowance[i / 2];
        const auto& [whole_edge, whole] = o.whole().allowance[i];
        const AllowanceStretch& was = std::get<std::vector<AllowanceStretch>>(half)[0];
        const AllowanceStretch& is = std::get<std::vector<AllowanceStretch>>(whole)[0];
        Point end = place_of(o.half_piece(), half_edge, was.from, was.to);
        if (i % 2 == 1) end.x = -end.x;
        RC_ASSERT(distance(end, place_of(o.whole(), whole_edge, is.from, is.to)) <= tolerance);
    }
}

RC_GTEST_PROP(OpenGives, AFileThatCanBeReadAndReplayed, ()) {
    const Opened o = any_opened();
    const std::string text = write_pattern(o.result.pattern);
    RC_ASSERT(write_pattern(read_pattern(text, "opened.json")) == text);
    RC_ASSERT(write_pattern(replay(o.half, o.result.pattern.made).pattern) == text);
}

// What was pressed towards the fold is pressed across it now, and one half as the other.
RC_GTEST_PROP(OpenPresses, BothDartsAlike, ()) {
    const Opened o = any_opened();
    const auto press = [&](const char* name) {
        return o.whole().outline.items[dart_named(o.whole(), name)].as_dart()->press;
    };
    const std::string left = press("left dart");
    const std::string right = press("right dart");
    const auto runs = runs_of(o.whole().outline);
    RC_ASSERT(find_run(runs, left) != nullptr);
    const bool is_own = left.find("left ") == 0;
    RC_ASSERT(right == (is_own ? "right " + left.substr(5) : "left " + left.substr(6)));
    const std::string& old =
        o.half_piece().outline.items[*find_dart(o.half_piece(), "dart")].as_dart()->press;
    if (old == "fold") RC_ASSERT(!is_own);
}

// Turned, shifted or reflected, the half opens to the whole turned, shifted or reflected; what was left is
// right when the piece lies the other way up.
RC_GTEST_PROP(OpenCommutes, WithTurningShiftingAndReflecting, ()) {
    const Opened o = any_opened();
    const Similarity lie{real_between(-3, 3),
                         1,
                         *rc::gen::arbitrary<bool>(),
                         {real_between(-500, 500), real_between(-500, 500)}};
    Pattern other = o.half;
    other.pieces[0] = image(lie, other.pieces[0]);
    const Piece there = open(other, {"half"}).pattern.pieces[0];
    const auto runs = runs_of(o.whole().outline);
    const auto runs_there = runs_of(there.outline);
    for (const auto& run : runs) {
        std::string name = run.edge;
        const bool is_left = name.find("left ") == 0;
        if (lie.is_reflected) name = is_left ? "right " + name.substr(5) : "left " + name.substr(6);
        const auto* same = find_run(runs_there, name);
        RC_ASSERT(same != nullptr);
        for (int k = 0; k < 5; ++k) {
            const double share = (k + off_joints) / 5;
            const double share_there = lie.is_reflected ? 1 - share : share;
            const Point p = image(lie, place_on_run(o.whole().outline, run, share * run.length).point);
            const Point q = place_on_run(there.outline, *same, share_there * same->length).point;
            RC_ASSERT(distance(p, q) <= 8e-9 * size_of(there) + 4 * rounding_mm);
        }
    }
}

// A dart of one half opens in an edge of the other, across the middle, and nothing is lost.
RC_GTEST_PROP(OpenLets, ADartCrossTheMiddle, ()) {
    const Opened o = any_opened();
    const auto runs = runs_of(o.whole().outline);
    std::vector<std::size_t> right;
    for (std::size_t i = 0; i < runs.size(); ++i) {
        if (runs[i].edge.find("right ") == 0) right.push_back(i);
    }
    const auto& run = runs[right[any_index_of(right)]];
    const std::string place =
        to_text(Place{run.edge, {real_between(0.2, 0.8), true}, name_of_end(run, RunEnd::start)});
    const PivotRequest request{"half", "left dart", place, {}, {}, "", "new", "", ""};
    Piece after;
    try {
        after = pivot(o.result.pattern, request).pattern.pieces[0];
    } catch (const Impossible&) {
        RC_DISCARD("not in sight of the pivot, or beside a mouth");
    }
    expect_same_runs(o.whole(), after);
    RC_ASSERT(std::abs(cloth_area(o.whole()) - cloth_area(after)) <= 1e-10 * cloth_area(after));
}

// The wearer's left is on the same hand whichever side of the cloth lies up: a piece drawn the other way
// round, with its other side up, has each name at the mirror image of its place.
RC_GTEST_PROP(OpenGives, TheWearersSidesWhicheverSideLiesUp, ()) {
    Pattern half = any_half();
    half.pieces[0].worn = *rc::gen::arbitrary<bool>() ? Worn::front : Worn::back;
    half.pieces[0].side_up = *rc::gen::arbitrary<bool>() ? SideUp::right : SideUp::wrong;
    const MirrorLine line{{7, 3}, unit({real_between(-1, 1), real_between(0.1, 1)})};
    Pattern turned = half;
    turned.pieces[0] = mirrored(line, half.pieces[0]);
    const Piece whole = opened_or_discarded(half).pattern.pieces[0];
    const Piece other = opened_or_discarded(turned).pattern.pieces[0];
    RC_ASSERT(other.side_up != whole.side_up);
    const Point left = figures_of(whole.outline, dart_named(whole, "left dart")).point;
    const Point there = figures_of(other.outline, dart_named(other, "left dart")).point;
    RC_ASSERT(distance(mirrored(line, left), there) <= 1e-6);
}

}  // namespace
}  // namespace dartwright::testing
