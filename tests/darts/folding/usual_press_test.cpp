#include "dartwright/darts/folding/usual_press.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "dartwright/pattern/run.hpp"
#include "support/evenly.hpp"

namespace dartwright {
namespace {

using testing::evenly;

/// One dart at a time, each asking the piece anew.
std::string asked_anew(const Piece& piece, Vector axis) {
    const std::vector<Run> runs = runs_of(piece.outline);
    const Vector up = piece.grain ? unit(piece.grain->to - piece.grain->from) : Vector{0, 1};
    std::string edge = "waist";
    if (std::abs(dot(axis, up)) >= std::abs(cross(axis, up))) {
        const std::vector<std::string> folds = fold_edges(piece);
        const auto across = [&](const std::string& fold) {
            const Run* run = find_run(runs, fold);
            if (!run) return 1.0;
            const Vector along =
                end_point(piece.outline, *run, RunEnd::end) - end_point(piece.outline, *run, RunEnd::start);
            return std::abs(cross(unit(along), axis)) / norm(axis);
        };
        edge = folds.empty() ? "" : folds.front();
        if (folds.size() == 2 && across(folds[1]) < across(folds[0])) edge = folds[1];
        if (edge.empty() && piece.grain) edge = piece.grain->along;
    }
    return find_run(runs, edge) ? edge : "";
}

RC_GTEST_PROP(UsualPress, IsThatOfADartThatAsksThePieceAnew, ()) {
    static const std::vector<std::string> names{"waist", "side", "centre front", "top", "hem"};
    const auto any_name = [] { return names[static_cast<std::size_t>(*evenly(0, 5))]; };
    const auto any_point = [] { return Point{10.0 * *evenly(-3, 4), 10.0 * *evenly(-3, 4)}; };
    Piece piece;
    piece.outline.start = any_point();
    const int edges = *evenly(1, 6);
    for (int k = 0; k < edges; ++k)
        piece.outline.items.push_back(
            {EdgeItem{names[static_cast<std::size_t>(k)], StraightShape{}, 0}, any_point()});
    if (*evenly(0, 2) == 0) {
        piece.cut = Cut{};
        if (*evenly(0, 3) > 0) piece.cut->fold = any_name();
        if (*evenly(0, 3) > 0) piece.cut->second_fold = any_name();
    }
    if (*evenly(0, 2) == 0)
        piece.grain = Grain{
            {0, 0}, {10.0 * *evenly(1, 4), 10.0 * *evenly(-3, 4)}, *evenly(0, 2) == 0 ? any_name() : ""};
    UsualPress usual(piece);
    int told = 0;
    for (int asked = 0; asked < 12; ++asked) {
        const Vector axis = unit(Vector{1.0 * *evenly(-3, 4), 0.5 + *evenly(-3, 4)});
        const std::string expected = asked_anew(piece, axis);
        RC_ASSERT(usual.towards(axis) == expected);
        RC_ASSERT(usual_press(piece, axis) == expected);
        if (!expected.empty()) ++told;
    }
    RC_CLASSIFY(told > 0, "told");
}

}  // namespace
}  // namespace dartwright
