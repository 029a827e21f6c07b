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

    /// A place that was found: the next one is sought from there.
    struct Reached {
        double t = 0;
        double length = 0;  ///< as far as there, in the unit that the search works in
    };
    /// The same to 1e-9 mm or 1e-12 of the length, sooner where places are asked one after the other. One
    /// that lies before the last is sought from the start.
    double parameter_after(Reached& last, double distance_mm) const;

  private:
    struct Bracket {
        double low = 0;
        double high = 1;
        double middle() const { return 0.5 * (low + high); }
    };
    double enough() const;
    double search(double wanted, double enough) const;
    /// How much farther on a place lies, and by how much of a length that may be wrong.
    struct Step {
        double by = 0;
        double error = 0;
    };
    Step step(double t, double length) const;
    double newton_or_middle(double t, double excess, Bracket bracket) const;
    double length_between(double from, double to) const;

    speed::Hodograph hodograph_;
    double tolerance_;
    double whole_;
};

}  // namespace dartwright
