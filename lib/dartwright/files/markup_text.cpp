#include "dartwright/files/markup_text.hpp"

#include "dartwright/words/clean_text.hpp"

namespace dartwright {

std::string markup_text(const std::string& words) {
    std::string out;
    for (const char c : clean_text(words)) {
        switch (c) {
            case '&':
                out += "&amp;";
                break;
            case '<':
                out += "&lt;";
                break;
            case '>':
                out += "&gt;";
                break;
            case '"':
                out += "&quot;";
                break;
            case '\'':
                out += "&#39;";
                break;
            default:
                out += c;
        }
    }
    return out;
}

}  // namespace dartwright
