#pragma once

#include <string>
#include <vector>

namespace dartwright {

/// A sheet to print on, upright, or a roll: its width, and a height of 0, for it is as long as needed.
struct Paper {
    std::string name;
    double width_mm = 0;
    double height_mm = 0;
    bool is_roll() const { return height_mm == 0; }
};

/// A4, A3, A0 (ISO 216), letter and tabloid (8.5 by 11 and 11 by 17 in), smallest first.
const std::vector<Paper>& papers();

/// The longest side of a page of a PDF: 14,400 units of 1/72 in (ISO 32000-1, annex C).
inline constexpr double longest_page_mm = 14400 * 25.4 / 72;

}  // namespace dartwright
