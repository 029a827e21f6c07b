// lay: how much cloth the pieces take, and how they lie on it.

#include "arguments.hpp"
#include "checked_file.hpp"
#include "dartwright/cutting/lay.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/drawing/decimals.hpp"
#include "dartwright/drawing/lay_drawing.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pattern/place.hpp"
#include "figures.hpp"
#include "picture_file.hpp"
#include "result_file.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

LayRequest request_of(const Arguments& arguments) {
    LayRequest request;
    request.width_mm = parse_length(arguments.required("width"));
    request.is_folded = !arguments.has("opened");
    request.is_one_way = arguments.has("one-way");
    if (const auto gap = arguments.value("gap")) request.gap_mm = parse_length(*gap);
    return request;
}

// On opened cloth there is no fold to lay a piece on, so its pattern is the whole of it.
Pattern without_folds(Pattern pattern) {
    const Pattern folded = pattern;
    for (const Piece& piece : folded.pieces) {
        if (piece.cut && !piece.cut->fold.empty()) pattern = open(pattern, {piece.name}).pattern;
    }
    return pattern;
}

std::string undecided_words(const Piece& piece, const std::vector<UndecidedStretch>& undecided) {
    std::string edges;
    for (const UndecidedStretch& stretch : undecided) {
        if (edges.find(stretch.edge) == std::string::npos)
            edges += (edges.empty() ? "" : ", ") + stretch.edge;
    }
    return piece.name + " has no allowance decided at: " + edges + "; it is laid without one there";
}

struct LaidPattern {
    Lay lay;
    std::vector<std::string> notes;
};

LaidPattern laid(const Pattern& pattern, const LayRequest& request) {
    LaidPattern result;
    CuttingRequest cutting;
    cutting.tolerances = tolerances_of(pattern);
    std::vector<LayPiece> pieces;
    for (const Piece& piece : pattern.pieces) {
        const CuttingLine line = cutting_line(piece, cutting);
        if (!line.undecided.empty()) result.notes.push_back(undecided_words(piece, line.undecided));
        pieces.push_back(lay_piece(piece, line, cutting.tolerances, result.notes));
    }
    result.lay = lay(pieces, request);
    result.notes.insert(result.notes.end(), result.lay.notes.begin(), result.lay.notes.end());
    return result;
}

std::string report_text(const LaidPattern& laid, const LayRequest& request, Unit unit, const Ink& ink) {
    const Lay& lay = laid.lay;
    std::string out = ink(Paint::heading, length_words(lay.length_mm, unit) + " of cloth " +
                                              length_words(request.width_mm, unit) + " wide") +
                      (request.is_folded ? ", folded lengthwise\n" : ", opened\n");
    const double share = lay.length_mm > 0 ? 100 * lay.bound_mm / lay.length_mm : 100;
    out += "no lay can be shorter than " + length_words(lay.bound_mm, unit) + " (" +
           fixed_decimals(share, 0) + " % of this one)\n\n";
    TextTable table({{std::string("piece"), Align::left},
                     {"how it is cut", Align::left},
                     {"pattern", Align::left},
                     {std::string("from, ") + word_of(unit)},
                     {"to"}});
    for (const LaidPiece& piece : lay.pieces) {
        double low = piece.polygon.front().y;
        double high = low;
        for (const Point p : piece.polygon) {
            low = std::min(low, p.y);
            high = std::max(high, p.y);
        }
        table.add({{piece.name},
                   {piece.how},
                   {piece.is_mirrored ? "face down" : "face up"},
                   {figure(low, unit)},
                   {figure(high, unit)}});
    }
    out += table.text(ink);
    for (const std::string& note : laid.notes) out += "note: " + note + "\n";
    return out;
}

std::string report_json(const LaidPattern& laid, const LayRequest& request) {
    const Lay& lay = laid.lay;
    Json pieces = Json::array();
    for (const LaidPiece& piece : lay.pieces) {
        Json polygon = Json::array();
        for (const Point p : piece.polygon) polygon.push_back(json_of(p));
        pieces.push_back({{"piece", piece.name},
                          {"how", piece.how},
                          {"face", piece.is_mirrored ? "down" : "up"},
                          {"grain", piece.grain.y > 0 ? "forwards" : "backwards"},
                          {"polygon", polygon}});
    }
    return json_text({{"dartwright_lay", 1},
                      {"width", request.width_mm},
                      {"folded", request.is_folded},
                      {"length", lay.length_mm},
                      {"shortest_possible", lay.bound_mm},
                      {"area", lay.area_mm2},
                      {"pieces", pieces},
                      {"notes", laid.notes}});
}

ExitStatus run_lay(const Arguments& arguments, Invocation& call) {
    require_positional(arguments, 1, 1, "the pattern file");
    const Format format = format_of(arguments);
    const LayRequest request = request_of(arguments);
    const bool is_drawn = arguments.has("output");
    const PictureWanted wanted = is_drawn ? picture_wanted(arguments) : PictureWanted{};
    const std::string& path = arguments.positional[0];
    const Pattern read = read_pattern_file(path);
    call.subject = shown_path(path);
    const Pattern pattern = request.is_folded ? read : without_folds(read);
    const LaidPattern result = laid(pattern, request);
    const Ink ink(call.out.is_coloured());
    const std::string report = format == Format::json ? report_json(result, request)
                                                      : report_text(result, request, pattern.unit, ink);
    if (!is_drawn) {
        call.out.write(report);
        return ExitStatus::done;
    }
    const Drawing drawing = draw_lay(result.lay, {pattern.name, pattern.unit, request.is_folded});
    write_result(arguments, call.out, picture_bytes(drawing, wanted), report);
    return ExitStatus::done;
}

}  // namespace

Command lay_command() {
    return {
        "lay",
        "say how much cloth the pieces take, and draw how they lie on it",
        "FILE --width WIDTH [-o PICTURE] [OPTIONS]",
        "Lays the cutting pieces on cloth of a width, folded lengthwise or opened, every grain along the "
        "cloth, pieces on the fold at its fold, and says how long a piece of cloth they take. The way found "
        "is a good one, not the best there is; the length that none can be shorter than is said beside it. "
        "With -o the lay is drawn, at one fifth of its size.",
        {{"width", 0, "LENGTH", "of the cloth from selvedge to selvedge, such as 140cm or 54in"},
         {"opened", 0, "", "the cloth is not folded; pieces on a fold are laid whole"},
         {"one-way", 0, "", "a nap or a print: every grain arrow points the same way"},
         {"gap", 0, "LENGTH", "left between pieces; 5 mm if absent"},
         output_option("a picture of the lay; it comes whole or not at all"),
         overwrite_option(),
         pixels_option(),
         format_option()},
        {{"dartwright lay bodice.json --width 140cm", "on folded cloth"},
         {"dartwright lay bodice.json --width 54in --one-way -o lay.svg", "with a picture, cloth with a nap"},
         {"dartwright lay bodice.json --width 90cm --opened", "on a single ply"}},
        run_lay};
}

}  // namespace dartwright::tools
