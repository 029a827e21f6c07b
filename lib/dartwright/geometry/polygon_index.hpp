#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "dartwright/geometry/predicates.hpp"

namespace dartwright {

/// Private to the library: `where_in_polygon` for many points of one polygon, with the same answers. The
/// sides are sorted into level bands, of which a point asks one. O(n) to set up and O(n / bands + 1) to ask
/// where sides are spread evenly; never worse than O(n) to ask. The polygon must outlive it.
class PolygonIndex {
  public:
    explicit PolygonIndex(std::span<const Point> polygon);
    Where where(Point p) const;

  private:
    std::size_t band_of(double y) const;

    std::span<const Point> polygon_;
    double low_ = 0;
    double high_ = -1;
    double bands_per_mm_ = 0;
    std::vector<std::uint32_t> begins_;  ///< of each band among `sides_`, and the end of the last
    std::vector<std::uint32_t> sides_;   ///< by the index of their first corner, a band after another
};

}  // namespace dartwright
