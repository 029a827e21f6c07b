#include <algorithm>
#include <cmath>

#include "dartwright/assessing/judged_lines.hpp"
#include "dartwright/assessing/mouth_sides.hpp"

namespace dartwright {
namespace {

// The most that a place of a stretch lies off where its part as a whole was moved to.
struct Stray {
    double mm = 0;
    Point at;
};
Stray stray_of(const MatchedPlaces& places, std::size_t stretch, const Motion& motion) {
    const std::size_t end =
        stretch + 1 < places.begins.size() ? places.begins[stretch + 1] : places.before.size();
    Stray out;
    for (std::size_t i = places.begins[stretch]; i < end; ++i) {
        const double off = distance(apply(motion, places.before[i]), places.after[i]);
        if (off > out.mm) out = {off, places.after[i]};
    }
    return out;
}

class ShapesOfPiece {
  public:
    ShapesOfPiece(const DraftFacts& facts, std::size_t piece)
        : facts_(facts),
          piece_(piece),
          both_{facts.plan->finished[piece], facts.draft.pieces[piece]->shaped},
          parts_(facts.pieces[piece].from_finished) {}

    ScoredLines lines() {
        for (std::size_t i = 0; i < parts_.parts.size(); ++i) {
            const Motion unchanged = motions_of_part({both_, parts_}, i).all.front();
            const Motion whole = robust_motion(parts_.places[i]);
            for (std::size_t k = 0; k < parts_.parts[i].stretches.size(); ++k) {
                const Stray first = stray_of(parts_.places[i], k, unchanged);
                const Stray second = stray_of(parts_.places[i], k, whole);
                add(parts_.parts[i].stretches[k].edge, first.mm < second.mm ? first : second);
            }
        }
        ScoredLines out;
        for (const auto& [edge, stray] : strays_) out.push_back(line(edge, stray));
        return out;
    }

  private:
    void add(const std::string& edge, const Stray& stray) {
        auto same = std::find_if(strays_.begin(), strays_.end(),
                                 [&](const auto& each) { return each.first == edge; });
        if (same == strays_.end()) same = strays_.insert(same, {edge, {}});
        if (stray.mm >= same->second.mm) same->second = stray;
    }
    ScoredLine line(const std::string& edge, const Stray& stray) const {
        JudgedLine about;
        about.criterion = Criterion::shape;
        about.piece = facts_.plan->finished[piece_].piece.name;
        about.edge = edge;
        about.what = "the shape of the " + edge;
        about.at = drawn_place(facts_, piece_, stray.at);
        about.remedy =
            "Lay the pattern you began with under the piece, part by part, and trace the " + edge + " again.";
        // What lengths and legs are off may be seen all along the part, from either of its ends.
        const double off = std::max(0.0, stray.mm - 2 * std::max(most_changed_mm(both_), legs_off_mm()));
        ScoredLine out = length_line(facts_, std::move(about), {0, stray.mm, off});
        if (facts_.is_redrawn(piece_, edge))
            out = judged_elsewhere(facts_.lengths(), std::move(out), "follows from lengths judged already");
        return out;
    }

    double legs_off_mm() const {
        double most = 0;
        for (const DartFact& dart : facts_.darts)
            if (dart.asked->piece == piece_ && dart.found) most = std::max(most, dart.legs_off_mm);
        return most;
    }

    const DraftFacts& facts_;
    std::size_t piece_;
    ShapedPair both_;
    const RigidParts& parts_;
    std::vector<std::pair<std::string, Stray>> strays_;
};

// A dart that was to stay has no task that asks for its place.
ScoredLines untouched_darts(const DraftFacts& facts) {
    ScoredLines lines;
    for (const DartFact& dart : facts.darts) {
        if (dart.asked->task) continue;
        JudgedLine line = about_dart(facts, Criterion::shape, dart);
        line.what = "the place of " + dart.asked->dart.name + ", which was to stay";
        line.remedy = "Leave this dart where it was.";
        if (!dart.found) {
            lines.push_back(fault_line(std::move(line), "a dart", "no dart"));
            continue;
        }
        const double off = dart.found->edge == dart.asked->dart.edge
                               ? dart.found->distance_mm - dart.asked->dart.distance_mm
                               : dart.found->around_mm - dart.asked->dart.around_mm;
        ScoredLine out =
            length_line(facts, std::move(line), {dart.asked->dart.distance_mm, dart.found->distance_mm, off});
        if (facts.is_redrawn(dart.asked->piece, dart.asked->dart.edge))
            out = judged_elsewhere(facts.lengths(), std::move(out), "follows from lengths judged already");
        lines.push_back(std::move(out));
    }
    return lines;
}

// So much on every side of half the outline makes the difference.
double mean_stray_mm(const DraftFacts& facts, std::size_t piece, double area_mm2) {
    return 2 * area_mm2 / std::max(sewn_around(facts.plan->finished[piece]), 1.0);
}

// The mouths' cloth is counted to the pivots that the darts were turned about, whether these are written or
// not.
Piece with_used_pivots(const DraftFacts& facts, std::size_t piece) {
    Piece drawn = facts.draft.pieces[piece]->shaped.piece;
    for (const DartFact& dart : facts.darts)
        if (dart.found && dart.asked->piece == piece) {
            DartItem* item = drawn.outline.items[dart.found->item].as_dart();
            if (item && !item->pivot) item->pivot = dart.used_pivot;
        }
    return drawn;
}

ScoredLine area_of(const DraftFacts& facts, std::size_t piece) {
    const Piece& expected = facts.plan->finished[piece].piece;
    JudgedLine line;
    line.criterion = Criterion::area;
    line.piece = expected.name;
    line.what = "the cloth of the " + expected.name;
    line.remedy =
        "Lay the pattern you began with under the piece, part by part: cloth was added or cut away.";
    if (!facts.draft.pieces[piece]) return fault_line(std::move(line), "a piece", "no such piece");
    const double before = cloth_area(expected);
    const double after = cloth_area(with_used_pivots(facts, piece));
    ScoredLine out =
        length_line(facts, std::move(line), {before, after, mean_stray_mm(facts, piece, after - before)});
    out.line.quantity = Quantity::area;
    out.line.difference = after - before;
    if (facts.has_fault(piece))
        out = judged_elsewhere(facts.lengths(), std::move(out),
                               "follows from lengths and darts judged already");
    return out;
}

// What is not there has no shape: else nothing done would earn all of a task that makes pieces or edges.
ScoredLines missing_shapes(const DraftFacts& facts) {
    ScoredLines lines;
    for (const RunFact& run : facts.runs) {
        if (run.found_mm) continue;
        const bool is_piece_there = facts.draft.pieces[run.piece].has_value();
        JudgedLine line = about_run(facts, Criterion::shape, run);
        line.what = "the shape of the " + run.edge;
        line.remedy = is_piece_there ? "Draw the " + run.edge + ": there is none on the " + line.piece + "."
                                     : "Hand in the " + line.piece + " too.";
        lines.push_back(
            fault_line(std::move(line), "an edge", is_piece_there ? "no such edge" : "no such piece"));
    }
    return lines;
}

}  // namespace

ScoredLines shape_lines(const DraftFacts& facts, const MarkedTask&) {
    ScoredLines lines;
    for (std::size_t i = 0; i < facts.plan->finished.size(); ++i) {
        if (!facts.draft.pieces[i]) continue;
        for (ScoredLine& line : ShapesOfPiece(facts, i).lines()) lines.push_back(std::move(line));
    }
    for (ScoredLine& line : missing_shapes(facts)) lines.push_back(std::move(line));
    for (ScoredLine& line : untouched_darts(facts)) lines.push_back(std::move(line));
    return lines;
}

ScoredLines area_lines(const DraftFacts& facts, const MarkedTask&) {
    ScoredLines lines;
    for (std::size_t i = 0; i < facts.plan->finished.size(); ++i) lines.push_back(area_of(facts, i));
    return lines;
}

}  // namespace dartwright
