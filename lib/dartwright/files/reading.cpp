#include "dartwright/files/reading.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <numeric>

#include "dartwright/words/converted_length.hpp"
#include "dartwright/words/lists.hpp"
#include "dartwright/words/quoted.hpp"

namespace dartwright {
namespace {

using Kind = JsonNode::Kind;

/// Two different doubles as near to each other as the numbers that share one length in mm never both have
/// this many significant digits or fewer, so such a number is surely the one that will be written.
constexpr std::size_t digits_surely_kept = 15;

bool is_surely_kept(const JsonNode& node) {
    return node.text.size() <= digits_surely_kept &&
           std::none_of(node.text.begin(), node.text.end(), [](char c) { return c == 'e' || c == 'E'; });
}

double read_mm(Reading& reading, const JsonNode& node) {
    const double mm = to_mm(node.number, reading.unit) + 0.0;  // no negative zero
    if (reading.unit != Unit::mm && !is_surely_kept(node) && from_mm(mm, reading.unit) != node.number)
        reading.as_written.emplace(mm, node.number);
    return mm;
}

/// A number of which a rule wants nothing else.
std::optional<double> read_ruled(Reading& reading, const JsonNode& node,
                                 std::string (*wanted_instead)(double, Unit), const char* expected) {
    const std::size_t problems = reading.problems.size();
    if (node.kind != Kind::number)
        reading.reject(node, expected);
    else
        reading.heed(node, wanted_instead(to_mm(node.number, reading.unit), reading.unit));
    if (reading.problems.size() > problems) return std::nullopt;
    return read_mm(reading, node);
}

/// Letters to change, add, drop or swap with a neighbour. O(|a| |b|).
std::size_t slips_between(std::string_view a, std::string_view b) {
    std::vector<std::vector<std::size_t>> rows(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    std::iota(rows[0].begin(), rows[0].end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        rows[i][0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t change = rows[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            rows[i][j] = std::min({rows[i - 1][j] + 1, rows[i][j - 1] + 1, change});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                rows[i][j] = std::min(rows[i][j], rows[i - 2][j - 2] + 1);
        }
    }
    return rows[a.size()][b.size()];
}

}  // namespace

void Reading::add(const JsonNode& node, std::string found, std::string expected) {
    problems.push_back({node.order, {}});
    // Those after the first are counted only: a million are as many words as files have.
    if (problems.size() <= most_problems)
        problems.back().problem = {pointer_to(node), std::move(found), std::move(expected)};
}

void Reading::reject(const JsonNode& node, std::string expected) {
    add(node, in_words(node), std::move(expected));
}

void Reading::add(const JsonNode& node, const Complaint& complaint) {
    add(node, complaint.found, complaint.expected);
}

void Reading::heed(const JsonNode& node, const std::string& wanted) {
    if (!wanted.empty()) reject(node, wanted);
}

Fields::Fields(Reading& reading, const JsonNode& node, const char* what,
               std::initializer_list<std::string_view> known)
    : reading_(reading), node_(node) {
    look(what, {known.begin(), known.size()});
}

Fields::Fields(Reading& reading, const JsonNode& node, const char* what,
               const std::vector<std::string>& known)
    : reading_(reading), node_(node) {
    look(what, std::vector<std::string_view>(known.begin(), known.end()));
}

void Fields::look(const char* what, std::span<const std::string_view> known) {
    if (!is_object()) {
        reading_.reject(node_, std::string(what) + " as an object in braces");
        return;
    }
    for (const JsonNode* child : node_.children) {
        if (std::find(known.begin(), known.end(), child->key) != known.end()) continue;
        const std::vector<std::string> names(known.begin(), known.end());
        const auto meant = nearest_name(child->key, names);
        if (meant) misspelt_.push_back(*meant);
        reading_.add(*child, "the unknown key " + in_quotes(child->key),
                     meant ? in_quotes(*meant) : "a key of " + std::string(what) + ": " + any_of(names));
    }
}

const JsonNode* Fields::optional(const char* key) const {
    return is_object() ? member(node_, key) : nullptr;
}

const JsonNode* Fields::required(const char* key, const char* expected) const {
    if (!is_object()) return nullptr;
    const JsonNode* found = member(node_, key);
    const bool is_misspelt = std::find(misspelt_.begin(), misspelt_.end(), key) != misspelt_.end();
    if (!found && !is_misspelt) reading_.add(node_, "no key " + in_quotes(key), expected);
    return found;
}

JsonNodes list_of(Reading& reading, const JsonNode& node, const char* expected, ListLength length) {
    if (node.kind == Kind::list) {
        if (length == ListLength::limited) reading.heed(node, wanted_of_entries(node.children.size()));
        return node.children;
    }
    reading.reject(node, expected);
    return {};
}

std::optional<std::string> read_name(Reading& reading, const JsonNode& node) {
    const std::string wanted =
        node.kind == Kind::text ? wanted_instead_of_name(node.text) : "a name in double quotes";
    reading.heed(node, wanted);
    return wanted.empty() ? std::optional<std::string>(node.text) : std::nullopt;
}

std::optional<bool> read_flag(Reading& reading, const JsonNode& node) {
    if (node.kind == Kind::boolean) return node.boolean;
    reading.reject(node, "true or false");
    return std::nullopt;
}

std::optional<int> read_whole(Reading& reading, const JsonNode& node, int low, int high) {
    const double number = node.kind == Kind::number ? node.number : std::nan("");
    const std::string wanted = wanted_instead_of_whole(number, low, high);
    reading.heed(node, wanted);
    return wanted.empty() ? std::optional(static_cast<int>(number)) : std::nullopt;
}

std::optional<double> read_coordinate(Reading& reading, const JsonNode& node) {
    return read_ruled(reading, node, wanted_instead_of_coordinate, "a number");
}

std::optional<double> read_length(Reading& reading, const JsonNode& node) {
    return read_ruled(reading, node, wanted_instead_of_length, "a length as a number");
}

std::optional<Point> read_point(Reading& reading, const JsonNode& node) {
    if (node.kind != Kind::list || node.children.size() != 2) {
        const bool may_be_decimal_commas = node.children.size() == 3 || node.children.size() == 4;
        reading.reject(node, may_be_decimal_commas
                                 ? "a point [x, y] of two numbers (a decimal is written with a point, as 1.5)"
                                 : "a point [x, y]");
        return std::nullopt;
    }
    const auto x = read_coordinate(reading, *node.children[0]);
    const auto y = read_coordinate(reading, *node.children[1]);
    if (!x || !y) return std::nullopt;
    return Point{*x, *y};
}

std::optional<std::array<Point, 2>> read_two_points(Reading& reading, const JsonNode& node) {
    if (node.kind != Kind::list || node.children.size() != 2) {
        reading.reject(node, "two points [[x, y], [x, y]]");
        return std::nullopt;
    }
    const auto first = read_point(reading, *node.children[0]);
    const auto second = read_point(reading, *node.children[1]);
    if (!first || !second) return std::nullopt;
    return std::array<Point, 2>{*first, *second};
}

std::optional<double> read_angle_deg(Reading& reading, const JsonNode& node) {
    const double angle_deg = node.kind == Kind::number ? node.number : std::nan("");
    const std::string wanted = wanted_instead_of_angle(angle_deg);
    reading.heed(node, wanted);
    return wanted.empty() ? std::optional(angle_deg + 0.0) : std::nullopt;
}

std::optional<std::string> nearest_name(std::string_view name, const std::vector<std::string>& known) {
    constexpr std::size_t longest_compared = 40;
    if (name.empty() || name.size() > longest_compared) return std::nullopt;
    std::optional<std::string> nearest;
    // A third of the letters wrong is still a slip; more is another word.
    std::size_t fewest = (name.size() + 2) / 3 + 1;
    for (const std::string& candidate : known) {
        const std::size_t slips = slips_between(name, candidate);
        if (slips >= fewest) continue;
        fewest = slips;
        nearest = candidate;
    }
    return nearest;
}

std::optional<std::string> read_known_name(Reading& reading, const JsonNode& node, const std::string& kind,
                                           const std::vector<std::string>& known) {
    auto name = read_name(reading, node);
    if (!name) return std::nullopt;
    if (std::find(known.begin(), known.end(), *name) != known.end()) return name;
    reading.add(node, not_existing(kind, *name, known));
    return std::nullopt;
}

Unit read_unit(Reading& reading, const Fields& fields) {
    const std::vector<std::string> names{"mm", "cm", "in"};
    const JsonNode* node = fields.required("unit", "the unit of every length: \"mm\", \"cm\" or \"in\"");
    if (!node) return Unit::mm;
    const auto found =
        node->kind == JsonNode::Kind::text ? std::find(names.begin(), names.end(), node->text) : names.end();
    if (found == names.end()) reading.reject(*node, any_of(names));
    return found == names.end() || *found == "mm" ? Unit::mm : *found == "cm" ? Unit::cm : Unit::inch;
}

std::vector<FileProblem> in_order(std::vector<PlacedProblem> placed) {
    const auto counted = std::stable_partition(placed.begin(), placed.end(), [](const PlacedProblem& each) {
        return !each.problem.found.empty() || !each.problem.expected.empty();
    });
    std::stable_sort(placed.begin(), counted,
                     [](const PlacedProblem& a, const PlacedProblem& b) { return a.order < b.order; });
    std::vector<FileProblem> problems;
    for (PlacedProblem& p : placed) problems.push_back(std::move(p.problem));
    return problems;
}

}  // namespace dartwright
