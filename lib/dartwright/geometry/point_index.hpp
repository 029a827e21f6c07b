#pragma once

// Private to the library.

#include <memory>
#include <span>

#include "dartwright/geometry/point.hpp"

namespace dartwright {

/// Points of which the nearest to each of many places is asked.
class PointIndex {
  public:
    /// O(n log n). The points must outlive it.
    explicit PointIndex(std::span<const Point> points);
    PointIndex(const PointIndex&) = delete;
    PointIndex& operator=(const PointIndex&) = delete;
    ~PointIndex();

    /// By its number; of several that are equally near the first. Precondition: there is a point. O(log n)
    /// and what lies as near.
    std::size_t nearest_to(Point place) const;

  private:
    struct Tree;
    std::span<const Point> points_;
    std::unique_ptr<const Tree> tree_;
};

}  // namespace dartwright
