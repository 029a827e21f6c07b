#include "dartwright/checks/cut_checks.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/checks/words.hpp"
#include "dartwright/geometry/elementary.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {
namespace {

Finding finding_on(const PieceContext& piece, const char* check, const std::string& edge) {
    Finding finding;
    finding.check = check;
    finding.piece = piece.name();
    finding.edge = edge;
    return finding;
}

PlacedFindings missing(const PieceContext& piece) {
    PlacedFindings findings;
    if (!piece.piece->grain) {
        Finding finding = finding_on(piece, "grain-missing", "");
        finding.message = piece.name() + ": no grain is marked.";
        finding.remedy = "Draw the grain, as a rule parallel to the centre line.";
        findings.push_back({finding, piece.index, 0, 0});
    }
    if (!piece.piece->cut) {
        Finding finding = finding_on(piece, "cut-missing", "");
        finding.message = piece.name() + ": it is not said how many to cut.";
        finding.remedy = "Write on the piece how many to cut, and whether on the fold.";
        findings.push_back({finding, piece.index, 0, 0});
    }
    return findings;
}

// The angle between two lines, whichever way they point, in [0, 90].
double angle_between_lines_deg(Vector a, Vector b) {
    return degrees(angle_of_direction(std::abs(cross(a, b)), std::abs(dot(a, b))));
}

Vector chord_of(const Outline& outline, const Run& run) {
    return end_point(outline, run, RunEnd::end) - end_point(outline, run, RunEnd::start);
}

// The chords of the run's stretches between darts: a dart turns what lies beyond it.
std::vector<Vector> chords_between_darts(const Outline& outline, const Run& run) {
    std::vector<Vector> chords;
    Point from = start_of_item(outline, run.items.front());
    for (std::size_t k = 0; k < run.items.size(); ++k) {
        const Point to = outline.items[run.items[k]].to;
        const bool is_last = k + 1 == run.items.size();
        const std::size_t following = (run.items[k] + 1) % outline.items.size();
        if (!is_last && following == run.items[k + 1]) continue;
        chords.push_back(to - from);
        if (!is_last) from = start_of_item(outline, run.items[k + 1]);
    }
    return chords;
}

double least_angle_deg(Vector line, const std::vector<Vector>& chords) {
    double least = 90;
    for (const Vector chord : chords) least = std::min(least, angle_between_lines_deg(line, chord));
    return least;
}

PlacedFindings grain_direction(const PieceContext& piece, const Tolerances& tolerances) {
    const std::optional<Grain>& grain = piece.piece->grain;
    if (!grain || grain->along.empty()) return {};
    const Run& run = run_named(piece.runs, grain->along, piece.name());
    const double angle = least_angle_deg(grain->to - grain->from, chords_between_darts(piece.outline(), run));
    if (angle <= tolerances.grain_deg) return {};
    Finding finding = finding_on(piece, "grain-direction", run.edge);
    finding.at = grain->from;
    finding.measured = finding.difference = angle;
    finding.expected = 0;
    finding.allowed = tolerances.grain_deg;
    finding.message = piece.name() + ": the grain is " + degrees_in_sentence(angle) +
                      " out of parallel with " + run.edge + ".";
    finding.remedy = "Measure the same distance from " + run.edge +
                     " at two places far apart and draw the grain "
                     "through both.";
    return {{finding, piece.index, run.items.front(), 0}};
}

// The edges laid on a fold, none to two.
std::vector<const Run*> folds_of(const PieceContext& piece) {
    std::vector<const Run*> folds;
    for (const std::string& edge : fold_edges(*piece.piece))
        folds.push_back(&run_named(piece.runs, edge, piece.name()));
    return folds;
}

struct Deviation {
    double distance = 0;
    Point at;
    std::size_t item = 0;
};

// Parameters between 0 and 1 at which a cubic runs along a direction: the roots of a quadratic.
std::vector<double> parameters_along(const Cubic& cubic, Vector direction) {
    std::array<double, 3> steps{};  // of the controls' distances from the line
    for (std::size_t i = 0; i < 3; ++i) steps[i] = cross(direction, cubic.p[i + 1] - cubic.p[i]);
    const double a = steps[0] - 2 * steps[1] + steps[2];
    const double b = steps[1] - steps[0];
    const double root = b * b - a * steps[0];
    if (root < 0) return {};
    // Without the difference of two near numbers.
    const double q = -(b + std::copysign(std::sqrt(root), b));
    std::vector<double> out;
    for (const double t : {a != 0 ? q / a : -1, q != 0 ? steps[0] / q : -1})
        if (t > 0 && t < 1) out.push_back(t);
    return out;
}

// Where a curve may be farthest from a line of that direction.
std::vector<Point> farthest_from_line(const Curve& curve, Vector direction) {
    std::vector<Point> out{start_of(curve), end_of(curve)};
    if (const auto* cubic = std::get_if<Cubic>(&curve))
        for (const double t : parameters_along(*cubic, direction)) out.push_back(point_at(curve, t));
    return out;
}

// How far the run leaves the straight line between its ends, where it does so most. To rounding, so that it
// is the same however the run is divided.
Deviation largest_deviation(const PieceContext& piece, const Run& run) {
    const Point start = end_point(piece.outline(), run, RunEnd::start);
    const Vector along = unit(chord_of(piece.outline(), run));
    Deviation largest;
    for (const std::size_t item : run.items) {
        for (const Curve& curve : curves_of_item(piece.outline(), item)) {
            for (const Point p : farthest_from_line(curve, along)) {
                const double deviation = std::abs(cross(along, p - start));
                if (deviation > largest.distance) largest = {deviation, p, item};
            }
        }
    }
    return largest;
}

PlacedFindings fold_straight(const PieceContext& piece, const Run& fold, const Tolerances& tolerances) {
    const Deviation deviation = largest_deviation(piece, fold);
    if (deviation.distance <= tolerances.fold_mm) return {};
    Finding finding = finding_on(piece, "fold-straight", fold.edge);
    finding.at = deviation.at;
    finding.measured = finding.difference = deviation.distance;
    finding.expected = 0;
    finding.allowed = tolerances.fold_mm;
    finding.message = piece.name() + ": " + fold.edge + " leaves the straight line between its ends by " +
                      difference_in_sentence(deviation.distance, piece.unit) +
                      ", and cannot be laid on a fold.";
    finding.remedy = "Rule the fold straight from end to end, or cut two and sew a seam there.";
    return {{finding, piece.index, deviation.item,
             distance(start_of_item(piece.outline(), deviation.item), deviation.at)}};
}

// By how much the corner at the run's end grows once the run is ruled straight between its ends.
double grows_when_ruled_rad(const Outline& outline, const Run& run, RunEnd end) {
    const Vector chord = chord_of(outline, run);
    return end == RunEnd::start ? angle_from(chord, direction_at_start(outline, run.items.front()))
                                : angle_from(direction_at_end(outline, run.items.back()), chord);
}

// The corner at the end of a fold. A bowed fold says nothing of its own corner, and is taken as ruled
// straight; so is a bowed fold that it meets there.
double fold_corner_rad(const PieceContext& piece, const Run& fold, RunEnd end,
                       const std::vector<const Run*>& bowed) {
    double corner = corner_angle(piece.outline(), fold, end);
    for (const Run* each : bowed) {
        if (each == &fold) corner += grows_when_ruled_rad(piece.outline(), *each, end);
        if (each == &fold) continue;
        if (end == RunEnd::start && each->edge == fold.before)
            corner += grows_when_ruled_rad(piece.outline(), *each, RunEnd::end);
        if (end == RunEnd::end && each->edge == fold.after)
            corner += grows_when_ruled_rad(piece.outline(), *each, RunEnd::start);
    }
    return corner;
}

bool is_free(const Cut& cut, const Run& fold, RunEnd end) {
    return std::any_of(cut.ends.begin(), cut.ends.end(), [&](const auto& entry) {
        return entry.second == CornerIs::free && end_named(fold, entry.first) == end;
    });
}

PlacedFindings fold_corner(const PieceContext& piece, const Run& fold, RunEnd end,
                           const std::vector<const Run*>& bowed, const Tolerances& tolerances) {
    if (is_free(*piece.piece->cut, fold, end)) return {};
    const double opened = 2 * degrees(fold_corner_rad(piece, fold, end, bowed));
    if (std::abs(opened - 180) <= tolerances.corner_deg) return {};
    const bool is_start = end == RunEnd::start;
    const std::string& crossing = is_start ? fold.before : fold.after;
    Finding finding = finding_on(piece, "fold-corner", fold.edge);
    finding.at = end_point(piece.outline(), fold, end);
    finding.measured = opened;
    finding.expected = 180;
    finding.difference = opened - 180;
    finding.allowed = tolerances.corner_deg;
    const bool is_bowed = std::find(bowed.begin(), bowed.end(), &fold) != bowed.end();
    finding.message = piece.name() + ": opened out at " + fold.edge +
                      (is_bowed ? " ruled straight, " : ", ") + crossing + " makes an angle of " +
                      degrees_in_sentence(opened) + " and not 180, so that it " +
                      words::at_joint({crossing}, opened) + " at the fold.";
    finding.remedy = "Square " + crossing +
                     " to the fold for the first centimetre or so, or say that the end is free "
                     "if the corner is meant.";
    return {{finding, piece.index, is_start ? fold.items.front() : fold.items.back(),
             is_start ? 0 : fold.length}};
}

}  // namespace

bool is_bowed_fold(const PieceContext& piece, const Run& run, const Tolerances& tolerances) {
    const std::vector<std::string> folds = fold_edges(*piece.piece);
    return std::find(folds.begin(), folds.end(), run.edge) != folds.end() &&
           largest_deviation(piece, run).distance > tolerances.fold_mm;
}

PlacedFindings cut_findings(const PieceContext& piece, const Tolerances& tolerances) {
    PlacedFindings findings = joined(missing(piece), grain_direction(piece, tolerances));
    const std::vector<const Run*> folds = folds_of(piece);
    std::vector<const Run*> bowed;
    for (const Run* fold : folds)
        if (is_bowed_fold(piece, *fold, tolerances)) bowed.push_back(fold);
    for (const Run* fold : folds) {
        findings = joined(std::move(findings), fold_straight(piece, *fold, tolerances));
        for (const RunEnd end : {RunEnd::start, RunEnd::end}) {
            const std::string& crossing = end == RunEnd::start ? fold->before : fold->after;
            const bool is_told_already = folds.size() == 2 && fold == folds[1] && crossing == folds[0]->edge;
            if (!is_told_already)
                findings = joined(std::move(findings), fold_corner(piece, *fold, end, bowed, tolerances));
        }
    }
    return findings;
}

}  // namespace dartwright
