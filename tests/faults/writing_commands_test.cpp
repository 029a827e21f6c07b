// Each call that opens, writes or names a file fails once, or a signal comes there: the old file stays whole
// or the new one is, nothing else is left, and what went wrong is said.

#include <csignal>
#include <map>

#include "tools/program.hpp"

namespace dartwright {
namespace {

const std::filesystem::path broken_calls = DARTWRIGHT_BROKEN_CALLS;
const std::string block = source_folder + "/fixtures/blocks/close-fitting.json";
const std::string drafts = source_folder + "/fixtures/exercises/chorus-class/drafts/";
const std::string old_text = "what was there before\n";

/// Commands by what they write, `-o` and its file left out.
const std::map<std::string, std::vector<std::string>> writing_commands{
    {"pivot.json", {"pivot", block, "--piece", "front", "--dart", "waist dart", "--to", "side@60/armhole"}},
    {"cut.json", {"cut", bodice, "--rule", source_folder + "/fixtures/rules/toile.json"}},
    {"drawn.svg", {"draw", block}},
    {"drawn.png", {"draw", block, "--pixels-per-mm", "0.2"}},
    {"pages.pdf", {"print", bodice}},
    {"sheet.html", {"sheet", bodice, "--width", "140cm"}},
    {"class.csv", {"assess", exercise, block, "--format", "csv", "--jobs", "1"}},
};

enum class Before { nothing, old_file };

struct Trial {
    std::string name;  ///< of the output
    std::vector<std::string> words;
    Before before = Before::nothing;
    bool has_nameless_files = true;
};

struct Outcome {
    Ended ended;
    std::string written;  ///< what stands at the output's name; empty if there is none
    std::vector<std::string> names;
    long calls = 0;
};

Outcome outcome_of(const Trial& trial, const std::string& fault) {
    Folder folder;
    Folder count;
    const std::string path = folder / trial.name;
    std::vector<std::string> words = trial.words;
    words.insert(words.end(), {"-o", path});
    if (trial.before == Before::old_file) {
        folder.add(trial.name, old_text);
        words.push_back("--overwrite");
    }
    Process process = dartwright_with(words);
    // By its name alone in the folder where it lies: blanks would end the name.
    process.folder = broken_calls.parent_path().string();
    process.settings = {"LD_PRELOAD=./" + broken_calls.filename().string(),
                        "FAULT_COUNT=" + (count / "calls")};
    if (!fault.empty()) process.settings.push_back("FAULT=" + fault);
    if (!trial.has_nameless_files) process.settings.push_back("FAULT_UNKNOWN=1");
    Outcome outcome;
    outcome.ended = support::run(process);
    outcome.names = folder.names();
    if (std::filesystem::exists(path)) outcome.written = text_of_file(path);
    if (fault.empty()) outcome.calls = std::stol(text_of_file(count / "calls"));
    return outcome;
}

std::vector<Trial> all_trials() {
    std::vector<Trial> trials;
    for (const auto& [name, words] : writing_commands)
        for (const Before before : {Before::nothing, Before::old_file})
            for (const bool has_nameless : {true, false})
                trials.push_back({name, words, before, has_nameless});
    return trials;
}

/// Nothing but the whole old or the whole new file is there.
void expect_whole(const Trial& trial, const Outcome& broken, const std::string& new_text) {
    const std::string before = trial.before == Before::old_file ? old_text : "";
    EXPECT_TRUE(broken.written == before || broken.written == new_text) << broken.written.substr(0, 200);
    const std::vector<std::string> expected =
        broken.written.empty() ? std::vector<std::string>{} : std::vector<std::string>{trial.name};
    EXPECT_EQ(broken.names, expected);
}

std::string told(const Trial& trial, const std::string& fault) {
    return trial.words[0] + " to " + trial.name +
           (trial.before == Before::old_file ? ", over an old file" : "") +
           (trial.has_nameless_files ? "" : ", no nameless files") + ", FAULT=" + fault;
}

TEST(writing_commands, have_calls_that_can_fail) {
    for (const Trial& trial : all_trials()) {
        const Outcome whole = outcome_of(trial, "");
        EXPECT_LE(whole.ended.status, 1) << told(trial, "") << whole.ended.err;
        EXPECT_GE(whole.calls, 4) << told(trial, "");
        EXPECT_FALSE(whole.written.empty());
        EXPECT_NE(whole.written, old_text);
    }
}

TEST(writing_commands, leave_the_old_or_the_new_file_whole_when_a_call_fails) {
    std::size_t failures = 0;
    for (const Trial& trial : all_trials()) {
        const Outcome whole = outcome_of(trial, "");
        for (long call = 1; call <= whole.calls; ++call) {
            for (const int error : {EIO, ENOSPC}) {
                const std::string fault = std::to_string(call) + ":" + std::to_string(error);
                SCOPED_TRACE(told(trial, fault));
                const Outcome broken = outcome_of(trial, fault);
                expect_whole(trial, broken, whole.written);
                if (broken.ended.status == whole.ended.status) continue;  // it found another way
                ++failures;
                EXPECT_EQ(broken.ended.status, 3) << broken.ended.err;
                EXPECT_EQ(lines_in(broken.ended.err), 1U) << broken.ended.err;
                // It names the file, and says so where the output is in place all the same.
                const bool is_new = broken.written == whole.written;
                EXPECT_EQ(broken.ended.err.find("is written") != std::string::npos, is_new)
                    << broken.ended.err;
            }
        }
    }
    EXPECT_GT(failures, 100U);
}

TEST(writing_commands, leave_the_old_or_the_new_file_whole_when_a_signal_comes) {
    std::size_t ended_by_it = 0;
    for (const Trial& trial : all_trials()) {
        const Outcome whole = outcome_of(trial, "");
        for (long call = 1; call <= whole.calls; ++call) {
            for (const char* when : {"<", ">"}) {
                const std::string fault = std::to_string(call) + ":" + when + std::to_string(SIGTERM);
                SCOPED_TRACE(told(trial, fault));
                const Outcome broken = outcome_of(trial, fault);
                expect_whole(trial, broken, whole.written);
                EXPECT_EQ(broken.ended.status, 128 + SIGTERM) << broken.ended.err;
                ++ended_by_it;
            }
        }
    }
    EXPECT_GT(ended_by_it, 100U);
}

// A disk that cannot keep permissions, or does not answer whether the text is safe, still has the text.
TEST(writing_commands, are_done_where_permissions_or_safety_are_not_known) {
    for (Trial trial : all_trials()) {
        const Outcome whole = outcome_of(trial, "");
        std::size_t done_all_the_same = 0;
        for (long call = 1; call <= whole.calls; ++call) {
            const Outcome unsure = outcome_of(trial, std::to_string(call) + ":" + std::to_string(EINVAL));
            if (unsure.ended.err.find("power cut") == std::string::npos) continue;
            ++done_all_the_same;
            EXPECT_EQ(unsure.ended.status, whole.ended.status);
            EXPECT_EQ(unsure.written, whole.written);
        }
        EXPECT_EQ(done_all_the_same, 1U) << told(trial, "EINVAL");
    }
}

}  // namespace
}  // namespace dartwright
