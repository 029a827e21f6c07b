#include "dartwright/darts/true_edge.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/recording/request_words.hpp"
#include "dartwright/darts/redrawing/outline_chain.hpp"
#include "dartwright/darts/redrawing/redrawn_edge.hpp"
#include "dartwright/geometry/closest.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {
namespace {

// The corner of the edge where one item of it meets the next, degrees.
double corner_deg(const Outline& outline, std::size_t before, std::size_t after) {
    const Vector in = tangent_at_end(curves_of_item(outline, before).back());
    const Vector out = tangent_at_start(curves_of_item(outline, after).front());
    return degrees(std::abs(angle_from(in, out)));
}

struct Corner {
    std::size_t after = 0;  ///< the item that begins at it
    double deg = 0;
};

std::optional<Corner> first_corner(const Outline& outline, const Run& run, double least_deg) {
    for (std::size_t k = 0; k + 1 < run.items.size(); ++k) {
        if (run.items[k + 1] != (run.items[k] + 1) % outline.items.size()) continue;
        const double deg = corner_deg(outline, run.items[k], run.items[k + 1]);
        if (deg > least_deg) return Corner{run.items[k + 1], deg};
    }
    return std::nullopt;
}

// The corners are far enough apart for a full span, or each is redrawn half way to the next.
double span_at(const Outline& outline, const Run& run, const Corner& corner, const TrueEdgeRequest& request,
               double least_deg) {
    double span = request.span_mm;
    const std::vector<double> at = item_distances(outline, run);
    double here = 0;
    for (std::size_t k = 0; k < run.items.size(); ++k) {
        if (run.items[k] == corner.after) here = at[k];
    }
    for (std::size_t k = 1; k < run.items.size(); ++k) {
        const bool is_joint = run.items[k] == (run.items[k - 1] + 1) % outline.items.size();
        if (run.items[k] == corner.after || !is_joint) continue;
        if (corner_deg(outline, run.items[k - 1], run.items[k]) <= least_deg) continue;
        span = std::min(span, std::abs(at[k] - here) / 2);
    }
    return span;
}

Outline redrawn_at(const Outline& outline, std::size_t after, double span_mm) {
    Chain chain = chain_of(outline);
    std::rotate(chain.begin(), chain.begin() + static_cast<std::ptrdiff_t>(after), chain.end());
    const Curve line = line_across(chain, {}, span_mm);
    const Point joint = closest_point(line, chain.front().start).point;
    chain = redrawn_over(chain, {joint, joint, {}}, span_mm, Drawn::across).chain;
    return outline_of(rejoined_at(chain, chain.size() - 1));
}

}  // namespace

TrueEdgeResult true_edge(const Pattern& pattern, const TrueEdgeRequest& request) {
    const SoundEntry sound(pattern);
    if (has_spare_items(pattern)) return true_edge(without_spare_items(pattern), request);
    require_span(request.span_mm, SpanMayBe::wide);
    TrueEdgeResult result{pattern, {request.piece, request.edge, {}, {}, {}}};
    TrueEdgeAccount& account = result.account;
    Piece& piece = result.pattern.pieces[piece_index(pattern, request.piece)];
    const double least_deg = tolerances_of(pattern).kink_deg;
    const std::vector<Run> before = runs_of(piece.outline);
    Run run = run_named(before, request.edge, request.piece);
    while (const auto corner = first_corner(piece.outline, run, least_deg)) {
        account.corners.push_back({start_of_item(piece.outline, corner->after), corner->deg});
        const double span = span_at(piece.outline, run, *corner, request, least_deg);
        piece.outline = redrawn_at(piece.outline, corner->after, span);
        run = run_named(runs_of(piece.outline), request.edge, request.piece);
    }
    if (account.corners.empty()) account.notes.push_back("the edge has no corner; nothing was changed");
    refuse_bad_redrawing(piece.outline);
    account.runs = run_changes(before, runs_of(piece.outline));
    note_seams_of_changed_runs(pattern, request.piece, account.runs, {account.notes, pattern.unit});
    result.pattern.made.push_back(
        {"true",
         {{"piece", request.piece}, {"edge", request.edge}, {"span", words_of_length(request.span_mm)}}});
    return result;
}

}  // namespace dartwright
