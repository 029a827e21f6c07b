#include "dartwright/pages/packing.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <stdexcept>

#include "dartwright/drawing/choice.hpp"
#include "dartwright/geometry/accuracy.hpp"

namespace dartwright {

namespace {

/// A box placed: x from the left, y down from the top.
struct Lying {
    double left;
    double top;
    double right;
    double bottom;
};

bool is_apart(const Lying& a, const Lying& b, double gap_mm) {
    const double gap = gap_mm - sum_rounding_mm;
    return a.right + gap <= b.left || b.right + gap <= a.left || a.bottom + gap <= b.top ||
           b.bottom + gap <= a.top;
}

/// Columns and rows of cells, from the first to the last that a box reaches into.
struct Cells {
    std::size_t left;
    std::size_t top;
    std::size_t right;
    std::size_t bottom;
    std::size_t count() const { return (right - left + 1) * (bottom - top + 1); }
};

Cells cells_under(const Lying& box, const TileGrid& grid) {
    const auto cell = [&grid](double at, double step) {
        return static_cast<std::size_t>(std::max(0.0, std::floor((at - grid.overlap_mm / 2) / step)));
    };
    const double step_x = grid.window_width_mm - grid.overlap_mm;
    const double step_y = grid.window_height_mm - grid.overlap_mm;
    const std::size_t last_column = grid.columns - 1;
    Cells cells{std::min(cell(box.left + sum_rounding_mm, step_x), last_column),
                cell(box.top + sum_rounding_mm, step_y),
                std::min(cell(box.right - sum_rounding_mm, step_x), last_column),
                cell(box.bottom - sum_rounding_mm, step_y)};
    cells.right = std::max(cells.right, cells.left);
    cells.bottom = std::max(cells.bottom, cells.top);
    return cells;
}

std::vector<double> sorted_once(std::vector<double> places) {
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end()), places.end());
    return places;
}

class Packer {
  public:
    explicit Packer(const PackRequest& request) : request_(request) {}

    Point place(const Extent& size) {
        std::optional<Lying> best;
        Cost best_cost{};
        const std::vector<double> rows = tops();
        for (const double left : lefts()) {
            if (left + size.width_mm > request_.width_mm + sum_rounding_mm) break;
            for (const double top : rows) {
                const Lying box{left, top, left + size.width_mm, top + size.height_mm};
                const Cost cost = cost_of(box);
                if ((best && cost >= best_cost) || !is_free(box)) continue;
                best = box;
                best_cost = cost;
            }
        }
        if (!best) throw std::invalid_argument("a box is wider than the sheet");
        take(*best);
        return {best->left, -best->top};
    }

  private:
    /// Pages that are new, pages to be joined if that is asked, how far down the sheet then reaches, and the
    /// place; in steps, so that of places equally good the first is taken.
    using Cost = std::array<double, 5>;

    Cost cost_of(const Lying& box) const {
        double fresh = 0;
        double joints = 0;
        if (request_.grid) {
            const Cells cells = cells_under(box, *request_.grid);
            if (request_.is_undivided) joints = static_cast<double>(cells.count());
            for (std::size_t row = cells.top; row <= cells.bottom; ++row)
                for (std::size_t column = cells.left; column <= cells.right; ++column)
                    fresh += is_opened(row, column) ? 0 : 1;
        }
        return {fresh, joints, in_steps(std::max(bottom_, box.bottom)), in_steps(box.top),
                in_steps(box.left)};
    }

    bool is_opened(std::size_t row, std::size_t column) const {
        const std::size_t cell = row * request_.grid->columns + column;
        return cell < opened_.size() && opened_[cell];
    }

    std::vector<double> lefts() const {
        std::vector<double> found{0};
        for (const Lying& box : lying_) found.push_back(box.right + request_.gap_mm);
        if (request_.grid) {
            const double step = request_.grid->window_width_mm - request_.grid->overlap_mm;
            for (double x = step; x < request_.width_mm; x += step)
                found.push_back(x + request_.grid->overlap_mm / 2);
        }
        return sorted_once(std::move(found));
    }

    std::vector<double> tops() const {
        std::vector<double> found{0};
        for (const Lying& box : lying_) found.push_back(box.bottom + request_.gap_mm);
        if (request_.grid) {
            const double step = request_.grid->window_height_mm - request_.grid->overlap_mm;
            for (double y = step; y < bottom_ + step; y += step)
                found.push_back(y + request_.grid->overlap_mm / 2);
        }
        return sorted_once(std::move(found));
    }

    bool is_free(const Lying& box) const {
        return std::all_of(lying_.begin(), lying_.end(),
                           [&](const Lying& other) { return is_apart(box, other, request_.gap_mm); });
    }

    void take(const Lying& box) {
        lying_.push_back(box);
        bottom_ = std::max(bottom_, box.bottom);
        if (!request_.grid) return;
        const Cells cells = cells_under(box, *request_.grid);
        const std::size_t columns = request_.grid->columns;
        opened_.resize(std::max(opened_.size(), (cells.bottom + 1) * columns));
        for (std::size_t row = cells.top; row <= cells.bottom; ++row)
            for (std::size_t column = cells.left; column <= cells.right; ++column)
                opened_[row * columns + column] = true;
    }

    const PackRequest& request_;
    std::vector<Lying> lying_;
    std::vector<bool> opened_;  ///< row by row
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
