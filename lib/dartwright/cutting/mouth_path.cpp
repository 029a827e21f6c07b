#include "dartwright/cutting/mouth_path.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "dartwright/cutting/chain_view.hpp"
#include "dartwright/cutting/offset_curve.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/dart.hpp"

namespace dartwright::cutting {
namespace {

// What is as near to the line of a leg is on it, mm: far above rounding.
constexpr double on_leg_mm = 1e-9;

Motion closing_of_dart(const Outline& outline, std::size_t item) {
    const DartFigures f = figures_of(outline, item);
    const Motion turned = closing_about_point(f);
    return then(turned, shift_by(f.a - apply(turned, f.b)));
}

// The leg drawn on beyond the mouth end.
Ray leg_of(const Outline& outline, std::size_t item) {
    const DartFigures f = figures_of(outline, item);
    if (f.leg_a > 0 && !(f.a == f.point)) return {f.a, unit(f.a - f.point)};
    return {f.a, unit(f.b - f.a)};
}

class Opener {
  public:
    Opener(const Piece& piece, Strands& strands, const JointPlace& place, const JointPath& closed)
        : outline_(piece.outline),
          strands_(strands),
          place_(place),
          closed_(closed),
          before_(strands.strands[place.before]),
          after_(strands.strands[place.after]),
          legs_(closed_legs()) {}

    MouthPath path() {
        line_ = closed_line();
        for (std::size_t k = 0; k < before_.darts; ++k) {
            const std::size_t item = dart_item(k);
            split(item, closing_of_dart(outline_, item));
        }
        emit_until(line_.size());
        finish();
        return std::move(out_);
    }

  private:
    CutSide beside(const Strand& strand) const { return {CutPart::edge, strand.item, strand.width_mm}; }

    std::size_t dart_item(std::size_t k) const { return strands_.darts[before_.first_dart + k]; }

    // The first legs of the darts as they lie when all are closed.
    std::vector<Ray> closed_legs() const {
        std::vector<Ray> legs;
        Motion closing;
        for (std::size_t k = 0; k < before_.darts; ++k) {
            const Ray leg = leg_of(outline_, dart_item(k));
            const Point from = apply(closing, leg.from);
            legs.push_back({from, apply(closing, leg.from + leg.along) - from});
            closing = then(closing_of_dart(outline_, dart_item(k)), closing);
        }
        return legs;
    }
    bool is_before_legs(Point p) const {
        return std::all_of(legs_.begin(), legs_.end(),
                           [&](const Ray& leg) { return aside(leg, p) < -on_leg_mm; });
    }
    bool is_beyond_legs(Point p) const {
        return std::all_of(legs_.begin(), legs_.end(),
                           [&](const Ray& leg) { return aside(leg, p) > on_leg_mm; });
    }

    // The last points of one strand, the path, and the first of the next.
    std::vector<RawPoint> closed_line() {
        std::vector<RawPoint> line;
        // Back along the strand until the line is before the legs, not on one.
        std::size_t k = before_.last_kept;
        while (!is_before_legs(strands_.points[k]) && k > least_before()) --k;
        for (std::size_t i = k; i <= before_.last_kept; ++i)
            line.push_back({strands_.points[i], beside(before_)});
        line_from_ = k;
        before_.last_kept = k;
        if (closed_.first != CutPart::edge) line.back().side = {closed_.first, before_.item, 0};
        line.insert(line.end(), closed_.points.begin(), closed_.points.end());
        std::size_t last = after_.first_kept;
        const auto placed = [&](std::size_t i) { return apply(place_.closing, strands_.points[i]); };
        while (!is_beyond_legs(placed(last)) && last < most_after()) ++last;
        for (std::size_t i = after_.first_kept; i <= last; ++i) line.push_back({placed(i), beside(after_)});
        line_to_ = last;
        after_.first_kept = last;
        return line;
    }

    // How far a leg may trim the strands: to the middle, if there is a leg at the other end too, and to a
    // detour, which lies across the leg in any order.
    std::size_t least_before() const {
        const std::size_t n = strands_.strands.size();
        const bool is_between_darts = strands_.strands[(place_.before + n - 1) % n].darts > 0;
        const std::size_t least =
            is_between_darts ? (before_.first + before_.last + 1) / 2 : before_.first_kept;
        return std::max(least, first_after_detours(strands_, before_));
    }
    std::size_t most_after() const {
        const std::size_t most = after_.darts > 0 ? (after_.first + after_.last) / 2 : after_.last_kept;
        return std::min(most, last_before_detours(strands_, after_));
    }

    // Where a line comes over a leg.
    struct LegCrossing {
        std::size_t after = 0;  // the point before it
        Point at;
        double out_mm = 0;  // along the leg from the mouth end
    };

    // A mouth lies no farther out than a corner may stand; at the mouth end only where an edge has no
    // allowance.
    bool may_be_mouth(double out_mm) const {
        const double wider = std::max(before_.width_mm, after_.width_mm);
        const bool is_beside_none = std::min(before_.width_mm, after_.width_mm) == 0;
        return out_mm >= (is_beside_none ? -on_leg_mm : on_leg_mm) &&
               out_mm <= sharpest_corner * wider + on_leg_mm;
    }

    LegCrossing crossing_after(std::size_t i, const Ray& leg) const {
        const double from = aside(leg, line_[i].at);
        const double to = aside(leg, line_[i + 1].at);
        const Point at = between(line_[i].at, line_[i + 1].at, from / (from - to));
        return {i, at, dot(leg.along, at - leg.from)};
    }

    // Where the line comes over the leg: from before it, on it for a while or not, and beyond it. What it
    // touches and leaves again is not come over. Along the leg it is the farthest place out, the same one in
    // the mirror.
    std::vector<LegCrossing> crossings_of(const Ray& leg) const {
        std::vector<LegCrossing> found;
        bool is_before = aside(leg, line_.front().at) <= on_leg_mm;
        bool was_on_leg = false;
        LegCrossing farthest;  // of those on the leg
        for (std::size_t i = 0; i < line_.size(); ++i) {
            const double off = aside(leg, line_[i].at);
            if (std::abs(off) <= on_leg_mm) {
                const double out_mm = dot(leg.along, line_[i].at - leg.from);
                if (was_on_leg && out_mm <= farthest.out_mm) continue;
                farthest = {i > 0 ? i - 1 : 0, line_[i].at, out_mm};
                was_on_leg = true;
                continue;
            }
            if (is_before && off > 0) {
                const LegCrossing crossing = was_on_leg ? farthest : crossing_after(i - 1, leg);
                if (may_be_mouth(crossing.out_mm)) found.push_back(crossing);
            }
            is_before = off < 0;
            was_on_leg = false;
        }
        return found;
    }

    // Where darts in a row are cut further apart than their mouths, the legs between them cross beyond the
    // mouths, and the line came over this one before it came over the last.
    bool is_before_begun(const LegCrossing& crossing) const {
        return crossing.after < begun_ && distance(crossing.at, line_[begun_].at) > on_leg_mm;
    }

    // Where edges hook over the legs the line comes over them more than once. It leaves the hooks out, which
    // lie across the leg from their own edges, and goes along the leg as far out as the farthest, so that it
    // is the same one in the mirror. Where it then crosses the leg; none if it does not.
    std::optional<LegCrossing> come_over(const Ray& leg, std::size_t dart) {
        // Lines that cross without being trimmed lie across the leg in any order.
        if (closed_.is_crossing) return std::nullopt;
        std::vector<LegCrossing> crossings = crossings_of(leg);
        if (crossings.empty()) return std::nullopt;
        if (is_before_begun(crossings.back())) return crossings.back();
        std::erase_if(crossings, [&](const LegCrossing& each) { return is_before_begun(each); });
        for (LegCrossing& each : crossings) each.after = std::max(each.after, begun_);
        const LegCrossing& first = crossings.front();
        const LegCrossing& last = crossings.back();
        if (first.after == last.after) return first;
        const auto farthest =
            std::max_element(crossings.begin(), crossings.end(),
                             [](const LegCrossing& a, const LegCrossing& b) { return a.out_mm < b.out_mm; });
        const std::vector<RawPoint> along{{first.at, {CutPart::mouth, dart, 0}},
                                          {last.at, line_[last.after].side}};
        const auto from = line_.erase(point(first.after + 1), point(last.after + 1));
        line_.insert(from, along.begin(), along.end());
        out_.is_crossing = true;
        return LegCrossing{first.after + 1, farthest->at, farthest->out_mm};
    }

    void split(std::size_t item, const Motion& closing) {
        const Ray leg = leg_of(outline_, item);
        const std::optional<LegCrossing> crossing = come_over(leg, item);
        if (!crossing) return give_up(item, closing);
        const std::size_t i = crossing->after;
        if (i < begun_) return go_back(*crossing, item, closing);
        // What lies across the leg from its edge runs beside it only when the dart is closed.
        const bool lies_before = give_to_mouth(point(begun_), point(i + 1), after_.item, item);
        const CutSide last = line_[i].side;
        const bool lies_after = give_to_mouth(point(i), line_.end(), before_.item, item);
        // The folded dart brings it back along the leg. Beside no allowance the line then touches itself at
        // the mouth end, and the clean-up says how it goes on there, not rounding.
        out_.is_crossing = out_.is_crossing ||
                           (lies_before && before_.width_mm == 0 && after_.width_mm > 0) ||
                           (lies_after && after_.width_mm == 0 && before_.width_mm > 0);
        const CutSide first = line_[i].side;
        line_[i].side = last;
        emit_until(i + 1);
        go_on_over_mouth({crossing->at, first}, i + 1, item, closing);
    }

    // Over the mouth to where the line came over the leg before, and along it again from there.
    void go_back(const LegCrossing& crossing, std::size_t item, const Motion& closing) {
        const Ray leg = leg_of(outline_, item);
        const Vector last_leg = line_[begun_].at - leg.from;
        emit_until(begun_ + 1);
        out_.points.back().side = {CutPart::mouth, item, 0};
        give_to_mouth(point(crossing.after), line_.end(), before_.item, item);
        const CutSide side = line_[crossing.after].side;
        go_on_over_mouth({crossing.at, side}, crossing.after + 1, item, closing);
        if (norm(last_leg) > on_leg_mm)
            out_.mouths.back().meets_last = Ray{leg.from, unit(leg.along + unit(last_leg))};
        out_.is_crossing = true;
    }

    using RawPoints = std::vector<RawPoint>::iterator;
    RawPoints point(std::size_t i) { return line_.begin() + static_cast<std::ptrdiff_t>(i); }

    // Whether it was given anything.
    static bool give_to_mouth(RawPoints from, RawPoints to, std::size_t edge, std::size_t dart) {
        bool is_given = false;
        for (; from != to; ++from) {
            const bool is_of_edge = from->side.part == CutPart::edge && from->side.item == edge;
            if (!is_of_edge) continue;
            from->side = {CutPart::mouth, dart, 0};
            is_given = true;
        }
        return is_given;
    }

    // The line goes from the place on the first leg over the mouth, and on from the second leg as the place
    // says, before the point `next`.
    void go_on_over_mouth(const RawPoint& place, std::size_t next, std::size_t item, const Motion& closing) {
        out_.mouths.push_back({out_.points.size(), item, closing});
        out_.points.push_back({place.at, {CutPart::mouth, item, 0}});
        line_.insert(point(next), place);
        begun_ = next;
        const Motion opening = inverse(closing);
        for (RawPoint& each : line_) each.at = apply(opening, each.at);
        opened_ = then(opened_, opening);
        has_split_ = true;
    }

    // How far out along the leg the line beside an edge lies, carried on straight from the mouth end; beside
    // a leg that lies nearly along the edge, no farther than a corner may stand out.
    static double reach_along(Vector leg, Vector edge, double width_mm) {
        const double lean = dot(leg, outwards(edge));
        return lean * sharpest_corner > 1 ? width_mm / lean : width_mm * sharpest_corner;
    }

    // From the whole of the one strand to the whole of the other, over the mouth as far out along the legs as
    // the nearer of their lines. Where a leg leans over its edge, the clean-up trims that line.
    void give_up(std::size_t item, const Motion& closing) {
        const Ray leg = leg_of(outline_, item);
        const CutSide corner{CutPart::corner, before_.item, 0};
        const Vector in = apply(opened_, before_.last_tangent);
        const Vector out = apply(opened_, apply(place_.closing, after_.first_tangent));
        const Point a = leg.from + std::min(reach_along(leg.along, in, before_.width_mm),
                                            reach_along(leg.along, out, after_.width_mm)) *
                                       leg.along;
        if (has_split_)
            emit_until(begun_ + 1);
        else
            emit_whole_before();
        if (!out_.points.empty()) out_.points.back().side = corner;
        if (dot(a - leg.from, in) < 0) out_.points.push_back({leg.from, corner});
        line_ = whole_after();
        if (dot(a - leg.from, out) > 0) line_.insert(line_.begin(), {leg.from, corner});
        go_on_over_mouth({a, corner}, 0, item, closing);
        out_.is_crossing = true;
        out_.notes.push_back("the legs of " + quoted(outline_.items[item].as_dart()->name) +
                             " do not come to the cutting line beside its mouth; it goes square across them");
    }

    void emit_whole_before() {
        for (std::size_t k = line_from_; k <= before_.last; ++k)
            out_.points.push_back({strands_.points[k], beside(before_)});
    }

    std::vector<RawPoint> whole_after() const {
        std::vector<RawPoint> line;
        for (std::size_t k = after_.first; k <= line_to_; ++k)
            line.push_back({apply(opened_, apply(place_.closing, strands_.points[k])), beside(after_)});
        return line;
    }

    void emit_until(std::size_t end) { out_.points.insert(out_.points.end(), point(begun_), point(end)); }

    // The first and the last point are the strands' own, and are laid with them.
    void finish() {
        out_.first = out_.points.front().side.part;
        out_.points.erase(out_.points.begin());
        out_.points.pop_back();
        for (RawMouth& mouth : out_.mouths) --mouth.at;
    }

    const Outline& outline_;
    Strands& strands_;
    const JointPlace& place_;
    const JointPath& closed_;
    Strand& before_;
    Strand& after_;
    std::vector<Ray> legs_;
    std::vector<RawPoint> line_;  // opened as far as the darts are
    std::size_t begun_ = 0;       // its first point that is not laid yet
    std::size_t line_from_ = 0;   // the points of the strands with which the closed line begins and ends
    std::size_t line_to_ = 0;
    bool has_split_ = false;  // the line at a dart
    Motion opened_;           // the closed line after the darts at which it was
    MouthPath out_;
};

}  // namespace

Motion closing_of(const Piece& piece, const Strands& strands, const Strand& before) {
    Motion closing;
    for (std::size_t k = before.darts; k-- > 0;) {
        closing = then(closing, closing_of_dart(piece.outline, strands.darts[before.first_dart + k]));
    }
    return closing;
}

MouthPath opened(const Piece& piece, Strands& strands, const JointPlace& place, const JointPath& closed) {
    return Opener(piece, strands, place, closed).path();
}

}  // namespace dartwright::cutting
