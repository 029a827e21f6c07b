#pragma once

// A class as JUnit XML, which systems that run tests read: a testsuite a student, a testcase a criterion.

#include <string>

#include "dartwright/assessing/assessment.hpp"
#include "dartwright/words/unit.hpp"

namespace dartwright {

std::string class_junit_begin(const std::string& exercise);
/// A criterion that lost marks by a fault is a failure, with the lines that cost them; one on a lower rung
/// passes and says so. A draft that could not be read is an error. `label` names the student apart from all
/// others; lengths are written in the unit.
std::string class_junit_student(const Assessment& assessment, const std::string& label, Unit unit = Unit::mm);
std::string class_junit_end();

}  // namespace dartwright
