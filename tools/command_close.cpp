// close: takes a dart in without sewing it as a dart: ease, gathers, or flare at the hem.

#include "arguments.hpp"
#include "dartwright/darts/close_flare.hpp"
#include "dartwright/darts/close_gathers.hpp"
#include "dartwright/drawing/decimals.hpp"
#include "dartwright/geometry/motion.hpp"
#include "dartwright/pattern/place.hpp"
#include "nearest_word.hpp"
#include "operation.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

CloseGathersRequest gathers_request_of(const Arguments& arguments, TakenIn as) {
    if (arguments.has("to") || arguments.has("hold"))
        throw WrongUse("--to and --hold are for a flare; ease and gathers stay where the dart was");
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

std::string text_of(const CloseGathersAccount& account, Unit unit, const Ink& ink) {
    const double percent = 100 * account.fullness_mm / account.sewn_mm;
    std::string text = std::string("Closed ") + account.dart + " on " + account.piece + ", " +
                       angle_words(account.angle_rad) + " with a mouth of " +
                       length_words(account.intake_mm, unit) + ".\n";
    text += std::string("  ") + account.edge + " has " + length_words(account.fullness_mm, unit) +
            " of fullness, " + fixed_decimals(percent, 0) + " % of " + length_words(account.sewn_mm, unit) +
            ", between the notches at " + length_words(account.from_mm, unit) + " and " +
            length_words(account.to_mm, unit) + "\n";
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

ExitStatus run_close(const Arguments& arguments, Invocation& call) {
    const std::string as = arguments.required("as");
    if (as == "flare") {
        const CloseFlareRequest request = flare_request_of(arguments);
        return run_operation(arguments, call, [&request](const Pattern& pattern, const Ink& ink) {
            CloseFlareResult result = close_as_flare(pattern, request);
            return Operated{std::move(result.pattern), text_of(result.account, pattern.unit, ink),
                            json_of(result.account)};
        });
    }
    if (as != "ease" && as != "gathers")
        throw WrongUse("--as is ease, gathers or flare, not '" + as + "'; the nearest is " +
                       nearest_word(as, {"ease", "gathers", "flare"}));
    const CloseGathersRequest request =
        gathers_request_of(arguments, as == "ease" ? TakenIn::ease : TakenIn::gathers);
    return run_operation(arguments, call, [&request](const Pattern& pattern, const Ink& ink) {
        CloseGathersResult result = close_as_gathers(pattern, request);
        return Operated{std::move(result.pattern), text_of(result.account, pattern.unit, ink),
                        json_of(result.account)};
    });
}

}  // namespace

Command close_command() {
    return {
        "close",
        "take a dart in otherwise: as ease or gathers, or as flare at the hem",
        "FILE --piece PIECE --dart DART --as WAY [OPTIONS]",
        "Ease and gathers bridge the mouth with a smooth line; what that is longer than the edge was becomes "
        "fullness between two notches, and every seam stays as long as it was. Flare slashes from the pivot "
        "to a "
        "place on the hem, closes the dart and leaves the slash open; the hem grows by what is said.",
        with_operation_options(
            {piece_option("the piece that has the dart"),
             {"dart", 0, "DART", "the dart to close"},
             {"as", 0, "ease|gathers|flare", "what becomes of its cloth"},
             {"to", 0, "PLACE", "of a flare: where on the hem the slash ends, EDGE@DISTANCE/FROM"},
             {"span", 0, "LENGTH",
              "to each side of the mouth, the stretch that takes the fullness (50 mm if absent); of a flare, "
              "over which the hem is redrawn (100 mm)"},
             {"hold", 0, "EDGE",
              "of a flare: the edge that stays; chosen by the fold, then the grain, if absent"}}),
        {{"dartwright close bodice.json --piece front --dart \"waist dart\" --as gathers --span 6cm -o "
          "gathered.json",
          "gather the waist dart into 6 cm of the waist on each side of it"},
         {"dartwright close bodice.json --piece back --dart \"shoulder dart\" --as ease -o eased.json",
          "ease the shoulder dart in"},
         {"dartwright close skirt.json --piece back --dart \"waist dart\" --as flare --to hem@50% -o "
          "flared.json",
          "turn the waist dart of a skirt into flare at the hem"}},
        run_close};
}

}  // namespace dartwright::tools
