// cut: allowances decided by a rule, the account of the cutting pieces, and what is refused.

#include <cmath>

#include "tools/program.hpp"

namespace dartwright {
namespace {

const std::string toile = source_folder + "/fixtures/rules/toile.json";
const std::string chorus = source_folder + "/fixtures/rules/chorus.json";

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

const Json& run_of(const Json& piece, const std::string& edge) {
    for (const Json& run : piece["runs"]) {
        if (run["edge"] == edge) return run;
    }
    throw std::runtime_error("no run " + edge);
}

TEST(cut_command, writes_the_pattern_with_its_allowances_and_the_rule) {
    const Folder folder;
    const Ended ended =
        dartwright({"cut", bodice, "--rule", chorus, "-o", folder / "cut.json", "--format", "json"});
    ASSERT_EQ(ended.status, 0) << ended.err;
    const Json cut = Json::parse(text_of_file(folder / "cut.json"));
    EXPECT_EQ(cut["pieces"][0]["allowance"]["side"], 3);
    EXPECT_EQ(cut["pieces"][0]["allowance"]["waist"], 1.5);
    EXPECT_EQ(cut["pieces"][1]["allowance"]["centre back"], 2.5);
    Json rule = Json::parse(text_of_file(chorus));
    rule.erase("dartwright_rule");
    EXPECT_EQ(cut["cutting"], rule);
    const Json account = Json::parse(ended.out);
    EXPECT_EQ(account["dartwright_cut"], 1);
    EXPECT_EQ(account["rule"], "chorus costume");
    EXPECT_EQ(account["warnings"].size(), 2u);
    ASSERT_EQ(account["pieces"].size(), 2u);
    const Json& front = account["pieces"][0];
    EXPECT_EQ(run_of(front, "side")["decided_by"], "seam");
    EXPECT_EQ(run_of(front, "side")["was"], 15);
    EXPECT_EQ(run_of(front, "side")["widths"][0]["width"], 30);
    EXPECT_EQ(run_of(front, "centre front")["decided_by"], "fold");
    EXPECT_EQ(front["deep_notches"].size(), 0u);
    EXPECT_GT(front["line"].size(), 20u);
    // The cut pattern carries its rule with it: cut again, nothing changes.
    const Ended again = dartwright({"cut", folder / "cut.json"});
    ASSERT_EQ(again.status, 0) << again.err;
    EXPECT_EQ(again.out, text_of_file(folder / "cut.json"));
}

// Exact geometry: a square of 100 mm with these allowances on its sides.
TEST(cut_command, says_area_and_size_of_what_is_cut) {
    const Folder folder;
    write_text(
        folder / "none.json",
        R"({"dartwright_rule": 1, "name": "none", "unit": "mm", "allowance": {"elsewhere": 0, "joined": 0}})");
    write_text(folder / "square.json", R"({"dartwright": 1, "name": "square", "unit": "mm", "pieces": [{
        "name": "square", "outline": {"start": [0, 0], "items": [{"edge": "a", "to": [100, 0]},
        {"edge": "b", "to": [100, 100]}, {"edge": "c", "to": [0, 100]}, {"edge": "d", "to": [0, 0]}]},
        "allowance": {"a": 10, "b": 20}, "notches": [{"edge": "b", "from": "a", "at": 50},
        {"edge": "c", "from": "b", "at": 50}]}]})");
    const auto piece_of = [&](const std::vector<std::string>& words) {
        std::vector<std::string> all{
            "cut", folder / "square.json", "-o", folder / "out.json", "--overwrite", "--format", "json"};
        all.insert(all.end(), words.begin(), words.end());
        const Ended ended = dartwright(all);
        EXPECT_EQ(ended.status, 0) << ended.err;
        return Json::parse(ended.out)["pieces"][0];
    };
    const Json none = piece_of({"--rule", folder / "none.json"});
    EXPECT_NEAR(none["area"].get<double>(), 100 * 100, 1e-6);
    const Json own = piece_of({});
    EXPECT_NEAR(own["area"].get<double>(), 120 * 110, 1e-6);
    EXPECT_NEAR(own["across"].get<double>(), 120, 1e-9);
    EXPECT_NEAR(own["up"].get<double>(), 110, 1e-9);
    EXPECT_TRUE(run_of(own, "c")["undecided"].get<bool>());
    const Json filled = piece_of({"--undecided", "5mm"});
    EXPECT_NEAR(filled["area"].get<double>(), 125 * 115, 1e-6);
    const Json written = Json::parse(text_of_file(folder / "out.json"));
    EXPECT_EQ(written["pieces"][0]["allowance"]["c"], 5);
    EXPECT_FALSE(written.contains("cutting"));
    write_text(folder / "notched.json", R"({"dartwright_rule": 1, "name": "notched", "unit": "mm",
        "allowance": {"edges": [{"edge": "c", "width": 3}]}, "notches": {"form": "slit", "depth": 4}})");
    const Json notched = piece_of({"--rule", folder / "notched.json"});
    ASSERT_EQ(notched["deep_notches"].size(), 1u) << "only that on the allowance of 3 mm";
    EXPECT_EQ(notched["deep_notches"][0]["edge"], "c");
    EXPECT_EQ(notched["deep_notches"][0]["depth"], 4);
    EXPECT_NEAR(notched["deep_notches"][0]["allowance"].get<double>(), 3, 1e-9);
}

TEST(cut_command, accounts_for_each_run_in_words) {
    const Folder folder;
    const Ended ended = dartwright({"cut", bodice, "--rule", toile, "-o", folder / "cut.json"});
    ASSERT_EQ(ended.status, 0) << ended.err;
    EXPECT_TRUE(has(ended.out, "Cut by the rule \"toile\".")) << ended.out;
    EXPECT_TRUE(has(ended.out, "the opening \"centre back\""));
    EXPECT_TRUE(has(ended.out, "cutting rule: all other edges"));
    EXPECT_TRUE(has(ended.out, "waist dart: capped as pressed to centre front"));
    const Ended to_standard = dartwright({"cut", bodice, "--rule", toile});
    EXPECT_EQ(to_standard.out, text_of_file(folder / "cut.json"));
    EXPECT_EQ(to_standard.err, ended.out);
}

TEST(cut_command, says_which_joined_edges_differ) {
    const Folder folder;
    write_text(folder / "rule.json", R"({"dartwright_rule": 1, "name": "uneven", "unit": "mm",
        "allowance": {"edges": [{"edge": "side", "piece": "back", "width": 25}]}})");
    const Ended ended = dartwright(
        {"cut", bodice, "--rule", folder / "rule.json", "-o", folder / "cut.json", "--format", "json"});
    ASSERT_EQ(ended.status, 0) << ended.err;
    const Json account = Json::parse(ended.out);
    ASSERT_EQ(account["seams"].size(), 1u);
    EXPECT_EQ(account["seams"][0]["check"], "seam-allowance");
}

struct Refused {
    const char* rule;
    std::vector<std::string> words;
    int status;
    const char* says;
};

// The slit is narrower than its two allowances: nothing is left of it, and whoever cuts is told where.
TEST(cut_command, says_where_allowances_were_trimmed) {
    const Folder folder;
    const std::string slit = source_folder + "/fixtures/corners/slit.json";
    const Ended ended = dartwright({"cut", slit, "-o", folder / "cut.json"});
    ASSERT_EQ(ended.status, 0) << ended.err;
    EXPECT_TRUE(has(ended.out,
                    "  note: trimmed where allowances run into each other: right slit, all along it\n"
                    "  note: trimmed where allowances run into each other: left slit, all along it\n"))
        << ended.out;
    const Ended json = dartwright({"cut", slit, "-o", folder / "again.json", "--format", "json"});
    const Json trimmed = Json::parse(json.out)["pieces"][0]["trimmed"];
    ASSERT_EQ(trimmed.size(), 2u);
    EXPECT_EQ(trimmed[0]["edge"], "right slit");
    EXPECT_EQ(trimmed[0]["dart"], nullptr);
    EXPECT_EQ(trimmed[0]["from"], "neck");
    EXPECT_NEAR(trimmed[0]["at"].get<double>(), 0, 0.01);
    // By Pythagoras, 3 mm across and 180 mm down.
    EXPECT_NEAR(trimmed[0]["to"].get<double>(), std::hypot(3, 180), 0.01);
    EXPECT_NEAR(trimmed[0]["place"][0].get<double>(), 204.5, 0.01);
    EXPECT_NEAR(trimmed[0]["place"][1].get<double>(), 490, 0.01);
}

TEST(cut_command, says_how_far_allowances_were_trimmed_in_the_unit_of_the_file) {
    const Folder folder;
    Json wide = Json::parse(text_of_file(source_folder + "/fixtures/corners/slit.json"));
    Json& items = wide["pieces"][0]["outline"]["items"];
    // 2 wide at the bottom, 8 at the mouth, 18 up, and allowances of 2: with f = atan(3 / 18) the two meet in
    // the middle at (2 / cos f - 1) / tan f = 6.17 up, and the foot of that on a side is 5.92 along it.
    items[3]["to"] = {24, 58};
    items[4]["to"] = {21, 40};
    items[5]["to"] = {16, 58};
    items.insert(items.begin() + 5, Json{{"edge", "bottom"}, {"to", {19, 40}}});
    items[3].erase("curve");
    items[7].erase("curve");
    for (Json& each : items)
        if (each["edge"] == "other neck") each["to"] = {14, 62};
    Json& allowance = wide["pieces"][0]["allowance"];
    allowance["right slit"] = allowance["left slit"] = allowance["bottom"] = 2;
    write_text(folder / "wide.json", wide.dump());
    const Ended in_cm = dartwright({"cut", folder / "wide.json", "-o", folder / "cut.json"});
    ASSERT_EQ(in_cm.status, 0) << in_cm.err;
    EXPECT_TRUE(has(in_cm.out, "right slit, 0.0 to 5.9 cm from the bottom end\n")) << in_cm.out;
    EXPECT_TRUE(has(in_cm.out, "left slit, 0.0 to 5.9 cm from the bottom end\n")) << in_cm.out;
    EXPECT_TRUE(has(in_cm.out, "bottom, all along it\n")) << in_cm.out;
    wide["unit"] = "in";
    write_text(folder / "inch.json", wide.dump());
    const Ended in_inches = dartwright({"cut", folder / "inch.json", "-o", folder / "cut inch.json"});
    ASSERT_EQ(in_inches.status, 0) << in_inches.err;
    EXPECT_TRUE(has(in_inches.out, "right slit, 0 to 5 29/32 in from the bottom end\n")) << in_inches.out;
    // Nothing is said of a piece whose allowances keep clear of each other.
    for (const char* slit : {"right slit", "left slit", "bottom"}) allowance[slit] = 0.3;
    write_text(folder / "clear.json", wide.dump());
    const Ended clear = dartwright({"cut", folder / "clear.json", "-o", folder / "cut clear.json"});
    EXPECT_EQ(clear.status, 0) << clear.err;
    EXPECT_FALSE(has(clear.out, "trimmed")) << clear.out;
}

TEST(cut_command, refuses_in_one_line_and_writes_nothing) {
    const Refused all[] = {
        {R"("allowance": {"joined": -1})", {}, 3, "/allowance/joined: found -1"},
        {R"("allowance": {"joined": 200})", {}, 4, "the widest that works is"},
        {R"("allowance": {"edges": [{"edge": "hem", "piece": "front", "width": 2}]})",
         {},
         2,
         "\"front\" has no edge \"hem\""},
        {R"("corners": [{"between": ["side", "neck"], "piece": "back", "kind": "met"}])",
         {},
         2,
         "\"back\" has no corner of \"side\" and \"neck\""},
        {R"("colour": 1, "allowance": {"joined": -1})", {}, 3, "also /allowance/joined: found -1"},
        {R"("allowance": {})", {"--undecided", "-5mm"}, 2, "--undecided is -5mm"},
        {R"("allowance": {})", {"--undecided", "wide"}, 2, "wide"}};
    for (const Refused& refused : all) {
        SCOPED_TRACE(refused.rule);
        const Folder folder;
        write_text(
            folder / "rule.json",
            std::string(R"({"dartwright_rule": 1, "name": "bad", "unit": "mm", )") + refused.rule + "}");
        std::vector<std::string> words{
            "cut", bodice, "--rule", folder / "rule.json", "-o", folder / "cut.json"};
        words.insert(words.end(), refused.words.begin(), refused.words.end());
        const Ended ended = dartwright(words);
        EXPECT_EQ(ended.status, refused.status);
        EXPECT_TRUE(has(ended.err, refused.says)) << ended.err;
        EXPECT_EQ(std::count(ended.err.begin(), ended.err.end(), '\n'), 1) << ended.err;
        EXPECT_EQ(ended.out, "");
        EXPECT_FALSE(std::filesystem::exists(folder / "cut.json"));
    }
}

// A rule that a pattern carries may name what an operation took away.
TEST(cut_command, takes_names_that_are_gone_from_the_patterns_own_rule_as_warnings) {
    const Folder folder;
    ASSERT_EQ(dartwright({"cut", bodice, "--rule", toile, "-o", folder / "cut.json"}).status, 0);
    Json cut = Json::parse(text_of_file(folder / "cut.json"));
    cut["cutting"]["allowance"]["edges"] = {{{"edge", "hem"}, {"piece", "front"}, {"width", 2}}};
    const Ended ended = dartwright({"cut", "-", "-o", folder / "again.json", "--format", "json"}, cut.dump());
    ASSERT_EQ(ended.status, 0) << ended.err;
    EXPECT_EQ(Json::parse(ended.out)["warnings"][0], "\"front\" has no edge \"hem\"");
}

TEST(cut_command, says_allowances_in_inches_as_a_ruler_has_them) {
    const Folder folder;
    const std::string inch = source_folder + "/fixtures/workshop/chorus-bodice-inch.json";
    const Ended ended = dartwright({"cut", inch, "-o", folder / "cut.json"});
    ASSERT_EQ(ended.status, 0) << ended.err;
    EXPECT_TRUE(has(ended.out, " 5/8 ")) << "which is neither 0.62 nor 0.63";
    EXPECT_FALSE(has(ended.out, "0.62"));
    EXPECT_FALSE(has(ended.out, "about"));
    // 20 mm is 25.2 of 32 parts of an inch.
    const Ended metric = dartwright(
        {"cut", inch, "--rule", source_folder + "/fixtures/rules/chorus.json", "-o", folder / "other.json"});
    EXPECT_TRUE(has(metric.out, "about 25/32")) << metric.out;
}

TEST(cut_command, names_on_the_label_an_edge_of_two_widths_with_each) {
    Json pattern = Json::parse(text_of_file(bodice));
    const Json low = {{"from", "waist"}, {"at", 0}, {"to", 8}, {"width", 1.5}};
    const Json high = {{"from", "waist"}, {"at", 8}, {"to", 18.6}, {"width", 2.5}};
    pattern["pieces"][0]["allowance"]["side"] = Json::array({low, high});
    const Ended drawn = dartwright({"draw", "-", "--cutting"}, pattern.dump());
    ASSERT_EQ(drawn.status, 0) << drawn.err;
    EXPECT_TRUE(has(drawn.out, "part\u00a0of\u00a0side")) << "one width alone would be cut all along it";
}

TEST(cut_command, makes_a_pattern_that_is_drawn_with_the_corners_and_notches_of_its_rule) {
    const Folder folder;
    ASSERT_EQ(dartwright({"cut", bodice, "--rule", chorus, "-o", folder / "cut.json"}).status, 0);
    const Ended drawn = dartwright({"draw", folder / "cut.json", "--cutting"});
    ASSERT_EQ(drawn.status, 0) << drawn.err;
    Json plain = Json::parse(text_of_file(folder / "cut.json"));
    const auto drawn_by = [&](const Json& pattern) {
        return dartwright({"draw", "-", "--cutting"}, pattern.dump()).out;
    };
    EXPECT_EQ(drawn_by(plain), drawn.out);
    Json met = plain;
    met["cutting"].erase("corners");
    EXPECT_NE(drawn_by(met), drawn.out);
    Json slit = plain;
    slit["cutting"]["notches"] = {{"form", "slit"}, {"depth", 0.5}};
    EXPECT_NE(drawn_by(slit), drawn.out);
}

TEST(cut_command, leaves_the_rule_in_the_pattern_to_operations) {
    const Folder folder;
    ASSERT_EQ(dartwright({"cut", bodice, "--rule", toile, "-o", folder / "cut.json"}).status, 0);
    const Ended moved = dartwright(
        {"pivot", folder / "cut.json", "--piece", "front", "--dart", "waist dart", "--to", "shoulder@50%"});
    ASSERT_EQ(moved.status, 0) << moved.err;
    EXPECT_EQ(Json::parse(moved.out)["cutting"], Json::parse(text_of_file(folder / "cut.json"))["cutting"]);
}

}  // namespace
}  // namespace dartwright
