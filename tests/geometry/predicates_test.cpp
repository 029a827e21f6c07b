#include "dartwright/geometry/predicates.hpp"

#include "geometry/exact_oracle.hpp"
#include "geometry/polygons.hpp"

namespace dartwright {
namespace {

RC_GTEST_PROP(Predicates, side_of_line_is_exact, ()) {
    const auto corner = rc::gen::oneOf(generated::grid_point(), generated::near_grid_point());
    const Point a = *corner;
    const Point b = *corner;
    const Point p = *corner;
    RC_ASSERT(static_cast<int>(side_of_line(a, b, p)) == oracle::turn(a, b, p));
}

TEST(Predicates, side_of_line_at_the_ends_of_the_range) {
    for (const double size : {1e-320, 1e-200, 1e-100, 1e100, 1e200, 1.7e308}) {
        EXPECT_EQ(side_of_line({0, 0}, {size, size}, {0, size}), Side::left) << size;
        EXPECT_EQ(side_of_line({-size, -size}, {size, size}, {size, 0}), Side::right) << size;
        EXPECT_EQ(side_of_line({-size, -size}, {size, size}, {size / 2, size / 2}), Side::on) << size;
    }
    EXPECT_EQ(side_of_line({1, 1}, {1, 1}, {5, 7}), Side::on);
}

Meeting meeting_by_oracle(const Segment& s, const Segment& t) {
    if (oracle::turn(s.a, s.b, t.a) * oracle::turn(s.a, s.b, t.b) < 0 &&
        oracle::turn(t.a, t.b, s.a) * oracle::turn(t.a, t.b, s.b) < 0) {
        return Meeting::crossing;
    }
    return oracle::do_meet(s.a, s.b, t.a, t.b) ? Meeting::touching : Meeting::none;
}

RC_GTEST_PROP(Predicates, meeting_of_is_exact_and_symmetrical, ()) {
    const auto corner = rc::gen::oneOf(generated::grid_point(), generated::near_grid_point());
    const Segment s{*corner, *corner};
    const Segment t{*corner, *corner};
    RC_ASSERT(meeting_of(s, t) == meeting_by_oracle(s, t));
    RC_ASSERT(meeting_of(t, s) == meeting_of(s, t));
}

RC_GTEST_PROP(Predicates, crossing_point_is_near_both, ()) {
    const Segment s{*generated::point(100), *generated::point(100)};
    const Segment t{*generated::point(100), *generated::point(100)};
    if (meeting_of(s, t) != Meeting::crossing) RC_DISCARD("they do not cross");
    const Point p = crossing_point(s, t);
    const double sine = std::abs(cross(unit(s.b - s.a), unit(t.b - t.a)));
    RC_ASSERT(std::abs(cross(unit(s.b - s.a), p - s.a)) <= 1e-12);
    RC_ASSERT(std::abs(cross(unit(t.b - t.a), p - t.a)) <= 1e-12 / sine);
}

RC_GTEST_PROP(Predicates, where_in_polygon_is_exact, ()) {
    const auto corner = rc::gen::oneOf(generated::grid_point(), generated::near_grid_point());
    const auto polygon = *generated::polygon(corner);
    const Point p = *corner;
    const Where wanted = oracle::is_boundary(polygon, p) ? Where::boundary
                         : oracle::is_inside(polygon, p) ? Where::inside
                                                         : Where::outside;
    RC_ASSERT(where_in_polygon(polygon, p) == wanted);
}

TEST(Predicates, signed_area) {
    const std::vector<Point> square{{1, 1}, {4, 1}, {4, 4}, {1, 4}};
    const std::vector<Point> clockwise(square.rbegin(), square.rend());
    EXPECT_EQ(signed_area(square), 9);
    EXPECT_EQ(signed_area(clockwise), -9);
    EXPECT_EQ(signed_area({}), 0);
}

}  // namespace
}  // namespace dartwright
