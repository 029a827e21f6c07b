// split: shares a dart among several places of its outline.

#include "arguments.hpp"
#include "dartwright/darts/split.hpp"
#include "dartwright/geometry/motion.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/words/lengths.hpp"
#include "operation.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

// `PLACE=SHARE`; a place may have an equals sign in a name, a share has none.
SplitPlace split_place(const std::string& words) {
    const std::size_t sign = words.rfind('=');
    if (sign == std::string::npos)
        throw WrongUse(std::string("'") + words +
                       "' has no share; expected PLACE=SHARE such as side@60/armhole=50%");
    return {words.substr(0, sign), parse_share(words.substr(sign + 1)), "", ""};
}

// The n-th value of an option that goes with the n-th place; fewer values leave the rest to be chosen.
std::vector<std::string> for_each_place(const Arguments& arguments, const char* option, std::size_t places) {
    std::vector<std::string> values = arguments.values(option);
    if (values.size() > places)
        throw WrongUse(std::string("--") + option + " is given " + std::to_string(values.size()) +
                       " times for " + std::to_string(places) + (places == 1 ? " place" : " places") +
                       "; give it once a place at most");
    values.resize(places);
    return values;
}

SplitRequest request_of(const Arguments& arguments) {
    SplitRequest request;
    request.piece = arguments.required("piece");
    request.dart = arguments.required("dart");
    arguments.required("to");
    for (const std::string& words : arguments.values("to")) request.places.push_back(split_place(words));
    const auto names = for_each_place(arguments, "name", request.places.size());
    const auto presses = for_each_place(arguments, "press", request.places.size());
    for (std::size_t i = 0; i < request.places.size(); ++i) {
        request.places[i].name = names[i];
        request.places[i].press = presses[i];
    }
    if (const auto back_off = arguments.value("back-off")) request.back_off_mm = parse_length(*back_off);
    request.hold = arguments.value("hold").value_or("");
    request.centre_seam = arguments.value("centre-seam").value_or("");
    return request;
}

std::string text_of(const SplitAccount& account, Unit unit, const Ink& ink) {
    std::string text = std::string("Split ") + account.dart + " on " + account.piece + ", " +
                       angle_words(account.angle_rad) + " with a mouth of " +
                       length_words(account.old_intake_mm, unit) + ".\n";
    for (const OpenedDart& dart : account.opened) {
        text += std::string("  ") + dart.name + ": " + angle_words(dart.angle_rad) + " at " + dart.to +
                ", a mouth of " + length_words(dart.intake_mm, unit) + "\n";
    }
    text += std::string("  left at the old place: ") +
            (account.angle_left_rad == 0 ? "nothing" : angle_words(account.angle_left_rad)) + "\n";
    return text + note_lines(account.notes) + runs_table(account.runs, unit, ink);
}

Json json_of(const SplitAccount& account) {
    Json opened = Json::array();
    for (const OpenedDart& dart : account.opened)
        opened.push_back({{"name", dart.name},
                          {"to", dart.to},
                          {"angle", degrees(dart.angle_rad)},
                          {"intake", dart.intake_mm}});
    return {{"dartwright_split", 1},
            {"piece", account.piece},
            {"dart", account.dart},
            {"angle", degrees(account.angle_rad)},
            {"angle_left", degrees(account.angle_left_rad)},
            {"intake_before", account.old_intake_mm},
            {"opened", opened},
            {"runs", runs_json(account.runs)},
            {"notes", account.notes}};
}

ExitStatus run_split(const Arguments& arguments, Invocation& call) {
    const SplitRequest request = request_of(arguments);
    return run_operation(arguments, call, [&request](const Pattern& pattern, const Ink& ink) {
        SplitResult result = split(pattern, request);
        return Operated{std::move(result.pattern), text_of(result.account, pattern.unit, ink),
                        json_of(result.account)};
    });
}

}  // namespace

Command split_command() {
    return {
        "split",
        "share a dart among several places of the outline",
        "FILE --piece PIECE --dart DART --to PLACE=SHARE... [OPTIONS]",
        "Opens a share of the dart's angle at each place, all at once, and closes the dart where it was by "
        "as "
        "much. What is not shared out stays. Only the shape at the end must not lie over itself; the order "
        "of "
        "the places does not matter.",
        with_operation_options(
            {piece_option("the piece that has the dart"),
             {"dart", 0, "DART", "the dart to share out"},
             {"to", 0, "PLACE=SHARE",
              "a place and the share of the dart's angle that opens there, such as "
              "side@60/armhole=50% or shoulder@50%=1/3",
              true},
             {"name", 0, "NAME", "the name of the dart at the first place, then at the second, and so on",
              true},
             {"press", 0, "EDGE",
              "the edge towards which the first new dart is pressed, then the second, and so on", true},
             {"back-off", 0, "LENGTH",
              "how far the new darts' points stay from the pivot; as the old one's if absent"},
             {"hold", 0, "EDGE",
              "the edge that stays where it is; chosen by the fold, then the grain, if absent"},
             {"centre-seam", 0, "NAME",
              "the fold becomes a seam of this name first, so that the dart may open in it"}}),
        {{"dartwright split bodice.json --piece front --dart \"waist dart\" --to side@60/armhole=50% --to "
          "shoulder@50%=50% -o two-darts.json",
          "half of the waist dart into the side, half into the shoulder"},
         {"dartwright split bodice.json --piece front --dart \"waist dart\" --to neck@50%=1/3 | dartwright "
          "check -",
          "a third of it into the neck, the rest where it was, and check the pattern without keeping it"}},
        run_split};
}

}  // namespace dartwright::tools
