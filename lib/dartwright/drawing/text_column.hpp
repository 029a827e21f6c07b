#pragma once

#include "dartwright/drawing/drawing.hpp"

namespace dartwright {

/// Words set below each other in a column of a page; `top` moves down with them.
struct TextColumn {
    double left = 0;
    double top = 0;
    double width = 0;
};

/// How a paragraph looks.
struct ParagraphLook {
    double size_mm = 3.4;
    bool is_bold = false;
    double space_below_mm = 1.6;
};

/// Adds the words to the group, broken into lines of the column's width.
void add_paragraph(DrawnGroup& group, TextColumn& column, const std::string& words, ParagraphLook look = {});

/// The words shortened by an ellipsis where they are wider; their width is taken O(log n) times.
std::string shortened(const std::string& words, double size_mm, double width_mm, bool is_bold = false);

}  // namespace dartwright
