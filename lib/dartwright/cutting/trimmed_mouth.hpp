#pragma once

// Private to the room: a dart's cloth cut away beside its legs.

#include <optional>
#include <vector>

#include "dartwright/cutting/joint.hpp"

namespace dartwright::cutting {

/// The dart's point and where its legs come to the cutting line.
struct TrimmedDart {
    Point point;
    Point a;
    Point b;
};
struct Trimming {
    double width_mm = 0;
    std::size_t item = 0;  ///< of the dart
};
/// The points between the mouth's ends with the cloth between the legs cut away: along the cap from each leg
/// as far as the line that lies the width beside it, and along the two lines to where they meet. Empty if
/// they meet only beyond the cap.
std::optional<std::vector<RawPoint>> trimmed_mouth(const TrimmedDart& dart, const std::vector<RawPoint>& cap,
                                                   const Trimming& trimming);

}  // namespace dartwright::cutting
