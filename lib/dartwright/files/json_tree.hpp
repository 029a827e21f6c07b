#pragma once

// A JSON document as a tree that knows, of every value, its pointer and its order in the file, so that
// what is wrong with a value can be said where it stands.

#include <deque>
#include <memory>
#include <memory_resource>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "dartwright/files/pattern_file.hpp"

namespace dartwright {

struct JsonNode;
using JsonNodes = std::span<const JsonNode* const>;

struct JsonNode {
    enum class Kind { null, boolean, number, text, list, object };
    Kind kind = Kind::null;
    bool boolean = false;
    double number = 0;
    std::string_view text;  ///< of a text; of a number with a point or an exponent, as it was written
    JsonNodes children;     ///< of a list or an object, in the file's order
    const JsonNode* parent = nullptr;  ///< null for the root
    std::string_view key;              ///< within an object
    std::size_t index = 0;             ///< within a list or an object
    std::size_t order = 0;             ///< position among all values of the file
};

// Nodes are never destroyed: their memory goes at once.
static_assert(std::is_trivially_destructible_v<JsonNode>);

/// The first member of that key, or null. O(members).
const JsonNode* member(const JsonNode& object, std::string_view key);
/// JSON pointer (RFC 6901) of a value; empty for the root.
std::string pointer_to(const JsonNode& node);
/// The value in words, short enough for a message: `"side"`, `12.5`, `a list of 3`, `an object`.
std::string in_words(const JsonNode& node);
/// A file's path in double quotes for a message: control characters escaped, whole, since it is to be opened
/// and what tells it from another is at its end.
std::string path_in_quotes(std::string_view path);

/// A problem and the place in the file's order at which it is reported.
struct PlacedProblem {
    std::size_t order = 0;
    FileProblem problem;
};

struct JsonTree {
    /// Owns every node and every list of children.
    std::unique_ptr<std::pmr::monotonic_buffer_resource> memory;
    std::size_t values = 0;          ///< how many nodes there are
    std::deque<std::string> kept;    ///< holds what texts and keys refer to
    const JsonNode* root = nullptr;  ///< null if the text is not JSON; then there is a problem
    std::vector<PlacedProblem> problems;
};

/// Brackets may nest this deep; a pattern needs eight levels, and a limit keeps hostile files from
/// exhausting the stack.
inline constexpr std::size_t deepest_nesting = 64;

/// Parses text. Problems found on the way: text that is not UTF-8 or not JSON (with line and column),
/// nesting over the limit, and keys given twice (the first counts). `what` is expected, in words such as `a
/// pattern file`. A byte order mark is skipped. O(n log n).
JsonTree parse_json(std::string_view text, const std::string& what);

}  // namespace dartwright
