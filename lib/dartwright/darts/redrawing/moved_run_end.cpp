#include "dartwright/darts/redrawing/moved_run_end.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/redrawing/outline_chain.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/arc_length.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/mirrored.hpp"

namespace dartwright {
namespace {

double sewn(const ChainItem& item) {
    return length_of({item}) - item.item.as_edge()->fullness;
}

void refuse_too_short(const Chain& part, double by_mm) {
    double whole = 0;
    for (const ChainItem& item : part) whole += sewn(item);
    // A strip narrower than this could not be sewn.
    constexpr double least_left_mm = 1;
    if (whole + by_mm >= least_left_mm) return;
    throw Impossible(quoted(part.front().item.as_edge()->edge) + " would have to be shortened by " +
                         measure_told(-by_mm) + ", and is only " + measure_told(whole) +
                         " long up to its other end or a dart",
                     "move the end on the other side");
}

// Without what lies within a sewn distance of its end.
Chain shortened(Chain chain, double by_mm) {
    double left = by_mm;
    // Less than the rounding of a length.
    while (left > step_rounding_mm) {
        const ChainItem last = chain.back();
        chain.pop_back();
        if (left >= sewn(last)) {
            left -= sewn(last);
            continue;
        }
        const double whole = length_of({last});
        const CutItem halves = cut_item(last, whole * (1 - left / sewn(last)));
        chain.insert(chain.end(), halves.before.begin(), halves.before.end());
        left = 0;
    }
    return chain;
}

struct Continuation {
    Point from;
    Vector from_direction;
    Point end;
    Vector direction;
};
Cubic continued_to(const Continuation& line, double ahead_mm) {
    const Point to = line.end + ahead_mm * line.direction;
    const double handle = distance(line.from, to) / 3;
    return {{line.from, line.from + handle * line.from_direction, to - handle * line.direction, to}};
}

// The curve's last stretch and what it goes on by as one cubic, as long as both.
ChainItem continued(const ChainItem& taken, const ChainItem& before, double by_mm) {
    const auto curves = [](const ChainItem& item) {
        return curves_of(*item.item.as_edge(), item.start, item.item.to);
    };
    const Continuation line{taken.start, tangent_at_end(curves(before).back()), taken.item.to,
                            tangent_at_end(curves(taken).back())};
    const double wanted = length_of({taken}) + by_mm;
    double ahead = by_mm;
    constexpr double length_settled_mm = 1e-10;
    constexpr int most_steps = 40;
    for (int step = 0; step < most_steps; ++step) {
        const double too_short = wanted - length(Curve{continued_to(line, ahead)});
        ahead += too_short;
        if (std::abs(too_short) <= length_settled_mm) break;
    }
    const Cubic cubic = continued_to(line, ahead);
    ChainItem out = taken;
    out.item.as_edge()->shape = CubicShape{{cubic.p[1], cubic.p[2]}};
    out.item.to = cubic.p[3];
    return out;
}

Chain lengthened(Chain chain, double by_mm) {
    const ChainItem last = chain.back();
    const std::vector<Curve> curves = curves_of(*last.item.as_edge(), last.start, last.item.to);
    if (std::holds_alternative<Line>(curves.back())) {
        chain.back().item.to = last.item.to + by_mm * tangent_at_end(curves.back());
        return chain;
    }
    chain.pop_back();
    const double whole = length_of({last});
    const CutItem halves = cut_item(last, std::max(whole - continued_mm, whole / 2));
    chain.insert(chain.end(), halves.before.begin(), halves.before.end());
    for (const ChainItem& each : halves.after) {
        const bool is_last = &each == &halves.after.back();
        chain.push_back(is_last ? continued(each, chain.back(), by_mm) : each);
    }
    return chain;
}

}  // namespace

Outline turned_over(const Outline& outline) {
    return mirrored(MirrorLine{}, outline);
}

Outline with_run_end_moved(const Outline& outline, const RunEndMove& move) {
    if (move.by_mm == 0) return outline;
    if (move.end == RunEnd::start) {
        return turned_over(with_run_end_moved(turned_over(outline), {move.edge, RunEnd::end, move.by_mm}));
    }
    const std::vector<Run> runs = runs_of(outline);
    const std::size_t last = find_run(runs, move.edge)->items.back();
    Chain chain = chain_of(outline);
    std::rotate(chain.begin(), chain.begin() + static_cast<std::ptrdiff_t>(last + 1), chain.end());
    refuse_too_short(run_at_end(chain), move.by_mm);
    chain =
        move.by_mm < 0 ? shortened(std::move(chain), -move.by_mm) : lengthened(std::move(chain), move.by_mm);
    start_at(chain, chain.back().item.to);
    return outline_of(std::move(chain));
}

}  // namespace dartwright
