#include "dartwright/files/pattern_reader.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include "dartwright/files/pattern_file.hpp"
#include "dartwright/files/rule_reader.hpp"
#include "dartwright/files/seam_reader.hpp"
#include "dartwright/pattern/pattern_problems.hpp"

namespace dartwright {
namespace {

constexpr int format_version = 1;

/// Names that must be unique among the members of a list.
class UniqueNames {
  public:
    UniqueNames(Reading& reading, const char* kind) : reading_(reading), kind_(kind) {}
    void check(const JsonNode& owner, const std::string& name) {
        if (!name.empty() && !seen_.insert(name).second)
            reading_.add(*member(owner, "name"), named_again(kind_, name));
    }

  private:
    Reading& reading_;
    const char* kind_;
    std::set<std::string> seen_;
};

PiecesRead read_pieces(Reading& reading, const JsonNode& node) {
    PiecesRead read;
    UniqueNames names(reading, "piece");
    for (const JsonNode* child : list_of(reading, node, "a list of pieces")) {
        read.pieces.push_back(read_piece(reading, *child));
        names.check(*child, read.pieces.back().piece.name);
    }
    const bool is_list = node.kind == JsonNode::Kind::list;
    if (is_list) reading.heed(node, wanted_of_pieces(read.pieces.size()));
    read.is_every_name_read =
        is_list && std::none_of(read.pieces.begin(), read.pieces.end(),
                                [](const PieceRead& p) { return p.piece.name.empty(); });
    return read;
}

std::vector<Seam> read_seams(Reading& reading, const JsonNode& node, const PiecesRead& pieces) {
    std::vector<Seam> seams;
    UniqueNames names(reading, "seam");
    for (const JsonNode* child : list_of(reading, node, "a list of seams")) {
        seams.push_back(read_seam(reading, *child, pieces));
        names.check(*child, seams.back().name);
    }
    return seams;
}

std::map<std::string, double> read_tolerances(Reading& reading, const JsonNode& node) {
    std::map<std::string, double> values;
    std::vector<std::string> known;
    for (const ToleranceName& tolerance : tolerance_names()) known.emplace_back(tolerance.name);
    const Fields fields(reading, node, "the tolerances", known);
    for (const ToleranceName& tolerance : tolerance_names()) {
        const JsonNode* value = fields.optional(tolerance.name);
        if (!value) continue;
        const auto read = tolerance.is_angle ? read_angle_deg(reading, *value) : read_length(reading, *value);
        if (read) values.emplace(tolerance.name, *read);
    }
    return values;
}

Pattern read_root(Reading& reading, const JsonNode& root) {
    const std::size_t problems = reading.problems.size();
    const Fields fields(reading, root, "a pattern",
                        {"dartwright", "name", "unit", "pieces", "seams", "tolerances", "made", "cutting"});
    Pattern pattern;
    if (!fields.is_object()) return pattern;
    if (const JsonNode* version = fields.required("dartwright", "the version of the format: 1")) {
        const bool is_number = version->kind == JsonNode::Kind::number;
        if (!is_number || version->number != format_version)
            reading.reject(*version, "1, the version of the format");
    }
    if (const JsonNode* name = fields.required("name", "the pattern's name"))
        pattern.name = read_name(reading, *name).value_or("");
    pattern.unit = reading.unit = read_unit(reading, fields);
    PiecesRead pieces;
    if (const JsonNode* node = fields.required("pieces", "the list of pieces"))
        pieces = read_pieces(reading, *node);
    if (const JsonNode* seams = fields.optional("seams")) pattern.seams = read_seams(reading, *seams, pieces);
    for (PieceRead& read : pieces.pieces) pattern.pieces.push_back(std::move(read.piece));
    if (const JsonNode* node = fields.optional("tolerances"))
        pattern.tolerances = read_tolerances(reading, *node);
    if (const JsonNode* made = fields.optional("made"))
        for (const JsonNode* child : list_of(reading, *made, "a list of operations"))
            pattern.made.push_back(read_made(reading, *child));
    if (const JsonNode* cutting = fields.optional("cutting"))
        pattern.cutting = read_cutting(reading, *cutting);
    pattern.as_written = std::move(reading.as_written);
    return reading.problems.size() == problems ? put_right(std::move(pattern)) : pattern;
}

}  // namespace

Made read_made(Reading& reading, const JsonNode& node) {
    Made made;
    if (node.kind != JsonNode::Kind::object) {
        reading.reject(node, "an operation as an object in braces");
        return made;
    }
    if (!member(node, "operation")) reading.add(node, "no key \"operation\"", "the operation's name");
    for (const JsonNode* child : node.children) {
        if (child->key == "operation")
            made.operation = read_name(reading, *child).value_or("");
        else if (child->kind == JsonNode::Kind::text)
            made.request.emplace_back(child->key, child->text);
        else
            reading.reject(*child, "text in double quotes");
    }
    return made;
}

Pattern read_carried_pattern(Reading& reading, const JsonNode& node) {
    // Its lengths are in its own unit, and their digits its own.
    const Unit unit = reading.unit;
    std::map<double, double> as_written = std::exchange(reading.as_written, {});
    Pattern pattern = read_root(reading, node);
    reading.as_written = std::move(as_written);
    reading.unit = unit;
    return pattern;
}

Pattern read_pattern(std::string_view text, const std::string& file) {
    JsonTree tree = parse_json(text, "a pattern file");
    Reading reading;
    reading.problems = std::move(tree.problems);
    Pattern pattern;
    if (tree.root) pattern = read_root(reading, *tree.root);
    if (!reading.problems.empty()) throw InvalidPattern(file, in_order(std::move(reading.problems)));
    return pattern;
}

}  // namespace dartwright
