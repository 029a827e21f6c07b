#include "dartwright/checks/walked_seam.hpp"

#include <algorithm>

#include "dartwright/words/lists.hpp"

namespace dartwright {
namespace {

const PieceContext& context_named(const std::vector<PieceContext>& pieces, const std::string& name,
                                  const std::string& seam) {
    const auto found = std::find_if(pieces.begin(), pieces.end(),
                                    [&name](const PieceContext& piece) { return piece.name() == name; });
    if (found != pieces.end()) return *found;
    std::vector<std::string> known;
    for (const PieceContext& piece : pieces) known.push_back(piece.name());
    throw UnknownName("piece", name, known, "seam " + seam);
}

// Of a closed run where it is told to begin: at a notch, else at its first item.
std::optional<double> closed_run_begins(const PieceContext& piece, const Run& run) {
    if (piece.runs.size() != 1 || !run.corner_darts_after.empty()) return std::nullopt;
    for (const Notch& notch : piece.piece->notches) {
        if (!notch.begins) continue;
        const std::optional<RunEnd> from = end_named(run, notch.from);
        if (from) return *from == RunEnd::start ? notch.at : run.length - notch.at;
    }
    return 0.0;
}

WalkedPart walked_part(const PieceContext& piece, const SeamPart& part, double begins) {
    const Run& run = run_named(piece.runs, part.edge, piece.name());
    const std::optional<RunEnd> from = end_named(run, part.from);
    if (!from) {
        throw UnknownName("end", part.from, {name_of_end(run, RunEnd::start), name_of_end(run, RunEnd::end)},
                          piece.name() + ", " + part.edge);
    }
    return {&piece, &run, *from, begins, closed_run_begins(piece, run)};
}

std::vector<std::string> piece_names(const SeamSide& side) {
    std::vector<std::string> names;
    for (const SeamPart& part : side) {
        if (std::find(names.begin(), names.end(), part.piece) == names.end()) names.push_back(part.piece);
    }
    return names;
}

std::string edge_names(const SeamSide& side) {
    std::vector<std::string> names;
    for (const SeamPart& part : side) names.push_back(part.piece + " " + part.edge);
    return all_of(names);
}

}  // namespace

bool WalkedSeam::is_with_itself() const {
    return sides[0].parts.size() == 1 && sides[1].parts.size() == 1 &&
           sides[0].parts[0].run == sides[1].parts[0].run;
}

WalkedSeam walked_seam(const std::vector<PieceContext>& pieces, const Seam& seam) {
    WalkedSeam walked;
    walked.seam = &seam;
    if (!pieces.empty()) walked.unit = pieces.front().unit;
    walked.ease = signed_ease(seam);
    walked.is_measurable = true;
    for (const SeamSide& side : seam.joins) {
        for (const SeamPart& part : side) {
            if (!context_named(pieces, part.piece, seam.name).is_closed) walked.is_measurable = false;
        }
    }
    if (!walked.is_measurable) return walked;
    for (std::size_t s = 0; s < 2; ++s) {
        WalkedSide& side = walked.sides[s];
        for (const SeamPart& part : seam.joins[s]) {
            side.parts.push_back(
                walked_part(context_named(pieces, part.piece, seam.name), part, side.length));
            side.length += side.parts.back().run->length;
        }
    }
    return walked;
}

const WalkedPart& part_at(const WalkedSide& side, double walked) {
    for (const WalkedPart& part : side.parts) {
        if (walked < part.ends()) return part;
    }
    return side.parts.back();
}

std::array<std::string, 2> side_names(const Seam& seam) {
    const std::vector<std::string> first = piece_names(seam.joins[0]);
    const std::vector<std::string> second = piece_names(seam.joins[1]);
    const bool are_told_apart = std::none_of(first.begin(), first.end(), [&second](const std::string& name) {
        return std::find(second.begin(), second.end(), name) != second.end();
    });
    if (are_told_apart) return {all_of(first), all_of(second)};
    return {edge_names(seam.joins[0]), edge_names(seam.joins[1])};
}

std::array<std::string, 2> side_names(const WalkedSeam& seam) {
    return side_names(*seam.seam);
}

const std::string& neighbour_at(const Run& run, RunEnd end) {
    return end == RunEnd::start ? run.before : run.after;
}

SeamCorner corner_of(const WalkedSide& side, SeamEnd end) {
    if (end == SeamEnd::start) return {&side.parts.front(), side.parts.front().from};
    return {&side.parts.back(), side.parts.back().far_end()};
}

std::vector<std::string> command_for_end(const WalkedSeam& seam, const SeamCorner& where) {
    const std::string& crossing = neighbour_at(*where.part->run, where.end);
    const auto crosses_at = [&](SeamEnd end) {
        return std::any_of(seam.sides.begin(), seam.sides.end(), [&](const WalkedSide& side) {
            const SeamCorner corner = corner_of(side, end);
            return neighbour_at(*corner.part->run, corner.end) == crossing;
        });
    };
    const bool is_one_end = crosses_at(SeamEnd::start) != crosses_at(SeamEnd::far);
    if (!is_one_end || where.part->is_closed_run()) return {};
    return {"true", "--seam", seam.seam->name, "--end", crossing};
}

double angle_sum(const WalkedSeam& seam, SeamEnd end) {
    double sum = 0;
    for (const WalkedSide& side : seam.sides) {
        const SeamCorner corner = corner_of(side, end);
        sum += corner_angle(corner.part->piece->outline(), *corner.part->run, corner.end);
    }
    return sum;
}

}  // namespace dartwright
