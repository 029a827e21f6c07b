// What is marked on cut pieces: laws over generated pieces, and examples by hand.

#include "dartwright/cutting/markings.hpp"

#include "dartwright/pattern/pattern_problems.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "cutting/cut_pieces.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/mirrored.hpp"
#include "support/evenly.hpp"

namespace dartwright {
namespace {

using testing::any_piece;
using testing::distance_to_line;
using testing::real_between;
using testing::straight_piece;

constexpr double rounding_mm = 1e-6;
// The line's own error, and what is made one point of it.
constexpr double on_line_mm = cutting_line_error_mm + 2e-4;

/// One of the places of a grid over the polygon that lie inside.
Point any_place_inside(const std::vector<Point>& polygon) {
    Box box{polygon.front(), polygon.front()};
    for (const Point p : polygon) box = joined(box, Box{p, p});
    constexpr int steps = 12;
    std::vector<Point> inside;
    for (int i = 1; i < steps; ++i)
        for (int j = 1; j < steps; ++j) {
            const Point p{box.low.x + (box.high.x - box.low.x) * i / steps,
                          box.low.y + (box.high.y - box.low.y) * j / steps};
            if (where_in_polygon(polygon, p) == Where::inside) inside.push_back(p);
        }
    RC_ASSERT(!inside.empty());
    return inside[testing::any_index_of(inside)];
}

struct Marked {
    Piece piece;
    MarkingRequest request;
    CuttingLine line;
    Markings markings;
};

Marked any_marked_piece() {
    testing::GeneratedPiece generated = any_piece(true, *testing::evenly(1, 3));
    Marked marked;
    marked.piece = generated.pattern.pieces[0];
    testing::add_any_allowances(marked.piece, std::min(40.0, generated.size_mm / 10), true);
    for (const Run& run : runs_of(marked.piece.outline)) {
        const auto kind = static_cast<NotchKind>(*testing::evenly(0, 3));
        marked.piece.notches.push_back(
            {run.edge, name_of_end(run, RunEnd::start), run.length * real_between(0.1, 0.9), kind});
    }
    marked.request.notches.form = static_cast<NotchForm>(*testing::evenly(0, 4));
    marked.request.notches.depth_mm = real_between(1, 12);
    marked.line = cutting_line(marked.piece);
    marked.markings = markings_of(marked.piece, marked.line, marked.request);
    return marked;
}

RC_GTEST_PROP(Markings, begin_every_notch_on_the_cutting_line, ()) {
    const Marked marked = any_marked_piece();
    std::size_t nicks = 0;
    for (const NotchMarking& notch : marked.markings.notches)
        for (const Nick& nick : notch.nicks) {
            RC_ASSERT(distance_to_line(marked.line.points, nick.outer) < on_line_mm);
            ++nicks;
        }
    RC_ASSERT(nicks >= marked.piece.notches.size());
}

RC_GTEST_PROP(Markings, make_no_notch_deeper_than_asked_or_than_its_allowance, ()) {
    const Marked marked = any_marked_piece();
    for (const NotchMarking& notch : marked.markings.notches)
        for (const Nick& nick : notch.nicks) {
            const double depth = distance(nick.outer, nick.inner);
            if (!nick.is_cut) {
                RC_ASSERT(std::abs(depth - uncut_mark_mm) < rounding_mm);
                continue;
            }
            RC_ASSERT(depth < marked.request.notches.depth_mm + rounding_mm);
            if (depth > marked.request.notches.depth_mm - cutting_line_error_mm) continue;
            // Shortened: it ends on the stitching line, and that is said.
            double to_stitching = INFINITY;
            for (std::size_t i = 0; i < marked.piece.outline.items.size(); ++i)
                if (marked.piece.outline.items[i].as_edge())
                    to_stitching = std::min(to_stitching,
                                            testing::distance_to_item(marked.piece.outline, i, nick.inner));
            RC_ASSERT(to_stitching < rounding_mm);
            RC_ASSERT(!marked.markings.notes.empty());
        }
}

RC_GTEST_PROP(Markings, keep_the_grain_arrow_inside_the_stitching_line, ()) {
    Marked marked = any_marked_piece();
    const std::vector<Point> flat = flat_outline(marked.piece.outline, DartsDrawn::to_points, 0.01).points;
    const Point at = any_place_inside(flat);
    const double turn = real_between(0, 2 * pi);
    const Vector along{std::cos(turn), std::sin(turn)};
    marked.piece.grain = Grain{at - 0.01 * along, at + 0.01 * along, ""};
    const Markings markings = markings_of(marked.piece, marked.line, marked.request);
    RC_ASSERT(markings.grain.has_value());
    const GrainMarking& grain = *markings.grain;
    if (distance(grain.from, grain.to) < 1) return;  // there was no room, and it is as given
    for (std::size_t i = 0; i < flat.size(); ++i)
        RC_ASSERT(meeting_of({grain.from, grain.to}, {flat[i], flat[(i + 1) % flat.size()]}) ==
                  Meeting::none);
    RC_ASSERT(where_in_polygon(flat, grain.from) == Where::inside);
    RC_ASSERT(std::abs(cross(along, grain.to - grain.from)) < 1e-3);
}

RC_GTEST_PROP(Markings, of_the_mirrored_piece_are_the_mirror_image, ()) {
    const Marked marked = any_marked_piece();
    const MirrorLine mirror{{3, 5}, unit(Vector{1, real_between(-2, 2)})};
    const Piece image = mirrored(mirror, marked.piece);
    const Markings markings = markings_of(image, cutting_line(image), marked.request);
    RC_ASSERT(markings.notches.size() == marked.markings.notches.size());
    // The cutting line itself is a mirror image to its own error only.
    constexpr double near_mm = 3 * cutting_line_error_mm;
    for (std::size_t i = 0; i < marked.piece.notches.size(); ++i)
        for (const Nick& nick : marked.markings.notches[i].nicks) {
            double least = INFINITY;
            for (const Nick& other : markings.notches[i].nicks)
                least = std::min(least, distance(mirrored(mirror, nick.inner), other.inner));
            RC_ASSERT(least < near_mm);
        }
}

Piece notched_square(double allowance_mm) {
    Piece piece = straight_piece({{0, 0}, {200, 0}, {200, 200}, {0, 200}},
                                 {allowance_mm, allowance_mm, allowance_mm, allowance_mm});
    piece.notches.push_back({"edge 0", "edge 3", 80, NotchKind::single});
    return piece;
}

Nick nick_of(const Piece& piece, const MarkingRequest& request) {
    return markings_of(piece, cutting_line(piece), request).notches.at(0).nicks.at(0);
}

void expect_strokes(const Nick& nick, const std::vector<std::vector<Point>>& expected) {
    ASSERT_EQ(nick.strokes.size(), expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i) {
        ASSERT_EQ(nick.strokes[i].size(), expected[i].size());
        for (std::size_t j = 0; j < expected[i].size(); ++j)
            EXPECT_LT(distance(nick.strokes[i][j], expected[i][j]), 1e-9) << i << " " << j;
    }
}

// Exact geometry: an allowance of 15 mm below y = 0, a notch at x = 80, 6 mm deep and 4 mm wide.
TEST(markings, draw_each_shape_of_notch) {
    const Piece piece = notched_square(15);
    expect_strokes(nick_of(piece, {{NotchForm::slit, 6, 4}}), {{{80, -15}, {80, -9}}});
    expect_strokes(nick_of(piece, {{NotchForm::v, 6, 4}}), {{{82, -15}, {80, -9}, {78, -15}}});
    expect_strokes(nick_of(piece, {{NotchForm::t, 6, 4}}), {{{80, -15}, {80, -9}}, {{82, -9}, {78, -9}}});
    expect_strokes(nick_of(piece, {{NotchForm::box, 6, 4}}), {{{82, -15}, {82, -9}, {78, -9}, {78, -15}}});
}

TEST(markings, shorten_a_notch_to_its_allowance_and_say_so) {
    const Piece piece = notched_square(4);
    const Markings markings = markings_of(piece, cutting_line(piece), {{NotchForm::slit, 6, 4}});
    EXPECT_LT(distance(markings.notches.at(0).nicks.at(0).inner, {80, 0}), 1e-9);
    EXPECT_EQ(markings.notes,
              std::vector<std::string>{"notch on \"edge 0\": shortened to the allowance there"});
}

TEST(markings, only_draw_a_notch_where_there_is_no_allowance) {
    const Piece piece = notched_square(0);
    const Markings markings = markings_of(piece, cutting_line(piece), {{NotchForm::v, 6, 4}});
    const Nick& nick = markings.notches.at(0).nicks.at(0);
    EXPECT_FALSE(nick.is_cut);
    EXPECT_LT(distance(nick.outer, {80, 0}), 1e-9);
    EXPECT_LT(distance(nick.inner, {80, uncut_mark_mm}), 1e-9);
    ASSERT_EQ(markings.notes.size(), 1u);
    EXPECT_NE(markings.notes[0].find("only drawn"), std::string::npos);
}

TEST(markings, set_a_triple_notch_about_its_place) {
    Piece piece = notched_square(15);
    piece.notches[0].kind = NotchKind::triple;
    const Markings markings = markings_of(piece, cutting_line(piece), {{NotchForm::slit, 6, 4}});
    ASSERT_EQ(markings.notches.at(0).nicks.size(), 3u);
    for (int i = 0; i < 3; ++i)
        EXPECT_LT(distance(markings.notches[0].nicks[static_cast<std::size_t>(i)].outer,
                           {80 + (i - 1) * notch_spacing_mm, -15}),
                  1e-9);
}

TEST(markings, refuse_a_depth_that_is_no_length) {
    const Piece piece = notched_square(15);
    const CuttingLine line = cutting_line(piece);
    EXPECT_THROW(markings_of(piece, line, {{NotchForm::slit, 0, 4}}), Impossible);
    EXPECT_THROW(markings_of(piece, line, {{NotchForm::v, 5, -1}}), Impossible);
}

TEST(markings, refuse_a_notch_from_an_end_that_is_not_there) {
    Piece piece = notched_square(15);
    piece.notches[0].from = "edge 2";
    EXPECT_THROW(markings_of(piece, {}), UnsoundPattern);
}

TEST(markings, have_each_fold_from_end_to_end) {
    Piece piece = straight_piece({{0, 0}, {300, 0}, {300, 200}, {0, 200}}, {10, 10, 10, 10});
    const auto folds_of = [](const Piece& marked) { return markings_of(marked, cutting_line(marked)).folds; };
    piece.cut = Cut{};
    EXPECT_TRUE(folds_of(piece).empty());
    piece.cut->fold = "edge 3";
    ASSERT_EQ(folds_of(piece).size(), 1u);
    piece.cut->second_fold = "edge 0";
    const std::vector<FoldMarking> folds = folds_of(piece);
    ASSERT_EQ(folds.size(), 2u);
    EXPECT_EQ(folds[0].edge, "edge 3");
    EXPECT_EQ(folds[0].start, (Point{0, 200}));
    EXPECT_EQ(folds[0].end, (Point{0, 0}));
    EXPECT_EQ(folds[1].edge, "edge 0");
    EXPECT_EQ(folds[1].start, (Point{0, 0}));
    EXPECT_EQ(folds[1].end, (Point{300, 0}));
}

// A grain line that goes through a dart's point, or 3 mm beside a corner, ends before it however the last bit
// of a number went; on an edge there is none to be found, and it stays as it is drawn.
TEST(markings, grain_is_as_long_however_the_last_bit_went) {
    const auto arrow_of = [](double grain_x, double aside) {
        Piece piece = straight_piece({{0, 0}, {90, 0}, {90, 200}, {0, 200}}, {10, 10, 10, 10});
        DartItem dart;
        dart.name = "dart";
        dart.point = {45 + aside, 120};
        piece.outline.items[0].to = {35, 0};
        piece.outline.items.insert(piece.outline.items.begin() + 1,
                                   {{dart, {55, 0}}, {EdgeItem{"edge 0", StraightShape{}, 0}, {90, 0}}});
        piece.grain = Grain{{grain_x, 150}, {grain_x, 170}, ""};
        const Markings markings = markings_of(piece, cutting_line(piece));
        return std::abs(markings.grain->to.y - markings.grain->from.y);
    };
    for (const double aside : {-1e-9, -1e-13, 0.0, 1e-13, 1e-9}) {
        EXPECT_NEAR(arrow_of(45, aside), 200 - 120 - 20, 1e-6) << aside;
        EXPECT_NEAR(arrow_of(42, aside), 200 - 120 - 20, 1e-6) << aside;
        EXPECT_NEAR(arrow_of(48, aside), 200 - 120 - 20, 1e-6) << aside;
        EXPECT_NEAR(arrow_of(3 + aside, 0), 20, 1e-6) << aside;
        EXPECT_NEAR(arrow_of(30 - aside, 0), 180, 1e-6) << aside;
    }
}

}  // namespace
}  // namespace dartwright
