#include "dartwright/pattern/tolerances.hpp"

#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

const std::vector<ToleranceName>& tolerance_names() {
    static const std::vector<ToleranceName> names{
        {"seam", &Tolerances::seam_mm, false, "difference in length of a seam's two sides"},
        {"legs", &Tolerances::legs_mm, false, "difference of a dart's two legs"},
        {"notch", &Tolerances::notch_mm, false, "distance by which paired notches miss each other"},
        {"corner", &Tolerances::corner_deg, true, "angles that meet at a seam's or fold's end, against 180"},
        {"mouth", &Tolerances::mouth_deg, true, "kink of the edge over a closed dart"},
        {"kink", &Tolerances::kink_deg, true, "corner inside one run"},
        {"grain", &Tolerances::grain_deg, true, "grain against the edge it runs along"},
        {"gap", &Tolerances::gap_mm, false, "distance by which an outline does not close"},
        {"fold", &Tolerances::fold_mm, false, "deviation of a fold edge from a straight line"},
    };
    return names;
}

Tolerances tolerances_of(const Pattern& pattern) {
    Tolerances out;
    for (const ToleranceName& each : tolerance_names()) {
        const auto set = pattern.tolerances.find(each.name);
        if (set != pattern.tolerances.end()) out.*each.value = set->second;
    }
    return out;
}

}  // namespace dartwright
