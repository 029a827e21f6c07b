#pragma once

#include <vector>

namespace dartwright {

/// Trade tolerances; lengths in mm, angles in degrees. Each answers a trade question only.
struct Tolerances {
    double seam_mm = 1;
    double legs_mm = 0.5;
    double notch_mm = 1;
    double corner_deg = 2;
    double mouth_deg = 2;
    double kink_deg = 2;
    double grain_deg = 0.5;
    double gap_mm = 0.1;
    double fold_mm = 0.5;
    friend bool operator==(const Tolerances&, const Tolerances&) = default;
};
/// Every tolerance by its name, for files, options and documents.
struct ToleranceName {
    const char* name;
    double Tolerances::*value;
    bool is_angle;
    const char* meaning;
};
const std::vector<ToleranceName>& tolerance_names();

struct Pattern;
/// The defaults with the pattern's own values put in.
Tolerances tolerances_of(const Pattern& pattern);

}  // namespace dartwright
