// cluster: shares a dart equally among a row of small ones.

#include "arguments.hpp"
#include "dartwright/darts/cluster.hpp"
#include "dartwright/geometry/motion.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/words/lengths.hpp"
#include "operation.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

ClusterRequest request_of(const Arguments& arguments) {
    ClusterRequest request;
    request.piece = arguments.required("piece");
    request.dart = arguments.required("dart");
    if (const auto count = arguments.value("darts")) request.count = parse_whole(*count);
    request.apart_mm = parse_length(arguments.required("apart"));
    request.to = arguments.value("to").value_or("");
    if (arguments.has("parallel")) request.lies = ClusterLies::parallel;
    request.press = arguments.value("press").value_or("");
    request.hold = arguments.value("hold").value_or("");
    return request;
}

std::string text_of(const ClusterAccount& account, Unit unit, const Ink& ink) {
    // Parallel darts are told at their points, where they close: the old pivot is none of theirs.
    const bool is_parallel = account.lies == ClusterLies::parallel;
    const auto angle_of = [&](double at_pivot, double at_point) {
        return is_parallel ? angle_words(at_point) + " at its point" : angle_words(at_pivot);
    };
    std::string text = std::string("Shared ") + account.dart + " on " + account.piece + ", " +
                       angle_of(account.angle_rad, account.sewn_angle_rad) + " with a mouth of " +
                       length_words(account.old_intake_mm, unit) + ", among " +
                       std::to_string(account.darts.size()) + " darts with legs of " +
                       length_words(account.darts.front().leg_mm, unit) + ".\n";
    for (const ClusterDart& dart : account.darts) {
        text += std::string("  ") + dart.name + ": " + angle_of(dart.angle_rad, dart.sewn_angle_rad) +
                ", a mouth of " + length_words(dart.intake_mm, unit);
        if (!is_parallel) text += ", backed off by " + length_words(dart.back_off_mm, unit);
        text += "\n";
    }
    return text + note_lines(account.notes) + runs_table(account.runs, unit, ink);
}

Json json_of(const ClusterAccount& account) {
    Json darts = Json::array();
    for (const ClusterDart& dart : account.darts)
        darts.push_back({{"name", dart.name},
                         {"angle", degrees(dart.angle_rad)},
                         {"sewn_angle", degrees(dart.sewn_angle_rad)},
                         {"intake", dart.intake_mm},
                         {"leg", dart.leg_mm},
                         {"back_off", dart.back_off_mm}});
    return {{"dartwright_cluster", 1},
            {"piece", account.piece},
            {"dart", account.dart},
            {"angle", degrees(account.angle_rad)},
            {"sewn_angle", degrees(account.sewn_angle_rad)},
            {"intake_before", account.old_intake_mm},
            {"darts", darts},
            {"runs", runs_json(account.runs)},
            {"notes", account.notes}};
}

ExitStatus run_cluster(const Arguments& arguments, Invocation& call) {
    const ClusterRequest request = request_of(arguments);
    return run_operation(arguments, call, [&request](const Pattern& pattern, const Ink& ink) {
        ClusterResult result = cluster(pattern, request);
        return Operated{std::move(result.pattern), text_of(result.account, pattern.unit, ink),
                        json_of(result.account)};
    });
}

}  // namespace

Command cluster_command() {
    return {
        "cluster",
        "share a dart equally among a row of small ones",
        "FILE --piece PIECE --dart DART --apart LENGTH [OPTIONS]",
        "Opens a row of equal darts in one edge, about the place of the dart or another, and makes every leg "
        "as long as the middle dart's. They keep the pivot and point to it; parallel ones have their own.",
        with_operation_options(
            {piece_option("the piece that has the dart"),
             {"dart", 0, "DART", "the dart to share out"},
             {"darts", 0, "COUNT", "how many darts the cluster has (3 if absent)"},
             {"apart", 0, "LENGTH", "sewn distance from one mouth to the next"},
             {"to", 0, "PLACE", "the cluster's middle, EDGE@DISTANCE/FROM; where the dart is, if absent"},
             {"parallel", 0, "", "lie parallel once sewn, each with its point as pivot"},
             {"press", 0, "EDGE", "the edge towards which all are pressed; as the dart was, if absent"},
             {"hold", 0, "EDGE",
              "the edge that stays where it is; chosen by the fold, then the grain, if absent"}}),
        {{"dartwright cluster bodice.json --piece front --dart \"waist dart\" --apart 2.5cm -o cluster.json",
          "three darts instead of the waist dart, 2.5 cm apart"},
         {"dartwright cluster bodice.json --piece front --dart \"bust dart\" --to shoulder@50% --darts 2 "
          "--apart "
          "3cm -o pair.json",
          "two darts in the shoulder"}},
        run_cluster};
}

}  // namespace dartwright::tools
