// Any pattern that can be read can be drawn with its findings, as one picture at true size.

#include <cmath>

#include "dartwright/checks/check.hpp"
#include "dartwright/drawing/pattern_drawing.hpp"
#include "dartwright/drawing/svg_writer.hpp"
#include "fuzzing.hpp"
#include "json_mutation.hpp"

namespace dartwright::fuzzing {
namespace {

/// Words are put where they meet no line: words times lines, which larger inputs only repeat.
constexpr std::size_t most_bytes = 4096;

void draw(const Pattern& pattern) {
    DrawOptions options;
    options.findings = check(pattern).findings;
    const Drawing drawing = draw_pattern(pattern, options);
    require(std::isfinite(drawing.width_mm) && drawing.width_mm > 0, "a sheet has a width");
    require(std::isfinite(drawing.height_mm) && drawing.height_mm > 0, "a sheet has a height");
    require(to_svg(drawing).find("</svg>") != std::string::npos, "a picture has an end");
}

}  // namespace
}  // namespace dartwright::fuzzing

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    namespace fuzzing = dartwright::fuzzing;
    if (const auto pattern = fuzzing::pattern_within(fuzzing::most_bytes, data, size))
        fuzzing::draw(*pattern);
    return 0;
}
