#include "dartwright/drawing/piece_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "dartwright/drawing/choice.hpp"
#include "dartwright/drawing/fullness_words.hpp"
#include "dartwright/drawing/piece_lines.hpp"
#include "dartwright/drawing/table_look.hpp"
#include "dartwright/drawing/wedge_index.hpp"
#include "dartwright/drawing/words_along.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/closest.hpp"
#include "dartwright/geometry/polygon_index.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/press_name.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {

namespace {

constexpr double half_turn_deg = 180;

DrawnText words_in(Colour colour, double size_mm, std::string words) {
    DrawnText text;
    text.words = std::move(words);
    text.size_mm = size_mm;
    text.colour = colour;
    return text;
}

/// Places the words of one piece one after another.
class PieceWords {
  public:
    PieceWords(const Piece& piece, const std::vector<Run>& runs, const WordsWanted& wanted,
               TakenPlaces& taken)
        : piece_(piece),
          runs_(runs),
          wanted_(wanted),
          taken_(taken),
          flat_(flat_outline(piece.outline, DartsDrawn::to_points, words_chord_error_mm).points),
          index_(flat_) {}

    DrawnGroup write() {
        // Those with the least choice of place come first.
        write_edges();
        write_fullness();
        write_fold();
        write_grain();
        write_darts();
        if (wanted_.names) {
            write_marks();
            write_name();
        }
        return group_;
    }

  private:
    void put(const Label& label) {
        taken_.add(label);
        for (const DrawnText& line : label) group_.items.push_back(line);
    }
    void put_best(const std::vector<Label>& candidates) {
        for (const DrawnText& line : place(taken_, candidates, look::clear_of_lines).label)
            group_.items.push_back(line);
    }

    bool is_clear(const std::vector<TurnedBox>& boxes) const {
        return std::all_of(boxes.begin(), boxes.end(),
                           [&](const TurnedBox& box) { return taken_.is_clear(box, look::clear_of_lines); });
    }

    template <typename IsNear>
    bool put_first_clear(const Candidates& near, const IsNear& is_near) {
        for (std::size_t i = 0; i < near.count; ++i) {
            if (!is_clear(boxes_of(near, i))) continue;
            const Label label = near.label(i);
            if (!is_near(label)) continue;
            put(label);
            return true;
        }
        return false;
    }
    void put_if_clear(const Candidates& near) {
        put_first_clear(near, [](const Label&) { return true; });
    }

    template <typename IsNear>
    void put_best_of(const Candidates& near, const IsNear& is_near) {
        std::vector<Label> all;
        for (std::size_t i = 0; i < near.count; ++i)
            if (Label label = near.label(i); is_near(label)) all.push_back(std::move(label));
        put_best(all);
    }

    /// Words that have no clear place near by stand off with a line to where they belong; if there is no
    /// such place either, they take the one that meets least. `is_near` tells which of those near are to be
    /// had at all.
    template <typename IsNear>
    void put_or_lead(const Candidates& near, const LedCandidates& led, const IsNear& is_near) {
        if (!put_first_clear(near, is_near) && !has_led(led)) put_best_of(near, is_near);
    }
    void put_or_lead(const Candidates& near, const LedCandidates& led) {
        put_or_lead(near, led, [](const Label&) { return true; });
    }

    bool has_led(const LedCandidates& led) {
        for (std::size_t i = 0; i < led.count; ++i) {
            const LedLabel candidate = led.label(i);
            const bool is_clear = taken_.is_clear(candidate.words, look::clear_of_lines) &&
                                  taken_.is_clear_of_boxes(candidate.from, candidate.to) &&
                                  !is_inside(box_of(candidate.words.front()).centre);
            if (!is_clear) continue;
            group_.items.push_back(polyline({candidate.from, candidate.to}, look::solid(look::pencil, 0.3)));
            taken_.add(candidate.from, candidate.to);
            put(candidate.words);
            return true;
        }
        return false;
    }

    bool is_inside(Point p) const { return index_.where(p) == Where::inside; }

    std::string edge_words(const Run& run) const {
        const std::string length = wanted_.lengths ? length_words(run.length, wanted_.unit) : "";
        if (!wanted_.names) return length;
        return length.empty() ? run.edge : run.edge + " " + length;
    }

    void write_edges() {
        std::vector<LongestStretch> stretches;
        for (const Run& run : runs_) {
            LongestStretch stretch = longest_stretch(piece_.outline, run);
            if (stretch.points.size() > 1 && !edge_words(run).empty()) stretches.push_back(stretch);
        }
        std::stable_sort(stretches.begin(), stretches.end(),
                         [](const LongestStretch& a, const LongestStretch& b) {
                             return in_steps(a.length) < in_steps(b.length);
                         });
        for (const LongestStretch& stretch : stretches)
            write_edge(stretch, words_in(look::ink, look::edge_size, edge_words(*stretch.run)));
    }

    /// Outside, beside the edge or at the end of a line to it; inside beside it where there is no room, as in
    /// a slit.
    void write_edge(const LongestStretch& stretch, const DrawnText& style) {
        const MiddleOfLine centre = middle_of(stretch.points);
        constexpr double widest_turn_deg = 75;
        const Candidates outside = words_along(stretch.points, style, {2.2, 4, 8, 13}, LineSide::right);
        const auto is_outside = [&](const Label& label) { return !is_inside(box_of(label.front()).centre); };
        if (put_first_clear(outside, is_outside)) return;
        if (has_led(words_led(centre.place, {style}, centre.rightwards, widest_turn_deg))) return;
        const Candidates inside = words_along(stretch.points, style, {2.2, 4}, LineSide::left);
        const auto is_within = [&](const Label& label) { return is_inside(box_of(label.front()).centre); };
        if (!put_first_clear(inside, is_within)) put_best_of(outside, is_outside);
    }

    template <typename IsNear>
    bool put_block_if_clear(const std::vector<Point>& line, const std::vector<std::vector<DrawnText>>& ways,
                            const IsNear& is_near) {
        for (const std::vector<DrawnText>& way : ways) {
            if (put_first_clear(block_along(line, way, {7.5, 10, 14}, LineSide::left), is_near)) return true;
        }
        return false;
    }

    /// Inside along the wave, in one line, in two or in three.
    void write_fullness() {
        for (const FullStretch& stretch : full_stretches(piece_, runs_)) {
            const Run& run = *find_run(runs_, stretch.edge);
            const std::string what =
                wanted_.lengths ? fullness_figures(stretch, wanted_.unit) : fullness_verb(stretch);
            const std::string where = wanted_.names ? fullness_place(piece_, run, stretch, wanted_.unit) : "";
            const std::vector<Point> line = points_of_stretch(piece_.outline, stretch);
            if (line.size() < 2) continue;
            const DrawnText one =
                words_in(look::ink, look::small_size, where.empty() ? what : what + " " + where);
            std::vector<DrawnText> two{words_in(look::ink, look::small_size, what)};
            if (!where.empty()) two.push_back(words_in(look::ink, look::small_size, where));
            const MiddleOfLine centre = middle_of(line);
            const auto is_within = [&](const Label& label) {
                return std::all_of(label.begin(), label.end(),
                                   [&](const DrawnText& words) { return is_inside(box_of(words).centre); });
            };
            if (put_block_if_clear(line, {in_lines(one, 1), two, in_lines(one, 3)}, is_within)) continue;
            put_or_lead(words_along(line, one, {7.5, 10, 14}, LineSide::left),
                        words_led(centre.place, two, centre.rightwards, half_turn_deg), is_within);
        }
    }

    void write_fold() {
        const DrawnText style = words_in(look::ink, look::edge_size, "fold");
        for (const FoldBracket& bracket : fold_brackets(piece_, runs_)) {
            put_or_lead(
                words_along({bracket.start, bracket.end}, style, {2.2, 4}, LineSide::left),
                words_led(middle(bracket.start, bracket.end), {style}, -bracket.inwards, half_turn_deg));
        }
    }

    void write_grain() {
        if (!piece_.grain) return;
        const std::vector<Point> line{piece_.grain->from, piece_.grain->to};
        if (line[0] == line[1]) return;
        const DrawnText style = words_in(look::ink, look::edge_size, "grain");
        put_or_lead(words_along(line, style, {2.2, 4}, LineSide::either),
                    words_led(line[1], {style}, unit(line[1] - line[0]), half_turn_deg));
    }

    std::vector<DrawnText> dart_lines_of(const std::string& name, const std::string& figures,
                                         const std::string& press) const {
        constexpr double narrow_width = 41;  // finds a place between two darts
        std::vector<DrawnText> lines;
        if (wanted_.names) {
            lines.push_back(words_in(look::ink, look::small_size, name));
            lines.back().is_bold = true;
        }
        if (wanted_.lengths) lines.push_back(words_in(look::ink, look::small_size, figures));
        if (wanted_.names && !press.empty())
            for (const std::string& line : wrapped("press to " + press, look::small_size, narrow_width))
                lines.push_back(words_in(look::pencil, look::small_size, line));
        return lines;
    }

    struct NamedWedge {
        Wedge wedge;
        std::vector<DrawnText> lines;
    };

    std::vector<NamedWedge> wedges() const {
        std::vector<NamedWedge> found;
        for (std::size_t i = 0; i < piece_.outline.items.size(); ++i) {
            const DartItem* dart = piece_.outline.items[i].as_dart();
            if (!dart) continue;
            const DartFigures figures = figures_of(piece_.outline, i);
            std::string words =
                length_words(figures.intake, wanted_.unit) + ", " + angle_words(std::abs(figures.angle_rad));
            if (dart->stitched) words += ", stitched " + length_words(*dart->stitched, wanted_.unit);
            found.push_back({{middle(figures.a, figures.b), dart->point, figures.intake},
                             dart_lines_of(dart->name, words, press_name(piece_, i))});
        }
        for (const DoubleDart& dart : piece_.double_darts) {
            const double intake = distance(dart.widest[0], dart.widest[1]);
            found.push_back(
                {{middle(dart.from, dart.to), dart.to, intake},
                 dart_lines_of(dart.name, length_words(intake, wanted_.unit), press_name(piece_, dart))});
        }
        return found;
    }

    void write_darts() {
        const std::vector<NamedWedge> all = wedges();
        std::vector<Wedge> bare;
        for (const NamedWedge& each : all) bare.push_back(each.wedge);
        const WedgeIndex index(std::move(bare));
        for (std::size_t i = 0; i < all.size(); ++i)
            if (!all[i].lines.empty() && all[i].wedge.mouth != all[i].wedge.point)
                write_dart(all[i], index, i);
    }

    /// Words are read as those of a wedge if every other is farther by this.
    static constexpr double clearly_mm = 6;

    /// Best inside the piece and nearest to its own dart, then nearest, then inside.
    void write_dart(const NamedWedge& dart, const WedgeIndex& wedges, std::size_t mine) {
        const BlockSize size = size_of_block(dart.lines);
        const std::vector<BlockPlace> places = places_beside(dart.wedge, size);
        std::array<std::vector<BlockPlace>, 4> ranks;
        for (const BlockPlace& place : places) {
            const Point centre = centre_of_first(dart.lines, size, place);
            const std::size_t rank =
                (wedges.is_nearest(mine, centre, clearly_mm) ? 0u : 2u) + (is_inside(centre) ? 0u : 1u);
            if (rank == 0) {
                // What is liked best and clear needs no others beside it.
                const Label label = centred_block(dart.lines, place.centre, place.angle_rad);
                if (taken_.is_clear(label, look::clear_of_lines)) return put(label);
            }
            ranks[rank].push_back(place);
        }
        std::vector<BlockPlace> liked;
        for (const std::vector<BlockPlace>& rank : ranks) liked.insert(liked.end(), rank.begin(), rank.end());
        const Candidates near{liked.size(), [&](std::size_t i) {
                                  return centred_block(dart.lines, liked[i].centre, liked[i].angle_rad);
                              }};
        const Vector outwards = unit(dart.wedge.mouth - dart.wedge.point);
        put_or_lead(near, words_led(dart.wedge.mouth, dart.lines, outwards, half_turn_deg));
    }

    void write_marks() {
        for (const auto& [named, is_needed] : marks_to_name(piece_.marks)) {
            const Mark& mark = *named;
            const DrawnText style = words_in(look::pencil, look::small_size, mark.name);
            if (const LineMark* line = std::get_if<LineMark>(&mark.what)) {
                if (line->points.size() < 2) continue;
                const Candidates near = words_along(line->points, style, {2, 3.5}, LineSide::either);
                if (is_needed)
                    put_or_lead(near, words_led(line->points.back(), {style}, {1, 0}, half_turn_deg));
                else
                    put_if_clear(near);
            } else {
                const Point at = std::get<DrillMark>(mark.what).at;
                put_or_lead(words_around(at, style), words_led(at, {style}, {1, 0}, half_turn_deg));
            }
        }
    }

    std::vector<DrawnText> name_lines(double size_mm) const {
        std::vector<DrawnText> lines{words_in(look::ink, size_mm, piece_.name)};
        lines.back().is_bold = true;
        const double small = std::max(look::small_size, 0.5 * size_mm);
        if (piece_.cut) lines.push_back(words_in(look::ink, small, cut_words(*piece_.cut)));
        if (!wanted_.sides.empty()) lines.push_back(words_in(look::pencil, look::small_size, wanted_.sides));
        return lines;
    }

    /// Larger on large pieces, which are looked at from further away.
    double name_size() const {
        Box box{flat_.front(), flat_.front()};
        for (const Point p : flat_) box = joined(box, Box{p, p});
        constexpr double share_of_diagonal = 0.035;
        return std::clamp(share_of_diagonal * distance(box.low, box.high), look::piece_name_size,
                          look::largest_name_size);
    }

    void write_name() {
        if (flat_.size() < 3) return;
        const std::vector<Point> places = places_inside(flat_);
        const double largest = name_size();
        for (const double share : {1.0, 0.75, 0.55, 0.4}) {
            const std::vector<DrawnText> lines = name_lines(share * largest);
            for (const Point centre : places) {
                const Label label = centred_block(lines, centre, 0);
                constexpr double clear_of_name = 5;
                if (taken_.is_clear(label, clear_of_name)) return put(label);
            }
        }
        put_best(names_below());
    }

    /// A piece too small for its name has it below.
    std::vector<Label> names_below() const {
        double low = flat_.front().y;
        double left = flat_.front().x;
        double right = left;
        for (const Point p : flat_) {
            low = std::min(low, p.y);
            left = std::min(left, p.x);
            right = std::max(right, p.x);
        }
        std::vector<Label> candidates;
        for (double below = 10; below < 80; below += 4)
            candidates.push_back(centred_block(name_lines(0.4 * look::piece_name_size),
                                               {0.5 * (left + right), low - below}, 0));
        return candidates;
    }

    const Piece& piece_;
    const std::vector<Run>& runs_;
    const WordsWanted& wanted_;
    TakenPlaces& taken_;
    std::vector<Point> flat_;
    PolygonIndex index_;
    DrawnGroup group_{"words", {}, {}};
};

}  // namespace

std::string cut_words(const Cut& cut) {
    const std::string count = std::to_string(cut.quantity);
    if (!cut.second_fold.empty()) return "cut " + count + " on two folds";
    if (!cut.fold.empty()) return "cut " + count + " on the fold";
    if (cut.quantity < 2) return "cut " + count;
    if (cut.same) return "cut " + count + " alike";
    if (cut.quantity == 2) return "cut 2 (a pair)";
    if (cut.quantity % 2 == 0) return "cut " + count + " (" + std::to_string(cut.quantity / 2) + " pairs)";
    return "cut " + count;
}

DrawnGroup words_of(const Piece& piece, const std::vector<Run>& runs, const WordsWanted& wanted,
                    TakenPlaces& taken) {
    return PieceWords(piece, runs, wanted, taken).write();
}

}  // namespace dartwright
