#pragma once

// A piece's edge seen from its bust point, with arithmetic of its own: long double, Boost's quadrature, and
// nothing of the library but the numbers of the outline. Each place of the edge is given by its distance from
// the pivot and by the angle of cloth between it and a ray through a named corner, darts about the pivot
// closed. Drawn flat from that ray, the whole angle of those darts is open along the ray and nowhere else.

#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <map>
#include <string>
#include <vector>

#include "dartwright/pattern/outline.hpp"

namespace dartwright::unrolled {

using Real = long double;

struct Place {
    Real x = 0;
    Real y = 0;
};
inline Place place(Point p) {
    return {p.x, p.y};
}
inline Real apart(Place a, Place b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

/// One stretch of the edge; a line is a cubic with its handles at thirds.
struct Stretch {
    std::array<Place, 4> p;
    Place at(Real t) const {
        const Real s = 1 - t;
        const Real w[] = {s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t};
        Place out;
        for (std::size_t i = 0; i < 4; ++i) {
            out.x += w[i] * p[i].x;
            out.y += w[i] * p[i].y;
        }
        return out;
    }
    Real speed(Real t) const {
        const Real s = 1 - t;
        const Real w[] = {3 * s * s, 6 * s * t, 3 * t * t};
        Place out;
        for (std::size_t i = 0; i < 3; ++i) {
            out.x += w[i] * (p[i + 1].x - p[i].x);
            out.y += w[i] * (p[i + 1].y - p[i].y);
        }
        return std::hypot(out.x, out.y);
    }
    Real length(Real t = 1) const {
        using Rule = boost::math::quadrature::gauss<Real, 30>;
        return Rule::integrate([this](Real u) { return speed(u); }, Real(0), t);
    }
    Real parameter(Real distance) const {
        Real low = 0;
        Real high = 1;
        for (int i = 0; i < 60; ++i) {
            const Real t = (low + high) / 2;
            (length(t) < distance ? low : high) = t;
        }
        return (low + high) / 2;
    }
};

inline Stretch stretch(const Curve& curve) {
    if (const auto* cubic = std::get_if<Cubic>(&curve)) {
        return {{place(cubic->p[0]), place(cubic->p[1]), place(cubic->p[2]), place(cubic->p[3])}};
    }
    const Place a = place(start_of(curve));
    const Place b = place(end_of(curve));
    return {{a, Place{(2 * a.x + b.x) / 3, (2 * a.y + b.y) / 3},
             Place{(a.x + 2 * b.x) / 3, (a.y + 2 * b.y) / 3}, b}};
}

/// Walks round a pivot: distance from it, and cloth angle since the start.
class Walker {
  public:
    Walker(Point pivot, Place start) : pivot_(place(pivot)), here_(start) {}
    void step_to(Place next) {
        angle_ += turn_to(next);
        here_ = next;
    }
    void jump_to(Place next) { here_ = next; }  // over a dart of this pivot: no cloth between
    Place flat() const {
        const Real r = apart(here_, pivot_);
        return {r * std::cos(angle_), r * std::sin(angle_)};
    }
    Real angle() const { return angle_; }

  private:
    Real turn_to(Place next) const {
        const Place a{here_.x - pivot_.x, here_.y - pivot_.y};
        const Place b{next.x - pivot_.x, next.y - pivot_.y};
        return std::atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);
    }
    Place pivot_;
    Place here_;
    Real angle_ = 0;
};

struct Question {
    Point pivot;
    std::string from;  ///< the ray goes through the corner where this edge begins (anticlockwise)
    int samples_per_edge = 24;
};
struct Edge {
    Real length = 0;
    std::vector<Place> samples;  ///< at even shares of its length, flat from the ray
};
struct View {
    std::map<std::string, Edge> edges;
    Real cloth_angle = 0;  ///< about the pivot, all round
};

/// The stretches of the edges in walking order from the ray, and the darts between them.
struct Step {
    std::string edge;  ///< empty: a dart about the pivot
    Stretch stretch;   ///< of a dart: its mouth
};

inline std::vector<Step> steps_of(const Outline& outline, const Question& question) {
    const std::size_t n = outline.items.size();
    const auto name = [&](std::size_t i) {
        const EdgeItem* edge = outline.items[i % n].as_edge();
        return edge ? edge->edge : std::string();
    };
    std::size_t first = 0;
    while (name(first) != question.from || name(first + n - 1) == question.from) ++first;
    std::vector<Step> out;
    for (std::size_t k = 0; k < n; ++k) {
        const std::size_t i = (first + k) % n;
        if (const DartItem* dart = outline.items[i].as_dart()) {
            const bool is_here = distance(dart->turning_point(), question.pivot) < 0.1;
            const Curve mouth = Line{start_of_item(outline, i), outline.items[i].to};
            out.push_back({is_here ? "" : "(another dart)", stretch(mouth)});
            continue;
        }
        for (const Curve& curve : curves_of_item(outline, i)) out.push_back({name(i), stretch(curve)});
    }
    return out;
}

inline View view_of(const Outline& outline, const Question& question) {
    const std::vector<Step> steps = steps_of(outline, question);
    View view;
    for (const Step& step : steps) {
        if (!step.edge.empty()) view.edges[step.edge].length += step.stretch.length();
    }
    std::map<std::string, Real> walked;
    Walker walker(question.pivot, steps.front().stretch.p[0]);
    for (const Step& step : steps) {
        if (step.edge.empty()) {
            walker.jump_to(step.stretch.p[3]);
            continue;
        }
        Edge& edge = view.edges[step.edge];
        Real& begin = walked[step.edge];
        const Real end = begin + step.stretch.length();
        // Off the ends of stretches by an odd share, so that no sample falls on a joint or a mouth.
        for (;;) {
            const Real at =
                edge.length * (Real(edge.samples.size()) + 0.41421356L) / question.samples_per_edge;
            if (at >= end || int(edge.samples.size()) == question.samples_per_edge) break;
            walker.step_to(step.stretch.at(step.stretch.parameter(at - begin)));
            edge.samples.push_back(walker.flat());
        }
        begin = end;
        walker.step_to(step.stretch.p[3]);
    }
    view.cloth_angle = walker.angle();
    return view;
}

}  // namespace dartwright::unrolled
