#include "dartwright/checks/check.hpp"

namespace dartwright {

// Sources are of the default tolerance, not of the check. Where nothing published was found the text says
// common practice, and where we chose the value it says so.
const std::vector<CheckKind>& list_of_checks() {
    static const std::vector<CheckKind> kinds{
        {"outline-gap", "The last edge of the outline ends where the first begins.", "gap",
         "Our choice, no source: a tenth of what a ruler is read to."},
        {"outline-crossing", "No edge of the outline crosses or touches itself or another edge.", "",
         "No tolerance: decided exactly on an outline flattened to 0.01 mm."},
        {"outline-stray", "No edge of the outline, and no part of one, is shorter than 1 mm.", "",
         "Our choice, no source: a stretch of less than 1 mm cannot be sewn. A short part that lies smooth "
         "in the "
         "middle of its edge is a note."},
        {"outline-kink", "An edge runs on smoothly where two of its parts meet, mouths of darts apart.",
         "kink",
         "Our choice, no source: 2 degrees is 0.9 mm beside a ruler 25 mm on, about what the eye sees."},
        {"dart-legs",
         "The two legs of a dart are of one length, and its mouth ends are equally far from a pivot of its "
         "own; of a dart with two points, the two legs at each point are.",
         "legs",
         "Common practice, no source: half of the millimetre to which a fitted toile is worked. Curved legs "
         "of one length that are not mirror images of each other are a note."},
        {"dart-mouth",
         "The edge runs on smoothly over the mouth of a dart that is closed as sewn, about its point.",
         "mouth",
         "Our choice, no source, as for kinks. That the two angles at a true mouth add to 180 degrees is "
         "geometry. A "
         "mouth that is true about the pivot only is a note."},
        {"dart-point",
         "The point of a dart lies in the piece, on the bisector of the angle at the pivot, not beyond the "
         "pivot, and "
         "as far from it as is asked.",
         "legs",
         "Common practice, no source, as for the legs; beyond the pivot is judged by the gap tolerance. "
         "Distances of "
         "20 to 25 mm are published (sewingconnection.com) but are asked for by the pattern, not by this "
         "check."},
        {"dart-crossing", "No leg of a dart crosses or touches an edge, another dart or the other leg.", "",
         "No tolerance: decided exactly on an outline flattened to 0.01 mm. Darts whose points lie within "
         "0.1 mm of "
         "each other may touch there."},
        {"seam-length", "The two sides of a seam are of one sewn length, the ease allowed for.", "seam",
         "Common practice, no source: a fitted toile is worked to the millimetre. Published for sewing are "
         "1/16 in "
         "(1.6 mm) and, for many, 1/8 in (3.2 mm): Threads no. 200."},
        {"seam-corner",
         "At each end of a seam opened flat the angles of the two sides add to 180 degrees, so that the "
         "edges across it run on smoothly; laid on each other they are equal.",
         "corner",
         "Our choice, no source, for 2 degrees. That the angles complement each other is published "
         "(thedailysew.com, February 2018; ithacamaven, 'notches and seam lines')."},
        {"seam-allowance", "Edges that are joined have one width of allowance.", "",
         "Our choice, no source: 0.1 mm, finer than a width can be marked. Decided on one side only is a "
         "note."},
        {"notch-missing", "Every notch on a seam has a partner on the other side.", "",
         "No tolerance: notches are counted."},
        {"notch-place",
         "A notch lies on its edge, and as far along the seam as its partner, or later by no more than the "
         "ease.",
         "notch", "Common practice, no source: a fitted toile is worked to the millimetre."},
        {"notch-kind", "The two notches of a pair are both single, both double or both triple.", "",
         "No tolerance: kinds are alike or not."},
        {"notch-in-dart", "No notch lies within 1 mm of the mouth of a dart.", "",
         "Our choice, no source: a nick in the cloth is as wide as that and would be folded away with the "
         "dart."},
        {"grain-missing", "A piece has a grain line.", "", "No tolerance."},
        {"grain-direction", "The grain is parallel to the edge that it is said to go along.", "grain",
         "Our choice, no source: 0.5 degrees is 2.6 mm over 300 mm. Grain parallel to the centre line is "
         "common "
         "practice."},
        {"fold-straight", "An edge laid on the fold is straight.", "fold",
         "Our choice, no source: half a millimetre is a pencil line's width."},
        {"fold-corner",
         "An edge that ends at the fold runs on smoothly when the piece is opened: twice its angle is 180 "
         "degrees.",
         "corner", "Our choice, no source, for 2 degrees. A mirrored angle equals the angle: geometry."},
        {"cut-missing", "A piece says how many to cut.", "", "No tolerance."},
    };
    return kinds;
}

}  // namespace dartwright
