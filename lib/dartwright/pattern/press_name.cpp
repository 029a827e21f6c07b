#include "dartwright/pattern/press_name.hpp"

#include <algorithm>
#include <stdexcept>

#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/pattern/whose_sides.hpp"

namespace dartwright {
namespace {

/// Where a run of the one half meets one of the other.
bool is_centre(const std::string& before, const std::string& after) {
    const SidedName a = sided_name(before);
    const SidedName b = sided_name(after);
    return !a.side.empty() && !b.side.empty() && a.side != b.side;
}

/// The places on the outline where the halves meet, an item's start each.
std::vector<Point> centre_places(const Outline& outline) {
    std::vector<Point> places;
    const std::string* before = nullptr;
    for (const OutlineItem& item : outline.items)
        if (item.as_edge()) before = &item.as_edge()->edge;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        const EdgeItem* edge = outline.items[i].as_edge();
        if (!edge) continue;
        if (is_centre(*before, edge->edge)) places.push_back(start_of_item(outline, i));
        before = &edge->edge;
    }
    return places;
}

bool has_end_at(const Mark& mark, Point place) {
    const LineMark* line = std::get_if<LineMark>(&mark.what);
    return line && line->points.size() > 1 &&
           (distance(line->points.front(), place) <= one_point_mm ||
            distance(line->points.back(), place) <= one_point_mm);
}

/// The line that is marked from one meeting of the halves to the other, as a fold leaves it: whole, or in
/// parts of one name where a dart was moved across it.
std::string name_of_centre(const Piece& piece) {
    const std::vector<Point> places = centre_places(piece.outline);
    for (const Mark& candidate : piece.marks) {
        const auto is_reached = [&](Point place) {
            return std::any_of(piece.marks.begin(), piece.marks.end(), [&](const Mark& mark) {
                return mark.name == candidate.name && has_end_at(mark, place);
            });
        };
        if (!candidate.name.empty() && std::all_of(places.begin(), places.end(), is_reached))
            return candidate.name;
    }
    return "the centre line";
}

/// The half that a dart of the outline stands in, by the edge beside it.
std::string half_of(const Outline& outline, std::size_t dart) {
    const std::size_t n = outline.items.size();
    for (std::size_t step = 1; step < n; ++step)
        for (const std::size_t i : {(dart + n - step) % n, (dart + step) % n})
            if (const EdgeItem* edge = outline.items[i].as_edge()) return sided_name(edge->edge).side;
    return "";
}

std::string half_of(const DoubleDart& dart) {
    return sided_name(dart.name).side;
}

std::string pressed_name(const Piece& piece, const std::string& press, const std::string& half) {
    const std::string other = sided_name(press).side;
    const bool is_beyond = !half.empty() && !other.empty() && half != other;
    return is_beyond && !centre_places(piece.outline).empty() ? name_of_centre(piece) : press;
}

}  // namespace

std::string press_name(const Piece& piece, std::size_t item) {
    const DartItem* dart = piece.outline.items.at(item).as_dart();
    if (!dart) throw std::invalid_argument("the item of the outline is an edge, not a dart");
    return pressed_name(piece, dart->press, half_of(piece.outline, item));
}

std::string press_name(const Piece& piece, const DoubleDart& dart) {
    return pressed_name(piece, dart.press, half_of(dart));
}

}  // namespace dartwright
