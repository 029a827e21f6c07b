#pragma once

#include "dartwright/pages/print_sheet.hpp"

namespace dartwright {

/// The least a cover needs between its margins: both squares one above the other, and words beside them.
inline constexpr double least_cover_width_mm = 158;
inline constexpr double least_cover_height_mm = 242;

struct CoverPage {
    double width_mm = 0;
    double height_mm = 0;
    double margin_mm = 0;
    std::string title;
    std::string date;
    std::string paper;
    std::size_t pages = 1;  ///< with this one
};

/// The first page: the test squares, a map of the pages with the pieces on them, what is on it, what is
/// gathered, eased or tucked, and how the pages are put together, under the caution.
Drawing cover_page(const PrintSheet& sheet, const CoverPage& page);

}  // namespace dartwright
