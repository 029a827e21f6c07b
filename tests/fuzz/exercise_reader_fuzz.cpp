// Any bytes are read as an exercise or refused with a list of problems; one that is read can be made ready.

#include "dartwright/assessing/assess.hpp"
#include "dartwright/files/exercise_file.hpp"
#include "fuzzing.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace dartwright;
    const std::string folder = DARTWRIGHT_SOURCE_DIR "/fixtures/exercises/fuzzed.json";
    try {
        const PreparedExercise exercise = prepared(read_exercise(fuzzing::as_text(data, size), folder));
        fuzzing::require(!exercise.exercise.tasks.empty(), "an exercise has a task");
    } catch (const InvalidPattern& invalid) {
        fuzzing::require(!invalid.problems.empty(), "a file that is refused has a problem");
        for (const FileProblem& problem : invalid.problems) fuzzing::require_clear(problem);
    }
    return 0;
}
