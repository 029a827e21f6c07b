#include "dartwright/drawing/text_box.hpp"

#include <algorithm>
#include <array>
#include <locale>
#include <sstream>

#include "dartwright/drawing/text_layout.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/elementary.hpp"

namespace dartwright {

namespace {

std::array<Point, 4> corners_of(const TurnedBox& box) {
    const Vector along = box.half_length * box.along;
    const Vector up = box.half_height * perpendicular(box.along);
    return {box.centre - along - up, box.centre + along - up, box.centre + along + up,
            box.centre - along + up};
}

struct Reach {
    double low;
    double high;
};
template <std::size_t count>
Reach reach_along(const std::array<Point, count>& points, Vector axis) {
    Reach reach{dot(points[0] - Point{}, axis), dot(points[0] - Point{}, axis)};
    for (const Point point : points) {
        const double here = dot(point - Point{}, axis);
        reach = {std::min(reach.low, here), std::max(reach.high, here)};
    }
    return reach;
}

/// Whether a line across `axis` lies between the two sets of points. The axis has the length given.
template <std::size_t m, std::size_t n>
bool is_parted(const std::array<Point, m>& a, const std::array<Point, n>& b, Vector axis, double length = 1) {
    const Reach first = reach_along(a, axis);
    const Reach second = reach_along(b, axis);
    const double touching = touching_mm * length;
    return first.high < second.low - touching || second.high < first.low - touching;
}

}  // namespace

double text_width(const std::string& words, double size_mm, bool is_bold) {
    return line_width(words, {size_mm, is_bold});
}

namespace {

/// Bytes up to the end of the character that begins there: those that carry one on begin with the bits 10.
std::size_t next_character(const std::string& words, std::size_t at) {
    do {
        ++at;
    } while (at < words.size() && (static_cast<unsigned char>(words[at]) & 0xC0u) == 0x80);
    return at;
}

/// A word in parts that are no wider; a part has one character at least.
std::vector<std::string> broken(const std::string& word, double size_mm, double width_mm, bool is_bold) {
    std::vector<std::string> parts;
    for (std::size_t from = 0; from < word.size();) {
        std::size_t end = next_character(word, from);
        while (end < word.size()) {
            const std::size_t longer = next_character(word, end);
            if (text_width(word.substr(from, longer - from), size_mm, is_bold) > width_mm) break;
            end = longer;
        }
        parts.push_back(word.substr(from, end - from));
        from = end;
    }
    return parts;
}

bool is_number(const std::string& word) {
    return !word.empty() && word.find_first_not_of("0123456789.+-") == word.npos &&
           word.find_first_of("0123456789") != word.npos;
}

bool is_fraction(const std::string& word) {
    const std::size_t stroke = word.find('/');
    return stroke != word.npos && is_number(word.substr(0, stroke)) && is_number(word.substr(stroke + 1));
}

bool is_unit(std::string word) {
    while (!word.empty() && std::string(",;.:)").find(word.back()) != std::string::npos) word.pop_back();
    return word == "mm" || word == "cm" || word == "in" || word == "cm\u00b2";
}

/// Words as they may be parted: a length, `6 9/32 in`, stays whole.
std::vector<std::string> parted(const std::string& words) {
    std::vector<std::string> parts;
    std::istringstream stream(words);
    stream.imbue(std::locale::classic());
    std::string last;
    for (std::string word; stream >> word; last = word) {
        const bool is_carried_on = (is_fraction(word) && is_number(last)) ||
                                   (is_unit(word) && (is_number(last) || is_fraction(last)));
        if (is_carried_on)
            parts.back() += " " + word;
        else
            parts.push_back(word);
    }
    return parts;
}

}  // namespace

std::vector<std::string> wrapped(const std::string& words, double size_mm, double width_mm, bool is_bold) {
    std::vector<std::string> lines;
    for (const std::string& word : parted(words)) {
        const std::string longer = lines.empty() ? word : lines.back() + " " + word;
        if (!lines.empty() && text_width(longer, size_mm, is_bold) <= width_mm)
            lines.back() = longer;
        else if (text_width(word, size_mm, is_bold) <= width_mm)
            lines.push_back(word);
        else
            for (const std::string& part : broken(word, size_mm, width_mm, is_bold)) lines.push_back(part);
    }
    return lines;
}

TurnedBox box_of(const DrawnText& text) {
    const double width = text_width(text.words, text.size_mm, text.is_bold);
    const double before = text.anchor == Anchor::start    ? 0
                          : text.anchor == Anchor::middle ? width / 2
                                                          : width;
    TurnedBox box;
    box.along = {cosine_of(text.angle_rad), sine_of(text.angle_rad)};
    box.half_length = width / 2;
    box.half_height = text.size_mm * (text_ascent_em + text_descent_em) / 2;
    const double rise = text.size_mm * (text_ascent_em - text_descent_em) / 2;
    box.centre = text.at + (width / 2 - before) * box.along + rise * perpendicular(box.along);
    return box;
}

Box upright_box(const TurnedBox& box) {
    const auto corners = corners_of(box);
    const Reach x = reach_along(corners, {1, 0});
    const Reach y = reach_along(corners, {0, 1});
    return {{x.low, y.low}, {x.high, y.high}};
}

TurnedBox grown(TurnedBox box, double margin_mm) {
    box.half_length += margin_mm;
    box.half_height += margin_mm;
    return box;
}

bool is_meeting(const TurnedBox& a, const TurnedBox& b) {
    const auto first = corners_of(a);
    const auto second = corners_of(b);
    for (const Vector axis : {a.along, perpendicular(a.along), b.along, perpendicular(b.along)})
        if (is_parted(first, second, axis)) return false;
    return true;
}

bool is_meeting(const TurnedBox& box, Point from, Point to) {
    const auto corners = corners_of(box);
    const std::array<Point, 2> stretch{from, to};
    if (is_parted(corners, stretch, box.along) || is_parted(corners, stretch, perpendicular(box.along)))
        return false;
    return !is_parted(corners, stretch, perpendicular(to - from), distance(from, to));
}

}  // namespace dartwright
