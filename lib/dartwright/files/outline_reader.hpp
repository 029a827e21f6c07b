#pragma once

#include <optional>

#include "dartwright/files/end_names.hpp"

namespace dartwright {

struct OutlineRead {
    Outline outline;  ///< as the file has it; `put_right` turns it
    RunNames runs;    ///< anticlockwise
};
/// Reads an outline. Problems: keys, types, names; a name that recurs apart from itself; measured points
/// that fall on their neighbours; fullness as long as its item.
OutlineRead read_outline(Reading& reading, const JsonNode& node);

}  // namespace dartwright
