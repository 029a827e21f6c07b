// Every mark is earned by something that was found. Laws over exercises of one to four tasks that the reader
// accepts.

#include "dartwright/assessing/unearned_marks.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "assessing/generated_exercises.hpp"

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

RC_GTEST_PROP(unearned_marks, finished_pattern_gets_all_that_is_to_be_done_and_kept, ()) {
    const AcceptedExercise accepted = any_accepted_exercise();
    log(accepted);
    const Assessment assessment = assess(accepted.exercise, accepted.exercise.finished);
    RC_LOG() << testing::explained(assessment);
    RC_ASSERT(assessment.unread.empty());
    for (const JudgedTask& task : assessment.tasks) RC_ASSERT(task.marks >= task.of - 1e-9);
}

RC_GTEST_PROP(unearned_marks, pattern_as_it_was_handed_out_gets_nothing_for_what_was_to_be_done, ()) {
    const AcceptedExercise accepted = any_accepted_exercise();
    log(accepted);
    Pattern start = accepted.exercise.exercise.pattern;
    if (*rc::gen::inRange(0, 2) == 0)
        start = testing::image({real_between(-pi, pi), 1, *rc::gen::inRange(0, 2) == 0, {300, 40}}, start);
    const Assessment assessment = assess(accepted.exercise, start);
    RC_LOG() << testing::explained(assessment);
    RC_ASSERT(assessment.unread.empty());
    for (std::size_t i = 0; i < assessment.tasks.size(); ++i)
        if (is_to_be_done(task_of(accepted, i))) RC_ASSERT(assessment.tasks[i].marks == 0);
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

AnySlip wrong_share(Made made) {
    if (made.operation != "pivot") return std::nullopt;
    std::string* share = word(made, "share");
    if (!share) {
        made.request.push_back({"share", "0.6"});
        return Slip{made, {Criterion::gone}};
    }
    *share = std::stod(*share) > 0.5 ? "0.25" : "0.75";
    return Slip{made, {Criterion::angle}};
}

AnySlip wrong_dart(const Pattern& before, Made made) {
    std::string* dart = word(made, "dart");
    if (!dart) return std::nullopt;
    const std::vector<std::string> darts = testing::darts_of(piece_named(before, *word(made, "piece")));
    const std::string other = darts[std::size_t(*rc::gen::inRange(0, int(darts.size())))];
    const std::string* with = word(made, "with");
    if (other == *dart || (with && other == *with)) return std::nullopt;
    *dart = other;
    return Slip{made, {Criterion::gone, Criterion::angle}};
}

AnySlip wrong_point(Made made) {
    std::string* back_off = word(made, "back_off");
    if (!back_off) return std::nullopt;
    const double asked = parse_length(*back_off);
    *back_off = testing::text_mm(asked > 20 ? asked - 12 : asked + 12);
    return Slip{made, {Criterion::pivot}};
}

AnySlip any_slip(const Pattern& before, const Made& made) {
    switch (*rc::gen::inRange(0, 4)) {
        case 0:
            return wrong_place(before, made);
        case 1:
            return wrong_share(made);
        case 2:
            return wrong_dart(before, made);
        default:
            return wrong_point(made);
    }
}

struct Slipped {
    AcceptedExercise accepted;
    std::size_t task = 0;
    Made made;
    Pattern draft;
};
// All tasks done, one of them with a slip that one of its criteria is there to see.
std::optional<Slipped> slipped_in(const AcceptedExercise& accepted) {
    const Pattern& block = accepted.exercise.exercise.pattern;
    std::vector<Made> made = accepted.steps.made;
    const std::size_t i = std::size_t(*rc::gen::inRange(0, int(made.size())));
    const std::vector<Made> earlier(made.begin(), made.begin() + std::ptrdiff_t(i));
    const AnySlip slip = any_slip(*all_done(block, earlier), made[i]);
    if (!slip) return std::nullopt;
    const bool is_seen = std::any_of(slip->shown_by.begin(), slip->shown_by.end(),
                                     [&](Criterion each) { return judges(task_of(accepted, i), each); });
    made[i] = slip->made;
    auto draft = is_seen ? all_done(block, made) : std::nullopt;
    if (!draft) return std::nullopt;
    return Slipped{accepted, i, slip->made, std::move(*draft)};
}
std::optional<Slipped> slipped() {
    constexpr int most_slips = 12;
    const auto accepted = testing::accepted_exercise();
    for (int i = 0; accepted && i < most_slips; ++i)
        if (auto slip = slipped_in(*accepted)) return slip;
    return std::nullopt;
}
Slipped any_slipped() {
    Slipped out = testing::drawn([] { return slipped(); });
    log(out.accepted);
    RC_LOG() << "slipped: " << testing::made_json(out.made) << "\n";
    return out;
}

RC_GTEST_PROP(unearned_marks, slip_in_a_task_costs_that_task, ()) {
    const Slipped slip = any_slipped();
    const Assessment assessment = assess(slip.accepted.exercise, slip.draft);
    RC_LOG() << testing::explained(assessment);
    RC_ASSERT(assessment.unread.empty());
    RC_ASSERT(assessment.tasks[slip.task].marks < assessment.tasks[slip.task].of - 1e-9);
}

struct NotDone {
    AcceptedExercise accepted;
    std::size_t task = 0;
    Pattern draft;
};
std::optional<NotDone> not_done() {
    auto accepted = testing::accepted_exercise();
    if (!accepted) return std::nullopt;
    std::vector<Made> others = accepted->steps.made;
    const std::size_t i = std::size_t(*rc::gen::inRange(0, int(others.size())));
    others.erase(others.begin() + std::ptrdiff_t(i));
    auto draft = all_done(accepted->exercise.exercise.pattern, others);
    if (!draft) return std::nullopt;
    return NotDone{std::move(*accepted), i, std::move(*draft)};
}

RC_GTEST_PROP(unearned_marks, task_that_was_not_done_costs_marks_of_its_own, ()) {
    const NotDone left = testing::drawn([] { return not_done(); });
    log(left.accepted);
    const Assessment assessment = assess(left.accepted.exercise, left.draft);
    RC_LOG() << "not done: " << left.task << "\n" << testing::explained(assessment);
    RC_ASSERT(assessment.tasks[left.task].marks < assessment.tasks[left.task].of - 1e-9);
}

// ---- strangers
// ---------------------------------------------------------------------------------------------

// The sewn lengths of a piece's runs as shares, in order; how far two such rounds are apart the way in which
// they fit best. Written apart from the program's own: what is far off by lengths alone is another piece.
std::vector<double> shares_of(const Piece& piece) {
    std::vector<double> shares;
    double around = 0;
    for (const Run& run : runs_of(piece.outline)) around += run.length;
    for (const Run& run : runs_of(piece.outline)) shares.push_back(run.length / around);
    return shares;
}
double shares_apart(std::vector<double> one, const std::vector<double>& other) {
    if (one.size() != other.size()) return 1;
    double least = 1;
    for (int turned_over = 0; turned_over < 2; ++turned_over) {
        for (std::size_t i = 0; i < one.size(); ++i) {
            double off = 0;
            for (std::size_t k = 0; k < one.size(); ++k) off += std::abs(one[k] - other[k]);
            least = std::min(least, off);
            std::rotate(one.begin(), one.begin() + 1, one.end());
        }
        std::reverse(one.begin(), one.end());
    }
    return least;
}
bool is_strange(const AcceptedExercise& accepted, const Pattern& stranger) {
    std::vector<Made> made;
    for (std::size_t i = 0; i <= accepted.steps.made.size(); ++i) {
        const Pattern state =
            *all_done(accepted.exercise.exercise.pattern,
                      {accepted.steps.made.begin(), accepted.steps.made.begin() + std::ptrdiff_t(i)});
        for (const Piece& known : state.pieces)
            for (const Piece& piece : stranger.pieces)
                if (shares_apart(shares_of(known), shares_of(piece)) < 0.25) return false;
    }
    return true;
}

struct Stranger {
    AcceptedExercise accepted;
    Pattern draft;
};
std::optional<Stranger> stranger() {
    auto accepted = testing::accepted_exercise();
    if (!accepted) return std::nullopt;
    Pattern draft = testing::any_block();
    if (!is_strange(*accepted, draft)) return std::nullopt;
    return Stranger{std::move(*accepted), std::move(draft)};
}

RC_GTEST_PROP(unearned_marks, pattern_of_a_stranger_earns_nothing_and_is_said_to_be_that, ()) {
    const Stranger strange = testing::drawn([] { return stranger(); });
    log(strange.accepted);
    const Assessment assessment = assess(strange.accepted.exercise, strange.draft);
    RC_LOG() << testing::explained(assessment);
    RC_ASSERT(assessment.is_another_pattern);
    RC_ASSERT(assessment.notes.at(0).find("another pattern") != std::string::npos);
    RC_ASSERT(assessment.of > 0);
    RC_ASSERT(assessment.marks == 0);
}

RC_GTEST_PROP(unearned_marks, draft_with_a_slip_or_of_another_size_or_without_a_piece_is_no_strangers, ()) {
    Slipped slip = any_slipped();
    const int pieces = int(slip.draft.pieces.size());
    if (pieces > 1 && *rc::gen::inRange(0, 2) == 0) {
        slip.draft.pieces.erase(slip.draft.pieces.begin() + *rc::gen::inRange(0, pieces));
        slip.draft.seams.clear();
    }
    const double scale = *rc::gen::element(1.0, 2.54, 10.0, 0.97);
    const Pattern draft = testing::image({0.3, scale, *rc::gen::inRange(0, 2) == 0, {5, 5}}, slip.draft);
    const Assessment assessment = assess(slip.accepted.exercise, draft);
    RC_ASSERT(assessment.unread.empty());
    RC_ASSERT(!assessment.is_another_pattern);
}

}  // namespace
}  // namespace dartwright
