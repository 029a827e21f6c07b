// What the program says of a pattern does not depend on how its file is written: where an outline begins,
// which way it runs, in which unit, with items of no length in it.

#include <cmath>
#include <set>

#include "tools/program.hpp"

namespace dartwright {
namespace {

std::vector<std::string> pattern_fixtures() {
    std::vector<std::string> found;
    for (const char* folder : {"blocks", "corners", "faults", "workshop"})
        for (const auto& entry : std::filesystem::directory_iterator(source_folder + "/fixtures/" + folder))
            if (entry.path().filename().string().find("expected") == std::string::npos)
                found.push_back(entry.path().string());
    std::sort(found.begin(), found.end());
    return found;
}

Json start_of(const Json& outline, std::size_t item) {
    return item == 0 ? outline["start"] : outline["items"][item - 1]["to"];
}

bool is_closed(const Json& outline) {
    return outline["items"].back()["to"] == outline["start"];
}

void begin_at(Json& outline, std::size_t item) {
    const Json start = start_of(outline, item);
    Json& items = outline["items"];
    std::rotate(items.begin(), items.begin() + std::ptrdiff_t(item), items.end());
    outline["start"] = start;
}

void swap_end_words(Json& value) {
    if (value.is_object() && value.contains("from") && (value["from"] == "start" || value["from"] == "end"))
        value["from"] = value["from"] == "start" ? "end" : "start";
    if (value.is_structured())
        for (Json& part : value) swap_end_words(part);
}

// The other way round, as somebody writes it who goes clockwise.
void write_clockwise(Json& pattern) {
    for (Json& piece : pattern["pieces"]) {
        Json& outline = piece["outline"];
        Json items = Json::array();
        for (std::size_t i = outline["items"].size(); i-- > 0;) {
            Json item = outline["items"][i];
            item["to"] = start_of(outline, i);
            for (const char* points : {"curve", "through", "legs"})
                if (item.contains(points)) std::reverse(item[points].begin(), item[points].end());
            if (item.contains("legs"))
                for (Json& leg : item["legs"]) std::reverse(leg.begin(), leg.end());
            items.push_back(item);
        }
        outline["start"] = outline["items"].back()["to"];
        outline["items"] = items;
        swap_end_words(piece["notches"]);
        swap_end_words(piece["allowance"]);
        for (const char* key : {"notches", "allowance"})
            if (piece[key].is_null()) piece.erase(key);
    }
    swap_end_words(pattern["seams"]);
    if (pattern["seams"].is_null()) pattern.erase("seams");
}

void scale(Json& value, double factor) {
    if (value.is_number()) value = value.get<double>() * factor;
    if (!value.is_structured()) return;
    for (auto& [key, part] : value.items())
        if (key != "quantity") scale(part, factor);
}

void write_in_inches(Json& pattern) {
    const double factor = (pattern["unit"] == "cm" ? 10 : pattern["unit"] == "mm" ? 1 : 25.4) / 25.4;
    for (const char* key : {"pieces", "seams"})
        if (pattern.contains(key)) scale(pattern[key], factor);
    if (pattern.contains("tolerances"))
        for (auto& [name, value] : pattern["tolerances"].items())
            if (std::set<std::string>{"seam", "legs", "notch", "gap", "fold"}.count(name))
                scale(value, factor);
    pattern["unit"] = "in";
}

struct Told {
    int status = 0;
    std::vector<std::pair<std::string, double>> figures;  // sorted
};

void add_figures(const Json& value, const std::string& name, Told& told) {
    if (value.is_number()) told.figures.emplace_back(name, value.get<double>());
    if (value.is_boolean() || value.is_null()) told.figures.emplace_back(name + value.dump(), 0);
    if (value.is_array())
        for (const Json& part : value) add_figures(part, name, told);
    if (!value.is_object()) return;
    std::string own = name;
    for (const char* key : {"check", "severity", "name", "piece", "edge", "dart", "seam"})
        if (value.contains(key) && value[key].is_string()) own += "|" + value[key].get<std::string>();
    // Words have the file's unit, and the line the place where it begins.
    const std::set<std::string> left_out{"message", "remedy", "file", "line", "from", "notes", "at"};
    for (const auto& [key, part] : value.items())
        if (!left_out.count(key)) add_figures(part, own + "/" + key, told);
}

Told told_of(std::vector<std::string> words, const Json& pattern) {
    const Folder folder;
    words.push_back(folder.add("pattern.json", pattern.dump()));
    if (words[0] == "cut") words.insert(words.end(), {"--undecided", "10mm", "-o", folder / "cut.json"});
    words.insert(words.end(), {"--format", "json"});
    const Ended ended = dartwright(words);
    Told told;
    told.status = ended.status;
    if (!ended.out.empty()) add_figures(Json::parse(ended.out), "", told);
    std::sort(told.figures.begin(), told.figures.end());
    return told;
}

void expect_same(const Told& a, const Told& b, const std::string& where) {
    EXPECT_EQ(a.status, b.status) << where;
    ASSERT_EQ(a.figures.size(), b.figures.size()) << where;
    for (std::size_t i = 0; i < a.figures.size(); ++i) {
        ASSERT_EQ(a.figures[i].first, b.figures[i].first) << where;
        const double size = std::abs(a.figures[i].second);
        EXPECT_NEAR(a.figures[i].second, b.figures[i].second, 1e-6 + 1e-9 * size)
            << where << a.figures[i].first;
    }
}

TEST(written_otherwise, each_fixture_says_the_same_wherever_its_outlines_begin) {
    for (const std::string& path : pattern_fixtures()) {
        const Json pattern = Json::parse(text_of_file(path));
        const Told check = told_of({"check"}, pattern);
        ASSERT_FALSE(check.figures.empty()) << path;
        for (std::size_t p = 0; p < pattern["pieces"].size(); ++p) {
            const Json& outline = pattern["pieces"][p]["outline"];
            if (!is_closed(outline)) continue;
            for (std::size_t i = 1; i < outline["items"].size(); ++i) {
                Json begun = pattern;
                begin_at(begun["pieces"][p]["outline"], i);
                expect_same(check, told_of({"check"}, begun), path + " item " + std::to_string(i));
            }
        }
    }
}

TEST(written_otherwise, each_fixture_says_the_same_clockwise_and_in_inches) {
    for (const std::string& path : pattern_fixtures()) {
        const Json pattern = Json::parse(text_of_file(path));
        Json clockwise = pattern;
        write_clockwise(clockwise);
        Json inches = pattern;
        write_in_inches(inches);
        for (const char* command : {"check", "show", "cut"}) {
            const Told told = told_of({command}, pattern);
            expect_same(told, told_of({command}, clockwise), path + " clockwise, " + command + ": ");
            expect_same(told, told_of({command}, inches), path + " in inches, " + command + ": ");
        }
    }
}

// Once `cut` ended with 5, `lay` and `sheet` with a segmentation fault, and `print` and `draw` not at all.
TEST(written_otherwise, an_outline_that_begins_with_an_edge_of_no_length_ends_every_command) {
    Json pattern = Json::parse(text_of_file(source_folder + "/fixtures/workshop/first-pattern.json"));
    Json& outline = pattern["pieces"][1]["outline"];
    while (!outline["items"][0].contains("dart")) begin_at(outline, 1);
    const Folder folder;
    const std::string plain = folder.add("plain.json", pattern.dump());
    outline["items"].insert(outline["items"].begin(), Json{{"edge", "waist"}, {"to", outline["start"]}});
    const std::string file = folder.add("pattern.json", pattern.dump());
    const std::vector<std::vector<std::string>> commands{
        {"check"},
        {"show"},
        {"walk", "--seam", "side"},
        {"measure", "--line", "waist"},
        {"cut", "--format", "json"},
        {"lay", "--width", "140cm"},
        {"draw", "--cutting"},
        {"draw"},
        {"sheet", "--width", "140cm"},
        {"true", "--piece", "back", "--dart", "waist dart"},
        {"pivot", "--piece", "back", "--dart", "waist dart", "--to", "hem@50%"},
        {"close", "--piece", "back", "--dart", "waist dart", "--as", "ease"},
        {"open", "--piece", "back"}};
    for (std::vector<std::string> words : commands) {
        words.insert(words.begin() + 1, file);
        EXPECT_EQ(dartwright(words).status, 0) << words[0];
    }
    EXPECT_EQ(dartwright({"print", file, "-o", folder / "pages.pdf"}).status, 0);
    // A point more in the path of the stitching line, and nothing else.
    const std::string drawn = dartwright({"draw", file, "--cutting"}).out;
    EXPECT_TRUE(replaced(drawn, "M415 61.68 L415 61.68 ", "M415 61.68 ") ==
                dartwright({"draw", plain, "--cutting"}).out);
}

TEST(written_otherwise, a_fold_of_no_length_is_refused_by_name) {
    Json pattern = Json::parse(text_of_file(source_folder + "/fixtures/workshop/first-pattern.json"));
    Json& items = pattern["pieces"][0]["outline"]["items"];
    items.back()["edge"] = "opening";
    items.push_back(Json{{"edge", "centre front"}, {"to", {0, 0}}});
    pattern["pieces"][0]["grain"].erase("along");
    const Folder folder;
    const std::string file = folder.add("pattern.json", pattern.dump());
    for (const char* command : {"lay", "sheet"}) {
        const Ended ended = dartwright({command, file, "--width", "140cm"});
        EXPECT_EQ(ended.status, 4) << command;
        EXPECT_TRUE(says_one_line(ended, "the fold \"centre front\" of \"front\" ends where it begins"));
    }
    for (const char* command : {"check", "show", "draw", "cut"})
        EXPECT_LE(dartwright({command, file}).status, 1) << command;
    EXPECT_EQ(dartwright({"print", file, "--open", "-o", folder / "pages.pdf"}).status, 4);
    EXPECT_EQ(dartwright({"open", file, "--piece", "front"}).status, 4);
}

}  // namespace
}  // namespace dartwright
