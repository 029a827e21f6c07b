#include "verdicts.hpp"

#include <algorithm>

#include "dartwright/words/clean_text.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright::tools {

namespace {

Cell verdict_cell(bool passed) {
    return passed ? Cell{"true", Paint::good} : Cell{"not true", Paint::bad};
}

/// Of a seam: its length, a corner, a notch, the allowances.
std::string part_of_seam(const std::string& check) {
    if (check.starts_with("notch")) return "notch";
    return check.starts_with("seam-") ? check.substr(5) : check;
}

/// `length and notch not true`.
Cell seam_cell(const SeamVerdict& seam, const std::vector<Finding>& findings) {
    std::vector<std::string> parts;
    for (const Finding& finding : findings) {
        if (finding.severity != Severity::fault || finding.seam != seam.name) continue;
        const std::string part = part_of_seam(finding.check);
        if (std::find(parts.begin(), parts.end(), part) == parts.end()) parts.push_back(part);
    }
    if (seam.passed || parts.empty()) return verdict_cell(seam.passed);
    std::string words = parts.front();
    for (std::size_t i = 1; i < parts.size(); ++i)
        words += (i + 1 == parts.size() ? " and " : ", ") + parts[i];
    return {words + " not true", Paint::bad};
}

Json text_or_null(const std::string& words) {
    return words.empty() ? Json(nullptr) : Json(words);
}

Json number_or_null(const std::optional<double>& number) {
    return number ? Json(*number) : Json(nullptr);
}

}  // namespace

std::string seam_table(const std::vector<SeamVerdict>& seams, const std::vector<Finding>& findings, Unit unit,
                       const Ink& ink) {
    TextTable table({{std::string("seams, ") + word_of(unit), Align::left},
                     {"one side", Align::left},
                     {""},
                     {"other side", Align::left},
                     {""},
                     {"ease"},
                     {"difference"},
                     {"", Align::left}});
    for (const SeamVerdict& seam : seams) {
        const bool is_pair = seam.side_names[0] == seam.side_names[1];
        table.add({{seam.name},
                   {seam.side_names[0]},
                   {seam.lengths ? length_figure((*seam.lengths)[0], unit) : "-"},
                   {is_pair ? "its pair" : seam.side_names[1]},
                   {seam.lengths ? length_figure((*seam.lengths)[1], unit) : "-"},
                   {signed_length_figure(seam.ease, unit)},
                   {seam.difference ? signed_length_figure(*seam.difference, unit) : "-"},
                   seam_cell(seam, findings)});
    }
    return table.is_empty() ? "" : table.text(ink);
}

std::string dart_table(const std::vector<DartVerdict>& darts, Unit unit, const Ink& ink) {
    TextTable table({{std::string("darts, ") + word_of(unit), Align::left},
                     {"first leg"},
                     {"second leg"},
                     {"intake"},
                     {"angle"},
                     {"", Align::left}});
    for (const DartVerdict& dart : darts) {
        table.add({{dart.piece + ": " + dart.name},
                   {length_figure(dart.legs[0], unit)},
                   {length_figure(dart.legs[1], unit)},
                   {length_figure(dart.intake, unit)},
                   {angle_words_of_degrees(dart.angle_deg)},
                   verdict_cell(dart.passed)});
    }
    return table.is_empty() ? "" : table.text(ink);
}

Json json_of(Point point) {
    return Json::array({point.x, point.y});
}

Json json_of(const SeamVerdict& seam) {
    return {{"name", seam.name},
            {"lengths", seam.lengths ? Json(*seam.lengths) : Json(nullptr)},
            {"ease", seam.ease},
            {"difference", number_or_null(seam.difference)},
            {"passed", seam.passed}};
}

Json json_of(const std::vector<SeamVerdict>& seams) {
    Json list = Json::array();
    for (const SeamVerdict& seam : seams) list.push_back(json_of(seam));
    return list;
}

Json json_of(const DartVerdict& dart) {
    return {{"piece", dart.piece},   {"name", dart.name},       {"legs", dart.legs},
            {"intake", dart.intake}, {"angle", dart.angle_deg}, {"passed", dart.passed}};
}

Json json_of(const Finding& finding) {
    return {{"check", finding.check},
            {"severity", finding.severity == Severity::fault ? "fault" : "note"},
            {"piece", text_or_null(finding.piece)},
            {"edge", text_or_null(finding.edge)},
            {"dart", text_or_null(finding.dart)},
            {"seam", text_or_null(finding.seam)},
            {"at", finding.at ? json_of(*finding.at) : Json(nullptr)},
            {"measured", number_or_null(finding.measured)},
            {"expected", number_or_null(finding.expected)},
            {"difference", number_or_null(finding.difference)},
            {"allowed", number_or_null(finding.allowed)},
            {"message", finding.message},
            {"remedy", finding.remedy}};
}

std::string json_line(const Json& value) {
    return with_controls_escaped(value.dump(-1, ' ', false, Json::error_handler_t::replace));
}

std::string json_text(const Json& value) {
    return with_controls_escaped(value.dump(2, ' ', false, Json::error_handler_t::replace)) + "\n";
}

}  // namespace dartwright::tools
