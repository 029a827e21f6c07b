#include "dartwright/checks/dart_finding.hpp"

#include <algorithm>

namespace dartwright {
namespace {

// The run that a dart interrupts, or none for a dart in a corner.
std::string edge_of_dart(const PieceContext& piece, std::size_t item) {
    for (const Run& run : piece.runs) {
        if (std::find(run.darts.begin(), run.darts.end(), item) != run.darts.end()) return run.edge;
    }
    return "";
}

}  // namespace

const DartItem& dart_at(const PieceContext& piece, std::size_t item) {
    return *piece.outline().items[item].as_dart();
}

Finding finding_on_dart(const PieceContext& piece, std::size_t item, const char* check) {
    Finding finding;
    finding.check = check;
    finding.piece = piece.name();
    finding.dart = dart_at(piece, item).name;
    finding.edge = edge_of_dart(piece, item);
    return finding;
}

std::vector<std::string> command_for_dart(const char* operation, const Finding& finding,
                                          const std::vector<std::string>& how) {
    std::vector<std::string> words{operation, "--piece", finding.piece, "--dart", finding.dart};
    words.insert(words.end(), how.begin(), how.end());
    return words;
}

std::string subject(const Finding& finding) {
    return finding.piece + ", " + finding.dart + ": ";
}

PlacedFinding placed(const Finding& finding, const PieceContext& piece, std::size_t item) {
    return {finding, piece.index, item, 0};
}

}  // namespace dartwright
