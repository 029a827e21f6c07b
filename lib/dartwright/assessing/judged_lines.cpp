#include "dartwright/assessing/judged_lines.hpp"

#include <cmath>

#include "dartwright/assessing/criterion_names.hpp"
#include "dartwright/words/lengths.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {
namespace {

ScoredLine scored(JudgedLine line, const Standing& standing) {
    line.rung = standing.rung;
    // What needs no mending says nothing of it.
    if (standing.step == 0) line.remedy.clear();
    return {std::move(line), standing.share};
}

JudgedLine with_amounts(JudgedLine line, Quantity quantity, const Amounts& amounts) {
    line.quantity = quantity;
    line.expected = amounts.expected;
    line.found = amounts.found;
    line.difference = amounts.difference;
    return line;
}

}  // namespace

ScoredLine length_line(const DraftFacts& facts, JudgedLine about, const Amounts& amounts) {
    return scored(with_amounts(std::move(about), Quantity::length, amounts),
                  standing(facts.lengths(), amounts.difference));
}

ScoredLine angle_line(const DraftFacts& facts, JudgedLine about, const Amounts& amounts) {
    return scored(with_amounts(std::move(about), Quantity::angle, amounts),
                  standing(facts.angles(), amounts.difference));
}

std::string length_words(const DraftFacts& facts, double mm) {
    const Unit unit = facts.plan->exercise.unit;
    if (unit == Unit::mm) return mm_in_sentence(mm);
    // To about a hundredth of a millimetre; half of that is half, whatever rounding made of it.
    return shortest_decimals(rounded_figure(mm / mm_in(unit)), 3) + " " + word_of(unit);
}

ScoredLine fault_line(JudgedLine about, std::string expected, std::string found) {
    about.quantity = Quantity::words;
    about.expected_words = std::move(expected);
    about.found_words = std::move(found);
    about.rung = fault_rung;
    return {std::move(about), 0};
}

ScoredLine judged_elsewhere(const Ladder& ladder, ScoredLine line, const std::string& where) {
    line.line.rung = ladder.front().name;
    line.line.remedy.clear();
    line.line.found_words = where;
    line.share = ladder.front().share;
    return line;
}

JudgedLine about_dart(const DraftFacts& facts, Criterion criterion, const DartFact& dart) {
    JudgedLine line;
    line.criterion = criterion;
    line.piece = facts.plan->finished[dart.asked->piece].piece.name;
    line.edge = dart.asked->dart.edge;
    line.dart = dart.asked->dart.name;
    if (dart.found)
        line.at = drawn_place(facts, dart.asked->piece, middle(dart.found->figures.a, dart.found->figures.b));
    return line;
}

JudgedLine about_run(const DraftFacts& facts, Criterion criterion, const RunFact& run) {
    JudgedLine line;
    line.criterion = criterion;
    line.piece = facts.plan->finished[run.piece].piece.name;
    line.edge = run.edge;
    line.at = middle_of_run(facts, run.piece, run.edge);
    return line;
}

std::optional<Point> drawn_place(const DraftFacts& facts, std::size_t piece, Point p) {
    if (!facts.draft.pieces[piece]) return std::nullopt;
    return facts.draft.as_drawn(piece, p);
}

std::optional<Point> middle_of_run(const DraftFacts& facts, std::size_t piece, const std::string& edge) {
    if (!facts.draft.pieces[piece]) return std::nullopt;
    const ShapedPiece& shaped = facts.draft.pieces[piece]->shaped;
    const Run* run = find_run(shaped.runs, edge);
    if (!run) return std::nullopt;
    return drawn_place(facts, piece, place_on_run(shaped.piece.outline, *run, run->length / 2).point);
}

}  // namespace dartwright
