#include "dartwright/darts/cap.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/folding/folded_cap.hpp"
#include "dartwright/darts/folding/mouth_walk.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {
namespace {

bool is_in_fold(const Piece& piece, std::size_t dart) {
    const std::vector<std::string> folds = fold_edges(piece);
    const std::vector<Run> runs = runs_of(piece.outline);
    return std::any_of(folds.begin(), folds.end(), [&](const std::string& edge) {
        const Run* fold = find_run(runs, edge);
        return fold && std::find(fold->darts.begin(), fold->darts.end(), dart) != fold->darts.end();
    });
}

void refuse_bad_dart(const Piece& piece, std::size_t dart_item, const DartFigures& f,
                     const Tolerances& tolerances) {
    const DartItem& dart = *piece.outline.items[dart_item].as_dart();
    const double gap = gap_of(piece.outline);
    if (gap > tolerances.gap_mm) {
        throw Impossible(
            "the outline of " + quoted(piece.name) + " does not close, by " + difference_told(gap),
            "close it first");
    }
    if (is_in_fold(piece, dart_item)) {
        throw Impossible(quoted(dart.name) + " stands in the fold", "move it out of the fold first");
    }
    const double leg_a = distance(f.a, f.point);
    const double leg_b = distance(f.b, f.point);
    if (!(leg_a > 0 && leg_b > 0 && f.sewn_angle_rad > 0 && f.intake > shut_mouth_mm)) {
        throw Impossible("the mouth of " + quoted(dart.name) + " is shut or its legs are crossed",
                         "draw the dart again");
    }
    if (std::abs(leg_a - leg_b) > tolerances.legs_mm) {
        throw Impossible(
            "the legs of " + quoted(dart.name) + " differ by " + difference_told(std::abs(leg_a - leg_b)),
            "true the dart first");
    }
}

void add_notes(Cap& cap, const DartItem& dart, const FoldedCap& folded) {
    if (dart.legs) cap.notes.push_back("the curved legs are folded as straight ones");
    if (folded.is_square) {
        cap.notes.push_back("the edge beside " + quoted(dart.name) +
                            " does not reach the middle of the folded dart; its cap goes square across");
    } else if (cap.is_far_out) {
        cap.notes.push_back("the cap of " + quoted(dart.name) + " stands out by " +
                            measure_told(cap.depth_mm) + ", more than twice the dart's intake");
    }
}

}  // namespace

Cap cap_of(const Piece& piece, std::size_t dart, PressSide side, const Tolerances& tolerances) {
    const SoundEntry sound(piece);
    const DartFigures f = figures_of(piece.outline, dart);
    refuse_bad_dart(piece, dart, f, tolerances);
    MouthWalk walk(piece, dart, side, tolerances.legs_mm);
    FoldedCap folded = folded_cap({f.a, f.b, f.point, f.sewn_angle_rad}, side, [&] { return walk.next(); });
    Cap cap;
    cap.side = side;
    cap.curves = std::move(folded.curves);
    cap.curves_to_tip = folded.curves_to_tip;
    cap.tip = folded.tip;
    cap.depth_mm = folded.depth_mm;
    cap.is_far_out = folded.is_far_out;
    if (!folded.is_square) cap.beside = walk.closed_darts();
    add_notes(cap, *piece.outline.items[dart].as_dart(), folded);
    return cap;
}

std::optional<Cap> pressed_cap(const Piece& piece, std::size_t dart, const Tolerances& tolerances) {
    const SoundEntry sound(piece);
    const std::optional<PressSide> side = press_side(piece.outline, dart);
    if (!side) return std::nullopt;
    return cap_of(piece, dart, *side, tolerances);
}

std::optional<Cap> cap_if_any(const Piece& piece, std::size_t dart, const Tolerances& tolerances) {
    try {
        return pressed_cap(piece, dart, tolerances);
    } catch (const Impossible&) {
        return std::nullopt;
    }
}

}  // namespace dartwright
