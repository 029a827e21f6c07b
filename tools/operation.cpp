#include "operation.hpp"

#include <cmath>

#include "checked_file.hpp"
#include "dartwright/darts/replay.hpp"
#include "dartwright/drawing/decimals.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "figures.hpp"
#include "result_file.hpp"
#include "tolerance_option.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

std::string listed(const std::vector<std::string>& names) {
    std::string words;
    for (const std::string& name : names) words += (words.empty() ? "" : ", ") + name;
    return words;
}

}  // namespace

ExitStatus run_operation(const Arguments& arguments, Invocation& call, const Operation& operation) {
    require_positional(arguments, 1, 1, "the pattern file");
    const Format format = format_of(arguments);
    const auto tolerances = tolerances_given(arguments);
    const std::string& path = arguments.positional[0];
    const Pattern pattern = read_pattern_file(path);
    call.subject = shown_path(path);
    const Ink ink(!is_to_standard_output(arguments) && call.out.is_coloured());
    Operated done = operation(with_tolerances(pattern, tolerances), ink);
    // Tolerances of the command line are for this one operation, and stand in its request.
    done.pattern.tolerances = pattern.tolerances;
    if (done.pattern.made.size() > pattern.made.size()) add_tolerances(done.pattern.made.back(), tolerances);
    write_result(arguments, call.out, write_pattern(done.pattern),
                 format == Format::json ? json_text(done.json) : done.text);
    return ExitStatus::done;
}

OptionSpec piece_option(const char* help) {
    return {"piece", 0, "PIECE", help};
}

std::vector<OptionSpec> with_operation_options(std::vector<OptionSpec> options) {
    options.push_back(output_option("write the pattern to this file; it comes whole or not at all"));
    options.push_back(overwrite_option());
    options.push_back(
        {"format", 0, "text|json", "how the account is written; json has lengths in mm, angles in degrees"});
    options.push_back(tolerance_option());
    return options;
}

std::string turn_words(const TurnSaid& turn) {
    return std::string("  turned by ") + angle_words(std::abs(turn.turn_rad)) +
           (turn.turn_rad < 0 ? " clockwise: " : " anticlockwise: ") + listed(turn.turned) +
           "\n  held: " + listed(turn.held) + "\n";
}

std::string note_lines(const std::vector<std::string>& notes) {
    std::string text;
    for (const std::string& note : notes) text += "  note: " + note + "\n";
    return text;
}

std::string runs_table(const std::vector<RunChange>& runs, Unit unit, const Ink& ink) {
    TextTable table(
        {{std::string("runs, ") + word_of(unit), Align::left}, {"before"}, {"after"}, {"change"}});
    for (const RunChange& run : runs) {
        table.add({{run.edge},
                   {figure(run.before_mm, unit)},
                   {figure(run.after_mm, unit)},
                   {signed_figure(run.after_mm - run.before_mm, unit)}});
    }
    return table.is_empty() ? "" : std::string("\n") + table.text(ink);
}

nlohmann::ordered_json runs_json(const std::vector<RunChange>& runs) {
    Json out = Json::array();
    for (const RunChange& run : runs)
        out.push_back({{"edge", run.edge}, {"before", run.before_mm}, {"after", run.after_mm}});
    return out;
}

}  // namespace dartwright::tools
