#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "dartwright/geometry/predicates.hpp"

namespace dartwright {

/// Private to the library: `where_in_polygon` for many points of one polygon, with the same answers. The
/// sides are sorted into level bands, of which a point asks one. In it those that pass through the whole band
/// are sorted from left to right: of them only those above and below the point are asked. O(n log n) to set
/// up; to ask O(log n) and the sides that begin or end in the band, where those that pass through it are not
/// wide; never worse than O(n). The polygon must outlive it.
class PolygonIndex {
  public:
    explicit PolygonIndex(std::span<const Point> polygon);
    Where where(Point p) const;

  private:
    std::size_t band_of(double y) const;
    void sort_passing(std::size_t band);
    double left_of(std::uint32_t side) const;
    double right_of(std::uint32_t side) const;

    std::span<const Point> polygon_;
    double low_ = 0;
    double high_ = -1;
    double bands_per_mm_ = 0;
    std::vector<std::uint32_t> begins_;   ///< of each band among `sides_`, and the end of the last
    std::vector<std::uint32_t> passing_;  ///< of each band, where those begin that pass through it
    std::vector<std::uint32_t> sides_;    ///< by the index of their first corner, a band after another
    std::vector<double> rightmost_;       ///< of the passing ones of a band, up to each of `sides_`
};

}  // namespace dartwright
