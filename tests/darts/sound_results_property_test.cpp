// What an operation gives keeps the rules of a pattern: closing, trueing, opening, clusters and new points,
// alone and one after the other. (Pivots, splits and merges: replay_property_test.cpp.)

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <functional>

#include "dartwright/darts/close_flare.hpp"
#include "dartwright/darts/close_gathers.hpp"
#include "dartwright/darts/close_seam.hpp"
#include "dartwright/darts/close_tuck.hpp"
#include "dartwright/darts/cluster.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/darts/repoint.hpp"
#include "dartwright/darts/true_dart.hpp"
#include "dartwright/darts/true_edge.hpp"
#include "dartwright/darts/true_seam.hpp"
#include "dartwright/pattern/pattern_problems.hpp"
#include "dartwright/pattern/place.hpp"
#include "support/evenly.hpp"
#include "support/generated_chains.hpp"
#include "support/generated_half.hpp"
#include "support/generated_seams.hpp"

namespace dartwright::testing {
namespace {

using Operation = std::function<Pattern(const Pattern&)>;

// Whatever an operation makes of a pattern, the rules of a pattern hold for it.
void try_and_ask(Pattern& pattern, const Operation& operation) {
    Pattern made;
    try {
        made = operation(pattern);
    } catch (const Impossible&) {
        return;
    } catch (const BadWords&) {
        // A name that an earlier step has given.
        return;
    }
    for (const PatternProblem& problem : problems_of(made))
        RC_LOG() << problem.pointer << ": found " << problem.found << "; expected " << problem.expected
                 << "\n";
    RC_ASSERT(problems_of(made).empty());
    pattern = std::move(made);
}

bool has_dart(const Piece& piece) {
    return std::any_of(piece.outline.items.begin(), piece.outline.items.end(),
                       [](const OutlineItem& item) { return item.as_dart() != nullptr; });
}

Operation any_closing(const std::string& piece, const std::string& dart, const std::string& place) {
    switch (*testing::evenly(0, 4)) {
        case 0:
            return [=](const Pattern& p) {
                return close_as_gathers(p, {piece, dart, TakenIn::gathers, 40}).pattern;
            };
        case 1:
            return [=](const Pattern& p) {
                return close_as_gathers(p, {piece, dart, TakenIn::ease, 60}).pattern;
            };
        case 2:
            return [=](const Pattern& p) { return close_as_tuck(p, {piece, dart, {}}).pattern; };
        default:
            return [=](const Pattern& p) {
                CloseFlareRequest request;
                request.piece = piece;
                request.dart = dart;
                request.to = place;
                return close_as_flare(p, request).pattern;
            };
    }
}

Operation any_trueing(const Piece& piece, const std::string& dart) {
    if (*rc::gen::arbitrary<bool>()) {
        return [=](const Pattern& p) {
            TrueDartRequest request;
            request.piece = piece.name;
            request.dart = dart;
            return true_dart(p, request).pattern;
        };
    }
    const std::vector<Run> runs = runs_of(piece.outline);
    const std::string edge = runs[std::size_t(*testing::evenly(0, int(runs.size())))].edge;
    return [=](const Pattern& p) {
        TrueEdgeRequest request;
        request.piece = piece.name;
        request.edge = edge;
        return true_edge(p, request).pattern;
    };
}

Operation any_aiming(const std::string& piece, const std::string& dart) {
    RepointRequest request;
    request.piece = piece;
    request.dart = dart;
    const double by = real_between(-8, 8);
    if (*rc::gen::arbitrary<bool>()) {
        request.back_off_mm = std::abs(by);
        return [=](const Pattern& p) { return repoint(p, request).pattern; };
    }
    return [=](const Pattern& p) {
        RepointRequest aimed = request;
        aimed.pivot =
            figures_of(piece_named(p, piece).outline, dart_named(piece_named(p, piece), dart)).pivot +
            Vector{by, by / 2};
        return repoint(p, aimed).pattern;
    };
}

Operation any_row(const std::string& piece, const std::string& dart) {
    ClusterRequest request;
    request.piece = piece;
    request.dart = dart;
    request.count = *testing::evenly(2, 4);
    request.apart_mm = real_between(3, 20);
    if (*rc::gen::arbitrary<bool>()) request.lies = ClusterLies::parallel;
    return [=](const Pattern& p) { return cluster(p, request).pattern; };
}

RC_GTEST_PROP(EveryOperation, GivesAPatternWithoutProblems, ()) {
    Pattern pattern = any_chain(any_piece(true, *testing::evenly(1, 4)).pattern, *testing::evenly(0, 3));
    const int steps = *testing::evenly(1, 5);
    for (int step = 0; step < steps; ++step) {
        if (!has_dart(pattern.pieces[0])) return;
        const Piece piece = pattern.pieces[0];
        const std::string dart = any_dart(piece);
        switch (*testing::evenly(0, 4)) {
            case 0:
                try_and_ask(pattern, any_closing(piece.name, dart, any_place(piece)));
                break;
            case 1:
                try_and_ask(pattern, any_trueing(piece, dart));
                break;
            case 2:
                try_and_ask(pattern, any_aiming(piece.name, dart));
                break;
            default:
                try_and_ask(pattern, any_row(piece.name, dart));
                break;
        }
    }
}

RC_GTEST_PROP(EveryOperation, GivesAnOpenedPieceWithoutProblems, ()) {
    Pattern pattern = any_half();
    try_and_ask(pattern, [](const Pattern& p) {
        OpenRequest request;
        request.piece = "half";
        if (*rc::gen::arbitrary<bool>()) request.worn = Worn::front;
        return open(p, request).pattern;
    });
    RC_CLASSIFY(!pattern.made.empty(), "opened");
}

// The seam's end is moved where it can be; both sides stay patterns.
RC_GTEST_PROP(EveryOperation, GivesATruedSeamWithoutProblems, ()) {
    Pattern pattern = any_seam().pattern;
    TrueSeamRequest request;
    request.seam = "side";
    request.end = *rc::gen::element<std::string>("hem", "waist");
    request.move = *rc::gen::element<std::string>("both", "first", "second");
    try_and_ask(pattern, [&](const Pattern& p) { return true_seam(p, request).pattern; });
    RC_CLASSIFY(!pattern.made.empty(), "trued");
}

RC_GTEST_PROP(EveryOperation, GivesSeparatedPiecesWithoutProblems, ()) {
    const GeneratedPiece generated = any_piece(false, 2);
    Pattern pattern = generated.pattern;
    CloseSeamRequest request;
    request.piece = "piece";
    request.dart = "dart 0";
    request.with = "dart 1";
    try_and_ask(pattern, [&](const Pattern& p) { return close_as_seam(p, request).pattern; });
    RC_CLASSIFY(pattern.pieces.size() == 2, "separated");
}

}  // namespace
}  // namespace dartwright::testing
