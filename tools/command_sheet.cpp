// sheet: the page to sew by.

#include <algorithm>
#include <cctype>

#include "arguments.hpp"
#include "checked_file.hpp"
#include "cloth_options.hpp"
#include "dartwright/cutting/lay_pattern.hpp"
#include "dartwright/drawing/cairo_writer.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pages/paper.hpp"
#include "dartwright/pages/sewing_sheet.hpp"
#include "dartwright/words/nearest_word.hpp"
#include "result_file.hpp"

namespace dartwright::tools {

namespace {

enum class SheetKind { html, pdf };

// Standard output is text: a sheet there is HTML.
SheetKind kind_of(const std::string& path) {
    if (path == "-") return SheetKind::html;
    const std::size_t dot = path.rfind('.');
    const std::string extension = dot == std::string::npos ? "" : path.substr(dot);
    if (extension == ".html") return SheetKind::html;
    if (extension == ".pdf") return SheetKind::pdf;
    throw WrongUse(path + ": the name of a sheet ends in .html or .pdf" +
                   nearest_told(extension, {".html", ".pdf"}));
}

// Of the papers that are printed on, those that are read in the hand.
PageSize page_size_wanted(const Arguments& arguments) {
    const auto words = arguments.value("paper");
    if (!words) return {};
    constexpr double widest_to_read_mm = 300;
    std::vector<std::string> known;
    for (const Paper& paper : papers()) {
        if (paper.width_mm > widest_to_read_mm) continue;
        known.push_back(paper.name);
        if (paper.name.size() == words->size() &&
            std::equal(words->begin(), words->end(), paper.name.begin(),
                       [](char a, char b) { return std::tolower(a) == std::tolower(b); }))
            return {paper.width_mm, paper.height_mm};
    }
    throw WrongUse("--paper is A4, letter, A3 or tabloid, not '" + *words + "'" +
                   nearest_told(*words, known));
}

ExitStatus run_sheet(const Arguments& arguments, Invocation& call) {
    require_positional(arguments, 1, 1, "the pattern file");
    const SheetKind kind = kind_of(arguments.value("output").value_or("-"));
    for (const char* option : {"opened", "one-way", "gap"}) {
        if (arguments.has(option) && !arguments.has("width"))
            throw WrongUse(std::string("--") + option + " is for cloth; give its --width too");
    }
    const PageSize page = page_size_wanted(arguments);
    const std::string& path = arguments.positional[0];
    const Pattern pattern = read_pattern_file(path);
    call.works_on(shown_path(path), pattern.unit);
    SheetRequest request;
    request.date = arguments.value("date").value_or("");
    if (arguments.has("width")) request.cloth = lay_pattern(pattern, lay_request(arguments));
    const Document sheet = sewing_sheet(pattern, request);
    write_result(arguments, call, kind == SheetKind::html ? to_html(sheet) : to_pdf(pages_of(sheet, page)),
                 "");
    return ExitStatus::done;
}

}  // namespace

Command sheet_command() {
    return {"sheet",
            "write the page to sew by: cloth, darts and seams in order, with their figures",
            "FILE [-o SHEET] [OPTIONS]",
            "Writes what is to be done with the cut pieces: the cloth, what to carry over to it, each dart "
            "with its length, where to shorten the stitch and where to press it, what is gathered or eased, "
            "and each "
            "seam with its lengths, notches and ease. Every figure is that of the pattern. The ending of "
            "SHEET says what it "
            "is: .html or .pdf; without -o it is HTML on standard output. Rotary cutters, pins and irons "
            "hurt: the "
            "sheet begins with their cautions, and your workroom's rules come first.",
            {width_option("of the cloth, such as 140cm: the sheet then says how much it takes and how to lay "
                          "the pieces"),
             opened_option(),
             one_way_option(),
             gap_option(),
             {"paper", 0, "A4|letter|A3|tabloid", "of a PDF; A4 if absent"},
             {"date", 0, "WORDS", "the date, as it shall stand on the sheet; none if absent"},
             output_option("the sheet; it comes whole or not at all"),
             overwrite_option()},
            {{"dartwright sheet bodice.json --width 140cm -o sheet.pdf", "to print, with the lay"},
             {"dartwright sheet bodice.json -o sheet.html", "to read on a screen"}},
            run_sheet};
}

}  // namespace dartwright::tools
