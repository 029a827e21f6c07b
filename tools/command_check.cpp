// check: judges patterns, one result a file, written as soon as the file is judged.

#include <algorithm>

#include "arguments.hpp"
#include "checked_file.hpp"
#include "dartwright/files/output_file.hpp"
#include "pattern_paths.hpp"
#include "tolerance_option.hpp"
#include "unforeseen.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

CheckedFile unread(const std::string& path, std::string error) {
    CheckedFile file;
    file.path = path;
    file.error = std::move(error);
    file.status = ExitStatus::unreadable;
    return file;
}

CheckedFile checked(const std::string& path, const std::string& text,
                    const std::map<std::string, double>& tolerances) {
    CheckedFile file;
    file.path = path;
    try {
        const Pattern pattern =
            with_tolerances(read_pattern(text, path == "-" ? "standard input" : path), tolerances);
        file.unit = pattern.unit;
        file.report = check(pattern);
        file.status = file.report->passed ? ExitStatus::done : ExitStatus::faults;
    } catch (const InvalidPattern& invalid) {
        file = unread(path, first_problem(invalid));
        file.problems = invalid.problems;
        file.more_problems = invalid.more;
    } catch (...) {
        // One pattern that defeats the program does not take the others' results with it.
        const Unforeseen other = unforeseen(std::current_exception());
        file = unread(path, other.words);
        file.status = other.status;
    }
    return file;
}

/// Empty for a file of a folder that is not a pattern file at all.
std::optional<CheckedFile> check_path(const PatternPath& path,
                                      const std::map<std::string, double>& tolerances) {
    if (!path.trouble.empty()) return unread(path.path, path.trouble);
    std::string text;
    try {
        text = read_text_file(path.path);
    } catch (const FileTrouble& trouble) {
        return unread(path.path, without_name(trouble.what(), path.path));
    } catch (const std::bad_alloc&) {
        return unread(path.path, unforeseen(std::current_exception(), " while reading it").words);
    }
    CheckedFile file = checked(path.path, text, tolerances);
    if (path.is_from_folder && !file.problems.empty() && is_other_json(text)) return std::nullopt;
    return file;
}

/// Writes results one by one in either format.
class Writer {
  public:
    Writer(Output& out, Format format) : out_(out), format_(format), ink_(out.is_coloured()) {}
    void begin() {
        if (format_ == Format::json) out_.write("{\"dartwright_check\": 1, \"files\": [");
    }
    void add(const CheckedFile& file) {
        if (format_ == Format::json) {
            out_.write(is_first_ ? "\n" : ",\n");
            out_.write(json_of(file));
        } else {
            if (!is_first_) out_.write("\n");
            out_.write(text_of(file, ink_));
        }
        is_first_ = false;
        out_.flush();
    }
    void end() {
        if (format_ == Format::json) out_.write("\n]}\n");
        out_.flush();
    }

  private:
    Output& out_;
    Format format_;
    Ink ink_;
    bool is_first_ = true;
};

/// What is said at the end of all files.
struct Tally {
    std::size_t checked = 0;
    std::size_t not_true = 0;
    std::size_t passed_over = 0;
    ExitStatus status = ExitStatus::done;
    std::string reason;  ///< of the first of the worst

    void add(const CheckedFile& file) {
        ++checked;
        if (file.status == ExitStatus::done) return;
        ++not_true;
        if (file.status <= status) return;
        status = file.status;
        reason = shown_path(file.path) + ": " + reason_of(file);
    }
    std::string words() const {
        if (not_true < 2) return reason;
        return reason + "; in all " + std::to_string(not_true) + " of " + std::to_string(checked) +
               " files are not true or could not be checked";
    }
};

ExitStatus run_check(const Arguments& arguments, Invocation& call) {
    require_positional(arguments, 1, arguments.positional.size(), "a file or folder to check");
    if (std::count(arguments.positional.begin(), arguments.positional.end(), "-") > 1)
        throw WrongUse("standard input (-) can be read once only");
    const std::map<std::string, double> tolerances = tolerances_given(arguments);
    Writer writer(call.out, format_of(arguments));
    Tally tally;
    writer.begin();
    for (const PatternPath& path : pattern_paths(arguments.positional)) {
        if (call.out.is_reader_gone()) break;
        const std::optional<CheckedFile> file = check_path(path, tolerances);
        if (!file) {
            ++tally.passed_over;
            continue;
        }
        tally.add(*file);
        writer.add(*file);
    }
    writer.end();
    if (tally.passed_over > 0) {
        say("dartwright check: ",
            "passed over .json files that are not patterns: " + std::to_string(tally.passed_over));
        if (tally.checked == 0) throw FileTrouble("there is no pattern file to check");
    }
    if (!tally.reason.empty()) say("dartwright check: ", tally.words());
    return tally.status;
}

}  // namespace

Command check_command() {
    return {"check",
            "say whether patterns are true: seams, darts, notches, grain, outlines",
            "FILE... [--format text|json] [--tolerance NAME=VALUE]...",
            "Walks every seam, closes every dart, and reports each fault with its remedy. A FILE may be a "
            "folder: all pattern files (.json) below it are checked, in order of their names. Notes are said "
            "and do not make a pattern untrue.",
            {format_option(), tolerance_option()},
            {{"dartwright check bodice.json", "check one pattern; the exit status is 1 if there are faults"},
             {"dartwright check chorus/ --format json",
              "check every pattern in a folder, as JSON, one line a file"},
             {"dartwright check bodice.json --tolerance seam=2 --tolerance corner=3",
              "allow seams to differ by 2 mm, and corners to be out by 3 degrees"},
             {"dartwright pivot bodice.json --piece front --dart \"waist dart\" --to side@60/armhole | "
              "dartwright check -",
              "move a dart, and check the result without keeping it"}},
            run_check};
}

}  // namespace dartwright::tools
