#pragma once

// Points and vectors of the plane, as two types: a point is a place, a vector a displacement.
// Units are millimetres, y points up. All functions are O(1) and round once an operation.

#include <cmath>

#include "dartwright/geometry/elementary.hpp"

namespace dartwright {

struct Vector {
    double x = 0;
    double y = 0;
    friend constexpr bool operator==(Vector, Vector) = default;
};

struct Point {
    double x = 0;
    double y = 0;
    friend constexpr bool operator==(Point, Point) = default;
};

constexpr Vector operator+(Vector a, Vector b) {
    return {a.x + b.x, a.y + b.y};
}
constexpr Vector operator-(Vector a, Vector b) {
    return {a.x - b.x, a.y - b.y};
}
constexpr Vector operator-(Vector a) {
    return {-a.x, -a.y};
}
constexpr Vector operator*(double k, Vector a) {
    return {k * a.x, k * a.y};
}
constexpr Vector operator*(Vector a, double k) {
    return k * a;
}
constexpr Vector operator/(Vector a, double k) {
    return {a.x / k, a.y / k};
}
constexpr Vector operator-(Point a, Point b) {
    return {a.x - b.x, a.y - b.y};
}
constexpr Point operator+(Point a, Vector b) {
    return {a.x + b.x, a.y + b.y};
}
constexpr Point operator-(Point a, Vector b) {
    return {a.x - b.x, a.y - b.y};
}

constexpr double dot(Vector a, Vector b) {
    return a.x * b.x + a.y * b.y;
}
/// Positive when b lies anticlockwise of a.
constexpr double cross(Vector a, Vector b) {
    return a.x * b.y - a.y * b.x;
}
inline double norm(Vector a) {
    return hypotenuse(a.x, a.y);
}
constexpr double squared_norm(Vector a) {
    return dot(a, a);
}
inline double distance(Point a, Point b) {
    return norm(b - a);
}
/// A quarter turn anticlockwise.
constexpr Vector perpendicular(Vector a) {
    return {-a.y, a.x};
}
/// The vector of length 1 in the same direction; the zero vector stays zero.
inline Vector unit(Vector a) {
    const double length = norm(a);
    return length > 0 ? a / length : Vector{};
}
/// The point a share `t` of the way from a to b; exact at 0 and at 1.
constexpr Point between(Point a, Point b, double t) {
    return t == 1 ? b : Point{a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)};
}
constexpr Point middle(Point a, Point b) {
    return {0.5 * (a.x + b.x), 0.5 * (a.y + b.y)};
}
/// Signed angle in radians, in (-pi, pi], that turns a's direction into b's; 0 if either is zero.
inline double angle_from(Vector a, Vector b) {
    return angle_of_direction(cross(a, b), dot(a, b));
}
inline bool is_finite(Point p) {
    return std::isfinite(p.x) && std::isfinite(p.y);
}

inline constexpr double pi = 3.14159265358979323846;
constexpr double degrees(double radians) {
    return radians * (180 / pi);
}
constexpr double radians(double degrees) {
    return degrees * (pi / 180);
}

}  // namespace dartwright
