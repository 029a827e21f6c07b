#include "dartwright/comparing/compared_contents.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "dartwright/checks/notches_along.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/closest.hpp"
#include "dartwright/geometry/elementary.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/allowance.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/run_index.hpp"
#include "dartwright/pattern/same_folds.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {
namespace {

Loss told(const char* what, const Piece& piece, std::string message, std::string remedy) {
    Loss out;
    out.what = what;
    out.piece = piece.name;
    out.message = piece.name + ": " + std::move(message);
    out.remedy = std::move(remedy);
    return out;
}

Loss told_of_dart(const char* what, const Piece& piece, const std::string& dart, const std::string& message,
                  std::string remedy) {
    Loss out = told(what, piece, dart + " " + message, std::move(remedy));
    out.darts = {dart};
    return out;
}

// How far from where they should be the places are, carried as one by the motion that brings them nearest.
double strays(const std::vector<Point>& before, const std::vector<Point>& after,
              const std::vector<ComparedPart>& parts) {
    double least = parts.empty() ? 0 : std::numeric_limits<double>::infinity();
    for (const ComparedPart& part : parts) {
        double most = 0;
        for (std::size_t i = 0; i < before.size(); ++i)
            most = std::max(most, distance(apply(part.motion, before[i]), after[i]));
        least = std::min(least, most);
    }
    return least;
}

// The two ends and the two widest places may be given in either order.
double strays(const DoubleDart& before, const DoubleDart& after, const std::vector<ComparedPart>& parts) {
    const std::vector<Point> places{before.from, before.to, before.widest[0], before.widest[1]};
    double least = std::numeric_limits<double>::infinity();
    for (const bool is_turned : {false, true}) {
        for (const bool is_crossed : {false, true}) {
            const std::vector<Point> now{is_turned ? after.to : after.from, is_turned ? after.from : after.to,
                                         after.widest[is_crossed ? 1 : 0], after.widest[is_crossed ? 0 : 1]};
            least = std::min(least, strays(places, now, parts));
        }
    }
    return least;
}

template <class Named>
const Named* named(const std::vector<Named>& all, const std::string& name) {
    const auto found =
        std::find_if(all.begin(), all.end(), [&name](const Named& each) { return each.name == name; });
    return found == all.end() ? nullptr : &*found;
}

std::string press_words(const std::string& press) {
    return press.empty() ? "no side" : press;
}

class DartsThatStayed {
  public:
    DartsThatStayed(const PieceBothWays& both, const Tolerances& tolerances)
        : before_(both.before.piece), after_(both.after.piece), tolerances_(tolerances), unit_(both.unit) {}

    void add_changes(std::vector<Loss>& out, const ComparedDart& dart) const {
        if (dart.change != DartChange::kept && dart.change != DartChange::changed) return;
        const std::size_t i = *find_dart(before_, dart.name);
        const std::size_t j = *find_dart(after_, dart.name);
        const DartItem& was = *before_.outline.items[i].as_dart();
        const DartItem& is = *after_.outline.items[j].as_dart();
        add_words(out, was, is);
        const DartFigures f = figures_of(before_.outline, i);
        const DartFigures g = figures_of(after_.outline, j);
        // A dart of another angle is told as that.
        if (std::abs(f.angle_rad - g.angle_rad) > radians(tolerances_.grain_deg)) return;
        if (!(f.intake > 0) || !(g.intake > 0)) return;
        const Motion motion = motion_between({f.a, f.b}, {g.a, g.b});
        const double moved = distance(apply(motion, f.point), g.point);
        if (moved > tolerances_.notch_mm) {
            Loss loss =
                told_of_dart("dart-point", before_, dart.name,
                             "ends " + difference_in_sentence(moved, unit_) + " from where its point was.",
                             "Mark the point again, measured from the ends of the mouth.");
            loss.amount = {0.0, moved};
            loss.allowed = tolerances_.notch_mm;
            out.push_back(loss);
            return;
        }
        const double off = std::max(legs_off(i, j, motion), 0.0);
        if (off <= tolerances_.fold_mm + moved) return;
        Loss loss =
            told_of_dart("dart-legs", before_, dart.name,
                         "has legs of another shape, by up to " + difference_in_sentence(off, unit_) + ".",
                         "Trace the legs again from the old dart.");
        loss.amount = {0.0, off};
        loss.allowed = tolerances_.fold_mm;
        out.push_back(loss);
    }

  private:
    void add_words(std::vector<Loss>& out, const DartItem& was, const DartItem& is) const {
        if (was.press != is.press)
            out.push_back(told_of_dart(
                "dart-press", before_, was.name,
                "was pressed to " + press_words(was.press) + " and is to " + press_words(is.press) + ".",
                "Say which way it is pressed; its mouth is cut for it."));
        add_back_off(out, was, is);
        const bool is_same = was.stitched.has_value() == is.stitched.has_value() &&
                             (!was.stitched || std::abs(*was.stitched - *is.stitched) <= tolerances_.seam_mm);
        if (is_same) return;
        const auto far = [this](const DartItem& dart) {
            return dart.stitched ? measure_in_sentence(*dart.stitched, unit_) + " from the mouth"
                                 : std::string("to its point");
        };
        out.push_back(told_of_dart("dart-stitched", before_, was.name,
                                   "was stitched " + far(was) + " and is " + far(is) + ".",
                                   "Mark again where the stitching ends."));
    }

    void add_back_off(std::vector<Loss>& out, const DartItem& was, const DartItem& is) const {
        const bool is_same = was.back_off.has_value() == is.back_off.has_value() &&
                             (!was.back_off || std::abs(*was.back_off - *is.back_off) <= tenth_of_hair_mm);
        if (is_same) return;
        const auto asked = [this](const DartItem& dart) {
            return dart.back_off ? measure_in_sentence(*dart.back_off, unit_) : std::string("none");
        };
        out.push_back(told_of_dart(
            "dart-back-off", before_, was.name,
            "asked for a back-off of " + asked(was) + " and asks for " + asked(is) + ".",
            "Ask for the old back-off if another was not meant; the point's place is compared apart."));
    }

    double legs_off(std::size_t i, std::size_t j, const Motion& motion) const {
        const Legs was = legs_of_item(before_.outline, i);
        const Legs is = legs_of_item(after_.outline, j);
        double most = 0;
        constexpr int places = 16;
        const auto look = [&](const Curve& a, const Curve& b) {
            for (int k = 0; k <= places; ++k) {
                const double t = double(k) / places;
                most = std::max(most, closest_point(b, apply(motion, point_at(a, t))).distance);
                most = std::max(most, closest_point(a, apply(inverse(motion), point_at(b, t))).distance);
            }
        };
        look(was.to_point, is.to_point);
        look(was.from_point, is.from_point);
        return most;
    }

    const Piece& before_;
    const Piece& after_;
    const Tolerances& tolerances_;
    Unit unit_;
};

/// Marks of one name.
struct MarksOfName {
    std::vector<Point> drills;
    std::vector<Curve> lines;
    bool is_empty() const { return drills.empty() && lines.empty(); }
};

std::map<std::string, MarksOfName> marks_by_name(const Piece& piece) {
    std::map<std::string, MarksOfName> out;
    for (const Mark& mark : piece.marks) {
        MarksOfName& of_name = out[mark.name];
        if (const auto* drill = std::get_if<DrillMark>(&mark.what)) {
            of_name.drills.push_back(drill->at);
            continue;
        }
        const std::vector<Point>& points = std::get<LineMark>(mark.what).points;
        for (std::size_t i = 0; i + 1 < points.size(); ++i)
            of_name.lines.push_back(Line{points[i], points[i + 1]});
    }
    return out;
}

std::vector<Motion> motions_of(const std::vector<ComparedPart>& parts) {
    std::vector<Motion> out;
    for (const ComparedPart& part : parts) out.push_back(part.motion);
    return out;
}
std::vector<Motion> backwards(std::vector<Motion> motions) {
    for (Motion& motion : motions) motion = inverse(motion);
    return motions;
}

// Where there is no cloth in one of the patterns alone, lines may begin and end.
std::vector<std::vector<Point>> wedges_of(const Piece& piece, const std::vector<ComparedDart>& darts) {
    std::vector<std::vector<Point>> out;
    for (const ComparedDart& dart : darts) {
        const auto item = find_dart(piece, dart.name);
        if (!item || dart.change == DartChange::kept) continue;
        const DartFigures f = figures_of(piece.outline, *item);
        out.push_back({f.a, f.pivot, f.b});
    }
    return out;
}

/// The marks of one pattern, looked for in the other.
class MarksSought {
  public:
    MarksSought(std::vector<std::vector<Point>> wedges, std::vector<Motion> motions,
                const Tolerances& tolerances)
        : wedges_(std::move(wedges)), motions_(std::move(motions)), tolerances_(tolerances) {}

    // The most that a place of a mark is off.
    double most_off(const MarksOfName& marks, const MarksOfName& others) const {
        double most = 0;
        for (const Point p : marks.drills) most = std::max(most, drill_off(p, others));
        for (const Curve& line : marks.lines) {
            const Line& straight = std::get<Line>(line);
            const double count =
                std::clamp(std::ceil(distance(straight.a, straight.b) / spacing_mm), 1.0, 64.0);
            for (double k = 0; k <= count; ++k)
                most = std::max(most, line_off(between(straight.a, straight.b, k / count), others));
        }
        return most;
    }

  private:
    static constexpr double spacing_mm = 10;

    double drill_off(Point p, const MarksOfName& others) const {
        double least = std::numeric_limits<double>::infinity();
        for (const Motion& motion : motions_) {
            for (const Point other : others.drills)
                least = std::min(least, distance(apply(motion, p), other));
        }
        return least;
    }
    double line_off(Point p, const MarksOfName& others) const {
        double least = std::numeric_limits<double>::infinity();
        for (const Motion& motion : motions_) {
            for (const Curve& other : others.lines)
                least = std::min(least, closest_point(other, apply(motion, p)).distance);
            if (least <= tolerances_.notch_mm) return least;
        }
        return is_off_cloth(p) ? 0 : least;
    }
    bool is_off_cloth(Point p) const {
        return std::any_of(wedges_.begin(), wedges_.end(), [p](const std::vector<Point>& wedge) {
            return where_in_polygon(wedge, p) != Where::outside;
        });
    }

    std::vector<std::vector<Point>> wedges_;
    std::vector<Motion> motions_;
    const Tolerances& tolerances_;
};

std::string mark_words(const std::string& name) {
    return name.empty() ? "a mark without a name" : "the mark " + name;
}

void add_mark_changes(std::vector<Loss>& out, const PieceBothWays& both, const ComparedPiece& compared,
                      const Tolerances& tolerances) {
    const Piece& before = both.before.piece;
    const auto marks_before = marks_by_name(before);
    const auto marks_after = marks_by_name(both.after.piece);
    const MarksSought there(wedges_of(before, compared.darts), motions_of(compared.parts), tolerances);
    const MarksSought back(wedges_of(both.after.piece, compared.darts), backwards(motions_of(compared.parts)),
                           tolerances);
    for (const auto& [name, marks] : marks_before) {
        const auto same = marks_after.find(name);
        if (same == marks_after.end()) {
            out.push_back(told("mark-missing", before, mark_words(name) + " is gone.",
                               "Draw it again from the old piece."));
            continue;
        }
        if (compared.parts.empty()) continue;
        const double off = std::max(there.most_off(marks, same->second), back.most_off(same->second, marks));
        if (off <= tolerances.notch_mm) continue;
        Loss loss = told("mark-place", before,
                         mark_words(name) + (std::isfinite(off) ? " lies or reaches " +
                                                                      difference_in_sentence(off, both.unit) +
                                                                      " from where it was."
                                                                : " is of another kind."),
                         "Draw it again from the old piece.");
        if (std::isfinite(off)) loss.amount = {0.0, off};
        loss.allowed = tolerances.notch_mm;
        out.push_back(loss);
    }
    for (const auto& [name, marks] : marks_after) {
        if (marks_before.count(name)) continue;
        out.push_back(
            told("mark-new", before, mark_words(name) + " is new.", "Take it out if it was not meant."));
    }
}

// Degrees between two lines, whichever way along.
double between_lines_deg(Vector a, Vector b) {
    return degrees(std::abs(angle_of_direction(cross(a, b), dot(a, b)))) <= 90
               ? degrees(std::abs(angle_of_direction(cross(a, b), dot(a, b))))
               : 180 - degrees(std::abs(angle_of_direction(cross(a, b), dot(a, b))));
}

void add_grain_changes(std::vector<Loss>& out, const PieceBothWays& both, const ComparedPiece& compared,
                       const Tolerances& tolerances) {
    const auto& was = both.before.piece.grain;
    const auto& is = both.after.piece.grain;
    const char* remedy = "Draw the grain again from the old piece.";
    if (!was && !is) return;
    if (!was || !is) {
        out.push_back(
            told("grain", both.before.piece, was ? "the grain is gone." : "the grain is new.", remedy));
        return;
    }
    if (was->along != is->along) {
        const auto along = [](const Grain& grain) { return grain.along.empty() ? "no edge" : grain.along; };
        out.push_back(told("grain", both.before.piece,
                           "the grain was along " + along(*was) + " and is along " + along(*is) + ".",
                           remedy));
    }
    double least = compared.parts.empty() ? 0 : 90;
    for (const ComparedPart& part : compared.parts)
        least =
            std::min(least, between_lines_deg(apply(part.motion, was->to - was->from), is->to - is->from));
    if (least <= tolerances.grain_deg) return;
    Loss loss = told("grain", both.before.piece,
                     "the grain is turned by " + degrees_in_sentence(least) + " against the piece.", remedy);
    loss.amount = {0.0, least};
    loss.allowed = tolerances.grain_deg;
    out.push_back(loss);
}

std::optional<double> width_at(const std::vector<RunWidth>& widths, double at_mm) {
    for (const RunWidth& each : widths) {
        if (at_mm <= each.to_mm) return each.width_mm;
    }
    return widths.empty() ? std::nullopt : widths.back().width_mm;
}

bool is_same_width(std::optional<double> a, std::optional<double> b) {
    return a.has_value() == b.has_value() && (!a || std::abs(*a - *b) <= tenth_of_hair_mm);
}

// Within every stretch of either, but for what is shorter than a notch may be off.
bool have_same_widths(const std::vector<RunWidth>& before, const std::vector<RunWidth>& after, double length,
                      double within_mm) {
    std::vector<double> stops{0, length};
    for (const auto* widths : {&before, &after}) {
        for (const RunWidth& each : *widths) stops.push_back(std::clamp(each.to_mm, 0.0, length));
    }
    std::sort(stops.begin(), stops.end());
    for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
        if (stops[i + 1] - stops[i] <= within_mm && stops.size() > 2) continue;
        const double at = (stops[i] + stops[i + 1]) / 2;
        if (!is_same_width(width_at(before, at), width_at(after, at))) return false;
    }
    return true;
}

void add_allowance_changes(std::vector<Loss>& out, const PieceBothWays& both, const Tolerances& tolerances) {
    const RunIndex runs_after(both.after.runs);
    for (const Run& run : both.before.runs) {
        const Run* same = runs_after.find(run.edge);
        if (!same) continue;
        if (have_same_widths(widths_along(both.before.piece, run), widths_along(both.after.piece, *same),
                             std::min(run.length, same->length), tolerances.notch_mm))
            continue;
        Loss loss = told("allowance", both.before.piece, run.edge + " has another allowance.",
                         "Give the edge its old allowance if another was not meant.");
        loss.edge = run.edge;
        out.push_back(loss);
    }
}

// Where the run is said to begin, by sewn distance from its start.
std::optional<double> beginning_of(const Piece& piece, const Run& run) {
    for (const Notch& notch : piece.notches) {
        if (notch.begins && notch.edge == run.edge) return distance_on_run(notch, run);
    }
    return std::nullopt;
}

void add_beginning_changes(std::vector<Loss>& out, const PieceBothWays& both, const Tolerances& tolerances) {
    const RunIndex runs_after(both.after.runs);
    for (const Run& run : both.before.runs) {
        const Run* same = runs_after.find(run.edge);
        if (!same) continue;
        const auto was = beginning_of(both.before.piece, run);
        const auto is = beginning_of(both.after.piece, *same);
        if (was.has_value() == is.has_value() && (!was || std::abs(*was - *is) <= tolerances.notch_mm))
            continue;
        Loss loss = told("notch-begins", both.before.piece, run.edge + " begins at another place.",
                         "Say again at which notch the closed edge begins.");
        loss.edge = run.edge;
        out.push_back(loss);
    }
}

bool are_cut_alike(const std::optional<Cut>& before, std::optional<Cut> after) {
    if (before && after && are_on_the_same_folds(*before, *after)) {
        after->fold = before->fold;
        after->second_fold = before->second_fold;
    }
    return before == after;
}

void add_piece_changes(std::vector<Loss>& out, const PieceBothWays& both) {
    const Piece& before = both.before.piece;
    const Piece& after = both.after.piece;
    if (!are_cut_alike(before.cut, after.cut))
        out.push_back(told("cut", before, "is to be cut in another way (quantity, fold).",
                           "Say how many are cut, and on which fold, as before."));
    if (before.worn != after.worn)
        out.push_back(told("worn", before, "is said to be worn elsewhere (front, back).",
                           "Say what it was, or left and right are not the wearer's."));
    if (before.worn && after.worn && before.side_up != after.side_up)
        out.push_back(told("side-up", before, "the other side of the cloth is up.",
                           "Say which side is up as before, or left and right change places."));
}

}  // namespace

std::vector<Loss> losses_of_contents(const PieceBothWays& both, const ComparedPiece& compared,
                                     const Tolerances& tolerances) {
    std::vector<Loss> out;
    const Piece& before = both.before.piece;
    for (const DoubleDart& dart : before.double_darts) {
        const DoubleDart* same = named(both.after.piece.double_darts, dart.name);
        if (!same) {
            out.push_back(told_of_dart("double-dart-missing", before, dart.name, "is gone.",
                                       "Draw the dart again from the old piece."));
            continue;
        }
        const double off = strays(dart, *same, compared.parts);
        if (off <= tolerances.notch_mm) continue;
        Loss loss =
            told_of_dart("double-dart-place", before, dart.name,
                         "has its points or widest places " + difference_in_sentence(off, both.unit) +
                             " from where they were.",
                         "Draw the dart again from the old piece; it goes with the part that it lies in.");
        loss.amount = {0.0, off};
        loss.allowed = tolerances.notch_mm;
        out.push_back(loss);
    }
    return out;
}

std::vector<Loss> changes_of_contents(const PieceBothWays& both, const ComparedPiece& compared,
                                      const Tolerances& tolerances) {
    std::vector<Loss> out;
    const DartsThatStayed darts(both, tolerances);
    for (const ComparedDart& dart : compared.darts) darts.add_changes(out, dart);
    for (const DoubleDart& dart : both.before.piece.double_darts) {
        const DoubleDart* same = named(both.after.piece.double_darts, dart.name);
        if (same && same->press != dart.press)
            out.push_back(told_of_dart(
                "dart-press", both.before.piece, dart.name,
                "was pressed to " + press_words(dart.press) + " and is to " + press_words(same->press) + ".",
                "Say which way it is pressed."));
    }
    for (const DoubleDart& dart : both.after.piece.double_darts) {
        if (!named(both.before.piece.double_darts, dart.name))
            out.push_back(told_of_dart("double-dart-new", both.before.piece, dart.name, "is new.",
                                       "Take it out if it was not meant."));
    }
    add_mark_changes(out, both, compared, tolerances);
    add_grain_changes(out, both, compared, tolerances);
    add_allowance_changes(out, both, tolerances);
    add_beginning_changes(out, both, tolerances);
    add_piece_changes(out, both);
    return out;
}

}  // namespace dartwright
