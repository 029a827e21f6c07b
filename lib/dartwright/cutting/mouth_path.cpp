#include "dartwright/cutting/mouth_path.hpp"

#include <algorithm>

#include "dartwright/cutting/chain_view.hpp"
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
          after_(strands.strands[place.after]) {}

    MouthPath path() {
        std::vector<RawPoint> line = closed_line();
        for (std::size_t k = 0; k < before_.darts; ++k) {
            const std::size_t item = strands_.darts[before_.first_dart + k];
            const Motion closing = closing_of_dart(outline_, item);
            split(line, item, closing);
        }
        emit(line);
        finish();
        return std::move(out_);
    }

  private:
    CutSide beside(const Strand& strand) const { return {CutPart::edge, strand.item, strand.width_mm}; }

    double aside(const Ray& leg, Point p) const { return cross(leg.along, p - leg.from); }

    // The last points of one strand, the path, and the first of the next.
    std::vector<RawPoint> closed_line() {
        const Ray leg = leg_of(outline_, strands_.darts[before_.first_dart]);
        std::vector<RawPoint> line;
        // Back along the strand until the line is before the leg.
        const std::size_t middle_before = (before_.first + before_.last + 1) / 2;
        std::size_t k = before_.last_kept;
        while (aside(leg, strands_.points[k]) > on_leg_mm && k > middle_before) --k;
        for (std::size_t i = k; i <= before_.last_kept; ++i)
            line.push_back({strands_.points[i], beside(before_)});
        before_.last_kept = k;
        points_before_ = line.size();
        if (closed_.first != CutPart::edge) line.back().side = {closed_.first, before_.item, 0};
        line.insert(line.end(), closed_.points.begin(), closed_.points.end());
        const std::size_t middle_after = (after_.first + after_.last) / 2;
        std::size_t last = after_.first_kept;
        const auto placed = [&](std::size_t i) { return apply(place_.closing, strands_.points[i]); };
        while (aside(leg, placed(last)) <= on_leg_mm && last < middle_after) ++last;
        for (std::size_t i = after_.first_kept; i <= last; ++i) line.push_back({placed(i), beside(after_)});
        points_after_ = last - after_.first_kept + 1;
        after_.first_kept = last;
        return line;
    }

    void split(std::vector<RawPoint>& line, std::size_t item, const Motion& closing) {
        const Ray leg = leg_of(outline_, item);
        const Motion opening = inverse(closing);
        std::size_t i = 0;
        Point mouth_end = leg.from;
        bool is_found = false;
        // Lines that cross without being trimmed lie across the leg in any order.
        const bool can_be_found = !closed_.is_crossing;
        for (; can_be_found && i + 1 < line.size(); ++i) {
            const double from = aside(leg, line[i].at);
            const double to = aside(leg, line[i + 1].at);
            if (!(from <= on_leg_mm && to > on_leg_mm)) continue;
            mouth_end = between(line[i].at, line[i + 1].at, std::max(from / (from - to), 0.0));
            is_found = dot(leg.along, mouth_end - leg.from) >= -on_leg_mm;
            if (is_found) break;
        }
        if (!is_found) return give_up(line, item, closing);
        // What lies across the leg from its edge runs beside it only when the dart is closed.
        give_to_mouth(line.begin(), line.begin() + static_cast<std::ptrdiff_t>(i) + 1, after_.item, item);
        const CutSide last = line[i].side;
        give_to_mouth(line.begin() + static_cast<std::ptrdiff_t>(i), line.end(), before_.item, item);
        const CutSide first = line[i].side;
        line[i].side = last;
        emit({line.begin(), line.begin() + static_cast<std::ptrdiff_t>(i) + 1});
        add_mouth(item, mouth_end, closing, first);
        std::vector<RawPoint> rest;
        for (std::size_t k = i + 1; k < line.size(); ++k) {
            rest.push_back({apply(opening, line[k].at), line[k].side});
        }
        line = std::move(rest);
    }

    using RawPoints = std::vector<RawPoint>::iterator;
    static void give_to_mouth(RawPoints from, RawPoints to, std::size_t edge, std::size_t dart) {
        for (; from != to; ++from) {
            const bool is_of_edge = from->side.part == CutPart::edge && from->side.item == edge;
            if (is_of_edge) from->side = {CutPart::mouth, dart, 0};
        }
    }

    void add_mouth(std::size_t item, Point a, const Motion& closing, const CutSide& after) {
        out_.mouths.push_back({out_.points.size(), item, closing});
        out_.points.push_back({a, {CutPart::mouth, item, 0}});
        out_.points.push_back({apply(inverse(closing), a), after});
    }

    // From the end of what is before over the mouth, as far out along the legs as the narrower allowance.
    void give_up(std::vector<RawPoint>& line, std::size_t item, const Motion& closing) {
        emit({line.begin(),
              line.begin() + static_cast<std::ptrdiff_t>(std::min(points_before_, line.size()))});
        const Ray leg = leg_of(outline_, item);
        const CutSide corner{CutPart::corner, before_.item, 0};
        const Motion opening = inverse(closing);
        out_.points.back().side = corner;
        out_.points.push_back({leg.from, corner});
        add_mouth(item, leg.from + std::min(before_.width_mm, after_.width_mm) * leg.along, closing, corner);
        std::vector<RawPoint> rest{{apply(opening, leg.from), corner}};
        for (std::size_t k = line.size() - std::min(points_after_, line.size()); k < line.size(); ++k) {
            rest.push_back({apply(opening, line[k].at), line[k].side});
        }
        line = std::move(rest);
        points_before_ = 1;
        out_.is_crossing = true;
        out_.notes.push_back("the legs of " + quoted(outline_.items[item].as_dart()->name) +
                             " do not come to the cutting line beside its mouth; it goes square across them");
    }

    void emit(const std::vector<RawPoint>& points) {
        out_.points.insert(out_.points.end(), points.begin(), points.end());
    }

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
    std::size_t points_before_ = 0;  // of the closed line that are of the strand before
    std::size_t points_after_ = 0;   // and of the strand after
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
