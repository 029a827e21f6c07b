// Files that are broken, missing or kept from us: one line on standard error, the right status, nothing
// harmed.

#include "tools/program.hpp"

namespace dartwright {
namespace {

struct Reader {
    const char* command;
    std::vector<std::string> words;  ///< after the file
};

const std::vector<Reader> readers{
    {"check", {}},
    {"show", {}},
    {"walk", {"--seam", "side"}},
    {"measure", {"--line", "waist"}},
    {"cut", {}},
    {"draw", {}},
    {"lay", {"--width", "140cm"}},
    {"sheet", {}},
    {"print", {}},
    {"pivot", {"--piece", "front", "--dart", "waist dart", "--to", "shoulder@50%"}},
    {"cluster", {"--piece", "front", "--dart", "waist dart", "--apart", "2cm"}},
    {"split", {"--piece", "front", "--dart", "waist dart", "--to", "shoulder@50%=50%"}},
    {"true", {"--piece", "front", "--dart", "waist dart"}},
    {"true", {"--seam", "side", "--end", "armhole"}},
    {"repoint", {"--piece", "front", "--pivot", "90,180"}},
    {"close", {"--piece", "front", "--dart", "waist dart", "--as", "gathers"}},
    {"merge", {"--piece", "front", "--dart", "waist dart", "--with", "side dart"}}};

Process reading(const Reader& reader, const std::string& file, const std::string& input = {}) {
    std::vector<std::string> words{reader.command, file};
    words.insert(words.end(), reader.words.begin(), reader.words.end());
    return dartwright_with(words, input);
}

struct Broken {
    const char* name;
    std::string text;
    const char* says;
};

std::string edited(const std::string& old_words, const std::string& new_words) {
    return replaced(text_of_file(bodice), old_words, new_words);
}

std::vector<Broken> broken_files() {
    const std::string whole = text_of_file(bodice);
    return {{"empty", "", "found"},
            {"truncated", whole.substr(0, whole.size() / 2), "line"},
            {"brackets", std::string(200000, '['), "found"},
            {"objects",
             [] {
                 std::string text;
                 for (int i = 0; i < 100000; ++i) text += "{\"a\":";
                 return text;
             }(),
             "found"},
            {"not UTF-8", edited("chorus bodice", "chorus \xff bodice"), "UTF-8"},
            {"a NUL byte", edited("chorus bodice", std::string("chorus \0 bodice", 15)), "found"},
            {"NaN", edited("\"start\": [0, 0]", "\"start\": [NaN, 0]"), "line"},
            {"1e300", edited("\"start\": [0, 0]", "\"start\": [1e300, 0]"), "/pieces/0/outline/start"},
            {"1e400", edited("\"start\": [0, 0]", "\"start\": [1e400, 0]"), "found"},
            {"a wrong type", edited("\"quantity\": 1", "\"quantity\": \"one\""), "/pieces/0/cut/quantity"},
            {"an unknown key", edited("\"grain\"", "\"grian\""), "/pieces/0/grian"},
            {"a key twice", edited("\"unit\": \"cm\"", "\"unit\": \"cm\", \"unit\": \"in\""), "/unit"},
            {"pieces of one name", edited("\"name\": \"back\"", "\"name\": \"front\""), "/pieces/1/name"},
            {"a seam to no edge",
             edited("\"piece\": \"front\", \"edge\": \"side\"", "\"piece\": \"front\", \"edge\": \"sleeve\""),
             "/seams/0/joins/0"},
            {"another version", edited("\"dartwright\": 1", "\"dartwright\": 2"), "/dartwright"},
            {"a list", "[]", "found"},
            {"null", "null", "found"}};
}

TEST(broken_file, is_said_in_one_line_by_every_command) {
    Folder folder;
    for (const Broken& broken : broken_files()) {
        const std::string file = folder.add("broken.json", broken.text);
        for (const Reader& reader : readers) {
            const Ended ended = support::run(reading(reader, file));
            EXPECT_EQ(ended.status, 3) << reader.command << " on " << broken.name;
            EXPECT_TRUE(says_one_line(ended, broken.says)) << reader.command << " on " << broken.name;
            EXPECT_TRUE(says_one_line(ended, file)) << reader.command << " on " << broken.name;
            if (std::string(reader.command) != "check") {
                EXPECT_EQ(ended.out, "") << reader.command << " on " << broken.name;
            }
        }
    }
}

TEST(broken_file, on_standard_input_is_called_so) {
    for (const Reader& reader : readers) {
        const Ended ended = support::run(reading(reader, "-", "{\"dartwright\": 1"));
        EXPECT_EQ(ended.status, 3) << reader.command;
        EXPECT_TRUE(says_one_line(ended, "standard input: ")) << reader.command;
    }
}

TEST(broken_file, shows_all_its_problems_in_a_check) {
    Folder folder;
    std::string text = edited("\"grain\"", "\"grian\"");
    text = replaced(text, "\"quantity\": 2", "\"quantity\": -2");
    const Ended ended = dartwright({"check", folder.add("two.json", text)});
    EXPECT_EQ(ended.status, 3);
    EXPECT_NE(ended.out.find("2 problems"), std::string::npos) << ended.out;
    EXPECT_NE(ended.out.find("/pieces/0/grian: found"), std::string::npos);
    EXPECT_NE(ended.out.find("/pieces/1/cut/quantity: found"), std::string::npos);
}

TEST(file_that_cannot_be_read, is_named_with_the_reason) {
    Folder folder;
    const std::string kept = folder.add("kept.json", text_of_file(bodice));
    std::filesystem::permissions(kept, std::filesystem::perms::none);
    support::give_to_owner_of(DARTWRIGHT_PROGRAM, kept);
    support::give_to_owner_of(DARTWRIGHT_PROGRAM, folder.path());
    for (const Reader& reader : readers) {
        const Ended missing = support::run(reading(reader, folder / "none.json"));
        EXPECT_EQ(missing.status, 3) << reader.command;
        EXPECT_TRUE(says_one_line(missing, "none.json: cannot be read: there is no such file"));
        const Ended two_lines = support::run(reading(reader, folder / "two\nlines.json"));
        EXPECT_EQ(two_lines.status, 3) << reader.command;
        EXPECT_TRUE(says_one_line(two_lines, "two lines.json: cannot be read: there is no such file"));
        Process without_rights = reading(reader, kept);
        without_rights.is_without_privileges = true;
        const Ended refused = support::run(without_rights);
        EXPECT_EQ(refused.status, 3) << reader.command;
        EXPECT_TRUE(says_one_line(refused, "kept.json: cannot be read: no permission")) << reader.command;
        if (std::string(reader.command) == "check") continue;  // which takes folders
        const Ended directory = support::run(reading(reader, folder.path()));
        EXPECT_EQ(directory.status, 3) << reader.command;
        EXPECT_TRUE(says_one_line(directory, folder.path())) << reader.command;
    }
}

TEST(broken_file, of_a_million_problems_tells_a_hundred) {
    const Folder folder;
    std::string pieces = "0";
    for (int i = 1; i < 1'000'000; ++i) pieces += ",0";
    const std::string file = folder.add(
        "wrong.json", "{\"dartwright\": 1, \"name\": \"x\", \"unit\": \"mm\", \"pieces\": [" + pieces + "]}");
    constexpr std::size_t short_enough = 50'000;
    // Each piece, and that they are so many.
    const Ended text = dartwright({"check", file});
    EXPECT_EQ(text.status, 3);
    EXPECT_NE(text.out.find("1000001 problems"), text.out.npos) << text.out.substr(0, 300);
    EXPECT_NE(text.out.find("and 999901 more problems"), text.out.npos);
    EXPECT_LT(text.out.size() + text.err.size(), short_enough);
    const Ended json = dartwright({"check", file, "--format", "json"});
    EXPECT_LT(json.out.size() + json.err.size(), short_enough);
    const Json read = Json::parse(json.out)["files"][0];
    EXPECT_EQ(read["problems"].size(), 100U);
    EXPECT_EQ(read["more_problems"], 999'901);
    const Ended other = dartwright({"show", file});
    EXPECT_TRUE(says_one_line(other, "(and 1000000 more problems; dartwright check lists the first 100)"));
    const Ended marked = dartwright({"assess", exercise, file, "--format", "csv"});
    EXPECT_LT(marked.out.size() + marked.err.size(), short_enough);
}

}  // namespace
}  // namespace dartwright
