#include "dartwright/darts/redrawing/redrawn_edge.hpp"

#include <algorithm>
#include <array>

#include "dartwright/darts/redrawing/wedges.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/arc_length.hpp"
#include "dartwright/geometry/closest.hpp"
#include "dartwright/pattern/errors.hpp"

namespace dartwright {
namespace {

// A chain of edge items of one run without what lay within a span of its end (or start): what is kept, where
// that ends, its direction there in outline order, and the fullness of what was taken off.
struct Trimmed {
    Chain kept;
    Point at;
    Vector tangent;
    double fullness = 0;
    double rank = 0;  // of the first item taken off
};

// A place that a curve passes through, and its unit direction there.
struct Passing {
    Point at;
    Vector tangent;
};

std::vector<Curve> curves_of_part(const ChainItem& item) {
    return curves_of(*item.item.as_edge(), item.start, item.item.to);
}

double fullness_of(const ChainItem& item) {
    return item.item.as_edge()->fullness;
}

Trimmed trimmed_at_end(const Chain& run_part, double span_mm) {
    Trimmed out{run_part, run_part.front().start, tangent_at_start(curves_of_part(run_part.front()).front()),
                0, run_part.front().rank};
    double left = span_mm;
    while (!out.kept.empty() && left > sum_rounding_mm) {
        const ChainItem last = out.kept.back();
        out.kept.pop_back();
        const double here = length_of({last});
        out.rank = last.rank;
        if (left >= here - sum_rounding_mm) {
            out.fullness += fullness_of(last);
            left -= here;
            continue;
        }
        const CutItem halves = cut_item(last, here - left);
        out.kept.insert(out.kept.end(), halves.before.begin(), halves.before.end());
        for (const ChainItem& taken : halves.after) out.fullness += fullness_of(taken);
        out.rank = halves.after.front().rank;
        left = 0;
    }
    if (out.kept.empty()) return out;
    out.at = out.kept.back().item.to;
    out.tangent = tangent_at_end(curves_of_part(out.kept.back()).back());
    return out;
}

Trimmed trimmed_at_start(const Chain& run_part, double span_mm) {
    Trimmed out{run_part, run_part.back().item.to, tangent_at_end(curves_of_part(run_part.back()).back()), 0,
                run_part.front().rank};
    double left = span_mm;
    while (!out.kept.empty() && left > sum_rounding_mm) {
        const ChainItem first = out.kept.front();
        out.kept.erase(out.kept.begin());
        const double here = length_of({first});
        if (left >= here - sum_rounding_mm) {
            out.fullness += fullness_of(first);
            left -= here;
            continue;
        }
        const CutItem halves = cut_item(first, left);
        for (const ChainItem& taken : halves.before) out.fullness += fullness_of(taken);
        out.kept.insert(out.kept.begin(), halves.after.begin(), halves.after.end());
        left = 0;
    }
    if (out.kept.empty()) return out;
    out.at = out.kept.front().start;
    out.tangent = tangent_at_start(curves_of_part(out.kept.front()).front());
    return out;
}

// The cubic whose handles are a third of the chord: a fair curve for turns of up to some 60 degrees.
Cubic fair_curve(const Passing& from, const Passing& to) {
    const double handle = distance(from.at, to.at) / 3;
    return {{from.at, from.at + handle * from.tangent, to.at - handle * to.tangent, to.at}};
}

// The direction in which the two fair curves from `from` to the point and on to `to` bend evenly: their
// curvatures agree there, as in a spline. Angles are measured from the one chord; for the small ones of a
// line that is fair, a cubic over a chord L that leaves it by a and arrives by b has at its end the curvature
// (2 a + 4 b) / L.
Vector fair_direction(const Passing& from, Point through, const Passing& to) {
    const Vector in = through - from.at;
    const Vector out = to.at - through;
    const double turn = angle_from(in, out);
    const double start = angle_from(in, from.tangent);
    const double end = turn + angle_from(out, to.tangent);
    const double in_weight = 1 / norm(in);
    const double out_weight = 1 / norm(out);
    const double angle =
        (-start * in_weight + (3 * turn - end) * out_weight) / (2 * (in_weight + out_weight));
    return apply(turn_by(angle), unit(in));
}

ChainItem redrawn(const Curve& curve, const Trimmed& taken, const std::string& edge) {
    const Cubic& cubic = std::get<Cubic>(curve);
    return {cubic.p[0],
            {EdgeItem{edge, CubicShape{{cubic.p[1], cubic.p[2]}}, taken.fullness}, cubic.p[3]},
            taken.rank};
}

// The chain in three: what is redrawn before the joint, what is redrawn after it, and the rest between.
struct Parts {
    Trimmed before;
    Trimmed after;
    Chain rest;  // of the whole chain, after the one and before the other, without what either keeps
    bool is_all_round = false;
};

Parts parts_around(const Chain& around, double span_mm) {
    Chain run_before = run_at_end(around);
    Parts out;
    out.is_all_round = run_before.size() == around.size();
    // An edge that goes all round is not redrawn twice over.
    const double span = out.is_all_round ? std::min(span_mm, length_of(around) / 2) : span_mm;
    out.before = trimmed_at_end(run_before, span);
    if (out.is_all_round) {
        out.after = trimmed_at_start(out.before.kept, span);
        out.before.kept.clear();
        return out;
    }
    const Chain run_after = run_at_start(around);
    out.after = trimmed_at_start(run_after, span);
    out.rest.assign(around.begin() + static_cast<std::ptrdiff_t>(run_after.size()),
                    around.end() - static_cast<std::ptrdiff_t>(run_before.size()));
    return out;
}

Passing start_of_line(const Parts& parts) {
    return {parts.before.at, parts.before.tangent};
}

Passing end_of_line(const Parts& parts, const Motion& closing) {
    return {apply(closing, parts.after.at), apply(closing, parts.after.tangent)};
}

Vector direction_at_end(const Chain& edges) {
    return tangent_at_end(curves_of_part(edges.back()).back());
}

Vector direction_at_start(const Chain& edges) {
    return tangent_at_start(curves_of_part(edges.front()).front());
}

// The line in its two parts, before and after the joint.
CurveHalves line_drawn(const Parts& parts, const FoldedJoint& joint, Drawn drawn) {
    const Passing from = start_of_line(parts);
    const Passing to = end_of_line(parts, joint.closing);
    if (drawn == Drawn::across) {
        const Curve line = fair_curve(from, to);
        return split_at(line, closest_point(line, joint.before_end).parameter);
    }
    const Passing through{joint.before_end, fair_direction(from, joint.before_end, to)};
    return {fair_curve(from, through), fair_curve(through, to)};
}

// What comes before the joint and after it, the latter unfolded.
struct DrawnParts {
    ChainItem before;
    ChainItem after;
};
DrawnParts unfolded(const Parts& parts, const FoldedJoint& joint, const CurveHalves& line,
                    const std::array<std::string, 2>& edges) {
    DrawnParts out{redrawn(line.before, parts.before, edges[0]),
                   moved(redrawn(line.after, parts.after, edges[1]), inverse(joint.closing))};
    out.before.item.to = joint.before_end;
    out.after.start = joint.after_start;
    out.after.item.to = parts.after.at;
    return out;
}

}  // namespace

Cubic line_across(const Chain& around, const Motion& closing, double span_mm) {
    const Parts parts = parts_around(around, span_mm);
    return fair_curve(start_of_line(parts), end_of_line(parts, closing));
}

RedrawnChain redrawn_over(const Chain& around, const FoldedJoint& joint, double span_mm, Drawn drawn) {
    const Parts parts = parts_around(around, span_mm);
    const std::string edge = around.front().item.as_edge()->edge;
    const auto [before, after] = unfolded(parts, joint, line_drawn(parts, joint, drawn), {edge, edge});
    RedrawnChain out;
    out.chain.push_back(after);
    out.chain.insert(out.chain.end(), parts.after.kept.begin(), parts.after.kept.end());
    out.chain.insert(out.chain.end(), parts.rest.begin(), parts.rest.end());
    out.chain.insert(out.chain.end(), parts.before.kept.begin(), parts.before.kept.end());
    out.chain.push_back(before);
    out.before_mm = std::min(span_mm, length_of(run_at_end(around)));
    out.after_mm = std::min(span_mm, length_of(run_at_start(around)));
    return out;
}

JoinedEdges redrawn_at_joint(const JoinedEdges& edges, const FoldedJoint& joint, const JointSpans& spans,
                             Drawn drawn) {
    Parts parts;
    parts.before = trimmed_at_end(edges.before, spans.before_mm);
    parts.after = trimmed_at_start(edges.after, spans.after_mm);
    CurveHalves line;
    if (drawn == Drawn::apart) {
        const Passing in{joint.before_end, direction_at_end(edges.before)};
        const Passing out{joint.before_end, apply(joint.closing, direction_at_start(edges.after))};
        line = {fair_curve(start_of_line(parts), in), fair_curve(out, end_of_line(parts, joint.closing))};
    } else {
        line = line_drawn(parts, joint, drawn);
    }
    const std::array<std::string, 2> names{edges.before.front().item.as_edge()->edge,
                                           edges.after.front().item.as_edge()->edge};
    const DrawnParts drawn_parts = unfolded(parts, joint, line, names);
    JoinedEdges out{parts.before.kept, {drawn_parts.after}};
    out.before.push_back(drawn_parts.before);
    out.after.insert(out.after.end(), parts.after.kept.begin(), parts.after.kept.end());
    return out;
}

Chain redrawn_from(const LineStart& start, const Chain& edge, double span_mm) {
    const Trimmed rest = trimmed_at_start(edge, span_mm);
    const Curve line = fair_curve({start.at, start.direction}, {rest.at, rest.tangent});
    Chain out{redrawn(line, rest, edge.front().item.as_edge()->edge)};
    out.front().item.to = rest.at;
    out.insert(out.end(), rest.kept.begin(), rest.kept.end());
    return out;
}

Bridged bridged_over(const Chain& around, double span_mm) {
    const Parts parts = parts_around(around, span_mm);
    const Cubic line = fair_curve(start_of_line(parts), end_of_line(parts, {}));
    Trimmed taken = parts.before;
    taken.fullness += parts.after.fullness;
    Bridged out;
    out.chain.push_back(redrawn(line, taken, around.front().item.as_edge()->edge));
    out.chain.insert(out.chain.end(), parts.after.kept.begin(), parts.after.kept.end());
    out.chain.insert(out.chain.end(), parts.rest.begin(), parts.rest.end());
    out.chain.insert(out.chain.end(), parts.before.kept.begin(), parts.before.kept.end());
    out.before_mm = std::min(span_mm, length_of(run_at_end(around)));
    out.after_mm = std::min(span_mm, length_of(run_at_start(around)));
    out.sewn_mm = out.before_mm + out.after_mm - taken.fullness;
    out.length_mm = length(Curve{line});
    return out;
}

void refuse_bad_redrawing(const Outline& outline) {
    const Sentence trouble = trouble_with(wedge_polygon(outline), outline);
    if (trouble.empty()) return;
    throw Impossible("the edge cannot be redrawn so: " + trouble, "take a shorter span");
}

}  // namespace dartwright
