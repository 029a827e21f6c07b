#include "dartwright/comparing/compare_losses.hpp"

#include <cmath>

#include "dartwright/words/lengths.hpp"
#include "dartwright/words/lists.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {
namespace {

std::string change_words(const std::string& before, const std::string& after, const std::string& by,
                         const BeforeAfter& amount) {
    return before + " before, " + after + " after (" + by + (*amount.difference() < 0 ? " less)" : " more)");
}

std::string change_words(const BeforeAfter& amount, std::string (*say)(double)) {
    return change_words(say(*amount.before), say(*amount.after), say(std::abs(*amount.difference())), amount);
}

// `12.0 mm before, 9.5 mm after (2.5 mm less)`
std::string length_change_words(const BeforeAfter& mm, Unit unit) {
    return change_words(measure_in_sentence(*mm.before, unit), measure_in_sentence(*mm.after, unit),
                        difference_in_sentence(std::abs(*mm.difference()), unit), mm);
}

std::string cm2(double mm2) {
    return figure_in_sentence(mm2 / 100) + " cm2";
}
std::string square_inches(double mm2) {
    return figure_in_sentence(mm2 / (mm_in(Unit::inch) * mm_in(Unit::inch))) + " in2";
}

BeforeAfter in_degrees(const BeforeAfter& rad) {
    BeforeAfter out;
    if (rad.before) out.before = degrees(*rad.before);
    if (rad.after) out.after = degrees(*rad.after);
    return out;
}

bool is_within(const BeforeAfter& amount, double allowed) {
    const auto difference = amount.difference();
    return difference && std::abs(*difference) <= allowed;
}

void add_run_losses(std::vector<Loss>& losses, const ComparedPiece& piece, const Tolerances& tolerances,
                    Unit unit) {
    for (const ComparedRun& run : piece.runs) {
        if (!run.sewn_mm.before || is_within(run.sewn_mm, tolerances.seam_mm)) continue;
        const std::string where = piece.name + ", " + run.edge;
        Loss loss{"run-length", piece.name, run.edge, {}, "", run.sewn_mm, tolerances.seam_mm, "", ""};
        if (!run.sewn_mm.after) {
            loss.what = "run-missing";
            loss.message =
                where + ": the edge is gone; it had " + measure_in_sentence(*run.sewn_mm.before, unit) + ".";
            loss.remedy = "Give the edge its name again; edges are matched by their names.";
        } else {
            loss.message = where + ": the sewn length was " + length_change_words(run.sewn_mm, unit) + ".";
            loss.remedy = "Walk the edge with its darts closed, and redraw it to its old length.";
        }
        losses.push_back(loss);
    }
}

void add_pivot_losses(std::vector<Loss>& losses, const ComparedPiece& piece, const Tolerances& tolerances,
                      Unit unit) {
    for (const ComparedPivot& pivot : piece.pivots) {
        const std::vector<std::string>& darts =
            pivot.darts_before.empty() ? pivot.darts_after : pivot.darts_before;
        BeforeAfter deg = in_degrees(pivot.angle_rad);
        deg.before = deg.before.value_or(0);
        deg.after = deg.after.value_or(0);
        const std::string where = piece.name + ", about the pivot of " + all_of(darts);
        if (!is_within(deg, tolerances.grain_deg)) {
            losses.push_back(
                {"pivot-angle", piece.name, "", darts, "", deg, tolerances.grain_deg,
                 where + ": the darts together had " + change_words(deg, degrees_in_sentence) + ".",
                 *deg.difference() < 0 ? "Open what was lost in one of the darts about that pivot."
                                       : "Close as much in one of the darts about that pivot."});
        }
        if (pivot.strays_mm && *pivot.strays_mm > tolerances.notch_mm) {
            losses.push_back({"pivot-place",
                              piece.name,
                              "",
                              darts,
                              "",
                              {0.0, *pivot.strays_mm},
                              tolerances.notch_mm,
                              where + ": the pivot lies " + difference_in_sentence(*pivot.strays_mm, unit) +
                                  " from where it was.",
                              "Turn the parts about the pivot itself, and aim the darts at it."});
        }
    }
}

void add_area_loss(std::vector<Loss>& losses, const ComparedPiece& piece, Unit unit) {
    if (is_within(piece.area_mm2, piece.area_allowed_mm2)) return;
    losses.push_back({"cloth-area",
                      piece.name,
                      "",
                      {},
                      "",
                      piece.area_mm2,
                      piece.area_allowed_mm2,
                      piece.name + ": the cloth without the darts was " +
                          change_words(piece.area_mm2, unit == Unit::inch ? square_inches : cm2) + ".",
                      "Lay one over the other, part by part, to see where cloth was added or cut away."});
}

const char* kind_words(NotchKind kind) {
    return kind == NotchKind::single ? "single" : kind == NotchKind::double_ ? "double" : "triple";
}

void add_missing_notch(std::vector<Loss>& losses, const ComparedPiece& piece, const ComparedNotch& notch,
                       Unit unit) {
    const std::string place = measure_in_sentence(*notch.at_mm[0].before, unit) + " from " + notch.from[0];
    losses.push_back({"notch-missing",
                      piece.name,
                      notch.edge,
                      {},
                      "",
                      notch.at_mm[0],
                      {},
                      piece.name + ", " + notch.edge + ": the " + kind_words(*notch.kind_before) + " notch " +
                          place + " is gone.",
                      "Mark the notch again, " + place + "."});
}

void add_moved_notch(std::vector<Loss>& losses, const ComparedPiece& piece, const ComparedNotch& notch,
                     const Tolerances& tolerances, Unit unit) {
    for (std::size_t end = 0; end < 2; ++end) {
        if (is_within(notch.at_mm[end], tolerances.notch_mm)) continue;
        losses.push_back({"notch-place",
                          piece.name,
                          notch.edge,
                          {},
                          "",
                          notch.at_mm[end],
                          tolerances.notch_mm,
                          piece.name + ", " + notch.edge + ": from " + notch.from[end] +
                              " to the notch it was " + length_change_words(notch.at_mm[end], unit) + ".",
                          "Measure the notch along the edge again, darts closed, from both ends."});
    }
}

void add_notch_losses(std::vector<Loss>& losses, const ComparedPiece& piece, const Tolerances& tolerances,
                      Unit unit) {
    for (const ComparedNotch& notch : piece.notches) {
        if (!notch.kind_before) continue;
        if (!notch.kind_after) {
            add_missing_notch(losses, piece, notch, unit);
            continue;
        }
        add_moved_notch(losses, piece, notch, tolerances, unit);
        if (notch.kind_before == notch.kind_after) continue;
        losses.push_back({"notch-kind",
                          piece.name,
                          notch.edge,
                          {},
                          "",
                          notch.at_mm[0],
                          {},
                          piece.name + ", " + notch.edge + ": the notch " +
                              measure_in_sentence(*notch.at_mm[0].after, unit) + " from " + notch.from[0] +
                              " was " + kind_words(*notch.kind_before) + " and is " +
                              kind_words(*notch.kind_after) + ".",
                          "Mark it as it was, so that front and back are not confused."});
    }
}

std::string edges_of(const ComparedPart& part) {
    std::vector<std::string> edges;
    for (const PartStretch& stretch : part.stretches) {
        const bool is_whole = stretch.from_share == 0 && stretch.to_share == 1;
        edges.push_back((is_whole ? "" : "part of ") + stretch.edge);
    }
    return all_of(edges);
}

void add_part_losses(std::vector<Loss>& losses, const ComparedPiece& piece, const Tolerances& tolerances,
                     Unit unit) {
    for (const ComparedPart& part : piece.parts) {
        if (part.strays_mm <= tolerances.fold_mm) continue;
        losses.push_back({"part-shape",
                          piece.name,
                          part.stretches.front().edge,
                          {},
                          "",
                          {0.0, part.strays_mm},
                          tolerances.fold_mm,
                          piece.name + ", the part with " + edges_of(part) +
                              ": laid on the old part as well as it will go, its outline is off by up to " +
                              difference_in_sentence(part.strays_mm, unit) + ".",
                          "Trace that part again from the old one; a part is turned, and never redrawn."});
    }
}

}  // namespace

std::vector<Loss> losses_of(const ComparedPiece& piece, const Tolerances& tolerances, Unit unit) {
    std::vector<Loss> losses;
    add_run_losses(losses, piece, tolerances, unit);
    add_pivot_losses(losses, piece, tolerances, unit);
    add_area_loss(losses, piece, unit);
    add_notch_losses(losses, piece, tolerances, unit);
    add_part_losses(losses, piece, tolerances, unit);
    return losses;
}

std::vector<Loss> losses_of(const ComparedSeam& seam, const Tolerances& tolerances, Unit unit) {
    if (!seam.difference_mm.before || is_within(seam.difference_mm, tolerances.seam_mm)) return {};
    Loss loss{"seam-difference", "", "", {}, seam.name, seam.difference_mm, tolerances.seam_mm, "", ""};
    if (!seam.difference_mm.after) {
        loss.what = "seam-missing";
        loss.message = "seam " + seam.name + ": nothing joins these edges any more.";
        loss.remedy = "Join them again under the seam's name.";
        return {loss};
    }
    loss.message = "seam " + seam.name + ": its second side was longer than the first, ease apart, by " +
                   length_change_words(seam.difference_mm, unit) + ".";
    loss.remedy = "Walk the seam in both patterns to see which of its edges has changed.";
    return {loss};
}

Loss loss_of_piece(const std::string& piece) {
    return {"piece-missing",
            piece,
            "",
            {},
            "",
            {},
            {},
            piece + ": the piece is gone.",
            "Add the piece again under its name; pieces are matched by their names."};
}

}  // namespace dartwright
