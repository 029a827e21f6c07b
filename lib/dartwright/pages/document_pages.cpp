#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "dartwright/drawing/table_look.hpp"
#include "dartwright/drawing/text_box.hpp"
#include "dartwright/drawing/text_column.hpp"
#include "dartwright/pages/document.hpp"
#include "dartwright/pages/scaled.hpp"

namespace dartwright {
namespace {

constexpr double page_margin_mm = 15;
constexpr double foot_mm = 10;  // for the page number
constexpr double word_size_mm = 3.6;
constexpr double heading_size_mm = 5;
constexpr double title_size_mm = 7.5;
constexpr double foot_size_mm = 2.8;
constexpr double block_gap_mm = 3;
constexpr double column_gap_mm = 4;
constexpr double indent_mm = 7;
constexpr Colour black{0, 0, 0};

double step_of(double size_mm) {
    return look::line_step_em * size_mm;
}

// Writes from the top of a page downwards, and goes on to the next.
class Flow {
  public:
    Flow(const Document& document, const PageSize& size) : document_(document), size_(size) { begin_page(); }

    std::vector<Drawing> written() {
        paragraph(document_.title, title_size_mm, true, 0);
        if (!document_.subtitle.empty()) paragraph(document_.subtitle, word_size_mm, false, 0);
        for (std::size_t i = 0; i < document_.blocks.size(); ++i) {
            const bool has_next = i + 1 < document_.blocks.size();
            const TableBlock* table = has_next ? std::get_if<TableBlock>(&document_.blocks[i + 1]) : nullptr;
            follower_mm_ = table ? height_of_beginning(*table) : 0;
            std::visit([this](const auto& each) { add(each); }, document_.blocks[i]);
            y_ -= block_gap_mm;
        }
        number_pages();
        return std::move(pages_);
    }

  private:
    double width() const { return size_.width_mm - 2 * page_margin_mm; }
    double bottom() const { return page_margin_mm + foot_mm; }

    void begin_page() {
        Drawing page;
        page.width_mm = size_.width_mm;
        page.height_mm = size_.height_mm;
        page.title = document_.title;
        page.groups.push_back({"words", {}, {}});
        pages_.push_back(std::move(page));
        y_ = size_.height_mm - page_margin_mm;
    }

    void make_room(double height_mm) {
        if (y_ - height_mm < bottom() && y_ < size_.height_mm - page_margin_mm) begin_page();
    }

    void write(const std::string& words, Point at, double size_mm, bool is_bold, Anchor anchor) {
        pages_.back().groups[0].items.push_back(
            DrawnText{words, at, size_mm, anchor, 0, black, std::nullopt, is_bold});
    }

    void rule(double y, double from_x, double to_x) {
        pages_.back().groups[0].items.push_back(
            polyline({{from_x, y}, {to_x, y}}, look::solid(look::pencil, 0.2)));
    }

    void paragraph(const std::string& words, double size_mm, bool is_bold, double indent) {
        for (const std::string& line : wrapped(words, size_mm, width() - indent, is_bold)) {
            make_room(step_of(size_mm));
            y_ -= step_of(size_mm);
            write(line, {page_margin_mm + indent, y_}, size_mm, is_bold, Anchor::start);
        }
    }

    // A heading stays with what follows.
    void add(const HeadingBlock& block) {
        make_room(std::max(4.0, 2 + follower_mm_ / step_of(heading_size_mm)) * step_of(heading_size_mm));
        y_ -= 2;
        paragraph(block.words, heading_size_mm, true, 0);
        rule(y_ - 1.5, page_margin_mm, page_margin_mm + width());
    }

    void add(const ParagraphBlock& block) {
        if (!block.is_caution) return paragraph(block.words, word_size_mm, false, 0);
        const double indent = 4;
        const std::size_t lines = wrapped(block.words, word_size_mm, width() - indent).size();
        make_room(static_cast<double>(lines) * step_of(word_size_mm));
        const double top = y_ - 1;
        paragraph(block.words, word_size_mm, false, indent);
        pages_.back().groups[0].items.push_back(
            polyline({{page_margin_mm + 1, top}, {page_margin_mm + 1, y_ - 1}}, look::solid(look::rust, 1)));
    }

    void add(const ListBlock& block) {
        int number = 0;
        for (const std::string& item : block.items) {
            make_room(step_of(word_size_mm));
            const std::string mark = block.is_numbered ? std::to_string(++number) + "." : "•";
            write(mark, {page_margin_mm + indent_mm - 2, y_ - step_of(word_size_mm)}, word_size_mm, false,
                  Anchor::end);
            paragraph(item, word_size_mm, false, indent_mm);
        }
    }

    std::vector<double> column_widths(const TableBlock& table) const {
        std::vector<double> widths;
        for (std::size_t i = 0; i < table.heads.size(); ++i) {
            double widest = text_width(table.heads[i], word_size_mm, true);
            for (const auto& row : table.rows) widest = std::max(widest, text_width(row.at(i), word_size_mm));
            widths.push_back(widest + column_gap_mm);
        }
        narrow(widths);
        return widths;
    }

    // The widest column gives way until all fit.
    void narrow(std::vector<double>& widths) const {
        constexpr double step_mm = 2;
        constexpr double least_mm = 18;
        double sum = 0;
        for (const double each : widths) sum += each;
        while (sum > width()) {
            double& widest = *std::max_element(widths.begin(), widths.end());
            if (widest - step_mm < least_mm) return;
            widest -= step_mm;
            sum -= step_mm;
        }
    }

    double row_height(const std::vector<std::string>& row, const std::vector<double>& widths,
                      bool is_head) const {
        std::size_t lines = 1;
        for (std::size_t i = 0; i < row.size(); ++i) {
            const double room = widths[i] - column_gap_mm + 0.01;
            lines = std::max(lines, wrapped(row[i], word_size_mm, room, is_head).size());
        }
        return static_cast<double>(lines) * step_of(word_size_mm) + 1.6;
    }

    /// The heads of a table and its first row, which stay together, and with a heading over them.
    double height_of_beginning(const TableBlock& table) const {
        const std::vector<double> widths = column_widths(table);
        const double heads = row_height(table.heads, widths, true);
        return table.rows.empty() ? heads : heads + row_height(table.rows.front(), widths, false);
    }

    void add(const TableBlock& table) {
        const std::vector<double> widths = column_widths(table);
        make_room(height_of_beginning(table));
        table_row(table, table.heads, widths, true);
        for (const auto& row : table.rows) {
            if (table_row(table, row, widths, false)) continue;
            table_row(table, table.heads, widths, true);
            table_row(table, row, widths, false);
        }
    }

    // False where a new page had to be begun, on which the heads come first.
    bool table_row(const TableBlock& table, const std::vector<std::string>& row,
                   const std::vector<double>& widths, bool is_head) {
        std::vector<std::vector<std::string>> cells;
        for (std::size_t i = 0; i < row.size(); ++i)
            cells.push_back(wrapped(row[i], word_size_mm, widths[i] - column_gap_mm + 0.01, is_head));
        const double height = row_height(row, widths, is_head);
        const std::size_t page = pages_.size();
        make_room(height);
        if (!is_head && pages_.size() > page) return false;
        double x = page_margin_mm;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const bool is_number = i < table.are_numbers.size() && table.are_numbers[i];
            double y = y_;
            for (const std::string& line : cells[i]) {
                y -= step_of(word_size_mm);
                const double at = is_number ? x + widths[i] - column_gap_mm : x;
                write(line, {at, y}, word_size_mm, is_head, is_number ? Anchor::end : Anchor::start);
            }
            x += widths[i];
        }
        y_ -= height;
        rule(y_, page_margin_mm, x - column_gap_mm);
        return true;
    }

    void add(const PictureBlock& block) {
        const double room = size_.height_mm - 2 * page_margin_mm - foot_mm;
        double scale = std::min({1.0, width() / block.drawing.width_mm, room / block.drawing.height_mm});
        // A little smaller rather than half a page left empty.
        constexpr double least_share = 0.6;
        const double left = y_ - page_margin_mm - foot_mm;
        const double share = left / (scale * block.drawing.height_mm);
        if (share < 1 && share >= least_share) scale *= share;
        const double height = scale * block.drawing.height_mm;
        make_room(height);
        y_ -= height;
        pages_.back().groups.push_back({block.words, {}, {}});
        for (const DrawnGroup& group : block.drawing.groups) {
            pages_.back().groups.back().groups.push_back(moved(scaled(group, scale), {page_margin_mm, y_}));
        }
    }

    void number_pages() {
        for (std::size_t i = 0; i < pages_.size(); ++i) {
            const std::string title = shortened(document_.title, foot_size_mm, 0.6 * size_.width_mm);
            const std::string words =
                title + " · page " + std::to_string(i + 1) + " of " + std::to_string(pages_.size());
            pages_[i].groups[0].items.push_back(DrawnText{words,
                                                          {size_.width_mm / 2, page_margin_mm},
                                                          foot_size_mm,
                                                          Anchor::middle,
                                                          0,
                                                          look::pencil,
                                                          std::nullopt,
                                                          false});
        }
    }

    const Document& document_;
    PageSize size_;
    std::vector<Drawing> pages_;
    double follower_mm_ = 0;  // what must stand below a heading on its page
    double y_ = 0;            // what is above it on the last page is taken
};

}  // namespace

std::vector<Drawing> pages_of(const Document& document, const PageSize& size) {
    if (!(size.width_mm >= 100) || !(size.height_mm >= 150))
        throw std::invalid_argument("a page is at least 100 mm by 150 mm");
    return Flow(document, size).written();
}

}  // namespace dartwright
