#pragma once

#include <functional>
#include <string>
#include <vector>

#include "dartwright/drawing/drawing.hpp"
#include "dartwright/pattern/errors.hpp"

namespace dartwright {

/// The picture asked for is larger than a PNG can be made here.
struct PictureTooLarge : Error {
    PictureTooLarge(double width, double height);
    double width_pixels;
    double height_pixels;
};
/// The longest side of a PNG in pixels (Cairo's own bound).
inline constexpr int most_pixels = 32767;

/// Words cannot be set on a PNG or a PDF: Pango, which is loaded when the first are, is not on this machine.
/// SVG does without it: its words are measured by Cairo, which knows the letters of one face only.
struct PangoMissing : Error {
    explicit PangoMissing(const std::string& reason);
};

/// Nothing can be drawn: Cairo, which is loaded when it is first needed, is not on this machine. Where Pango
/// is missing too, not even an SVG with words can be made, since nothing measures them.
struct CairoMissing : Error {
    explicit CairoMissing(const std::string& reason);
};

/// The drawing as a PNG file; its size in pixels is the drawing's rounded up to whole pixels. The same
/// drawing gives the same bytes on one machine. CairoMissing; PangoMissing where there are words;
/// PictureTooLarge over `most_pixels` a side; std::invalid_argument for what is not drawable or a resolution
/// that is not above 0.
std::string to_png(const Drawing& drawing, double pixels_per_mm);

/// The drawing as a PDF file of one page at exactly its size (1 mm is 72/25.4 points). The creation date is
/// fixed, so that the same drawing gives the same bytes on one machine. CairoMissing; PangoMissing where
/// there are words; /// std::invalid_argument for what is not drawable.
std::string to_pdf(const Drawing& drawing);
/// The same of several pages, each of its own size; the title is the first one's. `after_page` is told how
/// many are done. std::invalid_argument without a page.
std::string to_pdf(const std::vector<Drawing>& pages,
                   const std::function<void(std::size_t)>& after_page = {});

}  // namespace dartwright
