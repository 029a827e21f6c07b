#include "cut_account.hpp"

#include <algorithm>

#include "dartwright/checks/check.hpp"
#include "dartwright/cutting/notch_on_cutting_line.hpp"
#include "dartwright/drawing/fullness_words.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/press_name.hpp"
#include "dartwright/words/lengths.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

/// A notch as deep as the allowance is wide to this is not deeper, mm: rounding, no more.
constexpr double same_depth_mm = 1e-6;

/// A stretch of a run, measured from one of its ends.
struct MeasuredPlace {
    RunEnd end = RunEnd::start;
    std::string from;       ///< the end's name
    std::string end_words;  ///< and in a sentence
    double at_mm = 0;
    double to_mm = 0;
    bool is_whole = false;  ///< from one end to the other
};

std::vector<DeepNotch> deep_notches(const Piece& piece, const CuttingLine& line, double depth_mm) {
    std::vector<DeepNotch> out;
    const std::vector<Run> runs = runs_of(piece.outline);
    for (const Notch& notch : piece.notches) {
        const Run& run = run_named(runs, notch.edge, piece.name);
        const bool is_from_end = end_named(run, notch.from) == RunEnd::end;
        const double along = is_from_end ? run.length - notch.at : notch.at;
        const double width = notch_on_cutting_line(line, place_on_run(piece.outline, run, along)).width_mm;
        if (depth_mm > width + same_depth_mm) out.push_back({notch, depth_mm, width});
    }
    return out;
}

CutPiece cut_piece(const Piece& piece, const RuledPiece& ruled, const std::optional<NotchRule>& notches) {
    CutPiece cut;
    cut.piece = &piece;
    cut.ruled = ruled;
    CuttingRequest request = ruled.request;
    request.tells_trimmed = true;
    cut.line = cutting_line(piece, request);
    cut.area_mm2 = signed_area(cut.line.points);
    Point low = cut.line.points.front();
    Point high = low;
    for (const Point p : cut.line.points) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
    cut.across_mm = high.x - low.x;
    cut.up_mm = high.y - low.y;
    if (notches) cut.deep_notches = deep_notches(piece, cut.line, notches->depth_mm);
    return cut;
}

std::string width_words(const DecidedRun& run, Unit unit) {
    std::string words;
    for (const RunWidth& each : run.widths) {
        words += (words.empty() ? "" : ", ") + (each.width_mm ? width_figure(*each.width_mm, unit) : "none");
        if (run.widths.size() > 1)
            words += " from " + length_figure(each.from_mm, unit) + " to " + length_figure(each.to_mm, unit);
    }
    return words;
}

std::string decided_words(const DecidedRun& run, Unit unit) {
    const bool is_changed = run.was_mm && run.by != DecidedBy::fold && run.widths.size() == 1 &&
                            run.widths[0].width_mm != run.was_mm;
    return to_text(run) + (is_changed ? " (before: " + width_figure(*run.was_mm, unit) + ")" : std::string());
}

std::string runs_text(const CutPiece& cut, Unit unit, const Ink& ink) {
    TextTable table({{"edge", Align::left},
                     {std::string("allowance, ") + word_of(unit), Align::left},
                     {"decided by", Align::left}});
    for (const DecidedRun& run : cut.ruled.runs)
        table.add({{run.edge},
                   {width_words(run, unit)},
                   {decided_words(run, unit), run.is_undecided ? Paint::warning : Paint::plain}});
    return table.text(ink);
}

const DartTrimming* trimming_of(const CutPiece& cut, const std::string& dart) {
    for (const DartTrimming& each : cut.ruled.request.trimmed) {
        if (each.dart == dart) return &each;
    }
    return nullptr;
}

std::string dart_words(const CutPiece& cut, const CutDart& dart, Unit unit) {
    if (const DartTrimming* trimming = trimming_of(cut, dart.dart))
        return "trimmed to " + length_words(trimming->width_mm, unit) + " along its legs";
    if (!dart.is_capped) return "cut straight across its mouth";
    const std::string towards = press_name(*cut.piece, dart.item);
    return towards.empty() ? "capped as its note says" : "capped as pressed to " + towards;
}

std::string corner_words(const CutCorner& corner) {
    return "corner of " + corner.edges[0] + " and " + corner.edges[1] + ": " + to_text(corner.kind) +
           (corner.is_step ? ", with a step" : "");
}

std::string undecided_words(const CutPattern& cut, const DecidedRun& run, Unit unit) {
    return "nothing decides the allowance of " + run.edge + "; what is undecided has " +
           (cut.undecided_mm ? length_words(*cut.undecided_mm, unit) : "none");
}

std::string notch_words(const DeepNotch& deep, Unit unit) {
    return "the notch " + length_words(deep.notch.at, unit) + " from " + deep.notch.from + " on " +
           deep.notch.edge + " is " + length_words(deep.depth_mm, unit) + " deep, and the allowance there " +
           length_words(deep.width_mm, unit) + " wide";
}

/// From the end that is nearer.
MeasuredPlace measured(const Piece& piece, const TrimmedPlace& place) {
    const std::vector<Run> runs = runs_of(piece.outline);
    const Run& run = run_named(runs, place.edge, piece.name);
    const bool is_from_end = run.length - place.to_mm < place.from_mm;
    MeasuredPlace found;
    found.end = is_from_end ? RunEnd::end : RunEnd::start;
    found.from = name_of_end(run, found.end);
    found.end_words = end_words(run, found.end);
    found.at_mm = is_from_end ? run.length - place.to_mm : place.from_mm;
    found.to_mm = is_from_end ? run.length - place.from_mm : place.to_mm;
    found.is_whole = place.to_mm - place.from_mm > run.length - one_point_mm;
    return found;
}

std::string trimmed_words(const Piece& piece, const TrimmedPlace& place, Unit unit) {
    if (!place.dart.empty()) return "at the mouth of " + place.dart;
    const MeasuredPlace found = measured(piece, place);
    if (found.is_whole) return place.edge + ", all along it";
    if (found.to_mm < one_point_mm) return place.edge + ", at " + found.end_words;
    const std::string to = ruler_words(found.to_mm, unit);
    const bool is_point = ruler_words(found.at_mm, unit) == to;
    return place.edge + ", " + (is_point ? "" : ruler_figure(found.at_mm, unit) + " to ") + to + " from " +
           found.end_words;
}

std::string lines_of(const CutPattern& cut, const CutPiece& piece, Unit unit) {
    std::string out;
    for (const CutCorner& corner : piece.line.corners) {
        if (corner.kind != CornerKind::met || corner.is_step) out += "  " + corner_words(corner) + "\n";
    }
    for (const CutDart& dart : piece.line.darts)
        out += "  " + dart.dart + ": " + dart_words(piece, dart, unit) + "\n";
    for (const DecidedRun& run : piece.ruled.runs) {
        if (run.is_undecided) out += "  note: " + undecided_words(cut, run, unit) + "\n";
    }
    for (const DeepNotch& deep : piece.deep_notches) out += "  note: " + notch_words(deep, unit) + "\n";
    for (const std::string& note : piece.line.notes) out += "  note: " + note + "\n";
    for (const TrimmedPlace& place : piece.line.trimmed)
        out += "  note: trimmed where allowances run into each other: " +
               trimmed_words(*piece.piece, place, unit) + "\n";
    return out;
}

const char* decider_word(DecidedBy by) {
    switch (by) {
        case DecidedBy::fold:
            return "fold";
        case DecidedBy::edge:
            return "edge";
        case DecidedBy::opening:
            return "opening";
        case DecidedBy::seam:
            return "seam";
        case DecidedBy::joined:
            return "joined";
        case DecidedBy::elsewhere:
            return "elsewhere";
        case DecidedBy::pattern:
            return "pattern";
        case DecidedBy::nothing:
            break;
    }
    return "nothing";
}

Json number_or_null(std::optional<double> value) {
    return value ? Json(*value) : Json(nullptr);
}

Json run_json(const DecidedRun& run) {
    Json widths = Json::array();
    for (const RunWidth& each : run.widths)
        widths.push_back(
            {{"from", each.from_mm}, {"to", each.to_mm}, {"width", number_or_null(each.width_mm)}});
    return {{"edge", run.edge},
            {"decided_by", decider_word(run.by)},
            {"seam", run.seam.empty() ? Json(nullptr) : Json(run.seam)},
            {"undecided", run.is_undecided},
            {"was", number_or_null(run.was_mm)},
            {"widths", widths}};
}

Json dart_json(const CutPiece& cut, const CutDart& dart) {
    const DartTrimming* trimming = trimming_of(cut, dart.dart);
    return {{"dart", dart.dart},
            {"capped", dart.is_capped},
            {"trimmed", trimming ? Json(trimming->width_mm) : Json(nullptr)},
            {"a", json_of(dart.a)},
            {"b", json_of(dart.b)},
            {"tip", json_of(dart.tip)}};
}

Json trimmed_json(const Piece& piece, const TrimmedPlace& place) {
    if (!place.dart.empty())
        return {{"edge", nullptr}, {"dart", place.dart}, {"from", nullptr},
                {"at", nullptr},   {"to", nullptr},      {"place", json_of(place.at)}};
    const MeasuredPlace found = measured(piece, place);
    return {{"edge", place.edge}, {"dart", nullptr},   {"from", found.from},
            {"at", found.at_mm},  {"to", found.to_mm}, {"place", json_of(place.at)}};
}

Json piece_json(const CutPiece& cut) {
    Json runs = Json::array(), corners = Json::array(), darts = Json::array(), notches = Json::array(),
         line = Json::array(), trimmed = Json::array();
    for (const DecidedRun& run : cut.ruled.runs) runs.push_back(run_json(run));
    for (const CutCorner& corner : cut.line.corners)
        corners.push_back({{"edges", corner.edges},
                           {"kind", to_text(corner.kind)},
                           {"step", corner.is_step},
                           {"at", json_of(corner.at)}});
    for (const CutDart& dart : cut.line.darts) darts.push_back(dart_json(cut, dart));
    for (const DeepNotch& deep : cut.deep_notches)
        notches.push_back({{"edge", deep.notch.edge},
                           {"from", deep.notch.from},
                           {"at", deep.notch.at},
                           {"depth", deep.depth_mm},
                           {"allowance", deep.width_mm}});
    for (const TrimmedPlace& place : cut.line.trimmed) trimmed.push_back(trimmed_json(*cut.piece, place));
    for (const Point p : cut.line.points) line.push_back(json_of(p));
    return {{"piece", cut.piece->name},
            {"area", cut.area_mm2},
            {"across", cut.across_mm},
            {"up", cut.up_mm},
            {"runs", runs},
            {"corners", corners},
            {"darts", darts},
            {"deep_notches", notches},
            {"notes", cut.line.notes},
            {"cleaned", cut.line.is_cleaned},
            {"trimmed", trimmed},
            {"line", line}};
}

}  // namespace

CutPattern cut_pattern(const AppliedRule& applied, std::optional<double> undecided_mm) {
    const Pattern& pattern = applied.pattern;
    CutPattern cut;
    cut.undecided_mm = undecided_mm;
    cut.warnings = applied.warnings;
    if (pattern.cutting) cut.rule = pattern.cutting->name;
    for (std::size_t i = 0; i < pattern.pieces.size(); ++i)
        cut.pieces.push_back(cut_piece(pattern.pieces[i], applied.pieces[i],
                                       pattern.cutting ? pattern.cutting->notches : std::nullopt));
    for (const Finding& finding : check(pattern).findings) {
        if (finding.check == "seam-allowance") cut.seams.push_back(finding);
    }
    return cut;
}

std::string text_of(const CutPattern& cut, Unit unit, const Ink& ink) {
    std::string out = cut.rule.empty() ? "Cut by the pattern's own allowances.\n"
                                       : "Cut by the rule \"" + cut.rule + "\".\n";
    for (const CutPiece& piece : cut.pieces) {
        out += "\n" +
               ink(Paint::heading, piece.piece->name + ": " + area_words(piece.area_mm2, unit) + ", " +
                                       length_figure(piece.across_mm, unit) + " by " +
                                       length_words(piece.up_mm, unit)) +
               "\n" + runs_text(piece, unit, ink) + lines_of(cut, piece, unit);
    }
    if (!cut.seams.empty() || !cut.warnings.empty()) out += "\n";
    for (const Finding& finding : cut.seams) out += "note: " + finding.message + "\n";
    for (const std::string& warning : cut.warnings) out += "note: in the rule: " + warning + "\n";
    return out;
}

nlohmann::ordered_json json_of(const CutPattern& cut) {
    Json pieces = Json::array(), seams = Json::array();
    for (const CutPiece& piece : cut.pieces) pieces.push_back(piece_json(piece));
    for (const Finding& finding : cut.seams) seams.push_back(json_of(finding));
    return {{"dartwright_cut", 1},
            {"rule", cut.rule.empty() ? Json(nullptr) : Json(cut.rule)},
            {"pieces", pieces},
            {"seams", seams},
            {"warnings", cut.warnings}};
}

}  // namespace dartwright::tools
