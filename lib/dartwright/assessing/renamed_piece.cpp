#include "dartwright/assessing/renamed_piece.hpp"

namespace dartwright {
namespace {

void rename(std::string& name, const std::map<std::string, std::string>& names) {
    const auto found = names.find(name);
    if (found != names.end()) name = found->second;
}

}  // namespace

Piece with_edges_renamed(Piece piece, const std::map<std::string, std::string>& names) {
    for (OutlineItem& item : piece.outline.items) {
        if (EdgeItem* edge = item.as_edge()) rename(edge->edge, names);
        if (DartItem* dart = item.as_dart()) rename(dart->press, names);
    }
    for (DoubleDart& dart : piece.double_darts) rename(dart.press, names);
    for (Notch& notch : piece.notches) {
        rename(notch.edge, names);
        rename(notch.from, names);
    }
    for (auto& [edge, allowance] : piece.allowance) {
        rename(edge, names);
        if (auto* stretches = std::get_if<std::vector<AllowanceStretch>>(&allowance))
            for (AllowanceStretch& each : *stretches) rename(each.from, names);
    }
    if (piece.grain) rename(piece.grain->along, names);
    if (!piece.cut) return piece;
    rename(piece.cut->fold, names);
    rename(piece.cut->second_fold, names);
    std::map<std::string, CornerIs> ends;
    for (const auto& [end, corner] : piece.cut->ends) {
        std::string name = end;
        rename(name, names);
        ends.emplace(name, corner);
    }
    piece.cut->ends = std::move(ends);
    return piece;
}

}  // namespace dartwright
