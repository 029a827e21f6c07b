// The angle of a dart and the widths it has elsewhere, against published figures. Each check says where its
// numbers are from; none is taken from this program.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <complex>

#include "dartwright/darts/merge.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/split.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pattern/dart.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright {
namespace {

/// An edge of a piece: its name and how far from the bust point (0, 0) it passes, in inches.
struct EdgeAt {
    const char* name;
    double distance;
};

/// A piece of six straight edges about a bust point, each square to a ray from it at its distance, 60 degrees
/// from ray to ray; in the first there is a dart of 1 in between legs of `leg` in.
Pattern hexagon(double leg, std::vector<EdgeAt> edges) {
    edges[0].distance = std::sqrt(leg * leg - 0.25);  // where a mouth of 1 in lies in a straight edge
    const auto corner = [&](std::size_t k) {          // between edge k and the next
        const EdgeAt& a = edges[k % 6];
        const EdgeAt& b = edges[(k + 1) % 6];
        const double ray = pi / 3 * double(k % 6);
        const double along = (b.distance - a.distance * 0.5) / std::sqrt(0.75);
        return Point{25.4 * (a.distance * std::cos(ray) - along * std::sin(ray)),
                     25.4 * (a.distance * std::sin(ray) + along * std::cos(ray))};
    };
    Piece piece;
    piece.name = "front";
    piece.cut = Cut{};
    piece.grain = Grain{{-50, -20}, {-50, 40}, ""};
    piece.outline.start = corner(5);
    const double mouth = 25.4 * edges[0].distance;
    DartItem dart;
    dart.name = "dart";
    piece.outline.items = {{EdgeItem{edges[0].name, StraightShape{}, 0}, {mouth, -12.7}},
                           {dart, {mouth, 12.7}}};
    for (std::size_t k = 0; k < 6; ++k)
        piece.outline.items.push_back({EdgeItem{edges[k].name, StraightShape{}, 0}, corner(k)});
    Pattern pattern;
    pattern.name = "hexagon";
    pattern.pieces = {piece};
    return pattern;
}

// The distance along an edge of the foot of its ray, from the edge's anticlockwise start, mm; in hexagon().
double foot_along(double before, double own) {
    return 25.4 * (before - own * 0.5) / std::sqrt(0.75);
}

DartFigures figures(const Pattern& pattern) {
    const Piece& piece = pattern.pieces[0];
    return figures_of(piece.outline, *find_dart(piece, "dart"));
}

PivotRequest to(const std::string& edge, double distance, const std::string& from) {
    PivotRequest request;
    request.piece = "front";
    request.dart = "dart";
    request.to = to_text(Place{edge, {distance, false}, from});
    return request;
}

std::vector<EdgeAt> published_legs() {
    return {{"first", 0}, {"five", 5}, {"six", 6}, {"nine", 9}, {"twelve", 12}, {"ten", 10}};
}

// Published: lindrix.com, 'angle': a dart with legs of 7.25 in and a width of 1 in has 7.908 degrees (printed
// as twice the half angle cut to 3.954, so good to 0.01).
TEST(dart_angle, of_a_leg_of_7_25_in_and_a_width_of_1_in) {
    const DartFigures f = figures(hexagon(7.25, published_legs()));
    EXPECT_NEAR(f.pivot_leg_a / 25.4, 7.25, 1e-12);
    EXPECT_NEAR(f.intake / 25.4, 1, 1e-12);
    EXPECT_NEAR(degrees(f.angle_rad), 7.908, 0.01);
    // Exact geometry: 2 arcsin(0.5 / 7.25).
    EXPECT_NEAR(degrees(f.angle_rad), 7.90914, 0.5e-5);
}

// Published: the angle is the same wherever the dart is put, and the mouth is proportional to the length of
// the leg: NIMI, *Dress Making*, trade theory (Government of India, 2024), p. 195; M. D. Erwin, *Practical
// Dress Design* (Macmillan, 1954), p. 31. The widths by exact geometry, 2 L sin(t/2).
TEST(dart_angle, is_kept_and_the_width_follows_the_leg) {
    struct Row {
        const char* edge;
        double leg;
        double width;
        const char* from;
        double before;
    };
    const Row rows[] = {{"five", 5, 0.6897, "first", std::sqrt(7.25 * 7.25 - 0.25)},
                        {"six", 6, 0.8276, "five", 5},
                        {"nine", 9, 1.2414, "six", 6},
                        {"ten", 10, 1.3793, "twelve", 12},
                        {"twelve", 12, 1.6552, "nine", 9}};
    for (const Row& row : rows) {
        const Pattern moved =
            pivot(hexagon(7.25, published_legs()), to(row.edge, foot_along(row.before, row.leg), row.from))
                .pattern;
        const DartFigures f = figures(moved);
        EXPECT_NEAR(f.pivot_leg_a / 25.4, row.leg, 1e-9) << row.edge;
        EXPECT_NEAR(f.intake / 25.4, row.width, 0.5e-4) << row.edge;
        EXPECT_NEAR(f.intake / row.leg / 25.4, 1 / 7.25, 1e-9) << row.edge;
        EXPECT_NEAR(degrees(f.angle_rad), 7.90914, 0.5e-5) << row.edge;
    }
}

// Published: patternschool.online, 'dart width': width (bust - waist) x length / (4 x waist to bust point);
// (84 - 65) x 22.8 / (4 x 15.7) is printed as 6.9 cm. So a dart of a quarter of (84 - 65), 4.75 cm, 15.7 from
// the bust point is 6.9 wide where its leg is 22.8.
TEST(dart_angle, agrees_with_the_rule_of_three_for_dart_widths) {
    const double scale = 4.75 / 2.54;  // of inches, so that a mouth of 1 in becomes 4.75 cm
    std::vector<EdgeAt> edges = published_legs();
    for (EdgeAt& edge : edges) edge.distance = 22.8 / 4.75;
    const Pattern moved =
        pivot(hexagon(15.7 / 4.75, edges), to("nine", foot_along(22.8 / 4.75, 22.8 / 4.75), "six")).pattern;
    const DartFigures f = figures(moved);
    EXPECT_NEAR(f.pivot_leg_a / 10 * scale, 22.8, 1e-9);
    EXPECT_NEAR(f.intake / 10 * scale, 6.9, 0.05);
    EXPECT_NEAR(f.intake / 10 * scale, (84 - 65) * 22.8 / (4 * 15.7), 1e-9);
}

// Published: the point of a dart stops 3/4 to 1 in short of the bust point (sewingconnection.com). Ours have
// a pivot of their own where they do.
TEST(back_off, of_the_front_darts_in_the_patterns_we_give_is_as_published) {
    int darts = 0;
    for (const char* const file : {"blocks/close-fitting.json", "blocks/three-measure.json",
                                   "workshop/chorus-bodice.json", "workshop/chorus-bodice-inch.json"}) {
        const Pattern pattern = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/" + std::string(file));
        const Piece& front = piece_named(pattern, "front");
        for (std::size_t i = 0; i < front.outline.items.size(); ++i) {
            const DartItem* dart = front.outline.items[i].as_dart();
            if (!dart || !dart->pivot) continue;
            ++darts;
            const double back_off = figures_of(front.outline, i).back_off / 25.4;
            EXPECT_GE(back_off, 0.75) << file << ": " << dart->name;
            EXPECT_LE(back_off, 1) << file << ": " << dart->name;
        }
    }
    EXPECT_EQ(darts, 7) << "two on each of three fronts, one on the fourth";
}

// Exact geometry: the angles of a split add up to the angle split, and each mouth is 2 L sin(t/2) of its
// part.
TEST(angles, of_a_split_add_up) {
    const Pattern whole = hexagon(7.25, published_legs());
    SplitRequest request;
    request.piece = "front";
    request.dart = "dart";
    request.places = {{"five@50%", 0.25, "", ""}, {"nine@50%", 0.35, "", ""}, {"twelve@50%", 0.15, "", ""}};
    const Pattern parts = split(whole, request).pattern;
    const double shares[] = {0.25, 0.25, 0.35, 0.15};  // in outline order, what is left first
    double sum = 0;
    std::size_t seen = 0;
    const Outline& outline = parts.pieces[0].outline;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (!outline.items[i].as_dart()) continue;
        const DartFigures f = figures_of(outline, i);
        ASSERT_LT(seen, 4u);
        const double expected = shares[seen++] * 2 * std::asin(0.5 / 7.25);
        EXPECT_NEAR(f.angle_rad, expected, 1e-12);
        EXPECT_NEAR(f.intake, 2 * f.pivot_leg_a * std::sin(expected / 2), 1e-9);
        sum += f.angle_rad;
    }
    EXPECT_EQ(seen, 4u);
    EXPECT_NEAR(degrees(sum), 7.90914, 0.5e-5);
}

// Exact geometry: a turn by a about p and then by b about q is a turn by a + b about
// (e^(ib) (1 - e^(ia)) p + (1 - e^(ib)) q) / (1 - e^(i(a + b))).
RC_GTEST_PROP(turns, about_two_points_compose_to_a_turn_about_a_third, ()) {
    using Complex = std::complex<long double>;
    const Point p{testing::real_between(-500, 500), testing::real_between(-500, 500)};
    const Point q{testing::real_between(-500, 500), testing::real_between(-500, 500)};
    const double a = radians(testing::real_between(2, 40));
    const double b = radians(testing::real_between(2, 40));
    const Complex ea = std::polar(1.0L, static_cast<long double>(a));
    const Complex eb = std::polar(1.0L, static_cast<long double>(b));
    const Complex third =
        (eb * (1.0L - ea) * Complex(p.x, p.y) + (1.0L - eb) * Complex(q.x, q.y)) / (1.0L - ea * eb);
    const Motion both = then(turn_about(p, turn_by(a)), turn_about(q, turn_by(b)));
    RC_ASSERT(std::abs(angle(both) - (a + b)) <= 1e-14);
    const Point centre{double(third.real()), double(third.imag())};
    RC_ASSERT(distance(apply(both, centre), centre) <= 1e-11 * (1 + norm(centre - Point{})));
}

// The same: so two darts that aim at different points cannot be put into one.
TEST(turns, about_two_bust_points_are_not_merged) {
    Pattern pattern = hexagon(7.25, published_legs());
    Outline& outline = pattern.pieces[0].outline;
    DartItem other;
    other.name = "other";
    other.point = {-30, 40};
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (!outline.items[i].as_edge() || outline.items[i].as_edge()->edge != "nine") continue;
        const Point from = start_of_item(outline, i);
        const Vector along = unit(outline.items[i].to - from);
        const Point middle_of_mouth =
            other.point + dot(from - other.point, -perpendicular(along)) * -perpendicular(along);
        const OutlineItem rest = outline.items[i];
        outline.items[i].to = middle_of_mouth - 10 * along;
        outline.items.insert(outline.items.begin() + std::ptrdiff_t(i) + 1,
                             {OutlineItem{other, middle_of_mouth + 10 * along}, rest});
        break;
    }
    MergeRequest request;
    request.piece = "front";
    request.dart = "dart";
    request.with = "other";
    try {
        merge(pattern, request);
        FAIL() << "merged darts of two pivots";
    } catch (const Impossible& refused) {
        EXPECT_NE(std::string(refused.what()).find("50.0 mm"), std::string::npos)
            << "the pivots are 30 and 40 mm apart, so 50: " << refused.what();
    }
}

}  // namespace
}  // namespace dartwright
