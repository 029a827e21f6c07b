#include "dartwright/geometry/spline.hpp"

#include <stdexcept>

namespace dartwright {
namespace {

// The width of each span in the centripetal parameter.
std::vector<double> span_widths(std::span<const Point> points) {
    if (points.size() < 2) throw std::invalid_argument("a spline needs two points or more");
    std::vector<double> widths;
    widths.reserve(points.size() - 1);
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const double chord = distance(points[i], points[i + 1]);
        if (!std::isfinite(chord)) throw std::invalid_argument("a spline needs finite points");
        if (!(chord > 0)) throw std::invalid_argument("a spline needs neighbouring points to differ");
        widths.push_back(std::sqrt(chord));
    }
    return widths;
}

// One row of the system: before * d[i-1] + here * d[i] + after * d[i+1] = wanted.
struct Row {
    double before = 0;
    double here = 0;
    double after = 0;
    Vector wanted;
};

// Natural ends: the second derivative vanishes there. Inside: it is the same on both sides.
std::vector<Row> rows_of(std::span<const Point> points, const std::vector<double>& widths) {
    const std::size_t last = points.size() - 1;
    std::vector<Row> rows(points.size());
    rows[0] = {0, 2, 1, 3 / widths[0] * (points[1] - points[0])};
    rows[last] = {1, 2, 0, 3 / widths[last - 1] * (points[last] - points[last - 1])};
    for (std::size_t i = 1; i < last; ++i) {
        const double left = 1 / widths[i - 1];
        const double right = 1 / widths[i];
        rows[i] = {
            left, 2 * (left + right), right,
            3 * (left * left * (points[i] - points[i - 1]) + right * right * (points[i + 1] - points[i]))};
    }
    return rows;
}

// Elimination without pivoting, which is stable because every row is dominated by its diagonal.
std::vector<Vector> solved(std::vector<Row> rows) {
    for (std::size_t i = 1; i < rows.size(); ++i) {
        const double factor = rows[i].before / rows[i - 1].here;
        rows[i].here -= factor * rows[i - 1].after;
        rows[i].wanted = rows[i].wanted - factor * rows[i - 1].wanted;
    }
    std::vector<Vector> out(rows.size());
    Vector next;
    for (std::size_t i = rows.size(); i-- > 0;) {
        next = (rows[i].wanted - rows[i].after * next) / rows[i].here;
        out[i] = next;
    }
    return out;
}

}  // namespace

std::vector<Cubic> spline_through(std::span<const Point> points) {
    const std::vector<double> widths = span_widths(points);
    const std::vector<Vector> slopes = solved(rows_of(points, widths));
    std::vector<Cubic> out;
    out.reserve(widths.size());
    for (std::size_t i = 0; i < widths.size(); ++i) {
        const double third = widths[i] / 3;
        out.push_back({{points[i], points[i] + third * slopes[i], points[i + 1] - third * slopes[i + 1],
                        points[i + 1]}});
    }
    return out;
}

}  // namespace dartwright
