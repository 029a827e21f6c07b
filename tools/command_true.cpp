// true: gives a dart legs of one length and a smooth mouth, or draws an edge smooth.

#include <cmath>

#include "arguments.hpp"
#include "dartwright/darts/true_dart.hpp"
#include "dartwright/darts/true_edge.hpp"
#include "dartwright/darts/true_seam.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/motion.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/words/lengths.hpp"
#include "dartwright/words/nearest_word.hpp"
#include "operation.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

TrueLegs legs_of(const std::string& word) {
    if (word == "mean") return TrueLegs::mean;
    if (word == "long") return TrueLegs::long_;
    if (word == "short") return TrueLegs::short_;
    throw WrongUse("--legs is long, short or mean, not '" + word + "'" +
                   nearest_told(word, {"long", "short", "mean"}));
}

TrueDartRequest dart_request_of(const Arguments& arguments) {
    TrueDartRequest request;
    request.piece = arguments.required("piece");
    request.dart = arguments.required("dart");
    if (const auto legs = arguments.value("legs")) request.legs = legs_of(*legs);
    if (const auto span = arguments.value("span")) request.span_mm = parse_length(*span);
    return request;
}

std::string text_of(const TrueDartAccount& account, Unit unit, const Ink& ink) {
    const auto& before = account.legs_before_mm;
    const auto& after = account.legs_after_mm;
    std::string text = std::string("Trued ") + account.dart + " on " + account.piece + ".\n";
    text += std::string("  legs to the pivot: ") + length_words(before[0], unit) + " and " +
            length_words(before[1], unit) + ", now " + length_words(after[0], unit) + " both\n";
    text += std::string("  corner of the edge over the mouth, as sewn: ") +
            angle_words(radians(account.mouth_before_deg)) + ", now " +
            angle_words(radians(account.mouth_after_deg)) + "\n";
    text += std::string("  mouth: ") + length_words(account.intake_before_mm, unit) + ", now " +
            length_words(account.intake_after_mm, unit) + "\n";
    text += std::string("  redrawn: ") + length_words(account.span_mm[0], unit) +
            " of the edge before the mouth, " + length_words(account.span_mm[1], unit) + " after it\n";
    return text + note_lines(account.notes) + runs_table(account.runs, unit, ink);
}

Json json_of(const TrueDartAccount& account) {
    return {{"dartwright_true", 1},
            {"piece", account.piece},
            {"dart", account.dart},
            {"legs_before", account.legs_before_mm},
            {"legs_after", account.legs_after_mm},
            {"mouth_before", account.mouth_before_deg},
            {"mouth_after", account.mouth_after_deg},
            {"intake_before", account.intake_before_mm},
            {"intake_after", account.intake_after_mm},
            {"span", account.span_mm},
            {"runs", runs_json(account.runs)},
            {"notes", account.notes}};
}

TrueEdgeRequest edge_request_of(const Arguments& arguments) {
    if (arguments.has("legs")) throw WrongUse("--legs is for a dart; an edge has none");
    TrueEdgeRequest request;
    request.piece = arguments.required("piece");
    request.edge = arguments.required("edge");
    if (const auto span = arguments.value("span")) request.span_mm = parse_length(*span);
    return request;
}

std::string text_of(const TrueEdgeAccount& account, Unit unit, const Ink& ink) {
    std::string text = std::string("Trued ") + account.edge + " on " + account.piece + ".\n";
    for (const SmoothedCorner& corner : account.corners) {
        text += std::string("  a corner of ") + angle_words(radians(corner.corner_deg)) + " at " +
                length_figure(corner.at.x, unit) + ", " + length_figure(corner.at.y, unit) + " " +
                word_of(unit) + " was drawn smooth\n";
    }
    return text + note_lines(account.notes) + runs_table(account.runs, unit, ink);
}

Json json_of(const TrueEdgeAccount& account) {
    Json corners = Json::array();
    for (const SmoothedCorner& corner : account.corners)
        corners.push_back({{"at", {corner.at.x, corner.at.y}}, {"corner", corner.corner_deg}});
    return {{"dartwright_true", 1}, {"piece", account.piece},          {"edge", account.edge},
            {"corners", corners},   {"runs", runs_json(account.runs)}, {"notes", account.notes}};
}

TrueSeamRequest seam_request_of(const Arguments& arguments) {
    for (const char* other : {"piece", "legs"}) {
        if (arguments.has(other))
            throw WrongUse(std::string("--") + other +
                           " is for a dart or an edge; a seam has both its pieces");
    }
    TrueSeamRequest request;
    request.seam = arguments.required("seam");
    request.end = arguments.required("end");
    request.move = arguments.value("move").value_or(request.move);
    if (const auto span = arguments.value("span")) request.span_mm = parse_length(*span);
    return request;
}

std::string text_of(const TruedSide& side, Unit unit) {
    std::string text = std::string("  ") + side.piece + ": " + side.edge;
    if (side.moved_mm == 0) text += " as it was";
    if (side.moved_mm != 0) {
        text += std::string(side.moved_mm > 0 ? " longer by " : " shorter by ") +
                length_words(std::abs(side.moved_mm), unit);
    }
    if (side.span_mm > 0)
        text += ", " + length_words(side.span_mm, unit) + " of " + side.crossing + " redrawn";
    return text + "; corner " + angle_words(radians(side.corner_before_deg)) + ", now " +
           angle_words(radians(side.corner_after_deg)) + "\n";
}

/// Opened flat they are to be 180 degrees together, laid on each other equal.
std::string corners_line(const TrueSeamAccount& account) {
    const bool is_flat = account.laid == LaidAs::flat;
    const auto words = [&](double first, double second) {
        return angle_words(radians(is_flat ? first + second : std::abs(first - second)));
    };
    const TruedSide& first = account.sides[0];
    const TruedSide& second = account.sides[1];
    return std::string(is_flat ? "  corners together: " : "  corners apart by: ") +
           words(first.corner_before_deg, second.corner_before_deg) + ", now " +
           words(first.corner_after_deg, second.corner_after_deg) + "\n";
}

std::string text_of(const TrueSeamAccount& account, Unit unit, const Ink& ink) {
    std::string text = std::string("Trued ") + account.seam + " at its " + account.end + " end.\n";
    text += std::string("  difference: ") + length_words(account.difference_before_mm, unit) + ", now " +
            length_words(account.difference_after_mm, unit) + "\n";
    text += corners_line(account);
    for (const TruedSide& side : account.sides) text += text_of(side, unit);
    for (const SeamChange& seam : account.seams) {
        // Less than the width of a hair is not worth a line.
        if (std::abs(seam.after_mm - seam.before_mm) < tenth_of_hair_mm) continue;
        text += std::string("  seam ") + seam.seam + ": its difference was " +
                length_words(seam.before_mm, unit) + " and is " + length_words(seam.after_mm, unit) + "\n";
    }
    text += note_lines(account.notes);
    for (const RunsOfPiece& piece : account.pieces)
        text += std::string("\n") + piece.piece + runs_table(piece.runs, unit, ink);
    return text;
}

Json json_of(const TrueSeamAccount& account) {
    Json sides = Json::array();
    for (const TruedSide& side : account.sides) {
        sides.push_back({{"piece", side.piece},
                         {"edge", side.edge},
                         {"crossing", side.crossing},
                         {"moved", side.moved_mm},
                         {"corner_before", side.corner_before_deg},
                         {"corner_after", side.corner_after_deg},
                         {"span", side.span_mm}});
    }
    Json seams = Json::array();
    for (const SeamChange& seam : account.seams) {
        seams.push_back({{"name", seam.seam},
                         {"difference_before", seam.before_mm},
                         {"difference_after", seam.after_mm}});
    }
    Json pieces = Json::array();
    for (const RunsOfPiece& piece : account.pieces)
        pieces.push_back({{"name", piece.piece}, {"runs", runs_json(piece.runs)}});
    return {{"dartwright_true", 1},
            {"seam", account.seam},
            {"end", account.end},
            {"difference_before", account.difference_before_mm},
            {"difference_after", account.difference_after_mm},
            {"sides", sides},
            {"seams", seams},
            {"pieces", pieces},
            {"notes", account.notes}};
}

template <class Result>
Operated operated(Result result, Unit unit, const Ink& ink) {
    return {std::move(result.pattern), text_of(result.account, unit, ink), json_of(result.account)};
}

ExitStatus run_true(const Arguments& arguments, Invocation& call) {
    if (arguments.has("edge") + arguments.has("dart") + arguments.has("seam") > 1)
        throw WrongUse("--dart, --edge and --seam are three things to true: give one");
    if (arguments.has("seam")) {
        const TrueSeamRequest request = seam_request_of(arguments);
        return run_operation(arguments, call, [&request](const Pattern& pattern, const Ink& ink) {
            return operated(true_seam(pattern, request), pattern.unit, ink);
        });
    }
    for (const char* of_seam : {"end", "move"}) {
        if (arguments.has(of_seam)) throw WrongUse(std::string("--") + of_seam + " goes with --seam");
    }
    if (arguments.has("edge")) {
        const TrueEdgeRequest request = edge_request_of(arguments);
        return run_operation(arguments, call, [&request](const Pattern& pattern, const Ink& ink) {
            return operated(true_edge(pattern, request), pattern.unit, ink);
        });
    }
    const TrueDartRequest request = dart_request_of(arguments);
    return run_operation(arguments, call, [&request](const Pattern& pattern, const Ink& ink) {
        return operated(true_dart(pattern, request), pattern.unit, ink);
    });
}

}  // namespace

Command true_command() {
    return {
        "true",
        "make a dart, an edge or a seam true: equal lengths, smooth lines",
        "FILE --piece PIECE (--dart DART | --edge EDGE) [OPTIONS]\n"
        "  dartwright true FILE --seam SEAM --end EDGE [OPTIONS]",
        "Gives both legs one length, puts the point on the centre line, folds the dart closed as it will be "
        "sewn, draws the edge smooth across the mouth and unfolds it. What that changes in the edge's "
        "length, "
        "and in which seams, is said. A seam is trued at one end: its sides are given one length there, and "
        "what crosses it is drawn as one smooth line over both pieces; where the pieces are laid on each "
        "other, what crosses the one is drawn to lie on what crosses the other.",
        with_operation_options(
            {piece_option("the piece that has the dart or edge"),
             {"dart", 0, "DART", "the dart to true"},
             {"edge", 0, "EDGE", "the edge whose corners are drawn smooth"},
             {"seam", 0, "SEAM", "the seam to true, at one of its ends"},
             {"end", 0, "EDGE", "that end, by the edge that crosses the seam there"},
             {"move", 0, "PIECE|both",
              "the side whose end moves: a piece of it, 1 or 2; half on each if absent"},
             {"legs", 0, "long|short|mean",
              "which length both legs are given; as far as the smooth line across the fold if absent"},
             {"span", 0, "LENGTH",
              "how far to each side of the mouth, corner or seam the edge is redrawn; 40 mm if absent; for a "
              "dart 0 redraws nothing"}}),
        {{"dartwright true bodice.json --piece front --dart \"waist dart\" -o trued.json",
          "equal legs and a smooth waist"},
         {"dartwright true moved.json --piece front --edge armhole -o smooth.json",
          "draw the armhole smooth where a dart has been closed"},
         {"dartwright true bodice.json --seam side --end armhole --move front -o trued.json",
          "give the front the length of the back at the armhole, and draw the armhole smooth"},
         {"dartwright true bodice.json --piece front --dart \"side dart\" --legs long --span 6cm | "
          "dartwright "
          "check -",
          "lengthen the shorter leg, redraw 6 cm of the edge on each side, and check without keeping it"}},
        run_true};
}

}  // namespace dartwright::tools
