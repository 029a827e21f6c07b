#include "dartwright/darts/turning/pivot_choices.hpp"

#include <cmath>

#include "dartwright/darts/folding/usual_press.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/elementary.hpp"

namespace dartwright {
namespace {

std::string degrees_to_a_decimal(double angle_rad) {
    return text_of("%.1f degrees", degrees(angle_rad));
}

void refuse_near_mouth(const Outline& outline, std::size_t dart, double apart) {
    if (apart >= nearest_to_mouth_mm) return;
    throw Impossible("the place is " + difference_told(apart) + " from the mouth of " +
                         quoted(outline.items[dart].as_dart()->name),
                     "choose a place at least " + least_told(nearest_to_mouth_mm, 0) + " from every mouth");
}

void refuse_near_mouths(const Outline& outline, const Run& run, double distance) {
    const std::vector<double> mouths = dart_distances(outline, run);
    for (std::size_t k = 0; k < mouths.size(); ++k) {
        refuse_near_mouth(outline, run.darts[k], std::abs(mouths[k] - distance));
    }
    for (const std::size_t dart : run.corner_darts_before) refuse_near_mouth(outline, dart, distance);
    for (const std::size_t dart : run.corner_darts_after) {
        refuse_near_mouth(outline, dart, run.length - distance);
    }
}

// Beside a corner, but not at it, the opened dart would leave a strip of edge too short to sew.
void refuse_near_corner(const TargetChosen& target, const Run& run) {
    if (target.at_start || target.at_end) return;
    const bool is_start = target.distance < run.length - target.distance;
    const double apart = is_start ? target.distance : run.length - target.distance;
    if (apart >= nearest_to_mouth_mm) return;
    const std::string corner = run.edge + "@0/" + name_of_end(run, is_start ? RunEnd::start : RunEnd::end);
    throw Impossible("the place is " + difference_told(apart) + " from the corner of " + quoted(run.edge),
                     "take the corner itself, " + corner + ", or a place at least " +
                         least_told(nearest_to_mouth_mm, 0) + " from it");
}

}  // namespace

DartFigures movable_dart(const Piece& piece, std::size_t item, double legs_mm) {
    const DartFigures f = figures_of(piece.outline, item);
    const std::string name = quoted(piece.outline.items[item].as_dart()->name);
    if (!(f.angle_rad > 0)) {
        throw Impossible("the mouth of " + name + " is shut or its legs are crossed", "draw the dart again");
    }
    const bool has_own_pivot = !(f.point == f.pivot);
    const double at_point = std::abs(f.leg_a - f.leg_b);
    const double at_pivot = has_own_pivot ? std::abs(f.pivot_leg_a - f.pivot_leg_b) : 0;
    if (std::max(at_point, at_pivot) > legs_mm) {
        throw Impossible("the legs of " + name + " differ by " +
                             difference_told(std::max(at_point, at_pivot)) + " (allowed " +
                             difference_told(legs_mm) + ")",
                         "true the dart first, so that its legs match");
    }
    if (std::abs(f.off_bisector) > legs_mm) {
        throw Impossible("the point of " + name + " lies " + difference_told(std::abs(f.off_bisector)) +
                             " off its centre line (allowed " + difference_told(legs_mm) + ")",
                         "true the dart first, so that its point lies on the centre line");
    }
    return f;
}

AngleChosen angle_chosen(const DartPart& part, const DartFigures& f) {
    const int ways =
        int(part.angle_rad.has_value()) + int(part.share.has_value()) + int(part.intake_mm.has_value());
    if (ways > 1)
        throw BadWords(
            "the part of the dart is given in more than one way; expected one of share, angle, intake");
    double asked = f.angle_rad;
    if (part.angle_rad) asked = *part.angle_rad;
    if (part.share) asked = *part.share * f.angle_rad;
    if (part.intake_mm) {
        const double leg = (f.pivot_leg_a + f.pivot_leg_b) / 2;
        const double left = 2 * leg * sine_of(f.angle_rad / 2) - *part.intake_mm;
        asked = f.angle_rad - (left <= 0 ? 2 * angle_of_sine(std::max(-1.0, left / (2 * leg)))
                                         : 2 * angle_of_sine(left / (2 * leg)));
    }
    if (!(asked > 0)) throw BadWords("the part of the dart to move is none; expected more than 0");
    // A share or an intake worked out by hand may miss the whole by rounding.
    if (asked > f.angle_rad + turn_rounding_rad) {
        throw Impossible("the dart has only " + degrees_to_a_decimal(f.angle_rad) + ", and " +
                             degrees_to_a_decimal(asked) + " were asked for",
                         "move all of it, or less");
    }
    if (asked >= f.angle_rad - turn_rounding_rad) return {f.angle_rad, true};
    return {asked, false};
}

TargetChosen target_anywhere(const Piece& piece, const std::vector<Run>& runs, const std::string& words) {
    TargetChosen out;
    out.place = parse_place(words, runs, piece.name);
    out.edge = out.place.edge;
    const Run& run = run_named(runs, out.edge, piece.name);
    out.distance = distance_from_start(out.place, run);
    // Where a distance names the corner itself: rounding of the run's length.
    out.at_start = out.distance <= sum_rounding_mm;
    out.at_end = !out.at_start && out.distance >= run.length - sum_rounding_mm;
    refuse_near_mouths(piece.outline, run, out.distance);
    refuse_near_corner(out, run);
    return out;
}

TargetChosen target_chosen(const Piece& piece, const std::vector<Run>& runs, const std::string& words) {
    TargetChosen out = target_anywhere(piece, runs, words);
    const bool is_inside = !out.at_start && !out.at_end;
    if (is_inside && is_fold_edge(piece, out.edge)) {
        throw Impossible("the place lies inside the fold " + quoted(out.edge),
                         "open the piece at its fold first, or name a centre seam that the fold becomes");
    }
    return out;
}

PressChosen press_chosen(const Piece& piece, const std::vector<Run>& runs, const PressQuestion& question) {
    if (question.wanted.empty()) return {};
    if (!find_run(runs, question.wanted)) run_named(runs, question.wanted, piece.name);
    if (question.wanted != question.own_run) return {question.wanted, ""};
    const std::string other = usual_press(piece, question.axis);
    if (other.empty() || other == question.own_run) {
        return {"", "the dart cannot be pressed towards " + quoted(question.wanted) +
                        ", in which it now stands; its press side is left undecided"};
    }
    return {other, "the dart stands in " + quoted(question.wanted) + " now, so it is pressed towards " +
                       quoted(other) + " instead"};
}

}  // namespace dartwright
