#include "dartwright/drawing/text_box.hpp"

#include <cairo.h>

#include <algorithm>
#include <array>
#include <memory>
#include <sstream>

#include "dartwright/drawing/clean_text.hpp"

namespace dartwright {

namespace {

// Widths scale with the size (no hinting), so that one measuring size will do for all.
constexpr double measuring_size = 100;

struct Release {
    void operator()(cairo_scaled_font_t* font) const { cairo_scaled_font_destroy(font); }
    void operator()(cairo_font_face_t* face) const { cairo_font_face_destroy(face); }
    void operator()(cairo_font_options_t* options) const { cairo_font_options_destroy(options); }
};

using ScaledFont = std::unique_ptr<cairo_scaled_font_t, Release>;

ScaledFont measuring_font(bool is_bold) {
    const std::unique_ptr<cairo_font_face_t, Release> face(cairo_toy_font_face_create(
        text_face, CAIRO_FONT_SLANT_NORMAL, is_bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL));
    const std::unique_ptr<cairo_font_options_t, Release> options(cairo_font_options_create());
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    cairo_matrix_t size;
    cairo_matrix_t identity;
    cairo_matrix_init_scale(&size, measuring_size, measuring_size);
    cairo_matrix_init_identity(&identity);
    return ScaledFont(cairo_scaled_font_create(face.get(), &size, &identity, options.get()));
}

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

/// Whether a line across `axis` lies between the two sets of points.
template <std::size_t m, std::size_t n>
bool is_parted(const std::array<Point, m>& a, const std::array<Point, n>& b, Vector axis) {
    const Reach first = reach_along(a, axis);
    const Reach second = reach_along(b, axis);
    return first.high < second.low || second.high < first.low;
}

}  // namespace

double text_width(const std::string& words, double size_mm, bool is_bold) {
    const ScaledFont font = measuring_font(is_bold);
    cairo_text_extents_t extents{};
    cairo_scaled_font_text_extents(font.get(), clean_text(words).c_str(), &extents);
    return extents.x_advance * size_mm / measuring_size;
}

std::vector<std::string> wrapped(const std::string& words, double size_mm, double width_mm, bool is_bold) {
    std::vector<std::string> lines;
    std::istringstream stream(words);
    for (std::string word; stream >> word;) {
        const std::string longer = lines.empty() ? word : lines.back() + " " + word;
        if (!lines.empty() && text_width(longer, size_mm, is_bold) <= width_mm)
            lines.back() = longer;
        else
            lines.push_back(word);
    }
    return lines;
}

TurnedBox box_of(const DrawnText& text) {
    const double width = text_width(text.words, text.size_mm, text.is_bold);
    const double before = text.anchor == Anchor::start    ? 0
                          : text.anchor == Anchor::middle ? width / 2
                                                          : width;
    TurnedBox box;
    box.along = {std::cos(text.angle_rad), std::sin(text.angle_rad)};
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
    for (const Vector axis : {box.along, perpendicular(box.along), perpendicular(to - from)})
        if (is_parted(corners, stretch, axis)) return false;
    return true;
}

}  // namespace dartwright
