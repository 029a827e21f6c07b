#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dartwright/files/reading.hpp"

namespace dartwright {

/// The runs of an outline by their names alone, which is all that the names elsewhere in a file refer to.
struct RunNames {
    std::vector<std::string> names;  ///< each once, in outline order, beginning anywhere
    /// Whether there is a name, every one could be read and each is one stretch; otherwise neighbours mean
    /// nothing.
    bool is_sound = false;
};
struct Neighbours {
    std::string before;
    std::string after;
};
/// Precondition: the edge is one of the names (std::invalid_argument).
Neighbours neighbours_of(const RunNames& runs, const std::string& edge);

/// The name of an end of the run `edge`: a neighbour, unless it lies at both ends, or `start` or `end`.
std::optional<std::string> read_end_of_run(Reading& reading, const JsonNode& node, const RunNames& runs,
                                           const std::string& edge);
/// The same for a name that has been read already.
bool check_end_of_run(Reading& reading, const JsonNode& node, const std::string& name, const RunNames& runs,
                      const std::string& edge);

/// What is said of corners, by the name of an edge: `free` or `smooth`. Whether the names are ends of the
/// run in question is for the caller.
std::map<std::string, CornerIs> read_ends(Reading& reading, const JsonNode& node);

}  // namespace dartwright
