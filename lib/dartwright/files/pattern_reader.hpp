#pragma once

// Private to the room.

#include "dartwright/files/reading.hpp"

namespace dartwright {

/// A whole pattern within another file, with its version and its own unit.
Pattern read_carried_pattern(Reading& reading, const JsonNode& node);
/// An operation of a `made` list: its name and its request, all of it text.
Made read_made(Reading& reading, const JsonNode& node);

}  // namespace dartwright
