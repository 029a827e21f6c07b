#include "dartwright/darts/split.hpp"

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/recording/request_words.hpp"
#include "dartwright/darts/separating/centre_seam.hpp"
#include "dartwright/darts/turning/planned_turn.hpp"
#include "dartwright/darts/turning/prepared_piece.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {
namespace {

// Shares worked out by hand, such as three thirds, miss the whole by rounding.
constexpr double share_rounding = 1e-9;

double sum_of_shares(const SplitRequest& request) {
    if (request.places.empty()) throw BadWords("no place is given; expected one or more");
    double sum = 0;
    for (const SplitPlace& place : request.places) {
        if (!(place.share > 0)) {
            throw BadWords("the share at " + place.to + " is " + text_of("%g %%", place.share * 100) +
                           "; expected more than 0");
        }
        sum += place.share;
    }
    if (sum <= 1 + share_rounding) return sum;
    throw Impossible("the shares add up to " + text_of("%g %%", sum * 100) + " of the dart",
                     "give shares of 100 % together, or less");
}

TurnWanted wanted_at(const SplitRequest& request, const SplitPlace& place, const AngleChosen& angle) {
    return {request.dart, place.to,   angle,       request.back_off_mm,
            request.hold, place.name, place.press, request.places.size() == 1};
}

// Every cut on the piece as it is: what the places before it have turned neither helps nor hinders.
void judge_cuts(const Piece& piece, const SplitRequest& request, const DartFigures& figures) {
    std::vector<std::string> unread;
    const Notes ignored(unread, Unit::mm);
    for (const SplitPlace& place : request.places) {
        judge_cut(piece, planned_turn(piece, wanted_at(request, place, {figures.angle_rad, true}), ignored));
    }
}

struct Opening {
    Piece piece;
    OpenedDart opened;
};

Opening opened_at(const Piece& piece, const TurnWanted& wanted, Notes notes) {
    const PlannedTurn plan = planned_turn(piece, wanted, notes);
    return {turned_piece(piece, plan.cut, plan.turn, notes),
            {plan.turn.opened.name, wanted.to, wanted.angle.rad, 0}};
}

Piece opened_everywhere(Piece piece, const SplitRequest& request, const DartFigures& figures,
                        SplitAccount& account, Notes notes) {
    const bool is_all = sum_of_shares(request) >= 1 - share_rounding;
    double left = figures.angle_rad;
    for (std::size_t i = 0; i < request.places.size(); ++i) {
        const bool is_rest = is_all && i + 1 == request.places.size();
        const double rad = is_rest ? left : request.places[i].share * figures.angle_rad;
        Opening opening = opened_at(piece, wanted_at(request, request.places[i], {rad, is_rest}), notes);
        piece = std::move(opening.piece);
        account.opened.push_back(opening.opened);
        left -= rad;
    }
    account.angle_left_rad = is_all ? 0 : left;
    for (OpenedDart& each : account.opened) {
        each.intake_mm = figures_of(piece.outline, *find_dart(piece, each.name)).intake;
    }
    return piece;
}

Made made_of(const SplitRequest& request, const SplitAccount& account) {
    Made made{"split", {{"piece", request.piece}, {"dart", request.dart}}};
    // Keys of the second place are `to 2`, `name 2`, and so on: a request has each key once.
    for (std::size_t i = 0; i < request.places.size(); ++i) {
        const SplitPlace& place = request.places[i];
        const std::string number = i == 0 ? "" : " " + std::to_string(i + 1);
        made.request.push_back({"to" + number, place.to + "=" + words_of_share(place.share)});
        made.request.push_back({"name" + number, account.opened[i].name});
        if (!place.press.empty()) made.request.push_back({"press" + number, place.press});
    }
    if (request.back_off_mm) made.request.push_back({"back_off", words_of_length(*request.back_off_mm)});
    if (!request.hold.empty()) made.request.push_back({"hold", request.hold});
    if (!request.centre_seam.empty()) made.request.push_back({"centre_seam", request.centre_seam});
    return made;
}

CentreSeam centre_seam_of(const SplitRequest& request) {
    CentreSeam out{request.piece, request.centre_seam, {}};
    for (const SplitPlace& place : request.places) out.targets.push_back(place.to);
    return out;
}

}  // namespace

SplitResult split(const Pattern& pattern, const SplitRequest& request) {
    const SoundEntry sound(pattern);
    if (has_spare_items(pattern)) return split(without_spare_items(pattern), request);
    SplitResult result;
    SplitAccount& account = result.account;
    const Tolerances tolerances = tolerances_of(pattern);
    result.pattern = with_centre_seam(pattern, centre_seam_of(request), {account.notes, pattern.unit});
    Piece& piece = result.pattern.pieces[piece_index(pattern, request.piece)];
    const std::size_t dart = dart_named(piece, request.dart);
    const Piece before = prepared_piece(piece, dart, tolerances, {account.notes, pattern.unit});
    const DartFigures figures = movable_dart(before, dart, tolerances.legs_mm);
    sum_of_shares(request);
    judge_cuts(before, request, figures);
    piece = opened_everywhere(before, request, figures, account, {account.notes, pattern.unit});
    refuse_overlap(piece.outline);
    if (account.angle_left_rad == 0) {
        warn_of_corner(before.outline, figures, {tolerances.mouth_deg}, {account.notes, pattern.unit});
    }
    account.piece = request.piece;
    account.dart = request.dart;
    account.angle_rad = figures.angle_rad;
    account.old_intake_mm = figures.intake;
    account.runs = run_changes(runs_of(before.outline), runs_of(piece.outline));
    result.pattern.made.push_back(made_of(request, account));
    return result;
}

}  // namespace dartwright
