// Any chain of up to five operations on a pattern that can be read, with names, places and numbers made from
// the input, is done or refused with the exceptions that the operations document. What comes out can be
// checked, written and read again to the same bytes, and its list of operations can be replayed to them.

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <limits>
#include <sstream>
#include <string>
#include <vector>

#include "dartwright/checks/check.hpp"
#include "dartwright/darts/close_flare.hpp"
#include "dartwright/darts/close_gathers.hpp"
#include "dartwright/darts/close_seam.hpp"
#include "dartwright/darts/close_tuck.hpp"
#include "dartwright/darts/cluster.hpp"
#include "dartwright/darts/merge.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/replay.hpp"
#include "dartwright/darts/repoint.hpp"
#include "dartwright/darts/split.hpp"
#include "dartwright/darts/true_dart.hpp"
#include "dartwright/darts/true_edge.hpp"
#include "dartwright/darts/true_seam.hpp"
#include "fuzzing.hpp"

namespace dartwright::fuzzing {
namespace {

constexpr std::size_t most_operations = 5;

std::vector<Pattern> patterns_of_folder(const std::filesystem::path& folder) {
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
        files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    std::vector<Pattern> patterns;
    for (const std::filesystem::path& file : files) {
        std::ostringstream text;
        text << std::ifstream(file).rdbuf();
        auto pattern = file.extension() == ".json" ? pattern_of(text.str()) : std::nullopt;
        if (pattern && !pattern->pieces.empty()) patterns.push_back(std::move(*pattern));
    }
    return patterns;
}

// Those of the fixtures and of the seeds that can be read.
const std::vector<Pattern>& known_patterns() {
    static const std::vector<Pattern> patterns = [] {
        std::vector<Pattern> all = patterns_of_folder(DARTWRIGHT_SOURCE_DIR "/fixtures");
        for (Pattern& more : patterns_of_folder(DARTWRIGHT_SOURCE_DIR "/tests/fuzz/seeds"))
            all.push_back(std::move(more));
        require(all.size() > 20, "the fixtures are found");
        return all;
    }();
    return patterns;
}

// The input, taken byte by byte; nothing but zeros behind its end.
class Choices {
  public:
    explicit Choices(std::string_view bytes) : rest_(bytes) {}
    std::size_t below(std::size_t count) {
        const std::size_t value = byte() | (count > 256 ? byte() << 8 : 0);
        return count == 0 ? 0 : value % count;
    }
    bool one_in(std::size_t count) { return below(count) == count - 1; }
    bool is_at_end() const { return rest_.empty(); }
    std::string bytes(std::size_t count) {
        const std::string taken(rest_.substr(0, count));
        rest_.remove_prefix(taken.size());
        return taken;
    }
    /// Text of 7 bits: names that are not UTF-8 are no names.
    std::string text(std::size_t count) {
        std::string taken = bytes(count);
        for (char& c : taken) c = static_cast<char>(c & 0x7f);
        return taken;
    }
    /// From a list, or now and then any text.
    std::string from(const std::vector<std::string>& names) {
        if (names.empty() || one_in(32)) return text(below(9));
        return names[below(names.size())];
    }
    /// Such as a cutter asks for, or now and then one that nobody does.
    double number(double high) {
        static constexpr double odd[] = {0,
                                         -1,
                                         1e-300,
                                         1e-9,
                                         1e5,
                                         1e300,
                                         std::numeric_limits<double>::infinity(),
                                         std::numeric_limits<double>::quiet_NaN()};
        if (one_in(16)) return odd[below(std::size(odd))];
        return high * static_cast<double>(below(65536)) / 65535;
    }
    std::optional<double> maybe(double high) {
        if (!one_in(4)) return std::nullopt;
        return number(high);
    }

  private:
    std::size_t byte() {
        if (rest_.empty()) return 0;
        const auto value = static_cast<unsigned char>(rest_.front());
        rest_.remove_prefix(1);
        return value;
    }
    std::string_view rest_;
};

// What there is to ask about: the names of one piece of the pattern, and the choices among them.
struct Asked {
    Choices& choices;
    const Piece& piece;
    std::vector<Run> runs;
    std::vector<std::string> edges;
    std::vector<std::string> darts;

    Asked(Choices& from, const Piece& of) : choices(from), piece(of), runs(runs_of(of.outline)) {
        for (const Run& run : runs) edges.push_back(run.edge);
        for (const OutlineItem& item : piece.outline.items) {
            if (item.as_dart()) darts.push_back(item.as_dart()->name);
        }
        for (const DoubleDart& dart : piece.double_darts) darts.push_back(dart.name);
    }
    std::string piece_name() { return choices.one_in(64) ? choices.text(3) : piece.name; }
    std::string dart() { return choices.from(darts); }
    std::string edge() { return choices.from(edges); }
    std::string no_or_edge() { return choices.one_in(4) ? edge() : std::string(); }
    std::string no_or_name() {
        return choices.one_in(4) ? choices.text(1 + choices.below(12)) : std::string();
    }
    std::string place() {
        if (runs.empty() || choices.one_in(32)) return choices.text(choices.below(24));
        const Run& run = runs[choices.below(runs.size())];
        const std::string from = name_of_end(run, choices.one_in(2) ? RunEnd::end : RunEnd::start);
        if (choices.one_in(8))
            return run.edge + "@" + std::to_string(choices.number(run.length)) + "/" + from;
        return run.edge + "@" + std::to_string(choices.below(101)) + "%/" + from;
    }
};

Pattern pivoted(const Pattern& pattern, Asked& ask) {
    PivotRequest request;
    request.piece = ask.piece_name();
    request.dart = ask.dart();
    request.to = ask.place();
    request.part.share = ask.choices.maybe(1);
    // Of degrees, as an angle is written in the list: other radians may be one unit in the last place off.
    if (ask.choices.one_in(8)) request.part.angle_rad = radians(ask.choices.number(30));
    if (ask.choices.one_in(8)) request.part.intake_mm = ask.choices.maybe(40);
    request.back_off_mm = ask.choices.maybe(60);
    request.hold = ask.no_or_edge();
    request.name = ask.no_or_name();
    request.press = ask.no_or_edge();
    if (ask.choices.one_in(4)) request.centre_seam = "centre seam";
    return pivot(pattern, request).pattern;
}

Pattern divided(const Pattern& pattern, Asked& ask) {
    SplitRequest request;
    request.piece = ask.piece_name();
    request.dart = ask.dart();
    for (std::size_t i = ask.choices.below(4); i > 0; --i) {
        const std::string place = ask.place();
        request.places.push_back({place, ask.choices.number(0.7), ask.no_or_name(), ask.no_or_edge()});
    }
    request.back_off_mm = ask.choices.maybe(60);
    request.hold = ask.no_or_edge();
    return split(pattern, request).pattern;
}

Pattern merged(const Pattern& pattern, Asked& ask) {
    MergeRequest request;
    request.piece = ask.piece_name();
    request.dart = ask.dart();
    request.with = ask.dart();
    request.hold = ask.no_or_edge();
    request.name = ask.no_or_name();
    return merge(pattern, request).pattern;
}

Pattern seamed(const Pattern& pattern, Asked& ask) {
    CloseSeamRequest request;
    request.piece = ask.piece_name();
    request.dart = ask.dart();
    (ask.choices.one_in(2) ? request.with : request.to) = ask.choices.one_in(2) ? ask.dart() : ask.place();
    request.first_name = ask.no_or_name();
    request.second_name = ask.no_or_name();
    request.seam = ask.no_or_name();
    request.hold = ask.no_or_edge();
    request.round_mm = ask.choices.maybe(80);
    if (ask.choices.one_in(4)) request.notch_mm = ask.choices.number(100);
    return close_as_seam(pattern, request).pattern;
}

Pattern closed(const Pattern& pattern, Asked& ask) {
    const std::string piece = ask.piece_name();
    const std::string dart = ask.dart();
    switch (ask.choices.below(4)) {
        case 0: {
            CloseFlareRequest request{piece, dart, ask.place(), ask.no_or_edge()};
            request.span_mm = ask.choices.maybe(150).value_or(request.span_mm);
            return close_as_flare(pattern, request).pattern;
        }
        case 1: {
            CloseGathersRequest request{piece, dart,
                                        ask.choices.one_in(2) ? TakenIn::ease : TakenIn::gathers};
            request.span_mm = ask.choices.maybe(150).value_or(request.span_mm);
            return close_as_gathers(pattern, request).pattern;
        }
        case 2:
            return close_as_tuck(pattern, {piece, dart, ask.choices.maybe(200)}).pattern;
        default:
            return seamed(pattern, ask);
    }
}

Pattern clustered(const Pattern& pattern, Asked& ask) {
    ClusterRequest request;
    request.piece = ask.piece_name();
    request.dart = ask.dart();
    request.count = static_cast<int>(ask.choices.below(6));
    request.apart_mm = ask.choices.number(40);
    if (ask.choices.one_in(2)) request.to = ask.place();
    request.lies = ask.choices.one_in(2) ? ClusterLies::parallel : ClusterLies::radiating;
    request.press = ask.no_or_edge();
    request.hold = ask.no_or_edge();
    return cluster(pattern, request).pattern;
}

Pattern seam_trued(const Pattern& pattern, Asked& ask) {
    std::vector<std::string> seams;
    std::vector<std::string> pieces{"both", "1", "2"};
    for (const Seam& seam : pattern.seams) seams.push_back(seam.name);
    for (const Piece& piece : pattern.pieces) pieces.push_back(piece.name);
    TrueSeamRequest request{ask.choices.from(seams), ask.edge()};
    if (ask.choices.one_in(2)) request.move = ask.choices.from(pieces);
    request.span_mm = ask.choices.maybe(100).value_or(request.span_mm);
    return true_seam(pattern, request).pattern;
}

Pattern trued(const Pattern& pattern, Asked& ask) {
    if (ask.choices.one_in(3)) return seam_trued(pattern, ask);
    if (ask.choices.one_in(2)) {
        TrueEdgeRequest request{ask.piece_name(), ask.edge()};
        request.span_mm = ask.choices.maybe(100).value_or(request.span_mm);
        return true_edge(pattern, request).pattern;
    }
    TrueDartRequest request{ask.piece_name(), ask.dart()};
    request.legs = static_cast<TrueLegs>(ask.choices.below(4));
    request.span_mm = ask.choices.maybe(100).value_or(request.span_mm);
    return true_dart(pattern, request).pattern;
}

Pattern repointed(const Pattern& pattern, Asked& ask) {
    RepointRequest request;
    request.piece = ask.piece_name();
    request.dart = ask.dart();
    const Point near{ask.choices.number(500), ask.choices.number(500)};
    if (ask.choices.one_in(2)) request.back_off_mm = ask.choices.number(60);
    if (ask.choices.one_in(3)) request.point = near;
    if (ask.choices.one_in(3)) request.pivot = near;
    return repoint(pattern, request).pattern;
}

Pattern operated(const Pattern& pattern, Choices& choices) {
    const Piece piece = pattern.pieces[choices.below(pattern.pieces.size())];
    Asked ask(choices, piece);
    switch (choices.below(10)) {
        case 0:
        case 1:
            return pivoted(pattern, ask);
        case 2:
        case 3:
            return divided(pattern, ask);
        case 4:
            return merged(pattern, ask);
        case 5:
            return closed(pattern, ask);
        case 6:
            return trued(pattern, ask);
        case 7:
            return repointed(pattern, ask);
        case 8:
            return clustered(pattern, ask);
        default:
            return open(pattern, {ask.piece_name()}).pattern;
    }
}

// The documented refusals leave the pattern as it is.
Pattern operated_or_as_it_is(const Pattern& pattern, Choices& choices) {
    try {
        return operated(pattern, choices);
    } catch (const Impossible&) {
    } catch (const UnknownName&) {
    } catch (const BadWords&) {
    }
    return pattern;
}

std::string require_file(const Pattern& pattern) {
    std::string written = write_pattern(pattern);
    const auto again = pattern_of(written);
    require(again.has_value(), "what an operation made can be read");
    require(write_pattern(*again) == written, "and is written the same");
    return written;
}

}  // namespace
}  // namespace dartwright::fuzzing

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    namespace fuzzing = dartwright::fuzzing;
    fuzzing::Choices choices(fuzzing::as_text(data, size));
    const std::vector<dartwright::Pattern>& known = fuzzing::known_patterns();
    const dartwright::Pattern& block = known[choices.below(known.size())];
    dartwright::Pattern pattern = block;
    for (std::size_t i = 0; i < fuzzing::most_operations && !choices.is_at_end(); ++i) {
        const std::size_t done = pattern.made.size();
        pattern = fuzzing::operated_or_as_it_is(pattern, choices);
        if (pattern.made.size() == done) continue;
        dartwright::check(pattern);
        fuzzing::require_file(pattern);
    }
    if (pattern.made.size() == block.made.size()) return 0;
    const dartwright::Pattern again = dartwright::replay(block, pattern.made).pattern;
    fuzzing::require(dartwright::write_pattern(again) == dartwright::write_pattern(pattern),
                     "replayed from its block it is the same");
    return 0;
}
