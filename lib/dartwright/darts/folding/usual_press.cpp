#include "dartwright/darts/folding/usual_press.hpp"

#include <cmath>

#include "dartwright/pattern/run.hpp"

namespace dartwright {
namespace {

bool is_upright(const Piece& piece, Vector axis) {
    const Vector up = piece.grain ? unit(piece.grain->to - piece.grain->from) : Vector{0, 1};
    return std::abs(dot(axis, up)) >= std::abs(cross(axis, up));
}

// How far a direction is from a fold's; a fold that is not drawn is square to all.
double across(const std::optional<Vector>& fold, Vector axis) {
    return fold ? std::abs(cross(*fold, axis)) / norm(axis) : 1;
}

}  // namespace

UsualPress::Edges UsualPress::edges_of(const Piece& piece) {
    const std::vector<Run> runs = runs_of(piece.outline);
    const auto if_drawn = [&](const std::string& edge) { return find_run(runs, edge) ? edge : ""; };
    Edges edges;
    edges.level = if_drawn("waist");
    const std::vector<std::string> folds = fold_edges(piece);
    if (folds.size() < 2) {
        std::string edge = folds.empty() ? "" : folds.front();
        if (edge.empty() && piece.grain) edge = piece.grain->along;
        edges.upright = if_drawn(edge);
        return edges;
    }
    for (const std::string& fold : {folds[0], folds[1]}) {
        const Run* run = find_run(runs, fold);
        edges.folds.push_back(run ? fold : "");
        edges.along.push_back(run ? std::optional(unit(end_point(piece.outline, *run, RunEnd::end) -
                                                       end_point(piece.outline, *run, RunEnd::start)))
                                  : std::nullopt);
    }
    return edges;
}

std::string UsualPress::towards(Vector axis) {
    if (!edges_) edges_ = edges_of(piece_);
    if (!is_upright(piece_, axis)) return edges_->level;
    if (edges_->folds.empty()) return edges_->upright;
    return edges_->folds[across(edges_->along[1], axis) < across(edges_->along[0], axis) ? 1 : 0];
}

std::string usual_press(const Piece& piece, Vector axis) {
    return UsualPress(piece).towards(axis);
}

}  // namespace dartwright
