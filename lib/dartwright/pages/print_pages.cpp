#include "dartwright/pages/print_pages.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/drawing/choice.hpp"
#include "dartwright/pages/cover_page.hpp"
#include "dartwright/pages/seen_parts.hpp"
#include "dartwright/pages/test_squares.hpp"
#include "dartwright/pages/tile_page.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {

namespace {

/// From a sheet as wide as an A2 on, the squares have room on it; a page of such paper for them alone would
/// be waste.
constexpr double large_paper_mm = 420;
constexpr double roll_step_mm = 10;

double width_of(const PrintRequest& request) {
    return request.is_landscape ? request.paper.height_mm : request.paper.width_mm;
}
double height_of(const PrintRequest& request) {
    return request.is_landscape ? request.paper.width_mm : request.paper.height_mm;
}
bool is_large(const Paper& paper) {
    return paper.is_roll() || paper.width_mm >= large_paper_mm;
}

void require_request(const std::vector<PrintedPiece>& pieces, const PrintRequest& request) {
    if (pieces.empty()) throw std::invalid_argument("there is no piece to print");
    const bool has_room = request.margin_mm >= 0 && request.overlap_mm >= 0 &&
                          request.margin_mm <= widest_margin(request.paper, request.is_landscape) &&
                          request.overlap_mm <= widest_overlap(request);
    if (!has_room) throw std::invalid_argument("margin or overlap leave no room on the page");
}

std::vector<SheetPiece> pieces_to_place(const std::vector<PrintedPiece>& pieces,
                                        const PrintRequest& request) {
    std::vector<SheetPiece> result;
    for (const PrintedPiece& piece : pieces) result.push_back(upright(piece));
    if (is_large(request.paper)) {
        const PrintedPiece squares{"test squares", squares_block(request.title, request.date), {}, pi / 2};
        result.push_back(upright(squares));
    }
    return result;
}

Sentence whole_mm(double length_mm) {
    // Up, so that what is said to work does.
    return least_told(rounded_up(length_mm), 0);
}

void require_room_across(const std::vector<SheetPiece>& pieces, const PrintRequest& request) {
    for (const SheetPiece& piece : pieces) {
        const double width = piece.box.high.x - piece.box.low.x;
        if (width <= request.paper.width_mm - 2 * request.margin_mm + choice_mm) continue;
        throw Impossible(piece.name + " is " + whole_mm(width) +
                             " wide with its grain upright, and a roll of " +
                             width_told(request.paper.width_mm) + " prints " +
                             width_told(request.paper.width_mm - 2 * request.margin_mm),
                         "a roll of " + whole_mm(width + 2 * request.margin_mm) + " would do");
    }
}

double page_height(const PrintSheet& sheet, const PrintRequest& request) {
    return sheet.grid.window_height_mm + page_strip_mm + 2 * request.margin_mm;
}

PrintSheet roll_sheet(const std::vector<SheetPiece>& pieces, const PrintRequest& request) {
    GridRequest wanted;
    wanted.grid = {request.paper.width_mm - 2 * request.margin_mm, 0, 0, 1, 1};
    return single_sheet(pieces, wanted);
}

/// The narrowest roll on which all pieces are no longer than a page can be; empty if there is none.
Sentence remedy_for_length(const std::vector<SheetPiece>& pieces, PrintRequest request) {
    for (; request.paper.width_mm <= longest_page_mm; request.paper.width_mm += roll_step_mm)
        if (page_height(roll_sheet(pieces, request), request) <= longest_page_mm)
            return "a roll of " + whole_mm(request.paper.width_mm) + " would do, or fewer pieces at a time";
    return "print fewer pieces at a time, or on sheets";
}

PrintSheet sheet_on_roll(const std::vector<SheetPiece>& pieces, const PrintRequest& request) {
    require_room_across(pieces, request);
    PrintSheet sheet = roll_sheet(pieces, request);
    const double height = page_height(sheet, request);
    if (height <= longest_page_mm) return sheet;
    throw Impossible("the sheet would be " + whole_mm(height) + " long, and a page of a PDF is at most " +
                         width_told(longest_page_mm),
                     remedy_for_length(pieces, request));
}

PrintSheet sheet_on_pages(const std::vector<SheetPiece>& pieces, const PrintRequest& request) {
    GridRequest wanted;
    wanted.grid = {width_of(request) - 2 * request.margin_mm,
                   height_of(request) - 2 * request.margin_mm - page_strip_mm, request.overlap_mm, 1, 1};
    return tiled_sheet(pieces, wanted);
}

Drawing cover_of(const PrintSheet& sheet, const PrintRequest& request, std::size_t pages) {
    CoverPage cover;
    // It lies as its pages do where there is room for both squares above each other.
    const bool is_room = height_of(request) - 2 * request.margin_mm >= least_cover_height_mm;
    cover.width_mm = is_room ? width_of(request) : request.paper.width_mm;
    cover.height_mm = is_room ? height_of(request) : request.paper.height_mm;
    cover.margin_mm = request.margin_mm;
    cover.title = request.title;
    cover.date = request.date;
    cover.paper = request.paper.name;
    cover.pages = pages;
    return cover_page(sheet, cover);
}

Drawing page_of(const PrintSheet& sheet, const PrintRequest& request, TilePage page) {
    page.width_mm = width_of(request);
    page.height_mm = request.paper.is_roll() ? page_height(sheet, request) : height_of(request);
    page.margin_mm = request.margin_mm;
    page.title = request.title;
    page.date = request.date;
    return tile_page(sheet, page);
}

}  // namespace

double widest_margin(const Paper& paper, bool is_landscape) {
    if (paper.is_roll()) return paper.width_mm / 4;
    // A window narrower than this would be more joints than pattern.
    constexpr double least_window_mm = 100;
    const double shorter = is_landscape ? paper.width_mm : paper.height_mm;
    const double across = is_landscape ? paper.height_mm : paper.width_mm;
    const double window = std::min(across - least_window_mm, shorter - page_strip_mm - least_window_mm) / 2;
    if (is_large(paper)) return window;
    return std::min(
        {window, (paper.width_mm - least_cover_width_mm) / 2, (paper.height_mm - least_cover_height_mm) / 2});
}

double widest_overlap(const PrintRequest& request) {
    if (request.paper.is_roll()) return request.paper.width_mm;
    return (std::min(width_of(request), height_of(request) - page_strip_mm) - 2 * request.margin_mm) / 4;
}

PrintResult print_pages(const std::vector<PrintedPiece>& pieces, const PrintRequest& request) {
    require_request(pieces, request);
    const std::vector<SheetPiece> lying = pieces_to_place(pieces, request);
    PrintResult result;
    result.sheet = request.paper.is_roll() ? sheet_on_roll(lying, request) : sheet_on_pages(lying, request);
    if (!request.paper.is_roll()) result.sheet = with_words_off_joints(std::move(result.sheet), pieces);
    result.has_cover = !is_large(request.paper);
    TilePage page;
    page.pages = result.sheet.tiles.size() + (result.has_cover ? 1 : 0);
    if (result.has_cover) result.pages.push_back(cover_of(result.sheet, request, page.pages));
    std::vector<std::vector<DrawnGroup>> seen = pieces_seen(result.sheet);
    for (std::size_t k = 0; k < result.sheet.tiles.size(); ++k) {
        page.tile = result.sheet.tiles[k];
        page.seen = std::move(seen[k]);
        page.number = result.pages.size() + 1;
        result.pages.push_back(page_of(result.sheet, request, page));
    }
    return result;
}

}  // namespace dartwright
