#include "dartwright/pages/seen_parts.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include "dartwright/drawing/text_box.hpp"
#include "dartwright/geometry/arc_length.hpp"

namespace dartwright {

namespace {

std::optional<Box> box_around(const DrawnPath& path) {
    std::optional<Box> box;
    for (const Curve& curve : path.curves)
        box = box ? joined(*box, dartwright::box_around(curve)) : dartwright::box_around(curve);
    return box;
}

/// A line lies on either side of its path.
double reach_of_line(const DrawnPath& path) {
    return path.stroke ? path.stroke->width_mm : 1;
}

/// Letters reach somewhat out of their box.
std::optional<Box> box_seen(const DrawnItem& item) {
    if (const DrawnText* text = std::get_if<DrawnText>(&item))
        return grown(upright_box(box_of(*text)), text->size_mm);
    const DrawnPath& path = std::get<DrawnPath>(item);
    const std::optional<Box> box = box_around(path);
    return box ? std::optional(grown(*box, reach_of_line(path))) : std::nullopt;
}

/// A line that is not filled, of which stretches can be drawn without the rest.
class DividedLine {
  public:
    static bool is_one(const DrawnItem& item) {
        const DrawnPath* path = std::get_if<DrawnPath>(&item);
        return path && path->stroke && !path->fill && path->curves.size() > 1;
    }

    explicit DividedLine(const DrawnPath& path) : path_(path), curves_(path.curves) {
        const Point start = start_of(curves_.front());
        if (path.is_closed && end_of(curves_.back()) != start)
            curves_.push_back(Line{end_of(curves_.back()), start});
        if (!is_dashed()) return;
        walked_.push_back(0);
        for (const Curve& curve : curves_) walked_.push_back(walked_.back() + length(curve));
    }

    std::size_t size() const { return curves_.size(); }
    Box box_seen(std::size_t curve) const {
        return grown(dartwright::box_around(curves_[curve]), reach_of_line(path_));
    }

    /// The stretches of the curves that are seen, which are given in order.
    std::vector<DrawnPath> stretches(const std::vector<std::size_t>& seen) const {
        const bool is_start_seen = path_.is_closed && (seen.front() == 0 || seen.back() + 1 == size());
        // The dashes of a closed line do not go on over its start.
        if (seen.size() == size() || (is_start_seen && is_dashed())) return {path_};
        std::vector<DrawnPath> all;
        for (std::size_t k = 0; k < seen.size(); ++k) {
            if (k == 0 || seen[k] != seen[k - 1] + 1) all.push_back(begun_at(seen[k]));
            all.back().curves.push_back(curves_[seen[k]]);
        }
        if (path_.is_closed && seen.front() == 0 && seen.back() + 1 == size()) {
            std::vector<Curve>& last = all.back().curves;
            last.insert(last.end(), all.front().curves.begin(), all.front().curves.end());
            all.front().curves = std::move(last);
            all.pop_back();
        }
        return all;
    }

  private:
    bool is_dashed() const { return !path_.stroke->dash_mm.empty(); }

    DrawnPath begun_at(std::size_t curve) const {
        DrawnPath stretch{{}, false, {}, path_.stroke};
        if (!is_dashed()) return stretch;
        const std::vector<double>& dashes = path_.stroke->dash_mm;
        // Where their number is odd, every other round begins with what is left out.
        const double round = 2 * std::accumulate(dashes.begin(), dashes.end(), 0.0);
        stretch.stroke->dash_begin_mm = std::fmod(path_.stroke->dash_begin_mm + walked_[curve], round);
        return stretch;
    }

    const DrawnPath& path_;
    std::vector<Curve> curves_;  ///< with the line that closes it
    std::vector<double> walked_;
};

/// The tiles of a grid by where they are.
class TileFinder {
  public:
    TileFinder(const TileGrid& grid, const std::vector<Tile>& tiles) : grid_(grid) {
        number_.assign(grid.rows * grid.columns, none);
        for (std::size_t k = 0; k < tiles.size(); ++k) {
            number_[tiles[k].row * grid.columns + tiles[k].column] = k;
            windows_.push_back(window_of(grid, tiles[k]));
        }
    }

    /// Calls with the number of each tile of which the window meets the box.
    template <class Take>
    void each_meeting(const Box& box, const Take& take) const {
        const Range columns = {steps(box.low.x - grid_.window_width_mm, grid_.window_width_mm, grid_.columns),
                               steps(box.high.x, grid_.window_width_mm, grid_.columns)};
        const Range rows = {steps(-box.high.y - grid_.window_height_mm, grid_.window_height_mm, grid_.rows),
                            steps(-box.low.y, grid_.window_height_mm, grid_.rows)};
        for (std::size_t row = rows.first; row <= rows.last; ++row)
            for (std::size_t column = columns.first; column <= columns.last; ++column) {
                const std::size_t number = number_[row * grid_.columns + column];
                if (number != none && is_meeting(box, windows_[number])) take(number);
            }
    }

  private:
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    struct Range {
        std::size_t first;
        std::size_t last;
    };

    /// How many whole steps of the grid a distance from its upper left corner is, within the grid. Rounding
    /// matters not: the windows of the tiles overlap or touch, and each is asked.
    std::size_t steps(double distance_mm, double window_mm, std::size_t count) const {
        const double step = window_mm - grid_.overlap_mm;
        const double most = static_cast<double>(count - 1);
        // A window that is all overlap begins where its neighbour does.
        if (!(step > 0)) return distance_mm < 0 ? 0 : count - 1;
        return static_cast<std::size_t>(std::clamp(std::floor(distance_mm / step), 0.0, most));
    }

    TileGrid grid_;
    std::vector<Box> windows_;
    std::vector<std::size_t> number_;
};

using PartsSeen = std::map<std::size_t, DrawnGroup>;

DrawnGroup without_contents(const DrawnGroup& group) {
    DrawnGroup bare{group.name, {}, {}};
    bare.clip = group.clip;
    return bare;
}

/// What is seen of a group through each of several windows, by their numbers; `finder` says which a box
/// meets.
template <class Finder>
PartsSeen parts_of(const DrawnGroup& group, const Finder& finder) {
    PartsSeen parts;
    const auto at = [&](std::size_t window) -> DrawnGroup& {
        return parts.try_emplace(window, without_contents(group)).first->second;
    };
    for (const DrawnItem& item : group.items) {
        if (DividedLine::is_one(item)) {
            const DividedLine line(std::get<DrawnPath>(item));
            std::map<std::size_t, std::vector<std::size_t>> seen;
            for (std::size_t curve = 0; curve < line.size(); ++curve)
                finder.each_meeting(line.box_seen(curve),
                                    [&](std::size_t window) { seen[window].push_back(curve); });
            for (const auto& [window, curves] : seen)
                for (DrawnPath& stretch : line.stretches(curves))
                    at(window).items.push_back(std::move(stretch));
        } else if (const std::optional<Box> box = box_seen(item)) {
            finder.each_meeting(*box, [&](std::size_t window) { at(window).items.push_back(item); });
        }
    }
    for (const DrawnGroup& inner : group.groups)
        for (auto& [window, part] : parts_of(inner, finder)) at(window).groups.push_back(std::move(part));
    return parts;
}

/// One window.
struct LoneWindow {
    Box window;
    template <class Take>
    void each_meeting(const Box& box, const Take& take) const {
        if (is_meeting(box, window)) take(std::size_t{0});
    }
};

}  // namespace

bool is_meeting(const Box& a, const Box& b) {
    return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

Box grown(const Box& box, double by_mm) {
    return {{box.low.x - by_mm, box.low.y - by_mm}, {box.high.x + by_mm, box.high.y + by_mm}};
}

Box box_around(const Curve& curve) {
    const auto around = [](Point p, Point q) {
        return Box{{std::min(p.x, q.x), std::min(p.y, q.y)}, {std::max(p.x, q.x), std::max(p.y, q.y)}};
    };
    if (const Cubic* cubic = std::get_if<Cubic>(&curve))
        return joined(around(cubic->p[0], cubic->p[1]), around(cubic->p[2], cubic->p[3]));
    const Line& line = std::get<Line>(curve);
    return around(line.a, line.b);
}

DrawnGroup seen_through(const DrawnGroup& group, const Box& window) {
    PartsSeen parts = parts_of(group, LoneWindow{window});
    return parts.empty() ? without_contents(group) : std::move(parts.begin()->second);
}

std::vector<DrawnGroup> seen_on_tiles(const DrawnGroup& group, const TileGrid& grid,
                                      const std::vector<Tile>& tiles) {
    std::vector<DrawnGroup> seen(tiles.size(), without_contents(group));
    for (auto& [tile, part] : parts_of(group, TileFinder(grid, tiles))) seen[tile] = std::move(part);
    return seen;
}

std::vector<std::vector<DrawnGroup>> pieces_seen(const PrintSheet& sheet) {
    std::vector<std::vector<DrawnGroup>> seen(sheet.tiles.size());
    for (const SheetPiece& piece : sheet.pieces) {
        std::vector<DrawnGroup> parts = seen_on_tiles(piece.drawing, sheet.grid, sheet.tiles);
        for (std::size_t k = 0; k < sheet.tiles.size(); ++k)
            if (is_meeting(piece.box, window_of(sheet.grid, sheet.tiles[k])))
                seen[k].push_back(std::move(parts[k]));
    }
    return seen;
}

}  // namespace dartwright
