#include "dartwright/assessing/traced_cutting_line.hpp"

#include <algorithm>

#include "dartwright/cutting/cutting_line.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern_problems.hpp"

namespace dartwright {
namespace {

bool has_width(const CuttingLine& line) {
    return std::any_of(line.sides.begin(), line.sides.end(),
                       [](const CutSide& side) { return side.part == CutPart::edge && side.width_mm > 0; });
}

// Whether a side is drawn with the dart, rather than as part of an edge.
bool is_of_dart(const Outline& outline, const CutSide& side) {
    return outline.items[side.item].as_dart() != nullptr;
}

OutlineItem item_to(const Outline& outline, const CutSide& side, Point to) {
    OutlineItem item = outline.items[side.item];
    item.to = to;
    if (EdgeItem* edge = item.as_edge()) {
        edge->shape = StraightShape{};
        edge->fullness = 0;
    }
    return item;
}

// Begun where an edge follows another thing, so that no dart is begun half way.
std::size_t first_side(const CuttingLine& line) {
    const std::size_t count = line.sides.size();
    for (std::size_t i = 0; i < count; ++i) {
        const CutSide& before = line.sides[(i + count - 1) % count];
        if (line.sides[i].part == CutPart::edge && line.sides[i].item != before.item) return i;
    }
    return 0;
}

Outline traced(const Outline& outline, const CuttingLine& line) {
    const std::size_t count = line.sides.size();
    const std::size_t first = first_side(line);
    Outline out;
    out.start = line.points[first];
    std::optional<std::size_t> open_dart;
    for (std::size_t k = 0; k < count; ++k) {
        const std::size_t i = (first + k) % count;
        const CutSide& side = line.sides[i];
        const Point to = line.points[(i + 1) % count];
        // A mouth is cut along its cap, and drawn across.
        if (is_of_dart(outline, side) && open_dart == side.item) {
            out.items.back().to = to;
            continue;
        }
        out.items.push_back(item_to(outline, side, to));
        open_dart = is_of_dart(outline, side) ? std::optional(side.item) : std::nullopt;
    }
    out.items.back().to = out.start;
    return out;
}

}  // namespace

std::optional<ShapedPiece> traced_cutting_line(const Piece& piece) {
    try {
        const CuttingLine line = cutting_line(piece);
        if (!has_width(line)) return std::nullopt;
        ShapedPiece out{piece, {}};
        out.piece.outline = traced(piece.outline, line);
        out.runs = runs_of(out.piece.outline);
        return out;
    } catch (const Impossible&) {
    } catch (const UnsoundPattern&) {
    }
    return std::nullopt;
}

const std::vector<ShapedPiece>& TracedCuttingLines::of(const std::vector<ShapedPiece>& pieces) {
    std::call_once(once_, [&] {
        for (const ShapedPiece& each : pieces) {
            auto line = traced_cutting_line(each.piece);
            is_any_ = is_any_ || line;
            traced_.push_back(line ? std::move(*line) : each);
        }
    });
    return traced_;
}

}  // namespace dartwright
