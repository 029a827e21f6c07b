#pragma once

// Private to this room: how a point lies to a polygon, side by side.

#include "dartwright/geometry/orientation.hpp"

namespace dartwright {

inline bool is_on(const Segment& s, Point p) {
    return is_in_box(s.a, s.b, p) && exact::side_of_line(s.a, s.b, p) == Side::on;
}

/// Counts the sides that meet the ray from a point to the right. Sides wholly above or below the point change
/// nothing, so that they may be left out.
class SideCount {
  public:
    explicit SideCount(Point p) : p_(p) {}
    /// True once the point lies on a side.
    bool pass(Point a, Point b) {
        if ((a.y < p_.y && b.y < p_.y) || (a.y > p_.y && b.y > p_.y) || (a.x < p_.x && b.x < p_.x))
            return false;
        if (is_on({a, b}, p_)) return true;
        // A side owns its lower end.
        if ((a.y <= p_.y) == (b.y <= p_.y)) return false;
        const Side wanted = a.y <= p_.y ? Side::left : Side::right;
        if (exact::side_of_line(a, b, p_) == wanted) is_inside_ = !is_inside_;
        return false;
    }
    Where where() const { return is_inside_ ? Where::inside : Where::outside; }

  private:
    Point p_;
    bool is_inside_ = false;
};

}  // namespace dartwright
