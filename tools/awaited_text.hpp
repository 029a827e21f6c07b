#pragma once

#include <optional>
#include <string>

namespace dartwright::tools {

/// The whole file; `-` is standard input. Where it is a pipe, a terminal or another device it may be waited
/// for without end: empty once there is something to read at `stop`, a descriptor (none below 0).
/// FileTrouble.
std::optional<std::string> awaited_text(const std::string& path, int stop);

}  // namespace dartwright::tools
