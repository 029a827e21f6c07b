// merge: closes a dart into another that aims at the same pivot.

#include "arguments.hpp"
#include "dartwright/darts/merge.hpp"
#include "dartwright/geometry/motion.hpp"
#include "dartwright/words/lengths.hpp"
#include "operation.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

MergeRequest request_of(const Arguments& arguments) {
    MergeRequest request;
    request.piece = arguments.required("piece");
    request.dart = arguments.required("dart");
    request.with = arguments.required("with");
    request.hold = arguments.value("hold").value_or("");
    request.name = arguments.value("name").value_or("");
    return request;
}

std::string text_of(const MergeAccount& account, Unit unit, const Ink& ink) {
    std::string text = std::string("Closed ") + account.dart + " on " + account.piece + ", " +
                       angle_words(account.angle_rad) + ", into " + account.with + ", " +
                       angle_words(account.angle_with_rad) + ".\n";
    text += std::string("  ") + account.name + " has " +
            angle_words(account.angle_rad + account.angle_with_rad) + " now, and a mouth of " +
            length_words(account.new_intake_mm, unit) + " (it was " +
            length_words(account.old_intake_mm, unit) + ")\n";
    return text + turn_words({account.turn_rad, account.turned, account.held}) + note_lines(account.notes) +
           runs_table(account.runs, unit, ink);
}

Json json_of(const MergeAccount& account) {
    return {{"dartwright_merge", 1},
            {"piece", account.piece},
            {"dart", account.dart},
            {"with", account.with},
            {"name", account.name},
            {"angle", degrees(account.angle_rad)},
            {"angle_with", degrees(account.angle_with_rad)},
            {"intake_before", account.old_intake_mm},
            {"intake_after", account.new_intake_mm},
            {"turned", account.turned},
            {"held", account.held},
            {"turn", degrees(account.turn_rad)},
            {"runs", runs_json(account.runs)},
            {"notes", account.notes}};
}

ExitStatus run_merge(const Arguments& arguments, Invocation& call) {
    const MergeRequest request = request_of(arguments);
    return run_operation(arguments, call, [&request](const Pattern& pattern, const Ink& ink) {
        MergeResult result = merge(pattern, request);
        return Operated{std::move(result.pattern), text_of(result.account, pattern.unit, ink),
                        json_of(result.account)};
    });
}

}  // namespace

Command merge_command() {
    return {
        "merge",
        "close a dart into another that aims at the same pivot",
        "FILE --piece PIECE --dart DART --with DART [OPTIONS]",
        "Closes the first dart and opens the other by its angle. Both must aim at one pivot: two turns about "
        "different points are not one turn about either.",
        with_operation_options(
            {piece_option("the piece that has the darts"),
             {"dart", 0, "DART", "the dart that closes"},
             {"with", 0, "DART", "the dart that opens by its angle"},
             {"name", 0, "NAME", "the name of the dart that is left; that of the second if absent"},
             {"hold", 0, "EDGE",
              "the edge that stays where it is; chosen by the fold, then the grain, if absent"}}),
        {{"dartwright merge bodice.json --piece front --dart \"waist dart\" --with \"bust dart\" -o "
          "one-dart.json",
          "all the shaping into the bust dart"}},
        run_merge};
}

}  // namespace dartwright::tools
