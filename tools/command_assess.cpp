// assess: marks drafts by an exercise, keeps what was marked, and reports on the class.

#include <charconv>
#include <filesystem>
#include <set>
#include <thread>

#include "arguments.hpp"
#include "checked_file.hpp"
#include "class_report.hpp"
#include "dartwright/assessing/lost_marks.hpp"
#include "dartwright/files/assessment_words.hpp"
#include "dartwright/files/exercise_file.hpp"
#include "dartwright/files/output_file.hpp"
#include "dartwright/files/rule_file.hpp"
#include "exercise_report.hpp"
#include "interruption.hpp"
#include "lines_file.hpp"
#include "marking.hpp"
#include "progress.hpp"
#include "result_file.hpp"

namespace dartwright::tools {

namespace {

constexpr std::size_t most_threads = 256;

/// A class that is marked, and where its lines stand.
struct MarkedClass {
    std::vector<LinesFile> files;
    std::vector<KeptDraft> drafts;
    std::vector<PassedOver> passed_over;
};

struct ReadExercise {
    Exercise exercise;
    std::string digest;
};

Exercise exercise_in(const std::string& text, const std::string& path, NamedFiles named) {
    try {
        return read_exercise(text, path == "-" ? "standard input" : path, named);
    } catch (const InvalidPattern& invalid) {
        throw FileTrouble(first_problem_of_other(invalid));
    }
}

ReadExercise read_exercise_of(const Arguments& arguments) {
    const std::string path = arguments.positional[0];
    const std::string text = read_text_file(path);
    const NamedFiles named = arguments.has("own-folder") ? NamedFiles::in_own_folder : NamedFiles::anywhere;
    ReadExercise read{exercise_in(text, path, named), {}};
    // What it takes from other files belongs to it: a draft is marked by that too.
    std::string bytes = text + write_pattern(read.exercise.pattern);
    for (const Task& task : read.exercise.tasks)
        if (const auto* allowances = std::get_if<AllowanceTask>(&task.what))
            bytes += write_rule(allowances->rule);
    read.digest = digest_of(bytes);
    return read;
}

std::size_t threads_wanted(const Arguments& arguments) {
    const auto words = arguments.value("jobs");
    if (!words) return std::max(1U, std::thread::hardware_concurrency());
    std::size_t threads = 0;
    const char* end = words->data() + words->size();
    const auto [stopped, error] = std::from_chars(words->data(), end, threads);
    if (error != std::errc{} || stopped != end || threads < 1 || threads > most_threads)
        throw WrongUse("--jobs is a whole number from 1 to " + std::to_string(most_threads) + ", not '" +
                       *words + "'");
    return threads;
}

/// The drafts in the order given, each file once.
std::vector<PatternPath> drafts_named(const std::vector<std::string>& words) {
    std::vector<PatternPath> drafts;
    std::set<std::string> named;
    for (PatternPath& path : pattern_paths(words))
        if (named.insert(path.path).second) drafts.push_back(std::move(path));
    return drafts;
}

/// Nothing that lines are written to may be read or written otherwise.
void refuse_lines_that_are_something_else(const Arguments& arguments, const std::string& lines,
                                          const std::vector<PatternPath>& drafts) {
    const auto refuse = [&](const std::string& other, const char* what) {
        std::error_code unknown;
        // The same device and inode, whatever the two are called.
        if (std::filesystem::equivalent(lines, other, unknown) && !unknown)
            throw WrongUse(shown_path(lines) + ": is " + what + " and cannot be the file of --lines");
    };
    refuse(arguments.positional[0], "the exercise");
    for (const PatternPath& draft : drafts) refuse(draft.path, "a draft");
    const auto output = arguments.value("output");
    if (!output) return;
    refuse(*output, "the file of -o");
    const auto place_of = [](const std::string& path) {
        std::error_code unknown;
        return std::filesystem::weakly_canonical(std::filesystem::absolute(path, unknown), unknown);
    };
    if (place_of(lines) == place_of(*output))
        throw WrongUse(shown_path(lines) + ": is the file of -o and cannot be the file of --lines");
}

LinesFile lines_wanted(const Arguments& arguments, const std::vector<PatternPath>& drafts) {
    const auto path = arguments.value("lines");
    if (!path) return LinesFile::temporary();
    if (path->empty()) throw WrongUse("--lines needs the name of a file");
    refuse_lines_that_are_something_else(arguments, *path, drafts);
    if (arguments.has("resume")) return LinesFile::resumed(*path);
    return arguments.has("anew") ? LinesFile::begun_anew(*path) : LinesFile::created(*path);
}

class Marker {
  public:
    Marker(const Arguments& arguments, const ReadExercise& exercise, const Interruption& interruption)
        : interruption_(interruption),
          drafts_(drafts_named({arguments.positional.begin() + 1, arguments.positional.end()})),
          threads_(threads_wanted(arguments)),
          digest_(exercise.digest),
          prepared_(prepared(exercise.exercise)) {
        for (const std::string& path :
             passed_over_paths({arguments.positional.begin() + 1, arguments.positional.end()}))
            marked_.passed_over.push_back({line_name(path), why_passed_over(path)});
        marked_.files.push_back(lines_wanted(arguments, drafts_));
        for (KeptDraft& draft : drafts_of(marked_.files[0], digest_)) {
            known_[draft.file] = draft.draft_digest;
            kept_.emplace(draft.file, std::move(draft));
        }
    }

    MarkedClass mark() {
        Progress progress("drafts", drafts_.size());
        const Marking marking{prepared_, digest_, drafts_, known_, threads_, interruption_.descriptor()};
        mark_drafts(
            marking, [&] { return interruption_.is_asked(); },
            [&](std::size_t index, MarkedDraft draft) {
                take(index, draft);
                progress.show(index + 1);
            });
        return std::move(marked_);
    }

  private:
    void take(std::size_t index, const MarkedDraft& draft) {
        if (draft.is_passed_over) {
            marked_.passed_over.push_back({line_name(drafts_[index].path), "it is no pattern"});
        } else if (draft.is_kept) {
            marked_.drafts.push_back(kept_.at(line_name(drafts_[index].path)));
        } else {
            marked_.drafts.push_back(kept_draft(
                draft.read, marked_.files[0].append(draft.line, draft.read.assessment.unread.empty())));
        }
    }

    const Interruption& interruption_;
    std::vector<PatternPath> drafts_;
    std::size_t threads_;
    std::string digest_;
    PreparedExercise prepared_;
    MarkedClass marked_;
    std::map<std::string, std::string> known_;
    std::map<std::string, KeptDraft> kept_;
};

/// A draft that several files of lines hold, by its path and its bytes, counts once: the last line, where the
/// first stood. One path may be two drafts, marked on two machines.
MarkedClass merged(const Arguments& arguments, const ReadExercise& exercise) {
    MarkedClass merged;
    std::map<std::pair<std::string, std::string>, std::size_t> known;
    for (std::size_t i = 1; i < arguments.positional.size(); ++i) {
        merged.files.push_back(LinesFile::opened(arguments.positional[i]));
        for (KeptDraft& draft : drafts_of(merged.files.back(), exercise.digest)) {
            draft.lines_file = i - 1;
            const auto [at, is_new] =
                known.try_emplace({draft.file, draft.draft_digest}, merged.drafts.size());
            if (is_new) {
                merged.drafts.push_back(std::move(draft));
            } else {
                merged.drafts[at->second] = std::move(draft);
            }
        }
    }
    return merged;
}

/// What is said at the end of all drafts.
struct Tally {
    ClassCount count;
    double marks = 0;
    double of = 0;
    ExitStatus status = ExitStatus::done;
    std::string reason;  ///< of the first of the worst

    void add(const Assessment& assessment) {
        ++count.all;
        marks += assessment.marks;
        of += assessment.of;
        const bool has_fault = has_lost_by_fault(assessment);
        const bool is_internal = assessment.unread_kind == UnreadKind::internal;
        ExitStatus own = has_fault ? ExitStatus::faults : ExitStatus::done;
        if (!assessment.unread.empty()) own = is_internal ? ExitStatus::internal : ExitStatus::unreadable;
        if (has_fault) ++count.with_faults;
        if (!assessment.unread.empty())
            ++count.unread;
        else if (assessment.marks >= assessment.of)
            ++count.with_all_marks;
        if (own <= status) return;
        status = own;
        reason = shown_path(assessment.file) + ": " +
                 (assessment.unread.empty() ? verdict_text(assessment) : assessment.unread);
    }
    std::string words() const {
        std::string words;
        const auto add = [&words](const std::string& more) { words += (words.empty() ? "" : "; ") + more; };
        const std::string of_all = " of " + std::to_string(count.all) + " drafts ";
        if (count.unread > 0 || count.with_faults == 1) add(reason);
        if (count.unread > 1) add(std::to_string(count.unread) + of_all + "could not be marked");
        if (count.with_faults > 1 || (count.with_faults > 0 && count.unread > 0))
            add(std::to_string(count.with_faults) + of_all + "lost marks by a fault");
        return words;
    }
    std::string account() const {
        return "marked " + std::to_string(count.all - count.unread) + " of " + std::to_string(count.all) +
               (count.all == 1 ? " draft: " : " drafts: ") + std::to_string(count.with_all_marks) +
               " with all marks, " + std::to_string(count.with_faults) + " with faults\n";
    }
};

/// Reads every draft back and reports it.
class Reporter {
  public:
    Reporter(const MarkedClass& marked, const Interruption& interruption)
        : marked_(marked), interruption_(interruption) {
        std::vector<StudentSummary> students;
        for (const KeptDraft& draft : marked.drafts) {
            StudentSummary& student = students.emplace_back();
            student.student = draft.student;
            student.file = draft.file;
        }
        labels_ = labels_of(students);
    }

    Tally write(ClassReport& report) const {
        ClassSummary summary;
        if (report.needs_summary())
            each([&](const Assessment& of, const std::string&, std::size_t) { summary.add(of); });
        Tally tally;
        report.begin(summary);
        each([&](const Assessment& of, const std::string& line, std::size_t index) {
            tally.add(of);
            report.add({of, labelled(line, of, labels_[index]), labels_[index], index + 1});
        });
        report.end();
        return tally;
    }

  private:
    /// The line with the student called apart from all others.
    static std::string labelled(const std::string& line, const Assessment& of, const std::string& label) {
        if (of.student == label) return line;
        AssessmentLine read = read_assessment_line(line, "a line");
        read.assessment.student = label;
        return write_assessment_line(read);
    }

    template <typename Use>
    void each(const Use& use) const {
        for (std::size_t i = 0; i < marked_.drafts.size() && !interruption_.is_asked(); ++i) {
            const KeptDraft& draft = marked_.drafts[i];
            const LinesFile& file = marked_.files[draft.lines_file];
            const std::string line = file.read(draft.place);
            use(read_assessment_line(line, shown_path(file.path())).assessment, line, i);
        }
    }

    const MarkedClass& marked_;
    const Interruption& interruption_;
    std::vector<std::string> labels_;
};

void require_words(const Arguments& arguments) {
    const bool is_merging = arguments.has("merge");
    require_positional(arguments, 1, arguments.positional.size(), "the exercise file");
    if (arguments.has("exercise")) {
        require_positional(arguments, 1, 1, "the exercise file");
        for (const char* other : {"merge", "lines", "resume", "jobs"})
            if (arguments.has(other))
                throw WrongUse(std::string("--exercise marks nothing, so that --") + other + " is of no use");
        return;
    }
    require_positional(arguments, 2, arguments.positional.size(),
                       is_merging ? "a file of lines" : "a draft, or a folder of drafts,");
    if (std::count(arguments.positional.begin(), arguments.positional.end(), "-") > 1)
        throw WrongUse("standard input (-) can be read once only");
    if (arguments.has("resume") && !arguments.has("lines"))
        throw WrongUse("--resume goes on with the file of --lines, which is missing");
    if (arguments.has("anew") && !arguments.has("lines"))
        throw WrongUse("--anew begins the file of --lines anew, which is missing");
    if (arguments.has("anew") && arguments.has("resume"))
        throw WrongUse("--anew begins the lines anew and --resume goes on with them: one of the two");
    if (is_merging && arguments.has("lines")) throw WrongUse("--merge reads lines and writes none");
    if (is_merging && arguments.has("jobs"))
        throw WrongUse("--merge marks nothing, so that --jobs is of no use");
}

std::string interrupted_words(const Arguments& arguments, const Invocation& call) {
    const auto lines = arguments.value("lines");
    std::string words = "interrupted; ";
    if (!call.written.empty()) words += shown_path(call.written) + " is written" + (lines ? "; " : "");
    if (lines)
        words += "what was marked is kept in " + shown_path(*lines) + ", and --resume goes on from there";
    else if (call.written.empty())
        words += "nothing is kept without --lines";
    return words;
}

/// A pipe or a device, which is written directly and may be waited for; a folder is neither.
bool is_pipe_or_device(const std::string& path) {
    std::error_code unknown;
    const auto status = std::filesystem::status(path, unknown);
    return std::filesystem::exists(status) && !std::filesystem::is_regular_file(status) &&
           !std::filesystem::is_directory(status);
}

/// Writes the report where it was asked for. An interrupted one leaves no file.
Tally reported(const Arguments& arguments, Invocation& call, const ReportedClass& of,
               const MarkedClass& marked, const Interruption& interruption) {
    const std::string format = arguments.value("format").value_or("text");
    const Reporter reporter(marked, interruption);
    // Whoever reads the report may keep it waiting.
    std::optional<EndingAtOnce> at_once;
    if (is_to_standard_output(arguments)) {
        at_once.emplace(interruption, interrupted_words(arguments, call));
        const auto report = class_report(
            format, of, [&](std::string_view text) { call.out.write(text); }, Ink(call.out.is_coloured()));
        const Tally tally = reporter.write(*report);
        call.out.flush();
        return tally;
    }
    const std::string output = arguments.required("output");
    if (is_pipe_or_device(output)) at_once.emplace(interruption, interrupted_words(arguments, call));
    WholeFile file(output, arguments.has("overwrite") ? Overwrite::yes : Overwrite::no);
    const auto report = class_report(
        format, of, [&](std::string_view text) { file.write(text); }, Ink(false));
    const Tally tally = reporter.write(*report);
    if (interruption.is_asked()) return tally;
    remember_written(call, output, file.finish());
    at_once.reset();
    at_once.emplace(interruption, interrupted_words(arguments, call));
    call.out.write(tally.account());
    call.out.flush();
    return tally;
}

/// What was passed over, the first of them by their names.
void say_passed_over(const std::vector<PassedOver>& passed_over) {
    constexpr std::size_t most_said = 3;
    std::string words;
    for (std::size_t i = 0; i < passed_over.size() && i < most_said; ++i)
        words += (i == 0 ? "" : ", ") + shown_path(passed_over[i].file) + " (" + passed_over[i].why + ")";
    if (passed_over.size() > most_said)
        words += " and " + std::to_string(passed_over.size() - most_said) + " more";
    if (!words.empty()) say("dartwright assess: ", "passed over and not marked: " + words);
}

/// The exercise alone.
ExitStatus look_at_exercise(const Arguments& arguments, Invocation& call) {
    const std::string format = arguments.value("format").value_or("text");
    if (format != "text" && format != "json")
        throw WrongUse("--exercise is reported as text or json, not '" + format + "'");
    const PreparedExercise exercise = prepared(read_exercise_of(arguments).exercise);
    const auto report = [&](const Ink& ink) {
        return format == "json" ? exercise_json(exercise) : exercise_text(exercise, ink);
    };
    if (is_to_standard_output(arguments)) {
        call.out.write(report(Ink(call.out.is_coloured())));
    } else {
        WholeFile file(arguments.required("output"),
                       arguments.has("overwrite") ? Overwrite::yes : Overwrite::no);
        file.write(report(Ink(false)));
        file.finish();
    }
    call.out.flush();
    return ExitStatus::done;
}

ReadExercise exercise_asked(const Arguments& arguments, const Interruption& interruption) {
    const EndingAtOnce at_once(interruption, "interrupted; nothing was marked yet");
    return read_exercise_of(arguments);
}

ExitStatus run_assess(const Arguments& arguments, Invocation& call) {
    require_words(arguments);
    if (arguments.has("exercise")) return look_at_exercise(arguments, call);
    const Interruption interruption;
    const ReadExercise exercise = exercise_asked(arguments, interruption);
    // What cannot be written is said before an hour's marking, not after.
    class_report(arguments.value("format").value_or("text"), {exercise.exercise}, {}, Ink(false));
    if (!is_to_standard_output(arguments)) {
        if (arguments.required("output").empty()) throw WrongUse("-o needs the name of a file");
        // A pipe is opened once, when there is something to say.
        if (!is_pipe_or_device(arguments.required("output")))
            WholeFile(arguments.required("output"),
                      arguments.has("overwrite") ? Overwrite::yes : Overwrite::no);
    }
    const MarkedClass marked = arguments.has("merge") ? merged(arguments, exercise)
                                                      : Marker(arguments, exercise, interruption).mark();
    Tally tally;
    if (!interruption.is_asked()) {
        const Assessment untouched = assess(prepared(exercise.exercise), exercise.exercise.pattern);
        tally = reported(arguments, call, {exercise.exercise, marked.passed_over, untouched}, marked,
                         interruption);
    }
    if (interruption.is_asked()) {
        say("dartwright assess: ", interrupted_words(arguments, call));
        interruption.end();
    }
    say_passed_over(marked.passed_over);
    if (marked.drafts.empty()) throw FileTrouble("there is no draft to mark");
    if (!tally.reason.empty()) say("dartwright assess: ", tally.words());
    return tally.status;
}

}  // namespace

Command assess_command() {
    return {
        "assess",
        "mark drafts by an exercise, and report on the class",
        "EXERCISE DRAFT... [OPTIONS]",
        "Judges each draft by the exercise's tasks: what must have changed and what must have survived, "
        "wherever the draft lies on its paper, and gives marks with what was asked, found and how far off "
        "it is. A DRAFT may be a folder: all pattern files (.json) below it are marked, in order of their "
        "names, and what is passed over is said. The student's name is the file's, with as much of its path "
        "as "
        "tells two of one name apart. A pattern that is another one in most of its edges is said to be "
        "that, and gets no marks. A draft that cannot be read is a row with the reason, and "
        "the others are marked. The exit status is 1 if a draft lost marks by a fault.",
        {{"format", 0, "text|json|csv|junit|tap|html",
          "how the class is reported; html is one page that needs no network, to be read and printed"},
         output_option("the report; it comes whole or not at all"),
         overwrite_option(),
         {"lines", 0, "FILE",
          "keep each marked draft as a line of JSON in FILE as soon as it is marked, so that interrupting "
          "loses nothing"},
         {"resume", 0, "", "go on with the file of --lines: drafts that are in it, and unchanged, are kept"},
         {"anew", 0, "",
          "begin the file of --lines anew if there is one; what it holds is there until a draft is marked"},
         {"merge", 0, "",
          "the words after EXERCISE are files of lines, marked here or elsewhere: report on them together; a "
          "draft in two of them counts once"},
         {"exercise", 0, "",
          "look at the exercise alone: what each mark is for, and what the pattern gets as it is handed out "
          "and "
          "when it is finished; as text or JSON"},
         {"own-folder", 0, "",
          "what the exercise takes from other files must lie in its own folder, or below, wherever links "
          "lead: "
          "for an exercise that somebody else sent"},
         {"jobs", 0, "N", "drafts marked at a time; as many as there are processors if absent"}},
        {{"dartwright assess side-dart.json --exercise", "before it is given out: what is each mark for?"},
         {"dartwright assess side-dart.json class/", "mark every draft in a folder"},
         {"dartwright assess side-dart.json class/ --format html -o class.html",
          "one page for the class, with a part for each student"},
         {"dartwright assess side-dart.json class/ --lines class.jsonl --resume --format csv -o marks.csv",
          "mark what is new or changed since, and make a table"},
         {"dartwright assess side-dart.json --merge morning.jsonl evening.jsonl --format junit",
          "put together what two machines have marked"}},
        run_assess};
}

}  // namespace dartwright::tools
