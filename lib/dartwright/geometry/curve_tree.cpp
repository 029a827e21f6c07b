#include "dartwright/geometry/curve_tree.hpp"

#include <algorithm>
#include <limits>

#include "dartwright/geometry/closest.hpp"

namespace dartwright {
namespace {

double squared_distance(const Box& box, Point p) {
    return squared_norm({std::max({box.low.x - p.x, 0.0, p.x - box.high.x}),
                         std::max({box.low.y - p.y, 0.0, p.y - box.high.y})});
}

// Both questions tell how near a box or a curve could be (squared, mm^2), keep the nearest curve, and say how
// near the next one must be to matter.
class NearestToPlace {
  public:
    explicit NearestToPlace(Point p) : p_(p) {}
    double squared_bound(const Box& box) const { return squared_distance(box, p_); }
    void look_at(const Curve& curve) { least_ = std::min(least_, closest_point(curve, p_).distance); }
    double squared_limit() const { return least_ * least_; }
    double least() const { return least_; }

  private:
    Point p_;
    double least_ = std::numeric_limits<double>::infinity();
};

class NearestControls {
  public:
    NearestControls(const Curve& curve, double enough) : controls_(controls_of(curve)), enough_(enough) {}
    double squared_bound(const Box& box) const {
        double most = 0;
        for (const Point p : controls_) most = std::max(most, squared_distance(box, p));
        return most;
    }
    void look_at(const Curve& curve) {
        const std::array<Point, 4> others = controls_of(curve);
        double most = 0;
        for (std::size_t i = 0; i < others.size(); ++i)
            most = std::max(most, squared_norm(others[i] - controls_[i]));
        squared_least_ = std::min(squared_least_, most);
    }
    // Nothing is nearer than 0.
    double squared_limit() const { return squared_least_ <= enough_ * enough_ ? 0 : squared_least_; }
    double least() const { return std::sqrt(squared_least_); }

  private:
    std::array<Point, 4> controls_;
    double enough_;
    double squared_least_ = std::numeric_limits<double>::infinity();
};

}  // namespace

std::array<Point, 4> controls_of(const Curve& curve) {
    if (const auto* cubic = std::get_if<Cubic>(&curve)) return cubic->p;
    const Line& line = std::get<Line>(curve);
    return {line.a, between(line.a, line.b, 1.0 / 3), between(line.a, line.b, 2.0 / 3), line.b};
}

CurveTree::CurveTree(std::vector<Curve> curves) : curves_(std::move(curves)) {
    nodes_.reserve(2 * curves_.size());
    if (!curves_.empty()) add_node(0, curves_.size());
}

std::size_t CurveTree::add_node(std::size_t first, std::size_t end) {
    const std::size_t node = nodes_.size();
    nodes_.push_back({bounds(curves_[first]), first, 0});
    if (end - first > 1) {
        const std::size_t middle = first + (end - first) / 2;
        const std::size_t child = add_node(first, middle);
        const std::size_t second_child = add_node(middle, end);
        nodes_[node].box = joined(nodes_[child].box, nodes_[second_child].box);
        nodes_[node].second_child = second_child;
    }
    return node;
}

// Looks into the nearer box first, so that the farther one can often be left out.
template <class Question>
void CurveTree::ask(Question& question, std::size_t node) const {
    const Node& here = nodes_[node];
    if (here.second_child == 0) return question.look_at(curves_[here.curve]);
    std::size_t nearer = node + 1;
    std::size_t farther = here.second_child;
    double bound = question.squared_bound(nodes_[nearer].box);
    double farther_bound = question.squared_bound(nodes_[farther].box);
    if (farther_bound < bound) {
        std::swap(nearer, farther);
        std::swap(bound, farther_bound);
    }
    if (bound < question.squared_limit()) ask(question, nearer);
    if (farther_bound < question.squared_limit()) ask(question, farther);
}

double CurveTree::distance_from(Point p) const {
    NearestToPlace question(p);
    if (!nodes_.empty()) ask(question, 0);
    return question.least();
}

double CurveTree::controls_apart(const Curve& curve, double enough) const {
    NearestControls question(curve, enough);
    if (!nodes_.empty()) ask(question, 0);
    return question.least();
}

}  // namespace dartwright
