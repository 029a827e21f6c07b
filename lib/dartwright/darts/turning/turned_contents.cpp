#include "dartwright/darts/turning/turned_contents.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <optional>

namespace dartwright {
namespace {

/// Ends of lines of one name count as meeting within this, mm: rounding of two turns of a piece of metres.
constexpr double mark_joint_mm = 1e-7;

double distance_to(const std::vector<Point>& polygon, Point p) {
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Point a = polygon[i];
        const Vector along = polygon[(i + 1) % polygon.size()] - a;
        const double t = squared_norm(along) > 0 ? dot(p - a, along) / squared_norm(along) : 0;
        least = std::min(least, distance(p, a + std::clamp(t, 0.0, 1.0) * along));
    }
    return least;
}

// Parameters at which the segment passes through an inner border, in order. A line that ends on the border,
// as one that was divided there does, is not divided again by rounding.
std::vector<double> border_crossings(const Segment& line, const std::vector<Segment>& borders) {
    std::vector<double> out;
    const Vector along = line.b - line.a;
    const double end_share = mark_joint_mm / norm(along);
    for (const Segment& border : borders) {
        const Vector across = border.b - border.a;
        const double turn = cross(along, across);
        if (turn == 0) continue;
        const double t = cross(border.a - line.a, across) / turn;
        const double u = cross(border.a - line.a, along) / turn;
        if (t > end_share && t < 1 - end_share && u >= 0 && u <= 1) out.push_back(t);
    }
    std::sort(out.begin(), out.end());
    return out;
}

std::vector<Point> with_crossings(const std::vector<Point>& line, const std::vector<Segment>& borders) {
    std::vector<Point> out{line.front()};
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        for (const double t : border_crossings({line[i], line[i + 1]}, borders)) {
            out.push_back(between(line[i], line[i + 1], t));
        }
        out.push_back(line[i + 1]);
    }
    return out;
}

std::vector<Point> turned(std::vector<Point> line, const Motion& motion) {
    for (Point& p : line) p = apply(motion, p);
    return line;
}

// A point that only marked a crossing, on one side of the part altogether, is taken out again.
std::vector<Point> without_points_added(const std::vector<Point>& line, const std::vector<Point>& original) {
    std::vector<Point> out;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const bool is_end = i == 0 || i + 1 == line.size();
        const bool is_own = std::find(original.begin(), original.end(), line[i]) != original.end();
        if (is_end || is_own) out.push_back(line[i]);
    }
    return out;
}

enum class Lies { held, turning, wedge };

Lies where_it_lies(const TurningPart& part, Point p) {
    for (const std::vector<Point>& wedge : part.wedges) {
        if (where_in_polygon(wedge, p) == Where::inside) return Lies::wedge;
    }
    return is_turning(part, p) ? Lies::turning : Lies::held;
}

/// In the order along the line that was divided.
struct LineOfPart {
    std::vector<Point> points;
    bool is_turning = false;
};

std::vector<LineOfPart> lines_of_parts(const std::vector<Point>& original, const TurningPart& part) {
    const std::vector<Point> line = with_crossings(original, part.inner_borders);
    std::vector<LineOfPart> out;
    std::vector<Point> current{line.front()};
    std::optional<Lies> lies;
    const auto finish = [&] {
        const std::vector<Point> plain = without_points_added(current, original);
        if (lies != Lies::wedge) out.push_back({plain, lies == Lies::turning});
    };
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const Lies here = where_it_lies(part, middle(line[i], line[i + 1]));
        if (lies && *lies != here) {
            finish();
            current = {line[i]};
        }
        lies = here;
        current.push_back(line[i + 1]);
    }
    finish();
    return out;
}

// Judged by how far the joint lies off the straight line: the direction of a very short part means nothing.
bool runs_on_straight(Point before, Point joint, Point after) {
    const Vector along = unit(after - before);
    return dot(joint - before, along) >= 0 && dot(after - joint, along) >= 0 &&
           std::abs(cross(along, joint - before)) <= mark_joint_mm;
}

std::optional<std::vector<Point>> joined_lines(const std::vector<Point>& a, const std::vector<Point>& b) {
    if (distance(a.back(), b.front()) > mark_joint_mm) return std::nullopt;
    if (!runs_on_straight(a[a.size() - 2], a.back(), b[1])) return std::nullopt;
    std::vector<Point> out(a.begin(), a.end() - 1);
    out.insert(out.end(), b.begin() + 1, b.end());
    return out;
}

std::optional<std::vector<Point>> joined_any_way(const std::vector<Point>& a, const std::vector<Point>& b) {
    if (auto out = joined_lines(a, b)) return out;
    return joined_lines(b, a);
}

bool run_on_straight(const std::vector<Point>& a, const std::vector<Point>& b) {
    return joined_any_way(a, b).has_value();
}

/// A line of a part, and the mark that it is of.
struct TurnedLine {
    std::vector<Point> points;
    std::size_t mark = 0;  ///< among the marks before
};

// What a piece has as two lines that run on into each other was drawn so, and stays two: only lines that did
// not run on before are joined, or those of one mark.
bool may_join(const TurnedLine& a, const TurnedLine& b, const std::vector<Mark>& before) {
    if (a.mark == b.mark) return true;
    if (before[a.mark].name != before[b.mark].name) return false;
    return !run_on_straight(std::get<LineMark>(before[a.mark].what).points,
                            std::get<LineMark>(before[b.mark].what).points);
}

/// Lines by where their ends lie, on a grid so coarse that rounding reaches into one neighbour at most.
class LinesByEnds {
  public:
    explicit LinesByEnds(const std::vector<std::optional<TurnedLine>>& lines) {
        for (std::size_t i = 0; i < lines.size(); ++i) {
            if (lines[i]) add(*lines[i], i);
        }
    }
    void add(const TurnedLine& line, std::size_t index) {
        cells_[cell_of(line.points.front())].push_back(index);
        cells_[cell_of(line.points.back())].push_back(index);
    }
    /// Those with an end at either end of this one, in their order; some may be gone, or one be twice.
    std::vector<std::size_t> beside(const TurnedLine& line) const {
        std::vector<std::size_t> out;
        for (const Point end : {line.points.front(), line.points.back()}) {
            const Cell cell = cell_of(end);
            for (double dx : {-1.0, 0.0, 1.0}) {
                for (double dy : {-1.0, 0.0, 1.0}) {
                    const auto found = cells_.find({cell.first + dx, cell.second + dy});
                    if (found != cells_.end())
                        out.insert(out.end(), found->second.begin(), found->second.end());
                }
            }
        }
        std::sort(out.begin(), out.end());
        return out;
    }

  private:
    using Cell = std::pair<double, double>;
    static Cell cell_of(Point p) {
        constexpr double cell_mm = 4 * mark_joint_mm;
        return {std::floor(p.x / cell_mm), std::floor(p.y / cell_mm)};
    }
    std::map<Cell, std::vector<std::size_t>> cells_;
};

// Joins to the line at `index` one that may be, or says that there is none.
bool join_one(std::vector<std::optional<TurnedLine>>& lines, std::size_t index, LinesByEnds& by_ends,
              const std::vector<Mark>& before) {
    TurnedLine& line = *lines[index];
    for (const std::size_t other : by_ends.beside(line)) {
        if (other == index || !lines[other] || !may_join(line, *lines[other], before)) continue;
        auto whole = joined_any_way(line.points, lines[other]->points);
        if (!whole) continue;
        line.points = std::move(*whole);
        lines[other].reset();
        by_ends.add(line, index);
        return true;
    }
    return false;
}

// By mark: drill marks have no line.
void join_lines(std::vector<std::optional<TurnedLine>>& lines, const std::vector<Mark>& before) {
    LinesByEnds by_ends(lines);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        while (lines[i] && join_one(lines, i, by_ends, before)) {
        }
    }
}

}  // namespace

double distance_outside(const std::vector<Point>& polygon, Point p) {
    return where_in_polygon(polygon, p) == Where::inside ? 0 : distance_to(polygon, p);
}

bool is_turning(const TurningPart& part, Point p) {
    const Where in_part = where_in_polygon(part.polygon, p);
    if (in_part == Where::inside) return true;
    const Where in_held = where_in_polygon(part.held_polygon, p);
    if (in_held == Where::inside) return false;
    if (in_part != in_held) return in_part == Where::boundary;
    if (in_part == Where::boundary) return false;
    return distance_to(part.polygon, p) < distance_to(part.held_polygon, p);
}

MarksOfParts marks_of_parts(const std::vector<Mark>& marks, const TurningPart& part) {
    MarksOfParts out;
    for (const Mark& mark : marks) {
        if (const auto* drill = std::get_if<DrillMark>(&mark.what)) {
            const bool is_on_both = where_in_polygon(part.polygon, drill->at) == Where::boundary &&
                                    where_in_polygon(part.held_polygon, drill->at) == Where::boundary;
            const bool is_in_turning = is_turning(part, drill->at);
            if (is_in_turning || is_on_both) out.turning.push_back(mark);
            if (!is_in_turning) out.held.push_back(mark);
            continue;
        }
        for (LineOfPart& line : lines_of_parts(std::get<LineMark>(mark.what).points, part)) {
            auto& marks_of_part = line.is_turning ? out.turning : out.held;
            marks_of_part.push_back({LineMark{std::move(line.points)}, mark.name});
        }
    }
    return out;
}

std::vector<Mark> turned_marks(const std::vector<Mark>& marks, const TurningPart& part) {
    std::vector<Mark> turned_ones;
    std::vector<std::optional<TurnedLine>> lines;
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const Mark& mark = marks[i];
        if (const auto* drill = std::get_if<DrillMark>(&mark.what)) {
            const Point at = is_turning(part, drill->at) ? apply(part.motion, drill->at) : drill->at;
            turned_ones.push_back({DrillMark{at}, mark.name});
            lines.emplace_back();
            continue;
        }
        for (LineOfPart& line : lines_of_parts(std::get<LineMark>(mark.what).points, part)) {
            if (line.is_turning) line.points = turned(std::move(line.points), part.motion);
            turned_ones.push_back({LineMark{}, mark.name});
            lines.push_back(TurnedLine{std::move(line.points), i});
        }
    }
    join_lines(lines, marks);
    std::vector<Mark> out;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        auto* line = std::get_if<LineMark>(&turned_ones[i].what);
        if (line && !lines[i]) continue;
        if (line) line->points = std::move(lines[i]->points);
        out.push_back(std::move(turned_ones[i]));
    }
    return out;
}

std::string crossed_double_dart(const Piece& piece, const TurningPart& part) {
    for (const DoubleDart& dart : piece.double_darts) {
        const std::vector<Point> kite{dart.from, dart.widest[0], dart.to, dart.widest[1]};
        for (const Segment& border : part.inner_borders) {
            for (std::size_t i = 0; i < kite.size(); ++i) {
                if (meeting_of(border, {kite[i], kite[(i + 1) % kite.size()]}) != Meeting::none)
                    return dart.name;
            }
        }
    }
    return {};
}

std::vector<DoubleDart> turned_double_darts(std::vector<DoubleDart> darts, const TurningPart& part) {
    for (DoubleDart& dart : darts) {
        if (!is_turning(part, middle(dart.widest[0], dart.widest[1]))) continue;
        dart.from = apply(part.motion, dart.from);
        dart.to = apply(part.motion, dart.to);
        for (Point& p : dart.widest) p = apply(part.motion, p);
    }
    return darts;
}

}  // namespace dartwright
