#include "dartwright/darts/close_seam.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/recording/request_words.hpp"
#include "dartwright/darts/separating/separated_contents.hpp"
#include "dartwright/darts/separating/separated_seams.hpp"
#include "dartwright/darts/turning/dart_turn.hpp"
#include "dartwright/darts/turning/prepared_piece.hpp"
#include "dartwright/geometry/motion.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/notes.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {
namespace {

void refuse_taken_name(const Pattern& pattern, const std::string& whole, const std::string& name) {
    for (const Piece& piece : pattern.pieces) {
        if (piece.name == name && name != whole)
            throw BadWords("there is a piece " + quoted(name) + " already; expected another name");
    }
}

std::string seam_name(const Pattern& pattern, const CloseSeamRequest& request) {
    const std::string name = request.seam.empty() ? derived_name("", request.dart, " seam") : request.seam;
    for (const Seam& seam : pattern.seams) {
        if (seam.name == name)
            throw BadWords("there is a seam " + quoted(name) + " already; expected another name");
    }
    return name;
}

void refuse_bad_words(const Pattern& pattern, const CloseSeamRequest& request) {
    if (request.with.empty() == request.to.empty()) {
        throw BadWords(request.with.empty()
                           ? "the seam has no other end; expected a second dart or a place"
                           : "the seam has two other ends; expected a second dart or a place, not both");
    }
    if (!(request.notch_mm > 0)) {
        throw BadWords("the notches are " + asked_told(request.notch_mm) +
                       " from the pivot; expected more than 0");
    }
    for (const std::string& name : {request.first_name, request.second_name, request.seam})
        require_name(name);
    for (const std::string& name : {request.first_name, request.second_name})
        refuse_taken_name(pattern, request.piece, name);
}

void refuse_other_dart_at_pivot(const Piece& piece, const CloseSeamRequest& request) {
    const std::size_t own = dart_named(piece, request.dart);
    const Point pivot = piece.outline.items[own].as_dart()->turning_point();
    for (const OutlineItem& item : piece.outline.items) {
        const DartItem* dart = item.as_dart();
        if (!dart || dart->name == request.dart || dart->name == request.with) continue;
        if (dart->turning_point() == pivot) {
            throw Impossible(
                "the dart " + quoted(dart->name) + " has the same pivot, and would end in the seam",
                "merge it into one of the seam's darts first");
        }
    }
}

TargetCut cut_to_dart(const Piece& piece, const CloseSeamRequest& request, double legs_mm) {
    const std::size_t dart = dart_named(piece, request.dart);
    const std::size_t with = dart_named(piece, request.with);
    if (dart == with) {
        throw BadWords("the dart " + quoted(request.dart) +
                       " is to be joined in a seam with itself; expected another");
    }
    movable_dart(piece, dart, legs_mm);
    movable_dart(piece, with, legs_mm);
    return cut_between_darts(piece.outline, dart, with, "no one seam passes through both");
}

TargetCut cut_to_place(const Piece& piece, const CloseSeamRequest& request, double legs_mm) {
    movable_dart(piece, dart_named(piece, request.dart), legs_mm);
    const TargetChosen target = target_anywhere(piece, runs_of(piece.outline), request.to);
    TargetCut cut = cut_at_target(piece.outline, target, request.dart);
    const Sentence trouble = trouble_with(cut.polygon, cut.outline);
    if (!trouble.empty()) throw Impossible(trouble, "mend the outline first");
    refuse_blocked_cut(piece, cut, target);
    return cut;
}

Point centre_of(const std::vector<Point>& polygon) {
    double area = 0;
    Vector moment{0, 0};
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Vector a = polygon[i] - polygon[0];
        const Vector b = polygon[(i + 1) % polygon.size()] - polygon[0];
        area += cross(a, b);
        moment = moment + cross(a, b) * (a + b);
    }
    return polygon[0] + (1 / (3 * area)) * moment;
}

// `side front` for what an upright seam parts from the held one, `upper` or `lower` for a level seam; up is
// along the grain.
std::string name_by_place(const Piece& piece, const Separation& s, std::size_t held) {
    const Vector up = piece.grain ? unit(piece.grain->to - piece.grain->from) : Vector{0, 1};
    const Vector along = (s.with ? s.with->a : s.target) - s.dart.a;
    if (std::abs(dot(up, along)) >= std::abs(cross(up, along))) return derived_name("side ", piece.name, "");
    const Vector way = centre_of(s.parts[1 - held].polygon) - centre_of(s.parts[held].polygon);
    // A grain may be drawn either way; what is up on the paper is up.
    const double height = up.y >= 0 ? dot(up, way) : -dot(up, way);
    return derived_name(height > 0 ? "upper " : "lower ", piece.name, "");
}

SeparatedNames names_for(const Pattern& pattern, const CloseSeamRequest& request, const Separation& s,
                         std::size_t held) {
    const Piece& piece = piece_named(pattern, request.piece);
    SeparatedNames names{request.piece, {}, seam_name(pattern, request), held};
    names.parts[held] = request.first_name.empty() ? request.piece : request.first_name;
    names.parts[1 - held] = request.second_name.empty() ? name_by_place(piece, s, held) : request.second_name;
    if (names.parts[0] == names.parts[1]) {
        throw BadWords("both parts would be called " + quoted(names.parts[0]) + "; expected two names");
    }
    for (const std::string& name : names.parts) refuse_taken_name(pattern, request.piece, name);
    return names;
}

void warn_of_corners(const Pattern& pattern, const CloseSeamRequest& request, const Piece& whole,
                     Notes notes) {
    const Tolerances tolerances = tolerances_of(pattern);
    for (const std::string& name : {request.dart, request.with}) {
        if (name.empty()) continue;
        const DartFigures figures = figures_of(whole.outline, dart_named(whole, name));
        warn_of_corner(whole.outline, figures, {tolerances.mouth_deg, "true the seam at that end"}, notes);
    }
}

PartOfPiece account_of(const Piece& piece, const SeparatedPart& part) {
    PartOfPiece out;
    out.name = piece.name;
    out.quantity = piece.cut ? piece.cut->quantity : 0;
    out.has_fold = piece.cut && !piece.cut->fold.empty();
    out.area_mm2 = cloth_area(piece);
    for (const std::string& edge : part.seam_edges) out.seam_mm += find_run(part.runs, edge)->length;
    for (const Run& run : part.runs) out.edges.push_back(run.edge);
    return out;
}

std::vector<RunChange> whole_runs_after(const std::vector<Run>& before, const Separation& s) {
    std::vector<RunChange> out;
    for (const Run& run : before) {
        double after = 0;
        for (const PartOfRun& part : parts_of_run(s, run.edge)) after += part.run->length;
        out.push_back({run.edge, run.length, after});
    }
    return out;
}

void account_for(CloseSeamAccount& account, const CloseSeamRequest& request, const Separation& s) {
    account.piece = request.piece;
    account.dart = request.dart;
    account.with = request.with;
    account.to = request.to;
    account.angle_rad = s.dart.angle_rad;
    account.with_angle_rad = s.with ? s.with->angle_rad : 0;
    account.rounded_off_mm = s.rounded_off_mm;
}

Made made_of(const CloseSeamRequest& request, const CloseSeamAccount& account) {
    Made made{"close", {{"piece", request.piece}, {"dart", request.dart}, {"as", "seam"}}};
    const auto add = [&](const char* key, const std::string& value) {
        if (!value.empty()) made.request.push_back({key, value});
    };
    add("with", request.with);
    add("to", request.to);
    add("name", account.parts[0].name);
    add("second name", account.parts[1].name);
    add("seam", account.seam);
    add("hold", request.hold);
    if (request.round_mm) add("round", words_of_length(*request.round_mm));
    add("notch", words_of_length(request.notch_mm));
    return made;
}

void put_in_place(Pattern& pattern, std::size_t at, std::array<Piece, 2> pieces,
                  const SeparatedNames& names) {
    const auto next = pattern.pieces.insert(pattern.pieces.begin() + static_cast<std::ptrdiff_t>(at) + 1,
                                            std::move(pieces[1 - names.first]));
    *(next - 1) = std::move(pieces[names.first]);
}

}  // namespace

CloseSeamResult close_as_seam(const Pattern& pattern, const CloseSeamRequest& request) {
    const SoundEntry sound(pattern);
    if (has_spare_items(pattern)) return close_as_seam(without_spare_items(pattern), request);
    refuse_bad_words(pattern, request);
    CloseSeamResult result{pattern, {}};
    CloseSeamAccount& account = result.account;
    const Tolerances tolerances = tolerances_of(pattern);
    const std::size_t at = piece_index(pattern, request.piece);
    const Piece whole = prepared_piece(pattern.pieces[at], dart_named(pattern.pieces[at], request.dart),
                                       tolerances, {account.notes, pattern.unit});
    const std::string seam = seam_name(pattern, request);
    const TargetCut cut = request.with.empty() ? cut_to_place(whole, request, tolerances.legs_mm)
                                               : cut_to_dart(whole, request, tolerances.legs_mm);
    refuse_other_dart_at_pivot(whole, request);
    const Separation s = separated(cut, {seam, request.round_mm}, {account.notes, pattern.unit});
    const std::size_t held = is_after_dart_held(whole, cut, request.hold) ? 0 : 1;
    const SeparatedNames names = names_for(pattern, request, s, held);
    std::array<Piece, 2> pieces =
        separated_pieces(whole, s, {names.parts, held, request.notch_mm}, {account.notes, pattern.unit});
    warn_of_corners(pattern, request, whole, {account.notes, pattern.unit});
    account_for(account, request, s);
    account.seam = seam;
    account.parts = {account_of(pieces[held], s.parts[held]),
                     account_of(pieces[1 - held], s.parts[1 - held])};
    account.runs = whole_runs_after(runs_of(whole.outline), s);
    for (Seam& each : result.pattern.seams)
        each = separated_seam(each, s, names, pattern, {account.notes, pattern.unit});
    result.pattern.seams.push_back(seam_between_parts(s, names));
    put_in_place(result.pattern, at, std::move(pieces), names);
    result.pattern.made.push_back(made_of(request, account));
    return result;
}

}  // namespace dartwright
