#include "dartwright/cutting/lay_columns.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace dartwright::cutting {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
// A side that ends on the line between two columns counts in both, whatever rounding did to it.
constexpr double column_slack_mm = 1e-6;

double height_at(Point a, Point b, double x) {
    if (a.x == b.x) return a.y;
    return a.y + (b.y - a.y) * std::clamp((x - a.x) / (b.x - a.x), 0.0, 1.0);
}

void widen(Interval& interval, double y) {
    interval.low = std::min(interval.low, y);
    interval.high = std::max(interval.high, y);
}

void add_side(std::vector<Interval>& columns, Point a, Point b, double step_mm) {
    if (b.x < a.x) std::swap(a, b);
    const auto column_of = [&](double x) {
        return static_cast<std::size_t>(
            std::clamp(std::floor(x / step_mm), 0.0, static_cast<double>(columns.size() - 1)));
    };
    const std::size_t last = column_of(b.x + column_slack_mm);
    for (std::size_t i = column_of(a.x - column_slack_mm); i <= last; ++i) {
        const double left = static_cast<double>(i) * step_mm;
        widen(columns[i], height_at(a, b, std::max(left, a.x)));
        widen(columns[i], height_at(a, b, std::min(left + step_mm, b.x)));
        if (a.x == b.x) widen(columns[i], b.y);
    }
}

}  // namespace

PieceColumns columns_of(const std::vector<Point>& polygon, double step_mm) {
    PieceColumns piece;
    for (const Point p : polygon) {
        piece.width = std::max(piece.width, p.x);
        piece.height = std::max(piece.height, p.y);
    }
    const auto count = static_cast<std::size_t>(std::ceil(piece.width / step_mm));
    piece.columns.assign(std::max<std::size_t>(count, 1), {infinity, -infinity});
    for (std::size_t i = 0; i < polygon.size(); ++i)
        add_side(piece.columns, polygon[i], polygon[(i + 1) % polygon.size()], step_mm);
    return piece;
}

Strip::Strip(double width_mm, double step_mm, double gap_mm)
    : width_mm_(width_mm),
      step_mm_(step_mm),
      gap_mm_(gap_mm),
      taken_(static_cast<std::size_t>(std::ceil(width_mm / step_mm)) + 1) {}

std::size_t Strip::places_across(const PieceColumns& piece) const {
    const double room = width_mm_ - piece.width;
    return room < 0 ? 0 : static_cast<std::size_t>(std::floor(room / step_mm_)) + 1;
}

namespace {

// Where a stretch comes to lie that is raised in one column over whatever it runs into there.
double raised_in(const std::vector<Interval>& taken, Interval own, double y) {
    auto next = std::partition_point(taken.begin(), taken.end(), [&](const Interval& interval) {
        return interval.high <= y + own.low + column_slack_mm;
    });
    for (; next != taken.end() && next->low < y + own.high; ++next) y = next->high - own.low;
    return y;
}

}  // namespace

// Raised over whatever it runs into until it runs into nothing. What is taken is `gap` larger all round.
std::optional<double> Strip::lowest(const PieceColumns& piece, std::size_t first_column, double below) const {
    const std::size_t count = piece.columns.size();
    double y = 0;
    // Round and round, until every column has been passed since it was last raised.
    for (std::size_t i = 0, passed = 0; passed < count; i = i + 1 == count ? 0 : i + 1, ++passed) {
        const double raised = raised_in(taken_[first_column + i], piece.columns[i], y);
        if (raised == y) continue;
        y = raised;
        passed = 0;
        if (!(y < below)) return std::nullopt;
    }
    return y < below ? std::optional(y) : std::nullopt;
}

namespace {

void add_to(std::vector<Interval>& taken, Interval added) {
    const auto first = std::partition_point(taken.begin(), taken.end(),
                                            [&](const Interval& each) { return each.high < added.low; });
    auto last = first;
    for (; last != taken.end() && last->low <= added.high; ++last) {
        added.low = std::min(added.low, last->low);
        added.high = std::max(added.high, last->high);
    }
    taken.insert(taken.erase(first, last), added);
}

}  // namespace

void Strip::take(const PieceColumns& piece, std::size_t first_column, double y) {
    const auto reach = static_cast<std::size_t>(std::ceil(gap_mm_ / step_mm_));
    for (std::size_t i = 0; i < piece.columns.size(); ++i) {
        const std::size_t column = first_column + i;
        const std::size_t last = std::min(column + reach, taken_.size() - 1);
        for (std::size_t k = column < reach ? 0 : column - reach; k <= last; ++k)
            add_to(taken_[k], {y + piece.columns[i].low - gap_mm_, y + piece.columns[i].high + gap_mm_});
    }
}

}  // namespace dartwright::cutting
