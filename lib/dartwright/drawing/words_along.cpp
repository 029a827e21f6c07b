#include "dartwright/drawing/words_along.hpp"

#include <algorithm>
#include <array>
#include <memory>
#include <set>

#include "dartwright/drawing/choice.hpp"
#include "dartwright/drawing/table_look.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/flatten.hpp"
#include "dartwright/geometry/polygon_index.hpp"

namespace dartwright {

namespace {

constexpr std::array<double, 11> shares{0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1, 0.9};

/// A line of points with the distances along it.
class MeasuredLine {
  public:
    explicit MeasuredLine(std::vector<Point> points) : points_(std::move(points)), distances_{0} {
        for (std::size_t i = 1; i < points_.size(); ++i)
            distances_.push_back(distances_.back() + distance(points_[i - 1], points_[i]));
    }

    double length() const { return distances_.back(); }

    Point at(double wanted) const {
        if (wanted <= 0) return points_.front();
        if (wanted >= length()) return points_.back();
        const auto after = std::upper_bound(distances_.begin(), distances_.end(), wanted);
        const auto i = static_cast<std::size_t>(after - distances_.begin());
        return between(points_[i - 1], points_[i],
                       (wanted - distances_[i - 1]) / (distances_[i] - distances_[i - 1]));
    }

    /// How far the part between two distances reaches from `base` in a direction.
    double reach(Point base, Vector direction, double from, double to) const {
        double most = std::max(dot(at(from) - base, direction), dot(at(to) - base, direction));
        const auto first = std::upper_bound(distances_.begin(), distances_.end(), from);
        for (auto i = static_cast<std::size_t>(first - distances_.begin());
             i < points_.size() && distances_[i] < to; ++i)
            most = std::max(most, dot(points_[i] - base, direction));
        return most;
    }

  private:
    std::vector<Point> points_;
    std::vector<double> distances_;
};

double text_height(const DrawnText& text) {
    return (text_ascent_em + text_descent_em) * text.size_mm;
}

BlockSize size_on_line(const std::vector<DrawnText>& lines) {
    BlockSize size = size_of_block(lines);
    if (lines.size() == 1) size.height = text_height(lines.front());
    return size;
}

struct WordsOnLine {
    MeasuredLine line;
    MeasuredBlock block;
    BlockSize size;

    /// Words whose middle lies at a share of the line.
    BlockPlace at(double share, double clear_mm, bool is_left) const {
        const double middle_distance = share * line.length();
        const double from = std::max(0.0, middle_distance - size.width / 2);
        const double to = std::min(line.length(), middle_distance + size.width / 2);
        const Vector along = unit(line.at(to) - line.at(from));
        const Vector out = is_left ? perpendicular(along) : -perpendicular(along);
        const Point base = line.at(middle_distance);
        // A hollow line goes on rising beyond the words' ends, where it must stay clear of them too.
        const double beyond = look::clear_of_lines;
        const double off =
            line.reach(base, out, std::max(0.0, from - beyond), std::min(line.length(), to + beyond)) +
            clear_mm + size.height / 2;
        return {base + off * out, upright_angle(along)};
    }
};

}  // namespace

Candidates words_along(const std::vector<Point>& line, const DrawnText& style,
                       const std::vector<double>& distances_mm, LineSide hand) {
    return block_along(line, {style}, distances_mm, hand);
}

Candidates block_along(const std::vector<Point>& line, const std::vector<DrawnText>& lines,
                       const std::vector<double>& distances_mm, LineSide hand) {
    const std::size_t sides = hand == LineSide::either ? 2 : 1;
    const auto words = std::make_shared<const WordsOnLine>(
        WordsOnLine{MeasuredLine(line), MeasuredBlock(lines), size_on_line(lines)});
    const auto place = [words, distances_mm, sides, hand](std::size_t i) {
        const bool is_left = sides == 2 ? i % 2 == 0 : hand == LineSide::left;
        const std::size_t at = i / sides;
        return words->at(shares[at % shares.size()], distances_mm[at / shares.size()], is_left);
    };
    return {distances_mm.size() * shares.size() * sides,
            [words, place](std::size_t i) { return words->block.label(place(i)); },
            [words, place](std::size_t i) { return words->block.boxes(place(i)); }};
}

std::vector<DrawnText> in_lines(const DrawnText& words, std::size_t lines) {
    const auto wrapped_to = [&](double width) {
        return wrapped(words.words, words.size_mm, width, words.is_bold);
    };
    const auto joined_again = [](const std::vector<std::string>& parts) {
        std::string all;
        for (const std::string& part : parts) all += (all.empty() ? "" : " ") + part;
        return all;
    };
    constexpr double wider = 1.06;
    const double whole = text_width(words.words, words.size_mm, words.is_bold);
    const std::string unbroken = joined_again(wrapped_to(wider * whole));
    double width = whole / static_cast<double>(lines);
    std::vector<std::string> found = wrapped_to(width);
    // Wider, too, where a word would be broken.
    while (width < whole && (found.size() > lines || joined_again(found) != unbroken))
        found = wrapped_to(width *= wider);
    std::vector<DrawnText> block;
    for (std::string& line : found) {
        block.push_back(words);
        block.back().words = std::move(line);
    }
    return block;
}

MiddleOfLine middle_of(const std::vector<Point>& line) {
    const MeasuredLine measured(line);
    return {measured.at(measured.length() / 2), -perpendicular(unit(line.back() - line.front()))};
}

LedCandidates words_led(Point from, std::vector<DrawnText> lines, Vector towards, double widest_turn_deg) {
    constexpr double turn_step_deg = 25;
    constexpr double gap = 2.2;
    static constexpr std::array<double, 8> offs{12, 18, 26, 36, 48, 64, 84, 110};
    // Straight on, and each turn to one side and the other.
    const std::size_t turns = 1 + 2 * static_cast<std::size_t>(widest_turn_deg / turn_step_deg);
    const BlockSize size = size_of_block(lines);
    return {offs.size() * turns, [from, lines = std::move(lines), towards, turns, size](std::size_t i) {
                const std::size_t turn = i % turns;
                const double side = turn % 2 == 1 ? 1 : -1;
                const double turn_deg = static_cast<double>((turn + 1) / 2) * turn_step_deg;
                const Vector direction = apply(turn_by(radians(side * turn_deg)), towards);
                const Point end = from + offs[i / turns] * direction;
                // The leader ends at the side of the words that is nearest to the place.
                const bool is_sideways = std::abs(direction.x) > 0.5 + choice_mm;
                const Vector to_centre = is_sideways
                                             ? Vector{std::copysign(size.width / 2 + gap, direction.x), 0}
                                             : Vector{0, std::copysign(size.height / 2 + gap, direction.y)};
                return LedLabel{centred_block(lines, end + to_centre, 0), from, end};
            }};
}

Candidates words_around(Point place, const DrawnText& style) {
    static constexpr std::array<double, 5> offs{5, 7, 10, 15, 22};
    static constexpr std::array<Vector, 8> sides{
        {{1, 0}, {-1, 0}, {1, 1}, {-1, 1}, {1, -1}, {-1, -1}, {0, 1}, {0, -1}}};
    const double half_width = text_width(style.words, style.size_mm, style.is_bold) / 2;
    const double half_height = text_height(style) / 2;
    return {offs.size() * sides.size(), [place, style, half_width, half_height](std::size_t i) {
                const Vector side = sides[i % sides.size()];
                const double off = offs[i / sides.size()];
                const Vector shift{side.x * (off + half_width), side.y * (off + half_height)};
                return Label{centred(style, place + shift, 0)};
            }};
}

std::vector<BlockPlace> places_beside(const Wedge& wedge, const BlockSize& size) {
    const Vector along = unit(wedge.point - wedge.mouth);
    const Vector across = perpendicular(along);
    const double level_reach = std::abs(across.x) * size.width / 2 + std::abs(across.y) * size.height / 2;
    std::vector<BlockPlace> places;
    for (const bool is_level : {true, false}) {
        for (const double gap : {2.2, 4.0, 7.0, 11.0, 16.0, 22.0}) {
            for (const double share : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.9, 1.0}) {
                const Point base = between(wedge.mouth, wedge.point, share);
                const double half_wedge = (1 - share) * wedge.intake / 2;
                const double off = half_wedge + gap + (is_level ? level_reach : size.height / 2);
                const double angle = is_level ? 0 : upright_angle(along);
                for (const double side : {-1.0, 1.0}) places.push_back({base + side * off * across, angle});
            }
        }
    }
    return places;
}

std::vector<Point> places_inside(const std::vector<Point>& polygon) {
    Box box{polygon.front(), polygon.front()};
    for (const Point p : polygon) box = joined(box, Box{p, p});
    constexpr int steps = 36;
    const PolygonIndex index(polygon);
    const Point centre = middle(box.low, box.high);
    struct Found {
        Point place;
        double off = 0;  // from the middle, in steps
    };
    std::vector<Found> found;
    for (int i = 1; i < steps; ++i) {
        for (int j = 1; j < steps; ++j) {
            const Point p{box.low.x + (box.high.x - box.low.x) * i / steps,
                          box.low.y + (box.high.y - box.low.y) * j / steps};
            if (index.where(p) == Where::inside) found.push_back({p, in_steps(distance(p, centre))});
        }
    }
    // Places equally far from the middle keep their order, so that no last bit decides.
    std::stable_sort(found.begin(), found.end(),
                     [](const Found& a, const Found& b) { return a.off < b.off; });
    std::vector<Point> places;
    places.reserve(found.size());
    for (const Found& each : found) places.push_back(each.place);
    return places;
}

LongestStretch longest_stretch(const Outline& outline, const Run& run) {
    LongestStretch longest;
    longest.run = &run;
    std::vector<Point> points;
    double length = 0;
    std::size_t last = 0;
    for (const std::size_t item : run.items) {
        const bool follows = !points.empty() && item == (last + 1) % outline.items.size();
        if (!follows) {
            points = {start_of_item(outline, item)};
            length = 0;
        }
        for (const Curve& curve : curves_of_item(outline, item))
            flatten_onto(points, curve, words_chord_error_mm);
        length += length_of_item(outline, item);
        last = item;
        if (length > longest.length + choice_mm) {
            longest.points = points;
            longest.length = length;
        }
    }
    return longest;
}

std::vector<MarkToName> marks_to_name(const std::vector<Mark>& marks) {
    const auto length_of = [](const Mark& mark) {
        const LineMark* line = std::get_if<LineMark>(&mark.what);
        double length = 0;
        for (std::size_t i = 1; line && i < line->points.size(); ++i)
            length += distance(line->points[i - 1], line->points[i]);
        return length;
    };
    std::vector<MarkToName> order;
    for (const Mark& mark : marks)
        if (!mark.name.empty()) order.push_back({&mark, true});
    std::stable_sort(order.begin(), order.end(), [&](const MarkToName& a, const MarkToName& b) {
        return in_steps(length_of(*a.mark)) > in_steps(length_of(*b.mark));
    });
    std::set<std::string> named;
    for (MarkToName& each : order)
        if (std::holds_alternative<LineMark>(each.mark->what))
            each.is_needed = named.insert(each.mark->name).second;
    std::stable_partition(order.begin(), order.end(), [](const MarkToName& each) { return each.is_needed; });
    return order;
}

std::vector<Point> points_of_stretch(const Outline& outline, const FullStretch& stretch) {
    std::vector<Point> points{start_of_item(outline, stretch.items.front())};
    for (const std::size_t item : stretch.items)
        for (const Curve& curve : curves_of_item(outline, item))
            flatten_onto(points, curve, picture_chord_error_mm);
    points.erase(std::unique(points.begin(), points.end()), points.end());
    return points;
}

}  // namespace dartwright
