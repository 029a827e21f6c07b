#include "dartwright/cutting/joint.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/cutting/chain_view.hpp"
#include "dartwright/cutting/offset_curve.hpp"
#include "dartwright/cutting/seam_end_shape.hpp"

namespace dartwright::cutting {
namespace {

// An end that is left out reaches aside of the corner by its width times the sine of the turn. An edge longer
// than so many of that covers it, also where it leaves the corner on the skew.
constexpr double covered_within = 2;

class Joiner {
  public:
    Joiner(Strands& strands, const JointPlace& place, const JointWanted& wanted)
        : before_(strands.strands[place.before]),
          after_(strands.strands[place.after]),
          wanted_(wanted),
          first_(strands, before_, ChainView::From::end, {}),
          second_(strands, after_, ChainView::From::start, place.closing),
          corner_(before_.end),
          in_(first_.beyond()),
          out_(-second_.beyond()),
          sine_(cross(in_, out_)),
          cosine_(dot(in_, out_)),
          wider_mm_(std::max(before_.width_mm, after_.width_mm)),
          may_bare_before_(may_bare(strands, after_)),
          may_bare_after_(may_bare(strands, before_)) {}

    JointPath path() {
        if (squared_norm(second_.at(0) - first_.at(0)) <= same_end_mm * same_end_mm) return std::move(path_);
        path_.kind = wanted_.kind;
        if (is_made_as_asked()) return std::move(path_);
        path_.is_not_as_asked = wanted_.kind != CornerKind::met && wanted_.kind != CornerKind::blunted;
        if (path_.is_not_as_asked) path_.kind = CornerKind::met;
        meet();
        return std::move(path_);
    }

  private:
    double reach() const { return sharpest_corner * wider_mm_; }

    // Inside, the end of one line is left out, since it lies in the other's allowance: unless that bends in
    // more tightly than it is wide, where its allowance narrows outwards, or is of an edge too short to reach
    // so far.
    bool may_bare(const Strands& strands, const Strand& beside) const {
        // What is left out is no wider than the line is exact where the two run on smoothly.
        if (wider_mm_ * -sine_ <= cutting_line_error_mm) return false;
        const double length = distance(strands.points[beside.first], strands.points[beside.last]);
        return beside.detours > 0 || length < covered_within * wider_mm_ * -sine_;
    }

    // Whether the narrower line would be met only beyond the end of the wider, by more than rounding.
    bool ends_short_of(double narrow_mm, double wide_mm) const {
        return wide_mm * cosine_ - narrow_mm > same_end_mm * std::abs(sine_);
    }

    void add(Point p, CutPart part) { path_.points.push_back({p, {part, before_.item, 0}}); }
    void add_on_after(Point p) { path_.points.push_back({p, {CutPart::edge, after_.item, after_.width_mm}}); }

    void trim_before(std::size_t side) { before_.last_kept = before_.last - side; }
    void trim_after(std::size_t side) { after_.first_kept = after_.first + side; }

    // The meeting of a ray with the line of the second strand: the path goes there, and on along that line.
    bool go_to_second(const Ray& ray, CutPart part, double reach_mm) {
        const auto met = meeting_of(ray, second_, reach_mm);
        if (!met) return false;
        path_.first = part;
        go_on(met->place, met->side);
        return true;
    }

    bool come_from_first(const Ray& ray, CutPart part, double reach_mm) {
        const auto met = meeting_of(ray, first_, reach_mm);
        if (!met) return false;
        path_.first = met->side == 0 ? CutPart::corner : CutPart::edge;
        add(met->place, part);
        if (met->side > 0) trim_before(met->side);
        return true;
    }

    bool is_made_as_asked() {
        if (wanted_.kind == CornerKind::carried_on) return carry_on();
        if (wanted_.kind != CornerKind::squared && wanted_.kind != CornerKind::mirrored) return false;
        const SeamEnd seam = wanted_.whose_is_first
                                 ? SeamEnd{corner_, in_, outwards(in_), before_.width_mm, first_, second_}
                                 : SeamEnd{corner_, -out_, outwards(out_), after_.width_mm, second_, first_};
        const auto shape =
            wanted_.kind == CornerKind::squared ? squared_end(seam, reach()) : mirrored_end(seam, reach());
        if (!shape) return false;
        wanted_.whose_is_first ? end_first(*shape) : start_second(*shape);
        return true;
    }

    // From the line of the first strand along the shape of its end to its seam, and on along the second.
    void end_first(const SeamEndShape& shape) {
        path_.first = shape.own_side > 0 ? CutPart::edge : CutPart::corner;
        trim_before(shape.own_side);
        for (std::size_t k = shape.from_seam.size(); k-- > 1;) add(shape.from_seam[k], CutPart::corner);
        go_on(shape.from_seam[0], shape.other_side);
    }

    void start_second(const SeamEndShape& shape) {
        path_.first = shape.other_side > 0 ? CutPart::edge : CutPart::corner;
        trim_before(shape.other_side);
        const std::size_t last = shape.from_seam.size() - 1;
        for (std::size_t k = 0; k < last; ++k) add(shape.from_seam[k], CutPart::corner);
        go_on(shape.from_seam[last], shape.own_side);
    }

    // The last point of the path, on this side of the second strand or on its extension.
    void go_on(Point p, std::size_t side) {
        if (side == 0) return add(p, CutPart::corner);
        add_on_after(p);
        trim_after(side);
    }

    bool carry_on() {
        if (wanted_.whose_is_first) return go_to_second({first_.at(0), in_}, CutPart::corner, reach());
        return come_from_first({second_.at(0), -out_}, CutPart::corner, reach());
    }

    void meet() {
        const double w_in = before_.width_mm;
        const double w_out = after_.width_mm;
        path_.is_step = ends_short_of(w_in, w_out) || ends_short_of(w_out, w_in);
        if (path_.is_step) path_.kind = CornerKind::met;
        // A step goes along the end of the wider line, not beyond it: a narrower line that bends away is not
        // met there, and the two cross elsewhere. At a square corner beside a width of 0 both ways give one
        // shape: outside the step goes by its limit, inside by the sign, since a line that ends short crosses
        // nothing.
        if (sine_ > 0 && !path_.is_step) {
            meet_outside();
        } else if (w_in < w_out * cosine_) {
            if (may_bare_before_ || !come_from_first({corner_, outwards(out_)}, CutPart::step, w_out))
                cross_over();
        } else if (w_out < w_in * cosine_) {
            if (may_bare_after_ || !go_to_second({corner_, outwards(in_)}, CutPart::step, w_in)) cross_over();
        } else if (sine_ < 0) {
            meet_inside();
        } else {
            meet_outside();
        }
    }

    // Out of the corner of the stitching line, so that the line winds anticlockwise round what lies beside
    // it.
    void cross_over() {
        path_.is_crossing = true;
        path_.first = CutPart::corner;
        add(corner_, CutPart::corner);
    }

    // A curve that leaves the corner inwards and bends out again crosses the other line by less than its
    // chords show: then the one begins where it lies on the other.
    void go_along() {
        if (const std::size_t side = side_beside(first_, second_.at(0)); side > 0) return trim_before(side);
        if (const std::size_t side = side_beside(second_, first_.at(0)); side > 0) return trim_after(side);
        cross_over();
    }

    void meet_inside() {
        if (may_bare_before_ || may_bare_after_) return cross_over();
        const auto crossing = crossing_of(first_, second_);
        if (!crossing) return go_along();
        add_on_after(crossing->place);
        trim_before(crossing->first_side);
        trim_after(crossing->second_side);
    }

    void meet_outside() {
        const double along = (after_.width_mm - before_.width_mm * cosine_) / sine_;
        const Vector to_tip = before_.width_mm * outwards(in_) + along * in_;
        const double stands_out = sine_ > 0 ? norm(to_tip) : INFINITY;
        const double asked = std::max(wanted_.limit_mm.value_or(wider_mm_), wider_mm_);
        const double limit = wanted_.kind == CornerKind::blunted ? asked : reach();
        path_.first = CutPart::corner;
        path_.is_limit_raised =
            wanted_.kind == CornerKind::blunted && wanted_.limit_mm.value_or(asked) < asked;
        if (stands_out <= limit) {
            path_.kind = CornerKind::met;
            return add(corner_ + to_tip, CutPart::corner);
        }
        path_.is_blunted_unasked = wanted_.kind != CornerKind::blunted;
        path_.kind = CornerKind::blunted;
        blunt(stands_out < INFINITY ? unit(to_tip) : unit(in_ - out_), limit);
    }

    void blunt(Vector to_tip, double limit) {
        const Vector from_in = before_.width_mm * outwards(in_);
        const Vector from_out = after_.width_mm * outwards(out_);
        add(corner_ + from_in + (limit - dot(from_in, to_tip)) / dot(in_, to_tip) * in_, CutPart::corner);
        add(corner_ + from_out + (limit - dot(from_out, to_tip)) / dot(out_, to_tip) * out_, CutPart::corner);
    }

    Strand& before_;
    Strand& after_;
    const JointWanted& wanted_;
    ChainView first_;
    ChainView second_;
    Point corner_;
    Vector in_;   // unit tangents at the corner
    Vector out_;  // closed
    double sine_;
    double cosine_;
    double wider_mm_;
    bool may_bare_before_;  ///< the end of the line before the corner may lie outside the allowance after it
    bool may_bare_after_;
    JointPath path_;
};

}  // namespace

JointPath joined(Strands& strands, const JointPlace& place, const JointWanted& wanted) {
    return Joiner(strands, place, wanted).path();
}

}  // namespace dartwright::cutting
