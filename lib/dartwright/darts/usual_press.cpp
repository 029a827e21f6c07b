#include "dartwright/darts/usual_press.hpp"

#include <cmath>

#include "dartwright/pattern/run.hpp"

namespace dartwright {
namespace {

bool is_upright(const Piece& piece, Vector axis) {
    const Vector up = piece.grain ? unit(piece.grain->to - piece.grain->from) : Vector{0, 1};
    return std::abs(dot(axis, up)) >= std::abs(cross(axis, up));
}

// Of two folds the one that runs nearer to that way; empty if there is none.
std::string fold_along(const Piece& piece, Vector axis) {
    const std::vector<std::string> folds = fold_edges(piece);
    if (folds.size() < 2) return folds.empty() ? "" : folds.front();
    const std::vector<Run> runs = runs_of(piece.outline);
    const auto across = [&](const std::string& edge) {
        const Run* run = find_run(runs, edge);
        if (!run) return 1.0;
        return std::abs(cross(unit(end_point(piece.outline, *run, RunEnd::end) -
                                   end_point(piece.outline, *run, RunEnd::start)),
                              axis)) /
               norm(axis);
    };
    return across(folds[1]) < across(folds[0]) ? folds[1] : folds[0];
}

}  // namespace

std::string usual_press(const Piece& piece, Vector axis) {
    std::string edge = "waist";
    if (is_upright(piece, axis)) {
        edge = fold_along(piece, axis);
        if (edge.empty() && piece.grain) edge = piece.grain->along;
    }
    return find_run(runs_of(piece.outline), edge) ? edge : "";
}

}  // namespace dartwright
