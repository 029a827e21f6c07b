// draw: a picture of a pattern, or of two laid over each other.

#include "arguments.hpp"
#include "checked_file.hpp"
#include "dartwright/drawing/pattern_drawing.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "picture_file.hpp"
#include "result_file.hpp"
#include "tolerance_option.hpp"

namespace dartwright::tools {

namespace {

ExitStatus run_draw(const Arguments& arguments, Invocation& call) {
    require_positional(arguments, 1, 2, "the pattern file");
    const std::vector<std::string>& paths = arguments.positional;
    if (paths.size() == 2 && paths[0] == "-" && paths[1] == "-")
        throw WrongUse("standard input (-) can be read once only");
    const PictureWanted wanted = picture_wanted(arguments);
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
    write_result(arguments, call.out, picture_bytes(drawing, wanted), "");
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
         pixels_option(),
         tolerance_option()},
        {{"dartwright draw bodice.json -o bodice.svg", "a drawing at true size"},
         {"dartwright draw bodice.json --findings -o bodice.png", "with what the check found, marked"},
         {"dartwright draw bodice.json moved.json -o moved.pdf", "before and after, one over the other"}},
        run_draw};
}

}  // namespace dartwright::tools
