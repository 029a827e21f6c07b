#include "dartwright/pattern/pattern_rules.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/pattern/name_table.hpp"
#include "dartwright/pattern/outline_direction.hpp"
#include "dartwright/words/lists.hpp"
#include "dartwright/words/name.hpp"
#include "dartwright/words/quoted.hpp"

namespace dartwright {
namespace {

/// The unit is what is wrong with most such numbers, so it is said.
std::string largest_in(Unit unit) {
    return unit == Unit::mm ? "10000 mm" : unit == Unit::cm ? "1000 cm" : "393.7 in";
}

/// Not so for NaN.
bool are_one_place(Point a, Point b) {
    return distance(a, b) < least_measured_distance_mm;
}

/// The words are made only where there is something to say: most numbers are right. `in_unit` gives the limit
/// in the unit that is said.
template <class InUnit>
std::string wanted_within(double mm, double largest_mm, const InUnit& in_unit) {
    if (std::abs(mm) <= largest_mm) return {};
    const std::string limit = std::to_string(std::lround(largest_mm / 1000)) + " m";
    return "at most " + limit + (mm < 0 ? " from zero" : "") + ", which is " + in_unit();
}

std::string whole_mm(double mm) {
    return std::to_string(std::lround(mm)) + " mm";
}

template <class InUnit>
std::string coordinate_within(double mm, double largest_mm, const InUnit& in_unit) {
    return std::isnan(mm) ? std::string("a number") : wanted_within(mm, largest_mm, in_unit);
}

template <class InUnit>
std::string length_within(double mm, double largest_mm, const InUnit& in_unit) {
    return mm >= 0 ? wanted_within(mm, largest_mm, in_unit) : std::string("a length that is not negative");
}

bool has_few_letters(std::string_view name) {
    return name.size() <= most_letters || letters_of(name) <= most_letters;
}

std::string wanted_unless(bool is_right, const char* wanted) {
    return is_right ? std::string() : wanted;
}

}  // namespace

std::size_t letters_of(std::string_view name) {
    // In UTF-8 a letter has one byte that continues no other.
    const auto begins = [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; };
    return static_cast<std::size_t>(std::count_if(name.begin(), name.end(), begins));
}

std::string wanted_instead_of_name(std::string_view name) {
    if (is_name(name) && has_few_letters(name)) return {};
    if (is_name(name)) return "a name of " + std::to_string(most_letters) + " letters or fewer";
    return name.empty() ? "a name that is not empty" : "a name without control characters";
}

std::string wanted_instead_of_edge_name(const std::string& name) {
    return wanted_unless(!is_end_word(name),
                         "another name: \"start\" and \"end\" are kept for the ends of a run");
}

std::string wanted_instead_of_coordinate(double mm, Unit unit) {
    return coordinate_within(mm, largest_length_mm, [&] { return largest_in(unit); });
}

std::string wanted_instead_of_length(double mm, Unit unit) {
    return length_within(mm, largest_length_mm, [&] { return largest_in(unit); });
}

std::string wanted_instead_of_coordinate_within(double mm, double largest_mm) {
    return coordinate_within(mm, largest_mm, [&] { return whole_mm(largest_mm); });
}

std::string wanted_instead_of_length_within(double mm, double largest_mm) {
    return length_within(mm, largest_mm, [&] { return whole_mm(largest_mm); });
}

std::string wanted_instead_of_angle(double degrees) {
    return wanted_unless(degrees >= 0 && degrees <= 180, "an angle from 0 to 180 degrees");
}

std::string wanted_instead_of_whole(double number, int low, int high) {
    if (number == std::floor(number) && number >= low && number <= high) return {};
    return "a whole number from " + std::to_string(low) + " to " + std::to_string(high);
}

std::string wanted_instead_of_fullness(double fullness_mm, double item_length_mm) {
    return wanted_unless(fullness_mm == 0 || fullness_mm < item_length_mm,
                         "less than the length of the item");
}

std::string wanted_instead_of_stitched(double stitched_mm, double leg_mm) {
    return wanted_unless(stitched_mm > 0 && stitched_mm < leg_mm,
                         "more than 0 and less than the length of the legs");
}

std::string wanted_instead_of_stretch_end(double at, double to) {
    return wanted_unless(to > at, "a distance beyond \"at\"");
}

std::string wanted_of_entries(std::size_t count) {
    if (count <= most_entries) return {};
    return "at most " + std::to_string(most_entries) + " in one list";
}

std::string wanted_of_pieces(std::size_t count) {
    return wanted_unless(count > 0, "one piece or more");
}

std::string wanted_of_stretches(std::size_t count) {
    return wanted_unless(count > 0, "a width, or one stretch or more");
}

std::string wanted_of_parts(std::size_t count) {
    return wanted_unless(count > 0, "one part or more");
}

std::string wanted_of_line(std::size_t points) {
    return wanted_unless(points >= 2, "two points or more");
}

std::string wanted_of_measured_points(std::size_t points) {
    return wanted_unless(points > 0, "one measured point or more");
}

PerhapsComplaint edges_missing(std::size_t edges) {
    if (edges > 0) return std::nullopt;
    return Complaint{"no edge", "one edge or more"};
}

Complaint named_again(const char* kind, const std::string& name) {
    return {std::string("the ") + kind + " " + in_quotes(name) + " again", "a name of its own"};
}

Complaint not_existing(const std::string& kind, const std::string& name,
                       const std::vector<std::string>& known) {
    return {"no such " + kind + " as " + in_quotes(name),
            known.empty() ? "a pattern with " + kind + "s" : any_of(known)};
}

PerhapsComplaint second_fold_trouble(bool has_fold, const std::string& fold, const std::string& second) {
    if (!has_fold) return Complaint{"\"second_fold\" without \"fold\"", "\"fold\" where there is one fold"};
    if (fold.empty() || second != fold) return std::nullopt;
    return Complaint{in_quotes(fold) + ", which is the fold already", "another edge"};
}

Complaint ends_without_fold() {
    return {"\"ends\" without \"fold\"", "the fold whose ends they are"};
}

Complaint side_up_without_worn() {
    return {"\"side_up\" without \"worn\"", "where the piece is worn: \"front\" or \"back\""};
}

PerhapsComplaint grain_trouble(Point from, Point to) {
    if (from != to) return std::nullopt;
    return Complaint{"the same point as \"from\"", "another point"};
}

PerhapsComplaint end_trouble(const std::string& name, const std::string& edge, const std::string& before,
                             const std::string& after) {
    if (is_end_word(name)) return std::nullopt;
    const bool is_at_both = before == after;
    if (!is_at_both && (name == before || name == after)) return std::nullopt;
    if (is_at_both && name == before)
        return Complaint{in_quotes(name) + ", which is at both ends of " + in_quotes(edge),
                         any_of({"start", "end"})};
    return Complaint{in_quotes(name) + ", which is not next to " + in_quotes(edge),
                     is_at_both ? any_of({"start", "end"}) : any_of({before, after})};
}

PerhapsComplaint begins_trouble(const std::string& edge, bool is_whole_outline, bool has_begun) {
    if (!is_whole_outline)
        return Complaint{"\"begins\" on " + in_quotes(edge) + ", which begins at a corner",
                         "it on an edge that is the whole outline of its piece"};
    if (has_begun)
        return Complaint{"\"begins\" on " + in_quotes(edge) + " again", "one notch at which it begins"};
    return std::nullopt;
}

Complaint not_next_to_seam(const std::string& name, const std::vector<std::string>& known) {
    return {in_quotes(name) + ", which is not next to the seam", any_of(known)};
}

PerhapsComplaint measured_point_trouble(Point before, Point point) {
    if (!are_one_place(before, point)) return std::nullopt;
    return Complaint{"the same place as the point before", "another point"};
}

PerhapsComplaint last_measured_point_trouble(Point last, Point end) {
    if (!are_one_place(last, end)) return std::nullopt;
    return Complaint{"the same place as the item's end", "another point"};
}

NamedStretches stretches_of(std::span<const std::string_view> edges) {
    constexpr std::size_t usual = 16;
    std::vector<std::size_t> heads;
    heads.reserve(usual);
    for (std::size_t i = 0; i < edges.size(); ++i)
        if (i == 0 || edges[i] != edges[i - 1]) heads.push_back(i);
    if (heads.size() > 1 && edges[heads.front()] == edges[heads.back()]) heads.pop_back();
    NamedStretches out;
    out.names.reserve(heads.size());
    NameTable seen;
    for (std::size_t k = 0; k < heads.size(); ++k) {
        const std::string_view name = edges[heads[k]];
        if (seen.add(name)) {
            out.names.push_back(name);
            continue;
        }
        out.again.push_back({heads[k],
                             {in_quotes(name) + " again, after " + in_quotes(edges[heads[k] - 1]),
                              "the items of one name next to each other, or a name of its own such as " +
                                  in_quotes("left " + std::string(name))}});
    }
    return out;
}

}  // namespace dartwright
