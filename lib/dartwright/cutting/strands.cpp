#include "dartwright/cutting/strands.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/cutting/edge_widths.hpp"
#include "dartwright/cutting/offset_curve.hpp"
#include "dartwright/geometry/arc_length.hpp"
#include "dartwright/geometry/arc_length_table.hpp"
#include "dartwright/geometry/cubic_halves.hpp"
#include "dartwright/pattern/allowance.hpp"

namespace dartwright::cutting {
namespace {

// The lines beside two curves that come as near to each other run on, mm: a hundredth of the line's error.
constexpr double smooth_mm = 1e-4;

class StrandMaker {
  public:
    StrandMaker(const Piece& piece, const CuttingRequest& request)
        : outline_(piece.outline), widths_(edge_widths(piece, request)) {}

    Strands made() {
        const std::size_t n = outline_.items.size();
        out_.strands.reserve(n);
        constexpr std::size_t usual_of_curve = 64;
        out_.points.reserve(2 * n + usual_of_curve * widths_.curved);
        // From the first edge on, so that the darts before it come to stand after the last.
        std::size_t first = 0;
        while (first < n && !outline_.items[first].as_edge()) ++first;
        Point start = first < n ? start_of_item(outline_, first) : outline_.start;
        for (std::size_t k = 0; k < n; ++k) {
            const std::size_t item = first + k < n ? first + k : first + k - n;
            add_item(item, start);
            start = outline_.items[item].to;
        }
        out_.undecided = std::move(widths_.undecided);
        out_.runs = widths_.runs;
        return std::move(out_);
    }

  private:
    void add_item(std::size_t item, Point start) {
        const EdgeItem* edge = outline_.items[item].as_edge();
        if (!edge) {
            if (!out_.strands.empty()) add_dart(item);
            return;
        }
        if (!widths_.stretches.empty() && !widths_.stretches[item].empty())
            return add_edge_in_stretches(item);
        const double width_mm = widths_.items[item].width_mm;
        const Point end = outline_.items[item].to;
        if (std::holds_alternative<StraightShape>(edge->shape))
            return add_straight(item, {start, end}, width_mm);
        if (const auto* cubic = std::get_if<CubicShape>(&edge->shape))
            return add_cubic(item, {{start, cubic->controls[0], cubic->controls[1], end}}, width_mm);
        for (const Curve& curve : curves_of_item(outline_, item)) add_strand(item, curve, width_mm);
    }

    void add_edge_in_stretches(std::size_t item) {
        const std::vector<WidthOnItem>& widths = widths_.stretches[item];
        double passed = 0;
        std::size_t stretch = 0;
        for (Curve curve : curves_of_item(outline_, item)) {
            while (stretch + 1 < widths.size()) {
                const double left = widths[stretch].to_mm - passed;
                const double whole = length(curve);
                if (left >= whole - stretch_joint_mm) break;
                if (left > stretch_joint_mm) {
                    const CurveHalves halves = split_at(curve, ArcLengthTable(curve).parameter_at(left));
                    add_strand(item, halves.before, widths[stretch].width_mm);
                    passed += left;
                    curve = halves.after;
                }
                ++stretch;
            }
            if (stretch + 1 < widths.size()) passed += length(curve);
            add_strand(item, curve, widths[stretch].width_mm);
        }
    }

    // The spans of a spline run on smoothly, and make one strand.
    bool runs_on(std::size_t item, Vector tangent, double width_mm) const {
        if (out_.strands.empty()) return false;
        const Strand& last = out_.strands.back();
        return last.item == item && last.width_mm == width_mm &&
               norm(tangent - last.last_tangent) * width_mm <= smooth_mm;
    }

    void add_strand(std::size_t item, const Curve& curve, double width_mm) {
        if (const auto* line = std::get_if<Line>(&curve)) return add_straight(item, *line, width_mm);
        add_cubic(item, std::get<Cubic>(curve), width_mm);
    }

    void add_cubic(std::size_t item, const Cubic& cubic, double width_mm) {
        const Vector first_tangent = first_direction(cubic);
        if (squared_norm(first_tangent) == 0) return;  // a curve of one point
        const BesideCubic beside{cubic, first_tangent, last_direction(cubic), width_mm,
                                 cutting_line_error_mm};
        if (runs_on(item, first_tangent, width_mm)) return lengthen_strand(beside);
        Strand& strand = new_strand(item, width_mm);
        strand.first_tangent = first_tangent;
        strand.first = out_.points.size();
        strand.first_detour = out_.detours.size();
        add_points(beside, strand);
        finish(strand);
    }

    Strand& new_strand(std::size_t item, double width_mm) {
        return out_.strands.emplace_back(item, ItemWidth{widths_.items[item].run, width_mm});
    }

    void add_points(const BesideCubic& beside, Strand& strand) {
        offset_onto(out_.points, beside, out_.detours);
        strand.detours = out_.detours.size() - strand.first_detour;
        strand.last_tangent = beside.last_tangent;
        strand.end = beside.cubic.p[3];
    }

    void add_straight(std::size_t item, const Line& line, double width_mm) {
        const Vector along = line.b - line.a;
        // Squares are safe here: an outline is at most metres wide, and a line too short for them is a point.
        const double size = std::sqrt(squared_norm(along));
        if (size == 0) return;
        const Vector tangent = along / size;
        const Vector aside = width_mm * outwards(tangent);
        Strand& strand = new_strand(item, width_mm);
        strand.first_tangent = tangent;
        strand.last_tangent = tangent;
        strand.end = line.b;
        strand.first = out_.points.size();
        out_.points.push_back(line.a + aside);
        if (widths_.has_darts && is_beside_dart(item)) out_.points.push_back(middle(line.a, line.b) + aside);
        out_.points.push_back(line.b + aside);
        finish(strand);
    }

    void finish(Strand& strand) {
        strand.last = out_.points.size() - 1;
        strand.first_kept = strand.first;
        strand.last_kept = strand.last;
        strand.first_dart = out_.darts.size();
    }

    void lengthen_strand(const BesideCubic& beside) {
        Strand& strand = out_.strands.back();
        out_.points.pop_back();
        add_points(beside, strand);
        strand.last = strand.last_kept = out_.points.size() - 1;
    }

    // Such a line has its middle as a point, so that the legs at both its ends may come to it, each on its
    // own half.
    bool is_beside_dart(std::size_t item) const {
        const std::vector<OutlineItem>& items = outline_.items;
        const std::size_t after = item + 1 == items.size() ? 0 : item + 1;
        const std::size_t before = item == 0 ? items.size() - 1 : item - 1;
        return items[after].as_dart() || items[before].as_dart();
    }

    void add_dart(std::size_t item) {
        out_.darts.push_back(item);
        ++out_.strands.back().darts;
    }

    const Outline& outline_;
    EdgeWidths widths_;
    Strands out_;
};

}  // namespace

Strands strands_of(const Piece& piece, const CuttingRequest& request) {
    return StrandMaker(piece, request).made();
}

}  // namespace dartwright::cutting
