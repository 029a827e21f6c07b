#include "dartwright/drawing/cutting_words.hpp"

#include <algorithm>
#include <map>
#include <optional>

#include "dartwright/drawing/allowance_words.hpp"
#include "dartwright/drawing/fullness_words.hpp"
#include "dartwright/drawing/piece_lines.hpp"
#include "dartwright/drawing/piece_words.hpp"
#include "dartwright/drawing/table_look.hpp"
#include "dartwright/drawing/text_column.hpp"
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

DrawnText label_text(Colour colour, double size_mm, std::string words) {
    DrawnText text;
    text.words = std::move(words);
    text.size_mm = size_mm;
    text.colour = colour;
    return text;
}

class CuttingWords {
  public:
    CuttingWords(const CuttingPiece& cut, const CuttingLabel& label, TakenPlaces& taken)
        : cut_(cut),
          label_(label),
          taken_(taken),
          flat_(flat_outline(cut.piece.outline, DartsDrawn::to_points, words_chord_error_mm).points),
          index_(flat_) {
        for (const Line& joint : label.joints) joints_.add(joint.a, joint.b);
    }

    DrawnGroup write() {
        write_fold();
        write_grain();
        write_label();
        write_darts();
        write_fullness();
        write_marks();
        return group_;
    }

  private:
    // A box that meets no line, and so not the stitching line, lies inside with its middle. On a crowded
    // piece most places are taken, which is sooner known than where they lie.
    bool fits(const std::vector<TurnedBox>& boxes, double clear_mm) const {
        return std::all_of(boxes.begin(), boxes.end(), [&](const TurnedBox& box) {
            return taken_.is_clear(box, clear_mm) && index_.where(box.centre) == Where::inside;
        });
    }

    void put(const Label& label) {
        taken_.add(label);
        for (const DrawnText& line : label) group_.items.push_back(line);
    }

    bool is_clear_of_joints(const std::vector<TurnedBox>& boxes) const {
        return label_.joints.empty() || std::all_of(boxes.begin(), boxes.end(), [&](const TurnedBox& box) {
                   return joints_.is_clear(box, look::clear_of_lines);
               });
    }

    bool put_off_joints(const Candidates& candidates, double clear_mm) {
        for (std::size_t i = 0; i < candidates.count; ++i) {
            const std::vector<TurnedBox> boxes = boxes_of(candidates, i);
            if (!is_clear_of_joints(boxes) || !fits(boxes, clear_mm)) continue;
            put(candidates.label(i));
            return true;
        }
        return false;
    }

    bool put_if_fits(const Candidates& candidates, double clear_mm) {
        if (put_off_joints(candidates, clear_mm)) return true;
        if (label_.joints.empty()) return false;  // each was tried
        for (std::size_t i = 0; i < candidates.count; ++i) {
            if (!fits(boxes_of(candidates, i), clear_mm)) continue;
            put(candidates.label(i));
            return true;
        }
        return false;
    }

    /// In a column below the piece, at the first of its steps where nothing lies.
    void put_below(const std::vector<DrawnText>& lines) {
        if (!below_) {
            below_.emplace(Box{flat_.front(), flat_.front()});
            for (const Point p : flat_) *below_ = joined(*below_, Box{p, p});
            for (const Point p : cut_.line.points) *below_ = joined(*below_, Box{p, p});
        }
        const BlockSize size = size_of_block(lines);
        // What a block's first line met at the foot of the column meets that of the next as well: all are
        // centred there, and nothing is taken away.
        std::size_t& first = first_free_step_[lines.front().size_mm];
        for (std::size_t step = first;; ++step) {
            const Point centre{0.5 * (below_->low.x + below_->high.x),
                               below_->low.y - 6 - size.height / 2 - 4 * static_cast<double>(step)};
            const Label label = centred_block(lines, centre, 0);
            if (taken_.is_clear(label, look::clear_of_lines)) return put(label);
            if (step == first && !taken_.is_clear(core_of(label.front()), look::clear_of_lines)) ++first;
        }
    }

    /// The middle of a line of words, which every line of its size has there.
    static TurnedBox core_of(const DrawnText& line) {
        TurnedBox core = box_of(line);
        core.half_length = 0;
        return core;
    }

    /// The shares of its size at which words are tried.
    static constexpr std::array<double, 3> word_shares{1, 0.75, 0.55};

    template <typename CandidatesAt>
    void put_somewhere(const std::vector<DrawnText>& lines, const CandidatesAt& candidates_at) {
        put_in_one_way({lines}, candidates_at);
    }

    /// Each way of dividing the words is tried before they become smaller.
    template <typename CandidatesAt>
    void put_in_one_way(const std::vector<std::vector<DrawnText>>& ways, const CandidatesAt& candidates_at) {
        // Rather in more lines, or somewhat smaller, than over a joint of pages.
        if (!label_.joints.empty())
            for (const double share : {word_shares[0], word_shares[1]})
                for (const std::vector<DrawnText>& lines : ways)
                    if (put_off_joints(candidates_at(shrunk(lines, share)), look::clear_of_lines)) return;
        for (const double share : word_shares)
            for (const std::vector<DrawnText>& lines : ways)
                if (put_if_fits(candidates_at(shrunk(lines, share)), look::clear_of_lines)) return;
        put_below(ways.front());
    }

    /// The words in one line, in two, in three.
    static std::vector<std::vector<DrawnText>> ways_to_divide(const DrawnText& words) {
        std::vector<std::vector<DrawnText>> ways{{words}};
        for (const std::size_t lines : {2u, 3u})
            if (std::vector<DrawnText> way = in_lines(words, lines); way.size() > ways.back().size())
                ways.push_back(std::move(way));
        return ways;
    }

    static std::vector<DrawnText> shrunk(std::vector<DrawnText> lines, double share) {
        for (DrawnText& line : lines) line.size_mm *= share;
        return lines;
    }

    void write_fold() {
        const auto ways = ways_to_divide(label_text(look::ink, look::edge_size, "place on the fold"));
        for (const FoldBracket& bracket : fold_brackets(cut_.piece, runs_of(cut_.piece.outline))) {
            put_in_one_way(ways, [&](const std::vector<DrawnText>& lines) {
                return block_along({bracket.start, bracket.end}, lines, {2.2, 4}, LineSide::left);
            });
        }
    }

    void write_grain() {
        if (!cut_.markings.grain) return;
        const std::vector<Point> line{cut_.markings.grain->from, cut_.markings.grain->to};
        const std::vector<DrawnText> words{label_text(look::ink, look::edge_size, "grain")};
        put_somewhere(words, [&](const std::vector<DrawnText>& lines) {
            return words_along(line, lines.front(), {2.2, 4}, LineSide::either);
        });
    }

    struct NamedWedge {
        Wedge wedge;
        std::vector<DrawnText> lines;
    };

    /// Its name, its figures and where it is pressed.
    std::vector<DrawnText> dart_lines_of(const std::string& name, const std::string& figures,
                                         const std::string& press) const {
        std::vector<DrawnText> lines{label_text(look::ink, look::small_size, name_in_drawing(name))};
        lines.back().is_bold = true;
        lines.push_back(label_text(look::ink, look::small_size, figures));
        if (!press.empty())
            lines.push_back(label_text(look::ink, look::small_size, name_in_drawing("press to " + press)));
        return lines;
    }

    std::string length_in_words(double mm) const { return ruler_words(mm, label_.unit); }

    /// As it is sewn: a tuck so far as it is stitched.
    std::string figures_in_words(std::size_t item) const {
        const DartFigures figures = figures_of(cut_.piece.outline, item);
        const DartItem& dart = *cut_.piece.outline.items[item].as_dart();
        const std::string wide = length_in_words(figures.intake) + " wide, ";
        if (dart.stitched) return "tuck " + wide + "stitched " + length_in_words(*dart.stitched);
        return wide + length_in_words((figures.leg_a + figures.leg_b) / 2) + " long";
    }

    std::string press_of(std::size_t item) const {
        const std::string name = press_name(cut_.piece, item);
        if (!name.empty()) return name;
        for (const CutDart& dart : cut_.line.darts)
            if (dart.item == item && dart.pressed) return "where the arrow points";
        return "";
    }

    std::vector<NamedWedge> wedges() const {
        std::vector<NamedWedge> all;
        for (const DartMarking& dart : cut_.markings.darts) {
            const Point mouth = middle(dart.carried_a.front(), dart.carried_b.front());
            const double intake = distance(dart.carried_a.front(), dart.carried_b.front());
            all.push_back({{mouth, dart.point, intake},
                           dart_lines_of(dart.dart, figures_in_words(dart.item), press_of(dart.item))});
        }
        for (const DoubleDart& dart : cut_.piece.double_darts) {
            const std::string figures = length_in_words(intake_of(dart)) + " wide, " +
                                        length_in_words(distance(dart.from, dart.to)) + " long";
            all.push_back({{middle(dart.from, dart.to), dart.to, intake_of(dart)},
                           dart_lines_of(dart.name, figures, press_name(cut_.piece, dart))});
        }
        return all;
    }

    /// The name of a dart or a mark, which stands in one line; a very long one is cut short.
    static std::string name_in_drawing(const std::string& name) {
        constexpr double longest_name_mm = 120;
        return shortened(name, look::small_size, longest_name_mm, true);
    }

    void write_darts() {
        const std::vector<NamedWedge> all = wedges();
        std::vector<Wedge> bare;
        for (const NamedWedge& each : all) bare.push_back(each.wedge);
        const WedgeIndex index(std::move(bare));
        for (std::size_t i = 0; i < all.size(); ++i)
            if (all[i].wedge.mouth != all[i].wedge.point) write_dart(all[i], index, i);
    }

    /// Words are read as those of a wedge if every other is farther by this.
    static constexpr double clearly_mm = 12;

    void write_dart(const NamedWedge& dart, const WedgeIndex& wedges, std::size_t mine) {
        put_somewhere(dart.lines, [&](const std::vector<DrawnText>& lines) {
            const BlockSize size = size_of_block(lines);
            std::vector<BlockPlace> places = places_beside(dart.wedge, size);
            std::stable_partition(places.begin(), places.end(), [&](const BlockPlace& place) {
                return wedges.is_nearest(mine, centre_of_first(lines, size, place), clearly_mm);
            });
            return blocks_at(lines, std::move(places));
        });
    }

    void write_fullness() {
        const std::vector<Run> runs = runs_of(cut_.piece.outline);
        for (const FullStretch& stretch : full_stretches(cut_.piece, runs)) {
            const std::vector<Point> line = points_of_stretch(cut_.piece.outline, stretch);
            if (line.size() < 2) continue;
            const Run& run = *find_run(runs, stretch.edge);
            const std::string words = fullness_figures(stretch, label_.unit) + " " +
                                      fullness_place(cut_.piece, run, stretch, label_.unit);
            put_in_one_way(ways_to_divide(label_text(look::ink, look::small_size, words)),
                           [&](const std::vector<DrawnText>& lines) {
                               return block_along(line, lines, {7.5, 10, 14, 20}, LineSide::left);
                           });
        }
    }

    void write_marks() {
        for (const auto& [named, is_needed] : marks_to_name(cut_.piece.marks)) {
            const Mark& mark = *named;
            const std::vector<DrawnText> words{
                label_text(look::pencil, look::small_size, name_in_drawing(mark.name))};
            const LineMark* line = std::get_if<LineMark>(&mark.what);
            const auto candidates_at = [&mark, line](const std::vector<DrawnText>& lines) {
                return line ? words_along(line->points, lines.front(), {2, 3.5, 6}, LineSide::either)
                            : words_around(std::get<DrillMark>(mark.what).at, lines.front());
            };
            if (is_needed)
                put_somewhere(words, candidates_at);
            else
                put_if_fits(candidates_at(words), look::clear_of_lines);
        }
    }

    /// What the label says below the piece's name.
    std::vector<std::string> label_words() const {
        std::vector<std::string> all;
        const auto add = [&](const std::string& words) {
            if (!words.empty()) all.push_back(words);
        };
        if (label_.number > 0)
            add("piece " + std::to_string(label_.number) + " of " + std::to_string(label_.pieces));
        if (cut_.piece.cut) add(cut_words(*cut_.piece.cut));
        if (!label_.size.empty()) add("size " + label_.size);
        for (const std::string& words : allowance_words(cut_, label_.unit)) add(words);
        for (const std::string& words : label_.meant) add(words);
        add(label_.sides);
        add(label_.date);
        return all;
    }

    static void add_lines(std::vector<DrawnText>& lines, const std::string& words, double size_mm,
                          double widest_mm, bool is_bold = false) {
        for (const std::string& line : wrapped(words, size_mm, widest_mm, is_bold)) {
            lines.push_back(label_text(look::ink, size_mm, line));
            lines.back().is_bold = is_bold;
        }
    }

    std::vector<DrawnText> label_lines(double size_mm) const {
        const double small = std::max(0.5 * size_mm, smallest_words);
        std::vector<DrawnText> lines;
        add_lines(lines, label_.pattern, small, widest_label_in_sizes * small);
        add_lines(lines, cut_.piece.name, size_mm, widest_label_in_sizes * size_mm, true);
        for (const std::string& words : label_words())
            add_lines(lines, words, small, widest_label_in_sizes * small);
        return lines;
    }

    /// In few long lines, for a piece like a waistband.
    std::vector<DrawnText> flat_label_lines(double size_mm) const {
        const double small = std::max(0.5 * size_mm, smallest_words);
        std::string all;
        for (const std::string& words : label_words()) all += (all.empty() ? "" : "; ") + words;
        std::vector<DrawnText> lines;
        const std::string name =
            cut_.piece.name + (label_.pattern.empty() ? "" : " (" + label_.pattern + ")");
        add_lines(lines, name, size_mm, widest_flat_in_sizes * small, true);
        add_lines(lines, all, small, widest_flat_in_sizes * small);
        return lines;
    }

    double name_size() const {
        Box box{flat_.front(), flat_.front()};
        for (const Point p : flat_) box = joined(box, Box{p, p});
        constexpr double share_of_diagonal = 0.03;
        return std::clamp(share_of_diagonal * distance(box.low, box.high), look::piece_name_size,
                          look::largest_name_size);
    }

    /// Level ones; or turned to be read from the right, for a narrow piece.
    Candidates labels(double share, double angle_rad = 0) {
        return blocks(label_lines(share * name_size()), angle_rad);
    }
    Candidates blocks(std::vector<DrawnText> lines, double angle_rad) {
        if (places_.empty()) places_ = places_inside(flat_);
        std::vector<BlockPlace> places;
        places.reserve(places_.size());
        for (const Point place : places_) places.push_back({place, angle_rad});
        return blocks_at(std::move(lines), std::move(places));
    }

    bool put_flat_label(double share, double clear_mm) {
        const std::vector<DrawnText> lines = flat_label_lines(share * name_size());
        return put_if_fits(blocks(lines, 0), clear_mm) || put_if_fits(blocks(lines, pi / 2), clear_mm);
    }

    void write_label() {
        constexpr double clear_of_label = 4;
        // Somewhat smaller rather than over a joint, but not so small that it is overlooked.
        if (!label_.joints.empty())
            for (const double share : {1.0, 0.85, 0.7, 0.55})
                if (put_off_joints(labels(share), clear_of_label)) return;
        for (const double share : {1.0, 0.85, 0.7, 0.55})
            if (put_if_fits(labels(share), clear_of_label)) return;
        for (const double share : {0.85, 0.55})
            if (put_if_fits(labels(share, pi / 2), clear_of_label)) return;
        for (const double share : {0.45, 0.35})
            if (put_if_fits(labels(share), clear_of_label) ||
                put_if_fits(labels(share, pi / 2), clear_of_label))
                return;
        for (const double share : {0.45, 0.35})
            if (put_flat_label(share, look::clear_of_lines)) return;
        put_below(label_lines(0.5 * look::piece_name_size));
    }

    static constexpr double smallest_words = 4;  // 11 points: read at arm's length
    static constexpr double widest_flat_in_sizes = 40;

    const CuttingPiece& cut_;
    const CuttingLabel& label_;
    TakenPlaces& taken_;
    std::vector<Point> flat_;
    PolygonIndex index_;
    std::vector<Point> places_;  ///< inside, once they are asked for
    TakenPlaces joints_;
    std::optional<Box> below_;                       ///< the box round the piece, once words are put below it
    std::map<double, std::size_t> first_free_step_;  ///< below the piece, by the size of the first line
    DrawnGroup group_{"words", {}, {}};
};

}  // namespace

DrawnGroup cutting_words(const CuttingPiece& piece, const CuttingLabel& label, TakenPlaces& taken) {
    return CuttingWords(piece, label, taken).write();
}

}  // namespace dartwright
