// The corners of a bodice and its set-in sleeve, each with an angle that was chosen: what is said of them,
// where and how large, follows from the choice, however the pattern is written.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "dartwright/checks/check.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pattern/pattern_problems.hpp"
#include "support/evenly.hpp"
#include "support/generated_armholes.hpp"
#include "support/written_otherwise.hpp"

namespace dartwright::testing {
namespace {

struct Told {
    std::string seam;
    std::string piece;
    Severity severity;
    double sum_deg;
    Point at;
};

constexpr double tolerance_deg = 2;

std::vector<Told> expected_of(const GeneratedArmhole& armhole) {
    std::vector<Told> out;
    for (const ChosenCorner& corner : armhole.corners) {
        const double off = std::abs(corner.sum_deg - 180);
        // Chosen sums are 180 or far from it; that of a note is as it comes.
        if (std::abs(off - tolerance_deg) < 1e-3) RC_DISCARD("a corner at the tolerance itself");
        if (off > tolerance_deg)
            out.push_back({corner.seam, corner.piece, corner.severity, corner.sum_deg, corner.at});
    }
    return out;
}

std::vector<Told> told_of(const Pattern& pattern) {
    std::vector<Told> out;
    for (const Finding& finding : check(pattern).findings)
        if (finding.check == "seam-corner")
            out.push_back(
                {finding.seam, finding.piece, finding.severity, finding.measured.value(), *finding.at});
    return out;
}

void expect_same(std::vector<Told> found, const std::vector<Told>& expected, double near_mm) {
    for (const Told& each : found) RC_LOG() << each.seam << " " << each.piece << " " << each.sum_deg << "\n";
    RC_ASSERT(found.size() == expected.size());
    for (const Told& wanted : expected) {
        const auto same = std::find_if(found.begin(), found.end(), [&](const Told& each) {
            return each.seam == wanted.seam && each.piece == wanted.piece &&
                   each.severity == wanted.severity && std::abs(each.sum_deg - wanted.sum_deg) < 1e-5 &&
                   distance(each.at, wanted.at) < near_mm;
        });
        RC_LOG() << "wanted " << wanted.seam << " " << wanted.piece << " " << wanted.sum_deg << "\n";
        RC_ASSERT(same != found.end());
        found.erase(same);
    }
}

RC_GTEST_PROP(SetInSleeve, OfSoundPiecesHasNoFaultAtTheUnderarm, ()) {
    const GeneratedArmhole armhole = any_armhole(true);
    RC_ASSERT(problems_of(armhole.pattern).empty());
    const std::vector<Told> found = told_of(armhole.pattern);
    for (const Told& each : found) RC_ASSERT(each.severity == Severity::note && each.seam == "armhole");
    expect_same(found, expected_of(armhole), 1e-6);
}

RC_GTEST_PROP(SetInSleeve, HasTheFaultsThatWereMade, ()) {
    const GeneratedArmhole armhole = any_armhole(false);
    expect_same(told_of(armhole.pattern), expected_of(armhole), 1e-6);
}

// Begun elsewhere, turned, mirrored, clockwise as it may stand in a file, in inches: verdict, place and size
// stay.
RC_GTEST_PROP(SetInSleeve, IsJudgedTheSameWrittenOtherwise, ()) {
    const GeneratedArmhole armhole = any_armhole(*rc::gen::arbitrary<bool>());
    Pattern otherwise = armhole.pattern;
    std::vector<Told> expected = expected_of(armhole);
    for (Piece& piece : otherwise.pieces) {
        const Similarity s{
            real_between(-3, 3), 1, *rc::gen::arbitrary<bool>(), {real_between(-500, 500), 70}};
        piece = image(s, piece);
        for (Told& each : expected)
            if (each.piece == piece.name) each.at = image(s, each.at);
        piece.outline =
            begun_at(piece.outline, std::size_t(*testing::evenly(0, int(piece.outline.items.size()))));
        if (*rc::gen::arbitrary<bool>()) piece.outline = reversed(piece.outline);
    }
    otherwise = put_right(otherwise);
    expect_same(told_of(otherwise), expected, 1e-6);
    otherwise.unit = Unit::inch;
    const Pattern read = read_pattern(write_pattern(otherwise), "bodice.json");
    RC_ASSERT(read.unit == Unit::inch);
    expect_same(told_of(read), expected, 1e-3);
}

// Front and back with a facing each: over the shoulder their necks make 196.7 degrees.
TEST(SetInSleeve, OfAFacedNeckIsToldOverTheShoulder) {
    Pattern pattern;
    pattern.name = "faced";
    const BodiceSize size{230, 220, 170, 0};
    pattern.pieces = {any_bodice("front", {90, 90, 90, 95}, size),
                      any_bodice("back", {90, 90, 90, 101.7}, size)};
    pattern.seams = {seam_between("shoulder", {{"front", "shoulder", "armhole", false}},
                                  {{"back", "shoulder", "armhole", false}})};
    for (const char* name : {"front", "back"}) {
        Piece facing = pattern.pieces[name == std::string("front") ? 0 : 1];
        facing.name += " facing";
        pattern.seams.push_back(seam_between(std::string(name) + " neck", {{name, "neck", "shoulder", false}},
                                             {{facing.name, "neck", "shoulder", false}}));
        pattern.seams.back().laid = LaidAs::on_each_other;
        pattern.pieces.push_back(facing);
    }
    const auto told = [&] { return told_of(pattern); };
    ASSERT_EQ(told().size(), 1u);
    EXPECT_EQ(told()[0].severity, Severity::note);
    EXPECT_NEAR(told()[0].sum_deg, 196.7, 1e-9);
    pattern.seams[0].ends = {{"neck", CornerIs::smooth}};
    EXPECT_EQ(told()[0].severity, Severity::fault);
    // Bare, or both in one facing, it is a fault without a word.
    pattern.seams = {pattern.seams[0]};
    pattern.seams[0].ends.clear();
    EXPECT_EQ(told()[0].severity, Severity::fault);
}

}  // namespace
}  // namespace dartwright::testing
