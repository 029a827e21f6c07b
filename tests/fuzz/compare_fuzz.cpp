// Any pattern that can be read is compared with itself, of which everything is kept and nothing changed, and
// with two patterns of the fixtures, whatever there may be in common; every number that is told is finite.

#include <cmath>

#include "dartwright/comparing/compare.hpp"
#include "dartwright/pattern/errors.hpp"
#include "fuzzing.hpp"
#include "json_mutation.hpp"

namespace dartwright::fuzzing {
namespace {

constexpr std::size_t most_bytes = 16384;

const Pattern& known(const char* file) {
    static const Pattern body =
        read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/blocks/close-fitting.json");
    static const Pattern chorus =
        read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/workshop/chorus-bodice-inch.json");
    return file[0] == 'b' ? body : chorus;
}

void require_finite(const BeforeAfter& amount) {
    require(!amount.before || std::isfinite(*amount.before), "what was before is finite");
    require(!amount.after || std::isfinite(*amount.after), "what is after is finite");
}

void require_told(const std::vector<Loss>& losses) {
    for (const Loss& loss : losses) {
        require(!loss.what.empty() && !loss.message.empty(), "a loss says what it is");
        require_finite(loss.amount);
    }
}

void require_finite(const Comparison& comparison) {
    require_told(comparison.losses);
    require_told(comparison.changes);
    for (const ComparedPiece& piece : comparison.pieces) {
        require(std::isfinite(piece.turned_rad), "a turn is finite");
        for (const ComparedRun& run : piece.runs) require_finite(run.sewn_mm);
        for (const ComparedPart& part : piece.parts)
            require(std::isfinite(part.strays_mm), "a part lies somewhere");
    }
}

void compare_all(const Pattern& pattern) {
    const Comparison same = compare(pattern, pattern);
    require_finite(same);
    require(same.is_unchanged(), "nothing of a pattern is lost or changed beside itself");
    for (const char* file : {"body", "chorus"}) {
        require_finite(compare(known(file), pattern));
        require_finite(compare(pattern, known(file)));
    }
}

}  // namespace
}  // namespace dartwright::fuzzing

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    namespace fuzzing = dartwright::fuzzing;
    const auto pattern = fuzzing::pattern_within(fuzzing::most_bytes, data, size);
    if (!pattern) return 0;
    try {
        fuzzing::compare_all(*pattern);
    } catch (const dartwright::Impossible&) {  // an outline that does not close
    }
    return 0;
}
