#include "dartwright/geometry/polygon_index.hpp"

#include "geometry/polygons.hpp"

namespace dartwright {
namespace {

RC_GTEST_PROP(PolygonIndex, SaysWhatIsSaidOfOnePoint, ()) {
    const auto corner =
        rc::gen::oneOf(generated::grid_point(), generated::near_grid_point(), generated::point(100));
    const auto polygon = *generated::polygon(corner);
    const PolygonIndex index(polygon);
    for (const Point p : *rc::gen::container<std::vector<Point>>(corner))
        RC_ASSERT(index.where(p) == where_in_polygon(polygon, p));
    for (const Point p : polygon) RC_ASSERT(index.where(p) == Where::boundary);
}

TEST(PolygonIndex, OfLevelUprightAndLargePolygons) {
    const std::vector<std::vector<Point>> polygons{
        {},
        {{1, 1}},
        {{0, 0}, {5, 0}},
        {{0, 3}, {5, 3}, {2, 3}},
        {{0, 0}, {0, 1e-320}, {1, 0}},
        {{-1e150, -1e150}, {1e150, -1e150}, {0, 1e150}},
        {{0, 0}, {1, 1000}, {2, 0}, {3, 1000}, {4, 0}, {5, 1000}, {6, 0}, {3, -1}}};
    const std::vector<Point> points{{0, 0},   {1, 1},   {2, 3},   {7, 3},  {0, 5e-321},
                                    {0.5, 0}, {1, 999}, {2, 999}, {3, 500}};
    for (const std::vector<Point>& polygon : polygons) {
        const PolygonIndex index(polygon);
        for (const Point p : points)
            EXPECT_EQ(index.where(p), where_in_polygon(polygon, p))
                << polygon.size() << ": " << p.x << ", " << p.y;
    }
}

}  // namespace
}  // namespace dartwright
