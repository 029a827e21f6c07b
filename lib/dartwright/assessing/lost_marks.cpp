#include "dartwright/assessing/lost_marks.hpp"

#include "dartwright/assessing/criterion_names.hpp"

namespace dartwright {

bool has_lost_by_fault(const JudgedCriterion& criterion) {
    return criterion.rung == fault_rung && criterion.marks < criterion.of;
}

bool has_lost_by_fault(const Assessment& assessment) {
    for (const JudgedTask& task : assessment.tasks)
        for (const JudgedCriterion& criterion : task.criteria)
            if (has_lost_by_fault(criterion)) return true;
    return false;
}

std::vector<const JudgedLine*> costly_lines(const JudgedCriterion& criterion) {
    std::vector<const JudgedLine*> lines;
    if (criterion.marks >= criterion.of) return lines;
    for (const JudgedLine& line : criterion.lines)
        if (line.rung == criterion.rung) lines.push_back(&line);
    return lines;
}

}  // namespace dartwright
