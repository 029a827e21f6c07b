// The page to sew by: its figures are the pattern's, its words are harmless as markup.

#include "dartwright/pages/sewing_sheet.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include <pugixml.hpp>

#include "dartwright/checks/check.hpp"
#include "dartwright/cutting/lay_pattern.hpp"
#include "dartwright/darts/close_tuck.hpp"
#include "dartwright/drawing/lay_drawing.hpp"
#include "dartwright/drawing/text_box.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pages/sewing_plan.hpp"
#include "dartwright/pattern/dart.hpp"

namespace dartwright {
namespace {

Pattern bodice() {
    return read_pattern_file(std::string(DARTWRIGHT_SOURCE_DIR) + "/fixtures/workshop/chorus-bodice.json");
}

std::string words_of(const Document& document) {
    const std::string html = to_html(document);
    std::string out;
    bool is_tag = false;
    for (const char c : html) {
        if (c == '<') is_tag = true;
        if (!is_tag) out += c;
        if (c == '>') is_tag = false;
    }
    return out;
}

TEST(SewingPlan, gives_each_dart_its_own_length_and_shortens_the_last_fifty_millimetres) {
    const Pattern pattern = bodice();
    const SewingPlan plan = sewing_plan(pattern);
    ASSERT_EQ(plan.darts.size(), 3u);
    for (const PlannedDart& dart : plan.darts) {
        const Piece& piece = piece_named(pattern, dart.piece);
        const DartFigures figures = figures_of(piece.outline, dart_named(piece, dart.dart));
        EXPECT_NEAR(dart.length_mm, distance(figures.a, figures.point), 0.5);
        EXPECT_NEAR(dart.shorten_from_mm, dart.length_mm - 50, 1e-9);
        EXPECT_NEAR(dart.intake_mm, distance(figures.a, figures.b), 1e-9);
        EXPECT_EQ(dart.times, 2) << "a front on the fold and a pair of backs";
    }
}

TEST(SewingPlan, shortens_half_of_a_short_dart_and_none_of_a_tuck) {
    Pattern pattern = bodice();
    Piece& front = pattern.pieces[0];
    DartItem& dart = *front.outline.items[dart_named(front, "waist dart")].as_dart();
    const DartFigures figures = figures_of(front.outline, dart_named(front, "waist dart"));
    dart.point = between(middle(figures.a, figures.b), figures.point, 0.25);
    const double leg = distance(figures.a, dart.point);
    ASSERT_LT(leg, 100);
    EXPECT_NEAR(sewing_plan(pattern).darts[0].shorten_from_mm, leg / 2, 0.1);
    dart.stitched = 20;
    const PlannedDart tuck = sewing_plan(pattern).darts[0];
    EXPECT_EQ(tuck.kind, PlannedDart::Kind::tuck);
    EXPECT_EQ(tuck.length_mm, 20);
    EXPECT_EQ(tuck.shorten_from_mm, 20);
}

// Shoulder before side: common practice, no source. The rest keeps the pattern's order.
TEST(SewingPlan, sews_shoulders_first_and_sides_last) {
    Pattern pattern = bodice();
    ASSERT_EQ(pattern.seams.size(), 3u);
    const auto by_name = [](const Seam& a, const Seam& b) { return a.name < b.name; };
    std::sort(pattern.seams.begin(), pattern.seams.end(), by_name);
    do {
        const SewingPlan plan = sewing_plan(pattern);
        ASSERT_EQ(plan.seams.size(), 3u);
        EXPECT_EQ(plan.seams[0].seam, "shoulder");
        EXPECT_EQ(plan.seams[1].seam, "centre back");
        EXPECT_EQ(plan.seams[2].seam, "side");
        EXPECT_EQ(plan.seams[1].times, 1) << "a centre seam is sewn once";
        EXPECT_EQ(plan.seams[2].times, 2);
    } while (std::next_permutation(pattern.seams.begin(), pattern.seams.end(), by_name));
}

TEST(SewingPlan, says_where_the_ease_goes_and_it_adds_up) {
    for (const PlannedSeam& seam : sewing_plan(bodice()).seams) {
        double eased = 0;
        for (const EasedStretch& stretch : seam.eased)
            eased += stretch.side == 2 ? stretch.eased_mm : -stretch.eased_mm;
        EXPECT_NEAR(eased, seam.lengths_mm[1] - seam.lengths_mm[0], 0.5) << seam.seam;
    }
    EXPECT_EQ(sewing_plan(bodice()).seams[0].eased.size(), 2u) << "either side of the shoulder's notch";
}

TEST(SewingSheet, has_every_dart_and_seam_and_the_cautions) {
    const Pattern pattern = bodice();
    const std::string words = words_of(sewing_sheet(pattern, {"26 November", std::nullopt}));
    for (const char* expected :
         {"26 November", "Rotary cutter", "Pins", "Iron", "qualified teacher", "6 darts in all", "waist dart",
          "side dart", "shoulder, 2 times", "11.67 cm", "No width of cloth was given"})
        EXPECT_NE(words.find(expected), std::string::npos) << expected;
}

TEST(SewingSheet, says_of_tucks_alone_that_they_are_fastened_at_both_ends) {
    Pattern pattern = bodice();
    std::string words = words_of(sewing_sheet(pattern, {}));
    EXPECT_NE(words.find("Run off the point along the fold and knot the ends"), std::string::npos);
    for (Piece& piece : pattern.pieces)
        for (OutlineItem& item : piece.outline.items)
            if (DartItem* dart = item.as_dart()) dart->stitched = 30;
    words = words_of(sewing_sheet(pattern, {}));
    EXPECT_EQ(words.find("knot the ends"), std::string::npos);
    EXPECT_EQ(words.find("shorten"), std::string::npos);
    EXPECT_NE(words.find("fasten again where the stitching ends. Press over a ham"), std::string::npos);
}

TEST(SewingSheet, says_to_how_many_plies_the_lines_are_carried) {
    Pattern pattern = bodice();
    EXPECT_NE(words_of(sewing_sheet(pattern, {})).find("to both plies"), std::string::npos);
    pattern.pieces[0].cut = Cut{1, "centre front", false, {}, "waist"};
    const std::string words = words_of(sewing_sheet(pattern, {}));
    EXPECT_EQ(words.find("to both plies"), std::string::npos);
    EXPECT_NE(words.find("to all four where a piece lies on two folds"), std::string::npos);
}

TEST(SewingSheet, says_what_the_lay_says_of_the_cloth) {
    const Pattern pattern = bodice();
    SheetRequest request;
    request.cloth = lay_pattern(pattern, {1500, true, false, 5});
    const Document sheet = sewing_sheet(pattern, request);
    const std::string words = words_of(sheet);
    EXPECT_NE(words.find("here 75.00 cm"), std::string::npos) << "from the fold to the selvedges";
    EXPECT_NE(words.find("of cloth 150.00 cm wide"), std::string::npos);
    EXPECT_NE(to_html(sheet).find("data:image/svg+xml;base64,"), std::string::npos);
}

TEST(SewingSheet, says_first_what_is_not_true) {
    const std::string good = words_of(sewing_sheet(bodice(), {}));
    EXPECT_EQ(good.find("not true"), std::string::npos);
    Pattern pattern = bodice();
    Piece& front = pattern.pieces[0];
    front.outline.items[dart_named(front, "waist dart")].as_dart()->point.x += 6;
    const std::string words = words_of(sewing_sheet(pattern, {}));
    const std::size_t at = words.find("This pattern is not true: a check finds");
    ASSERT_NE(at, std::string::npos);
    EXPECT_LT(at, words.find("Carry over to the cloth"));
    for (const Finding& finding : check(pattern).findings) {
        EXPECT_EQ(words.find(finding.message) != std::string::npos, finding.severity == Severity::fault)
            << finding.message;
    }
}

TEST(SewingSheet, shows_markup_and_does_not_obey_it) {
    Pattern pattern = bodice();
    pattern.name = "<script>alert('x')</script> & \"co\"";
    const std::string html = to_html(sewing_sheet(pattern, {}));
    EXPECT_EQ(html.find("<script"), std::string::npos);
    EXPECT_NE(html.find("&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt; &amp; &quot;co&quot;"),
              std::string::npos);
    pugi::xml_document tree;
    const std::string from_html =
        html.substr(html.find("<main>"), html.find("</main>") + 7 - html.find("<main>"));
    EXPECT_TRUE(tree.load_string(from_html.c_str())) << "every element is closed";
}

bool lies_on_page(const DrawnGroup& group, const Drawing& page) {
    const auto box = bounds(group);
    if (!box) return true;
    return box->low.x >= 10 && box->low.y >= 10 && box->high.x <= page.width_mm - 10 &&
           box->high.y <= page.height_mm - 10;
}

TEST(DocumentPages, keep_everything_within_the_margins) {
    const Pattern pattern = bodice();
    SheetRequest request;
    request.cloth = lay_pattern(pattern, {900, false, false, 5});
    const Document sheet = sewing_sheet(pattern, request);
    for (const PageSize size : {PageSize{210, 297}, PageSize{148, 210}, PageSize{215.9, 279.4}}) {
        const std::vector<Drawing> pages = pages_of(sheet, size);
        EXPECT_GE(pages.size(), 2u);
        for (const Drawing& page : pages) {
            EXPECT_EQ(page.width_mm, size.width_mm);
            for (const DrawnGroup& group : page.groups) EXPECT_TRUE(lies_on_page(group, page)) << group.name;
        }
    }
    EXPECT_THROW(pages_of(sheet, {50, 50}), std::invalid_argument);
}

// Bold letters are wider; a title broken by the width of plain ones ran off the page.
TEST(DocumentPages, break_a_long_title_within_the_margins) {
    std::string title;
    for (int i = 0; i < 30; ++i) title += "wardrobe mm ";
    for (const Drawing& page : pages_of({title, "", {}}, {})) {
        for (const DrawnItem& item : page.groups[0].items) {
            const DrawnText* text = std::get_if<DrawnText>(&item);
            if (!text || !text->is_bold) continue;
            EXPECT_LE(upright_box(box_of(*text)).high.x, page.width_mm - 15);
        }
    }
}

TEST(LayDrawing, is_as_wide_as_its_words) {
    Lay lay;
    lay.width_mm = 700;
    lay.length_mm = 200;
    const Drawing drawing = draw_lay(lay, {std::string(60, 'M'), Unit::cm, true});
    for (const DrawnGroup& group : drawing.groups) {
        const auto box = bounds(group);
        EXPECT_LE(box ? box->high.x : 0, drawing.width_mm) << group.name;
    }
}

/// How many words of a page stand on it of what it may not part.
struct PartsOnPage {
    bool has_heading = false;
    bool has_heads = false;
    bool has_row = false;
};
PartsOnPage parts_on(const Drawing& page) {
    PartsOnPage parts;
    for (const DrawnItem& item : page.groups[0].items) {
        const DrawnText* text = std::get_if<DrawnText>(&item);
        if (!text) continue;
        parts.has_heading = parts.has_heading || text->words == "the heading";
        parts.has_heads = parts.has_heads || text->words == "name";
        parts.has_row = parts.has_row || text->words == "the row" || text->words == "short";
    }
    return parts;
}

// Whatever stands above it, the last line of a page is neither a heading nor the heads of a table; the row
// below may be one line or many.
TEST(DocumentPages, keep_a_heading_and_the_heads_of_a_table_with_a_row) {
    std::string many;
    for (int i = 0; i < 100; ++i) many += "wwwwwww ";
    for (const std::string& words : {std::string("few"), many}) {
        Document document{"long", "", std::vector<DocumentBlock>(20, ParagraphBlock{"words", false})};
        document.blocks.push_back(HeadingBlock{"the heading"});
        document.blocks.push_back(
            TableBlock{{"number", "name"}, {true, false}, {{"the row", words}, {"2", "short"}}});
        // Pages end at every height about the heading.
        for (double height = 160; height < 297; height += 0.5) {
            for (const Drawing& page : pages_of(document, {210, height})) {
                const PartsOnPage parts = parts_on(page);
                EXPECT_TRUE(!parts.has_heading || parts.has_row) << height;
                EXPECT_TRUE(!parts.has_heads || parts.has_row) << height;
            }
        }
    }
}

TEST(DocumentPages, repeat_the_heads_of_a_table_that_breaks) {
    TableBlock table{{"number", "name"}, {true, false}, {}};
    for (int i = 0; i < 100; ++i) table.rows.push_back({std::to_string(i), "row"});
    const std::vector<Drawing> pages = pages_of({"long", "", {table}}, {});
    ASSERT_GE(pages.size(), 2u);
    int heads = 0;
    int rows = 0;
    for (const Drawing& page : pages) {
        for (const DrawnItem& item : page.groups[0].items) {
            const DrawnText* text = std::get_if<DrawnText>(&item);
            if (text && text->words == "name") ++heads;
            if (text && text->words == "row") ++rows;
        }
    }
    EXPECT_EQ(rows, 100);
    EXPECT_EQ(heads, static_cast<int>(pages.size()));
}

TEST(SewingSheet, names_a_line_once_that_is_drawn_in_parts) {
    Pattern pattern = bodice();
    const auto times = [&] {
        std::size_t count = 0;
        const std::string words = words_of(sewing_sheet(pattern, {}));
        for (std::size_t at = words.find("mid line"); at != words.npos; at = words.find("mid line", at + 1))
            ++count;
        return count;
    };
    pattern.pieces[0].marks.push_back({LineMark{{{20, 100}, {60, 100}}}, "mid line"});
    EXPECT_EQ(times(), 1u);
    pattern.pieces[0].marks.push_back({LineMark{{{80, 100}, {120, 100}}}, "mid line"});
    EXPECT_EQ(times(), 1u);
}

TEST(SewingSheet, calls_the_other_of_two_alike_its_pair) {
    const std::string words = words_of(sewing_sheet(bodice(), {}));
    EXPECT_NE(words.find("back centre back, 40.40 cm"), std::string::npos);
    EXPECT_NE(words.find("its pair, 40.40 cm"), std::string::npos);
}

}  // namespace
}  // namespace dartwright
