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

// Places about the plain middle of all, so that sums of their products lose nothing.
struct Centred {
    Vector from_middle;
    Vector to_middle;
    std::vector<Vector> from;
    std::vector<Vector> to;
};
Centred centred(const PlacePairs& places) {
    Centred out;
    const double count = static_cast<double>(places.from.size());
    for (std::size_t i = 0; i < places.from.size(); ++i) {
        out.from_middle = out.from_middle + (places.from[i] - Point{}) / count;
        out.to_middle = out.to_middle + (places.to[i] - Point{}) / count;
    }
    out.from.reserve(places.from.size());
    out.to.reserve(places.from.size());
    for (std::size_t i = 0; i < places.from.size(); ++i) {
        out.from.push_back(places.from[i] - Point{} - out.from_middle);
        out.to.push_back(places.to[i] - Point{} - out.to_middle);
    }
    return out;
}

// What a round of the fit is made of.
struct Sums {
    double weight = 0;
    Vector from;
    Vector to;
    double along = 0;
    double across = 0;

    void add(double w, Vector a, Vector b) {
        weight += w;
        from = from + w * a;
        to = to + w * b;
        along += w * dot(a, b);
        across += w * cross(a, b);
    }
};

// The weighted least sum of squares in closed form: the turn that brings the directions from the weighted
// middle together on the whole.
Motion motion_of(const Sums& sums) {
    const Vector from = sums.from / sums.weight;
    const Vector to = sums.to / sums.weight;
    const double along = sums.along - sums.weight * dot(from, to);
    const double across = sums.across - sums.weight * cross(from, to);
    const double size = std::hypot(along, across);
    Motion out;
    if (size > 0) {
        out.cosine = along / size;
        out.sine = across / size;
    }
    out.shift = to - apply(Turn{out.cosine, out.sine}, from);
    return out;
}

// The place as the motion has it; in the innermost loop, where a call would cost as much again.
inline Vector moved(const Motion& motion, Vector place) {
    return Vector{motion.cosine * place.x - motion.sine * place.y,
                  motion.sine * place.x + motion.cosine * place.y} +
           motion.shift;
}

double moved_by(const Motion& last, const Motion& next, Vector place) {
    return norm(moved(next, place) - moved(last, place));
}

}  // namespace

Motion robust_fit(const PlacePairs& places) {
    if (places.from.empty()) return {};
    const Centred all = centred(places);
    Sums alike;
    for (std::size_t i = 0; i < all.from.size(); ++i) alike.add(1, all.from[i], all.to[i]);
    Motion motion = motion_of(alike);
    for (int round = 0; round < most_rounds; ++round) {
        double most = 0;
        Sums sums;
        for (std::size_t i = 0; i < all.from.size(); ++i) {
            // No place is so far off that the square leaves a double's range.
            const double off = std::sqrt(squared_norm(moved(motion, all.from[i]) - all.to[i]));
            most = std::max(most, off);
            sums.add(1 / std::max(off, alike_mm), all.from[i], all.to[i]);
        }
        if (most <= alike_mm) break;
        const Motion next = motion_of(sums);
        const double change = std::max(moved_by(motion, next, all.from.front()),
                                       moved_by(motion, next, all.from[all.from.size() / 2]));
        motion = next;
        if (change < at_rest_mm) break;
    }
    motion.shift =
        motion.shift + all.to_middle - apply(Turn{motion.cosine, motion.sine}, all.from_middle);
    return motion;
}

}  // namespace dartwright
