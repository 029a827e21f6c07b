#include "dartwright/files/assessment_words.hpp"

#include <cmath>

#include "dartwright/words/written_number.hpp"

namespace dartwright {
namespace {

std::string rounded_text(double value, int decimals) {
    const double scale = power_of_ten(decimals);
    const double scaled = value * scale;
    // Numbers this large have no decimals left to round.
    return decimal(std::abs(scaled) < 1e15 ? std::round(scaled) / scale : value);
}

template <typename Words, typename Named>
const char* word_among(const Words& words, Named wanted) {
    for (const auto& [named, word] : words)
        if (named == wanted) return word;
    return "";
}

std::string side_text(const JudgedLine& line, const std::optional<double>& value, const std::string& words,
                      Unit unit) {
    if (!words.empty()) return words;
    return value ? quantity_text(line.quantity, *value, unit) : "";
}

/// To about a hundredth of a millimetre in every unit.
std::string length_text(double mm, Unit unit) {
    return rounded_text(mm / mm_in(unit), unit == Unit::mm ? 2 : 3) + " " + word_of(unit);
}

std::string area_text(double mm2, Unit unit) {
    const Unit shown = unit == Unit::inch ? Unit::inch : Unit::cm;
    return rounded_text(mm2 / (mm_in(shown) * mm_in(shown)), 2) + " " + word_of(shown) + "\u00B2";
}

}  // namespace

const char* word_of(Quantity quantity) {
    return word_among(quantity_words, quantity);
}

const char* word_of(UnreadKind kind) {
    return word_among(unread_kind_words, kind);
}

std::string marks_text(double marks) {
    return rounded_text(marks, 2);
}

std::string quantity_text(Quantity quantity, double value, Unit unit) {
    switch (quantity) {
        case Quantity::length:
            return length_text(value, unit);
        case Quantity::area:
            return area_text(value, unit);
        case Quantity::angle:
            return rounded_text(value, 2) + "\u00B0";
        case Quantity::number:
        case Quantity::words:
            break;
    }
    return rounded_text(value, 3);
}

std::string signed_quantity_text(Quantity quantity, double value, Unit unit) {
    const std::string text = quantity_text(quantity, value, unit);
    return value > 0 && text.find_first_of("123456789") != std::string::npos ? "+" + text : text;
}

std::string what_text(Criterion criterion, const std::string& piece, const std::string& what) {
    const std::string words = what.empty() ? word_of(criterion) : what;
    const bool is_said = piece.empty() || words.rfind(piece, 0) == 0 ||
                         words.find("the " + piece) != std::string::npos ||
                         words.find(": " + piece) != std::string::npos;
    return is_said ? words : piece + ": " + words;
}

std::string what_text(const JudgedLine& line) {
    return what_text(line.criterion, line.piece, line.what);
}

std::string expected_text(const JudgedLine& line, Unit unit) {
    return side_text(line, line.expected, line.expected_words, unit);
}

std::string found_text(const JudgedLine& line, Unit unit) {
    return side_text(line, line.found, line.found_words, unit);
}

std::string difference_text(const JudgedLine& line, Unit unit) {
    return line.difference ? signed_quantity_text(line.quantity, *line.difference, unit) : "";
}

std::string line_text(const JudgedLine& line, Unit unit) {
    std::string text = what_text(line);
    const char* separator = ": ";
    const auto add = [&](const char* lead, const std::string& words) {
        if (words.empty()) return;
        text += std::string(separator) + lead + words;
        separator = ", ";
    };
    add("asked ", expected_text(line, unit));
    add("found ", found_text(line, unit));
    add("off by ", difference_text(line, unit));
    return line.rung.empty() ? text : text + " (" + line.rung + ")";
}

std::string name_of_file(const std::string& path) {
    const std::size_t slash = path.rfind('/');
    return slash == std::string::npos ? path : path.substr(slash + 1);
}

std::string ladders_text(const Ladders& ladders, Unit unit) {
    return "Lengths: " + ladder_text(ladders.lengths, Quantity::length, unit) +
           ". Angles: " + ladder_text(ladders.angles, Quantity::angle) + ".";
}

std::string ladder_text(const Ladder& ladder, Quantity quantity, Unit unit) {
    constexpr double per_cent = 100;
    std::string text;
    for (const Rung& rung : ladder) {
        text +=
            (text.empty() ? "" : ", ") + rung.name + " within " + quantity_text(quantity, rung.within, unit);
        if (rung.share < 1) text += " (" + rounded_text(per_cent * rung.share, 1) + "% of the marks)";
    }
    return text;
}

std::string verdict_text(const Assessment& assessment) {
    if (!assessment.unread.empty()) return "not marked";
    return marks_text(assessment.marks) + " of " + marks_text(assessment.of) + " marks";
}

}  // namespace dartwright
