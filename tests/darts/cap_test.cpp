#include "dartwright/darts/cap.hpp"

#include "darts/plain_front.hpp"
#include "dartwright/pattern/mirrored.hpp"

namespace dartwright {
namespace {

OutlineItem straight(const std::string& edge, Point to) {
    return {EdgeItem{edge, StraightShape{}, 0}, to};
}
OutlineItem dart(const std::string& name, Point point, Point to, const std::string& press = "") {
    DartItem item;
    item.name = name;
    item.point = point;
    item.press = press;
    return {item, to};
}

/// A panel of 200 by 400, its waist along y = 0 from the centre at x = 0 to the side, with what is given in
/// it.
Piece panel(const std::vector<OutlineItem>& waist) {
    Piece piece;
    piece.name = "panel";
    piece.cut = Cut{};
    piece.outline.items = waist;
    for (const OutlineItem& item : {straight("waist", {200, 0}), straight("side", {200, 400}),
                                    straight("top", {0, 400}), straight("centre", {0, 0})})
        piece.outline.items.push_back(item);
    return piece;
}

Cap cap_named(const Piece& piece, const std::string& name, PressSide side) {
    return cap_of(piece, dart_named(piece, name), side);
}

void expect_chain(const Cap& cap, const std::vector<Point>& points) {
    ASSERT_EQ(cap.curves.size() + 1, points.size());
    for (std::size_t i = 0; i < points.size(); ++i) {
        const Point found = i == 0 ? start_of(cap.curves[0]) : end_of(cap.curves[i - 1]);
        EXPECT_NEAR(found.x, points[i].x, 1e-9) << "point " << i;
        EXPECT_NEAR(found.y, points[i].y, 1e-9) << "point " << i;
    }
}

// The half angle f has the tangent 20/180, and both legs meet the edge at 90 degrees + f. So the tip lies
// 180 / cos 2f from the point, and cos 2f = (81 - 1) / (81 + 1).
TEST(cap, of_a_dart_in_a_straight_waist_is_a_low_peak) {
    const Piece piece = plain().pieces[0];
    const std::optional<Cap> cap = pressed_cap(piece, dart_named(piece, "waist dart"));
    ASSERT_TRUE(cap);
    EXPECT_EQ(cap->side, PressSide::after);
    expect_chain(*cap, {{80, 0}, {100, -4.5}, {120, 0}});
    EXPECT_EQ(cap->curves_to_tip, 1u);
    EXPECT_NEAR(cap->tip.y, -4.5, 1e-12);
    EXPECT_NEAR(cap->depth_mm, 4.5, 1e-12);
    EXPECT_TRUE(cap->notes.empty());
    EXPECT_TRUE(cap->beside.empty());
}

TEST(cap, of_a_dart_that_is_its_own_mirror_image_is_the_same_for_both_sides) {
    const Piece piece = plain().pieces[0];
    const Cap before = cap_named(piece, "waist dart", PressSide::before);
    EXPECT_EQ(before.side, PressSide::before);
    expect_chain(before, {{80, 0}, {100, -4.5}, {120, 0}});
}

// Legs of one length cut square to the edge on the left, so that the cap is two arms of a right angle's
// mirror image; on the right the edge goes on at 70 degrees to the leg.
TEST(cap, differs_by_the_side_that_the_dart_is_pressed_to) {
    Piece piece;
    piece.name = "wing";
    const Vector leg = 100 * Vector{std::sin(0.2), -std::cos(0.2)};
    const Point point{0, 100};
    const Point a = point + Vector{-leg.x, leg.y};
    const Point b = point + leg;
    const auto edge_from = [&](Point from, Vector along, double interior_deg) {
        return from + 300 * apply(turn_by(radians(interior_deg)), unit(along));
    };
    const Point left = edge_from(a, point - a, 90);
    const Point right = edge_from(b, point - b, -70);
    piece.outline.start = left;
    piece.outline.items = {straight("hem", a), dart("dart", point, b), straight("hem", right),
                           straight("top", {0, 500}), straight("centre", left)};
    EXPECT_NEAR(distance(cap_named(piece, "dart", PressSide::before).tip, point), 100 / std::cos(0.2), 1e-10);
    EXPECT_NEAR(distance(cap_named(piece, "dart", PressSide::after).tip, point),
                100 * std::sin(radians(70)) / std::sin(radians(70) + 0.2), 1e-10);
}

// The half dart is 20 wide, the edge beside it 10: the folded dart reaches over the corner, and is cut along
// the centre edge there. The centre line comes to lie at 2f from upright, tan 2f = 18/80, and meets x = 0 at
// 30 / sin 2f = 30 * 82/18 from the point.
TEST(cap, goes_round_a_corner_of_the_outline) {
    const Piece piece = panel({straight("waist", {10, 0}), dart("dart", {30, 180}, {50, 0}, "centre")});
    const std::optional<Cap> cap = pressed_cap(piece, dart_named(piece, "dart"));
    ASSERT_TRUE(cap);
    EXPECT_EQ(cap->side, PressSide::before);
    const double tip = 180 - 30.0 * 82 / 18;
    // The corner (0, 0) mirrored in the leg from (10, 0) to (30, 180).
    const Point corner{10 + 10 * 80.0 / 82, -10 * 18.0 / 82};
    expect_chain(*cap, {{10, 0}, corner, {30, tip}, {60 - corner.x, corner.y}, {50, 0}});
    EXPECT_EQ(cap->curves_to_tip, 2u);
    EXPECT_NEAR(cap->depth_mm, -tip, 1e-9) << "the tip falls short of the straight mouth";
}

TEST(cap, goes_on_along_the_other_half_where_it_is_folded_over_the_fold) {
    Piece piece = panel({straight("waist", {12, 0}), dart("dart", {32, 180}, {52, 0}, "centre")});
    piece.cut->fold = "centre";
    const Cap cap = cap_named(piece, "dart", PressSide::before);
    EXPECT_NEAR(cap.tip.y, -4.5, 1e-9) << "as in a straight waist that does not end";
    // From the fold, mirrored in the leg, it goes straight on.
    expect_chain(cap, {{12, 0},
                       {12 + 12 * 80.0 / 82, -12 * 18.0 / 82},
                       {32, -4.5},
                       {52 - 12 * 80.0 / 82, -12 * 18.0 / 82},
                       {52, 0}});
}

// The twin of a dart 5 from the fold begins 10 from the dart's own mouth, which half the dart covers. Closed,
// it turns the waist beyond it by 4f' about its point, as any dart beside the mouth.
TEST(cap, goes_over_the_twin_of_a_dart_by_the_fold) {
    Piece piece = panel({straight("waist", {5, 0}), dart("dart", {25, 180}, {45, 0}, "centre")});
    piece.cut->fold = "centre";
    const Cap cap = cap_named(piece, "dart", PressSide::before);
    Piece whole;
    whole.name = "whole";
    whole.outline.start = {-200, 0};
    whole.outline.items = {straight("waist", {-45, 0}),  dart("twin", {-25, 180}, {-5, 0}),
                           straight("waist", {5, 0}),    dart("dart", {25, 180}, {45, 0}),
                           straight("waist", {200, 0}),  straight("side", {200, 400}),
                           straight("top", {-200, 400}), straight("left side", {-200, 0})};
    const Cap of_whole = cap_named(whole, "dart", PressSide::before);
    EXPECT_NEAR(distance(cap.tip, of_whole.tip), 0, 1e-10);
    EXPECT_EQ(cap.beside, std::vector<std::string>{"dart"});
    EXPECT_EQ(of_whole.beside, std::vector<std::string>{"twin"});
}

// The neighbour (50 to 80, point 100 high) closes by the angle a with tan a/2 = 15/100, so that the waist
// beyond it goes on from (80, 0) turned down by a.
TEST(cap, goes_over_a_neighbour_as_sewn) {
    const Piece piece = panel({straight("waist", {50, 0}), dart("neighbour", {65, 100}, {80, 0}),
                               straight("waist", {90, 0}), dart("dart", {110, 180}, {130, 0}, "centre")});
    const Cap cap = cap_named(piece, "dart", PressSide::before);
    const double c = (1 - 0.15 * 0.15) / (1 + 0.15 * 0.15);
    const double s = 2 * 0.15 / (1 + 0.15 * 0.15);
    // (80, 0) - v (c, s) = (110, 180) - u (18, 80) / 82
    const double u = (30 * s - 180 * c) / (18.0 / 82 * s - 80.0 / 82 * c);
    EXPECT_NEAR(distance(cap.tip, {110, 180}), u, 1e-9);
    EXPECT_EQ(cap.beside, std::vector<std::string>{"neighbour"});
    EXPECT_EQ(cap.curves_to_tip, 2u);
    // Away from the neighbour, or with it further off, the cap is that of a straight waist.
    EXPECT_NEAR(cap_named(piece, "dart", PressSide::after).tip.y, -4.5, 1e-9);
}

TEST(cap, of_darts_that_share_a_mouth_end_go_over_one_another) {
    const Piece piece = panel({straight("waist", {60, 0}), dart("first", {80, 180}, {100, 0}),
                               dart("second", {120, 180}, {140, 0})});
    const Cap cap = cap_named(piece, "second", PressSide::before);
    EXPECT_EQ(cap.beside, std::vector<std::string>{"first"});
    // The leg meets a straight waist at 90 degrees + f; beyond the first dart it is turned by 2f more.
    const double f = std::atan(20.0 / 180);
    const double interior = pi / 2 + 3 * f;
    const double leg = std::hypot(20, 180);
    EXPECT_NEAR(distance(cap.tip, {120, 180}), leg * std::sin(interior) / std::sin(interior + f), 1e-9);
}

TEST(cap, cuts_a_curved_edge_where_it_meets_the_folded_centre_line) {
    Piece piece = plain().pieces[0];
    piece.outline.items[2].as_edge()->shape = CubicShape{{{{135, 6}, {170, 20}}}};
    const Cap cap = cap_named(piece, "waist dart", PressSide::after);
    ASSERT_EQ(cap.curves.size(), 2u);
    EXPECT_TRUE(std::holds_alternative<Cubic>(cap.curves[0]));
    const Point point{100, 180};
    // Mirrored in the leg, the tip lies on the edge and on the centre line's mirror image.
    const Point laid = mirrored({point, unit(Vector{20, -180})}, cap.tip);
    const Curve edge = curves_of_item(piece.outline, 2).front();
    EXPECT_NEAR(cross(unit(Vector{18, -80}), laid - point), 0, 1e-11);
    double nearest = 1e9;
    for (int k = 0; k <= 100000; ++k) nearest = std::min(nearest, distance(laid, point_at(edge, k / 1e5)));
    EXPECT_LE(nearest, 1e-3) << "of samples 0.8e-3 mm apart";
}

// The edge beside the mouth ends short of the laid centre line, and the outline turns away over the leg.
TEST(cap, goes_square_across_where_the_edge_does_not_reach_the_middle) {
    Piece piece;
    piece.name = "hook";
    piece.outline.start = {150, -110};
    piece.outline.items = {
        straight("under", {65, -100}), straight("stem", {90, 0}),    dart("dart", {100, 100}, {110, 0}),
        straight("stem", {300, 0}),    straight("side", {300, 300}), straight("top", {-50, 300}),
        straight("left", {-50, -300}), straight("hem", {150, -300}), straight("hook", {150, -110})};
    const Cap cap = cap_named(piece, "dart", PressSide::before);
    const Point end = mirrored({{100, 100}, unit(Vector{-10, -100})}, Point{65, -100});
    expect_chain(cap, {{90, 0}, end, {100, end.y}, {200 - end.x, end.y}, {110, 0}});
    ASSERT_EQ(cap.notes.size(), 1u);
    EXPECT_TRUE(contains(cap.notes[0].in(Unit::mm), "does not reach the middle of the folded dart"));
}

TEST(cap, goes_square_across_from_the_mouth_where_the_edge_leaves_over_the_leg_at_once) {
    Piece piece = panel({straight("waist", {80, 0}), dart("dart", {100, 180}, {120, 0})});
    // The edge before the mouth hangs from it on the far side of the leg.
    piece.outline.items.insert(piece.outline.items.begin(), straight("waist", {95, -20}));
    const Cap cap = cap_named(piece, "dart", PressSide::before);
    expect_chain(cap, {{80, 0}, {100, 0}, {120, 0}});
    EXPECT_NEAR(cap.depth_mm, 0, 1e-12);
    EXPECT_EQ(cap.notes.size(), 1u);
}

TEST(cap, says_when_its_tip_stands_far_out) {
    Piece piece = panel({straight("waist", {80, 0}), dart("dart", {100, 180}, {120, 0})});
    piece.outline.start = {40, -300};
    piece.outline.items.back() = straight("centre", {40, -300});
    const Cap cap = cap_named(piece, "dart", PressSide::before);
    EXPECT_GT(cap.depth_mm, 80);
    EXPECT_TRUE(cap.is_far_out);
    ASSERT_EQ(cap.notes.size(), 1u);
    EXPECT_TRUE(contains(cap.notes[0].in(Unit::mm), "more than twice the dart's intake"));
}

TEST(cap, of_curved_legs_is_that_of_straight_ones_and_says_so) {
    Piece piece = plain().pieces[0];
    piece.outline.items[1].as_dart()->legs = {
        {{Point{90, 60}, Point{97, 120}}, {Point{103, 120}, Point{110, 60}}}};
    const Cap cap = cap_named(piece, "waist dart", PressSide::after);
    expect_chain(cap, {{80, 0}, {100, -4.5}, {120, 0}});
    ASSERT_EQ(cap.notes.size(), 1u);
    EXPECT_TRUE(contains(cap.notes[0].in(Unit::mm), "folded as straight ones"));
}

TEST(cap, ends_at_both_mouth_ends_where_legs_differ_within_the_tolerance) {
    Piece piece = panel({straight("waist", {80, 0}), dart("dart", {100, 180}, {120, 0.3})});
    piece.outline.items[2] = straight("waist", {200, 0.3});
    const Cap cap = cap_named(piece, "dart", PressSide::before);
    EXPECT_EQ(start_of(cap.curves.front()), (Point{80, 0}));
    EXPECT_EQ(end_of(cap.curves.back()), (Point{120, 0.3}));
}

struct Refusal {
    std::string reason;
    std::string remedy;
};
Refusal refusal_of(const Piece& piece, const std::string& name) {
    try {
        cap_named(piece, name, PressSide::before);
    } catch (const Impossible& refused) {
        return {refused.reason, refused.remedy};
    }
    return {"not refused", ""};
}

TEST(cap, is_refused_for_what_cannot_be_folded) {
    const auto with = [](Point point, Point to) {
        return panel({straight("waist", {80, 0}), dart("dart", point, to)});
    };
    const char* const shut = "the mouth of \"dart\" is shut or its legs are crossed";
    EXPECT_EQ(refusal_of(with({100, 180}, {120, 5}), "dart").reason, "the legs of \"dart\" differ by 5.0 mm");
    EXPECT_EQ(refusal_of(with({100, 180}, {120, 5}), "dart").remedy, "true the dart first");
    EXPECT_EQ(refusal_of(with({100, 180}, {80, 0}), "dart").reason, shut);
    EXPECT_EQ(refusal_of(with({100, 180}, {40, 0}), "dart").reason, shut);
    EXPECT_EQ(refusal_of(with({80, 0}, {120, 0}), "dart").reason, shut);
    Piece open = with({100, 180}, {120, 0});
    open.outline.items.back().to = {0, 3};
    EXPECT_EQ(refusal_of(open, "dart").reason, "the outline of \"panel\" does not close, by 3.0 mm");
    Piece folded = with({100, 180}, {120, 0});
    folded.cut->fold = "waist";
    EXPECT_EQ(refusal_of(folded, "dart").reason, "\"dart\" stands in the fold");
    EXPECT_THROW(cap_of(open, 0, PressSide::before), std::invalid_argument);
}

TEST(cap, is_refused_over_a_neighbour_whose_legs_differ_but_not_for_one_further_off) {
    const auto with_neighbour_to = [](double x) {
        return panel({straight("waist", {x - 30, 0}), dart("neighbour", {x - 15, 100}, {x, -4}),
                      straight("waist", {90, 0}), dart("dart", {110, 180}, {130, 0})});
    };
    EXPECT_EQ(refusal_of(with_neighbour_to(80), "dart").reason,
              "the legs of \"neighbour\" beside the mouth differ by 4.0 mm");
    EXPECT_EQ(refusal_of(with_neighbour_to(40), "dart").reason, "not refused");
}

TEST(pressed_cap, is_none_where_the_press_side_is_not_known) {
    Piece piece = plain().pieces[0];
    for (const char* const press : {"", "waist"}) {
        piece.outline.items[1].as_dart()->press = press;
        EXPECT_FALSE(pressed_cap(piece, 1)) << press;
    }
}

}  // namespace
}  // namespace dartwright
