#include "dartwright/files/json_lines.hpp"

#include <stdexcept>

#include "dartwright/words/clean_text.hpp"
#include "dartwright/words/converted_length.hpp"
#include "dartwright/words/utf8.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {
namespace {

std::string by_line(char open, const std::vector<std::string>& elements, char close, std::size_t indent) {
    std::string out(1, open);
    for (std::size_t i = 0; i < elements.size(); ++i) {
        out += i == 0 ? "\n" : ",\n";
        out.append(indent + 2, ' ');
        out += elements[i];
    }
    if (!elements.empty()) (out += '\n').append(indent, ' ');
    return out += close;
}

}  // namespace

std::string json_text(const std::string& text) {
    if (first_malformed_utf8(text))
        throw std::invalid_argument("a pattern file cannot hold text that is not UTF-8");
    constexpr const char* hex = "0123456789abcdef";
    std::string out = "\"";
    for (const char c : text) {
        const auto code = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\')
            (out += '\\') += c;
        else if (c == '\n')
            out += "\\n";
        else if (c == '\t')
            out += "\\t";
        else if (code < 0x20)
            ((out += "\\u00") += hex[code / 16]) += hex[code % 16];
        else
            out += c;
    }
    return with_controls_escaped(out += '"');
}

std::string in_brackets(const std::string& text) {
    std::string out(1, '[');
    out += text;
    out += ']';
    return out;
}

MemberLine& MemberLine::put_named(const std::string& key, const std::string& value) {
    if (!members_.empty()) members_ += ", ";
    members_ += json_text(key);
    members_ += ": ";
    members_ += value;
    return *this;
}

std::string MemberLine::text() const {
    std::string out(1, '{');
    out += members_;
    return out += '}';
}

std::string joined(const std::vector<std::string>& parts, const std::string& separator) {
    std::string out;
    for (const std::string& part : parts) {
        if (!out.empty()) out += separator;
        out += part;
    }
    return out;
}

std::string list_by_line(const std::vector<std::string>& elements, std::size_t indent) {
    return by_line('[', elements, ']', indent);
}

std::string object_by_line(const std::vector<std::string>& members, std::size_t indent) {
    return by_line('{', members, '}', indent);
}

std::string with_key(const std::string& key, const std::string& value) {
    return json_text(key) + ": " + value;
}

std::string written_length(double mm, Unit unit, const std::map<double, double>& as_written) {
    const auto kept = as_written.find(mm);
    if (kept != as_written.end() && to_mm(kept->second, unit) == mm) return decimal(kept->second);
    return decimal(from_mm(mm, unit));
}

}  // namespace dartwright
