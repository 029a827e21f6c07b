// Covered by tests/drawing/sound_entry_test.cpp and tests/files/pattern_reader_test.cpp.
#include "dartwright/pattern/seam_problems.hpp"

#include <algorithm>

#include "dartwright/pattern/outline_direction.hpp"

namespace dartwright {
namespace {

void look_at_part(ProblemList& to, const Step& at, const SeamPart& part, const NameTable& pieces,
                  const std::vector<KnownRuns>& runs) {
    const Step named = under(at, "piece");
    const auto piece = pieces.find(part.piece);
    if (to.name(named, part.piece) && !piece)
        to.add(named, not_existing("piece", part.piece, {pieces.names().begin(), pieces.names().end()}));
    const KnownRuns none;
    const KnownRuns& known = piece ? runs[*piece] : none;
    look_for_edge(to, under(at, "edge"), known, part.edge);
    look_at_end(to, under(at, "from"), known, part.edge, part.from);
}

void look_at_seam_ends(ProblemList& to, const Step& at, const Seam& seam, const NameTable& pieces,
                       const std::vector<KnownRuns>& runs) {
    std::vector<std::string> known;
    for (const SeamSide& side : seam.joins) {
        if (side.empty()) return;
        for (const SeamPart& part : side) {
            const auto piece = pieces.find(part.piece);
            const auto run =
                piece && runs[*piece].is_sound ? runs[*piece].names.find(part.edge) : std::nullopt;
            if (!run) return;
            for (const std::string_view name : runs[*piece].neighbours(*run))
                if (std::find(known.begin(), known.end(), name) == known.end()) known.emplace_back(name);
        }
    }
    for (const auto& [name, corner] : seam.ends)
        if (!is_end_word(name) && std::find(known.begin(), known.end(), name) == known.end())
            to.add(under(at, name), not_next_to_seam(name, known));
}

}  // namespace

void look_at_seam(ProblemList& to, const Step& at, const Seam& seam, const NameTable& pieces,
                  const std::vector<KnownRuns>& runs) {
    to.seam = seam.name;
    to.name(under(at, "name"), seam.name);
    const Step joins = under(at, "joins");
    for (std::size_t s = 0; s < seam.joins.size(); ++s) {
        const SeamSide& side = seam.joins[s];
        const Step step = under(joins, s);
        const std::string what = wanted_of_parts(side.size());
        if (!what.empty()) to.add(step, "an empty list", what);
        to.entries(step, side.size());
        // A side of one part is written without a list.
        for (std::size_t i = 0; i < side.size(); ++i)
            look_at_part(to, side.size() == 1 ? step : under(step, i), side[i], pieces, runs);
    }
    if (seam.ease) {
        const Step ease = under(at, "ease");
        to.wanted(under(ease, "side"), wanted_instead_of_whole(seam.ease->side, 1, 2), seam.ease->side);
        to.length(under(ease, "amount"), seam.ease->amount);
    }
    if (!seam.ends.empty()) look_at_seam_ends(to, under(at, "ends"), seam, pieces, runs);
    to.seam.clear();
}

}  // namespace dartwright
