#include "dartwright/files/seam_reader.hpp"

#include <gtest/gtest.h>

#include "edited_pattern.hpp"

namespace dartwright {
namespace {

TEST(SeamReader, ReadsSidesEaseAndEnds) {
    const Pattern pattern = read_pattern(edited::tunic, "tunic");
    ASSERT_EQ(pattern.seams.size(), 3U);
    const Seam& side = pattern.seams[0];
    EXPECT_EQ(side.name, "side");
    EXPECT_EQ(side.joins[0], (SeamSide{{"front", "side", "hem", false}}));
    EXPECT_EQ(side.ease, (Ease{2, 5, false}));
    EXPECT_EQ(side.ends, (std::map<std::string, CornerIs>{{"armhole", CornerIs::free}}));
    EXPECT_EQ(pattern.seams[1].joins[0],
              (SeamSide{{"front", "neck", "centre front", false}, {"back", "hem", "centre back", false}}));
    EXPECT_EQ(pattern.seams[1].ease, std::nullopt);
    EXPECT_TRUE(pattern.seams[2].joins[1][0].mirrored);
    EXPECT_EQ(pattern.seams[2].ease, (Ease{2, 0, true}));
}

TEST(SeamReader, EachFaultIsOneProblem) {
    const char* const pieces = "\"front\", \"back\", \"collar\" or \"cap\"";
    const edited::Edit edits[] = {
        {"/seams/0/join", "[]", {"/seams/0/join", "the unknown key \"join\"", "\"joins\""}},
        {"/seams/0/joins", "", {"/seams/0", "no key \"joins\"", "the two sides that are sewn together"}},
        {"/seams/1/joins", "{}", {"/seams/1/joins", "an empty object", "a list of two sides"}},
        {"/seams/1/joins/1", "", {"/seams/1/joins", "a list of 1", "a list of two sides"}},
        {"/seams/1/joins/0", "[]", {"/seams/1/joins/0", "an empty list", "one part or more"}},
        {"/seams/1/joins/0", "7", {"/seams/1/joins/0", "7", "a side of a seam as an object in braces"}},
        {"/seams/1/joins/0/0/piece",
         "\"fornt\"",
         {"/seams/1/joins/0/0/piece", "no such piece as \"fornt\"", pieces}},
        {"/seams/1/joins/0/0/piece", "", {"/seams/1/joins/0/0", "no key \"piece\"", "the piece's name"}},
        {"/seams/1/joins/1/edge",
         "\"nekc\"",
         {"/seams/1/joins/1/edge", "no such edge as \"nekc\"", "\"neck\" or \"brim\""}},
        {"/seams/1/joins/0/0/from",
         "\"side\"",
         {"/seams/1/joins/0/0/from", "\"side\", which is not next to \"neck\"",
          "\"shoulder\" or \"centre front\""}},
        {"/seams/1/joins/1/from",
         "\"brim\"",
         {"/seams/1/joins/1/from", "\"brim\", which is at both ends of \"neck\"", "\"start\" or \"end\""}},
        {"/seams/1/joins/1/from",
         "",
         {"/seams/1/joins/1", "no key \"from\"", "the neighbouring edge at the end where it begins"}},
        {"/seams/1/joins/1/mirrored", "0", {"/seams/1/joins/1/mirrored", "0", "true or false"}},
        {"/seams/0/ease/piece",
         "\"collar\"",
         {"/seams/0/ease/piece", "no such piece as \"collar\"", "\"front\" or \"back\""}},
        {"/seams/0/ease/side",
         "1",
         {"/seams/0/ease", "both \"piece\" and \"side\"", "one of them, for the side that is longer"}},
        {"/seams/0/ease/piece",
         "",
         {"/seams/0/ease", "neither \"piece\" nor \"side\"", "one of them, for the side that is longer"}},
        {"/seams/0/ease/amount", "-1", {"/seams/0/ease/amount", "-1", "a length that is not negative"}},
        {"/seams/0/ease/amount", "", {"/seams/0/ease", "no key \"amount\"", "how much longer the side is"}},
        {"/seams/2/ease/side", "3", {"/seams/2/ease/side", "3", "a whole number from 1 to 2"}},
        {"/seams/2/ease",
         "{\"piece\": \"back\", \"amount\": 1}",
         {"/seams/2/ease/piece", "\"back\", which is on both sides of the seam",
          "\"side\": 1 or 2 instead of \"piece\""}},
        {"/seams/0/ends",
         "{\"neck\": \"free\"}",
         {"/seams/0/ends/neck", "\"neck\", which is not next to the seam",
          "\"hem\", \"armhole\" or \"centre back\""}},
        {"/seams/0/ends/armhole", "true", {"/seams/0/ends/armhole", "true", "\"free\" or \"smooth\""}},
        {"/seams/1/name", "\"side\"", {"/seams/1/name", "the seam \"side\" again", "a name of its own"}},
        {"/seams/1/name", "", {"/seams/1", "no key \"name\"", "the seam's name"}},
        {"/seams/1", "null", {"/seams/1", "null", "a seam as an object in braces"}},
        {"/seams", "{}", {"/seams", "an empty object", "a list of seams"}},
    };
    for (const auto& edit : edits) edited::expect_problem(edit);
}

// What cannot be known because a piece failed is not reported as a second problem.
TEST(SeamReader, AFaultyPieceDoesNotAccuseItsSeams) {
    EXPECT_EQ(edited::problems_of(edited::with("/pieces/0/name", "3")).size(), 1U);
    EXPECT_EQ(edited::problems_of(edited::with("/pieces/0/outline/items/3/edge", "3")).size(), 1U);
    EXPECT_EQ(edited::problems_of(edited::with("/pieces/0/outline", "3")).size(), 1U);
    EXPECT_EQ(edited::problems_of(edited::with("/seams/0/joins", "")).size(), 1U);
}

TEST(SeamReader, HowThePiecesLieAndWidthsThatDiffer) {
    edited::expect_problem(
        {"/seams/0/laid", R"("open")", {"/seams/0/laid", "\"open\"", "\"flat\" or \"on each other\""}});
    edited::expect_problem(
        {"/seams/0/allowances_differ", "2", {"/seams/0/allowances_differ", "2", "true or false"}});
    const Pattern pattern = read_pattern(edited::tunic, "f");
    EXPECT_EQ(pattern.seams[0].laid, LaidAs::on_each_other);
    EXPECT_TRUE(pattern.seams[0].allowances_differ);
    EXPECT_EQ(pattern.seams[1].laid, LaidAs::flat);
    EXPECT_FALSE(pattern.seams[1].allowances_differ);
}

}  // namespace
}  // namespace dartwright
