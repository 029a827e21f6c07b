#include "dartwright/checks/seam_corners.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/checks/words.hpp"
#include "dartwright/words/lengths.hpp"
#include "dartwright/words/lists.hpp"

namespace dartwright {
namespace {

/// The corners of the two sides that come together.
struct Corners {
    SeamCorner first;
    SeamCorner second;
};

std::optional<CornerIs> said_of(const std::map<std::string, CornerIs>& ends, const SeamCorner& where) {
    for (const auto& [name, corner] : ends)
        if (end_named(*where.part->run, name) == where.end) return corner;
    return std::nullopt;
}

/// An edge that crosses the seam.
struct Crossing {
    std::string piece;
    std::string edge;
};
Crossing crossing_at(const SeamCorner& corner) {
    return {corner.part->piece->name(), neighbour_at(*corner.part->run, corner.end)};
}

bool has_edge(const SeamSide& side, const Crossing& crossing) {
    return std::any_of(side.begin(), side.end(), [&](const SeamPart& part) {
        return part.piece == crossing.piece && part.edge == crossing.edge;
    });
}

bool is_sewn(const std::vector<WalkedSeam>& seams, const Crossing& crossing) {
    return std::any_of(seams.begin(), seams.end(), [&](const WalkedSeam& walked) {
        const auto& joins = walked.seam->joins;
        return has_edge(joins[0], crossing) || has_edge(joins[1], crossing);
    });
}

bool are_on_one_side(const std::vector<WalkedSeam>& seams, const Crossing& a, const Crossing& b) {
    return std::any_of(seams.begin(), seams.end(), [&](const WalkedSeam& walked) {
        const auto& joins = walked.seam->joins;
        return (has_edge(joins[0], a) && has_edge(joins[0], b)) ||
               (has_edge(joins[1], a) && has_edge(joins[1], b));
    });
}

bool are_joined(const Seam& seam, const Crossing& a, const Crossing& b) {
    return (has_edge(seam.joins[0], a) && has_edge(seam.joins[1], b)) ||
           (has_edge(seam.joins[1], a) && has_edge(seam.joins[0], b));
}
bool are_joined(const std::vector<WalkedSeam>& seams, const Crossing& a, const Crossing& b) {
    return std::any_of(seams.begin(), seams.end(),
                       [&](const WalkedSeam& walked) { return are_joined(*walked.seam, a, b); });
}

/// What an edge is sewn to.
std::vector<Crossing> partners_of(const std::vector<WalkedSeam>& seams, const Crossing& crossing) {
    std::vector<Crossing> partners;
    for (const WalkedSeam& walked : seams) {
        for (std::size_t side = 0; side < 2; ++side) {
            if (!has_edge(walked.seam->joins[side], crossing)) continue;
            for (const SeamPart& part : walked.seam->joins[1 - side])
                partners.push_back({part.piece, part.edge});
        }
    }
    return partners;
}

bool has(const std::vector<Crossing>& crossings, const Crossing& crossing) {
    return std::any_of(crossings.begin(), crossings.end(), [&](const Crossing& each) {
        return each.piece == crossing.piece && each.edge == crossing.edge;
    });
}

/// The corners of the two sides that come together: at both ends, and between parts that go by pairs.
std::vector<Corners> corners_together(const WalkedSeam& seam) {
    const auto& first = seam.sides[0].parts;
    const auto& second = seam.sides[1].parts;
    if (!seam.is_measurable) return {};
    if (first.size() != second.size())
        return {{corner_of(seam.sides[0], SeamEnd::start), corner_of(seam.sides[1], SeamEnd::start)},
                {corner_of(seam.sides[0], SeamEnd::far), corner_of(seam.sides[1], SeamEnd::far)}};
    std::vector<Corners> out;
    for (std::size_t i = 0; i < first.size(); ++i) {
        out.push_back({{&first[i], first[i].from}, {&second[i], second[i].from}});
        out.push_back({{&first[i], first[i].far_end()}, {&second[i], second[i].far_end()}});
    }
    return out;
}

/// A seam of the outer piece and one of the inner match if what the two edges are sewn to comes together too,
/// at a corner of pieces that lie on each other. That other seams join the same pieces is no match.
bool are_in_matching_seams(const std::vector<WalkedSeam>& seams, const Crossing& a, const Crossing& b) {
    const std::vector<Crossing> of_a = partners_of(seams, a);
    const std::vector<Crossing> of_b = partners_of(seams, b);
    for (const WalkedSeam& walked : seams) {
        if (walked.seam->laid != LaidAs::on_each_other) continue;
        for (const Corners& corners : corners_together(walked)) {
            const Crossing one = crossing_at(corners.first);
            const Crossing other = crossing_at(corners.second);
            if ((has(of_a, one) && has(of_b, other)) || (has(of_a, other) && has(of_b, one))) return true;
        }
    }
    return false;
}

CornerIsJudged judged_by_seams(const WalkedSeam& seam, const std::vector<WalkedSeam>& seams,
                               const Corners& corners) {
    const Crossing a = crossing_at(corners.first);
    const Crossing b = crossing_at(corners.second);
    const bool is_unsewn = !is_sewn(seams, a) && !is_sewn(seams, b);
    const bool is_asked = seam.seam->laid == LaidAs::flat
                              ? is_unsewn || are_on_one_side(seams, a, b)
                              : is_unsewn || are_joined(seams, a, b) || are_in_matching_seams(seams, a, b);
    return is_asked ? CornerIsJudged::fault : CornerIsJudged::note;
}

CornerIsJudged judged(const WalkedSeam& seam, const std::vector<WalkedSeam>& seams, const Corners& corners) {
    const auto& ends = seam.seam->ends;
    const auto first = said_of(ends, corners.first);
    const auto second = said_of(ends, corners.second);
    if (first == CornerIs::free || second == CornerIs::free) return CornerIsJudged::not_at_all;
    if (first == CornerIs::smooth || second == CornerIs::smooth) return CornerIsJudged::fault;
    return judged_by_seams(seam, seams, corners);
}

double corner_deg(const SeamCorner& where) {
    return degrees(corner_angle(where.part->piece->outline(), *where.part->run, where.end));
}

std::vector<std::string> crossing_edges(const Corners& corners) {
    const std::string one = crossing_at(corners.first).edge;
    const std::string other = crossing_at(corners.second).edge;
    if (one == other) return {one};
    return {one, other};
}

struct CornerAngles {
    double first_deg = 0;
    double second_deg = 0;
};

std::string angle_words(const Corners& corners, const CornerAngles& angles) {
    return corners.first.part->piece->name() + " (" + degrees_in_sentence(angles.first_deg) + ") and " +
           corners.second.part->piece->name() + " (" + degrees_in_sentence(angles.second_deg) + ")";
}

/// A note says why it is none of the program's business, and how to make it so.
std::string remedy_for(CornerIsJudged judged, std::string remedy) {
    if (judged == CornerIsJudged::fault) return remedy;
    return "Nothing need be done where other pieces join there; say in `ends` of the seam that the end is "
           "\"smooth\" if it is to be true, or \"free\" if not.";
}

Finding flat_finding(const WalkedSeam& seam, const Corners& corners, const CornerAngles& angles) {
    const double sum = angles.first_deg + angles.second_deg;
    Finding finding = finding_on(seam, *corners.first.part, "seam-corner");
    finding.measured = sum;
    finding.expected = 180;
    finding.difference = sum - 180;
    const std::vector<std::string> edges = crossing_edges(corners);
    const std::string crossing = all_of(edges);
    finding.message = seam.seam->name + ": where it meets " + crossing + ", " + angle_words(corners, angles) +
                      " make " + degrees_in_sentence(sum) + " together and not 180, so that " + crossing +
                      " " + words::at_joint(edges, sum) + " at the seam.";
    finding.remedy =
        "Lay the two pieces together along the seam at that end, redraw " + crossing +
        " smooth across it, and walk the seam again; or say that the end is free if the corner is meant.";
    return finding;
}

Finding laid_finding(const WalkedSeam& seam, const Corners& corners, const CornerAngles& angles) {
    Finding finding = finding_on(seam, *corners.second.part, "seam-corner");
    finding.measured = angles.second_deg;
    finding.expected = angles.first_deg;
    finding.difference = angles.second_deg - angles.first_deg;
    const std::string crossing = all_of(crossing_edges(corners));
    finding.message = seam.seam->name + ": where it meets " + crossing + ", " + angle_words(corners, angles) +
                      " are " + degrees_in_sentence(std::abs(*finding.difference)) +
                      " apart, so that they do not lie on each other there.";
    finding.remedy = "Lay the one piece on the other along the seam and copy " + crossing +
                     " from it; or say that the end is free if the two are meant to differ.";
    return finding;
}

PlacedFindings corner_findings(const WalkedSeam& seam, const std::vector<WalkedSeam>& seams,
                               const Corners& corners, LaidAs laid, const Tolerances& tolerances) {
    const CornerIsJudged how = judged(seam, seams, corners);
    if (how == CornerIsJudged::not_at_all) return {};
    const CornerAngles angles{corner_deg(corners.first), corner_deg(corners.second)};
    const bool is_flat = laid == LaidAs::flat;
    Finding finding = is_flat ? flat_finding(seam, corners, angles) : laid_finding(seam, corners, angles);
    if (std::abs(*finding.difference) <= tolerances.corner_deg) return {};
    finding.allowed = tolerances.corner_deg;
    finding.severity = how == CornerIsJudged::fault ? Severity::fault : Severity::note;
    finding.remedy = remedy_for(how, std::move(finding.remedy));
    if (how == CornerIsJudged::fault) finding.command = command_for_end(seam, corners.first);
    return {placed_at_end(finding, is_flat ? corners.first : corners.second)};
}

PlacedFindings corners_at(const WalkedSeam& seam, SeamEnd end, const std::vector<WalkedSeam>& seams,
                          const Tolerances& tolerances) {
    const Corners corners{corner_of(seam.sides[0], end), corner_of(seam.sides[1], end)};
    if (corners.first.part->is_closed_run() || corners.second.part->is_closed_run()) return {};
    return corner_findings(seam, seams, corners, seam.seam->laid, tolerances);
}

// Within a side the parts lie beside each other, flat, however the two sides are laid.
PlacedFindings inner_corners(const WalkedSeam& seam, const WalkedSide& side,
                             const std::vector<WalkedSeam>& seams, const Tolerances& tolerances) {
    PlacedFindings findings;
    for (std::size_t i = 0; i + 1 < side.parts.size(); ++i) {
        const Corners corners{{&side.parts[i], side.parts[i].far_end()},
                              {&side.parts[i + 1], side.parts[i + 1].from}};
        // Two runs of one piece that follow each other meet in a corner of its own that was drawn so.
        const bool is_one_corner =
            corners.first.part->piece == corners.second.part->piece &&
            neighbour_at(*corners.first.part->run, corners.first.end) == corners.second.part->run->edge;
        // Edges that are sewn to each other there are judged at the end of their own seam.
        if (is_one_corner || are_joined(seams, crossing_at(corners.first), crossing_at(corners.second)))
            continue;
        findings =
            joined(std::move(findings), corner_findings(seam, seams, corners, LaidAs::flat, tolerances));
    }
    return findings;
}

}  // namespace

Finding finding_on(const WalkedSeam& seam, const WalkedPart& part, const char* check) {
    Finding finding;
    finding.check = check;
    finding.piece = part.piece->name();
    finding.edge = part.run->edge;
    finding.seam = seam.seam->name;
    return finding;
}

PlacedFinding placed_at_end(Finding finding, const SeamCorner& where) {
    const WalkedPart& part = *where.part;
    finding.at = end_point(part.piece->outline(), *part.run, where.end);
    const bool is_start = where.end == RunEnd::start;
    const std::size_t item = is_start ? part.run->items.front() : part.run->items.back();
    return {std::move(finding), part.piece->index, item, is_start ? 0 : part.run->length};
}

PlacedFindings seam_corner_findings(const WalkedSeam& seam, const std::vector<WalkedSeam>& all_seams,
                                    const Tolerances& tolerances) {
    PlacedFindings findings = joined(corners_at(seam, SeamEnd::start, all_seams, tolerances),
                                     corners_at(seam, SeamEnd::far, all_seams, tolerances));
    for (std::size_t s = 0; s < (seam.is_with_itself() ? 1u : 2u); ++s)
        findings = joined(std::move(findings), inner_corners(seam, seam.sides[s], all_seams, tolerances));
    return findings;
}

}  // namespace dartwright
