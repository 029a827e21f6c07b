// walk, show, measure and draw, as processes.

#include <cmath>

#include "tools/program.hpp"

namespace dartwright {
namespace {

const std::string block = source_folder + "/fixtures/blocks/close-fitting.json";
const std::string inch = source_folder + "/fixtures/workshop/chorus-bodice-inch.json";

Json json_of(std::vector<std::string> words) {
    words.insert(words.end(), {"--format", "json"});
    const Ended ended = dartwright(words);
    EXPECT_EQ(ended.status, 0) << ended.err;
    EXPECT_EQ(ended.err, "");
    return Json::parse(ended.out);
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

TEST(walk_command, meets_notches_and_darts_at_their_distances) {
    const Ended ended = dartwright({"walk", bodice, "--seam", "side"});
    EXPECT_EQ(ended.status, 0);
    EXPECT_TRUE(has(ended.out, "  notch          single            6.00   6.00        0.00\n")) << ended.out;
    EXPECT_TRUE(has(ended.out, "  dart           front side dart  12.91      -           -\n"));
    EXPECT_TRUE(has(ended.out, "180.0° at the start, 180.0° at the end"));
    const Json json = json_of({"walk", bodice, "--seam", "side"});
    EXPECT_EQ(json["dartwright_walk"], 1);
    EXPECT_EQ(json["rows"][1]["mark"], "notch");
    // 6 cm, as the file says of both sides.
    EXPECT_NEAR(json["rows"][1]["at"][0].get<double>(), 60, 1e-9);
    EXPECT_NEAR(json["rows"][1]["at"][1].get<double>(), 60, 1e-9);
    EXPECT_EQ(json["rows"][2]["at"][1], nullptr);
}

TEST(walk_command, answers_an_unknown_seam_with_those_that_exist) {
    const Ended ended = dartwright({"walk", bodice, "--seam", "sleeve"});
    EXPECT_EQ(ended.status, 2);
    EXPECT_TRUE(says_one_line(ended, "there is \"side\", \"shoulder\", \"centre back\""));
    EXPECT_EQ(ended.out, "");
}

TEST(show_command, has_the_keys_that_scripts_rely_on) {
    const Json json = json_of({"show", block});
    EXPECT_EQ(json["dartwright_show"], 1);
    const Json& front = json["pieces"][0];
    EXPECT_EQ(front["name"], "front");
    EXPECT_EQ(front["runs"][1]["edge"], "centre front");
    EXPECT_NEAR(front["runs"][1]["length"].get<double>(), 353, 1e-9);
    const Json& dart = front["darts"][0];
    for (const char* key : {"name", "legs", "intake", "angle", "point", "pivot", "cap"})
        EXPECT_TRUE(dart.contains(key)) << key;
    EXPECT_EQ(dart["point"], (Json{391.5, 150.0}));
    EXPECT_EQ(dart["pivot"], (Json{391.5, 170.0}));
    EXPECT_EQ(json["seams"].size(), 3u);
    EXPECT_GT(front["area"].get<double>(), 0);
}

TEST(show_command, says_on_which_folds_a_piece_is_cut) {
    const auto shown = [](const char* file) {
        return dartwright({"show", source_folder + "/fixtures/faults/" + file}).out;
    };
    EXPECT_TRUE(has(shown("fold-corner.second.true.json"),
                    "of cloth, cut 1, lengthwise and crosswise on two folds\n"));
    EXPECT_TRUE(has(shown("fold-corner.true.json"), " on the fold\n"));
}

TEST(show_command, gives_the_cap_of_a_dart_whose_press_side_is_known) {
    const Json cap = json_of({"show", block})["pieces"][0]["darts"][0]["cap"];
    EXPECT_EQ(cap["press"], "centre front");
    // On the dart's upright centre line, below its mouth at -4.171.
    EXPECT_NEAR(cap["tip"][0].get<double>(), 391.5, 1e-9);
    EXPECT_NEAR(cap["tip"][1].get<double>(), -4.171 - cap["depth"].get<double>(), 1e-9);
    EXPECT_GT(cap["depth"].get<double>(), 1);
    EXPECT_TRUE(has(dartwright({"show", block}).out, "  waist dart  centre front    0.33  39.15, -0.74\n"));
}

TEST(show_command, gives_no_cap_where_none_is_known) {
    const Ended taken =
        dartwright({"pivot", block, "--piece", "front", "--dart", "waist dart", "--to", "side@50%"});
    std::string text = taken.out;
    for (std::size_t at; (at = text.find(", \"press\": \"centre front\"")) != std::string::npos;)
        text.erase(at, std::string(", \"press\": \"centre front\"").size());
    const Ended shown = dartwright({"show", "-", "--format", "json"}, text);
    const Json report = Json::parse(shown.out);
    const Json& darts = report["pieces"][0]["darts"];
    EXPECT_EQ(darts.size(), 2u);
    for (const Json& dart : darts) EXPECT_EQ(dart["cap"], nullptr);
}

TEST(show_command, lists_darts_with_two_points) {
    const std::string file = source_folder + "/fixtures/faults/dart-legs.two-points.true.json";
    const Json front = json_of({"show", file})["pieces"][0];
    EXPECT_EQ(front["darts"].size(), 1u);
    ASSERT_EQ(front["double_darts"].size(), 1u);
    const Json& dart = front["double_darts"][0];
    EXPECT_EQ(dart["name"], "fish dart");
    ASSERT_EQ(dart["legs"].size(), 4u);
    // From (6, 8) and (6, 28) to (5, 18) and (7, 18), in cm.
    for (const Json& leg : dart["legs"]) EXPECT_NEAR(leg.get<double>(), std::hypot(10, 100), 1e-9);
    EXPECT_NEAR(dart["intake"].get<double>(), 20, 1e-9);
    EXPECT_EQ(dart["from"], (Json{60.0, 80.0}));
    EXPECT_EQ(dart["to"], (Json{60.0, 280.0}));
    EXPECT_EQ(json_of({"show", block})["pieces"][0]["double_darts"], Json::array());
    const std::string text = dartwright({"show", file}).out;
    EXPECT_TRUE(has(text, "fish dart, two points")) << text;
    EXPECT_TRUE(has(text, "10.05 + 10.05")) << text;
    EXPECT_TRUE(has(text, "6.00, 8.00 to 6.00, 28.00")) << text;
}

TEST(show_command, speaks_the_files_unit) {
    EXPECT_TRUE(has(dartwright({"show", block}).out, "  centre front   35.30\n"));
    EXPECT_TRUE(has(dartwright({"show", inch}).out, "  centre front   12.75\n"));
    EXPECT_EQ(json_of({"show", inch})["pieces"][0]["runs"][5]["length"], 12.75 * 25.4);
}

TEST(measure_command, adds_up_a_line_over_all_pieces) {
    // Front 49 - 23.5 less the bust dart where it crosses, back 23.5; doubled for fold and pair.
    const Json json = json_of({"measure", block, "--line", "bust line"});
    EXPECT_EQ(json["dartwright_measure"], 1);
    EXPECT_NEAR(json["pieces"][1]["length"].get<double>(), 235, 1e-9);
    EXPECT_EQ(json["pieces"][1]["copies"], 2);
    EXPECT_NEAR(json["total"].get<double>(), 977, 0.5);
    EXPECT_TRUE(has(dartwright({"measure", block, "--line", "bust line"}).out, "bust line: 97.70 cm\n"));
}

TEST(measure_command, measures_a_level_through_a_place) {
    const Json json = json_of({"measure", block, "--level", "side@0/armhole"});
    EXPECT_NEAR(json["total"].get<double>(), 977, 0.5);
}

TEST(measure_command, wants_one_line_or_one_level) {
    EXPECT_EQ(dartwright({"measure", block}).status, 2);
    EXPECT_EQ(dartwright({"measure", block, "--line", "waist", "--level", "side@50%"}).status, 2);
    const Ended unknown = dartwright({"measure", block, "--line", "hip"});
    EXPECT_EQ(unknown.status, 2);
    EXPECT_TRUE(says_one_line(unknown, "\"waist\""));
}

TEST(draw_command, writes_each_format) {
    Folder folder;
    const auto starts = [&](const char* name, const std::string& bytes) {
        const Ended ended = dartwright({"draw", block, "-o", folder / name, "--pixels-per-mm", "0.5"});
        EXPECT_EQ(ended.status, 0) << ended.err;
        EXPECT_EQ(ended.out + ended.err, "");
        EXPECT_EQ(text_of_file(folder / name).substr(0, bytes.size()), bytes);
    };
    starts("a.svg", "<?xml");
    starts("a.png", "\x89PNG");
    starts("a.pdf", "%PDF");
    EXPECT_EQ(folder.names(), (std::vector<std::string>{"a.pdf", "a.png", "a.svg"}));
}

TEST(draw_command, draws_the_same_bytes_again_and_svg_on_standard_output) {
    Folder folder;
    EXPECT_EQ(dartwright({"draw", block, "-o", folder / "a.svg"}).status, 0);
    const Ended again = dartwright({"draw", block});
    EXPECT_EQ(again.status, 0);
    EXPECT_EQ(again.out, text_of_file(folder / "a.svg"));
}

TEST(draw_command, marks_findings_and_lays_one_over_the_other_when_asked) {
    const std::string fault = source_folder + "/fixtures/faults/seam-length.json";
    EXPECT_FALSE(has(dartwright({"draw", fault}).out, "3.0 mm longer"));
    EXPECT_TRUE(has(dartwright({"draw", fault, "--findings"}).out, "3.0 mm longer"));
    EXPECT_FALSE(has(dartwright({"draw", block}).out, ">before<"));
    EXPECT_TRUE(has(dartwright({"draw", block, block}).out, ">before<"));
    EXPECT_TRUE(has(dartwright({"draw", block}).out, "12.25 cm"));
    EXPECT_FALSE(has(dartwright({"draw", block, "--no-lengths"}).out, "12.25 cm"));
}

TEST(draw_command, refuses_other_endings_and_pictures_too_large) {
    Folder folder;
    const Ended ending = dartwright({"draw", block, "-o", folder / "a.gif"});
    EXPECT_EQ(ending.status, 2);
    EXPECT_TRUE(says_one_line(ending, "ends in .svg, .png or .pdf"));
    const Ended large = dartwright({"draw", block, "-o", folder / "a.png", "--pixels-per-mm", "1e6"});
    EXPECT_EQ(large.status, 4);
    EXPECT_TRUE(says_one_line(large, "ask for fewer"));
    EXPECT_EQ(dartwright({"draw", block, "-o", folder / "a.png", "--pixels-per-mm", "nan"}).status, 2);
    EXPECT_TRUE(folder.names().empty());
}

// What is gathered away is said where the edge's length is: 14 cm of cloth in 10 cm of waist.
TEST(show_command, says_what_is_gathered_and_tucked) {
    const std::string front =
        dartwright({"close", block, "--piece", "front", "--dart", "waist dart", "--as", "gathers"}).out;
    const Ended shown = dartwright({"show", "-"}, front);
    EXPECT_TRUE(has(shown.out,
                    "\n  gathered, eased or tucked\n  waist: gather 14.0 to 10.0 cm between the "
                    "notches\n"))
        << shown.out;
    const Json runs =
        Json::parse(dartwright({"show", "-", "--format", "json"}, front).out)["pieces"][0]["runs"];
    for (const Json& run : runs) {
        ASSERT_EQ(run["fullness"].size(), run["edge"] == "waist" ? 1u : 0u) << run;
        if (run["edge"] != "waist") continue;
        const Json& gathers = run["fullness"][0];
        EXPECT_EQ(gathers["gathered"], true);
        EXPECT_NEAR(gathers["to"].get<double>() - gathers["from"].get<double>(), 100, 0.1);
        EXPECT_NEAR(gathers["flat"].get<double>(), 140, 0.5);
    }
    const std::string tucked =
        dartwright({"close", block, "--piece", "front", "--dart", "waist dart", "--as", "tuck"}).out;
    EXPECT_TRUE(has(dartwright({"show", "-"}, tucked).out, "waist dart: a tuck, stitched 7.8 cm"));
    EXPECT_FALSE(has(dartwright({"show", block}).out, "gathered"));
}

TEST(walk_command, says_what_is_gathered_along_the_seam) {
    Json pattern = Json::parse(text_of_file(block));
    for (Json& item : pattern["pieces"][1]["outline"]["items"])
        if (item.value("edge", "") == "side") item["fullness"] = 1.5;
    const std::string eased = pattern.dump();
    const Ended walked = dartwright({"walk", "-", "--seam", "side"}, eased);
    EXPECT_TRUE(has(walked.out, "  back, side: ease in 1.50 cm along the whole edge\n")) << walked.out;
    const Json json = Json::parse(dartwright({"walk", "-", "--seam", "side", "--format", "json"}, eased).out);
    ASSERT_EQ(json["fullness"].size(), 1u);
    EXPECT_EQ(json["fullness"][0]["piece"], "back");
    EXPECT_EQ(json["fullness"][0]["stretches"][0]["gathered"], false);
    EXPECT_EQ(json_of({"walk", block, "--seam", "side"})["fullness"].size(), 0u);
}

TEST(print_command, asks_whose_left_it_is) {
    Folder folder;
    const auto printed = [&](std::vector<std::string> more) {
        std::vector<std::string> words{"print", block, "-o", folder / "front.pdf", "--overwrite"};
        words.insert(words.end(), more.begin(), more.end());
        return dartwright(words);
    };
    EXPECT_TRUE(has(printed({"--open"}).out, "note: front: left and right are as drawn"));
    for (const std::string worn : {"front", "front=front", "back"}) {
        const Ended ended = printed({"--open", "--worn", worn});
        EXPECT_EQ(ended.status, 0) << ended.err;
        EXPECT_FALSE(has(ended.out, "are as drawn")) << ended.out;
    }
    for (const std::string worn : {"frnt", "front=side", "back=back", "sleeve=front"}) {
        const Ended ended = printed({"--open", "--worn", worn});
        EXPECT_EQ(ended.status, 2) << worn << ended.out;
    }
    EXPECT_EQ(printed({"--worn", "front"}).status, 2);
}

TEST(print_command, is_told_which_side_of_the_cloth_lies_up) {
    Folder folder;
    const std::string file = folder / "front.pdf";
    const auto printed = [&](std::vector<std::string> more) {
        std::vector<std::string> words{"print", block, "--open", "-o", file, "--overwrite"};
        words.insert(words.end(), more.begin(), more.end());
        return dartwright(words);
    };
    const auto pages_of = [&](std::vector<std::string> more) {
        const Ended ended = printed(std::move(more));
        EXPECT_EQ(ended.status, 0) << ended.err;
        return text_of_file(file);
    };
    // With its wrong side up a front is named as a back is.
    const std::string front = pages_of({"--worn", "front"});
    const std::string turned = pages_of({"--worn", "front", "--side-up", "wrong"});
    EXPECT_EQ(pages_of({"--worn", "front", "--side-up", "right"}), front);
    EXPECT_EQ(pages_of({"--worn", "front=front", "--side-up", "front=wrong"}), turned);
    EXPECT_NE(turned, front);
    EXPECT_EQ(turned, pages_of({"--worn", "back"}));
    for (const std::string side : {"up", "front=left", "back=wrong", "sleeve=wrong"})
        EXPECT_EQ(printed({"--worn", "front", "--side-up", side}).status, 2) << side;
    EXPECT_EQ(printed({"--side-up", "wrong"}).status, 2) << "nobody says how it is worn";
    EXPECT_EQ(printed({"--side-up", "front=wrong"}).status, 2);
    EXPECT_EQ(dartwright({"print", block, "--side-up", "wrong", "-o", file, "--overwrite"}).status, 2);
}

TEST(every_command, reads_standard_input) {
    const std::string text = text_of_file(bodice);
    EXPECT_EQ(dartwright({"show", "-", "--format", "json"}, text).out,
              dartwright({"show", bodice, "--format", "json"}).out);
    EXPECT_EQ(dartwright({"walk", "-", "--seam", "side"}, text).out,
              dartwright({"walk", bodice, "--seam", "side"}).out);
    EXPECT_EQ(dartwright({"measure", "-", "--line", "waist"}, text).out,
              dartwright({"measure", bodice, "--line", "waist"}).out);
    EXPECT_EQ(dartwright({"draw", "-"}, text).out, dartwright({"draw", bodice}).out);
}

}  // namespace
}  // namespace dartwright
