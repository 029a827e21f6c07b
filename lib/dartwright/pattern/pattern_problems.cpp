#include "dartwright/pattern/pattern_problems.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/name_table.hpp"
#include "dartwright/pattern/outline_direction.hpp"
#include "dartwright/pattern/pattern_rules.hpp"
#include "dartwright/pattern/quoted.hpp"
#include "dartwright/pattern/sound_entry.hpp"

namespace dartwright {
namespace {

/// A step of the way to a value; the words of the way are made only where there is a problem.
struct Step {
    const Step* from = nullptr;
    std::string_view key;
    std::size_t index = 0;  // where there is no key
};

Step under(const Step& from, std::string_view key) {
    return {&from, key.data() ? key : std::string_view("", 0), 0};
}
Step under(const Step& from, std::size_t index) {
    return {&from, {}, index};
}

std::string pointer_to(const Step& step) {
    if (!step.from) return {};
    std::string out = pointer_to(*step.from) + '/';
    if (!step.key.data()) return out + std::to_string(step.index);
    for (const char c : step.key) {
        if (c == '~')
            out += "~0";
        else if (c == '/')
            out += "~1";
        else
            out += c;
    }
    return out;
}

std::string in_words(double number) {
    if (std::isnan(number)) return "not a number";
    if (std::isinf(number)) return number > 0 ? "infinity" : "minus infinity";
    std::array<char, 32> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), number).ptr;
    return {text.data(), end};
}

/// The runs of one outline, for the names elsewhere. Without an edge, with a name that is none, or one that
/// recurs, neighbours mean nothing.
struct Runs {
    NameTable names;
    bool is_sound = false;
    std::vector<std::string> known() const { return {names.names().begin(), names.names().end()}; }
    std::array<std::string_view, 2> neighbours(std::size_t run) const {
        const auto& all = names.names();
        return {all[(run + all.size() - 1) % all.size()], all[(run + 1) % all.size()]};
    }
};

std::vector<std::string_view> edges_of(const Outline& outline) {
    std::vector<std::string_view> edges;
    edges.reserve(outline.items.size());
    for (const OutlineItem& item : outline.items)
        if (const EdgeItem* edge = item.as_edge()) edges.emplace_back(edge->edge);
    return edges;
}

class Looker {
  public:
    explicit Looker(double largest_mm = largest_length_mm) : largest_mm_(largest_mm) {}
    std::vector<PatternProblem> problems;

    void add(const Step& at, std::string found, std::string expected) {
        problems.push_back({pointer_to(at), piece_, seam_, item_, std::move(found), std::move(expected)});
    }
    void add(const Step& at, Complaint complaint) {
        add(at, std::move(complaint.found), std::move(complaint.expected));
    }

    void look(const Pattern& pattern);
    Runs look(const Piece& piece, const Step& at);
    void look(const Tolerances& tolerances, const Step& at);
    void look(const CuttingRule& rule, const Step& at) { this->rule(at, rule); }

  private:
    void add(const Step& at, PerhapsComplaint complaint) {
        if (complaint) add(at, std::move(*complaint));
    }
    void wanted(const Step& at, const std::string& what, double number) {
        if (!what.empty()) add(at, in_words(number), what);
    }
    bool name(const Step& at, const std::string& name) {
        const std::string what = wanted_instead_of_name(name);
        if (!what.empty()) add(at, in_quotes(name), what);
        return what.empty();
    }
    void length(const Step& at, double mm) {
        if (mm >= 0 && mm <= largest_mm_) return;
        wanted(at, wanted_instead_of_length_within(mm, largest_mm_), mm);
    }
    void length(const Step& at, const std::optional<double>& mm) {
        if (mm) length(at, *mm);
    }
    void coordinate(const Step& at, double mm) {
        if (std::abs(mm) <= largest_mm_) return;
        wanted(at, wanted_instead_of_coordinate_within(mm, largest_mm_), mm);
    }
    void point(const Step& at, Point p) {
        coordinate(under(at, 0), p.x);
        coordinate(under(at, 1), p.y);
    }
    void entries(const Step& at, std::size_t count) {
        const std::string what = wanted_of_entries(count);
        if (!what.empty()) add(at, "a list of " + std::to_string(count), what);
    }
    template <class Points>
    void points(const Step& at, const Points& points) {
        for (std::size_t i = 0; i < points.size(); ++i) point(under(at, i), points[i]);
    }

    void existing(const Step& at, const Runs& runs, const std::string& edge) {
        if (!name(at, edge) || !runs.is_sound || runs.names.find(edge)) return;
        add(at, not_existing("edge", edge, runs.known()));
    }
    void pressed(const Step& at, const Runs& runs, const std::string& edge) {
        if (!edge.empty()) existing(at, runs, edge);
    }
    PerhapsComplaint trouble_of_end(const Runs& runs, const std::string& edge, const std::string& from) {
        const auto run = runs.is_sound ? runs.names.find(edge) : std::nullopt;
        if (!run) return std::nullopt;
        const auto [before, after] = runs.neighbours(*run);
        // The names are copied where they do not simply agree.
        if (before != after && (from == before || from == after)) return std::nullopt;
        return end_trouble(from, edge, std::string(before), std::string(after));
    }
    void end(const Step& at, const Runs& runs, const std::string& edge, const std::string& from) {
        if (name(at, from)) add(at, trouble_of_end(runs, edge, from));
    }

    void dart_name(const Step& at, NameTable& darts, const std::string& dart) {
        if (name(at, dart) && !darts.add(dart)) add(at, named_again("dart", dart));
    }
    void item(const Step& at, const EdgeItem& edge);
    void item(const Step& at, const DartItem& dart, NameTable& darts);
    Runs outline(const Step& at, const Outline& outline, NameTable& darts);
    Runs runs(const Step& items, const Outline& outline, bool is_every_name_read);
    void geometry(const Step& at, const Outline& outline);
    void measured_points(const Step& items, const Outline& outline);
    void cut(const Step& at, const Cut& cut, const Runs& runs);
    void grain(const Step& at, const Grain& grain, const Runs& runs);
    void double_darts(const Step& at, const Piece& piece, const Runs& runs, NameTable& darts);
    void notches(const Step& at, const Piece& piece, const Runs& runs);
    void allowances(const Step& at, const Piece& piece, const Runs& runs);
    void stretch(const Step& at, const AllowanceStretch& stretch, const std::string& edge, const Runs& runs);
    void marks(const Step& at, const Piece& piece);
    void seam(const Step& at, const Seam& seam, const NameTable& pieces, const std::vector<Runs>& runs);
    void part(const Step& at, const SeamPart& part, const NameTable& pieces, const std::vector<Runs>& runs);
    void seam_ends(const Step& at, const Seam& seam, const NameTable& pieces, const std::vector<Runs>& runs);
    void tolerance(const Step& at, const ToleranceName& tolerance, double value);
    void tolerances(const Step& at, const Pattern& pattern);
    void made(const Step& at, const Made& made);
    void rule(const Step& at, const CuttingRule& rule);
    void widths(const Step& at, const std::vector<RuleWidth>& widths, const char* key);

    double largest_mm_;
    std::string piece_;
    std::string seam_;
    std::optional<std::size_t> item_;
};

void Looker::item(const Step& at, const EdgeItem& edge) {
    const Step named = under(at, "edge");
    if (name(named, edge.edge)) {
        const std::string what = wanted_instead_of_edge_name(edge.edge);
        if (!what.empty()) add(named, in_quotes(edge.edge), what);
    }
    if (const auto* cubic = std::get_if<CubicShape>(&edge.shape)) points(under(at, "curve"), cubic->controls);
    if (const auto* spline = std::get_if<SplineShape>(&edge.shape)) {
        const Step through = under(at, "through");
        entries(through, spline->through.size());
        points(through, spline->through);
        const std::string what = wanted_of_measured_points(spline->through.size());
        if (!what.empty()) add(through, "an empty list", what);
    }
    length(under(at, "fullness"), edge.fullness);
}

void Looker::item(const Step& at, const DartItem& dart, NameTable& darts) {
    dart_name(under(at, "dart"), darts, dart.name);
    point(under(at, "point"), dart.point);
    if (dart.pivot) point(under(at, "pivot"), *dart.pivot);
    length(under(at, "back_off"), dart.back_off);
    if (dart.legs) {
        const Step legs = under(at, "legs");
        points(under(legs, 0), (*dart.legs)[0]);
        points(under(legs, 1), (*dart.legs)[1]);
    }
    length(under(at, "stitched"), dart.stitched);
}

Runs Looker::runs(const Step& items, const Outline& outline, bool is_every_name_read) {
    const std::vector<std::string_view> edges = edges_of(outline);
    if (is_every_name_read) add(items, edges_missing(edges.size()));
    const NamedStretches stretches = stretches_of(edges);
    if (!stretches.again.empty()) {
        std::vector<std::size_t> item_of_edge;
        for (std::size_t i = 0; i < outline.items.size(); ++i)
            if (outline.items[i].as_edge()) item_of_edge.push_back(i);
        for (const NameAgain& again : stretches.again) {
            item_ = item_of_edge[again.item];
            const Step at = under(items, *item_);
            add(under(at, "edge"), again.complaint);
        }
        item_.reset();
    }
    Runs out;
    out.is_sound = is_every_name_read && !edges.empty() && stretches.again.empty();
    for (const std::string_view name : stretches.names) out.names.add(name);
    return out;
}

void Looker::measured_points(const Step& items, const Outline& outline) {
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        const EdgeItem* edge = outline.items[i].as_edge();
        const SplineShape* spline = edge ? std::get_if<SplineShape>(&edge->shape) : nullptr;
        if (!spline) continue;
        item_ = i;
        const Step at = under(items, i);
        const Step through = under(at, "through");
        Point last = start_of_item(outline, i);
        for (std::size_t k = 0; k < spline->through.size(); ++k) {
            add(under(through, k), measured_point_trouble(last, spline->through[k]));
            last = spline->through[k];
        }
        add(under(through, spline->through.size() - 1),
            last_measured_point_trouble(last, outline.items[i].to));
    }
    item_.reset();
}

// Of an outline that is right so far, save that it may run clockwise.
void Looker::geometry(const Step& at, const Outline& outline) {
    if (is_clockwise(outline)) add(at, "a clockwise outline", "an anticlockwise one (put_right turns it)");
    const Step items = under(at, "items");
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        item_ = i;
        const Step step = under(items, i);
        const EdgeItem* edge = outline.items[i].as_edge();
        if (edge && edge->fullness != 0)
            wanted(under(step, "fullness"),
                   wanted_instead_of_fullness(edge->fullness, length_of_item(outline, i)), edge->fullness);
        const DartItem* dart = outline.items[i].as_dart();
        if (!dart || !dart->stitched) continue;
        const DartFigures figures = figures_of(outline, i);
        wanted(under(step, "stitched"),
               wanted_instead_of_stitched(*dart->stitched, std::min(figures.leg_a, figures.leg_b)),
               *dart->stitched);
    }
    item_.reset();
}

Runs Looker::outline(const Step& at, const Outline& outline, NameTable& darts) {
    const std::size_t before = problems.size();
    point(under(at, "start"), outline.start);
    const Step items = under(at, "items");
    entries(items, outline.items.size());
    bool is_every_name_read = true;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        item_ = i;
        const Step step = under(items, i);
        point(under(step, "to"), outline.items[i].to);
        if (const EdgeItem* edge = outline.items[i].as_edge()) {
            item(step, *edge);
            is_every_name_read = is_every_name_read && !edge->edge.empty();
        } else {
            item(step, *outline.items[i].as_dart(), darts);
        }
    }
    item_.reset();
    const Runs found = runs(items, outline, is_every_name_read);
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        const DartItem* dart = outline.items[i].as_dart();
        if (!dart || dart->press.empty()) continue;
        item_ = i;
        const Step step = under(items, i);
        pressed(under(step, "press"), found, dart->press);
    }
    item_.reset();
    if (problems.size() == before) measured_points(items, outline);
    if (problems.size() == before) geometry(at, outline);
    return found;
}

void Looker::cut(const Step& at, const Cut& cut, const Runs& runs) {
    wanted(under(at, "quantity"), wanted_instead_of_whole(cut.quantity, 1, largest_quantity), cut.quantity);
    if (!cut.fold.empty()) existing(under(at, "fold"), runs, cut.fold);
    if (!cut.second_fold.empty()) {
        const Step second = under(at, "second_fold");
        existing(second, runs, cut.second_fold);
        add(second, second_fold_trouble(!cut.fold.empty(), cut.fold, cut.second_fold));
    }
    if (cut.ends.empty()) return;
    const Step ends = under(at, "ends");
    if (cut.fold.empty()) {
        add(ends, ends_without_fold());
        return;
    }
    for (const auto& [from, corner] : cut.ends) {
        const auto trouble = trouble_of_end(runs, cut.fold, from);
        if (!trouble) continue;
        const auto second =
            runs.is_sound && !cut.second_fold.empty() ? runs.names.find(cut.second_fold) : std::nullopt;
        if (second) {
            const auto [before, after] = runs.neighbours(*second);
            if (from == before || from == after) continue;
        }
        add(under(ends, from), trouble);
    }
}

void Looker::grain(const Step& at, const Grain& grain, const Runs& runs) {
    const std::size_t before = problems.size();
    point(under(at, "from"), grain.from);
    point(under(at, "to"), grain.to);
    if (problems.size() == before) add(under(at, "to"), grain_trouble(grain.from, grain.to));
    if (!grain.along.empty()) existing(under(at, "along"), runs, grain.along);
}

void Looker::double_darts(const Step& at, const Piece& piece, const Runs& runs, NameTable& darts) {
    entries(at, piece.double_darts.size());
    for (std::size_t i = 0; i < piece.double_darts.size(); ++i) {
        const DoubleDart& dart = piece.double_darts[i];
        const Step step = under(at, i);
        dart_name(under(step, "dart"), darts, dart.name);
        point(under(step, "from"), dart.from);
        point(under(step, "to"), dart.to);
        points(under(step, "widest"), dart.widest);
        pressed(under(step, "press"), runs, dart.press);
    }
}

void Looker::notches(const Step& at, const Piece& piece, const Runs& runs) {
    bool has_begun = false;
    entries(at, piece.notches.size());
    for (std::size_t i = 0; i < piece.notches.size(); ++i) {
        const Notch& notch = piece.notches[i];
        const Step step = under(at, i);
        existing(under(step, "edge"), runs, notch.edge);
        end(under(step, "from"), runs, notch.edge, notch.from);
        length(under(step, "at"), notch.at);
        if (!notch.begins || !runs.is_sound || !runs.names.find(notch.edge)) continue;
        add(under(step, "begins"), begins_trouble(notch.edge, runs.names.names().size() == 1, has_begun));
        has_begun = true;
    }
}

void Looker::stretch(const Step& at, const AllowanceStretch& stretch, const std::string& edge,
                     const Runs& runs) {
    end(under(at, "from"), runs, edge, stretch.from);
    const std::size_t before = problems.size();
    length(under(at, "at"), stretch.at);
    length(under(at, "to"), stretch.to);
    if (problems.size() == before)
        wanted(under(at, "to"), wanted_instead_of_stretch_end(stretch.at, stretch.to), stretch.to);
    length(under(at, "width"), stretch.width);
}

void Looker::allowances(const Step& at, const Piece& piece, const Runs& runs) {
    NameTable edges;
    for (const auto& [edge, allowance] : piece.allowance) {
        const Step step = under(at, edge);
        if (runs.is_sound && !runs.names.find(edge)) add(step, not_existing("edge", edge, runs.known()));
        if (!edges.add(edge)) add(step, "the key " + in_quotes(edge) + " again", "each key once");
        if (const double* width = std::get_if<double>(&allowance)) {
            length(step, *width);
            continue;
        }
        const auto& stretches = std::get<std::vector<AllowanceStretch>>(allowance);
        const std::string what = wanted_of_stretches(stretches.size());
        if (!what.empty()) add(step, "an empty list", what);
        entries(step, stretches.size());
        for (std::size_t i = 0; i < stretches.size(); ++i) stretch(under(step, i), stretches[i], edge, runs);
    }
}

void Looker::marks(const Step& at, const Piece& piece) {
    entries(at, piece.marks.size());
    for (std::size_t i = 0; i < piece.marks.size(); ++i) {
        const Mark& mark = piece.marks[i];
        const Step step = under(at, i);
        name(under(step, "name"), mark.name);
        if (const auto* drill = std::get_if<DrillMark>(&mark.what)) {
            point(under(step, "drill"), drill->at);
            continue;
        }
        const auto& line = std::get<LineMark>(mark.what).points;
        const Step drawn = under(step, "line");
        entries(drawn, line.size());
        points(drawn, line);
        const std::string what = wanted_of_line(line.size());
        if (!what.empty()) add(drawn, line.empty() ? "an empty list" : "a list of 1", what);
    }
}

Runs Looker::look(const Piece& piece, const Step& at) {
    piece_ = piece.name;
    name(under(at, "name"), piece.name);
    NameTable darts;
    const Runs runs = outline(under(at, "outline"), piece.outline, darts);
    if (piece.side_up != SideUp::right && !piece.worn) add(under(at, "side_up"), side_up_without_worn());
    if (piece.cut) cut(under(at, "cut"), *piece.cut, runs);
    if (piece.grain) grain(under(at, "grain"), *piece.grain, runs);
    double_darts(under(at, "double_darts"), piece, runs, darts);
    notches(under(at, "notches"), piece, runs);
    allowances(under(at, "allowance"), piece, runs);
    marks(under(at, "marks"), piece);
    piece_.clear();
    return runs;
}

void Looker::part(const Step& at, const SeamPart& part, const NameTable& pieces,
                  const std::vector<Runs>& runs) {
    const Step named = under(at, "piece");
    const auto piece = pieces.find(part.piece);
    if (name(named, part.piece) && !piece)
        add(named, not_existing("piece", part.piece, {pieces.names().begin(), pieces.names().end()}));
    const Runs none;
    const Runs& known = piece ? runs[*piece] : none;
    existing(under(at, "edge"), known, part.edge);
    end(under(at, "from"), known, part.edge, part.from);
}

void Looker::seam_ends(const Step& at, const Seam& seam, const NameTable& pieces,
                       const std::vector<Runs>& runs) {
    std::vector<std::string> known;
    for (const SeamSide& side : seam.joins) {
        if (side.empty()) return;
        for (const SeamPart& part : side) {
            const auto piece = pieces.find(part.piece);
            const auto run =
                piece && runs[*piece].is_sound ? runs[*piece].names.find(part.edge) : std::nullopt;
            if (!run) return;
            for (const std::string_view name : runs[*piece].neighbours(*run))
                if (std::find(known.begin(), known.end(), name) == known.end()) known.emplace_back(name);
        }
    }
    for (const auto& [name, corner] : seam.ends)
        if (!is_end_word(name) && std::find(known.begin(), known.end(), name) == known.end())
            add(under(at, name), not_next_to_seam(name, known));
}

void Looker::seam(const Step& at, const Seam& seam, const NameTable& pieces, const std::vector<Runs>& runs) {
    seam_ = seam.name;
    name(under(at, "name"), seam.name);
    const Step joins = under(at, "joins");
    for (std::size_t s = 0; s < seam.joins.size(); ++s) {
        const SeamSide& side = seam.joins[s];
        const Step step = under(joins, s);
        const std::string what = wanted_of_parts(side.size());
        if (!what.empty()) add(step, "an empty list", what);
        entries(step, side.size());
        // A side of one part is written without a list.
        for (std::size_t i = 0; i < side.size(); ++i)
            part(side.size() == 1 ? step : under(step, i), side[i], pieces, runs);
    }
    if (seam.ease) {
        const Step ease = under(at, "ease");
        wanted(under(ease, "side"), wanted_instead_of_whole(seam.ease->side, 1, 2), seam.ease->side);
        length(under(ease, "amount"), seam.ease->amount);
    }
    if (!seam.ends.empty()) seam_ends(under(at, "ends"), seam, pieces, runs);
    seam_.clear();
}

void Looker::tolerance(const Step& at, const ToleranceName& tolerance, double value) {
    if (tolerance.is_angle)
        wanted(at, wanted_instead_of_angle(value), value);
    else
        length(at, value);
}

void Looker::look(const Tolerances& tolerances, const Step& at) {
    for (const ToleranceName& named : tolerance_names())
        tolerance(under(at, named.name), named, tolerances.*named.value);
}

void Looker::tolerances(const Step& at, const Pattern& pattern) {
    for (const auto& [name, value] : pattern.tolerances) {
        const Step step = under(at, name);
        const auto& all = tolerance_names();
        const auto named = std::find_if(
            all.begin(), all.end(), [&name = name](const ToleranceName& one) { return name == one.name; });
        if (named != all.end()) {
            tolerance(step, *named, value);
            continue;
        }
        std::vector<std::string> known;
        for (const ToleranceName& one : all) known.emplace_back(one.name);
        add(step, not_existing("tolerance", name, known));
    }
}

void Looker::made(const Step& at, const Made& made) {
    name(under(at, "operation"), made.operation);
    NameTable keys;
    keys.add("operation");
    for (const auto& [key, value] : made.request)
        if (!keys.add(key)) add(under(at, key), "the key " + in_quotes(key) + " again", "each key once");
}

void Looker::widths(const Step& at, const std::vector<RuleWidth>& widths, const char* key) {
    entries(at, widths.size());
    for (std::size_t i = 0; i < widths.size(); ++i) {
        const Step step = under(at, i);
        name(under(step, key), widths[i].name);
        length(under(step, "width"), widths[i].width_mm);
    }
}

void Looker::rule(const Step& at, const CuttingRule& rule) {
    name(under(at, "name"), rule.name);
    const Step allowance = under(at, "allowance");
    widths(under(allowance, "edges"), rule.allowance.edges, "edge");
    widths(under(allowance, "openings"), rule.allowance.openings, "edge");
    widths(under(allowance, "seams"), rule.allowance.seams, "seam");
    length(under(allowance, "joined"), rule.allowance.joined_mm);
    length(under(allowance, "elsewhere"), rule.allowance.elsewhere_mm);
    const Step corners = under(at, "corners");
    entries(corners, rule.corners.size());
    for (std::size_t i = 0; i < rule.corners.size(); ++i) {
        const Step corner = under(corners, i);
        length(under(corner, "limit"), rule.corners[i].limit_mm);
    }
    if (rule.notches) {
        const Step notches = under(at, "notches");
        length(under(notches, "depth"), rule.notches->depth_mm);
        length(under(notches, "width"), rule.notches->width_mm);
    }
    if (!rule.darts.trim) return;
    const Step darts = under(at, "darts");
    const Step trim = under(darts, "trim");
    length(under(trim, "wider_than"), rule.darts.trim->wider_than_mm);
    length(under(trim, "allowance"), rule.darts.trim->allowance_mm);
}

void Looker::look(const Pattern& pattern) {
    const Step root;
    name(under(root, "name"), pattern.name);
    const Step pieces = under(root, "pieces");
    const std::string what = wanted_of_pieces(pattern.pieces.size());
    if (!what.empty()) add(pieces, "an empty list", what);
    entries(pieces, pattern.pieces.size());
    NameTable piece_names;
    std::vector<Runs> runs;
    runs.reserve(pattern.pieces.size());
    for (std::size_t i = 0; i < pattern.pieces.size(); ++i) {
        const Piece& piece = pattern.pieces[i];
        const Step step = under(pieces, i);
        if (!piece_names.add(piece.name) && !piece.name.empty())
            add(under(step, "name"), named_again("piece", piece.name));
        runs.push_back(look(piece, step));
    }
    const Step seams = under(root, "seams");
    entries(seams, pattern.seams.size());
    NameTable seam_names;
    for (std::size_t i = 0; i < pattern.seams.size(); ++i) {
        const Step step = under(seams, i);
        const std::string& name = pattern.seams[i].name;
        if (!seam_names.add(name) && !name.empty()) add(under(step, "name"), named_again("seam", name));
        seam(step, pattern.seams[i], piece_names, runs);
    }
    tolerances(under(root, "tolerances"), pattern);
    const Step made_list = under(root, "made");
    entries(made_list, pattern.made.size());
    for (std::size_t i = 0; i < pattern.made.size(); ++i) made(under(made_list, i), pattern.made[i]);
    if (pattern.cutting) rule(under(root, "cutting"), *pattern.cutting);
}

std::map<std::string, CornerIs> with_names_swapped(const std::map<std::string, CornerIs>& ends) {
    std::map<std::string, CornerIs> out;
    for (const auto& [name, corner] : ends) out.emplace(with_ends_swapped(name), corner);
    return out;
}

// Whether its direction may be asked: a broken outline stays as it is.
bool is_to_be_turned(const Piece& piece, double largest_mm) {
    Piece bare;
    bare.name = "piece";
    bare.outline = piece.outline;
    Looker looker(largest_mm);
    looker.look(bare, Step{});
    const std::vector<PatternProblem>& problems = looker.problems;
    // With a spline whose points fall together, or a number that is none, nothing can be said of direction.
    return std::any_of(problems.begin(), problems.end(),
                       [](const PatternProblem& problem) { return problem.pointer == "/outline"; });
}

void turn(Piece& piece) {
    piece.outline = reversed(piece.outline);
    if (piece.cut) piece.cut->ends = with_names_swapped(piece.cut->ends);
    for (Notch& notch : piece.notches) notch.from = with_ends_swapped(notch.from);
    for (auto& [edge, allowance] : piece.allowance)
        if (auto* stretches = std::get_if<std::vector<AllowanceStretch>>(&allowance))
            for (AllowanceStretch& stretch : *stretches) stretch.from = with_ends_swapped(stretch.from);
}

/// The words for ends change places with a run that has its neighbours of one name.
bool has_ends_of_one_name(const Piece& piece, const std::string& edge) {
    const std::vector<std::string_view> edges = edges_of(piece.outline);
    const auto names = stretches_of(edges).names;
    const auto at = std::find(names.begin(), names.end(), edge);
    if (at == names.end()) return false;
    const std::size_t run = static_cast<std::size_t>(at - names.begin());
    return names[(run + names.size() - 1) % names.size()] == names[(run + 1) % names.size()];
}

void turn_ends(Seam& seam, const Pattern& pattern, const NameTable& pieces,
               const std::vector<bool>& is_turned) {
    bool are_swapped = false;
    for (SeamSide& side : seam.joins) {
        for (SeamPart& part : side) {
            const auto piece = pieces.find(part.piece);
            if (!piece || !is_turned[*piece]) continue;
            part.from = with_ends_swapped(part.from);
            are_swapped = are_swapped ||
                          (!seam.ends.empty() && has_ends_of_one_name(pattern.pieces[*piece], part.edge));
        }
    }
    if (are_swapped) seam.ends = with_names_swapped(seam.ends);
}

Pattern put_right_within(Pattern pattern, double largest_mm) {
    std::vector<bool> is_turned;
    NameTable pieces;
    for (Piece& piece : pattern.pieces) {
        is_turned.push_back(is_to_be_turned(piece, largest_mm));
        pieces.add(piece.name);
        if (is_turned.back()) turn(piece);
    }
    if (std::find(is_turned.begin(), is_turned.end(), true) != is_turned.end())
        for (Seam& seam : pattern.seams) turn_ends(seam, pattern, pieces, is_turned);
    return pattern;
}

/// Problems in the message of an exception; a million are a message of 65 MB.
constexpr std::size_t most_told = 100;

template <class Value>
void require_none(const Value& value) {
    if (auto problems = problems_of(value); !problems.empty()) throw UnsoundPattern(std::move(problems));
}

}  // namespace

std::vector<PatternProblem> problems_of(const Pattern& pattern) {
    Looker looker;
    looker.look(pattern);
    return std::move(looker.problems);
}

std::vector<PatternProblem> problems_of(const Piece& piece) {
    Looker looker;
    looker.look(piece, Step{});
    return std::move(looker.problems);
}

Pattern put_right(Pattern pattern) {
    return put_right_within(std::move(pattern), largest_length_mm);
}

Pattern sound_within(Pattern pattern, double largest_mm) {
    Pattern right = put_right_within(std::move(pattern), largest_mm);
    Looker looker(largest_mm);
    looker.look(right);
    if (!looker.problems.empty()) throw UnsoundPattern(std::move(looker.problems));
    return right;
}

UnsoundPattern::UnsoundPattern(std::vector<PatternProblem> found) : problems(std::move(found)) {
    for (const PatternProblem& problem : problems) {
        if (!message_.empty()) message_ += '\n';
        const std::size_t told = static_cast<std::size_t>(&problem - problems.data());
        if (told == most_told) {
            message_ += "and " + std::to_string(problems.size() - told) + " more";
            break;
        }
        if (!problem.pointer.empty()) message_ += problem.pointer + ": ";
        message_ += "found " + problem.found + "; expected " + problem.expected;
    }
}

void require_sound(const Pattern& pattern) {
    require_none(pattern);
}

void require_sound(const Piece& piece) {
    require_none(piece);
}

void require_sound(const CuttingRule& rule) {
    if (rule.name.empty()) {
        // One that is made for once and never written.
        CuttingRule named = rule;
        named.name = "rule";
        return require_sound(named);
    }
    Looker looker;
    const Step root;
    looker.look(rule, under(root, "cutting"));
    if (!looker.problems.empty()) throw UnsoundPattern(std::move(looker.problems));
}

void require_sound(const Tolerances& tolerances) {
    Looker looker;
    const Step root;
    looker.look(tolerances, under(root, "tolerances"));
    if (!looker.problems.empty()) throw UnsoundPattern(std::move(looker.problems));
}

}  // namespace dartwright
