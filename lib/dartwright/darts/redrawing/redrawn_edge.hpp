#pragma once

// Private to the room: an edge drawn smooth through a joint, over a span to each side.

#include "dartwright/darts/redrawing/outline_chain.hpp"
#include "dartwright/geometry/curve.hpp"

namespace dartwright {

/// Where two items of an edge meet when the cloth is folded as it will be sewn: the end of the one, the start
/// of the other, and the motion that brings the latter onto the former (none, where no dart stands between).
struct FoldedJoint {
    Point before_end;
    Point after_start;
    Motion closing;
};
struct RedrawnChain {
    Chain chain;
    double before_mm = 0;  ///< redrawn before the joint, and after it
    double after_mm = 0;
};
/// The fair curve over the folded joint: from the span's end before it to the span's end after it (or the
/// edge's end, or a dart, where that is nearer), in place and direction, with handles of a third of the
/// chord. Precondition: the chain begins just after the joint and ends just before it, both in items of one
/// edge; span over 0, geometric length in mm.
Cubic line_across(const Chain& around, const Motion& closing, double span_mm);

/// How the new line meets the joint.
enum class Drawn {
    across,   ///< the fair curve from span to span; precondition: the joint's end lies on it
    through,  ///< two fair curves through the joint's end, of one direction there
    apart     ///< two fair curves to the joint's end, each of the direction in which its edge ended there
};
/// The chain with the edge drawn anew over the folded joint and unfolded. The span's outer ends keep their
/// place and direction, and the fullness of what was taken off goes with what takes its place. Preconditions
/// as above.
RedrawnChain redrawn_over(const Chain& around, const FoldedJoint& joint, double span_mm, Drawn drawn);

/// Two edges that cross a seam at one of its ends, laid together there: parts of one run each, without darts.
struct JoinedEdges {
    Chain before;  ///< ends at the joint
    Chain after;   ///< begins there
};
/// How much of each is redrawn, geometric, mm; over 0.
struct JointSpans {
    double before_mm = 0;
    double after_mm = 0;
};
/// The two edges drawn anew over the joint, each to its new end there, which need not be its old one. What
/// lies beyond a span is as it was. Precondition: not `across`.
JoinedEdges redrawn_at_joint(const JoinedEdges& edges, const FoldedJoint& joint, const JointSpans& spans,
                             Drawn drawn);

/// A place where a line begins, and its unit direction there.
struct LineStart {
    Point at;
    Vector direction;
};
/// An edge that crosses a seam at its beginning, drawn anew by one fair curve from `start` to the span's end.
/// What lies beyond is as it was. Precondition: a part of one run, without darts; geometric span in mm, over
/// 0.
Chain redrawn_from(const LineStart& start, const Chain& edge, double span_mm);

/// One fair curve over the open joint, from span to span, as an item of the edge without fullness, and what
/// it takes the place of: its sewn length (the gap between the joint's ends not counted), and where it begins
/// and ends.
struct Bridged {
    Chain chain;           ///< the bridge first, then the rest all round
    double sewn_mm = 0;    ///< of what it takes the place of
    double length_mm = 0;  ///< of the bridge
    double before_mm = 0;  ///< of it, geometric, before the joint, and after it
    double after_mm = 0;
};
Bridged bridged_over(const Chain& around, double span_mm);

/// Impossible if the outline with its redrawn edge lies over itself, wedges drawn to the pivots.
void refuse_bad_redrawing(const Outline& outline);

}  // namespace dartwright
