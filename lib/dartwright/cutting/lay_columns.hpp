#pragma once

// Private to the room: which stretches of a strip's columns are taken, and where a piece can go.

#include <optional>
#include <vector>

#include "dartwright/geometry/point.hpp"

namespace dartwright::cutting {

struct Interval {
    double low = 0;
    double high = 0;
};

/// A polygon as columns of one width: in each the stretch between its lowest and its highest point there.
/// Its box has its lower left corner at the origin.
struct PieceColumns {
    std::vector<Interval> columns;
    double width = 0;
    double height = 0;
};
/// Precondition: the polygon's box has its lower left corner at the origin. O(sides * columns each spans).
PieceColumns columns_of(const std::vector<Point>& polygon, double step_mm);

/// A strip of columns in which pieces are kept a gap apart.
class Strip {
  public:
    Strip(double width_mm, double step_mm, double gap_mm);
    /// How many columns from the left a piece can begin; 0 if it is too wide.
    std::size_t places_across(const PieceColumns& piece) const;
    /// The lowest place for the piece with its left side at that column; empty if it is not below `below`.
    /// O(columns * log(stretches taken in each)) for each time that it is raised.
    std::optional<double> lowest(const PieceColumns& piece, std::size_t first_column, double below) const;
    void take(const PieceColumns& piece, std::size_t first_column, double y);

  private:
    double width_mm_;
    double step_mm_;
    double gap_mm_;
    std::vector<std::vector<Interval>> taken_;  ///< by column, apart from each other and in order
};

}  // namespace dartwright::cutting
