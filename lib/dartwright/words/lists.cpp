#include "dartwright/words/lists.hpp"

#include <algorithm>

#include "dartwright/words/quoted.hpp"

namespace dartwright {
namespace {

std::string quoted_list(const std::vector<std::string>& names, const char* before_last) {
    // A line that is read, not a file's worth of names.
    constexpr std::size_t most_names = 20;
    const std::size_t shown = std::min(names.size(), most_names);
    std::string out;
    for (std::size_t i = 0; i < shown; ++i) {
        if (i > 0) out += i + 1 == names.size() ? before_last : ", ";
        out += in_quotes(names[i]);
    }
    if (shown < names.size()) out += " and " + std::to_string(names.size() - shown) + " more";
    return out;
}

}  // namespace

std::string all_of(const std::vector<std::string>& words) {
    std::string out;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) out += i + 1 == words.size() ? " and " : ", ";
        out += words[i];
    }
    return out;
}

std::string any_of(const std::vector<std::string>& names) {
    return quoted_list(names, " or ");
}

std::string in_a_row(const std::vector<std::string>& names) {
    return quoted_list(names, ", ");
}

}  // namespace dartwright
