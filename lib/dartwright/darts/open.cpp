#include "dartwright/darts/open.hpp"

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/unfolded_contents.hpp"
#include "dartwright/darts/unfolded_seams.hpp"
#include "dartwright/darts/wedges.hpp"
#include "dartwright/pattern/sound_entry.hpp"

namespace dartwright {
namespace {

void refuse_lying_over_itself(const Outline& whole) {
    const std::string trouble = trouble_with(wedge_polygon(whole), whole);
    if (!trouble.empty())
        throw Impossible("opened, the piece would not be a fair one: " + trouble, "mend the half first");
}

Cut whole_cut(const Cut& half) {
    Cut cut = half;
    cut.fold.clear();
    cut.ends.clear();
    // Both halves are alike, so that copies need not be mirrored.
    cut.same = half.same || half.quantity > 1;
    return cut;
}

std::optional<Grain> whole_grain(const Unfolding& u, std::vector<std::string>& notes) {
    std::optional<Grain> grain = u.half.grain;
    if (!grain || grain->along.empty()) return grain;
    const bool is_along_fold = grain->along == u.fold;
    grain->along = is_along_fold ? "" : u.name(Half::drawn, grain->along);
    if (is_along_fold) notes.push_back("the grain runs along no edge now; it stays where it was drawn");
    return grain;
}

Piece whole_piece(const Unfolding& u, const Outline& outline, double gap_mm,
                  std::vector<std::string>& notes) {
    Piece piece;
    piece.name = u.half.name;
    piece.cut = whole_cut(*u.half.cut);
    piece.grain = whole_grain(u, notes);
    piece.outline = outline;
    piece.double_darts = unfolded_double_darts(u, gap_mm);
    piece.notches = unfolded_notches(u);
    piece.allowance = unfolded_allowance(u, notes);
    piece.marks = unfolded_marks(u, gap_mm);
    return piece;
}

std::array<std::string, 2> left_and_right(const Unfolding& u, const std::string& name) {
    std::array<std::string, 2> both{u.name(Half::drawn, name), u.name(Half::added, name)};
    if (u.drawn_side == "right") std::swap(both[0], both[1]);
    return both;
}

void account_for(OpenAccount& account, const Unfolding& u, const Piece& whole) {
    account.piece = u.half.name;
    account.fold = u.fold;
    account.drawn_side = u.drawn_side;
    account.area_before_mm2 = cloth_area(u.half);
    account.area_after_mm2 = cloth_area(whole);
    for (const Run& run : u.half_runs) {
        if (run.edge == u.fold) continue;
        const auto [left, right] = left_and_right(u, run.edge);
        account.runs.push_back({run.edge, run.length, left, find_run(u.whole_runs, left)->length, right,
                                find_run(u.whole_runs, right)->length});
    }
    for (const OutlineItem& item : u.half.outline.items) {
        if (const DartItem* dart = item.as_dart()) account.darts.push_back(left_and_right(u, dart->name));
    }
    for (const DoubleDart& dart : u.half.double_darts) account.darts.push_back(left_and_right(u, dart.name));
}

}  // namespace

OpenResult open(const Pattern& pattern, const OpenRequest& request) {
    const SoundEntry sound(pattern);
    OpenResult result{pattern, {}};
    OpenAccount& account = result.account;
    const Tolerances tolerances = tolerances_of(pattern);
    Piece& piece = result.pattern.pieces[piece_index(pattern, request.piece)];
    Unfolding unfolding = unfolding_of(piece, tolerances, account.notes);
    const Outline outline = unfolded_outline(unfolding);
    refuse_lying_over_itself(outline);
    unfolding.whole_runs = runs_of(outline);
    UnfoldedSeams seams = unfolded_seams(pattern, unfolding);
    piece = whole_piece(unfolding, outline, tolerances.gap_mm, account.notes);
    result.pattern.seams = std::move(seams.seams);
    account.seams = std::move(seams.opened);
    account_for(account, unfolding, piece);
    result.pattern.made.push_back({"open", {{"piece", request.piece}}});
    return result;
}

}  // namespace dartwright
