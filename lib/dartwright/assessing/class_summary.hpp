#pragma once

// What a page for a class says of all drafts together, gathered draft by draft: a few figures of each, so
// that thousands fit.

#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "dartwright/assessing/assessment.hpp"

namespace dartwright {

struct StudentSummary {
    std::string student;
    std::string file;
    std::string unread;
    double marks = 0;
    double of = 0;
    std::vector<std::optional<double>> task_marks;  ///< as the class's tasks; empty where it has no such task
    bool has_fault = false;
};

/// A task as the first draft that was judged has it.
struct TaskSummary {
    std::string name;
    double of = 0;
};

/// One thing that is judged, over all drafts.
struct MeasureSummary {
    std::string task;
    Criterion criterion = Criterion::place;
    std::string piece;
    std::string what;
    Quantity quantity = Quantity::length;
    std::optional<double> expected;  ///< empty where it is not the same for all
    std::vector<float> differences;  ///< of the drafts that have one, in their order
    std::size_t with_fault = 0;      ///< drafts that lost marks here by a fault
    std::size_t on_a_rung = 0;       ///< drafts that lost some here, and not by a fault
    std::string remedy;              ///< in general words
};

/// Different things remembered of a class at most; judging an exercise gives far fewer, drafts made to do
/// harm may give more, and what comes later is then not counted.
inline constexpr std::size_t most_measures = 2000;

struct ClassSummary {
    std::vector<TaskSummary> tasks;
    std::vector<StudentSummary> students;
    std::vector<MeasureSummary> measures;  ///< in the order in which they were met

    /// O(lines of the draft).
    void add(const Assessment& assessment);

  private:
    MeasureSummary* measure_of(const JudgedTask& task, const JudgedLine& line);
    std::map<std::tuple<std::string, Criterion, std::string, std::string>, std::size_t> index_;
};

/// What a class that loses marks by the criterion is told, without one student's figures.
const char* remedy_in_general(Criterion criterion);

/// How drafts are called, each otherwise: by the name, and where two have the same by as much of the end of
/// their paths as tells them apart: `gul`, `evening/gul`. O(n p log n) for paths of p parts.
std::vector<std::string> labels_of(const std::vector<StudentSummary>& students);

struct ClassCount {
    std::size_t all = 0;
    std::size_t with_all_marks = 0;
    std::size_t with_faults = 0;
    std::size_t unread = 0;
};
ClassCount count_of(const std::vector<StudentSummary>& students);

/// Measures that cost somebody marks, faults first, then the most drafts; those alike in the order of the
/// exercise.
std::vector<const MeasureSummary*> commonest_faults(const ClassSummary& summary);

/// Least, middle and greatest. Precondition: not empty (std::invalid_argument). O(n log n).
struct Spread {
    double least = 0;
    double median = 0;
    double greatest = 0;
};
Spread spread_of(std::vector<float> differences);

}  // namespace dartwright
