#include "dartwright/files/piece_reader.hpp"

#include <gtest/gtest.h>

#include "edited_pattern.hpp"

namespace dartwright {
namespace {

const char* const front_edges = "\"hem\", \"side\", \"armhole\", \"shoulder\", \"neck\" or \"centre front\"";

TEST(PieceReader, ReadsEveryPart) {
    const Pattern pattern = read_pattern(edited::tunic, "tunic");
    const Piece& front = pattern.pieces[0];
    EXPECT_EQ(front.name, "front");
    EXPECT_EQ(front.cut, (Cut{1, "centre front", false, {{"neck", CornerIs::free}}, "shoulder"}));
    EXPECT_EQ(front.grain, (Grain{{30, 80}, {30, 300}, "centre front"}));
    EXPECT_EQ(
        front.double_darts,
        (std::vector<DoubleDart>{{"waist dart", {150, 50}, {150, 250}, {{{140, 150}, {160, 150}}}, "side"}}));
    EXPECT_EQ(front.notches, (std::vector<Notch>{{"side", "armhole", 75, NotchKind::single}}));
    ASSERT_EQ(front.allowance.size(), 2U);
    EXPECT_EQ(front.allowance[0].first, "side");
    EXPECT_EQ(std::get<double>(front.allowance[0].second), 15.0);
    EXPECT_EQ(std::get<1>(front.allowance[1].second), (std::vector<AllowanceStretch>{{"side", 0, 100, 20}}));
    ASSERT_EQ(front.marks.size(), 2U);
    EXPECT_EQ(front.marks[0], (Mark{LineMark{{{0, 195}, {220, 195}}}, "bust line"}));
    EXPECT_EQ(front.marks[1], (Mark{DrillMark{{96, 180}}, "bust point"}));
    EXPECT_EQ(pattern.pieces[1].cut, (Cut{2, "", true, {}}));
    EXPECT_EQ(pattern.pieces[2].cut, std::nullopt);
    EXPECT_EQ(pattern.pieces[2].grain, std::nullopt);
}

TEST(PieceReader, WhatIsLeftOutHasItsDefault) {
    EXPECT_EQ(read_pattern(edited::with("/pieces/0/notches/0/kind", ""), "f").pieces[0].notches[0].kind,
              NotchKind::single);
    EXPECT_EQ(read_pattern(edited::with("/pieces/0/cut/quantity", ""), "f").pieces[0].cut->quantity, 1);
}

TEST(PieceReader, EachFaultIsOneProblem) {
    const edited::Edit edits[] = {
        {"/pieces/0/colour",
         "1",
         {"/pieces/0/colour", "the unknown key \"colour\"",
          "a key of a piece: \"name\", \"worn\", \"side_up\", \"cut\", \"grain\", \"outline\", "
          "\"double_darts\", \"notches\", \"allowance\" or \"marks\""}},
        {"/pieces/0/notch", "[]", {"/pieces/0/notch", "the unknown key \"notch\"", "\"notches\""}},
        {"/pieces/0/cut", "2", {"/pieces/0/cut", "2", "a cut as an object in braces"}},
        {"/pieces/0/cut/fold",
         "\"centre\"",
         {"/pieces/0/cut/fold", "no such edge as \"centre\"", front_edges}},
        {"/pieces/0/cut/ends",
         "{\"side\": \"free\"}",
         {"/pieces/0/cut/ends/side", "\"side\", which is not next to \"centre front\"",
          "\"neck\" or \"hem\""}},
        {"/pieces/0/cut/ends",
         "{\"neck\": \"open\"}",
         {"/pieces/0/cut/ends/neck", "\"open\"", "\"free\" or \"smooth\""}},
        {"/pieces/0/cut/ends",
         "[]",
         {"/pieces/0/cut/ends", "an empty list", "an object of ends, such as {\"neck\": \"free\"}"}},
        {"/pieces/1/cut/ends",
         "{}",
         {"/pieces/1/cut/ends", "\"ends\" without \"fold\"", "the fold whose ends they are"}},
        {"/pieces/0/grain/along",
         "\"centre back\"",
         {"/pieces/0/grain/along", "no such edge as \"centre back\"", front_edges}},
        {"/pieces/0/grain/to",
         "[3, 8]",
         {"/pieces/0/grain/to", "the same point as \"from\"", "another point"}},
        {"/pieces/0/grain/from",
         "",
         {"/pieces/0/grain", "no key \"from\"", "the point [x, y] where the grain line begins"}},
        {"/pieces/0/double_darts",
         "{}",
         {"/pieces/0/double_darts", "an empty object", "a list of double darts"}},
        {"/pieces/0/double_darts/0/press",
         "\"waist\"",
         {"/pieces/0/double_darts/0/press", "no such edge as \"waist\"", front_edges}},
        {"/pieces/0/double_darts/0/widest",
         "",
         {"/pieces/0/double_darts/0", "no key \"widest\"", "two points [[x, y], [x, y]] where it is widest"}},
        {"/pieces/0/double_darts/0/dart",
         "\"hem dart\"",
         {"/pieces/0/double_darts/0/dart", "the dart \"hem dart\" again", "a name of its own"}},
        {"/pieces/0/notches/0",
         "[]",
         {"/pieces/0/notches/0", "an empty list", "a notch as an object in braces"}},
        {"/pieces/0/notches/0/edge",
         "\"sid\"",
         {"/pieces/0/notches/0/edge", "no such edge as \"sid\"", front_edges}},
        {"/pieces/0/notches/0/from",
         "\"neck\"",
         {"/pieces/0/notches/0/from", "\"neck\", which is not next to \"side\"", "\"hem\" or \"armhole\""}},
        {"/pieces/0/notches/0/from",
         "",
         {"/pieces/0/notches/0", "no key \"from\"", "the neighbouring edge it is measured from"}},
        {"/pieces/0/notches/0/kind",
         "\"quadruple\"",
         {"/pieces/0/notches/0/kind", "\"quadruple\"", "\"single\", \"double\" or \"triple\""}},
        {"/pieces/0/allowance", "1.5", {"/pieces/0/allowance", "1.5", "an object of widths by edge"}},
        {"/pieces/0/allowance/waist",
         "1",
         {"/pieces/0/allowance/waist", "no such edge as \"waist\"", front_edges}},
        {"/pieces/0/allowance/side",
         "-1",
         {"/pieces/0/allowance/side", "-1", "a length that is not negative"}},
        {"/pieces/0/allowance/side",
         "\"1\"",
         {"/pieces/0/allowance/side", "\"1\"", "a width as a number, or a list of stretches"}},
        {"/pieces/0/allowance/side",
         "[]",
         {"/pieces/0/allowance/side", "an empty list", "a width, or one stretch or more"}},
        {"/pieces/0/allowance/hem/0/from",
         "\"neck\"",
         {"/pieces/0/allowance/hem/0/from", "\"neck\", which is not next to \"hem\"",
          "\"centre front\" or \"side\""}},
        {"/pieces/0/allowance/hem/0/to",
         "0",
         {"/pieces/0/allowance/hem/0/to", "0", "a distance beyond \"at\""}},
        {"/pieces/0/allowance/hem/0/width",
         "",
         {"/pieces/0/allowance/hem/0", "no key \"width\"", "the width of the allowance"}},
        {"/pieces/0/marks/0/drill",
         "[1, 2]",
         {"/pieces/0/marks/0", "both \"line\" and \"drill\"", "one of them"}},
        {"/pieces/0/marks/0/line",
         "",
         {"/pieces/0/marks/0", "neither \"line\" nor \"drill\"", "one of them"}},
        {"/pieces/0/marks/0/name", "", {"/pieces/0/marks/0", "no key \"name\"", "the mark's name"}},
    };
    for (const auto& edit : edits) edited::expect_problem(edit);
}

TEST(PieceReader, DartsOfOnePieceHaveNamesOfTheirOwn) {
    auto whole = edited::tunic_json();
    whole["pieces"][0]["double_darts"].push_back(whole["pieces"][0]["double_darts"][0]);
    const auto problems = edited::problems_of(whole.dump());
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].pointer, "/pieces/0/double_darts/1/dart");
    // Darts of two pieces may share a name.
    EXPECT_TRUE(
        edited::problems_of(edited::with("/pieces/1/outline/items/1",
                                         R"({"edge": "side", "to": [22, 20], "curve": [[21, 5], [21, 15]]})"))
            .empty());
}

TEST(PieceReader, KeysOfTheWearerAndOfFoldsAreRefusedAlone) {
    const std::vector<edited::Edit> edits{
        {"/pieces/0/worn", R"("left")", {"/pieces/0/worn", "\"left\"", "\"front\" or \"back\""}},
        {"/pieces/0/worn",
         "",
         {"/pieces/0/side_up", "\"side_up\" without \"worn\"",
          "where the piece is worn: \"front\" or \"back\""}},
        {"/pieces/0/side_up", "1", {"/pieces/0/side_up", "1", "\"right\" or \"wrong\""}},
        {"/pieces/0/cut/second_fold",
         R"("centre front")",
         {"/pieces/0/cut/second_fold", "\"centre front\", which is the fold already", "another edge"}},
        {"/pieces/1/cut/second_fold",
         R"("side")",
         {"/pieces/1/cut/second_fold", "\"second_fold\" without \"fold\"",
          "\"fold\" where there is one fold"}},
        {"/pieces/3/notches/0/begins", "3", {"/pieces/3/notches/0/begins", "3", "true or false"}},
    };
    for (const auto& edit : edits) edited::expect_problem(edit);
    // Ends of either fold may be named.
    EXPECT_TRUE(edited::problems_of(edited::with("/pieces/0/cut/ends/armhole", R"("free")")).empty());
}

TEST(PieceReader, OnlyAnEdgeThatIsTheWholeOutlineBeginsAtANotch) {
    edited::expect_problem({"/pieces/0/notches/0/begins",
                            "true",
                            {"/pieces/0/notches/0/begins", "\"begins\" on \"side\", which begins at a corner",
                             "it on an edge that is the whole outline of its piece"}});
    // Two edges are enough for a corner.
    edited::expect_problem({"/pieces/2/notches",
                            R"([{"edge": "neck", "from": "start", "at": 1, "begins": true}])",
                            {"/pieces/2/notches/0/begins", "\"begins\" on \"neck\", which begins at a corner",
                             "it on an edge that is the whole outline of its piece"}});
    edited::expect_problem(
        {"/pieces/3/notches/1",
         R"({"edge": "crown", "from": "end", "at": 1, "begins": true})",
         {"/pieces/3/notches/1/begins", "\"begins\" on \"crown\" again", "one notch at which it begins"}});
    for (const char* said : {R"({"edge": "crown", "from": "end", "at": 1})",
                             R"({"edge": "crown", "from": "end", "at": 1, "begins": false})"})
        EXPECT_TRUE(edited::problems_of(edited::with("/pieces/3/notches/1", said)).empty()) << said;
    EXPECT_TRUE(edited::problems_of(edited::with("/pieces/0/notches/0/begins", "false")).empty());
}

// The neighbours of a piece's run share a name: only the words tell its ends apart.
TEST(PieceReader, AnEdgeAtBothEndsNamesNeither) {
    edited::expect_problem({"/pieces/2/notches",
                            R"([{"edge": "neck", "from": "brim", "at": 1}])",
                            {"/pieces/2/notches/0/from", "\"brim\", which is at both ends of \"neck\"",
                             "\"start\" or \"end\""}});
    edited::expect_problem(
        {"/pieces/2/notches",
         R"([{"edge": "neck", "from": "collar", "at": 1}])",
         {"/pieces/2/notches/0/from", "\"collar\", which is not next to \"neck\"", "\"start\" or \"end\""}});
    for (const char* word : {"start", "end"}) {
        const std::string notch = R"([{"edge": "neck", "at": 1, "from": ")" + std::string(word) + "\"}]";
        EXPECT_TRUE(edited::problems_of(edited::with("/pieces/2/notches", notch)).empty()) << word;
    }
}

}  // namespace
}  // namespace dartwright
