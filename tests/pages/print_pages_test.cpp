#include "dartwright/pages/print_pages.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "dartwright/drawing/text_box.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pages/packing.hpp"
#include "dartwright/pages/printed_piece.hpp"

namespace dartwright {
namespace {

struct BoxOf {
    double width;
    double height;
};
PrintedPiece rectangle(const std::string& name, BoxOf size, double grain_rad = pi / 2) {
    PrintedPiece piece;
    piece.name = name;
    piece.cutting_line = {{0, 0}, {size.width, 0}, {size.width, size.height}, {0, size.height}};
    DrawnPath path = polyline(piece.cutting_line, {{}, 0.5, {}});
    path.is_closed = true;
    piece.drawing = {name, {path}, {}};
    piece.grain_rad = grain_rad;
    return piece;
}

const TileGrid grid_of_3_by_2{100, 150, 10, 3, 2};

TEST(tile_grid, neighbours_share_the_overlap_and_cells_divide_the_sheet) {
    const Box first = window_of(grid_of_3_by_2, {0, 0});
    const Box second = window_of(grid_of_3_by_2, {0, 1});
    EXPECT_DOUBLE_EQ(first.high.x - second.low.x, 10);
    EXPECT_DOUBLE_EQ(cell_of(grid_of_3_by_2, {0, 0}).high.x, cell_of(grid_of_3_by_2, {0, 1}).low.x);
    EXPECT_DOUBLE_EQ(cell_of(grid_of_3_by_2, {0, 0}).low.y, cell_of(grid_of_3_by_2, {1, 0}).high.y);
    EXPECT_DOUBLE_EQ(cell_of(grid_of_3_by_2, {0, 2}).high.x, sheet_width(grid_of_3_by_2));
    EXPECT_DOUBLE_EQ(sheet_width(grid_of_3_by_2), 280);
    EXPECT_EQ(rows_for(grid_of_3_by_2, 150), 1u);
    EXPECT_EQ(rows_for(grid_of_3_by_2, 150.1), 2u);
}

TEST(tile_grid, labels_count_rows_by_letters) {
    EXPECT_EQ(label_of({0, 0}), "A1");
    EXPECT_EQ(label_of({1, 2}), "B3");
    EXPECT_EQ(label_of({25, 0}), "Z1");
    EXPECT_EQ(label_of({26, 0}), "AA1");
}

TEST(packing, boxes_keep_apart_and_lie_on_the_sheet) {
    PackRequest request;
    for (int i = 1; i < 12; ++i) request.sizes.push_back({20.0 + 13 * (i % 4), 30.0 + 17 * ((5 * i) % 7)});
    request.width_mm = 150;
    request.gap_mm = 5;
    const std::vector<Point> corners = packed(request);
    ASSERT_EQ(corners.size(), request.sizes.size());
    for (std::size_t i = 0; i < corners.size(); ++i) {
        EXPECT_GE(corners[i].x, 0);
        EXPECT_LE(corners[i].x + request.sizes[i].width_mm, 150 + 1e-6);
        EXPECT_LE(corners[i].y, 0);
        for (std::size_t j = 0; j < i; ++j) {
            const double across = std::max(corners[i].x - corners[j].x - request.sizes[j].width_mm,
                                           corners[j].x - corners[i].x - request.sizes[i].width_mm);
            const double down = std::max(corners[j].y - corners[i].y - request.sizes[j].height_mm,
                                         corners[i].y - corners[j].y - request.sizes[i].height_mm);
            EXPECT_GE(std::max(across, down), 5 - 1e-5) << i << " and " << j;
        }
    }
    request.sizes.push_back({151, 10});
    EXPECT_THROW(packed(request), std::invalid_argument);
}

TEST(print_sheet, turns_the_grain_upright) {
    const SheetPiece piece = upright(rectangle("lying", {300, 100}, 0));
    EXPECT_NEAR(piece.box.high.x - piece.box.low.x, 102, 1e-9);  // with room for the line
    EXPECT_NEAR(piece.box.high.y - piece.box.low.y, 302, 1e-9);
    // A quarter turn anticlockwise, not clockwise: what lay right lies up.
    EXPECT_NEAR(piece.cutting_line[1].x, 0, 1e-9);
    EXPECT_NEAR(piece.cutting_line[1].y, 300, 1e-9);
}

PrintRequest on_paper(const std::string& name) {
    PrintRequest request;
    for (const Paper& paper : papers())
        if (paper.name == name) request.paper = paper;
    request.title = "squares";
    return request;
}

TEST(print_pages, print_nothing_empty) {
    // Two pieces as large as a window each: two pages and the cover, wherever they lie.
    const PrintResult result =
        print_pages({rectangle("one", {180, 260}), rectangle("two", {180, 260})}, on_paper("A4"));
    EXPECT_TRUE(result.has_cover);
    EXPECT_EQ(result.sheet.tiles.size(), 2u);
    EXPECT_EQ(result.pages.size(), 3u);
    // A page in the middle of a frame shows no line, but cloth.
    const PrintResult large = print_pages({rectangle("large", {520, 750})}, on_paper("A4"));
    EXPECT_EQ(large.sheet.tiles.size(), 9u);
}

TEST(print_pages, large_sheets_and_rolls_carry_the_squares) {
    const PrintResult sheet = print_pages({rectangle("one", {180, 260})}, on_paper("A0"));
    EXPECT_FALSE(sheet.has_cover);
    EXPECT_EQ(sheet.pages.size(), 1u);
    PrintRequest request = on_paper("A0");
    request.paper = {"roll", 914, 0};
    const PrintResult roll = print_pages({rectangle("one", {180, 260})}, request);
    ASSERT_EQ(roll.pages.size(), 1u);
    EXPECT_EQ(roll.pages[0].width_mm, 914);
    EXPECT_NEAR(roll.pages[0].height_mm, 262 + 7 + 20, 1e-6);
    EXPECT_EQ(roll.sheet.pieces.size(), 2u);
}

TEST(print_pages, refuse_what_does_not_fit_and_say_what_would) {
    PrintRequest request = on_paper("A4");
    request.paper = {"roll", 600, 0};
    EXPECT_THROW(print_pages({rectangle("wide", {600, 260})}, request), Impossible);
    try {
        print_pages({rectangle("long", {300, 3000}), rectangle("longer", {300, 4000})}, request);
        FAIL() << "nothing was thrown";
    } catch (const Impossible& impossible) {
        EXPECT_NE(impossible.reason.find("5080 mm"), std::string::npos) << impossible.reason;
        EXPECT_NE(impossible.remedy.find("a roll of 630 mm would do"), std::string::npos)
            << impossible.remedy;
    }
    request.margin_mm = 200;
    EXPECT_THROW(print_pages({rectangle("one", {10, 10})}, request), std::invalid_argument);
    EXPECT_THROW(print_pages({}, on_paper("A4")), std::invalid_argument);
}

// Two pages are needed either way: the lower piece is to lie on the second one, not across the joint.
TEST(print_pages, divide_no_piece_that_a_page_holds) {
    PrintRequest request;
    request.paper = {"A0", 841, 1189};
    const PrintResult result =
        print_pages({rectangle("front", {640, 620}), rectangle("back", {400, 600})}, request);
    EXPECT_EQ(result.sheet.tiles.size(), 2u);
    for (const SheetPiece& piece : result.sheet.pieces) EXPECT_EQ(piece.tiles.size(), 1u) << piece.name;
}

const DrawnText* text_with(const DrawnGroup& group, const std::string& words) {
    for (const DrawnItem& item : group.items)
        if (const DrawnText* text = std::get_if<DrawnText>(&item); text && text->words == words) return text;
    for (const DrawnGroup& inner : group.groups)
        if (const DrawnText* text = text_with(inner, words)) return text;
    return nullptr;
}

bool is_on_one_page(const SheetPiece& piece, const DrawnText& text, const TileGrid& grid) {
    const Box box = upright_box(box_of(text));
    return std::any_of(piece.tiles.begin(), piece.tiles.end(), [&](Tile tile) {
        const Box cell = cell_of(grid, tile);
        return box.low.x > cell.low.x && box.high.x < cell.high.x && box.low.y > cell.low.y &&
               box.high.y < cell.high.y;
    });
}

PrintResult printed_bodice(bool is_grain_turned) {
    Pattern pattern =
        read_pattern_file(DARTWRIGHT_SOURCE_DIR + std::string("/fixtures/workshop/chorus-bodice.json"));
    std::vector<PrintedPiece> pieces;
    for (Piece& piece : pattern.pieces) {
        if (is_grain_turned) std::swap(piece.grain->from, piece.grain->to);
        pieces.push_back(printed_piece(piece, pattern, {pattern.name, "12", "spring", pattern.unit}));
    }
    PrintRequest request;
    request.paper = {"A4", 210, 297};
    return print_pages(pieces, request);
}

TEST(print_pages, keep_labels_off_the_joints) {
    for (const bool is_grain_turned : {false, true}) {
        const PrintResult result = printed_bodice(is_grain_turned);
        for (const SheetPiece& piece : result.sheet.pieces) {
            for (const std::string& words :
                 {piece.name, std::string("chorus bodice"), std::string("spring")}) {
                const DrawnText* const text = text_with(piece.drawing, words);
                ASSERT_NE(text, nullptr) << words;
                EXPECT_TRUE(is_on_one_page(piece, *text, result.sheet.grid)) << piece.name << ": " << words;
            }
        }
    }
}

// A grain that was drawn downwards turns the piece, not its words.
TEST(print_pages, have_upright_words_whichever_way_the_grain_was_drawn) {
    for (const SheetPiece& piece : printed_bodice(true).sheet.pieces)
        EXPECT_NEAR(text_with(piece.drawing, piece.name)->angle_rad, 0, 1e-9) << piece.name;
}

// Some hundred pieces are packed on a sheet that somebody can still find his way on.
TEST(print_pages, are_no_more_than_sixteen_in_a_row) {
    std::vector<PrintedPiece> pieces;
    for (int i = 0; i < 60; ++i) pieces.push_back(rectangle(std::to_string(i), {150.0 + i, 300.0 - 2 * i}));
    PrintRequest request;
    request.paper = {"A4", 210, 297};
    EXPECT_LE(print_pages(pieces, request).sheet.grid.columns, 16u);
}

}  // namespace
}  // namespace dartwright
