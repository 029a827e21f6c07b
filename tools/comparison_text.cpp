#include "comparison_text.hpp"

#include <cmath>

#include "dartwright/words/lengths.hpp"

namespace dartwright::tools {

namespace {

std::string figure_or_dash(const std::optional<double>& length_mm, Unit unit) {
    return length_mm ? length_figure(*length_mm, unit) : "-";
}

std::string change_figure(const BeforeAfter& amount, Unit unit) {
    return amount.difference() ? signed_length_figure(*amount.difference(), unit) : "";
}

std::string lengths_table(const std::string& heading,
                          const std::vector<std::pair<std::string, BeforeAfter>>& rows, Unit unit,
                          const Ink& ink) {
    if (rows.empty()) return "";
    TextTable table({{heading + ", " + word_of(unit), Align::left}, {"before"}, {"after"}, {"change"}});
    for (const auto& [name, amount] : rows) {
        table.add({{name},
                   {figure_or_dash(amount.before, unit)},
                   {figure_or_dash(amount.after, unit)},
                   {change_figure(amount, unit)}});
    }
    return "\n" + table.text(ink);
}

std::string runs_table(const ComparedPiece& piece, Unit unit, const Ink& ink) {
    std::vector<std::pair<std::string, BeforeAfter>> rows;
    for (const ComparedRun& run : piece.runs) rows.emplace_back(run.edge, run.sewn_mm);
    return lengths_table("runs", rows, unit, ink);
}

std::string seams_table(const std::vector<ComparedSeam>& seams, Unit unit, const Ink& ink) {
    std::vector<std::pair<std::string, BeforeAfter>> rows;
    for (const ComparedSeam& seam : seams) rows.emplace_back(seam.name, seam.difference_mm);
    return lengths_table("seams, difference", rows, unit, ink);
}

std::string seen_words(const DartSeen& dart) {
    return angle_words_of_degrees(degrees(dart.angle_rad)) + " at " + dart.place;
}

std::string dart_line(const ComparedDart& dart) {
    const std::string name = "  " + dart.name + ": ";
    switch (dart.change) {
        case DartChange::kept:
            return name + seen_words(*dart.before) + ", as it was\n";
        case DartChange::moved:
            return name + seen_words(*dart.before) + "; moved, now " + seen_words(*dart.after) + "\n";
        case DartChange::changed:
            return name + seen_words(*dart.before) + "; now " + seen_words(*dart.after) + "\n";
        case DartChange::gone:
            return name + seen_words(*dart.before) + "; gone\n";
        case DartChange::opened:
            return name + "new, " + seen_words(*dart.after) + "\n";
    }
    return {};
}

std::string angle_or_dash(const std::optional<double>& rad) {
    return rad ? angle_words_of_degrees(degrees(*rad)) : "none";
}

std::string pivot_line(const ComparedPivot& pivot) {
    std::string names;
    for (const std::string& dart : pivot.darts_before.empty() ? pivot.darts_after : pivot.darts_before)
        names += (names.empty() ? "" : ", ") + dart;
    return "  about the pivot of " + names + ": " + angle_or_dash(pivot.angle_rad.before) + " before, " +
           angle_or_dash(pivot.angle_rad.after) + " after\n";
}

std::string part_line(const ComparedPart& part, double whole_rad, Unit unit) {
    std::string edges;
    for (const PartStretch& stretch : part.stretches) {
        const bool is_whole = stretch.from_share == 0 && stretch.to_share == 1;
        edges += (edges.empty() ? "" : ", ") + std::string(is_whole ? "" : "part of ") + stretch.edge;
    }
    const double turn = std::remainder(angle(part.motion) - whole_rad, 2 * pi);
    const std::string turned = std::abs(degrees(turn)) < 0.05
                                   ? "not turned"
                                   : "turned by " + angle_words_of_degrees(std::abs(degrees(turn))) +
                                         (turn < 0 ? " clockwise" : " anticlockwise");
    return "  " + edges + ": " + turned + ", off by " + length_words(part.strays_mm, unit) + " at most\n";
}

std::string text_of(const ComparedPiece& piece, Unit unit, bool is_all_kept, const Ink& ink) {
    std::string text = "\n" + ink(Paint::heading, piece.name) + ": " +
                       area_words(*piece.area_mm2.before, unit) + " of cloth before, " +
                       area_words(*piece.area_mm2.after, unit) + " after\n";
    for (const ComparedDart& dart : piece.darts) text += dart_line(dart);
    for (const ComparedPivot& pivot : piece.pivots) text += pivot_line(pivot);
    text += runs_table(piece, unit, ink);
    if (!piece.parts.empty()) text += "\n  parts, against the longest of them\n";
    for (const ComparedPart& part : piece.parts) text += part_line(part, piece.turned_rad, unit);
    // Moved darts leave the outlines far apart, which says nothing where all is kept.
    if (piece.outline && !is_all_kept) {
        text += "  laid over each other as well as they will go, the outlines are " +
                length_words(piece.outline->at_least_mm, unit) + " apart at most\n";
    }
    return text;
}

std::string things(std::size_t count) {
    return std::to_string(count) + (count == 1 ? " thing" : " things");
}

std::string verdict(const Comparison& comparison, const Ink& ink) {
    if (!comparison.is_kept()) return ink(Paint::bad, things(comparison.losses.size()) + " not kept");
    if (comparison.is_unchanged()) return ink(Paint::good, "everything is kept");
    return ink(Paint::good, "nothing is lost; " + things(comparison.changes.size()) +
                                (comparison.changes.size() == 1 ? " is" : " are") + " otherwise");
}

}  // namespace

std::string text_of(const Comparison& comparison, Unit unit, const Ink& ink) {
    std::string text;
    for (const ComparedPiece& piece : comparison.pieces)
        text += text_of(piece, unit, comparison.is_kept(), ink);
    text += seams_table(comparison.seams, unit, ink);
    if (!comparison.notes.empty()) text += "\n";
    for (const std::string& note : comparison.notes) text += "  note: " + note + "\n";
    text += "\n";
    for (const Loss& loss : comparison.losses)
        text += "  " + ink(Paint::bad, loss.what) + ": " + loss.message + "\n    " + loss.remedy + "\n";
    for (const Loss& change : comparison.changes)
        text +=
            "  " + ink(Paint::warning, change.what) + ": " + change.message + "\n    " + change.remedy + "\n";
    return text + verdict(comparison, ink) + "\n";
}

}  // namespace dartwright::tools
