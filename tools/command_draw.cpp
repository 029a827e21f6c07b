// draw: a picture of a pattern, or of two laid over each other.

#include <charconv>
#include <cmath>

#include "arguments.hpp"
#include "checked_file.hpp"
#include "dartwright/darts/impossible.hpp"
#include "dartwright/drawing/cairo_writer.hpp"
#include "dartwright/drawing/pattern_drawing.hpp"
#include "dartwright/drawing/svg_writer.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "nearest_word.hpp"
#include "result_file.hpp"
#include "tolerance_option.hpp"

namespace dartwright::tools {

namespace {

enum class Picture { svg, png, pdf };

// Standard output is text: a picture there is SVG.
Picture picture_of(const std::string& path) {
    if (path == "-") return Picture::svg;
    const std::size_t dot = path.rfind('.');
    const std::string extension = dot == std::string::npos ? "" : path.substr(dot);
    if (extension == ".svg") return Picture::svg;
    if (extension == ".png") return Picture::png;
    if (extension == ".pdf") return Picture::pdf;
    throw WrongUse(path + ": the name of a picture ends in .svg, .png or .pdf; the nearest is " +
                   nearest_word(extension, {".svg", ".png", ".pdf"}));
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

std::string bytes_of(const Drawing& drawing, Picture picture, double pixels) {
    if (picture == Picture::svg) return to_svg(drawing);
    if (picture == Picture::pdf) return to_pdf(drawing);
    try {
        return to_png(drawing, pixels);
    } catch (const PictureTooLarge& error) {
        throw Impossible(error.what(), "ask for fewer --pixels-per-mm");
    }
}

ExitStatus run_draw(const Arguments& arguments, Invocation& call) {
    require_positional(arguments, 1, 2, "the pattern file");
    const std::vector<std::string>& paths = arguments.positional;
    if (paths.size() == 2 && paths[0] == "-" && paths[1] == "-")
        throw WrongUse("standard input (-) can be read once only");
    const Picture picture = picture_of(arguments.value("output").value_or("-"));
    const double pixels = pixels_per_mm(arguments);
    const auto tolerances = tolerances_given(arguments);
    const Pattern before = with_tolerances(read_pattern_file(paths[0]), tolerances);
    const Pattern after =
        paths.size() == 2 ? with_tolerances(read_pattern_file(paths[1]), tolerances) : before;
    call.subject = shown_path(paths.back());
    DrawOptions options;
    options.lengths = !arguments.has("no-lengths");
    if (arguments.has("findings")) options.findings = check(after).findings;
    const Drawing drawing =
        paths.size() == 2 ? draw_overlay(before, after, options) : draw_pattern(before, options);
    write_result(arguments, call.out, bytes_of(drawing, picture, pixels), "");
    return ExitStatus::done;
}

}  // namespace

Command draw_command() {
    return {
        "draw",
        "draw a pattern, or one over another, as SVG, PNG or PDF",
        "FILE [AFTER] [-o PICTURE] [OPTIONS]",
        "Draws the pieces side by side: outlines, darts with the cut edge over their mouths, notches, grain, "
        "fold, names and lengths. With a second file, the second is drawn over the first. The ending of "
        "PICTURE says what it is: .svg, .png or .pdf; without -o it is SVG on standard output.",
        {output_option("the picture; it comes whole or not at all"),
         overwrite_option(),
         {"findings", 0, "", "mark the findings of a check at their places (with two files, the second's)"},
         {"no-lengths", 0, "", "leave out the lengths of edges and the figures of darts"},
         {"pixels-per-mm", 0, "NUMBER", "the resolution of a PNG; 4 if absent"},
         tolerance_option()},
        {{"dartwright draw bodice.json -o bodice.svg", "a drawing at true size"},
         {"dartwright draw bodice.json --findings -o bodice.png", "with what the check found, marked"},
         {"dartwright draw bodice.json moved.json -o moved.pdf", "before and after, one over the other"}},
        run_draw};
}

}  // namespace dartwright::tools
