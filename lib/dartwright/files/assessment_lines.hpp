#pragma once

// A marked draft as one line of JSON: kept as drafts are marked, put together again for a class.

#include <string>
#include <string_view>

#include "dartwright/assessing/assessment.hpp"
#include "dartwright/files/pattern_file.hpp"

namespace dartwright {

struct AssessmentLine {
    /// Of the bytes of the exercise and of the draft that were judged (`digest_of`), by which a line that no
    /// longer fits them is known. The draft's is empty if it could not be read.
    std::string exercise_digest;
    std::string draft_digest;
    Assessment assessment;
};

/// Sixteen hexadecimal digits that differ for different bytes, other than by a rare chance: FNV-1a of 64
/// bits. It guards against mistakes, not against forgery. O(n).
std::string digest_of(std::string_view bytes);

/// The line, without a line end; lengths in mm, angles in degrees, rounded to the millionth, points to 0.01
/// mm; numbers that are not finite are left out, bytes that are not UTF-8 replaced. The same value gives the
/// same bytes, and what is read back and written again, too. O(n).
std::string write_assessment_line(const AssessmentLine& line);

/// `place` is said in messages: the file, and which line of it. InvalidPattern with all that is wrong. O(n
/// log n).
AssessmentLine read_assessment_line(std::string_view text, const std::string& place);

}  // namespace dartwright
