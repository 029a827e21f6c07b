#include "dartwright/comparing/compared_separation.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace dartwright {
namespace {

using Group = std::vector<const ShapedPiece*>;

std::optional<double> length_in(const Group& group, const std::string& edge) {
    std::optional<double> sum;
    for (const ShapedPiece* piece : group) {
        if (const Run* run = find_run(piece->runs, edge)) sum = sum.value_or(0) + run->length;
    }
    return sum;
}

// By how much the edges differ from the piece's together; infinite if one is missing, or a part has none.
double differs_by(const ShapedPiece& piece, const Group& group) {
    constexpr double never = std::numeric_limits<double>::infinity();
    double sum = 0;
    for (const Run& run : piece.runs) {
        const auto after = length_in(group, run.edge);
        if (!after) return never;
        sum += std::abs(*after - run.length);
    }
    for (const ShapedPiece* part : group) {
        const bool has_any = std::any_of(part->runs.begin(), part->runs.end(), [&](const Run& run) {
            return find_run(piece.runs, run.edge) != nullptr;
        });
        if (!has_any) return never;
    }
    return sum;
}

bool is_whole(const ShapedPiece& piece, const ShapedPiece& same, const Tolerances& tolerances) {
    return std::all_of(piece.runs.begin(), piece.runs.end(), [&](const Run& run) {
        const Run* after = find_run(same.runs, run.edge);
        return after && std::abs(after->length - run.length) <= tolerances.seam_mm;
    });
}

// Pieces that only have edges of the same names come to nothing like the piece's lengths together.
bool is_likely(const ShapedPiece& piece, const Group& parts) {
    constexpr double most_share = 0.05;
    double around = 0;
    for (const Run& run : piece.runs) around += run.length;
    return differs_by(piece, parts) <= most_share * around;
}

// The two or three candidates that come nearest; of as near ones, the fewest. With one that must be among
// them.
Group nearest_group(const ShapedPiece& piece, const Group& candidates, bool has_same) {
    Group best;
    double least = std::numeric_limits<double>::infinity();
    const auto consider = [&](const Group& group) {
        if (has_same && group.front() != candidates.front()) return;
        const double differs = differs_by(piece, group);
        // Less than what an eye could see is not a reason for another part, mm.
        constexpr double as_near_mm = 0.01;
        if (!(differs < least - as_near_mm)) return;
        least = differs;
        best = group;
    };
    for (std::size_t i = 0; i < candidates.size(); ++i)
        for (std::size_t j = i + 1; j < candidates.size(); ++j) consider({candidates[i], candidates[j]});
    for (std::size_t i = 0; i < candidates.size(); ++i)
        for (std::size_t j = i + 1; j < candidates.size(); ++j)
            for (std::size_t k = j + 1; k < candidates.size(); ++k)
                consider({candidates[i], candidates[j], candidates[k]});
    return best;
}

}  // namespace

std::optional<ComparedPiece> compared_separation(const ShapedPiece& piece, const ShapedPiece* same,
                                                 const std::vector<ShapedPiece>& strangers,
                                                 const Tolerances& tolerances) {
    if (same && is_whole(piece, *same, tolerances)) return std::nullopt;
    // A pattern of more new pieces than this is another pattern; the search is cubic in them.
    constexpr std::size_t most_candidates = 30;
    Group candidates;
    if (same) candidates.push_back(same);
    if (candidates.size() + strangers.size() > most_candidates) return std::nullopt;
    for (const ShapedPiece& each : strangers) candidates.push_back(&each);
    const bool has_same = same != nullptr;
    const Group parts = nearest_group(piece, candidates, has_same);
    if (parts.empty() || !is_likely(piece, parts)) return std::nullopt;
    ComparedPiece out;
    out.name = piece.piece.name;
    out.area_mm2 = {cloth_area(piece.piece), 0};
    out.area_allowed_mm2 = area_allowed(piece, tolerances);
    for (const ShapedPiece* part : parts) {
        out.separated_into.push_back(part->piece.name);
        *out.area_mm2.after += cloth_area(part->piece);
    }
    for (const Run& run : piece.runs)
        out.runs.push_back({run.edge, {run.length, length_in(parts, run.edge)}});
    return out;
}

}  // namespace dartwright
