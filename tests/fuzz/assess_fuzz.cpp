// Whatever can be read as a pattern is judged by an exercise, or says why not; its marks lie between nothing
// and all, and what was found is written as a line and read again without a change.

#include <cmath>

#include "dartwright/assessing/assess.hpp"
#include "dartwright/files/assessment_lines.hpp"
#include "dartwright/files/exercise_file.hpp"
#include "fuzzing.hpp"
#include "json_mutation.hpp"

namespace dartwright::fuzzing {
namespace {

const PreparedExercise& exercise() {
    static const PreparedExercise read =
        prepared(read_exercise_file(DARTWRIGHT_SOURCE_DIR "/fixtures/exercises/chorus-class/exercise.json"));
    return read;
}

void judge(const Pattern& draft) {
    const Assessment judged = assess(exercise(), draft);
    if (judged.unread.empty()) {
        require(judged.marks >= 0 && judged.marks <= judged.of + 1e-9, "marks lie between nothing and all");
        require(std::abs(judged.of - 38) < 1e-9, "every task is judged");
    } else {
        require(judged.tasks.empty() && judged.marks == 0, "what is not judged has no marks");
    }
    const std::string line = write_assessment_line({"0123456789abcdef", "", judged});
    require(line.find('\n') == line.npos, "a line is one line");
    require(write_assessment_line(read_assessment_line(line, "line")) == line, "and reads again as itself");
}

}  // namespace
}  // namespace dartwright::fuzzing

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    namespace fuzzing = dartwright::fuzzing;
    if (const auto draft = fuzzing::pattern_of(fuzzing::as_text(data, size))) fuzzing::judge(*draft);
    return 0;
}
