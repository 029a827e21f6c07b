#include "dartwright/geometry/point_index.hpp"

#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point.hpp>
#include <boost/geometry/index/rtree.hpp>
#include <boost/geometry/strategies/strategies.hpp>
#include <utility>
#include <vector>

namespace dartwright {
namespace {

namespace bg = boost::geometry;
using IndexedCorner = bg::model::point<double, 2, bg::cs::cartesian>;
using IndexedPoint = std::pair<IndexedCorner, std::size_t>;

std::vector<IndexedPoint> numbered(std::span<const Point> points) {
    std::vector<IndexedPoint> entries;
    entries.reserve(points.size());
    for (const Point p : points) entries.push_back({{p.x, p.y}, entries.size()});
    return entries;
}

}  // namespace

struct PointIndex::Tree {
    bg::index::rtree<IndexedPoint, bg::index::quadratic<16>> entries;
};

PointIndex::PointIndex(std::span<const Point> points)
    : points_(points), tree_(new Tree{decltype(Tree::entries)(numbered(points))}) {}

PointIndex::~PointIndex() = default;

std::size_t PointIndex::nearest_to(Point place) const {
    const IndexedCorner corner{place.x, place.y};
    std::size_t nearest = tree_->entries.qbegin(bg::index::nearest(corner, 1))->second;
    // The tree measures in squares, whose rounding makes others of what is equally far.
    constexpr double rounding = 1e-9;
    const double reach = (1 + rounding) * distance(points_[nearest], place);
    const bg::model::box<IndexedCorner> about{{place.x - reach, place.y - reach},
                                              {place.x + reach, place.y + reach}};
    const auto end = tree_->entries.qend();
    for (auto entry = tree_->entries.qbegin(bg::index::intersects(about)); entry != end; ++entry) {
        const double off = distance(points_[entry->second], place);
        const double least = distance(points_[nearest], place);
        if (off < least || (off == least && entry->second < nearest)) nearest = entry->second;
    }
    return nearest;
}

}  // namespace dartwright
