#include "dartwright/cutting/strands.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/cutting/offset_curve.hpp"
#include "dartwright/geometry/arc_length.hpp"
#include "dartwright/geometry/arc_length_table.hpp"
#include "dartwright/pattern/allowance.hpp"

namespace dartwright::cutting {
namespace {

// The lines beside two curves that come as near to each other run on, mm: a hundredth of the line's error.
constexpr double smooth_mm = 1e-4;

struct WidthOnItem {
    double to_mm = 0;  ///< geometric distance from the item's start
    double width_mm = 0;
};

// One width, or several in stretches.
struct ItemWidths {
    double width_mm = 0;
    std::vector<WidthOnItem> stretches;
};

void widen(Box& box, Point p) {
    box = {{std::min(box.low.x, p.x), std::min(box.low.y, p.y)},
           {std::max(box.high.x, p.x), std::max(box.high.y, p.y)}};
}

// Half the smaller side of the box round the ends, controls and measured points of the edges.
double widest_for(const Outline& outline) {
    Box box{outline.start, outline.start};
    for (const OutlineItem& item : outline.items) {
        widen(box, item.to);
        const EdgeItem* edge = item.as_edge();
        if (!edge) continue;
        if (const auto* cubic = std::get_if<CubicShape>(&edge->shape)) {
            for (const Point p : cubic->controls) widen(box, p);
        } else if (const auto* spline = std::get_if<SplineShape>(&edge->shape)) {
            for (const Point p : spline->through) widen(box, p);
        }
    }
    return std::min(box.high.x - box.low.x, box.high.y - box.low.y) / 2;
}

class StrandMaker {
  public:
    StrandMaker(const Piece& piece, const CuttingRequest& request)
        : piece_(piece), request_(request), widest_mm_(widest_for(piece.outline)) {}

    Strands made() {
        const Outline& outline = piece_.outline;
        widths_.resize(outline.items.size());
        out_.strands.reserve(outline.items.size());
        out_.points.reserve(2 * outline.items.size() + 64);
        if (!set_plain_widths()) {
            for (const Run& run : runs_of(outline)) set_widths(run);
        }
        // From the first edge on, so that the darts before it come to stand after the last.
        std::size_t first = 0;
        while (first < outline.items.size() && !outline.items[first].as_edge()) ++first;
        for (std::size_t k = 0; k < outline.items.size(); ++k) {
            const std::size_t item =
                first + k < outline.items.size() ? first + k : first + k - outline.items.size();
            if (outline.items[item].as_edge()) {
                add_edge(item);
            } else if (!out_.strands.empty()) {
                add_dart(item);
            }
        }
        return std::move(out_);
    }

  private:
    void refuse_bad(double width_mm, const std::string& edge) const {
        if (!(width_mm >= 0 && width_mm <= widest_mm_)) {
            throw BadWidth(piece_.name, edge, width_mm, widest_mm_);
        }
    }

    double decided(const RunWidth& stretch, const std::string& edge) {
        if (!stretch.width_mm) out_.undecided.push_back({edge, stretch.from_mm, stretch.to_mm});
        const double width_mm = stretch.width_mm.value_or(request_.undecided_mm.value_or(0));
        refuse_bad(width_mm, edge);
        return width_mm;
    }

    // Where every edge has one width of its own, no run need be measured. False if one has not.
    bool set_plain_widths() {
        const std::string* last_edge = nullptr;
        double width_mm = 0;
        for (std::size_t i = 0; i < widths_.size(); ++i) {
            const EdgeItem* edge = piece_.outline.items[i].as_edge();
            if (!edge) continue;
            if (!last_edge || *last_edge != edge->edge) {
                last_edge = &edge->edge;
                const bool is_fold = is_fold_edge(piece_, edge->edge);
                const Allowance* allowance = allowance_of(piece_, edge->edge);
                const double* plain = allowance ? std::get_if<double>(allowance) : nullptr;
                if (!is_fold && !plain) return false;
                width_mm = is_fold ? 0 : *plain;
                refuse_bad(width_mm, edge->edge);
            }
            widths_[i] = {width_mm, {}};
        }
        return true;
    }

    void set_widths(const Run& run) {
        const bool is_fold = is_fold_edge(piece_, run.edge);
        std::vector<RunWidth> along =
            is_fold ? std::vector<RunWidth>{{0, run.length, 0.0}} : widths_along(piece_, run);
        for (RunWidth& stretch : along) stretch.width_mm = decided(stretch, run.edge);
        if (along.size() == 1) {
            for (const std::size_t item : run.items) widths_[item] = {*along[0].width_mm, {}};
            return;
        }
        const std::vector<double> starts = item_distances(piece_.outline, run);
        for (std::size_t k = 0; k < run.items.size(); ++k) {
            const double end = k + 1 < starts.size() ? starts[k + 1] : run.length;
            set_item_widths(run.items[k], starts[k], end, along);
        }
    }

    void set_item_widths(std::size_t item, double start, double end, const std::vector<RunWidth>& along) {
        const double scale = end > start ? length_of_item(piece_.outline, item) / (end - start) : 1;
        std::vector<WidthOnItem>& widths = widths_[item].stretches;
        for (const RunWidth& stretch : along) {
            const bool is_on_item =
                stretch.to_mm > start + stretch_joint_mm && stretch.from_mm < end - stretch_joint_mm;
            if (!is_on_item) continue;
            if (!widths.empty() && widths.back().width_mm == *stretch.width_mm) widths.pop_back();
            widths.push_back({(stretch.to_mm - start) * scale, *stretch.width_mm});
        }
        if (widths.empty()) widths.push_back({0, *along.front().width_mm});
    }

    void add_edge(std::size_t item) {
        const EdgeItem& edge = *piece_.outline.items[item].as_edge();
        const double width_mm = widths_[item].width_mm;
        if (!widths_[item].stretches.empty()) return add_edge_in_stretches(item);
        if (std::holds_alternative<SplineShape>(edge.shape)) {
            for (const Curve& curve : curves_of_item(piece_.outline, item)) add_strand(item, curve, width_mm);
            return;
        }
        const Point start = start_of_item(piece_.outline, item);
        const Point end = piece_.outline.items[item].to;
        if (const auto* cubic = std::get_if<CubicShape>(&edge.shape))
            return add_strand(item, Cubic{{start, cubic->controls[0], cubic->controls[1], end}}, width_mm);
        add_straight(item, {start, end}, width_mm);
    }

    void add_edge_in_stretches(std::size_t item) {
        const std::vector<WidthOnItem>& widths = widths_[item].stretches;
        double passed = 0;
        std::size_t stretch = 0;
        for (Curve curve : curves_of_item(piece_.outline, item)) {
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
        Strand strand;
        strand.first_tangent = tangent_at_start(curve);
        if (squared_norm(strand.first_tangent) == 0) return;  // a curve of one point
        if (runs_on(item, strand.first_tangent, width_mm)) return lengthen_strand(curve);
        strand.item = item;
        strand.width_mm = width_mm;
        strand.end = end_of(curve);
        strand.first = out_.points.size();
        strand.last_tangent = tangent_at_end(curve);
        strand.first_detour = out_.detours.size();
        offset_onto(out_.points, curve, width_mm, cutting_line_error_mm, out_.detours);
        strand.detours = out_.detours.size() - strand.first_detour;
        finish(out_.strands.emplace_back(strand));
    }

    void add_straight(std::size_t item, const Line& line, double width_mm) {
        const Vector along = line.b - line.a;
        // Squares are safe here: an outline is at most metres wide, and a line too short for them is a point.
        const double size = std::sqrt(squared_norm(along));
        if (size == 0) return;
        Strand& strand = out_.strands.emplace_back();
        strand.first_tangent = strand.last_tangent = along / size;
        strand.item = item;
        strand.width_mm = width_mm;
        strand.end = line.b;
        strand.first = out_.points.size();
        const Vector aside = width_mm * outwards(strand.first_tangent);
        out_.points.push_back(line.a + aside);
        if (is_beside_dart(item)) out_.points.push_back(middle(line.a, line.b) + aside);
        out_.points.push_back(line.b + aside);
        finish(strand);
    }

    void finish(Strand& strand) {
        strand.last = out_.points.size() - 1;
        strand.first_kept = strand.first;
        strand.last_kept = strand.last;
        strand.first_dart = out_.darts.size();
    }

    void lengthen_strand(const Curve& curve) {
        Strand& strand = out_.strands.back();
        out_.points.pop_back();
        offset_onto(out_.points, curve, strand.width_mm, cutting_line_error_mm, out_.detours);
        strand.detours = out_.detours.size() - strand.first_detour;
        strand.last_tangent = tangent_at_end(curve);
        strand.end = end_of(curve);
        strand.last = strand.last_kept = out_.points.size() - 1;
    }

    // Such a line has its middle as a point, so that the legs at both its ends may come to it, each on its
    // own half.
    bool is_beside_dart(std::size_t item) const {
        const std::vector<OutlineItem>& items = piece_.outline.items;
        const std::size_t after = item + 1 == items.size() ? 0 : item + 1;
        const std::size_t before = item == 0 ? items.size() - 1 : item - 1;
        return items[after].as_dart() || items[before].as_dart();
    }

    void add_dart(std::size_t item) {
        out_.darts.push_back(item);
        ++out_.strands.back().darts;
    }

    const Piece& piece_;
    const CuttingRequest& request_;
    double widest_mm_;
    std::vector<ItemWidths> widths_;
    Strands out_;
};

}  // namespace

Strands strands_of(const Piece& piece, const CuttingRequest& request) {
    return StrandMaker(piece, request).made();
}

}  // namespace dartwright::cutting
