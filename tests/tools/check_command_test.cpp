// check, as a process.

#include "tools/program.hpp"

namespace dartwright {
namespace {

const std::string fault = source_folder + "/fixtures/faults/dart-legs.json";

Json json_of(const Ended& ended) {
    return Json::parse(ended.out);
}

std::vector<std::string> keys_of(const Json& object) {
    std::vector<std::string> keys;
    for (const auto& [key, value] : object.items()) keys.push_back(key);
    return keys;  // in order of the alphabet
}

TEST(check_command, says_true_with_a_line_a_seam_and_a_dart) {
    const Ended ended = dartwright({"check", bodice});
    EXPECT_EQ(ended.status, 0);
    EXPECT_EQ(ended.err, "");
    for (const char* words :
         {"chorus bodice\n",
          "\n  side         front             18.67  back        18.67   0.00        0.00  true\n",
          "\n  shoulder     front             11.07  back        11.67  +0.60        0.00  true\n",
          "\n  centre back  back centre back  40.40  its pair    40.40   0.00        0.00  true\n",
          "\n  front: waist dart      16.69       16.69    3.40  10.4°  true\n",
          "\n\n  True: 3 seams and 3 darts checked, no fault\n"})
        EXPECT_NE(ended.out.find(words), std::string::npos) << words << "\n" << ended.out;
}

TEST(check_command, says_a_fault_with_its_place_and_remedy) {
    const Ended ended = dartwright({"check", fault});
    EXPECT_EQ(ended.status, 1);
    EXPECT_TRUE(says_one_line(ended, "1 fault: piece bodice front, dart waist dart, edge waist"));
    EXPECT_NE(ended.out.find(
                  "1. fault dart-legs: piece bodice front, dart waist dart, edge waist, at 12.00, 0.00 cm"),
              std::string::npos)
        << ended.out;
    EXPECT_NE(ended.out.find("Remedy: "), std::string::npos);
    EXPECT_NE(ended.out.find("Not true: 1 fault"), std::string::npos);
}

TEST(check_command, names_the_sides_of_a_seam_that_cannot_be_walked) {
    std::string text = text_of_file(bodice);
    Json pattern = Json::parse(text);
    pattern["pieces"][0]["outline"]["items"].back()["to"] = {5, 0};
    const Ended ended = dartwright({"check", "-"}, pattern.dump());
    EXPECT_EQ(ended.status, 1);
    EXPECT_NE(
        ended.out.find(
            "\n  side         front                 -  back            -   0.00           -  not true\n"),
        std::string::npos)
        << ended.out;
}

TEST(check_command, has_the_keys_that_scripts_rely_on) {
    const Json json = json_of(dartwright({"check", bodice, fault, "--format", "json"}));
    EXPECT_EQ(keys_of(json), (std::vector<std::string>{"dartwright_check", "files"}));
    EXPECT_EQ(json["dartwright_check"], 1);
    ASSERT_EQ(json["files"].size(), 2u);
    const Json& file = json["files"][0];
    EXPECT_EQ(keys_of(file),
              (std::vector<std::string>{"darts", "file", "findings", "name", "passed", "seams"}));
    EXPECT_EQ(file["file"], bodice);
    EXPECT_EQ(file["name"], "chorus bodice");
    EXPECT_EQ(file["passed"], true);
    EXPECT_EQ(keys_of(file["seams"][0]),
              (std::vector<std::string>{"difference", "ease", "lengths", "name", "passed"}));
    EXPECT_EQ(keys_of(file["darts"][0]),
              (std::vector<std::string>{"angle", "intake", "legs", "name", "passed", "piece"}));
    // The dart's mouth as the file has it: 7.7 to 11.1 cm.
    EXPECT_NEAR(file["darts"][0]["intake"].get<double>(), 34, 1e-9);
    EXPECT_EQ(file["seams"][1]["ease"], 6.0);
}

TEST(check_command, a_finding_has_null_where_a_key_does_not_apply) {
    const Ended ended = dartwright({"check", fault, "--format", "json"});
    EXPECT_EQ(ended.status, 1);
    const Json json = json_of(ended);
    EXPECT_EQ(json["files"][0]["passed"], false);
    const Json& finding = json["files"][0]["findings"][0];
    EXPECT_EQ(keys_of(finding), (std::vector<std::string>{"allowed", "at", "check", "command", "dart",
                                                          "difference", "edge", "expected", "measured",
                                                          "message", "piece", "remedy", "seam", "severity"}));
    EXPECT_EQ(finding["check"], "dart-legs");
    EXPECT_EQ(finding["severity"], "fault");
    EXPECT_EQ(finding["seam"], nullptr);
    EXPECT_EQ(finding["at"], (Json{120.0, 0.0}));
    EXPECT_EQ(finding["allowed"], 0.5);
}

TEST(check_command, goes_on_after_a_file_that_cannot_be_read) {
    Folder folder;
    const std::string broken = folder.add("broken.json", "{\"dartwright\": 1,");
    const Ended ended = dartwright({"check", broken, folder / "missing.json", bodice, "--format", "json"});
    EXPECT_EQ(ended.status, 3);
    const Json files = json_of(ended)["files"];
    ASSERT_EQ(files.size(), 3u);
    EXPECT_TRUE(files[0]["error"].is_string());
    EXPECT_EQ(files[0]["passed"], false);
    EXPECT_NE(files[1]["error"].get<std::string>().find("no such file"), std::string::npos);
    EXPECT_FALSE(files[2].contains("error"));
    EXPECT_EQ(files[2]["passed"], true);
}

TEST(check_command, ends_with_the_highest_status_of_its_files) {
    EXPECT_EQ(dartwright({"check", bodice, fault}).status, 1);
    EXPECT_EQ(dartwright({"check", fault, source_folder + "/none.json", bodice}).status, 3);
    EXPECT_EQ(dartwright({"check", bodice, bodice}).status, 0);
}

TEST(check_command, takes_a_folder_and_passes_over_other_json) {
    Folder folder;
    folder.add("b.json", text_of_file(bodice));
    folder.add("a.json", text_of_file(fault));
    folder.add("other.json", "{\"about\": {\"dartwright\": 1}}");
    folder.add("notes.txt", "nothing");
    folder.add(".hidden.json", "{");
    std::filesystem::create_directory(folder / "more");
    folder.add("more/c.json", text_of_file(bodice));
    const Ended ended = dartwright({"check", folder.path(), "--format", "json"});
    EXPECT_EQ(ended.status, 1);
    const Json files = json_of(ended)["files"];
    std::vector<std::string> names;
    for (const Json& file : files) names.push_back(file["file"]);
    EXPECT_EQ(names,
              (std::vector<std::string>{folder / "a.json", folder / "b.json", folder / "more/c.json"}));
    EXPECT_NE(ended.err.find("passed over .json files that are not patterns: 1"), std::string::npos)
        << ended.err;
}

TEST(check_command, says_of_a_folder_without_patterns_that_it_has_none) {
    Folder folder;
    const Ended ended = dartwright({"check", folder.path()});
    EXPECT_EQ(ended.status, 3);
    EXPECT_TRUE(says_one_line(ended, folder.path()));
}

TEST(check_command, takes_tolerances_for_once) {
    EXPECT_EQ(dartwright({"check", fault, "--tolerance", "legs=0.9"}).status, 0);
    EXPECT_EQ(dartwright({"check", fault, "--tolerance", "legs=0.7mm"}).status, 1);
    EXPECT_EQ(dartwright({"check", fault, "--tolerance", "legs=-1"}).status, 2);
    const Ended unknown = dartwright({"check", fault, "--tolerance", "leg=1"});
    EXPECT_EQ(unknown.status, 2);
    EXPECT_TRUE(says_one_line(unknown, "leg"));
}

TEST(check_command, finds_the_same_in_every_way_of_writing_a_pattern) {
    // The same bodice from standard input.
    const Ended ended = dartwright({"check", "-", "--format", "json"}, text_of_file(bodice));
    EXPECT_EQ(ended.status, 0);
    EXPECT_EQ(json_of(ended)["files"][0]["file"], "-");
    EXPECT_EQ(dartwright({"check", source_folder + "/fixtures/workshop/chorus-bodice-inch.json"}).status, 0);
}

TEST(check_command, has_no_colour_in_a_pipe) {
    EXPECT_EQ(dartwright({"check", fault}).out.find('\x1b'), std::string::npos);
}

}  // namespace
}  // namespace dartwright
