#include "dartwright/words/lists.hpp"

#include <algorithm>

#include "dartwright/words/quoted.hpp"

namespace dartwright {

std::string all_of(const std::vector<std::string>& words) {
    std::string out;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) out += i + 1 == words.size() ? " and " : ", ";
        out += words[i];
    }
    return out;
}

std::string any_of(const std::vector<std::string>& names) {
    constexpr std::size_t most_names = 20;
    const std::size_t shown = std::min(names.size(), most_names);
    std::string out;
    for (std::size_t i = 0; i < shown; ++i) {
        if (i > 0) out += i + 1 == names.size() ? " or " : ", ";
        out += in_quotes(names[i]);
    }
    if (shown < names.size()) out += " and " + std::to_string(names.size() - shown) + " more";
    return out;
}

}  // namespace dartwright
