// Covered by tests/drawing/wedge_index_test.cpp.
#include "dartwright/drawing/wedge_index.hpp"

#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point.hpp>
#include <boost/geometry/index/rtree.hpp>
#include <utility>

#include "dartwright/drawing/choice.hpp"
#include "dartwright/geometry/closest.hpp"

namespace dartwright {
namespace {

namespace bg = boost::geometry;
using Corner = bg::model::point<double, 2, bg::cs::cartesian>;
using Rectangle = bg::model::box<Corner>;
using Entry = std::pair<Rectangle, std::size_t>;

double how_far_off(const Wedge& wedge, Point words) {
    return closest_point(Line{wedge.mouth, wedge.point}, words).distance;
}

std::vector<Entry> entries_of(const std::vector<Wedge>& wedges) {
    std::vector<Entry> entries;
    for (const Wedge& wedge : wedges) {
        const Box box = bounds(Line{wedge.mouth, wedge.point});
        entries.push_back({{{box.low.x, box.low.y}, {box.high.x, box.high.y}}, entries.size()});
    }
    return entries;
}

}  // namespace

struct WedgeIndex::Tree {
    bg::index::rtree<Entry, bg::index::quadratic<16>> entries;
};

WedgeIndex::WedgeIndex(std::vector<Wedge> wedges)
    : wedges_(std::move(wedges)), tree_(new Tree{decltype(Tree::entries)(entries_of(wedges_))}) {}

WedgeIndex::~WedgeIndex() = default;

bool WedgeIndex::is_nearest(std::size_t mine, Point words, double clearly_mm) const {
    const double reach = how_far_off(wedges_[mine], words) + clearly_mm;
    const Rectangle about{{words.x - reach, words.y - reach}, {words.x + reach, words.y + reach}};
    const auto is_as_near = [&](const Entry& entry) {
        return entry.second != mine && reach - choice_mm > how_far_off(wedges_[entry.second], words);
    };
    return tree_->entries.qbegin(bg::index::intersects(about) && bg::index::satisfies(is_as_near)) ==
           tree_->entries.qend();
}

}  // namespace dartwright
