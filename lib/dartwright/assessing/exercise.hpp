#pragma once

// What a class is asked to do to one pattern, and what each part of it is worth.

#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// A step of a ladder: a difference up to this much keeps this share of the marks.
struct Rung {
    std::string name;   ///< `full`, `accepted`, `noted`, or the exercise's own word
    double within = 0;  ///< mm, degrees or a share, as the ladder's
    double share = 1;   ///< of the marks, 0 to 1
    friend bool operator==(const Rung&, const Rung&) = default;
};
/// Rungs with growing `within` and falling `share`. What is beyond the last is a `fault` and keeps nothing.
using Ladder = std::vector<Rung>;
struct Ladders {
    Ladder lengths;  ///< mm
    Ladder angles;   ///< degrees
};
/// Lengths 1 mm full, 1/16 in accepted (3/4 of the marks), 1/8 in noted (1/2); angles 0.5, 1 and 2 degrees.
const Ladders& usual_ladders();

/// How exact a hand must be, in a word.
enum class Hand {
    unsaid,
    fine,      ///< a sharp pencil along a steel rule, or a drawing made by numbers
    ordinary,  ///< drawn and measured to the millimetre
    beginner   ///< a first pattern, drawn and cut out of paper
};
/// What each is held to. Unsaid: the usual ladders. Fine: lengths 0.5, 1 and 2 mm, angles 0.25, 0.5 and 1
/// degrees. Ordinary: the usual ladders. Beginner: 2, 3 and 6 mm, 1, 2 and 4 degrees. The rungs' names and
/// shares are the same.
const Ladders& ladders_of(Hand hand);
/// How many times its tolerance a check may be off and cost nothing: 1 unsaid and fine, 2 ordinary, 4
/// beginner. A point that is rounded to the millimetre turns the edge over a dart's mouth by up to 4 degrees,
/// twice the tolerance, in the blocks that come with the project.
double tolerances_allowed(Hand hand);

/// What a task is judged by. Each criterion has marks of its own; the worst line of a criterion decides how
/// many of them are kept.
enum class Criterion {
    // of what was to be moved or made
    place,  ///< the dart is where it was asked
    angle,  ///< its dart angle
    legs,   ///< equal, and the point on the bisector of the pivot's angle
    mouth,  ///< the edge runs on smoothly over it, closed
    pivot,  ///< it aims at the pivot
    gone,   ///< what was to close or move away is closed
    shape,  ///< the parts lie as the finished pattern's (what no other criterion has judged already)
    // of what must survive
    lengths,  ///< sewn, of every run
    angles,   ///< about every pivot, together
    area,     ///< of the cloth
    notches,
    seams,
    // of the whole draft
    check,       ///< no fault that a criterion has not judged already
    allowances,  ///< by the rule
    measure,     ///< of the wearer, within the ease
    size         ///< drawn at the true scale, in the unit it says
};

struct CriterionMarks {
    Criterion criterion = Criterion::place;
    double marks = 0;
};

/// Do an operation, as a `made` list has it: a pivot, a split, a close, ... The tasks' operations, one after
/// the other, make the finished pattern that drafts are held against.
struct OperationTask {
    Made operation;
};
/// What must survive: `of` limits it.
struct KeepTask {};
/// The draft checks true; `leave_out` names checks that are not asked.
struct TrueTask {
    std::vector<std::string> leave_out;
};
/// Every run has the width that the rule gives it.
struct AllowanceTask {
    CuttingRule rule;
};
/// A measurement across all pieces (`measure`): the wearer's, and how much more the draft may have.
struct MeasureTask {
    std::string line;  ///< a run or a marked line, doubled for a fold or a pair
    double wearer_mm = 0;
    std::array<double, 2> ease_mm{0, 0};  ///< least and most
};
/// Drawn at the block's size.
struct SizeTask {};

struct Task {
    std::string name;   ///< unique in the exercise
    std::string words;  ///< for the student; may be empty
    std::variant<OperationTask, KeepTask, TrueTask, AllowanceTask, MeasureTask, SizeTask> what;
    std::vector<CriterionMarks> marks;  ///< those judged, in order; one task judges at least one
};

/// What need not be as in the finished pattern, and is not a fault.
enum class Freedom {
    back_off,  ///< how far a moved dart's point stops from its pivot
    names,     ///< of pieces, edges and darts: they are matched by shape
    grain,     ///< its place (never its direction)
    notches    ///< more of them than asked
};

struct Exercise {
    std::string name;
    std::string words;  ///< to the class; may be empty
    Unit unit = Unit::mm;
    Pattern pattern;  ///< to begin with
    std::vector<Task> tasks;
    Hand hand = Hand::unsaid;
    Ladders ladders;
    std::vector<Freedom> may_differ;
};

/// The pattern after all operations. BadWords, UnknownName and Impossible name the task.
Pattern finished_pattern(const Exercise& exercise);

}  // namespace dartwright
