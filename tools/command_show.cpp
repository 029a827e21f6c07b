// show: the figures of a pattern's pieces, without a judgement.

#include <cmath>

#include "arguments.hpp"
#include "checked_file.hpp"
#include "dartwright/checks/check.hpp"
#include "dartwright/darts/cap.hpp"
#include "dartwright/drawing/fullness_words.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/geometry/motion.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/press_name.hpp"
#include "dartwright/words/lengths.hpp"
#include "fullness_json.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

struct NamedDart {
    std::string name;
    DartFigures figures;
    std::optional<double> stitched;  ///< of a tuck, mm
};

std::vector<NamedDart> darts_of(const Outline& outline) {
    std::vector<NamedDart> darts;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (const DartItem* dart = outline.items[i].as_dart())
            darts.push_back({dart->name, figures_of(outline, i), dart->stitched});
    }
    return darts;
}

std::string point_words(Point point, Unit unit) {
    return length_figure(point.x, unit) + ", " + length_figure(point.y, unit);
}

std::string cut_words(const Piece& piece) {
    if (!piece.cut) return "the cut is not stated";
    std::string words = std::string("cut ") + std::to_string(piece.cut->quantity);
    const std::vector<std::string> folds = fold_edges(piece);
    if (folds.size() == 1) words += ", " + folds[0] + " on the fold";
    if (folds.size() == 2) words += ", " + folds[0] + " and " + folds[1] + " on two folds";
    if (piece.cut->same) words += ", all the same way up";
    return words;
}

/// The caps of those darts whose press side is known and that can be folded.
struct NamedCap {
    const DartItem* dart = nullptr;
    std::string press;  ///< where it is pressed to, as a person says it
    Cap cap;
};

std::vector<NamedCap> caps_of(const Piece& piece, const Tolerances& tolerances) {
    std::vector<NamedCap> caps;
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        const DartItem* dart = piece.outline.items[i].as_dart();
        if (!dart) continue;
        if (std::optional<Cap> cap = cap_if_any(piece, i, tolerances))
            caps.push_back({dart, press_name(piece, i), *cap});
    }
    return caps;
}

std::string cap_table(const std::vector<NamedCap>& caps, Unit unit, const Ink& ink) {
    TextTable table({{std::string("caps, ") + word_of(unit), Align::left},
                     {"pressed to", Align::left},
                     {"out by"},
                     {"tip"}});
    std::string notes;
    for (const auto& [dart, press, cap] : caps) {
        table.add({{dart->name}, {press}, {length_figure(cap.depth_mm, unit)}, {point_words(cap.tip, unit)}});
        for (const Sentence& note : cap.notes) notes += "  note: " + note.in(unit) + "\n";
    }
    return table.is_empty() ? "" : "\n" + table.text(ink) + notes;
}

std::string taken_in_lines(const Piece& piece, Unit unit) {
    std::string text;
    for (const std::string& words : taken_in_words(piece, runs_of(piece.outline), unit))
        text += "  " + words + "\n";
    return text.empty() ? "" : "\n  gathered, eased or tucked\n" + text;
}

std::string text_of(const Piece& piece, const Pattern& pattern, const Ink& ink) {
    const Unit unit = pattern.unit;

    std::string text = std::string("\n") + ink(Paint::heading, piece.name) + ": " +
                       area_words(cloth_area(piece), unit) + " of cloth, " + cut_words(piece) + "\n\n";
    TextTable runs({{std::string("runs, ") + word_of(unit), Align::left}, {"length"}});
    for (const Run& run : runs_of(piece.outline)) runs.add({{run.edge}, {length_figure(run.length, unit)}});
    text += runs.text(ink) + taken_in_lines(piece, unit);
    TextTable table({{std::string("darts, ") + word_of(unit), Align::left},
                     {"first leg"},
                     {"second leg"},
                     {"intake"},
                     {"angle"},
                     {"point"},
                     {"pivot"}});
    for (const auto& [name, figures, stitched] : darts_of(piece.outline)) {
        table.add({{stitched ? name + ", stitched " + length_figure(*stitched, unit) : name},
                   {length_figure(figures.leg_a, unit)},
                   {length_figure(figures.leg_b, unit)},
                   {length_figure(figures.intake, unit)},
                   {angle_words_of_degrees(std::abs(degrees(figures.angle_rad)))},
                   {point_words(figures.point, unit)},
                   {point_words(figures.pivot, unit)}});
    }
    for (const DoubleDart& dart : piece.double_darts) {
        const std::array<double, 4> legs = leg_lengths(dart);
        table.add({{dart.name + ", two points"},
                   {length_figure(legs[0], unit) + " + " + length_figure(legs[2], unit)},
                   {length_figure(legs[1], unit) + " + " + length_figure(legs[3], unit)},
                   {length_figure(intake_of(dart), unit)},
                   {""},
                   {point_words(dart.from, unit) + " to " + point_words(dart.to, unit)},
                   {""}});
    }
    if (!table.is_empty()) text += "\n" + table.text(ink);
    return text + cap_table(caps_of(piece, tolerances_of(pattern)), unit, ink);
}

Json json_of_cap(const std::vector<NamedCap>& caps, const std::string& dart) {
    for (const NamedCap& named : caps) {
        if (named.dart->name != dart) continue;
        return {{"press", named.dart->press}, {"tip", json_of(named.cap.tip)}, {"depth", named.cap.depth_mm}};
    }
    return nullptr;
}

Json json_of_piece(const Piece& piece, const Tolerances& tolerances) {
    const std::vector<NamedCap> caps = caps_of(piece, tolerances);
    Json runs = Json::array();
    const std::vector<Run> walked = runs_of(piece.outline);
    for (const Run& run : walked)
        runs.push_back(Json{{"edge", run.edge},
                            {"length", run.length},
                            {"fullness", json_of_fullness(piece, walked, run.edge)}});
    Json darts = Json::array();
    for (const auto& [name, figures, stitched] : darts_of(piece.outline)) {
        darts.push_back({{"name", name},
                         {"legs", {figures.leg_a, figures.leg_b}},
                         {"intake", figures.intake},
                         {"angle", std::abs(degrees(figures.angle_rad))},
                         {"stitched", stitched ? Json(*stitched) : Json(nullptr)},
                         {"point", json_of(figures.point)},
                         {"pivot", json_of(figures.pivot)},
                         {"cap", json_of_cap(caps, name)}});
    }
    Json double_darts = Json::array();
    for (const DoubleDart& dart : piece.double_darts) {
        double_darts.push_back({{"name", dart.name},
                                {"legs", leg_lengths(dart)},
                                {"intake", intake_of(dart)},
                                {"from", json_of(dart.from)},
                                {"to", json_of(dart.to)}});
    }
    return {{"name", piece.name},
            {"area", cloth_area(piece)},
            {"runs", runs},
            {"darts", darts},
            {"double_darts", double_darts}};
}

std::string made_lines(const std::vector<Made>& made) {
    std::string text = made.empty() ? "" : "\nmade by\n";
    for (const Made& operation : made) {
        text += "  " + operation.operation;
        for (const auto& [key, value] : operation.request) text += ", " + key + " " + value;
        text += "\n";
    }
    return text;
}

ExitStatus run_show(const Arguments& arguments, Invocation& call) {
    require_positional(arguments, 1, 1, "the pattern file");
    const Format format = format_of(arguments);
    const std::string& path = arguments.positional[0];
    const Pattern pattern = read_pattern_file(path);
    call.works_on(shown_path(path), pattern.unit);
    const CheckReport report = check(pattern);
    const std::vector<SeamVerdict>& seams = report.seams;
    if (format == Format::json) {
        const Tolerances tolerances = tolerances_of(pattern);
        Json pieces = Json::array();
        for (const Piece& piece : pattern.pieces) pieces.push_back(json_of_piece(piece, tolerances));
        call.out.write(json_text({{"dartwright_show", 1}, {"pieces", pieces}, {"seams", json_of(seams)}}));
        return ExitStatus::done;
    }
    const Ink ink(call.out.is_coloured());
    std::string text = ink(Paint::heading, call.subject) + ": " + pattern.name + "\n";
    for (const Piece& piece : pattern.pieces) text += text_of(piece, pattern, ink);
    const std::string table = seam_table(seams, report.findings, pattern.unit, ink);
    call.out.write(text + (table.empty() ? "" : std::string("\n") + table) + made_lines(pattern.made));
    return ExitStatus::done;
}

}  // namespace

Command show_command() {
    return {
        "show",
        "print the figures of a pattern: areas, lengths, darts, seams",
        "FILE [--format text|json]",
        "Prints each piece's area of cloth (darts closed), the sewn length of every run and what is gathered "
        "or eased away along it, every dart's legs, "
        "intake, angle at the pivot, point and pivot (of a dart with two points, the legs at each of them), "
        "and "
        "every seam's lengths. Where it is known how a dart is pressed, the tip of its cap (the cut edge "
        "over "
        "its mouth) and how far that stands out beyond the straight mouth (below 0: falls short of it).",
        {format_option()},
        {{"dartwright show bodice.json", "the figures, in the file's unit"},
         {"dartwright show bodice.json --format json", "the same for another program, in mm and degrees"},
         {"dartwright pivot bodice.json --piece front --dart \"waist dart\" --to shoulder@50% | "
          "dartwright show -",
          "the figures of a pattern that was just made"}},
        run_show};
}

}  // namespace dartwright::tools
