#include "dartwright/words/quoted.hpp"

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

}  // namespace dartwright
