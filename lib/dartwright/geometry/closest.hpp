#pragma once

#include "dartwright/geometry/curve.hpp"

namespace dartwright {

struct ClosestPoint {
    double parameter = 0;
    Point point;
    double distance = 0;
};
/// The point of the curve nearest to p (the first one, where several are equally near). The distance is
/// within 1e-9 mm of the least one.
ClosestPoint closest_point(const Curve& curve, Point p);

}  // namespace dartwright
