#include "dartwright/drawing/pattern_drawing.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "dartwright/darts/cap.hpp"
#include "dartwright/drawing/cairo_writer.hpp"
#include "dartwright/drawing/svg_writer.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pattern/pattern_problems.hpp"
#include "drawing/svg_reading.hpp"

namespace dartwright {
namespace {

using namespace testing_svg;

Pattern fixture(const std::string& name) {
    return read_pattern_file(std::string(DARTWRIGHT_SOURCE_DIR) + "/fixtures/" + name);
}
Pattern chorus_bodice() {
    return fixture("workshop/chorus-bodice.json");
}

/// With the seams that name it.
void rename_piece(Pattern& pattern, const std::string& name, const std::string& now) {
    for (Piece& piece : pattern.pieces)
        if (piece.name == name) piece.name = now;
    for (Seam& seam : pattern.seams)
        for (SeamSide& side : seam.joins)
            for (SeamPart& part : side)
                if (part.piece == name) part.piece = now;
}

Finding finding_at(Severity severity, const std::string& piece, Point at, const std::string& message) {
    Finding finding;
    finding.severity = severity;
    finding.piece = piece;
    finding.at = at;
    finding.message = message;
    finding.remedy = "Mend " + message;
    return finding;
}

std::vector<Finding> some_findings() {
    std::vector<Finding> findings{finding_at(Severity::fault, "front", {111, 0}, "legs that differ"),
                                  finding_at(Severity::note, "front", {111, 0}, "a mouth that kinks"),
                                  finding_at(Severity::fault, "back", {0, 404}, "a corner & a kink")};
    findings.emplace_back();
    findings.back().message = "a seam without a place";
    return findings;
}

/// All words of the document joined by blanks, so that wrapped sentences are whole again.
std::string all_words(const pugi::xml_document& document) {
    std::string joined_words;
    for (const std::string& words : words_in(document)) joined_words += words + " ";
    return joined_words;
}

bool has_words(const std::vector<std::string>& words, const std::string& wanted) {
    return std::find(words.begin(), words.end(), wanted) != words.end();
}

/// The corners of an outline as the path's data gives them: every end and control point.
std::vector<Point> points_of_outline(const Outline& outline) {
    std::vector<Point> points{outline.start};
    const auto add = [&](const Curve& curve) {
        if (const Cubic* cubic = std::get_if<Cubic>(&curve))
            points.insert(points.end(), cubic->p.begin() + 1, cubic->p.end());
        else
            points.push_back(end_of(curve));
    };
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (outline.items[i].as_dart()) {
            add(legs_of_item(outline, i).to_point);
            add(legs_of_item(outline, i).from_point);
        } else {
            for (const Curve& curve : curves_of_item(outline, i)) add(curve);
        }
    }
    return points;
}

TEST(pattern_drawing, outlines_lie_at_the_pieces_coordinates_but_for_a_shift) {
    for (const char* name : {"workshop/chorus-bodice.json", "workshop/chorus-bodice-inch.json",
                             "blocks/close-fitting.json", "blocks/three-measure.json"}) {
        const Pattern pattern = fixture(name);
        const pugi::xml_document document = parsed(to_svg(draw_pattern(pattern, {})));
        for (const Piece& piece : pattern.pieces) {
            const pugi::xml_node group = group_titled(document.child("svg"), piece.name);
            const pugi::xml_node path = group_titled(group, "outline").child("path");
            ASSERT_TRUE(path) << name << ' ' << piece.name;
            const std::vector<Point> drawn = points_of_path(path.attribute("d").value());
            const std::vector<Point> expected = points_of_outline(piece.outline);
            ASSERT_EQ(drawn.size(), expected.size());
            const Vector shift = drawn.front() - expected.front();
            // Both places of a distance are rounded to 1e-4 mm.
            for (std::size_t i = 0; i < drawn.size(); ++i)
                EXPECT_LE(distance(drawn[i], expected[i] + shift), 1.5e-4) << name << ' ' << piece.name;
        }
    }
}

TEST(pattern_drawing, layers_are_named_for_what_they_hold) {
    const pugi::xml_document document = parsed(to_svg(draw_pattern(chorus_bodice(), {})));
    const pugi::xml_node svg = document.child("svg");
    for (const char* layer :
         {"paper", "marks", "outline", "darts", "caps", "notches", "grain", "fold", "words"})
        EXPECT_TRUE(group_titled(group_titled(svg, "front"), layer)) << layer;
    EXPECT_TRUE(group_titled(group_titled(svg, "back"), "outline"));
    EXPECT_FALSE(group_titled(group_titled(svg, "back"), "fold"));  // it is cut as a pair
    EXPECT_TRUE(group_titled(svg, "scale bar"));
}

TEST(pattern_drawing, caps_lie_over_the_mouths) {
    const Pattern pattern = chorus_bodice();
    const pugi::xml_document document = parsed(to_svg(draw_pattern(pattern, {})));
    const Piece& front = pattern.pieces[0];
    const pugi::xml_node group = group_titled(document.child("svg"), "front");
    const Vector shift =
        points_of_path(group_titled(group, "outline").child("path").attribute("d").value())[0] -
        front.outline.start;
    std::size_t drawn = 0;
    for (const pugi::xml_node path : group_titled(group, "caps").children("path")) {
        const std::size_t dart = dart_named(front, drawn++ == 0 ? "waist dart" : "side dart");
        const Cap cap = *pressed_cap(front, dart);
        std::vector<Point> expected{start_of_item(front.outline, dart)};
        for (const Curve& curve : cap.curves) {
            const Cubic* cubic = std::get_if<Cubic>(&curve);
            if (cubic) expected.insert(expected.end(), {cubic->p[1], cubic->p[2]});
            expected.push_back(end_of(curve));
        }
        const std::vector<Point> points = points_of_path(path.attribute("d").value());
        ASSERT_EQ(points.size(), expected.size());
        for (std::size_t i = 0; i < points.size(); ++i)
            EXPECT_LE(distance(points[i], expected[i] + shift), 1.5e-4) << i;
    }
    EXPECT_EQ(drawn, 2u);
}

TEST(pattern_drawing, caps_are_left_out_where_they_are_not_known) {
    Pattern pattern = chorus_bodice();
    for (OutlineItem& item : pattern.pieces[0].outline.items)
        if (DartItem* dart = item.as_dart()) dart->press.clear();
    for (OutlineItem& item : pattern.pieces[1].outline.items)
        if (DartItem* dart = item.as_dart()) dart->point = dart->point + Vector{8, 0};  // legs that differ
    const pugi::xml_document document = parsed(to_svg(draw_pattern(pattern, {})));
    EXPECT_FALSE(group_titled(group_titled(document.child("svg"), "front"), "caps"));
    EXPECT_FALSE(group_titled(group_titled(document.child("svg"), "back"), "caps"));
}

TEST(pattern_drawing, caps_that_stand_far_out_are_left_out) {
    Pattern pattern = chorus_bodice();
    OutlineItem& waist = pattern.pieces[0].outline.items[0];
    // From the centre front steeply down, so that it meets the dart's leg at some 160 degrees.
    waist.as_edge()->shape = CubicShape{{waist.to + Vector{-60, -300}, waist.to + Vector{-30, -150}}};
    const pugi::xml_document document = parsed(to_svg(draw_pattern(pattern, {})));
    const pugi::xml_node caps = group_titled(group_titled(document.child("svg"), "front"), "caps");
    EXPECT_EQ(std::distance(caps.children("path").begin(), caps.children("path").end()), 1)
        << "the side dart's";
}

TEST(pattern_drawing, names_lengths_and_darts_are_written) {
    const Pattern pattern = chorus_bodice();
    const pugi::xml_document document = parsed(to_svg(draw_pattern(pattern, {})));
    const std::vector<std::string> words = words_in(group_titled(document.child("svg"), "front"));
    for (const char* wanted : {"front", "cut 1 on the fold", "fold", "grain", "bust line", "bust point",
                               "waist dart", "side dart", "centre front 33.40 cm", "3.40 cm, 10.4°"})
        EXPECT_TRUE(has_words(words, wanted)) << wanted;
}

TEST(pattern_drawing, names_and_lengths_can_be_left_out) {
    DrawOptions options;
    options.names = false;
    pugi::xml_document document = parsed(to_svg(draw_pattern(chorus_bodice(), options)));
    std::vector<std::string> words = words_in(group_titled(document.child("svg"), "front"));
    EXPECT_FALSE(has_words(words, "front"));
    EXPECT_FALSE(has_words(words, "waist dart"));
    EXPECT_TRUE(has_words(words, "33.40 cm"));
    options.names = true;
    options.lengths = false;
    document = parsed(to_svg(draw_pattern(chorus_bodice(), options)));
    words = words_in(group_titled(document.child("svg"), "front"));
    EXPECT_TRUE(has_words(words, "centre front"));
    EXPECT_TRUE(has_words(words, "waist dart"));
    EXPECT_EQ(all_words(document).find(" cm"), all_words(document).find(" cm, as sewn"));
}

TEST(pattern_drawing, notches_have_one_stroke_a_kind) {
    Pattern pattern = chorus_bodice();
    pattern.pieces[0].notches = {{"side", "waist", 60, NotchKind::single},
                                 {"side", "armhole", 30, NotchKind::double_},
                                 {"armhole", "side", 80, NotchKind::triple}};
    const pugi::xml_document document = parsed(to_svg(draw_pattern(pattern, {})));
    const pugi::xml_node notches = group_titled(group_titled(document.child("svg"), "front"), "notches");
    EXPECT_EQ(notches.select_nodes("path").size(), 6u);
}

TEST(pattern_drawing, every_finding_is_listed_and_placed_ones_are_tagged) {
    DrawOptions options;
    options.findings = some_findings();
    const pugi::xml_document document = parsed(to_svg(draw_pattern(chorus_bodice(), options)));
    const pugi::xml_node svg = document.child("svg");
    const std::vector<std::string> list = words_in(group_titled(svg, "list of findings"));
    for (const Finding& finding : options.findings) EXPECT_TRUE(has_words(list, finding.message));
    EXPECT_TRUE(has_words(list, "Mend legs that differ"));
    EXPECT_TRUE(has_words(list, "3 faults (diamonds), 1 note (rings)"));
    for (const char* number : {"1", "2", "3", "4"}) EXPECT_TRUE(has_words(list, number));
    const pugi::xml_node front = group_titled(group_titled(svg, "front"), "findings");
    EXPECT_EQ(words_in(front), (std::vector<std::string>{"1", "2"}));
    EXPECT_EQ(words_in(group_titled(group_titled(svg, "back"), "findings")), std::vector<std::string>{"3"});
}

TEST(pattern_drawing, the_head_of_the_list_counts_only_what_there_is) {
    DrawOptions options;
    options.findings = {finding_at(Severity::note, "front", {0, 0}, "a trifle")};
    pugi::xml_document document = parsed(to_svg(draw_pattern(chorus_bodice(), options)));
    EXPECT_TRUE(
        has_words(words_in(group_titled(document.child("svg"), "list of findings")), "1 note (rings)"));
    options.findings.assign(2, finding_at(Severity::fault, "front", {0, 0}, "a gap"));
    document = parsed(to_svg(draw_pattern(chorus_bodice(), options)));
    EXPECT_TRUE(
        has_words(words_in(group_titled(document.child("svg"), "list of findings")), "2 faults (diamonds)"));
}

TEST(pattern_drawing, faults_and_notes_differ_in_shape) {
    DrawOptions options;
    options.findings = some_findings();
    const pugi::xml_document document = parsed(to_svg(draw_pattern(chorus_bodice(), options)));
    const pugi::xml_node front = group_titled(group_titled(document.child("svg"), "front"), "findings");
    std::vector<std::string> tags;
    for (const pugi::xml_node path : group_titled(front, "tags").children("path"))
        tags.push_back(path.attribute("d").value());
    ASSERT_EQ(tags.size(), 2u);
    EXPECT_NE(tags[0].find('L'), std::string::npos);  // the diamond's straight sides
    EXPECT_EQ(tags[0].find('C'), std::string::npos);
    EXPECT_NE(tags[1].find('C'), std::string::npos);  // the ring's arcs
    EXPECT_EQ(tags[1].find('L'), std::string::npos);
}

TEST(pattern_drawing, overlay_holds_both_at_the_same_place) {
    const Pattern before = chorus_bodice();
    Pattern after = before;
    after.name = "moved";
    for (OutlineItem& item : after.pieces[0].outline.items)
        if (item.as_dart() && item.as_dart()->name == "side dart") item.as_dart()->point = {120, 175};
    const pugi::xml_document document = parsed(to_svg(draw_overlay(before, after, {})));
    const pugi::xml_node svg = document.child("svg");
    const auto outline = [&](const char* piece, const char* layer) -> std::string {
        const pugi::xml_node group = group_titled(group_titled(svg, piece), layer);
        return group_titled(group, "outline").child("path").attribute("d").value();
    };
    EXPECT_FALSE(outline("back", "before").empty());
    EXPECT_EQ(outline("back", "before"), outline("back", "after"));
    const std::vector<Point> was = points_of_path(outline("front", "before"));
    const std::vector<Point> now = points_of_path(outline("front", "after"));
    ASSERT_EQ(was.size(), now.size());
    std::size_t moved_points = 0;
    for (std::size_t i = 0; i < was.size(); ++i) moved_points += was[i] == now[i] ? 0 : 1;
    EXPECT_EQ(moved_points, 1u);
    const std::vector<std::string> legend = words_in(group_titled(svg, "legend"));
    EXPECT_TRUE(has_words(legend, "before: chorus bodice"));
    EXPECT_TRUE(has_words(legend, "after: moved"));
}

TEST(pattern_drawing, overlay_shows_pieces_that_only_one_pattern_has) {
    const Pattern before = chorus_bodice();
    Pattern after = before;
    rename_piece(after, "back", "yoke");
    const pugi::xml_document document = parsed(to_svg(draw_overlay(before, after, {})));
    const pugi::xml_node svg = document.child("svg");
    EXPECT_TRUE(group_titled(group_titled(svg, "yoke"), "after only"));
    EXPECT_TRUE(group_titled(group_titled(svg, "back"), "before only"));
    EXPECT_TRUE(group_titled(group_titled(svg, "front"), "before"));
}

TEST(pattern_drawing, markup_in_names_stays_words) {
    Pattern pattern = chorus_bodice();
    rename_piece(pattern, "front", "</g><b>&front");
    pattern.name = "\"bodice\" <1>";
    const pugi::xml_document document = parsed(to_svg(draw_pattern(pattern, {})));
    const pugi::xml_node group = group_titled(document.child("svg"), "</g><b>&front");
    ASSERT_TRUE(group);
    EXPECT_TRUE(has_words(words_in(group), "</g><b>&front"));
    EXPECT_TRUE(document.select_nodes("//b").empty());
}

TEST(pattern_drawing, same_pattern_same_bytes) {
    DrawOptions options;
    options.findings = some_findings();
    const Drawing first = draw_pattern(chorus_bodice(), options);
    const Drawing second = draw_pattern(chorus_bodice(), options);
    EXPECT_EQ(to_svg(first), to_svg(second));
    EXPECT_EQ(to_pdf(first), to_pdf(second));
    EXPECT_EQ(to_png(first, 1), to_png(second, 1));
}

TEST(pattern_drawing, odd_patterns_can_be_drawn) {
    Pattern pattern = chorus_bodice();
    pattern.pieces[0].outline.items.back().to = {30, 12};                                 // does not close
    pattern.pieces[1].outline.items[1].to = start_of_item(pattern.pieces[1].outline, 1);  // no mouth
    const std::string svg = to_svg(draw_pattern(pattern, {}));
    EXPECT_EQ(svg.find("nan"), std::string::npos);
    const pugi::xml_document document = parsed(svg);
    const pugi::xml_node front = group_titled(document.child("svg"), "front");
    const std::string data = group_titled(front, "outline").child("path").attribute("d").value();
    EXPECT_EQ(data.find('Z'), std::string::npos);  // the gap is to be seen
    pattern.pieces[0].outline.items.clear();
    EXPECT_THROW(draw_pattern(pattern, {}), UnsoundPattern);
}

}  // namespace
}  // namespace dartwright
