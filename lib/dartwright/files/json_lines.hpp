#pragma once

// Private to the room: JSON as the writers of files lay it out.

#include <map>
#include <string>
#include <vector>

#include "dartwright/words/unit.hpp"

namespace dartwright {

/// Text in double quotes. std::invalid_argument if it is not UTF-8.
std::string json_text(const std::string& text);
std::string in_brackets(const std::string& text);
std::string joined(const std::vector<std::string>& parts, const std::string& separator);
std::string with_key(const std::string& key, const std::string& value);

/// An object on one line, member by member.
class MemberLine {
  public:
    MemberLine& put(const char* key, const std::string& value) { return put_named(key, value); }
    MemberLine& put_text(const char* key, const std::string& text) { return put(key, json_text(text)); }
    MemberLine& put_text_if_any(const char* key, const std::string& text) {
        return text.empty() ? *this : put_text(key, text);
    }
    MemberLine& put_named(const std::string& key, const std::string& value);
    std::string text() const;

  private:
    std::string members_;
};

/// Elements on lines of their own. `indent` is that of the line on which the bracket opens.
std::string list_by_line(const std::vector<std::string>& elements, std::size_t indent);
/// Members are `key: value` already.
std::string object_by_line(const std::vector<std::string>& members, std::size_t indent);

/// The number for a length: as it was in the file it was read from, by its value in mm, or the shortest.
std::string written_length(double mm, Unit unit, const std::map<double, double>& as_written);

}  // namespace dartwright
