#include "dartwright/drawing/text_column.hpp"

#include <algorithm>
#include <vector>

#include "dartwright/drawing/table_look.hpp"
#include "dartwright/drawing/text_box.hpp"
#include "dartwright/words/clean_text.hpp"

namespace dartwright {

void add_paragraph(DrawnGroup& group, TextColumn& column, const std::string& words, ParagraphLook look) {
    for (const std::string& line : wrapped(words, look.size_mm, column.width, look.is_bold)) {
        DrawnText text;
        text.words = line;
        text.at = {column.left, column.top - text_ascent_em * look.size_mm};
        text.size_mm = look.size_mm;
        text.is_bold = look.is_bold;
        text.colour = look::ink;
        group.items.push_back(text);
        column.top -= look::line_step_em * look.size_mm;
    }
    column.top -= look.space_below_mm;
}

std::string shortened(const std::string& words, double size_mm, double width_mm, bool is_bold) {
    std::string kept = clean_text(words);
    if (text_width(kept, size_mm, is_bold) <= width_mm) return kept;
    const std::string dots = "\xE2\x80\xA6";
    // Where a whole character begins: the bytes that carry one on begin with the bits 10.
    std::vector<std::size_t> begins;
    for (std::size_t i = 0; i < kept.size(); ++i)
        if ((static_cast<unsigned char>(kept[i]) & 0xC0u) != 0x80) begins.push_back(i);
    const auto too_long = std::partition_point(begins.begin(), begins.end(), [&](std::size_t size) {
        return text_width(kept.substr(0, size) + dots, size_mm, is_bold) <= width_mm;
    });
    return kept.substr(0, too_long == begins.begin() ? 0 : *(too_long - 1)) + dots;
}

}  // namespace dartwright
