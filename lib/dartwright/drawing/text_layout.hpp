#pragma once

#include <string>

/// As Cairo's headers declare it.
typedef struct _cairo cairo_t;

namespace dartwright {

/// Private to this room: words of any script set by Pango as one line, in the face of `text_face` and, where
/// it lacks a letter, in another that has it. Words are cleaned first (clean_text).

/// The look of a line of words apart from its colour.
struct LineLook {
    double size_mm = 5;
    bool is_bold = false;
};

/// Width of the line in mm; without Pango as Cairo measures it in the one face; CairoMissing
/// without both. O(letters).
double line_width(const std::string& words, LineLook look);
/// Draws the line with its left end on the base line at the origin, in the context's colour. The context's
/// unit is 1 mm, y down. The width is that of `line_width`. PangoMissing.
void show_line(cairo_t* context, const std::string& words, LineLook look);
/// Adds the letters' outlines to the context's path, at the same place.
void trace_line(cairo_t* context, const std::string& words, LineLook look);

}  // namespace dartwright
