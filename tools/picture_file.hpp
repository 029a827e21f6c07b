#pragma once

// A drawing as the file that `-o` asks for.

#include <string>

#include "arguments.hpp"
#include "dartwright/drawing/drawing.hpp"

namespace dartwright::tools {

enum class Picture { svg, png, pdf };

struct PictureWanted {
    Picture kind = Picture::svg;
    double pixels_per_mm = 4;
};

/// `--pixels-per-mm NUMBER`.
OptionSpec pixels_option();
/// By the ending of `-o` (SVG on standard output) and `--pixels-per-mm`. WrongUse for another ending or what
/// is not a number above 0.
PictureWanted picture_wanted(const Arguments& arguments);
/// Impossible for a PNG that would be too large.
std::string picture_bytes(const Drawing& drawing, const PictureWanted& wanted);

}  // namespace dartwright::tools
