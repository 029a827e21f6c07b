#pragma once

// Private to this room: the lines by which a draft's facts are judged, criterion by criterion.

#include "dartwright/assessing/assessment.hpp"
#include "dartwright/assessing/draft_facts.hpp"
#include "dartwright/assessing/ladder.hpp"

namespace dartwright {

/// A line, and what it keeps of the criterion's marks.
struct ScoredLine {
    JudgedLine line;
    double share = 1;
};
using ScoredLines = std::vector<ScoredLine>;

struct MarkedTask {
    std::size_t index = 0;
    const Task& task;
    /// The pieces that it works on, if all of them are as they were handed out.
    std::vector<std::string> not_begun = {};
    std::string undone_on = {};  ///< a piece of it, if the darts that it was to change are as they were
};
/// Every thing that the criterion looks at in that task, at fault or not.
ScoredLines place_lines(const DraftFacts& facts, const MarkedTask& task);
ScoredLines angle_lines(const DraftFacts& facts, const MarkedTask& task);
ScoredLines legs_lines(const DraftFacts& facts, const MarkedTask& task);
ScoredLines mouth_lines(const DraftFacts& facts, const MarkedTask& task);
ScoredLines pivot_lines(const DraftFacts& facts, const MarkedTask& task);
ScoredLines gone_lines(const DraftFacts& facts, const MarkedTask& task);
ScoredLines shape_lines(const DraftFacts& facts, const MarkedTask& task);
ScoredLines lengths_lines(const DraftFacts& facts, const MarkedTask& task);
ScoredLines angles_lines(const DraftFacts& facts, const MarkedTask& task);
ScoredLines area_lines(const DraftFacts& facts, const MarkedTask& task);
ScoredLines notches_lines(const DraftFacts& facts, const MarkedTask& task);
ScoredLines seams_lines(const DraftFacts& facts, const MarkedTask& task);
ScoredLines check_lines(const DraftFacts& facts, const MarkedTask& task);
ScoredLines allowances_lines(const DraftFacts& facts, const MarkedTask& task);
ScoredLines measure_lines(const DraftFacts& facts, const MarkedTask& task);
ScoredLines size_lines(const DraftFacts& facts, const MarkedTask& task);

/// Whether a dart that the task was to change is drawn more as it was before than as any later state, so that
/// it earns nothing. A state that is the finished one again is no fault.
bool is_as_it_was(const DraftFacts& facts, const DartFact& dart, std::size_t task);
/// Whether a mouth that one task was to open and this one to close never was open: all is as it was before.
bool was_never_opened(const DraftFacts& facts, const ClosedFact& closed);
/// The task, and whether it was begun.
MarkedTask marked_task(const DraftFacts& facts, std::size_t index);
/// A line at fault if it was not begun; else none.
ScoredLines not_begun_lines(const MarkedTask& task, Criterion criterion);

/// What the size is judged by where no task asks for it; empty where another criterion is to bear it.
ScoredLines borne_size(const DraftFacts& facts, Criterion criterion);

/// A line about a length with its standing on the ladder; expected, found and difference set.
struct Amounts {
    double expected = 0;
    double found = 0;
    double difference = 0;  ///< what is judged
};
ScoredLine length_line(const DraftFacts& facts, JudgedLine about, const Amounts& amounts);
/// In degrees.
ScoredLine angle_line(const DraftFacts& facts, JudgedLine about, const Amounts& amounts);
/// A length as the exercise's tables have it: `12.4 mm`, `1.24 cm`, `0.488 in`.
std::string length_words(const DraftFacts& facts, double mm);
/// A line at fault without numbers.
ScoredLine fault_line(JudgedLine about, std::string expected, std::string found);
/// The same line on the first rung, since what is off is judged elsewhere.
ScoredLine judged_elsewhere(const Ladder& ladder, ScoredLine line, const std::string& where);

/// A line about a dart, or about a run, of a piece.
JudgedLine about_dart(const DraftFacts& facts, Criterion criterion, const DartFact& dart);
JudgedLine about_run(const DraftFacts& facts, Criterion criterion, const RunFact& run);
/// The place in the draft as it was drawn.
std::optional<Point> drawn_place(const DraftFacts& facts, std::size_t piece, Point p);
/// The middle of a run of the draft.
std::optional<Point> middle_of_run(const DraftFacts& facts, std::size_t piece, const std::string& edge);

}  // namespace dartwright
