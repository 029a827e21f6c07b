#include "dartwright/darts/true_seam.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/recording/request_words.hpp"
#include "dartwright/darts/redrawing/kept_notches.hpp"
#include "dartwright/darts/redrawing/moved_run_end.hpp"
#include "dartwright/darts/redrawing/outline_chain.hpp"
#include "dartwright/darts/redrawing/redrawn_edge.hpp"
#include "dartwright/darts/redrawing/seam_end.hpp"
#include "dartwright/darts/redrawing/wedges.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/notes.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {
namespace {

// The first side is walked so that the seam's run ends at the joint and the crossing edge begins there. The
// second, opened flat, so that the crossing edge ends there and the run begins: what crosses the seam is one
// line. Laid on the first it is walked as that is. A piece drawn the other way round is turned over; then the
// two can be laid together by a rigid motion.
RunEnd walked_end(LaidAs laid, std::size_t side) {
    return side == 1 && laid == LaidAs::flat ? RunEnd::start : RunEnd::end;
}

Outline as_walked(const Outline& outline, const SideEnd& at, RunEnd walked) {
    return at.end == walked ? outline : turned_over(outline);
}

// The outline as a chain, broken at the joint.
Chain chain_from_joint(const Outline& outline, const std::string& edge, RunEnd walked) {
    const std::vector<Run> runs = runs_of(outline);
    const Run& run = *find_run(runs, edge);
    const std::size_t first = walked == RunEnd::end ? run.items.back() + 1 : run.items.front();
    Chain chain = chain_of(outline);
    std::rotate(chain.begin(), chain.begin() + static_cast<std::ptrdiff_t>(first % chain.size()),
                chain.end());
    return chain;
}

Chain crossing_part(const Chain& chain, RunEnd walked) {
    return walked == RunEnd::end ? run_at_start(chain) : run_at_end(chain);
}

// The corner, and the direction in which the seam leaves it into the piece.
struct SeamStart {
    Point at;
    Vector into;
};
SeamStart seam_start(const Chain& chain, RunEnd walked) {
    const ChainItem& item = walked == RunEnd::end ? chain.back() : chain.front();
    const std::vector<Curve> curves = curves_of(*item.item.as_edge(), item.start, item.item.to);
    if (walked == RunEnd::end) return {item.item.to, -tangent_at_end(curves.back())};
    return {item.start, tangent_at_start(curves.front())};
}

// One side with its end moved; the crossing edge as it was drawn to the old end.
struct WalkedSideEnd {
    RunEnd walked;
    Chain moved;     ///< all round, broken at the joint
    Chain crossing;  ///< up to its other end or a dart
};
WalkedSideEnd walked_side(const Outline& outline, const SideEnd& at, RunEnd walked, double by_mm) {
    const Outline drawn = as_walked(outline, at, walked);
    const Outline moved = with_run_end_moved(drawn, {at.edge, walked, by_mm});
    return {walked, chain_from_joint(moved, at.edge, walked),
            crossing_part(chain_from_joint(drawn, at.edge, walked), walked)};
}

FoldedJoint joint_of(const WalkedSideEnd& first, const WalkedSideEnd& second) {
    const SeamStart from = seam_start(first.moved, first.walked);
    const SeamStart to = seam_start(second.moved, second.walked);
    return {to.at, from.at, motion_between({from.at, from.at + from.into}, {to.at, to.at + to.into})};
}

// With the crossing edge redrawn; `drawn` is it, up to its other end or a dart.
Outline with_crossing(const WalkedSideEnd& side_end, const Chain& drawn, const SideEnd& at) {
    const auto old = static_cast<std::ptrdiff_t>(side_end.crossing.size());
    const Chain& moved = side_end.moved;
    Chain chain;
    if (side_end.walked == RunEnd::end) {
        chain = drawn;
        chain.insert(chain.end(), moved.begin() + old, moved.end());
    } else {
        chain.assign(moved.begin(), moved.end() - old);
        chain.insert(chain.end(), drawn.begin(), drawn.end());
    }
    return as_walked(outline_of(std::move(chain)), at, side_end.walked);
}

struct Trueing {
    SeamEndFound found;
    LaidAs laid = LaidAs::flat;
    std::array<bool, 2> is_redrawn{};
    std::array<double, 2> by_mm{};
    std::array<double, 2> span_mm{};
    std::array<double, 2> crossing_grown_mm{};  ///< known once they are redrawn
};

Trueing trueing_asked(const Pattern& pattern, const TrueSeamRequest& request) {
    Trueing out;
    out.found = seam_end_named(pattern, request.seam, request.end);
    const Seam& seam = pattern.seams[out.found.seam];
    out.laid = seam.laid;
    // Opened flat, what crosses is one line and is drawn on both. Laid on each other, the one piece is made
    // to lie on the other, which stays as it is.
    const bool is_flat = seam.laid == LaidAs::flat;
    out.is_redrawn = is_flat ? std::array<bool, 2>{true, true} : sides_moved(pattern, seam, request.move);
    if (out.found.is_with_itself) out.is_redrawn[1] = false;
    return out;
}

// How much of the crossing edge is redrawn: the span, the whole of a shorter edge; where it crosses the seam
// at both its ends, no more than half of it.
double span_of(const Pattern& pattern, const Trueing& trueing, std::size_t side, double span_mm) {
    const SeamEndFound& found = trueing.found;
    const SideEnd& at = found.sides[side];
    const Piece& piece = pattern.pieces[at.piece];
    const RunEnd walked = walked_end(trueing.laid, side);
    const Chain chain = chain_from_joint(as_walked(piece.outline, at, walked), at.edge, walked);
    const Chain crossing = crossing_part(chain, walked);
    const double length = length_of(crossing);
    const std::size_t next = walked == RunEnd::end ? crossing.size() : chain.size() - crossing.size() - 1;
    const ChainItem& beyond = chain[next];
    if (beyond.item.as_dart() && length < span_mm) {
        throw Impossible("the mouth of " + quoted(beyond.item.as_dart()->name) + " stands in " +
                             quoted(at.crossing) + " of " + quoted(piece.name) + ", " + measure_told(length) +
                             " from the seam, within the span",
                         "take a span of at most " + most_told(length, 0));
    }
    const SideEnd& other = found.sides[1 - side];
    const bool is_at_both_ends =
        !found.is_with_itself && other.piece == at.piece && other.crossing == at.crossing;
    return std::min(span_mm, is_at_both_ends ? length / 2 : length);
}

void refuse_long_move(const SideEnd& at, double by_mm, double span_mm) {
    if (std::abs(by_mm) <= span_mm) return;
    throw Impossible("the end of " + quoted(at.edge) + " would move by " + measure_told(std::abs(by_mm)) +
                         ", further than the span over which " + quoted(at.crossing) + " is redrawn",
                     "take a span of " + least_told(std::abs(by_mm), 0) + " or more");
}

using DrawnSides = std::array<WalkedSideEnd, 2>;

WalkedSideEnd side_of(const Pattern& pattern, const Trueing& trueing, std::size_t side) {
    const SideEnd& at = trueing.found.sides[side];
    return walked_side(pattern.pieces[at.piece].outline, at, walked_end(trueing.laid, side),
                       trueing.by_mm[side]);
}

Vector direction_from_joint(const WalkedSideEnd& side) {
    const ChainItem& first = side.crossing.front();
    return tangent_at_start(curves_of(*first.item.as_edge(), first.start, first.item.to).front());
}

// One line over both: this side's part of it.
Chain part_of_line(const DrawnSides& before, const WalkedSideEnd& now, const Trueing& trueing,
                   std::size_t side) {
    const Drawn drawn = trueing.found.is_free ? Drawn::apart : Drawn::through;
    const JointSpans spans{trueing.span_mm[1], trueing.span_mm[0]};
    const JoinedEdges edges = side == 0 ? JoinedEdges{before[1].crossing, now.crossing}
                                        : JoinedEdges{now.crossing, before[0].crossing};
    const JoinedEdges redrawn = redrawn_at_joint(edges, joint_of(before[0], before[1]), spans, drawn);
    return side == 0 ? redrawn.after : redrawn.before;
}

// From the joint in the direction in which the other side leaves it, laid on this one; where both are
// redrawn, midway.
Chain laid_crossing(const DrawnSides& before, const WalkedSideEnd& now, const Trueing& trueing,
                    std::size_t side) {
    const Motion laying = joint_of(before[1 - side], before[side]).closing;
    const Vector own = direction_from_joint(before[side]);
    const double turn = angle_from(own, apply(laying, direction_from_joint(before[1 - side])));
    const double share = trueing.found.is_free || trueing.found.is_with_itself ? 0
                         : trueing.is_redrawn[1 - side]                        ? 0.5
                                                                               : 1;
    const Point start = seam_start(now.moved, now.walked).at;
    return redrawn_from({start, apply(turn_by(share * turn), own)}, now.crossing, trueing.span_mm[side]);
}

Pattern redrawn_pattern(const Pattern& pattern, Trueing& trueing) {
    const DrawnSides before{side_of(pattern, trueing, 0), side_of(pattern, trueing, 1)};
    Pattern out = pattern;
    for (std::size_t side = 0; side < 2; ++side) {
        if (!trueing.is_redrawn[side]) continue;
        // The second side may be on the piece that the first has changed by now, at the other end.
        const WalkedSideEnd now = side_of(out, trueing, side);
        const Chain crossing = trueing.laid == LaidAs::flat ? part_of_line(before, now, trueing, side)
                                                            : laid_crossing(before, now, trueing, side);
        trueing.crossing_grown_mm[side] = length_of(crossing) - length_of(now.crossing);
        const SideEnd& at = trueing.found.sides[side];
        Outline& outline = out.pieces[at.piece].outline;
        outline = with_crossing(now, crossing, at);
        refuse_bad_redrawing(outline);
    }
    return out;
}

Pattern with_notches_of_sides(Pattern pattern, const Trueing& trueing, Notes notes) {
    for (std::size_t side = 0; side < (trueing.found.is_with_itself ? 1u : 2u); ++side) {
        const SideEnd& at = trueing.found.sides[side];
        const RunEnd joint = at.end == RunEnd::end ? RunEnd::start : RunEnd::end;
        pattern =
            with_notches_kept(std::move(pattern), {at.piece, at.edge, at.end, trueing.by_mm[side]}, notes);
        pattern = with_notches_kept(std::move(pattern),
                                    {at.piece, at.crossing, joint, trueing.crossing_grown_mm[side]}, notes);
    }
    return pattern;
}

// Nothing to be mended but what the decimals of a file leave, which no pencil could draw.
bool is_true_already(const Pattern& pattern, const Trueing& trueing) {
    constexpr double decimals_mm = 0.001;
    constexpr double decimals_deg = 0.01;
    if (std::abs(seam_difference(pattern, pattern.seams[trueing.found.seam])) > decimals_mm) return false;
    const std::array<double, 2> corners = corners_deg(pattern, trueing.found);
    const double off = trueing.laid == LaidAs::flat ? corners[0] + corners[1] - 180 : corners[1] - corners[0];
    return trueing.found.is_free || std::abs(off) <= decimals_deg;
}

void note_parts(const Pattern& pattern, const Trueing& trueing, TrueSeamAccount& account) {
    const Seam& seam = pattern.seams[trueing.found.seam];
    for (std::size_t side = 0; side < 2; ++side) {
        if (seam.joins[side].size() == 1 || trueing.by_mm[side] == 0) continue;
        const SideEnd& at = trueing.found.sides[side];
        account.notes.push_back("of the edges on that side, " + quoted(at.edge) + " of " +
                                quoted(pattern.pieces[at.piece].name) +
                                " ends there and was made to match for all");
    }
    if (trueing.found.is_free) {
        account.notes.push_back("the end is free, so what crosses there was brought to it and not drawn on");
    } else if (trueing.laid == LaidAs::on_each_other) {
        account.notes.push_back(
            "the pieces lie on each other, so the edges that cross there were given one direction");
    }
}

void account_for(TrueSeamAccount& account, const Pattern& before, const Pattern& after,
                 const Trueing& trueing) {
    const std::array<double, 2> corners_before = corners_deg(before, trueing.found);
    const std::array<double, 2> corners_after = corners_deg(after, trueing.found);
    for (std::size_t side = 0; side < 2; ++side) {
        const SideEnd& at = trueing.found.sides[side];
        const std::string& piece = before.pieces[at.piece].name;
        account.sides[side] = {piece,
                               at.edge,
                               at.crossing,
                               trueing.by_mm[side],
                               corners_before[side],
                               corners_after[side],
                               trueing.span_mm[side]};
        if (side == 1 && at.piece == trueing.found.sides[0].piece) continue;
        account.pieces.push_back({piece, run_changes(runs_of(before.pieces[at.piece].outline),
                                                     runs_of(after.pieces[at.piece].outline))});
    }
    for (const SeamChange& change : seam_changes(before, after)) {
        if (change.seam != account.seam) account.seams.push_back(change);
    }
}

void close_outline(Piece& piece, Notes notes) {
    const double gap = gap_of(piece.outline);
    if (gap > 0) {
        notes.push_back("a gap of " + difference_told(gap, 4) + " in the outline of " + quoted(piece.name) +
                        " was closed");
    }
    piece.outline = with_gap_closed(piece.outline);
    const Sentence trouble = trouble_with(wedge_polygon(piece.outline), piece.outline);
    if (!trouble.empty()) throw Impossible(quoted(piece.name) + ": " + trouble, "mend the outline first");
}

}  // namespace

TrueSeamResult true_seam(const Pattern& pattern, const TrueSeamRequest& request) {
    const SoundEntry sound(pattern);
    if (has_spare_items(pattern)) return true_seam(without_spare_items(pattern), request);
    require_span(request.span_mm, SpanMayBe::wide);
    TrueSeamResult result{pattern, {}};
    TrueSeamAccount& account = result.account;
    account.seam = request.seam;
    account.end = request.end;
    Trueing trueing = trueing_asked(pattern, request);
    account.laid = trueing.laid;
    refuse_untruable(pattern, trueing.found, tolerances_of(pattern).gap_mm);
    for (const SideEnd& side : trueing.found.sides) {
        close_outline(result.pattern.pieces[side.piece], {account.notes, pattern.unit});
    }
    const Pattern before = result.pattern;
    trueing.by_mm = moves_of_sides(before, trueing.found, request.move);
    account.difference_before_mm = seam_difference(before, pattern.seams[trueing.found.seam]);
    if (is_true_already(before, trueing)) {
        trueing.by_mm = {};
        account.notes.push_back(trueing.found.is_free
                                    ? "the lengths match, and the corner there is said to be free and is not "
                                      "judged; nothing was changed"
                                    : "the seam is true there; nothing was changed");
    } else {
        for (std::size_t side = 0; side < 2; ++side) {
            // A side sewn to its own mirror image is one that is told twice.
            if (!trueing.is_redrawn[side] && !trueing.found.is_with_itself) continue;
            trueing.span_mm[side] = span_of(before, trueing, side, request.span_mm);
            refuse_long_move(trueing.found.sides[side], trueing.by_mm[side], trueing.span_mm[side]);
        }
        result.pattern = redrawn_pattern(before, trueing);
        result.pattern = with_notches_of_sides(result.pattern, trueing, {account.notes, pattern.unit});
        note_parts(pattern, trueing, account);
    }
    account_for(account, before, result.pattern, trueing);
    account.difference_after_mm = seam_difference(result.pattern, pattern.seams[trueing.found.seam]);
    result.pattern.made.push_back({"true",
                                   {{"seam", request.seam},
                                    {"end", request.end},
                                    {"move", request.move},
                                    {"span", words_of_length(request.span_mm)}}});
    return result;
}

}  // namespace dartwright
