// Any pattern that can be read can be checked, walked and measured, and its first dart can be moved or is
// refused; the pattern with the dart moved can be written, read and checked. Nothing but the exceptions
// that the operations document may come out.

#include <cmath>
#include <string>

#include "dartwright/checks/check.hpp"
#include "dartwright/checks/measure_line.hpp"
#include "dartwright/checks/walk.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/pattern/dart.hpp"
#include "fuzzing.hpp"
#include "json_mutation.hpp"

namespace dartwright::fuzzing {
namespace {

/// Quadratic work on larger inputs teaches the fuzzer nothing new.
constexpr std::size_t most_items = 200;

std::size_t items_in(const Pattern& pattern) {
    std::size_t count = pattern.seams.size();
    for (const Piece& piece : pattern.pieces)
        count += piece.outline.items.size() + piece.notches.size() + piece.marks.size();
    return count;
}

/// FNV-1a: choices that follow from the input alone.
std::uint64_t hash_of(std::string_view text) {
    std::uint64_t hash = 0xcbf29ce484222325U;
    for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
    return hash;
}

void require_sound(const CheckReport& report, const Pattern& pattern) {
    require(report.seams.size() == pattern.seams.size(), "every seam has a verdict");
    for (const Finding& finding : report.findings) {
        require(!finding.check.empty() && !finding.message.empty(), "a finding says what it is");
        for (const auto& number : {finding.measured, finding.expected, finding.difference, finding.allowed})
            require(!number || std::isfinite(*number), "a finding's numbers are finite");
    }
}

void walk_and_measure(const Pattern& pattern) {
    for (const Seam& seam : pattern.seams) {
        try {
            require(std::isfinite(walk_seam(pattern, seam.name).difference), "a difference is finite");
        } catch (const Impossible&) {  // an outline that does not close
        }
    }
    for (const Piece& piece : pattern.pieces) {
        require(std::isfinite(cloth_area(piece)), "an area is finite");
        for (const Run& run : runs_of(piece.outline)) {
            try {
                require(std::isfinite(measure_line(pattern, run.edge).total_mm), "a length is finite");
            } catch (const Impossible&) {
            }
        }
    }
}

std::optional<PivotRequest> request_for(const Pattern& pattern, std::uint64_t choice) {
    for (const Piece& piece : pattern.pieces) {
        for (const OutlineItem& item : piece.outline.items) {
            const DartItem* dart = item.as_dart();
            if (!dart) continue;
            const std::vector<Run> runs = runs_of(piece.outline);
            const Run& run = runs[choice % runs.size()];
            // A per cent never lies beyond the run.
            const std::string share = std::to_string(choice / 64 % 101) + "%";
            PivotRequest request;
            request.piece = piece.name;
            request.dart = dart->name;
            request.to = run.edge + "@" + share + "/" + name_of_end(run, RunEnd::start);
            if (choice / 8192 % 2 == 1) request.part.share = 0.5;
            if (choice / 16384 % 4 == 1) request.hold = run.edge;
            return request;
        }
    }
    return std::nullopt;
}

void move_first_dart(const Pattern& pattern, std::uint64_t choice) {
    const auto request = request_for(pattern, choice);
    if (!request) return;
    try {
        const PivotResult moved = pivot(pattern, *request);
        require_sound(check(moved.pattern), moved.pattern);
        const std::string written = write_pattern(moved.pattern);
        const auto again = pattern_of(written);
        require(again.has_value(), "a pattern with its dart moved can be read");
        require(write_pattern(*again) == written, "and is written the same");
    } catch (const Impossible&) {
    } catch (const UnknownName&) {
    } catch (const BadWords&) {
    }
}

}  // namespace
}  // namespace dartwright::fuzzing

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    namespace fuzzing = dartwright::fuzzing;
    const std::string_view text = fuzzing::as_text(data, size);
    const auto pattern = fuzzing::pattern_of(text);
    if (!pattern || fuzzing::items_in(*pattern) > fuzzing::most_items) return 0;
    fuzzing::require_sound(dartwright::check(*pattern), *pattern);
    fuzzing::walk_and_measure(*pattern);
    fuzzing::move_first_dart(*pattern, fuzzing::hash_of(text));
    return 0;
}
