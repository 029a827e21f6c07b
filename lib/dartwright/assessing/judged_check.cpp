#include <algorithm>
#include <cmath>
#include <set>

#include "dartwright/assessing/checked_draft.hpp"
#include "dartwright/assessing/criterion_names.hpp"
#include "dartwright/assessing/judged_lines.hpp"
#include "dartwright/assessing/mouth_sides.hpp"
#include "dartwright/words/lengths.hpp"
#include "dartwright/words/lists.hpp"

namespace dartwright {
namespace {

struct Subject {
    const char* check;
    Criterion criterion;
};
/// Checks whose whole subject a criterion has judged, wherever it is asked of that dart or of the draft.
constexpr std::array<Subject, 5> dart_subjects{{{"dart-legs", Criterion::legs},
                                                {"dart-point", Criterion::legs},
                                                {"dart-point", Criterion::pivot},
                                                {"dart-mouth", Criterion::mouth},
                                                {"dart-point", Criterion::angle}}};
constexpr std::array<Subject, 7> draft_subjects{{{"seam-length", Criterion::seams},
                                                 {"notch-place", Criterion::notches},
                                                 {"notch-missing", Criterion::notches},
                                                 {"notch-kind", Criterion::notches},
                                                 {"notch-in-dart", Criterion::notches},
                                                 {"notch-in-dart", Criterion::place},
                                                 {"seam-allowance", Criterion::allowances}}};
/// Checks that fail beside an edge or a mouth that was redrawn and is judged for that.
const std::set<std::string> following_checks{"outline-kink",  "seam-corner", "seam-length",
                                             "dart-mouth",    "dart-point",  "notch-place",
                                             "notch-missing", "fold-corner", "fold-straight"};

const DartFact* dart_of(const DraftFacts& facts, const Finding& finding) {
    for (const DartFact& dart : facts.darts)
        if (dart.found && dart.asked->dart.name == finding.dart &&
            facts.plan->finished[dart.asked->piece].piece.name == finding.piece)
            return &dart;
    return nullptr;
}

bool is_subject_judged(const DraftFacts& facts, const Finding& finding) {
    const DartFact* dart = dart_of(facts, finding);
    const bool is_by_dart =
        dart && std::any_of(dart_subjects.begin(), dart_subjects.end(), [&](const Subject& each) {
            return finding.check == each.check && facts.plan->asks(*dart->asked, each.criterion);
        });
    return is_by_dart || std::any_of(draft_subjects.begin(), draft_subjects.end(), [&](const Subject& each) {
               return finding.check == each.check && facts.plan->asks(each.criterion);
           });
}

// A dart that was to be closed is judged as that.
bool is_left_open(const DraftFacts& facts, const Finding& finding) {
    return std::any_of(facts.closed.begin(), facts.closed.end(), [&](const ClosedFact& closed) {
        return closed.left && closed.piece &&
               facts.plan->finished[*closed.piece].piece.name == finding.piece &&
               finding.dart == other_name(closed.left->name) &&
               facts.plan->asks(closed.asked->task, Criterion::gone);
    });
}

bool is_redrawn_there(const DraftFacts& facts, const std::string& piece, const std::string& edge) {
    for (std::size_t i = 0; i < facts.plan->finished.size(); ++i)
        if (facts.plan->finished[i].piece.name == piece && facts.draft.pieces[i] && facts.is_redrawn(i, edge))
            return true;
    return false;
}

// What an edge of another length, or a leg, makes of the corners beside it is judged with it.
bool follows(const DraftFacts& facts, const Finding& finding) {
    const bool is_length_judged = facts.plan->asks(Criterion::lengths) || facts.plan->asks(Criterion::seams);
    if (!is_length_judged || !following_checks.contains(finding.check)) return false;
    if (is_redrawn_there(facts, finding.piece, finding.edge)) return true;
    for (const SeamFact& seam : facts.seams) {
        if (finding.seam.empty() || seam.seam->name != finding.seam) continue;
        for (const SeamSide& side : seam.seam->joins)
            for (const SeamPart& part : side)
                if (is_redrawn_there(facts, part.piece, part.edge)) return true;
    }
    return false;
}

bool is_same_place(const Finding& a, const Finding& b) {
    return a.check == b.check && a.piece == b.piece && a.edge == b.edge && a.dart == b.dart &&
           a.seam == b.seam;
}

// A finding that the finished pattern has too is none, unless it is worse by as much as is allowed of it.
bool is_of_the_exercise(const DraftFacts& facts, const Finding& finding) {
    return std::any_of(facts.plan->findings.begin(), facts.plan->findings.end(), [&](const Finding& own) {
        if (!is_same_place(own, finding)) return false;
        const double worse = std::abs(finding.difference.value_or(0)) - std::abs(own.difference.value_or(0));
        return worse <= own.allowed.value_or(0);
    });
}

// Angles, where the check measures any.
bool is_angle_check(const Finding& finding) {
    const auto& all = list_of_checks();
    const auto kind = std::find_if(all.begin(), all.end(),
                                   [&](const CheckKind& each) { return finding.check == each.name; });
    if (kind == all.end()) return false;
    return std::any_of(tolerance_names().begin(), tolerance_names().end(), [&](const ToleranceName& each) {
        return each.is_angle && std::string(kind->tolerance) == each.name;
    });
}

std::optional<std::size_t> piece_of(const DraftFacts& facts, const std::string& name) {
    for (std::size_t i = 0; i < facts.plan->finished.size(); ++i)
        if (facts.plan->finished[i].piece.name == name) return i;
    return std::nullopt;
}

// On the rungs that begin at the tolerance, or at as much of it as the hand is allowed.
ScoredLine check_line(const DraftFacts& facts, JudgedLine line, const Ladder& rungs, double tolerance) {
    const Ladder ladder = ladder_from(rungs, tolerance * tolerances_allowed(facts.plan->exercise.hand));
    const Standing standing = dartwright::standing(ladder, *line.difference);
    line.rung = standing.rung;
    if (standing.step == 0) line.remedy.clear();
    return {std::move(line), standing.share};
}

ScoredLine line_of(const DraftFacts& facts, const Finding& finding) {
    JudgedLine line;
    line.criterion = Criterion::check;
    line.piece = finding.piece;
    line.edge = finding.edge;
    line.dart = finding.dart;
    line.seam = finding.seam;
    line.what = finding.check + ": " + finding.message;
    line.remedy = finding.remedy;
    const auto piece = piece_of(facts, finding.piece);
    if (piece && finding.at) line.at = drawn_place(facts, *piece, *finding.at);
    if (!finding.difference || !finding.measured || !finding.expected)
        return fault_line(std::move(line), "none", "a fault");
    const bool is_angle = is_angle_check(finding);
    const Ladder& rungs = is_angle ? facts.angles() : facts.lengths();
    line.quantity = is_angle ? Quantity::angle : Quantity::length;
    line.expected = finding.expected;
    line.found = finding.measured;
    line.difference = finding.difference;
    return check_line(facts, std::move(line), rungs, finding.allowed.value_or(rungs.front().within));
}

JudgedLine about_piece(const DraftFacts& facts, std::size_t piece) {
    JudgedLine line;
    line.criterion = Criterion::check;
    line.piece = facts.plan->finished[piece].piece.name;
    return line;
}

bool has_edge(const ComparedPart& part, const std::string& edge) {
    return std::any_of(part.stretches.begin(), part.stretches.end(),
                       [&](const PartStretch& each) { return each.edge == edge; });
}

// How the grain lies against the part that it belongs to, degrees; either way along is the same. A mouth may
// divide the edge that it lies along; then it may have gone with either part.
std::optional<double> grain_off_deg(const ShapedPair& both, const RigidParts& parts) {
    const ShapedPiece& drawn = both.after;
    if (!both.before.piece.grain || !drawn.piece.grain) return std::nullopt;
    const Grain& asked = *both.before.piece.grain;
    const auto off_by = [&](const Motion& motion) {
        const Vector along = apply(motion, asked.to - asked.from);
        const double off = degrees(angle_from(along, drawn.piece.grain->to - drawn.piece.grain->from));
        return std::remainder(off, 180);
    };
    std::optional<double> least;
    for (std::size_t i = 0; i < parts.parts.size(); ++i) {
        if (!has_edge(parts.parts[i], asked.along)) continue;
        for (const Motion& motion : motions_of_part({both, parts}, i).all) {
            const double off = off_by(motion);
            if (!least || std::abs(off) < std::abs(*least)) least = off;
        }
    }
    return least ? *least : off_by(robust_motion(parts));
}

// Against the pattern to begin with, or the finished one: where several tasks cut the edge that it lies
// along, it may have gone with one part first and with another then.
std::optional<double> grain_off_deg(const DraftFacts& facts, std::size_t piece) {
    const ShapedPiece& drawn = facts.draft.pieces[piece]->shaped;
    const PieceFacts& about = facts.pieces[piece];
    const auto from_start = grain_off_deg({facts.plan->reference[piece], drawn}, about.parts);
    const auto from_finished = grain_off_deg({facts.plan->finished[piece], drawn}, about.from_finished);
    if (!from_start || !from_finished) return from_start ? from_start : from_finished;
    return std::abs(*from_finished) < std::abs(*from_start) ? from_finished : from_start;
}

void add_grain(ScoredLines& lines, const DraftFacts& facts, std::size_t piece) {
    const auto off = grain_off_deg(facts, piece);
    if (!off || std::abs(*off) <= facts.plan->tolerances.grain_deg) return;
    const Grain& grain = *facts.draft.pieces[piece]->shaped.piece.grain;
    JudgedLine line = about_piece(facts, piece);
    line.what = "grain-direction: the grain of the " + line.piece;
    line.at = drawn_place(facts, piece, middle(grain.from, grain.to));
    line.remedy =
        "The part that carries the grain was turned and the grain left behind: draw it again as it lay "
        "on that part" +
        (grain.along.empty() ? std::string(".") : ", parallel to the " + grain.along + ".");
    line.quantity = Quantity::angle;
    line.expected = 0;
    line.found = line.difference = off;
    lines.push_back(check_line(facts, std::move(line), facts.angles(), facts.plan->tolerances.grain_deg));
}

void add_gap(ScoredLines& lines, const DraftFacts& facts, std::size_t piece) {
    const double gap = facts.draft.pieces[piece]->gap_mm;
    if (gap <= facts.plan->tolerances.gap_mm) return;
    JudgedLine line = about_piece(facts, piece);
    line.what = "outline-gap: the outline of the " + line.piece + " does not close";
    line.at = drawn_place(facts, piece, facts.draft.pieces[piece]->shaped.piece.outline.start);
    line.remedy = "Draw the last edge to the place where the first begins.";
    line.expected = 0;
    line.found = line.difference = gap;
    lines.push_back(check_line(facts, std::move(line), facts.lengths(), facts.plan->tolerances.gap_mm));
}

std::size_t names_wrong(const DraftFacts& facts) {
    std::size_t wrong = 0;
    for (const auto& piece : facts.draft.pieces)
        if (piece) wrong += piece->renamed.size();
    return wrong;
}

void add_names(ScoredLines& lines, const DraftFacts& facts, std::size_t piece) {
    if (facts.plan->may_differ(Freedom::names) || facts.draft.pieces[piece]->renamed.empty()) return;
    JudgedLine line = about_piece(facts, piece);
    line.what = "the names of the " + line.piece;
    line.remedy = "Call the pieces and edges as the pattern does.";
    ScoredLine out =
        fault_line(std::move(line), "the pattern's own names", all_of(facts.draft.pieces[piece]->renamed));
    // One wrong name is a slip of the pen.
    if (names_wrong(facts) == 1 && facts.lengths().size() > 1) {
        out.line.rung = facts.lengths().back().name;
        out.share = facts.lengths().back().share;
    }
    lines.push_back(std::move(out));
}

// Darts that nobody asked for, unless they count about a pivot.
void add_extra_darts(ScoredLines& lines, const DraftFacts& facts, std::size_t piece) {
    const bool has_pivots = std::any_of(facts.darts.begin(), facts.darts.end(),
                                        [&](const DartFact& dart) { return dart.asked->piece == piece; });
    if (has_pivots && facts.plan->asks(Criterion::angles)) return;
    for (const StandingDart& dart : facts.pieces[piece].extra) {
        JudgedLine line = about_piece(facts, piece);
        line.edge = dart.edge;
        line.what = "a dart on the " + dart.edge + " that was not asked for";
        line.at = drawn_place(facts, piece, middle(dart.figures.a, dart.figures.b));
        line.remedy = "Close it, or move it into the dart that was asked for.";
        lines.push_back(
            fault_line(std::move(line), "no dart",
                       "a dart of " + degrees_in_sentence(degrees(std::abs(dart.figures.angle_rad)))));
    }
}

std::vector<Finding> findings_on(const DraftFacts& facts) {
    const Pattern pattern = checked_draft(facts);
    if (pattern.pieces.empty()) return {};  // none of the draft's pieces is the exercise's
    return check(pattern, facts.plan->tolerances).findings;
}

bool is_left_out(const MarkedTask& task, const std::string& check) {
    const auto& left_out = std::get<TrueTask>(task.task.what).leave_out;
    return std::find(left_out.begin(), left_out.end(), check) != left_out.end();
}

// Of a piece that is not there nothing was found to be true, and of those that are there only their own part.
void add_missing_pieces(ScoredLines& lines, const DraftFacts& facts) {
    const auto& pieces = facts.draft.pieces;
    if (std::all_of(pieces.begin(), pieces.end(), [](const auto& each) { return each.has_value(); })) return;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        JudgedLine line = about_piece(facts, i);
        line.what = "what the checks find on the " + line.piece;
        if (!pieces[i]) {
            lines.push_back(fault_line(std::move(line), "no fault", "no such piece"));
            continue;
        }
        line.expected_words = "no fault";
        line.found_words = "nothing further";
        line.rung = facts.lengths().front().name;
        lines.push_back({std::move(line), facts.lengths().front().share});
    }
}

}  // namespace

ScoredLines check_lines(const DraftFacts& facts, const MarkedTask& task) {
    ScoredLines lines;
    for (const Finding& finding : findings_on(facts)) {
        const bool is_asked = finding.severity == Severity::fault && finding.check != "grain-direction" &&
                              !is_left_out(task, finding.check);
        if (!is_asked || is_subject_judged(facts, finding) || is_left_open(facts, finding) ||
            follows(facts, finding) || is_of_the_exercise(facts, finding))
            continue;
        lines.push_back(line_of(facts, finding));
    }
    for (std::size_t i = 0; i < facts.plan->finished.size(); ++i) {
        if (!facts.draft.pieces[i]) continue;
        if (!is_left_out(task, "grain-direction")) add_grain(lines, facts, i);
        if (!is_left_out(task, "outline-gap")) add_gap(lines, facts, i);
        add_names(lines, facts, i);
        add_extra_darts(lines, facts, i);
    }
    add_missing_pieces(lines, facts);
    return lines;
}

}  // namespace dartwright
