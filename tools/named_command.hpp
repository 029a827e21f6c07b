#pragma once

#include <string>
#include <vector>

namespace dartwright::tools {

/// The command that mends a finding of the file, complete, as it would be typed into a shell: what has a letter
/// with a meaning there is in quotes. It writes a new file where it is typed, named after this one. Standard
/// input, `-`, is not there a second time and is called `FILE`. Empty if the finding names none.
std::string named_command(const std::vector<std::string>& words, const std::string& file);

}  // namespace dartwright::tools
