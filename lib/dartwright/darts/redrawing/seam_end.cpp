#include "dartwright/darts/redrawing/seam_end.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/account.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright {
namespace {

Run run_of(const Pattern& pattern, std::size_t piece, const std::string& edge) {
    const Piece& of = pattern.pieces[piece];
    return run_named(runs_of(of.outline), edge, of.name);
}

SideEnd side_end(const Pattern& pattern, const SeamSide& side, bool is_start) {
    const SeamPart& part = is_start ? side.front() : side.back();
    SideEnd out;
    out.piece = piece_index(pattern, part.piece);
    out.edge = part.edge;
    const Run run = run_of(pattern, out.piece, part.edge);
    const auto from = end_named(run, part.from);
    if (!from) {
        throw UnknownName("end", part.from, {name_of_end(run, RunEnd::start), name_of_end(run, RunEnd::end)},
                          part.piece + ", " + part.edge);
    }
    const bool is_run_start = (*from == RunEnd::start) == is_start;
    out.end = is_run_start ? RunEnd::start : RunEnd::end;
    out.crossing = is_run_start ? run.before : run.after;
    return out;
}

bool is_named(const Pattern& pattern, const SideEnd& side, const std::string& name) {
    return end_named(run_of(pattern, side.piece, side.edge), name) == side.end;
}

bool is_corner_free(const Pattern& pattern, const SideEnd& side, const Seam& seam) {
    return std::any_of(seam.ends.begin(), seam.ends.end(), [&](const auto& entry) {
        return entry.second == CornerIs::free && is_named(pattern, side, entry.first);
    });
}

bool is_same_end(const SideEnd& a, const SideEnd& b) {
    return a.piece == b.piece && a.edge == b.edge && a.end == b.end;
}

std::string end_word(const Pattern& pattern, const SideEnd& side) {
    return name_of_end(run_of(pattern, side.piece, side.edge), side.end);
}

std::vector<std::size_t> corner_darts(const Pattern& pattern, const SideEnd& side) {
    const Run run = run_of(pattern, side.piece, side.edge);
    return side.end == RunEnd::start ? run.corner_darts_before : run.corner_darts_after;
}

void refuse_side(const Pattern& pattern, const SideEnd& side, double gap_mm) {
    const Piece& piece = pattern.pieces[side.piece];
    const double gap = gap_of(piece.outline);
    if (gap > gap_mm) {
        throw Impossible(
            "the outline of " + quoted(piece.name) + " does not close, by " + difference_told(gap),
            "close it first");
    }
    const std::vector<std::size_t> darts = corner_darts(pattern, side);
    if (!darts.empty()) {
        throw Impossible("the dart " + quoted(piece.outline.items[darts[0]].as_dart()->name) +
                             " stands in that corner of " + quoted(piece.name),
                         "move it into an edge first, or true the seam at its other end");
    }
    if (is_fold_edge(piece, side.crossing)) {
        throw Impossible("the edge that crosses there is the fold " + quoted(side.crossing) + " of " +
                             quoted(piece.name) + ", which stays straight",
                         "true the seam at its other end");
    }
    if (side.crossing == side.edge) {
        throw Impossible("no other edge crosses there on " + quoted(piece.name), "name its edges apart");
    }
}

// How often a run is counted in the seam's difference: on the second side less on the first.
int count_in_difference(const Pattern& pattern, const Seam& seam, const SideEnd& run) {
    int count = 0;
    for (std::size_t side = 0; side < 2; ++side) {
        for (const SeamPart& part : seam.joins[side]) {
            const bool is_it = part.piece == pattern.pieces[run.piece].name && part.edge == run.edge;
            if (is_it) count += side == 1 ? 1 : -1;
        }
    }
    return count;
}

}  // namespace

SeamEndFound seam_end_named(const Pattern& pattern, const std::string& name, const std::string& end) {
    const Seam& seam = seam_named(pattern, name);
    SeamEndFound out;
    out.seam = static_cast<std::size_t>(&seam - pattern.seams.data());
    std::vector<std::string> known;
    for (std::size_t side = 0; side < 2; ++side) {
        for (const bool is_start : {true, false}) {
            const SideEnd found = side_end(pattern, seam.joins[side], is_start);
            known.push_back(end_word(pattern, found));
            if (!is_named(pattern, found, end)) continue;
            out.is_start = is_start;
            out.sides = {side_end(pattern, seam.joins[0], is_start),
                         side_end(pattern, seam.joins[1], is_start)};
            out.is_with_itself = is_same_end(out.sides[0], out.sides[1]);
            out.is_free =
                is_corner_free(pattern, out.sides[0], seam) || is_corner_free(pattern, out.sides[1], seam);
            return out;
        }
    }
    std::sort(known.begin(), known.end());
    known.erase(std::unique(known.begin(), known.end()), known.end());
    throw UnknownName("end", end, known, "the seam " + quoted(name));
}

void refuse_untruable(const Pattern& pattern, const SeamEndFound& found, double gap_mm) {
    for (const SideEnd& side : found.sides) refuse_side(pattern, side, gap_mm);
    const SideEnd& first = found.sides[0];
    const SideEnd& second = found.sides[1];
    if (first.piece != second.piece || found.is_with_itself) return;
    if (first.crossing == second.edge && second.crossing == first.edge) {
        throw Impossible("the two sides meet there on " + quoted(pattern.pieces[first.piece].name) +
                             ", and no edge crosses the seam",
                         "true the seam at its other end");
    }
}

std::array<bool, 2> sides_moved(const Pattern& pattern, const Seam& seam, const std::string& move) {
    if (move == "both") return {true, true};
    std::array<bool, 2> has{};
    std::string known;
    for (std::size_t side = 0; side < 2; ++side) {
        for (const SeamPart& part : seam.joins[side]) {
            if (part.piece == move) has[side] = true;
            known += quoted(part.piece) + ", ";
        }
    }
    if (has[0] != has[1]) return has;
    if (move == "1" || move == "2") return {move == "1", move == "2"};
    if (has[0]) {
        throw BadWords("both sides of the seam " + quoted(seam.name) + " are on " + quoted(move) +
                       "; say 1 or 2");
    }
    if (std::any_of(pattern.pieces.begin(), pattern.pieces.end(),
                    [&](const Piece& piece) { return piece.name == move; })) {
        throw BadWords("the piece " + quoted(move) + " is not in the seam " + quoted(seam.name) +
                       "; expected both, " + known + "1 or 2");
    }
    throw BadWords("the side to move is " + quoted(move) + "; expected both, " + known + "1 or 2");
}

std::array<double, 2> moves_of_sides(const Pattern& pattern, const SeamEndFound& found,
                                     const std::string& move) {
    const Seam& seam = pattern.seams[found.seam];
    const std::array<bool, 2> is_moved = sides_moved(pattern, seam, move);
    const double difference = seam_difference(pattern, seam);
    // Of lengths that are sums of arc lengths; far below what can be sewn.
    if (std::abs(difference) <= sum_rounding_mm) return {0, 0};
    const double share = is_moved[0] && is_moved[1] ? 0.5 : 1;
    std::array<double, 2> out{};
    for (std::size_t side = 0; side < 2; ++side) {
        if (!is_moved[side]) continue;
        const int count = count_in_difference(pattern, seam, found.sides[side]);
        if (count == 0) {
            throw Impossible(quoted(found.sides[side].edge) + " of " +
                                 quoted(pattern.pieces[found.sides[side].piece].name) +
                                 " is on both sides of the seam, so that moving its end changes nothing",
                             "move the other side");
        }
        out[side] = -share * difference / count;
    }
    return out;
}

std::array<double, 2> corners_deg(const Pattern& pattern, const SeamEndFound& found) {
    std::array<double, 2> out{};
    for (std::size_t side = 0; side < 2; ++side) {
        const SideEnd& at = found.sides[side];
        const Outline& outline = pattern.pieces[at.piece].outline;
        out[side] = degrees(corner_angle(outline, run_of(pattern, at.piece, at.edge), at.end));
    }
    return out;
}

}  // namespace dartwright
