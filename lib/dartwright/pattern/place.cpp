#include "dartwright/pattern/place.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/pattern/pattern.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {
namespace {

struct Number {
    double value = 0;
    std::size_t end = 0;
};

std::size_t skip_spaces(const std::string& text, std::size_t at) {
    while (at < text.size() && text[at] == ' ') ++at;
    return at;
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

// Digits with a decimal point or comma-free fraction; no sign, no exponent, so that names may follow.
std::optional<Number> plain_number(const std::string& text, std::size_t at) {
    std::size_t end = at;
    while (end < text.size() && is_digit(text[end])) ++end;
    if (end < text.size() && text[end] == '.') {
        ++end;
        while (end < text.size() && is_digit(text[end])) ++end;
    }
    if (end == at || (end == at + 1 && text[at] == '.')) return std::nullopt;
    Number out{0, end};
    const auto read = std::from_chars(text.data() + at, text.data() + end, out.value);
    if (read.ec != std::errc{}) return std::nullopt;
    return out;
}

std::optional<Number> fraction(const std::string& text, std::size_t at) {
    const auto top = plain_number(text, at);
    if (!top || top->end >= text.size() || text[top->end] != '/') return std::nullopt;
    const auto bottom = plain_number(text, top->end + 1);
    if (!bottom || !(bottom->value > 0)) return std::nullopt;
    return Number{top->value / bottom->value, bottom->end};
}

// `2`, `2.5`, `3/8` or `2 3/8`, each reading that the text allows, longest first.
std::vector<Number> numbers_at(const std::string& text, std::size_t at) {
    std::vector<Number> out;
    if (const auto whole = plain_number(text, at)) {
        const std::size_t next = skip_spaces(text, whole->end);
        if (next > whole->end) {
            if (const auto part = fraction(text, next))
                out.push_back({whole->value + part->value, part->end});
        }
        if (const auto part = fraction(text, at)) out.push_back(*part);
        out.push_back(*whole);
    }
    return out;
}

struct UnitWord {
    const char* word;
    double mm;  ///< 0 marks the per cent sign
    Unit unit;
};
constexpr UnitWord unit_words[] = {
    {"mm", 1, Unit::mm}, {"cm", 10, Unit::cm}, {"in", 25.4, Unit::inch}, {"%", 0, Unit::mm}};

ParsedMeasure with_unit(const std::string& text, const Number& number, double sign) {
    const std::size_t at = skip_spaces(text, number.end);
    for (const UnitWord& unit : unit_words) {
        const std::string word = unit.word;
        if (text.compare(at, word.size(), word) != 0) continue;
        const std::size_t end = at + word.size();
        if (unit.mm > 0) return {{sign * number.value * unit.mm, false, unit.unit}, end};
        return {{sign * number.value / 100, true}, end};
    }
    return {{sign * number.value, false}, number.end};
}

std::vector<ParsedMeasure> measures_at_start(const std::string& text) {
    std::size_t at = 0;
    double sign = 1;
    if (!text.empty() && (text[0] == '-' || text[0] == '+')) {
        sign = text[0] == '-' ? -1 : 1;
        at = 1;
    }
    std::vector<ParsedMeasure> out;
    for (const Number& number : numbers_at(text, at)) out.push_back(with_unit(text, number, sign));
    return out;
}

const Run* longest_edge_before_at(const std::string& text, const std::vector<Run>& runs) {
    const Run* best = nullptr;
    for (const Run& run : runs) {
        const bool fits = text.compare(0, run.edge.size() + 1, run.edge + "@") == 0;
        if (fits && (!best || run.edge.size() > best->edge.size())) best = &run;
    }
    return best;
}

// First those after which an edge beside the run is named, as FROM.
std::vector<ParsedMeasure> in_order_of_sense(std::vector<ParsedMeasure> all, const std::string& rest,
                                             const Run& run) {
    const auto names_an_end = [&](const ParsedMeasure& parsed) {
        return parsed.characters < rest.size() && rest[parsed.characters] == '/' &&
               end_named(run, rest.substr(parsed.characters + 1));
    };
    std::stable_partition(all.begin(), all.end(), names_an_end);
    return all;
}

}  // namespace

std::optional<ParsedMeasure> measure_at_start(const std::string& text) {
    const std::vector<ParsedMeasure> all = measures_at_start(text);
    if (all.empty()) return std::nullopt;
    return all.front();
}

double parse_length(const std::string& text) {
    for (const ParsedMeasure& parsed : measures_at_start(text)) {
        if (parsed.characters == text.size() && !parsed.measure.is_share) return parsed.measure.value;
    }
    throw BadWords("\"" + text +
                   "\" is not a length; expected one such as 60, 6cm or 2 3/8in (bare numbers are mm)");
}

double parse_share(const std::string& text) {
    for (const ParsedMeasure& parsed : measures_at_start(text)) {
        if (parsed.characters == text.size() && parsed.measure.is_share) return parsed.measure.value;
    }
    if (const auto part = fraction(text, 0); part && part->end == text.size()) return part->value;
    throw BadWords("\"" + text +
                   "\" is not a share; expected a per cent such as 50% or a fraction such as 1/3");
}

double parse_angle_deg(const std::string& text) {
    const bool has_sign = !text.empty() && text[0] == '-';
    const auto number = plain_number(text, has_sign ? 1 : 0);
    if (number && number->end == text.size()) return has_sign ? -number->value : number->value;
    throw BadWords("\"" + text + "\" is not an angle; expected degrees such as 8 or 12.5");
}

Point parse_point(const std::string& text) {
    const std::size_t comma = text.find(',');
    if (comma != std::string::npos) {
        try {
            return {parse_length(text.substr(0, comma)),
                    parse_length(text.substr(skip_spaces(text, comma + 1)))};
        } catch (const BadWords&) {
            // Said of the whole below.
        }
    }
    throw BadWords("\"" + text +
                   "\" is not a point; expected X,Y such as 391.5,170 or 39.15cm,17cm (bare numbers are mm)");
}

int parse_whole(const std::string& text) {
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    constexpr int most = 10000;
    if (error == std::errc{} && end == text.data() + text.size() && !text.empty() && value >= 0 &&
        value <= most)
        return value;
    throw BadWords("\"" + text + "\" is not a count; expected a whole number such as 3");
}

Place parse_place(const std::string& text, const std::vector<Run>& runs, const std::string& piece) {
    const std::size_t sign = text.find('@');
    if (sign == std::string::npos) {
        throw BadWords("\"" + text +
                       "\" is not a place; expected EDGE@DISTANCE/FROM such as side@60/armhole");
    }
    const Run* run = longest_edge_before_at(text, runs);
    if (!run) run_named(runs, text.substr(0, sign), piece);  // throws, naming those that exist
    const std::string rest = text.substr(run->edge.size() + 1);
    for (const ParsedMeasure& parsed : in_order_of_sense(measures_at_start(rest), rest, *run)) {
        const bool ends_here = parsed.characters == rest.size();
        if (!ends_here && rest[parsed.characters] != '/') continue;
        Place place{run->edge, parsed.measure, ends_here ? "" : rest.substr(parsed.characters + 1)};
        if (place.from.empty() && !(place.distance.is_share && place.distance.value == 0.5)) {
            throw BadWords("\"" + text + "\" does not say from which end to measure; expected " + text + "/" +
                           name_of_end(*run, RunEnd::start) + " or " + text + "/" +
                           name_of_end(*run, RunEnd::end));
        }
        return place;
    }
    throw BadWords(
        "\"" + rest + "\" in the place \"" + text +
        "\" is not a distance; expected one such as 60/armhole, 6cm/armhole, 2 3/8in/armhole or 50%");
}

std::string to_text(const Place& place) {
    // Room for every double without an exponent: 309 digits before the point, or 324 zeros and 17 digits
    // after.
    char digits[400];
    const double shown = place.distance.is_share ? place.distance.value * 100 : place.distance.value;
    const auto end = std::to_chars(digits, digits + sizeof digits, shown, std::chars_format::fixed);
    std::string out = place.edge + "@" + std::string(digits, end.ptr);
    if (place.distance.is_share) out += "%";
    if (!place.from.empty()) out += "/" + place.from;
    return out;
}

Sentence told(const Place& place) {
    if (place.distance.is_share) return to_text(place);
    return place.edge + "@" + on_edge_told(place.distance.value) +
           (place.from.empty() ? "" : "/" + place.from);
}

double distance_from_start(const Place& place, const Run& run) {
    const double along = place.distance.is_share ? place.distance.value * run.length : place.distance.value;
    // A written distance may name the run's very end: rounding of its length is no fault of the writer.
    if (!(along >= -sum_rounding_mm) || !(along <= run.length + sum_rounding_mm)) {
        throw BeyondTheRun(told(place), run.edge, run.length, place.distance.unit);
    }
    const double inside = std::clamp(along, 0.0, run.length);
    if (place.from.empty()) return inside;
    const auto end = end_named(run, place.from);
    if (!end) {
        throw UnknownName("end", place.from, {name_of_end(run, RunEnd::start), name_of_end(run, RunEnd::end)},
                          "edge \"" + run.edge + "\"");
    }
    return *end == RunEnd::start ? inside : run.length - inside;
}

}  // namespace dartwright
