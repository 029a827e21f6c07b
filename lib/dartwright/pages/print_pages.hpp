#pragma once

#include "dartwright/pages/paper.hpp"
#include "dartwright/pages/print_sheet.hpp"
#include "dartwright/pattern/errors.hpp"

namespace dartwright {

inline constexpr double default_margin_mm = 10;
inline constexpr double default_overlap_mm = 10;

struct PrintRequest {
    Paper paper;
    bool is_landscape = false;
    double margin_mm = default_margin_mm;  ///< that the printer leaves white
    double overlap_mm = default_overlap_mm;
    std::string title;
    std::string date;
};

struct PrintResult {
    std::vector<Drawing> pages;
    PrintSheet sheet;
    bool has_cover = false;  ///< the first page is one, else the sheet carries the squares
};

/// The widest margin and overlap that leave room for what must be on the pages.
double widest_margin(const Paper& paper, bool is_landscape);
double widest_overlap(const PrintRequest& request);

/// The pieces at true size on pages of the paper. Each is turned so that its grain stands upright; they are
/// packed on one sheet (tiled_sheet, single_sheet) of which pages that would hold nothing are left out.
/// Sheets of a paper below A2 follow a cover; larger sheets and rolls carry the test squares among the
/// pieces. Preconditions: a piece, a margin and an overlap from 0 to the widest (std::invalid_argument).
/// Impossible: a piece wider than the roll, or a sheet longer than a page of a PDF can be.
PrintResult print_pages(const std::vector<PrintedPiece>& pieces, const PrintRequest& request);

}  // namespace dartwright
