#include "dartwright/cutting/cutting_line.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/cutting/bridge.hpp"
#include "dartwright/cutting/clean_up.hpp"
#include "dartwright/cutting/fold_trim.hpp"
#include "dartwright/cutting/raw_line.hpp"
#include "dartwright/cutting/trimmed_places.hpp"
#include "dartwright/cutting/whole_edges.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/pattern/pattern_rules.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {
namespace {

Sentence reason_of(const std::string& piece, const std::string& edge, double width_mm, double limit_mm) {
    const Sentence what =
        "the allowance of " + quoted(edge) + " of " + quoted(piece) + ", " + width_told(width_mm) + ", ";
    if (!(width_mm >= 0 && std::isfinite(width_mm))) return what + "is no width";
    return what + "is more than " + measure_told(limit_mm) + ", half the smaller side of the piece";
}

Sentence remedy_of(double width_mm, double limit_mm) {
    if (!(width_mm >= 0 && std::isfinite(width_mm))) return "give it a width of 0 or more";
    return "the widest that works is " + most_told(limit_mm);
}

void refuse_gap(const Piece& piece, const Tolerances& tolerances) {
    const double gap = gap_of(piece.outline);
    if (gap <= tolerances.gap_mm) return;
    throw Impossible("the outline of " + quoted(piece.name) + " does not close, by " + difference_told(gap),
                     "close it first");
}

// NaN is none.
bool is_width(double mm) {
    return mm >= 0 && mm <= largest_length_mm;
}
constexpr const char* width_expected = "expected 0 or more, 10 m at most";

void refuse_bad_trimmings(const Piece& piece, const std::vector<DartTrimming>& trimmed) {
    for (const DartTrimming& trimming : trimmed) {
        dart_named(piece, trimming.dart);
        if (!is_width(trimming.width_mm)) {
            throw BadWords("the width left along the legs of " + quoted(trimming.dart) + ", " +
                           asked_told(trimming.width_mm) + ", is no width; " + width_expected);
        }
    }
}

void bridge_mouths(const Piece& piece, cutting::RawLine& raw, const CuttingRequest& request,
                   CuttingLine& line) {
    cutting::Bridged over = cutting::bridged(piece, raw, request);
    raw.line = std::move(over.line);
    line.darts = std::move(over.darts);
    std::move(over.notes.begin(), over.notes.end(), std::back_inserter(raw.notes));
}

// Its sides are numbered while they are cleaned, so that it is known afterwards which were trimmed.
cutting::SidedLine cleaned_and_told(const Piece& piece, const cutting::SidedLine& raw, CuttingLine& line) {
    cutting::SidedLine numbered = raw;
    for (std::size_t i = 0; i < numbered.size(); ++i) numbered.sides[i].item = i;
    cutting::SidedLine out = cutting::cleaned(piece, std::move(numbered));
    line.trimmed = cutting::trimmed_places(piece, raw, out);
    for (CutSide& side : out.sides) side = raw.sides[side.item];
    return out;
}

// Corners of runs that are one point are not asked for: their neighbours meet instead.
CuttingRequest with_corners_of(const Piece& of_length, const Piece& piece, CuttingRequest request) {
    const std::vector<Run> left = runs_of(of_length.outline);
    const std::vector<Run> all = runs_of(piece.outline);
    const auto is_gone = [&](const std::string& edge) {
        return find_run(all, edge) && !find_run(left, edge);
    };
    std::erase_if(request.corners, [&](const CornerRequest& corner) {
        return is_gone(corner.edges[0]) || is_gone(corner.edges[1]);
    });
    return request;
}

// Items keep the numbers that they have in the piece.
CuttingLine numbered_as_in_piece(CuttingLine line, const std::vector<std::size_t>& items) {
    for (CutSide& side : line.sides) side.item = items[side.item];
    for (CutDart& dart : line.darts) dart.item = items[dart.item];
    return line;
}

// Items of no length change nothing; they are left out.
CuttingLine cutting_line_of_length(const Piece& piece, const CuttingRequest& request) {
    const OutlineOfLength kept = without_empty_items(piece.outline);
    if (kept.items.size() == piece.outline.items.size()) {
        throw Impossible("the outline of " + quoted(piece.name) + " is one point", "draw its edges first");
    }
    Piece of_length = piece;
    of_length.outline = kept.outline;
    return numbered_as_in_piece(cutting_line(of_length, with_corners_of(of_length, piece, request)),
                                kept.items);
}

}  // namespace

BadWidth::BadWidth(std::string piece_, std::string edge_, double width_mm_, double limit_mm_)
    : Impossible(reason_of(piece_, edge_, width_mm_, limit_mm_), remedy_of(width_mm_, limit_mm_)),
      piece(std::move(piece_)),
      edge(std::move(edge_)),
      width_mm(width_mm_),
      limit_mm(limit_mm_) {}

NotCleaned::NotCleaned(std::string piece_)
    : Impossible("the allowances of " + quoted(piece_) +
                     " run into each other so that no simple line was found round it",
                 "make them narrower where the outline bends inwards or is thin"),
      piece(std::move(piece_)) {}

std::string to_text(CornerKind kind) {
    switch (kind) {
        case CornerKind::carried_on:
            return "carried on";
        case CornerKind::blunted:
            return "blunted";
        case CornerKind::squared:
            return "squared";
        case CornerKind::mirrored:
            return "mirrored";
        case CornerKind::met:
            break;
    }
    return "met";
}

void refuse_bad_undecided(std::optional<double> undecided_mm) {
    if (undecided_mm && !is_width(*undecided_mm))
        throw BadWords("the width of edges without an allowance, " + asked_told(*undecided_mm) +
                       ", is no width; " + width_expected);
}

CuttingLine cutting_line(const Piece& piece, const CuttingRequest& request) {
    const SoundEntry sound(piece, request.tolerances);
    refuse_bad_undecided(request.undecided_mm);
    refuse_gap(piece, request.tolerances);
    refuse_bad_trimmings(piece, request.trimmed);
    if (gap_of(piece.outline) > 0) {
        Piece closed = piece;
        closed.outline = with_gap_closed(closed.outline);
        return cutting_line(closed, request);
    }
    if (has_empty_items(piece.outline)) return cutting_line_of_length(piece, request);
    if (const auto whole = cutting::with_whole_edges(piece.outline)) {
        Piece of_whole = piece;
        of_whole.outline = whole->outline;
        return numbered_as_in_piece(cutting_line(of_whole, request), whole->items);
    }
    cutting::RawLine raw = cutting::raw_line(piece, request);
    CuttingLine line;
    if (!raw.mouths.empty()) bridge_mouths(piece, raw, request, line);
    // What a folded dart brings back may lie along the line.
    const bool may_have_spike = !raw.mouths.empty();
    line.is_cleaned = raw.is_crossing || (may_have_spike && cutting::has_spike(raw.line.points)) ||
                      !is_simple(raw.line.points);
    if (line.is_cleaned)
        raw.line = request.tells_trimmed ? cleaned_and_told(piece, raw.line, line)
                                         : cutting::cleaned(piece, std::move(raw.line));
    line.points = std::move(raw.line.points);
    line.sides = std::move(raw.line.sides);
    line.corners = std::move(raw.corners);
    line.undecided = std::move(raw.undecided);
    for (const Sentence& note : raw.notes) line.notes.push_back(note.in(request.unit));
    cutting::trim_at_fold(piece, line);
    return line;
}

std::string undecided_words(const CuttingLine& line) {
    std::vector<std::string> edges;
    for (const UndecidedStretch& stretch : line.undecided) {
        if (std::find(edges.begin(), edges.end(), stretch.edge) == edges.end()) edges.push_back(stretch.edge);
    }
    std::string list;
    for (const std::string& edge : edges) list += (list.empty() ? "" : ", ") + edge;
    return list.empty() ? "" : "no allowance is decided for " + list + ": there is none there";
}

}  // namespace dartwright
