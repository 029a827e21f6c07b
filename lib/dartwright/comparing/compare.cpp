#include "dartwright/comparing/compare.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

#include "dartwright/checks/walked_seam.hpp"
#include "dartwright/comparing/compare_losses.hpp"
#include "dartwright/comparing/compared_piece.hpp"
#include "dartwright/comparing/compared_separation.hpp"
#include "dartwright/pattern/mirrored.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/lengths.hpp"
#include "dartwright/words/lists.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {
namespace {

/// Pieces or seams by their names; the first of a name counts.
template <class Named>
class NamedIndex {
  public:
    explicit NamedIndex(const std::vector<Named>& all) {
        for (const Named& each : all) by_name_.emplace(each.name, &each);
    }
    const Named* find(const std::string& name) const {
        const auto found = by_name_.find(name);
        return found == by_name_.end() ? nullptr : found->second;
    }

  private:
    std::unordered_map<std::string_view, const Named*> by_name_;
};

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

bool is_swapped(const Seam& before, const Seam& after) {
    return !is_same_side(before.joins[0], after.joins[0]) && is_same_side(before.joins[0], after.joins[1]);
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
        const NamedIndex seams_before(before_.seams);
        const NamedIndex seams_after(after_.seams);
        for (const Seam& seam : before_.seams) {
            ComparedSeam each{seam.name, {walked_seam(pieces_before_, seam).difference(), {}}};
            if (const Seam* same = seams_after.find(seam.name)) {
                const double difference = walked_seam(pieces_after_, *same).difference();
                each.difference_mm.after = is_swapped(seam, *same) ? -difference : difference;
            }
            out.push_back(each);
        }
        for (const Seam& seam : after_.seams) {
            if (seams_before.find(seam.name)) continue;
            out.push_back({seam.name, {{}, walked_seam(pieces_after_, seam).difference()}});
        }
        return out;
    }

  private:
    const Pattern& before_;
    const Pattern& after_;
    std::vector<PieceContext> pieces_before_;
    std::vector<PieceContext> pieces_after_;
};

std::string turn_words(double turned_deg) {
    return degrees_in_sentence(std::abs(turned_deg)) + (turned_deg < 0 ? " clockwise" : " anticlockwise");
}

void add_notes(Notes notes, const ComparedPiece& piece, const Tolerances& tolerances) {
    if (piece.is_mirrored) notes.push_back(piece.name + " lies the other way up");
    const double turned = degrees(piece.turned_rad);
    if (std::abs(turned) > tolerances.grain_deg)
        notes.push_back(piece.name + " lies turned by " + turn_words(turned));
    const double shifted = norm(piece.shifted_mm);
    if (!piece.is_mirrored && std::abs(turned) <= tolerances.grain_deg && shifted > tolerances.notch_mm)
        notes.push_back(piece.name + " lies shifted by " + measure_told(shifted, by_size));
    for (const ComparedRun& run : piece.runs) {
        if (!run.sewn_mm.before) notes.push_back(piece.name + " has a new edge, " + run.edge);
    }
    for (const ComparedNotch& notch : piece.notches) {
        if (notch.kind_before) continue;
        notes.push_back(piece.name + " has a new notch on " + notch.edge + ", " +
                        measure_told(*notch.at_mm[0].after, by_size) + " from " + notch.from[0]);
    }
}

// `start` and `end` say another end of a piece that lies the other way up.
bool is_end_word(const std::string& from) {
    return from == "start" || from == "end";
}

std::map<std::string, CornerIs> with_ends_swapped(const std::map<std::string, CornerIs>& ends) {
    std::map<std::string, CornerIs> out;
    for (const auto& [end, corner] : ends) out.emplace(with_end_words_swapped(end), corner);
    return out;
}

// Whether the sides are walked from the ends that they were, or all from the others; in order.
bool is_walked_alike(const SeamSide& before, const SeamSide& after, bool is_turned) {
    for (std::size_t i = 0; i < before.size(); ++i) {
        const SeamPart& was = before[i];
        const SeamPart& is = after[is_turned ? after.size() - 1 - i : i];
        if (was.piece != is.piece || was.edge != is.edge || was.mirrored != is.mirrored) return false;
        if (is_end_word(was.from) || is_end_word(is.from)) continue;
        if ((was.from != is.from) != is_turned) return false;
    }
    return true;
}

bool joins_alike(const Seam& before, const Seam& after) {
    for (const bool is_crossed : {false, true}) {
        const SeamSide& first = after.joins[is_crossed ? 1 : 0];
        const SeamSide& second = after.joins[is_crossed ? 0 : 1];
        if (first.size() != before.joins[0].size() || second.size() != before.joins[1].size()) continue;
        for (const bool is_turned : {false, true}) {
            if (is_walked_alike(before.joins[0], first, is_turned) &&
                is_walked_alike(before.joins[1], second, is_turned))
                return true;
        }
    }
    return false;
}

Loss seam_change(const char* what, const Seam& seam, const std::string& message, std::string remedy) {
    Loss out;
    out.what = what;
    out.seam = seam.name;
    out.message = "seam " + seam.name + ": " + message;
    out.remedy = std::move(remedy);
    return out;
}

void add_seam_changes(std::vector<Loss>& out, const Seam& was, const Seam& is, const Tolerances& tolerances,
                      Unit unit) {
    if (!joins_alike(was, is)) {
        out.push_back(seam_change("seam-joins", was, "it joins other edges, or from other ends.",
                                  "Walk both; name the edges and ends as before if others were not meant."));
    }
    const double ease_was = signed_ease(was);
    const double ease_is = is_swapped(was, is) ? -signed_ease(is) : signed_ease(is);
    if (std::abs(ease_was - ease_is) > tolerances.seam_mm) {
        Loss loss = seam_change(
            "seam-ease", was,
            "its ease was " + measure_in_sentence(std::abs(ease_was), unit) + " and is " +
                measure_in_sentence(std::abs(ease_is), unit) +
                ((ease_was < 0) != (ease_is < 0) && ease_was != 0 && ease_is != 0 ? " on the other side."
                                                                                  : "."),
            "Give the seam its old ease if another was not meant.");
        loss.amount = {ease_was, ease_is};
        loss.allowed = tolerances.seam_mm;
        out.push_back(loss);
    }
    if (was.ends != is.ends && was.ends != with_ends_swapped(is.ends))
        out.push_back(seam_change("seam-ends", was, "what is said of its ends is otherwise.",
                                  "Say again which end runs on and which is free."));
    if (was.laid != is.laid)
        out.push_back(seam_change(
            "seam-laid", was,
            is.laid == LaidAs::flat ? "its pieces are to open flat." : "its pieces are to lie on each other.",
            "Say how they lie as before."));
    if (was.allowances_differ != is.allowances_differ)
        out.push_back(seam_change("seam-allowances", was,
                                  is.allowances_differ ? "two widths of allowance are meant now."
                                                       : "one width of allowance is meant now.",
                                  "Say again whether two widths are meant."));
}

// What is set to what it is by default is no change.
void add_tolerance_changes(std::vector<Loss>& out, const Pattern& before, const Pattern& after) {
    const Tolerances was = tolerances_of(before);
    const Tolerances is = tolerances_of(after);
    for (const ToleranceName& each : tolerance_names()) {
        const double value_was = was.*each.value;
        const double value_is = is.*each.value;
        // Through a file in inches a value comes back but for rounding.
        if (std::abs(value_was - value_is) <= 1e-9 * std::max(value_was, value_is)) continue;
        const auto in_words = [&](double value) {
            return each.is_angle ? degrees_in_sentence(value) : difference_in_sentence(value, before.unit);
        };
        Loss loss;
        loss.what = "tolerance";
        loss.amount = {value_was, value_is};
        loss.message = std::string("the tolerance ") + each.name + " was " + in_words(value_was) +
                       " and is " + in_words(value_is) + ".";
        loss.remedy = "Set the old tolerance if another was not meant; it decides what a check finds.";
        out.push_back(loss);
    }
}

bool has_any_of(const Seam& seam, const std::unordered_set<std::string>& pieces) {
    for (const SeamSide& side : seam.joins) {
        for (const SeamPart& part : side) {
            if (pieces.count(part.piece)) return true;
        }
    }
    return false;
}

std::vector<ShapedPiece> strangers_in(const Pattern& after, const NamedIndex<Piece>& before,
                                      const Tolerances& tolerances) {
    std::vector<ShapedPiece> out;
    for (const Piece& piece : after.pieces) {
        if (!before.find(piece.name)) out.push_back(shaped_piece(piece, tolerances, "after"));
    }
    return out;
}

void take_all(std::vector<Loss>& into, std::vector<Loss> losses) {
    for (Loss& loss : losses) into.push_back(std::move(loss));
}

}  // namespace

Comparison compare(const Pattern& before, const Pattern& after, const Tolerances& tolerances) {
    const SoundEntry sound(before, after, tolerances);
    Comparison out;
    const NamedIndex pieces_before(before.pieces);
    const NamedIndex pieces_after(after.pieces);
    const std::vector<ShapedPiece> strangers = strangers_in(after, pieces_before, tolerances);
    std::unordered_set<std::string> separated;  // names of pieces that were, and of their parts
    for (const Piece& piece : before.pieces) {
        const ShapedPiece shaped = shaped_piece(piece, tolerances, "before");
        const Piece* same = pieces_after.find(piece.name);
        std::optional<ShapedPiece> shaped_same;
        if (same) shaped_same = shaped_piece(*same, tolerances, "after");
        if (const auto parted =
                compared_separation(shaped, shaped_same ? &*shaped_same : nullptr, strangers, tolerances)) {
            out.pieces.push_back(*parted);
            take_all(out.losses, losses_of(*parted, tolerances, before.unit));
            out.notes.push_back(piece.name + " is in separate pieces now: " + all_of(parted->separated_into) +
                                "; its darts, notches and shape are not compared");
            separated.insert(piece.name);
            separated.insert(parted->separated_into.begin(), parted->separated_into.end());
            continue;
        }
        if (!same) {
            out.losses.push_back(loss_of_piece(piece.name));
            continue;
        }
        JudgedPiece judged = compared_piece({shaped, *shaped_same, before.unit}, tolerances);
        take_all(out.losses, std::move(judged.losses));
        take_all(out.changes, std::move(judged.changes));
        add_notes({out.notes, before.unit}, judged.piece, tolerances);
        out.pieces.push_back(std::move(judged.piece));
    }
    for (const Piece& piece : after.pieces) {
        if (pieces_before.find(piece.name) || separated.count(piece.name)) continue;
        out.notes.push_back(piece.name + " is a new piece");
    }
    out.seams = SeamsCompared(before, after, tolerances).compared();
    for (const ComparedSeam& seam : out.seams) {
        take_all(out.losses, losses_of(seam, tolerances, before.unit));
        if (!seam.difference_mm.before) out.notes.push_back(seam.name + " is a new seam");
    }
    const NamedIndex seams_after(after.seams);
    for (const Seam& seam : before.seams) {
        const Seam* same = seams_after.find(seam.name);
        if (same && !has_any_of(seam, separated))
            add_seam_changes(out.changes, seam, *same, tolerances, before.unit);
    }
    add_tolerance_changes(out.changes, before, after);
    return out;
}

Comparison compare(const Pattern& before, const Pattern& after) {
    return compare(before, after, tolerances_of(before));
}

}  // namespace dartwright
