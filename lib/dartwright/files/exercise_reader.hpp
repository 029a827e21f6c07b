#pragma once

// Private to the room: the parts of an exercise file.

#include "dartwright/assessing/exercise.hpp"
#include "dartwright/files/named_file.hpp"
#include "dartwright/files/reading.hpp"

namespace dartwright {

/// Rungs with growing `within` and falling marks; lengths in the file's unit or with one of their own. What
/// is not there is as given.
Ladders read_ladders(Reading& reading, const JsonNode& node, Ladders ladders);

/// The tasks, each done to the pattern as the ones before left it. `is_pattern_read` says whether that could
/// be read: if not, what is asked of it is not held against it.
struct TasksAsked {
    const NamedFrom& from;
    const Pattern& pattern;
    bool is_pattern_read = false;
};
std::vector<Task> read_tasks(Reading& reading, const JsonNode& node, const TasksAsked& asked);

/// The problems of a file that is named in another, told where it is named.
void add_problems_of(Reading& reading, const JsonNode& node, const InvalidPattern& invalid);

}  // namespace dartwright
