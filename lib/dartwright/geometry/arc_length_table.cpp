#include "dartwright/geometry/arc_length_table.hpp"

#include <algorithm>

#include "dartwright/geometry/arc_length.hpp"

namespace dartwright {
namespace {

// A line is a cubic walked evenly.
Cubic as_cubic(const Curve& curve) {
    if (const auto* cubic = std::get_if<Cubic>(&curve)) return *cubic;
    const Line& line = std::get<Line>(curve);
    return {{line.a, between(line.a, line.b, 1.0 / 3), between(line.a, line.b, 2.0 / 3), line.b}};
}

// Half the allowed error goes to Newton's last step, and the rest to the lengths of the cells; a cell may
// have 1/500 of it, so that 250 cells are allowed for. Near a cusp there are at most about 100.
constexpr double share_for_a_cell = 0.002;

// Cells no wider than a quarter of the curve (in s, half widths) make the guess good enough for one step.
constexpr double widest_cell = 0.25;

// Slopes up to 3 keep a cubic guess monotone (Fritsch and Carlson 1980).
double monotone_slope(double average_speed, double speed) {
    return average_speed < 3 * speed ? average_speed / speed : 3;
}

double guess(double share, double start_slope, double end_slope) {
    const double rest = 1 - share;
    return share * (share * (3 - 2 * share) + rest * (rest * start_slope - share * end_slope));
}

}  // namespace

ArcLengthTable::ArcLengthTable(const Curve& curve) : hodograph_(speed::hodograph_of(as_cubic(curve))) {
    const double least = speed::least_length(hodograph_, {});
    if (!(least > 0)) return;
    enough_ = 0.5 * std::max(table_place_error_mm / hodograph_.unit_mm, table_place_relative_error * least);
    const double for_a_cell = std::min(enough_, arc_length_relative_error * least) * share_for_a_cell;
    cells_.reserve(8);
    fill(speed::roots_of(hodograph_), {}, std::max(for_a_cell, 1e-13 * least));
}

void ArcLengthTable::fill(const speed::Roots& roots, speed::Stretch stretch, double tolerance) {
    const bool is_good = stretch.half_width <= widest_cell &&
                         (speed::is_short_rule_enough(hodograph_, roots, stretch, tolerance) ||
                          stretch.half_width * speed::greatest_speed(hodograph_, stretch) <= tolerance);
    if (is_good) return add_cell(stretch);
    const double low = stretch.middle - stretch.half_width;
    const double high = stretch.middle + stretch.half_width;
    const double place =
        stretch.half_width > widest_cell ? stretch.middle : speed::cutting_place(roots, stretch);
    fill(roots, {0.5 * (low + place), 0.5 * (place - low)}, tolerance);
    fill(roots, {0.5 * (place + high), 0.5 * (high - place)}, tolerance);
}

void ArcLengthTable::add_cell(speed::Stretch stretch) {
    const speed::Quadratic z = speed::local(hodograph_, stretch);
    Cell cell;
    cell.start = 0.5 * (1 + stretch.middle - stretch.half_width);
    cell.end = 0.5 * (1 + stretch.middle + stretch.half_width);
    cell.distance = whole_;
    cell.length = speed::short_rule_length(hodograph_, stretch);
    const double average_speed = cell.length / stretch.half_width;
    cell.start_slope = monotone_slope(average_speed, speed::speed_at(hodograph_, cell.start));
    cell.end_slope = monotone_slope(average_speed, speed::speed_at(hodograph_, cell.end));
    cell.bend = (std::sqrt(squared_norm(z.c1)) + 2 * std::sqrt(squared_norm(z.c2))) / stretch.half_width;
    whole_ += cell.length;
    cells_.push_back(cell);
}

double ArcLengthTable::parameter_at(double distance_mm) const {
    const double distance = distance_mm / hodograph_.unit_mm;
    if (!(distance > 0) || cells_.empty()) return 0;
    if (!(distance < whole_)) return 1;
    const auto after = std::upper_bound(cells_.begin(), cells_.end(), distance,
                                        [](double d, const Cell& cell) { return d < cell.distance; });
    return parameter_in(*std::prev(after), distance);
}

double ArcLengthTable::parameter_in(const Cell& cell, double distance) const {
    const double wanted = distance - cell.distance;
    const double width = cell.end - cell.start;
    double low = cell.start;
    double high = cell.end;
    double t = cell.start;
    if (cell.length > 0) t += width * guess(wanted / cell.length, cell.start_slope, cell.end_slope);
    while (low < t && t < high) {
        const speed::Stretch done = speed::stretch_between(cell.start, t);
        const double excess = speed::short_rule_length(hodograph_, done) - wanted;
        if (std::abs(excess) <= enough_) return t;
        (excess > 0 ? high : low) = t;
        const double speed = speed::speed_at(hodograph_, t);
        const double step = excess / speed;
        const double next = t - step;
        if (!(low < next && next < high)) {
            t = 0.5 * (low + high);
            continue;
        }
        t = next;
        // What Newton's step leaves is at most this.
        if (cell.bend * step * step <= enough_) return t;
    }
    return t;
}

}  // namespace dartwright
