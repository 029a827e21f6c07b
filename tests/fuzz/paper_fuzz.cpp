// Any pattern that can be read is cut, laid on cloth, printed, drawn for cutting and told on a sewing sheet,
// or the refusal is one of those that are documented; every number on paper is finite.

#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include "dartwright/cutting/applied_rule.hpp"
#include "dartwright/cutting/lay_pattern.hpp"
#include "dartwright/cutting/markings.hpp"
#include "dartwright/drawing/cutting_drawing.hpp"
#include "dartwright/drawing/lay_drawing.hpp"
#include "dartwright/drawing/svg_writer.hpp"
#include "dartwright/geometry/curve.hpp"
#include "dartwright/pages/print_pages.hpp"
#include "dartwright/pages/printed_piece.hpp"
#include "dartwright/pages/sewing_sheet.hpp"
#include "fuzzing.hpp"
#include "json_mutation.hpp"

namespace dartwright::fuzzing {
namespace {

constexpr std::size_t most_bytes = 8192;
/// Longer edges make more pages of the same kind.
constexpr double longest_edge_mm = 2000;

void require_finite(const std::vector<Point>& points) {
    for (const Point& point : points)
        require(std::isfinite(point.x) && std::isfinite(point.y), "a place is finite");
}

void require_picture(const Drawing& drawing) {
    require(std::isfinite(drawing.width_mm) && drawing.width_mm > 0, "a sheet has a width");
    require(std::isfinite(drawing.height_mm) && drawing.height_mm > 0, "a sheet has a height");
    require(to_svg(drawing).find("</svg>") != std::string::npos, "a picture has an end");
}

bool is_small(const Pattern& pattern) {
    for (const Piece& piece : pattern.pieces) {
        for (const Run& run : runs_of(piece.outline)) {
            if (!(run.length < longest_edge_mm)) return false;
        }
    }
    return true;
}

CuttingLabel label_of(const Pattern& pattern) {
    CuttingLabel label;
    label.pattern = pattern.name;
    label.unit = pattern.unit;
    return label;
}

// One piece that cannot be cut does not keep the others from it.
template <typename Work>
void done_or_refused(Work work) {
    try {
        work();
    } catch (const Impossible&) {
    } catch (const UnknownName&) {
    }
}

void cut(const Pattern& pattern) {
    std::vector<CuttingPiece> pieces;
    for (const Piece& piece : pattern.pieces) {
        done_or_refused([&] {
            pieces.push_back(cutting_piece(piece, cutting_request(pattern, piece), marking_request(pattern)));
            const CuttingLine& line = pieces.back().line;
            require_finite(line.points);
            require(line.sides.size() == line.points.size(), "every side of the line says what it is");
        });
    }
    if (!pieces.empty()) require_picture(draw_cutting_pieces(pattern, pieces, label_of(pattern)));
}

void lay_and_tell(const Pattern& pattern) {
    SheetRequest sheet;
    done_or_refused([&] {
        LayRequest request;
        request.width_mm = 1400;
        request.is_folded = pattern.pieces.size() % 2 == 1;
        sheet.cloth = lay_pattern(pattern, request);
        require(std::isfinite(sheet.cloth->lay.length_mm), "a lay has a length");
        for (const LaidPiece& piece : sheet.cloth->lay.pieces) require_finite(piece.polygon);
        require_picture(draw_lay(sheet.cloth->lay, {pattern.name, pattern.unit, request.is_folded}));
    });
    done_or_refused([&] { sewing_sheet(pattern, sheet); });
}

void print(const Pattern& pattern) {
    done_or_refused([&] {
        std::vector<PrintedPiece> pieces;
        for (const Piece& piece : pattern.pieces)
            pieces.push_back(printed_piece(piece, pattern, label_of(pattern)));
        if (pieces.empty()) return;
        PrintRequest request;
        request.paper = papers().front();
        for (const Drawing& page : print_pages(pieces, request).pages) require_picture(page);
    });
}

void make(const Pattern& read) {
    CuttingRule rule;
    rule.name = "toile";
    const Pattern pattern = apply_rule(read, read.cutting.value_or(rule), 10).pattern;
    // One a time: each takes the most of it, and what a text is taken for follows from the text.
    switch (std::hash<std::string>()(write_pattern(read)) % 4) {
        case 0:
            return lay_and_tell(pattern);
        case 1:
            return print(pattern);
        default:
            return cut(pattern);
    }
}

}  // namespace
}  // namespace dartwright::fuzzing

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    namespace fuzzing = dartwright::fuzzing;
    const auto pattern = fuzzing::pattern_within(fuzzing::most_bytes, data, size);
    if (pattern && fuzzing::is_small(*pattern)) fuzzing::make(*pattern);
    return 0;
}
