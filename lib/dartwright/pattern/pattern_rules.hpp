#pragma once

// Private to the library. The rules that a pattern must fulfil, each once: the reader of the pattern file
// says them of a file's values, and `problems_of` of a pattern's.

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// What a rule says of what breaks it.
struct Complaint {
    std::string found;
    std::string expected;
};
using PerhapsComplaint = std::optional<Complaint>;

/// Lengths and coordinates over this are absurd for clothes: a slip of the unit or of a finger, mm.
inline constexpr double largest_length_mm = 10'000;
/// Measured points nearer than this are one place, mm. No tape shows a millionth of a millimetre, and the
/// spline divides by the distance, which must not vanish.
inline constexpr double least_measured_distance_mm = 1e-6;
inline constexpr int largest_quantity = 10'000;
/// A name is read, drawn and printed: it has no more letters (code points) than this.
inline constexpr std::size_t most_letters = 200;
/// Code points of a name in UTF-8.
std::size_t letters_of(std::string_view name);
/// No list of a pattern is longer: pieces, items of an outline, measured points, darts, notches, stretches,
/// marks and their points, seams, the parts of a side, operations, widths, corners; nor one of an exercise.
inline constexpr std::size_t most_entries = 10'000;

/// What was expected instead of a single value; empty if the rule is fulfilled. NaN and infinity never are.
std::string wanted_instead_of_name(std::string_view name);
std::string wanted_instead_of_edge_name(const std::string& name);  ///< beyond what is asked of every name
std::string wanted_instead_of_coordinate(double mm, Unit unit);    ///< the limit is said in the unit
std::string wanted_instead_of_length(double mm, Unit unit);
/// The same with a limit of one's own, whole metres.
std::string wanted_instead_of_coordinate_within(double mm, double largest_mm);
std::string wanted_instead_of_length_within(double mm, double largest_mm);
std::string wanted_instead_of_angle(double degrees);
std::string wanted_instead_of_whole(double number, int low, int high);
std::string wanted_instead_of_fullness(double fullness_mm, double item_length_mm);
std::string wanted_instead_of_stitched(double stitched_mm, double leg_mm);
std::string wanted_instead_of_stretch_end(double at, double to);
std::string wanted_of_entries(std::size_t count);
std::string wanted_of_pieces(std::size_t count);
std::string wanted_of_stretches(std::size_t count);
std::string wanted_of_parts(std::size_t count);
std::string wanted_of_line(std::size_t points);
std::string wanted_of_measured_points(std::size_t points);

PerhapsComplaint edges_missing(std::size_t edges);
/// Kinds are words such as `piece`, `seam` or `dart`.
Complaint named_again(const char* kind, const std::string& name);
Complaint not_existing(const std::string& kind, const std::string& name,
                       const std::vector<std::string>& known);
PerhapsComplaint second_fold_trouble(bool has_fold, const std::string& fold, const std::string& second);
Complaint ends_without_fold();
Complaint side_up_without_worn();
PerhapsComplaint grain_trouble(Point from, Point to);
/// The name of an end of the run `edge` between its neighbours: one of them, unless it lies at both ends, or
/// `start` or `end`.
PerhapsComplaint end_trouble(const std::string& name, const std::string& edge, const std::string& before,
                             const std::string& after);
/// Of the notch at which `edge` begins: only a run that is the whole outline has no beginning of its own, and
/// it has one.
PerhapsComplaint begins_trouble(const std::string& edge, bool is_whole_outline, bool has_begun);
Complaint not_next_to_seam(const std::string& name, const std::vector<std::string>& known);
/// A measured point beside the one before it, and the last one beside the item's end.
PerhapsComplaint measured_point_trouble(Point before, Point point);
PerhapsComplaint last_measured_point_trouble(Point last, Point end);

/// A name that comes back apart from its first stretch.
struct NameAgain {
    std::size_t item = 0;  ///< index among the names given
    Complaint complaint;
};
/// The runs of an outline by the names of its edge items.
struct NamedStretches {
    std::vector<std::string_view> names;  ///< each once, in outline order
    std::vector<NameAgain> again;
};
/// The outline has no beginning of its own: the last stretch and the first may be one run. O(n).
NamedStretches stretches_of(std::span<const std::string_view> edges);

}  // namespace dartwright
