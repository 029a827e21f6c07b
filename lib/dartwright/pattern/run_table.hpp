#pragma once

#include <optional>
#include <vector>

#include "dartwright/geometry/place_search.hpp"
#include "dartwright/pattern/run.hpp"

namespace dartwright {

/// Answers many questions for places on one run, each in O(log n) for its n curves; O(n) to set up. The
/// places are those of `place_on_run`, but for the rounding of a sum of lengths.
class RunTable {
  public:
    RunTable(const Outline& outline, const Run& run);

    /// The place at a sewn distance from the run's anticlockwise start, clamped to the run. Precondition: the
    /// run has an item, as every run of `runs_of` has.
    RunPlace place(double sewn_distance) const;

    /// The points of `steps` + 1 places, evenly between the two distances: those of `place` to 2e-9 mm or
    /// 2e-12 of the curve's length. Precondition: `to_mm` >= `from_mm`, `steps` > 0.
    struct EvenPlaces {
        double from_mm = 0;
        double to_mm = 0;
        int steps = 1;
    };
    void add_points(std::vector<Point>& points, const EvenPlaces& places) const;

  private:
    struct Stretch {
        Curve curve;
        double along = 0;  // from the item's start to its own, geometric, mm
        double length = 0;
        std::optional<PlaceSearch> search;  // of a cubic
        double parameter_at(double distance) const;
    };
    struct Item {
        std::size_t item = 0;  // in the outline
        std::size_t first = 0;
        std::size_t end = 0;    // its stretches are [first, end)
        double sewn_start = 0;  // from the run's start, mm
        double length = 0;      // geometric, mm
        double sewn = 0;
    };
    struct Along {
        const Item& item;
        double along_item = 0;  // geometric, mm
        const Stretch& stretch;
        double along = 0;  // the stretch
    };
    Along along(double sewn_distance) const;
    const Item& item_at(double sewn_distance) const;
    const Stretch& stretch_at(const Item& item, double along_item) const;

    double run_length_;
    std::vector<Item> items_;
    std::vector<Stretch> stretches_;
};

}  // namespace dartwright
