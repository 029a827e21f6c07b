// repoint: gives a dart a new point, or the darts about a pivot a new pivot.

#include "arguments.hpp"
#include "dartwright/darts/repoint.hpp"
#include "dartwright/geometry/motion.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/words/lengths.hpp"
#include "operation.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

void require_one_aim(const Arguments& arguments) {
    const int ways = arguments.has("back-off") + arguments.has("point") + arguments.has("pivot");
    if (ways == 0) throw WrongUse("--back-off, --point or --pivot is missing");
    if (ways > 1) throw WrongUse("--back-off, --point and --pivot are three ways to aim a dart: give one");
    if (!arguments.has("pivot")) arguments.required("dart");
    if (arguments.has("from") && !arguments.has("pivot"))
        throw WrongUse("--from says which pivot moves; it goes with --pivot");
    if (arguments.has("from") && arguments.has("dart"))
        throw WrongUse("--from and --dart both say which pivot moves: give one");
}

RepointRequest request_of(const Arguments& arguments) {
    require_one_aim(arguments);
    RepointRequest request;
    request.piece = arguments.required("piece");
    request.dart = arguments.value("dart").value_or("");
    if (const auto back_off = arguments.value("back-off")) request.back_off_mm = parse_length(*back_off);
    if (const auto point = arguments.value("point")) request.point = parse_point(*point);
    if (const auto pivot = arguments.value("pivot")) request.pivot = parse_point(*pivot);
    if (const auto from = arguments.value("from")) request.from = parse_point(*from);
    if (const auto span = arguments.value("span")) request.span_mm = parse_length(*span);
    return request;
}

std::string place_words(Point p, Unit unit) {
    return length_figure(p.x, unit) + ", " + length_figure(p.y, unit) + " " + word_of(unit);
}

std::string changed(const char* what, const std::string& before, const std::string& after) {
    const bool is_kept = before == after;
    return std::string("    ") + what + ": " + before + (is_kept ? ", as it was" : ", now " + after) + "\n";
}

std::string text_of(const RepointedDart& dart, Unit unit) {
    const DartFigures& before = dart.before;
    const DartFigures& after = dart.after;
    const auto length = [unit](double mm) { return length_words(mm, unit); };
    std::string text = std::string("  ") + dart.dart + "\n";
    text += changed("point", place_words(before.point, unit), place_words(after.point, unit));
    text += changed("pivot", place_words(before.pivot, unit), place_words(after.pivot, unit));
    text += changed("back-off", length(before.back_off), length(after.back_off));
    text += changed("legs to the point", length(before.leg_a) + " and " + length(before.leg_b),
                    length(after.leg_a) + " and " + length(after.leg_b));
    text += changed("mouth", length(before.intake), length(after.intake));
    text += changed("dart angle", angle_words(before.angle_rad), angle_words(after.angle_rad));
    if (dart.mouth_before_deg && dart.mouth_after_deg) {
        text += changed("corner of the edge over the mouth, as sewn",
                        angle_words(radians(*dart.mouth_before_deg)),
                        angle_words(radians(*dart.mouth_after_deg)));
    }
    if (dart.span_mm[0] > 0 || dart.span_mm[1] > 0) {
        text += std::string("    redrawn: ") + length(dart.span_mm[0]) + " of the edge before the mouth, " +
                length(dart.span_mm[1]) + " after it\n";
    }
    return text;
}

std::string text_of(const RepointAccount& account, Unit unit, const Ink& ink) {
    std::string text = std::string("Aimed anew on ") + account.piece + ":\n";
    for (const RepointedDart& dart : account.darts) text += text_of(dart, unit);
    for (const std::string& mark : account.marks) {
        text += std::string("  the drill mark ") + mark + " moved along\n";
    }
    return text + note_lines(account.notes) + runs_table(account.runs, unit, ink);
}

Json figures_json(const DartFigures& dart) {
    return {{"point", json_of(dart.point)}, {"pivot", json_of(dart.pivot)},
            {"back_off", dart.back_off},    {"legs", {dart.leg_a, dart.leg_b}},
            {"intake", dart.intake},        {"angle", degrees(dart.angle_rad)}};
}

Json json_of(const std::optional<double>& value) {
    return value ? Json(*value) : Json(nullptr);
}

Json json_of(const RepointAccount& account) {
    Json darts = Json::array();
    for (const RepointedDart& dart : account.darts) {
        darts.push_back({{"dart", dart.dart},
                         {"before", figures_json(dart.before)},
                         {"after", figures_json(dart.after)},
                         {"mouth_before", json_of(dart.mouth_before_deg)},
                         {"mouth_after", json_of(dart.mouth_after_deg)},
                         {"turned", degrees(dart.turned_rad)},
                         {"span", dart.span_mm}});
    }
    return {{"dartwright_repoint", 1}, {"piece", account.piece},          {"darts", darts},
            {"marks", account.marks},  {"runs", runs_json(account.runs)}, {"notes", account.notes}};
}

ExitStatus run_repoint(const Arguments& arguments, Invocation& call) {
    const RepointRequest request = request_of(arguments);
    return run_operation(arguments, call, [&request](const Pattern& pattern, const Ink& ink) {
        RepointResult result = repoint(pattern, request);
        return Operated{std::move(result.pattern), text_of(result.account, pattern.unit, ink),
                        json_of(result.account)};
    });
}

}  // namespace

Command repoint_command() {
    return {
        "repoint",
        "give a dart a new point, or all darts of a pivot a new pivot",
        "FILE --piece PIECE --dart DART (--back-off L | --point X,Y)\n"
        "  dartwright repoint FILE --piece PIECE --pivot X,Y [OPTIONS]",
        "A point moves along its dart's centre line; nothing else moves then. A new pivot takes all darts "
        "along "
        "that aim at the old one: each mouth keeps its place on its edge and turns square to the line to the "
        "pivot, the edge is drawn smooth over it, and every edge keeps its length. Legs are equal in any "
        "case. "
        "X,Y are coordinates of the piece, each a length: 391.5,170 is in mm, 39.15cm,17cm the same in cm.",
        with_operation_options(
            {piece_option("the piece that has the darts"),
             {"dart", 0, "DART", "the dart to aim anew; with --pivot, one that aims at the pivot that moves"},
             {"back-off", 0, "LENGTH", "how far the point stops short of the pivot; at most half of the leg"},
             {"point", 0, "X,Y",
              "the new point, on the centre line if the dart has a pivot of its own; a dart that has none "
              "turns "
              "about its point, and is drawn anew to it"},
             {"pivot", 0, "X,Y", "the new pivot of all darts that aim at the old one"},
             {"from", 0, "X,Y", "the old pivot, where the darts have several and --dart does not say which"},
             {"span", 0, "LENGTH",
              "how far to each side of a mouth that turns the edge is redrawn; 40 mm if absent, 0 to bring "
              "the "
              "edge to the new ends only"}}),
        {{"dartwright repoint bodice.json --piece front --dart \"waist dart\" --back-off 25 -o shorter.json",
          "let the waist dart stop 25 mm short of the bust point"},
         {"dartwright repoint bodice.json --piece front --pivot 38.5cm,16.2cm -o lower.json",
          "move the bust point, and all darts that aim at it"},
         {"dartwright repoint skirt.json --piece back --dart \"waist dart\" --point 11.4cm,47cm | dartwright "
          "check -",
          "draw a dart without a pivot of its own to another point, and check without keeping it"}},
        run_repoint};
}

}  // namespace dartwright::tools
