// Any bytes are read as a rule or refused with a list of problems; what was read is written, read and written
// again without a change.

#include "dartwright/files/rule_file.hpp"
#include "fuzzing.hpp"
#include "json_mutation.hpp"

namespace dartwright::fuzzing {
namespace {

std::optional<CuttingRule> rule_of(std::string_view text) {
    try {
        return read_rule(text, "fuzzed");
    } catch (const InvalidPattern& invalid) {
        require(!invalid.problems.empty(), "a file that is refused has a problem");
        for (const FileProblem& problem : invalid.problems) require_clear(problem);
        return std::nullopt;
    }
}

void round_trip(const CuttingRule& rule) {
    const std::string written = write_rule(rule);
    const std::optional<CuttingRule> again = rule_of(written);
    require(again.has_value(), "what was written can be read");
    require(*again == rule, "what was written reads as the same rule");
    require(write_rule(*again) == written, "writing again gives the same bytes");
}

}  // namespace
}  // namespace dartwright::fuzzing

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    namespace fuzzing = dartwright::fuzzing;
    if (const auto rule = fuzzing::rule_of(fuzzing::as_text(data, size))) fuzzing::round_trip(*rule);
    return 0;
}
