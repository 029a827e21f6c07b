#include "dartwright/assessing/overlaid_pieces.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/assessing/judged_lines.hpp"
#include "dartwright/assessing/mouth_sides.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/words/lengths.hpp"
#include "dartwright/words/lists.hpp"

namespace dartwright {
namespace {

/// A piece that lies turned by less than this lies as it did, degrees.
constexpr double turned_deg = 0.5;

// The part that the grain lies along lies as in the finished pattern, so that by it the picture is turned.
Motion motion_of(const DraftFacts& facts, std::size_t piece) {
    return robust_motion(facts.pieces[piece].from_finished);
}

OverlaidPiece overlaid(const DraftFacts& facts, std::size_t piece, const Piece& drawn) {
    const Piece& expected = facts.plan->finished[piece].piece;
    OverlaidPiece out{expected.name, drawn.name, {}, {}};
    out.found = polygon_of(drawn.outline, std::max(1.0, facts.draft.scale.drawn));
    const Motion motion = motion_of(facts, piece);
    for (const Point p : facts.plan->finished_polygons[piece])
        out.expected.push_back(facts.draft.as_drawn(piece, apply(motion, p)));
    return out;
}

// The longest part against the piece before says how much the piece was turned on the paper.
void note_turn(std::vector<std::string>& notes, const DraftFacts& facts, std::size_t piece) {
    const RigidParts& parts = facts.pieces[piece].parts;
    const auto longest = std::max_element(
        parts.parts.begin(), parts.parts.end(),
        [](const ComparedPart& a, const ComparedPart& b) { return a.length_mm < b.length_mm; });
    if (longest == parts.parts.end()) return;
    const double turned = degrees(angle(longest->motion));
    if (std::abs(turned) <= turned_deg) return;
    notes.push_back("The " + facts.plan->finished[piece].piece.name + " lies turned by " +
                    degrees_in_sentence(std::abs(turned)) + ", which is no fault.");
}

void note_piece(std::vector<std::string>& notes, const DraftFacts& facts, std::size_t piece) {
    const std::string& name = facts.plan->finished[piece].piece.name;
    const MatchedPiece& drawn = *facts.draft.pieces[piece];
    if (!drawn.renamed.empty())
        notes.push_back("In the " + name + ", names were matched by shape: " + all_of(drawn.renamed) + ".");
    if (drawn.is_mirrored)
        notes.push_back("The " + name +
                        " is drawn the other way up, which is no fault: it was judged turned over.");
    note_turn(notes, facts, piece);
}

void note_back_off(std::vector<std::string>& notes, const DraftFacts& facts) {
    if (!facts.plan->may_differ(Freedom::back_off)) return;
    for (const DartFact& dart : facts.darts) {
        if (!dart.found || !dart.asked->task) continue;
        const double asked = dart.asked->dart.figures.back_off;
        const double found = distance(dart.found->figures.point, dart.used_pivot);
        if (!is_off(facts.lengths(), found - asked)) continue;
        notes.push_back("The point of " + dart.asked->dart.name + " stops " + length_words(facts, found) +
                        " short of its pivot, " + length_words(facts, asked) +
                        " in the exercise; either is right.");
    }
}

void note_size(std::vector<std::string>& notes, const DraftFacts& facts) {
    if (!facts.draft.scale.is_off) return;
    const bool is_borne = facts.plan->asks(Criterion::size) || facts.plan->asks(Criterion::lengths) ||
                          facts.plan->asks(Criterion::measure);
    notes.push_back("It is drawn at " + text_of("%.4g", facts.draft.scale.drawn) +
                    " times full size; everything else was judged as if it were full size" +
                    (is_borne ? "." : ", and nothing asks for the size."));
}

}  // namespace

std::vector<OverlaidPiece> overlaid_pieces(const DraftFacts& facts, const Pattern& draft) {
    std::vector<OverlaidPiece> out;
    for (std::size_t i = 0; i < facts.draft.pieces.size(); ++i)
        if (facts.draft.pieces[i])
            out.push_back(overlaid(facts, i, draft.pieces[facts.draft.pieces[i]->drawn]));
    return out;
}

std::vector<std::string> notes_on(const DraftFacts& facts) {
    std::vector<std::string> notes;
    note_size(notes, facts);
    for (std::size_t i = 0; i < facts.draft.pieces.size(); ++i) {
        if (facts.draft.pieces[i])
            note_piece(notes, facts, i);
        else
            notes.push_back("No piece of the draft is the " + facts.plan->finished[i].piece.name + ".");
    }
    for (const std::string& extra : facts.draft.extra_pieces)
        notes.push_back("The piece " + quoted(extra) + " is none of the exercise's and was not judged.");
    note_back_off(notes, facts);
    return notes;
}

}  // namespace dartwright
