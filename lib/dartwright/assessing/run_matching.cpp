#include "dartwright/assessing/run_matching.hpp"

#include <algorithm>
#include <cmath>

namespace dartwright {
namespace {

/// What a corner that is off by 180 degrees counts for against a piece whose lengths are all other ones, and
/// what names that are all other ones do. So a corner out of true or a wrong name does not outweigh a shape,
/// and names decide between shapes that are nearly the same.
constexpr double corner_weight = 0.5;
constexpr double names_weight = 0.2;
/// Ways round whose misfits differ by less are told apart by the whole shape: as much as an edge that is out
/// of true by a hundredth of the length around makes.
constexpr double nearly_as_well = 0.02;
/// Against a piece that has not as many runs.
constexpr double other_count_weight = 0.1;

struct WayRound {
    std::size_t first = 0;  ///< of the draft, what the first expected run is
    bool is_mirrored = false;
};

std::size_t index_in(const WayRound& way, std::size_t i, std::size_t count) {
    return way.is_mirrored ? (way.first + count - i % count) % count : (way.first + i) % count;
}

// The corner at the end of the expected run i: walked the other way, it is at the start of the draft's run,
// which is the end of the one before.
double corner_at(const std::vector<RunSignature>& drawn, const WayRound& way, std::size_t run) {
    return way.is_mirrored ? drawn[(run + drawn.size() - 1) % drawn.size()].corner_rad
                           : drawn[run].corner_rad;
}

double misfit_of(const std::vector<RunSignature>& expected, const std::vector<RunSignature>& drawn,
                 const WayRound& way) {
    const std::size_t count = expected.size();
    double lengths = 0;
    double corners = 0;
    double names = 0;
    for (std::size_t i = 0; i < count; ++i) {
        const std::size_t run = index_in(way, i, count);
        lengths += std::abs(expected[i].share - drawn[run].share);
        corners += std::abs(expected[i].corner_rad - corner_at(drawn, way, run)) / pi;
        names += expected[i].edge == drawn[run].edge ? 0 : 1;
    }
    return lengths + (corner_weight * corners + names_weight * names) / static_cast<double>(count);
}

std::vector<RunMatching> matched_all_round(const std::vector<RunSignature>& expected,
                                           const std::vector<RunSignature>& drawn) {
    std::vector<RunMatching> all;
    for (const bool is_mirrored : {false, true}) {
        for (std::size_t first = 0; first < expected.size(); ++first) {
            RunMatching way{is_mirrored, {}, misfit_of(expected, drawn, {first, is_mirrored})};
            for (std::size_t i = 0; i < expected.size(); ++i)
                way.drawn.emplace_back(index_in({first, is_mirrored}, i, expected.size()));
            all.push_back(std::move(way));
        }
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const RunMatching& a, const RunMatching& b) { return a.misfit < b.misfit; });
    const double least = all.front().misfit;
    std::erase_if(all, [least](const RunMatching& each) { return each.misfit > least + nearly_as_well; });
    // The way that it would lie first: rounding does not turn a piece over that is its own mirror image.
    std::stable_partition(all.begin(), all.end(), [](const RunMatching& each) { return !each.is_mirrored; });
    return all;
}

// Which way round more of the runs in common follow each other as expected.
bool are_names_mirrored(const std::vector<RunSignature>& expected, const RunMatching& matching,
                        std::size_t drawn_count) {
    int same = 0;
    int other = 0;
    for (std::size_t i = 0; i < expected.size(); ++i) {
        const auto here = matching.drawn[i];
        const auto next = matching.drawn[(i + 1) % expected.size()];
        if (!here || !next) continue;
        same += (*here + 1) % drawn_count == *next ? 1 : 0;
        other += (*next + 1) % drawn_count == *here ? 1 : 0;
    }
    return other > same;
}

RunMatching matched_by_name(const std::vector<RunSignature>& expected,
                            const std::vector<RunSignature>& drawn) {
    RunMatching out;
    double missing = 0;
    for (const RunSignature& run : expected) {
        const auto found = std::find_if(drawn.begin(), drawn.end(),
                                        [&](const RunSignature& each) { return each.edge == run.edge; });
        out.drawn.emplace_back();
        if (found == drawn.end())
            missing += run.share;
        else
            out.drawn.back() = static_cast<std::size_t>(found - drawn.begin());
    }
    out.misfit = other_count_weight + missing;
    for (const RunSignature& run : drawn)
        if (std::none_of(expected.begin(), expected.end(),
                         [&](const RunSignature& each) { return each.edge == run.edge; }))
            out.surplus += run.share;
    out.is_mirrored = are_names_mirrored(expected, out, drawn.size());
    return out;
}

}  // namespace

std::vector<RunSignature> signatures_of(const ShapedPiece& shaped) {
    double around = 0;
    for (const Run& run : shaped.runs) around += run.length;
    std::vector<RunSignature> out;
    for (const Run& run : shaped.runs) {
        const double share = around > 0 ? run.length / around : 0;
        out.push_back({run.edge, share, corner_angle(shaped.piece.outline, run, RunEnd::end)});
    }
    return out;
}

std::vector<RunMatching> matched_runs(const std::vector<RunSignature>& expected,
                                      const std::vector<RunSignature>& drawn) {
    if (expected.size() == drawn.size() && !expected.empty()) return matched_all_round(expected, drawn);
    return {matched_by_name(expected, drawn)};
}

}  // namespace dartwright
