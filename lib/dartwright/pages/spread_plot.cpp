#include "dartwright/pages/spread_plot.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "dartwright/files/assessment_words.hpp"
#include "dartwright/files/markup_text.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {
namespace {

// Sizes are in the picture's own units, of which 320 are its width.
constexpr double plot_width = 320;
constexpr double middle_x = 0.5 * plot_width;
constexpr double half_plot = 145;
constexpr double axis_y = 40;
constexpr double tallest_bar = 34;
constexpr double label_base = 54;
/// Odd, so that one bar stands on what was asked.
constexpr std::size_t bars = 29;

Ladder ladder_of(Quantity quantity, const Ladders& ladders) {
    if (quantity == Quantity::length) return ladders.lengths;
    if (quantity == Quantity::angle) return ladders.angles;
    return {};
}

/// The next number of the form 1, 2 or 5 times a power of ten.
double round_up(double value) {
    if (value <= 0) return 0;
    constexpr int largest = 300;
    int exponent = 0;
    while (exponent < largest && power_of_ten(exponent + 1) <= value) ++exponent;
    while (exponent > -largest && power_of_ten(exponent) > value) --exponent;
    const double power = power_of_ten(exponent);
    for (const double step : {1.0, 2.0, 5.0})
        if (value <= step * power * (1 + 1e-9)) return step * power;
    return 10 * power;
}

/// How far the picture reaches to either side: all that was found, yet not so far that the rungs can no
/// longer be told apart.
double reach_of(const std::vector<float>& differences, const Ladder& ladder, double mm_in_step) {
    double farthest = 0;
    for (const float difference : differences) farthest = std::max(farthest, std::abs(double{difference}));
    constexpr double times_last_rung = 4;
    const double last = ladder.empty() ? 0 : ladder.back().within;
    if (last > 0) farthest = std::clamp(farthest, 1.25 * last, times_last_rung * last);
    constexpr double least = 1e-3;
    return mm_in_step * round_up(std::max(farthest, least) / mm_in_step);
}

std::array<std::size_t, bars> counts_of(const std::vector<float>& differences, double reach) {
    std::array<std::size_t, bars> counts{};
    for (const float difference : differences) {
        const double place = (double{difference} / reach + 1) / 2 * (bars - 1);
        ++counts[static_cast<std::size_t>(std::lround(std::clamp(place, 0.0, bars - 1.0)))];
    }
    return counts;
}

std::string plot_number(double value) {
    return shortest_decimals(value, 2);
}

std::string upright_line(const char* kind, double x, double top) {
    return std::string("<line class=\"") + kind + "\" x1=\"" + plot_number(x) + "\" x2=\"" + plot_number(x) +
           "\" y1=\"" + plot_number(top) + "\" y2=\"" + plot_number(axis_y) + "\"/>";
}

std::string axis_label(double x, const std::string& words) {
    return "<text x=\"" + plot_number(x) + "\" y=\"" + plot_number(label_base) + "\">" + markup_text(words) +
           "</text>";
}

std::string bars_of(const std::array<std::size_t, bars>& counts) {
    const double most = static_cast<double>(*std::max_element(counts.begin(), counts.end()));
    constexpr double step = 2 * half_plot / (bars - 1);
    std::string out;
    for (std::size_t i = 0; i < bars; ++i) {
        if (counts[i] == 0) continue;
        constexpr double least_height = 2;
        const double height = std::max(least_height, tallest_bar * static_cast<double>(counts[i]) / most);
        const double x = middle_x - half_plot + (static_cast<double>(i) - 0.4) * step;
        out += "<rect x=\"" + plot_number(x) + "\" y=\"" + plot_number(axis_y - height) + "\" width=\"" +
               plot_number(0.8 * step) + "\" height=\"" + plot_number(height) + "\"/>";
    }
    return out;
}

}  // namespace

std::string spread_plot(const MeasureSummary& measure, const Ladders& ladders, Unit unit) {
    const Spread spread = spread_of(measure.differences);
    const Ladder ladder = ladder_of(measure.quantity, ladders);
    const double reach =
        reach_of(measure.differences, ladder, measure.quantity == Quantity::length ? mm_in(unit) : 1);
    const auto text = [&](double value) { return signed_quantity_text(measure.quantity, value, unit); };
    std::string out = "<svg class=\"spread\" viewBox=\"0 0 320 58\" role=\"img\"><title>" +
                      markup_text("off by " + text(spread.least) + " to " + text(spread.greatest) +
                                  ", the middle one by " + text(spread.median)) +
                      "</title>";
    for (const Rung& rung : ladder) {
        if (rung.within >= reach) continue;
        const double aside = half_plot * rung.within / reach;
        out += upright_line("rung", middle_x - aside, 4) + upright_line("rung", middle_x + aside, 4);
    }
    out += bars_of(counts_of(measure.differences, reach)) + upright_line("axis", middle_x, 2) +
           "<line class=\"axis\" x1=\"5\" x2=\"315\" y1=\"40\" y2=\"40\"/>";
    const bool is_beyond_low = spread.least < -reach;
    const bool is_beyond_high = spread.greatest > reach;
    out += axis_label(middle_x - half_plot + 24, (is_beyond_low ? "\u2264 " : "") + text(-reach)) +
           axis_label(middle_x, "0") +
           axis_label(middle_x + half_plot - 24, (is_beyond_high ? "\u2265 " : "") + text(reach));
    return out + "</svg>";
}

}  // namespace dartwright
