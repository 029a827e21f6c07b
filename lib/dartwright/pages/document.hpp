#pragma once

// A page of words, tables and pictures before it becomes a file.

#include <string>
#include <variant>
#include <vector>

#include "dartwright/drawing/drawing.hpp"

namespace dartwright {

struct HeadingBlock {
    std::string words;
};
struct ParagraphBlock {
    std::string words;
    bool is_caution = false;  ///< set off from the rest
};
struct ListBlock {
    std::vector<std::string> items;
    bool is_numbered = false;
};
struct TableBlock {
    std::vector<std::string> heads;
    std::vector<bool> are_numbers;  ///< by column: set to the right
    std::vector<std::vector<std::string>> rows;
};
struct PictureBlock {
    Drawing drawing;
    std::string words;  ///< what it shows, for who cannot see it
};
using DocumentBlock = std::variant<HeadingBlock, ParagraphBlock, ListBlock, TableBlock, PictureBlock>;

struct Document {
    std::string title;
    std::string subtitle;
    std::vector<DocumentBlock> blocks;
};

/// One self-contained HTML file (UTF-8): no script, nothing fetched, headings and tables with their heads for
/// a screen reader, light and dark, printable. Markup in words is shown, not obeyed. O(n).
std::string to_html(const Document& document);

struct PageSize {
    double width_mm = 210;
    double height_mm = 297;
};
/// The same on pages, numbered; tables and lists break between rows, pictures are made smaller if they do not
/// fit. Precondition: pages of at least 100 mm by 150 mm (std::invalid_argument). O(n).
std::vector<Drawing> pages_of(const Document& document, const PageSize& size);

}  // namespace dartwright
