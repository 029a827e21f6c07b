#include "dartwright/pages/sewing_sheet.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/checks/check.hpp"
#include "dartwright/drawing/fullness_words.hpp"
#include "dartwright/drawing/lay_drawing.hpp"
#include "dartwright/pages/sewing_plan.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/pattern/whose_sides.hpp"
#include "dartwright/words/lengths.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {
namespace {

class SheetWriter {
  public:
    SheetWriter(const Pattern& pattern, const SheetRequest& request)
        : pattern_(pattern),
          request_(request),
          report_(check(pattern)),
          plan_(sewing_plan(pattern, report_)) {}

    Document document() {
        out_.title = pattern_.name.empty() ? "Sewing sheet" : pattern_.name + ": sewing sheet";
        out_.subtitle = request_.date;
        cautions();
        faults();
        cloth();
        tracing();
        whose();
        darts();
        fullness();
        seams();
        notes();
        return std::move(out_);
    }

  private:
    std::string length(double mm) const { return length_words(mm, pattern_.unit); }

    void add(DocumentBlock block) { out_.blocks.push_back(std::move(block)); }
    void heading(const char* words) { add(HeadingBlock{words}); }
    void paragraph(std::string words) { add(ParagraphBlock{std::move(words), false}); }

    void cautions() {
        heading("Before you begin");
        add(ParagraphBlock{
            "The rules of your workroom and the word of a qualified teacher come before this sheet.", true});
        add(ListBlock{
            {"Rotary cutter: close the guard after every cut; cut away from yourself, along a ruler "
             "and on a mat; wear shoes; not when tired.",
             "Pins: out of your mouth and out of the cloth before the needle reaches them; count them "
             "back into the box.",
             "Iron: the plate and its steam burn; stand it up or switch it off whenever you let go, and "
             "keep the cord out of the way."},
            false});
    }

    // What is not true is found now, not when the cloth is cut.
    void faults() {
        std::vector<std::string> faults;
        for (const Finding& finding : report_.findings) {
            if (finding.severity == Severity::fault) faults.push_back(finding.message + " " + finding.remedy);
        }
        if (faults.empty()) return;
        add(ParagraphBlock{"This pattern is not true: a check finds " + std::to_string(faults.size()) +
                               (faults.size() == 1 ? " fault." : " faults.") + " Mend it before you cut.",
                           true});
        add(ListBlock{std::move(faults), false});
    }

    void cloth() {
        heading("Cloth");
        if (!request_.cloth) {
            paragraph("No width of cloth was given, so none is laid here.");
            return;
        }
        const PatternLay& cloth = *request_.cloth;
        const double width = cloth.request.width_mm;
        if (cloth.request.is_folded) {
            paragraph(
                "Press the cloth. Fold it lengthwise, right sides together, selvedge on selvedge. Square "
                "the fold: measure from the fold to the selvedges at both ends; it is square when both "
                "are the same, here " +
                length(width / 2) + ".");
        } else {
            paragraph(
                "Press the cloth and lay it in a single ply. Square it: one end is straight when it is "
                "square to a selvedge.");
        }
        paragraph("Buy " + bought_words(cloth.lay.length_mm, pattern_.unit) + " or more of cloth " +
                  length(width) + " wide: the pieces take " + length(cloth.lay.length_mm) +
                  " as drawn below; no way of laying them takes less than " + length(cloth.lay.bound_mm) +
                  ". Add what the cloth shrinks, and a little at both ends. Every grain "
                  "arrow lies along the selvedge.");
        for (const std::string& note : cloth.notes) paragraph("Note: " + note + ".");
        add(PictureBlock{draw_lay(cloth.lay, {pattern_.name, pattern_.unit, cloth.request.is_folded}),
                         "the pieces as they lie on the cloth"});
    }

    void tracing() {
        heading("Carry over to the cloth");
        TableBlock table{{"piece", "cut", "what to carry over"}, {}, {}};
        for (const PlannedTracing& tracing : plan_.tracings) {
            std::string what;
            for (const std::string& each : tracing.what) what += (what.empty() ? "" : "; ") + each;
            table.rows.push_back({tracing.piece, tracing.how_cut, what});
        }
        add(std::move(table));
        const bool is_any_folded_twice =
            std::any_of(pattern_.pieces.begin(), pattern_.pieces.end(),
                        [](const Piece& piece) { return piece.cut && !piece.cut->second_fold.empty(); });
        paragraph(
            is_any_folded_twice
                ? "Carry the lines to every ply, to all four where a piece lies on two folds, before the "
                  "pattern comes off."
                : "Carry the lines to both plies before the pattern comes off.");
    }

    void whose() {
        for (const Piece& piece : pattern_.pieces) {
            const std::optional<WhoseSides> sides = whose_sides(pattern_, piece);
            if (sides) paragraph(piece.name + ": " + words_of(*sides) + ".");
        }
    }

    static std::string name_of(const PlannedDart& dart) {
        return dart.dart + (dart.times > 1 ? ", " + std::to_string(dart.times) + " times" : "");
    }

    std::string how_to_sew(const PlannedDart& dart) const {
        if (dart.kind == PlannedDart::Kind::tuck)
            return "fasten at both ends; released beyond " + length(dart.length_mm);
        const std::string where = dart.kind == PlannedDart::Kind::dart
                                      ? " past the mouth on"
                                      : " past the middle on, towards each point";
        return "shorten the stitch from " + ruler_words(dart.shorten_from_mm, pattern_.unit) + where;
    }

    static std::string ends_of_darts() {
        return "; from the place given shorten it step by step, to " + fixed_decimals(point_stitch_mm, 1) +
               " mm (about 17 to the inch) for the last " + fixed_decimals(shortest_stitches_over_mm, 0) +
               " mm (1/4 in). Run off the point along the fold and knot the ends; no back-stitch there. ";
    }
    // A tuck is not sewn to its point.
    static std::string ends_of_tucks() { return "; fasten again where the stitching ends. "; }

    void darts() {
        if (plan_.darts.empty()) return;
        heading("Darts, in the order of sewing");
        TableBlock table{{"", "piece", "dart", "width", "length", "stitch", "press towards"},
                         {true, false, false, true, true, false, false},
                         {}};
        int number = 0;
        int sewn = 0;
        for (const PlannedDart& dart : plan_.darts) {
            sewn += dart.times;
            table.rows.push_back({std::to_string(++number), dart.piece, name_of(dart), length(dart.intake_mm),
                                  length(dart.length_mm), how_to_sew(dart),
                                  dart.press.empty() ? "not decided" : dart.press});
        }
        add(std::move(table));
        const bool are_all_tucks =
            std::all_of(plan_.darts.begin(), plan_.darts.end(),
                        [](const PlannedDart& dart) { return dart.kind == PlannedDart::Kind::tuck; });
        paragraph(std::to_string(sewn) + (sewn == 1 ? " dart" : " darts") +
                  " in all. Pin the legs on each other, the pins across. Begin at the wide end and fasten "
                  "there, with a stitch of " +
                  fixed_decimals(seam_stitch_mm, 1) + " mm (about 10 to the inch)" +
                  (are_all_tucks ? ends_of_tucks() : ends_of_darts()) +
                  "Press over a ham, to the side given.");
        for (const PlannedDart& dart : plan_.darts) {
            for (const std::string& first : dart.after) {
                paragraph(dart.dart + " lies over the mouth of " + first +
                          " when it is pressed: sew and press " + first + " first.");
            }
        }
    }

    /// The sign by which a seam speaks of what is gathered in its edges: A, B, ..., Z, AA.
    static std::string sign_of(std::size_t index) {
        constexpr std::size_t letters = 26;
        const std::string last(1, static_cast<char>('A' + index % letters));
        return index < letters ? last : sign_of(index / letters - 1) + last;
    }

    void fullness() {
        if (plan_.fullness.empty()) return;
        heading("Gathers and ease within an edge, before its seam is sewn");
        TableBlock table{{"", "piece", "edge", "what", "where"}, {}, {}};
        bool is_any_gathered = false;
        for (std::size_t i = 0; i < plan_.fullness.size(); ++i) {
            const PlannedFullness& each = plan_.fullness[i];
            const Piece& piece = piece_named(pattern_, each.piece);
            const std::vector<Run> runs = runs_of(piece.outline);
            const std::string times = each.times > 1 ? ", " + std::to_string(each.times) + " times" : "";
            table.rows.push_back(
                {sign_of(i), each.piece, each.stretch.edge + times,
                 fullness_figures(each.stretch, pattern_.unit),
                 fullness_place(piece, *find_run(runs, each.stretch.edge), each.stretch, pattern_.unit)});
            is_any_gathered = is_any_gathered || each.stretch.is_gathered();
        }
        add(std::move(table));
        std::string how =
            "Along the stretch, within the allowance, stitch one line with a long stitch; draw it up to the "
            "length given and spread the cloth evenly";
        if (is_any_gathered) how += "; for gathers stitch two lines beside each other";
        paragraph(how + ".");
    }

    std::string ease_of(const PlannedSeam& seam) const {
        if (seam.is == SeamIs::wrong_in_length) {
            return "a fault and not ease: " + seam.sides[seam.difference_mm > 0 ? 1 : 0] + " is " +
                   length(std::abs(seam.difference_mm)) + " too long";
        }
        std::string out;
        for (const std::size_t i : seam.fullness)
            out += (out.empty() ? "" : "; ") + sign_of(i) + ", as above";
        for (const EasedStretch& stretch : seam.eased) {
            const std::string& side = seam.sides[static_cast<std::size_t>(stretch.side - 1)];
            out += (out.empty() ? "" : "; ") + length(stretch.eased_mm) + " of " + side + " between " +
                   stretch.from + " and " + stretch.to;
        }
        if (seam.is == SeamIs::wrong_in_notches)
            out += (out.empty() ? "" : "; ") + std::string("a notch is a fault");
        return out.empty() ? "none" : out;
    }

    void seams() {
        if (plan_.seams.empty()) return;
        heading("Seams, in the order of sewing");
        TableBlock table{{"", "seam", "first side", "second side", "notches", "ease in"},
                         {true, false, false, false, true, false},
                         {}};
        int number = 0;
        for (const PlannedSeam& seam : plan_.seams) {
            table.rows.push_back(
                {std::to_string(++number),
                 seam.seam + (seam.times > 1 ? ", " + std::to_string(seam.times) + " times" : ""),
                 seam.sides[0] + ", " + length(seam.lengths_mm[0]),
                 (seam.sides[0] == seam.sides[1] ? "its pair" : seam.sides[1]) + ", " +
                     length(seam.lengths_mm[1]),
                 std::to_string(seam.notches), ease_of(seam)});
        }
        add(std::move(table));
        paragraph(
            "Pin the ends first, then the notches, then between them, the side that is eased towards "
            "you. Stitch on the line and fasten at both ends. Press the allowances as your method asks: "
            "open, or "
            "to one side; those of an armhole lie towards the sleeve.");
    }

    void notes() {
        if (plan_.notes.empty()) return;
        heading("To be decided");
        add(ListBlock{plan_.notes, false});
    }

    const Pattern& pattern_;
    const SheetRequest& request_;
    CheckReport report_;
    SewingPlan plan_;
    Document out_;
};

}  // namespace

Document sewing_sheet(const Pattern& pattern, const SheetRequest& request) {
    const SoundEntry sound(pattern);
    return SheetWriter(pattern, request).document();
}

}  // namespace dartwright
