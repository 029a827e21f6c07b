#include "dartwright/pattern/fullness.hpp"

#include <algorithm>
#include <cmath>

namespace dartwright {
namespace {

/// Shares of fullness that differ by less are one: 0.01 mm on a hand's breadth, rounding in a file in cm.
constexpr double same_share = 1e-4;

/// Precondition: the item has a length.
double share_of(const Outline& outline, std::size_t item) {
    return outline.items[item].as_edge()->fullness / length_of_item(outline, item);
}

bool is_closed_run(const Run& run) {
    return run.before.empty() || run.before == run.edge;
}

/// Whether the item follows on the other with nothing between them but edges of no length.
bool is_next(const Outline& outline, std::size_t last, std::size_t item) {
    const std::size_t n = outline.items.size();
    std::size_t i = (last + 1) % n;
    while (i != item && i != last && outline.items[i].as_edge() && length_of_item(outline, i) == 0)
        i = (i + 1) % n;
    return i == item;
}

bool goes_on(const Outline& outline, const FullStretch& stretch, std::size_t item) {
    const std::size_t last = stretch.items.back();
    return is_next(outline, last, item) &&
           std::abs(share_of(outline, last) - share_of(outline, item)) <= same_share;
}

// A run that is the whole outline begins anywhere, inside a stretch too.
void join_round(std::vector<FullStretch>& found, const Outline& outline, const Run& run) {
    if (found.size() < 2 || !is_closed_run(run) || found.front().from_mm > sum_rounding_mm) return;
    if (found.back().to_mm < run.length - sum_rounding_mm ||
        !goes_on(outline, found.back(), found.front().items.front()))
        return;
    FullStretch& last = found.back();
    last.items.insert(last.items.end(), found.front().items.begin(), found.front().items.end());
    last.to_mm += found.front().to_mm;
    last.fullness_mm += found.front().fullness_mm;
    found.erase(found.begin());
}

void add_stretches(std::vector<FullStretch>& all, const Outline& outline, const Run& run) {
    std::vector<FullStretch> found;
    double reached = 0;
    bool is_open = false;
    for (const std::size_t item : run.items) {
        const double begins = reached;
        reached += sewn_length_of_item(outline, item);
        // What has no length neither ends a stretch nor is one.
        if (length_of_item(outline, item) == 0) continue;
        const double fullness = outline.items[item].as_edge()->fullness;
        const bool is_full = fullness > 0;
        if (is_full && !(is_open && goes_on(outline, found.back(), item)))
            found.push_back({run.edge, {}, begins, begins, 0});
        is_open = is_full;
        if (!is_full) continue;
        found.back().items.push_back(item);
        found.back().fullness_mm += fullness;
        found.back().to_mm = reached;
    }
    join_round(found, outline, run);
    for (FullStretch& each : found)
        if (each.fullness_mm >= least_fullness_mm - sum_rounding_mm) all.push_back(std::move(each));
}

StretchEnd end_at(double at_mm, const Run& run, const std::vector<double>& notches) {
    for (std::size_t i = 0; i < notches.size(); ++i)
        if (std::abs(notches[i] - at_mm) <= notch_marks_mm) return {StretchEnd::Kind::notch, i + 1};
    const bool is_near_end = at_mm <= notch_marks_mm || at_mm >= run.length - notch_marks_mm;
    return {is_near_end && !is_closed_run(run) ? StretchEnd::Kind::run_end : StretchEnd::Kind::unmarked, 0};
}

}  // namespace

std::vector<FullStretch> full_stretches(const Piece& piece, const std::vector<Run>& runs) {
    std::vector<FullStretch> all;
    for (const Run& run : runs) add_stretches(all, piece.outline, run);
    return all;
}

StretchEnds ends_of_stretch(const Piece& piece, const Run& run, const FullStretch& stretch) {
    std::vector<double> notches;
    for (const Notch& notch : piece.notches) {
        if (notch.edge != run.edge) continue;
        const auto end = end_named(run, notch.from);
        if (!end) continue;
        notches.push_back(*end == RunEnd::start ? notch.at : run.length - notch.at);
    }
    std::sort(notches.begin(), notches.end());
    // Two on one place, as a second close leaves them, are one to whoever counts.
    const auto is_same = [](double a, double b) { return b - a <= notch_marks_mm; };
    notches.erase(std::unique(notches.begin(), notches.end(), is_same), notches.end());
    const double to =
        stretch.to_mm > run.length + notch_marks_mm ? stretch.to_mm - run.length : stretch.to_mm;
    return {end_at(stretch.from_mm, run, notches), end_at(to, run, notches), notches.size()};
}

}  // namespace dartwright
