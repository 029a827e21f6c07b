#pragma once

// Private to the library: a seam with its runs looked up, ready to be walked.

#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "dartwright/checks/piece_context.hpp"

namespace dartwright {

/// One run of a seam's side, in the direction in which it is walked.
struct WalkedPart {
    const PieceContext* piece = nullptr;
    const Run* run = nullptr;
    RunEnd from = RunEnd::start;
    double begins = 0;  ///< walked distance at which this part begins, mm
    /// Of a closed run (one edge all round its piece): where on the run the walk begins, mm from its start.
    std::optional<double> closed_from = {};

    bool is_closed_run() const { return closed_from.has_value(); }
    RunEnd far_end() const { return from == RunEnd::start ? RunEnd::end : RunEnd::start; }
    double ends() const { return begins + run->length; }
    /// Sewn distance from the run's anticlockwise start for a walked one, and the other way.
    double on_run(double walked) const {
        const double along = walked - begins;
        if (closed_from) return round(from == RunEnd::start ? *closed_from + along : *closed_from - along);
        return from == RunEnd::start ? along : run->length - along;
    }
    double walked(double on_run) const {
        if (closed_from)
            return begins + round(from == RunEnd::start ? on_run - *closed_from : *closed_from - on_run);
        return begins + (from == RunEnd::start ? on_run : run->length - on_run);
    }
    /// A distance along a closed run, in [0, length).
    double round(double distance) const {
        const double within = std::fmod(distance, run->length);
        return within < 0 ? within + run->length : within;
    }
};

struct WalkedSide {
    std::vector<WalkedPart> parts;  ///< one or more
    double length = 0;              ///< sewn, mm
};

struct WalkedSeam {
    const Seam* seam = nullptr;
    Unit unit = Unit::mm;        ///< of the pattern, in which it is spoken of
    bool is_measurable = false;  ///< every piece closes; the sides are empty otherwise
    std::array<WalkedSide, 2> sides;
    double ease = 0;  ///< signed: positive when the second side is meant to be longer

    double difference() const { return sides[1].length - sides[0].length - ease; }
    /// Both sides are one and the same edge (a pair of pieces joined to each other).
    bool is_with_itself() const;
    /// What a place on the second side may lag behind its partner on the first, least and most.
    double least_lag() const { return ease < 0 ? ease : 0; }
    double most_lag() const { return ease > 0 ? ease : 0; }
};

/// UnknownName for pieces, edges and ends that do not exist. The contexts must outlive the result.
WalkedSeam walked_seam(const std::vector<PieceContext>& pieces, const Seam& seam);

/// The part in which a walked distance lies (the later one at a joint, the last one beyond the end).
const WalkedPart& part_at(const WalkedSide& side, double walked);

/// The sides as a message names them: by their pieces, with the edges too where the pieces do not tell them
/// apart.
std::array<std::string, 2> side_names(const Seam& seam);
std::array<std::string, 2> side_names(const WalkedSeam& seam);

/// The name of the edge beside this run at that end.
const std::string& neighbour_at(const Run& run, RunEnd end);
/// A seam's end: where its walk begins, or where it ends.
enum class SeamEnd { start, far };
/// The sum of the two sides' angles at that end, radians.
double angle_sum(const WalkedSeam& seam, SeamEnd end);
/// The part of a side at that end of the seam, and which end of its run that is.
struct SeamCorner {
    const WalkedPart* part = nullptr;
    RunEnd end = RunEnd::start;
};
SeamCorner corner_of(const WalkedSide& side, SeamEnd end);
/// The words of the operation that trues the seam at that end. Empty where the edge that crosses it there
/// does not say which end is meant.
std::vector<std::string> command_for_end(const WalkedSeam& seam, const SeamCorner& where);

}  // namespace dartwright
