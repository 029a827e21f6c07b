#include "dartwright/checks/allowance_along.hpp"

#include <algorithm>

#include "dartwright/pattern/allowance.hpp"

namespace dartwright {
namespace {

struct Width {
    double at = 0;
    double to = 0;
    double width = 0;
};

// One, or two where a closed run is walked from a place inside the stretch.
std::vector<Width> walked_stretches(const WalkedPart& part, const AllowanceStretch& stretch) {
    const bool is_from_start = end_named(*part.run, stretch.from).value_or(RunEnd::start) == RunEnd::start;
    const auto walked = [&](double distance) {
        return part.walked(is_from_start ? distance : part.run->length - distance);
    };
    if (part.is_closed_run()) {
        const bool is_walked_along = (part.from == RunEnd::start) == is_from_start;
        const double begins = walked(is_walked_along ? stretch.at : stretch.to);
        const double ends = begins + stretch.to - stretch.at;
        if (ends <= part.ends()) return {{begins, ends, stretch.width}};
        return {{begins, part.ends(), stretch.width}, {part.begins, ends - part.run->length, stretch.width}};
    }
    const auto [at, to] = std::minmax({walked(stretch.at), walked(stretch.to)});
    return {{at, to, stretch.width}};
}

std::vector<Width> widths_of(const WalkedSide& side) {
    std::vector<Width> widths;
    for (const WalkedPart& part : side.parts) {
        const Allowance* allowance = allowance_of(*part.piece->piece, part.run->edge);
        if (!allowance) continue;
        if (const double* width = std::get_if<double>(allowance)) {
            widths.push_back({part.begins, part.ends(), *width});
            continue;
        }
        for (const AllowanceStretch& stretch : std::get<std::vector<AllowanceStretch>>(*allowance)) {
            const std::vector<Width> walked = walked_stretches(part, stretch);
            widths.insert(widths.end(), walked.begin(), walked.end());
        }
    }
    return widths;
}

std::optional<double> width_at(const std::vector<Width>& widths, double walked) {
    for (const Width& width : widths) {
        if (width.at <= walked && walked <= width.to) return width.width;
    }
    return std::nullopt;
}

}  // namespace

std::vector<WidthsBeside> widths_beside(const WalkedSeam& seam, double shortest_mm) {
    const std::array<std::vector<Width>, 2> widths{widths_of(seam.sides[0]), widths_of(seam.sides[1])};
    const double length = std::min(seam.sides[0].length, seam.sides[1].length);
    std::vector<double> bounds{0, length};
    for (const std::vector<Width>& of_side : widths) {
        for (const Width& width : of_side) {
            bounds.push_back(std::clamp(width.at, 0.0, length));
            bounds.push_back(std::clamp(width.to, 0.0, length));
        }
    }
    std::sort(bounds.begin(), bounds.end());
    std::vector<WidthsBeside> beside;
    for (std::size_t i = 0; i + 1 < bounds.size(); ++i) {
        const double size = bounds[i + 1] - bounds[i];
        if (size <= 0 || (size < shortest_mm && size < length)) continue;
        const double middle = (bounds[i] + bounds[i + 1]) / 2;
        beside.push_back(
            {bounds[i], bounds[i + 1], width_at(widths[0], middle), width_at(widths[1], middle)});
    }
    return beside;
}

}  // namespace dartwright
