// Covered by tests/drawing/sound_entry_test.cpp and tests/files/pattern_reader_test.cpp.
#include "dartwright/pattern/known_runs.hpp"

namespace dartwright {

std::vector<std::string_view> edges_of(const Outline& outline) {
    std::vector<std::string_view> edges;
    edges.reserve(outline.items.size());
    for (const OutlineItem& item : outline.items)
        if (const EdgeItem* edge = item.as_edge()) edges.emplace_back(edge->edge);
    return edges;
}

PerhapsComplaint trouble_of_end(const KnownRuns& runs, const std::string& edge, const std::string& from) {
    const auto run = runs.is_sound ? runs.names.find(edge) : std::nullopt;
    if (!run) return std::nullopt;
    const auto [before, after] = runs.neighbours(*run);
    // The names are copied where they do not simply agree.
    if (before != after && (from == before || from == after)) return std::nullopt;
    return end_trouble(from, edge, std::string(before), std::string(after));
}

void look_for_edge(ProblemList& to, const Step& at, const KnownRuns& runs, const std::string& edge) {
    if (!to.name(at, edge) || !runs.is_sound || runs.names.find(edge)) return;
    to.add(at, not_existing("edge", edge, runs.known()));
}

void look_at_end(ProblemList& to, const Step& at, const KnownRuns& runs, const std::string& edge,
                 const std::string& from) {
    if (to.name(at, from)) to.add(at, trouble_of_end(runs, edge, from));
}

}  // namespace dartwright
