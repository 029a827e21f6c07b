#pragma once

// What the readers of the parts of a pattern file share: the problems found so far, the file's unit, and
// the typed reading of single values. A value that cannot be read is a problem and comes back empty, and
// reading goes on, so that all problems of a file are found together.

#include <initializer_list>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "dartwright/files/json_tree.hpp"
#include "dartwright/pattern/pattern.hpp"
#include "dartwright/pattern/pattern_rules.hpp"

namespace dartwright {

struct Reading {
    Unit unit = Unit::mm;
    std::vector<PlacedProblem> problems;  ///< those beyond `most_problems` without their words
    std::map<double, double> as_written;

    void add(const JsonNode& node, std::string found, std::string expected);
    /// The problem that the value is not what was expected.
    void reject(const JsonNode& node, std::string expected);
    /// What a rule says of the value: the words of a complaint, or what is wanted instead (empty: nothing).
    void add(const JsonNode& node, const Complaint& complaint);
    void heed(const JsonNode& node, const std::string& wanted);
};

/// The members of an object, looked up by key. Keys that are not known are problems, each with the nearest
/// known key; so is a value that is not an object.
class Fields {
  public:
    Fields(Reading& reading, const JsonNode& node, const char* what,
           std::initializer_list<std::string_view> known);
    Fields(Reading& reading, const JsonNode& node, const char* what, const std::vector<std::string>& known);
    bool is_object() const { return node_.kind == JsonNode::Kind::object; }
    const JsonNode* optional(const char* key) const;
    /// A problem if it is missing, unless an unknown key was a slip of it and has been reported.
    const JsonNode* required(const char* key, const char* expected) const;

  private:
    void look(const char* what, std::span<const std::string_view> known);
    Reading& reading_;
    const JsonNode& node_;
    std::vector<std::string> misspelt_;  ///< known keys that an unknown key was nearest to
};

/// What people write has a limit; what the program writes of it (flattened outlines) has none.
enum class ListLength { limited, any };
/// The children of a list; a problem and empty if it is not one, a problem if they are too many.
JsonNodes list_of(Reading& reading, const JsonNode& node, const char* expected,
                  ListLength length = ListLength::limited);

/// A name: text that is not empty, not too long and has no control characters.
std::optional<std::string> read_name(Reading& reading, const JsonNode& node);
std::optional<bool> read_flag(Reading& reading, const JsonNode& node);
/// A whole number in [low, high].
std::optional<int> read_whole(Reading& reading, const JsonNode& node, int low, int high);
/// A length or coordinate of either sign in mm, and one that may not be negative.
std::optional<double> read_coordinate(Reading& reading, const JsonNode& node);
std::optional<double> read_length(Reading& reading, const JsonNode& node);
std::optional<Point> read_point(Reading& reading, const JsonNode& node);
/// Exactly two points.
std::optional<std::array<Point, 2>> read_two_points(Reading& reading, const JsonNode& node);
std::optional<double> read_angle_deg(Reading& reading, const JsonNode& node);

/// The nearest of the names by letters to change, add, drop or swap, if it is near enough to be a slip.
std::optional<std::string> nearest_name(std::string_view name, const std::vector<std::string>& known);

/// A name that must be one of those that exist; a problem that lists them if it is not.
std::optional<std::string> read_known_name(Reading& reading, const JsonNode& node, const std::string& kind,
                                           const std::vector<std::string>& known);

/// The file's "unit", to be read first because every length depends on it; mm if it is none.
Unit read_unit(Reading& reading, const Fields& fields);
/// In the file's order; problems of one value in the order in which they were found. Those without words come
/// last.
std::vector<FileProblem> in_order(std::vector<PlacedProblem> placed);

}  // namespace dartwright
