// measure: a named line, or a level, across all pieces.

#include "arguments.hpp"
#include "checked_file.hpp"
#include "dartwright/checks/measure_line.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/words/lengths.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

std::string text_of(const MeasuredLine& line, Unit unit, const Ink& ink) {
    TextTable table(
        {{std::string("pieces, ") + word_of(unit), Align::left}, {"on the piece"}, {"times"}, {"in all"}});
    for (const MeasuredOnPiece& piece : line.pieces) {
        table.add({{piece.piece},
                   {length_figure(piece.length_mm, unit)},
                   {std::to_string(piece.copies)},
                   {length_figure(piece.total_mm, unit)}});
    }
    return ink(Paint::heading, line.name) + ": " + length_words(line.total_mm, unit) + "\n\n" +
           table.text(ink);
}

std::string json_of(const MeasuredLine& line) {
    Json pieces = Json::array();
    for (const MeasuredOnPiece& piece : line.pieces) {
        pieces.push_back({{"piece", piece.piece},
                          {"length", piece.length_mm},
                          {"copies", piece.copies},
                          {"total", piece.total_mm}});
    }
    return json_text(
        {{"dartwright_measure", 1}, {"name", line.name}, {"pieces", pieces}, {"total", line.total_mm}});
}

ExitStatus run_measure(const Arguments& arguments, Invocation& call) {
    require_positional(arguments, 1, 1, "the pattern file");
    const Format format = format_of(arguments);
    const auto name = arguments.value("line");
    const auto level = arguments.value("level");
    if (name.has_value() == level.has_value())
        throw WrongUse("give either --line with a name, or --level with a place");
    const std::string& path = arguments.positional[0];
    const Pattern pattern = read_pattern_file(path);
    call.works_on(shown_path(path), pattern.unit);
    const MeasuredLine line = name ? measure_line(pattern, *name) : measure_level(pattern, *level);
    const Ink ink(call.out.is_coloured());
    call.out.write(format == Format::json ? json_of(line) : text_of(line, pattern.unit, ink));
    return ExitStatus::done;
}

}  // namespace

Command measure_command() {
    return {
        "measure",
        "measure a named line or a level across all pieces: bust, waist, hem",
        "FILE --line NAME | --level PLACE [--format text|json]",
        "Adds up the line on every piece that has it, darts closed, twice for a piece on the fold or cut as "
        "a pair.",
        {{"line", 0, "NAME", "a run or a marked line: waist, 'bust line'"},
         {"level", 0, "PLACE", "the line square to the grain through this place, such as side@30/waist"},
         format_option()},
        {{"dartwright measure bodice.json --line waist", "the finished waist"},
         {"dartwright measure bodice.json --line \"bust line\"", "a line drawn on the pieces"},
         {"dartwright measure bodice.json --level side@30/waist", "around, 30 mm above the waist"}},
        run_measure};
}

}  // namespace dartwright::tools
