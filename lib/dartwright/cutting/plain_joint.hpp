#pragma once

// Private to the room: the common joints by themselves, for they are most of the work.

#include "dartwright/cutting/joint.hpp"

namespace dartwright::cutting {

/// A joint of strands without a dart between them that is one point at most.
struct PlainJoint {
    enum class Kind {
        none,        ///< it is no plain joint
        running_on,  ///< the one strand ends where the next begins; no point
        outside,     ///< both are carried on to their meeting, within the reach
        inside       ///< two straight lines that cross, and are each trimmed by a side
    };
    Kind kind = Kind::none;
    Point at;
};

/// Where two straight strands cross, each in the half that is this joint's.
inline PlainJoint crossing_of_straight(const Strands& strands, const Strand& before, const Strand& after) {
    if (before.last != before.first + 1 || after.last != after.first + 1) return {};
    const Point a = strands.points[before.last];
    const Point c = strands.points[after.first];
    const Vector back = strands.points[before.first] - a;
    const Vector on = strands.points[after.last] - c;
    const double turn = cross(back, on);
    if (turn == 0) return {};
    const double on_first = cross(c - a, on) / turn;
    const double on_second = cross(c - a, back) / turn;
    constexpr double own_half = 0.5;
    const bool is_on_both = on_first >= 0 && on_first <= own_half && on_second >= 0 && on_second <= own_half;
    if (!is_on_both) return {};
    return {PlainJoint::Kind::inside, a + on_first * back};
}

inline PlainJoint plain_joint(const Strands& strands, const Strand& before, const Strand& after) {
    const Vector gap = strands.points[after.first] - strands.points[before.last];
    if (squared_norm(gap) <= same_end_mm * same_end_mm) return {PlainJoint::Kind::running_on, {}};
    const Vector in = before.last_tangent;
    const Vector out = after.first_tangent;
    const double cosine = dot(in, out);
    const double w_in = before.width_mm;
    const double w_out = after.width_mm;
    if (w_in < w_out * cosine || w_out < w_in * cosine) return {};
    const double sine = cross(in, out);
    if (sine < 0) return crossing_of_straight(strands, before, after);
    const Vector to_tip = w_in * outwards(in) + (w_out - w_in * cosine) / sine * in;
    const double reach = sharpest_corner * std::max(w_in, w_out);
    // Not where the two run against each other, which has no tip.
    if (!(squared_norm(to_tip) <= reach * reach)) return {};
    return {PlainJoint::Kind::outside, before.end + to_tip};
}

}  // namespace dartwright::cutting
