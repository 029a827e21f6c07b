#include "dartwright/cutting/trimmed_places.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "dartwright/geometry/arc_length.hpp"
#include "dartwright/geometry/closest.hpp"
#include "dartwright/geometry/polygon_index.hpp"
#include "dartwright/pattern/run.hpp"

namespace dartwright::cutting {
namespace {

struct Stretch {
    double from_mm = 0;
    double to_mm = 0;
};

/// Longer gaps than rounding and the nudges of the clean-up make.
constexpr double least_gap_mm = 100 * cutting_line_error_mm / 1000;

Line side_of(const SidedLine& raw, std::size_t side) {
    return {raw.points[side], raw.points[side + 1 == raw.size() ? 0 : side + 1]};
}

/// What of each side of the raw line the cleaned line goes along, by the distance from the side's start.
std::vector<std::vector<Stretch>> kept_stretches(const SidedLine& raw, const SidedLine& cleaned) {
    std::vector<std::vector<Stretch>> kept(raw.size());
    for (std::size_t i = 0; i < cleaned.size(); ++i) {
        const std::size_t side = cleaned.sides[i].item;
        const Line line = side_of(raw, side);
        const double length = distance(line.a, line.b);
        if (length == 0) continue;
        const Vector along = unit(line.b - line.a);
        const auto at = [&](Point p) { return std::clamp(dot(along, p - line.a), 0.0, length); };
        const Point next = cleaned.points[i + 1 == cleaned.size() ? 0 : i + 1];
        kept[side].push_back({at(cleaned.points[i]), at(next)});
    }
    return kept;
}

/// What lies between the stretches, and before and after them.
std::vector<Stretch> gaps_between(std::vector<Stretch> kept, double length_mm) {
    std::sort(kept.begin(), kept.end(),
              [](const Stretch& a, const Stretch& b) { return a.from_mm < b.from_mm; });
    std::vector<Stretch> gaps;
    double reached = 0;
    const auto add_up_to = [&](double to) {
        if (to - reached > least_gap_mm) gaps.push_back({reached, to});
    };
    for (const Stretch& each : kept) {
        add_up_to(each.from_mm);
        reached = std::max(reached, each.to_mm);
    }
    add_up_to(length_mm);
    return gaps;
}

/// Whether cloth lies beyond the part of the raw line, rather than another line in its place, which takes
/// nothing from its edge.
bool is_covered(const PolygonIndex& cleaned, const Line& part) {
    const Vector out = -perpendicular(unit(part.b - part.a));
    constexpr std::array<double, 3> shares{0.25, 0.5, 0.75};
    return std::any_of(shares.begin(), shares.end(), [&](double share) {
        const Point beyond = between(part.a, part.b, share) + 2 * cutting_line_error_mm * out;
        return cleaned.where(beyond) == Where::inside;
    });
}

/// A stretch of a run, and how much of the cutting line beside it was taken away.
struct Taken {
    Stretch stretch;
    double line_mm = 0;
};

class Places {
  public:
    explicit Places(const Piece& piece) : outline_(piece.outline), runs_(runs_of(piece.outline)) {
        for (std::size_t r = 0; r < runs_.size(); ++r) {
            const std::vector<double> starts = item_distances(outline_, runs_[r]);
            for (std::size_t k = 0; k < starts.size(); ++k) run_of_item_[runs_[r].items[k]] = {r, starts[k]};
        }
        taken_.resize(runs_.size());
        taken_at_end_.resize(runs_.size());
    }

    /// A part of the raw line, and to what it belongs.
    void add(const CutSide& side, const Line& part) {
        const std::size_t item = side.item;
        const double line_mm = distance(part.a, part.b);
        const auto run = run_of_item_.find(item);
        if (run == run_of_item_.end()) {
            taken_at_dart_[item] += line_mm;
            return;
        }
        if (item == runs_[run->second.run].items.back() && is_at_end(side, part)) {
            taken_at_end_[run->second.run] += line_mm;
            return;
        }
        const double a = run->second.starts_mm + distance_to(item, part.a);
        const double b = run->second.starts_mm + distance_to(item, part.b);
        taken_[run->second.run].push_back({{std::min(a, b), std::max(a, b)}, line_mm});
    }

    std::vector<TrimmedPlace> all() {
        std::vector<std::vector<TrimmedPlace>> of_runs(runs_.size());
        for (std::size_t r = 0; r < runs_.size(); ++r) add_places(of_runs[r], runs_[r], taken_[r]);
        std::vector<TrimmedPlace> places;
        for (std::size_t r = 0; r < runs_.size(); ++r) {
            places.insert(places.end(), of_runs[r].begin(), of_runs[r].end());
            // A corner is a place of its own where neither of its edges is one up to it.
            const double length = runs_[r].length;
            const auto& next = of_runs[r + 1 == runs_.size() ? 0 : r + 1];
            const bool is_said = (!of_runs[r].empty() && of_runs[r].back().to_mm > length - one_place_mm) ||
                                 (!next.empty() && next.front().from_mm < one_place_mm);
            if (taken_at_end_[r] >= seen_mm && !is_said)
                places.push_back(
                    {runs_[r].edge, "", length, length, end_point(outline_, runs_[r], RunEnd::end)});
        }
        for (const auto& [item, line_mm] : taken_at_dart_) {
            if (line_mm < seen_mm) continue;
            const Legs legs = legs_of_item(outline_, item);
            places.push_back({"", outline_.items[item].as_dart()->name, 0, 0,
                              middle(start_of(legs.to_point), end_of(legs.from_point))});
        }
        return places;
    }

  private:
    /// Whether the part belongs to the corner after the side's item: a step does that goes out from there,
    /// and not one where the edge bends in.
    bool is_at_end(const CutSide& side, const Line& part) const {
        if (side.part != CutPart::step) return side.part == CutPart::corner;
        const Point end = outline_.items[side.item].to;
        return std::abs(cross(unit(part.b - part.a), end - part.a)) < least_gap_mm;
    }

    /// The sewn distance from the item's start to its point that is nearest.
    double distance_to(std::size_t item, Point p) const {
        double before = 0;
        double nearest = INFINITY;
        double along = 0;
        for (const Curve& curve : curves_of_item(outline_, item)) {
            const ClosestPoint closest = closest_point(curve, p);
            if (closest.distance < nearest) {
                nearest = closest.distance;
                along = before + length(part_between(curve, 0, closest.parameter));
            }
            before += length(curve);
        }
        return before > 0 ? along / before * sewn_length_of_item(outline_, item) : 0;
    }

    void add_places(std::vector<TrimmedPlace>& places, const Run& run, std::vector<Taken>& taken) const {
        std::sort(taken.begin(), taken.end(),
                  [](const Taken& a, const Taken& b) { return a.stretch.from_mm < b.stretch.from_mm; });
        for (std::size_t i = 0; i < taken.size();) {
            Taken one = taken[i++];
            for (; i < taken.size() && taken[i].stretch.from_mm <= one.stretch.to_mm + one_place_mm; ++i) {
                one.stretch.to_mm = std::max(one.stretch.to_mm, taken[i].stretch.to_mm);
                one.line_mm += taken[i].line_mm;
            }
            if (one.line_mm < seen_mm) continue;
            const double middle_mm = (one.stretch.from_mm + one.stretch.to_mm) / 2;
            places.push_back({run.edge, "", one.stretch.from_mm, one.stretch.to_mm,
                              place_on_run(outline_, run, middle_mm).point});
        }
    }

    struct OfRun {
        std::size_t run = 0;
        double starts_mm = 0;
    };
    const Outline& outline_;
    std::vector<Run> runs_;
    std::map<std::size_t, OfRun> run_of_item_;
    std::vector<std::vector<Taken>> taken_;
    std::vector<double> taken_at_end_;  ///< of the corner that follows each run
    std::map<std::size_t, double> taken_at_dart_;
};

}  // namespace

std::vector<TrimmedPlace> trimmed_places(const Piece& piece, const SidedLine& raw, const SidedLine& cleaned) {
    const std::vector<std::vector<Stretch>> kept = kept_stretches(raw, cleaned);
    const PolygonIndex index(cleaned.points);
    Places places(piece);
    for (std::size_t side = 0; side < raw.size(); ++side) {
        const Line line = side_of(raw, side);
        const double length = distance(line.a, line.b);
        if (length == 0) continue;
        for (const Stretch& gap : gaps_between(kept[side], length)) {
            const Line part{between(line.a, line.b, gap.from_mm / length),
                            between(line.a, line.b, gap.to_mm / length)};
            if (is_covered(index, part)) places.add(raw.sides[side], part);
        }
    }
    return places.all();
}

}  // namespace dartwright::cutting
