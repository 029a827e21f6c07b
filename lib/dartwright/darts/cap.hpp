#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern.hpp"
#include "dartwright/pattern/press.hpp"

namespace dartwright {

/// The cut edge over a dart's mouth: the shape that lies level with the edge when the dart is folded to one
/// side. Properties: (1) it starts at A, ends at B and has no gaps; (2) its two halves are mirror images of
/// each other in the dart's centre line, on which they meet; (3) mirrored in the leg, the half beside the
/// press side lies on the edge there, and so does the other half turned about the point by the angle APB.
struct Cap {
    PressSide side = PressSide::before;
    std::vector<Curve> curves;        ///< from A to B, lines and cubics
    std::size_t curves_to_tip = 0;    ///< so many of them lie before the tip
    Point tip;                        ///< on the dart's centre line
    double depth_mm = 0;              ///< how far the tip stands out beyond the straight mouth AB; negative
                                      ///< where it falls short of it
    bool is_far_out = false;          ///< by more than twice the intake, a spike to no use
    std::vector<std::string> beside;  ///< darts whose mouths the folded dart comes to lie over, nearest first
    std::vector<Sentence> notes;
};

/// The cap of a dart that is folded to the given side.
///
/// The dart is folded about the straight lines from its point to its mouth ends and about its centre line,
/// the bisector of the angle APB. So the cap is the edge beside the mouth mirrored in the leg up to the
/// centre line, and beyond it the mirror image of that, which is the edge turned about the point by the angle
/// APB. The edge is followed round corners of the outline to its first meeting with the centre line. A dart
/// on the way is closed about its point, as it is sewn, and at the fold the edge goes on along the other
/// half. Where the edge leaves the folded dart over the leg without having met the centre line, or the whole
/// way round does not meet it, the cap goes square across from the mirrored end of the dart's own edge, and
/// `notes` says so. A tip that stands out by more than the intake is said too.
///
/// The edge is that of the outline as drawn; fullness on it changes nothing. Curved legs are folded straight.
/// Legs that differ within the tolerance `legs`: the last curve is drawn to the mouth end of the other leg.
/// Splits are exact: the tip is within 1e-9 mm of where the true curves meet the centre line, divided by the
/// sine of the angle at which they do.
///
/// Throws Impossible if the mouth is shut or its legs are crossed, the legs of the dart or of one whose mouth
/// it is folded over differ by more than `legs`, or the outline is open by more than `gap`. Precondition: the
/// item is a dart (std::invalid_argument). O(items), most often of the few beside the mouth.
/// Requires a sound piece (problems_of is empty): UnsoundPattern.
Cap cap_of(const Piece& piece, std::size_t dart, PressSide side, const Tolerances& tolerances = {});

/// The cap for the side that the dart's `press` says; empty if it says none (`press_side`). Same errors.
std::optional<Cap> pressed_cap(const Piece& piece, std::size_t dart, const Tolerances& tolerances = {});
/// The same for what is only shown: empty as well where the cap is refused.
std::optional<Cap> cap_if_any(const Piece& piece, std::size_t dart, const Tolerances& tolerances = {});

}  // namespace dartwright
