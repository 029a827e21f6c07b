#include "operation.hpp"

#include <cmath>
#include <set>

#include "checked_file.hpp"
#include "dartwright/checks/check.hpp"
#include "dartwright/darts/replay.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/words/lengths.hpp"
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

// What tells one fault from another, wherever it now lies.
std::string kind_of(const Finding& finding) {
    return finding.check + "\n" + finding.piece + "\n" + finding.edge + "\n" + finding.dart + "\n" +
           finding.seam;
}

// What a check finds now and did not find before: an operation that was asked for can leave a notch in a
// mouth, or a corner that was square and is no longer.
std::vector<std::string> new_faults(const Pattern& before, const Pattern& after) {
    std::multiset<std::string> known;
    for (const Finding& finding : check(before).findings) known.insert(kind_of(finding));
    std::vector<std::string> out;
    for (const Finding& finding : check(after).findings) {
        if (finding.severity != Severity::fault) continue;
        const auto same = known.find(kind_of(finding));
        if (same != known.end()) {
            known.erase(same);
            continue;
        }
        out.push_back("check finds " + finding.check + " now: " + finding.message);
    }
    return out;
}

std::string fault_lines(const std::vector<std::string>& found) {
    return found.empty() ? "" : "\n" + note_lines(found);
}

}  // namespace

ExitStatus run_operation(const Arguments& arguments, Invocation& call, const Operation& operation) {
    require_positional(arguments, 1, 1, "the pattern file");
    const Format format = format_of(arguments);
    const auto tolerances = tolerances_given(arguments);
    const std::string& path = arguments.positional[0];
    const Pattern pattern = read_pattern_file(path);
    call.works_on(shown_path(path), pattern.unit);
    const Ink ink(!is_to_standard_output(arguments) && call.out.is_coloured());
    Operated done = operation(with_tolerances(pattern, tolerances), ink);
    // Tolerances of the command line are for this one operation, and stand in its request.
    done.pattern.tolerances = pattern.tolerances;
    if (done.pattern.made.size() > pattern.made.size()) add_tolerances(done.pattern.made.back(), tolerances);
    const std::vector<std::string> found = new_faults(pattern, done.pattern);
    for (const std::string& fault : found) done.json["notes"].push_back(fault);
    write_result(arguments, call, write_pattern(done.pattern),
                 format == Format::json ? json_text(done.json) : done.text + fault_lines(found));
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
                   {length_figure(run.before_mm, unit)},
                   {length_figure(run.after_mm, unit)},
                   {signed_length_figure(run.after_mm - run.before_mm, unit)}});
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
