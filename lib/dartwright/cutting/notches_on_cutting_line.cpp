#include "dartwright/cutting/notches_on_cutting_line.hpp"

#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point.hpp>
#include <boost/geometry/index/rtree.hpp>
#include <boost/geometry/strategies/strategies.hpp>
#include <utility>

#include "dartwright/cutting/notch_ray.hpp"

namespace dartwright {
namespace {

namespace bg = boost::geometry;
using SideCorner = bg::model::point<double, 2, bg::cs::cartesian>;
using SideBox = bg::model::box<SideCorner>;
using BoxedSide = std::pair<SideBox, std::size_t>;

SideBox box_of_side(Point a, Point b) {
    return {{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::max(a.x, b.x), std::max(a.y, b.y)}};
}

std::vector<BoxedSide> boxed_sides(const std::vector<Point>& points) {
    std::vector<BoxedSide> boxed;
    boxed.reserve(points.size());
    for (std::size_t i = 0; i < points.size(); ++i)
        boxed.push_back({box_of_side(points[i], points[(i + 1) % points.size()]), i});
    return boxed;
}

bool is_within(const SideBox& inner, const SideBox& outer) {
    return bg::get<0>(inner.min_corner()) >= bg::get<0>(outer.min_corner()) &&
           bg::get<1>(inner.min_corner()) >= bg::get<1>(outer.min_corner()) &&
           bg::get<0>(inner.max_corner()) <= bg::get<0>(outer.max_corner()) &&
           bg::get<1>(inner.max_corner()) <= bg::get<1>(outer.max_corner());
}

/// So many are asked of every side before the index pays for itself.
constexpr std::size_t few_notches = 32;
/// Further than allowances are wide as a rule, so that the first look suffices.
constexpr double first_reach_mm = 32;
/// What rounding may put a meeting outside its side's box is far less.
constexpr double spare_reach_mm = 1;

}  // namespace

struct NotchesOnCuttingLine::Sides {
    bg::index::rtree<BoxedSide, bg::index::quadratic<16>> boxed;
};

NotchesOnCuttingLine::NotchesOnCuttingLine(const CuttingLine& line) : line_(line) {}
NotchesOnCuttingLine::~NotchesOnCuttingLine() = default;

CutNotch NotchesOnCuttingLine::at(const RunPlace& place) {
    if (line_.points.empty() || asked_++ < few_notches) return notch_on_cutting_line(line_, place);
    if (!sides_) sides_.reset(new Sides{decltype(Sides::boxed)(boxed_sides(line_.points))});
    const SideBox all = sides_->boxed.bounds();
    cutting::NotchRay ray(line_, place);
    const Point from = place.point;
    for (double reach = first_reach_mm;; reach *= 4) {
        const double asked = reach + spare_reach_mm;
        const SideBox about{{from.x - asked, from.y - asked}, {from.x + asked, from.y + asked}};
        const auto end = sides_->boxed.qend();
        for (auto side = sides_->boxed.qbegin(bg::index::intersects(about)); side != end; ++side)
            ray.meet(side->second);
        if (ray.least_mm() <= reach || is_within(all, about)) return ray.notch();
    }
}

}  // namespace dartwright
