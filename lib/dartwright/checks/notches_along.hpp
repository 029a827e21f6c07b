#pragma once

// Private to the library: notches by their walked distance, and their pairing.

#include <optional>
#include <vector>

#include "dartwright/checks/walked_seam.hpp"

namespace dartwright {

/// The notch's sewn distance from its run's anticlockwise start; empty if its end has no such name.
std::optional<double> distance_on_run(const Notch& notch, const Run& run);
/// Whether it lies within its run, or beyond the end by no more than the tolerance.
bool is_on_run(double on_run, const Run& run, const Tolerances& tolerances);

struct WalkedNotch {
    const WalkedPart* part = nullptr;
    const Notch* notch = nullptr;
    double walked = 0;  ///< from the seam's starting end, mm
    double on_run = 0;  ///< from the run's anticlockwise start, mm
};
/// The notches of a side in walking order, those beyond their run's ends left out.
std::vector<WalkedNotch> notches_along(const WalkedSide& side, const Tolerances& tolerances);

/// How far a place on the second side lies from where the ease lets its partner on the first be: 0 if it may
/// lie there, else the signed distance.
double misplacement(const WalkedSeam& seam, double first_walked, double second_walked);

/// Pairs of indices, and what is left over on either side. All of the side with fewer are paired, in order.
struct NotchPairs {
    struct Pair {
        std::size_t first;
        std::size_t second;
    };
    std::vector<Pair> pairs;
    std::vector<std::size_t> left_over_first;
    std::vector<std::size_t> left_over_second;
};
NotchPairs paired(const WalkedSeam& seam, const std::vector<WalkedNotch>& first,
                  const std::vector<WalkedNotch>& second);

/// A notch that meets the seam between two parts of the other side, as a sleeve cap's meets the shoulder: the
/// corner is its partner.
struct NotchAtCorner {
    std::size_t side = 0;  ///< of the notch
    WalkedNotch notch;
    double corner_walked = 0;  ///< of the corner, along the other side
    double off = 0;            ///< as `misplacement` has it, the second side's place from the first's
};
/// A notch without a notch for it counts as meant for a corner of the other side this near, mm. Larger: a
/// forgotten notch would be told as one that lies wrong; smaller: a notch drawn a little off would be told as
/// one without a partner.
inline constexpr double meant_for_corner_mm = 10;

/// All notches of a seam with their partners. Those within the tolerance of a corner of the other side, with
/// no notch there, are taken first; the others are paired with notches in order; of what is left over a notch
/// near a corner is its partner after all.
struct SeamNotches {
    std::array<std::vector<WalkedNotch>, 2> sides;  ///< without those taken first
    NotchPairs pairs;                               ///< of `sides`
    std::vector<NotchAtCorner> at_corners;
};
SeamNotches notches_of(const WalkedSeam& seam, const Tolerances& tolerances);

}  // namespace dartwright
