#include <algorithm>
#include <cmath>

#include "dartwright/assessing/exercise_plan.hpp"
#include "dartwright/checks/piece_context.hpp"
#include "dartwright/comparing/placed_dart.hpp"

namespace dartwright {
double kink_deg(const Outline& outline, std::size_t item, Point centre) {
    const std::size_t count = outline.items.size();
    const std::size_t before = (item + count - 1) % count;
    const std::size_t after = (item + 1) % count;
    // In a corner, and beside another dart, the edge need not run on.
    const EdgeItem* in = outline.items[before].as_edge();
    const EdgeItem* out = outline.items[after].as_edge();
    if (!in || !out || in->edge != out->edge) return 0;
    const Point a = start_of_item(outline, item);
    const Point b = outline.items[item].to;
    if (a == centre || b == centre) return 180;
    const Turn closing = turn_between(b - centre, a - centre);
    return std::abs(degrees(
        angle_from(direction_at_end(outline, before), apply(closing, direction_at_start(outline, after)))));
}

std::vector<std::string> edges_of(const ShapedPiece& shaped) {
    std::vector<std::string> out;
    for (const Run& run : shaped.runs) out.push_back(run.edge);
    return out;
}

double around_at(const std::vector<Run>& runs, const std::vector<std::string>& edges,
                 const std::string& edge) {
    double around = 0;
    for (const std::string& each : edges) {
        if (each == edge) break;
        const Run* run = find_run(runs, each);
        around += run ? run->length : 0;
    }
    return around;
}

double sewn_around(const ShapedPiece& shaped) {
    double around = 0;
    for (const Run& run : shaped.runs) around += run.length;
    return around;
}

std::vector<StandingDart> standing_darts(const ShapedPiece& shaped, const std::vector<std::string>& edges) {
    const Outline& outline = shaped.piece.outline;
    const std::vector<PlacedDart> placed = placed_darts(outline, shaped.runs);
    std::vector<StandingDart> out;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        const DartItem* dart = outline.items[i].as_dart();
        if (!dart) continue;
        StandingDart each{i, dart->name, {}, placed[i].distance, 0, figures_of(outline, i), 0};
        if (placed[i].run) each.edge = placed[i].run->edge;
        each.around_mm = around_at(shaped.runs, edges, each.edge) + each.distance_mm;
        each.kink_deg =
            std::min(kink_deg(outline, i, each.figures.point), kink_deg(outline, i, each.figures.pivot));
        out.push_back(each);
    }
    return out;
}

}  // namespace dartwright
