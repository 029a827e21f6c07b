// Lengths of a request that have no unit of their own, in another unit than mm.

#include "dartwright/darts/recording/unit_of_request.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/pattern/place.hpp"
#include "dartwright/pattern/run.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright::testing {
namespace {

Pattern with_edges(const std::vector<std::string>& edges) {
    Pattern pattern;
    pattern.pieces.emplace_back();
    Piece& piece = pattern.pieces.back();
    piece.name = "front";
    for (std::size_t i = 0; i < edges.size(); ++i)
        piece.outline.items.push_back(
            {EdgeItem{edges[i], {}, 0}, {static_cast<double>(100 * i), i % 2 ? 100.0 : 0.0}});
    return pattern;
}

std::string in_cm(const std::string& operation, const std::string& key, const std::string& words) {
    const Pattern pattern = with_edges({"side", "side@5", "hem"});
    const Made made{operation, {{"piece", "front"}, {key, words}}};
    const Made out = request_with_unit(made, Unit::cm, pattern);
    EXPECT_EQ(out.request[0], made.request[0]);
    return out.request[1].second;
}

TEST(unit_of_request, is_written_to_a_place_without_one) {
    EXPECT_EQ(in_cm("pivot", "to", "side@5/hem"), "side@5cm/hem");
    EXPECT_EQ(in_cm("pivot", "to", "side@2 3/8/hem"), "side@2 3/8cm/hem");
    EXPECT_EQ(in_cm("pivot", "to", "side@5@5/hem"), "side@5@5cm/hem");
    EXPECT_EQ(in_cm("cluster", "to", "side@.5/hem"), "side@.5cm/hem");
    EXPECT_EQ(in_cm("split", "to 2", "side@5/hem=50%"), "side@5cm/hem=50%");
    EXPECT_EQ(in_cm("split", "to", "side@5/hem=1/3"), "side@5cm/hem=1/3");
}

TEST(unit_of_request, is_left_where_it_is_said) {
    for (const char* words : {"side@5mm/hem", "side@2 3/8in/hem", "side@5 cm/hem", "side@50%", "side@30%/hem",
                              "side", "nowhere@5/hem", "side@/hem", "side@five/hem", ""})
        EXPECT_EQ(in_cm("pivot", "to", words), words);
}

TEST(unit_of_request, is_written_to_lengths_and_points_and_to_nothing_else) {
    for (const char* key :
         {"intake", "back_off", "apart", "span", "round", "notch", "stitched", "tolerance legs"})
        EXPECT_EQ(in_cm("repoint", key, "2.5"), "2.5cm") << key;
    for (const char* key : {"point", "pivot", "from"}) {
        EXPECT_EQ(in_cm("repoint", key, "39.1,-17"), "39.1cm,-17cm") << key;
        EXPECT_EQ(in_cm("repoint", key, "391mm, 17"), "391mm,17cm") << key;
    }
    for (const char* key : {"angle", "share", "count", "name", "dart", "hold", "tolerance kink"})
        EXPECT_EQ(in_cm("pivot", key, "5"), "5") << key;
}

TEST(unit_of_request, of_millimetres_says_what_was_meant_without) {
    const Made made{"pivot", {{"piece", "front"}, {"to", "side@5/hem"}}};
    const Made out = request_with_unit(made, Unit::mm, with_edges({"side", "hem"}));
    EXPECT_EQ(out.request[1].second, "side@5mm/hem");
}

RC_GTEST_PROP(UnitOfRequest, IsThatManyMillimetresOfTheBareNumber, ()) {
    const Unit unit = *rc::gen::element(Unit::mm, Unit::cm, Unit::inch);
    const int whole = *rc::gen::inRange(-3000, 3000);
    const std::string bare = std::to_string(whole);
    RC_ASSERT(parse_length(length_with_unit(bare, unit)) == parse_length(bare) * mm_in(unit));
    RC_ASSERT(parse_length(length_with_unit(bare + "in", unit)) == parse_length(bare + "in"));
}

}  // namespace
}  // namespace dartwright::testing
