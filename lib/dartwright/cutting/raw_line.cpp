#include "dartwright/cutting/raw_line.hpp"

#include <algorithm>

#include "dartwright/cutting/chain_view.hpp"
#include "dartwright/cutting/mouth_path.hpp"
#include "dartwright/cutting/plain_joint.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/pattern_rules.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/words/sentence.hpp"

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
        throw BadWords("a corner cannot be cut off at " + asked_told(*request.limit_mm) +
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
        out_.corners.reserve(strands_.runs);
        joint_points_.reserve(n);
        for (std::size_t i = 0; i < n; ++i) add_joint(i, (i + 1) % n);
        out_.line.reserve(strands_.points.size() + joint_points_.size());
        for (std::size_t i = 0; i < n; ++i) lay(i);
        drop_repeated_end();
        return std::move(out_);
    }

  private:
    // The path after each strand: a stretch of `joint_points_`, and of `mouths_`, which count from its start.
    struct Joint {
        CutPart first = CutPart::edge;
        std::size_t begin = 0;
        std::size_t size = 0;
        std::size_t first_mouth = 0;
    };

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
        const bool is_corner = strands_.strands[before].run != strands_.strands[after].run;
        if (is_corner) return add_corner_joint(before, after);
        if (strands_.strands[before].darts == 0 && add_plain_joint(before, after)) return;
        add_other_joint(before, after, JointWanted{});
    }

    void add_corner_joint(std::size_t before, std::size_t after) {
        const JointWanted wanted = wanted_at(edge_of(before), edge_of(after));
        const bool is_met = strands_.strands[before].darts == 0 && wanted.kind == CornerKind::met;
        if (!is_met || !add_plain_joint(before, after)) return add_other_joint(before, after, wanted);
        add_corner(before, after, {}, CornerKind::met);
    }

    bool add_plain_joint(std::size_t before_, std::size_t after_) {
        Strand& before = strands_.strands[before_];
        Strand& after = strands_.strands[after_];
        const PlainJoint plain = plain_joint(strands_, before, after);
        if (plain.kind == PlainJoint::Kind::none) return false;
        if (plain.kind == PlainJoint::Kind::running_on) {
            add_path(CutPart::edge, 0);
            return true;
        }
        if (plain.kind == PlainJoint::Kind::outside) {
            add_path(CutPart::corner, 1);
            joint_points_.add(plain.at, {CutPart::corner, before.item, 0});
            return true;
        }
        --before.last_kept;
        ++after.first_kept;
        add_path(CutPart::edge, 1);
        joint_points_.add(plain.at, {CutPart::edge, after.item, after.width_mm});
        return true;
    }

    void add_other_joint(std::size_t before, std::size_t after, const JointWanted& wanted) {
        const Strand& strand = strands_.strands[before];
        const bool is_corner = strand.run != strands_.strands[after].run;
        const JointPlace place{before, after, closing_of(piece_, strands_, strand), is_corner};
        JointPath path = joined(strands_, place, wanted);
        if (is_corner) add_corner(before, after, path, wanted.kind);
        MouthPath mouth;
        if (strand.darts > 0) {
            mouth = opened(piece_, strands_, place, path);
            path.points = std::move(mouth.points);
            path.first = mouth.first;
            out_.notes.insert(out_.notes.end(), mouth.notes.begin(), mouth.notes.end());
        }
        out_.is_crossing = out_.is_crossing || path.is_crossing || mouth.is_crossing;
        add_path(path.first, path.points.size());
        for (const RawPoint& point : path.points) joint_points_.add(point.at, point.side);
        mouths_.insert(mouths_.end(), mouth.mouths.begin(), mouth.mouths.end());
    }

    void add_path(CutPart first, std::size_t size) {
        Joint& joint = joints_.emplace_back();
        joint.first = first;
        joint.begin = joint_points_.size();
        joint.size = size;
        joint.first_mouth = mouths_.size();
    }

    void add_corner(std::size_t before, std::size_t after, const JointPath& path, CornerKind asked) {
        const Strand& strand = strands_.strands[before];
        out_.corners.push_back({{edge_of(before), edge_of(after)}, strand.end, path.kind, path.is_step});
        if (!path.is_blunted_unasked && !path.is_not_as_asked && !path.is_limit_raised) return;
        const std::string corner =
            "the corner of " + quoted(edge_of(before)) + " and " + quoted(edge_of(after));
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
        lay_strand(strand);
        const Joint& joint = joints_[i];
        if (joint.size > 0 && joint.first != CutPart::edge && strand.first_kept <= strand.last_kept) {
            out_.line.sides.back() = {joint.first, strand.item, 0};
        }
        const std::size_t last_mouth = i + 1 < joints_.size() ? joints_[i + 1].first_mouth : mouths_.size();
        if (joint.first_mouth < last_mouth) return lay_mouths(joint, last_mouth);
        for (std::size_t k = joint.begin; k < joint.begin + joint.size; ++k)
            add(joint_points_.points[k], joint_points_.sides[k]);
    }

    void lay_strand(const Strand& strand) {
        const CutSide beside{CutPart::edge, strand.item, strand.width_mm};
        std::size_t at = strand.first_kept;
        for (std::size_t d = 0; d < strand.detours; ++d) {
            const Detour& detour = strands_.detours[strand.first_detour + d];
            for (; at <= strand.last_kept && at < detour.first; ++at) add(strands_.points[at], beside);
            for (; at <= strand.last_kept && at < detour.last; ++at)
                add(strands_.points[at], {CutPart::step, strand.item, 0});
        }
        for (; at <= strand.last_kept; ++at) add(strands_.points[at], beside);
    }

    void lay_mouths(const Joint& joint, std::size_t last_mouth) {
        const std::size_t first_mouth = joint.first_mouth;
        std::size_t next = first_mouth;
        for (std::size_t k = 0; k < joint.size; ++k) {
            const Point at = joint_points_.points[joint.begin + k];
            const CutSide& side = joint_points_.sides[joint.begin + k];
            const bool is_mouth = next < last_mouth && mouths_[next].at == k;
            const bool is_far_end = next > first_mouth && mouths_[next - 1].at + 1 == k;
            if (is_mouth || is_far_end) {
                lay_mouth_end(at, side);
            } else {
                add(at, side);
            }
            if (!is_mouth) continue;
            RawMouth mouth = mouths_[next++];
            mouth.at = out_.line.size() - 1;
            out_.mouths.push_back(mouth);
        }
    }

    // Mouth ends stay two points even where the mouth is shut; a point that lies on one gives way.
    void lay_mouth_end(Point at, const CutSide& side) {
        const std::size_t size = out_.line.size();
        const bool is_mouth_end = !out_.mouths.empty() && out_.mouths.back().at + 2 >= size;
        const bool gives_way = size > 0 && !is_mouth_end && is_same_point(out_.line.points.back(), at);
        if (gives_way) out_.line.pop_back();
        out_.line.add(at, side);
    }

    void add(Point at, const CutSide& side) {
        if (!out_.line.points.empty() && is_same_point(out_.line.points.back(), at)) {
            out_.line.sides.back() = side;
            return;
        }
        out_.line.add(at, side);
    }

    void drop_repeated_end() {
        std::vector<Point>& points = out_.line.points;
        while (points.size() > 1 && is_same_point(points.back(), points.front())) {
            const bool is_mouth_end = !out_.mouths.empty() && out_.mouths.back().at + 2 >= points.size();
            if (is_mouth_end) break;
            // The earlier of the two gives its place, as elsewhere: it is the same wherever the outline
            // begins.
            points.front() = points.back();
            out_.line.pop_back();
        }
    }

    const Piece& piece_;
    const CuttingRequest& request_;
    Strands strands_;
    std::vector<Joint> joints_;
    SidedLine joint_points_;
    std::vector<RawMouth> mouths_;
    RawLine out_;
};

}  // namespace

RawLine raw_line(const Piece& piece, const CuttingRequest& request) {
    return RawMaker(piece, request).made();
}

}  // namespace dartwright::cutting
