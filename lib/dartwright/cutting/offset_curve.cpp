#include "dartwright/cutting/offset_curve.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/cutting/sided_line.hpp"
#include "dartwright/geometry/cubic_halves.hpp"

namespace dartwright::cutting {
namespace {

// Halving a curve so often leaves a part that is a point to any eye.
constexpr int most_halvings = 24;

// A bundle of directions within 18 degrees of their mean, and speeds that differ by no more than this share,
// leave the bounds below close to the truth.
constexpr double bundle_cosine = 0.95;
constexpr double bundle_speed_share = 0.25;

struct Place {
    Point on_curve;
    Point beside;
    Vector tangent;
};

// The turned strips of two detours that follow each other share a normal; each is made wider by so much, a
// hundredth of the line's error, so that no crack is left between them.
constexpr double overlap_mm = 1e-4;

// Takes the places in order and makes a detour of what runs backwards.
class OffsetLine {
  public:
    OffsetLine(std::vector<Point>& line, const Place& start, std::vector<Detour>& detours)
        : line_(line), detours_(detours) {
        line_.push_back(start.beside);
    }

    /// The last place stays with him who adds, so that a long row of places needs no memory for it.
    void add(const Place& last, const Place& place) {
        const bool runs_back = dot(place.beside - last.beside, place.tangent + last.tangent) < 0;
        if (runs_back) return add_back(last, place);
        if (is_going_back_) end_detour();
        put_new(line_, place.beside);
    }

    void end_detour() {
        if (!is_going_back_) return;
        const std::size_t first = line_.size() - 1;
        add_crossings();
        line_.push_back(back_.back().beside - overlap_mm * back_.back().tangent);
        for (std::size_t i = back_.size() - 1; i-- > 1;) line_.push_back(back_[i].beside);
        line_.push_back(back_.front().beside + overlap_mm * back_.front().tangent);
        add_crossings();
        line_.push_back(back_.back().beside);
        detours_.push_back({first, line_.size() - 1});
        back_.clear();
        is_going_back_ = false;
    }

  private:
    void add_back(const Place& last, const Place& place) {
        if (!is_going_back_) back_.push_back(last);
        is_going_back_ = true;
        back_.push_back(place);
    }

    // Of the normals of two neighbouring places, between which the line runs backwards.
    static Point crossing_of(const Place& a, const Place& b) {
        const Vector first = a.beside - a.on_curve;
        const Vector second = b.beside - b.on_curve;
        const double turn = cross(first, second);
        const double share = turn == 0 ? -1 : cross(b.on_curve - a.on_curve, second) / turn;
        if (share >= 0 && share <= 1) return a.on_curve + share * first;
        const double on_curve = distance(a.on_curve, b.on_curve);
        const double beside = distance(a.beside, b.beside);
        return a.on_curve + on_curve / (on_curve + beside) * first;
    }

    void add_crossings() {
        for (std::size_t i = 1; i < back_.size(); ++i) line_.push_back(crossing_of(back_[i - 1], back_[i]));
    }

    std::vector<Point>& line_;
    std::vector<Detour>& detours_;
    bool is_going_back_ = false;
    std::vector<Place> back_;  // the places of a stretch that runs backwards
};

// The points of one cubic, halved where its directions spread too far.
class CubicOffset {
  public:
    CubicOffset(OffsetLine& line, const Place& start, double width_mm, double error_mm)
        : line_(line), last_(start), width_(width_mm), error_(error_mm) {}

    void add(const Cubic& c, Vector last_tangent, int halvings) {
        const std::array<Vector, 3> d{3 * (c.p[1] - c.p[0]), 3 * (c.p[2] - c.p[1]), 3 * (c.p[3] - c.p[2])};
        const std::array<double, 3> sizes{norm(d[0]), norm(d[1]), norm(d[2])};
        const double greatest = std::max(std::max(sizes[0], sizes[1]), sizes[2]);
        const Vector along = unit(d[0] + d[1] + d[2]);
        const double least = std::min(std::min(dot(d[0], along), dot(d[1], along)), dot(d[2], along));
        bool is_bundle = least >= bundle_speed_share * greatest;
        for (std::size_t i = 0; i < d.size(); ++i)
            is_bundle = is_bundle && dot(d[i], along) >= bundle_cosine * sizes[i];
        if (is_bundle || greatest <= error_ || halvings == 0) {
            return add_steps(c, last_tangent, is_bundle ? steps_for(d, least) : 1);
        }
        const CubicHalves halves = split_cubic(c, 0.5);
        add(halves.before, last_direction(halves.before), halvings - 1);
        add(halves.after, last_tangent, halvings - 1);
    }

  private:
    // A chord over a step h of the parameter strays from O = C + w n by at most h^2 / 8 times the greatest
    // second derivative of O square to that chord. Square to the curve, that is |C' x C''| / |C'| + w
    // angle'^2 at most, angle' being |C' x C''| / |C'|^2; along it |C''| + w |angle''|, of which a step that
    // turns by h angle' sees that share. |angle''| <= |C'''| / |C'| + 2 |C''|^2 / |C'|^2.
    std::size_t steps_for(const std::array<Vector, 3>& d, double least_speed) const {
        const Vector first = 2 * (d[1] - d[0]);
        const Vector second = 2 * (d[2] - d[1]);
        double swept = 0;  // the product of every direction of the one hull with every one of the other
        for (const Vector v : d)
            swept = std::max(swept, std::max(std::abs(cross(v, first)), std::abs(cross(v, second))));
        const double turn = swept / (least_speed * least_speed);
        const double square_to_it = swept / least_speed + width_ * turn * turn;
        const double bend = std::max(norm(first), norm(second)) / least_speed;
        const double along_it =
            bend * least_speed + width_ * (norm(second - first) / least_speed + 2 * bend * bend);
        const double fewest = std::max(std::ceil(std::sqrt(square_to_it / (8 * error_))), 1.0);
        const double greatest = square_to_it + std::min(turn / fewest, 1.0) * along_it;
        const double steps = std::ceil(std::sqrt(greatest / (8 * error_)));
        return std::clamp<std::size_t>(static_cast<std::size_t>(std::min(steps, most_steps)), 1,
                                       static_cast<std::size_t>(most_steps));
    }

    void add_steps(const Cubic& c, Vector last_tangent, std::size_t steps) {
        const double width = width_;
        const Vector a = c.p[1] - c.p[0];
        const Vector b = (c.p[2] - c.p[1]) - a;
        const Vector e = ((c.p[3] - c.p[2]) - (c.p[2] - c.p[1])) - b;
        Place last = last_;
        const double last_step = static_cast<double>(steps);
        for (double step = 1; step < last_step; ++step) {
            const double t = step / last_step;
            const Point on_curve = c.p[0] + t * (3 * a + t * (3 * b + t * e));
            const Vector speed = 3 * (a + t * (2 * b + t * e));
            const double size = std::sqrt(squared_norm(speed));
            const Vector tangent = size > 0 ? speed / size : tangent_at(Curve{c}, t);
            const Place place{on_curve, on_curve + width * outwards(tangent), tangent};
            line_.add(last, place);
            last = place;
        }
        last_ = {c.p[3], c.p[3] + width * outwards(last_tangent), last_tangent};
        line_.add(last, last_);
    }

    static constexpr double most_steps = 10000;

    OffsetLine& line_;
    Place last_;
    double width_;
    double error_;
};

}  // namespace

void offset_onto(std::vector<Point>& line, const BesideCubic& beside, std::vector<Detour>& detours) {
    const Point start = beside.cubic.p[0];
    const Place first{start, start + beside.width_mm * outwards(beside.first_tangent), beside.first_tangent};
    OffsetLine offset(line, first, detours);
    CubicOffset(offset, first, beside.width_mm, beside.error_mm)
        .add(beside.cubic, beside.last_tangent, most_halvings);
    offset.end_detour();
}

}  // namespace dartwright::cutting
