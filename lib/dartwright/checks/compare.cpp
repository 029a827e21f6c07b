#include "dartwright/checks/compare.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/checks/compare_losses.hpp"
#include "dartwright/checks/compared_piece.hpp"
#include "dartwright/checks/compared_separation.hpp"
#include "dartwright/checks/walked_seam.hpp"
#include "dartwright/checks/words.hpp"
#include "dartwright/pattern/sound_entry.hpp"

namespace dartwright {
namespace {

/// What a piece or a seam is looked up by.
template <class Named>
const Named* find_named(const std::vector<Named>& all, const std::string& name) {
    const auto found =
        std::find_if(all.begin(), all.end(), [&name](const Named& each) { return each.name == name; });
    return found == all.end() ? nullptr : &*found;
}

// Whether the sides are the same edges, in any order and from either end.
bool is_same_side(const SeamSide& a, const SeamSide& b) {
    const auto has = [](const SeamSide& side, const SeamPart& part) {
        return std::any_of(side.begin(), side.end(), [&part](const SeamPart& each) {
            return each.piece == part.piece && each.edge == part.edge && each.mirrored == part.mirrored;
        });
    };
    return a.size() == b.size() &&
           std::all_of(a.begin(), a.end(), [&](const SeamPart& part) { return has(b, part); });
}

class SeamsCompared {
  public:
    SeamsCompared(const Pattern& before, const Pattern& after, const Tolerances& tolerances)
        : before_(before),
          after_(after),
          pieces_before_(contexts_of(before, tolerances)),
          pieces_after_(contexts_of(after, tolerances)) {}

    std::vector<ComparedSeam> compared() const {
        std::vector<ComparedSeam> out;
        for (const Seam& seam : before_.seams) {
            ComparedSeam each{seam.name, {walked_seam(pieces_before_, seam).difference(), {}}};
            if (const Seam* same = find_named(after_.seams, seam.name)) {
                const double difference = walked_seam(pieces_after_, *same).difference();
                each.difference_mm.after = is_swapped(seam, *same) ? -difference : difference;
            }
            out.push_back(each);
        }
        for (const Seam& seam : after_.seams) {
            if (find_named(before_.seams, seam.name)) continue;
            out.push_back({seam.name, {{}, walked_seam(pieces_after_, seam).difference()}});
        }
        return out;
    }

  private:
    static bool is_swapped(const Seam& before, const Seam& after) {
        return !is_same_side(before.joins[0], after.joins[0]) &&
               is_same_side(before.joins[0], after.joins[1]);
    }

    const Pattern& before_;
    const Pattern& after_;
    std::vector<PieceContext> pieces_before_;
    std::vector<PieceContext> pieces_after_;
};

bool is_part_of_another(const std::vector<ComparedPiece>& pieces, const std::string& name) {
    return std::any_of(pieces.begin(), pieces.end(), [&name](const ComparedPiece& each) {
        return std::find(each.separated_into.begin(), each.separated_into.end(), name) !=
               each.separated_into.end();
    });
}

std::string turn_words(double turned_deg) {
    return words::degrees(std::abs(turned_deg)) + (turned_deg < 0 ? " clockwise" : " anticlockwise");
}

void add_notes(std::vector<std::string>& notes, const ComparedPiece& piece, const Tolerances& tolerances) {
    if (piece.is_mirrored) notes.push_back(piece.name + " lies the other way up");
    const double turned = degrees(piece.turned_rad);
    if (std::abs(turned) > tolerances.grain_deg)
        notes.push_back(piece.name + " lies turned by " + turn_words(turned));
    const double shifted = norm(piece.shifted_mm);
    if (!piece.is_mirrored && std::abs(turned) <= tolerances.grain_deg && shifted > tolerances.notch_mm)
        notes.push_back(piece.name + " lies shifted by " + words::mm(shifted));
    if (piece.is_recut) notes.push_back(piece.name + " is to be cut in another way (quantity, fold)");
    for (const ComparedRun& run : piece.runs) {
        if (!run.sewn_mm.before) notes.push_back(piece.name + " has a new edge, " + run.edge);
    }
    for (const ComparedNotch& notch : piece.notches) {
        if (notch.kind_before) continue;
        notes.push_back(piece.name + " has a new notch on " + notch.edge + ", " +
                        words::mm(*notch.at_mm[0].after) + " from " + notch.from[0]);
    }
}

}  // namespace

Comparison compare(const Pattern& before, const Pattern& after, const Tolerances& tolerances) {
    const SoundEntry sound(before, after, tolerances);
    Comparison out;
    for (const Piece& piece : before.pieces) {
        const ShapedPiece shaped = shaped_piece(piece, tolerances, "before");
        const Piece* same = find_named(after.pieces, piece.name);
        if (const auto separated = compared_separation(before, shaped, after, tolerances)) {
            out.pieces.push_back(*separated);
            for (Loss& loss : losses_of(*separated, tolerances)) out.losses.push_back(std::move(loss));
            out.notes.push_back(piece.name +
                                " is in separate pieces now: " + words::list(separated->separated_into) +
                                "; its darts, notches and shape are not compared");
            continue;
        }
        if (!same) {
            out.losses.push_back(loss_of_piece(piece.name));
            continue;
        }
        out.pieces.push_back(compared_piece({shaped, shaped_piece(*same, tolerances, "after")}, tolerances));
        const ComparedPiece& compared = out.pieces.back();
        for (Loss& loss : losses_of(compared, tolerances)) out.losses.push_back(std::move(loss));
        add_notes(out.notes, compared, tolerances);
    }
    for (const Piece& piece : after.pieces) {
        if (find_named(before.pieces, piece.name) || is_part_of_another(out.pieces, piece.name)) continue;
        shaped_piece(piece, tolerances, "after");
        out.notes.push_back(piece.name + " is a new piece");
    }
    out.seams = SeamsCompared(before, after, tolerances).compared();
    for (const ComparedSeam& seam : out.seams) {
        for (Loss& loss : losses_of(seam, tolerances)) out.losses.push_back(std::move(loss));
        if (!seam.difference_mm.before) out.notes.push_back(seam.name + " is a new seam");
    }
    return out;
}

Comparison compare(const Pattern& before, const Pattern& after) {
    return compare(before, after, tolerances_of(before));
}

}  // namespace dartwright
