#include "dartwright/drawing/lay_drawing.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/drawing/choice.hpp"
#include "dartwright/drawing/label_places.hpp"
#include "dartwright/drawing/table_look.hpp"
#include "dartwright/drawing/text_box.hpp"
#include "dartwright/drawing/text_column.hpp"
#include "dartwright/drawing/words_along.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {
namespace {

constexpr double lay_margin_mm = 10;
constexpr double title_space_mm = 14;
constexpr double foot_space_mm = 18;
constexpr double lay_title_size_mm = 6;
constexpr double lay_word_size_mm = 3.6;
constexpr double lay_small_size_mm = 2.8;
constexpr double grain_half_mm = 11;
constexpr double grain_below_mm = -8;

const Colour face_up = look::paper;
const Colour face_down = look::folded;

class LayDrawer {
  public:
    LayDrawer(const Lay& lay, const LayLook& look) : lay_(lay), look_(look) {}

    Drawing drawing() {
        Drawing out;
        out.title = look_.title;
        out.groups = {cloth(), pieces(), words()};
        double right = on_sheet({0, lay_.length_mm}).x;
        if (const auto box = bounds(out.groups.back())) right = std::max(right, box->high.x);
        out.width_mm = rounded_up(right + lay_margin_mm);
        out.height_mm =
            rounded_up(lay_.width_mm / lay_scale + 2 * lay_margin_mm + title_space_mm + foot_space_mm);
        return out;
    }

  private:
    // The table lies before the cutter: the fold at the front, the cloth unrolled to the right.
    Point on_sheet(Point p) const {
        return {lay_margin_mm + p.y / lay_scale, lay_margin_mm + foot_space_mm + p.x / lay_scale};
    }

    std::vector<Point> on_sheet(const std::vector<Point>& points) const {
        std::vector<Point> out;
        for (const Point p : points) out.push_back(on_sheet(p));
        return out;
    }

    DrawnGroup cloth() const {
        const Point low = on_sheet({0, 0});
        const Point high = on_sheet({lay_.width_mm, lay_.length_mm});
        DrawnGroup group{"cloth", {}, {}};
        DrawnPath sheet = polygon({low, {high.x, low.y}, high, {low.x, high.y}}, look::calico);
        sheet.stroke = look::solid(look::pencil, look::thin_width);
        group.items.push_back(std::move(sheet));
        if (look_.is_folded)
            group.items.push_back(polyline({low, {high.x, low.y}}, look::solid(look::ink, 1.4)));
        return group;
    }

    DrawnGroup pieces() const {
        DrawnGroup group{"pieces", {}, {}};
        for (const LaidPiece& piece : lay_.pieces) group.groups.push_back(drawn(piece));
        return group;
    }

    DrawnGroup drawn(const LaidPiece& piece) const {
        DrawnGroup group{piece.name, {}, {}};
        const std::vector<Point> points = on_sheet(piece.polygon);
        DrawnPath shape = polygon(points, piece.is_mirrored ? face_down : face_up);
        shape.stroke = look::solid(look::ink, 0.5);
        group.items.push_back(std::move(shape));
        const Point middle = place_of_words(piece, points);
        for (DrawnText& line : words_at(piece, middle)) group.items.push_back(std::move(line));
        add_grain(group, middle + Vector{0, grain_below_mm}, piece.grain.y > 0 ? 1.0 : -1.0);
        return group;
    }

    // Where the words with the grain arrow below them lie inside the piece, clear of its line, or else in the
    // middle.
    static Point place_of_words(const LaidPiece& piece, const std::vector<Point>& points) {
        TakenPlaces lines;
        for (std::size_t i = 0; i < points.size(); ++i) lines.add(points[i], points[(i + 1) % points.size()]);
        const std::vector<Point> places = places_inside(points);
        for (const Point place : places) {
            const Point grain = place + Vector{0, grain_below_mm};
            const TurnedBox arrow{grain, {1, 0}, grain_half_mm, 1};
            if (lines.meetings(words_at(piece, place), look::clear_of_lines) == 0 &&
                lines.meetings(arrow, look::clear_of_lines) == 0 &&
                where_in_polygon(points, grain) == Where::inside)
                return place;
        }
        return places.front();
    }

    static void add_grain(DrawnGroup& group, Point middle, double way) {
        const Vector along{way, 0};
        const Vector across{0, 1};
        const Point tip = middle + grain_half_mm * along;
        group.items.push_back(
            polyline({middle - grain_half_mm * along, tip}, look::solid(look::ink, look::thin_width)));
        group.items.push_back(polygon({tip, tip - 3 * along + across, tip - 3 * along - across}, look::ink));
    }

    static Label words_at(const LaidPiece& piece, Point middle) {
        constexpr double longest_name_mm = 60;
        const std::string shown = shortened(piece.name, lay_word_size_mm, longest_name_mm);
        DrawnText name{shown, {}, lay_word_size_mm, Anchor::middle, 0, look::ink, std::nullopt, true};
        DrawnText how{piece.how, {}, lay_small_size_mm, Anchor::middle, 0, look::ink, std::nullopt, false};
        std::vector<DrawnText> lines{name, how};
        if (piece.is_mirrored) {
            how.words = "pattern face down";
            lines.push_back(how);
        }
        return centred_block(lines, middle, 0);
    }

    DrawnGroup words() const {
        DrawnGroup group{"words", {}, {}};
        const double top = lay_margin_mm + foot_space_mm + lay_.width_mm / lay_scale;
        constexpr double longest_title_mm = 240;
        add(group, shortened(look_.title, lay_title_size_mm, longest_title_mm), {lay_margin_mm, top + 8},
            lay_title_size_mm, true);
        const double below = lay_margin_mm + foot_space_mm;
        add(group, look_.is_folded ? "fold of the cloth" : "selvedge", {lay_margin_mm, below - 5},
            lay_small_size_mm, false);
        add(group, look_.is_folded ? "selvedges" : "selvedge", {lay_margin_mm, top + 1.5}, lay_small_size_mm,
            false);
        const double cloth_width = look_.is_folded ? 2 * lay_.width_mm : lay_.width_mm;
        add(group,
            "buy " + bought_words(lay_.length_mm, look_.unit) + " or more: the lay takes " +
                length_words(lay_.length_mm, look_.unit) + " of cloth " +
                length_words(cloth_width, look_.unit) + " wide" +
                (look_.is_folded ? ", folded lengthwise" : ", opened"),
            {lay_margin_mm, below - 11}, lay_word_size_mm, true);
        add(group,
            "one fifth of true size; arrows are the grain" +
                std::string(has_face_down() ? "; darker pieces lie with their pattern face down" : ""),
            {lay_margin_mm, below - 17}, lay_small_size_mm, false);
        return group;
    }

    bool has_face_down() const {
        return std::any_of(lay_.pieces.begin(), lay_.pieces.end(),
                           [](const LaidPiece& piece) { return piece.is_mirrored; });
    }

    static void add(DrawnGroup& group, const std::string& words, Point at, double size, bool is_bold) {
        group.items.push_back(DrawnText{words, at, size, Anchor::start, 0, look::ink, std::nullopt, is_bold});
    }

    const Lay& lay_;
    const LayLook& look_;
};

}  // namespace

Drawing draw_lay(const Lay& lay, const LayLook& look) {
    return LayDrawer(lay, look).drawing();
}

}  // namespace dartwright
