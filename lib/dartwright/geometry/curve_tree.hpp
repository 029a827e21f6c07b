#pragma once

#include <array>
#include <vector>

#include "dartwright/geometry/curve.hpp"

namespace dartwright {

/// Curves in a tree of boxes, to be asked often how far something lies from the nearest of them. Each box
/// holds curves that follow each other, so the boxes are small where the list walks along an outline: then a
/// question costs O(log n). A list in another order has the same answers at a higher cost, O(n) at worst.
class CurveTree {
  public:
    explicit CurveTree(std::vector<Curve> curves);

    const std::vector<Curve>& curves() const { return curves_; }
    /// How far the place is from the nearest curve, as exactly as `closest_point`; infinite without curves.
    double distance_from(Point p) const;
    /// No place of `curve` is farther from the nearest curve than this: the greatest distance between its
    /// control points and those of the curve for which that is least, found to rounding; or one for which it
    /// is no more than `enough`. Infinite without curves.
    double controls_apart(const Curve& curve, double enough) const;

  private:
    struct Node {
        Box box;
        std::size_t curve = 0;         // of a leaf
        std::size_t second_child = 0;  // the first one follows the node itself; 0 for a leaf
    };
    std::size_t add_node(std::size_t first, std::size_t end);
    template <class Question>
    void ask(Question& question, std::size_t node) const;

    std::vector<Curve> curves_;
    std::vector<Node> nodes_;
};

/// Control points of a curve; those of a line divide it evenly.
std::array<Point, 4> controls_of(const Curve& curve);

}  // namespace dartwright
