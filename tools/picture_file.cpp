#include "picture_file.hpp"

#include <charconv>
#include <cmath>

#include "dartwright/drawing/cairo_writer.hpp"
#include "dartwright/drawing/svg_writer.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/words/nearest_word.hpp"

namespace dartwright::tools {

namespace {

// Standard output is text: a picture there is SVG.
Picture picture_of(const std::string& path) {
    if (path == "-") return Picture::svg;
    const std::size_t dot = path.rfind('.');
    const std::string extension = dot == std::string::npos ? "" : path.substr(dot);
    if (extension == ".svg") return Picture::svg;
    if (extension == ".png") return Picture::png;
    if (extension == ".pdf") return Picture::pdf;
    throw WrongUse(path + ": the name of a picture ends in .svg, .png or .pdf" +
                   nearest_told(extension, {".svg", ".png", ".pdf"}));
}

/// Pixels for a millimetre on a PNG: at 4 the smallest words are some 20 pixels high.
constexpr double default_pixels_per_mm = 4;

double pixels_per_mm(const Arguments& arguments) {
    const auto words = arguments.value("pixels-per-mm");
    if (!words) return default_pixels_per_mm;
    double number = 0;
    const auto [end, error] = std::from_chars(words->data(), words->data() + words->size(), number);
    const bool is_number = error == std::errc() && end == words->data() + words->size();
    if (!is_number || !std::isfinite(number) || number <= 0)
        throw WrongUse("--pixels-per-mm is a number above 0, not '" + *words + "'");
    return number;
}

}  // namespace

OptionSpec pixels_option() {
    return {"pixels-per-mm", 0, "NUMBER", "the resolution of a PNG; 4 if absent"};
}

PictureWanted picture_wanted(const Arguments& arguments) {
    return {picture_of(arguments.value("output").value_or("-")), pixels_per_mm(arguments)};
}

std::string picture_bytes(const Drawing& drawing, const PictureWanted& wanted) {
    if (wanted.kind == Picture::svg) return to_svg(drawing);
    if (wanted.kind == Picture::pdf) return to_pdf(drawing);
    try {
        return to_png(drawing, wanted.pixels_per_mm);
    } catch (const PictureTooLarge& error) {
        throw Impossible(error.what(), "ask for fewer --pixels-per-mm");
    }
}

}  // namespace dartwright::tools
