// Covered by tests/drawing/sound_entry_test.cpp and tests/files/pattern_reader_test.cpp.
#include "dartwright/pattern/put_right.hpp"

#include <algorithm>

#include "dartwright/pattern/outline_direction.hpp"
#include "dartwright/pattern/piece_problems.hpp"

namespace dartwright {
namespace {

std::map<std::string, CornerIs> with_names_swapped(const std::map<std::string, CornerIs>& ends) {
    std::map<std::string, CornerIs> out;
    for (const auto& [name, corner] : ends) out.emplace(with_ends_swapped(name), corner);
    return out;
}

// Whether its direction may be asked: a broken outline stays as it is.
bool is_to_be_turned(const Piece& piece, double largest_mm) {
    Piece bare;
    bare.name = "piece";
    bare.outline = piece.outline;
    ProblemList list;
    list.largest_mm = largest_mm;
    look_at_piece(list, Step{}, bare);
    // With a spline whose points fall together, or a number that is none, nothing can be said of direction.
    return std::any_of(list.problems.begin(), list.problems.end(),
                       [](const PatternProblem& problem) { return problem.pointer == "/outline"; });
}

void turn(Piece& piece) {
    piece.outline = reversed(piece.outline);
    if (piece.cut) piece.cut->ends = with_names_swapped(piece.cut->ends);
    for (Notch& notch : piece.notches) notch.from = with_ends_swapped(notch.from);
    for (auto& [edge, allowance] : piece.allowance)
        if (auto* stretches = std::get_if<std::vector<AllowanceStretch>>(&allowance))
            for (AllowanceStretch& stretch : *stretches) stretch.from = with_ends_swapped(stretch.from);
}

/// The words for ends change places with a run that has its neighbours of one name.
bool has_ends_of_one_name(const Piece& piece, const std::string& edge) {
    const std::vector<std::string_view> edges = edges_of(piece.outline);
    const auto names = stretches_of(edges).names;
    const auto at = std::find(names.begin(), names.end(), edge);
    if (at == names.end()) return false;
    const std::size_t run = static_cast<std::size_t>(at - names.begin());
    return names[(run + names.size() - 1) % names.size()] == names[(run + 1) % names.size()];
}

void turn_ends(Seam& seam, const Pattern& pattern, const NameTable& pieces,
               const std::vector<bool>& is_turned) {
    bool are_swapped = false;
    for (SeamSide& side : seam.joins) {
        for (SeamPart& part : side) {
            const auto piece = pieces.find(part.piece);
            if (!piece || !is_turned[*piece]) continue;
            part.from = with_ends_swapped(part.from);
            are_swapped = are_swapped ||
                          (!seam.ends.empty() && has_ends_of_one_name(pattern.pieces[*piece], part.edge));
        }
    }
    if (are_swapped) seam.ends = with_names_swapped(seam.ends);
}

}  // namespace

Pattern put_right_within(Pattern pattern, double largest_mm) {
    std::vector<bool> is_turned;
    NameTable pieces;
    for (Piece& piece : pattern.pieces) {
        is_turned.push_back(is_to_be_turned(piece, largest_mm));
        pieces.add(piece.name);
        if (is_turned.back()) turn(piece);
    }
    if (std::find(is_turned.begin(), is_turned.end(), true) != is_turned.end())
        for (Seam& seam : pattern.seams) turn_ends(seam, pattern, pieces, is_turned);
    return pattern;
}

Pattern put_right(Pattern pattern) {
    return put_right_within(std::move(pattern), largest_length_mm);
}

}  // namespace dartwright
