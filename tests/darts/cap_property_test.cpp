// What every cap must be, over generated pieces and rows of darts.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "dartwright/darts/cap.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/geometry/closest.hpp"
#include "dartwright/geometry/flatten.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/mirrored.hpp"
#include "support/evenly.hpp"
#include "support/generated_dart_rows.hpp"

namespace dartwright::testing {
namespace {

// What is asked of a cap on a piece of some metres.
constexpr double on_edge_mm = 1e-6;

struct AnyCap {
    Piece piece;
    std::size_t dart = 0;
    DartFigures f;
    Cap cap;
};

PressSide any_side() {
    return *rc::gen::arbitrary<bool>() ? PressSide::before : PressSide::after;
}

PressSide other(PressSide side) {
    return side == PressSide::before ? PressSide::after : PressSide::before;
}

AnyCap any_cap_in(const Piece& piece) {
    std::vector<std::size_t> darts;
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        if (piece.outline.items[i].as_dart()) darts.push_back(i);
    }
    AnyCap out;
    out.piece = piece;
    out.dart = darts[any_index_of(darts)];
    out.f = figures_of(piece.outline, out.dart);
    out.cap = cap_of(piece, out.dart, any_side());
    return out;
}

AnyCap any_cap() {
    if (*evenly(0, 3) > 0) return any_cap_in(any_dart_row(*evenly(1, 6)));
    return any_cap_in(any_piece(true, *evenly(1, 4)).pattern.pieces[0]);
}

MirrorLine leg_line(const AnyCap& c) {
    return {c.f.point, unit((c.cap.side == PressSide::before ? c.f.a : c.f.b) - c.f.point)};
}

// Where a place of the cap comes to lie when the dart is folded.
Point folded(const AnyCap& c, Point p, bool is_beside_press_side) {
    if (is_beside_press_side) return mirrored(leg_line(c), p);
    const Motion closing = closing_about_point(c.f);
    return apply(c.cap.side == PressSide::before ? closing : inverse(closing), p);
}

// The edge on the press side, walked away from the mouth all the way round with the other darts closed: the
// outline's items copied out and what lies beyond each dart turned about its point.
std::vector<Curve> edge_on_press_side(const AnyCap& c) {
    const std::vector<OutlineItem>& items = c.piece.outline.items;
    const bool is_before = c.cap.side == PressSide::before;
    std::vector<Curve> out;
    for (std::size_t k = 1; k < items.size(); ++k) {
        // From the far end to the mouth, so that each dart turns all that was copied before it.
        const std::size_t i = (c.dart + (is_before ? k : items.size() - k)) % items.size();
        if (items[i].as_edge()) {
            for (const Curve& curve : curves_of_item(c.piece.outline, i)) out.push_back(curve);
        } else {
            const Motion closing = closing_about_point(figures_of(c.piece.outline, i));
            for (Curve& curve : out) curve = moved(curve, is_before ? inverse(closing) : closing);
        }
    }
    return out;
}

double distance_from(const std::vector<Curve>& curves, Point p) {
    double least = 1e9;
    for (const Curve& curve : curves) least = std::min(least, closest_point(curve, p).distance);
    return least;
}

RC_GTEST_PROP(Cap, RunsFromMouthEndToMouthEndWithoutAGap, ()) {
    const AnyCap c = any_cap();
    RC_ASSERT(start_of(c.cap.curves.front()) == c.f.a);
    RC_ASSERT(end_of(c.cap.curves.back()) == c.f.b);
    for (std::size_t i = 1; i < c.cap.curves.size(); ++i)
        RC_ASSERT(start_of(c.cap.curves[i]) == end_of(c.cap.curves[i - 1]));
}

RC_GTEST_PROP(Cap, MeetsOnTheCentreLine, ()) {
    const AnyCap c = any_cap();
    RC_ASSERT(c.cap.curves_to_tip > 0 && c.cap.curves_to_tip < c.cap.curves.size());
    RC_ASSERT(end_of(c.cap.curves[c.cap.curves_to_tip - 1]) == c.cap.tip);
    const Vector along = unit(c.cap.tip - c.f.point);
    RC_ASSERT(std::abs(cross(along, c.f.a - c.f.point) + cross(along, c.f.b - c.f.point)) <= 1e-9);
    RC_ASSERT(std::abs(dot(c.cap.tip - middle(c.f.a, c.f.b), along) - c.cap.depth_mm) <= 1e-9);
}

RC_GTEST_PROP(Cap, LiesOnTheEdgeWhenTheDartIsFolded, ()) {
    const AnyCap c = any_cap();
    if (!c.cap.notes.empty()) RC_DISCARD("square across, or far out");
    RC_CLASSIFY(c.cap.beside.size() == 1, "over another dart");
    RC_CLASSIFY(c.cap.beside.size() > 1, "over several");
    const std::vector<Curve> edge = edge_on_press_side(c);
    for (std::size_t i = 0; i < c.cap.curves.size(); ++i) {
        const bool is_first = i < c.cap.curves_to_tip;
        for (const double t : {0.0, 0.13, 0.5, 0.81, 1.0}) {
            const Point p =
                folded(c, point_at(c.cap.curves[i], t), is_first == (c.cap.side == PressSide::before));
            RC_ASSERT(distance_from(edge, p) <= on_edge_mm);
        }
    }
}

// Every half lies in its half of the wedge, so that caps and cloth never overlap.
RC_GTEST_PROP(Cap, StaysInTheWedge, ()) {
    const AnyCap c = any_cap();
    const Vector centre = unit(c.cap.tip - c.f.point);
    const Vector a = unit(c.f.a - c.f.point);
    const Vector b = unit(c.f.b - c.f.point);
    for (std::size_t i = 0; i < c.cap.curves.size(); ++i) {
        for (int k = 0; k <= 20; ++k) {
            const Vector p = point_at(c.cap.curves[i], k / 20.0) - c.f.point;
            const bool is_first = i < c.cap.curves_to_tip;
            RC_ASSERT(cross(is_first ? a : centre, p) >= -2 * on_edge_mm);
            RC_ASSERT(cross(p, is_first ? centre : b) >= -2 * on_edge_mm);
        }
    }
}

std::vector<Point> cap_polygon(const AnyCap& c) {
    std::vector<Point> polygon{c.f.point, c.f.a};
    for (const Curve& curve : c.cap.curves) flatten_onto(polygon, curve, 1e-3);
    return polygon;
}

// Folding and cutting, place by place: paper over the mouth stays where, with the dart folded, there is cloth
// under it.
RC_GTEST_PROP(Cap, IsWhatTheShearsLeave, ()) {
    const AnyCap c = any_cap_in(any_piece(true, 1).pattern.pieces[0]);
    if (!c.cap.notes.empty()) RC_DISCARD("square across, or far out");
    const std::vector<Point> cap = cap_polygon(c);
    const std::vector<Point> cloth = flat_outline(c.piece.outline, DartsDrawn::to_points, 1e-3).points;
    double reach = 0;
    for (const Point p : cap) reach = std::max(reach, distance(p, c.f.point));
    for (int k = 0; k < 20; ++k) {
        const double share = real_between(0.01, 0.99);
        const Vector from_a = apply(turn_by(share * c.f.sewn_angle_rad), unit(c.f.a - c.f.point));
        const Point p = c.f.point + reach * real_between(0.8, 1.05) * from_a;
        if (distance_from(c.cap.curves, p) < 0.01) continue;
        const bool is_kept = where_in_polygon(cap, p) == Where::inside;
        const bool is_first = (share < 0.5) == (c.cap.side == PressSide::before);
        RC_ASSERT(is_kept == (where_in_polygon(cloth, folded(c, p, is_first)) == Where::inside));
    }
}

void expect_same_chain(const std::vector<Curve>& a, const std::vector<Curve>& b, double tolerance_mm) {
    RC_ASSERT(a.size() == b.size());
    for (std::size_t i = 0; i < a.size(); ++i) {
        for (const double t : {0.0, 0.3, 0.7, 1.0})
            RC_ASSERT(distance(point_at(a[i], t), point_at(b[i], t)) <= tolerance_mm);
    }
}

RC_GTEST_PROP(Cap, OfTheMirrorImageIsTheMirrorImage, ()) {
    const AnyCap c = any_cap();
    const MirrorLine line{{real_between(-100, 100), 0}, unit(Vector{real_between(-1, 1), 1})};
    const Piece image = mirrored(line, c.piece);
    const std::string name = c.piece.outline.items[c.dart].as_dart()->name;
    const Cap of_image = cap_of(image, *find_dart(image, name), other(c.cap.side));
    std::vector<Curve> expected;
    for (auto curve = c.cap.curves.rbegin(); curve != c.cap.curves.rend(); ++curve)
        expected.push_back(reversed(mirrored(line, *curve)));
    expect_same_chain(of_image.curves, expected, on_edge_mm);
    RC_ASSERT(std::abs(of_image.depth_mm - c.cap.depth_mm) <= on_edge_mm);
    RC_ASSERT(of_image.beside == c.cap.beside);
    RC_ASSERT(of_image.notes.size() == c.cap.notes.size());
}

// Made smaller, since what runs along a leg to a millionth of a millimetre is a matter of size.
RC_GTEST_PROP(Cap, TurnsAndScalesWithThePiece, ()) {
    const AnyCap c = any_cap();
    if (!c.cap.notes.empty()) RC_DISCARD("square across, or far out");
    const Similarity s{real_between(-pi, pi),
                       log_between(0.05, 1),
                       false,
                       {real_between(-900, 900), real_between(-900, 900)}};
    const Cap of_image = cap_of(image(s, c.piece), c.dart, c.cap.side);
    RC_ASSERT(distance(of_image.tip, image(s, c.cap.tip)) <= on_edge_mm);
    RC_ASSERT(of_image.curves.size() == c.cap.curves.size());
}

// A piece that is its own mirror image in the dart's centre line.
RC_GTEST_PROP(Cap, OfASymmetricDartIsTheMirrorImageForTheOtherSide, ()) {
    const double half_width = log_between(0.25, 40);
    Outline outline;
    Point at{0, 300};
    outline.start = at;
    const auto add_edge = [&](const std::string& edge, Point to) {
        outline.items.push_back({EdgeItem{edge, any_shape(at, to, true), 0}, to});
        at = to;
    };
    add_edge("left", {-200, 0});
    add_edge("waist", {-half_width - log_between(1, 100), real_between(-5, 5)});
    add_edge("waist", {-half_width, 0});
    const MirrorLine line;
    Outline right = mirrored(line, outline);
    DartItem dart;
    dart.name = "dart";
    dart.point = {0, log_between(60, 200)};
    outline.items.push_back({dart, right.start});
    outline.items.insert(outline.items.end(), right.items.begin(), right.items.end());
    Piece piece;
    piece.name = "panel";
    piece.outline = outline;
    const Cap before = cap_of(piece, 3, PressSide::before);
    const Cap after = cap_of(piece, 3, PressSide::after);
    expect_same_chain(before.curves, after.curves, on_edge_mm);
}

std::size_t dart_with_point(const Piece& piece, Point point) {
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        const DartItem* dart = piece.outline.items[i].as_dart();
        if (dart && distance(dart->point, point) < on_edge_mm) return i;
    }
    return piece.outline.items.size();
}

// Folded over the fold, the dart of a half meets what it meets on the whole piece.
RC_GTEST_PROP(Cap, OfAHalfIsThatOfTheOpenedPiece, ()) {
    Pattern half;
    half.name = "half";
    half.pieces = {any_dart_row(*evenly(1, 4))};
    Piece& piece = half.pieces[0];
    piece.cut->fold = "centre";
    const AnyCap c = any_cap_in(piece);
    Piece whole;
    try {
        whole = open(half, {"panel"}).pattern.pieces[0];
    } catch (const Impossible&) {
        RC_DISCARD("darts that cross one another or the fold");
    }
    const Cap of_whole = cap_of(whole, dart_with_point(whole, c.f.point), c.cap.side);
    RC_ASSERT(of_whole.notes.size() == c.cap.notes.size());
    if (c.cap.notes.empty()) expect_same_chain(of_whole.curves, c.cap.curves, on_edge_mm);
}

}  // namespace
}  // namespace dartwright::testing
