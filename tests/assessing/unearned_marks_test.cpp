// Every mark is earned by something that was found. Laws over exercises of one to four tasks that the reader
// accepts.

#include "dartwright/assessing/unearned_marks.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "assessing/generated_exercises.hpp"
#include "dartwright/comparing/placed_dart.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pattern/pattern_problems.hpp"
#include "support/evenly.hpp"
#include "support/written_otherwise.hpp"

namespace dartwright {
namespace {

using testing::AcceptedExercise;
using testing::all_done;
using testing::any_accepted_exercise;
using testing::real_between;

bool is_to_be_done(const Task& task) {
    return std::holds_alternative<OperationTask>(task.what);
}
const Task& task_of(const AcceptedExercise& accepted, std::size_t i) {
    return accepted.exercise.exercise.tasks[i];
}
void log(const AcceptedExercise& accepted) {
    for (const Made& each : accepted.steps.made) RC_LOG() << testing::made_json(each) << "\n";
}
bool judges(const Task& task, Criterion criterion) {
    return std::any_of(task.marks.begin(), task.marks.end(),
                       [&](const CriterionMarks& each) { return each.criterion == criterion; });
}

// Also as a file has it, whose rounding may not decide between what is asked and what was asked before.
Assessment finished_pattern_gets_all(const AcceptedExercise& accepted) {
    const Pattern& finished = accepted.exercise.finished;
    Assessment assessment;
    for (const Pattern& draft : {read_pattern(write_pattern(finished), "finished.json"), finished}) {
        assessment = assess(accepted.exercise, draft);
        RC_LOG() << "finished\n" << testing::explained(assessment);
        RC_ASSERT(assessment.unread.empty());
        for (const JudgedTask& task : assessment.tasks) RC_ASSERT(task.marks >= task.of - 1e-9);
    }
    return assessment;
}

void untouched_start_gets_nothing_for_what_was_to_be_done(const AcceptedExercise& accepted) {
    Pattern start = accepted.exercise.exercise.pattern;
    if (*testing::evenly(0, 2) == 0)
        start = testing::image({real_between(-pi, pi), 1, *testing::evenly(0, 2) == 0, {300, 40}}, start);
    const Assessment assessment = assess(accepted.exercise, start);
    RC_LOG() << "untouched\n" << testing::explained(assessment);
    RC_ASSERT(assessment.unread.empty());
    RC_ASSERT(!assessment.is_another_pattern);
    for (std::size_t i = 0; i < assessment.tasks.size(); ++i)
        if (is_to_be_done(task_of(accepted, i))) RC_ASSERT(assessment.tasks[i].marks == 0);
}

/// A careful hand is within this, mm, in x and in y; a careless one within twice as much.
constexpr double careful_mm = 1;

// Nothing done and copied by hand is still nothing done.
void untouched_start_copied_by_hand_gets_nothing(const AcceptedExercise& accepted) {
    // What truing and repointing change may be less than a hand misses; a mouth that an earlier task opens
    // and a later one closes is not there at the start either.
    const std::string& operation = accepted.steps.made.front().operation;
    if (accepted.steps.made.size() > 1 || operation == "true" || operation == "repoint") return;
    const Pattern start = accepted.exercise.exercise.pattern;
    const Pattern copied = testing::by_hand(start, real_between(0, 2 * careful_mm));
    const Assessment assessment = assess(accepted.exercise, copied);
    RC_LOG() << "copied by hand\n" << testing::explained(assessment);
    if (!assessment.unread.empty()) return;
    for (std::size_t i = 0; i < assessment.tasks.size(); ++i)
        if (is_to_be_done(task_of(accepted, i))) RC_ASSERT(assessment.tasks[i].marks == 0);
}

// Every point somewhere within `most_mm` of where it was, along x and along y.
Pattern copied_by_hand(Pattern pattern, double most_mm) {
    const auto moved = [&](Point& point) {
        point = point + Vector{real_between(-most_mm, most_mm), real_between(-most_mm, most_mm)};
    };
    for (Piece& piece : pattern.pieces) {
        for (OutlineItem& item : piece.outline.items) {
            moved(item.to);
            if (EdgeItem* edge = item.as_edge()) {
                if (auto* cubic = std::get_if<CubicShape>(&edge->shape))
                    for (Point& each : cubic->controls) moved(each);
                if (auto* spline = std::get_if<SplineShape>(&edge->shape))
                    for (Point& each : spline->through) moved(each);
                continue;
            }
            DartItem& dart = *item.as_dart();
            moved(dart.point);
            if (dart.pivot) moved(*dart.pivot);
        }
        piece.outline.start = piece.outline.items.back().to;
    }
    return pattern;
}

// Of any number of tasks, to a line's width. What is to be made true, or a point that is to be moved,
// may be off by less than that, so that a copy may be as it should be.
bool may_be_done_by_chance(const Task& task) {
    const std::string& operation = std::get<OperationTask>(task.what).operation.operation;
    return operation == "true" || operation == "repoint";
}

void copied_start_gets_nothing_for_what_was_to_be_done(const AcceptedExercise& accepted) {
    // Of a bodice 0.15 mm; of a small piece less, for its darts are short.
    const Pattern& handed_out = accepted.exercise.exercise.pattern;
    double smallest_mm = 300;
    for (const Piece& piece : handed_out.pieces)
        smallest_mm = std::min(smallest_mm, std::sqrt(cloth_area(piece)));
    const Pattern start = copied_by_hand(handed_out, real_between(0, smallest_mm / 2000));
    if (!problems_of(start).empty()) return;
    const Assessment assessment = assess(accepted.exercise, start);
    RC_LOG() << "copied\n" << testing::explained(assessment);
    for (std::size_t i = 0; i < assessment.tasks.size(); ++i)
        if (is_to_be_done(task_of(accepted, i)) && !may_be_done_by_chance(task_of(accepted, i)))
            RC_ASSERT(assessment.tasks[i].marks == 0);
}

void marks_are_the_same_written_otherwise(const AcceptedExercise& accepted, const Pattern& draft,
                                          const Assessment& one) {
    testing::Writing writing;
    writing.may_divide = false;
    const Pattern otherwise = testing::written_otherwise(draft, writing);
    if (!problems_of(otherwise).empty()) return;
    const Assessment other = assess(accepted.exercise, otherwise);
    RC_LOG() << "written\n" << testing::explained(one) << "otherwise\n" << testing::explained(other);
    RC_ASSERT(std::abs(one.marks - other.marks) <= 1e-9);
}

// ---- slips
// -------------------------------------------------------------------------------------------------

std::string* word(Made& made, const std::string& key) {
    for (auto& [name, value] : made.request)
        if (name == key) return &value;
    return nullptr;
}

struct Slip {
    Made made;
    std::vector<Criterion> shown_by;  ///< one of these is asked of the task
};
using AnySlip = std::optional<Slip>;

AnySlip wrong_place(const Pattern& before, Made made) {
    std::string* to = word(made, "to");
    if (!to) return std::nullopt;
    const Piece& piece = piece_named(before, *word(made, "piece"));
    std::string place = testing::any_clear_place(piece);
    if (place.empty()) return std::nullopt;
    const std::vector<Run> runs = runs_of(piece.outline);
    const auto at = [&](const std::string& words) {
        const Place parsed = parse_place(words.substr(0, words.find('=')), runs, piece.name);
        return std::pair(parsed.edge, distance_from_start(parsed, *find_run(runs, parsed.edge)));
    };
    const auto [edge, wrong] = at(place);
    const auto [asked_edge, asked] = at(*to);
    // A slip, and one that no rung accepts.
    if (edge == asked_edge && std::abs(wrong - asked) < 12) return std::nullopt;
    const auto share = to->find('=');
    if (share != std::string::npos) place += to->substr(share);
    *to = place;
    return Slip{made, {Criterion::place}};
}

double angle_deg(const Piece& piece, const std::string& dart) {
    return degrees(std::abs(figures_of(piece.outline, testing::dart_item(piece, dart)).angle_rad));
}
// A slip of fewer degrees costs nothing by any ladder.
constexpr double least_slip_deg = 0.501;

AnySlip wrong_share(const Pattern& before, Made made) {
    if (made.operation != "pivot") return std::nullopt;
    const double angle = angle_deg(piece_named(before, *word(made, "piece")), *word(made, "dart"));
    std::string* share = word(made, "share");
    if (!share) {
        if (0.4 * angle < least_slip_deg) return std::nullopt;
        made.request.push_back({"share", "0.6"});
        return Slip{made, {Criterion::gone}};
    }
    const double asked = std::stod(*share);
    const double slip = asked > 0.5 ? 0.25 : 0.75;
    if (std::abs(slip - asked) * angle < least_slip_deg) return std::nullopt;
    *share = testing::text_share(slip);
    return Slip{made, {Criterion::angle}};
}

AnySlip wrong_dart(const Pattern& before, Made made) {
    std::string* dart = word(made, "dart");
    if (!dart) return std::nullopt;
    const Piece& piece = piece_named(before, *word(made, "piece"));
    const std::vector<std::string> darts = testing::darts_of(piece);
    const std::string other = darts[testing::any_index_of(darts)];
    const std::string* with = word(made, "with");
    if (other == *dart || (with && other == *with)) return std::nullopt;
    // By their angles darts are told apart only where they have different ones.
    const bool is_told = std::abs(angle_deg(piece, other) - angle_deg(piece, *dart)) >= least_slip_deg;
    *dart = other;
    Slip slip{made, {Criterion::gone}};
    if (is_told) slip.shown_by.push_back(Criterion::angle);
    return slip;
}

AnySlip wrong_point(Made made) {
    std::string* back_off = word(made, "back_off");
    if (!back_off) return std::nullopt;
    const double asked = parse_length(*back_off);
    *back_off = testing::text_mm(asked > 20 ? asked - 12 : asked + 12);
    return Slip{made, {Criterion::pivot}};
}

AnySlip any_slip(const Pattern& before, const Made& made) {
    switch (*testing::evenly(0, 4)) {
        case 0:
            return wrong_place(before, made);
        case 1:
            return wrong_share(before, made);
        case 2:
            return wrong_dart(before, made);
        default:
            return wrong_point(made);
    }
}

struct Slipped {
    Made made;
    Pattern draft;
};
// All tasks done, that one with a slip that one of its criteria is there to see.
std::optional<Slipped> slipped_in(const AcceptedExercise& accepted, std::size_t task) {
    const Pattern& block = accepted.exercise.exercise.pattern;
    std::vector<Made> made = accepted.steps.made;
    const std::vector<Made> earlier(made.begin(), made.begin() + std::ptrdiff_t(task));
    const AnySlip slip = any_slip(*all_done(block, earlier), made[task]);
    if (!slip) return std::nullopt;
    const bool is_seen = std::any_of(slip->shown_by.begin(), slip->shown_by.end(),
                                     [&](Criterion each) { return judges(task_of(accepted, task), each); });
    made[task] = slip->made;
    auto draft = is_seen ? all_done(block, made) : std::nullopt;
    if (!draft) return std::nullopt;
    return Slipped{slip->made, std::move(*draft)};
}

void slipped_draft_loses_marks_of_the_task(const AcceptedExercise& accepted, std::size_t task,
                                           const Pattern& draft) {
    const Assessment assessment = assess(accepted.exercise, draft);
    RC_LOG() << testing::explained(assessment);
    RC_ASSERT(assessment.unread.empty());
    RC_ASSERT(assessment.tasks[task].marks < assessment.tasks[task].of - 1e-9);
}

// A slip, a piece missing and a mistaken unit at once; or a slip at a scale of its own. With a piece missing
// at such a scale too little may be left to tell by: the two pieces of one that was divided, each with the
// slip.
void slipped_draft_is_no_strangers(const AcceptedExercise& accepted, Pattern draft) {
    const int pieces = int(draft.pieces.size());
    const bool is_piece_missing = pieces > 1 && *testing::evenly(0, 2) == 0;
    if (is_piece_missing) {
        draft.pieces.erase(draft.pieces.begin() + *testing::evenly(0, pieces));
        draft.seams.clear();
        RC_LOG() << "left is " << draft.pieces[0].name << "\n";
    }
    const double scale =
        is_piece_missing ? *rc::gen::element(1.0, 2.54, 10.0) : *rc::gen::element(1.0, 2.54, 10.0, 0.97);
    RC_LOG() << "times " << scale << "\n";
    draft = testing::image({0.3, scale, *testing::evenly(0, 2) == 0, {5, 5}}, draft);
    const Assessment assessment = assess(accepted.exercise, draft);
    RC_ASSERT(assessment.unread.empty());
    RC_ASSERT(!assessment.is_another_pattern);
}

/// How many drafts the laws were asked of; not every task has a slip, or can be left out.
struct Asked {
    std::size_t slips = 0;
    std::size_t not_done = 0;
    std::size_t strangers = 0;
};

void each_single_slip_costs_its_task(const AcceptedExercise& accepted, Asked& asked) {
    constexpr int most_slips = 12;
    for (std::size_t task = 0; task < accepted.steps.made.size(); ++task) {
        std::optional<Slipped> slip;
        for (int i = 0; i < most_slips && !slip; ++i) slip = slipped_in(accepted, task);
        if (!slip) continue;
        ++asked.slips;
        RC_LOG() << "slip in " << task << ": " << testing::made_json(slip->made) << "\n";
        slipped_draft_loses_marks_of_the_task(accepted, task, slip->draft);
        slipped_draft_is_no_strangers(accepted, std::move(slip->draft));
    }
}

// What an earlier task closed is gone, whether or not a later one divided its piece.
void what_was_closed_is_gone_from_an_undivided_piece(const AcceptedExercise& accepted, std::size_t divided,
                                                     const Assessment& assessment) {
    const std::vector<Made>& made = accepted.steps.made;
    const auto done_to = [&](std::size_t count) {
        return *all_done(accepted.exercise.exercise.pattern,
                         {made.begin(), made.begin() + std::ptrdiff_t(count)});
    };
    // The edges of a whole piece that a later task opens have other names.
    const bool is_opened = std::any_of(made.begin() + std::ptrdiff_t(divided) + 1, made.end(),
                                       [](const Made& each) { return each.operation == "open"; });
    if (is_opened) return;
    if (done_to(divided).pieces.size() == done_to(divided + 1).pieces.size()) return;
    for (std::size_t task = 0; task < divided; ++task)
        for (const JudgedCriterion& each : assessment.tasks[task].criteria)
            if (each.criterion == Criterion::gone) RC_ASSERT(each.marks >= each.of - 1e-9);
}

void each_task_that_was_not_done_costs_marks_of_its_own(const AcceptedExercise& accepted, Asked& asked) {
    for (std::size_t task = 0; task < accepted.steps.made.size(); ++task) {
        std::vector<Made> others = accepted.steps.made;
        others.erase(others.begin() + std::ptrdiff_t(task));
        const auto draft = all_done(accepted.exercise.exercise.pattern, others);
        if (!draft) continue;
        ++asked.not_done;
        const Assessment assessment = assess(accepted.exercise, *draft);
        RC_LOG() << "not done: " << task << "\n" << testing::explained(assessment);
        RC_ASSERT(assessment.tasks[task].marks < assessment.tasks[task].of - 1e-9);
        what_was_closed_is_gone_from_an_undivided_piece(accepted, task, assessment);
    }
}

// ---- strangers
// ---------------------------------------------------------------------------------------------

// The sewn lengths of a piece's runs as shares, in order; how far two such rounds are apart the way in which
// they fit best, an edge that only one of them has counted whole. Written apart from the program's own: what
// is far off by lengths alone is another piece, wherever its darts are and whatever its edges are called.
std::vector<double> shares_of(const Piece& piece) {
    std::vector<double> shares;
    double around = 0;
    for (const Run& run : runs_of(piece.outline)) around += run.length;
    for (const Run& run : runs_of(piece.outline)) shares.push_back(run.length / around);
    return shares;
}
double in_order_apart(const std::vector<double>& one, const std::vector<double>& other) {
    std::vector<double> least(other.size() + 1, 0);
    for (std::size_t k = 0; k < other.size(); ++k) least[k + 1] = least[k] + other[k];
    for (const double share : one) {
        double diagonal = least[0];
        least[0] += share;
        for (std::size_t k = 0; k < other.size(); ++k) {
            const double matched = diagonal + std::abs(share - other[k]);
            diagonal = least[k + 1];
            least[k + 1] = std::min({matched, least[k + 1] + share, least[k] + other[k]});
        }
    }
    return least.back();
}
double shares_apart(std::vector<double> one, const std::vector<double>& other) {
    double least = 2;
    for (int turned_over = 0; turned_over < 2; ++turned_over) {
        for (std::size_t i = 0; i < one.size(); ++i) {
            least = std::min(least, in_order_apart(one, other));
            std::rotate(one.begin(), one.begin() + 1, one.end());
        }
        std::reverse(one.begin(), one.end());
    }
    return least;
}
/// Nearer ones may be the piece in another's hand: of two or three edges there are only so many shapes. As
/// much as the program takes for alike, counted whole on both sides, and some of it for hands.
constexpr double strangers_apart = 0.15;

bool is_strange(const AcceptedExercise& accepted, const Pattern& stranger) {
    std::vector<Made> made;
    for (std::size_t i = 0; i <= accepted.steps.made.size(); ++i) {
        const Pattern state =
            *all_done(accepted.exercise.exercise.pattern,
                      {accepted.steps.made.begin(), accepted.steps.made.begin() + std::ptrdiff_t(i)});
        for (const Piece& known : state.pieces)
            for (const Piece& piece : stranger.pieces)
                if (shares_apart(shares_of(known), shares_of(piece)) < strangers_apart) return false;
    }
    return true;
}

void pattern_of_a_stranger_earns_nothing_and_is_said_to_be_that(const AcceptedExercise& accepted,
                                                                Asked& asked) {
    constexpr int most_strangers = 12;
    Pattern draft = testing::any_block();
    bool is_found = is_strange(accepted, draft);
    for (int i = 1; i < most_strangers && !is_found; ++i) {
        draft = testing::any_block();
        is_found = is_strange(accepted, draft);
    }
    if (!is_found) return;
    ++asked.strangers;
    const Assessment assessment = assess(accepted.exercise, draft);
    RC_LOG() << "a stranger's\n" << testing::explained(assessment);
    RC_ASSERT(assessment.is_another_pattern);
    RC_ASSERT(assessment.notes.at(0).find("another pattern") != std::string::npos);
    RC_ASSERT(assessment.of > 0);
    RC_ASSERT(assessment.marks == 0);
}

// ---- what is refused
// ---------------------------------------------------------------------------------------------

// The workshop's bodice, whose darts are true and whose waist dart's point stops 20 mm short.
std::vector<UnearnedMarks> unearned_by(const std::vector<Made>& steps) {
    Exercise exercise;
    exercise.name = "bodice";
    exercise.pattern = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/workshop/chorus-bodice.json");
    exercise.ladders = usual_ladders();
    for (const Made& each : steps)
        exercise.tasks.push_back(
            {each.operation, "", OperationTask{each}, {{Criterion::legs, 5}, {Criterion::pivot, 5}}});
    return unearned_marks(prepared(exercise));
}
Made true_dart(const std::string& dart) {
    return {"true", {{"piece", "front"}, {"dart", dart}}};
}
Made repoint_to(const std::string& back_off) {
    return {"repoint", {{"piece", "front"}, {"dart", "waist dart"}, {"back_off", back_off}}};
}

TEST(unearned_marks, task_that_changes_nothing_that_the_first_rung_shows_is_refused) {
    for (const Made& made : {true_dart("side dart"), repoint_to("20.9mm")}) {
        const std::vector<UnearnedMarks> unearned = unearned_by({made});
        ASSERT_EQ(unearned.size(), 1u) << made.operation;
        EXPECT_EQ(unearned[0].task, 0u);
        EXPECT_FALSE(unearned[0].criterion);
        EXPECT_EQ(unearned[0].why, "what is as it was before to within the first rungs of the ladder");
        EXPECT_NE(unearned[0].way_out, "");
    }
    EXPECT_FALSE(unearned_by({repoint_to("20mm")}).empty());
    EXPECT_TRUE(unearned_by({repoint_to("22mm")}).empty());
}

Made closed_as(const std::string& how, const std::string& dart) {
    return {"close", {{"piece", "front"}, {"dart", dart}, {"as", how}}};
}
Made divided_by(const std::string& dart) {
    Made made = closed_as("seam", dart);
    made.request.push_back({"to", dart == "bust dart" ? "armhole@50%/shoulder" : "side@64mm/armhole"});
    return made;
}
/// Two darts in the front's waist and one in its shoulder. One is gathered; then the front is divided by
/// another.
struct GatheredAndDivided {
    Made gathered;
    Made divided;
    Pattern block = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/blocks/three-measure.json");

    PreparedExercise exercise() const {
        Exercise out;
        out.name = "three-measure";
        out.pattern = block;
        out.ladders = usual_ladders();
        out.tasks = {{"gather", "", OperationTask{gathered}, {{Criterion::gone, 12}}},
                     {"divide", "", OperationTask{divided}, {{Criterion::shape, 12}}}};
        return prepared(out);
    }
};
std::vector<GatheredAndDivided> all_gathered_and_divided() {
    std::vector<GatheredAndDivided> out;
    for (const std::string gathered : {"waist dart", "outer waist dart", "bust dart"})
        for (const std::string divided : {"waist dart", "outer waist dart", "bust dart"}) {
            GatheredAndDivided steps{closed_as("gathers", gathered), divided_by(divided)};
            if (all_done(steps.block, {steps.gathered, steps.divided})) out.push_back(steps);
        }
    return out;
}
Made other_gathered(const GatheredAndDivided& steps) {
    const std::string dart = steps.gathered.request[1].second;
    return closed_as("gathers", dart == "bust dart" ? "waist dart" : "bust dart");
}

// What is left of the waist is shorter at the side's end, and the dart that stands there still is that one.
TEST(unearned_marks, dart_left_open_is_found_where_a_later_task_divided_its_piece) {
    const GatheredAndDivided steps{closed_as("gathers", "waist dart"), divided_by("outer waist dart")};
    const PreparedExercise asked = steps.exercise();
    EXPECT_EQ(assess(asked, asked.finished).marks, 24);
    for (const std::vector<Made>& made :
         {std::vector<Made>{other_gathered(steps), steps.divided}, std::vector<Made>{steps.divided}}) {
        const Assessment assessment = assess(asked, *all_done(steps.block, made));
        EXPECT_EQ(assessment.tasks[0].marks, 0) << made.size();
    }
}

// Of a piece that was to be divided and is not yet, the darts that it has are known by where they stood in
// it: what was gathered is gone, and what was not is there, whichever part it was to come to.
TEST(unearned_marks, dart_is_gone_or_left_open_where_its_piece_is_not_yet_divided) {
    const std::vector<GatheredAndDivided> all = all_gathered_and_divided();
    EXPECT_GE(all.size(), 3u);
    for (const GatheredAndDivided& steps : all) {
        SCOPED_TRACE(testing::made_json(steps.gathered) + testing::made_json(steps.divided));
        const PreparedExercise asked = steps.exercise();
        const auto marks_after = [&](const std::vector<Made>& made) {
            const Assessment assessment = assess(asked, *all_done(steps.block, made));
            return std::vector<double>{assessment.tasks[0].marks, assessment.tasks[1].marks};
        };
        EXPECT_EQ(marks_after({steps.gathered, steps.divided}), (std::vector<double>{12, 12}));
        EXPECT_EQ(marks_after({steps.gathered}), (std::vector<double>{12, 0}));
        EXPECT_EQ(marks_after({other_gathered(steps)}), (std::vector<double>{0, 0}));
        EXPECT_EQ(marks_after({}), (std::vector<double>{0, 0}));
    }
}

PreparedExercise exercise_of(const Pattern& block, const std::vector<Made>& made) {
    std::string tasks;
    for (std::size_t i = 0; i < made.size(); ++i)
        tasks += "{\"name\": \"step " + std::to_string(i) + "\", \"do\": " + testing::made_json(made[i]) +
                 ", \"marks\": 12},\n";
    return prepared(read_exercise(R"({"dartwright_exercise": 1, "name": "steps", "unit": "mm", "pattern": )" +
                                      write_pattern(block) + ", \"tasks\": [" + tasks +
                                      R"({"name": "true", "true": true, "marks": 3}]})",
                                  "exercise.json"));
}

// Of two edges, whose order does not tell which side is up, with a dart where they meet.
Pattern piece_of_two_edges() {
    return read_pattern(R"({"dartwright": 1, "name": "two edges", "unit": "mm", "pieces": [{"name": "piece",
        "grain": {"from": [-10.8, 35.9], "to": [-18.1, 59.8], "along": "outer"},
        "outline": {"start": [144.9, 0], "items": [
            {"edge": "outer", "to": [2.5, 140.6], "curve": [[108.7, 58.3], [61.2, 105.1]]},
            {"edge": "inner", "to": [-140.5, 4.9], "curve": [[-56.1, 106.8], [-103.7, 61.6]]},
            {"edge": "inner", "to": [-7.4, -140.4], "through": [[-106.4, -44], [-44.9, -94.6]]},
            {"edge": "outer", "to": [144.5, -10.1], "curve": [[53.7, -109.1], [104.3, -65.7]]},
            {"dart": "dart", "point": [0, 0], "pivot": [0, 0], "to": [144.9, 0]}]}}]})",
                        "two-edges.json");
}

// A start that was turned over is untouched all the same, and a dart that was never where the first step was
// to move it was not moved from there.
TEST(unearned_marks, are_not_given_to_a_start_of_two_edges_that_is_turned_over) {
    const Pattern start = piece_of_two_edges();
    const std::vector<Made> made{
        {"pivot", {{"piece", "piece"}, {"dart", "dart"}, {"to", "outer@20mm/start"}, {"name", "once"}}},
        {"pivot", {{"piece", "piece"}, {"dart", "once"}, {"to", "outer@228mm/start"}, {"name", "twice"}}},
        {"close", {{"piece", "piece"}, {"dart", "twice"}, {"as", "seam"}, {"to", "inner@20mm/start"}}}};
    const PreparedExercise asked = exercise_of(start, made);
    EXPECT_EQ(assess(asked, asked.finished).marks, 39);
    for (const bool is_turned_over : {false, true}) {
        const Assessment assessment =
            assess(asked, testing::image({2.9, 1, is_turned_over, {300, 40}}, start));
        for (std::size_t i = 0; i < made.size(); ++i)
            EXPECT_EQ(assessment.tasks[i].marks, 0) << is_turned_over << ", task " << i;
    }
}

// The front, not yet opened, is like enough to a back that is not yet divided, but its darts are no darts of
// the back, wherever in the file each of them stands.
TEST(unearned_marks, are_the_same_wherever_the_outline_of_an_undivided_piece_begins) {
    const Pattern start = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/workshop/chorus-bodice.json");
    const std::vector<Made> made{
        {"open", {{"piece", "front"}}},
        {"pivot",
         {{"piece", "back"}, {"dart", "waist dart"}, {"to", "side@9.3355mm/waist"}, {"name", "moved"}}},
        {"close",
         {{"piece", "back"}, {"dart", "moved"}, {"as", "seam"}, {"to", "waist@9.3172mm/centre back"}}}};
    const PreparedExercise asked = exercise_of(start, made);
    EXPECT_EQ(assess(asked, asked.finished).marks, 39);
    const double marks = assess(asked, start).marks;
    EXPECT_GT(marks, 0);
    for (std::size_t first = 1; first < start.pieces[1].outline.items.size(); ++first) {
        Pattern otherwise = start;
        otherwise.pieces[1].outline = testing::begun_at(start.pieces[1].outline, first);
        EXPECT_EQ(assess(asked, otherwise).marks, marks) << first;
    }
}

/// A dart is moved, and its piece divided by it.
struct MovedAndDivided {
    std::string block;
    std::string dart;
    std::string other;  ///< that is moved by mistake
    std::string to;
    std::string divided_to;
};

// A division that begins at another dart's point: the seam that it makes has another length all along, or in
// one of its two parts, and the rest of the piece is the exercise's.
TEST(unearned_marks, piece_divided_from_another_dart_is_the_exercises_alone_and_at_any_unit) {
    for (const MovedAndDivided& steps :
         {MovedAndDivided{"three-measure", "shoulder dart", "inner waist dart", "armhole@131.9733mm/side",
                          "waist@7.4419mm/centre back"},
          MovedAndDivided{"close-fitting", "waist dart", "shoulder dart", "centre back@20.5mm/neck",
                          "waist@9.1mm/centre back"},
          MovedAndDivided{"close-fitting", "waist dart", "shoulder dart", "neck@5mm/shoulder",
                          "side@9.789mm/waist"}}) {
        const Pattern start =
            read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/blocks/" + steps.block + ".json");
        std::vector<Made> made{
            {"pivot", {{"piece", "back"}, {"dart", steps.dart}, {"to", steps.to}, {"name", "made"}}},
            {"close", {{"piece", "back"}, {"dart", "made"}, {"as", "seam"}, {"to", steps.divided_to}}}};
        const PreparedExercise asked = exercise_of(start, made);
        made[0].request[1].second = steps.other;
        const Pattern slipped = *all_done(start, made);
        for (const char* name : {"back", "side back"})
            for (const double scale : {1.0, 2.54, 10.0, 0.97})
                for (const bool is_turned_over : {false, true}) {
                    Pattern draft = slipped;
                    draft.pieces = {piece_named(slipped, name)};
                    draft.seams.clear();
                    draft = testing::image({0.3, scale, is_turned_over, {5, 5}}, draft);
                    EXPECT_FALSE(assess(asked, draft).is_another_pattern)
                        << steps.block << ", " << name << " times " << scale
                        << (is_turned_over ? ", turned over" : "");
                }
    }
}

// Divided from another dart, the centre back is a narrow piece of other lengths, and the side back has all
// its edges by name, and more: the dart that was left open is looked for in that which is called so.
TEST(unearned_marks, dart_left_open_is_found_where_its_piece_was_divided_otherwise) {
    const Pattern start = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/blocks/close-fitting.json");
    std::vector<Made> made{
        {"pivot",
         {{"piece", "back"}, {"dart", "waist dart"}, {"to", "waist@96mm/centre back"}, {"name", "moved"}}},
        {"close", {{"piece", "back"}, {"dart", "moved"}, {"as", "seam"}, {"to", "centre back@20.5mm/neck"}}}};
    const PreparedExercise asked = exercise_of(start, made);
    EXPECT_EQ(assess(asked, asked.finished).tasks[0].marks, 12);
    made[0].request[1].second = "shoulder dart";
    const Assessment assessment = assess(asked, *all_done(start, made));
    EXPECT_EQ(assessment.tasks[0].marks, 0);
    for (const std::string& note : assessment.notes) {
        EXPECT_EQ(note.find("No piece of the draft"), std::string::npos) << note;
        EXPECT_EQ(note.find("none of the exercise's"), std::string::npos) << note;
    }
}

// Of seven edges, with a wide dart in the second to come, so that truing what is merged into it makes that
// edge longer.
Pattern piece_of_seven_edges() {
    return read_pattern(R"({"dartwright": 1, "name": "seven edges", "unit": "mm", "pieces": [{"name": "piece",
        "grain": {"from": [31.9, 19.6], "to": [53.2, 32.7], "along": "side"},
        "outline": {"start": [131.2, 0], "items": [
            {"edge": "side", "to": [131.2, 50.5]},
            {"edge": "armhole", "to": [104.3, 94.3], "curve": [[125.8, 67.3], [116.8, 81.9]]},
            {"edge": "armhole", "to": [63.4, 125.5], "curve": [[93.2, 108], [79.5, 118.4]]},
            {"edge": "shoulder", "to": [15.7, 156.3]},
            {"edge": "shoulder", "to": [-34.7, 126.6]},
            {"dart": "shoulder dart", "point": [-2.3, 4.6], "pivot": [0, 0], "to": [-81.7, 102.7]},
            {"edge": "shoulder", "to": [-150.1, 88.3]},
            {"edge": "neck", "to": [-138.7, 22.9], "curve": [[-151.6, 65.6], [-147.8, 43.8]]},
            {"edge": "neck", "to": [-137.7, -28.5], "curve": [[-142.5, 5.7], [-142.2, -11.4]]},
            {"edge": "centre", "to": [-118.3, -76.1]},
            {"edge": "centre", "to": [-77.5, -105.9], "curve": [[-107.1, -89.3], [-93.5, -99.2]]},
            {"dart": "centre dart", "point": [-1.2, -2.3], "pivot": [0, 0], "to": [-43.4, -123.9]},
            {"edge": "centre", "to": [4.3, -140.6], "curve": [[-28.9, -133.2], [-13, -138.8]]},
            {"edge": "waist", "to": [54.5, -129.6], "curve": [[21.9, -140.9], [38.6, -137.3]]},
            {"edge": "waist", "to": [97.5, -101.4]},
            {"edge": "hip", "to": [127.4, -59.6]},
            {"edge": "side", "to": [130.9, -9.2], "curve": [[132.6, -43.1], [133.8, -26.2]]},
            {"dart": "side dart", "point": [0, 0], "pivot": [0, 0], "to": [131.2, 0]}]}}]})",
                        "seven-edges.json");
}

double place_mm(const Pattern& pattern, const std::string& dart) {
    const Outline& outline = pattern.pieces[0].outline;
    const std::vector<Run> runs = runs_of(outline);
    const std::vector<PlacedDart> placed = placed_darts(outline, runs);
    return placed[testing::dart_item(pattern.pieces[0], dart)].distance;
}

// By truing an edge over a mouth it grows, and its darts lie elsewhere along it: none was moved from where it
// stood, and of the other one there is nothing to be judged.
TEST(unearned_marks, are_not_given_for_darts_that_truing_shifts) {
    const Pattern start = piece_of_seven_edges();
    std::vector<Made> made{
        {"merge", {{"piece", "piece"}, {"dart", "side dart"}, {"with", "shoulder dart"}, {"name", "merged"}}},
        {"pivot",
         {{"piece", "piece"},
          {"dart", "centre dart"},
          {"to", "shoulder@49mm/armhole"},
          {"name", "beside"},
          {"back_off", "5mm"}}},
        {"true", {{"piece", "piece"}, {"dart", "merged"}}}};
    const Pattern before = all_done(start, {made[0], made[1]}).value();
    const Pattern after = all_done(start, made).value();
    EXPECT_GT(std::abs(place_mm(after, "merged") - place_mm(before, "merged")), 1);
    const OperationDeeds deeds = deeds_of(made[2], {before, after});
    EXPECT_TRUE(deeds.closed.empty());
    ASSERT_EQ(deeds.touched.size(), 1u);
    EXPECT_EQ(deeds.touched[0].dart, "merged");
    EXPECT_FALSE(deeds.touched[0].is_placed);
    EXPECT_EQ(assess(exercise_of(start, made), after).marks, 39);
    // Nothing is left of it where the dart is closed then.
    made.push_back({"close", {{"piece", "piece"}, {"dart", "merged"}, {"as", "gathers"}}});
    EXPECT_THROW(exercise_of(start, made), InvalidPattern);
}

// Nor for an edge or a seam: its darts are judged by how they are, and not by where, nor as closed elsewhere.
TEST(unearned_marks, truing_a_seam_judges_darts_by_what_they_are) {
    const Pattern start = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/workshop/after-fitting.json");
    const Made trued{"true", {{"seam", "side"}, {"end", "waist"}, {"move", "both"}, {"span", "40mm"}}};
    const Pattern after = all_done(start, {trued}).value();
    const OperationDeeds deeds = deeds_of(trued, {start, after});
    EXPECT_TRUE(deeds.closed.empty());
    ASSERT_FALSE(deeds.touched.empty());
    for (const TouchedDart& each : deeds.touched) EXPECT_FALSE(each.is_placed) << each.dart;
    const std::vector<Criterion> judged{Criterion::angle, Criterion::legs, Criterion::mouth, Criterion::pivot,
                                        Criterion::shape};
    EXPECT_EQ(criteria_of(deeds), judged);
}

/// A dart of the back is moved, to a wrong place by mistake; then the back is divided by the other one.
struct PlacedAndDivided {
    std::string dart;
    std::string to;
    std::string wrong;
    std::string divided_by;
    std::string divided_to;
};

// Wherever the part that it comes to would lie, and though it was moved by less than a hand that copies may
// miss, a dart is judged on the whole piece as it is on the part.
TEST(unearned_marks, are_given_for_a_dart_placed_on_a_piece_that_is_not_yet_divided) {
    const Pattern start = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/blocks/close-fitting.json");
    for (const PlacedAndDivided& steps :
         {PlacedAndDivided{"waist dart", "waist@20%/centre back", "waist@8%/centre back", "shoulder dart",
                           "waist@40%/centre back"},
          PlacedAndDivided{"waist dart", "neck@55%/shoulder", "neck@20%/shoulder", "shoulder dart",
                           "waist@70%/centre back"},
          PlacedAndDivided{"shoulder dart", "shoulder@55%/armhole", "shoulder@75%/armhole", "waist dart",
                           "side@40%/waist"}}) {
        std::vector<Made> made{
            {"pivot", {{"piece", "back"}, {"dart", steps.dart}, {"to", steps.to}, {"name", "moved"}}},
            {"close",
             {{"piece", "back"}, {"dart", steps.divided_by}, {"as", "seam"}, {"to", steps.divided_to}}}};
        const PreparedExercise asked = exercise_of(start, made);
        const auto marks_after = [&](const std::vector<Made>& some) {
            const Assessment assessment = assess(asked, *all_done(start, some));
            EXPECT_FALSE(assessment.is_another_pattern);
            EXPECT_NEAR(assessment.tasks[0].marks + assessment.tasks[1].marks + assessment.tasks[2].marks,
                        assessment.marks, 1e-9);
            return std::vector<double>{assessment.tasks[0].marks, assessment.tasks[1].marks};
        };
        EXPECT_EQ(marks_after(made), (std::vector<double>{12, 12}));
        EXPECT_EQ(marks_after({made[0]}), (std::vector<double>{12, 0})) << steps.to;
        EXPECT_EQ(marks_after({}), (std::vector<double>{0, 0})) << steps.to;
        made[0].request[2].second = steps.wrong;
        const std::vector<double> wrong = marks_after({made[0]});
        EXPECT_NEAR(wrong[0], 10, 1e-9) << steps.to;
        EXPECT_EQ(wrong[1], 0) << steps.to;
    }
}

// Much alike, with a wide dart in its side too.
Pattern piece_with_a_wide_side_dart() {
    return read_pattern(
        R"({"dartwright": 1, "name": "wide side dart", "unit": "mm", "pieces": [{"name": "piece",
        "grain": {"from": [30.8, 21.4], "to": [51.3, 35.7], "along": "side"},
        "outline": {"start": [131.2, 0.0], "items": [
            {"edge": "side", "to": [129.3, 55.4], "curve": [[135, 18.6], [134.4, 37.1]]},
            {"edge": "armhole", "to": [97, 101.8], "curve": [[122.2, 73.5], [111.5, 88.9]]},
            {"edge": "armhole", "to": [49, 131.8], "curve": [[83.4, 115.7], [67.4, 125.7]]},
            {"edge": "shoulder", "to": [-7.2, 147.2], "curve": [[29.4, 133.9], [11.4, 141.7]]},
            {"edge": "shoulder", "to": [-57.5, 118], "through": [[-21.8, 137.5], [-43.5, 128.6]]},
            {"dart": "shoulder dart", "point": [-1.2, 2.3], "pivot": [0, 0], "to": [-65.6, 113.7]},
            {"edge": "shoulder", "to": [-130, 78.1], "through": [[-86.4, 105.6], [-112.1, 91.4]]},
            {"edge": "neck", "to": [-140.5, 4.9], "curve": [[-139.4, 54.6], [-142.9, 30.2]]},
            {"edge": "neck", "to": [-125.3, -63.8]},
            {"edge": "centre", "to": [-73.4, -108.8], "curve": [[-111.6, -83], [-94.3, -98]]},
            {"dart": "centre dart", "point": [0, 0], "pivot": [0, 0], "to": [-65.6, -113.7]},
            {"edge": "centre", "to": [-16.7, -139.6]},
            {"edge": "waist", "to": [39.7, -134.9], "curve": [[2.5, -142.6], [21.3, -141]]},
            {"edge": "waist", "to": [89.6, -108.4], "curve": [[58.5, -130], [75.1, -121.2]]},
            {"edge": "hip", "to": [125.1, -64.3], "curve": [[105, -96.5], [116.8, -81.8]]},
            {"edge": "side", "to": [130.9, -9.2], "curve": [[131.4, -46.4], [133.4, -28]]},
            {"dart": "side dart", "point": [2.6, -0.1], "pivot": [0, 0], "to": [131.2, 0]}]}}]})",
        "wide-side-dart.json");
}

// Truing the edge makes it shorter, by the right dart otherwise than by another one: the old dart, left open,
// stands where it stood by one end of the edge or the other, and is not taken for the one that was moved.
TEST(unearned_marks, dart_left_open_is_found_on_an_edge_that_a_later_task_makes_shorter) {
    const Pattern start = piece_with_a_wide_side_dart();
    std::vector<Made> made{{"pivot",
                            {{"piece", "piece"},
                             {"dart", "shoulder dart"},
                             {"to", "shoulder@49.6mm/armhole"},
                             {"name", "moved"},
                             {"back_off", "5mm"}}},
                           {"close", {{"piece", "piece"}, {"dart", "centre dart"}, {"as", "gathers"}}},
                           {"true", {{"piece", "piece"}, {"dart", "moved"}}}};
    const PreparedExercise asked = exercise_of(start, made);
    EXPECT_EQ(assess(asked, asked.finished).tasks[0].marks, 12);
    made[0].request[1].second = "side dart";
    const Pattern slipped = all_done(start, made).value();
    const Assessment assessment = assess(asked, slipped);
    const JudgedCriterion* gone = testing::criterion_in(assessment, Criterion::gone);
    EXPECT_EQ(gone->marks, 0) << testing::explained(assessment);
}

// A waist that was drawn too long or too short at one of its ends moves no dart along it.
TEST(unearned_marks, are_not_given_to_a_start_with_an_edge_of_another_length) {
    const Pattern start = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/blocks/three-measure.json");
    const PreparedExercise asked = exercise_of(start, {{"pivot",
                                                        {{"piece", "front"},
                                                         {"dart", "waist dart"},
                                                         {"to", "neck@5.2mm/centre front"},
                                                         {"name", "moved"},
                                                         {"back_off", "5mm"}}}});
    const std::size_t last = start.pieces[0].outline.items.size() - 1;
    for (const bool is_at_side : {true, false})
        for (const double off_mm : {-18.0, -12.0, -6.0, 6.0, 12.0, 18.0}) {
            Pattern draft = start;
            Outline& outline = draft.pieces[0].outline;
            for (std::size_t i = 0; i <= last; ++i) {
                OutlineItem& item = outline.items[i];
                const bool is_waist = item.as_edge() && item.as_edge()->edge == "waist";
                const bool is_front = is_waist && outline.items[(i + 1) % outline.items.size()].as_edge();
                if (is_at_side ? i == last : is_front) item.to = item.to + Vector{off_mm, 0};
            }
            outline.start = outline.items[last].to;
            const Assessment assessment = assess(asked, draft);
            EXPECT_FALSE(assessment.is_another_pattern);
            EXPECT_EQ(assessment.tasks[0].marks, 0)
                << (is_at_side ? "side" : "front") << " by " << off_mm << "\n"
                << testing::explained(assessment);
        }
}

// A corner of the front that is 15 mm off is a slip of its own, and no work on its darts: what one task opens
// and a later one closes was never open.
TEST(unearned_marks, are_not_given_for_a_mouth_that_was_never_opened) {
    const Pattern start = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/blocks/three-measure.json");
    const Made moved{
        "pivot", {{"piece", "front"}, {"dart", "bust dart"}, {"to", "shoulder@60mm/neck"}, {"name", "once"}}};
    const Made again{"pivot",
                     {{"piece", "front"}, {"dart", "once"}, {"to", "neck@30mm/shoulder"}, {"name", "twice"}}};
    const Made third{
        "pivot",
        {{"piece", "front"}, {"dart", "twice"}, {"to", "armhole@60mm/shoulder"}, {"name", "thrice"}}};
    const Made gathered{"close", {{"piece", "front"}, {"dart", "once"}, {"as", "gathers"}}};
    const Made eased{"close", {{"piece", "front"}, {"dart", "twice"}, {"as", "ease"}}};
    for (const std::vector<Made>& made :
         {std::vector<Made>{moved, again}, std::vector<Made>{moved, gathered},
          std::vector<Made>{moved, again, third}, std::vector<Made>{moved, again, eased}}) {
        const PreparedExercise asked = exercise_of(start, made);
        EXPECT_EQ(assess(asked, asked.finished).marks, 12.0 * double(made.size()) + 3);
        Pattern draft = start;
        for (const double off_mm : {0.0, 15.0, 30.0}) {
            for (OutlineItem& item : draft.pieces[0].outline.items)
                if (item.as_edge() && item.as_edge()->edge == "centre front")
                    item.to = item.to + Vector{0, off_mm};
            const Assessment assessment = assess(asked, draft);
            for (std::size_t i = 0; i < made.size(); ++i)
                EXPECT_EQ(assessment.tasks[i].marks, 0)
                    << testing::made_json(made.back()) << " of " << made.size() << ", off " << off_mm
                    << ", task " << i << "\n"
                    << testing::explained(assessment);
        }
    }
}

// By mistake another dart was opened there, and closed: that it was closed is seen.
TEST(unearned_marks, are_given_for_a_mouth_that_another_dart_opened) {
    const Pattern start = read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/blocks/three-measure.json");
    std::vector<Made> made{
        {"pivot",
         {{"piece", "front"}, {"dart", "bust dart"}, {"to", "shoulder@60mm/neck"}, {"name", "once"}}},
        {"close", {{"piece", "front"}, {"dart", "once"}, {"as", "gathers"}}}};
    const PreparedExercise asked = exercise_of(start, made);
    made[0].request[1].second = "waist dart";
    const Assessment assessment = assess(asked, *all_done(start, made));
    EXPECT_EQ(assessment.tasks[0].marks, 0);
    EXPECT_EQ(assessment.tasks[1].marks, 12);
}

// One plan more for each task that divides a piece, and not one for each order in which they may be left out:
// that would be 40,320 of them here.
TEST(unearned_marks, many_divisions_are_each_left_out_once) {
    std::string pieces;
    std::vector<Made> made;
    for (int k = 0; k < 8; ++k) {
        const std::string name = "panel " + std::to_string(k);
        const std::string width = std::to_string(200 + k);
        const std::string height = std::to_string(400 + 7 * k);
        pieces += std::string(k > 0 ? "," : "") + R"({"name": ")" + name +
                  R"(", "cut": {"quantity": 1}, "grain": {"from": [60, 60], "to": [60, 200]},
                  "outline": {"start": [0, 0], "items": [{"edge": "hem", "to": [)" +
                  width + R"(, 0]}, {"edge": "side", "to": [)" + width + "," + height +
                  R"(]}, {"edge": "waist", "to": [120, )" + height +
                  R"(]}, {"dart": "waist dart", "point": [105, )" + std::to_string(280 + 7 * k) +
                  R"(], "to": [90, )" + height + R"(], "press": "centre"}, {"edge": "waist", "to": [0, )" +
                  height + R"(]}, {"edge": "centre", "to": [0, 0]}]}})";
        made.push_back({"close",
                        {{"piece", name},
                         {"dart", "waist dart"},
                         {"as", "seam"},
                         {"to", "hem@50%"},
                         {"seam", "seam " + std::to_string(k)}}});
    }
    const Pattern start = read_pattern(
        R"({"dartwright": 1, "name": "panels", "unit": "mm", "pieces": [)" + pieces + "]}", "panels.json");
    const PreparedExercise asked = exercise_of(start, made);
    const Assessment finished = assess(asked, asked.finished);
    EXPECT_EQ(finished.marks, finished.of);
    EXPECT_EQ(assess(asked, start).tasks[3].marks, 0);
}

// An exercise costs more to make than drafts to be judged by it: each is asked all the laws.
RC_GTEST_PROP(unearned_marks, are_given_to_no_draft_of_any_accepted_exercise, ()) {
    const AcceptedExercise accepted = any_accepted_exercise();
    log(accepted);
    Asked asked;
    const Assessment finished = finished_pattern_gets_all(accepted);
    untouched_start_gets_nothing_for_what_was_to_be_done(accepted);
    untouched_start_copied_by_hand_gets_nothing(accepted);
    copied_start_gets_nothing_for_what_was_to_be_done(accepted);
    const Pattern& start = accepted.exercise.exercise.pattern;
    marks_are_the_same_written_otherwise(accepted, accepted.exercise.finished, finished);
    marks_are_the_same_written_otherwise(accepted, start, assess(accepted.exercise, start));
    each_single_slip_costs_its_task(accepted, asked);
    each_task_that_was_not_done_costs_marks_of_its_own(accepted, asked);
    pattern_of_a_stranger_earns_nothing_and_is_said_to_be_that(accepted, asked);
    RC_TAG(accepted.steps.made.size(), asked.slips, asked.not_done, asked.strangers);
}

}  // namespace
}  // namespace dartwright
