#include "dartwright/files/rule_reader.hpp"

#include <set>
#include <utility>

#include "dartwright/files/output_file.hpp"
#include "dartwright/files/rule_file.hpp"
#include "dartwright/words/lists.hpp"
#include "dartwright/words/quoted.hpp"

namespace dartwright {
namespace {

constexpr int rule_version = 1;

double length_or_zero(Reading& reading, const JsonNode* node) {
    return node ? read_length(reading, *node).value_or(0) : 0;
}

std::string name_or_none(Reading& reading, const JsonNode* node) {
    return node ? read_name(reading, *node).value_or("") : "";
}

/// One of the words of a list of kinds; the first if it is none of them.
template <typename Names>
auto read_word(Reading& reading, const JsonNode& node, const Names& names) {
    std::vector<std::string> words;
    for (const auto& [kind, word] : names) {
        if (node.kind == JsonNode::Kind::text && node.text == word) return kind;
        words.emplace_back(word);
    }
    reading.reject(node, any_of(words));
    const auto [first, first_word] = names[0];
    return first;
}

struct WidthsOf {
    const char* key;  ///< `edge` or `seam`
    const char* what;
    bool may_name_piece;
};

RuleWidth read_width(Reading& reading, const JsonNode& node, const WidthsOf& of) {
    std::vector<std::string> keys{of.key, "width"};
    if (of.may_name_piece) keys.insert(keys.begin() + 1, "piece");
    const Fields fields(reading, node, of.what, keys);
    RuleWidth entry;
    entry.name = name_or_none(reading, fields.required(of.key, "the name of what has the width"));
    if (of.may_name_piece) entry.piece = name_or_none(reading, fields.optional("piece"));
    entry.width_mm = length_or_zero(reading, fields.required("width", "the width of the allowance"));
    return entry;
}

std::vector<RuleWidth> read_widths(Reading& reading, const JsonNode* node, const WidthsOf& of) {
    std::vector<RuleWidth> entries;
    if (!node) return entries;
    std::set<std::pair<std::string, std::string>> seen;
    for (const JsonNode* child : list_of(reading, *node, "a list of widths")) {
        entries.push_back(read_width(reading, *child, of));
        const RuleWidth& entry = entries.back();
        if (!entry.name.empty() && !seen.insert({entry.name, entry.piece}).second)
            reading.add(*member(*child, of.key),
                        std::string("the ") + of.key + " " + in_quotes(entry.name) + " again",
                        "one width for it");
    }
    return entries;
}

AllowanceRule read_allowance_rule(Reading& reading, const JsonNode& node) {
    const Fields fields(reading, node, "the allowances of a rule",
                        {"edges", "openings", "seams", "joined", "elsewhere"});
    AllowanceRule rule;
    rule.edges = read_widths(reading, fields.optional("edges"), {"edge", "the width of an edge", true});
    rule.openings =
        read_widths(reading, fields.optional("openings"), {"edge", "the width of an opening", true});
    rule.seams = read_widths(reading, fields.optional("seams"), {"seam", "the width of a seam", false});
    if (const JsonNode* joined = fields.optional("joined")) rule.joined_mm = read_length(reading, *joined);
    if (const JsonNode* elsewhere = fields.optional("elsewhere"))
        rule.elsewhere_mm = read_length(reading, *elsewhere);
    return rule;
}

std::array<std::string, 2> read_between(Reading& reading, const JsonNode& node) {
    if (node.kind != JsonNode::Kind::list || node.children.size() != 2) {
        reading.reject(node, "the names of two edges");
        return {};
    }
    const auto first = read_name(reading, *node.children[0]);
    const auto second = read_name(reading, *node.children[1]);
    if (first && first == second)
        reading.add(*node.children[1], "the same edge as the first, " + in_quotes(*first), "another edge");
    return {first.value_or(""), second.value_or("")};
}

/// Which of the edges the kind speaks of, where it speaks of one.
void read_whose(Reading& reading, const JsonNode& node, const Fields& fields, CornerRule& corner) {
    const JsonNode* whose = fields.optional("whose");
    if (!speaks_of_one_edge(corner.kind)) {
        if (whose) reading.add(*whose, "\"whose\" with a kind that speaks of both edges", "no key \"whose\"");
        return;
    }
    if (!whose) {
        reading.add(node, "no key \"whose\"", "the one of the two edges of which the kind speaks");
        return;
    }
    corner.whose = name_or_none(reading, whose);
    const auto& [first, second] = corner.between;
    const bool are_known = !corner.whose.empty() && !first.empty() && !second.empty();
    if (are_known && corner.whose != first && corner.whose != second)
        reading.add(*whose, in_quotes(corner.whose) + ", which is not one of the two edges",
                    any_of({first, second}));
}

void read_limit(Reading& reading, const Fields& fields, CornerRule& corner) {
    const JsonNode* limit = fields.optional("limit");
    if (!limit) return;
    if (corner.kind != RuleCornerKind::blunted)
        reading.add(*limit, "\"limit\" with a kind that is not blunted", "no key \"limit\"");
    corner.limit_mm = read_length(reading, *limit);
    if (corner.limit_mm == 0.0) reading.reject(*limit, "a length of more than 0");
}

CornerRule read_corner(Reading& reading, const JsonNode& node) {
    const Fields fields(reading, node, "a corner", {"between", "piece", "kind", "whose", "limit"});
    CornerRule corner;
    if (const JsonNode* between = fields.required("between", "the names of two edges"))
        corner.between = read_between(reading, *between);
    corner.piece = name_or_none(reading, fields.optional("piece"));
    const JsonNode* kind = fields.required("kind", "how the allowances meet there");
    if (!kind) return corner;
    const std::size_t problems = reading.problems.size();
    corner.kind = read_word(reading, *kind, rule_corner_names);
    if (reading.problems.size() > problems) return corner;
    read_whose(reading, node, fields, corner);
    read_limit(reading, fields, corner);
    return corner;
}

NotchRule read_notch_rule(Reading& reading, const JsonNode& node) {
    const Fields fields(reading, node, "the notches of a rule", {"form", "depth", "width"});
    NotchRule notches;
    const JsonNode* form = fields.required("form", "the form in which notches are cut");
    const std::size_t problems = reading.problems.size();
    if (form) notches.form = read_word(reading, *form, notch_form_names);
    const bool is_form_read = form && reading.problems.size() == problems;
    notches.depth_mm = length_or_zero(reading, fields.required("depth", "how deep notches are cut"));
    const JsonNode* width = fields.optional("width");
    if (width) notches.width_mm = read_length(reading, *width);
    const bool is_slit = notches.form == NotchForm::slit;
    if (is_form_read && is_slit && width) reading.add(*width, "\"width\" of a slit", "no key \"width\"");
    if (is_form_read && !is_slit && !width) reading.add(node, "no key \"width\"", "how wide notches are cut");
    return notches;
}

DartRule read_dart_rule(Reading& reading, const JsonNode& node) {
    const Fields fields(reading, node, "the darts of a rule", {"notched", "trim"});
    DartRule darts;
    if (const JsonNode* notched = fields.optional("notched")) darts.is_notched = read_flag(reading, *notched);
    const JsonNode* trim = fields.optional("trim");
    if (!trim) return darts;
    const Fields parts(reading, *trim, "the trimming of darts", {"wider_than", "allowance"});
    darts.trim = DartTrim{};
    darts.trim->wider_than_mm =
        length_or_zero(reading, parts.required("wider_than", "the intake from which on darts are trimmed"));
    darts.trim->allowance_mm =
        length_or_zero(reading, parts.required("allowance", "what is left outside each leg"));
    return darts;
}

CuttingRule read_members(Reading& reading, const Fields& fields) {
    CuttingRule rule;
    if (!fields.is_object()) return rule;
    rule.name = name_or_none(reading, fields.required("name", "the rule's name"));
    rule.unit = reading.unit = read_unit(reading, fields);
    if (const JsonNode* allowance = fields.optional("allowance"))
        rule.allowance = read_allowance_rule(reading, *allowance);
    if (const JsonNode* corners = fields.optional("corners"))
        for (const JsonNode* child : list_of(reading, *corners, "a list of corners"))
            rule.corners.push_back(read_corner(reading, *child));
    if (const JsonNode* notches = fields.optional("notches"))
        rule.notches = read_notch_rule(reading, *notches);
    if (const JsonNode* darts = fields.optional("darts")) rule.darts = read_dart_rule(reading, *darts);
    return rule;
}

CuttingRule read_rule_root(Reading& reading, const JsonNode& root) {
    const Fields fields(reading, root, "a rule",
                        {"dartwright_rule", "name", "unit", "allowance", "corners", "notches", "darts"});
    if (const JsonNode* version = fields.required("dartwright_rule", "the version of the format: 1")) {
        const bool is_number = version->kind == JsonNode::Kind::number;
        if (!is_number || version->number != rule_version)
            reading.reject(*version, "1, the version of the format");
    }
    CuttingRule rule = read_members(reading, fields);
    rule.as_written = std::move(reading.as_written);
    return rule;
}

}  // namespace

CuttingRule read_cutting(Reading& reading, const JsonNode& node) {
    // Its lengths are in its own unit, and their digits its own.
    const Unit unit = reading.unit;
    std::map<double, double> as_written = std::exchange(reading.as_written, {});
    const Fields fields(reading, node, "a rule",
                        {"name", "unit", "allowance", "corners", "notches", "darts"});
    CuttingRule rule = read_members(reading, fields);
    rule.as_written = std::exchange(reading.as_written, std::move(as_written));
    reading.unit = unit;
    return rule;
}

CuttingRule read_rule(std::string_view text, const std::string& file) {
    JsonTree tree = parse_json(text, "a rule file");
    Reading reading;
    reading.problems = std::move(tree.problems);
    CuttingRule rule;
    if (tree.root) rule = read_rule_root(reading, *tree.root);
    if (!reading.problems.empty()) throw InvalidRule(file, in_order(std::move(reading.problems)));
    return rule;
}

CuttingRule read_rule_file(const std::string& path) {
    return read_rule(read_text_file(path), path == "-" ? "standard input" : path);
}

}  // namespace dartwright
