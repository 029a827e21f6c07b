#include "dartwright/assessing/draft_facts.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/assessing/dart_facts.hpp"
#include "dartwright/assessing/ladder.hpp"
#include "dartwright/assessing/matched_darts.hpp"
#include "dartwright/assessing/mouth_sides.hpp"
#include "dartwright/assessing/run_facts.hpp"

namespace dartwright {
namespace {

void add_closed(DraftFacts& facts, const AskedClosed& asked, const std::vector<StandingDart>& drawn,
                std::optional<std::size_t> left) {
    ClosedFact fact{&asked, {}, asked.piece, true};
    if (left) fact.left = drawn[*left];
    facts.closed.push_back(fact);
}

// Legs that differ by less than this were drawn of one length, mm: half a pencil's line.
constexpr double same_legs_mm = 0.25;

void add_moved_mouth(MovedPiece& moved, const DartFact& fact) {
    const Run* run = find_run(moved.both.after.runs, fact.found->edge);
    if (!run || fact.legs_off_mm <= same_legs_mm) return;
    moved.legs_off_mm = std::max(moved.legs_off_mm, fact.legs_off_mm);
    moved.moved_mouths.push_back(
        {fact.found->edge, fact.found->distance_mm / std::max(run->length, same_legs_mm)});
}

void add_piece(DraftFacts& facts, std::size_t index) {
    const ExercisePlan& plan = *facts.plan;
    const ShapedPiece& drawn = facts.draft.pieces[index]->shaped;
    PieceFacts piece;
    const ShapedPair both{plan.reference[index], drawn};
    piece.parts = rigid_parts(both);
    // A piece that no task changes is looked at once.
    piece.from_finished = plan.finished[index].piece.outline == plan.reference[index].piece.outline
                              ? piece.parts
                              : rigid_parts({plan.finished[index], drawn});
    const std::vector<StandingDart> darts = standing_darts(drawn, edges_of(plan.finished[index]));
    DartsOfPiece asked{{}, {}, sewn_around(drawn), &drawn.runs};
    for (const AskedDart& each : plan.darts)
        if (each.piece == index) asked.asked.push_back(&each);
    for (const AskedClosed& each : plan.closed)
        if (each.piece == index) asked.closed.push_back(&each);
    const MatchedDarts matched = matched_darts(asked, darts);
    MovedPiece moved{both, piece.parts};
    const std::size_t first = facts.darts.size();
    for (std::size_t i = 0; i < asked.asked.size(); ++i) {
        DartFact fact;
        fact.asked = asked.asked[i];
        if (matched.asked[i]) {
            fact.found = darts[*matched.asked[i]];
            fact.legs_off_mm = legs_off_mm(fact);
            add_moved_mouth(moved, fact);
        }
        facts.darts.push_back(fact);
    }
    for (std::size_t i = first; i < facts.darts.size(); ++i)
        if (facts.darts[i].found) measure_dart(facts.darts[i], moved);
    for (std::size_t i = 0; i < asked.closed.size(); ++i)
        add_closed(facts, *asked.closed[i], darts, matched.closed[i]);
    for (const std::size_t k : matched.extra) piece.extra.push_back(darts[k]);
    facts.pieces[index] = std::move(piece);
}

void add_missing_piece(DraftFacts& facts, std::size_t index) {
    for (const AskedDart& each : facts.plan->darts) {
        if (each.piece != index) continue;
        facts.darts.emplace_back();
        facts.darts.back().asked = &each;
    }
    for (const AskedClosed& each : facts.plan->closed)
        if (each.piece == index) facts.closed.push_back({&each, {}});
}

// How the piece of the draft is an undivided one, if it is more like that than like any finished one, or like
// any other piece that it was before.
std::vector<RunMatching> ways_as_undivided(const DraftFacts& facts, const UndividedPiece& whole,
                                           const DraftedPiece& drawn) {
    const ExercisePlan& plan = *facts.plan;
    std::vector<RunMatching> ways = matched_runs(whole.signatures, drawn.runs);
    const auto misfit_as = [&](const std::vector<RunSignature>& each) {
        return matched_runs(each, drawn.runs).front().misfit;
    };
    const double misfit = ways.front().misfit;
    const bool is_finished = std::any_of(plan.signatures.begin(), plan.signatures.end(),
                                         [&](const auto& each) { return misfit_as(each) <= misfit; });
    const bool is_other = std::any_of(plan.known.begin(), plan.known.end(), [&](const ShapedPiece& each) {
        return each.piece.name != whole.shaped.piece.name && misfit_as(signatures_of(each)) < misfit;
    });
    if (is_finished || is_other || !(misfit < worst_misfit)) ways.clear();
    return ways;
}

std::optional<AskedClosed> closed_in(std::size_t undivided, const AskedClosed& asked) {
    for (const UndividedPlace& each : asked.undivided) {
        if (each.piece != undivided) continue;
        AskedClosed out = asked;
        out.dart.distance_mm = out.around_mm = each.distance_mm;
        out.dart.to_end_mm = each.to_end_mm;
        return out;
    }
    return std::nullopt;
}

std::vector<StandingDart> along_edge(const std::vector<StandingDart>& darts, const std::string& edge) {
    std::vector<StandingDart> out;
    for (const StandingDart& dart : darts)
        if (dart.edge == edge) out.push_back(dart);
    for (StandingDart& dart : out) dart.around_mm = dart.distance_mm;
    return out;
}

// What is left open of it, by its name in the draft, among the darts that stood in the edge then and others
// that were closed in it: each of those is known by its place.
std::optional<std::string> left_open(const ExercisePlan& plan, std::size_t undivided,
                                     const AskedClosed& asked, const ShapedPiece& drawn) {
    const std::string& edge = asked.dart.edge;
    std::vector<AskedDart> standing;
    for (const StandingDart& dart : along_edge(plan.undivided[undivided].darts, edge))
        standing.push_back({asked.piece, dart});
    std::vector<AskedClosed> closed{*closed_in(undivided, asked)};
    for (const AskedClosed& other : plan.closed)
        if (const auto there = closed_in(undivided, other); there && &other != &asked)
            if (there->dart.edge == edge) closed.push_back(*there);
    DartsOfPiece darts{{}, {}, sewn_around(drawn), &drawn.runs};
    for (const AskedDart& each : standing) darts.asked.push_back(&each);
    for (const AskedClosed& each : closed) darts.closed.push_back(&each);
    const std::vector<StandingDart> beside = along_edge(standing_darts(drawn, edges_of(drawn)), edge);
    const auto left = matched_darts(darts, beside).closed.front();
    return left ? std::optional(beside[*left].name) : std::nullopt;
}

std::optional<StandingDart> dart_named(const ShapedPiece& shaped, const std::string& name) {
    for (const StandingDart& each : standing_darts(shaped, edges_of(shaped)))
        if (each.name == name) return each;
    return std::nullopt;
}

// What was taken for left open, and is another dart, is one that nobody asked for; and the other way round.
void replace_left(DraftFacts& facts, ClosedFact& fact, std::optional<StandingDart> left) {
    std::vector<StandingDart>& extra = facts.pieces[*fact.piece].extra;
    if (left) std::erase_if(extra, [&](const StandingDart& dart) { return dart.item == left->item; });
    const bool is_other = fact.left && (!left || left->item != fact.left->item);
    if (is_other) extra.push_back(*fact.left);
    fact.left = std::move(left);
}

// What the piece of the draft, if it is that undivided one, says of the mouths that were closed in it.
void look_into(DraftFacts& facts, std::size_t undivided, std::size_t drawn) {
    const UndividedPiece& known = facts.plan->undivided[undivided];
    const DraftedPiece& piece = facts.draft.drawn[drawn];
    const std::vector<RunMatching> ways = ways_as_undivided(facts, known, piece);
    if (ways.empty()) return;
    const ShapedPiece whole = matched_as(known.shaped, ways, piece, facts.draft.scale.drawn).shaped;
    std::optional<std::size_t> taken_for;
    for (std::size_t i = 0; i < facts.draft.pieces.size(); ++i)
        if (facts.draft.pieces[i] && facts.draft.pieces[i]->drawn == drawn) taken_for = i;
    for (ClosedFact& fact : facts.closed) {
        if (!closed_in(undivided, *fact.asked)) continue;
        const auto left = left_open(*facts.plan, undivided, *fact.asked, whole);
        if (fact.piece) replace_left(facts, fact, std::nullopt);
        fact.left.reset();
        fact.piece = taken_for;
        fact.is_there = true;
        if (!left) continue;
        if (taken_for)
            replace_left(facts, fact, dart_named(facts.draft.pieces[*taken_for]->shaped, *left));
        else
            fact.left = dart_named(whole, *left);
    }
}

// A mouth may have been closed in a piece that a later task divides and that the draft has undivided.
void look_into_undivided(DraftFacts& facts) {
    for (std::size_t k = 0; k < facts.plan->undivided.size(); ++k)
        for (std::size_t i = 0; i < facts.draft.drawn.size(); ++i) look_into(facts, k, i);
}

// So that findings name the darts as the exercise does.
void name_darts(DraftFacts& facts) {
    for (std::size_t i = 0; i < facts.pieces.size(); ++i) {
        if (!facts.draft.pieces[i]) continue;
        for (OutlineItem& item : facts.draft.pieces[i]->shaped.piece.outline.items)
            if (DartItem* dart = item.as_dart()) dart->name = other_name(dart->name);
    }
    for (DartFact& fact : facts.darts) {
        if (!fact.found) continue;
        Outline& outline = facts.draft.pieces[fact.asked->piece]->shaped.piece.outline;
        outline.items[fact.found->item].as_dart()->name = fact.asked->dart.name;
    }
}

}  // namespace

std::string other_name(const std::string& dart) {
    return dart + " (other)";
}

const RunFact* DraftFacts::run(std::size_t piece, const std::string& edge) const {
    const auto found = std::find_if(runs.begin(), runs.end(), [&](const RunFact& each) {
        return each.piece == piece && each.edge == edge;
    });
    return found == runs.end() ? nullptr : &*found;
}

bool DraftFacts::has_legs_off(const DartFact& dart) const {
    const bool is_asked = plan->asks(*dart.asked, Criterion::legs) || plan->asks(Criterion::check);
    return dart.found && is_asked && is_off(lengths(), dart.legs_off_mm);
}

bool DraftFacts::has_mouth_off(const DartFact& dart) const {
    return dart.found && plan->asks(*dart.asked, Criterion::mouth) &&
           is_off(angles(), std::max(0.0, dart.kink_deg - dart.asked->dart.kink_deg));
}

bool DraftFacts::is_copied(const DartFact& dart) const {
    return dart.found && std::any_of(closed.begin(), closed.end(), [&](const ClosedFact& each) {
               return each.left && dart.asked->is_touched_by(each.asked->task) &&
                      plan->asks(each.asked->task, Criterion::gone) && each.piece == dart.asked->piece;
           });
}

bool DraftFacts::has_pivot_off(const DartFact& dart) const {
    return dart.found && plan->asks(*dart.asked, Criterion::pivot) &&
           (is_off(lengths(), dart.centre_off_mm) || is_off(lengths(), dart.aim_off_mm));
}

bool DraftFacts::has_fault(std::size_t piece) const {
    const auto is_run_off = [&](const RunFact& run) {
        return run.piece == piece && (!run.found_mm || is_off(lengths(), *run.found_mm - run.expected_mm));
    };
    const auto is_dart_off = [&](const DartFact& dart) {
        if (dart.asked->piece != piece) return false;
        const double angle = dart.asked->dart.figures.angle_rad;
        return !dart.found || is_off(lengths(), dart.legs_off_mm) || is_off(lengths(), dart.centre_off_mm) ||
               is_off(lengths(), dart.aim_off_mm) || is_off(angles(), degrees(dart.angle_rad - angle));
    };
    const auto is_left_open = [&](const ClosedFact& each) { return each.piece == piece && each.left; };
    return std::any_of(runs.begin(), runs.end(), is_run_off) ||
           std::any_of(darts.begin(), darts.end(), is_dart_off) ||
           std::any_of(closed.begin(), closed.end(), is_left_open) || !pieces[piece].extra.empty();
}

bool DraftFacts::is_redrawn(std::size_t piece, const std::string& edge) const {
    const Run* run = find_run(plan->finished[piece].runs, edge);
    const auto is_off_here = [&](const RunFact& each) {
        const bool is_here =
            each.edge == edge || (run && (each.edge == run->before || each.edge == run->after));
        return each.piece == piece && is_here &&
               (!each.found_mm || is_off(lengths(), *each.found_mm - each.expected_mm));
    };
    const auto has_other_legs = [&](const DartFact& dart) {
        return dart.asked->piece == piece && dart.found && dart.found->edge == edge &&
               (is_off(lengths(), dart.legs_off_mm) || has_mouth_off(dart));
    };
    return std::any_of(runs.begin(), runs.end(), is_off_here) ||
           std::any_of(darts.begin(), darts.end(), has_other_legs);
}

DraftFacts facts_of(const ExercisePlan& plan, const Pattern& draft) {
    DraftFacts facts;
    facts.plan = &plan;
    facts.draft = matched_draft(plan, draft);
    facts.pieces.resize(plan.finished.size());
    for (std::size_t i = 0; i < plan.finished.size(); ++i) {
        if (facts.draft.pieces[i])
            add_piece(facts, i);
        else
            add_missing_piece(facts, i);
    }
    look_into_undivided(facts);
    name_darts(facts);
    facts.runs = run_facts(facts);
    facts.seams = seam_facts(facts);
    return facts;
}

}  // namespace dartwright
