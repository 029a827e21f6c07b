// Edges drawn smooth, by example.

#include "dartwright/darts/true_edge.hpp"

#include "darts/plain_front.hpp"
#include "dartwright/checks/check.hpp"
#include "dartwright/darts/pivot.hpp"

namespace dartwright {
namespace {

// The plain front with the waist bent down at two places.
Pattern bent() {
    Pattern pattern = plain();
    Outline& outline = pattern.pieces[0].outline;
    outline.items.erase(outline.items.begin() + 1, outline.items.begin() + 3);
    outline.items[0].to = {60, -3};
    outline.items.insert(outline.items.begin() + 1, {EdgeItem{"waist", StraightShape{}, 0}, {140, -3}});
    outline.items.insert(outline.items.begin() + 2, {EdgeItem{"waist", StraightShape{}, 0}, {200, 0}});
    return pattern;
}

std::size_t kinks(const Pattern& pattern) {
    const auto findings = check(pattern).findings;
    return static_cast<std::size_t>(std::count_if(
        findings.begin(), findings.end(), [](const Finding& each) { return each.check == "outline-kink"; }));
}

TEST(TrueEdge, DrawsEveryCornerSmoothAndSaysWhereItWas) {
    EXPECT_EQ(kinks(bent()), 2u);
    const TrueEdgeResult trued = true_edge(bent(), {"front", "waist", 30});
    EXPECT_EQ(kinks(trued.pattern), 0u);
    ASSERT_EQ(trued.account.corners.size(), 2u);
    EXPECT_EQ(trued.account.corners[0].at, (Point{60, -3}));
    EXPECT_NEAR(trued.account.corners[0].corner_deg, degrees(std::atan2(3, 60)), 1e-9);
    // Nothing changes beyond the span.
    const Outline& outline = trued.pattern.pieces[0].outline;
    EXPECT_EQ(outline.start, bent().pieces[0].outline.start);
    for (const RunChange& run : trued.account.runs) {
        if (run.edge == "waist") continue;
        EXPECT_EQ(run.before_mm, run.after_mm) << run.edge;
    }
}

TEST(TrueEdge, GoesHalfWayToTheNextCornerAtMost) {
    EXPECT_EQ(kinks(true_edge(bent(), {"front", "waist", 500}).pattern), 0u);
}

TEST(TrueEdge, LeavesAnEdgeWithoutCornersAlone) {
    const TrueEdgeResult trued = true_edge(plain(), {"front", "side", 40});
    EXPECT_TRUE(trued.account.corners.empty());
    EXPECT_EQ(trued.pattern.pieces[0], plain().pieces[0]);
    ASSERT_EQ(trued.account.notes.size(), 1u);
}

// The bust dart of this block closes about its pivot by less than it did as sewn, which leaves a corner
// of 3.7 degrees in the armhole.
TEST(TrueEdge, MendsTheCornerThatAMovedDartLeft) {
    const std::string file = DARTWRIGHT_SOURCE_DIR "/fixtures/blocks/three-measure.json";
    PivotRequest request;
    request.piece = "front";
    request.dart = "bust dart";
    request.to = "side@80/armhole";
    const Pattern moved = pivot(read_pattern_file(file), request).pattern;
    EXPECT_EQ(kinks(moved), 1u);
    const TrueEdgeResult trued = true_edge(moved, {"front", "armhole", 40});
    EXPECT_EQ(kinks(trued.pattern), 0u);
    for (const RunChange& run : trued.account.runs)
        EXPECT_LE(std::abs(run.after_mm - run.before_mm), 1) << run.edge;
}

TEST(TrueEdge, RefusesWrongWords) {
    EXPECT_THROW(true_edge(plain(), {"front", "waist", 0}), BadWords);
    EXPECT_THROW(true_edge(plain(), {"front", "hem", 40}), UnknownName);
}

}  // namespace
}  // namespace dartwright
