#include "dartwright/darts/cluster.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/recording/request_words.hpp"
#include "dartwright/darts/repoint.hpp"
#include "dartwright/darts/split.hpp"
#include "dartwright/darts/turning/dart_turn.hpp"
#include "dartwright/geometry/accuracy.hpp"
#include "dartwright/geometry/elementary.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/empty_items.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/notes.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {
namespace {

struct Row {
    std::string edge;
    std::string from;
    double middle_mm = 0;  ///< sewn, from the run's start
    double length_mm = 0;  ///< of the run
    bool is_about_dart = false;
};

Row row_at_place(const Piece& piece, const std::string& to) {
    const std::vector<Run> runs = runs_of(piece.outline);
    const Place place = parse_place(to, runs, piece.name);
    const Run& run = run_named(runs, place.edge, piece.name);
    return {run.edge, name_of_end(run, RunEnd::start), distance_from_start(place, run), run.length, false};
}

Row row_at_dart(const Piece& piece, const std::string& name) {
    const std::size_t dart = dart_named(piece, name);
    for (const Run& run : runs_of(piece.outline)) {
        for (std::size_t k = 0; k < run.darts.size(); ++k) {
            if (run.darts[k] != dart) continue;
            return {run.edge, name_of_end(run, RunEnd::start), dart_distances(piece.outline, run)[k],
                    run.length, true};
        }
    }
    throw Impossible(
        "the dart " + quoted(name) + " stands in a corner, where there is no one edge for a cluster",
        "give a place on an edge for the cluster's middle");
}

void refuse_bad_words(const ClusterRequest& request) {
    if (request.count < 2) {
        throw BadWords("a cluster of " + std::to_string(request.count) + "; expected two darts or more");
    }
    if (!(request.apart_mm > 0)) {
        throw BadWords("the darts are " + asked_told(request.apart_mm) + " apart; expected more than 0");
    }
}

// Distances along the run, in outline order.
std::vector<double> distances_in(const Row& row, const ClusterRequest& request) {
    std::vector<double> out;
    for (int k = 0; k < request.count; ++k)
        out.push_back(row.middle_mm + (k - (request.count - 1) / 2.0) * request.apart_mm);
    if (out.front() > 0 && out.back() < row.length_mm) return out;
    const double most = 2 * std::min(row.middle_mm, row.length_mm - row.middle_mm) / (request.count - 1);
    throw Impossible("the cluster is longer than " + quoted(row.edge) + " has room for",
                     "set its darts less than " + most_told(most) + " apart");
}

std::string name_in_row(const ClusterRequest& request, std::size_t k) {
    return request.dart + " " + std::to_string(k + 1);
}

// The dart of an odd cluster about its own place stays as the middle one.
bool keeps_middle(const Row& row, const ClusterRequest& request) {
    return row.is_about_dart && request.count % 2 == 1;
}

SplitRequest split_into_row(const Row& row, const ClusterRequest& request) {
    SplitRequest split;
    split.piece = request.piece;
    split.dart = request.dart;
    split.hold = request.hold;
    const std::vector<double> distances = distances_in(row, request);
    const std::size_t middle = distances.size() / 2;
    for (std::size_t k = 0; k < distances.size(); ++k) {
        if (keeps_middle(row, request) && k == middle) continue;
        split.places.push_back({to_text(Place{row.edge, {distances[k], false}, row.from}),
                                1.0 / request.count, name_in_row(request, k), request.press});
    }
    return split;
}

DartItem& dart_in_row(Piece& piece, const ClusterRequest& request, std::size_t k) {
    return *piece.outline.items[dart_named(piece, name_in_row(request, k))].as_dart();
}

DartFigures figures_in_row(const Piece& piece, const ClusterRequest& request, std::size_t k) {
    return figures_of(piece.outline, dart_named(piece, name_in_row(request, k)));
}

double middle_leg(const Piece& piece, const ClusterRequest& request) {
    const std::size_t count = std::size_t(request.count);
    const double first = figures_in_row(piece, request, (count - 1) / 2).leg_a;
    const double second = figures_in_row(piece, request, count / 2).leg_a;
    return (first + second) / 2;
}

// The middle dart's, or as long as every dart of the row can be without reaching beyond the pivot.
double leg_for_all(const Piece& piece, const ClusterRequest& request, Notes notes) {
    const double wanted = middle_leg(piece, request);
    double leg = wanted;
    for (std::size_t k = 0; k < std::size_t(request.count); ++k)
        leg = std::min(leg, figures_in_row(piece, request, k).pivot_leg_a);
    if (leg < wanted) {
        notes.push_back("the legs are " + difference_told(wanted - leg) +
                        " shorter than the middle dart's would be, since the edge comes nearer to the pivot");
    }
    return leg;
}

// On the dart's centre line.
void radiate(DartItem& dart, const DartFigures& f, double leg) {
    const double half = f.angle_rad / 2;
    const double across = f.pivot_leg_a * sine_of(half);
    const double back_off =
        std::max(0.0, f.pivot_leg_a * cosine_of(half) - std::sqrt(leg * leg - across * across));
    if (dart.back_off && *dart.back_off > back_off) dart.back_off = back_off;
    dart.pivot.reset();
    dart.point = f.pivot;
    // Rounding of a leg that just reaches the pivot.
    if (back_off <= step_rounding_mm) return;
    dart.pivot = f.pivot;
    dart.point = f.pivot + back_off * bisector_of(f);
}

void set_legs(Piece& piece, const ClusterRequest& request, Notes notes) {
    const double leg = leg_for_all(piece, request, notes);
    for (std::size_t k = 0; k < std::size_t(request.count); ++k) {
        const DartFigures f = figures_in_row(piece, request, k);
        if (leg <= f.intake / 2) {
            throw Impossible("the mouths are wider than the middle dart's legs can close",
                             "make the cluster of more darts");
        }
        radiate(dart_in_row(piece, request, k), f, leg);
    }
}

// The fold of the middle dart, or between the two middle ones, away from the pivot.
Vector middle_axis(const Piece& piece, const ClusterRequest& request) {
    const std::size_t count = std::size_t(request.count);
    const Vector first = bisector_of(figures_in_row(piece, request, (count - 1) / 2));
    return unit(first + bisector_of(figures_in_row(piece, request, count / 2)));
}

// Legs of a parallel dart come this near to the middle one's, mm: a twentieth of what a pencil could show.
constexpr double same_leg_mm = 0.001;

// Repointed until its legs are of the length wanted: the mouth opens or closes a little each time.
void aim(Pattern& pattern, const ClusterRequest& request, std::size_t k, Vector axis, double leg) {
    Piece& own = pattern.pieces[piece_index(pattern, request.piece)];
    DartItem& dart = dart_in_row(own, request, k);
    // On its centre line but well away from the row's pivot, which would else count as one with it.
    const DartFigures radiating = figures_in_row(own, request, k);
    dart.point = radiating.pivot + radiating.pivot_leg_a / 2 * bisector_of(radiating);
    dart.pivot.reset();
    dart.back_off.reset();
    for (int step = 0; step < 8; ++step) {
        const DartFigures f = figures_in_row(piece_named(pattern, request.piece), request, k);
        if (step > 0 && std::abs(f.leg_a - leg) <= same_leg_mm) return;
        RepointRequest to;
        to.piece = request.piece;
        to.dart = name_in_row(request, k);
        to.point = middle(f.a, f.b) - std::sqrt(leg * leg - f.intake * f.intake / 4) * axis;
        pattern = repoint(pattern, to).pattern;
    }
}

using Turns = std::vector<double>;  // of each dart's centre line from the middle axis, radians

// From the outermost inwards: each moves out of the way of the next. The middle one of an odd number stays.
void aim_all(Pattern& pattern, const ClusterRequest& request, const Turns& turns) {
    const Piece& piece = piece_named(pattern, request.piece);
    const double leg = middle_leg(piece, request);
    const Vector axis = middle_axis(piece, request);
    for (int outer = 0; outer < request.count / 2; ++outer) {
        for (const int k : {outer, request.count - 1 - outer}) {
            const std::size_t at = std::size_t(k);
            aim(pattern, request, at, apply(turn_by(turns[at]), axis), leg);
        }
    }
}

// By what lies open between them at the pivot that was shared out.
Turns turns_about_pivot(const ClusterRequest& request, double angle_rad) {
    Turns turns;
    for (int k = 0; k < request.count; ++k)
        turns.push_back((k - (request.count - 1) / 2.0) * angle_rad / request.count);
    return turns;
}

// By what lies open between them at the points: half of each dart, and the whole of those in between.
Turns turns_about_points(const Piece& piece, const ClusterRequest& request) {
    Turns turns{0};
    for (std::size_t k = 1; k < std::size_t(request.count); ++k) {
        const double between = (figures_in_row(piece, request, k - 1).sewn_angle_rad +
                                figures_in_row(piece, request, k).sewn_angle_rad) /
                               2;
        turns.push_back(turns.back() + between);
    }
    const std::size_t count = turns.size();
    const double middle = (turns[(count - 1) / 2] + turns[count / 2]) / 2;
    for (double& each : turns) each -= middle;
    return turns;
}

// Away from the point, as it is drawn.
Vector centre_line(const DartFigures& f) {
    return unit(unit(f.a - f.point) + unit(f.b - f.point));
}

// The darts are aimed anew from the radiating row, by what they were off, until they are parallel: a mouth
// that is turned opens or closes a little, and its middle moves.
void lay_parallel(Pattern& pattern, const ClusterRequest& request, double angle_rad) {
    Turns turns = turns_about_pivot(request, angle_rad);
    if (request.parallel_about == ParallelAbout::pivot) return aim_all(pattern, request, turns);
    const Pattern radiating = pattern;
    const Vector axis = middle_axis(piece_named(pattern, request.piece), request);
    turns = turns_about_points(piece_named(pattern, request.piece), request);
    constexpr int most_rounds = 24;
    for (int round = 0; round < most_rounds; ++round) {
        pattern = radiating;
        aim_all(pattern, request, turns);
        const Piece& piece = piece_named(pattern, request.piece);
        const Turns wanted = turns_about_points(piece, request);
        double most_off = 0;
        for (std::size_t k = 0; k < turns.size(); ++k) {
            const double off = wanted[k] - angle_from(axis, centre_line(figures_in_row(piece, request, k)));
            most_off = std::max(most_off, std::abs(off));
            turns[k] += off;
        }
        if (most_off <= parallel_within_rad) return;
    }
    throw Impossible("the darts cannot be laid parallel: the edge bends too much between them",
                     "set them nearer to each other, or let them radiate");
}

double sewn_together(const ClusterAccount& account) {
    double sum = 0;
    for (const ClusterDart& dart : account.darts) sum += dart.sewn_angle_rad;
    return sum;
}

std::string degrees_words(double angle_rad) {
    return text_of("%.1f degrees", degrees(angle_rad));
}

void account_for(ClusterAccount& account, const Piece& piece, const ClusterRequest& request) {
    account.piece = request.piece;
    account.dart = request.dart;
    account.lies = request.lies;
    for (std::size_t k = 0; k < std::size_t(request.count); ++k) {
        const DartFigures f = figures_in_row(piece, request, k);
        account.darts.push_back(
            {name_in_row(request, k), f.angle_rad, f.sewn_angle_rad, f.intake, f.leg_a, f.back_off});
    }
    if (request.lies == ClusterLies::parallel) {
        account.notes.push_back("each parallel dart closes about its own point, all together by " +
                                degrees_words(sewn_together(account)) + " (the dart before, at its point: " +
                                degrees_words(account.sewn_angle_rad) + ")");
        account.notes.push_back("parallel darts have pivots of their own; they cannot be merged again");
    }
}

Made made_of(const ClusterRequest& request) {
    Made made{"cluster", {{"piece", request.piece}, {"dart", request.dart}}};
    const auto add = [&](const char* key, const std::string& value) {
        if (!value.empty()) made.request.push_back({key, value});
    };
    add("count", std::to_string(request.count));
    add("apart", words_of_length(request.apart_mm));
    add("to", request.to);
    add("lies", request.lies == ClusterLies::parallel ? "parallel" : "radiating");
    if (request.lies == ClusterLies::parallel && request.parallel_about == ParallelAbout::points)
        add("parallel_about", "points");
    add("press", request.press);
    add("hold", request.hold);
    return made;
}

void refuse_taken_names(const Piece& piece, const ClusterRequest& request) {
    for (std::size_t k = 0; k < std::size_t(request.count); ++k)
        name_chosen(piece, piece.outline.items.size(), {name_in_row(request, k), "", false});
}

}  // namespace

ClusterResult cluster(const Pattern& pattern, const ClusterRequest& request) {
    const SoundEntry sound(pattern);
    if (has_spare_items(pattern)) return cluster(without_spare_items(pattern), request);
    refuse_bad_words(request);
    const Piece& before = piece_named(pattern, request.piece);
    dart_named(before, request.dart);
    refuse_taken_names(before, request);
    const Row row = request.to.empty() ? row_at_dart(before, request.dart) : row_at_place(before, request.to);
    SplitResult shared = split(pattern, split_into_row(row, request));
    ClusterResult result{std::move(shared.pattern), {}};
    ClusterAccount& account = result.account;
    account.notes = std::move(shared.account.notes);
    account.angle_rad = shared.account.angle_rad;
    account.sewn_angle_rad = figures_of(before.outline, dart_named(before, request.dart)).sewn_angle_rad;
    account.old_intake_mm = shared.account.old_intake_mm;
    Piece& piece = result.pattern.pieces[piece_index(pattern, request.piece)];
    if (keeps_middle(row, request)) {
        DartItem& dart = *piece.outline.items[dart_named(piece, request.dart)].as_dart();
        dart.name = name_in_row(request, std::size_t(request.count) / 2);
        if (!request.press.empty()) dart.press = request.press;
    }
    set_legs(piece, request, {account.notes, pattern.unit});
    if (request.lies == ClusterLies::parallel) lay_parallel(result.pattern, request, account.angle_rad);
    const Piece& after = piece_named(result.pattern, request.piece);
    refuse_overlap(after.outline);
    account_for(account, after, request);
    account.runs = run_changes(runs_of(before.outline), runs_of(after.outline));
    result.pattern.made = pattern.made;
    result.pattern.made.push_back(made_of(request));
    return result;
}

}  // namespace dartwright
