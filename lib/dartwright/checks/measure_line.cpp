#include "dartwright/checks/measure_line.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/checks/piece_context.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {
namespace {

using Polygon = std::vector<Point>;

// The outline with its darts' wedges outside, and the double darts, which are outside too.
struct Cloth {
    Polygon outline;
    std::vector<Polygon> holes;
};

Cloth cloth_of(const PieceContext& piece) {
    Cloth cloth{piece.flat.points, {}};
    for (const DoubleDart& dart : piece.piece->double_darts) {
        cloth.holes.push_back({dart.from, dart.widest[0], dart.to, dart.widest[1]});
    }
    return cloth;
}

bool is_in_cloth(const Cloth& cloth, Point p) {
    if (where_in_polygon(cloth.outline, p) == Where::outside) return false;
    return std::none_of(cloth.holes.begin(), cloth.holes.end(),
                        [p](const Polygon& hole) { return where_in_polygon(hole, p) == Where::inside; });
}

// Parameters along the segment at which it may enter or leave the polygon.
std::vector<double> meetings_with(const Polygon& polygon, const Segment& segment) {
    std::vector<double> shares;
    const Vector along = segment.b - segment.a;
    const auto add = [&](Point p) { shares.push_back(dot(p - segment.a, along) / squared_norm(along)); };
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Segment side{polygon[i], polygon[(i + 1) % polygon.size()]};
        const Meeting meeting = meeting_of(segment, side);
        if (meeting == Meeting::crossing) add(crossing_point(segment, side));
        if (meeting != Meeting::touching) continue;
        add(side.a);
        add(side.b);
    }
    return shares;
}

double length_in_cloth(const Cloth& cloth, const Segment& segment) {
    if (segment.a == segment.b) return 0;
    std::vector<double> shares = meetings_with(cloth.outline, segment);
    for (const Polygon& hole : cloth.holes) {
        for (const double share : meetings_with(hole, segment)) shares.push_back(share);
    }
    for (double& share : shares) share = std::clamp(share, 0.0, 1.0);
    shares.insert(shares.end(), {0, 1});
    std::sort(shares.begin(), shares.end());
    double share_inside = 0;
    for (std::size_t i = 0; i + 1 < shares.size(); ++i) {
        if (shares[i] == shares[i + 1]) continue;
        const Point within = between(segment.a, segment.b, (shares[i] + shares[i + 1]) / 2);
        if (is_in_cloth(cloth, within)) share_inside += shares[i + 1] - shares[i];
    }
    return share_inside * distance(segment.a, segment.b);
}

bool is_along_fold(const PieceContext& piece, const std::vector<Point>& line) {
    const std::vector<std::string> folds = fold_edges(*piece.piece);
    return std::any_of(folds.begin(), folds.end(), [&](const std::string& edge) {
        const Run& fold = run_named(piece.runs, edge, piece.name());
        const Point start = end_point(piece.outline(), fold, RunEnd::start);
        const Vector along = unit(end_point(piece.outline(), fold, RunEnd::end) - start);
        return std::all_of(line.begin(), line.end(),
                           [&](Point p) { return std::abs(cross(along, p - start)) <= along_fold_mm; });
    });
}

// Each fold doubles what does not lie along it.
int copies_of(const PieceContext& piece, bool is_line_along_fold) {
    const std::optional<Cut>& cut = piece.piece->cut;
    if (!cut) return 1;
    const std::size_t folds = fold_edges(*piece.piece).size();
    if (folds > 0) return 1 << (folds - (is_line_along_fold ? 1 : 0));
    return cut->quantity == 2 && !cut->same ? 2 : 1;
}

MeasuredOnPiece measured(const PieceContext& piece, double length, int copies) {
    return {piece.name(), length, copies, copies * length};
}

MeasuredLine with_total(MeasuredLine line) {
    for (const MeasuredOnPiece& on_piece : line.pieces) line.total_mm += on_piece.total_mm;
    return line;
}

void refuse_open_outline(const PieceContext& piece) {
    if (piece.is_closed) return;
    throw Impossible("the outline of " + piece.name() + " ends " +
                         difference_in_sentence(piece.gap, piece.unit) + " from its start",
                     "close it before measuring");
}

// All marked lines of that name on the piece, or none.
std::optional<MeasuredOnPiece> measured_marks(const PieceContext& piece, const std::string& name) {
    double once = 0;     // along the fold
    double doubled = 0;  // elsewhere
    bool has_any = false;
    const Cloth cloth = cloth_of(piece);
    for (const Mark& mark : piece.piece->marks) {
        const LineMark* line = std::get_if<LineMark>(&mark.what);
        if (!line || mark.name != name) continue;
        has_any = true;
        double& length = is_along_fold(piece, line->points) ? once : doubled;
        for (std::size_t i = 0; i + 1 < line->points.size(); ++i) {
            length += length_in_cloth(cloth, {line->points[i], line->points[i + 1]});
        }
    }
    if (!has_any) return std::nullopt;
    const int copies_once = copies_of(piece, true);
    const int copies =
        doubled > 0 || fold_edges(*piece.piece).empty() ? copies_of(piece, false) : copies_once;
    return MeasuredOnPiece{piece.name(), once + doubled, copies,
                           copies_once * once + copies_of(piece, false) * doubled};
}

std::optional<MeasuredOnPiece> measured_on(const PieceContext& piece, const std::string& name) {
    if (const Run* run = find_run(piece.runs, name)) {
        return measured(piece, run->length, copies_of(piece, is_fold_edge(*piece.piece, run->edge)));
    }
    return measured_marks(piece, name);
}

bool has_line(const Piece& piece, const std::string& name) {
    const auto& items = piece.outline.items;
    return std::any_of(
               items.begin(), items.end(),
               [&](const OutlineItem& item) { return item.as_edge() && item.as_edge()->edge == name; }) ||
           std::any_of(piece.marks.begin(), piece.marks.end(), [&](const Mark& mark) {
               return mark.name == name && std::holds_alternative<LineMark>(mark.what);
           });
}

void add_once(std::vector<std::string>& names, const std::string& name) {
    if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
}

std::vector<std::string> line_names(const Pattern& pattern) {
    std::vector<std::string> names;
    for (const Piece& piece : pattern.pieces) {
        for (const OutlineItem& item : piece.outline.items) {
            if (const EdgeItem* edge = item.as_edge()) add_once(names, edge->edge);
        }
        for (const Mark& mark : piece.marks) {
            if (std::holds_alternative<LineMark>(mark.what)) add_once(names, mark.name);
        }
    }
    return names;
}

// A segment through the place, square to the grain, that reaches beyond the piece on both sides.
Segment level_through(const PieceContext& piece, Point place) {
    const std::optional<Grain>& grain = piece.piece->grain;
    if (!grain || grain->from == grain->to) {
        throw Impossible(piece.name() + " has no grain to be square to", "draw its grain");
    }
    double reach = 0;
    for (const Point p : piece.flat.points) reach = std::max(reach, distance(p, place));
    const Vector level = unit(perpendicular(grain->to - grain->from));
    return {place - 2 * reach * level, place + 2 * reach * level};
}

bool has_edge_of(const PieceContext& piece, const std::string& place) {
    return std::any_of(piece.runs.begin(), piece.runs.end(), [&place](const Run& run) {
        return place.compare(0, run.edge.size() + 1, run.edge + "@") == 0;
    });
}

}  // namespace

MeasuredLine measure_line(const Pattern& pattern, const std::string& name) {
    const SoundEntry sound(pattern);
    MeasuredLine line{name, {}, 0};
    const std::vector<PieceContext> pieces = contexts_of(pattern, tolerances_of(pattern));
    for (const PieceContext& piece : pieces) {
        if (!has_line(*piece.piece, name)) continue;
        refuse_open_outline(piece);
        if (const auto on_piece = measured_on(piece, name)) line.pieces.push_back(*on_piece);
    }
    if (line.pieces.empty()) throw UnknownName("line", name, line_names(pattern), pattern.name);
    return with_total(std::move(line));
}

MeasuredLine measure_level(const Pattern& pattern, const std::string& text) {
    const SoundEntry sound(pattern);
    MeasuredLine line{text, {}, 0};
    const std::vector<PieceContext> pieces = contexts_of(pattern, tolerances_of(pattern));
    for (const PieceContext& piece : pieces) {
        refuse_open_outline(piece);
        if (!has_edge_of(piece, text)) continue;
        const Place place = parse_place(text, piece.runs, piece.name());
        const Run& run = run_named(piece.runs, place.edge, piece.name());
        const Point at = place_on_run(piece.outline(), run, distance_from_start(place, run)).point;
        const Segment level = level_through(piece, at);
        const bool is_on_fold = is_along_fold(piece, {level.a, level.b});
        line.pieces.push_back(
            measured(piece, length_in_cloth(cloth_of(piece), level), copies_of(piece, is_on_fold)));
    }
    if (line.pieces.empty())
        throw UnknownName("edge", text.substr(0, text.find('@')), line_names(pattern), pattern.name);
    return with_total(std::move(line));
}

}  // namespace dartwright
