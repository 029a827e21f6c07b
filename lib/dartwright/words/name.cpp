#include "dartwright/words/name.hpp"

#include <algorithm>

namespace dartwright {

bool has_control_characters(std::string_view text) {
    return std::any_of(text.begin(), text.end(),
                       [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; });
}

bool is_name(std::string_view text) {
    return !text.empty() && !has_control_characters(text);
}

}  // namespace dartwright
