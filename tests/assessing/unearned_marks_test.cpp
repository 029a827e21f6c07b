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

// ---- slips -------------------------------------------------------------------------------------------------

std::string* word(Made& made, const std::string& key) {
    for (auto& [name, value] : made.request)
        if (name == key) return &value;
    return nullptr;
}

void require(const std::string* words) {
    const bool is_there = words != nullptr;
    RC_PRE(is_there);
}

struct Slip {
    Made made;
    std::vector<Criterion> shown_by;  ///< one of these is asked of the task
};

Slip wrong_place(const Pattern& before, Made made) {
    std::string* to = word(made, "to");
    require(to);
    const Piece& piece = piece_named(before, *word(made, "piece"));
    const std::string edge = to->substr(0, to->find('@'));
    std::string place = testing::any_clear_place(piece);
    RC_PRE(!place.empty());
    const std::vector<Run> runs = runs_of(piece.outline);
    const auto at = [&](const std::string& words) {
        const auto share = words.find('=');
        const Place parsed = parse_place(words.substr(0, share), runs, piece.name);
        return distance_from_start(parsed, *find_run(runs, parsed.edge));
    };
    RC_PRE(place.substr(0, place.find('@')) != edge || std::abs(at(place) - at(*to)) > 12);
    const auto share = to->find('=');
    if (share != std::string::npos) place += to->substr(share);
    *to = place;
    return {made, {Criterion::place}};
}

Slip wrong_share(Made made) {
    std::string* share = word(made, "share");
    RC_PRE(made.operation == "pivot");
    if (!share) {
        made.request.push_back({"share", "0.6"});
        return {made, {Criterion::gone}};
    }
    *share = std::stod(*share) > 0.5 ? "0.25" : "0.75";
    return {made, {Criterion::angle}};
}

Slip wrong_dart(const Pattern& before, Made made) {
    std::string* dart = word(made, "dart");
    require(dart);
    const std::vector<std::string> darts = testing::darts_of(piece_named(before, *word(made, "piece")));
    const std::string other = darts[std::size_t(*rc::gen::inRange(0, int(darts.size())))];
    const std::string* with = word(made, "with");
    const bool is_another = other != *dart && (!with || other != *with);
    RC_PRE(is_another);
    *dart = other;
    return {made, {Criterion::gone, Criterion::angle}};
}

Slip wrong_point(Made made) {
    std::string* back_off = word(made, "back_off");
    require(back_off);
    const double asked = parse_length(*back_off);
    *back_off = testing::text_mm(asked > 20 ? asked - 12 : asked + 12);
    return {made, {Criterion::pivot}};
}

Slip any_slip(const Pattern& before, const Made& made) {
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

struct SlippedDraft {
    std::size_t task = 0;
    Made made;
    Pattern draft;
};
SlippedDraft drawn_slip(const AcceptedExercise& accepted) {
    const std::vector<Made>& made = accepted.steps.made;
    const std::size_t i = std::size_t(*rc::gen::inRange(0, int(made.size())));
    const std::vector<Made> earlier(made.begin(), made.begin() + std::ptrdiff_t(i));
    const Slip slip = any_slip(*all_done(accepted.exercise.exercise.pattern, earlier), made[i]);
    RC_PRE(std::any_of(slip.shown_by.begin(), slip.shown_by.end(),
                       [&](Criterion each) { return judges(task_of(accepted, i), each); }));
    std::vector<Made> slipped = made;
    slipped[i] = slip.made;
    auto draft = all_done(accepted.exercise.exercise.pattern, slipped);
    RC_PRE(draft.has_value());
    return {i, slip.made, std::move(*draft)};
}
SlippedDraft slipped_draft(const AcceptedExercise& accepted) {
    SlippedDraft slipped =
        *rc::gen::resize(rc::kNominalSize, rc::gen::exec([accepted] { return drawn_slip(accepted); }));
    RC_LOG() << "slipped: " << testing::made_json(slipped.made) << "\n";
    return slipped;
}

RC_GTEST_PROP(unearned_marks, slip_in_a_task_costs_that_task, ()) {
    const AcceptedExercise accepted = any_accepted_exercise();
    log(accepted);
    const SlippedDraft slipped = slipped_draft(accepted);
    const Assessment assessment = assess(accepted.exercise, slipped.draft);
    RC_LOG() << testing::explained(assessment);
    RC_ASSERT(assessment.unread.empty());
    RC_ASSERT(assessment.tasks[slipped.task].marks < assessment.tasks[slipped.task].of - 1e-9);
}

RC_GTEST_PROP(unearned_marks, task_that_was_not_done_costs_marks_of_its_own, ()) {
    const AcceptedExercise accepted = any_accepted_exercise();
    log(accepted);
    std::vector<Made> others = accepted.steps.made;
    const std::size_t i = std::size_t(*rc::gen::inRange(0, int(others.size())));
    others.erase(others.begin() + std::ptrdiff_t(i));
    const auto draft = all_done(accepted.exercise.exercise.pattern, others);
    RC_PRE(draft.has_value());
    const Assessment assessment = assess(accepted.exercise, *draft);
    RC_LOG() << "not done: " << i << "\n" << testing::explained(assessment);
    RC_ASSERT(assessment.tasks[i].marks < assessment.tasks[i].of - 1e-9);
}

// ---- strangers ---------------------------------------------------------------------------------------------

// The sewn lengths of a piece's runs as shares, in order; how far two such rounds are apart the way in which they
// fit best. Written apart from the program's own: what is far off by lengths alone is another piece.
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
        const Pattern state = *all_done(
            accepted.exercise.exercise.pattern,
            {accepted.steps.made.begin(), accepted.steps.made.begin() + std::ptrdiff_t(i)});
        for (const Piece& known : state.pieces)
            for (const Piece& piece : stranger.pieces)
                if (shares_apart(shares_of(known), shares_of(piece)) < 0.25) return false;
    }
    return true;
}

RC_GTEST_PROP(unearned_marks, pattern_of_a_stranger_earns_nothing_and_is_said_to_be_that, ()) {
    const AcceptedExercise accepted = any_accepted_exercise();
    log(accepted);
    const Pattern stranger =
        *rc::gen::resize(rc::kNominalSize, rc::gen::exec([] { return testing::any_block(); }));
    RC_PRE(is_strange(accepted, stranger));
    const Assessment assessment = assess(accepted.exercise, stranger);
    RC_LOG() << testing::explained(assessment);
    RC_ASSERT(assessment.is_another_pattern);
    RC_ASSERT(assessment.notes.at(0).find("another pattern") != std::string::npos);
    RC_ASSERT(assessment.of > 0);
    RC_ASSERT(assessment.marks == 0);
}

RC_GTEST_PROP(unearned_marks, draft_with_a_slip_or_of_another_size_or_without_a_piece_is_no_strangers, ()) {
    const AcceptedExercise accepted = any_accepted_exercise();
    log(accepted);
    SlippedDraft slipped = slipped_draft(accepted);
    const int pieces = int(slipped.draft.pieces.size());
    if (pieces > 1 && *rc::gen::inRange(0, 2) == 0) {
        slipped.draft.pieces.erase(slipped.draft.pieces.begin() + *rc::gen::inRange(0, pieces));
        slipped.draft.seams.clear();
    }
    const double scale = *rc::gen::element(1.0, 2.54, 10.0, 0.97);
    const Assessment assessment =
        assess(accepted.exercise, testing::image({0.3, scale, *rc::gen::inRange(0, 2) == 0, {5, 5}}, slipped.draft));
    RC_ASSERT(assessment.unread.empty());
    RC_ASSERT(!assessment.is_another_pattern);
}

}  // namespace
}  // namespace dartwright
