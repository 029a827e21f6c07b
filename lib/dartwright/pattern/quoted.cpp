#include "dartwright/pattern/quoted.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace dartwright {

std::string in_quotes(std::string_view text) {
    using nlohmann::json;
    constexpr std::size_t most_bytes = 60;
    std::size_t shown = text.size();
    if (shown > most_bytes) {
        shown = most_bytes;
        // Whole characters; bytes that are no UTF-8 need not begin one.
        while (shown > 0 && (static_cast<unsigned char>(text[shown]) & 0xC0) == 0x80) --shown;
    }
    std::string out =
        json(std::string(text.substr(0, shown))).dump(-1, ' ', false, json::error_handler_t::replace);
    if (shown < text.size()) out.insert(out.size() - 1, "...");
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
