#pragma once

#include <string>
#include <vector>

#include "dartwright/pattern/outline.hpp"

namespace dartwright {

/// All items of one name in outline order, with the darts that interrupt them closed.
struct Run {
    std::string edge;
    std::vector<std::size_t> items;  ///< indices of its edge items, in walking order
    std::vector<std::size_t> darts;  ///< indices of the darts inside the run, in walking order
    std::string before;              ///< name of the neighbouring run at its anticlockwise start
    std::string after;               ///< and at its end
    std::vector<std::size_t> corner_darts_before;  ///< darts between the neighbour before and this run
    std::vector<std::size_t> corner_darts_after;
    double length = 0;  ///< sewn length, mm
};

/// Every run in outline order. Precondition: names contiguous (darts apart, cyclically), as the reader
/// ensures; otherwise the runs of a recurring name are merged in order. O(items).
std::vector<Run> runs_of(const Outline& outline);
/// The run of that name, or null.
const Run* find_run(const std::vector<Run>& runs, const std::string& edge);

/// An end of a run: `start` is the anticlockwise one.
enum class RunEnd { start, end };

/// Which end of the run `from` names: the neighbouring edge there, or the words `start` and `end`.
/// Empty if it names neither. When both neighbours have one name only the two words will do.
std::optional<RunEnd> end_named(const Run& run, const std::string& from);
/// The name to use for an end: its neighbour's, or `start`/`end` where the neighbours share a name.
std::string name_of_end(const Run& run, RunEnd end);

/// A place on a run, darts closed.
struct RunPlace {
    std::size_t item = 0;   ///< index of the edge item
    double along_item = 0;  ///< geometric distance from the item's start, mm
    Point point;
    Vector tangent;  ///< unit, in outline direction
};
/// The place at a sewn distance from the run's anticlockwise start, clamped to the run. At a joint or
/// a mouth the item that begins there is taken, save at the run's end.
RunPlace place_on_run(const Outline& outline, const Run& run, double sewn_distance);
/// Sewn distances from the run's start at which the inner darts stand (where both mouth ends meet, closed).
std::vector<double> dart_distances(const Outline& outline, const Run& run);
/// Sewn distance from the run's start to the start of each of its items, in the order of run.items.
std::vector<double> item_distances(const Outline& outline, const Run& run);

/// The interior angle, in radians, between a run's end and its neighbour's, darts in that corner closed as
/// sewn.
double corner_angle(const Outline& outline, const Run& run, RunEnd end);
/// The corner's place (the run's own end point).
Point end_point(const Outline& outline, const Run& run, RunEnd end);

}  // namespace dartwright
