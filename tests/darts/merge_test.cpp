// Merges of one piece typed by hand: what is left, and what is refused.

#include "dartwright/darts/merge.hpp"

#include "darts/plain_front.hpp"
#include "dartwright/darts/split.hpp"

namespace dartwright {
namespace {

Pattern with_side_dart() {
    return split(plain(), {"front", "waist dart", {{"side@100/waist", 0.5, "", "waist"}}, {}, "", ""})
        .pattern;
}

MergeRequest merging(const std::string& dart, const std::string& with) {
    return {"front", dart, with, "", ""};
}

std::string refusal(const Pattern& pattern, const MergeRequest& request) {
    try {
        merge(pattern, request);
    } catch (const Impossible& refused) {
        EXPECT_FALSE(refused.remedy.empty()) << refused.reason;
        return refused.what();
    }
    return "not refused";
}

TEST(Merge, GivesOneDartOfBothAngles) {
    const MergeResult result = merge(with_side_dart(), merging("side dart", "waist dart"));
    const Piece& piece = result.pattern.pieces[0];
    EXPECT_FALSE(find_dart(piece, "side dart"));
    // Both halves came from the waist dart, whose mouth was 40 mm.
    EXPECT_NEAR(figures(result.pattern, "waist dart").intake, 40, 1e-9);
    EXPECT_NEAR(result.account.new_intake_mm, 40, 1e-9);
    EXPECT_EQ(piece.outline.items[*find_dart(piece, "waist dart")].as_dart()->press, "side");
}

TEST(Merge, TheOtherWayRoundOpensTheOther) {
    const MergeResult result = merge(with_side_dart(), merging("waist dart", "side dart"));
    const Piece& piece = result.pattern.pieces[0];
    const auto runs = runs_of(piece.outline);
    EXPECT_FALSE(find_dart(piece, "waist dart"));
    EXPECT_NEAR(find_run(runs, "waist")->length, 160, 1e-9);
    EXPECT_NEAR(find_run(runs, "side")->length, 300, 1e-9);
    EXPECT_EQ(piece.outline.items[*find_dart(piece, "side dart")].as_dart()->press, "waist");
}

TEST(Merge, MayNameWhatIsLeft) {
    MergeRequest request = merging("side dart", "waist dart");
    request.name = "front dart";
    EXPECT_TRUE(find_dart(merge(with_side_dart(), request).pattern.pieces[0], "front dart"));
    request.name = "side dart";
    EXPECT_TRUE(find_dart(merge(with_side_dart(), request).pattern.pieces[0], "side dart"));
}

TEST(Merge, TakesPivotsAPencilPointApartAsOne) {
    Pattern pattern = with_side_dart();
    Piece& piece = pattern.pieces[0];
    DartItem& side = *piece.outline.items[*find_dart(piece, "side dart")].as_dart();
    side.pivot = *side.pivot + Vector{0.04, 0};
    const MergeResult result = merge(pattern, merging("side dart", "waist dart"));
    ASSERT_FALSE(result.account.notes.empty());
    EXPECT_TRUE(contains(result.account.notes[0], "0.040 mm away and is taken as the same"));
}

TEST(Merge, RefusesDartsOfDifferentPivotsAndSaysHowFarApart) {
    Pattern pattern = with_side_dart();
    Piece& piece = pattern.pieces[0];
    DartItem& side = *piece.outline.items[*find_dart(piece, "side dart")].as_dart();
    const Vector along = unit(side.point - *side.pivot);
    side.pivot = *side.pivot + 5 * along;
    EXPECT_TRUE(contains(refusal(pattern, merging("side dart", "waist dart")), "are 5.0 mm apart"));
}

TEST(Merge, RefusesItselfAndDartsThatDoNotExistInWords) {
    EXPECT_THROW(merge(plain(), merging("waist dart", "waist dart")), BadWords);
    EXPECT_THROW(merge(plain(), merging("waist dart", "side dart")), UnknownName);
    EXPECT_THROW(merge(plain(), merging("side dart", "waist dart")), UnknownName);
}

// With no edge between them their legs lie on each other: an outline that cannot be cut.
TEST(Merge, RefusesDartsWithNoEdgeBetweenThem) {
    const Pattern pattern = read_pattern(R"({
      "dartwright": 1, "name": "two at a corner", "unit": "mm",
      "pieces": [{"name": "front", "cut": {"quantity": 2},
        "grain": {"from": [-60, -40], "to": [-60, 60], "along": "left"},
        "outline": {"start": [-100, -100], "items": [
          {"edge": "hem", "to": [-10, -100]},
          {"dart": "first", "point": [0, 0], "to": [0, -100.4987562112089]},
          {"dart": "second", "point": [0, 0], "to": [10, -100]},
          {"edge": "hem", "to": [100, -100]},
          {"edge": "right", "to": [100, 100]}, {"edge": "top", "to": [-100, 100]},
          {"edge": "left", "to": [-100, -100]}]}}],
      "seams": []})",
                                         "corner.json");
    EXPECT_TRUE(
        contains(refusal(pattern, merging("first", "second")), "dart \"first\" meets dart \"second\""));
}

}  // namespace
}  // namespace dartwright
