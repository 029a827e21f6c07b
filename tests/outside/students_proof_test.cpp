// The proof that students of the trade do with paper. NIMI, *Dress Making*, trade theory (Government of
// India, 2024), p. 195, and M. D. Erwin, *Practical Dress Design* (Macmillan, 1954), p. 31: close the darts
// of every variant of a block, lay the variants on one another along the centre front, and all coincide, with
// every edge as long as on the original. A closed dart with its pivot inside the piece does not lie flat, so
// here the whole angle is opened along one common ray from the bust point, through the corner of waist and
// centre front (exact geometry).

#include <gtest/gtest.h>

#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/split.hpp"
#include "outside/unrolled.hpp"
#include "support/fixture_patterns.hpp"

namespace dartwright {
namespace {

/// How near the variants have to lie, mm.
constexpr long double coincide_mm = 1e-6L;

struct Block {
    const char* file;
    const char* dart;
    std::vector<const char*> places;
};

Piece& front_of(Pattern& pattern) {
    return pattern.pieces[piece_index(pattern, "front")];
}

Pattern read_block(const Block& block) {
    Pattern pattern = testing::fixture_with_equal_legs(block.file);
    // Cut twice with a seam at the centre, so that a dart may go to the centre front too.
    front_of(pattern).cut = Cut{2, "", false, {}};
    return pattern;
}

unrolled::Question question_for(const Block& block) {
    Pattern pattern = read_block(block);
    const Piece& front = front_of(pattern);
    return {front.outline.items[dart_named(front, block.dart)].as_dart()->turning_point(), "centre front"};
}

void expect_same(const unrolled::View& original, const unrolled::View& variant, const std::string& what) {
    EXPECT_NEAR(double(variant.cloth_angle), double(original.cloth_angle), 1e-12) << what;
    ASSERT_EQ(variant.edges.size(), original.edges.size()) << what;
    for (const auto& [name, edge] : original.edges) {
        const unrolled::Edge& other = variant.edges.at(name);
        EXPECT_LE(std::abs(other.length - edge.length), coincide_mm) << what << ": length of " << name;
        ASSERT_EQ(other.samples.size(), edge.samples.size()) << what << ": " << name;
        for (std::size_t i = 0; i < edge.samples.size(); ++i) {
            EXPECT_LE(unrolled::apart(edge.samples[i], other.samples[i]), coincide_mm)
                << what << ": " << name << ", sample " << i;
        }
    }
}

class StudentsProof : public ::testing::TestWithParam<Block> {};

TEST_P(StudentsProof, every_variant_of_the_block_coincides) {
    const Block& block = GetParam();
    Pattern pattern = read_block(block);
    const auto original = unrolled::view_of(front_of(pattern).outline, question_for(block));
    for (const char* const place : block.places) {
        PivotRequest request;
        request.piece = "front";
        request.dart = block.dart;
        request.to = place;
        Pattern variant = pivot(pattern, request).pattern;
        expect_same(original, unrolled::view_of(front_of(variant).outline, question_for(block)), place);
    }
}

TEST_P(StudentsProof, parts_of_the_dart_in_three_places_coincide_too) {
    const Block& block = GetParam();
    Pattern pattern = read_block(block);
    const auto original = unrolled::view_of(front_of(pattern).outline, question_for(block));
    SplitRequest request;
    request.piece = "front";
    request.dart = block.dart;
    request.places = {{block.places[0], 0.3, "", ""}, {block.places[1], 0.2, "", ""}};
    Pattern variant = split(pattern, request).pattern;
    expect_same(original, unrolled::view_of(front_of(variant).outline, question_for(block)), "half split");
}

// The whole dart in every three places that follow one another on the list.
TEST_P(StudentsProof, the_whole_dart_in_three_places_coincides_too) {
    const Block& block = GetParam();
    Pattern pattern = read_block(block);
    const auto original = unrolled::view_of(front_of(pattern).outline, question_for(block));
    for (std::size_t i = 0; i + 2 < block.places.size(); ++i) {
        SplitRequest request;
        request.piece = "front";
        request.dart = block.dart;
        request.places = {{block.places[i], 0.5, "", ""},
                          {block.places[i + 1], 0.3, "", ""},
                          {block.places[i + 2], 0.2, "", ""}};
        Pattern variant = split(pattern, request).pattern;
        const std::string what = std::string("split from ") + block.places[i];
        expect_same(original, unrolled::view_of(front_of(variant).outline, question_for(block)), what);
    }
}

TEST_P(StudentsProof, a_variant_of_a_variant_coincides_too) {
    const Block& block = GetParam();
    Pattern pattern = read_block(block);
    const auto original = unrolled::view_of(front_of(pattern).outline, question_for(block));
    PivotRequest request;
    request.piece = "front";
    request.dart = block.dart;
    for (const char* const place : block.places) {
        request.to = place;
        pattern = pivot(pattern, request).pattern;
    }
    expect_same(original, unrolled::view_of(front_of(pattern).outline, question_for(block)), "chain");
}

// What the proof is worth: a dart turned by a thousandth of a degree too much is seen.
TEST(students_proof, would_see_a_thousandth_of_a_degree) {
    const Block block{"blocks/close-fitting.json", "waist dart", {}};
    Pattern pattern = read_block(block);
    const auto original = unrolled::view_of(front_of(pattern).outline, question_for(block));
    Outline& outline = front_of(pattern).outline;
    const Point pivot = question_for(block).pivot;
    Point& armhole_to_side = outline.items[8].to;
    armhole_to_side = pivot + apply(turn_by(radians(0.001)), armhole_to_side - pivot);
    const auto wrong = unrolled::view_of(outline, question_for(block));
    unrolled::Real furthest = 0;
    for (const auto& [name, edge] : original.edges) {
        for (std::size_t i = 0; i < edge.samples.size(); ++i)
            furthest = std::max(furthest, unrolled::apart(edge.samples[i], wrong.edges.at(name).samples[i]));
    }
    EXPECT_GT(furthest, 1000 * coincide_mm);
}

std::string block_name(const ::testing::TestParamInfo<Block>& tested) {
    std::string name = std::string(tested.param.file) + "_" + tested.param.dart;
    for (char& c : name) {
        if (!std::isalnum(static_cast<unsigned char>(c))) c = '_';
    }
    return name;
}

INSTANTIATE_TEST_SUITE_P(
    blocks, StudentsProof,
    ::testing::Values(Block{"blocks/close-fitting.json",
                            "waist dart",
                            {"side@60/armhole", "shoulder@50%", "armhole@40/shoulder", "neck@50%",
                             "centre front@50%", "side@50%", "waist@30/side"}},
                      Block{"blocks/close-fitting.json",
                            "bust dart",
                            {"side@60/armhole", "shoulder@50%", "armhole@40/shoulder", "neck@30/centre front",
                             "centre front@50%", "waist@40/side", "waist@40/centre front"}},
                      Block{"blocks/three-measure.json",
                            "waist dart",
                            {"side@60/armhole", "shoulder@50%", "armhole@30/shoulder", "neck@50%",
                             "centre front@50%", "side@30/armhole"}},
                      Block{"blocks/three-measure.json",
                            "bust dart",
                            {"side@60/armhole", "shoulder@50%", "neck@50%", "centre front@50%",
                             "waist@30/centre front"}},
                      Block{"workshop/chorus-bodice.json",
                            "waist dart",
                            {"shoulder@50%", "armhole@30/shoulder", "neck@50%", "centre front@50%",
                             "waist@30/centre front"}},
                      Block{"workshop/chorus-bodice.json",
                            "side dart",
                            {"shoulder@50%", "armhole@30/shoulder", "neck@50%", "centre front@50%",
                             "waist@30/centre front"}},
                      Block{"workshop/chorus-bodice-inch.json",
                            "waist dart",
                            {"side@2in/armhole", "shoulder@50%", "armhole@1 1/2in/shoulder", "neck@50%",
                             "centre front@5in/neck"}}),
    block_name);

}  // namespace
}  // namespace dartwright
