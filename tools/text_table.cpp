#include "text_table.hpp"

#include <algorithm>
#include <stdexcept>

namespace dartwright::tools {

std::string Ink::operator()(Paint paint, const std::string& words) const {
    if (!is_coloured_ || paint == Paint::plain || words.empty()) return words;
    const char* begin = "\033[1m";
    if (paint == Paint::good) begin = "\033[32m";
    if (paint == Paint::bad) begin = "\033[1;31m";
    if (paint == Paint::warning) begin = "\033[33m";
    return begin + words + "\033[0m";
}

std::size_t characters_of(const std::string& words) {
    return static_cast<std::size_t>(std::count_if(
        words.begin(), words.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

void TextTable::add(std::vector<Cell> row) {
    if (row.size() != columns_.size())
        throw std::invalid_argument("a table's row has a cell for each column");
    rows_.push_back(std::move(row));
}

std::string TextTable::line(const std::vector<Cell>& row, const std::vector<std::size_t>& widths,
                            const Ink& ink) const {
    std::string text;
    std::size_t blanks = 2;
    for (std::size_t i = 0; i < row.size(); ++i) {
        const std::size_t padding = widths[i] - characters_of(row[i].words);
        const bool is_left = columns_[i].align == Align::left;
        if (!row[i].words.empty()) {
            text += std::string(blanks + (is_left ? 0 : padding), ' ') + ink(row[i].paint, row[i].words);
            blanks = 2 + (is_left ? padding : 0);
        } else {
            blanks += padding + 2;
        }
    }
    return text + "\n";
}

std::string TextTable::text(const Ink& ink) const {
    std::vector<Cell> headings;
    std::vector<std::size_t> widths;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
        headings.push_back({columns_[i].heading, Paint::heading});
        widths.push_back(characters_of(columns_[i].heading));
        for (const auto& row : rows_) widths[i] = std::max(widths[i], characters_of(row[i].words));
    }
    std::string text = line(headings, widths, ink);
    for (const auto& row : rows_) text += line(row, widths, ink);
    return text;
}

}  // namespace dartwright::tools
