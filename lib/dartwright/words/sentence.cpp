#include "dartwright/words/sentence.hpp"

#include <cmath>

#include "dartwright/words/lengths.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {
namespace {

// What is left of a limit that was computed, as a share of the last decimal: 12.2 is not rounded down
// to 12.1.
constexpr double rounding_share = 1e-9;

double down_to_step(double length, double step) {
    return std::floor(length / step + rounding_share) * step;
}
double up_to_step(double length, double step) {
    return std::ceil(length / step - rounding_share) * step;
}

constexpr double mm_of_inch = mm_in(Unit::inch);
constexpr double parted_inch_mm = mm_of_inch / 32;

// Finer than 1/32 in a limit is told in decimals, so that it is not nothing.
std::string limit_in_inches(double limit_mm, bool is_most) {
    const double parted =
        is_most ? down_to_step(limit_mm, parted_inch_mm) : up_to_step(limit_mm, parted_inch_mm);
    if (!is_most || parted > 0) return width_in_unit(parted, Unit::inch) + " in";
    return shortest_decimals(down_to_step(limit_mm / mm_of_inch, 0.001), 3) + " in";
}

std::string difference_in_inches(double length_mm, int decimals_of_mm) {
    const double inches = rounded_figure(length_mm / mm_of_inch);
    // A hundredth of the unit more, as the inch is 25 millimetres; less of what is an inch and more.
    return shortest_decimals(inches, decimals_of_mm + (std::abs(inches) < 1 ? 2 : 1)) + " in";
}

// A thousandth of an inch, so that who goes there is near enough.
std::string inches_of_place(double mm) {
    return fixed_decimals(rounded_figure(mm / mm_of_inch), 3);
}

double limited(double length_mm, bool is_most, int decimals) {
    const double step = power_of_ten(-decimals);
    return is_most ? down_to_step(length_mm, step) : up_to_step(length_mm, step);
}

}  // namespace

Sentence::Sentence(std::string words) {
    if (!words.empty()) parts_.push_back({Kind::words, std::move(words)});
}

Sentence& Sentence::operator+=(const Sentence& more) {
    if (&more == this) return *this += Sentence(more);
    for (const Part& part : more.parts_) {
        const bool runs_on = part.kind == Kind::words && !parts_.empty() && parts_.back().kind == Kind::words;
        if (runs_on)
            parts_.back().words += part.words;
        else
            parts_.push_back(part);
    }
    return *this;
}

std::string Sentence::in(Unit unit) const {
    std::string text;
    for (const Part& part : parts_) {
        if (part.kind == Kind::words)
            text += part.words;
        else
            text += unit == Unit::inch && std::isfinite(part.mm) && std::isfinite(part.y_mm)
                        ? told_in_inches(part)
                        : told_in_mm(part);
    }
    return text;
}

std::string Sentence::told_in_inches(const Part& part) {
    switch (part.kind) {
        case Kind::words:
            break;
        case Kind::measure:
        case Kind::width:
            return width_in_unit(part.mm, Unit::inch) + " in";
        case Kind::difference:
            return difference_in_inches(part.mm, part.decimals == by_size ? 1 : part.decimals);
        case Kind::within:
            return shortest_decimals(down_to_step(part.mm / mm_of_inch, 0.001), 3) + " in";
        case Kind::on_edge:
            return with_figures(part.mm / mm_of_inch, 7) + "in";
        case Kind::as_asked:
            return with_figures(rounded_figure(part.mm / mm_of_inch), 4) + " in";
        case Kind::at_most:
            return limit_in_inches(part.mm, true);
        case Kind::at_least:
            return limit_in_inches(part.mm, false);
        case Kind::place:
            return "(" + inches_of_place(part.mm) + ", " + inches_of_place(part.y_mm) + ") in";
    }
    return part.words;
}

std::string Sentence::told_in_mm(const Part& part) {
    switch (part.kind) {
        case Kind::words:
            break;
        case Kind::measure:
        case Kind::difference:
            return (part.decimals == by_size ? figure_in_sentence(part.mm)
                                             : with_decimals(part.mm, part.decimals)) +
                   " mm";
        case Kind::within:
            return with_decimals(part.mm, 6) + " mm";
        case Kind::on_edge:
            return plain_decimal(part.mm);
        case Kind::as_asked:
        case Kind::width:
            return with_figures(part.mm, 6) + " mm";
        case Kind::at_most:
            return with_decimals(limited(part.mm, true, part.decimals), part.decimals) + " mm";
        case Kind::at_least:
            return with_decimals(limited(part.mm, false, part.decimals), part.decimals) + " mm";
        case Kind::place:
            return "(" + with_decimals(part.mm, 1) + ", " + with_decimals(part.y_mm, 1) + ") mm";
    }
    return part.words;
}

Sentence Sentence::length(Kind kind, double mm, int decimals) {
    Sentence told;
    told.parts_.push_back({kind, {}, mm, 0, decimals});
    return told;
}

Sentence measure_told(double length_mm, int decimals) {
    return Sentence::length(Sentence::Kind::measure, length_mm, decimals);
}
Sentence difference_told(double length_mm, int decimals) {
    return Sentence::length(Sentence::Kind::difference, length_mm, decimals);
}
Sentence most_told(double length_mm, int decimals) {
    return Sentence::length(Sentence::Kind::at_most, length_mm, decimals);
}
Sentence least_told(double length_mm, int decimals) {
    return Sentence::length(Sentence::Kind::at_least, length_mm, decimals);
}
Sentence asked_told(double length_mm) {
    return Sentence::length(Sentence::Kind::as_asked, length_mm, 0);
}
Sentence width_told(double width_mm) {
    return Sentence::length(Sentence::Kind::width, width_mm, 0);
}
Sentence within_told(double length_mm) {
    return Sentence::length(Sentence::Kind::within, length_mm, 0);
}
Sentence on_edge_told(double distance_mm) {
    return Sentence::length(Sentence::Kind::on_edge, distance_mm, 0);
}
Sentence place_told(double x_mm, double y_mm) {
    Sentence told = Sentence::length(Sentence::Kind::place, x_mm, 1);
    told.parts_.back().y_mm = y_mm;
    return told;
}

}  // namespace dartwright
