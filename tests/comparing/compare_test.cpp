// Comparing patterns by example: what is lost, by how much, in which words.

#include "dartwright/comparing/compare.hpp"
#include "checks/sample_patterns.hpp"
#include "dartwright/darts/close_seam.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/pattern/errors.hpp"

namespace dartwright {
namespace {

using sample::bodice;
using sample::skirt;

std::vector<std::string> kinds_of(const Comparison& comparison) {
    std::vector<std::string> kinds;
    for (const Loss& loss : comparison.losses) kinds.push_back(loss.what);
    return kinds;
}

using Kinds = std::vector<std::string>;

TEST(compare, finds_nothing_lost_in_the_blocks_and_bodices) {
    for (const char* name :
         {"blocks/three-measure.json", "blocks/close-fitting.json", "workshop/chorus-bodice.json",
          "workshop/chorus-bodice-inch.json", "workshop/first-pattern.json"}) {
        const Pattern pattern = sample::fixture(name);
        const Comparison comparison = compare(pattern, pattern);
        EXPECT_TRUE(comparison.is_kept()) << name;
        EXPECT_TRUE(comparison.notes.empty()) << name;
    }
}

// The front is 5 mm wider: hem and waist are 5 mm longer, and the cloth has 5 x 400 mm2 more.
TEST(compare, names_each_edge_and_the_area_of_a_wider_panel) {
    const Comparison comparison = compare(skirt(), skirt({205, 400}));
    EXPECT_EQ(kinds_of(comparison), (Kinds{"run-length", "run-length", "cloth-area", "part-shape"}));
    EXPECT_EQ(comparison.losses[0].edge, "hem");
    EXPECT_NEAR(*comparison.losses[0].amount.difference(), 5, 1e-9);
    EXPECT_EQ(comparison.losses[0].message,
              "front, hem: the sewn length was 200.0 mm before, 205.0 mm after (5.0 mm more).");
    EXPECT_EQ(comparison.losses[1].edge, "waist");
    EXPECT_NEAR(*comparison.losses[2].amount.difference(), 2000, 1e-9);
    EXPECT_EQ(comparison.losses[3].piece, "front");
}

TEST(compare, names_the_seam_whose_side_was_shortened) {
    Pattern before = skirt();
    Pattern after = skirt();
    after.pieces[1].outline.items[1].as_edge()->fullness = 4;
    const Comparison comparison = compare(before, after);
    EXPECT_EQ(kinds_of(comparison), (Kinds{"run-length", "seam-difference"}));
    EXPECT_EQ(comparison.losses[1].seam, "side");
    EXPECT_NEAR(*comparison.losses[1].amount.difference(), -4, 1e-9);
}

TEST(compare, takes_neither_of_two_folds_for_the_first) {
    const Pattern before = sample::fixture("faults/fold-corner.second.true.json");
    Pattern after = before;
    Cut& cut = *after.pieces[0].cut;
    ASSERT_FALSE(cut.second_fold.empty());
    std::swap(cut.fold, cut.second_fold);
    EXPECT_TRUE(compare(before, after).changes.empty());
    cut.second_fold.clear();
    const Comparison comparison = compare(before, after);
    ASSERT_EQ(comparison.changes.size(), 1U);
    EXPECT_EQ(comparison.changes[0].what, "cut");
}

// Wherever it is laid in, on either side of the darts, and taken out again; also of a piece that was turned.
TEST(compare, says_no_shape_is_off_where_only_fullness_differs) {
    const Pattern plain = sample::fixture("workshop/chorus-bodice.json");
    std::size_t cases = 0;
    for (std::size_t piece = 0; piece < plain.pieces.size(); ++piece) {
        for (std::size_t item = 0; item < plain.pieces[piece].outline.items.size(); ++item) {
            Pattern full = plain;
            EdgeItem* edge = full.pieces[piece].outline.items[item].as_edge();
            if (!edge) continue;
            edge->fullness = 0.1 * length_of_item(plain.pieces[piece].outline, item);
            ++cases;
            for (const Comparison& comparison : {compare(plain, full), compare(full, plain)}) {
                const Kinds kinds = kinds_of(comparison);
                EXPECT_EQ(std::count(kinds.begin(), kinds.end(), "part-shape"), 0) << edge->edge;
                EXPECT_EQ(std::count(kinds.begin(), kinds.end(), "run-length"), 1) << edge->edge;
                for (const ComparedPart& part : comparison.pieces[piece].parts)
                    EXPECT_LT(part.strays_mm, 0.5);
            }
        }
    }
    EXPECT_GT(cases, 10u);
}

// The shares are still of the sewn length, and where the darts stand.
TEST(compare, tells_the_parts_of_an_edge_with_fullness_by_its_sewn_length) {
    const Pattern plain = sample::fixture("workshop/chorus-bodice.json");
    Pattern full = plain;
    Outline& outline = full.pieces[0].outline;
    for (std::size_t i = 0; i < outline.items.size(); ++i)
        if (EdgeItem* edge = outline.items[i].as_edge(); edge && edge->edge == "waist") {
            edge->fullness = 10;
            break;
        }
    const auto shares_of = [](const Comparison& comparison) {
        std::vector<double> shares;
        for (const ComparedPart& part : comparison.pieces[0].parts)
            for (const PartStretch& each : part.stretches)
                for (const double share : {each.from_share, each.to_share}) shares.push_back(share);
        return shares;
    };
    const std::vector<double> same = shares_of(compare(full, full));
    const std::vector<double> taken_out = shares_of(compare(full, plain));
    ASSERT_EQ(taken_out.size(), same.size());
    for (std::size_t i = 0; i < same.size(); ++i) EXPECT_NEAR(taken_out[i], same[i], 1e-9);
}

TEST(compare, says_another_back_off_and_other_tolerances_as_changes) {
    const Pattern before = sample::fixture("workshop/chorus-bodice.json");
    Pattern after = before;
    DartItem* dart = nullptr;
    for (OutlineItem& item : after.pieces[0].outline.items)
        if (!dart) dart = item.as_dart();
    ASSERT_TRUE(dart);
    dart->back_off = 2;
    after.tolerances["seam"] = 0.3;
    after.tolerances["corner"] = 2;  // as it is by default
    const Comparison comparison = compare(before, after);
    EXPECT_TRUE(comparison.is_kept());
    ASSERT_EQ(comparison.changes.size(), 2u);
    EXPECT_EQ(comparison.changes[0].what, "dart-back-off");
    EXPECT_EQ(comparison.changes[0].message,
              "front: " + dart->name + " asked for a back-off of none and asks for 2.0 mm.");
    EXPECT_EQ(comparison.changes[1].what, "tolerance");
    EXPECT_EQ(comparison.changes[1].message, "the tolerance seam was 1.0 mm and is 0.30 mm.");
    EXPECT_TRUE(compare(after, after).is_unchanged());
}

TEST(compare, takes_a_seam_told_from_its_other_side_as_the_same) {
    Pattern before = skirt({}, {200, 403});
    Pattern after = before;
    std::swap(after.seams[0].joins[0], after.seams[0].joins[1]);
    EXPECT_TRUE(compare(before, after).is_kept());
}

TEST(compare, names_what_is_missing) {
    Pattern after = skirt();
    after.pieces.erase(after.pieces.begin());
    after.seams.clear();
    const Comparison comparison = compare(skirt(), after);
    EXPECT_EQ(kinds_of(comparison), (Kinds{"piece-missing", "seam-missing"}));
    EXPECT_EQ(comparison.losses[0].message, "front: the piece is gone.");
}

TEST(compare, notes_what_is_new_without_calling_it_a_loss) {
    Pattern before = skirt();
    Pattern after = before;
    before.pieces.pop_back();
    before.seams.clear();
    const Comparison comparison = compare(before, after);
    EXPECT_TRUE(comparison.is_kept());
    EXPECT_EQ(comparison.notes, (std::vector<std::string>{"back is a new piece", "side is a new seam"}));
}

TEST(compare, does_not_mind_the_order_of_pieces_or_where_the_outline_begins) {
    Pattern after = skirt();
    std::swap(after.pieces[0], after.pieces[1]);
    Outline& outline = after.pieces[0].outline;
    outline.start = outline.items[1].to;
    std::rotate(outline.items.begin(), outline.items.begin() + 2, outline.items.end());
    const Comparison comparison = compare(skirt(), after);
    EXPECT_TRUE(comparison.is_kept());
    EXPECT_TRUE(comparison.notes.empty());
}

// The pivot 30 mm nearer to the mouth of 40 mm: 2 atan(20/150) = 15.19 degrees become 2 atan(20/120) = 18.92.
TEST(compare, names_the_darts_about_a_pivot_that_was_moved) {
    Pattern after = bodice();
    sample::dart_of_bodice(after).point = {100, 120};
    const Comparison comparison = compare(bodice(), after);
    EXPECT_EQ(kinds_of(comparison), (Kinds{"pivot-angle", "pivot-place", "cloth-area"}));
    EXPECT_EQ(comparison.losses[0].darts, Kinds{"waist dart"});
    EXPECT_NEAR(*comparison.losses[0].amount.difference(),
                2 * degrees(std::atan(20. / 120) - std::atan(20. / 150)), 1e-9);
    EXPECT_NEAR(*comparison.losses[1].amount.after, 30, 1e-9);
    EXPECT_NEAR(*comparison.losses[2].amount.difference(), 600, 1e-9);
}

TEST(compare, names_a_dart_that_was_sewn_shut_into_ease) {
    Pattern after = bodice();
    std::vector<OutlineItem>& items = after.pieces[0].outline.items;
    items[1] = sample::line("waist", {120, 0});
    items[1].as_edge()->fullness = std::nextafter(40.0, 0.0);
    const Comparison comparison = compare(bodice(), after);
    EXPECT_EQ(kinds_of(comparison), (Kinds{"pivot-angle", "cloth-area"}));
    EXPECT_NEAR(*comparison.losses[0].amount.difference(), -2 * degrees(std::atan(20. / 150)), 1e-9);
    EXPECT_EQ(comparison.pieces[0].darts[0].change, DartChange::gone);
}

TEST(compare, says_where_a_dart_was_and_is) {
    const Pattern block = sample::fixture("blocks/close-fitting.json");
    const Pattern moved =
        pivot(block, {"front", "waist dart", "side@60/armhole", {}, {}, "", "side dart", "", ""}).pattern;
    const Comparison comparison = compare(block, moved);
    EXPECT_TRUE(comparison.is_kept());
    const std::vector<ComparedDart>& darts = comparison.pieces[0].darts;
    ASSERT_EQ(darts.size(), 3u);
    EXPECT_EQ(darts[0].change, DartChange::gone);
    EXPECT_EQ(darts[1].change, DartChange::kept);
    EXPECT_EQ(darts[2].change, DartChange::opened);
    EXPECT_EQ(darts[2].after->place, "side@60/armhole");
    EXPECT_NEAR(degrees(darts[2].after->angle_rad), 2 * degrees(std::atan2(2.0, 17.4171)), 1e-3);
}

TEST(compare, takes_the_tolerances_it_is_given) {
    Tolerances wide;
    wide.seam_mm = 6;
    wide.fold_mm = 6;
    EXPECT_TRUE(compare(skirt(), skirt({205, 400}), wide).is_kept());
}

TEST(compare, refuses_an_outline_that_does_not_close) {
    Pattern after = skirt();
    after.pieces[1].outline.items.back().to = {0, 3};
    EXPECT_THROW(compare(skirt(), after), Impossible);
}

TEST(compare, bounds_how_far_outlines_lie_apart) {
    // A panel 10 mm longer, laid middle on middle, sticks out 5 mm at both ends.
    const Comparison comparison = compare(skirt(), skirt({200, 410}));
    const OutlineDistance apart = *comparison.pieces[0].outline;
    EXPECT_LE(apart.at_most_mm, apart.at_least_mm + 0.05);
    EXPECT_NEAR(apart.at_least_mm, 5, 0.2);
}

// A block to take apart.
Pattern block() {
    return sample::fixture("blocks/close-fitting.json");
}

CloseSeamResult separated(std::optional<double> round_mm, const std::string& first_name) {
    CloseSeamRequest request;
    request.piece = "front";
    request.dart = "waist dart";
    request.with = "bust dart";
    request.seam = "princess seam";
    request.first_name = first_name;
    request.round_mm = round_mm;
    return close_as_seam(block(), request);
}

TEST(compare, finds_a_piece_that_was_separated_in_its_parts) {
    for (const std::string name : {"front", "centre front"}) {
        const Comparison same = compare(block(), separated({}, name).pattern);
        ASSERT_TRUE(same.is_kept()) << same.losses.front().message;
        const ComparedPiece& front = same.pieces[0];
        EXPECT_EQ(front.separated_into, (std::vector<std::string>{name, "side front"}));
        // The block is written to 0.001 mm; mouths are brought to the mean of their legs.
        EXPECT_NEAR(*front.area_mm2.difference(), 0, 0.5);
        for (const ComparedRun& run : front.runs) EXPECT_NEAR(*run.sewn_mm.difference(), 0, 1e-3) << run.edge;
    }
}

TEST(compare, finds_what_a_separated_piece_lost) {
    Pattern after = separated({}, "front").pattern;
    Outline& side = after.pieces[1].outline;
    for (std::size_t i = 0; i < side.items.size(); ++i) {
        const EdgeItem* edge = side.items[i].as_edge();
        if (edge && edge->edge == "shoulder") side.items[i].to = side.items[i].to + Vector{3, -3};
    }
    const Comparison lost = compare(block(), after);
    ASSERT_FALSE(lost.is_kept());
    EXPECT_EQ(lost.losses[0].what, "run-length");
    EXPECT_EQ(lost.losses[0].piece, "front");
    EXPECT_EQ(lost.losses[0].edge, "armhole");
}

}  // namespace
}  // namespace dartwright
