#include "dartwright/pattern/pattern.hpp"

#include <gtest/gtest.h>

#include "pattern/sample_outlines.hpp"

namespace dartwright {
namespace {

Pattern bodice() {
    Pattern pattern;
    pattern.pieces.resize(2);
    pattern.pieces[0].name = "front";
    pattern.pieces[0].outline = sample::front();
    pattern.pieces[1].name = "back";
    pattern.pieces[1].outline = sample::square({"hem", "side", "top", "centre"});
    pattern.seams.resize(1);
    pattern.seams[0].name = "side";
    return pattern;
}

template <class Look>
std::string refusal(const Look& look) {
    try {
        look();
    } catch (const UnknownName& unknown) {
        return unknown.what();
    }
    return "found";
}

TEST(lookups, find_what_is_there) {
    const Pattern pattern = bodice();
    EXPECT_EQ(piece_index(pattern, "back"), 1u);
    EXPECT_EQ(&piece_named(pattern, "front"), &pattern.pieces[0]);
    EXPECT_EQ(dart_named(pattern.pieces[0], "bust dart"), 5u);
    EXPECT_EQ(&seam_named(pattern, "side"), &pattern.seams[0]);
    const auto runs = runs_of(pattern.pieces[1].outline);
    EXPECT_EQ(&run_named(runs, "top", "back"), &runs[2]);
}

TEST(unknown_names, are_answered_with_those_that_exist) {
    const Pattern pattern = bodice();
    EXPECT_EQ(refusal([&] { piece_named(pattern, "sleeve"); }),
              R"(no piece "sleeve" in the pattern; there is "front", "back")");
    EXPECT_EQ(refusal([&] { dart_named(pattern.pieces[0], "third"); }),
              R"(no dart "third" in piece "front"; there is "first", "second", "bust dart")");
    EXPECT_EQ(refusal([&] { run_named(runs_of(pattern.pieces[1].outline), "waist", "back"); }),
              R"(no edge "waist" in piece "back"; there is "hem", "side", "top", "centre")");
    EXPECT_EQ(refusal([&] { seam_named(pattern, "shoulder"); }),
              R"(no seam "shoulder" in the pattern; there is "side")");
}

TEST(unknown_names, say_so_where_there_are_none) {
    EXPECT_EQ(refusal([] { piece_named(Pattern{}, "front"); }),
              R"(no piece "front" in the pattern; there are none)");
    EXPECT_EQ(refusal([] { dart_named(bodice().pieces[1], "waist dart"); }),
              R"(no dart "waist dart" in piece "back"; there are none)");
    EXPECT_EQ(refusal([] { run_named({}, "side", "front"); }),
              R"(no edge "side" in piece "front"; there are none)");
}

TEST(unknown_names, carry_their_data) {
    try {
        seam_named(bodice(), "cap");
        FAIL() << "a seam that is not there was found";
    } catch (const UnknownName& unknown) {
        EXPECT_EQ(unknown.kind, "seam");
        EXPECT_EQ(unknown.name, "cap");
        EXPECT_EQ(unknown.known, (std::vector<std::string>{"side"}));
    }
}

TEST(tolerances_of, are_the_defaults_with_the_patterns_own_put_in) {
    Pattern pattern;
    EXPECT_EQ(tolerances_of(pattern), Tolerances{});
    for (const auto& each : tolerance_names()) {
        pattern.tolerances = {{each.name, 7.5}};
        Tolerances expected;
        expected.*each.value = 7.5;
        EXPECT_EQ(tolerances_of(pattern), expected) << each.name;
    }
    pattern.tolerances = {{"no such tolerance", 7.5}};
    EXPECT_EQ(tolerances_of(pattern), Tolerances{});
}

TEST(unit, is_so_many_millimetres) {
    EXPECT_EQ(mm_in(Unit::mm), 1);
    EXPECT_EQ(mm_in(Unit::cm), 10);
    EXPECT_EQ(mm_in(Unit::inch), 25.4);
}

}  // namespace
}  // namespace dartwright
