// pivot: moves a dart, or a part of it, to another place on the outline.

#include "arguments.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/geometry/motion.hpp"
#include "dartwright/words/lengths.hpp"
#include "operation.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

DartPart part_of(const Arguments& arguments) {
    DartPart part;
    if (arguments.has("share") + arguments.has("angle") + arguments.has("intake") > 1)
        throw WrongUse("--share, --angle and --intake say the same thing in three ways: give one");
    if (const auto share = arguments.value("share")) part.share = parse_share(*share);
    if (const auto angle = arguments.value("angle")) part.angle_rad = radians(parse_angle_deg(*angle));
    if (const auto intake = arguments.value("intake")) part.intake_mm = parse_length(*intake);
    return part;
}

PivotRequest request_of(const Arguments& arguments) {
    PivotRequest request;
    request.piece = arguments.required("piece");
    request.dart = arguments.required("dart");
    request.to = arguments.required("to");
    request.part = part_of(arguments);
    if (const auto back_off = arguments.value("back-off")) request.back_off_mm = parse_length(*back_off);
    request.hold = arguments.value("hold").value_or("");
    request.centre_seam = arguments.value("centre-seam").value_or("");
    request.name = arguments.value("name").value_or("");
    request.press = arguments.value("press").value_or("");
    return request;
}

std::string text_of(const PivotAccount& account, Unit unit, const Ink& ink) {
    const bool is_whole = account.new_dart == account.dart;
    std::string text = std::string("Moved ") + angle_words(account.angle_rad) + " of " + account.dart +
                       " on " + account.piece + " to " + account.to;
    text += (is_whole ? "" : std::string(", as ") + account.new_dart) + std::string(".\n");
    text += std::string("  the old mouth was ") + length_words(account.old_intake_mm, unit) +
            ", the new one is " + length_words(account.new_intake_mm, unit) + "\n";
    text += std::string("  left at the old place: ") +
            (account.angle_left_rad == 0 ? "nothing" : angle_words(account.angle_left_rad)) + "\n";
    return text + turn_words({account.turn_rad, account.turned, account.held}) + note_lines(account.notes) +
           runs_table(account.runs, unit, ink);
}

Json json_of(const PivotAccount& account) {
    return {{"dartwright_pivot", 1},
            {"piece", account.piece},
            {"dart", account.dart},
            {"new_dart", account.new_dart},
            {"to", account.to},
            {"angle", degrees(account.angle_rad)},
            {"angle_left", degrees(account.angle_left_rad)},
            {"turned", account.turned},
            {"held", account.held},
            {"turn", degrees(account.turn_rad)},
            {"runs", runs_json(account.runs)},
            {"intake_before", account.old_intake_mm},
            {"intake_after", account.new_intake_mm},
            {"notes", account.notes}};
}

ExitStatus run_pivot(const Arguments& arguments, Invocation& call) {
    const PivotRequest request = request_of(arguments);
    return run_operation(arguments, call, [&request](const Pattern& pattern, const Ink& ink) {
        PivotResult result = pivot(pattern, request);
        return Operated{std::move(result.pattern), text_of(result.account, pattern.unit, ink),
                        json_of(result.account)};
    });
}

}  // namespace

Command pivot_command() {
    return {
        "pivot",
        "move a dart, or part of it, to another place on the outline",
        "FILE --piece PIECE --dart DART --to PLACE [OPTIONS]",
        "Cuts from the dart's pivot to the place, turns the part between, and so closes the dart where it "
        "was "
        "and opens it at the place. The pattern goes to standard output and the account of what was done to "
        "standard error; with -o the pattern goes to the file and the account to standard output.",
        with_operation_options(
            {piece_option("the piece that has the dart"),
             {"dart", 0, "DART", "the dart to move"},
             {"to", 0, "PLACE", "where it opens: EDGE@DISTANCE/FROM, such as side@60/armhole or waist@50%"},
             {"share", 0, "SHARE",
              "move this share of the dart's angle: 50%, 1/3 (without any of the three, all)"},
             {"angle", 0, "DEGREES", "move this angle"},
             {"intake", 0, "LENGTH", "move so much that the old mouth narrows by this length"},
             {"back-off", 0, "LENGTH",
              "how far the new dart's point stays from the pivot; as the old one's if absent"},
             {"hold", 0, "EDGE",
              "the edge that stays where it is; chosen by the fold, then the grain, if absent"},
             {"centre-seam", 0, "NAME",
              "the fold becomes a seam of this name first, so that the dart may open in it"},
             {"name", 0, "NAME", "the name of the dart at its new place"},
             {"press", 0, "EDGE", "the edge towards which the new dart is pressed"}}),
        {{"dartwright pivot bodice.json --piece front --dart \"waist dart\" --to side@60/armhole -o "
          "moved.json",
          "move the whole waist dart into the side, 60 mm below the armhole"},
         {"dartwright pivot bodice.json --piece front --dart \"waist dart\" --to shoulder@50% --share 50% "
          "--name \"shoulder dart\" -o two-darts.json",
          "move half of it to the middle of the shoulder"},
         {"dartwright pivot bodice.json --piece front --dart \"waist dart\" --to shoulder@50% --intake 1cm "
          "--back-off 25 | dartwright check -",
          "narrow the waist dart by 1 cm, and check the pattern without keeping it"}},
        run_pivot};
}

}  // namespace dartwright::tools
