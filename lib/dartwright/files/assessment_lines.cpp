#include "dartwright/files/assessment_lines.hpp"

#include <cmath>
#include <cstdint>

#include "dartwright/files/assessment_words.hpp"
#include "dartwright/files/json_lines.hpp"
#include "dartwright/words/utf8.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {
namespace {

constexpr const char* null = "null";

std::string as_utf8(std::string_view text) {
    std::string out;
    while (const auto bad = first_malformed_utf8(text)) {
        out += text.substr(0, *bad);
        out += "\uFFFD";
        text.remove_prefix(*bad + 1);
    }
    return out += text;
}

std::string text_json(const std::string& text) {
    return json_text(as_utf8(text));
}

std::string text_or_null(const std::string& text) {
    return text.empty() ? null : text_json(text);
}

std::string rounded_json(double value, double scale) {
    if (!std::isfinite(value)) return null;
    const double scaled = value * scale;
    // Numbers this large have no decimals left to round.
    return decimal(std::abs(scaled) < 1e15 ? std::round(scaled) / scale : value);
}

std::string number_json(double value) {
    return rounded_json(value, 1e6);
}

std::string number_or_null(const std::optional<double>& value) {
    return value ? number_json(*value) : null;
}

/// A number that is always there.
std::string figure_json(double value) {
    return number_json(std::isfinite(value) ? value : 0);
}

std::string point_json(Point point) {
    constexpr double hundredths = 100;
    if (!std::isfinite(point.x) || !std::isfinite(point.y)) return null;
    return in_brackets(rounded_json(point.x, hundredths) + "," + rounded_json(point.y, hundredths));
}

template <typename Values, typename Write>
std::string list_json(const Values& values, const Write& write) {
    std::string out = "[";
    for (const auto& value : values) {
        if (out.size() > 1) out += ", ";
        out += write(value);
    }
    return out += ']';
}

std::string polygon_json(const std::vector<Point>& points) {
    std::string out = "[";
    for (const Point point : points) {
        const std::string written = point_json(point);
        if (written == null) continue;
        if (out.size() > 1) out += ',';
        out += written;
    }
    return out += ']';
}

std::string line_json(const JudgedLine& line) {
    return MemberLine()
        .put("criterion", json_text(word_of(line.criterion)))
        .put("what", text_json(line.what))
        .put("piece", text_or_null(line.piece))
        .put("edge", text_or_null(line.edge))
        .put("dart", text_or_null(line.dart))
        .put("seam", text_or_null(line.seam))
        .put("quantity", json_text(word_of(line.quantity)))
        .put("expected", number_or_null(line.expected))
        .put("found", number_or_null(line.found))
        .put("difference", number_or_null(line.difference))
        .put("expected_words", text_or_null(line.expected_words))
        .put("found_words", text_or_null(line.found_words))
        .put("rung", text_json(line.rung))
        .put("at", line.at ? point_json(*line.at) : null)
        .put("remedy", text_or_null(line.remedy))
        .text();
}

std::string criterion_json(const JudgedCriterion& criterion) {
    return MemberLine()
        .put("criterion", json_text(word_of(criterion.criterion)))
        .put("marks", figure_json(criterion.marks))
        .put("of", figure_json(criterion.of))
        .put("rung", text_json(criterion.rung))
        .put("lines", list_json(criterion.lines, line_json))
        .text();
}

std::string task_json(const JudgedTask& task) {
    return MemberLine()
        .put("name", text_json(task.name))
        .put("words", text_or_null(task.words))
        .put("marks", figure_json(task.marks))
        .put("of", figure_json(task.of))
        .put("criteria", list_json(task.criteria, criterion_json))
        .text();
}

std::string piece_json(const OverlaidPiece& piece) {
    return MemberLine()
        .put("name", text_json(piece.name))
        .put("draft_name", text_json(piece.draft_name))
        .put("found", polygon_json(piece.found))
        .put("expected", polygon_json(piece.expected))
        .text();
}

std::string seam_json(const WalkedLengths& seam) {
    return MemberLine()
        .put("name", text_json(seam.name))
        .put("lengths", in_brackets(figure_json(seam.first_mm) + ", " + figure_json(seam.second_mm)))
        .put("ease", figure_json(seam.ease_mm))
        .put("difference", figure_json(seam.difference_mm))
        .put("passed", seam.is_true ? "true" : "false")
        .text();
}

}  // namespace

std::string digest_of(std::string_view bytes) {
    // Offset basis and prime of the 64-bit FNV-1a (from memory; held to its published vectors by a test).
    std::uint64_t hash = 0xcbf29ce484222325U;
    for (const char byte : bytes) hash = (hash ^ static_cast<unsigned char>(byte)) * 0x100000001b3U;
    constexpr const char* hex = "0123456789abcdef";
    std::string out;
    for (int shift = 60; shift >= 0; shift -= 4) out += hex[hash >> shift & 15U];
    return out;
}

std::string write_assessment_line(const AssessmentLine& line) {
    const Assessment& of = line.assessment;
    return MemberLine()
        .put("dartwright_assess", "1")
        .put("student", text_json(of.student))
        .put("file", text_json(of.file))
        .put("exercise_digest", text_json(line.exercise_digest))
        .put("draft_digest", text_or_null(line.draft_digest))
        .put("unread", text_or_null(of.unread))
        .put("unread_kind", of.unread_kind ? json_text(word_of(*of.unread_kind)) : null)
        .put("another_pattern", of.is_another_pattern ? "true" : "false")
        .put("marks", figure_json(of.marks))
        .put("of", figure_json(of.of))
        .put("tasks", list_json(of.tasks, task_json))
        .put("notes", list_json(of.notes, text_json))
        .put("pieces", list_json(of.pieces, piece_json))
        .put("seams", list_json(of.seams, seam_json))
        .text();
}

}  // namespace dartwright
