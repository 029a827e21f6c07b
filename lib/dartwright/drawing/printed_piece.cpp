#include "dartwright/drawing/printed_piece.hpp"

#include "dartwright/cutting/cutting_line.hpp"
#include "dartwright/drawing/piece_lines.hpp"
#include "dartwright/drawing/piece_words.hpp"
#include "dartwright/drawing/table_look.hpp"

namespace dartwright {

namespace {

void take_lines(TakenPlaces& taken, const DrawnGroup& group) {
    for (const DrawnItem& item : group.items)
        if (const DrawnPath* path = std::get_if<DrawnPath>(&item)) taken.add(*path);
    for (const DrawnGroup& inner : group.groups) take_lines(taken, inner);
}

DrawnGroup cutting_layer(const CuttingLine& line) {
    DrawnPath path = polyline(line.points, look::outline_stroke());
    path.curves.push_back(Line{line.points.back(), line.points.front()});
    path.is_closed = true;
    return {"cutting line", {path}, {}};
}

}  // namespace

PrintedPiece printed_piece(const Piece& piece, const Pattern& pattern) {
    CuttingRequest request;
    request.tolerances = tolerances_of(pattern);
    const CuttingLine line = cutting_line(piece, request);
    const std::vector<Run> runs = runs_of(piece.outline);
    const Stroke stitching{look::ink, look::thin_width, {4, 2}};
    TakenPlaces taken;
    PrintedPiece printed{piece.name, {piece.name, {}, {}}, line.points, pi / 2};
    for (DrawnGroup layer :
         {mark_lines(piece), cutting_layer(line), outline_lines(piece, stitching), dart_lines(piece),
          notch_lines(piece, runs), grain_lines(piece), fold_lines(piece, runs)}) {
        take_lines(taken, layer);
        printed.drawing.groups.push_back(std::move(layer));
    }
    printed.drawing.groups.push_back(words_of(piece, runs, {true, true, pattern.unit}, taken));
    if (piece.grain) printed.grain_rad = angle_from({1, 0}, piece.grain->to - piece.grain->from);
    return printed;
}

}  // namespace dartwright
