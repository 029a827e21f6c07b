// The cap of a dart against figures and a rule from elsewhere. Each check says where its numbers are from;
// none is taken from this program.

#include <gtest/gtest.h>

#include "dartwright/checks/check.hpp"
#include "dartwright/darts/cap.hpp"
#include "dartwright/geometry/flatten.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/mirrored.hpp"

namespace dartwright {
namespace {

/// A dart of legs and a half angle, whose legs meet the edge at two interior angles.
struct DartDrawn {
    double leg = 0;
    double half_deg = 0;
    double before_deg = 90;
    double after_deg = 90;
};

OutlineItem straight(const std::string& edge, Point to) {
    return {EdgeItem{edge, StraightShape{}, 0}, to};
}

/// The dart in the lower edge of a piece, its point at (0, 0) and its centre line straight down.
Pattern piece_with(const DartDrawn& d, const std::string& press) {
    const Vector down{0, -d.leg};
    const Point a = Point{} + apply(turn_by(-radians(d.half_deg)), down);
    const Point b = Point{} + apply(turn_by(radians(d.half_deg)), down);
    const double reach = 3 * d.leg;
    const Point left = a + reach * unit(apply(turn_by(radians(d.before_deg)), Point{} - a));
    const Point right = b + reach * unit(apply(turn_by(-radians(d.after_deg)), Point{} - b));
    Piece piece;
    piece.name = "piece";
    piece.cut = Cut{};
    piece.grain = Grain{{0, d.leg}, {0, 2 * d.leg}, ""};
    DartItem dart;
    dart.name = "dart";
    dart.press = press;
    piece.outline.start = left;
    piece.outline.items = {straight("edge", a),
                           {dart, b},
                           straight("edge", right),
                           straight("right", {right.x, 4 * d.leg}),
                           straight("top", {left.x, 4 * d.leg}),
                           straight("left", left)};
    Pattern pattern;
    pattern.name = "piece";
    pattern.pieces = {piece};
    return pattern;
}

double tip_from_point(const DartDrawn& d, const std::string& press) {
    return norm(pressed_cap(piece_with(d, press).pieces[0], 1)->tip - Point{});
}

// Exact geometry: in the triangle of the point, the mouth end and the tip the leg L is known with the angle f
// at the point and b at the mouth end, so that the tip lies L sin b / sin(b + f) from the point. The figures
// were worked out apart from the program, to four decimals.
TEST(cap_figures, of_straight_edges) {
    struct Row {
        double leg;
        double half_deg;
        double interior_deg;
        double tip;
    };
    const Row rows[] = {{10, 10, 90, 10.1543},    {10, 10, 80, 9.8481}, {10, 10, 100, 10.4801},
                        {25, 8, 85, 24.9390},     {25, 8, 95, 25.5600}, {12, 9.125, 75, 11.6523},
                        {12, 9.125, 105, 12.7004}};
    for (const Row& row : rows) {
        const double on_before = tip_from_point({row.leg, row.half_deg, row.interior_deg, 97}, "left");
        const double on_after = tip_from_point({row.leg, row.half_deg, 97, row.interior_deg}, "right");
        EXPECT_NEAR(on_before, row.tip, 0.5e-4) << row.leg << " " << row.half_deg << " " << row.interior_deg;
        EXPECT_NEAR(on_after, row.tip, 0.5e-4) << row.leg << " " << row.half_deg << " " << row.interior_deg;
        EXPECT_NEAR(on_before, on_after, 1e-12);
    }
}

int mouth_findings(const DartDrawn& d) {
    int count = 0;
    for (const Finding& finding : check(piece_with(d, "left")).findings)
        count += finding.check == "dart-mouth";
    return count;
}

// Exact geometry: the mouth is true when the two interior angles add to 180 degrees, whatever each is. Those
// of the figures above are given so in pairs.
TEST(cap_figures, of_true_mouths_are_of_interior_angles_that_add_to_180_degrees) {
    for (const DartDrawn d :
         {DartDrawn{100, 10, 80, 100}, DartDrawn{250, 8, 85, 95}, DartDrawn{120, 9.125, 75, 105}}) {
        EXPECT_EQ(mouth_findings(d), 0);
        DartDrawn untrue = d;
        untrue.after_deg += 5;
        EXPECT_EQ(mouth_findings(untrue), 1);
    }
}

/// The paper of the dart itself, folded as it will be pressed to the left: the half beside the left leg turns
/// over that leg, the other half turns back over the centre line and lies the right way up again.
Point pressed_to_the_left(Point p, double half_deg) {
    const Vector leg = apply(turn_by(-radians(half_deg)), Vector{0, -1});
    const Point back_over_centre = p.x > 0 ? mirrored(MirrorLine{{0, 0}, {0, 1}}, p) : p;
    return mirrored(MirrorLine{{0, 0}, leg}, back_over_centre);
}

// Published: the seam is cut across the dart folded the way it will be pressed: M. D. Erwin, *Practical Dress
// Design* (Macmillan, 1954), p. 30. Followed here with paper in small squares: what lies over the cloth when
// the dart is folded stays, the rest is cut off.
TEST(cap_rule, the_seam_is_cut_across_the_dart_folded_as_it_will_be_pressed) {
    DartDrawn d{100, 12, 84, 96};
    Pattern pattern = piece_with(d, "left");
    // A curved edge on the press side.
    OutlineItem& edge = pattern.pieces[0].outline.items[0];
    const Point left = pattern.pieces[0].outline.start;
    edge.as_edge()->shape =
        CubicShape{{between(left, edge.to, 0.6) + Vector{0, 20}, between(left, edge.to, 0.95)}};
    const Piece& piece = pattern.pieces[0];
    const Cap cap = *pressed_cap(piece, 1);
    std::vector<Point> cut{{0, 0}, edge.to};
    for (const Curve& curve : cap.curves) flatten_onto(cut, curve, 1e-4);
    const std::vector<Point> cloth = flat_outline(piece.outline, DartsDrawn::to_points, 1e-4).points;
    int kept = 0;
    int cut_off = 0;
    for (double x = -24.9; x < 25; x += 0.5) {
        for (double y = -120.1; y < -70; y += 0.5) {
            if (std::abs(std::atan2(x, -y)) >= radians(d.half_deg)) continue;  // not in the dart
            const bool is_kept =
                where_in_polygon(cloth, pressed_to_the_left({x, y}, d.half_deg)) == Where::inside;
            EXPECT_EQ(where_in_polygon(cut, {x, y}) == Where::inside, is_kept) << x << ", " << y;
            ++(is_kept ? kept : cut_off);
        }
    }
    EXPECT_GT(kept, 1000);
    EXPECT_GT(cut_off, 1000);
}

}  // namespace
}  // namespace dartwright
