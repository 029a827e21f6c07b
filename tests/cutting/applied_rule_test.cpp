// Rules on patterns of which the widths are worked out by hand.

#include "dartwright/cutting/applied_rule.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/files/pattern_file.hpp"
#include "dartwright/files/rule_file.hpp"
#include "support/evenly.hpp"

namespace dartwright {
namespace {

const std::string fixtures = DARTWRIGHT_SOURCE_DIR "/fixtures/";

Pattern pattern_of(const std::string& name) {
    return read_pattern_file(fixtures + name);
}
CuttingRule rule_of(const std::string& name) {
    return read_rule_file(fixtures + "rules/" + name);
}

const DecidedRun& decided(const AppliedRule& applied, const std::string& piece, const std::string& edge) {
    for (const RuledPiece& ruled : applied.pieces) {
        if (ruled.piece != piece) continue;
        for (const DecidedRun& run : ruled.runs) {
            if (run.edge == edge) return run;
        }
    }
    throw std::runtime_error("no run " + edge + " of " + piece);
}

struct Expected {
    const char* piece;
    const char* edge;
    double width_mm;
    DecidedBy by;
};
void expect_widths(const AppliedRule& applied, const std::vector<Expected>& all) {
    for (const Expected& each : all) {
        SCOPED_TRACE(std::string(each.piece) + " " + each.edge);
        const DecidedRun& run = decided(applied, each.piece, each.edge);
        EXPECT_EQ(run.by, each.by);
        ASSERT_EQ(run.widths.size(), 1u);
        EXPECT_EQ(run.widths[0].width_mm, each.width_mm);
        EXPECT_FALSE(run.is_undecided);
    }
}

// Common practice, no source: 1.5 cm where pieces are joined and at the opening, none elsewhere.
TEST(AppliedRule, of_a_toile_on_the_bodice_and_both_blocks) {
    for (const char* name :
         {"workshop/chorus-bodice.json", "blocks/close-fitting.json", "blocks/three-measure.json"}) {
        SCOPED_TRACE(name);
        const AppliedRule applied = apply_rule(pattern_of(name), rule_of("toile.json"));
        expect_widths(applied, {{"front", "waist", 0, DecidedBy::elsewhere},
                                {"front", "side", 15, DecidedBy::joined},
                                {"front", "armhole", 0, DecidedBy::elsewhere},
                                {"front", "shoulder", 15, DecidedBy::joined},
                                {"front", "neck", 0, DecidedBy::elsewhere},
                                {"front", "centre front", 0, DecidedBy::fold},
                                {"back", "waist", 0, DecidedBy::elsewhere},
                                {"back", "side", 15, DecidedBy::joined},
                                {"back", "armhole", 0, DecidedBy::elsewhere},
                                {"back", "shoulder", 15, DecidedBy::joined},
                                {"back", "neck", 0, DecidedBy::elsewhere},
                                {"back", "centre back", 15, DecidedBy::opening}});
        EXPECT_TRUE(applied.warnings.empty());
        EXPECT_EQ(allowance_of(applied.pattern.pieces[0], "centre front"), nullptr);
    }
}

TEST(AppliedRule, lets_the_most_specific_width_decide) {
    const AppliedRule applied = apply_rule(pattern_of("workshop/chorus-bodice.json"), rule_of("chorus.json"));
    expect_widths(applied, {{"front", "waist", 15, DecidedBy::elsewhere},
                            {"front", "side", 30, DecidedBy::seam},
                            {"front", "armhole", 10, DecidedBy::edge},
                            {"front", "shoulder", 20, DecidedBy::joined},
                            {"front", "neck", 10, DecidedBy::edge},
                            {"back", "side", 30, DecidedBy::seam},
                            {"back", "centre back", 25, DecidedBy::opening}});
    EXPECT_EQ(decided(applied, "front", "side").was_mm, 15);
    // No piece has a hem, nor a corner at one.
    ASSERT_EQ(applied.warnings.size(), 2u);
    EXPECT_EQ(applied.warnings[0], "no piece has an edge \"hem\"");
    EXPECT_EQ(applied.warnings[1], "no piece has a corner of \"side\" and \"hem\"");
    EXPECT_TRUE(applied.misnamed.empty());
    ASSERT_EQ(applied.pieces[0].request.corners.size(), 1u);
    EXPECT_EQ(applied.pieces[0].request.corners[0].kind, CornerKind::mirrored);
    EXPECT_EQ(applied.pieces[0].request.corners[0].whose, "side");
    // The front's waist dart has an intake of 34 mm, its side dart of 26 mm, the back's of 30 mm.
    EXPECT_TRUE(applied.pieces[0].request.trimmed.empty());
}

TEST(AppliedRule, says_how_notches_are_cut) {
    const AppliedRule applied = apply_rule(pattern_of("workshop/chorus-bodice.json"), rule_of("chorus.json"));
    const MarkingRequest asked = marking_request(applied.pattern);
    EXPECT_EQ(asked.notches.form, NotchForm::v);
    EXPECT_EQ(asked.notches.depth_mm, 5);
    EXPECT_EQ(asked.notches.width_mm, 5);
    EXPECT_TRUE(asked.are_darts_notched);
    CuttingRule rule;
    rule.darts.is_notched = false;
    EXPECT_FALSE(marking_request(apply_rule(applied.pattern, rule).pattern).are_darts_notched);
    // Without a rule as when nothing is asked.
    const MarkingRequest unasked = marking_request(pattern_of("workshop/chorus-bodice.json"));
    EXPECT_EQ(unasked.notches.form, MarkingRequest{}.notches.form);
    EXPECT_EQ(unasked.are_darts_notched, MarkingRequest{}.are_darts_notched);
}

TEST(AppliedRule, trims_darts_with_a_wider_intake_only) {
    CuttingRule rule = rule_of("chorus.json");
    rule.darts.trim = DartTrim{32, 12};
    const AppliedRule applied = apply_rule(pattern_of("workshop/chorus-bodice.json"), rule);
    ASSERT_EQ(applied.pieces[0].request.trimmed.size(), 1u);
    EXPECT_EQ(applied.pieces[0].request.trimmed[0].dart, "waist dart");
    EXPECT_EQ(applied.pieces[0].request.trimmed[0].width_mm, 12);
    EXPECT_TRUE(applied.pieces[1].request.trimmed.empty());
}

TEST(AppliedRule, keeps_what_it_does_not_cover_and_says_what_nothing_decides) {
    Pattern pattern = pattern_of("workshop/chorus-bodice.json");
    std::erase_if(pattern.pieces[0].allowance, [](const auto& own) { return own.first == "neck"; });
    CuttingRule rule;
    rule.name = "sides";
    rule.allowance.seams = {{"side", {}, 20}};
    const AppliedRule applied = apply_rule(pattern, rule);
    expect_widths(applied, {{"front", "side", 20, DecidedBy::seam},
                            {"front", "shoulder", 15, DecidedBy::pattern},
                            {"back", "neck", 0, DecidedBy::pattern}});
    EXPECT_EQ(decided(applied, "front", "neck").by, DecidedBy::nothing);
    EXPECT_TRUE(decided(applied, "front", "neck").is_undecided);
    EXPECT_EQ(allowance_of(applied.pattern.pieces[0], "neck"), nullptr);
    const AppliedRule filled = apply_rule(pattern, rule, 10);
    EXPECT_TRUE(decided(filled, "front", "neck").is_undecided);
    EXPECT_EQ(*allowance_of(filled.pattern.pieces[0], "neck"), Allowance{10.0});
}

TEST(AppliedRule, fills_only_the_undecided_part_of_a_run) {
    Pattern pattern = pattern_of("workshop/chorus-bodice.json");
    Piece& front = pattern.pieces[0];
    for (auto& [edge, own] : front.allowance) {
        if (edge == "neck") own = std::vector<AllowanceStretch>{{"shoulder", 0, 40, 12}};
    }
    const AppliedRule filled = apply_rule(pattern, CuttingRule{}, 10);
    const auto neck = *find_run(runs_of(front.outline), "neck");
    const std::vector<RunWidth> widths = widths_along(filled.pattern.pieces[0], neck);
    ASSERT_EQ(widths.size(), 2u);
    EXPECT_EQ(widths[0].width_mm, 12);
    EXPECT_NEAR(widths[0].to_mm, 40, 1e-9);
    EXPECT_EQ(widths[1].width_mm, 10);
}

TEST(AppliedRule, gives_an_edge_on_the_fold_none_whatever_is_said) {
    Pattern pattern = pattern_of("workshop/chorus-bodice.json");
    pattern.pieces[0].allowance.emplace_back("centre front", 20.0);
    CuttingRule rule;
    rule.allowance.edges = {{"centre front", {}, 10}};
    const AppliedRule applied = apply_rule(pattern, rule);
    EXPECT_EQ(decided(applied, "front", "centre front").by, DecidedBy::fold);
    EXPECT_EQ(allowance_of(applied.pattern.pieces[0], "centre front"), nullptr);
    ASSERT_EQ(applied.warnings.size(), 1u);
    EXPECT_EQ(applied.warnings[0], "\"centre front\" of \"front\" is on the fold and has no allowance");
}

TEST(AppliedRule, prefers_the_width_that_names_the_piece_and_says_what_it_misnames) {
    CuttingRule rule;
    rule.allowance.edges = {
        {"neck", {}, 10}, {"neck", "back", 15}, {"hem", "front", 40}, {"hem", "sleeve", 20}};
    rule.corners = {{{"neck", "side"}, "front", RuleCornerKind::met, {}, {}}};
    const AppliedRule applied = apply_rule(pattern_of("workshop/chorus-bodice.json"), rule);
    expect_widths(applied, {{"front", "neck", 10, DecidedBy::edge}, {"back", "neck", 15, DecidedBy::edge}});
    EXPECT_EQ(applied.warnings, (std::vector<std::string>{
                                    "\"front\" has no edge \"hem\"", "the pattern has no piece \"sleeve\"",
                                    "\"front\" has no corner of \"neck\" and \"side\""}));
    EXPECT_EQ(applied.misnamed,
              (std::vector<std::string>{"\"front\" has no edge \"hem\"",
                                        "\"front\" has no corner of \"neck\" and \"side\""}));
}

CuttingRule any_rule() {
    const std::vector<std::string> edges{"waist", "side",         "armhole",     "shoulder",
                                         "neck",  "centre front", "centre back", "hem"};
    const auto any_width = [] { return *testing::evenly(0, 400) / 10.0; };
    const auto any_edge = [&] {
        return RuleWidth{*rc::gen::elementOf(edges), *rc::gen::element<std::string>("", "front", "back"),
                         any_width()};
    };
    CuttingRule rule;
    rule.name = "any";
    for (int i = *testing::evenly(0, 4); i > 0; --i) rule.allowance.edges.push_back(any_edge());
    for (int i = *testing::evenly(0, 3); i > 0; --i) rule.allowance.openings.push_back(any_edge());
    for (int i = *testing::evenly(0, 3); i > 0; --i)
        rule.allowance.seams.push_back(
            {*rc::gen::element<std::string>("side", "shoulder", "centre back", "hem"), {}, any_width()});
    if (*rc::gen::arbitrary<bool>()) rule.allowance.joined_mm = any_width();
    if (*rc::gen::arbitrary<bool>()) rule.allowance.elsewhere_mm = any_width();
    return rule;
}

RC_GTEST_PROP(AppliedRule, twice_is_the_same_as_once, ()) {
    const Pattern pattern = pattern_of("workshop/chorus-bodice.json");
    const CuttingRule rule = any_rule();
    std::optional<double> undecided;
    if (*rc::gen::arbitrary<bool>()) undecided = *testing::evenly(0, 400) / 10.0;
    const AppliedRule once = apply_rule(pattern, rule, undecided);
    const AppliedRule twice = apply_rule(once.pattern, rule, undecided);
    RC_ASSERT(once.pattern.pieces == twice.pattern.pieces);
    RC_ASSERT(write_pattern(once.pattern) == write_pattern(twice.pattern));
    RC_ASSERT(once.warnings == twice.warnings);
    // Nothing but allowances is changed, and none that no width covers.
    for (std::size_t i = 0; i < pattern.pieces.size(); ++i) {
        Piece kept = once.pattern.pieces[i];
        for (const DecidedRun& run : once.pieces[i].runs) {
            const Allowance* own = allowance_of(pattern.pieces[i], run.edge);
            if (run.by == DecidedBy::pattern) RC_ASSERT(*own == *allowance_of(kept, run.edge));
            RC_ASSERT((run.by == DecidedBy::fold) == (run.edge == "centre front"));
        }
        kept.allowance = pattern.pieces[i].allowance;
        RC_ASSERT(kept == pattern.pieces[i]);
    }
}

}  // namespace
}  // namespace dartwright
