// print: the pieces at true size on pages, as PDF.

#include <algorithm>
#include <cctype>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>

#include "arguments.hpp"
#include "checked_file.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/drawing/cairo_writer.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pages/print_pages.hpp"
#include "dartwright/pages/printed_piece.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/words/nearest_word.hpp"
#include "dartwright/words/written_number.hpp"
#include "progress.hpp"
#include "result_file.hpp"
#include "verdicts.hpp"
#include "worn_option.hpp"

namespace dartwright::tools {

namespace {

using Json = nlohmann::ordered_json;

std::string lower(std::string words) {
    std::transform(words.begin(), words.end(), words.begin(),
                   [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
    return words;
}

/// The narrowest roll that holds the test squares; the library says so of each piece.
constexpr double least_roll_mm = 50;

Paper roll_of(const std::string& width_words) {
    const double width = parse_length(width_words);
    if (width < least_roll_mm || width > longest_page_mm)
        throw WrongUse("--paper roll:WIDTH is a width from " + shortest_decimals(least_roll_mm, 0) + " to " +
                       shortest_decimals(longest_page_mm, 0) + " mm, not " + width_words);
    return {"roll of " + shortest_decimals(width, 1) + " mm", width, 0};
}

Paper paper_of(const std::string& words) {
    const std::string wanted = lower(words);
    if (wanted.rfind("roll:", 0) == 0) return roll_of(words.substr(5));
    std::vector<std::string> known{"roll:914"};
    for (const Paper& paper : papers()) {
        if (lower(paper.name) == wanted) return paper;
        known.push_back(paper.name);
    }
    throw WrongUse("--paper is A4, A3, A0, letter, tabloid or roll:WIDTH, not '" + words + "'" +
                   nearest_told(words, known));
}

struct LengthOption {
    const char* name;
    double absent;
    double most;
};
/// A length from 0 to the most that leaves room on the page.
double length_of(const Arguments& arguments, const LengthOption& option) {
    const auto words = arguments.value(option.name);
    const double length = words ? parse_length(*words) : option.absent;
    if (length < 0) throw WrongUse(std::string("--") + option.name + " is not below 0, as " + *words + " is");
    if (length <= option.most) return length;
    // Down, so that what is said to work does.
    const double most = std::floor(10 * std::max(0.0, option.most)) / 10;
    throw WrongUse(std::string("--") + option.name + " " + shortest_decimals(length, 2) +
                   " mm leaves too little of the page; at most " + shortest_decimals(most, 1) + " mm works");
}

PrintRequest request_of(const Arguments& arguments) {
    PrintRequest request;
    request.paper = paper_of(arguments.value("paper").value_or("A4"));
    request.is_landscape = arguments.has("landscape");
    if (request.is_landscape && request.paper.is_roll())
        throw WrongUse("--landscape turns a sheet; a roll has its width as given");
    request.margin_mm = length_of(
        arguments, {"margin", default_margin_mm, widest_margin(request.paper, request.is_landscape)});
    request.overlap_mm = length_of(arguments, {"overlap", default_overlap_mm, widest_overlap(request)});
    request.date = arguments.value("date").value_or("");
    return request;
}

std::string without_spaces_around(const std::string& words) {
    const std::size_t start = words.find_first_not_of(' ');
    return start == std::string::npos ? "" : words.substr(start, words.find_last_not_of(' ') + 1 - start);
}

/// The names between commas; a name that has commas itself is known by the pattern, the longest first.
std::vector<std::string> names_in_list(const std::string& list, const Pattern& pattern) {
    std::vector<std::string> names;
    for (std::size_t from = 0; from < list.size();) {
        std::size_t end = std::min(list.find(',', from), list.size());
        for (std::size_t longer = list.size(); longer > end; longer = list.rfind(',', longer - 1)) {
            const std::string name = without_spaces_around(list.substr(from, longer - from));
            const bool is_known = std::any_of(pattern.pieces.begin(), pattern.pieces.end(),
                                              [&](const Piece& piece) { return piece.name == name; });
            if (is_known) end = longer;
            if (is_known) break;
        }
        names.push_back(without_spaces_around(list.substr(from, end - from)));
        from = end + 1;
    }
    return names;
}

/// A file under another name would be taken for something else, and a pattern be replaced by mistake.
void require_pdf(const Arguments& arguments) {
    const std::string path = arguments.value("output").value_or("-");
    const bool has_ending = path.size() > 4 && lower(path.substr(path.size() - 4)) == ".pdf";
    if (path == "-" || has_ending || path.rfind("/dev/", 0) == 0) return;
    throw WrongUse(path + ": the name of the pages ends in .pdf");
}

std::vector<std::string> names_wanted(const Arguments& arguments, const Pattern& pattern) {
    std::vector<std::string> names;
    const auto words = arguments.value("pieces");
    if (!words) {
        for (const Piece& piece : pattern.pieces) names.push_back(piece.name);
        return names;
    }
    for (std::string& name : names_in_list(*words, pattern)) {
        if (std::find(names.begin(), names.end(), piece_named(pattern, name).name) != names.end())
            throw WrongUse("--pieces names " + name + " twice");
        names.push_back(std::move(name));
    }
    if (names.empty()) throw WrongUse("--pieces names no piece");
    return names;
}

bool is_opened(const Pattern& pattern, const std::string& name) {
    const Piece& piece = piece_named(pattern, name);
    return piece.cut && !piece.cut->fold.empty();
}

/// What is said of a piece that is unfolded, beyond what it says itself.
struct HowWorn {
    std::optional<Worn> worn;
    std::optional<SideUp> side_up;
};
using WornPieces = std::map<std::string, HowWorn>;

/// The piece that an option without a name speaks of: the only one of those.
const std::string& only_one(const std::vector<std::string>& pieces, const std::string& option,
                            const std::string& word, const char* none) {
    if (pieces.empty()) throw WrongUse(option + " " + word + " speaks of no piece: " + none);
    if (pieces.size() == 1) return pieces.front();
    throw WrongUse(option + " " + word + " may mean " + pieces[0] + " or " + pieces[1] +
                   "; say which, as in " + option + " \"" + pieces[0] + "=" + word + "\"");
}

/// An option's words of a piece: `front=wrong`, or the last part alone.
struct SaidOf {
    std::optional<std::string> piece;
    std::string word;
};
std::vector<SaidOf> said_by(const Arguments& arguments, const Pattern& pattern, const char* option) {
    std::vector<SaidOf> all;
    const std::string name = std::string("--") + option;
    for (const std::string& words : arguments.values(option)) {
        if (!arguments.has("open")) throw WrongUse(name + " is for pieces that --open unfolds");
        SaidOf& said = all.emplace_back();
        const std::size_t equals = words.rfind('=');
        said.word = equals == words.npos ? words : words.substr(equals + 1);
        if (equals == words.npos) continue;
        said.piece = words.substr(0, equals);
        if (!is_opened(pattern, *said.piece))
            throw WrongUse(name + " " + words + ": " + *said.piece + " has no fold");
    }
    return all;
}

/// What `--worn` and `--side-up` say of the pieces that are unfolded.
WornPieces worn_of(const Arguments& arguments, const Pattern& pattern,
                   const std::vector<std::string>& names) {
    WornPieces worn;
    for (const SaidOf& said : said_by(arguments, pattern, "worn")) {
        const Worn is = worn_named(said.word);
        std::vector<std::string> silent;
        for (const std::string& name : names)
            if (is_opened(pattern, name) && !piece_named(pattern, name).worn) silent.push_back(name);
        const std::string& piece = said.piece ? *said.piece
                                              : only_one(silent, "--worn", said.word,
                                                         "none is unfolded that does not say it itself");
        worn[piece].worn = is;
    }
    std::vector<std::string> told;
    for (const auto& [name, how] : worn) told.push_back(name);
    for (const SaidOf& said : said_by(arguments, pattern, "side-up")) {
        const SideUp up = side_up_named(said.word);
        const std::string& piece =
            said.piece ? *said.piece
                       : only_one(told, "--side-up", said.word, "there is none that --worn speaks of");
        worn[piece].side_up = up;
    }
    return worn;
}

struct PiecesToPrint {
    std::vector<PrintedPiece> pieces;
    std::vector<std::string> notes;  ///< of unfolding
};

PiecesToPrint pieces_of(const Arguments& arguments, Pattern pattern) {
    const std::vector<std::string> names = names_wanted(arguments, pattern);
    if (names.empty()) throw Impossible("the pattern has no pieces", "");
    const CuttingLabel label{pattern.name, arguments.value("size").value_or(""),
                             arguments.value("date").value_or(""), pattern.unit};
    const WornPieces worn = worn_of(arguments, pattern, names);
    PiecesToPrint out;
    for (const std::string& name : names) {
        if (arguments.has("open") && is_opened(pattern, name)) {
            OpenRequest request{name};
            if (const auto said = worn.find(name); said != worn.end()) {
                request.worn = said->second.worn;
                request.side_up = said->second.side_up;
            }
            OpenResult opened = open(pattern, request);
            pattern = std::move(opened.pattern);
            for (const std::string& note : opened.account.notes) out.notes.push_back(name + ": " + note);
        }
        out.pieces.push_back(printed_piece(piece_named(pattern, name), pattern, label));
    }
    return out;
}

using Notes = std::vector<std::string>;

Notes notes_of(const PiecesToPrint& to_print) {
    Notes notes = to_print.notes;
    for (const PrintedPiece& piece : to_print.pieces)
        notes.insert(notes.end(), piece.notes.begin(), piece.notes.end());
    return notes;
}

std::string text_of(const PrintResult& result, const PrintRequest& request, const Notes& notes) {
    const std::size_t pages = result.pages.size();
    std::string text = std::to_string(pages) + (pages == 1 ? " page" : " pages") + " (" + request.paper.name +
                       (request.is_landscape ? ", landscape" : "") + ")";
    if (result.has_cover) text += ", the first with the map and the test squares";
    text += "\n";
    for (const SheetPiece& piece : result.sheet.pieces) {
        text += "  " + piece.name + ":";
        for (const Tile tile : piece.tiles)
            text += (tile == piece.tiles.front() ? " " : ", ") + label_of(tile);
        text += "\n";
    }
    for (const std::string& note : notes) text += "note: " + note + "\n";
    text += "Measure the test squares before you cut.\n";
    return text;
}

Json json_of(const PrintResult& result, const PrintRequest& request, const Notes& notes) {
    Json pieces = Json::array();
    for (const SheetPiece& piece : result.sheet.pieces) {
        if (piece.cutting_line.empty()) continue;
        Json tiles = Json::array();
        for (const Tile tile : piece.tiles) tiles.push_back(label_of(tile));
        pieces.push_back({{"name", piece.name}, {"tiles", tiles}});
    }
    Json tiles = Json::array();
    for (const Tile tile : result.sheet.tiles) tiles.push_back(label_of(tile));
    return {{"dartwright_print", 1},
            {"paper", request.paper.name},
            {"landscape", request.is_landscape},
            {"page", {result.pages.back().width_mm, result.pages.back().height_mm}},
            {"margin", request.margin_mm},
            {"overlap", request.overlap_mm},
            {"pages", result.pages.size()},
            {"cover", result.has_cover},
            {"tiles", tiles},
            {"pieces", pieces},
            {"notes", notes}};
}

ExitStatus run_print(const Arguments& arguments, Invocation& call) {
    require_positional(arguments, 1, 1, "the pattern file");
    const Format format = format_of(arguments);
    require_pdf(arguments);
    PrintRequest request = request_of(arguments);
    const Pattern pattern = read_pattern_file(arguments.positional[0]);
    call.works_on(shown_path(arguments.positional[0]), pattern.unit);
    request.title = pattern.name;
    const PiecesToPrint pieces = pieces_of(arguments, pattern);
    const PrintResult result = print_pages(pieces.pieces, request);
    std::string bytes;
    {
        Progress progress("pages", result.pages.size());
        bytes = to_pdf(result.pages, [&](std::size_t done) { progress.show(done); });
    }
    const std::string account = format == Format::json
                                    ? json_line(json_of(result, request, notes_of(pieces))) + "\n"
                                    : text_of(result, request, notes_of(pieces));
    write_result(arguments, call, bytes, account);
    return ExitStatus::done;
}

}  // namespace

Command print_command() {
    return {
        "print",
        "print the pieces at full scale on pages, as PDF",
        "FILE -o PAGES.pdf [OPTIONS]",
        "Lays the pieces out at true size, each with its grain upright, and cuts the sheet into pages that "
        "overlap, with lines and rings to match them by. Pages that would hold nothing are left out. The "
        "first page has a map of the others and two test squares: measure them before you cut. On a large "
        "sheet (A0) or a roll the squares are on the sheet itself. Cutters and pins hurt: your workshop's "
        "rules and a qualified teacher come first.",
        {output_option("the pages; they come whole or not at all"),
         overwrite_option(),
         {"paper", 0, "A4|A3|A0|letter|tabloid|roll:WIDTH",
          "A4 if absent; of a roll its width, such as roll:914"},
         {"landscape", 0, "", "the sheets lie on their long side"},
         {"margin", 0, "LENGTH", "what the printer leaves white at each edge; 10 mm if absent"},
         {"overlap", 0, "LENGTH", "the strip that two pages have in common; 10 mm if absent"},
         {"pieces", 0, "A,B", "print these pieces only"},
         {"open", 0, "", "unfold the pieces that are cut on the fold"},
         {"worn", 0, "[PIECE=]front|back",
          "with --open: the part of the body that a piece covers, if it does not say it; left and right are "
          "then the wearer's. Without PIECE, of the only such piece; may be given for several",
          true},
         {"side-up", 0, "[PIECE=]right|wrong",
          "beside --worn: the side of the cloth that lies up as the piece is drawn; right if absent. Without "
          "PIECE, of the only piece that --worn speaks of; may be given for several",
          true},
         {"size", 0, "TEXT", "a size for the labels of the pieces"},
         {"date", 0, "TEXT", "words for the date, on every page; none if absent"},
         format_option()},
        {{"dartwright print bodice.json -o bodice.pdf", "on A4, with the first page to check the scale by"},
         {"dartwright print bodice.json -o bodice.pdf --paper roll:914 --open",
          "whole pieces on one sheet of a roll 914 mm wide"},
         {"dartwright print bodice.json -o back.pdf --paper letter --pieces back", "the back alone"}},
        run_print};
}

}  // namespace dartwright::tools
