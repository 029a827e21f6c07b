#include "dartwright/cutting/raw_line.hpp"

#include <algorithm>

#include "dartwright/cutting/chain_view.hpp"
#include "dartwright/cutting/mouth_path.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/pattern_rules.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright::cutting {
namespace {

// Points of the line as near to each other are one, mm: a hundredth of the line's error.
constexpr double same_point_mm = 1e-4;

bool is_same_point(Point a, Point b) {
    return squared_norm(b - a) <= same_point_mm * same_point_mm;
}

bool is_for(const CornerRequest& request, const std::string& before, const std::string& after) {
    return (request.edges[0] == before && request.edges[1] == after) ||
           (request.edges[0] == after && request.edges[1] == before);
}

bool needs_whose(CornerKind kind) {
    return kind != CornerKind::met && kind != CornerKind::blunted;
}

void refuse_bad_corner(const CornerRequest& request, const std::vector<Run>& runs, const Piece& piece) {
    for (const std::string& edge : request.edges) run_named(runs, edge, piece.name);
    const bool meet = std::any_of(runs.begin(), runs.end(),
                                  [&](const Run& run) { return is_for(request, run.edge, run.after); });
    if (!meet) {
        throw BadWords(quoted(request.edges[0]) + " and " + quoted(request.edges[1]) +
                       " do not meet at a corner of " + quoted(piece.name));
    }
    const bool is_named = request.whose == request.edges[0] || request.whose == request.edges[1];
    if (needs_whose(request.kind) && !is_named) {
        throw BadWords("the corner of " + quoted(request.edges[0]) + " and " + quoted(request.edges[1]) +
                       " needs one of the two edges to be named, of which " + to_text(request.kind) +
                       " speaks");
    }
    if (request.limit_mm && !(*request.limit_mm > 0 && *request.limit_mm <= largest_length_mm)) {
        throw BadWords("a corner cannot be cut off at " + text_of("%g mm", *request.limit_mm) +
                       "; expected more than 0, 10 m at most");
    }
}

class RawMaker {
  public:
    RawMaker(const Piece& piece, const CuttingRequest& request)
        : piece_(piece), request_(request), strands_(strands_of(piece, request)) {
        if (!request.corners.empty()) refuse_bad_corners();
        out_.undecided = std::move(strands_.undecided);
        out_.is_crossing = !strands_.detours.empty();
    }

    RawLine made() {
        const std::size_t n = strands_.strands.size();
        if (n == 0) return std::move(out_);
        joints_.reserve(n);
        joint_points_.reserve(n);
        for (std::size_t i = 0; i < n; ++i) add_joint(i, (i + 1) % n);
        out_.points.reserve(strands_.points.size() + joint_points_.size());
        for (std::size_t i = 0; i < n; ++i) lay(i);
        drop_repeated_end();
        return std::move(out_);
    }

  private:
    const std::string& edge_of(std::size_t strand) const {
        return piece_.outline.items[strands_.strands[strand].item].as_edge()->edge;
    }

    void refuse_bad_corners() const {
        const std::vector<Run> runs = runs_of(piece_.outline);
        for (const CornerRequest& corner : request_.corners) refuse_bad_corner(corner, runs, piece_);
    }

    JointWanted wanted_at(const std::string& before, const std::string& after) const {
        for (const CornerRequest& request : request_.corners) {
            if (is_for(request, before, after))
                return {request.kind, request.whose == before, request.limit_mm};
        }
        // The fold is no seam: what is beside it when unfolded must run on straight.
        if (is_fold_edge(piece_, before) || is_fold_edge(piece_, after))
            return {CornerKind::carried_on, is_fold_edge(piece_, before), std::nullopt};
        return {};
    }

    void add_joint(std::size_t before, std::size_t after) {
        const Strand& strand = strands_.strands[before];
        const bool is_corner =
            strand.item != strands_.strands[after].item && edge_of(before) != edge_of(after);
        const JointWanted wanted = is_corner ? wanted_at(edge_of(before), edge_of(after)) : JointWanted{};
        if (strand.darts == 0 && wanted.kind == CornerKind::met &&
            add_plain_joint({before, after, {}, is_corner}))
            return;
        const JointPlace place{before, after, closing_of(piece_, strands_, strand), is_corner};
        JointPath path = joined(strands_, place, wanted);
        if (is_corner) add_corner(place, path, wanted.kind);
        MouthPath mouth;
        if (strand.darts > 0) {
            mouth = opened(piece_, strands_, place, path);
            path.points = std::move(mouth.points);
            path.first = mouth.first;
            out_.notes.insert(out_.notes.end(), mouth.notes.begin(), mouth.notes.end());
        }
        out_.is_crossing = out_.is_crossing || path.is_crossing || mouth.is_crossing;
        joints_.push_back({path.first, joint_points_.size(), path.points.size(), mouths_.size()});
        joint_points_.insert(joint_points_.end(), path.points.begin(), path.points.end());
        mouths_.insert(mouths_.end(), mouth.mouths.begin(), mouth.mouths.end());
    }

    bool add_plain_joint(const JointPlace& place) {
        Strand& before = strands_.strands[place.before];
        Strand& after = strands_.strands[place.after];
        const auto plain = plain_joint(strands_, before, after);
        if (!plain) return false;
        if (plain->is_inside) {
            --before.last_kept;
            ++after.first_kept;
        }
        if (place.is_corner) add_corner(place, {}, CornerKind::met);
        joints_.push_back({plain->first, joint_points_.size(), plain->point ? 1U : 0U, mouths_.size()});
        if (plain->point) joint_points_.push_back(*plain->point);
        return true;
    }

    void add_corner(const JointPlace& place, const JointPath& path, CornerKind asked) {
        const Strand& strand = strands_.strands[place.before];
        out_.corners.push_back(
            {{edge_of(place.before), edge_of(place.after)}, strand.end, path.kind, path.is_step});
        if (!path.is_blunted_unasked && !path.is_not_as_asked && !path.is_limit_raised) return;
        const std::string corner =
            "the corner of " + quoted(edge_of(place.before)) + " and " + quoted(edge_of(place.after));
        if (path.is_limit_raised)
            out_.notes.push_back(corner + " cannot be cut off nearer than its wider allowance");
        if (path.is_not_as_asked) {
            out_.notes.push_back(corner + " cannot be " + to_text(asked) + " there, and is " +
                                 (path.is_blunted_unasked ? "blunted, being too sharp to be met" : "met"));
        } else if (path.is_blunted_unasked) {
            out_.notes.push_back(corner + " is too sharp to be met, and is blunted");
        }
    }

    void lay(std::size_t i) {
        const Strand& strand = strands_.strands[i];
        const CutSide beside{CutPart::edge, strand.item, strand.width_mm};
        std::size_t at = strand.first_kept;
        for (std::size_t d = 0; d < strand.detours; ++d) {
            const Detour& detour = strands_.detours[strand.first_detour + d];
            for (; at <= strand.last_kept && at < detour.first; ++at) add({strands_.points[at], beside});
            for (; at <= strand.last_kept && at < detour.last; ++at)
                add({strands_.points[at], {CutPart::step, strand.item, 0}});
        }
        for (; at <= strand.last_kept; ++at) add({strands_.points[at], beside});
        const Joint& joint = joints_[i];
        if (joint.size > 0 && joint.first != CutPart::edge && strand.first_kept <= strand.last_kept) {
            out_.points.back().side = {joint.first, strand.item, 0};
        }
        const std::size_t first_mouth = joint.first_mouth;
        const std::size_t last_mouth = i + 1 < joints_.size() ? joints_[i + 1].first_mouth : mouths_.size();
        std::size_t next = first_mouth;
        for (std::size_t k = 0; k < joint.size; ++k) {
            const RawPoint& point = joint_points_[joint.begin + k];
            const bool is_mouth = next < last_mouth && mouths_[next].at == k;
            const bool is_far_end = next > first_mouth && mouths_[next - 1].at + 1 == k;
            if (is_mouth || is_far_end) {
                lay_mouth_end(point);
            } else {
                add(point);
            }
            if (!is_mouth) continue;
            RawMouth mouth = mouths_[next++];
            mouth.at = out_.points.size() - 1;
            out_.mouths.push_back(mouth);
        }
    }

    // Mouth ends stay two points even where the mouth is shut; a point that lies on one gives way.
    void lay_mouth_end(const RawPoint& point) {
        const std::size_t size = out_.points.size();
        const bool is_mouth_end = !out_.mouths.empty() && out_.mouths.back().at + 2 >= size;
        const bool gives_way = size > 0 && !is_mouth_end && is_same_point(out_.points.back().at, point.at);
        if (gives_way) out_.points.pop_back();
        out_.points.push_back(point);
    }

    void add(const RawPoint& point) {
        if (!out_.points.empty() && is_same_point(out_.points.back().at, point.at)) {
            out_.points.back().side = point.side;
            return;
        }
        out_.points.push_back(point);
    }

    void drop_repeated_end() {
        while (out_.points.size() > 1 && is_same_point(out_.points.back().at, out_.points.front().at)) {
            const bool is_mouth_end = !out_.mouths.empty() && out_.mouths.back().at + 2 >= out_.points.size();
            if (is_mouth_end) break;
            // The earlier of the two gives its place, as elsewhere: it is the same wherever the outline
            // begins.
            out_.points.front().at = out_.points.back().at;
            out_.points.pop_back();
        }
    }

    const Piece& piece_;
    const CuttingRequest& request_;
    Strands strands_;
    // The path after each strand: a stretch of `joint_points_`, and of `mouths_`, which count from its start.
    struct Joint {
        CutPart first = CutPart::edge;
        std::size_t begin = 0;
        std::size_t size = 0;
        std::size_t first_mouth = 0;
    };
    std::vector<Joint> joints_;
    std::vector<RawPoint> joint_points_;
    std::vector<RawMouth> mouths_;
    RawLine out_;
};

}  // namespace

RawLine raw_line(const Piece& piece, const CuttingRequest& request) {
    return RawMaker(piece, request).made();
}

}  // namespace dartwright::cutting
