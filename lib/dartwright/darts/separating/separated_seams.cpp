#include "dartwright/darts/separating/separated_seams.hpp"

#include <algorithm>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/separating/separated_contents.hpp"
#include "dartwright/words/notes.hpp"

namespace dartwright {
namespace {

RunEnd other(RunEnd end) {
    return end == RunEnd::start ? RunEnd::end : RunEnd::start;
}

SeamSide separated_side(const SeamSide& side, const Separation& s, const SeparatedNames& names) {
    SeamSide out;
    for (const SeamPart& part : side) {
        if (part.piece != names.whole) {
            out.push_back(part);
            continue;
        }
        const RunEnd from = end_named(*find_run(s.whole_runs, part.edge), part.from).value_or(RunEnd::start);
        std::vector<PartOfRun> parts = parts_of_run(s, part.edge);
        if (from == RunEnd::end) std::reverse(parts.begin(), parts.end());
        for (const PartOfRun& each : parts) {
            out.push_back({names.parts[each.part], part.edge, name_of_end(*each.run, from), part.mirrored});
        }
    }
    return out;
}

bool is_new_edge(const Separation& s, const std::string& edge) {
    const auto has = [&](const SeparatedPart& part) {
        return std::find(part.seam_edges.begin(), part.seam_edges.end(), edge) != part.seam_edges.end();
    };
    return has(s.parts[0]) || has(s.parts[1]);
}

// Where the new seam ends in a corner of the whole, three parts meet: what crosses the old seam there runs on
// over the new one, which two sides cannot tell.
void free_corners_of_three(std::map<std::string, CornerIs>& ends, const SeamPart& part, const Separation& s,
                           Notes notes, const std::string& seam) {
    for (const RunEnd end : {RunEnd::start, RunEnd::end}) {
        const std::string there = end_in_part(s, part.edge, end);
        if (!is_new_edge(s, there) || !ends.emplace(there, CornerIs::free).second) continue;
        notes.push_back("three parts meet where the seam " + quoted(seam) + " ends at " + quoted(there) +
                        "; that corner is not judged");
    }
}

// Corners that were said to be free, by the names that their neighbours have now.
std::map<std::string, CornerIs> separated_ends(const Seam& seam, const Separation& s,
                                               const SeparatedNames& names, const Pattern& pattern,
                                               Notes notes) {
    std::map<std::string, CornerIs> ends;
    for (const auto& [name, corner] : seam.ends) {
        for (const SeamSide& side : seam.joins) {
            for (const SeamPart& part : side) {
                const bool is_whole = part.piece == names.whole;
                const std::vector<Run> runs =
                    is_whole ? s.whole_runs : runs_of(piece_named(pattern, part.piece).outline);
                const auto end = end_named(run_named(runs, part.edge, part.piece), name);
                if (end) ends.emplace(is_whole ? end_in_part(s, part.edge, *end) : name, corner);
            }
        }
    }
    for (const SeamSide& side : seam.joins) {
        for (const SeamPart& part : side) {
            if (part.piece == names.whole) free_corners_of_three(ends, part, s, notes, seam.name);
        }
    }
    return ends;
}

SeamSide side_of_part(const Separation& s, const SeparatedNames& names, std::size_t part) {
    const RunEnd from = part == 0 ? RunEnd::end : RunEnd::start;
    SeamSide side;
    for (const std::string& edge : s.parts[part].seam_edges) {
        const Run& run = *find_run(s.parts[part].runs, edge);
        side.push_back({names.parts[part], edge, name_of_end(run, from), false});
    }
    return side;
}

}  // namespace

Seam separated_seam(const Seam& seam, const Separation& s, const SeparatedNames& names,
                    const Pattern& pattern, Notes notes) {
    Seam out = seam;
    for (std::size_t k = 0; k < 2; ++k) out.joins[k] = separated_side(seam.joins[k], s, names);
    out.ends = separated_ends(seam, s, names, pattern, notes);
    return out;
}

Seam seam_between_parts(const Separation& s, const SeparatedNames& names) {
    Seam out;
    out.name = names.seam;
    out.joins[0] = side_of_part(s, names, names.first);
    out.joins[1] = side_of_part(s, names, 1 - names.first);
    for (std::size_t k = 0; k < 2; ++k) {
        const RunEnd from = k == 0 ? RunEnd::end : RunEnd::start;
        const Run& at_dart = *find_run(s.parts[k].runs, s.parts[k].seam_edges.front());
        const Run& at_target = *find_run(s.parts[k].runs, s.parts[k].seam_edges.back());
        if (s.is_dart_in_corner) out.ends.emplace(name_of_end(at_dart, from), CornerIs::free);
        if (s.is_target_in_corner) out.ends.emplace(name_of_end(at_target, other(from)), CornerIs::free);
    }
    return out;
}

}  // namespace dartwright
