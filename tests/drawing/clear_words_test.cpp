// In the patterns of the fixtures no word lies on a line or on another word.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "dartwright/darts/close_gathers.hpp"
#include "dartwright/darts/close_seam.hpp"
#include "dartwright/darts/close_tuck.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/darts/split.hpp"
#include "dartwright/drawing/cutting_drawing.hpp"
#include "dartwright/drawing/pattern_drawing.hpp"
#include "dartwright/drawing/text_box.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/geometry/flatten.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pages/paper.hpp"
#include "dartwright/pages/print_pages.hpp"
#include "dartwright/pages/printed_piece.hpp"

namespace dartwright {
namespace {

struct Drawn {
    std::vector<std::vector<Point>> lines;
    std::vector<DrawnText> words;
};

void collect(Drawn& drawn, const DrawnGroup& group) {
    constexpr double chord_error_mm = 0.05;
    for (const DrawnItem& item : group.items) {
        if (const DrawnText* text = std::get_if<DrawnText>(&item)) {
            drawn.words.push_back(*text);
            continue;
        }
        const DrawnPath& path = std::get<DrawnPath>(item);
        if (!path.stroke) continue;
        std::vector<Point> points{start_of(path.curves.front())};
        for (const Curve& curve : path.curves) flatten_onto(points, curve, chord_error_mm);
        if (path.is_closed) points.push_back(points.front());
        drawn.lines.push_back(points);
    }
    for (const DrawnGroup& inner : group.groups) collect(drawn, inner);
}

/// What the words of one piece lie on, in words; empty if they are clear.
std::string trouble_in(const DrawnGroup& piece) {
    Drawn drawn;
    collect(drawn, piece);
    std::string trouble;
    for (std::size_t i = 0; i < drawn.words.size(); ++i) {
        const TurnedBox box = box_of(drawn.words[i]);
        for (std::size_t j = 0; j < i; ++j)
            if (is_meeting(box, box_of(drawn.words[j])))
                trouble += drawn.words[i].words + " on " + drawn.words[j].words + "; ";
        for (const std::vector<Point>& line : drawn.lines)
            for (std::size_t k = 1; k < line.size(); ++k)
                if (is_meeting(box, line[k - 1], line[k])) trouble += drawn.words[i].words + " on a line; ";
    }
    return trouble;
}

bool is_piece(const Pattern& pattern, const std::string& name) {
    return std::any_of(pattern.pieces.begin(), pattern.pieces.end(),
                       [&](const Piece& piece) { return piece.name == name; });
}

TEST(clear_words, are_seen_to_be_unclear_where_they_are) {
    DrawnText text;
    text.words = "waist";
    DrawnGroup group;
    group.items.push_back(text);
    EXPECT_EQ(trouble_in(group), "");
    group.items.push_back(text);
    EXPECT_EQ(trouble_in(group), "waist on waist; ");
    group.items.pop_back();
    group.items.push_back(polyline({{1, -20}, {2, 20}}, {}));
    EXPECT_EQ(trouble_in(group), "waist on a line; ");
}

/// What is unclear in a drawing of the pattern, piece by piece.
std::string trouble_in(const Pattern& pattern, const Drawing& drawing) {
    std::string trouble;
    for (const DrawnGroup& group : drawing.groups)
        if (is_piece(pattern, group.name)) trouble += trouble_in(group);
    return trouble;
}

TEST(clear_words, in_every_fixture_alone_and_laid_over_itself) {
    const std::string root = std::string(DARTWRIGHT_SOURCE_DIR) + "/fixtures";
    std::size_t patterns = 0;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(root)) {
        const std::string path = entry.path().string();
        const bool is_pattern = entry.path().extension() == ".json" &&
                                path.find(".expected.") == std::string::npos &&
                                path.find("/invalid/") == std::string::npos &&
                                path.find("/fixtures/rules/") == std::string::npos &&
                                path.find("/fixtures/exercises/") == std::string::npos;
        if (!is_pattern) continue;
        const Pattern pattern = read_pattern_file(path);
        EXPECT_EQ(trouble_in(pattern, draw_pattern(pattern, {})), "") << path;
        EXPECT_EQ(trouble_in(pattern, draw_overlay(pattern, pattern, {})), "") << path;
        ++patterns;
    }
    EXPECT_GE(patterns, 4u);
}

/// Patterns that operations make crowded: opened pieces with their darts divided, separated ones, gathers and
/// tucks.
std::vector<Pattern> crowded_patterns() {
    const std::string root = std::string(DARTWRIGHT_SOURCE_DIR) + "/fixtures/";
    const Pattern block = read_pattern_file(root + "blocks/close-fitting.json");
    const Pattern whole = open(block, {"front", Worn::front}).pattern;
    std::vector<Pattern> all{whole,
                             open(read_pattern_file(root + "workshop/chorus-bodice.json"), {"front"}).pattern,
                             open(read_pattern_file(root + "blocks/three-measure.json"), {"front"}).pattern};
    const auto divided = [](const Pattern& pattern, const std::string& side,
                            const std::vector<std::string>& to) {
        SplitRequest request;
        request.piece = "front";
        request.dart = side + " bust dart";
        for (const std::string& place : to) request.places.push_back({side + " " + place, 0.5, "", ""});
        return split(pattern, request).pattern;
    };
    all.push_back(
        divided(divided(whole, "left", {"side@50%", "shoulder@50%"}), "right", {"armhole@50%", "side@50%"}));
    CloseSeamRequest princess;
    princess.piece = "front";
    princess.dart = "waist dart";
    princess.with = "bust dart";
    princess.first_name = "centre front";
    princess.second_name = "side front";
    princess.seam = "princess seam";
    princess.round_mm = 50;
    all.push_back(close_as_seam(block, princess).pattern);
    all.push_back(
        close_as_tuck(close_as_gathers(block, {"front", "waist dart"}).pattern, {"back", "waist dart", 60})
            .pattern);
    return all;
}

TEST(clear_words, on_pieces_that_operations_made_crowded) {
    for (const Pattern& pattern : crowded_patterns()) {
        EXPECT_EQ(trouble_in(pattern, draw_pattern(pattern, {})), "");
        for (const Piece& piece : pattern.pieces) {
            CuttingRequest request;
            request.undecided_mm = 10;
            const CuttingPiece cut = cutting_piece(piece, request);
            const DrawnGroup group = draw_cutting_piece(
                cut, label_of_piece({pattern.name, "", "", pattern.unit}, pattern, piece.name));
            EXPECT_EQ(trouble_in(group), "") << piece.name;
            Drawn drawn;
            collect(drawn, group);
            for (const DrawnText& text : drawn.words)
                EXPECT_EQ(where_in_polygon(cut.line.points, box_of(text).centre), Where::inside)
                    << piece.name << ": " << text.words;
        }
    }
}

TEST(clear_words, on_the_pieces_to_cut_and_inside_their_cutting_line) {
    const std::string root = std::string(DARTWRIGHT_SOURCE_DIR) + "/fixtures/";
    for (const char* name : {"workshop/chorus-bodice", "workshop/chorus-bodice-inch",
                             "workshop/after-fitting", "blocks/close-fitting", "blocks/three-measure"}) {
        const Pattern pattern = read_pattern_file(root + name + std::string(".json"));
        for (const Piece& piece : pattern.pieces) {
            CuttingRequest request;
            request.undecided_mm = 10;
            const CuttingPiece cut = cutting_piece(piece, request);
            const DrawnGroup group =
                draw_cutting_piece(cut, {pattern.name, "12", "26 November", pattern.unit});
            EXPECT_EQ(trouble_in(group), "") << name << " " << piece.name;
            Drawn drawn;
            collect(drawn, group);
            EXPECT_GE(drawn.words.size(), 4u);
            for (const DrawnText& text : drawn.words)
                EXPECT_EQ(where_in_polygon(cut.line.points, box_of(text).centre), Where::inside)
                    << name << " " << piece.name << ": " << text.words;
        }
    }
}

/// The layer of that name, wherever it is.
const DrawnGroup* find_layer(const std::vector<DrawnGroup>& groups, const std::string& name) {
    for (const DrawnGroup& group : groups) {
        if (group.name == name) return &group;
        if (const DrawnGroup* inner = find_layer(group.groups, name)) return inner;
    }
    return nullptr;
}

// `to B2` on a cutting line hides a piece of it, the words having white about them.
TEST(clear_words, beside_the_joints_of_pages_too) {
    const std::string root = std::string(DARTWRIGHT_SOURCE_DIR) + "/fixtures/";
    std::size_t labels = 0;
    for (const char* name : {"workshop/chorus-bodice", "workshop/chorus-bodice-inch",
                             "workshop/after-fitting", "blocks/close-fitting",
                             "faults/seam-allowance.flat-felled.true", "faults/fold-corner.second.true"}) {
        Pattern pattern = read_pattern_file(root + name + std::string(".json"));
        const std::optional<Cut>& cut = pattern.pieces[0].cut;
        if (cut && !cut->fold.empty() && cut->second_fold.empty())
            pattern = open(pattern, {pattern.pieces[0].name}).pattern;
        std::vector<PrintedPiece> pieces;
        for (const Piece& piece : pattern.pieces)
            pieces.push_back(printed_piece(piece, pattern, {pattern.name, "", "", pattern.unit}));
        for (const char* paper : {"A4", "letter"}) {
            const auto found = std::find_if(papers().begin(), papers().end(),
                                            [&](const Paper& each) { return each.name == paper; });
            ASSERT_NE(found, papers().end());
            PrintRequest request;
            request.paper = *found;
            for (const Drawing& page : print_pages(pieces, request).pages) {
                const DrawnGroup* joints = find_layer(page.groups, "matching lines");
                if (!joints) continue;
                Drawn printed;
                for (const Piece& piece : pattern.pieces)
                    if (const DrawnGroup* layer = find_layer(page.groups, piece.name))
                        collect(printed, *layer);
                for (const DrawnItem& item : joints->items) {
                    const DrawnText* label = std::get_if<DrawnText>(&item);
                    if (!label) continue;
                    ++labels;
                    for (const std::vector<Point>& line : printed.lines)
                        for (std::size_t k = 1; k < line.size(); ++k)
                            EXPECT_FALSE(is_meeting(box_of(*label), line[k - 1], line[k]))
                                << name << ' ' << paper << ' ' << label->words;
                    for (const DrawnText& words : printed.words)
                        EXPECT_FALSE(is_meeting(box_of(*label), box_of(words)))
                            << name << ": " << label->words << " on " << words.words;
                }
            }
        }
    }
    EXPECT_GE(labels, 100u);
}

TEST(clear_words, with_the_tags_of_findings) {
    for (const char* name : {"dart-legs", "dart-point", "dart-crossing", "seam-corner", "notch-place"}) {
        const std::string path =
            std::string(DARTWRIGHT_SOURCE_DIR) + "/fixtures/faults/" + name + std::string(".json");
        const Pattern pattern = read_pattern_file(path);
        DrawOptions options;
        options.findings = check(pattern).findings;
        EXPECT_FALSE(options.findings.empty()) << path;
        const Drawing drawing = draw_pattern(pattern, options);
        for (const DrawnGroup& piece : drawing.groups) {
            if (!is_piece(pattern, piece.name)) continue;
            // A tag's number lies on its own tag, and its leader on the lines where the finding is.
            Drawn tags;
            DrawnGroup rest = piece;
            if (rest.groups.back().name == "findings") {
                collect(tags, rest.groups.back());
                rest.groups.pop_back();
            }
            EXPECT_EQ(trouble_in(rest), "") << path;
            Drawn words;
            collect(words, rest);
            for (const DrawnText& number : tags.words)
                for (const DrawnText& text : words.words)
                    EXPECT_FALSE(is_meeting(box_of(number), box_of(text))) << path << ' ' << text.words;
        }
    }
}

TEST(clear_words, on_a_dolls_bodice_too) {
    Pattern pattern =
        read_pattern_file(std::string(DARTWRIGHT_SOURCE_DIR) + "/fixtures/workshop/chorus-bodice.json");
    constexpr double share = 0.15;
    const auto shrink = [](Point& p) { p = {share * p.x, share * p.y}; };
    Piece& piece = pattern.pieces[0];
    pattern.pieces.resize(1);
    pattern.seams.clear();  // the back, which they name, is gone
    piece.marks.clear();
    shrink(piece.outline.start);
    for (OutlineItem& item : piece.outline.items) {
        shrink(item.to);
        if (EdgeItem* edge = item.as_edge()) {
            if (CubicShape* cubic = std::get_if<CubicShape>(&edge->shape))
                for (Point& control : cubic->controls) shrink(control);
        } else {
            shrink(item.as_dart()->point);
            if (item.as_dart()->pivot) shrink(*item.as_dart()->pivot);
        }
    }
    piece.notches.clear();
    shrink(piece.grain->from);
    shrink(piece.grain->to);
    for (const DrawnGroup& group : draw_pattern(pattern, {}).groups)
        if (group.name == piece.name) {
            EXPECT_EQ(trouble_in(group), "");
        }
}

}  // namespace
}  // namespace dartwright
