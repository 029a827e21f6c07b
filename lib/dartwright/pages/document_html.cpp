#include <string_view>

#include "dartwright/drawing/svg_writer.hpp"
#include "dartwright/files/markup_text.hpp"
#include "dartwright/pages/document.hpp"

namespace dartwright {
namespace {

std::string element(const std::string& tag, const std::string& inside) {
    const std::string name = tag.substr(0, tag.find(' '));
    return "<" + tag + ">" + inside + "</" + name + ">\n";
}

// RFC 4648, section 4.
std::string base64(std::string_view bytes) {
    static constexpr char letters[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    std::string out;
    for (std::size_t i = 0; i < bytes.size(); i += 3) {
        const std::size_t count = std::min<std::size_t>(3, bytes.size() - i);
        unsigned group = 0;
        for (std::size_t k = 0; k < 3; ++k)
            group = group << 8 | (k < count ? static_cast<unsigned char>(bytes[i + k]) : 0U);
        for (std::size_t k = 0; k < 4; ++k) out += k <= count ? letters[group >> (18 - 6 * k) & 63U] : '=';
    }
    return out;
}

struct HtmlBlock {
    std::string operator()(const HeadingBlock& block) const {
        return element("h2", markup_text(block.words));
    }
    std::string operator()(const ParagraphBlock& block) const {
        return element(block.is_caution ? "p class=\"caution\"" : "p", markup_text(block.words));
    }
    std::string operator()(const ListBlock& block) const {
        std::string items = "\n";
        for (const std::string& item : block.items) items += element("li", markup_text(item));
        return element(block.is_numbered ? "ol" : "ul", items);
    }
    std::string operator()(const TableBlock& block) const {
        std::string heads;
        for (std::size_t i = 0; i < block.heads.size(); ++i)
            heads += element(cell_tag("th scope=\"col\"", block, i), markup_text(block.heads[i]));
        std::string rows;
        for (const std::vector<std::string>& row : block.rows) {
            std::string cells;
            for (std::size_t i = 0; i < row.size(); ++i)
                cells += element(cell_tag(i == 0 ? "th scope=\"row\"" : "td", block, i), markup_text(row[i]));
            rows += element("tr", "\n" + cells);
        }
        return element("div class=\"table\"",
                       "\n" + element("table", "\n" + element("thead", element("tr", "\n" + heads)) +
                                                   element("tbody", "\n" + rows)));
    }
    std::string operator()(const PictureBlock& block) const {
        return "<p><img alt=\"" + markup_text(block.words) + "\" src=\"data:image/svg+xml;base64," +
               base64(to_svg(block.drawing)) + "\"></p>\n";
    }

  private:
    static std::string cell_tag(const std::string& tag, const TableBlock& block, std::size_t column) {
        const bool is_number = column < block.are_numbers.size() && block.are_numbers[column];
        return is_number ? tag + " class=\"number\"" : tag;
    }
};

constexpr const char* style_sheet = R"(
:root { color-scheme: light dark; --ink: #26221f; --paper: #fcf9f1; --line: #8a8072; --caution: #8c2d14; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #f2ecdf; --paper: #26221f; --line: #9a9082; --caution: #f0a58c; }
}
body { color: var(--ink); background: var(--paper); font: 1rem/1.5 'DejaVu Sans', Verdana, sans-serif;
       max-width: 50rem; margin: 0 auto; padding: 1rem; }
h1 { font-size: 1.6rem; margin-bottom: 0; }
h2 { font-size: 1.2rem; margin-top: 1.6rem; border-bottom: 1px solid var(--line); }
.table { overflow-x: auto; }
table { border-collapse: collapse; }
th, td { text-align: left; vertical-align: top; padding: .25rem .8rem .25rem 0; border-bottom: 1px solid var(--line); }
tbody th { font-weight: normal; }
.number { text-align: right; font-variant-numeric: tabular-nums; }
.caution { border-left: .3rem solid var(--caution); padding-left: .8rem; }
img { max-width: 100%; height: auto; background: #fff; }
@media print {
  :root { --ink: #000; --paper: #fff; --line: #777; --caution: #000; }
  body { max-width: none; padding: 0; font-size: 10pt; }
  tr, li, img, .caution { break-inside: avoid; }
  h2 { break-after: avoid; }
}
@page { margin: 15mm; }
)";

}  // namespace

std::string to_html(const Document& document) {
    std::string body = element("h1", markup_text(document.title));
    if (!document.subtitle.empty()) body += element("p", markup_text(document.subtitle));
    for (const DocumentBlock& block : document.blocks) body += std::visit(HtmlBlock{}, block);
    return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
           "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n" +
           element("title", markup_text(document.title)) + element("style", style_sheet) +
           "</head>\n<body>\n" + element("main", "\n" + body) + "</body>\n</html>\n";
}

}  // namespace dartwright
