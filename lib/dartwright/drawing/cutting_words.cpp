#include "dartwright/drawing/cutting_words.hpp"

#include <algorithm>
#include <map>

#include "dartwright/drawing/decimals.hpp"
#include "dartwright/drawing/piece_lines.hpp"
#include "dartwright/drawing/piece_words.hpp"
#include "dartwright/drawing/table_look.hpp"
#include "dartwright/drawing/text_column.hpp"
#include "dartwright/drawing/words_along.hpp"
#include "dartwright/geometry/closest.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/allowance.hpp"
#include "dartwright/pattern/dart.hpp"

namespace dartwright {

namespace {

constexpr double label_chord_error_mm = 0.2;
/// Widths that differ by less are written as one, mm: they read alike.
constexpr double same_width_mm = 0.005;

/// The edges of one width, or without one.
struct WidthAndEdges {
    std::optional<double> width_mm;
    std::vector<std::string> edges;
    double length_mm = 0;
};

void add_edge(std::vector<WidthAndEdges>& all, const RunWidth& part, const std::string& edge) {
    const auto same = std::find_if(all.begin(), all.end(), [&](const WidthAndEdges& each) {
        return each.width_mm.has_value() == part.width_mm.has_value() &&
               (!part.width_mm || std::abs(*each.width_mm - *part.width_mm) < same_width_mm);
    });
    WidthAndEdges& found = same == all.end() ? all.emplace_back() : *same;
    found.width_mm = part.width_mm;
    found.length_mm += part.to_mm - part.from_mm;
    if (found.edges.empty() || found.edges.back() != edge) found.edges.push_back(edge);
}

std::string names_in_line(const std::vector<std::string>& names) {
    std::string words;
    for (const std::string& name : names) words += (words.empty() ? "" : ", ") + name;
    return words;
}

// An edge of two widths stands with each as a part of it.
void name_parts(std::vector<WidthAndEdges>& all) {
    std::map<std::string, int> times;
    for (const WidthAndEdges& each : all)
        for (const std::string& edge : each.edges) ++times[edge];
    for (WidthAndEdges& each : all)
        for (std::string& edge : each.edges)
            if (times[edge] > 1) edge = "part\u00a0of\u00a0" + edge;
}

std::vector<WidthAndEdges> widths_of(const CuttingPiece& cut) {
    std::vector<WidthAndEdges> all;
    for (const Run& run : runs_of(cut.piece.outline)) {
        if (cut.piece.cut && cut.piece.cut->fold == run.edge) continue;
        for (RunWidth part : widths_along(cut.piece, run)) {
            if (!part.width_mm) part.width_mm = cut.undecided_mm;
            add_edge(all, part, run.edge);
        }
    }
    return all;
}

/// As a width is spoken of: 1.5 cm, 0.625 in. Rounded to hundredths of an inch 5/8 would be cut wrong. The
/// space is one at which no line breaks.
std::string width_words(double width_mm, Unit unit) {
    const char* name = unit == Unit::mm ? "\u00a0mm" : unit == Unit::cm ? "\u00a0cm" : "\u00a0in";
    return shortest_decimals(width_mm / mm_in(unit), 3) + name;
}

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
          flat_(flat_outline(cut.piece.outline, DartsDrawn::to_points, label_chord_error_mm).points) {
        for (const Line& joint : label.joints) joints_.add(joint.a, joint.b);
    }

    DrawnGroup write() {
        write_fold();
        write_grain();
        write_label();
        write_darts();
        write_marks();
        return group_;
    }

  private:
    // A box that meets no line, and so not the stitching line, lies inside with its middle.
    bool fits(const Label& label, double clear_mm) const {
        return std::all_of(label.begin(), label.end(),
                           [&](const DrawnText& line) {
                               return where_in_polygon(flat_, box_of(line).centre) == Where::inside;
                           }) &&
               taken_.meetings(label, clear_mm) == 0;
    }

    void put(const Label& label) {
        taken_.add(label);
        for (const DrawnText& line : label) group_.items.push_back(line);
    }

    bool is_clear_of_joints(const Label& label) const {
        return label_.joints.empty() || joints_.meetings(label, look::clear_of_lines) == 0;
    }

    bool put_off_joints(const std::vector<Label>& candidates, double clear_mm) {
        for (const Label& label : candidates) {
            if (!is_clear_of_joints(label) || !fits(label, clear_mm)) continue;
            put(label);
            return true;
        }
        return false;
    }

    bool put_if_fits(const std::vector<Label>& candidates, double clear_mm) {
        if (put_off_joints(candidates, clear_mm)) return true;
        for (const Label& label : candidates) {
            if (!fits(label, clear_mm)) continue;
            put(label);
            return true;
        }
        return false;
    }

    void put_below(const std::vector<DrawnText>& lines) {
        Box box{flat_.front(), flat_.front()};
        for (const Point p : flat_) box = joined(box, Box{p, p});
        for (const Point p : cut_.line.points) box = joined(box, Box{p, p});
        const BlockSize size = size_of_block(lines);
        for (int step = 0;; ++step) {
            const Point centre{0.5 * (box.low.x + box.high.x), box.low.y - 6 - size.height / 2 - 4 * step};
            const Label label = centred_block(lines, centre, 0);
            if (taken_.meetings(label, look::clear_of_lines) == 0) return put(label);
        }
    }

    /// The shares of its size at which words are tried.
    static constexpr std::array<double, 3> word_shares{1, 0.75, 0.55};

    template <typename CandidatesAt>
    void put_somewhere(const std::vector<DrawnText>& lines, const CandidatesAt& candidates_at) {
        for (const double share : word_shares)
            if (put_if_fits(candidates_at(shrunk(lines, share)), look::clear_of_lines)) return;
        put_below(lines);
    }

    static std::vector<DrawnText> shrunk(std::vector<DrawnText> lines, double share) {
        for (DrawnText& line : lines) line.size_mm *= share;
        return lines;
    }

    void write_fold() {
        const std::optional<FoldBracket> bracket = fold_bracket(cut_.piece, runs_of(cut_.piece.outline));
        if (!cut_.markings.fold || !bracket) return;
        const std::vector<DrawnText> words{label_text(look::ink, look::edge_size, "place on the fold")};
        put_somewhere(words, [&](const std::vector<DrawnText>& lines) {
            return words_along({bracket->start, bracket->end}, lines.front(), {2.2, 4}, Hand::left);
        });
    }

    void write_grain() {
        if (!cut_.markings.grain) return;
        const std::vector<Point> line{cut_.markings.grain->from, cut_.markings.grain->to};
        const std::vector<DrawnText> words{label_text(look::ink, look::edge_size, "grain")};
        put_somewhere(words, [&](const std::vector<DrawnText>& lines) {
            return words_along(line, lines.front(), {2.2, 4}, Hand::either);
        });
    }

    struct NamedWedge {
        Wedge wedge;
        std::string name;
    };

    std::vector<NamedWedge> wedges() const {
        std::vector<NamedWedge> all;
        for (const DartMarking& dart : cut_.markings.darts) {
            const Point mouth = middle(dart.carried_a.front(), dart.carried_b.front());
            const double intake = distance(dart.carried_a.front(), dart.carried_b.front());
            all.push_back({{mouth, dart.point, intake}, dart.dart});
        }
        for (const DoubleDart& dart : cut_.piece.double_darts)
            all.push_back({{middle(dart.from, dart.to), dart.to, intake_of(dart)}, dart.name});
        return all;
    }

    /// The name of a dart or a mark, which stands in one line; a very long one is cut short.
    static std::string name_in_drawing(const std::string& name) {
        constexpr double longest_name_mm = 120;
        return shortened(name, look::small_size, longest_name_mm);
    }

    void write_darts() {
        const std::vector<NamedWedge> all = wedges();
        for (std::size_t i = 0; i < all.size(); ++i)
            if (all[i].wedge.mouth != all[i].wedge.point) write_dart(all, i);
    }

    /// Whether words there are read as those of the wedge and not of another.
    static bool is_nearest(const std::vector<NamedWedge>& all, std::size_t mine, Point words) {
        constexpr double clearly = 12;
        const auto off = [&](const Wedge& wedge) {
            return closest_point(Line{wedge.mouth, wedge.point}, words).distance;
        };
        for (std::size_t i = 0; i < all.size(); ++i)
            if (i != mine && off(all[mine].wedge) + clearly > off(all[i].wedge)) return false;
        return true;
    }

    void write_dart(const std::vector<NamedWedge>& all, std::size_t mine) {
        std::vector<DrawnText> words{
            label_text(look::ink, look::small_size, name_in_drawing(all[mine].name))};
        words.back().is_bold = true;
        put_somewhere(words, [&](const std::vector<DrawnText>& lines) {
            std::vector<Label> candidates = words_beside(all[mine].wedge, lines);
            std::stable_partition(candidates.begin(), candidates.end(), [&](const Label& label) {
                return is_nearest(all, mine, box_of(label.front()).centre);
            });
            return candidates;
        });
    }

    void write_marks() {
        for (const Mark& mark : cut_.piece.marks) {
            if (mark.name.empty()) continue;
            const std::vector<DrawnText> words{
                label_text(look::pencil, look::small_size, name_in_drawing(mark.name))};
            const LineMark* line = std::get_if<LineMark>(&mark.what);
            put_somewhere(words, [&](const std::vector<DrawnText>& lines) {
                return line ? words_along(line->points, lines.front(), {2, 3.5, 6}, Hand::either)
                            : words_around(std::get<DrillMark>(mark.what).at, lines.front());
            });
        }
    }

    std::vector<DrawnText> label_lines(double size_mm) const {
        const double small = std::max(0.5 * size_mm, smallest_words);
        std::vector<DrawnText> lines;
        const auto add = [&](const std::string& words) {
            if (words.empty()) return;
            for (const std::string& line : wrapped(words, small, widest_in_sizes * small))
                lines.push_back(label_text(look::ink, small, line));
        };
        add(label_.pattern);
        for (const std::string& line : wrapped(cut_.piece.name, size_mm, widest_in_sizes * size_mm, true)) {
            lines.push_back(label_text(look::ink, size_mm, line));
            lines.back().is_bold = true;
        }
        if (cut_.piece.cut) add(cut_words(*cut_.piece.cut));
        if (!label_.size.empty()) add("size " + label_.size);
        for (const std::string& words : allowance_words(cut_, label_.unit)) add(words);
        add(label_.date);
        return lines;
    }

    double name_size() const {
        Box box{flat_.front(), flat_.front()};
        for (const Point p : flat_) box = joined(box, Box{p, p});
        constexpr double share_of_diagonal = 0.03;
        return std::clamp(share_of_diagonal * distance(box.low, box.high), look::piece_name_size,
                          look::largest_name_size);
    }

    std::vector<Label> labels(double share) const {
        const std::vector<DrawnText> lines = label_lines(share * name_size());
        std::vector<Label> candidates;
        for (const Point centre : places_inside(flat_)) candidates.push_back(centred_block(lines, centre, 0));
        return candidates;
    }

    void write_label() {
        constexpr double clear_of_label = 4;
        // Somewhat smaller rather than over a joint, but not so small that it is overlooked.
        if (!label_.joints.empty())
            for (const double share : {1.0, 0.85, 0.7, 0.55})
                if (put_off_joints(labels(share), clear_of_label)) return;
        for (const double share : {1.0, 0.85, 0.7, 0.55, 0.45, 0.35})
            if (put_if_fits(labels(share), clear_of_label)) return;
        put_below(label_lines(0.5 * look::piece_name_size));
    }

    static constexpr double smallest_words = 4;    // 11 points: read at arm's length
    static constexpr double widest_in_sizes = 15;  // a block, not a band across the piece

    const CuttingPiece& cut_;
    const CuttingLabel& label_;
    TakenPlaces& taken_;
    std::vector<Point> flat_;
    TakenPlaces joints_;
    DrawnGroup group_{"words", {}, {}};
};

}  // namespace

std::vector<std::string> allowance_words(const CuttingPiece& piece, Unit unit) {
    std::vector<WidthAndEdges> all = widths_of(piece);
    // The width of the longest stretch of edges goes without their names.
    std::stable_sort(all.begin(), all.end(), [](const WidthAndEdges& a, const WidthAndEdges& b) {
        return a.length_mm > b.length_mm;
    });
    name_parts(all);
    std::string allowances;
    std::vector<std::string> lines;
    for (const WidthAndEdges& each : all) {
        if (!each.width_mm) {
            lines.push_back("not decided, cut without: " + names_in_line(each.edges));
        } else if (*each.width_mm < same_width_mm) {
            lines.push_back("none: " + names_in_line(each.edges));
        } else if (allowances.empty()) {
            allowances = "allowance " + width_words(*each.width_mm, unit);
        } else {
            allowances += "; " + names_in_line(each.edges) + " " + width_words(*each.width_mm, unit);
        }
    }
    if (allowances.empty() && lines.size() == 1 && all.front().width_mm) return {"no allowance"};
    lines.insert(lines.begin(), allowances.empty() ? "no allowance" : allowances);
    return lines;
}

DrawnGroup cutting_words(const CuttingPiece& piece, const CuttingLabel& label, TakenPlaces& taken) {
    return CuttingWords(piece, label, taken).write();
}

}  // namespace dartwright
