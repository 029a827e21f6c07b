#pragma once

// A class in the Test Anything Protocol, version 14: a test point a criterion, with what was found in a block
// of YAML below those that lost marks.

#include <string>

#include "dartwright/assessing/assessment.hpp"
#include "dartwright/words/unit.hpp"

namespace dartwright {

/// Writes test points, numbered through the class, and at the end how many there were.
class ClassTap {
  public:
    /// Lengths are written in the unit.
    explicit ClassTap(Unit unit = Unit::mm) : unit_(unit) {}
    std::string begin() const { return "TAP version 14\n"; }
    /// `label` names the student apart from all others. `not ok` is a criterion that lost marks by a fault,
    /// and a draft that could not be read.
    std::string student(const Assessment& assessment, const std::string& label);
    std::string end() const;

  private:
    std::string point(bool is_ok, const std::string& words);
    std::string criterion_point(const std::string& label, const JudgedTask& task,
                                const JudgedCriterion& criterion);
    Unit unit_;
    std::size_t points_ = 0;
};

}  // namespace dartwright
