#include "dartwright/darts/phrases.hpp"

#include <cstdio>

namespace dartwright {

std::string quoted(const std::string& name) {
    return "\"" + name + "\"";
}

std::string text_of(const char* format, double value) {
    char text[96];
    std::snprintf(text, sizeof text, format, value);
    return text;
}

}  // namespace dartwright
