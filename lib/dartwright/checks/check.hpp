#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "dartwright/checks/finding.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// The verdict on one seam. Lengths (sewn, mm) and difference are absent where a piece's outline does not
/// close.
struct SeamVerdict {
    std::string name;
    std::array<std::string, 2> side_names;  ///< as the walk of it has them: pieces, or edges of one piece
    std::optional<std::array<double, 2>> lengths;
    double ease = 0;                   ///< signed: positive when the second side is meant to be longer
    std::optional<double> difference;  ///< second - first - signed ease
    bool passed = true;                ///< no fault names this seam
};
struct DartVerdict {
    std::string piece;
    std::string name;
    std::array<double, 2> legs{};  ///< sewn legs, mm
    double intake = 0;
    double angle_deg = 0;  ///< at the pivot
    bool passed = true;    ///< no fault names this dart
};
struct CheckReport {
    std::string name;               ///< the pattern's
    std::vector<Finding> findings;  ///< in the order of the list of checks, then pieces, then places
    std::vector<SeamVerdict> seams;
    std::vector<DartVerdict> darts;
    bool passed = true;  ///< no finding is a fault
};

/// Every check on every piece and seam. Pure; O(n log n) in the vertices of the flattened outlines.
/// Requires a sound pattern (problems_of is empty) and tolerances: UnsoundPattern.
CheckReport check(const Pattern& pattern, const Tolerances& tolerances);
CheckReport check(const Pattern& pattern);  ///< with the pattern's own tolerances

/// One check as the text, JSON and documents name it. The single list that all of them are made from.
struct CheckKind {
    const char* name;
    const char* definition;  ///< one sentence
    const char* tolerance;   ///< name of the tolerance that it uses, or "" if none
    const char* source;      ///< of the default tolerance
};
const std::vector<CheckKind>& list_of_checks();

}  // namespace dartwright
