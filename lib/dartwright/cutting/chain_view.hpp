#pragma once

// Private to the room: the points of a strand as seen from one of its ends.

#include <algorithm>
#include <optional>

#include "dartwright/cutting/strands.hpp"

namespace dartwright::cutting {

/// A strand seen from the joint at one of its ends: point 0 is there, and beyond it the line goes on
/// straight.
class ChainView {
  public:
    enum class From { end, start };
    ChainView(const Strands& strands, const Strand& strand, From from, const Motion& motion)
        : strands_(strands),
          strand_(strand),
          from_(from),
          motion_(motion),
          is_moved_(!(motion == Motion{})) {}

    std::size_t size() const { return strand_.last - strand_.first + 1; }
    Point at(std::size_t k) const {
        const Point p = strands_.points[from_ == From::end ? strand_.last - k : strand_.first + k];
        return is_moved_ ? apply(motion_, p) : p;
    }
    /// Unit, away from the strand at its end.
    Vector beyond() const {
        return apply(motion_, from_ == From::end ? strand_.last_tangent : -strand_.first_tangent);
    }
    /// How many sides, from the joint on, may be trimmed at it: half of them, so that the other joint has its
    /// own; and none of a detour.
    std::size_t sides_to_trim() const {
        const std::size_t half = size() > 2 ? (size() - 1) / 2 : 1;
        return std::min(half, from_ == From::end ? strand_.last - first_after_detours(strands_, strand_)
                                                 : last_before_detours(strands_, strand_) - strand_.first);
    }
    bool is_one_side() const { return size() == 2; }

  private:
    const Strands& strands_;
    const Strand& strand_;
    From from_;
    Motion motion_;
    bool is_moved_;
};

/// Where a chain is met: on its straight extension (side 0), or on the side between points side - 1 and side.
struct ChainMeeting {
    std::size_t side = 0;
    Point place;
};

/// A half line; `along` is a unit vector.
struct Ray {
    Point from;
    Vector along;
};
/// How far the point lies aside of the line of the ray, mm: to the left of its way more than 0.
inline double aside(const Ray& ray, Point p) {
    return cross(ray.along, p - ray.from);
}
/// The first meeting of the ray with the chain from its extension inwards, no farther along the ray than
/// `reach_mm` and no farther out on the extension; empty if there is none among the sides that may be
/// trimmed.
std::optional<ChainMeeting> meeting_of(const Ray& ray, const ChainView& chain, double reach_mm);

/// Where two chains cross, each on a side that may be trimmed.
struct ChainCrossing {
    std::size_t first_side = 0;
    std::size_t second_side = 0;
    Point place;
};
std::optional<ChainCrossing> crossing_of(const ChainView& first, const ChainView& second);

/// The first side, of those that may be trimmed, that comes as near to the point as the line's error; 0 if
/// none does.
std::size_t side_beside(const ChainView& chain, Point p);

}  // namespace dartwright::cutting
