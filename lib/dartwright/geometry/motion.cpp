#include "dartwright/geometry/motion.hpp"

#include <Eigen/Geometry>
#include <stdexcept>

#include "dartwright/geometry/elementary.hpp"

namespace dartwright {
namespace {

Eigen::Isometry2d as_eigen(const Motion& m) {
    Eigen::Isometry2d out = Eigen::Isometry2d::Identity();
    out.linear() << m.cosine, -m.sine, m.sine, m.cosine;
    out.translation() << m.shift.x, m.shift.y;
    return out;
}

Motion from_eigen(const Eigen::Isometry2d& m) {
    const double cosine = m.linear()(0, 0);
    const double sine = m.linear()(1, 0);
    const double length = hypotenuse(cosine, sine);
    return {cosine / length, sine / length, {m.translation().x(), m.translation().y()}};
}

Vector centroid(std::span<const Point> points) {
    Vector sum;
    for (const Point p : points) sum = sum + (p - Point{});
    return sum / static_cast<double>(points.size());
}

}  // namespace

Turn turn_between(Vector from, Vector to) {
    // Scaling both first keeps the products from overflow and underflow.
    const double from_length = norm(from);
    const double to_length = norm(to);
    if (!(from_length > 0) || !(to_length > 0)) {
        throw std::invalid_argument("a turn between directions needs two vectors that are not zero");
    }
    const Vector a = from / from_length;
    const Vector b = to / to_length;
    const double cosine = dot(a, b);
    const double sine = cross(a, b);
    const double length = hypotenuse(cosine, sine);
    return {cosine / length, sine / length};
}

Turn turn_by(double angle_rad) {
    return {cosine_of(angle_rad), sine_of(angle_rad)};
}

Turn inverse(Turn turn) {
    return {turn.cosine, -turn.sine};
}

Vector apply(Turn t, Vector v) {
    return {t.cosine * v.x - t.sine * v.y, t.sine * v.x + t.cosine * v.y};
}

Motion turn_about(Point centre, Turn turn) {
    const Vector arm = centre - Point{};
    return {turn.cosine, turn.sine, arm - apply(turn, arm)};
}

Motion shift_by(Vector shift) {
    return {1, 0, shift};
}

Motion motion_between(PairOfPoints from, PairOfPoints to) {
    const Turn turn = turn_between(from.second - from.first, to.second - to.first);
    const Vector arm = from.first - Point{};
    return {turn.cosine, turn.sine, (to.first - Point{}) - apply(turn, arm)};
}

Point apply(const Motion& m, Point p) {
    return Point{} + (apply(m, p - Point{}) + m.shift);
}

Vector apply(const Motion& m, Vector v) {
    return apply(Turn{m.cosine, m.sine}, v);
}

Motion then(const Motion& first, const Motion& second) {
    return from_eigen(as_eigen(second) * as_eigen(first));
}

Motion inverse(const Motion& m) {
    return from_eigen(as_eigen(m).inverse(Eigen::Isometry));
}

double angle(const Motion& m) {
    return angle_of_direction(m.sine, m.cosine);
}

Motion best_fit(std::span<const Point> from, std::span<const Point> to) {
    if (from.size() != to.size() || from.empty()) {
        throw std::invalid_argument("a best fit needs two lists of points of one size, not empty");
    }
    const Vector from_centre = centroid(from);
    const Vector to_centre = centroid(to);
    Eigen::Vector2d sums = Eigen::Vector2d::Zero();
    for (std::size_t i = 0; i < from.size(); ++i) {
        const Vector a = from[i] - Point{} - from_centre;
        const Vector b = to[i] - Point{} - to_centre;
        sums += Eigen::Vector2d(dot(a, b), cross(a, b));
    }
    if (!(sums.norm() > 0)) return shift_by(to_centre - from_centre);
    const Turn turn{sums.x() / sums.norm(), sums.y() / sums.norm()};
    return {turn.cosine, turn.sine, to_centre - apply(turn, from_centre)};
}

}  // namespace dartwright
