// walk: lays one side of a seam along the other and prints what is met on the way.

#include <algorithm>

#include "arguments.hpp"
#include "checked_file.hpp"
#include "dartwright/checks/walk.hpp"
#include "dartwright/drawing/fullness_words.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/words/lengths.hpp"
#include "fullness_json.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

const char* word_of(WalkMark mark) {
    switch (mark) {
        case WalkMark::start:
            return "start";
        case WalkMark::notch:
            return "notch";
        case WalkMark::dart:
            return "dart";
        case WalkMark::part_corner:
            return "corner";
        case WalkMark::end:
            return "end";
    }
    return "";
}

std::string figure_or_dash(const std::optional<double>& length, Unit unit, bool is_signed) {
    if (!length) return "-";
    return is_signed ? signed_length_figure(*length, unit) : length_figure(*length, unit);
}

const Seam& seam_walked(const Pattern& pattern, const std::string& name) {
    return *std::find_if(pattern.seams.begin(), pattern.seams.end(),
                         [&](const Seam& seam) { return seam.name == name; });
}

/// Each edge of the seam once, though both sides may be one.
template <typename Use>
void for_each_edge(const Pattern& pattern, const std::string& name, const Use& use) {
    std::vector<std::pair<std::string, std::string>> used;
    for (const SeamSide& side : seam_walked(pattern, name).joins) {
        for (const SeamPart& part : side) {
            const std::pair edge{part.piece, part.edge};
            if (std::find(used.begin(), used.end(), edge) != used.end()) continue;
            used.push_back(edge);
            const Piece& piece = piece_named(pattern, part.piece);
            use(piece, runs_of(piece.outline), part.edge);
        }
    }
}

/// What is gathered or eased away along the seam: the distances are those of the sewn edge.
std::string fullness_lines(const Pattern& pattern, const std::string& name) {
    std::string text;
    for_each_edge(
        pattern, name, [&](const Piece& piece, const std::vector<Run>& runs, const std::string& edge) {
            for (const FullStretch& each : full_stretches(piece, runs)) {
                if (each.edge != edge) continue;
                text += "  " + piece.name + ", " + edge + ": " + fullness_figures(each, pattern.unit) + " " +
                        fullness_place(piece, run_named(runs, edge, piece.name), each, pattern.unit) + "\n";
            }
        });
    return text;
}

Json json_of_fullness_along(const Pattern& pattern, const std::string& name) {
    Json edges = Json::array();
    for_each_edge(pattern, name,
                  [&](const Piece& piece, const std::vector<Run>& runs, const std::string& edge) {
                      const Json stretches = json_of_fullness(piece, runs, edge);
                      if (!stretches.empty())
                          edges.push_back({{"piece", piece.name}, {"edge", edge}, {"stretches", stretches}});
                  });
    return edges;
}

std::string text_of(const SeamWalk& walk, const Pattern& pattern, const Ink& ink) {
    const Unit unit = pattern.unit;
    TextTable table({{std::string("distances, ") + word_of(unit), Align::left},
                     {"", Align::left},
                     {walk.side_names[0]},
                     {walk.side_names[1]},
                     {"difference"}});
    for (const WalkRow& row : walk.rows) {
        table.add({{word_of(row.mark)},
                   {row.name},
                   {figure_or_dash(row.sides[0], unit, false)},
                   {figure_or_dash(row.sides[1], unit, false)},
                   {figure_or_dash(row.difference, unit, true)}});
    }
    return ink(Paint::heading, walk.name) + "\n\n" + table.text(ink) + "\n  ease meant " +
           signed_length_figure(walk.ease, unit) + ", left over " +
           signed_length_figure(walk.difference, unit) + " " + word_of(unit) +
           "\n  the corners together: " + angle_words_of_degrees(walk.corners_deg[0]) + " at the start, " +
           angle_words_of_degrees(walk.corners_deg[1]) + " at the end (180.0° runs on smoothly)\n" +
           fullness_lines(pattern, walk.name);
}

std::string json_of(const SeamWalk& walk, const Pattern& pattern) {
    Json rows = Json::array();
    const auto number = [](const std::optional<double>& value) {
        return value ? Json(*value) : Json(nullptr);
    };
    for (const WalkRow& row : walk.rows) {
        rows.push_back({{"mark", word_of(row.mark)},
                        {"name", row.name},
                        {"at", Json::array({number(row.sides[0]), number(row.sides[1])})},
                        {"difference", number(row.difference)}});
    }
    return json_text({{"dartwright_walk", 1},
                      {"seam", walk.name},
                      {"sides", walk.side_names},
                      {"rows", rows},
                      {"lengths", walk.lengths},
                      {"ease", walk.ease},
                      {"difference", walk.difference},
                      {"fullness", json_of_fullness_along(pattern, walk.name)},
                      {"corners", walk.corners_deg}});
}

ExitStatus run_walk(const Arguments& arguments, Invocation& call) {
    require_positional(arguments, 1, 1, "the pattern file");
    const Format format = format_of(arguments);
    const std::string seam = arguments.required("seam");
    const std::string& path = arguments.positional[0];
    const Pattern pattern = read_pattern_file(path);
    call.works_on(shown_path(path), pattern.unit);
    const SeamWalk walk = walk_seam(pattern, seam);
    const Ink ink(call.out.is_coloured());
    call.out.write(format == Format::json ? json_of(walk, pattern) : text_of(walk, pattern, ink));
    return ExitStatus::done;
}

}  // namespace

Command walk_command() {
    return {
        "walk",
        "lay one side of a seam along the other, and print what is met",
        "FILE --seam SEAM [--format text|json]",
        "Prints a table along the seam with both sides' notches, darts and corners at their sewn distances "
        "from the starting end, the differences (second less first), and the sums of the corners' angles "
        "at both ends; and what is gathered or eased away along it.",
        {{"seam", 0, "SEAM", "the seam to walk"}, format_option()},
        {{"dartwright walk bodice.json --seam side", "the side seam, from its starting end"},
         {"dartwright walk bodice.json --seam shoulder --format json",
          "the shoulder seam for another program, in mm and degrees"}},
        run_walk};
}

}  // namespace dartwright::tools
