// draw: a picture of a pattern, or of two laid over each other.

#include "arguments.hpp"
#include "checked_file.hpp"
#include "dartwright/cutting/applied_rule.hpp"
#include "dartwright/drawing/cutting_drawing.hpp"
#include "dartwright/drawing/pattern_drawing.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "picture_file.hpp"
#include "result_file.hpp"
#include "tolerance_option.hpp"

namespace dartwright::tools {

namespace {

/// What a cutter has to know of the pieces, a line each.
std::string account_of(const std::vector<CuttingPiece>& pieces) {
    std::string account;
    for (const CuttingPiece& cut : pieces) {
        for (const std::string& note : notes_of(cut)) account += note + "\n";
    }
    return account;
}

ExitStatus draw_for_cutting(const Arguments& arguments, Invocation& call) {
    require_positional(arguments, 1, 1, "the pattern file");
    for (const char* option : {"findings", "no-lengths"})
        if (arguments.has(option))
            throw WrongUse("--" + std::string(option) + " is not for a drawing with --cutting");
    const PictureWanted wanted = picture_wanted(arguments);
    const std::string& path = arguments.positional[0];
    const Pattern pattern = with_tolerances(read_pattern_file(path), tolerances_given(arguments));
    call.works_on(shown_path(path), pattern.unit);
    std::vector<CuttingPiece> pieces;
    for (const Piece& piece : pattern.pieces)
        pieces.push_back(cutting_piece(piece, cutting_request(pattern, piece), marking_request(pattern)));
    const CuttingLabel label{pattern.name, arguments.value("size").value_or(""),
                             arguments.value("date").value_or(""), pattern.unit};
    const std::string bytes = picture_bytes(draw_cutting_pieces(pattern, pieces, label), wanted);
    write_result(arguments, call, bytes, account_of(pieces));
    return ExitStatus::done;
}

ExitStatus run_draw(const Arguments& arguments, Invocation& call) {
    if (arguments.has("cutting")) return draw_for_cutting(arguments, call);
    for (const char* option : {"date", "size"})
        if (arguments.has(option)) throw WrongUse("--" + std::string(option) + " is only for --cutting");
    require_positional(arguments, 1, 2, "the pattern file");
    const std::vector<std::string>& paths = arguments.positional;
    if (paths.size() == 2 && paths[0] == "-" && paths[1] == "-")
        throw WrongUse("standard input (-) can be read once only");
    const PictureWanted wanted = picture_wanted(arguments);
    const auto tolerances = tolerances_given(arguments);
    const Pattern before = with_tolerances(read_pattern_file(paths[0]), tolerances);
    const Pattern after =
        paths.size() == 2 ? with_tolerances(read_pattern_file(paths[1]), tolerances) : before;
    call.works_on(shown_path(paths.back()), after.unit);
    DrawOptions options;
    options.lengths = !arguments.has("no-lengths");
    if (arguments.has("findings")) options.findings = check(after).findings;
    const Drawing drawing =
        paths.size() == 2 ? draw_overlay(before, after, options) : draw_pattern(before, options);
    write_result(arguments, call, picture_bytes(drawing, wanted), "");
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
         {"cutting", 0, "",
          "the pieces as they are cut: cutting line, stitching line, notches, grain, a label; cutters hurt: "
          "your workshop's rules come first"},
         {"date", 0, "TEXT", "with --cutting: a date for the labels, written as you give it"},
         {"size", 0, "TEXT", "with --cutting: a size for the labels"},
         {"no-lengths", 0, "", "leave out the lengths of edges and the figures of darts"},
         pixels_option(),
         tolerance_option()},
        {{"dartwright draw bodice.json -o bodice.svg", "a drawing at true size"},
         {"dartwright draw bodice.json --findings -o bodice.png", "with what the check found, marked"},
         {"dartwright draw bodice.json --cutting -o bodice.pdf",
          "the pieces with their allowances, to cut from"},
         {"dartwright draw bodice.json moved.json -o moved.pdf", "before and after, one over the other"}},
        run_draw};
}

}  // namespace dartwright::tools
