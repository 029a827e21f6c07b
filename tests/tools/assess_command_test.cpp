// assess as a process: the order, what is kept and gone on with, what is put together, who is told apart.

#include <fcntl.h>
#include <poll.h>
#include <sys/stat.h>

#include <csignal>

#include "tools/program.hpp"

namespace dartwright {
namespace {

const std::string block = source_folder + "/fixtures/workshop/chorus-bodice-inch.json";

std::string moved_to(const std::string& place, const std::vector<std::string>& more = {}) {
    std::vector<std::string> words{"pivot",      block,  "--piece", "front",  "--dart",
                                   "waist dart", "--to", place,     "--name", "side dart"};
    words.insert(words.end(), more.begin(), more.end());
    const Ended ended = dartwright(words);
    EXPECT_EQ(ended.status, 0) << ended.err;
    return ended.out;
}

/// A folder `class` with a perfect draft, one a little off, one that moved a part only, the block itself, and
/// one that is no pattern; in a folder of its own, so that names are the same wherever it lies.
class Class {
  public:
    Class() {
        std::filesystem::create_directories(folder_ / "class/evening");
        add("amal.json", moved_to("side@2 1/2in/armhole"));
        add("bo.json", moved_to("side@2 5/8in/armhole"));
        add("cleo.json", moved_to("side@2 1/2in/armhole", {"--share", "60%"}));
        add("dana.json", text_of_file(block));
        add("evening/amal.json", moved_to("side@3in/armhole"));
        add("fritz.json", "{\"dartwright\": 1");
        add("other.json", "{\"shopping\": [\"calico\"]}");
    }
    const Folder& folder() const { return folder_; }
    void add(const std::string& name, const std::string& text) { folder_.add("class/" + name, text); }
    Ended assess(std::vector<std::string> words, std::string input = {}) const {
        words.insert(words.begin(), {"assess", exercise});
        Process process = dartwright_with(words, std::move(input));
        process.folder = folder_.path();
        return support::run(process);
    }

  private:
    Folder folder_;
};

std::vector<std::string> students_of(const std::string& json) {
    std::vector<std::string> students;
    const Json read = Json::parse(json);
    for (const Json& draft : read["drafts"]) students.push_back(draft["file"]);
    return students;
}

TEST(assess, marks_what_it_can_and_says_why_of_the_rest) {
    const Class drafts;
    const Ended ended = drafts.assess({"class", "--format", "json"});
    EXPECT_EQ(ended.status, 3);
    EXPECT_EQ(lines_in(ended.err), 2u) << ended.err;
    EXPECT_NE(ended.err.find("passed over and not marked: class/other.json (it is no pattern)"),
              std::string::npos);
    EXPECT_NE(ended.err.find("class/fritz.json: found"), std::string::npos);
    EXPECT_EQ(students_of(ended.out),
              (std::vector<std::string>{"class/amal.json", "class/bo.json", "class/cleo.json",
                                        "class/dana.json", "class/evening/amal.json", "class/fritz.json"}));
    const Json read = Json::parse(ended.out);
    EXPECT_EQ(read["dartwright_assess"], 1);
    EXPECT_EQ(read["passed_over"],
              Json::parse(R"([{"file": "class/other.json", "why": "it is no pattern"}])"));
    EXPECT_EQ(read["untouched"], Json::parse(R"({"marks": 18, "of": 36})"));
    const Json& perfect = read["drafts"][0];
    EXPECT_EQ(perfect["student"], "class/amal");
    EXPECT_EQ(perfect["marks"], perfect["of"]);
    EXPECT_EQ(perfect["unread"], nullptr);
    EXPECT_EQ(perfect["unread_kind"], nullptr);
    EXPECT_EQ(read["drafts"][5]["unread_kind"], "not a pattern");
    EXPECT_LT(read["drafts"][3]["marks"], read["drafts"][3]["of"]);
    EXPECT_NE(std::string(read["drafts"][5]["unread"]).find("expected"), std::string::npos);
}

// The exercise is in inches; JSON is in mm.
TEST(assess, writes_lengths_in_the_unit_of_the_exercise) {
    const Class drafts;
    for (const char* format : {"text", "junit", "tap", "html"}) {
        const Ended ended = drafts.assess({"class/evening/amal.json", "--format", format});
        EXPECT_NE(ended.out.find("Move the dart 0.5 in towards the armhole."), std::string::npos) << format;
        EXPECT_EQ(ended.out.find(" mm"), std::string::npos) << format;
    }
    const Ended ended = drafts.assess({"class/evening/amal.json", "--format", "json"});
    EXPECT_NE(ended.out.find("\"expected\": 63.5,"), std::string::npos);
    EXPECT_EQ(drafts.assess({"--exercise"}).out.find(" mm"), std::string::npos);
}

TEST(assess, says_of_which_kind_it_is_that_a_draft_was_not_marked) {
    Class drafts;
    drafts.add("line.json", "{\"dartwright\": 1, \"unit\": \"cm\", \"pieces\": []}");
    const Json read = Json::parse(
        drafts
            .assess({"class/nowhere.json", "class", "class/line.json", "class/amal.json", "--format", "json"})
            .out);
    std::size_t unread = 0;
    for (const Json& draft : read["drafts"]) {
        SCOPED_TRACE(draft["file"]);
        EXPECT_EQ(draft["unread"] == nullptr, draft["unread_kind"] == nullptr);
        if (draft["unread"] == nullptr) continue;
        ++unread;
        EXPECT_EQ(draft["unread_kind"],
                  draft["file"] == "class/nowhere.json" ? "not readable" : "not a pattern");
    }
    EXPECT_GE(unread, 3u);
}

TEST(assess, ends_with_the_status_of_the_worst_draft) {
    const Class drafts;
    EXPECT_EQ(drafts.assess({"class/amal.json"}).status, 0);
    EXPECT_EQ(drafts.assess({"class/amal.json"}).err, "");
    EXPECT_EQ(drafts.assess({"class/amal.json", "class/dana.json"}).status, 1);
    EXPECT_EQ(drafts.assess({"class/dana.json", "none.json", "class/amal.json"}).status, 3);
    EXPECT_EQ(drafts.assess({"class/other.json"}).status, 3);
}

TEST(assess, keeps_the_order_given_whatever_the_number_of_threads) {
    const Class drafts;
    const std::vector<std::string> order{"class/evening", "class/fritz.json", "class/cleo.json", "class"};
    for (const char* format : {"text", "json", "csv", "junit", "tap", "html"}) {
        std::vector<std::string> words = order;
        words.insert(words.end(), {"--format", format, "--jobs", "1"});
        const Ended one = drafts.assess(words);
        words.back() = "7";
        EXPECT_EQ(drafts.assess(words).out, one.out) << format;
        EXPECT_FALSE(one.out.empty());
    }
    const Ended json = drafts.assess({"class/cleo.json", "class/amal.json", "class", "--format", "json"});
    EXPECT_EQ(students_of(json.out),
              (std::vector<std::string>{"class/cleo.json", "class/amal.json", "class/bo.json",
                                        "class/dana.json", "class/evening/amal.json", "class/fritz.json"}));
}

TEST(assess, tells_students_of_one_name_apart_by_the_end_of_their_paths) {
    const Class drafts;
    const std::string text = drafts.assess({"class"}).out;
    EXPECT_EQ(text.find("class/amal: "), 0u) << text.substr(0, 100);
    EXPECT_NE(text.find("\nevening/amal: "), std::string::npos);
    EXPECT_NE(text.find("\nbo: "), std::string::npos);
    const std::string csv = drafts.assess({"class", "--format", "csv"}).out;
    EXPECT_NE(csv.find("\r\nclass/amal,amal.json,"), std::string::npos) << csv;
    EXPECT_NE(csv.find("\r\nevening/amal,amal.json,"), std::string::npos);
    const Json json = Json::parse(drafts.assess({"class", "--format", "json"}).out);
    EXPECT_EQ(json["drafts"][0]["student"], "class/amal");
    EXPECT_EQ(json["drafts"][4]["student"], "evening/amal");
}

TEST(assess, says_what_it_passes_over) {
    const Folder folder;
    std::filesystem::create_directories(folder / "class");
    folder.add("class/a.json", moved_to("side@2 1/2in/armhole"));
    folder.add("class/B.JSON", moved_to("side@3in/armhole"));
    folder.add("class/.hidden", "");
    for (const char* name : {"c.pdf", "d.txt", "e.txt"}) folder.add(std::string("class/") + name, "");
    Process process = dartwright_with({"assess", exercise, "class", "--format", "json"});
    process.folder = folder.path();
    const Ended ended = support::run(process);
    EXPECT_EQ(ended.status, 0);
    EXPECT_EQ(lines_in(ended.err), 1u) << ended.err;
    EXPECT_NE(ended.err.find("passed over and not marked: class/B.JSON (its name does not end in .json), "),
              std::string::npos)
        << ended.err;
    EXPECT_NE(ended.err.find(" and 1 more"), std::string::npos);
    const Json read = Json::parse(ended.out);
    EXPECT_EQ(read["drafts"].size(), 1u);
    ASSERT_EQ(read["passed_over"].size(), 4u);
    EXPECT_EQ(read["passed_over"][0]["file"], "class/B.JSON");
}

TEST(assess, says_that_it_passes_over_a_hidden_draft) {
    const Folder folder;
    std::filesystem::create_directories(folder / "class/.old");
    folder.add("class/a.json", moved_to("side@2 1/2in/armhole"));
    for (const char* name : {"class/.b.json", "class/.json", "class/.DS_Store", "class/.old/c.json"})
        folder.add(name, moved_to("side@3in/armhole"));
    Process process = dartwright_with({"assess", exercise, "class", "--format", "json"});
    process.folder = folder.path();
    const Ended ended = support::run(process);
    EXPECT_EQ(ended.status, 0);
    EXPECT_NE(ended.err.find("passed over and not marked: class/.b.json (its name begins with a dot), "
                             "class/.json (its name begins with a dot)\n"),
              std::string::npos)
        << ended.err;
    EXPECT_EQ(Json::parse(ended.out)["drafts"].size(), 1u);
}

TEST(assess, looks_at_the_exercise_alone) {
    const Ended text = dartwright({"assess", exercise, "--exercise"});
    EXPECT_EQ(text.status, 0) << text.err;
    EXPECT_NE(text.out.find("The pattern as it is handed out gets 18 of 36 marks."), std::string::npos)
        << text.out;
    const Ended json = dartwright({"assess", exercise, "--exercise", "--format", "json"});
    const Json read = Json::parse(json.out);
    EXPECT_EQ(read["untouched"], 18);
    EXPECT_EQ(read["finished"], 36);
    EXPECT_EQ(read["tasks"][0]["criteria"][0]["untouched"], 0);
    EXPECT_EQ(dartwright({"assess", exercise, block, "--exercise"}).status, 2);
    EXPECT_EQ(dartwright({"assess", exercise, "--exercise", "--format", "csv"}).status, 2);
}

TEST(assess, marks_a_draft_with_a_slip_in_one_name_without_what_belongs_to_it) {
    const Folder folder;
    Json draft = Json::parse(moved_to("side@2 1/2in/armhole"));
    draft["pieces"][0]["notches"][0]["from"] = "wiast";
    folder.add("slip.json", draft.dump());
    const Ended ended = dartwright({"assess", exercise, folder / "slip.json", "--format", "json"});
    EXPECT_EQ(ended.status, 1) << ended.err;
    const Json read = Json::parse(ended.out)["drafts"][0];
    EXPECT_EQ(read["unread"], nullptr);
    EXPECT_EQ(read["marks"], 34);
    EXPECT_NE(read["notes"].dump().find("Left out: /pieces/0/notches/0/from: found"), std::string::npos);
    // What is more than a name is refused as before.
    draft["pieces"][0]["outline"]["items"][0]["to"] = "wiast";
    folder.add("slip.json", draft.dump());
    EXPECT_EQ(dartwright({"assess", exercise, folder / "slip.json"}).status, 3);
}

TEST(assess, says_in_one_line_what_is_wrong_with_an_exercise) {
    const Class drafts;
    const auto marked_by = [&](const std::string& text) {
        return dartwright({"assess", drafts.folder().add("exercise.json", text), block});
    };
    const Ended torn = marked_by(text_of_file(exercise).substr(0, 500));
    EXPECT_EQ(torn.status, 3);
    EXPECT_TRUE(says_one_line(torn, "exercise.json: "));
    const Ended two = marked_by(R"({"dartwright_exercise": 1, "nam": "x", "unit": "foot"})");
    EXPECT_EQ(two.status, 3);
    EXPECT_TRUE(says_one_line(two, "more problem"));
    EXPECT_EQ(two.err.find("dartwright check lists"), std::string::npos) << two.err;
    EXPECT_EQ(dartwright({"assess", "none.json", block}).status, 3);
    EXPECT_TRUE(says_one_line(dartwright({"assess", drafts.folder().path(), block}), "it is a folder"));
}

TEST(assess, reads_standard_input) {
    const Class drafts;
    const Ended ended = drafts.assess({"-"}, moved_to("side@2 1/2in/armhole"));
    EXPECT_EQ(ended.status, 0) << ended.err;
    EXPECT_EQ(ended.out.find("standard input: "), 0u);
}

TEST(assess, writes_a_report_whole_or_not_at_all) {
    const Class drafts;
    const Ended written = drafts.assess({"class", "--format", "html", "-o", "class.html"});
    EXPECT_EQ(written.status, 3);
    EXPECT_EQ(written.out.find("marked 5 of 6 drafts: "), 0u) << written.out;
    EXPECT_EQ(text_of_file(drafts.folder() / "class.html"), drafts.assess({"class", "--format", "html"}).out);
    const Ended kept = drafts.assess({"class", "-o", "class.html"});
    EXPECT_EQ(kept.status, 2);
    EXPECT_TRUE(says_one_line(kept, "exists already"));
    EXPECT_EQ(drafts.assess({"class", "-o", "class.html", "--overwrite"}).status, 3);
    EXPECT_EQ(text_of_file(drafts.folder() / "class.html"), drafts.assess({"class"}).out);
    EXPECT_EQ(drafts.folder().names(), (std::vector<std::string>{"class", "class.html"}));
}

TEST(lines, are_what_is_reported_and_can_be_gone_on_with) {
    Class drafts;
    const Ended whole = drafts.assess({"class", "--format", "csv", "--lines", "class.jsonl"});
    const std::string lines = text_of_file(drafts.folder() / "class.jsonl");
    EXPECT_EQ(lines_in(lines), 6u);
    const Ended refused = drafts.assess({"class", "--lines", "class.jsonl"});
    EXPECT_EQ(refused.status, 2);
    EXPECT_TRUE(says_one_line(refused, "class.jsonl: exists already"));
    // Nothing has changed: nothing is added, and the report is the same.
    EXPECT_EQ(drafts.assess({"class", "--format", "csv", "--lines", "class.jsonl", "--resume"}).out,
              whole.out);
    EXPECT_EQ(text_of_file(drafts.folder() / "class.jsonl"), lines);
    // A line torn in the middle is marked again.
    write_text(drafts.folder() / "class.jsonl", lines.substr(0, lines.size() - 200));
    EXPECT_EQ(drafts.assess({"class", "--format", "csv", "--lines", "class.jsonl", "--resume"}).out,
              whole.out);
    EXPECT_EQ(text_of_file(drafts.folder() / "class.jsonl"), lines);
    // A draft handed in again, mended, replaces what was marked before.
    drafts.add("dana.json", moved_to("side@2 1/2in/armhole"));
    const Ended again = drafts.assess({"class", "--format", "csv", "--lines", "class.jsonl", "--resume"});
    EXPECT_EQ(lines_in(text_of_file(drafts.folder() / "class.jsonl")), 7u);
    EXPECT_EQ(again.out, drafts.assess({"class", "--format", "csv"}).out);
    EXPECT_NE(again.out, whole.out);
    EXPECT_EQ(drafts.assess({"class.jsonl", "--merge", "--format", "csv"}).out, again.out);
}

// Marks of an hour are not gone for a slip of the hand.
TEST(lines, are_begun_anew_only_by_their_own_word_and_when_a_draft_is_marked) {
    Class drafts;
    const std::string file = drafts.folder() / "class.jsonl";
    EXPECT_LE(drafts.assess({"class", "--lines", "class.jsonl"}).status, 3);
    const std::string kept = text_of_file(file);
    // --overwrite speaks of -o.
    EXPECT_EQ(drafts.assess({"class", "--lines", "class.jsonl", "-o", "a.txt", "--overwrite"}).status, 2);
    EXPECT_TRUE(text_of_file(file) == kept);
    std::filesystem::create_directory(drafts.folder() / "empty");
    for (const char* folder : {"empty", "klass"}) {
        EXPECT_EQ(drafts.assess({folder, "--lines", "class.jsonl", "--anew"}).status, 3) << folder;
        EXPECT_TRUE(text_of_file(file) == kept) << folder;
    }
    EXPECT_EQ(drafts.assess({"class/amal.json", "--lines", "class.jsonl", "--anew"}).status, 0);
    EXPECT_EQ(lines_in(text_of_file(file)), 1u);
    EXPECT_EQ(drafts.folder().names(), (std::vector<std::string>{"class", "class.jsonl", "empty"}));
    // A file that is none of lines is not begun anew over.
    drafts.folder().add("diary.txt", "mine");
    EXPECT_EQ(drafts.assess({"class", "--lines", "diary.txt", "--anew"}).status, 3);
    EXPECT_EQ(text_of_file(drafts.folder() / "diary.txt"), "mine");
    EXPECT_EQ(drafts.assess({"class", "--lines", "class.jsonl", "--anew", "--resume"}).status, 2);
}

TEST(lines, are_never_written_to_what_is_read_or_to_the_output) {
    Class drafts;
    const std::string draft = text_of_file(drafts.folder() / "class/amal.json");
    std::filesystem::create_hard_link(drafts.folder() / "class/amal.json", drafts.folder() / "twin.json");
    for (const char* how : {"--anew", "--resume"}) {
        for (const char* lines : {"class/amal.json", "./class/../class/amal.json", "twin.json"}) {
            const Ended refused = drafts.assess({"class", "--lines", lines, how});
            EXPECT_EQ(refused.status, 2) << lines;
            EXPECT_TRUE(says_one_line(refused, "is a draft")) << refused.err;
        }
    }
    EXPECT_EQ(text_of_file(drafts.folder() / "class/amal.json"), draft);
    const Ended refused = drafts.assess({"class", "--lines", "a.out", "-o", "./a.out"});
    EXPECT_EQ(refused.status, 2);
    EXPECT_TRUE(says_one_line(refused, "is the file of -o")) << refused.err;
    EXPECT_FALSE(std::filesystem::exists(drafts.folder() / "a.out"));
}

TEST(lines, of_another_exercise_or_of_none_are_refused) {
    Class drafts;
    EXPECT_EQ(drafts.assess({"class/amal.json", "--lines", "class.jsonl"}).status, 0);
    std::string other = text_of_file(exercise);
    other = replaced(other, "\"../workshop/", "\"" + source_folder + "/fixtures/workshop/");
    other = replaced(other, "\"wearer\": 32", "\"wearer\": 33");
    drafts.folder().add("other.json", other);
    Process process = dartwright_with({"assess", "other.json", "--merge", "class.jsonl"});
    process.folder = drafts.folder().path();
    const Ended refused = support::run(process);
    EXPECT_EQ(refused.status, 3);
    EXPECT_TRUE(says_one_line(refused, "class.jsonl: line 1: the draft was marked by another exercise"));
    drafts.folder().add("torn.jsonl", text_of_file(drafts.folder() / "class.jsonl").substr(0, 300));
    const Ended torn = drafts.assess({"torn.jsonl", "--merge"});
    EXPECT_EQ(torn.status, 3);
    EXPECT_TRUE(says_one_line(torn, "torn.jsonl: line 1: "));
    EXPECT_TRUE(says_one_line(drafts.assess({"none.jsonl", "--merge"}), "none.jsonl: cannot be read"));
    EXPECT_TRUE(says_one_line(drafts.assess({"class", "--merge"}), "class: is not a file of lines"));
    drafts.folder().add("empty.jsonl", "");
    EXPECT_TRUE(says_one_line(drafts.assess({"empty.jsonl", "--merge"}), "there is no draft"));
}

TEST(lines, of_two_processes_put_together_give_the_bytes_of_one) {
    const Class drafts;
    // Lines are of drafts alone, and say nothing of what was passed over.
    std::filesystem::remove(drafts.folder() / "class/other.json");
    // Both run at once, each on its share, as they would on two machines.
    const Ended both =
        shell("dartwright assess " + in_shell_quotes(exercise) +
                  " class/amal.json class/bo.json class/cleo.json --lines 1.jsonl > /dev/null 2>&1 & "
                  "dartwright assess " +
                  in_shell_quotes(exercise) +
                  " class/dana.json class/evening class/fritz.json --lines 2.jsonl > /dev/null 2>&1 & wait",
              drafts.folder().path());
    EXPECT_EQ(both.status, 0);
    for (const char* format : {"text", "json", "csv", "junit", "tap", "html"}) {
        const Ended one = drafts.assess({"class", "--format", format, "--jobs", "2"});
        const Ended merged = drafts.assess({"--merge", "1.jsonl", "2.jsonl", "--format", format});
        EXPECT_EQ(merged.out, one.out) << format;
        EXPECT_EQ(merged.status, one.status);
        EXPECT_FALSE(one.out.empty());
    }
}

TEST(lines, of_one_draft_in_two_files_count_once) {
    const Class drafts;
    drafts.assess({"class", "--lines", "all.jsonl"});
    drafts.assess({"class/bo.json", "class/cleo.json", "--lines", "some.jsonl"});
    const Ended whole = drafts.assess({"class", "--format", "csv"});
    EXPECT_EQ(drafts.assess({"--merge", "all.jsonl", "some.jsonl", "--format", "csv"}).out, whole.out);
    EXPECT_EQ(drafts.assess({"--merge", "all.jsonl", "all.jsonl", "--format", "csv"}).out, whole.out);
    // Another draft under the same path, as a second machine may have, is another student's.
    write_text(drafts.folder() / "class/bo.json", moved_to("side@2 1/2in/armhole"));
    drafts.assess({"class/bo.json", "--lines", "other.jsonl"});
    const Ended both = drafts.assess({"--merge", "all.jsonl", "other.jsonl", "--format", "json"});
    EXPECT_EQ(students_of(both.out).size(),
              students_of(drafts.assess({"class", "--format", "json"}).out).size() + 1);
}

TEST(lines, of_files_named_in_any_bytes_are_told_apart) {
    Class drafts;
    std::filesystem::remove(drafts.folder() / "class/other.json");
    drafts.add("a\xFF.json", moved_to("side@2 1/2in/armhole"));
    drafts.add("a\xFE.json", text_of_file(block));
    drafts.add("two\nlines \t.json", text_of_file(block));
    const Ended whole = drafts.assess({"class", "--format", "json", "--lines", "class.jsonl"});
    EXPECT_EQ(students_of(whole.out).size(), 9u);
    EXPECT_EQ(drafts.assess({"class.jsonl", "--merge", "--format", "json"}).out, whole.out);
    EXPECT_EQ(drafts.assess({"class", "--format", "json", "--lines", "class.jsonl", "--resume"}).out,
              whole.out);
    EXPECT_EQ(lines_in(text_of_file(drafts.folder() / "class.jsonl")), 9u);
}

/// Starts the program; the caller waits for it.
pid_t started(const std::vector<std::string>& words, const std::string& folder) {
    const pid_t child = ::fork();
    if (child < 0) throw std::runtime_error("cannot fork");
    if (child > 0) return child;
    std::vector<char*> raw;
    for (const std::string& word : words) raw.push_back(const_cast<char*>(word.c_str()));
    raw.push_back(nullptr);
    if (::chdir(folder.c_str()) != 0 || ::freopen("/dev/null", "w", stdout) == nullptr ||
        ::freopen("said.txt", "w", stderr) == nullptr)
        ::_exit(127);
    ::execv(raw[0], raw.data());
    ::_exit(127);
}

TEST(lines, hold_all_that_was_marked_when_the_program_is_interrupted_while_it_waits_for_a_draft) {
    Class drafts;
    const std::string pipe = drafts.folder() / "class/c-pipe.json";
    ASSERT_EQ(::mkfifo(pipe.c_str(), 0600), 0);
    const pid_t child =
        started({DARTWRIGHT_PROGRAM, "assess", exercise, "class/amal.json", "class/bo.json",
                 "class/c-pipe.json", "class", "--jobs", "1", "--lines", "class.jsonl", "-o", "report.txt"},
                drafts.folder().path());
    int status = 0;
    {
        // Opening waits until the program reads the third draft; it never gets it.
        const std::ofstream into(pipe);
        ASSERT_EQ(::kill(child, SIGINT), 0);
        ASSERT_EQ(::waitpid(child, &status, 0), child);
    }
    EXPECT_TRUE(WIFSIGNALED(status));
    EXPECT_EQ(WTERMSIG(status), SIGINT);
    EXPECT_NE(text_of_file(drafts.folder() / "said.txt").find("--resume goes on from there"),
              std::string::npos);
    EXPECT_EQ(lines_in(text_of_file(drafts.folder() / "class.jsonl")), 2u);
    EXPECT_EQ(drafts.folder().names(), (std::vector<std::string>{"class", "class.jsonl", "said.txt"}));
    std::filesystem::remove(pipe);
    drafts.add("c-pipe.json", moved_to("side@2 1/2in/armhole"));
    const Ended resumed = drafts.assess({"class", "--format", "html", "--lines", "class.jsonl", "--resume"});
    EXPECT_EQ(resumed.out, drafts.assess({"class", "--format", "html"}).out);
    EXPECT_EQ(lines_in(text_of_file(drafts.folder() / "class.jsonl")), 7u);
}

TEST(lines, leave_a_file_alone_that_is_no_file_of_lines) {
    const Class drafts;
    for (const std::string own : {"a letter", "{\"dartwright\": 1,\n \"name\": \"a pattern\"}"}) {
        drafts.folder().add("own.txt", own);
        const Ended ended = drafts.assess({"class", "--lines", "own.txt", "--resume"});
        EXPECT_EQ(ended.status, 3);
        EXPECT_TRUE(says_one_line(ended, "own.txt: its last line is no draft that was marked"));
        EXPECT_EQ(text_of_file(drafts.folder() / "own.txt"), own);
    }
}

TEST(assess, does_not_wait_for_a_pipe_that_lies_in_the_folder) {
    const Class drafts;
    const std::string pipe = drafts.folder() / "class/pipe.json";
    ASSERT_EQ(::mkfifo(pipe.c_str(), 0600), 0);
    const Ended ended = drafts.assess({"class", "--format", "csv"});
    EXPECT_EQ(ended.status, 3);
    EXPECT_NE(ended.out.find("is a pipe or a device, not a file"), std::string::npos);
}

/// A pipe in the folder, open to read, with room for little, so that a report does not fit.
int little_pipe(const std::string& path) {
    EXPECT_EQ(::mkfifo(path.c_str(), 0600), 0);
    const int pipe = ::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC);
    ::fcntl(pipe, F_SETPIPE_SZ, 4096);
    return pipe;
}

int ended_by(pid_t child, int signal) {
    EXPECT_EQ(::kill(child, signal), 0);
    int status = 0;
    EXPECT_EQ(::waitpid(child, &status, 0), child);
    return WIFSIGNALED(status) ? WTERMSIG(status) : 0;
}

TEST(assess, ends_at_the_first_signal_while_it_waits_for_the_exercise) {
    for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
        const Class drafts;
        const std::string pipe = drafts.folder() / "exercise.json";
        ASSERT_EQ(::mkfifo(pipe.c_str(), 0600), 0);
        const pid_t child =
            started({DARTWRIGHT_PROGRAM, "assess", "exercise.json", "class"}, drafts.folder().path());
        const std::ofstream into(pipe);  // waits until it is read
        EXPECT_EQ(ended_by(child, signal), signal);
        EXPECT_EQ(text_of_file(drafts.folder() / "said.txt"),
                  "dartwright assess: interrupted; nothing was marked yet\n");
    }
}

TEST(assess, ends_at_the_first_signal_while_its_report_is_waited_for) {
    for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
        const Class drafts;
        const support::Handle pipe(little_pipe(drafts.folder() / "report"));
        const pid_t child = started({DARTWRIGHT_PROGRAM, "assess", exercise, "class", "--format", "html",
                                     "--lines", "class.jsonl", "-o", "report"},
                                    drafts.folder().path());
        pollfd ready{pipe.get(), POLLIN, 0};
        ASSERT_EQ(::poll(&ready, 1, -1), 1);  // the report has begun, and does not fit
        EXPECT_EQ(ended_by(child, signal), signal);
        EXPECT_NE(text_of_file(drafts.folder() / "said.txt").find("kept in class.jsonl, and --resume"),
                  std::string::npos);
        EXPECT_EQ(lines_in(text_of_file(drafts.folder() / "class.jsonl")), 6u);
    }
}

TEST(assess, writes_a_report_to_a_pipe) {
    const Class drafts;
    const Ended ended = shell("mkfifo pipe; cat pipe > got & dartwright assess '" + exercise +
                                  "' class/amal.json --format html -o pipe; wait; "
                                  "dartwright assess '" +
                                  exercise + "' class/amal.json --format html | cmp - got",
                              drafts.folder().path());
    EXPECT_EQ(ended.status, 0) << ended.err << ended.out;
}

TEST(merge, refuses_a_pipe_and_does_not_wait_for_it) {
    const Class drafts;
    ASSERT_EQ(::mkfifo((drafts.folder() / "pipe").c_str(), 0600), 0);
    const Ended ended = drafts.assess({"--merge", "pipe"});
    EXPECT_EQ(ended.status, 3);
    EXPECT_TRUE(says_one_line(ended, "pipe: is not a file of lines"));
}

/// The shipped exercise with another name for its pattern, in a folder of its own.
class Sent {
  public:
    Sent() { std::filesystem::create_directories(folder_ / "sent/inner"); }
    const Folder& folder() const { return folder_; }
    Ended with_pattern(const std::string& name, std::vector<std::string> more = {}) const {
        Json json = Json::parse(text_of_file(exercise));
        json["pattern"] = name;
        std::vector<std::string> words{"assess", folder_.add("sent/exercise.json", json.dump()), bodice,
                                       "--format", "csv"};
        words.insert(words.end(), more.begin(), more.end());
        return dartwright(words);
    }

  private:
    Folder folder_;
};

TEST(exercise, takes_its_pattern_from_plain_files_only) {
    const Sent sent;
    ASSERT_EQ(::mkfifo((sent.folder() / "sent/pipe").c_str(), 0600), 0);
    for (const std::string name : {"pipe", "/dev/zero", "/dev/stdin", "inner", "/"}) {
        const Ended ended = sent.with_pattern(name);
        EXPECT_EQ(ended.status, 3) << name;
        EXPECT_TRUE(says_one_line(ended, "/pattern: found ")) << name << ended.err;
    }
}

TEST(exercise, shows_nothing_of_a_file_that_is_no_pattern) {
    const Sent sent;
    for (const std::string text : {"velvet:x:0:0\n", "{\"velvet\": \"silk\"}", "\"velvet\"", "velvet = 1",
                                   "[\"velvet\"]", "{\"dartwright\": 1, \"velvet\" velvet"}) {
        sent.folder().add("secret.txt", text);
        const Ended ended = sent.with_pattern("../secret.txt");
        EXPECT_EQ(ended.status, 3) << text;
        EXPECT_TRUE(says_one_line(ended, "secret.txt\", which is no pattern file")) << ended.err;
        EXPECT_EQ(ended.err.find("velvet"), ended.err.npos) << ended.err;
    }
    // What is one is told as ever.
    sent.folder().add("wrong.json", replaced(text_of_file(bodice), "\"unit\"", "\"velvet\""));
    EXPECT_TRUE(says_one_line(sent.with_pattern("../wrong.json"), "wrong.json\" with no key \"unit\""));
}

TEST(exercise, stays_in_its_own_folder_where_that_is_asked) {
    const Sent sent;
    const std::string block_text = text_of_file(source_folder + "/fixtures/blocks/close-fitting.json");
    const std::string outside = sent.folder().add("outside.json", block_text);
    sent.folder().add("sent/beside.json", block_text);
    sent.folder().add("sent/inner/below.json", block_text);
    std::filesystem::create_directories(sent.folder() / "sent-too");
    sent.folder().add("sent-too/outside.json", block_text);
    std::filesystem::create_symlink("../outside.json", sent.folder() / "sent/link.json");
    std::filesystem::create_symlink("inner/below.json", sent.folder() / "sent/inner-link.json");
    std::filesystem::create_directory_symlink("..", sent.folder() / "sent/up");
    for (const std::string name : {"beside.json", "inner/below.json", "inner/../beside.json",
                                   "inner-link.json", "../sent/beside.json"}) {
        const Ended free = sent.with_pattern(name);
        const Ended held = sent.with_pattern(name, {"--own-folder"});
        EXPECT_LE(free.status, 1) << name << free.err;
        EXPECT_EQ(held.status, free.status) << name << held.err;
        EXPECT_EQ(held.out, free.out) << name;
    }
    for (const std::string& name : {std::string("../outside.json"), std::string("link.json"), outside,
                                    std::string("up/outside.json"), std::string("../sent-too/outside.json"),
                                    std::string("/etc/passwd"), std::string("../not there.json")}) {
        const Ended held = sent.with_pattern(name, {"--own-folder"});
        EXPECT_EQ(held.status, 3) << name;
        EXPECT_TRUE(says_one_line(held, "lies outside the folder of the file that names it")) << held.err;
    }
    EXPECT_LE(sent.with_pattern("link.json").status, 1);
}

}  // namespace
}  // namespace dartwright
