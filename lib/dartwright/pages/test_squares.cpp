#include "dartwright/pages/test_squares.hpp"

#include "dartwright/drawing/table_look.hpp"
#include "dartwright/drawing/text_column.hpp"

namespace dartwright {

namespace {

constexpr double inner_margin_mm = 7;
constexpr double square_line_mm = 0.35;

DrawnPath square_path(Point corner, double side_mm) {
    const Point right = corner + Vector{side_mm, 0};
    const Point top = corner + Vector{0, side_mm};
    const Point far_corner = corner + Vector{side_mm, side_mm};
    DrawnPath path;
    path.curves = {Line{corner, right}, Line{right, far_corner}, Line{far_corner, top}, Line{top, corner}};
    path.is_closed = true;
    path.stroke = look::solid(look::ink, square_line_mm);
    return path;
}

struct SquareWords {
    std::string size;
    std::vector<std::string> paragraphs;
};

DrawnGroup square(Point corner, double side_mm, const SquareWords& words) {
    DrawnGroup group{"test square " + words.size, {square_path(corner, side_mm)}, {}};
    TextColumn column{corner.x + inner_margin_mm, corner.y + side_mm - inner_margin_mm,
                      side_mm - 2 * inner_margin_mm};
    add_paragraph(group, column, words.size, {12, true, 4});
    for (const std::string& paragraph : words.paragraphs)
        add_paragraph(group, column, paragraph, {4, false, 3});
    return group;
}

}  // namespace

DrawnGroup metric_square(Point corner) {
    return square(corner, metric_square_mm,
                  {"100 mm",
                   {"Measure this square first, across and upright: each side is 100 mm from line to line.",
                    "If it measures wrong, do not cut. Print again at 100 % (actual size) without "
                    "\xE2\x80\x98"
                    "fit to page\xE2\x80\x99, and measure again."}});
}

DrawnGroup inch_square(Point corner) {
    return square(corner, inch_square_mm,
                  {"4 in",
                   {"For a ruler in inches: each side is 4 in from line to line.",
                    "A side that is 1/16 in wrong here is 5/8 in wrong on 40 in: print again at 100 %."}});
}

const char* caution_words() {
    return "Rotary cutters, scissors and pins cut and prick: the rules of your workshop and the teaching of "
           "a "
           "qualified person come first. Close the cutter's guard after every cut and cut away from "
           "yourself.";
}

DrawnGroup squares_block(const std::string& title, const std::string& date) {
    constexpr double frame_mm = 3;
    constexpr double words_height_mm = 34;
    const double width = metric_square_mm + square_gap_mm + inch_square_mm + 2 * frame_mm;
    DrawnGroup block{"test squares", {}, {}};
    block.groups.push_back(metric_square({frame_mm, frame_mm}));
    block.groups.push_back(inch_square({frame_mm + metric_square_mm + square_gap_mm, frame_mm}));
    TextColumn column{frame_mm, frame_mm + inch_square_mm + words_height_mm, width - 2 * frame_mm};
    add_paragraph(block, column, shortened(title, 8, column.width), {8, true, 1});
    if (!date.empty()) add_paragraph(block, column, shortened(date, 4, column.width), {4, false, 1});
    add_paragraph(block, column, caution_words(), {4, false, 0});
    return block;
}

}  // namespace dartwright
