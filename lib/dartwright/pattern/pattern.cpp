#include "dartwright/pattern/pattern.hpp"

namespace dartwright {
namespace {

template <typename Things>
std::vector<std::string> names_of(const Things& things) {
    std::vector<std::string> out;
    for (const auto& thing : things) out.push_back(thing.name);
    return out;
}

}  // namespace

std::size_t piece_index(const Pattern& pattern, const std::string& name) {
    for (std::size_t i = 0; i < pattern.pieces.size(); ++i) {
        if (pattern.pieces[i].name == name) return i;
    }
    throw UnknownName("piece", name, names_of(pattern.pieces), "the pattern");
}

const Piece& piece_named(const Pattern& pattern, const std::string& name) {
    return pattern.pieces[piece_index(pattern, name)];
}

const Run& run_named(const std::vector<Run>& runs, const std::string& edge, const std::string& piece) {
    if (const Run* run = find_run(runs, edge)) return *run;
    std::vector<std::string> known;
    for (const Run& run : runs) known.push_back(run.edge);
    throw UnknownName("edge", edge, known, "piece \"" + piece + "\"");
}

std::size_t dart_named(const Piece& piece, const std::string& name) {
    if (const auto index = find_dart(piece, name)) return *index;
    std::vector<std::string> known;
    for (const OutlineItem& item : piece.outline.items) {
        if (const DartItem* dart = item.as_dart()) known.push_back(dart->name);
    }
    throw UnknownName("dart", name, known, "piece \"" + piece.name + "\"");
}

const Seam& seam_named(const Pattern& pattern, const std::string& name) {
    for (const Seam& seam : pattern.seams) {
        if (seam.name == name) return seam;
    }
    throw UnknownName("seam", name, names_of(pattern.seams), "the pattern");
}

}  // namespace dartwright
