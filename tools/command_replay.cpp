// replay: does the operations of a pattern again, from its block.

#include "arguments.hpp"
#include "checked_file.hpp"
#include "dartwright/darts/replay.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/words/written_number.hpp"
#include "pattern_difference.hpp"
#include "result_file.hpp"
#include "text_table.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

// Patterns are the same if their numbers differ by no more than this, mm: rounding of a long chain on
// another machine, and a thousandth of what the finest pencil shows.
constexpr double same_pattern_mm = 1e-6;

struct Replayed {
    std::vector<Made> steps;
    std::string text;  ///< of the pattern file
    bool is_to_the_last_digit = false;
    PatternDifference difference;  ///< most in mm
    bool is_same() const { return difference.place.empty() && difference.most <= same_pattern_mm; }
};

// As it was between two commands.
Pattern through_a_file(const Pattern& pattern) {
    return read_pattern(write_pattern(pattern), "between two operations");
}

Replayed replayed(const Pattern& block, const Pattern& pattern) {
    ReplayResult result = replay(block, pattern.made, through_a_file);
    result.pattern.unit = pattern.unit;
    Replayed out{result.steps, write_pattern(result.pattern), false, {}};
    const std::string expected = write_pattern(pattern);
    out.is_to_the_last_digit = out.text == expected;
    out.difference = pattern_difference(out.text, expected);
    out.difference.most *= mm_in(pattern.unit);
    return out;
}

std::string number_words(double mm) {
    return with_figures(mm, 2) + " mm";
}

std::string verdict(const Replayed& done, const std::string& path) {
    if (done.is_to_the_last_digit) return "the same as " + path + ", to the last digit";
    const PatternDifference& difference = done.difference;
    if (done.is_same()) return "the same as " + path + " but for rounding, " + number_words(difference.most);
    if (difference.place.empty())
        return "not the same as " + path + ": its numbers differ by up to " + number_words(difference.most);
    return "not the same as " + path + ": at " + difference.place + " it has " + difference.expected +
           ", and the replay " + difference.found;
}

std::string steps_text(const std::vector<Made>& steps) {
    std::string text =
        std::to_string(steps.size()) + (steps.size() == 1 ? " operation" : " operations") + " done\n";
    for (const Made& step : steps) {
        text += "  " + step.operation;
        for (const auto& [key, value] : step.request) text += ", " + key + " " + value;
        text += "\n";
    }
    return text;
}

Json json_of(const Replayed& done) {
    Json operations = Json::array();
    for (const Made& step : done.steps) operations.push_back(step.operation);
    const bool has_place = !done.difference.place.empty();
    return {{"dartwright_replay", 1},
            {"operations", operations},
            {"same", done.is_same()},
            {"to_the_last_digit", done.is_to_the_last_digit},
            {"largest_difference", has_place ? Json(nullptr) : Json(done.difference.most)},
            {"differs_at", has_place ? Json(done.difference.place) : Json(nullptr)}};
}

ExitStatus run_replay(const Arguments& arguments, Invocation& call) {
    require_positional(arguments, 1, 1, "the pattern file");
    const Format format = format_of(arguments);
    const std::string block_path = arguments.required("block");
    const std::string& path = arguments.positional[0];
    const bool is_check = arguments.has("check");
    if (is_check && arguments.has("output")) throw WrongUse("--check writes no pattern; leave -o out");
    if (path == "-" && block_path == "-")
        throw WrongUse("only one of the two patterns can come from standard input");
    const Pattern block = read_pattern_file(block_path);
    const Pattern pattern = read_pattern_file(path);
    call.works_on(shown_path(path), pattern.unit);
    const Replayed done = replayed(block, pattern);
    const bool is_coloured = !is_to_standard_output(arguments) || is_check;
    const Ink ink(is_coloured && call.out.is_coloured());
    const std::string account =
        format == Format::json
            ? json_text(json_of(done))
            : steps_text(done.steps) +
                  ink(done.is_same() ? Paint::good : Paint::bad, verdict(done, call.subject)) + "\n";
    if (!is_check) {
        write_result(arguments, call, done.text, account);
        return ExitStatus::done;
    }
    call.out.write(account);
    return done.is_same() ? ExitStatus::done : ExitStatus::faults;
}

}  // namespace

Command replay_command() {
    return {"replay",
            "do the operations of a pattern again, from its block",
            "FILE --block BLOCK [OPTIONS]",
            "A pattern keeps a list of the operations it was made by. This does them again from the block "
            "and says "
            "whether the same pattern comes of it. With another block, the same design comes out in another "
            "size, as "
            "far as its edges and darts have the same names.",
            {{"block", 0, "BLOCK", "the pattern file that the first operation was done to"},
             {"check", 0, "", "write no pattern, and end with 1 if it is not the same"},
             output_option("write the pattern to this file; it comes whole or not at all"),
             overwrite_option(),
             {"format", 0, "text|json", "how the account is written"}},
            {{"dartwright replay moved.json --block bodice.json --check",
              "whether the list tells the whole story"},
             {"dartwright replay moved.json --block bodice-size-2.json -o moved-size-2.json",
              "the same operations on the block of another size"}},
            run_replay};
}

}  // namespace dartwright::tools
