#pragma once

#include <vector>

#include "dartwright/geometry/curve.hpp"
#include "dartwright/geometry/speed_integral.hpp"

namespace dartwright {

/// The error of the places that an `ArcLengthTable` gives, along the curve: 1e-6 mm, or 1e-10 of the length
/// if that is more (curves of more than ten metres).
inline constexpr double table_place_error_mm = 1e-6;
inline constexpr double table_place_relative_error = 1e-10;

/// Answers many questions for places along one curve, faster than `parameter_at` and less exactly.
///
/// The curve is cut into cells over each of which a rule of eight points is good for the length from the
/// cell's start to any place in it (about four cells; some dozens near a cusp). A question finds the cell,
/// guesses the parameter from the speeds at the cell's ends, and corrects it by Newton's method until the
/// bound of what is left of the error allows it to stop.
class ArcLengthTable {
  public:
    explicit ArcLengthTable(const Curve& curve);

    /// Within `arc_length_relative_error` of the curve's length.
    double length() const { return hodograph_.unit_mm * whole_; }
    /// The parameter at a distance from the start. Distances outside [0, length] are clamped.
    double parameter_at(double distance_mm) const;

  private:
    struct Cell {
        double start = 0;  // parameters
        double end = 0;
        double distance = 0;  // of the start along the curve, in the hodograph's unit
        double length = 0;
        double start_slope = 0;  // of the guess, for a cell scaled to 1 by 1
        double end_slope = 0;
        double bend = 0;  // half the greatest modulus of the second derivative
    };

    void fill(const speed::Roots& roots, speed::Stretch stretch, double tolerance);
    void add_cell(speed::Stretch stretch);
    double parameter_in(const Cell& cell, double distance) const;

    speed::Hodograph hodograph_;
    std::vector<Cell> cells_;
    double whole_ = 0;
    double enough_ = 0;
};

}  // namespace dartwright
