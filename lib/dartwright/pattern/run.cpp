#include "dartwright/pattern/run.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/geometry/arc_length.hpp"
#include "dartwright/pattern/dart.hpp"

namespace dartwright {
namespace {

// The edge item that follows (or precedes) `index` cyclically, darts skipped; `index` itself if it is the
// only one.
std::size_t neighbour_edge(const Outline& outline, std::size_t index, bool forward) {
    const std::size_t n = outline.items.size();
    std::size_t i = index;
    do {
        i = forward ? (i + 1) % n : (i + n - 1) % n;
    } while (!outline.items[i].as_edge() && i != index);
    return i;
}

// The first item of the run that holds the first edge item of the outline.
std::size_t first_item_of_first_run(const Outline& outline, std::size_t first_edge) {
    const std::string& name = outline.items[first_edge].as_edge()->edge;
    std::size_t i = first_edge;
    while (true) {
        const std::size_t before = neighbour_edge(outline, i, false);
        if (before == first_edge) return first_edge;  // one name all round
        if (outline.items[before].as_edge()->edge != name) return i;
        i = before;
    }
}

void join_neighbours(std::vector<Run>& runs) {
    const std::size_t n = runs.size();
    for (std::size_t i = 0; i < n; ++i) {
        Run& next = runs[(i + 1) % n];
        runs[i].after = next.edge;
        next.before = runs[i].edge;
        if (n > 1) next.corner_darts_before = runs[i].corner_darts_after;
    }
}

double share_sewn(const Outline& outline, std::size_t item, double geometric_length) {
    return (geometric_length - outline.items[item].as_edge()->fullness) / geometric_length;
}

Vector first_tangent(const Outline& outline, std::size_t item) {
    for (const Curve& curve : curves_of_item(outline, item)) {
        const Vector t = tangent_at_start(curve);
        if (squared_norm(t) > 0) return t;
    }
    return {};
}

Vector last_tangent(const Outline& outline, std::size_t item) {
    const std::vector<Curve> curves = curves_of_item(outline, item);
    for (auto curve = curves.rbegin(); curve != curves.rend(); ++curve) {
        const Vector t = tangent_at_end(*curve);
        if (squared_norm(t) > 0) return t;
    }
    return {};
}

}  // namespace

std::vector<Run> runs_of(const Outline& outline) {
    const std::size_t n = outline.items.size();
    std::size_t first_edge = 0;
    while (first_edge < n && !outline.items[first_edge].as_edge()) ++first_edge;
    if (first_edge == n) return {};
    const std::size_t begin = first_item_of_first_run(outline, first_edge);
    std::vector<Run> runs;
    std::vector<std::size_t> darts;  // seen since the last edge item
    for (std::size_t k = 0; k < n; ++k) {
        const std::size_t i = (begin + k) % n;
        const EdgeItem* edge = outline.items[i].as_edge();
        if (!edge) {
            darts.push_back(i);
            continue;
        }
        if (runs.empty() || runs.back().edge != edge->edge) {
            if (!runs.empty()) runs.back().corner_darts_after = darts;
            Run fresh;
            fresh.edge = edge->edge;
            runs.push_back(fresh);
        } else {
            runs.back().darts.insert(runs.back().darts.end(), darts.begin(), darts.end());
        }
        darts.clear();
        runs.back().items.push_back(i);
        runs.back().length += sewn_length_of_item(outline, i);
    }
    runs.back().corner_darts_after = darts;
    if (runs.size() == 1) runs.back().corner_darts_before = darts;
    join_neighbours(runs);
    return runs;
}

const Run* find_run(const std::vector<Run>& runs, const std::string& edge) {
    for (const Run& run : runs) {
        if (run.edge == edge) return &run;
    }
    return nullptr;
}

std::optional<RunEnd> end_named(const Run& run, const std::string& from) {
    if (run.before != run.after) {
        if (from == run.before) return RunEnd::start;
        if (from == run.after) return RunEnd::end;
    }
    if (from == "start") return RunEnd::start;
    if (from == "end") return RunEnd::end;
    return std::nullopt;
}

std::string name_of_end(const Run& run, RunEnd end) {
    if (run.before == run.after) return end == RunEnd::start ? "start" : "end";
    return end == RunEnd::start ? run.before : run.after;
}

RunPlace place_on_run(const Outline& outline, const Run& run, double sewn_distance) {
    double left = std::clamp(sewn_distance, 0.0, run.length);
    RunPlace out;
    for (std::size_t k = 0; k < run.items.size(); ++k) {
        const std::size_t item = run.items[k];
        const double whole = length_of_item(outline, item);
        const double sewn = whole - outline.items[item].as_edge()->fullness;
        const bool is_last = k + 1 == run.items.size();
        if (left >= sewn && !is_last) {
            left -= sewn;
            continue;
        }
        out.item = item;
        out.along_item = sewn > 0 ? std::min(left / share_sewn(outline, item, whole), whole) : 0;
        break;
    }
    const std::vector<Curve> curves = curves_of_item(outline, out.item);
    double along = out.along_item;
    for (std::size_t k = 0; k < curves.size(); ++k) {
        const double part = length(curves[k]);
        if (along > part && k + 1 < curves.size()) {
            along -= part;
            continue;
        }
        const double t = along >= part ? 1 : parameter_at(curves[k], along);
        out.point = point_at(curves[k], t);
        out.tangent = tangent_at(curves[k], t);
        break;
    }
    return out;
}

std::vector<double> dart_distances(const Outline& outline, const Run& run) {
    std::vector<double> out;
    double walked = 0;
    std::size_t next_dart = 0;
    const std::size_t n = outline.items.size();
    for (const std::size_t item : run.items) {
        walked += sewn_length_of_item(outline, item);
        // Every dart that directly follows this item stands at the same distance.
        for (std::size_t i = (item + 1) % n; next_dart < run.darts.size() && run.darts[next_dart] == i;
             i = (i + 1) % n) {
            out.push_back(walked);
            ++next_dart;
        }
    }
    return out;
}

std::vector<double> item_distances(const Outline& outline, const Run& run) {
    std::vector<double> out;
    double walked = 0;
    for (const std::size_t item : run.items) {
        out.push_back(walked);
        walked += sewn_length_of_item(outline, item);
    }
    return out;
}

double corner_angle(const Outline& outline, const Run& run, RunEnd end) {
    const bool at_end = end == RunEnd::end;
    const std::size_t own = at_end ? run.items.back() : run.items.front();
    const std::size_t other = neighbour_edge(outline, own, at_end);
    const Vector in = last_tangent(outline, at_end ? own : other);
    const Vector out = first_tangent(outline, at_end ? other : own);
    double turned = angle_from(in, out);
    for (const std::size_t dart : at_end ? run.corner_darts_after : run.corner_darts_before) {
        turned -= figures_of(outline, dart).sewn_angle_rad;
    }
    return pi - std::remainder(turned, 2 * pi);
}

Point end_point(const Outline& outline, const Run& run, RunEnd end) {
    return end == RunEnd::start ? start_of_item(outline, run.items.front())
                                : outline.items[run.items.back()].to;
}

}  // namespace dartwright
