#include "dartwright/files/outline_reader.hpp"

#include "dartwright/pattern/outline_direction.hpp"

#include <gtest/gtest.h>

#include "edited_pattern.hpp"

namespace dartwright {
namespace {

using edited::problems_of;
using edited::with;

TEST(OutlineReader, ReadsEveryKindOfItem) {
    const Outline outline = read_pattern(edited::tunic, "tunic").pieces[0].outline;
    ASSERT_EQ(outline.items.size(), 8U);
    EXPECT_EQ(outline.start, (Point{0, 0}));
    const DartItem& dart = *outline.items[1].as_dart();
    EXPECT_EQ(dart.name, "hem dart");
    EXPECT_EQ(dart.point, (Point{96, 150}));
    EXPECT_EQ(dart.pivot, (Point{96, 180}));
    EXPECT_EQ(dart.back_off, 25.0);
    ASSERT_TRUE(dart.legs.has_value());
    EXPECT_EQ((*dart.legs)[1][0], (Point{102, 100}));
    EXPECT_EQ(dart.press, "side");
    EXPECT_EQ(dart.stitched, 60.0);
    EXPECT_EQ(outline.items[1].to, (Point{112, 0}));
    EXPECT_EQ(std::get<SplineShape>(outline.items[2].as_edge()->shape).through,
              (std::vector<Point>{{130, 1}, {160, 4}}));
    EXPECT_EQ(outline.items[3].as_edge()->fullness, 5.0);
    EXPECT_EQ(std::get<CubicShape>(outline.items[4].as_edge()->shape).controls[1], (Point{168, 280}));
    EXPECT_TRUE(std::holds_alternative<StraightShape>(outline.items[7].as_edge()->shape));
}

TEST(OutlineReader, EachFaultOfAnItemIsOneProblem) {
    const std::string items = "/pieces/0/outline/items";
    const edited::Edit edits[] = {
        {"/pieces/0/outline/items/3/to",
         "",
         {items + "/3", "no key \"to\"", "the point [x, y] where the item ends"}},
        {"/pieces/0/outline/items/3/too", "1", {items + "/3/too", "the unknown key \"too\"", "\"to\""}},
        {"/pieces/0/outline/items/3/colour",
         "1",
         {items + "/3/colour", "the unknown key \"colour\"",
          "a key of an edge item: \"edge\", \"to\", \"curve\", \"through\" or \"fullness\""}},
        {"/pieces/0/outline/items/3/curve",
         "[[1, 2]]",
         {items + "/3/curve", "a list of 1", "two points [[x, y], [x, y]]"}},
        {"/pieces/0/outline/items/4/through",
         "[[1, 2]]",
         {items + "/4", "both \"curve\" and \"through\"", "one of them or neither"}},
        {"/pieces/0/outline/items/2/through",
         "[]",
         {items + "/2/through", "an empty list", "one measured point or more"}},
        {"/pieces/0/outline/items/2/through",
         "3",
         {items + "/2/through", "3", "measured points [[x, y], ...]"}},
        {"/pieces/0/outline/items/2/through",
         "[[11.2, 0], [16, 1]]",
         {items + "/2/through/0", "the same place as the point before", "another point"}},
        {"/pieces/0/outline/items/2/through",
         "[[13, 1], [13, 1]]",
         {items + "/2/through/1", "the same place as the point before", "another point"}},
        {"/pieces/0/outline/items/2/through",
         "[[13, 1], [21, 1.00000001]]",
         {items + "/2/through/1", "the same place as the item's end", "another point"}},
        {"/pieces/0/outline/items/3/fullness",
         "-1",
         {items + "/3/fullness", "-1", "a length that is not negative"}},
        {"/pieces/0/outline/items/3/fullness",
         "20",
         {items + "/3/fullness", "20", "less than the length of the item"}},
        {"/pieces/0/outline/items/1/point",
         "",
         {items + "/1", "no key \"point\"", "the dart's point [x, y]"}},
        {"/pieces/0/outline/items/1/to",
         "",
         {items + "/1", "no key \"to\"", "the point [x, y] where the mouth ends"}},
        {"/pieces/0/outline/items/1/back_off",
         "-2",
         {items + "/1/back_off", "-2", "a length that is not negative"}},
        {"/pieces/0/outline/items/1/stitched",
         "0",
         {items + "/1/stitched", "0", "more than 0 and less than the length of the legs"}},
        {"/pieces/0/outline/items/1/stitched",
         "16",
         {items + "/1/stitched", "16", "more than 0 and less than the length of the legs"}},
        {"/pieces/0/outline/items/1/legs",
         "[[[1, 2], [3, 4]]]",
         {items + "/1/legs", "a list of 1", "two curved legs [[c1, c2], [c3, c4]]"}},
        {"/pieces/0/outline/items/1/pivott",
         "[1, 2]",
         {items + "/1/pivott", "the unknown key \"pivott\"", "\"pivot\""}},
        {"/pieces/0/outline/items/1/dart", "\"\"", {items + "/1/dart", "\"\"", "a name that is not empty"}},
        {"/pieces/0/outline/items/1/press",
         "\"sides\"",
         {items + "/1/press", "no such edge as \"sides\"",
          "\"hem\", \"side\", \"armhole\", \"shoulder\", \"neck\" or \"centre front\""}},
        {"/pieces/0/outline/items/1/edge",
         "\"x\"",
         {items + "/1", "both \"edge\" and \"dart\"", "one of them"}},
        {"/pieces/0/outline/items/3",
         "{\"to\": [23, 20]}",
         {items + "/3", "neither \"edge\" nor \"dart\"", "an item with \"edge\" or with \"dart\""}},
        {"/pieces/0/outline/items/3", "7", {items + "/3", "7", "an item with \"edge\" or with \"dart\""}},
        {"/pieces/0/outline/start", "[0]", {"/pieces/0/outline/start", "a list of 1", "a point [x, y]"}},
        {"/pieces/0/outline/start",
         "",
         {"/pieces/0/outline", "no key \"start\"", "the point [x, y] where the outline starts"}},
        {"/pieces/0/outline/items",
         "",
         {"/pieces/0/outline", "no key \"items\"", "the list of edges and darts"}},
        {"/pieces/0/outline/items", "{}", {items, "an empty object", "the list of edges and darts"}},
        {"/pieces/0/outline", "", {"/pieces/0", "no key \"outline\"", "the piece's outline"}},
        {"/pieces/0/outline",
         "[]",
         {"/pieces/0/outline", "an empty list", "an outline as an object in braces"}},
    };
    for (const auto& edit : edits) edited::expect_problem(edit);
}

TEST(OutlineReader, AnOutlineNeedsAnEdge) {
    const char* const file = R"({"dartwright": 1, "name": "n", "unit": "mm", "pieces": [
        {"name": "p", "outline": {"start": [0, 0], "items": [ITEMS]}}]})";
    const auto problems_with = [&](const std::string& items) {
        std::string text = file;
        return problems_of(text.replace(text.find("ITEMS"), 5, items));
    };
    for (const char* items : {"", R"({"dart": "d", "point": [1, 1], "to": [0, 0]})"}) {
        const auto problems = problems_with(items);
        ASSERT_EQ(problems.size(), 1U) << items;
        EXPECT_EQ(problems[0].pointer, "/pieces/0/outline/items");
        EXPECT_EQ(problems[0].found, "no edge");
    }
    EXPECT_TRUE(problems_with(R"({"edge": "rim", "to": [0, 0], "curve": [[9, 0], [0, 9]]})").empty());
}

// An empty outline once made a second problem of each name elsewhere in the piece, with nothing expected.
TEST(OutlineReader, AnOutlineWithoutEdgesIsTheOnlyProblemOfAPiece) {
    const auto problems = problems_of(with("/pieces/0/outline/items", "[]"));
    ASSERT_EQ(problems.size(), 1U) << ::testing::PrintToString(problems);
    EXPECT_EQ(problems[0].found, "no edge");
}

TEST(OutlineReader, WordsForEndsAreNoEdgeNames) {
    for (const char* word : {"\"start\"", "\"end\""}) {
        const auto problems = problems_of(with("/pieces/2/outline/items/1/edge", word));
        ASSERT_EQ(problems.size(), 1U) << word;
        EXPECT_EQ(problems[0].pointer, "/pieces/2/outline/items/1/edge");
        EXPECT_EQ(problems[0].expected, "another name: \"start\" and \"end\" are kept for the ends of a run");
    }
}

TEST(OutlineReader, ANameMayNotComeBackLater) {
    const auto problems = problems_of(with("/pieces/0/outline/items/5/edge", "\"hem\""));
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].pointer, "/pieces/0/outline/items/5/edge");
    EXPECT_EQ(problems[0].found, "\"hem\" again, after \"armhole\"");
    EXPECT_EQ(problems[0].expected,
              "the items of one name next to each other, or a name of its own such as \"left hem\"");
}

TEST(OutlineReader, ARunMayGoOnOverTheStart) {
    // The hem begins in its middle: last item and first are one run, with the side and the back between.
    auto whole = edited::tunic_json();
    whole["pieces"][1]["outline"] = nlohmann::ordered_json::parse(R"({"start": [10, 0], "items": [
        {"edge": "hem", "to": [20, 0]}, {"edge": "side", "to": [22, 20]},
        {"edge": "centre back", "to": [0, 0]}, {"edge": "hem", "to": [10, 0]}]})");
    EXPECT_TRUE(problems_of(whole.dump()).empty());
}

// The same piece drawn the other way round reads as the same shape, anticlockwise.
TEST(OutlineReader, ClockwiseOutlinesAreTurned) {
    Pattern clockwise = read_pattern(edited::tunic, "tunic");
    const Pattern anticlockwise = clockwise;
    for (Piece& piece : clockwise.pieces) piece.outline = reversed(piece.outline);
    const Pattern read = read_pattern(write_pattern(clockwise), "clockwise");
    for (std::size_t i = 0; i < read.pieces.size(); ++i) {
        EXPECT_GT(signed_area(read.pieces[i].outline, DartsDrawn::to_points), 0) << i;
        EXPECT_EQ(read.pieces[i].outline, anticlockwise.pieces[i].outline) << i;
    }
    EXPECT_EQ(read.seams[0], anticlockwise.seams[0]);
    EXPECT_EQ(read.pieces[0].notches, anticlockwise.pieces[0].notches);
}

// The words for ends are by the anticlockwise outline: turning the file's outline swaps them.
TEST(OutlineReader, TurningSwapsTheWordsForEnds) {
    Pattern pattern = read_pattern(edited::tunic, "tunic");
    Piece& collar = pattern.pieces[2];
    collar.cut = Cut{1, "brim", false, {{"start", CornerIs::free}, {"end", CornerIs::smooth}}};
    collar.notches = {{"neck", "start", 10, NotchKind::single}};
    collar.allowance = {{"brim", std::vector<AllowanceStretch>{{"end", 0, 20, 10}}}};
    pattern.seams[1].ends = {{"start", CornerIs::free}};
    collar.outline = reversed(collar.outline);
    const Pattern read = read_pattern(write_pattern(pattern), "turned");
    EXPECT_EQ(read.pieces[2].cut->ends,
              (std::map<std::string, CornerIs>{{"end", CornerIs::free}, {"start", CornerIs::smooth}}));
    EXPECT_EQ(read.pieces[2].notches[0].from, "end");
    EXPECT_EQ(std::get<1>(read.pieces[2].allowance[0].second)[0].from, "start");
    EXPECT_EQ(read.seams[1].joins[1][0].from, "end");
    EXPECT_EQ(read.seams[1].joins[0][0].from, "centre front");
    EXPECT_EQ(read.seams[1].ends, (std::map<std::string, CornerIs>{{"end", CornerIs::free}}));
}

TEST(OutlineReader, OutlinesThatDoNotCloseAreReadInEitherOrientation) {
    const std::string text = with("/pieces/1/outline/items/2/to", "[0, 0.5]");
    Pattern open = read_pattern(text, "open");
    const Outline outline = open.pieces[1].outline;
    EXPECT_EQ(gap_of(outline), 5.0);
    open.pieces[1].outline = reversed(outline);
    EXPECT_EQ(read_pattern(write_pattern(open), "turned").pieces[1].outline, outline);
}

// Only rounding says which way such an outline runs, so it stays as it is, whichever way it is written.
TEST(OutlineReader, OutlinesWithoutAreaAreNotTurned) {
    const Outline line{{0, 0}, {{EdgeItem{"there", {}, 0}, {0.3, 0.1}}, {EdgeItem{"back", {}, 0}, {0, 0}}}};
    EXPECT_FALSE(is_clockwise(line));
    EXPECT_FALSE(is_clockwise(reversed(line)));
    const Outline sliver{{0, 0},
                         {{EdgeItem{"a", {}, 0}, {100, 0}},
                          {EdgeItem{"b", {}, 0}, {100, -0.001}},
                          {EdgeItem{"c", {}, 0}, {0, 0}}}};
    EXPECT_TRUE(is_clockwise(sliver));
    EXPECT_FALSE(is_clockwise(reversed(sliver)));
}

}  // namespace
}  // namespace dartwright
