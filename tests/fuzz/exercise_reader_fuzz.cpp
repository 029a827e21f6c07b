// Any bytes are read as an exercise or refused with a list of problems; one that is read can be made ready,
// and judges the pattern to begin with, the finished one and a pattern of the fixtures: the first has no
// marks for what is to be done, and no marks lie outside nothing and all.

#include <cmath>

#include "dartwright/assessing/assess.hpp"
#include "dartwright/files/exercise_file.hpp"
#include "fuzzing.hpp"
#include "json_mutation.hpp"

namespace dartwright::fuzzing {
namespace {

Assessment judged(const PreparedExercise& exercise, const Pattern& draft) {
    const Assessment result = assess(exercise, draft);
    require(result.marks >= 0 && result.marks <= result.of + 1e-9, "marks lie between nothing and all");
    if (!result.unread.empty()) require(result.marks == 0, "what is not judged has no marks");
    return result;
}

void judge(const PreparedExercise& exercise) {
    require(!exercise.exercise.tasks.empty(), "an exercise has a task");
    const Assessment untouched = judged(exercise, exercise.exercise.pattern);
    for (std::size_t i = 0; i < untouched.tasks.size(); ++i) {
        if (std::holds_alternative<OperationTask>(exercise.exercise.tasks[i].what))
            require(untouched.tasks[i].marks == 0, "nothing done has no marks");
    }
    judged(exercise, exercise.finished);
    static const Pattern other =
        read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/blocks/three-measure.json");
    judged(exercise, other);
}

}  // namespace
}  // namespace dartwright::fuzzing

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace dartwright;
    const std::string folder = DARTWRIGHT_SOURCE_DIR "/fixtures/exercises/fuzzed.json";
    try {
        fuzzing::judge(prepared(read_exercise(fuzzing::as_text(data, size), folder)));
    } catch (const InvalidPattern& invalid) {
        fuzzing::require(!invalid.problems.empty(), "a file that is refused has a problem");
        for (const FileProblem& problem : invalid.problems) fuzzing::require_clear(problem);
    }
    return 0;
}
