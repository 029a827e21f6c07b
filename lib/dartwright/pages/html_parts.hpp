#pragma once

// Private to this room: pieces of an HTML page.

#include <string>

#include "dartwright/files/markup_text.hpp"

namespace dartwright::html {

/// `tag` may have attributes; `inside` is markup already.
inline std::string element(const std::string& tag, const std::string& inside) {
    return "<" + tag + ">" + inside + "</" + tag.substr(0, tag.find(' ')) + ">\n";
}

/// A name of any script in a text of another: it turns the reading direction of nothing but itself.
inline std::string name(const std::string& words) {
    return "<bdi>" + markup_text(words) + "</bdi>";
}

/// A table that can be moved sideways on a narrow screen, by keyboard too. `label` says what it holds.
inline std::string table(const std::string& attributes, const std::string& label, const std::string& rows) {
    return element(
        "div class=\"scroll\" role=\"region\" tabindex=\"0\" aria-label=\"" + markup_text(label) + "\"",
        "\n" + element("table" + attributes, "\n" + rows));
}

/// Stays in sight where the table is moved sideways.
inline std::string caption(const std::string& words) {
    return element("caption", element("span", markup_text(words)));
}

inline std::string column_head(const std::string& words, bool is_number = false) {
    return element(is_number ? "th scope=\"col\" class=\"number\"" : "th scope=\"col\"", markup_text(words));
}

}  // namespace dartwright::html
