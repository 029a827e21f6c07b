#include "dartwright/drawing/packing.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <stdexcept>

namespace dartwright {

namespace {

/// What comes of rounding alone is no difference of place.
constexpr double rounding_mm = 1e-6;

/// A box placed: x from the left, y down from the top.
struct Lying {
    double left;
    double top;
    double right;
    double bottom;
};

bool is_apart(const Lying& a, const Lying& b, double gap_mm) {
    const double gap = gap_mm - rounding_mm;
    return a.right + gap <= b.left || b.right + gap <= a.left || a.bottom + gap <= b.top ||
           b.bottom + gap <= a.top;
}

using Cells = std::set<std::pair<long, long>>;

/// Columns and rows of cells that the box reaches into.
Cells cells_under(const Lying& box, const TileGrid& grid) {
    const double step_x = grid.window_width_mm - grid.overlap_mm;
    const double step_y = grid.window_height_mm - grid.overlap_mm;
    const auto cell = [&grid](double at, double step) {
        return std::max(0L, static_cast<long>(std::floor((at - grid.overlap_mm / 2) / step)));
    };
    const long last_column =
        std::min(cell(box.right - rounding_mm, step_x), static_cast<long>(grid.columns) - 1);
    Cells cells;
    for (long x = cell(box.left + rounding_mm, step_x); x <= last_column; ++x)
        for (long y = cell(box.top + rounding_mm, step_y); y <= cell(box.bottom - rounding_mm, step_y); ++y)
            cells.insert({x, y});
    return cells;
}

class Packer {
  public:
    explicit Packer(const PackRequest& request) : request_(request) {}

    Point place(const Extent& size) {
        std::optional<Lying> best;
        std::array<double, 4> best_cost{};
        for (const double left : lefts()) {
            if (left + size.width_mm > request_.width_mm + rounding_mm) continue;
            for (const double top : tops()) {
                const Lying box{left, top, left + size.width_mm, top + size.height_mm};
                if (!is_free(box)) continue;
                const std::array<double, 4> cost{new_cells(box), std::max(bottom_, box.bottom), top, left};
                if (best && cost >= best_cost) continue;
                best = box;
                best_cost = cost;
            }
        }
        if (!best) throw std::invalid_argument("a box is wider than the sheet");
        take(*best);
        return {best->left, -best->top};
    }

  private:
    std::vector<double> lefts() const {
        std::vector<double> found{0};
        for (const Lying& box : lying_) found.push_back(box.right + request_.gap_mm);
        if (request_.grid) {
            const double step = request_.grid->window_width_mm - request_.grid->overlap_mm;
            for (double x = step; x < request_.width_mm; x += step)
                found.push_back(x + request_.grid->overlap_mm / 2);
        }
        return found;
    }

    std::vector<double> tops() const {
        std::vector<double> found{0};
        for (const Lying& box : lying_) found.push_back(box.bottom + request_.gap_mm);
        if (request_.grid) {
            const double step = request_.grid->window_height_mm - request_.grid->overlap_mm;
            for (double y = step; y < bottom_ + step; y += step)
                found.push_back(y + request_.grid->overlap_mm / 2);
        }
        return found;
    }

    bool is_free(const Lying& box) const {
        return std::all_of(lying_.begin(), lying_.end(),
                           [&](const Lying& other) { return is_apart(box, other, request_.gap_mm); });
    }

    double new_cells(const Lying& box) const {
        if (!request_.grid) return 0;
        const Cells cells = cells_under(box, *request_.grid);
        return static_cast<double>(std::count_if(cells.begin(), cells.end(),
                                                 [&](const auto& cell) { return opened_.count(cell) == 0; }));
    }

    void take(const Lying& box) {
        lying_.push_back(box);
        bottom_ = std::max(bottom_, box.bottom);
        if (request_.grid) opened_.merge(cells_under(box, *request_.grid));
    }

    const PackRequest& request_;
    std::vector<Lying> lying_;
    Cells opened_;
    double bottom_ = 0;
};

}  // namespace

std::vector<Point> packed(const PackRequest& request) {
    Packer packer(request);
    std::vector<Point> corners;
    for (const Extent& size : request.sizes) corners.push_back(packer.place(size));
    return corners;
}

}  // namespace dartwright
