// What a run that failed says to another program.

#include <gtest/gtest.h>

#include <algorithm>

#include <nlohmann/json.hpp>

#include "program.hpp"

namespace dartwright {
namespace {

using nlohmann::json;

json error_of(std::vector<std::string> words) {
    words.insert(words.end(), {"--format", "json"});
    const Ended ended = dartwright(words);
    EXPECT_EQ(ended.out, "");
    EXPECT_EQ(std::count(ended.err.begin(), ended.err.end(), '\n'), 1);
    EXPECT_TRUE(std::all_of(ended.err.begin(), ended.err.end(), [](unsigned char c) { return c < 0x7f; }));
    const json error = json::parse(ended.err, nullptr, false);
    EXPECT_TRUE(error.is_object()) << ended.err;
    EXPECT_EQ(error.value("dartwright_error", 0), 1);
    EXPECT_EQ(error.value("status", -1), ended.status);
    return error;
}

std::vector<std::string> pivot(const std::string& piece, const std::string& dart, const std::string& to) {
    return {"pivot", bodice, "--piece", piece, "--dart", dart, "--to", to};
}

TEST(error_in_json, says_what_was_asked_for_and_what_there_is) {
    const json error = error_of(pivot("front", "waist", "side@50%"));
    EXPECT_EQ(error["kind"], "unknown name");
    EXPECT_EQ(error["command"], "pivot");
    EXPECT_EQ(error["file"], bodice);
    EXPECT_EQ(error["what"], "dart");
    EXPECT_EQ(error["name"], "waist");
    EXPECT_EQ(error["known"], json({"waist dart", "side dart"}));
}

TEST(error_in_json, says_why_it_is_not_possible_and_what_would_be) {
    const json near = error_of(pivot("front", "waist dart", "side@0.3/waist"));
    EXPECT_EQ(near["kind"], "impossible");
    EXPECT_EQ(near["reason"], "the place is 0.3 mm from the corner of \"side\"");
    EXPECT_EQ(near["remedy"], "take the corner itself, side@0/waist, or a place at least 1 mm from it");
    EXPECT_EQ(near["message"], near["reason"].get<std::string>() + "; " + near["remedy"].get<std::string>());
    const json beyond = error_of(pivot("front", "waist dart", "side@2000/waist"));
    EXPECT_EQ(beyond["kind"], "beyond the run");
    EXPECT_EQ(beyond["edge"], "side");
    EXPECT_NEAR(beyond["length"].get<double>(), 186.7, 0.1);
}

TEST(error_in_json, says_all_problems_of_a_file) {
    Folder folder;
    const std::string bad = folder.add("bad.json", R"({"dartwright": 1, "unit": "mm", "pieces": 3})");
    const json error = error_of({"walk", bad, "--seam", "side"});
    EXPECT_EQ(error["kind"], "not valid");
    EXPECT_EQ(error["status"], 3);
    EXPECT_EQ(error["file"], bad);
    ASSERT_EQ(error["problems"].size(), 2u);
    EXPECT_EQ(error["problems"][1]["at"], "/pieces");
}

TEST(error_in_json, is_told_of_wrong_use_and_missing_files_too) {
    EXPECT_EQ(error_of({"walk", bodice})["kind"], "wrong use");
    EXPECT_EQ(error_of({"chek"})["command"], "");
    EXPECT_EQ(error_of({"walk", "/nowhere.json", "--seam", "side"})["kind"], "unreadable");
}

TEST(error_in_json, has_names_of_any_letters_whole) {
    const std::string name = "t\xc3\xa4ille \xe2\x80\xae x";
    const json error = error_of(pivot("front", name, "side@50%"));
    EXPECT_EQ(error["name"], name);
}

}  // namespace
}  // namespace dartwright
