#pragma once

#include <string>
#include <vector>

namespace dartwright::tools {

/// How words stand out on a terminal.
enum class Paint { plain, good, bad, warning, heading };

/// Paints words, or leaves them as they are where colours are not wanted.
class Ink {
  public:
    explicit Ink(bool is_coloured) : is_coloured_(is_coloured) {}
    std::string operator()(Paint paint, const std::string& words) const;

  private:
    bool is_coloured_;
};

enum class Align { left, right };
struct Column {
    std::string heading;
    Align align = Align::right;
};
struct Cell {
    std::string words;
    Paint paint = Paint::plain;
};

/// Columns of words, each as wide as its widest. Widths count characters of UTF-8, which is right for the
/// letters of trade words; letters of double width stand a little out of line.
class TextTable {
  public:
    explicit TextTable(std::vector<Column> columns) : columns_(std::move(columns)) {}
    /// Precondition: a cell for each column (std::invalid_argument).
    void add(std::vector<Cell> row);
    bool is_empty() const { return rows_.empty(); }
    /// One line a row, the headings first, each with two blanks before it and none after it.
    std::string text(const Ink& ink) const;

  private:
    std::string line(const std::vector<Cell>& row, const std::vector<std::size_t>& widths,
                     const Ink& ink) const;

    std::vector<Column> columns_;
    std::vector<std::vector<Cell>> rows_;
};

/// Characters of UTF-8 text.
std::size_t characters_of(const std::string& words);

}  // namespace dartwright::tools
