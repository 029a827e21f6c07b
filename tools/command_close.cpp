// close: takes a dart in without sewing it as a dart: ease, gathers, or flare at the hem.

#include "arguments.hpp"
#include "dartwright/darts/close_flare.hpp"
#include "dartwright/darts/close_gathers.hpp"
#include "dartwright/darts/close_seam.hpp"
#include "dartwright/darts/close_tuck.hpp"
#include "dartwright/geometry/motion.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/words/lengths.hpp"
#include "dartwright/words/nearest_word.hpp"
#include "dartwright/words/written_number.hpp"
#include "operation.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

CloseGathersRequest gathers_request_of(const Arguments& arguments, TakenIn as) {
    if (arguments.has("to") || arguments.has("hold"))
        throw WrongUse("--to and --hold are for a flare or a seam; ease and gathers stay where the dart was");
    CloseGathersRequest request;
    request.piece = arguments.required("piece");
    request.dart = arguments.required("dart");
    request.as = as;
    if (const auto span = arguments.value("span")) request.span_mm = parse_length(*span);
    return request;
}

CloseFlareRequest flare_request_of(const Arguments& arguments) {
    CloseFlareRequest request;
    request.piece = arguments.required("piece");
    request.dart = arguments.required("dart");
    request.to = arguments.required("to");
    request.hold = arguments.value("hold").value_or("");
    if (const auto span = arguments.value("span")) request.span_mm = parse_length(*span);
    return request;
}

// `A,B`; names may have spaces, and neither may be empty.
void read_names(CloseSeamRequest& request, const std::string& names) {
    const std::size_t comma = names.find(',');
    const bool are_two = comma != std::string::npos && names.find(',', comma + 1) == std::string::npos;
    if (are_two) {
        request.first_name = names.substr(0, comma);
        request.second_name = names.substr(comma + 1);
    }
    if (request.first_name.empty() || request.second_name.empty())
        throw WrongUse("--names is '" + names + "'; expected two names with a comma between them");
}

CloseSeamRequest seam_request_of(const Arguments& arguments) {
    if (arguments.has("span")) throw WrongUse("--span is for ease, gathers and flare; a seam has none");
    CloseSeamRequest request;
    request.piece = arguments.required("piece");
    request.dart = arguments.required("dart");
    request.with = arguments.value("with").value_or("");
    request.to = arguments.value("to").value_or("");
    if (request.with.empty() == request.to.empty())
        throw WrongUse("a seam ends in a second dart (--with) or at a place (--to); give one of them");
    if (const auto names = arguments.value("names")) read_names(request, *names);
    request.seam = arguments.value("seam").value_or("");
    request.hold = arguments.value("hold").value_or("");
    if (const auto round = arguments.value("round")) request.round_mm = parse_length(*round);
    if (const auto notch = arguments.value("notch")) request.notch_mm = parse_length(*notch);
    return request;
}

CloseTuckRequest tuck_request_of(const Arguments& arguments) {
    for (const char* option : {"span", "to", "hold"}) {
        if (arguments.has(option))
            throw WrongUse("--" + std::string(option) + " is not for a tuck; say how far it is --stitched");
    }
    CloseTuckRequest request{arguments.required("piece"), arguments.required("dart"), {}};
    if (const auto stitched = arguments.value("stitched")) request.stitched_mm = parse_length(*stitched);
    return request;
}

// Options of a seam that were given for another way.
void refuse_seam_options(const Arguments& arguments) {
    for (const char* option : {"with", "names", "seam", "round", "notch"}) {
        if (arguments.has(option)) throw WrongUse("--" + std::string(option) + " is for --as seam only");
    }
}

// `between the notches at 6.94 cm and 16.94 cm`; a stretch that reaches a corner has none there.
std::string stretch_words(const CloseGathersAccount& account, Unit unit) {
    const std::string from = length_words(account.from_mm, unit);
    const std::string to = length_words(account.to_mm, unit);
    if (account.has_from_notch && account.has_to_notch)
        return "between the notches at " + from + " and " + to;
    if (account.has_from_notch) return "from the notch at " + from + " to the corner";
    if (account.has_to_notch) return "from the corner to the notch at " + to;
    return "over the whole edge";
}

std::string text_of(const CloseGathersAccount& account, Unit unit, const Ink& ink) {
    const double percent = 100 * account.fullness_mm / account.sewn_mm;
    std::string text = std::string("Closed ") + account.dart + " on " + account.piece + ", " +
                       angle_words(account.angle_rad) + " with a mouth of " +
                       length_words(account.intake_mm, unit) + ".\n";
    text += std::string("  ") + account.edge + " has " + length_words(account.fullness_mm, unit) +
            " of fullness, " + fixed_decimals(percent, 0) + " % of " + length_words(account.sewn_mm, unit) +
            ", " + stretch_words(account, unit) + "\n";
    return text + note_lines(account.notes) + runs_table(account.runs, unit, ink);
}

Json json_of(const CloseGathersAccount& account) {
    return {{"dartwright_close", 1},
            {"piece", account.piece},
            {"dart", account.dart},
            {"edge", account.edge},
            {"angle", degrees(account.angle_rad)},
            {"intake", account.intake_mm},
            {"fullness", account.fullness_mm},
            {"sewn", account.sewn_mm},
            {"from", account.from_mm},
            {"to", account.to_mm},
            {"runs", runs_json(account.runs)},
            {"notes", account.notes}};
}

std::string text_of(const CloseFlareAccount& account, Unit unit, const Ink& ink) {
    std::string text = std::string("Closed ") + account.dart + " on " + account.piece + ", " +
                       angle_words(account.angle_rad) + ", and slashed to " + account.to + ".\n";
    text += std::string("  the slash is open by ") + length_words(account.opening_mm, unit) + "; " +
            account.hem + " is " + length_words(account.added_mm, unit) + " longer\n";
    return text + note_lines(account.notes) + runs_table(account.runs, unit, ink);
}

Json json_of(const CloseFlareAccount& account) {
    return {{"dartwright_close", 1},
            {"piece", account.piece},
            {"dart", account.dart},
            {"to", account.to},
            {"edge", account.hem},
            {"angle", degrees(account.angle_rad)},
            {"opening", account.opening_mm},
            {"added", account.added_mm},
            {"runs", runs_json(account.runs)},
            {"notes", account.notes}};
}

std::string text_of(const CloseTuckAccount& account, Unit unit, const Ink& ink) {
    std::string text = std::string("Closed ") + account.dart + " on " + account.piece + " as a tuck, " +
                       angle_words(account.angle_rad) + " with a mouth of " +
                       length_words(account.intake_mm, unit) + ".\n";
    text += std::string("  stitched for ") + length_words(account.stitched_mm, unit) + " of its " +
            length_words(account.leg_mm, unit) + ", where " + length_words(account.released_mm, unit) +
            " of cloth are released\n";
    return text + note_lines(account.notes) + runs_table(account.runs, unit, ink);
}

Json json_of(const CloseTuckAccount& account) {
    return {{"dartwright_close", 1},
            {"piece", account.piece},
            {"dart", account.dart},
            {"angle", degrees(account.angle_rad)},
            {"intake", account.intake_mm},
            {"stitched", account.stitched_mm},
            {"leg", account.leg_mm},
            {"released", account.released_mm},
            {"runs", runs_json(account.runs)},
            {"notes", account.notes}};
}

std::string part_line(const PartOfPiece& part, Unit unit) {
    std::string text = std::string("  ") + part.name + ": ";
    if (part.quantity > 0)
        text += "cut " + std::to_string(part.quantity) + (part.has_fold ? " on the fold, " : ", ");
    std::string edges;
    for (const std::string& edge : part.edges) edges += (edges.empty() ? "" : ", ") + edge;
    return text + area_words(part.area_mm2, unit) + ", seam " + length_words(part.seam_mm, unit) + "\n    " +
           edges + "\n";
}

std::string text_of(const CloseSeamAccount& account, Unit unit, const Ink& ink) {
    std::string text =
        std::string("Separated ") + account.piece + " along " + account.seam + ", from " + account.dart +
        " (" + angle_words(account.angle_rad) + ") through its pivot to " +
        (account.with.empty() ? account.to
                              : account.with + " (" + angle_words(account.with_angle_rad) + ")") +
        ".\n";
    for (const PartOfPiece& part : account.parts) text += part_line(part, unit);
    if (account.rounded_off_mm > 0)
        text += "  the rounding takes " + length_words(account.rounded_off_mm, unit) +
                " off each side of the seam\n";
    return text + note_lines(account.notes) + runs_table(account.runs, unit, ink);
}

Json json_of(const PartOfPiece& part) {
    return {{"name", part.name},     {"quantity", part.quantity > 0 ? Json(part.quantity) : Json(nullptr)},
            {"fold", part.has_fold}, {"area", part.area_mm2},
            {"seam", part.seam_mm},  {"edges", part.edges}};
}

Json json_of(const CloseSeamAccount& account) {
    return {{"dartwright_close", 1},
            {"piece", account.piece},
            {"dart", account.dart},
            {"with", account.with.empty() ? Json(nullptr) : Json(account.with)},
            {"to", account.to.empty() ? Json(nullptr) : Json(account.to)},
            {"seam", account.seam},
            {"parts", Json::array({json_of(account.parts[0]), json_of(account.parts[1])})},
            {"angle", degrees(account.angle_rad)},
            {"with_angle", degrees(account.with_angle_rad)},
            {"rounded_off", account.rounded_off_mm},
            {"runs", runs_json(account.runs)},
            {"notes", account.notes}};
}

template <class Result>
Operated operated(Result result, Unit unit, const Ink& ink) {
    return {std::move(result.pattern), text_of(result.account, unit, ink), json_of(result.account)};
}

ExitStatus run_close(const Arguments& arguments, Invocation& call) {
    const std::string as = arguments.required("as");
    if (as != "tuck" && arguments.has("stitched")) throw WrongUse("--stitched is for --as tuck only");
    if (as == "seam") {
        const CloseSeamRequest request = seam_request_of(arguments);
        return run_operation(arguments, call, [&request](const Pattern& pattern, const Ink& ink) {
            return operated(close_as_seam(pattern, request), pattern.unit, ink);
        });
    }
    refuse_seam_options(arguments);
    if (as == "tuck") {
        const CloseTuckRequest request = tuck_request_of(arguments);
        return run_operation(arguments, call, [&request](const Pattern& pattern, const Ink& ink) {
            return operated(close_as_tuck(pattern, request), pattern.unit, ink);
        });
    }
    if (as == "flare") {
        const CloseFlareRequest request = flare_request_of(arguments);
        return run_operation(arguments, call, [&request](const Pattern& pattern, const Ink& ink) {
            return operated(close_as_flare(pattern, request), pattern.unit, ink);
        });
    }
    if (as != "ease" && as != "gathers")
        throw WrongUse("--as is ease, gathers, tuck, flare or seam, not '" + as + "'" +
                       nearest_told(as, {"ease", "gathers", "tuck", "flare", "seam"}));
    const CloseGathersRequest request =
        gathers_request_of(arguments, as == "ease" ? TakenIn::ease : TakenIn::gathers);
    return run_operation(arguments, call, [&request](const Pattern& pattern, const Ink& ink) {
        return operated(close_as_gathers(pattern, request), pattern.unit, ink);
    });
}

}  // namespace

Command close_command() {
    return {
        "close",
        "take a dart in otherwise: as ease, gathers, a tuck, flare or a seam",
        "FILE --piece PIECE --dart DART --as WAY [OPTIONS]",
        "Ease and gathers bridge the mouth with a smooth line; what that is longer than the edge was becomes "
        "fullness between two notches, and every seam stays as long as it was. A tuck is "
        "stitched part of the way and released beyond. Flare slashes from the pivot "
        "to a "
        "place on the hem, closes the dart and leaves the slash open; the hem grows by what is said. A seam "
        "separates the piece in two from the dart's mouth through its pivot to a second dart or to a place, "
        "as "
        "for a "
        "princess seam or a yoke; both sides are as long as each other and are notched.",
        with_operation_options(
            {piece_option("the piece that has the dart"),
             {"dart", 0, "DART", "the dart to close"},
             {"as", 0, "ease|gathers|tuck|flare|seam", "what becomes of its cloth"},
             {"to", 0, "PLACE", "of a flare or a seam: where the slash or the seam ends, EDGE@DISTANCE/FROM"},
             {"stitched", 0, "LENGTH", "of a tuck: so far from the mouth (half of the legs if absent)"},
             {"with", 0, "DART", "of a seam: the second dart, of the same pivot, in which it ends"},
             {"names", 0, "A,B",
              "of a seam: names of the two parts, first the one with the fold (the piece's own name and one "
              "by "
              "its place if absent)"},
             {"seam", 0, "NAME", "of a seam: its name, and that of its edges (DART seam if absent)"},
             {"round", 0, "LENGTH",
              "of a seam: round its corner at the pivot over this much to each side; both sides stay as long "
              "as "
              "each other"},
             {"notch", 0, "LENGTH",
              "of a seam: its notches are this far to each side of the pivot (50 mm if absent)"},
             {"span", 0, "LENGTH",
              "to each side of the mouth, the stretch that takes the fullness (50 mm if absent); of a flare, "
              "over which the hem is redrawn (100 mm)"},
             {"hold", 0, "EDGE",
              "of a flare: the edge that stays; of a seam: an edge of the first part; chosen by the fold, "
              "then the "
              "grain, if absent"}}),
        {{"dartwright close bodice.json --piece front --dart \"waist dart\" --as gathers --span 6cm -o "
          "gathered.json",
          "gather the waist dart into 6 cm of the waist on each side of it"},
         {"dartwright close bodice.json --piece back --dart \"shoulder dart\" --as ease -o eased.json",
          "ease the shoulder dart in"},
         {"dartwright close bodice.json --piece front --dart \"waist dart\" --as tuck --stitched 6cm -o "
          "tucked.json",
          "stitch the waist dart for 6 cm and release the rest"},
         {"dartwright close skirt.json --piece back --dart \"waist dart\" --as flare --to hem@50% -o "
          "flared.json",
          "turn the waist dart of a skirt into flare at the hem"},
         {"dartwright close bodice.json --piece front --dart \"waist dart\" --as seam --to shoulder@50% "
          "--names \"centre front,side front\" --seam \"princess seam\" --round 5cm -o princess.json",
          "separate the front along a princess seam from the waist to the shoulder"}},
        run_close};
}

}  // namespace dartwright::tools
