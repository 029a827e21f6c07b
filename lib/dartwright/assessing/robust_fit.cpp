#include "dartwright/assessing/robust_fit.hpp"

#include <algorithm>
#include <cmath>

namespace dartwright {
namespace {

/// Places nearer than this weigh alike, mm. Smaller: more rounds for what no hand draws; larger: a moved
/// corner draws the rest with it by so much.
constexpr double alike_mm = 1e-4;
/// Each round halves what a moved corner still draws the fit aside, or better.
constexpr int most_rounds = 40;
/// The fit has come to rest when a round moves it by less than this, mm.
constexpr double at_rest_mm = 1e-7;

struct Middles {
    Vector from;
    Vector to;
};
Middles middles(const PlacePairs& places, const std::vector<double>& weights) {
    Middles out;
    double sum = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        out.from = out.from + weights[i] * (places.from[i] - Point{});
        out.to = out.to + weights[i] * (places.to[i] - Point{});
        sum += weights[i];
    }
    return {out.from / sum, out.to / sum};
}

// The weighted least sum of squares in closed form: the turn that brings the directions from the middle
// together on the whole.
Motion weighted_fit(const PlacePairs& places, const std::vector<double>& weights) {
    const Middles middle = middles(places, weights);
    double along = 0;
    double across = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        const Vector a = places.from[i] - Point{} - middle.from;
        const Vector b = places.to[i] - Point{} - middle.to;
        along += weights[i] * dot(a, b);
        across += weights[i] * cross(a, b);
    }
    const double size = std::hypot(along, across);
    Motion out;
    if (size > 0) {
        out.cosine = along / size;
        out.sine = across / size;
    }
    out.shift = middle.to - apply(Turn{out.cosine, out.sine}, middle.from);
    return out;
}

}  // namespace

Motion robust_fit(const PlacePairs& places) {
    if (places.from.empty()) return {};
    std::vector<double> weights(places.from.size(), 1);
    Motion motion = weighted_fit(places, weights);
    for (int round = 0; round < most_rounds; ++round) {
        double most = 0;
        for (std::size_t i = 0; i < weights.size(); ++i) {
            const double off = distance(apply(motion, places.from[i]), places.to[i]);
            most = std::max(most, off);
            weights[i] = 1 / std::max(off, alike_mm);
        }
        if (most <= alike_mm) break;
        const Motion next = weighted_fit(places, weights);
        double moved = 0;
        for (const Point p : {places.from.front(), places.from[places.from.size() / 2]})
            moved = std::max(moved, distance(apply(motion, p), apply(next, p)));
        motion = next;
        if (moved < at_rest_mm) break;
    }
    return motion;
}

}  // namespace dartwright
