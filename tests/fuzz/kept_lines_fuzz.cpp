// Any bytes are read as a kept line of a marked draft or refused with a list of problems; what was read is
// written, read and written again without a change.

#include "dartwright/files/assessment_lines.hpp"
#include "fuzzing.hpp"
#include "json_mutation.hpp"

namespace dartwright::fuzzing {
namespace {

std::optional<AssessmentLine> line_of(std::string_view text) {
    try {
        return read_assessment_line(text, "line 1");
    } catch (const InvalidPattern& invalid) {
        require(!invalid.problems.empty(), "a line that is refused has a problem");
        for (const FileProblem& problem : invalid.problems) require_clear(problem);
        return std::nullopt;
    }
}

void round_trip(const AssessmentLine& line) {
    const std::string written = write_assessment_line(line);
    require(written.find('\n') == written.npos, "a line is one line");
    const std::optional<AssessmentLine> again = line_of(written);
    require(again.has_value(), "what was written can be read");
    require(write_assessment_line(*again) == written, "writing again gives the same bytes");
}

}  // namespace
}  // namespace dartwright::fuzzing

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    namespace fuzzing = dartwright::fuzzing;
    if (const auto line = fuzzing::line_of(fuzzing::as_text(data, size))) fuzzing::round_trip(*line);
    return 0;
}
