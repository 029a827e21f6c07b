// A number that differs in its last bit moves no words and changes no sheet.

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <filesystem>

#include "dartwright/checks/check.hpp"
#include "dartwright/drawing/cutting_drawing.hpp"
#include "dartwright/drawing/pattern_drawing.hpp"
#include "dartwright/drawing/text_box.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pages/print_pages.hpp"
#include "dartwright/pages/printed_piece.hpp"
#include "dartwright/pattern/mirrored.hpp"
#include "dartwright/pattern/pattern_problems.hpp"
#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright {
namespace {

struct NamedPattern {
    std::string name;
    Pattern pattern;
};

/// A rectangle, or an octagon of equal sides, which have places equally far from their middles and edges of
/// one length.
Pattern symmetrical(const std::vector<Point>& corners, const std::string& name) {
    Pattern pattern;
    pattern.name = name;
    pattern.pieces.emplace_back();
    Piece& piece = pattern.pieces.front();
    piece.name = name;
    piece.outline.start = corners.front();
    for (std::size_t i = 0; i < corners.size(); ++i) {
        OutlineItem item;
        item.to = corners[(i + 1) % corners.size()];
        item.what = EdgeItem{"edge " + std::to_string(i + 1), StraightShape{}, 0};
        piece.outline.items.push_back(item);
    }
    return pattern;
}

std::vector<Point> octagon() {
    std::vector<Point> corners;
    for (int i = 0; i < 8; ++i)
        corners.push_back({130 * std::cos(i * pi / 4 + 0.3), 130 * std::sin(i * pi / 4 + 0.3)});
    return corners;
}

const std::vector<NamedPattern>& patterns() {
    static const std::vector<NamedPattern> all = [] {
        std::vector<NamedPattern> found;
        const std::string root = std::string(DARTWRIGHT_SOURCE_DIR) + "/fixtures";
        std::vector<std::filesystem::path> paths;
        for (const char* folder : {"/blocks", "/corners", "/faults", "/workshop"})
            for (const auto& entry : std::filesystem::recursive_directory_iterator(root + folder))
                paths.push_back(entry.path());
        std::sort(paths.begin(), paths.end());
        for (const auto& path : paths) {
            if (path.extension() != ".json") continue;
            try {
                found.push_back({path.string(), read_pattern_file(path.string())});
            } catch (const InvalidPattern&) {
                // Some are no patterns, on purpose.
            }
        }
        found.push_back({"square", symmetrical({{0, 0}, {200, 0}, {200, 200}, {0, 200}}, "square")});
        found.push_back(
            {"rectangle", symmetrical({{0, 0}, {301.7, 0}, {301.7, 200}, {0, 200}}, "rectangle")});
        found.push_back(
            {"turned square", symmetrical({{0, 0}, {160, 120}, {40, 280}, {-120, 160}}, "turned square")});
        found.push_back({"octagon", symmetrical(octagon(), "octagon")});
        return found;
    }();
    return all;
}

/// Each point a little aside, by some last bits or by up to a millionth of what is seen; equal ones alike.
class Aside {
  public:
    Aside(std::uint64_t seed, bool is_last_bit) : seed_(seed), is_last_bit_(is_last_bit) {}

    void move(Point& p) const {
        const Point before = p;
        p.x = moved(before, before.x, 1);
        p.y = moved(before, before.y, 2);
    }
    void move(Shape& shape) const {
        if (auto* cubic = std::get_if<CubicShape>(&shape))
            for (Point& p : cubic->controls) move(p);
        if (auto* spline = std::get_if<SplineShape>(&shape))
            for (Point& p : spline->through) move(p);
    }
    void move(DartItem& dart) const {
        move(dart.point);
        if (dart.pivot) move(*dart.pivot);
        if (dart.legs)
            for (auto& leg : *dart.legs)
                for (Point& p : leg) move(p);
    }
    void move(Piece& piece) const {
        move(piece.outline.start);
        for (OutlineItem& item : piece.outline.items) {
            move(item.to);
            if (DartItem* dart = item.as_dart()) move(*dart);
            if (auto* edge = std::get_if<EdgeItem>(&item.what)) move(edge->shape);
        }
        if (piece.grain) {
            move(piece.grain->from);
            move(piece.grain->to);
        }
        for (DoubleDart& dart : piece.double_darts) {
            move(dart.from);
            move(dart.to);
            for (Point& p : dart.widest) move(p);
        }
        for (Mark& mark : piece.marks) {
            if (auto* drill = std::get_if<DrillMark>(&mark.what)) move(drill->at);
            if (auto* line = std::get_if<LineMark>(&mark.what))
                for (Point& p : line->points) move(p);
        }
    }

  private:
    static std::uint64_t bits_of(double number) {
        std::uint64_t bits = 0;
        std::memcpy(&bits, &number, sizeof bits);
        return bits;
    }
    /// From -1 to 1.
    double drawn(Point at, std::uint64_t which) const {
        std::uint64_t mixed = seed_ + which;
        for (const double each : {at.x, at.y}) {
            mixed ^= bits_of(each + 0.0) + 0x9E3779B97F4A7C15ULL + (mixed << 6) + (mixed >> 2);
            mixed *= 0xBF58476D1CE4E5B9ULL;
            mixed ^= mixed >> 31;
        }
        return static_cast<double>(mixed >> 11) / 4503599627370496.0 - 1;
    }
    double moved(Point at, double number, std::uint64_t which) const {
        const double share = drawn(at, which);
        if (!is_last_bit_) return number + 1e-9 * share;
        return std::abs(share) < 1.0 / 3 ? number : std::nextafter(number, share * 1e9);
    }

    std::uint64_t seed_;
    bool is_last_bit_;
};

void collect(std::vector<DrawnText>& words, const DrawnGroup& group) {
    for (const DrawnItem& item : group.items)
        if (const DrawnText* text = std::get_if<DrawnText>(&item)) words.push_back(*text);
    for (const DrawnGroup& inner : group.groups) collect(words, inner);
}

std::vector<DrawnText> words_in(const Drawing& drawing) {
    std::vector<DrawnText> words;
    for (const DrawnGroup& group : drawing.groups) collect(words, group);
    return words;
}

std::string difference_of_words(const std::vector<DrawnText>& first, const std::vector<DrawnText>& second) {
    constexpr double same_mm = 1e-6;
    if (first.size() != second.size()) return "how many words";
    for (std::size_t i = 0; i < first.size(); ++i) {
        const bool is_same = first[i].words == second[i].words &&
                             distance(first[i].at, second[i].at) <= same_mm &&
                             std::abs(first[i].size_mm - second[i].size_mm) <= same_mm &&
                             std::abs(first[i].angle_rad - second[i].angle_rad) <= same_mm;
        if (!is_same) {
            const auto shown = [](const DrawnText& text) {
                return text.words + " at " + std::to_string(text.at.x) + ", " + std::to_string(text.at.y) +
                       ", size " + std::to_string(text.size_mm);
            };
            return shown(first[i]) + " / " + shown(second[i]);
        }
    }
    return {};
}

/// What differs between two drawings in their sheet and words; empty if nothing that could be seen does.
std::string difference(const Drawing& a, const Drawing& b) {
    if (a.width_mm != b.width_mm || a.height_mm != b.height_mm) return "the sheet";
    return difference_of_words(words_in(a), words_in(b));
}

enum class Kind { plain, findings, over, cutting };

Drawing drawn(const Pattern& pattern, const Pattern& before, Kind kind) {
    DrawOptions options;
    if (kind == Kind::cutting) return draw_cutting_pieces(pattern);
    if (kind == Kind::over) return draw_overlay(before, pattern, options);
    if (kind == Kind::findings) options.findings = check(pattern).findings;
    return draw_pattern(pattern, options);
}

/// A piece, alone or with others of its size, so that orders by size have ties.
NamedPattern any_generated() {
    NamedPattern found{"generated", testing::any_piece(true, *testing::evenly(1, 4)).pattern};
    found.pattern.seams.clear();
    const Piece first = found.pattern.pieces.front();
    const int more = *testing::evenly(0, 3);
    for (int i = 0; i < more; ++i) {
        Piece piece = i == 0 ? first : mirrored({{10, 3}, {0, 1}}, first);
        piece.name += " " + std::to_string(i + 2);
        found.pattern.pieces.push_back(piece);
    }
    return found;
}

Pattern moved_aside(const Pattern& pattern) {
    const Aside aside(*rc::gen::arbitrary<std::uint64_t>(), *rc::gen::arbitrary<bool>());
    Pattern moved = pattern;
    for (Piece& piece : moved.pieces) aside.move(piece);
    RC_PRE(problems_of(pattern).empty() && problems_of(moved).empty());
    return moved;
}

void expect_same_drawing(const NamedPattern& named) {
    const auto kind = *rc::gen::element(Kind::plain, Kind::plain, Kind::over, Kind::cutting, Kind::findings);
    const Pattern moved = moved_aside(named.pattern);
    std::string differs;
    try {
        differs = difference(drawn(named.pattern, named.pattern, kind), drawn(moved, named.pattern, kind));
    } catch (const std::exception&) {
        RC_DISCARD("it cannot be cut");
    }
    if (!differs.empty()) RC_LOG() << named.name << ", kind " << static_cast<int>(kind) << ": " << differs;
    RC_ASSERT(differs.empty());
}

RC_GTEST_PROP(LastBit, MovesNoWordsAndKeepsTheSheet, ()) {
    expect_same_drawing(*rc::gen::elementOf(patterns()));
}

RC_GTEST_PROP(LastBit, MovesNoWordsOfGeneratedPieces, ()) {
    expect_same_drawing(any_generated());
}

/// Words of a page that can be seen on it, apart from the edge of what is cut off there.
void collect_seen(std::vector<DrawnText>& words, const DrawnGroup& group, std::optional<Box> clip) {
    constexpr double edge_mm = 1e-3;
    if (group.clip) clip = group.clip;
    for (const DrawnItem& item : group.items) {
        const DrawnText* text = std::get_if<DrawnText>(&item);
        if (!text) continue;
        const Box box = upright_box(box_of(*text));
        const bool is_seen =
            !clip || (box.high.x > clip->low.x + edge_mm && box.low.x < clip->high.x - edge_mm &&
                      box.high.y > clip->low.y + edge_mm && box.low.y < clip->high.y - edge_mm);
        if (is_seen) words.push_back(*text);
    }
    for (const DrawnGroup& inner : group.groups) collect_seen(words, inner, clip);
}

std::string difference_of_pages(const Drawing& a, const Drawing& b) {
    constexpr double same_mm = 1e-6;
    if (a.width_mm != b.width_mm || std::abs(a.height_mm - b.height_mm) > same_mm) return "the page";
    std::vector<DrawnText> first;
    std::vector<DrawnText> second;
    for (const DrawnGroup& group : a.groups) collect_seen(first, group, {});
    for (const DrawnGroup& group : b.groups) collect_seen(second, group, {});
    return difference_of_words(first, second);
}

/// What differs in what is printed: where the pieces lie, on which pages, and the words there.
std::string difference(const PrintResult& a, const PrintResult& b) {
    constexpr double same_mm = 1e-6;
    if (a.pages.size() != b.pages.size()) return "how many pages";
    for (std::size_t i = 0; i < a.sheet.pieces.size(); ++i) {
        const SheetPiece& first = a.sheet.pieces[i];
        const SheetPiece& second = b.sheet.pieces[i];
        if (distance(first.box.low, second.box.low) > same_mm ||
            distance(first.box.high, second.box.high) > same_mm)
            return "the place of " + first.name;
        if (first.tiles != second.tiles) return "the pages of " + first.name;
    }
    for (std::size_t i = 0; i < a.pages.size(); ++i) {
        const std::string found = difference_of_pages(a.pages[i], b.pages[i]);
        if (!found.empty()) return "page " + std::to_string(i + 1) + ": " + found;
    }
    return {};
}

PrintResult printed(const Pattern& pattern, const PrintRequest& request) {
    std::vector<PrintedPiece> pieces;
    for (const Piece& piece : pattern.pieces)
        pieces.push_back(printed_piece(piece, pattern, {pattern.name, "", "", pattern.unit}));
    return print_pages(pieces, request);
}

PrintRequest any_print_request() {
    PrintRequest request;
    std::vector<Paper> known = papers();
    known.push_back({"roll", 914, 0});
    request.paper = *rc::gen::elementOf(known);
    request.is_landscape = !request.paper.is_roll() && *rc::gen::arbitrary<bool>();
    request.margin_mm = *rc::gen::element(0.0, 5.0, 10.0);
    request.overlap_mm = *rc::gen::element(0.0, 10.0, 12.7);
    request.title = "a title";
    return request;
}

void expect_same_pages(const NamedPattern& named) {
    const PrintRequest request = any_print_request();
    const Pattern moved = moved_aside(named.pattern);
    std::string differs;
    try {
        differs = difference(printed(named.pattern, request), printed(moved, request));
    } catch (const Impossible&) {
        RC_DISCARD("it cannot be cut or printed");
    }
    if (!differs.empty()) RC_LOG() << named.name << ", " << request.paper.name << ": " << differs;
    RC_ASSERT(differs.empty());
}

RC_GTEST_PROP(LastBit, MovesNothingOnPrintedPages, ()) {
    expect_same_pages(*rc::gen::elementOf(patterns()));
}

RC_GTEST_PROP(LastBit, MovesNothingOnPrintedPagesOfGeneratedPieces, ()) {
    expect_same_pages(any_generated());
}

}  // namespace
}  // namespace dartwright
