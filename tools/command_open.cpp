// open: unfolds a piece that is cut on the fold.

#include "arguments.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/words/lengths.hpp"
#include "operation.hpp"
#include "verdicts.hpp"
#include "worn_option.hpp"

namespace dartwright::tools {

namespace {

std::string text_of(const OpenAccount& account, Unit unit, const Ink& ink) {
    std::string text = "Opened " + account.piece + " at its fold, " + account.fold +
                       "; what was drawn is its " + account.drawn_side + " half" +
                       (account.is_as_worn ? ", as it is worn" : "") + ".\n";
    text += "  cloth: " + area_words(account.area_before_mm2, unit) + ", now " +
            area_words(account.area_after_mm2, unit) + "\n";
    for (const auto& [left, right] : account.darts) text += "  darts: " + left + ", " + right + "\n";
    for (const OpenedSeam& seam : account.seams) {
        text += "  seam " + seam.seam + ": now";
        for (const std::string& name : seam.now) text += (name == seam.now.front() ? " " : ", ") + name;
        text += "\n";
    }
    text += note_lines(account.notes);
    TextTable table({{std::string("runs, ") + word_of(unit), Align::left}, {"half"}, {"left"}, {"right"}});
    for (const OpenedRun& run : account.runs) {
        table.add({{run.edge},
                   {length_figure(run.before_mm, unit)},
                   {length_figure(run.left_mm, unit)},
                   {length_figure(run.right_mm, unit)}});
    }
    return text + "\n" + table.text(ink);
}

Json json_of(const OpenAccount& account) {
    Json runs = Json::array();
    for (const OpenedRun& run : account.runs) {
        runs.push_back({{"edge", run.edge},
                        {"before", run.before_mm},
                        {"left", {{"edge", run.left}, {"length", run.left_mm}}},
                        {"right", {{"edge", run.right}, {"length", run.right_mm}}}});
    }
    Json seams = Json::array();
    for (const OpenedSeam& seam : account.seams) seams.push_back({{"seam", seam.seam}, {"now", seam.now}});
    return {{"dartwright_open", 1},
            {"piece", account.piece},
            {"fold", account.fold},
            {"drawn_side", account.drawn_side},
            {"sides", account.is_as_worn ? "as worn" : "as drawn"},
            {"area_before", account.area_before_mm2},
            {"area_after", account.area_after_mm2},
            {"runs", runs},
            {"darts", account.darts},
            {"seams", seams},
            {"notes", account.notes}};
}

std::optional<Worn> worn_wanted(const Arguments& arguments) {
    const auto word = arguments.value("worn");
    return word ? std::optional(worn_named(*word)) : std::nullopt;
}

std::optional<SideUp> side_up_wanted(const Arguments& arguments) {
    const auto word = arguments.value("side-up");
    return word ? std::optional(side_up_named(*word)) : std::nullopt;
}

ExitStatus run_open(const Arguments& arguments, Invocation& call) {
    OpenRequest request;
    request.piece = arguments.required("piece");
    request.worn = worn_wanted(arguments);
    request.side_up = side_up_wanted(arguments);
    return run_operation(arguments, call, [&request](const Pattern& pattern, const Ink& ink) {
        OpenResult result = open(pattern, request);
        return Operated{std::move(result.pattern), text_of(result.account, pattern.unit, ink),
                        json_of(result.account)};
    });
}

}  // namespace

Command open_command() {
    return {
        "open",
        "unfold a piece that is cut on the fold, so that its halves may differ",
        "FILE --piece PIECE [OPTIONS]",
        "Draws the other half of the piece: edges, darts and notches become 'left X' and 'right X', the "
        "fold becomes a marked line. Left and right are the wearer's, if the piece or --worn says whether "
        "it is a front or a back: a front that lies before you right side up has its left on your right. "
        "Otherwise they are as the piece lies before you with its grain arrow pointing away from you. "
        "Every seam of the piece becomes two, the second with the mirror image of what it is sewn "
        "to. Darts "
        "may then be moved across the centre.",
        with_operation_options(
            {piece_option("the piece to unfold"),
             {"worn", 0, "front|back", "the part of the body that it covers, if the piece does not say"},
             {"side-up", 0, "right|wrong",
              "the side of the cloth that lies up as it is drawn; right if absent"}}),
        {{"dartwright open bodice.json --piece front --worn front -o whole.json", "the whole front"},
         {"dartwright open bodice.json --piece front --worn front | dartwright pivot - --piece front --dart "
          "\"left "
          "bust dart\" "
          "--to \"right neck@50%\" | dartwright check -",
          "a dart of the left half opened in the right half of the neck"}},
        run_open};
}

}  // namespace dartwright::tools
