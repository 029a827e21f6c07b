#include "dartwright/drawing/sewing_sheet.hpp"

#include "dartwright/checks/check.hpp"
#include "dartwright/drawing/decimals.hpp"
#include "dartwright/drawing/lay_drawing.hpp"
#include "dartwright/drawing/sewing_plan.hpp"
#include "dartwright/pattern/sound_entry.hpp"

namespace dartwright {
namespace {

class SheetWriter {
  public:
    SheetWriter(const Pattern& pattern, const SheetRequest& request)
        : pattern_(pattern), request_(request), plan_(sewing_plan(pattern)) {}

    Document document() {
        out_.title = pattern_.name.empty() ? "Sewing sheet" : pattern_.name + ": sewing sheet";
        out_.subtitle = request_.date;
        cautions();
        faults();
        cloth();
        tracing();
        darts();
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
             "Iron: the plate and its steam burn; stand it up or put it off whenever you let go, and "
             "keep the cord out of the way."},
            false});
    }

    // What is not true is found now, not when the cloth is cut.
    void faults() {
        std::vector<std::string> faults;
        for (const Finding& finding : check(pattern_).findings) {
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
        paragraph("The pieces take " + length(cloth.lay.length_mm) + " of cloth " + length(width) +
                  " wide as drawn below; no way of laying them takes less than " +
                  length(cloth.lay.bound_mm) +
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
        paragraph("Carry the lines to both plies before the pattern comes off.");
    }

    static std::string name_of(const PlannedDart& dart) {
        return dart.dart + (dart.times > 1 ? ", " + std::to_string(dart.times) + " times" : "");
    }

    std::string how_to_sew(const PlannedDart& dart) const {
        if (dart.kind == PlannedDart::Kind::tuck)
            return "fasten at both ends; released beyond " + length(dart.length_mm);
        const std::string where =
            dart.kind == PlannedDart::Kind::dart ? " from the edge" : " from the middle, towards each point";
        return "shorten the stitch from " + length(dart.shorten_from_mm) + where;
    }

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
        paragraph(
            std::to_string(sewn) + (sewn == 1 ? " dart" : " darts") +
            " in all. Pin the legs on each other, the pins across. Begin at the wide end and fasten "
            "there, with a stitch of " +
            fixed_decimals(seam_stitch_mm, 1) + " mm; from the place given shorten it step by step, to " +
            fixed_decimals(point_stitch_mm, 1) + " mm for the last " +
            fixed_decimals(shortest_stitches_over_mm, 0) +
            " mm. Run off the point along the fold and knot the ends; no back-stitch there. Press over a "
            "ham, to the side given.");
        for (const PlannedDart& dart : plan_.darts) {
            for (const std::string& first : dart.after) {
                paragraph(dart.dart + " lies over the mouth of " + first +
                          " when it is pressed: sew and press " + first + " first.");
            }
        }
    }

    std::string ease_of(const PlannedSeam& seam) const {
        std::string out;
        for (const EasedStretch& stretch : seam.eased) {
            const std::string& side = seam.sides[static_cast<std::size_t>(stretch.side - 1)];
            out += (out.empty() ? "" : "; ") + length(stretch.eased_mm) + " of " + side + " between " +
                   stretch.from + " and " + stretch.to;
        }
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
                 seam.sides[1] + ", " + length(seam.lengths_mm[1]), std::to_string(seam.notches),
                 ease_of(seam)});
        }
        add(std::move(table));
        paragraph(
            "Pin the ends first, then the notches, then between them, the side that is eased towards "
            "you. Stitch on the line and fasten at both ends. Press the allowances open.");
    }

    void notes() {
        if (plan_.notes.empty()) return;
        heading("To be decided");
        add(ListBlock{plan_.notes, false});
    }

    const Pattern& pattern_;
    const SheetRequest& request_;
    SewingPlan plan_;
    Document out_;
};

}  // namespace

Document sewing_sheet(const Pattern& pattern, const SheetRequest& request) {
    const SoundEntry sound(pattern);
    return SheetWriter(pattern, request).document();
}

}  // namespace dartwright
