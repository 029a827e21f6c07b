#include "dartwright/files/outline_reader.hpp"

#include <algorithm>

#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/outline_direction.hpp"
#include "dartwright/pattern/pattern_rules.hpp"
#include "dartwright/words/quoted.hpp"

namespace dartwright {
namespace {

const char* const item_kinds = "an item with \"edge\" or with \"dart\"";

std::optional<Shape> read_spline(Reading& reading, const JsonNode& node) {
    const std::size_t problems = reading.problems.size();
    SplineShape spline;
    const JsonNodes points = list_of(reading, node, "measured points [[x, y], ...]");
    for (const JsonNode* child : points)
        if (const auto point = read_point(reading, *child)) spline.through.push_back(*point);
    if (node.kind == JsonNode::Kind::list) reading.heed(node, wanted_of_measured_points(points.size()));
    if (reading.problems.size() > problems) return std::nullopt;
    return spline.through.empty() ? std::nullopt : std::optional<Shape>(spline);
}

Shape read_shape(Reading& reading, const JsonNode& item, const Fields& fields) {
    const JsonNode* curve = fields.optional("curve");
    const JsonNode* through = fields.optional("through");
    if (curve && through) reading.add(item, "both \"curve\" and \"through\"", "one of them or neither");
    Shape shape = StraightShape{};
    if (through) shape = read_spline(reading, *through).value_or(shape);
    if (curve)
        if (const auto controls = read_two_points(reading, *curve)) shape = CubicShape{*controls};
    return shape;
}

OutlineItem read_edge(Reading& reading, const JsonNode& node) {
    const Fields fields(reading, node, "an edge item", {"edge", "to", "curve", "through", "fullness"});
    EdgeItem edge;
    OutlineItem item;
    if (const JsonNode* name = fields.required("edge", "the edge's name")) {
        edge.edge = read_name(reading, *name).value_or("");
        reading.heed(*name, wanted_instead_of_edge_name(edge.edge));
    }
    if (const JsonNode* to = fields.required("to", "the point [x, y] where the item ends"))
        item.to = read_point(reading, *to).value_or(Point{});
    edge.shape = read_shape(reading, node, fields);
    if (const JsonNode* fullness = fields.optional("fullness"))
        edge.fullness = read_length(reading, *fullness).value_or(0);
    item.what = std::move(edge);
    return item;
}

std::optional<std::array<std::array<Point, 2>, 2>> read_legs(Reading& reading, const JsonNode& node) {
    if (node.kind != JsonNode::Kind::list || node.children.size() != 2) {
        reading.reject(node, "two curved legs [[c1, c2], [c3, c4]]");
        return std::nullopt;
    }
    const auto up = read_two_points(reading, *node.children[0]);
    const auto down = read_two_points(reading, *node.children[1]);
    if (!up || !down) return std::nullopt;
    return std::array<std::array<Point, 2>, 2>{*up, *down};
}

OutlineItem read_dart(Reading& reading, const JsonNode& node) {
    const Fields fields(reading, node, "a dart item",
                        {"dart", "point", "pivot", "back_off", "legs", "to", "press", "stitched"});
    DartItem dart;
    OutlineItem item;
    if (const JsonNode* name = fields.required("dart", "the dart's name"))
        dart.name = read_name(reading, *name).value_or("");
    if (const JsonNode* point = fields.required("point", "the dart's point [x, y]"))
        dart.point = read_point(reading, *point).value_or(Point{});
    if (const JsonNode* pivot = fields.optional("pivot")) dart.pivot = read_point(reading, *pivot);
    if (const JsonNode* back_off = fields.optional("back_off"))
        dart.back_off = read_length(reading, *back_off);
    if (const JsonNode* legs = fields.optional("legs")) dart.legs = read_legs(reading, *legs);
    if (const JsonNode* to = fields.required("to", "the point [x, y] where the mouth ends"))
        item.to = read_point(reading, *to).value_or(Point{});
    if (const JsonNode* press = fields.optional("press"))
        dart.press = read_name(reading, *press).value_or("");  // whether it exists is known at the end
    if (const JsonNode* stitched = fields.optional("stitched"))
        dart.stitched = read_length(reading, *stitched);
    item.what = std::move(dart);
    return item;
}

std::optional<OutlineItem> read_item(Reading& reading, const JsonNode& node) {
    if (node.kind != JsonNode::Kind::object) {
        reading.reject(node, item_kinds);
        return std::nullopt;
    }
    const bool is_edge = member(node, "edge") != nullptr;
    const bool is_dart = member(node, "dart") != nullptr;
    if (is_edge && is_dart) {
        reading.add(node, "both \"edge\" and \"dart\"", "one of them");
        return std::nullopt;
    }
    if (is_edge) return read_edge(reading, node);
    if (is_dart || member(node, "point")) return read_dart(reading, node);
    for (const JsonNode* child : node.children) {
        if (const auto meant = nearest_name(child->key, {"edge", "dart"})) {
            reading.add(*child, "the unknown key " + in_quotes(child->key), in_quotes(*meant));
            return std::nullopt;
        }
    }
    reading.add(node, "neither \"edge\" nor \"dart\"", item_kinds);
    return std::nullopt;
}

/// The edge items' nodes with their names, in outline order.
struct NamedNode {
    const JsonNode* node = nullptr;
    std::string name;
};

/// Runs by name; a name that recurs apart from its first stretch is a problem.
RunNames join_runs(Reading& reading, const std::vector<NamedNode>& edges) {
    std::vector<std::string_view> names;
    for (const NamedNode& edge : edges) names.push_back(edge.name);
    const NamedStretches stretches = stretches_of(names);
    for (const NameAgain& again : stretches.again)
        reading.add(*member(*edges[again.item].node, "edge"), again.complaint);
    return {{stretches.names.begin(), stretches.names.end()}, stretches.again.empty()};
}

void check_press(Reading& reading, JsonNodes nodes, const RunNames& runs) {
    for (const JsonNode* node : nodes) {
        const JsonNode* press = node->kind == JsonNode::Kind::object ? member(*node, "press") : nullptr;
        if (press && press->kind == JsonNode::Kind::text && !press->text.empty())
            read_known_name(reading, *press, "edge", runs.names);
    }
}

void check_measured_points(Reading& reading, JsonNodes nodes, const Outline& outline) {
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        const EdgeItem* edge = outline.items[i].as_edge();
        const SplineShape* spline = edge ? std::get_if<SplineShape>(&edge->shape) : nullptr;
        if (!spline) continue;
        const JsonNode& through = *member(*nodes[i], "through");
        Point last = i == 0 ? outline.start : outline.items[i - 1].to;
        for (std::size_t k = 0; k < spline->through.size(); ++k) {
            if (const auto trouble = measured_point_trouble(last, spline->through[k]))
                reading.add(*through.children[k], *trouble);
            last = spline->through[k];
        }
        if (const auto trouble = last_measured_point_trouble(last, outline.items[i].to))
            reading.add(*through.children.back(), *trouble);
    }
}

/// On the outline as it will be kept, so that the verdict is the same when it is written and read again.
void check_lengths(Reading& reading, JsonNodes nodes, const Outline& kept, bool is_turned) {
    const auto& items = kept.items;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const JsonNode& node = *nodes[is_turned ? items.size() - 1 - i : i];
        const EdgeItem* edge = items[i].as_edge();
        if (edge && edge->fullness != 0)
            reading.heed(*member(node, "fullness"),
                         wanted_instead_of_fullness(edge->fullness, length_of_item(kept, i)));
        const DartItem* dart = items[i].as_dart();
        if (!dart || !dart->stitched) continue;
        const DartFigures figures = figures_of(kept, i);
        reading.heed(*member(node, "stitched"),
                     wanted_instead_of_stitched(*dart->stitched, std::min(figures.leg_a, figures.leg_b)));
    }
}

}  // namespace

OutlineRead read_outline(Reading& reading, const JsonNode& node) {
    const std::size_t problems = reading.problems.size();
    OutlineRead read;
    const Fields fields(reading, node, "an outline", {"start", "items"});
    if (const JsonNode* start = fields.required("start", "the point [x, y] where the outline starts"))
        read.outline.start = read_point(reading, *start).value_or(Point{});
    const JsonNode* items = fields.required("items", "the list of edges and darts");
    if (!items) return read;
    const JsonNodes nodes = list_of(reading, *items, "the list of edges and darts");
    std::vector<NamedNode> edges;
    bool is_every_name_read = items->kind == JsonNode::Kind::list;
    for (const JsonNode* child : nodes) {
        auto item = read_item(reading, *child);
        const EdgeItem* edge = item ? item->as_edge() : nullptr;
        const bool has_name = item && (!edge || !edge->edge.empty());
        is_every_name_read = is_every_name_read && has_name;
        if (!item) continue;
        if (edge && has_name) edges.push_back({child, edge->edge});
        read.outline.items.push_back(std::move(*item));
    }
    if (const auto trouble = edges_missing(edges.size()); trouble && is_every_name_read)
        reading.add(*items, *trouble);
    read.runs = join_runs(reading, edges);
    // Without an edge every name elsewhere would be a problem too, which says nothing new.
    read.runs.is_sound = read.runs.is_sound && is_every_name_read && !edges.empty();
    if (is_every_name_read) check_press(reading, nodes, read.runs);
    if (reading.problems.size() == problems) check_measured_points(reading, nodes, read.outline);
    const bool is_turned = reading.problems.size() == problems && is_clockwise(read.outline);
    // Names are told in the order in which the outline will be kept.
    if (is_turned) std::reverse(read.runs.names.begin(), read.runs.names.end());
    if (reading.problems.size() == problems)
        check_lengths(reading, nodes, is_turned ? reversed(read.outline) : read.outline, is_turned);
    return read;
}

}  // namespace dartwright
