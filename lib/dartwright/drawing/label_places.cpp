#include "dartwright/drawing/label_places.hpp"

#include <algorithm>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point.hpp>
#include <boost/geometry/index/rtree.hpp>

#include "dartwright/drawing/table_look.hpp"
#include "dartwright/geometry/flatten.hpp"

namespace dartwright {

namespace bg = boost::geometry;

// Named, because a class of the header holds them.
namespace taken_places {

struct Stretch {
    Point from;
    Point to;
};

using Corner = bg::model::point<double, 2, bg::cs::cartesian>;
using Rectangle = bg::model::box<Corner>;

template <typename Value>
using Tree = bg::index::rtree<std::pair<Rectangle, Value>, bg::index::quadratic<16>>;

}  // namespace taken_places

namespace {

using namespace taken_places;

/// Words keep further away from lines than this error.
constexpr double chord_error_mm = 0.2;

double line_height(const DrawnText& line) {
    return look::line_step_em * line.size_mm;
}

/// A little wider than what is in it, so that what meets to rounding is asked for.
constexpr double rounding_margin_mm = 1e-3;

Rectangle rectangle_around(const Box& box) {
    return {{box.low.x - rounding_margin_mm, box.low.y - rounding_margin_mm},
            {box.high.x + rounding_margin_mm, box.high.y + rounding_margin_mm}};
}
Rectangle rectangle_around(const TurnedBox& box) {
    return rectangle_around(upright_box(box));
}
Rectangle rectangle_around(Point from, Point to) {
    return rectangle_around(Box{{std::min(from.x, to.x), std::min(from.y, to.y)},
                                {std::max(from.x, to.x), std::max(from.y, to.y)}});
}

template <typename Value, typename IsMet>
bool is_any_met(const Tree<Value>& tree, const Rectangle& around, const IsMet& is_met) {
    return std::any_of(tree.qbegin(bg::index::intersects(around)), tree.qend(),
                       [&](const auto& held) { return is_met(held.second); });
}

template <typename Value, typename IsMet>
std::size_t count_of(const Tree<Value>& tree, const Rectangle& around, const IsMet& is_met) {
    std::size_t count = 0;
    for (auto at = tree.qbegin(bg::index::intersects(around)); at != tree.qend(); ++at)
        if (is_met(at->second)) ++count;
    return count;
}

}  // namespace

struct TakenPlaces::Held {
    Tree<Stretch> stretches;
    Tree<TurnedBox> boxes;
};

TakenPlaces::TakenPlaces() : held_(new Held) {}
TakenPlaces::TakenPlaces(TakenPlaces&&) noexcept = default;
TakenPlaces& TakenPlaces::operator=(TakenPlaces&&) noexcept = default;
TakenPlaces::~TakenPlaces() = default;

void TakenPlaces::add(Point from, Point to) {
    held_->stretches.insert({rectangle_around(from, to), Stretch{from, to}});
}

void TakenPlaces::add(const TurnedBox& box) {
    held_->boxes.insert({rectangle_around(box), box});
}

void TakenPlaces::add(const DrawnPath& path) {
    if (path.curves.empty()) return;
    std::vector<Point> points{start_of(path.curves.front())};
    for (const Curve& curve : path.curves) flatten_onto(points, curve, chord_error_mm);
    for (std::size_t i = 1; i < points.size(); ++i) add(points[i - 1], points[i]);
    if (path.is_closed) add(points.back(), points.front());
}

void TakenPlaces::add(const Label& label) {
    for (const DrawnText& line : label) add(box_of(line));
}

std::size_t TakenPlaces::meetings(const TurnedBox& box, double margin_mm) const {
    const TurnedBox wide = grown(box, margin_mm);
    const Rectangle around = rectangle_around(wide);
    return count_of(held_->stretches, around,
                    [&](const Stretch& stretch) { return is_meeting(wide, stretch.from, stretch.to); }) +
           count_of(held_->boxes, around, [&](const TurnedBox& other) { return is_meeting(wide, other); });
}

std::size_t TakenPlaces::meetings(const Label& label, double margin_mm) const {
    std::size_t count = 0;
    for (const DrawnText& line : label) count += meetings(box_of(line), margin_mm);
    return count;
}

bool TakenPlaces::is_clear(const TurnedBox& box, double margin_mm) const {
    const TurnedBox wide = grown(box, margin_mm);
    const Rectangle around = rectangle_around(wide);
    return !is_any_met(held_->boxes, around, [&](const TurnedBox& other) {
        return is_meeting(wide, other);
    }) && !is_any_met(held_->stretches, around, [&](const Stretch& stretch) {
        return is_meeting(wide, stretch.from, stretch.to);
    });
}

bool TakenPlaces::is_clear(const Label& label, double margin_mm) const {
    return std::all_of(label.begin(), label.end(),
                       [&](const DrawnText& line) { return is_clear(box_of(line), margin_mm); });
}

std::size_t TakenPlaces::boxes_met(Point from, Point to) const {
    return count_of(held_->boxes, rectangle_around(from, to),
                    [&](const TurnedBox& box) { return is_meeting(box, from, to); });
}

Placed place(TakenPlaces& taken, const std::vector<Label>& candidates, double margin_mm) {
    Placed best;
    std::size_t least = 0;
    for (const Label& candidate : candidates) {
        const std::size_t met = taken.meetings(candidate, margin_mm);
        if (best.label.empty() || met < least) {
            best.label = candidate;
            least = met;
        }
        if (met == 0) break;
    }
    best.is_clear = !best.label.empty() && least == 0;
    taken.add(best.label);
    return best;
}

Point centre_of_first(const std::vector<DrawnText>& lines, const BlockSize& size, const BlockPlace& place) {
    const Vector up{-std::sin(place.angle_rad), std::cos(place.angle_rad)};
    return place.centre + (size.height / 2 - line_height(lines.front()) / 2) * up;
}

double upright_angle(Vector along) {
    const double angle = std::atan2(along.y, along.x);
    // All nearly upright words are read from the right, so that neighbouring edges read alike.
    constexpr double lean = radians(15.0);
    constexpr double choice_rad = 1e-9;
    if (angle > pi / 2 + lean + choice_rad) return angle - pi;
    if (angle <= -pi / 2 + lean + choice_rad) return angle + pi;
    return angle;
}

DrawnText centred(const DrawnText& style, Point centre, double angle_rad) {
    DrawnText text = style;
    text.anchor = Anchor::middle;
    text.angle_rad = angle_rad;
    const Vector up{-std::sin(angle_rad), std::cos(angle_rad)};
    text.at = centre - (text_ascent_em - text_descent_em) / 2 * text.size_mm * up;
    return text;
}

BlockSize size_of_block(const std::vector<DrawnText>& lines) {
    BlockSize size;
    for (const DrawnText& line : lines) {
        size.width = std::max(size.width, text_width(line.words, line.size_mm, line.is_bold));
        size.height += line_height(line);
    }
    return size;
}

Label centred_block(const std::vector<DrawnText>& lines, Point centre, double angle_rad) {
    const Vector up{-std::sin(angle_rad), std::cos(angle_rad)};
    double top = 0;
    for (const DrawnText& line : lines) top += line_height(line);
    top /= 2;
    Label label;
    label.reserve(lines.size());
    for (const DrawnText& line : lines) {
        label.push_back(centred(line, centre + (top - line_height(line) / 2) * up, angle_rad));
        top -= line_height(line);
    }
    return label;
}

}  // namespace dartwright
