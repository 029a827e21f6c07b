#include "dartwright/assessing/robust_fit.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/geometry/elementary.hpp"

namespace dartwright {
namespace {

/// Places nearer than this weigh alike, mm. Smaller: more rounds for what no hand draws; larger: a moved
/// corner draws the rest with it by so much.
constexpr double alike_mm = 1e-4;
/// Each round halves what a moved corner still draws the fit aside, or better.
constexpr int most_rounds = 40;
/// The fit has come to rest when a round moves it by less than this, mm.
constexpr double at_rest_mm = 1e-7;

// Coordinates apart, so that the compiler takes several roots at once.
struct Places {
    std::vector<double> x;
    std::vector<double> y;
    Vector middle;
    Vector at(std::size_t i) const { return {x[i], y[i]}; }
};
// About their plain middle, so that sums of their products lose nothing.
Places centred(const std::vector<Point>& places) {
    Places out;
    for (const Point p : places) out.middle = out.middle + (p - Point{}) / static_cast<double>(places.size());
    out.x.reserve(places.size());
    out.y.reserve(places.size());
    for (const Point p : places) {
        out.x.push_back(p.x - out.middle.x);
        out.y.push_back(p.y - out.middle.y);
    }
    return out;
}

struct BothPlaces {
    Places from;
    Places to;
};

// The weighted least sum of squares in closed form: the turn that brings the directions from the weighted
// middle together on the whole.
Motion weighted_fit(const BothPlaces& places, const std::vector<double>& weights) {
    double weight = 0;
    Vector from;
    Vector to;
    double along = 0;
    double across = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        const Vector a = places.from.at(i);
        const Vector b = places.to.at(i);
        weight += weights[i];
        from = from + weights[i] * a;
        to = to + weights[i] * b;
        along += weights[i] * dot(a, b);
        across += weights[i] * cross(a, b);
    }
    from = from / weight;
    to = to / weight;
    along -= weight * dot(from, to);
    across -= weight * cross(from, to);
    const double size = hypotenuse(along, across);
    Motion out;
    if (size > 0) {
        out.cosine = along / size;
        out.sine = across / size;
    }
    out.shift = to - apply(Turn{out.cosine, out.sine}, from);
    return out;
}

// Each place weighs the less the farther off it is. No place is so far off that the square leaves a double's
// range.
void weigh(const BothPlaces& places, const Motion& motion, std::vector<double>& weights) {
    const auto& [from, to] = places;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        const double x = motion.cosine * from.x[i] - motion.sine * from.y[i] + motion.shift.x - to.x[i];
        const double y = motion.sine * from.x[i] + motion.cosine * from.y[i] + motion.shift.y - to.y[i];
        const double off = std::sqrt(x * x + y * y);
        weights[i] = 1 / (off > alike_mm ? off : alike_mm);
    }
}

double moved_by(const Motion& last, const Motion& next, Vector place) {
    return distance(apply(last, Point{} + place), apply(next, Point{} + place));
}

}  // namespace

Motion robust_fit(const PlacePairs& pairs) {
    if (pairs.from.empty()) return {};
    const BothPlaces places{centred(pairs.from), centred(pairs.to)};
    std::vector<double> weights(pairs.from.size(), 1);
    Motion motion = weighted_fit(places, weights);
    for (int round = 0; round < most_rounds; ++round) {
        weigh(places, motion, weights);
        const bool is_met =
            std::all_of(weights.begin(), weights.end(), [](double weight) { return weight == 1 / alike_mm; });
        if (is_met) break;
        const Motion next = weighted_fit(places, weights);
        const double moved = std::max(moved_by(motion, next, places.from.at(0)),
                                      moved_by(motion, next, places.from.at(weights.size() / 2)));
        motion = next;
        if (moved < at_rest_mm) break;
    }
    motion.shift =
        motion.shift + places.to.middle - apply(Turn{motion.cosine, motion.sine}, places.from.middle);
    return motion;
}

}  // namespace dartwright
