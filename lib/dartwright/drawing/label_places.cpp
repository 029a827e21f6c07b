#include "dartwright/drawing/label_places.hpp"

#include <algorithm>
#include <array>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/point.hpp>
#include <boost/geometry/index/rtree.hpp>
#include <cmath>
#include <cstdint>
#include <memory>

#include "dartwright/drawing/table_look.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/elementary.hpp"
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
std::size_t count_of(const Tree<Value>& tree, const Rectangle& around, const IsMet& is_met,
                     std::size_t enough = SIZE_MAX) {
    std::size_t count = 0;
    for (auto at = tree.qbegin(bg::index::intersects(around)); count < enough && at != tree.qend(); ++at)
        if (is_met(at->second)) ++count;
    return count;
}

/// The middle of each line of a block.
std::vector<Point> middles_of(const std::vector<DrawnText>& lines, Point centre, Vector up) {
    double top = 0;
    for (const DrawnText& line : lines) top += line_height(line);
    top /= 2;
    std::vector<Point> middles;
    middles.reserve(lines.size());
    for (const DrawnText& line : lines) {
        middles.push_back(centre + (top - line_height(line) / 2) * up);
        top -= line_height(line);
    }
    return middles;
}

}  // namespace

struct TakenPlaces::Held {
    Tree<Stretch> stretches;
    Tree<TurnedBox> boxes;

    /// What was met last: most places that are tried one after another are taken by the same.
    std::array<TurnedBox, 3> last_boxes;
    std::array<Stretch, 3> last_stretches;
    std::size_t boxes_met = 0;
    std::size_t stretches_met = 0;

    std::size_t meetings(const TurnedBox& box, double margin_mm, std::size_t enough) const;
    bool is_clear(const TurnedBox& wide);
    bool is_clear_of_boxes(Point from, Point to);
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
    for (const Curve& curve : path.curves) flatten_onto(points, curve, words_chord_error_mm);
    for (std::size_t i = 1; i < points.size(); ++i) add(points[i - 1], points[i]);
    if (path.is_closed) add(points.back(), points.front());
}

void TakenPlaces::add(const Label& label) {
    for (const DrawnText& line : label) add(box_of(line));
}

std::size_t TakenPlaces::Held::meetings(const TurnedBox& box, double margin_mm, std::size_t enough) const {
    const TurnedBox wide = grown(box, margin_mm);
    const Rectangle around = rectangle_around(wide);
    const std::size_t lines = count_of(
        stretches, around, [&](const Stretch& stretch) { return is_meeting(wide, stretch.from, stretch.to); },
        enough);
    return lines + count_of(
                       boxes, around, [&](const TurnedBox& other) { return is_meeting(wide, other); },
                       enough - std::min(lines, enough));
}

bool TakenPlaces::Held::is_clear(const TurnedBox& wide) {
    for (std::size_t k = 0; k < std::min(boxes_met, last_boxes.size()); ++k)
        if (is_meeting(wide, last_boxes[k])) return false;
    for (std::size_t k = 0; k < std::min(stretches_met, last_stretches.size()); ++k)
        if (is_meeting(wide, last_stretches[k].from, last_stretches[k].to)) return false;
    const Rectangle around = rectangle_around(wide);
    const auto is_box_met = [&](const TurnedBox& other) {
        if (!is_meeting(wide, other)) return false;
        last_boxes[boxes_met++ % last_boxes.size()] = other;
        return true;
    };
    const auto is_stretch_met = [&](const Stretch& stretch) {
        if (!is_meeting(wide, stretch.from, stretch.to)) return false;
        last_stretches[stretches_met++ % last_stretches.size()] = stretch;
        return true;
    };
    return !is_any_met(boxes, around, is_box_met) && !is_any_met(stretches, around, is_stretch_met);
}

bool TakenPlaces::Held::is_clear_of_boxes(Point from, Point to) {
    for (std::size_t k = 0; k < std::min(boxes_met, last_boxes.size()); ++k)
        if (is_meeting(last_boxes[k], from, to)) return false;
    return !is_any_met(boxes, rectangle_around(from, to), [&](const TurnedBox& box) {
        if (!is_meeting(box, from, to)) return false;
        last_boxes[boxes_met++ % last_boxes.size()] = box;
        return true;
    });
}

std::size_t TakenPlaces::meetings(const TurnedBox& box, double margin_mm) const {
    return held_->meetings(box, margin_mm, SIZE_MAX);
}

std::size_t TakenPlaces::meetings(const Label& label, double margin_mm) const {
    return meetings(label, margin_mm, SIZE_MAX);
}

std::size_t TakenPlaces::meetings(const Label& label, double margin_mm, std::size_t enough) const {
    std::size_t count = 0;
    for (const DrawnText& line : label)
        if (count < enough) count += held_->meetings(box_of(line), margin_mm, enough - count);
    return count;
}

bool TakenPlaces::is_clear(const TurnedBox& box, double margin_mm) const {
    return held_->is_clear(grown(box, margin_mm));
}

bool TakenPlaces::is_clear(const Label& label, double margin_mm) const {
    return std::all_of(label.begin(), label.end(),
                       [&](const DrawnText& line) { return is_clear(box_of(line), margin_mm); });
}

std::size_t TakenPlaces::boxes_met(Point from, Point to) const {
    return count_of(held_->boxes, rectangle_around(from, to),
                    [&](const TurnedBox& box) { return is_meeting(box, from, to); });
}

bool TakenPlaces::is_clear_of_boxes(Point from, Point to) const {
    return held_->is_clear_of_boxes(from, to);
}

Placed place(TakenPlaces& taken, const std::vector<Label>& candidates, double margin_mm) {
    Placed best;
    std::size_t least = 0;
    for (const Label& candidate : candidates) {
        const std::size_t met = best.label.empty() ? taken.meetings(candidate, margin_mm)
                                                   : taken.meetings(candidate, margin_mm, least);
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
    const Vector up{-sine_of(place.angle_rad), cosine_of(place.angle_rad)};
    return place.centre + (size.height / 2 - line_height(lines.front()) / 2) * up;
}

double upright_angle(Vector along) {
    const double angle = angle_of_direction(along.y, along.x);
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
    const Vector up{-sine_of(angle_rad), cosine_of(angle_rad)};
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
    const std::vector<Point> middles = middles_of(lines, centre, {-sine_of(angle_rad), cosine_of(angle_rad)});
    Label label;
    label.reserve(lines.size());
    for (std::size_t k = 0; k < lines.size(); ++k) label.push_back(centred(lines[k], middles[k], angle_rad));
    return label;
}

std::vector<TurnedBox> boxes_of(const Candidates& candidates, std::size_t i) {
    if (candidates.boxes) return candidates.boxes(i);
    std::vector<TurnedBox> boxes;
    for (const DrawnText& line : candidates.label(i)) boxes.push_back(box_of(line));
    return boxes;
}

MeasuredBlock::MeasuredBlock(std::vector<DrawnText> of_lines) : lines(std::move(of_lines)) {
    for (const DrawnText& line : lines)
        widths_mm.push_back(text_width(line.words, line.size_mm, line.is_bold));
}

// As `box_of` has it of each line of the label, to the last bit, without its words.
std::vector<TurnedBox> MeasuredBlock::boxes(const BlockPlace& place) const {
    const Vector along{cosine_of(place.angle_rad), sine_of(place.angle_rad)};
    const Vector up = perpendicular(along);
    const std::vector<Point> middles = middles_of(lines, place.centre, up);
    std::vector<TurnedBox> all;
    all.reserve(lines.size());
    for (std::size_t k = 0; k < lines.size(); ++k) {
        const double size_mm = lines[k].size_mm;
        const Point at = middles[k] - (text_ascent_em - text_descent_em) / 2 * size_mm * up;
        const double rise = size_mm * (text_ascent_em - text_descent_em) / 2;
        TurnedBox& box = all.emplace_back();
        box.along = along;
        box.half_length = widths_mm[k] / 2;
        box.half_height = size_mm * (text_ascent_em + text_descent_em) / 2;
        box.centre = at + rise * up;
    }
    return all;
}

Label MeasuredBlock::label(const BlockPlace& place) const {
    return centred_block(lines, place.centre, place.angle_rad);
}

Candidates blocks_at(std::vector<DrawnText> lines, std::vector<BlockPlace> places) {
    const auto block = std::make_shared<const MeasuredBlock>(std::move(lines));
    const auto at = std::make_shared<const std::vector<BlockPlace>>(std::move(places));
    return {at->size(), [block, at](std::size_t i) { return block->label((*at)[i]); },
            [block, at](std::size_t i) { return block->boxes((*at)[i]); }};
}

}  // namespace dartwright
