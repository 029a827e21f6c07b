// Every public function that takes a pattern refuses one that breaks a rule, by name of the value.

#include "dartwright/pattern/sound_entry.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <functional>
#include <limits>

#include "dartwright/checks/check.hpp"
#include "dartwright/checks/measure_line.hpp"
#include "dartwright/checks/walk.hpp"
#include "dartwright/comparing/compare.hpp"
#include "dartwright/cutting/applied_rule.hpp"
#include "dartwright/cutting/cutting_line.hpp"
#include "dartwright/cutting/lay_pattern.hpp"
#include "dartwright/cutting/lay_pieces.hpp"
#include "dartwright/cutting/markings.hpp"
#include "dartwright/darts/cap.hpp"
#include "dartwright/darts/close_flare.hpp"
#include "dartwright/darts/close_gathers.hpp"
#include "dartwright/darts/close_seam.hpp"
#include "dartwright/darts/close_tuck.hpp"
#include "dartwright/darts/cluster.hpp"
#include "dartwright/darts/merge.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/replay.hpp"
#include "dartwright/darts/repoint.hpp"
#include "dartwright/darts/split.hpp"
#include "dartwright/darts/true_dart.hpp"
#include "dartwright/darts/true_edge.hpp"
#include "dartwright/darts/true_seam.hpp"
#include "dartwright/drawing/cutting_drawing.hpp"
#include "dartwright/drawing/pattern_drawing.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pages/printed_piece.hpp"
#include "dartwright/pages/sewing_plan.hpp"
#include "dartwright/pages/sewing_sheet.hpp"

namespace dartwright {
namespace {

Pattern skirt() {
    return read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/workshop/first-pattern.json");
}

struct Break {
    const char* pointer;
    std::function<void(Pattern&)> mend;
};

const double nan = std::numeric_limits<double>::quiet_NaN();
const double infinite = std::numeric_limits<double>::infinity();

EdgeItem& edge(Pattern& p, std::size_t item) {
    return *p.pieces[0].outline.items[item].as_edge();
}

std::vector<Break> breaks() {
    std::vector<Break> all{
        {"/name", [](Pattern& p) { p.name = ""; }},
        {"/name", [](Pattern& p) { p.name = "a\nb"; }},
        {"/pieces",
         [](Pattern& p) {
             p.pieces.clear();
             p.seams.clear();
         }},
        {"/pieces/1/name",
         [](Pattern& p) {
             p.pieces.push_back(p.pieces[0]), p.pieces.erase(p.pieces.begin() + 1), p.seams.clear();
         }},
        {"/pieces/0/outline", [](Pattern& p) { p.pieces[0].outline = reversed(p.pieces[0].outline); }},
        {"/pieces/0/outline/items/0/edge",
         [](Pattern& p) {
             edge(p, 0).edge = "start";
             p.pieces[0].notches.clear();
             p.pieces[0].allowance.clear();
             p.seams.clear();
         }},
        {"/pieces/0/outline/items/2/edge", [](Pattern& p) { edge(p, 2).edge = "hem"; }},
        {"/pieces/0/outline/items/0/fullness", [](Pattern& p) { edge(p, 0).fullness = 231; }},
        {"/pieces/0/outline/items/0/through", [](Pattern& p) { edge(p, 0).shape = SplineShape{}; }},
        {"/pieces/0/outline/items/0/through/0",
         [](Pattern& p) { edge(p, 0).shape = SplineShape{{p.pieces[0].outline.start}}; }},
        {"/pieces/0/cut/quantity", [](Pattern& p) { p.pieces[0].cut->quantity = 0; }},
        {"/pieces/0/cut/fold", [](Pattern& p) { p.pieces[0].cut->fold = "nowhere"; }},
        {"/pieces/0/cut/second_fold", [](Pattern& p) { p.pieces[0].cut->second_fold = "centre front"; }},
        {"/pieces/0/cut/ends/side", [](Pattern& p) { p.pieces[0].cut->ends["side"] = CornerIs::free; }},
        {"/pieces/0/grain/to", [](Pattern& p) { p.pieces[0].grain->to = p.pieces[0].grain->from; }},
        {"/pieces/0/grain/along", [](Pattern& p) { p.pieces[0].grain->along = "nowhere"; }},
        {"/pieces/0/side_up", [](Pattern& p) { p.pieces[0].side_up = SideUp::wrong; }},
        {"/pieces/0/notches/0/edge", [](Pattern& p) { p.pieces[0].notches[0].edge = ""; }},
        {"/pieces/0/notches/0/from", [](Pattern& p) { p.pieces[0].notches[0].from = "centre front"; }},
        {"/pieces/0/notches/0/at", [](Pattern& p) { p.pieces[0].notches[0].at = -1; }},
        {"/pieces/0/notches/0/begins", [](Pattern& p) { p.pieces[0].notches[0].begins = true; }},
        {"/pieces/0/allowance/hem",
         [](Pattern& p) { p.pieces[0].allowance[0].second = std::vector<AllowanceStretch>{}; }},
        {"/pieces/0/allowance/hem/0/to",
         [](Pattern& p) {
             p.pieces[0].allowance[0].second = std::vector<AllowanceStretch>{{"side", 5, 5, 10}};
         }},
        {"/pieces/0/marks/0/line", [](Pattern& p) { p.pieces[0].marks[0].what = LineMark{}; }},
        {"/pieces/1/outline/items/4/press",
         [](Pattern& p) { p.pieces[1].outline.items[4].as_dart()->press = "nowhere"; }},
        {"/pieces/1/outline/items/4/stitched",
         [](Pattern& p) { p.pieces[1].outline.items[4].as_dart()->stitched = 1000; }},
        {"/seams/0/joins/0", [](Pattern& p) { p.seams[0].joins[0].clear(); }},
        {"/seams/0/joins/0/piece", [](Pattern& p) { p.seams[0].joins[0][0].piece = "sleeve"; }},
        {"/seams/0/joins/0/edge", [](Pattern& p) { p.seams[0].joins[0][0].edge = "neck"; }},
        {"/seams/0/joins/0/from", [](Pattern& p) { p.seams[0].joins[0][0].from = "neck"; }},
        {"/seams/0/ends/neck", [](Pattern& p) { p.seams[0].ends["neck"] = CornerIs::free; }},
        {"/seams/0/ease/side",
         [](Pattern& p) {
             p.seams[0].ease = Ease{3, 1, true};
         }},
        {"/seams/0/ease/amount",
         [](Pattern& p) {
             p.seams[0].ease = Ease{1, -1, true};
         }},
        {"/seams/1/name", [](Pattern& p) { p.seams.push_back(p.seams[0]); }},
        {"/tolerances/corner", [](Pattern& p) { p.tolerances["corner"] = nan; }},
        {"/tolerances/colour", [](Pattern& p) { p.tolerances["colour"] = 1; }},
        {"/made/0/operation", [](Pattern& p) { p.made.push_back({}); }},
    };
    for (const double bad : {nan, infinite, -infinite, 1e200, -1e200}) {
        all.push_back(
            {"/pieces/0/outline/start/0", [bad](Pattern& p) { p.pieces[0].outline.start.x = bad; }});
        all.push_back({"/pieces/0/outline/items/1/to/1",
                       [bad](Pattern& p) { p.pieces[0].outline.items[1].to.y = bad; }});
        all.push_back({"/pieces/0/notches/0/at", [bad](Pattern& p) { p.pieces[0].notches[0].at = bad; }});
        all.push_back(
            {"/pieces/0/outline/items/0/fullness", [bad](Pattern& p) { edge(p, 0).fullness = bad; }});
    }
    return all;
}

struct Entry {
    const char* name;
    std::function<void(const Pattern&)> call;
};

std::vector<Entry> entries() {
    using P = const Pattern&;
    return {{"check", [](P p) { check(p); }},
            {"compare", [](P p) { compare(skirt(), p); }},
            {"compare before", [](P p) { compare(p, skirt()); }},
            {"measure_line", [](P p) { measure_line(p, "hip line"); }},
            {"measure_level", [](P p) { measure_level(p, "side@50%"); }},
            {"walk_seam", [](P p) { walk_seam(p, "side"); }},
            {"pivot", [](P p) { pivot(p, {}); }},
            {"merge", [](P p) { merge(p, {}); }},
            {"split", [](P p) { split(p, {}); }},
            {"open", [](P p) { open(p, {}); }},
            {"close_as_flare", [](P p) { close_as_flare(p, {}); }},
            {"close_as_gathers", [](P p) { close_as_gathers(p, {}); }},
            {"close_as_seam", [](P p) { close_as_seam(p, {}); }},
            {"close_as_tuck", [](P p) { close_as_tuck(p, {}); }},
            {"cluster", [](P p) { cluster(p, {}); }},
            {"repoint", [](P p) { repoint(p, {}); }},
            {"true_dart", [](P p) { true_dart(p, {}); }},
            {"true_edge", [](P p) { true_edge(p, {}); }},
            {"true_seam", [](P p) { true_seam(p, {}); }},
            {"replay", [](P p) { replay(p, {}); }},
            {"performed", [](P p) { performed(p, {}); }},
            {"apply_rule", [](P p) { apply_rule(p, {}); }},
            {"lay_pattern", [](P p) { lay_pattern(p, {}); }},
            {"draw_pattern", [](P p) { draw_pattern(p, {}); }},
            {"draw_overlay", [](P p) { draw_overlay(skirt(), p, {}); }},
            {"draw_cutting_pieces", [](P p) { draw_cutting_pieces(p); }},
            {"draw_cutting_pieces, made already", [](P p) { draw_cutting_pieces(p, {}, {}); }},
            {"cutting_request", [](P p) { cutting_request(p, skirt().pieces[0]); }},
            {"printed_piece", [](P p) { printed_piece(skirt().pieces[0], p, {}); }},
            {"sewing_plan after a check", [](P p) { sewing_plan(p, CheckReport{}); }},
            {"sewing_plan", [](P p) { sewing_plan(p); }},
            {"sewing_sheet", [](P p) { sewing_sheet(p, {}); }}};
}

TEST(sound_entry, every_rule_broken_once_is_its_own_problem) {
    EXPECT_TRUE(problems_of(skirt()).empty());
    for (const Break& broken : breaks()) {
        Pattern pattern = skirt();
        broken.mend(pattern);
        const auto problems = problems_of(pattern);
        EXPECT_EQ(problems.size(), 1u) << broken.pointer << ": " << UnsoundPattern(problems).what();
        if (!problems.empty()) {
            EXPECT_EQ(problems[0].pointer, broken.pointer) << UnsoundPattern(problems).what();
        }
    }
}

TEST(sound_entry, every_entry_refuses_every_broken_pattern) {
    for (const Break& broken : breaks()) {
        Pattern pattern = skirt();
        broken.mend(pattern);
        for (const Entry& entry : entries())
            EXPECT_THROW(entry.call(pattern), UnsoundPattern) << entry.name << " " << broken.pointer;
    }
}

struct PieceEntry {
    const char* name;
    std::function<void(const Piece&)> call;
};

std::vector<PieceEntry> piece_entries() {
    using P = const Piece&;
    return {{"cutting_line", [](P p) { cutting_line(p); }},
            {"cutting_piece", [](P p) { cutting_piece(p, {}); }},
            {"markings_of", [](P p) { markings_of(p, CuttingLine{}); }},
            {"lay_piece",
             [](P p) {
                 std::vector<std::string> notes;
                 lay_piece(p, CuttingLine{}, {}, notes);
             }},
            {"printed_piece", [](P p) { printed_piece(p, skirt(), {}); }},
            {"cap_of", [](P p) { cap_of(p, 0, PressSide::before); }},
            {"pressed_cap", [](P p) { pressed_cap(p, 0); }},
            {"cap_if_any", [](P p) { cap_if_any(p, 0); }}};
}

TEST(sound_entry, pieces_alone_are_asked_too) {
    EXPECT_TRUE(problems_of(skirt().pieces[0]).empty());
    int looked_at = 0;
    for (const Break& broken : breaks()) {
        Pattern pattern = skirt();
        broken.mend(pattern);
        for (const Piece& piece : pattern.pieces) {
            if (problems_of(piece).empty()) continue;
            ++looked_at;
            for (const PieceEntry& entry : piece_entries())
                EXPECT_THROW(entry.call(piece), UnsoundPattern) << entry.name << " " << broken.pointer;
        }
    }
    EXPECT_GE(looked_at, 35);
}

TEST(sound_entry, every_fixture_that_can_be_read_has_no_problems) {
    int patterns = 0;
    for (const auto& file :
         std::filesystem::recursive_directory_iterator(DARTWRIGHT_SOURCE_DIR "/fixtures")) {
        if (file.path().extension() != ".json") continue;
        try {
            const Pattern pattern = read_pattern_file(file.path().string());
            ++patterns;
            EXPECT_TRUE(problems_of(pattern).empty()) << file.path() << '\n'
                                                      << UnsoundPattern(problems_of(pattern)).what();
        } catch (const InvalidPattern&) {
            // An exercise, a rule, or a file made to be refused.
        }
    }
    EXPECT_GE(patterns, 15);
}

// A pattern on its way to be right can be kept; what was written is refused when it is read.
TEST(sound_entry, the_writer_asks_nothing) {
    Pattern pattern = skirt();
    pattern.pieces[0].cut->fold = "nowhere";
    EXPECT_THROW(read_pattern(write_pattern(pattern), "skirt"), InvalidPattern);
}

TEST(sound_entry, tolerances_given_are_asked_too) {
    Tolerances tolerances;
    tolerances.seam_mm = nan;
    EXPECT_THROW(check(skirt(), tolerances), UnsoundPattern);
}

TEST(sound_entry, a_cutting_rule_given_is_asked_too) {
    const std::vector<std::pair<const char*, std::function<void(CuttingRule&, double)>>> widths{
        {"/cutting/allowance/edges/0/width",
         [](CuttingRule& r, double mm) {
             r.allowance.edges = {{"hem", "", mm}};
         }},
        {"/cutting/allowance/openings/0/width",
         [](CuttingRule& r, double mm) {
             r.allowance.openings = {{"hem", "", mm}};
         }},
        {"/cutting/allowance/seams/0/width",
         [](CuttingRule& r, double mm) {
             r.allowance.seams = {{"side", "", mm}};
         }},
        {"/cutting/allowance/joined", [](CuttingRule& r, double mm) { r.allowance.joined_mm = mm; }},
        {"/cutting/allowance/elsewhere", [](CuttingRule& r, double mm) { r.allowance.elsewhere_mm = mm; }},
        {"/cutting/corners/0/limit",
         [](CuttingRule& r, double mm) {
             r.corners = {{{"hem", "side"}, "", RuleCornerKind::blunted, "", mm}};
         }},
        {"/cutting/notches/depth",
         [](CuttingRule& r, double mm) {
             r.notches = NotchRule{NotchForm::v, mm, 4.0};
         }},
        {"/cutting/notches/width",
         [](CuttingRule& r, double mm) {
             r.notches = NotchRule{NotchForm::v, 5, mm};
         }},
        {"/cutting/darts/trim/wider_than",
         [](CuttingRule& r, double mm) {
             r.darts.trim = DartTrim{mm, 10};
         }},
        {"/cutting/darts/trim/allowance",
         [](CuttingRule& r, double mm) {
             r.darts.trim = DartTrim{10, mm};
         }},
    };
    for (const auto& [pointer, set] : widths) {
        CuttingRule right;
        right.name = "workshop";
        set(right, 5);
        EXPECT_NO_THROW(apply_rule(skirt(), right)) << pointer;
        for (const double bad : {nan, infinite, -infinite, -1.0, 10'001.0, 1e200}) {
            CuttingRule rule;
            rule.name = "workshop";
            set(rule, bad);
            try {
                apply_rule(skirt(), rule);
                ADD_FAILURE() << pointer << " " << bad;
            } catch (const UnsoundPattern& refused) {
                ASSERT_EQ(refused.problems.size(), 1u);
                EXPECT_EQ(refused.problems[0].pointer, pointer);
            }
            Pattern pattern = skirt();
            pattern.cutting = rule;
            for (const Entry& entry : entries())
                EXPECT_THROW(entry.call(pattern), UnsoundPattern) << entry.name << " " << pointer;
        }
    }
}

TEST(sound_entry, widths_of_a_request_are_asked_too) {
    const Piece piece = skirt().pieces[1];
    const std::string dart = piece.outline.items[4].as_dart()->name;
    for (const double bad : {nan, infinite, -infinite, -1.0, 10'001.0, 1e200}) {
        CuttingRule plain;
        plain.name = "workshop";
        EXPECT_THROW(apply_rule(skirt(), plain, bad), BadWords);
        EXPECT_THROW(cutting_line(piece, {bad, {}, {}, {}}), BadWords);
        EXPECT_THROW(cutting_piece(piece, {bad, {}, {}, {}}), BadWords);
        EXPECT_THROW(cutting_line(piece, {{}, {}, {{dart, bad}}, {}}), BadWords);
        EXPECT_THROW(cutting_line(piece, {{}, {{{"waist", "side"}, CornerKind::blunted, "", bad}}, {}, {}}),
                     BadWords);
        CuttingRequest tolerant;
        tolerant.tolerances.gap_mm = bad;
        EXPECT_THROW(cutting_line(piece, tolerant), UnsoundPattern);
        MarkingRequest marked;
        marked.notches.depth_mm = bad;
        EXPECT_THROW(cutting_piece(piece, {}, marked), Impossible);
        marked.notches = {NotchForm::v, 5, bad};
        EXPECT_THROW(cutting_piece(piece, {}, marked), Impossible);
        EXPECT_THROW(lay({}, {bad}), BadWords);
        EXPECT_THROW(lay({}, {900, true, false, bad}), BadWords);
    }
    EXPECT_NO_THROW(cutting_line(piece, {10.0, {}, {{dart, 10}}, {}}));
}

TEST(sound_entry, a_refusal_leaves_the_next_entry_asking) {
    Pattern none = skirt();
    none.pieces[0].outline.items.clear();
    EXPECT_THROW(check(none), UnsoundPattern);
    EXPECT_THROW(check(none), UnsoundPattern);
    EXPECT_TRUE(check(skirt()).passed);
}

TEST(sound_entry, a_clockwise_pattern_is_put_right) {
    const Pattern meant = skirt();
    Pattern clockwise = meant;
    for (Piece& piece : clockwise.pieces) piece.outline = reversed(piece.outline);
    EXPECT_EQ(problems_of(clockwise).size(), clockwise.pieces.size());
    const Pattern right = put_right(clockwise);
    EXPECT_TRUE(problems_of(right).empty());
    EXPECT_EQ(write_pattern(right), write_pattern(meant));
}

}  // namespace
}  // namespace dartwright
