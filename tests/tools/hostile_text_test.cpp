// Names, file names and words on the command line that a terminal would obey: none reaches it, from any
// command.

#include "tools/program.hpp"

namespace dartwright {
namespace {

/// A control sequence introducer in one character, forced right to left, an isolate, a mark of direction, a
/// byte order mark and a tag.
const std::vector<std::string> hostile{"\xC2\x9B",     "\xE2\x80\xAE", "\xE2\x81\xA6",
                                       "\xE2\x80\x8F", "\xEF\xBB\xBF", "\xF3\xA0\x80\xA1"};

std::string all_hostile() {
    std::string all;
    for (const std::string& each : hostile) all += each;
    return all;
}

/// The bodice with them in every name.
std::string hostile_pattern() {
    std::string text = text_of_file(bodice);
    for (const char* name :
         {"front", "waist", "waist dart", "side", "shoulder", "armhole", "neck", "bust line"}) {
        const std::string quoted = std::string("\"") + name + "\"";
        for (std::size_t at = text.find(quoted); at != text.npos; at = text.find(quoted, at + 1))
            text.insert(at + quoted.size() - 1, all_hostile());
    }
    return replaced(text, "\"name\": \"", "\"name\": \"" + all_hostile());
}

std::string with_hostile(const std::string& name) {
    return name + all_hostile();
}

void expect_none(const std::vector<std::string>& words, const Ended& ended) {
    std::string command;
    for (const std::string& word : words) command += word + " ";
    for (const std::string& each : hostile) {
        EXPECT_EQ(ended.out.find(each), ended.out.npos) << command << "\n" << ended.out;
        EXPECT_EQ(ended.err.find(each), ended.err.npos) << command << "\n" << ended.err;
    }
    EXPECT_EQ(ended.out.find('\r'), ended.out.npos) << command;
}

std::vector<std::vector<std::string>> commands_on(const std::string& file) {
    const std::string front = with_hostile("front");
    const std::string dart = with_hostile("waist dart");
    const std::string place = with_hostile("shoulder") + "@50%";
    const std::vector<std::string> of_dart{"--piece", front, "--dart", dart};
    const auto command = [&](const std::string& name, std::vector<std::string> more) {
        std::vector<std::string> words{name, file};
        words.insert(words.end(), more.begin(), more.end());
        return words;
    };
    const auto on_dart = [&](const std::string& name, std::vector<std::string> more) {
        std::vector<std::string> all = of_dart;
        all.insert(all.end(), more.begin(), more.end());
        return command(name, all);
    };
    return {command("check", {}),
            command("show", {}),
            command("walk", {"--seam", with_hostile("side")}),
            command("measure", {"--line", with_hostile("bust line")}),
            command("measure", {"--line", with_hostile("no such line")}),
            on_dart("pivot", {"--to", place}),
            on_dart("pivot", {"--to", with_hostile("nowhere") + "@50%"}),
            on_dart("split", {"--to", place + "=40%", "--to", with_hostile("side") + "@50%=60%"}),
            on_dart("cluster", {"--to", place, "--count", "2"}),
            on_dart("close", {"--as", "ease"}),
            on_dart("true", {}),
            on_dart("repoint", {"--back-off", "30"}),
            on_dart("merge", {"--with", with_hostile("side dart")}),
            command("open", {"--piece", front}),
            command("replay", {}),
            command("compare", {bodice}),
            command("cut", {}),
            command("draw", {}),
            command("draw", {"--cutting"}),
            command("lay", {"--width", "140cm"}),
            command("sheet", {"--width", "140cm", "-o", file + ".html"}),
            command("print", {"-o", file + ".pdf"})};
}

TEST(hostile_text, reaches_no_terminal_from_any_command) {
    Folder folder;
    const std::string file = folder.add(with_hostile("bodice") + "\n.json", hostile_pattern());
    std::size_t told = 0;
    std::size_t done = 0;
    for (std::vector<std::string> words : commands_on(file)) {
        const Ended ended = dartwright(words);
        EXPECT_NE(ended.status, 5) << ended.err;
        done += ended.status == 0 ? 1 : 0;
        told += ended.out.size() + ended.err.size() > 0 ? 1 : 0;
        expect_none(words, ended);
        if (words[0] == "replay" || words[0] == "draw") continue;
        words.insert(words.end(), {"--format", "json"});
        expect_none(words, dartwright(words));
    }
    EXPECT_GE(told, 20U);
    EXPECT_GE(done, 12U);
}

TEST(hostile_text, reaches_no_terminal_from_problems_of_a_file) {
    Folder folder;
    const std::string bad = replaced(hostile_pattern(), "\"edge\": \"", "\"ed" + all_hostile() + "ge\": \"");
    const std::string file = folder.add("bad.json", bad);
    for (const std::vector<std::string>& words : std::vector<std::vector<std::string>>{
             {"check", file}, {"check", file, "--format", "json"}, {"show", file}, {"assess", file, file}}) {
        const Ended ended = dartwright(words);
        EXPECT_EQ(ended.status, 3) << ended.err;
        expect_none(words, ended);
    }
}

TEST(hostile_text, keeps_its_value_in_json) {
    Folder folder;
    const std::string file = folder.add("bodice.json", hostile_pattern());
    const Json shown = Json::parse(dartwright({"show", file, "--format", "json"}).out);
    EXPECT_EQ(shown["pieces"][0]["name"], with_hostile("front"));
    const Json written = Json::parse(dartwright({"repoint", file, "--piece", with_hostile("front"), "--dart",
                                                 with_hostile("waist dart"), "--back-off", "30"})
                                         .out);
    EXPECT_EQ(written["pieces"][0]["name"], with_hostile("front"));
}

TEST(hostile_text, in_words_of_the_command_line_is_one_line) {
    for (const std::vector<std::string>& words : std::vector<std::vector<std::string>>{
             {"two\nlines"},
             {"check", "two\nlines.json"},
             {"check", "--two\nlines"},
             {"walk", bodice, "--seam", "two\nlines"},
             {"pivot", bodice, "--piece", "two\nlines", "--dart", "waist dart", "--to", "side@50%"},
             {"pivot", bodice, "--piece", "front", "--dart", "waist dart", "--to", "two\nlines@50%"},
             {"print", bodice, "-o", "two\nlines"},
             {"draw", bodice, "-o", "no/such/two\nlines.svg"},
             {"lay", bodice, "--width", "1\n2"}}) {
        const Ended ended = dartwright(words);
        EXPECT_NE(ended.status, 0);
        EXPECT_EQ(lines_in(ended.err), 1U) << ended.err;
    }
}

// The number that was found is cut short, whatever its kind.
TEST(hostile_text, of_a_million_digits_makes_a_short_message) {
    Folder folder;
    const std::string digits(1'000'000, '7');
    for (const std::string& number :
         {digits, "0." + digits, "-" + digits, "1e" + digits, "\"" + digits + "\""}) {
        const std::string text = replaced(text_of_file(bodice), "\"quantity\": 1", "\"quantity\": " + number);
        const Ended ended = dartwright({"check", folder.add("long.json", text)});
        EXPECT_EQ(ended.status, 3);
        EXPECT_LT(ended.err.size() + ended.out.size(), 2000U);
    }
    // More of them than are stood in for.
    std::string many;
    for (int i = 0; i < 60; ++i) many += (i == 0 ? "" : ", ") + std::string("1e99999");
    const Ended ended =
        dartwright({"check", folder.add("many.json", "{\"dartwright\": 1, \"name\": [" + many + "]}")});
    EXPECT_EQ(ended.status, 3);
    EXPECT_EQ(ended.out.find("exception"), ended.out.npos) << ended.out;
    EXPECT_EQ(ended.err.find("out_of_range"), ended.err.npos) << ended.err;
}

}  // namespace
}  // namespace dartwright
