#include "dartwright/cutting/mouth_cap.hpp"

#include <cmath>

#include "dartwright/cutting/line_walk.hpp"
#include "dartwright/cutting/trimmed_mouth.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright::cutting {
namespace {

class MouthCapMaker {
  public:
    MouthCapMaker(const Piece& piece, const RawLine& line, std::size_t mouth, const CuttingRequest& request,
                  PressesOfPiece& presses)
        : piece_(piece),
          presses_(presses),
          line_(line),
          mouth_(mouth),
          tolerances_(request.tolerances),
          trimmed_(request.trimmed),
          item_(line.mouths[mouth].item),
          figures_(figures_of(piece.outline, item_)) {}

    MouthCap made() {
        CutDart& dart = out_.dart;
        dart.item = item_;
        dart.dart = piece_.outline.items[item_].as_dart()->name;
        dart.a = line_.line.points[line_.mouths[mouth_].at];
        dart.b = line_.line.points[line_.mouths[mouth_].at + 1];
        dart.point = figures_.point;
        const Sentence refusal = reason_for_none();
        if (!refusal.empty()) {
            go_straight(refusal);
        } else if (choose_side()) {
            fold();
        } else {
            go_straight("it has no press side");
        }
        trim();
        return std::move(out_);
    }

  private:
    void add(Point p) { out_.between.push_back({p, {CutPart::mouth, item_, 0}}); }

    // The cap as far as the line beside a leg, that line to the centre line, and so back on the other side.
    void trim() {
        for (const DartTrimming& trimming : trimmed_) {
            if (trimming.dart != out_.dart.dart) continue;
            const auto points = trimmed_mouth({figures_.point, out_.dart.a, out_.dart.b}, out_.between,
                                              {trimming.width_mm, item_});
            if (points) {
                out_.between = *points;
            } else {
                out_.notes.push_back("there is nothing to trim from " + quoted(out_.dart.dart) + ": " +
                                     width_told(trimming.width_mm) + " along each leg is all of it");
            }
            return;
        }
    }

    FoldedDart folded_dart() const {
        return {out_.dart.a, out_.dart.b, figures_.point, figures_.sewn_angle_rad};
    }

    Sentence reason_for_none() const {
        const double leg_a = distance(figures_.a, figures_.point);
        const double leg_b = distance(figures_.b, figures_.point);
        const bool is_mouth =
            leg_a > 0 && leg_b > 0 && figures_.sewn_angle_rad > 0 && figures_.intake > shut_mouth_mm;
        if (!is_mouth) return "its mouth is shut or its legs are crossed";
        if (std::abs(leg_a - leg_b) > tolerances_.legs_mm) {
            return "its legs differ by " + difference_told(std::abs(leg_a - leg_b));
        }
        return is_in_fold() ? "it stands in the fold" : "";
    }

    bool is_in_fold() const {
        const std::vector<OutlineItem>& items = piece_.outline.items;
        const EdgeItem* before = items[(item_ + items.size() - 1) % items.size()].as_edge();
        const EdgeItem* after = items[(item_ + 1) % items.size()].as_edge();
        return before && after && before->edge == after->edge && is_fold_edge(piece_, before->edge);
    }

    // The side its `press` says, else the usual one.
    bool choose_side() {
        const std::string& own = piece_.outline.items[item_].as_dart()->press;
        if (!own.empty()) out_.dart.pressed = presses_.sides.towards(item_, own);
        if (out_.dart.pressed) return true;
        const std::string edge = presses_.usual.towards(centre_line(folded_dart()));
        if (!edge.empty()) out_.dart.pressed = presses_.sides.towards(item_, edge);
        if (!out_.dart.pressed) return false;
        out_.notes.push_back(quoted(out_.dart.dart) +
                             " has no press side; its cap is cut for pressing it towards " + quoted(edge));
        return true;
    }

    void fold() {
        LineWalk walk(piece_, line_, mouth_, *out_.dart.pressed);
        const FoldedCap cap = folded_cap(folded_dart(), *out_.dart.pressed, [&] { return walk.next(); });
        if (cap.is_far_out) return go_straight("its cap would stand out by " + measure_told(cap.depth_mm));
        const std::string name = quoted(out_.dart.dart);
        if (cap.is_square) {
            out_.notes.push_back("the edge beside " + name +
                                 " does not reach the middle of the folded dart; its cap goes square across");
        }
        if (piece_.outline.items[item_].as_dart()->legs) {
            out_.notes.push_back("the curved legs of " + name + " are folded as straight ones");
        }
        for (std::size_t k = 0; k + 1 < cap.curves.size(); ++k) add(end_of(cap.curves[k]));
        out_.dart.tip = cap.tip;
        out_.dart.centre = centre_line(folded_dart());
        out_.dart.is_capped = true;
    }

    void go_straight(const Sentence& reason) {
        CutDart& dart = out_.dart;
        dart.pressed = std::nullopt;
        dart.tip = middle(dart.a, dart.b);
        dart.centre = unit(dart.tip - dart.point);
        out_.notes.push_back("the cutting line goes straight over the mouth of " + quoted(dart.dart) + ": " +
                             reason);
    }

    const Piece& piece_;
    PressesOfPiece& presses_;
    const RawLine& line_;
    std::size_t mouth_;
    const Tolerances& tolerances_;
    const std::vector<DartTrimming>& trimmed_;
    std::size_t item_;
    DartFigures figures_;
    MouthCap out_;
};

}  // namespace

MouthCap mouth_cap(const Piece& piece, const RawLine& line, std::size_t mouth, const CuttingRequest& request,
                   PressesOfPiece& presses) {
    return MouthCapMaker(piece, line, mouth, request, presses).made();
}

}  // namespace dartwright::cutting
