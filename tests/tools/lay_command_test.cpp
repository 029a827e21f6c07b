// lay: how much cloth, as text, JSON and a picture.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tools/program.hpp"

namespace dartwright {
namespace {

using Json = nlohmann::json;

const std::string bodice = source_folder + "/fixtures/workshop/chorus-bodice.json";

TEST(lay_command, says_how_much_cloth_and_where_each_piece_lies) {
    const Ended ended = dartwright({"lay", bodice, "--width", "140cm", "--format", "json"});
    ASSERT_EQ(ended.status, 0) << ended.err;
    const Json report = Json::parse(ended.out);
    EXPECT_EQ(report["dartwright_lay"], 1);
    EXPECT_EQ(report["width"], 1400);
    EXPECT_EQ(report["folded"], true);
    ASSERT_EQ(report["pieces"].size(), 2u);
    EXPECT_EQ(report["pieces"][0]["how"], "on the fold");
    EXPECT_EQ(report["pieces"][1]["how"], "through both plies");
    EXPECT_GE(report["length"].get<double>(), report["shortest_possible"].get<double>() - 1e-6);
    double highest = 0;
    for (const Json& piece : report["pieces"])
        for (const Json& point : piece["polygon"]) highest = std::max(highest, point[1].get<double>());
    EXPECT_NEAR(highest, report["length"].get<double>(), 1e-6);
}

TEST(lay_command, lays_pieces_on_the_fold_whole_on_opened_cloth) {
    const Ended ended = dartwright({"lay", bodice, "--width", "120cm", "--opened", "--format", "json"});
    ASSERT_EQ(ended.status, 0) << ended.err;
    const Json report = Json::parse(ended.out);
    ASSERT_EQ(report["pieces"].size(), 3u) << "the whole front, and the back twice";
    EXPECT_NE(report["pieces"][1]["face"], report["pieces"][2]["face"]);
}

TEST(lay_command, names_edges_without_an_allowance) {
    const Ended ended =
        dartwright({"lay", source_folder + "/fixtures/faults/cut-missing.true.json", "--width", "150cm"});
    EXPECT_EQ(ended.status, 0);
    EXPECT_NE(ended.out.find("note: skirt front: no allowance is decided for "), std::string::npos)
        << ended.out;
}

TEST(lay_command, refuses_in_one_line) {
    const Ended narrow = dartwright({"lay", bodice, "--width", "30cm"});
    EXPECT_EQ(narrow.status, 4);
    EXPECT_TRUE(says_one_line(narrow, "lay it on cloth at least"));
    const Ended negative = dartwright({"lay", bodice, "--width", "-30cm"});
    EXPECT_EQ(negative.status, 2);
    EXPECT_TRUE(says_one_line(negative, "expected more than 0"));
    EXPECT_TRUE(says_one_line(dartwright({"lay", bodice}), "--width is missing"));
    EXPECT_TRUE(says_one_line(dartwright({"lay", bodice, "--width", "100cm", "-o", "lay.doc"}), ".svg"));
}

TEST(lay_command, draws_each_piece_as_a_layer) {
    const Ended ended = dartwright({"lay", bodice, "--width", "140cm", "-o", "-"});
    ASSERT_EQ(ended.status, 0);
    for (const char* layer : {"<title>cloth</title>", "<title>front</title>", "<title>back</title>"})
        EXPECT_NE(ended.out.find(layer), std::string::npos) << layer;
    EXPECT_NE(ended.err.find("of cloth"), std::string::npos) << "the report goes to standard error";
}

}  // namespace
}  // namespace dartwright
