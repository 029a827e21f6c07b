// Another pattern is said to be that before anything of it is marked, and no draft is taken for one.

#include "dartwright/assessing/strangers.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <filesystem>
#include <random>

#include "assessing/generated_exercises.hpp"
#include "assessing/other_patterns.hpp"
#include "dartwright/cutting/cutting_line.hpp"
#include "dartwright/pattern/pattern_problems.hpp"

namespace dartwright {
namespace {

using testing::any_other_measure;
using testing::evenly;
using testing::image;
using testing::real_between;

Pattern fixture(const std::string& name) {
    return read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/" + name);
}

struct Known {
    std::string name;
    std::string file;  ///< of the block
    PreparedExercise exercise;
    Pattern block() const { return exercise.exercise.pattern; }
};

Known dart_to_the_shoulder(const std::string& block) {
    Exercise exercise;
    exercise.name = block;
    exercise.pattern = fixture(block);
    exercise.ladders = usual_ladders();
    const Made made{
        "pivot",
        {{"piece", "front"}, {"dart", "waist dart"}, {"to", "shoulder@40%/neck"}, {"name", "moved"}}};
    exercise.tasks = {{"move", "", OperationTask{made}, {{Criterion::place, 5}, {Criterion::gone, 5}}},
                      {"keep", "", KeepTask{}, {{Criterion::lengths, 5}, {Criterion::seams, 5}}}};
    return {"dart to the shoulder, " + block, block, prepared(exercise)};
}

/// The exercises that come with the project, and one on each block.
const std::vector<Known>& all_known() {
    static const std::vector<Known> all = [] {
        std::vector<Known> out;
        for (const auto& [name, block] :
             {std::pair("bust-dart-to-side.json", "workshop/chorus-bodice-inch.json"),
              std::pair("chorus-class/exercise.json", "workshop/chorus-bodice.json")})
            out.push_back({name, block,
                           prepared(read_exercise_file(
                               std::string(DARTWRIGHT_SOURCE_DIR "/fixtures/exercises/") + name))});
        for (const char* block : {"workshop/chorus-bodice.json", "workshop/chorus-bodice-inch.json",
                                  "blocks/close-fitting.json", "blocks/three-measure.json"})
            out.push_back(dart_to_the_shoulder(block));
        return out;
    }();
    return all;
}
const Known& any_known() {
    return all_known()[testing::any_index_of(all_known())];
}

void expect_stranger(const Known& known, const Pattern& draft) {
    const Assessment assessment = assess(known.exercise, draft);
    RC_LOG() << known.name << "\n" << testing::explained(assessment);
    RC_ASSERT(assessment.unread.empty());
    RC_ASSERT(assessment.is_another_pattern);
    RC_ASSERT(assessment.marks == 0);
    RC_ASSERT(assessment.of > 0);
}
bool is_said_to_be_the_cutting_line(const Assessment& assessment) {
    return !assessment.notes.empty() && assessment.notes[0].find("cutting line") != std::string::npos;
}
void expect_draft(const Known& known, const Pattern& draft) {
    const Assessment assessment = assess(known.exercise, draft);
    RC_ASSERT(!is_said_to_be_the_cutting_line(assessment));
    RC_LOG() << known.name << "\n" << testing::explained(assessment);
    RC_ASSERT(assessment.unread.empty());
    RC_ASSERT(!assessment.is_another_pattern);
}

// ---- strangers
// ---------------------------------------------------------------------------------------------

// Each fixture as a draft of each exercise: those of the same block are drafts of it.
TEST(strangers, every_fixture_is_another_pattern_unless_it_is_of_that_block) {
    namespace fs = std::filesystem;
    std::size_t strange = 0;
    std::size_t own = 0;
    for (const Known& known : all_known()) {
        for (const auto& entry : fs::recursive_directory_iterator(DARTWRIGHT_SOURCE_DIR "/fixtures")) {
            const std::string path = entry.path().string();
            const bool is_pattern =
                entry.path().extension() == ".json" && path.find("expected") == std::string::npos &&
                path.find("/exercise") == std::string::npos && path.find("/rules/") == std::string::npos;
            if (!is_pattern) continue;
            const Pattern draft = read_pattern_file(path);
            const Assessment assessment = assess(known.exercise, draft);
            ASSERT_EQ(assessment.unread, "") << path;
            // The workshop tried it on, and mended its front.
            const bool is_own =
                path.ends_with(known.file) || (path.ends_with("workshop/after-fitting.json") &&
                                               known.file == "workshop/chorus-bodice.json");
            EXPECT_NE(assessment.is_another_pattern, is_own) << path << " as " << known.name;
            if (!is_own) {
                EXPECT_EQ(assessment.marks, 0) << path;
            }
            ++(is_own ? own : strange);
        }
    }
    EXPECT_GE(strange, 300u);
    EXPECT_GE(own, 6u);
}

/// A careful hand misses less of an edge, mm.
constexpr double hand_mm = 5;
constexpr std::size_t fewest_other_edges = 4;

std::size_t edges_off(const Piece& one, const Piece& other, double scale) {
    const std::vector<Run> drawn = runs_of(other.outline);
    std::size_t off = 0;
    for (const Run& run : runs_of(one.outline))
        if (std::abs(find_run(drawn, run.edge)->length / scale - run.length) > hand_mm) ++off;
    return off;
}

// At the scale that suits most edges, too, some are other ones, in each piece: measures that happen to have
// changed all alike, or against each other, make the block, or its front, at another scale.
bool is_other_block(const Pattern& block, const Pattern& draft) {
    for (std::size_t i = 0; i < block.pieces.size(); ++i) {
        const std::vector<Run> drawn = runs_of(draft.pieces[i].outline);
        for (const Run& run : runs_of(block.pieces[i].outline)) {
            const double scale = find_run(drawn, run.edge)->length / run.length;
            std::size_t off = 0;
            for (std::size_t k = 0; k < block.pieces.size(); ++k) {
                const std::size_t here = edges_off(block.pieces[k], draft.pieces[k], scale);
                if (here == 0) return false;
                off += here;
            }
            if (off < fewest_other_edges) return false;
        }
    }
    return true;
}

RC_GTEST_PROP(strangers, block_for_another_wearer_earns_nothing, ()) {
    const Known& known = any_known();
    const Pattern block = *evenly(0, 2) == 0 ? known.block() : known.exercise.finished;
    Pattern draft = testing::for_other_wearer(block);
    RC_PRE(is_other_block(block, draft));
    if (*evenly(0, 2) == 0) draft = testing::by_hand(draft, real_between(0.2, 2));
    RC_PRE(problems_of(draft).empty());
    expect_stranger(known, draft);
}

RC_GTEST_PROP(strangers, block_stretched_one_way_earns_nothing, ()) {
    const Known& known = any_known();
    const double by = any_other_measure(0.08, 0.2);
    const bool is_across = *evenly(0, 2) == 0;
    const Pattern block = *evenly(0, 2) == 0 ? known.block() : known.exercise.finished;
    expect_stranger(known, testing::stretched(block, is_across ? by : 1, is_across ? 1 : by));
}

// ---- drafts
// ------------------------------------------------------------------------------------------------

void move(Outline& outline, std::size_t item, Vector by) {
    outline.items[item].to = outline.items[item].to + by;
    if (item + 1 == outline.items.size()) outline.start = outline.items[item].to;
}

Vector any_way(double least_mm, double most_mm) {
    const double way = real_between(-pi, pi);
    return real_between(least_mm, most_mm) * Vector{std::cos(way), std::sin(way)};
}

Pattern with_slip(Pattern draft) {
    Piece& piece = draft.pieces[testing::any_index_of(draft.pieces)];
    Outline& outline = piece.outline;
    const std::size_t item = testing::any_index_of(outline.items);
    switch (*evenly(0, 3)) {
        case 0:  // a corner
            move(outline, item, any_way(1, 30));
            break;
        case 1: {  // an edge, or a dart's mouth, shifted
            const Vector by = any_way(1, 20);
            move(outline, item, by);
            move(outline, (item + 1) % outline.items.size(), by);
            break;
        }
        default: {  // a dart's point
            for (OutlineItem& each : outline.items)
                if (DartItem* dart = each.as_dart()) dart->point = dart->point + any_way(1, 30);
        }
    }
    return draft;
}

// Put down anywhere, either way up, and listed so.
Pattern put_down(const Pattern& draft, double scale) {
    return image(
        {real_between(-pi, pi), scale, *evenly(0, 2) == 0, {scale * real_between(-900, 900), scale * 40}},
        draft);
}
double any_scale() {
    switch (*evenly(0, 3)) {
        case 0:
            return 1;
        case 1:
            return *rc::gen::element(10.0, 0.1, 25.4, 1 / 25.4, 2.54, 1 / 2.54);
        default:
            return real_between(0.5, 2);
    }
}

Pattern any_draft(const Known& known) {
    return *evenly(0, 3) == 0 ? known.block() : known.exercise.finished;
}

void leave_one_piece(Pattern& draft) {
    draft.pieces = {draft.pieces[testing::any_index_of(draft.pieces)]};
    draft.seams.clear();
}

RC_GTEST_PROP(strangers, draft_with_one_slip_is_a_draft, ()) {
    const Known& known = any_known();
    const Pattern draft = testing::by_hand(with_slip(any_draft(known)), real_between(0, 1));
    RC_PRE(problems_of(draft).empty());
    expect_draft(known, put_down(draft, 1));
}

RC_GTEST_PROP(strangers, draft_by_hand_with_or_without_all_pieces_is_a_draft, ()) {
    const Known& known = any_known();
    Pattern draft = testing::by_hand(any_draft(known), real_between(0.2, 2));
    RC_PRE(problems_of(draft).empty());
    if (*evenly(0, 2) == 0) leave_one_piece(draft);
    expect_draft(known, put_down(draft, 1));
}

// A scale of its own, half of the pattern missing and a hand that misses by 2 mm are too much at once.
RC_GTEST_PROP(strangers, draft_at_a_wrong_scale_is_a_draft, ()) {
    const Known& known = any_known();
    const bool is_whole = *evenly(0, 2) == 0;
    Pattern draft = testing::by_hand(any_draft(known), real_between(0, is_whole ? 2 : 1));
    RC_PRE(problems_of(draft).empty());
    if (!is_whole) leave_one_piece(draft);
    expect_draft(known, put_down(draft, any_scale()));
}

// A hand that trembles makes edges longer, and by no edge is the scale told: by the cloth it is. And it takes
// one edge beside another with it.
TEST(strangers, draft_by_a_trembling_hand_at_a_wrong_scale_is_a_draft) {
    constexpr double missed_mm = 1.25;
    std::mt19937 bits(1);
    const auto miss = [&](Point& p) {
        const auto either_way = [&] { return bits() % 2 == 0 ? missed_mm : -missed_mm; };
        p.x += either_way();
        p.y += either_way();
    };
    for (const Known& known : all_known()) {
        for (int copy = 0; copy < 20; ++copy) {
            Pattern draft = known.block();
            for (Piece& piece : draft.pieces) {
                testing::change_points(piece, miss);
                piece.outline.items.back().to = piece.outline.start;
            }
            ASSERT_TRUE(problems_of(draft).empty());
            const Assessment assessment = assess(known.exercise, image({1, 0.5, true, {5, 5}}, draft));
            EXPECT_FALSE(assessment.is_another_pattern) << known.name << ", copy " << copy;
        }
    }
}

// As printers make it that draw the paper in too fast or too slowly, by up to 2 per cent.
RC_GTEST_PROP(strangers, draft_stretched_one_way_by_a_bad_printer_is_a_draft, ()) {
    const Known& known = any_known();
    const double by = 1 + real_between(-1, 1) * 0.02;
    const bool is_across = *evenly(0, 2) == 0;
    const Pattern draft = testing::stretched(any_draft(known), is_across ? by : 1, is_across ? 1 : by);
    expect_draft(known, put_down(testing::by_hand(draft, real_between(0, 0.5)), 1));
}

RC_GTEST_PROP(strangers, draft_with_its_pieces_called_as_one_another_or_otherwise_is_a_draft, ()) {
    const Known& known = any_known();
    Pattern draft = any_draft(known);
    draft.seams.clear();
    if (*evenly(0, 2) == 0)
        draft = testing::renamed(draft);
    else
        std::swap(draft.pieces[0].name, draft.pieces[1].name);
    expect_draft(known, put_down(testing::by_hand(draft, real_between(0, 1)), 1));
}

RC_GTEST_PROP(strangers, draft_with_one_slip_at_a_wrong_scale_is_a_draft, ()) {
    const Known& known = any_known();
    const Pattern draft = testing::by_hand(with_slip(any_draft(known)), real_between(0, 0.2));
    RC_PRE(problems_of(draft).empty());
    expect_draft(known, put_down(draft, any_scale()));
}

// ---- the cutting line traced
// --------------------------------------------------------------------------------

// The printed line followed with a pencil: a straight bit from one place to the next, 8 mm apart or at a
// corner.
Piece traced(const Piece& piece) {
    constexpr double apart_mm = 8;
    const CuttingLine line = cutting_line(piece);
    const std::size_t count = line.sides.size();
    const auto name = [&](std::size_t i) {
        const OutlineItem& item = piece.outline.items[line.sides[i % count].item];
        return item.as_edge() ? item.as_edge()->edge : "dart " + std::to_string(line.sides[i % count].item);
    };
    std::size_t first = 0;
    while (name(first) == name(first + count - 1) || name(first).starts_with("dart ")) ++first;
    Piece out = piece;
    out.outline = {line.points[first], {}};
    Point last = out.outline.start;
    for (std::size_t k = first; k < first + count; ++k) {
        const Point to = line.points[(k + 1) % count];
        const bool is_dart = name(k).starts_with("dart ");
        const bool is_last = name(k + 1) != name(k);
        if (!is_last && (is_dart || distance(last, to) < apart_mm)) continue;
        OutlineItem item = piece.outline.items[line.sides[k % count].item];
        item.to = last = to;
        if (EdgeItem* edge = item.as_edge()) *edge = {edge->edge, StraightShape{}, 0};
        out.outline.items.push_back(item);
    }
    out.outline.items.back().to = out.outline.start;
    return out;
}
Pattern traced(Pattern pattern) {
    for (Piece& piece : pattern.pieces) piece = traced(piece);
    return pattern;
}

// As wide all round, but for a fold.
Pattern with_allowances(Pattern pattern, double width_mm) {
    for (Piece& piece : pattern.pieces) {
        piece.allowance.clear();
        for (const Run& run : runs_of(piece.outline))
            if (!piece.cut || piece.cut->fold != run.edge) piece.allowance.push_back({run.edge, width_mm});
    }
    return pattern;
}

RC_GTEST_PROP(strangers, draft_along_the_cutting_line_is_said_to_be_that, ()) {
    Exercise exercise = any_known().exercise.exercise;
    exercise.pattern = with_allowances(exercise.pattern, real_between(8, 20));
    const Known known{exercise.name, "", prepared(exercise)};
    const Pattern draft = testing::by_hand(traced(any_draft(known)), real_between(0, 0.5));
    RC_PRE(problems_of(draft).empty());
    const Assessment assessment = assess(known.exercise, put_down(draft, 1));
    RC_LOG() << known.name << "\n" << testing::explained(assessment);
    RC_ASSERT(assessment.unread.empty());
    RC_ASSERT(!assessment.is_another_pattern);
    RC_ASSERT(is_said_to_be_the_cutting_line(assessment));
    expect_draft(known, put_down(testing::by_hand(any_draft(known), real_between(0, 2)), 1));
}

// Of the workshop's bodice only sides, shoulders and the centre back have an allowance.
TEST(strangers, cutting_line_of_some_edges_is_told_too) {
    for (const Known& known : all_known()) {
        for (const Pattern& draft : {known.block(), known.exercise.finished}) {
            const Assessment assessment = assess(known.exercise, traced(draft));
            EXPECT_TRUE(is_said_to_be_the_cutting_line(assessment)) << known.name;
            EXPECT_LT(assessment.marks, assessment.of) << known.name;
        }
    }
}

// Of the pattern's own cutting line a stretched one is none, nor that of another pattern.
TEST(strangers, cutting_line_of_another_pattern_is_another_pattern) {
    const Known known = dart_to_the_shoulder("workshop/chorus-bodice.json");
    const Pattern cut = traced(with_allowances(known.block(), 12));
    EXPECT_TRUE(assess(known.exercise, testing::stretched(cut, 1.1, 1)).is_another_pattern);
    const Pattern other = traced(with_allowances(fixture("blocks/close-fitting.json"), 12));
    EXPECT_TRUE(assess(known.exercise, other).is_another_pattern);
}

// ---- the limits at a scale of its own
// --------------------------------------------------------------------------------

/// No unit is taken for another one by so much.
Pattern at_a_scale_of_its_own(const Pattern& pattern) {
    return image({0.4, 1.3, false, {30, 50}}, pattern);
}

// Within the reach of a hand all round, but not within what a scale that is free leaves of it: by the whole
// reach, or by a share of 0.75 of the way round, it would be the exercise's.
TEST(strangers, piece_stretched_a_little_at_a_scale_of_its_own_is_not_the_exercises) {
    for (const char* block : {"workshop/chorus-bodice.json", "blocks/three-measure.json"}) {
        const Known known = dart_to_the_shoulder(block);
        const auto is_another = [&](double by) {
            Pattern draft = testing::stretched(known.block(), 1 + by, 1 - by);
            draft.pieces = {draft.pieces[0]};
            draft.seams.clear();
            return assess(known.exercise, at_a_scale_of_its_own(draft)).is_another_pattern;
        };
        EXPECT_FALSE(is_another(0.01)) << block;
        EXPECT_TRUE(is_another(0.022)) << block;
    }
}

// In both pieces a corner of the shoulder is moved: of each 0.8 and more is the exercise's still, and of all
// but two edges, which is too little where the scale is free.
TEST(strangers, block_with_a_slip_in_each_piece_at_a_scale_of_its_own_is_another_pattern) {
    for (const char* block : {"workshop/chorus-bodice.json", "blocks/three-measure.json"}) {
        const Known known = dart_to_the_shoulder(block);
        const auto with_shoulders_off = [&](double by_mm) {
            Pattern draft = known.block();
            for (Piece& piece : draft.pieces)
                for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
                    const EdgeItem* edge = piece.outline.items[i].as_edge();
                    if (edge && edge->edge == "shoulder") move(piece.outline, i, {by_mm, -by_mm});
                }
            return draft;
        };
        const auto is_another = [&](const Pattern& draft) {
            return assess(known.exercise, draft).is_another_pattern;
        };
        EXPECT_FALSE(is_another(with_shoulders_off(16))) << block;
        EXPECT_FALSE(is_another(at_a_scale_of_its_own(with_shoulders_off(4)))) << block;
        EXPECT_TRUE(is_another(at_a_scale_of_its_own(with_shoulders_off(16)))) << block;
    }
}

// Of four edges it has three, two of them as long and at the same corner, once an inch is taken for a
// centimetre: so have many patterns.
TEST(strangers, piece_that_lacks_one_of_four_edges_and_has_two_is_another_pattern) {
    const Pattern block = read_pattern(R"({"dartwright": 1, "name": "four edges", "unit": "mm", "pieces": [
        {"name": "piece", "grain": {"from": [20, 40], "to": [20, 120], "along": "side"},
         "outline": {"start": [0, 0], "items": [
            {"edge": "waist", "to": [202, 0]}, {"edge": "side", "to": [108.9, 172.5]},
            {"edge": "top", "to": [-10.1, 168.3]},
            {"dart": "dart", "point": [-18.8, 62.6], "to": [-40.1, 166.5]},
            {"edge": "top", "to": [-146.7, 157.3]}, {"edge": "front", "to": [0, 0]}]}}]})",
                                       "four-edges.json");
    Exercise exercise;
    exercise.name = "four edges";
    exercise.pattern = block;
    exercise.ladders = usual_ladders();
    exercise.tasks = {
        {"move",
         "",
         OperationTask{
             {"pivot",
              {{"piece", "piece"}, {"dart", "dart"}, {"to", "front@100mm/waist"}, {"name", "moved"}}}},
         {{Criterion::place, 5}, {Criterion::gone, 5}}}};
    const PreparedExercise asked = prepared(exercise);
    const Pattern draft = read_pattern(R"({"dartwright": 1, "name": "three edges", "unit": "mm", "pieces": [
        {"name": "piece", "outline": {"start": [0, 0], "items": [
            {"edge": "waist", "to": [202, 0]}, {"edge": "side", "to": [108.9, 172.5]},
            {"edge": "top", "to": [0, 0]}]}}]})",
                                       "three-edges.json");
    for (const double scale : {1.0, 2.54, 2.6, 10.0})
        EXPECT_TRUE(assess(asked, image({0.3, scale, false, {5, 5}}, draft)).is_another_pattern) << scale;
    EXPECT_FALSE(assess(asked, image({0.3, 2.54, false, {5, 5}}, block)).is_another_pattern);
}

// Said of the draft: it is the size that is wrong, and one piece that is there.
TEST(strangers, right_pieces_among_others_are_a_draft) {
    const Known known = dart_to_the_shoulder("workshop/chorus-bodice.json");
    Pattern draft = known.exercise.finished;
    draft.seams.clear();
    draft.pieces[1] = fixture("blocks/close-fitting.json").pieces[1];
    EXPECT_FALSE(assess(known.exercise, draft).is_another_pattern);
    draft.pieces[0] = fixture("blocks/close-fitting.json").pieces[0];
    EXPECT_TRUE(assess(known.exercise, draft).is_another_pattern);
}

}  // namespace
}  // namespace dartwright
