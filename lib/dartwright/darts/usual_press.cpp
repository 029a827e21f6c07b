#include "dartwright/darts/usual_press.hpp"

#include <cmath>

#include "dartwright/pattern/run.hpp"

namespace dartwright {
namespace {

bool is_upright(const Piece& piece, Vector axis) {
    const Vector up = piece.grain ? unit(piece.grain->to - piece.grain->from) : Vector{0, 1};
    return std::abs(dot(axis, up)) >= std::abs(cross(axis, up));
}

}  // namespace

std::string usual_press(const Piece& piece, Vector axis) {
    std::string edge = "waist";
    if (is_upright(piece, axis)) {
        edge = piece.cut ? piece.cut->fold : "";
        if (edge.empty() && piece.grain) edge = piece.grain->along;
    }
    return find_run(runs_of(piece.outline), edge) ? edge : "";
}

}  // namespace dartwright
