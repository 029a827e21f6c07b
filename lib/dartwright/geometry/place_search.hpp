#pragma once

#include "dartwright/geometry/curve.hpp"
#include "dartwright/geometry/speed_integral.hpp"

namespace dartwright {

/// Private to the library: `parameter_at` for many places on one cubic, of which what does not depend on the
/// place is worked out once. The same numbers to the bit.
class PlaceSearch {
  public:
    explicit PlaceSearch(const Cubic& cubic);

    /// The parameter at a distance along the curve from its start; see `parameter_at`.
    double parameter_at(double distance_mm) const;

  private:
    struct Bracket {
        double low = 0;
        double high = 1;
        double middle() const { return 0.5 * (low + high); }
    };
    double search(double wanted, double enough) const;
    double newton_or_middle(double t, double excess, Bracket bracket) const;
    double length_between(double from, double to) const;

    speed::Hodograph hodograph_;
    double tolerance_;
    double whole_;
};

}  // namespace dartwright
