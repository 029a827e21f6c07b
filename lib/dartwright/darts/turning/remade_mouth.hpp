#pragma once

// Private to the room: a dart's mouth made anew for a pivot beside its centre line.

#include <array>

#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/outline.hpp"

namespace dartwright {

struct NewAim {
    Point pivot;
    double back_off_mm = 0;
    double span_mm =
        0;  ///< of edge redrawn to each side of the mouth; 0: the edge is only brought to its ends
};
struct RemadeMouth {
    Outline outline;
    double turned_rad = 0;            ///< anticlockwise positive
    std::array<double, 2> span_mm{};  ///< redrawn before and after the mouth
};

/// The farthest that a mouth is turned: beyond it the line over the folded dart is no longer fair, degrees.
/// Our choice; a bust point is moved by a tenth of that.
inline constexpr double most_turn_deg = 45;

/// The dart aimed at the new pivot with its mouth turned square to the line there, both ends at one distance
/// from the pivot. What lies before the mouth in its run, and what lies after it, keep their lengths to
/// 1e-10 of them. In a corner between two edges both are brought to the new ends whole, else they are redrawn
/// over the span. Impossible without a remedy: another dart at the mouth, a turn over `most_turn_deg`, an
/// edge that cannot keep its length.
RemadeMouth remade_mouth(const Outline& outline, std::size_t dart, const NewAim& aim);

}  // namespace dartwright
