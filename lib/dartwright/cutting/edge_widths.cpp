// Covered by tests/cutting/cutting_line_test.cpp and cutting_line_property_test.cpp.
#include "dartwright/cutting/edge_widths.hpp"

#include <algorithm>

#include "dartwright/pattern/allowance.hpp"

namespace dartwright::cutting {
namespace {

// Round the ends, controls and measured points of the edges.
class EdgesBox {
  public:
    explicit EdgesBox(Point start) : low_(start), high_(start) {}

    void widen(Point p) {
        low_ = {std::min(low_.x, p.x), std::min(low_.y, p.y)};
        high_ = {std::max(high_.x, p.x), std::max(high_.y, p.y)};
    }
    void widen(const Shape& shape) {
        if (const auto* cubic = std::get_if<CubicShape>(&shape)) {
            for (const Point p : cubic->controls) widen(p);
        } else if (const auto* spline = std::get_if<SplineShape>(&shape)) {
            for (const Point p : spline->through) widen(p);
        }
    }
    double smaller_side() const { return std::min(high_.x - low_.x, high_.y - low_.y); }

  private:
    Point low_;
    Point high_;
};

class WidthMaker {
  public:
    WidthMaker(const Piece& piece, const CuttingRequest& request) : piece_(piece), request_(request) {}

    EdgeWidths made() {
        number_runs();
        if (!set_plain_widths()) {
            std::size_t number = 0;
            for (const Run& run : runs_of(piece_.outline)) set_widths(run, number++);
        }
        return std::move(out_);
    }

  private:
    // In one walk, for the items of an outline are large.
    void number_runs() {
        const Outline& outline = piece_.outline;
        out_.items.reserve(outline.items.size());
        names_.reserve(16);
        EdgesBox box(outline.start);
        for (const OutlineItem& item : outline.items) {
            box.widen(item.to);
            const EdgeItem* edge = item.as_edge();
            if (edge) {
                if (!std::holds_alternative<StraightShape>(edge->shape)) {
                    box.widen(edge->shape);
                    ++out_.curved;
                }
                if (names_.empty() || *names_.back() != edge->edge) names_.push_back(&edge->edge);
            }
            out_.has_darts = out_.has_darts || !edge;
            out_.items.push_back({names_.empty() ? 0 : names_.size() - 1, 0});
        }
        widest_mm_ = box.smaller_side() / 2;
        join_over_start();
        out_.runs = names_.size();
    }

    // The last stretch of one name and the first are one run.
    void join_over_start() {
        if (names_.size() < 2 || *names_.front() != *names_.back()) return;
        const std::size_t last = names_.size() - 1;
        for (std::size_t i = out_.items.size(); i-- > 0 && out_.items[i].run == last;) out_.items[i].run = 0;
        names_.pop_back();
    }

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
        std::vector<double> widths;
        widths.reserve(names_.size());
        for (const std::string* name : names_) {
            const bool is_fold = is_fold_edge(piece_, *name);
            const Allowance* allowance = allowance_of(piece_, *name);
            const double* plain = allowance ? std::get_if<double>(allowance) : nullptr;
            if (!is_fold && !plain) return false;
            widths.push_back(is_fold ? 0 : *plain);
            refuse_bad(widths.back(), *name);
        }
        if (widths.empty()) return true;
        for (ItemWidth& item : out_.items) item.width_mm = widths[item.run];
        return true;
    }

    void set_widths(const Run& run, std::size_t number) {
        for (const std::size_t item : run.items) out_.items[item].run = number;
        const bool is_fold = is_fold_edge(piece_, run.edge);
        std::vector<RunWidth> along =
            is_fold ? std::vector<RunWidth>{{0, run.length, 0.0}} : widths_along(piece_, run);
        for (RunWidth& stretch : along) stretch.width_mm = decided(stretch, run.edge);
        if (along.size() == 1) {
            for (const std::size_t item : run.items) out_.items[item].width_mm = *along[0].width_mm;
            return;
        }
        out_.stretches.resize(out_.items.size());
        const std::vector<double> starts = item_distances(piece_.outline, run);
        for (std::size_t k = 0; k < run.items.size(); ++k) {
            const double end = k + 1 < starts.size() ? starts[k + 1] : run.length;
            set_item_widths(run.items[k], starts[k], end, along);
        }
    }

    void set_item_widths(std::size_t item, double start, double end, const std::vector<RunWidth>& along) {
        const double scale = end > start ? length_of_item(piece_.outline, item) / (end - start) : 1;
        std::vector<WidthOnItem>& widths = out_.stretches[item];
        for (const RunWidth& stretch : along) {
            const bool is_on_item =
                stretch.to_mm > start + stretch_joint_mm && stretch.from_mm < end - stretch_joint_mm;
            if (!is_on_item) continue;
            if (!widths.empty() && widths.back().width_mm == *stretch.width_mm) widths.pop_back();
            widths.push_back({(stretch.to_mm - start) * scale, *stretch.width_mm});
        }
        if (widths.empty()) widths.push_back({0, *along.front().width_mm});
    }

    const Piece& piece_;
    const CuttingRequest& request_;
    double widest_mm_ = 0;
    std::vector<const std::string*> names_;  // of the runs
    EdgeWidths out_;
};

}  // namespace

EdgeWidths edge_widths(const Piece& piece, const CuttingRequest& request) {
    return WidthMaker(piece, request).made();
}

}  // namespace dartwright::cutting
