#include "dartwright/comparing/compared_piece.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/comparing/compare_losses.hpp"
#include "dartwright/comparing/compared_contents.hpp"
#include "dartwright/comparing/compared_darts.hpp"
#include "dartwright/comparing/compared_notches.hpp"
#include "dartwright/comparing/outline_distance.hpp"
#include "dartwright/comparing/rigid_parts.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/mirrored.hpp"
#include "dartwright/pattern/run_index.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {
namespace {

std::vector<ComparedRun> compared_runs(const PieceBothWays& both) {
    std::vector<ComparedRun> runs;
    const RunIndex before(both.before.runs);
    const RunIndex after(both.after.runs);
    for (const Run& run : both.before.runs) {
        const Run* same = after.find(run.edge);
        runs.push_back({run.edge, {run.length, same ? std::optional(same->length) : std::nullopt}});
    }
    for (const Run& run : both.after.runs) {
        if (!before.find(run.edge)) runs.push_back({run.edge, {{}, run.length}});
    }
    return runs;
}

double most_strayed(const std::vector<ComparedPart>& parts) {
    double most = 0;
    for (const ComparedPart& part : parts) most = std::max(most, part.strays_mm);
    return most;
}

// How many runs are followed by the same run in both.
std::size_t corners_in_common(const std::vector<Run>& before, const std::vector<Run>& after) {
    const RunIndex runs_after(after);
    return static_cast<std::size_t>(std::count_if(before.begin(), before.end(), [&](const Run& run) {
        const Run* same = runs_after.find(run.edge);
        return same && same->after == run.after;
    }));
}

ShapedPiece other_way_up(const ShapedPiece& shaped) {
    const Piece piece = mirrored(MirrorLine{}, shaped.piece);
    return {piece, runs_of(piece.outline)};
}

std::optional<OutlineDistance> distance_of_outlines(const PieceBothWays& both,
                                                    const std::vector<MatchedPlaces>& parts) {
    MatchedPlaces all;
    for (const MatchedPlaces& places : parts) {
        all.before.insert(all.before.end(), places.before.begin(), places.before.end());
        all.after.insert(all.after.end(), places.after.begin(), places.after.end());
    }
    if (all.before.empty()) return std::nullopt;
    return outline_distance(both.before.piece.outline, best_fit(all.before, all.after),
                            both.after.piece.outline);
}

Point middle_of(const std::vector<Point>& places) {
    Vector sum;
    for (const Point p : places) sum = sum + (p - Point{});
    return Point{} + sum / static_cast<double>(places.size());
}

// How the piece lies: by its longest part.
void say_how_it_lies(ComparedPiece& compared, const std::vector<MatchedPlaces>& parts) {
    const auto longest = std::max_element(
        compared.parts.begin(), compared.parts.end(),
        [](const ComparedPart& a, const ComparedPart& b) { return a.length_mm < b.length_mm; });
    if (longest == compared.parts.end()) return;
    compared.turned_rad = angle(longest->motion);
    const MatchedPlaces& places = parts[static_cast<std::size_t>(longest - compared.parts.begin())];
    compared.shifted_mm = middle_of(places.after) - middle_of(places.before);
}

// All but the distance of the outlines, which does not decide which way up the piece lies.
struct MeasuredPiece {
    ComparedPiece piece;
    std::vector<Loss> losses;
    std::vector<Loss> changes;
    std::vector<MatchedPlaces> places;  // of its parts
};
MeasuredPiece measured(const PieceBothWays& both, const Tolerances& tolerances) {
    MeasuredPiece out;
    ComparedPiece& piece = out.piece;
    piece.name = both.before.piece.name;
    piece.area_mm2 = {cloth_area(both.before.piece), cloth_area(both.after.piece)};
    piece.area_allowed_mm2 = area_allowed(both.before, tolerances);
    piece.runs = compared_runs(both);
    piece.notches = compared_notches(both);
    RigidParts rigid = rigid_parts_whatever_fullness(both, tolerances);
    piece.parts = std::move(rigid.parts);
    out.places = std::move(rigid.places);
    piece.darts = compared_darts(both, tolerances);
    piece.pivots = compared_pivots(both, piece.parts, tolerances);
    say_how_it_lies(piece, out.places);
    out.losses = losses_of(piece, tolerances, both.unit);
    for (Loss& loss : losses_of_contents(both, piece, tolerances)) out.losses.push_back(std::move(loss));
    out.changes = changes_of_contents(both, piece, tolerances);
    return out;
}

// Which of the two has kept more; the shapes decide between equals, and the first where they do not.
bool has_kept_more(const MeasuredPiece& piece, const MeasuredPiece& than, const Tolerances& tolerances) {
    if (piece.losses.size() != than.losses.size()) return piece.losses.size() < than.losses.size();
    const double strays = most_strayed(piece.piece.parts);
    const double strays_there = most_strayed(than.piece.parts);
    if (std::abs(strays - strays_there) > tolerances.gap_mm) return strays < strays_there;
    return piece.changes.size() < than.changes.size();
}

}  // namespace

ShapedPiece shaped_piece(const Piece& piece, const Tolerances& tolerances, const std::string& which) {
    const double gap = gap_of(piece.outline);
    if (gap > tolerances.gap_mm) {
        throw Impossible("the outline of \"" + piece.name + "\" " + which + " does not close, by " +
                             difference_told(gap, by_size),
                         "close it first");
    }
    ShapedPiece out{piece, {}};
    out.piece.outline = with_gap_closed(piece.outline);
    out.runs = runs_of(out.piece.outline);
    return out;
}

double area_allowed(const ShapedPiece& shaped, const Tolerances& tolerances) {
    double around = 0;
    for (const Run& run : shaped.runs) around += run.length;
    return tolerances.fold_mm * around / 2;
}

// A piece lies the other way up if its runs then follow each other as they did; where that does not tell, as
// with two runs, if more of it is then kept.
JudgedPiece compared_piece(const PieceBothWays& both, const Tolerances& tolerances) {
    const PieceBothWays over{both.before, other_way_up(both.after), both.unit};
    const std::size_t corners = corners_in_common(both.before.runs, both.after.runs);
    const std::size_t corners_over = corners_in_common(over.before.runs, over.after.runs);
    bool is_mirrored = corners_over > corners;
    MeasuredPiece best = measured(is_mirrored ? over : both, tolerances);
    if (corners_over == corners) {
        MeasuredPiece other = measured(over, tolerances);
        is_mirrored = has_kept_more(other, best, tolerances);
        if (is_mirrored) best = std::move(other);
    }
    JudgedPiece out{std::move(best.piece), std::move(best.losses), std::move(best.changes)};
    out.piece.is_mirrored = is_mirrored;
    out.piece.outline = distance_of_outlines(is_mirrored ? over : both, best.places);
    out.piece.is_recut = std::any_of(out.changes.begin(), out.changes.end(),
                                     [](const Loss& each) { return each.what == "cut"; });
    return out;
}

}  // namespace dartwright
