#include "dartwright/pattern/allowance.hpp"

#include <algorithm>

namespace dartwright {
namespace {

std::vector<RunWidth> stretches_from_start(const Run& run, const std::vector<AllowanceStretch>& stretches) {
    std::vector<RunWidth> out;
    for (const AllowanceStretch& each : stretches) {
        const bool is_from_start = end_named(run, each.from).value_or(RunEnd::start) == RunEnd::start;
        const double at = is_from_start ? each.at : run.length - each.at;
        const double to = is_from_start ? each.to : run.length - each.to;
        out.push_back({std::clamp(std::min(at, to), 0.0, run.length),
                       std::clamp(std::max(at, to), 0.0, run.length), each.width});
    }
    return out;
}

std::optional<double> width_at(const std::vector<RunWidth>& stretches, double distance) {
    for (const RunWidth& each : stretches) {
        if (each.from_mm <= distance && distance <= each.to_mm) return each.width_mm;
    }
    return std::nullopt;
}

}  // namespace

const Allowance* allowance_of(const Piece& piece, const std::string& edge) {
    for (const auto& [name, allowance] : piece.allowance) {
        if (name == edge) return &allowance;
    }
    return nullptr;
}

std::vector<RunWidth> widths_along(const Piece& piece, const Run& run) {
    const Allowance* allowance = allowance_of(piece, run.edge);
    if (!allowance) return {{0, run.length, std::nullopt}};
    if (const double* width = std::get_if<double>(allowance)) return {{0, run.length, *width}};
    const std::vector<RunWidth> stretches =
        stretches_from_start(run, std::get<std::vector<AllowanceStretch>>(*allowance));
    std::vector<double> bounds{0, run.length};
    for (const RunWidth& each : stretches) bounds.insert(bounds.end(), {each.from_mm, each.to_mm});
    std::sort(bounds.begin(), bounds.end());
    std::vector<RunWidth> out;
    for (std::size_t i = 0; i + 1 < bounds.size(); ++i) {
        if (bounds[i + 1] - bounds[i] <= stretch_joint_mm) continue;
        const double from = out.empty() ? 0 : out.back().to_mm;
        const std::optional<double> width = width_at(stretches, (bounds[i] + bounds[i + 1]) / 2);
        if (!out.empty() && out.back().width_mm == width) {
            out.back().to_mm = bounds[i + 1];
        } else {
            out.push_back({from, bounds[i + 1], width});
        }
    }
    if (out.empty()) return {{0, run.length, width_at(stretches, run.length / 2)}};
    out.back().to_mm = run.length;
    return out;
}

}  // namespace dartwright
