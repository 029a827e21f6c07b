#pragma once

// Private to this room: the look of the cutting table. Sizes are in mm and chosen so that every word can be
// read at 2 pixels a millimetre (5 mm is 10 pixels) and lines differ by dash and width, not by colour alone.

#include "dartwright/drawing/drawing.hpp"

namespace dartwright::look {

inline constexpr Colour calico{236, 226, 205};  ///< the table, unbleached
inline constexpr Colour thread{205, 191, 160};  ///< ticks on the table
inline constexpr Colour paper{252, 249, 241};   ///< the pieces
inline constexpr Colour folded{240, 231, 213};  ///< cloth that a dart folds away
inline constexpr Colour ink{38, 34, 31};
inline constexpr Colour pencil{104, 96, 86};
inline constexpr Colour slate{78, 98, 120};
inline constexpr Colour rust{140, 45, 20};  ///< findings

inline constexpr double outline_width = 0.9;
inline constexpr double thin_width = 0.45;
inline constexpr double tick_distance = 50;
inline constexpr double tick_distance_on_large_sheets = 500;
inline constexpr double large_sheet = 4000;
inline constexpr double tick_half = 1.5;
inline constexpr double notch_length = 8;
inline constexpr double notch_spacing = 2.4;

inline constexpr double title_size = 11;
inline constexpr double piece_name_size = 15;
inline constexpr double largest_name_size = 36;
inline constexpr double edge_size = 6;
inline constexpr double small_size = 5.5;
inline constexpr double line_step_em = 1.3;  ///< from base line to base line

inline constexpr double clear_of_lines = 1.8;  ///< least distance of words from lines and other words
inline constexpr double sheet_margin = 20;
inline constexpr double piece_gap = 30;
inline constexpr double widest_row = 1800;

inline Stroke solid(Colour colour, double width) {
    return {colour, width, {}};
}
inline Stroke outline_stroke() {
    return solid(ink, outline_width);
}
inline Stroke before_stroke() {
    return {slate, 0.6, {4, 2.5}};
}
inline Stroke stitching_stroke() {
    return {ink, thin_width, {4, 2}};
}
inline Stroke mark_stroke() {
    return {pencil, thin_width, {3, 2}};
}
/// The wave beside what is gathered or eased: its line stands inside the stitching line by more than its
/// height.
inline constexpr double wave_off = 3.6;
inline constexpr double wave_height = 1.3;
inline constexpr double half_wave = 3.2;
inline Stroke fullness_stroke() {
    return solid(ink, thin_width);
}
inline Stroke centre_stroke() {
    return {pencil, thin_width, {6, 1.8, 1, 1.8}};
}

}  // namespace dartwright::look
