#include "dartwright/assessing/draft_facts.hpp"

#include <algorithm>

#include "dartwright/assessing/dart_facts.hpp"
#include "dartwright/assessing/ladder.hpp"
#include "dartwright/assessing/matched_darts.hpp"
#include "dartwright/assessing/mouth_sides.hpp"
#include "dartwright/assessing/run_facts.hpp"

namespace dartwright {
namespace {

void add_closed(DraftFacts& facts, const AskedClosed& asked, const std::vector<StandingDart>& drawn,
                std::optional<std::size_t> left) {
    ClosedFact fact{&asked, {}};
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
    DartsOfPiece asked{{}, {}, sewn_around(drawn)};
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
                      plan->asks(each.asked->task, Criterion::gone) && each.asked->piece == dart.asked->piece;
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
    const auto is_left_open = [&](const ClosedFact& each) { return each.asked->piece == piece && each.left; };
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
    name_darts(facts);
    facts.runs = run_facts(facts);
    facts.seams = seam_facts(facts);
    return facts;
}

}  // namespace dartwright
