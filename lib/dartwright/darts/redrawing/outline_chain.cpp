#include "dartwright/darts/redrawing/outline_chain.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/geometry/arc_length.hpp"

namespace dartwright {
namespace {

Shape moved_shape(const Shape& shape, const Motion& motion) {
    if (const auto* cubic = std::get_if<CubicShape>(&shape)) {
        return CubicShape{{apply(motion, cubic->controls[0]), apply(motion, cubic->controls[1])}};
    }
    if (const auto* spline = std::get_if<SplineShape>(&shape)) {
        SplineShape out = *spline;
        for (Point& p : out.through) p = apply(motion, p);
        return out;
    }
    return shape;
}

Shape shape_of(const Curve& curve) {
    if (const auto* cubic = std::get_if<Cubic>(&curve)) return CubicShape{{cubic->p[1], cubic->p[2]}};
    return StraightShape{};
}

struct RankedPiece {
    std::string edge;
    double fullness = 0;
    double rank = 0;
};
ChainItem edge_piece(const Curve& curve, const RankedPiece& as) {
    return {start_of(curve), {EdgeItem{as.edge, shape_of(curve), as.fullness}, end_of(curve)}, as.rank};
}

std::vector<Curve> curves_of_chain_item(const ChainItem& item) {
    return curves_of(*item.item.as_edge(), item.start, item.item.to);
}

bool is_gathered_alike(const ChainItem& a, const ChainItem& b) {
    const double fullness_a = a.item.as_edge()->fullness;
    const double fullness_b = b.item.as_edge()->fullness;
    if (fullness_a == 0 && fullness_b == 0) return true;
    const double length_a = length(curves_of_chain_item(a).front());
    const double length_b = length(curves_of_chain_item(b).front());
    return std::abs(fullness_a * length_b - fullness_b * length_a) <= rejoin_mm * (length_a + length_b);
}

}  // namespace

Chain chain_of(const Outline& outline) {
    Chain out;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        out.push_back({start_of_item(outline, i), outline.items[i], static_cast<double>(i)});
    }
    return out;
}

Outline outline_of(Chain chain) {
    const auto first = std::min_element(
        chain.begin(), chain.end(), [](const ChainItem& a, const ChainItem& b) { return a.rank < b.rank; });
    std::rotate(chain.begin(), first, chain.end());
    Outline out;
    out.start = chain.front().start;
    for (ChainItem& each : chain) out.items.push_back(std::move(each.item));
    out.items.back().to = out.start;
    return out;
}

CutItem cut_item(const ChainItem& item, double along_mm) {
    const EdgeItem& edge = *item.item.as_edge();
    const std::vector<Curve> curves = curves_of_chain_item(item);
    double whole = 0;
    for (const Curve& curve : curves) whole += length(curve);
    CutItem out;
    double walked = 0;
    bool is_cut = false;
    const auto add = [&](Chain& to, const Curve& curve) {
        const double rank = item.rank + 0.5 * walked / whole;
        const double part = length(curve);
        to.push_back(edge_piece(curve, {edge.edge, edge.fullness * part / whole, rank}));
        walked += part;
    };
    for (std::size_t k = 0; k < curves.size(); ++k) {
        const double here = length(curves[k]);
        const double left = along_mm - walked;
        if (is_cut) {
            add(out.after, curves[k]);
        } else if (left >= here && k + 1 < curves.size()) {
            add(out.before, curves[k]);
        } else {
            const CurveHalves halves = split_at(curves[k], parameter_at(curves[k], left));
            add(out.before, halves.before);
            add(out.after, halves.after);
            is_cut = true;
        }
    }
    return out;
}

Chain run_at_start(const Chain& chain) {
    const std::string& edge = chain.front().item.as_edge()->edge;
    auto end = chain.begin();
    while (end != chain.end() && end->item.as_edge() && end->item.as_edge()->edge == edge) ++end;
    return {chain.begin(), end};
}

Chain run_at_end(const Chain& chain) {
    const std::string& edge = chain.back().item.as_edge()->edge;
    auto first = chain.end();
    while (first != chain.begin() && (first - 1)->item.as_edge() && (first - 1)->item.as_edge()->edge == edge)
        --first;
    return {first, chain.end()};
}

double length_of(const Chain& edges) {
    double sum = 0;
    for (const ChainItem& each : edges) {
        for (const Curve& curve : curves_of_chain_item(each)) sum += length(curve);
    }
    return sum;
}

ChainItem moved(const ChainItem& item, const Motion& motion) {
    ChainItem out = item;
    out.start = apply(motion, item.start);
    out.item.to = apply(motion, item.item.to);
    if (EdgeItem* edge = out.item.as_edge()) edge->shape = moved_shape(edge->shape, motion);
    if (DartItem* dart = out.item.as_dart()) {
        dart->point = apply(motion, dart->point);
        if (dart->pivot) dart->pivot = apply(motion, *dart->pivot);
        if (dart->legs) {
            for (auto& leg : *dart->legs) {
                for (Point& p : leg) p = apply(motion, p);
            }
        }
    }
    return out;
}

Chain moved(Chain chain, const Motion& motion) {
    for (ChainItem& each : chain) each = moved(each, motion);
    return chain;
}

void start_at(Chain& chain, Point start) {
    ChainItem& first = chain.front();
    if (EdgeItem* edge = first.item.as_edge()) {
        if (auto* cubic = std::get_if<CubicShape>(&edge->shape)) {
            cubic->controls[0] = cubic->controls[0] + (start - first.start);
        }
    }
    first.start = start;
}

void end_at(Chain& chain, Point end) {
    ChainItem& last = chain.back();
    if (EdgeItem* edge = last.item.as_edge()) {
        if (auto* cubic = std::get_if<CubicShape>(&edge->shape)) {
            cubic->controls[1] = cubic->controls[1] + (end - last.item.to);
        }
    }
    last.item.to = end;
}

Chain rejoined_at(Chain chain, std::size_t first) {
    const std::size_t second = (first + 1) % chain.size();
    const EdgeItem* a = chain[first].item.as_edge();
    const EdgeItem* b = chain[second].item.as_edge();
    if (first == second || !a || !b || a->edge != b->edge) return chain;
    if (std::holds_alternative<SplineShape>(a->shape) || std::holds_alternative<SplineShape>(b->shape)) {
        return chain;
    }
    const auto whole = joined(curves_of_chain_item(chain[first]).front(),
                              curves_of_chain_item(chain[second]).front(), rejoin_mm);
    if (!whole || !is_gathered_alike(chain[first], chain[second])) return chain;
    const double rank = std::min(chain[first].rank, chain[second].rank);
    chain[first] = edge_piece(*whole, {a->edge, a->fullness + b->fullness, rank});
    chain.erase(chain.begin() + static_cast<std::ptrdiff_t>(second));
    return chain;
}

}  // namespace dartwright
