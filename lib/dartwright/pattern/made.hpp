#pragma once

#include <string>
#include <utility>
#include <vector>

namespace dartwright {

/// One operation of the `made` list: its name and its request, as words (lengths with their unit).
struct Made {
    std::string operation;
    std::vector<std::pair<std::string, std::string>> request;
    friend bool operator==(const Made&, const Made&) = default;
};

}  // namespace dartwright
