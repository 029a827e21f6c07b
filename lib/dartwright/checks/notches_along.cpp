#include "dartwright/checks/notches_along.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace dartwright {

std::optional<double> distance_on_run(const Notch& notch, const Run& run) {
    const std::optional<RunEnd> from = end_named(run, notch.from);
    if (!from) return std::nullopt;
    return *from == RunEnd::start ? notch.at : run.length - notch.at;
}

bool is_on_run(double on_run, const Run& run, const Tolerances& tolerances) {
    return -tolerances.notch_mm <= on_run && on_run <= run.length + tolerances.notch_mm;
}

std::vector<WalkedNotch> notches_along(const WalkedSide& side, const Tolerances& tolerances) {
    std::vector<WalkedNotch> notches;
    for (const WalkedPart& part : side.parts) {
        for (const Notch& notch : part.piece->piece->notches) {
            if (notch.edge != part.run->edge) continue;
            // Where a closed run begins its partner is the other side's end.
            if (notch.begins && part.is_closed_run()) continue;
            const std::optional<double> on_run = distance_on_run(notch, *part.run);
            if (!on_run || !is_on_run(*on_run, *part.run, tolerances)) continue;
            notches.push_back({&part, &notch, part.walked(*on_run), *on_run});
        }
    }
    std::stable_sort(notches.begin(), notches.end(),
                     [](const WalkedNotch& a, const WalkedNotch& b) { return a.walked < b.walked; });
    return notches;
}

double misplacement(const WalkedSeam& seam, double first_walked, double second_walked) {
    const double lag = second_walked - first_walked;
    return lag - std::clamp(lag, seam.least_lag(), seam.most_lag());
}

NotchPairs paired(const WalkedSeam& seam, const std::vector<WalkedNotch>& first,
                  const std::vector<WalkedNotch>& second) {
    const bool is_second_longer = second.size() > first.size();
    const std::vector<WalkedNotch>& few = is_second_longer ? first : second;
    const std::vector<WalkedNotch>& many = is_second_longer ? second : first;
    const auto cost = [&](std::size_t i, std::size_t j) {
        return std::abs(is_second_longer ? misplacement(seam, few[i].walked, many[j].walked)
                                         : misplacement(seam, many[j].walked, few[i].walked));
    };
    // least(i, j): the least total of the first i of the few paired in order with i of the first j.
    const std::size_t width = many.size() + 1;
    std::vector<double> least((few.size() + 1) * width, std::numeric_limits<double>::infinity());
    for (std::size_t j = 0; j < width; ++j) least[j] = 0;
    for (std::size_t i = 1; i <= few.size(); ++i) {
        for (std::size_t j = i; j < width; ++j) {
            least[i * width + j] =
                std::min(least[i * width + j - 1], least[(i - 1) * width + j - 1] + cost(i - 1, j - 1));
        }
    }
    NotchPairs result;
    std::size_t i = few.size();
    for (std::size_t j = many.size(); j > 0; --j) {
        const bool is_left_over = i == 0 || least[i * width + j - 1] <= least[i * width + j];
        if (is_left_over) {
            (is_second_longer ? result.left_over_second : result.left_over_first).push_back(j - 1);
            continue;
        }
        --i;
        result.pairs.push_back(is_second_longer ? NotchPairs::Pair{i, j - 1} : NotchPairs::Pair{j - 1, i});
    }
    std::reverse(result.pairs.begin(), result.pairs.end());
    std::reverse(result.left_over_first.begin(), result.left_over_first.end());
    std::reverse(result.left_over_second.begin(), result.left_over_second.end());
    return result;
}

namespace {

// The nearest corner between two parts of the other side.
std::optional<NotchAtCorner> nearest_corner(const WalkedSeam& seam, std::size_t side,
                                            const WalkedNotch& notch) {
    std::optional<NotchAtCorner> nearest;
    const std::vector<WalkedPart>& others = seam.sides[1 - side].parts;
    for (std::size_t p = 1; p < others.size(); ++p) {
        const double corner = others[p].begins;
        const double off =
            side == 0 ? misplacement(seam, notch.walked, corner) : misplacement(seam, corner, notch.walked);
        if (!nearest || std::abs(off) < std::abs(nearest->off))
            nearest = NotchAtCorner{side, notch, corner, off};
    }
    return nearest;
}

bool has_notch_there(const WalkedSeam& seam, const NotchAtCorner& at, const std::vector<WalkedNotch>& others,
                     double tolerance) {
    return std::any_of(others.begin(), others.end(), [&](const WalkedNotch& other) {
        const double off = at.side == 0 ? misplacement(seam, at.notch.walked, other.walked)
                                        : misplacement(seam, other.walked, at.notch.walked);
        return std::abs(off) <= tolerance;
    });
}

void take_corners_met(const WalkedSeam& seam, const Tolerances& tolerances, SeamNotches& notches) {
    const std::array<std::vector<WalkedNotch>, 2> all = notches.sides;
    for (std::size_t side = 0; side < 2; ++side) {
        std::erase_if(notches.sides[side], [&](const WalkedNotch& notch) {
            const auto at = nearest_corner(seam, side, notch);
            if (!at || std::abs(at->off) > tolerances.notch_mm) return false;
            if (has_notch_there(seam, *at, all[1 - side], tolerances.notch_mm)) return false;
            notches.at_corners.push_back(*at);
            return true;
        });
    }
}

void take_corners_meant(const WalkedSeam& seam, std::size_t side, std::vector<std::size_t>& left_over,
                        SeamNotches& notches) {
    std::erase_if(left_over, [&](std::size_t i) {
        const auto at = nearest_corner(seam, side, notches.sides[side][i]);
        if (!at || std::abs(at->off) > meant_for_corner_mm) return false;
        notches.at_corners.push_back(*at);
        return true;
    });
}

}  // namespace

SeamNotches notches_of(const WalkedSeam& seam, const Tolerances& tolerances) {
    SeamNotches notches;
    for (std::size_t side = 0; side < 2; ++side)
        notches.sides[side] = notches_along(seam.sides[side], tolerances);
    take_corners_met(seam, tolerances, notches);
    notches.pairs = paired(seam, notches.sides[0], notches.sides[1]);
    take_corners_meant(seam, 0, notches.pairs.left_over_first, notches);
    take_corners_meant(seam, 1, notches.pairs.left_over_second, notches);
    return notches;
}

}  // namespace dartwright
