#pragma once

// The text of docs/checks.md, made from the list of checks, the default tolerances and what is said here of
// how each check judges.

#include <cstdio>
#include <map>
#include <stdexcept>
#include <string>

#include "dartwright/checks/check.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright::checks_document {

inline const std::map<std::string, std::string>& how_it_judges() {
    static const std::map<std::string, std::string> texts{
        {"outline-gap",
         "A piece that does not close has no inside and no sewn lengths: its other checks are left out, and "
         "the "
         "verdict on a seam that touches it has no lengths and does not pass. A gap within the tolerance is "
         "closed "
         "before anything else is judged."},
        {"outline-crossing",
         "Darts are drawn to their points. One finding a place: meetings within 1 mm of each other are one. "
         "Where a "
         "leg of a dart takes part it is `dart-crossing` instead."},
        {"outline-stray",
         "Arc length, not the distance of the ends. A note instead of a fault where the short part lies in "
         "the middle "
         "of its edge and both its joints are smooth."},
        {"outline-kink",
         "Judged at every joint of two parts of one edge, by their directions there. A curve through "
         "measured points "
         "is smooth by its making. Corners between edges of different names are meant. A fold that is "
         "not straight is told by `fold-straight` alone."},
        {"dart-legs",
         "Arc lengths of the legs as drawn; where the pivot is not the point, also the straight distances "
         "from the "
         "pivot to the mouth ends. One finding a dart, for the worse of the two. A dart with two points is "
         "sewn from each of them to the widest places: the two legs to `from` are of one length, and the two "
         "legs to `to`. Where curved legs are of one length, the first is mirrored in the dart's centre line "
         "(the bisector of the angle at the point), and the two are compared at equal distances along them "
         "from the mouth, of a tuck as far as it is stitched: further apart than the tolerance is a note."},
        {"dart-mouth",
         "Only for darts inside an edge: the direction of the edge beyond the dart is turned back by the "
         "angle at the "
         "point and compared with its direction before the dart. A mouth that is smooth when closed about "
         "the pivot "
         "and only the back-off spoils is a note. Darts without an edge between them have one mouth. A dart "
         "in the "
         "corner between two edges is judged as part of that corner, closed."},
        {"dart-point",
         "One finding a reason. Off the bisector by more than the tolerance is told only where the legs are "
         "true, and "
         "outside the piece only where the dart crosses nothing. How far from the pivot a point must lie is "
         "what the "
         "dart asks for as `back_off`, less the tolerance; beyond the pivot is judged by the tolerance "
         "`gap`."},
        {"dart-crossing",
         "Decided on the outline with darts drawn to their points. One finding for each thing that a dart "
         "crosses. Darts that share a point, to 0.1 mm, may "
         "touch "
         "there. Double darts must lie inside the piece and cross neither an edge, a dart nor each other."},
        {"seam-length",
         "Second side less first, less the ease (positive when the second side is meant to be the longer). "
         "Sewn "
         "lengths: darts closed, fullness taken off, the parts of a side added up."},
        {"seam-corner",
         "The two sides' inside angles, darts in the corner closed. A fault where what crosses is asked to "
         "be true: opened flat, where both crossing edges are unsewn or are parts of one side of one seam "
         "(an armhole); laid on each other, where both are unsewn, sewn to each other, or in seams of the "
         "outer and the inner piece that match. Elsewhere, as under an arm where four pieces meet, a note. "
         "`ends` of the seam decides otherwise: `free` lets a corner off, `smooth` makes it a fault. An edge "
         "sewn to its own mirror image is judged doubled; a closed run has no corner. Corners inside a side "
         "of several parts are judged flat, unless another seam joins the edges that meet there."},
        {"seam-allowance",
         "Widths are compared along the walk; stretches shorter than the notch tolerance and the ease "
         "together are "
         "passed over. Decided on one side only is a note; on neither is nothing. At most one fault and one "
         "note a seam, for the first place. `allowances_differ` of the seam says that two widths are meant."},
        {"notch-missing",
         "Notches are paired in their order from the seam's starting end. Where one side has more, those are "
         "left over that make the pairs fit best, one finding each. A notch that meets the corner between "
         "two parts of the other side, as a sleeve's meets the shoulder, has its partner there; one within "
         "10 mm of it is judged by `notch-place`."},
        {"notch-place",
         "A notch on the side with the ease may lag by nothing up to the ease. A notch beyond the end of its "
         "own edge "
         "is a fault as well and is not paired."},
        {"notch-kind", "Judged for every pair, whatever its places."},
        {"notch-in-dart",
         "Distances along the edge with darts closed; darts inside the edge and in the corners at its ends."},
        {"grain-missing", "For every piece that closes."},
        {"grain-direction",
         "Against the straight line between the edge's ends, or between the ends of a stretch where darts "
         "divide the edge: one of them has to be parallel. Up or down is the same. A grain that is not said "
         "to go along an edge is not judged."},
        {"fold-straight", "The largest distance from the straight line between the edge's ends."},
        {"fold-corner",
         "At both ends of the fold, darts in the corner closed. `ends` of the cut lets a corner off, as for "
         "a V neck. A fold that is not straight is taken as ruled from end to end."},
        {"cut-missing", "For every piece that closes."},
    };
    return texts;
}

inline std::string number(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%g", value);
    return text;
}

inline std::string default_tolerance(const CheckKind& kind) {
    const std::string name = kind.tolerance;
    if (name.empty()) return "none";
    for (const ToleranceName& tolerance : tolerance_names()) {
        if (name != tolerance.name) continue;
        std::string text(1, '`');
        text += name;
        text += "`, ";
        text += number(Tolerances{}.*tolerance.value);
        return text += tolerance.is_angle ? " degrees" : " mm";
    }
    throw std::logic_error("no tolerance is called '" + name + "'");
}

inline std::string fixture_path(const CheckKind& kind) {
    return std::string("fixtures/faults/") + kind.name + ".json";
}
inline std::string twin_path(const CheckKind& kind) {
    return std::string("fixtures/faults/") + kind.name + ".true.json";
}
inline std::string figure_path(const CheckKind& kind) {
    return std::string("figures/checks/") + kind.name + ".svg";
}

inline std::string section(const CheckKind& kind) {
    std::string text = std::string("## ") + kind.name + "\n\n" + kind.definition + "\n\n";
    text += how_it_judges().at(kind.name) + "\n\n";
    text += "- Default tolerance: " + default_tolerance(kind) + "\n";
    text += std::string("- Source: ") + kind.source + "\n";
    text += "- With the fault: [" + fixture_path(kind) + "](../" + fixture_path(kind) + "); without: [" +
            twin_path(kind) + "](../" + twin_path(kind) + ")\n\n";
    text += std::string("![") + kind.name + "](" + figure_path(kind) + ")\n";
    return text;
}

inline std::string text() {
    std::string text =
        "# The checks\n\n"
        "A pattern is checked piece by piece and seam by seam. Every check has a name that does not change; "
        "it is the "
        "same in messages, in JSON and here. All findings are given, in the order of this list, then of the "
        "pieces, "
        "then along the outline. A finding is a fault, which is to be mended before cutting, or a note, "
        "which does not "
        "fail the pattern. Sentences speak in mm, of a pattern in inches in inches: measures to the nearest "
        "1/32, with `about` where they are none, and differences in decimals; numbers in JSON are mm always. "
        "Nothing is judged twice: where two checks could say the same, the text below says "
        "which one "
        "does.\n\n"
        "Each tolerance can be set in the pattern file and on the command line by the name given. A figure "
        "shows the "
        "pattern that has the fault, with the place marked.\n\n"
        "This page is made from the list of checks in `lib/dartwright/checks/list_of_checks.cpp` and the "
        "texts in "
        "`tests/checks/checks_document.hpp`; a test compares them. To write the page and its figures again, "
        "run the "
        "tests of this room with `DARTWRIGHT_WRITE_DOCUMENTS` set.\n";
    for (const CheckKind& kind : list_of_checks()) {
        text += '\n';
        text += section(kind);
    }
    return text;
}

}  // namespace dartwright::checks_document
