#pragma once

#include <span>

#include "dartwright/geometry/point.hpp"

namespace dartwright {

/// A rigid motion of the plane that keeps orientation: a turn, then a shift.
///
/// The turn is held as cosine and sine with cosine^2 + sine^2 = 1 to rounding; no function here goes through
/// an angle unless it is given one, so distances between moved points differ from the originals by no more
/// than 8 units in the last place of the coordinates involved (property `motion.keeps_distances`).
struct Motion {
    double cosine = 1;
    double sine = 0;
    Vector shift;
    friend bool operator==(const Motion&, const Motion&) = default;
};

/// A turn's cosine and sine.
struct Turn {
    double cosine = 1;
    double sine = 0;
};

/// The turn that takes the direction of `from` to that of `to`. Precondition: neither is zero
/// (otherwise std::invalid_argument).
Turn turn_between(Vector from, Vector to);
Turn turn_by(double angle_rad);
Turn inverse(Turn turn);

Vector apply(Turn turn, Vector v);
Motion turn_about(Point centre, Turn turn);
Motion shift_by(Vector shift);
/// The motion that takes `from` to `from_image` and the direction from->towards to that of the images.
/// Precondition: towards differs from `from` and so do the images (otherwise std::invalid_argument).
struct PairOfPoints {
    Point first;
    Point second;
};
Motion motion_between(PairOfPoints from, PairOfPoints to);

Point apply(const Motion& motion, Point p);
Vector apply(const Motion& motion, Vector v);
/// First `first`, then `second`.
Motion then(const Motion& first, const Motion& second);
Motion inverse(const Motion& motion);
/// The signed angle of the turn in radians, in (-pi, pi].
double angle(const Motion& motion);

/// The motion that brings `from` onto `to` with the least sum of squared distances (Umeyama 1991, without
/// scale, reflections excluded). Preconditions: equal sizes, at least one point (std::invalid_argument).
/// With a single distinct point it is a shift. O(n).
Motion best_fit(std::span<const Point> from, std::span<const Point> to);

}  // namespace dartwright
