#include "comparison_json.hpp"

#include "dartwright/geometry/motion.hpp"

namespace dartwright::tools {

namespace {

Json json_of(const ComparedNotch& notch);
Json json_of(const ComparedPart& part);
Json json_of(const ComparedPivot& pivot);
Json json_of(const ComparedRun& run);
Json json_of(const ComparedSeam& seam);
Json json_of(const ComparedDart& dart);
Json json_of(const ComparedPiece& piece);
Json json_of(const Loss& loss);

template <class Each>
Json json_list(const std::vector<Each>& all) {
    Json out = Json::array();
    for (const Each& each : all) out.push_back(json_of(each));
    return out;
}

Json json_of(const std::optional<double>& value) {
    return value ? Json(*value) : Json(nullptr);
}
Json json_of(const BeforeAfter& amount) {
    return {{"before", json_of(amount.before)},
            {"after", json_of(amount.after)},
            {"difference", json_of(amount.difference())}};
}
BeforeAfter in_degrees(const BeforeAfter& rad) {
    BeforeAfter out;
    if (rad.before) out.before = degrees(*rad.before);
    if (rad.after) out.after = degrees(*rad.after);
    return out;
}

Json with_name(const char* key, const std::string& name, const Json& more) {
    Json out{{key, name}};
    out.update(more);
    return out;
}

Json json_of(const std::optional<DartSeen>& dart) {
    if (!dart) return nullptr;
    return {{"place", dart->place},
            {"angle", degrees(dart->angle_rad)},
            {"intake", dart->intake_mm},
            {"back_off", dart->back_off_mm}};
}

const char* word_of(DartChange change) {
    switch (change) {
        case DartChange::kept:
            return "kept";
        case DartChange::moved:
            return "moved";
        case DartChange::changed:
            return "changed";
        case DartChange::gone:
            return "gone";
        case DartChange::opened:
            return "new";
    }
    return "";
}

Json json_of(const ComparedNotch& notch) {
    return {{"edge", notch.edge},
            {"from", notch.from},
            {"distances", {json_of(notch.at_mm[0]), json_of(notch.at_mm[1])}}};
}

Json json_of(const ComparedPart& part) {
    Json stretches = Json::array();
    for (const PartStretch& each : part.stretches)
        stretches.push_back(
            {{"edge", each.edge}, {"from_share", each.from_share}, {"to_share", each.to_share}});
    return {{"stretches", stretches},
            {"length", part.length_mm},
            {"turn", degrees(angle(part.motion))},
            {"strays", part.strays_mm}};
}

Json json_of(const ComparedPivot& pivot) {
    Json out{{"darts_before", pivot.darts_before}, {"darts_after", pivot.darts_after}};
    out.update(json_of(in_degrees(pivot.angle_rad)));
    out["strays"] = json_of(pivot.strays_mm);
    return out;
}

Json json_of(const ComparedRun& run) {
    return with_name("edge", run.edge, json_of(run.sewn_mm));
}
Json json_of(const ComparedSeam& seam) {
    return with_name("name", seam.name, json_of(seam.difference_mm));
}
Json json_of(const ComparedDart& dart) {
    return {{"name", dart.name},
            {"change", word_of(dart.change)},
            {"before", json_of(dart.before)},
            {"after", json_of(dart.after)}};
}

Json json_of(const OutlineDistance& distance) {
    return {{"at_least", distance.at_least_mm}, {"at_most", distance.at_most_mm}};
}

Json json_of(const ComparedPiece& piece) {
    return {{"name", piece.name},
            {"mirrored", piece.is_mirrored},
            {"turned", degrees(piece.turned_rad)},
            {"shifted", {piece.shifted_mm.x, piece.shifted_mm.y}},
            {"recut", piece.is_recut},
            {"area", json_of(piece.area_mm2)},
            {"runs", json_list(piece.runs)},
            {"pivots", json_list(piece.pivots)},
            {"darts", json_list(piece.darts)},
            {"notches", json_list(piece.notches)},
            {"separated_into", piece.separated_into},
            {"parts", json_list(piece.parts)},
            {"outline_distance", piece.outline ? json_of(*piece.outline) : Json(nullptr)}};
}

Json text_or_null(const std::string& text) {
    return text.empty() ? Json(nullptr) : Json(text);
}

Json json_of(const Loss& loss) {
    Json out{{"what", loss.what},
             {"piece", text_or_null(loss.piece)},
             {"edge", text_or_null(loss.edge)},
             {"darts", loss.darts},
             {"seam", text_or_null(loss.seam)}};
    out.update(json_of(loss.amount));
    out["allowed"] = json_of(loss.allowed);
    out["message"] = loss.message;
    out["remedy"] = loss.remedy;
    return out;
}

}  // namespace

Json json_of(const Comparison& comparison) {
    return {{"dartwright_compare", 1},
            {"kept", comparison.is_kept()},
            {"losses", json_list(comparison.losses)},
            {"changes", json_list(comparison.changes)},
            {"pieces", json_list(comparison.pieces)},
            {"seams", json_list(comparison.seams)},
            {"notes", comparison.notes}};
}

}  // namespace dartwright::tools
