#include "dartwright/darts/unfolding/unfolded_contents.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {
namespace {

constexpr std::array<Half, 2> both_halves{Half::drawn, Half::added};

double off_fold(const Unfolding& u, Point p) {
    return std::abs(cross(u.line.along, p - u.line.at));
}

bool is_on_fold(const Unfolding& u, const std::vector<Point>& points, double gap_mm) {
    return std::all_of(points.begin(), points.end(), [&](Point p) { return off_fold(u, p) <= gap_mm; });
}

std::vector<Point> image(const Unfolding& u, std::vector<Point> points) {
    for (Point& p : points) p = mirrored(u.line, p);
    return points;
}

// The middle point of a straight stretch says nothing.
std::vector<Point> joined_at_fold(const std::vector<Point>& before, const std::vector<Point>& after) {
    constexpr double straight_mm = 1e-6;
    std::vector<Point> out(before.begin(), before.end() - 1);
    const Vector along = unit(after[1] - out.back());
    if (std::abs(cross(along, before.back() - out.back())) > straight_mm) out.push_back(before.back());
    out.insert(out.end(), after.begin() + 1, after.end());
    return out;
}

// A line that ends on the fold goes on in its mirror image, and begins there if both its ends are on the
// fold.
void add_line(std::vector<Mark>& marks, const Unfolding& u, const LineMark& line, const std::string& name,
              double gap_mm) {
    std::vector<Point> points = line.points;
    if (is_on_fold(u, points, gap_mm)) {
        marks.push_back({line, name});
        return;
    }
    if (off_fold(u, points.back()) > gap_mm && off_fold(u, points.front()) <= gap_mm)
        std::reverse(points.begin(), points.end());
    if (off_fold(u, points.back()) <= gap_mm) {
        std::vector<Point> other = image(u, points);
        std::reverse(other.begin(), other.end());
        marks.push_back({LineMark{joined_at_fold(points, other)}, name});
        return;
    }
    marks.push_back({line, u.name(Half::drawn, name)});
    marks.push_back({LineMark{image(u, line.points)}, u.name(Half::added, name)});
}

void add_drill(std::vector<Mark>& marks, const Unfolding& u, Point at, const std::string& name,
               double gap_mm) {
    if (off_fold(u, at) <= gap_mm) {
        marks.push_back({DrillMark{at}, name});
        return;
    }
    marks.push_back({DrillMark{at}, u.name(Half::drawn, name)});
    marks.push_back({DrillMark{mirrored(u.line, at)}, u.name(Half::added, name)});
}

void add_notches_of_fold(std::vector<Mark>& marks, const Unfolding& u) {
    const Run& fold = *find_run(u.half_runs, u.fold);
    for (const Notch& notch : u.half.notches) {
        if (notch.edge != u.fold) continue;
        const bool is_from_start = end_named(fold, notch.from) == RunEnd::start;
        const double at = is_from_start ? notch.at : fold.length - notch.at;
        marks.push_back({DrillMark{place_on_run(u.half.outline, fold, at).point}, "notch of " + u.fold});
    }
}

std::vector<AllowanceStretch> stretches_in_whole(const Unfolding& u, Half half, const std::string& edge,
                                                 std::vector<AllowanceStretch> stretches) {
    for (AllowanceStretch& each : stretches) each.from = end_in_whole(u, half, edge, each.from);
    return stretches;
}

DoubleDart named_double_dart(const Unfolding& u, Half half, DoubleDart dart) {
    dart.name = u.name(half, dart.name);
    if (dart.press == u.fold) {
        // Towards the fold is towards the other half: its edge that ends where the fold began.
        dart.press =
            u.name(half == Half::drawn ? Half::added : Half::drawn, find_run(u.half_runs, u.fold)->before);
    } else if (!dart.press.empty()) {
        dart.press = u.name(half, dart.press);
    }
    return dart;
}

// Half of it is drawn outside the half piece, so that it is whole already.
bool lies_along_fold(const Unfolding& u, const DoubleDart& dart, double gap_mm) {
    return is_on_fold(u, {dart.from, dart.to}, gap_mm) &&
           distance(mirrored(u.line, dart.widest[0]), dart.widest[1]) <= gap_mm;
}

void refuse_across_fold(const Unfolding& u, const DoubleDart& dart, double gap_mm) {
    for (const Point p : {dart.from, dart.to, dart.widest[0], dart.widest[1]}) {
        if (cross(u.line.along, p - u.line.at) >= -gap_mm) continue;
        throw Impossible("the double dart " + quoted(dart.name) + " lies across the fold",
                         "draw it along the fold, alike on both sides, or inside the piece");
    }
}

}  // namespace

std::vector<Notch> unfolded_notches(const Unfolding& u) {
    std::vector<Notch> out;
    for (const Notch& notch : u.half.notches) {
        if (notch.edge == u.fold) continue;
        for (const Half half : both_halves) {
            out.push_back({u.name(half, notch.edge), end_in_whole(u, half, notch.edge, notch.from), notch.at,
                           notch.kind});
        }
    }
    return out;
}

std::vector<std::pair<std::string, Allowance>> unfolded_allowance(const Unfolding& u, Notes notes) {
    std::vector<std::pair<std::string, Allowance>> out;
    for (const auto& [edge, allowance] : u.half.allowance) {
        if (edge == u.fold) {
            notes.push_back("the allowance of " + quoted(edge) + " is left out, for it is no edge any more");
            continue;
        }
        for (const Half half : both_halves) {
            Allowance there = allowance;
            if (const auto* stretches = std::get_if<std::vector<AllowanceStretch>>(&allowance))
                there = stretches_in_whole(u, half, edge, *stretches);
            out.emplace_back(u.name(half, edge), there);
        }
    }
    return out;
}

std::vector<Mark> unfolded_marks(const Unfolding& u, double gap_mm) {
    std::vector<Mark> out;
    for (const Mark& mark : u.half.marks) {
        if (const auto* line = std::get_if<LineMark>(&mark.what)) add_line(out, u, *line, mark.name, gap_mm);
        if (const auto* drill = std::get_if<DrillMark>(&mark.what))
            add_drill(out, u, drill->at, mark.name, gap_mm);
    }
    add_notches_of_fold(out, u);
    out.push_back({LineMark{{u.from, u.to}}, u.fold});
    return out;
}

std::vector<DoubleDart> unfolded_double_darts(const Unfolding& u, double gap_mm) {
    std::vector<DoubleDart> out;
    for (const DoubleDart& dart : u.half.double_darts) {
        if (lies_along_fold(u, dart, gap_mm)) {
            out.push_back(dart);
            if (dart.press == u.fold) out.back().press.clear();
            if (!out.back().press.empty()) out.back().press = u.name(Half::drawn, dart.press);
            continue;
        }
        refuse_across_fold(u, dart, gap_mm);
        DoubleDart other = dart;
        other.from = mirrored(u.line, dart.from);
        other.to = mirrored(u.line, dart.to);
        // The two widest points change sides, so that the first stays on the same hand.
        other.widest = {mirrored(u.line, dart.widest[1]), mirrored(u.line, dart.widest[0])};
        out.push_back(named_double_dart(u, Half::drawn, dart));
        out.push_back(named_double_dart(u, Half::added, other));
    }
    return out;
}

}  // namespace dartwright
