// Any bytes are read as a pattern or refused with a list of problems; what was read is written, read and
// written again without a change.

#include "fuzzing.hpp"
#include "json_mutation.hpp"

namespace dartwright::fuzzing {
namespace {

void round_trip(const Pattern& pattern) {
    const std::string written = write_pattern(pattern);
    const std::optional<Pattern> again = pattern_of(written);
    require(again.has_value(), "what was written can be read");
    require(is_same(*again, pattern), "what was written reads as the same pattern");
    require(write_pattern(*again) == written, "writing again gives the same bytes");
}

}  // namespace
}  // namespace dartwright::fuzzing

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    namespace fuzzing = dartwright::fuzzing;
    if (const auto pattern = fuzzing::pattern_of(fuzzing::as_text(data, size))) fuzzing::round_trip(*pattern);
    return 0;
}
