// lay: how much cloth the pieces take, and how they lie on it.

#include "arguments.hpp"
#include "checked_file.hpp"
#include "cloth_options.hpp"
#include "dartwright/cutting/lay_pattern.hpp"
#include "dartwright/drawing/lay_drawing.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/words/lengths.hpp"
#include "dartwright/words/written_number.hpp"
#include "picture_file.hpp"
#include "result_file.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

std::string report_text(const PatternLay& laid, Unit unit, const Ink& ink) {
    const Lay& lay = laid.lay;
    std::string out =
        ink(Paint::heading, "buy " + bought_words(lay.length_mm, unit) + " or more: the lay takes " +
                                length_words(lay.length_mm, unit) + " of cloth " +
                                length_words(laid.request.width_mm, unit) + " wide") +
        (laid.request.is_folded ? ", folded lengthwise\n" : ", opened\n");
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
                   {length_figure(low, unit)},
                   {length_figure(high, unit)}});
    }
    out += table.text(ink);
    for (const std::string& note : laid.notes) out += "note: " + note + "\n";
    return out;
}

std::string report_json(const PatternLay& laid) {
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
                      {"width", laid.request.width_mm},
                      {"folded", laid.request.is_folded},
                      {"length", lay.length_mm},
                      {"shortest_possible", lay.bound_mm},
                      {"area", lay.area_mm2},
                      {"pieces", pieces},
                      {"notes", laid.notes}});
}

ExitStatus run_lay(const Arguments& arguments, Invocation& call) {
    require_positional(arguments, 1, 1, "the pattern file");
    const Format format = format_of(arguments);
    const LayRequest request = lay_request(arguments);
    const bool is_drawn = arguments.has("output");
    const PictureWanted wanted = is_drawn ? picture_wanted(arguments) : PictureWanted{};
    const std::string& path = arguments.positional[0];
    const Pattern pattern = read_pattern_file(path);
    call.works_on(shown_path(path), pattern.unit);
    const PatternLay laid = lay_pattern(pattern, request);
    const Ink ink(call.out.is_coloured());
    const std::string report =
        format == Format::json ? report_json(laid) : report_text(laid, pattern.unit, ink);
    if (!is_drawn) {
        call.out.write(report);
        return ExitStatus::done;
    }
    const Drawing drawing = draw_lay(laid.lay, {pattern.name, pattern.unit, request.is_folded});
    write_result(arguments, call, picture_bytes(drawing, wanted), report);
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
        "With -o the lay is drawn, at one fifth of its size. Cutters and pins hurt: your workshop's rules "
        "and a qualified teacher come first.",
        {width_option("of the cloth from selvedge to selvedge, such as 140cm or 54in"), opened_option(),
         one_way_option(), gap_option(), output_option("a picture of the lay; it comes whole or not at all"),
         overwrite_option(), pixels_option(), format_option()},
        {{"dartwright lay bodice.json --width 140cm", "on folded cloth"},
         {"dartwright lay bodice.json --width 54in --one-way -o lay.svg", "with a picture, cloth with a nap"},
         {"dartwright lay bodice.json --width 90cm --opened", "on a single ply"}},
        run_lay};
}

}  // namespace dartwright::tools
