#pragma once

// How one draft was judged: values that can be written, read again, put together for a class, and shown.

#include <optional>
#include <string>
#include <vector>

#include "dartwright/assessing/exercise.hpp"
#include "dartwright/geometry/point.hpp"

namespace dartwright {

/// What a line's numbers are: millimetres, square millimetres, degrees, a plain number (a scale, a count), or
/// no number at all.
enum class Quantity { length, area, angle, number, words };

/// One thing that was judged.
struct JudgedLine {
    Criterion criterion = Criterion::place;
    std::string piece;  ///< in the exercise's names; texts that do not apply are empty
    std::string edge;
    std::string dart;
    std::string seam;
    std::string what;  ///< in the trade's words: `the waist dart's place along the side`
    Quantity quantity = Quantity::length;
    std::optional<double> expected;
    std::optional<double> found;
    std::optional<double> difference;  ///< found - expected, or how far it is off; never recomputed
    std::string expected_words;        ///< where there is no number, or it needs words
    std::string found_words;
    std::string rung;         ///< of the ladder; `fault` beyond it
    std::optional<Point> at;  ///< in the draft, as it was drawn
    std::string remedy;       ///< one sentence; empty when nothing is to be mended
};

/// A criterion of a task: its marks, and the lines that decided.
struct JudgedCriterion {
    Criterion criterion = Criterion::place;
    double marks = 0;
    double of = 0;
    std::string rung;  ///< the worst of its lines
    std::vector<JudgedLine> lines;
};
struct JudgedTask {
    std::string name;
    std::string words;
    double marks = 0;
    double of = 0;
    std::vector<JudgedCriterion> criteria;
};

/// A piece for a picture: the draft's outline, darts drawn to their points, and the finished pattern's laid
/// over it with the best rigid fit (turned over if the draft is), as closed polygons in the draft's place.
struct OverlaidPiece {
    std::string name;        ///< in the exercise
    std::string draft_name;  ///< as the draft calls it
    std::vector<Point> found;
    std::vector<Point> expected;
};
/// A seam of the draft, walked.
struct WalkedLengths {
    std::string name;
    double first_mm = 0;
    double second_mm = 0;
    double ease_mm = 0;        ///< asked, signed: of the second side
    double difference_mm = 0;  ///< second - first - ease
    bool is_true = true;
};

/// What kept a draft from being judged: its bytes could not be had; they are no pattern, or one with
/// problems; the judging itself met something impossible; memory was short; the program is at fault.
enum class UnreadKind { unreadable, no_pattern, unjudged, little_memory, internal };

struct Assessment {
    std::string student;  ///< from the file's name
    std::string file;     ///< as it was given
    /// Why it could not be judged; empty if it was. Then it has no marks and no tasks.
    std::string unread;
    /// Of which kind that is; empty if it was judged, and in lines of earlier versions.
    std::optional<UnreadKind> unread_kind;
    /// It differs from the exercise's pattern in most edges at once, by more than a slip and a hand do: it is
    /// said, and all marks are lost.
    bool is_another_pattern = false;
    double marks = 0;
    double of = 0;
    std::vector<JudgedTask> tasks;
    std::vector<std::string>
        notes;  ///< mirrored, turned, in another unit, edges matched by shape, another way
    std::vector<OverlaidPiece> pieces;
    std::vector<WalkedLengths> seams;
};

}  // namespace dartwright
