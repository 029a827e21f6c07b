#include "dartwright/files/piece_reader.hpp"

#include <algorithm>
#include <set>

#include "dartwright/files/outline_reader.hpp"
#include "dartwright/words/lists.hpp"

namespace dartwright {
namespace {

/// Edge names of the piece as its parts refer to them.
class Edges {
  public:
    Edges(Reading& reading, const OutlineRead& outline) : reading_(reading), outline_(outline) {}

    std::string existing(const JsonNode& node) const {
        if (!outline_.runs.is_sound) return read_name(reading_, node).value_or("");
        return read_known_name(reading_, node, "edge", outline_.runs.names).value_or("");
    }
    /// Empty if it names no end of the edge.
    std::string end_of(const std::string& edge, const JsonNode& node) const {
        return read_end_of_run(reading_, node, outline_.runs, edge).value_or("");
    }
    /// Ends of one edge, or of two; the second may be empty.
    std::map<std::string, CornerIs> ends_of(const std::string& edge, const std::string& second,
                                            const JsonNode& node) const {
        const std::map<std::string, CornerIs> ends = read_ends(reading_, node);
        for (const JsonNode* child : node.children) {
            const std::string name(child->key);
            if (second.empty() || !is_next_to(second, name))
                check_end_of_run(reading_, *child, name, outline_.runs, edge);
        }
        return ends;
    }

    /// Of the notch at which that edge begins.
    PerhapsComplaint trouble_of_beginning(const std::string& edge, bool has_begun) const {
        if (!outline_.runs.is_sound || edge.empty()) return std::nullopt;
        return begins_trouble(edge, outline_.runs.names.size() == 1, has_begun);
    }

  private:
    bool is_next_to(const std::string& edge, const std::string& name) const {
        if (!outline_.runs.is_sound) return true;
        const auto [before, after] = neighbours_of(outline_.runs, edge);
        return name == before || name == after;
    }
    Reading& reading_;
    const OutlineRead& outline_;
};

Worn read_worn(Reading& reading, const JsonNode& node) {
    if (node.kind == JsonNode::Kind::text) {
        if (node.text == "front") return Worn::front;
        if (node.text == "back") return Worn::back;
    }
    reading.reject(node, any_of({"front", "back"}));
    return Worn::front;
}

SideUp read_side_up(Reading& reading, const JsonNode& node) {
    if (node.kind == JsonNode::Kind::text) {
        if (node.text == "right") return SideUp::right;
        if (node.text == "wrong") return SideUp::wrong;
    }
    reading.reject(node, any_of({"right", "wrong"}));
    return SideUp::right;
}

Cut read_cut(Reading& reading, const JsonNode& node, const Edges& edges) {
    const Fields fields(reading, node, "a cut", {"quantity", "fold", "second_fold", "same", "ends"});
    Cut cut;
    if (const JsonNode* quantity = fields.optional("quantity"))
        cut.quantity = read_whole(reading, *quantity, 1, largest_quantity).value_or(1);
    if (const JsonNode* fold = fields.optional("fold")) cut.fold = edges.existing(*fold);
    if (const JsonNode* second = fields.optional("second_fold")) {
        cut.second_fold = edges.existing(*second);
        const bool has_fold = fields.optional("fold") != nullptr;
        if (const auto trouble = second_fold_trouble(has_fold, cut.fold, cut.second_fold))
            reading.add(*second, *trouble);
    }
    if (const JsonNode* same = fields.optional("same")) cut.same = read_flag(reading, *same).value_or(false);
    const JsonNode* ends = fields.optional("ends");
    if (ends && !fields.optional("fold")) reading.add(*ends, ends_without_fold());
    if (ends && !cut.fold.empty()) cut.ends = edges.ends_of(cut.fold, cut.second_fold, *ends);
    return cut;
}

Grain read_grain(Reading& reading, const JsonNode& node, const Edges& edges) {
    const Fields fields(reading, node, "a grain", {"from", "to", "along"});
    const JsonNode* from = fields.required("from", "the point [x, y] where the grain line begins");
    const JsonNode* to = fields.required("to", "the point [x, y] where the grain line ends");
    const auto first = from ? read_point(reading, *from) : std::nullopt;
    const auto second = to ? read_point(reading, *to) : std::nullopt;
    Grain grain;
    if (const JsonNode* along = fields.optional("along")) grain.along = edges.existing(*along);
    if (!first || !second) return grain;
    if (const auto trouble = grain_trouble(*first, *second)) reading.add(*to, *trouble);
    grain.from = *first;
    grain.to = *second;
    return grain;
}

DoubleDart read_double_dart(Reading& reading, const JsonNode& node, const Edges& edges) {
    const Fields fields(reading, node, "a double dart", {"dart", "from", "to", "widest", "press"});
    DoubleDart dart;
    if (const JsonNode* name = fields.required("dart", "the dart's name"))
        dart.name = read_name(reading, *name).value_or("");
    if (const JsonNode* from = fields.required("from", "the point [x, y] where it begins"))
        dart.from = read_point(reading, *from).value_or(Point{});
    if (const JsonNode* to = fields.required("to", "the point [x, y] where it ends"))
        dart.to = read_point(reading, *to).value_or(Point{});
    if (const JsonNode* widest = fields.required("widest", "two points [[x, y], [x, y]] where it is widest"))
        dart.widest = read_two_points(reading, *widest).value_or(dart.widest);
    if (const JsonNode* press = fields.optional("press")) dart.press = edges.existing(*press);
    return dart;
}

NotchKind read_notch_kind(Reading& reading, const JsonNode& node) {
    if (node.kind == JsonNode::Kind::text) {
        if (node.text == "single") return NotchKind::single;
        if (node.text == "double") return NotchKind::double_;
        if (node.text == "triple") return NotchKind::triple;
    }
    reading.reject(node, any_of({"single", "double", "triple"}));
    return NotchKind::single;
}

/// `has_begun` if an earlier notch of the piece says where its edge begins; there is one edge then.
Notch read_notch(Reading& reading, const JsonNode& node, const Edges& edges, bool has_begun) {
    const Fields fields(reading, node, "a notch", {"edge", "from", "at", "kind", "begins"});
    Notch notch;
    if (const JsonNode* edge = fields.required("edge", "the edge it is on"))
        notch.edge = edges.existing(*edge);
    if (const JsonNode* from = fields.required("from", "the neighbouring edge it is measured from"))
        notch.from = edges.end_of(notch.edge, *from);
    if (const JsonNode* at = fields.required("at", "its distance along the edge"))
        notch.at = read_length(reading, *at).value_or(0);
    if (const JsonNode* kind = fields.optional("kind")) notch.kind = read_notch_kind(reading, *kind);
    if (const JsonNode* begins = fields.optional("begins"))
        notch.begins = read_flag(reading, *begins).value_or(false);
    if (notch.begins)
        if (const auto trouble = edges.trouble_of_beginning(notch.edge, has_begun))
            reading.add(*fields.optional("begins"), *trouble);
    return notch;
}

std::vector<Notch> read_notches(Reading& reading, const JsonNode& node, const Edges& edges) {
    std::vector<Notch> notches;
    bool has_begun = false;
    for (const JsonNode* child : list_of(reading, node, "a list of notches")) {
        notches.push_back(read_notch(reading, *child, edges, has_begun));
        has_begun = has_begun || notches.back().begins;
    }
    return notches;
}

AllowanceStretch read_stretch(Reading& reading, const JsonNode& node, const std::string& edge,
                              const Edges& edges) {
    const Fields fields(reading, node, "a stretch of allowance", {"from", "at", "to", "width"});
    AllowanceStretch stretch;
    if (const JsonNode* from = fields.required("from", "the neighbouring edge it is measured from"))
        stretch.from = edges.end_of(edge, *from);
    const std::size_t problems = reading.problems.size();
    const JsonNode* at = fields.required("at", "the distance where it begins");
    const JsonNode* to = fields.required("to", "the distance where it ends");
    if (at) stretch.at = read_length(reading, *at).value_or(0);
    if (to) stretch.to = read_length(reading, *to).value_or(0);
    if (to && reading.problems.size() == problems)
        reading.heed(*to, wanted_instead_of_stretch_end(stretch.at, stretch.to));
    if (const JsonNode* width = fields.required("width", "the width of the allowance"))
        stretch.width = read_length(reading, *width).value_or(0);
    return stretch;
}

Allowance read_allowance(Reading& reading, const JsonNode& node, const std::string& edge,
                         const Edges& edges) {
    if (node.kind == JsonNode::Kind::number) return read_length(reading, node).value_or(0);
    std::vector<AllowanceStretch> stretches;
    for (const JsonNode* child : list_of(reading, node, "a width as a number, or a list of stretches"))
        stretches.push_back(read_stretch(reading, *child, edge, edges));
    if (node.kind == JsonNode::Kind::list) reading.heed(node, wanted_of_stretches(stretches.size()));
    return stretches;
}

std::vector<std::pair<std::string, Allowance>> read_allowances(Reading& reading, const JsonNode& node,
                                                               const OutlineRead& outline,
                                                               const Edges& edges) {
    std::vector<std::pair<std::string, Allowance>> allowances;
    if (node.kind != JsonNode::Kind::object) {
        reading.reject(node, "an object of widths by edge");
        return allowances;
    }
    const auto& names = outline.runs.names;
    for (const JsonNode* child : node.children) {
        if (outline.runs.is_sound && std::find(names.begin(), names.end(), child->key) == names.end())
            reading.add(*child, not_existing("edge", std::string(child->key), names));
        allowances.emplace_back(child->key, read_allowance(reading, *child, std::string(child->key), edges));
    }
    return allowances;
}

Mark read_mark(Reading& reading, const JsonNode& node) {
    const Fields fields(reading, node, "a mark", {"line", "drill", "name"});
    Mark mark;
    if (const JsonNode* name = fields.required("name", "the mark's name"))
        mark.name = read_name(reading, *name).value_or("");
    const JsonNode* line = fields.optional("line");
    const JsonNode* drill = fields.optional("drill");
    if (fields.is_object() && !line == !drill)
        reading.add(node, line ? "both \"line\" and \"drill\"" : "neither \"line\" nor \"drill\"",
                    "one of them");
    if (drill) mark.what = DrillMark{read_point(reading, *drill).value_or(Point{})};
    if (!line) return mark;
    LineMark points;
    const JsonNodes nodes = list_of(reading, *line, "a line [[x, y], [x, y], ...]");
    for (const JsonNode* child : nodes)
        points.points.push_back(read_point(reading, *child).value_or(Point{}));
    if (line->kind == JsonNode::Kind::list) reading.heed(*line, wanted_of_line(nodes.size()));
    mark.what = std::move(points);
    return mark;
}

/// Darts of the outline and double darts share their names.
void check_dart_names(Reading& reading, const JsonNode& piece) {
    std::set<std::string_view> seen;
    const auto check = [&](const JsonNode* list) {
        if (!list || list->kind != JsonNode::Kind::list) return;
        for (const JsonNode* item : list->children) {
            const JsonNode* name = item->kind == JsonNode::Kind::object ? member(*item, "dart") : nullptr;
            if (name && name->kind == JsonNode::Kind::text && !seen.insert(name->text).second)
                reading.add(*name, named_again("dart", std::string(name->text)));
        }
    };
    const JsonNode* outline = member(piece, "outline");
    if (outline && outline->kind == JsonNode::Kind::object) check(member(*outline, "items"));
    check(member(piece, "double_darts"));
}

}  // namespace

PieceRead read_piece(Reading& reading, const JsonNode& node) {
    const Fields fields(reading, node, "a piece",
                        {"name", "worn", "side_up", "cut", "grain", "outline", "double_darts", "notches",
                         "allowance", "marks"});
    PieceRead read;
    Piece& piece = read.piece;
    if (!fields.is_object()) return read;
    if (const JsonNode* name = fields.required("name", "the piece's name"))
        piece.name = read_name(reading, *name).value_or("");
    OutlineRead outline;
    if (const JsonNode* found = fields.required("outline", "the piece's outline"))
        outline = read_outline(reading, *found);
    const Edges edges(reading, outline);
    if (const JsonNode* worn = fields.optional("worn")) piece.worn = read_worn(reading, *worn);
    if (const JsonNode* side = fields.optional("side_up")) {
        piece.side_up = read_side_up(reading, *side);
        if (!fields.optional("worn")) reading.add(*side, side_up_without_worn());
    }
    if (const JsonNode* cut = fields.optional("cut")) piece.cut = read_cut(reading, *cut, edges);
    if (const JsonNode* grain = fields.optional("grain")) piece.grain = read_grain(reading, *grain, edges);
    if (const JsonNode* darts = fields.optional("double_darts"))
        for (const JsonNode* child : list_of(reading, *darts, "a list of double darts"))
            piece.double_darts.push_back(read_double_dart(reading, *child, edges));
    if (const JsonNode* notches = fields.optional("notches"))
        piece.notches = read_notches(reading, *notches, edges);
    if (const JsonNode* allowance = fields.optional("allowance"))
        piece.allowance = read_allowances(reading, *allowance, outline, edges);
    if (const JsonNode* marks = fields.optional("marks"))
        for (const JsonNode* child : list_of(reading, *marks, "a list of marks"))
            piece.marks.push_back(read_mark(reading, *child));
    check_dart_names(reading, node);
    piece.outline = std::move(outline.outline);
    read.runs = std::move(outline.runs);
    return read;
}

}  // namespace dartwright
