#include "dartwright/assessing/operation_deeds.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/comparing/compared_darts.hpp"
#include "dartwright/comparing/compared_separation.hpp"
#include "dartwright/darts/replay.hpp"
#include "dartwright/pattern/dart.hpp"

namespace dartwright {
namespace {

ClosedDart closed_at(const std::string& piece, const ComparedDart& dart, const std::vector<Run>& runs) {
    const Run* run = find_run(runs, dart.before->edge);
    ClosedDart out{piece, dart.name, dart.before->edge, 0, dart.before->angle_rad};
    if (!run) return out;
    out.distance_mm = dart.before->share * run->length;
    out.to_end_mm = run->length - out.distance_mm;
    return out;
}

// Of a dart that both have, wherever it stands.
bool is_drawn_otherwise(const ComparedDart& dart, const Tolerances& tolerances) {
    return std::abs(dart.before->angle_rad - dart.after->angle_rad) > radians(tolerances.grain_deg) ||
           std::abs(dart.before->intake_mm - dart.after->intake_mm) > tolerances.notch_mm ||
           std::abs(dart.before->back_off_mm - dart.after->back_off_mm) > tolerances.notch_mm;
}

// What is drawn anew stands where it stood: an edge that grows by it shifts what it carries, and moves none.
bool draws_anew(const Made& operation) {
    return operation.operation == "true" || operation.operation == "repoint";
}

// Darts that are as they were elsewhere along an edge that grew come into `shifted`.
void add_deeds(OperationDeeds& deeds, std::vector<TouchedDart>& shifted, const Made& operation,
               const PieceBothWays& both, const Tolerances& tolerances) {
    const std::string& piece = both.before.piece.name;
    for (ComparedDart dart : compared_darts(both, tolerances)) {
        if (draws_anew(operation) && dart.change == DartChange::moved) {
            dart.change = is_drawn_otherwise(dart, tolerances) ? DartChange::changed : DartChange::kept;
            if (dart.change == DartChange::kept) shifted.push_back({piece, dart.name, false});
        }
        const bool is_new = dart.change == DartChange::moved || dart.change == DartChange::opened;
        if (is_new || dart.change == DartChange::changed) deeds.touched.push_back({piece, dart.name, is_new});
        if (dart.change == DartChange::moved || dart.change == DartChange::gone)
            deeds.closed.push_back(closed_at(piece, dart, both.before.runs));
    }
}

const Piece* named(const Pattern& pattern, const std::string& name) {
    const auto found = std::find_if(pattern.pieces.begin(), pattern.pieces.end(),
                                    [&](const Piece& each) { return each.name == name; });
    return found == pattern.pieces.end() ? nullptr : &*found;
}

std::vector<ShapedPiece> new_pieces(const PatternStep& step, const Tolerances& tolerances) {
    std::vector<ShapedPiece> out;
    for (const Piece& piece : step.after.pieces)
        if (!named(step.before, piece.name)) out.push_back(shaped_piece(piece, tolerances, "after"));
    return out;
}

// An operation may leave what it names where it stands, and true it.
void add_named(OperationDeeds& deeds, const Made& operation, const Pattern& after) {
    const auto value_of = [&](const char* key) {
        const auto found = std::find_if(operation.request.begin(), operation.request.end(),
                                        [key](const auto& word) { return word.first == key; });
        return found == operation.request.end() ? std::string() : found->second;
    };
    const std::string piece = value_of("piece");
    const std::string dart = value_of("dart");
    const bool is_known =
        std::any_of(deeds.touched.begin(), deeds.touched.end(),
                    [&](const TouchedDart& each) { return each.piece == piece && each.dart == dart; });
    const bool is_there = std::any_of(after.pieces.begin(), after.pieces.end(), [&](const Piece& each) {
        return each.name == piece && find_dart(each, dart);
    });
    if (is_there && !is_known) deeds.touched.push_back({piece, dart, false});
}

}  // namespace

Pattern done(const Pattern& pattern, const Made& operation) {
    std::vector<Made> made = pattern.made;
    made.push_back(operation);
    return replay(pattern, made).pattern;
}

OperationDeeds deeds_of(const Made& operation, const PatternStep& step) {
    OperationDeeds deeds;
    std::vector<TouchedDart> shifted;
    const Tolerances tolerances = tolerances_of(step.before);
    const std::vector<ShapedPiece> strangers = new_pieces(step, tolerances);
    for (const Piece& piece : step.before.pieces) {
        const Piece* same = named(step.after, piece.name);
        if (!same || *same == piece) continue;
        const PieceBothWays both{shaped_piece(piece, tolerances, "before"),
                                 shaped_piece(*same, tolerances, "after")};
        // The darts of a piece that was separated are looked for in no other.
        if (!compared_separation(both.before, &both.after, strangers, tolerances))
            add_deeds(deeds, shifted, operation, both, tolerances);
    }
    add_named(deeds, operation, step.after);
    // Of an edge or a seam that is trued, that its darts came through it is what there is to see of them.
    if (deeds.touched.empty()) deeds.touched = std::move(shifted);
    for (const Piece& piece : step.after.pieces)
        if (std::find(step.before.pieces.begin(), step.before.pieces.end(), piece) ==
            step.before.pieces.end())
            deeds.pieces.push_back(piece.name);
    return deeds;
}

std::vector<Criterion> criteria_of(const OperationDeeds& deeds) {
    std::vector<Criterion> out;
    const bool is_placed = std::any_of(deeds.touched.begin(), deeds.touched.end(),
                                       [](const TouchedDart& dart) { return dart.is_placed; });
    if (is_placed) out.push_back(Criterion::place);
    if (!deeds.touched.empty())
        out.insert(out.end(), {Criterion::angle, Criterion::legs, Criterion::mouth, Criterion::pivot});
    if (!deeds.closed.empty()) out.push_back(Criterion::gone);
    out.push_back(Criterion::shape);
    return out;
}

}  // namespace dartwright
