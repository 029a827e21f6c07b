// A check says the same however the pattern is written: begun at another item, with edges divided, with items
// of no length, some of rounding size.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "dartwright/checks/check.hpp"
#include "dartwright/checks/walk.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "support/evenly.hpp"
#include "support/generated_seams.hpp"
#include "support/written_otherwise.hpp"

namespace dartwright {
namespace {

using namespace testing;

std::string key_of(const Finding& finding) {
    return finding.check + "|" + std::to_string(int(finding.severity)) + "|" + finding.piece + "|" +
           finding.edge + "|" + finding.dart + "|" + finding.seam;
}

// A division may leave a short item, which is for `outline-stray` to say.
std::vector<Finding> told(const CheckReport& report) {
    std::vector<Finding> out;
    for (const Finding& finding : report.findings)
        if (finding.check != "outline-stray") out.push_back(finding);
    std::sort(out.begin(), out.end(), [](const Finding& a, const Finding& b) {
        return key_of(a) != key_of(b) ? key_of(a) < key_of(b)
                                      : a.measured.value_or(0) < b.measured.value_or(0);
    });
    return out;
}

bool are_near(const std::optional<double>& a, const std::optional<double>& b, double tolerance) {
    return a.has_value() == b.has_value() && (!a || std::abs(*a - *b) <= tolerance);
}

void expect_same(const CheckReport& a, const CheckReport& b, double tolerance) {
    const std::vector<Finding> of_a = told(a);
    const std::vector<Finding> of_b = told(b);
    RC_ASSERT(of_a.size() == of_b.size());
    for (std::size_t i = 0; i < of_a.size(); ++i) {
        RC_ASSERT(key_of(of_a[i]) == key_of(of_b[i]));
        RC_LOG() << of_a[i].message << " / " << of_b[i].message;
        RC_ASSERT(are_near(of_a[i].measured, of_b[i].measured, tolerance));
        RC_ASSERT(are_near(of_a[i].difference, of_b[i].difference, tolerance));
    }
    RC_ASSERT(a.seams.size() == b.seams.size());
    for (std::size_t i = 0; i < a.seams.size(); ++i) {
        RC_ASSERT(a.seams[i].passed == b.seams[i].passed);
        RC_ASSERT(a.seams[i].lengths.has_value() == b.seams[i].lengths.has_value());
        if (!a.seams[i].lengths) continue;
        for (int side = 0; side < 2; ++side)
            RC_ASSERT(std::abs((*a.seams[i].lengths)[std::size_t(side)] -
                               (*b.seams[i].lengths)[std::size_t(side)]) <= tolerance);
    }
    RC_ASSERT(a.darts.size() == b.darts.size());
    for (const DartVerdict& dart : a.darts) {
        const auto same = std::find_if(b.darts.begin(), b.darts.end(), [&](const DartVerdict& other) {
            return other.piece == dart.piece && other.name == dart.name;
        });
        RC_ASSERT(same != b.darts.end());
        RC_ASSERT(same->passed == dart.passed);
        RC_ASSERT(std::abs(same->legs[0] - dart.legs[0]) <= tolerance);
        RC_ASSERT(std::abs(same->intake - dart.intake) <= tolerance);
    }
}

// Two pieces of a seam, of which the first has one dart or two besides in other cases.
Pattern any_pattern() {
    if (*rc::gen::arbitrary<bool>()) return any_seam().pattern;
    Pattern pattern = any_piece(true, *testing::evenly(1, 3)).pattern;
    const std::vector<Run> runs = runs_of(pattern.pieces[0].outline);
    if (*rc::gen::arbitrary<bool>()) pattern.pieces[0].cut->fold = runs[testing::any_index_of(runs)].edge;
    return pattern;
}

RC_GTEST_PROP(CheckSaysTheSame, WrittenOtherwise, ()) {
    const Pattern pattern = any_pattern();
    Writing writing;
    writing.may_round = *rc::gen::arbitrary<bool>();
    const Pattern otherwise = written_otherwise(pattern, writing);
    // A rounding of 1e-7 mm turns an edge of 5 mm by some 1e-6 degrees.
    expect_same(check(pattern), check(otherwise), writing.may_round ? 5e-5 : 1e-6);
}

RC_GTEST_PROP(CheckSaysTheSame, BegunAtAnyItem, ()) {
    const Pattern pattern = any_pattern();
    const CheckReport report = check(pattern);
    for (std::size_t i = 0; i < pattern.pieces[0].outline.items.size(); ++i) {
        Pattern begun = pattern;
        begun.pieces[0].outline = begun_at(pattern.pieces[0].outline, i);
        expect_same(report, check(begun), 1e-6);
    }
}

// A straight edge whose last measured point is the start, and which ends a little beside it, is closed as the
// straight edge. It ended in an error once.
RC_GTEST_PROP(CheckSaysTheSame, ClosedAtAMeasuredPoint, ()) {
    Pattern pattern = any_pattern();
    Outline& outline = pattern.pieces[0].outline;
    outline = begun_at(outline, testing::any_index_of(outline.items));
    EdgeItem* last = outline.items.back().as_edge();
    const bool is_straight =
        last && std::holds_alternative<StraightShape>(last->shape) && last->fullness == 0;
    RC_PRE(is_straight);
    const CheckReport report = check(pattern);
    last->shape = SplineShape{{outline.start}};
    const double angle = real_between(0, 2 * pi);
    const double gap_mm = Tolerances{}.gap_mm * real_between(0.1, 0.9);
    outline.items.back().to = outline.start + gap_mm * Vector{std::cos(angle), std::sin(angle)};
    CheckReport with_gap = check(pattern);
    std::erase_if(with_gap.findings, [](const Finding& each) { return each.check == "outline-gap"; });
    expect_same(report, with_gap, 1e-6);
}

// Once a corner of 180 degrees was found there.
TEST(CheckSaysTheSame, OfAPointInsideEachEdgeOfABlock) {
    const Pattern block = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/blocks/close-fitting.json");
    ASSERT_TRUE(check(block).passed);
    const std::size_t items = block.pieces[0].outline.items.size();
    for (std::size_t i = 0; i < items; ++i) {
        const EdgeItem* edge = block.pieces[0].outline.items[i].as_edge();
        if (!edge) continue;
        Pattern with = block;
        Outline& outline = with.pieces[0].outline;
        outline.items.insert(
            outline.items.begin() + std::ptrdiff_t(i),
            OutlineItem{EdgeItem{edge->edge, StraightShape{}, 0}, start_of_item(outline, i)});
        const CheckReport report = check(with);
        EXPECT_TRUE(report.passed) << edge->edge;
        ASSERT_EQ(report.findings.size(), check(block).findings.size() + 1);
        const auto stray =
            std::find_if(report.findings.begin(), report.findings.end(),
                         [](const Finding& finding) { return finding.check == "outline-stray"; });
        ASSERT_NE(stray, report.findings.end());
        EXPECT_EQ(stray->severity, Severity::note);
        EXPECT_EQ(stray->edge, edge->edge);
    }
}

}  // namespace
}  // namespace dartwright
