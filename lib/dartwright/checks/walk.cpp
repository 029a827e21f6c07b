#include "dartwright/checks/walk.hpp"

#include <algorithm>

#include "dartwright/checks/notches_along.hpp"
#include "dartwright/checks/walked_seam.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {
namespace {

std::string kind_name(NotchKind kind) {
    return kind == NotchKind::single ? "single" : kind == NotchKind::double_ ? "double" : "triple";
}

WalkRow row_of_both(WalkMark mark, std::string name, double first, double second) {
    return {mark, std::move(name), {first, second}, second - first};
}

WalkRow row_of_one(WalkMark mark, std::string name, std::size_t side, double walked) {
    WalkRow row{mark, std::move(name), {}, {}};
    row.sides[side] = walked;
    return row;
}

double order_of(const WalkRow& row) {
    return row.sides[0] ? *row.sides[0] : *row.sides[1];
}

void refuse_open_outlines(const std::vector<PieceContext>& pieces, const Seam& seam) {
    for (const SeamSide& side : seam.joins) {
        for (const SeamPart& part : side) {
            for (const PieceContext& piece : pieces) {
                if (piece.name() != part.piece || piece.is_closed) continue;
                throw Impossible("the outline of " + piece.name() + " ends " +
                                     difference_in_sentence(piece.gap, piece.unit) + " from its start",
                                 "close it before walking " + seam.name);
            }
        }
    }
}

std::vector<WalkRow> notch_rows(const WalkedSeam& seam, const Tolerances& tolerances) {
    const SeamNotches all = notches_of(seam, tolerances);
    const std::vector<WalkedNotch>& first = all.sides[0];
    const std::vector<WalkedNotch>& second = all.sides[1];
    const NotchPairs& notches = all.pairs;
    std::vector<WalkRow> rows;
    for (const NotchAtCorner& at : all.at_corners)
        rows.push_back(
            row_of_one(WalkMark::notch, kind_name(at.notch.notch->kind), at.side, at.notch.walked));
    for (const auto& [i, j] : notches.pairs) {
        const std::string one = kind_name(first[i].notch->kind);
        const std::string other = kind_name(second[j].notch->kind);
        rows.push_back(row_of_both(WalkMark::notch, one == other ? one : one + " and " + other,
                                   first[i].walked, second[j].walked));
    }
    for (const std::size_t i : notches.left_over_first) {
        rows.push_back(row_of_one(WalkMark::notch, kind_name(first[i].notch->kind), 0, first[i].walked));
    }
    for (const std::size_t j : notches.left_over_second) {
        rows.push_back(row_of_one(WalkMark::notch, kind_name(second[j].notch->kind), 1, second[j].walked));
    }
    return rows;
}

// The darts and inner corners of one side.
std::vector<WalkRow> rows_of_side(const WalkedSide& side, std::size_t s) {
    std::vector<WalkRow> rows;
    for (std::size_t p = 0; p < side.parts.size(); ++p) {
        const WalkedPart& part = side.parts[p];
        const Outline& outline = part.piece->outline();
        const std::vector<double> distances = dart_distances(outline, *part.run);
        for (std::size_t i = 0; i < distances.size(); ++i) {
            const std::string& name = outline.items[part.run->darts[i]].as_dart()->name;
            rows.push_back(
                row_of_one(WalkMark::dart, part.piece->name() + " " + name, s, part.walked(distances[i])));
        }
        if (p == 0) continue;
        const WalkedPart& before = side.parts[p - 1];
        rows.push_back(row_of_one(WalkMark::part_corner,
                                  before.piece->name() + " " + before.run->edge + " and " +
                                      part.piece->name() + " " + part.run->edge,
                                  s, part.begins));
    }
    return rows;
}

}  // namespace

SeamWalk walk_seam(const Pattern& pattern, const std::string& name) {
    const SoundEntry sound(pattern);
    const Seam& named = seam_named(pattern, name);
    const Tolerances tolerances = tolerances_of(pattern);
    const std::vector<PieceContext> pieces = contexts_of(pattern, tolerances);
    refuse_open_outlines(pieces, named);
    const WalkedSeam seam = walked_seam(pieces, named);
    SeamWalk walk;
    walk.name = name;
    walk.side_names = side_names(seam);
    walk.lengths = {seam.sides[0].length, seam.sides[1].length};
    walk.ease = seam.ease;
    walk.difference = seam.difference();
    walk.corners_deg = {degrees(angle_sum(seam, SeamEnd::start)), degrees(angle_sum(seam, SeamEnd::far))};
    walk.rows = notch_rows(seam, tolerances);
    for (std::size_t s = 0; s < 2; ++s) {
        for (WalkRow& row : rows_of_side(seam.sides[s], s)) walk.rows.push_back(std::move(row));
    }
    std::stable_sort(walk.rows.begin(), walk.rows.end(),
                     [](const WalkRow& a, const WalkRow& b) { return order_of(a) < order_of(b); });
    walk.rows.insert(walk.rows.begin(), row_of_both(WalkMark::start, "", 0, 0));
    walk.rows.push_back(row_of_both(WalkMark::end, "", walk.lengths[0], walk.lengths[1]));
    return walk;
}

}  // namespace dartwright
