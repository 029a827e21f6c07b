#pragma once

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "dartwright/pattern/notch.hpp"
#include "dartwright/pattern/outline.hpp"

namespace dartwright {

/// What is said of a corner: by default it is meant to run on smoothly.
enum class CornerIs { smooth, free };

struct Cut {
    int quantity = 1;
    std::string fold;                      ///< edge laid on the fold; empty if none
    bool same = false;                     ///< copies that are not mirrored
    std::map<std::string, CornerIs> ends;  ///< corners of the folds, by the neighbouring edge
    std::string second_fold = {};  ///< another edge laid on a fold (a quarter circle); only beside `fold`
    friend bool operator==(const Cut&, const Cut&) = default;
};

struct Grain {
    Point from;
    Point to;
    std::string along;  ///< edge that the grain is parallel to; empty if none
    friend bool operator==(const Grain&, const Grain&) = default;
};

/// A width over a stretch of a run; without a stretch it is the whole run's.
struct AllowanceStretch {
    std::string from;
    double at = 0;
    double to = 0;
    double width = 0;
    friend bool operator==(const AllowanceStretch&, const AllowanceStretch&) = default;
};
using Allowance = std::variant<double, std::vector<AllowanceStretch>>;

struct LineMark {
    std::vector<Point> points;  ///< two or more
    friend bool operator==(const LineMark&, const LineMark&) = default;
};
struct DrillMark {
    Point at;
    friend bool operator==(const DrillMark&, const DrillMark&) = default;
};
struct Mark {
    std::variant<LineMark, DrillMark> what;
    std::string name;
    friend bool operator==(const Mark&, const Mark&) = default;
};

/// A dart inside a piece with a point at each end, widest between them.
struct DoubleDart {
    std::string name;
    Point from;
    Point to;
    std::array<Point, 2> widest;
    std::string press;
    friend bool operator==(const DoubleDart&, const DoubleDart&) = default;
};

/// The lengths of its four sides, mm: from `from` to the two widest points, in their order, then from `to`.
std::array<double, 4> leg_lengths(const DoubleDart& dart);
/// The distance between the widest points, mm.
double intake_of(const DoubleDart& dart);

/// The part of the body that a piece covers.
enum class Worn { front, back };
/// Which side of the cloth lies up where the piece is as drawn.
enum class SideUp { right, wrong };

struct Piece {
    std::string name;
    std::optional<Cut> cut;
    std::optional<Grain> grain;
    Outline outline;
    std::vector<DoubleDart> double_darts;
    std::vector<Notch> notches;
    std::vector<std::pair<std::string, Allowance>> allowance;  ///< by run, in the file's order
    std::vector<Mark> marks;
    std::optional<Worn> worn = {};   ///< with it, left and right are the wearer's
    SideUp side_up = SideUp::right;  ///< says nothing where `worn` is absent
    friend bool operator==(const Piece&, const Piece&) = default;
};

/// The edges laid on a fold: none, one or two.
std::vector<std::string> fold_edges(const Piece& piece);
bool is_fold_edge(const Piece& piece, const std::string& edge);

/// Index of the dart of that name in the outline, or empty.
std::optional<std::size_t> find_dart(const Piece& piece, const std::string& name);
/// Cloth: the outline's area with wedges drawn to the pivots taken out, double darts too, mm^2.
double cloth_area(const Piece& piece);

}  // namespace dartwright
