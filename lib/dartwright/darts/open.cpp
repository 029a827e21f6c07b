#include "dartwright/darts/open.hpp"

#include <algorithm>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/redrawing/wedges.hpp"
#include "dartwright/darts/unfolding/unfolded_contents.hpp"
#include "dartwright/darts/unfolding/unfolded_seams.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {
namespace {

void refuse_lying_over_itself(const Outline& whole) {
    const Sentence trouble = trouble_with(wedge_polygon(whole), whole);
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

std::optional<Grain> whole_grain(const Unfolding& u, Notes notes) {
    std::optional<Grain> grain = u.half.grain;
    if (!grain || grain->along.empty()) return grain;
    const bool is_along_fold = grain->along == u.fold;
    grain->along = is_along_fold ? "" : u.name(Half::drawn, grain->along);
    if (is_along_fold) notes.push_back("the grain runs along no edge now; it stays where it was drawn");
    return grain;
}

Piece whole_piece(const Unfolding& u, const Outline& outline, double gap_mm, Notes notes) {
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

struct HowWorn {
    std::optional<Worn> worn;
    SideUp side_up = SideUp::right;
};

const char* word_of(Worn worn) {
    return worn == Worn::front ? "front" : "back";
}

/// What the piece says, else what the request says.
HowWorn how_worn(const Piece& piece, const OpenRequest& request) {
    if (!piece.worn) {
        if (request.side_up && !request.worn)
            throw BadWords("which side is up tells left from right only of a front or a back; say which " +
                           quoted(piece.name) + " is");
        return {request.worn, request.side_up.value_or(SideUp::right)};
    }
    if (request.worn.value_or(*piece.worn) != *piece.worn ||
        request.side_up.value_or(piece.side_up) != piece.side_up) {
        throw BadWords("the piece " + quoted(piece.name) + " says itself that it is a " +
                       word_of(*piece.worn) + " with its " +
                       (piece.side_up == SideUp::right ? "right" : "wrong") + " side up; expected no other");
    }
    return {piece.worn, piece.side_up};
}

// Names that are as drawn must not pass for the wearer's.
void say_how_worn(Piece& piece, const HowWorn& how, OpenAccount& account) {
    if (!account.is_as_worn && is_left_on_right(*how.worn, how.side_up)) {
        account.notes.push_back(
            quoted(piece.name) +
            " is opened with left and right as drawn, so that it no longer says how it is worn");
        return;
    }
    piece.worn = how.worn;
    piece.side_up = how.side_up;
}

// An entry without `worn` is of a time when left and right were always as drawn.
Made made_entry(const OpenRequest& request, const HowWorn& how) {
    const bool is_as_worn = how.worn && request.by == SidesBy::wearer;
    Made made{"open", {{"piece", request.piece}, {"worn", is_as_worn ? word_of(*how.worn) : "as drawn"}}};
    if (is_as_worn && how.side_up == SideUp::wrong) made.request.push_back({"side_up", "wrong"});
    return made;
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
    if (has_spare_items(pattern)) return open(without_spare_items(pattern), request);
    OpenResult result{pattern, {}};
    OpenAccount& account = result.account;
    const Tolerances tolerances = tolerances_of(pattern);
    Piece& piece = result.pattern.pieces[piece_index(pattern, request.piece)];
    const HowWorn how = how_worn(piece, request);
    Unfolding unfolding = unfolding_of(piece, tolerances, {account.notes, pattern.unit});
    account.is_as_worn = how.worn && request.by == SidesBy::wearer;
    if (account.is_as_worn) name_as_worn(unfolding, *how.worn, how.side_up);
    if (!how.worn && request.by == SidesBy::wearer)
        account.notes.push_back("left and right are as drawn, for it is not said whether " +
                                quoted(request.piece) + " is a front or a back");
    const Outline outline = unfolded_outline(unfolding);
    refuse_lying_over_itself(outline);
    unfolding.whole_runs = runs_of(outline);
    UnfoldedSeams seams = unfolded_seams(pattern, unfolding);
    piece = whole_piece(unfolding, outline, tolerances.gap_mm, {account.notes, pattern.unit});
    result.pattern.seams = std::move(seams.seams);
    account.seams = std::move(seams.opened);
    // Left is said first, as of edges and darts.
    if (unfolding.drawn_side == "right")
        for (OpenedSeam& seam : account.seams) std::reverse(seam.now.begin(), seam.now.end());
    if (how.worn) say_how_worn(piece, how, account);
    account_for(account, unfolding, piece);
    result.pattern.made.push_back(made_entry(request, how));
    return result;
}

}  // namespace dartwright
