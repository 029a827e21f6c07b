#pragma once

// The plain way through a JSON text, for texts that are right: no words are made and no text is copied. What
// is wrong with a text is not said here; the JSON library, which is asked then, says it.

#include <charconv>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>

namespace dartwright {

/// Private to this room. Tells `Events` what stands in the text, in its order: null(), boolean(bool),
/// whole(double), number(double, literal), text(string_view), key(string_view), open_object(), open_list(),
/// close_object(), close_list(), and asks it to keep(string) what stands there only in escapes. An event that
/// says false ends the scan. Requires: the text is UTF-8 and has no zero byte.
template <class Events>
class JsonScan {
  public:
    JsonScan(std::string_view text, Events& events)
        : at_(text.data()), end_(text.data() + text.size()), events_(events) {}

    /// False where the text is not JSON, an event said so, or there is something seldom seen: an escape by
    /// number, or a number beyond what a double holds. O(n).
    bool all() {
        constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
        if (std::string_view(at_, rest()).starts_with(byte_order_mark)) at_ += byte_order_mark.size();
        if (!value()) return false;
        while (!open_.empty())
            if (!(open_.back() == '{' ? next_member() : next_element())) return false;
        skip_blanks();
        return at_ == end_;
    }

  private:
    std::size_t rest() const { return static_cast<std::size_t>(end_ - at_); }
    void skip_blanks() {
        while (at_ != end_ && (*at_ == ' ' || *at_ == '\n' || *at_ == '\r' || *at_ == '\t')) ++at_;
    }
    bool take(char sign) {
        skip_blanks();
        if (at_ == end_ || *at_ != sign) return false;
        ++at_;
        return true;
    }
    bool take_word(std::string_view word) {
        if (!std::string_view(at_, rest()).starts_with(word)) return false;
        at_ += word.size();
        return true;
    }

    /// A value; of a list or an object what opens it.
    bool value() {
        skip_blanks();
        if (at_ == end_) return false;
        switch (*at_) {
            case '{':
            case '[':
                open_ += *at_++;
                is_first_ = true;
                return open_.back() == '{' ? events_.open_object() : events_.open_list();
            case '"': {
                std::string_view text;
                return quoted(text) && events_.text(text);
            }
            case 't':
                return take_word("true") && events_.boolean(true);
            case 'f':
                return take_word("false") && events_.boolean(false);
            case 'n':
                return take_word("null") && events_.null();
            default:
                return number();
        }
    }
    bool close() {
        const bool is_object = open_.back() == '{';
        open_.pop_back();
        is_first_ = false;
        return is_object ? events_.close_object() : events_.close_list();
    }
    bool next_element() {
        if (take(']')) return close();
        if (!std::exchange(is_first_, false)) {
            if (!take(',')) return false;
        }
        return value();
    }
    bool next_member() {
        if (take('}')) return close();
        if (!std::exchange(is_first_, false)) {
            if (!take(',')) return false;
            skip_blanks();
        }
        std::string_view key;
        return quoted(key) && events_.key(key) && take(':') && value();
    }

    bool quoted(std::string_view& text) {
        if (at_ == end_ || *at_ != '"') return false;
        const char* const first = ++at_;
        while (at_ != end_ && *at_ != '"' && *at_ != '\\' && static_cast<unsigned char>(*at_) >= 0x20) ++at_;
        if (at_ == end_ || static_cast<unsigned char>(*at_) < 0x20) return false;
        if (*at_ == '\\') return with_escapes(first, text);
        text = {first, static_cast<std::size_t>(at_ - first)};
        ++at_;
        return true;
    }
    bool with_escapes(const char* first, std::string_view& text) {
        std::string plain(first, at_);
        for (; at_ != end_ && *at_ != '"'; ++at_) {
            if (static_cast<unsigned char>(*at_) < 0x20) return false;
            if (*at_ != '\\') {
                plain += *at_;
                continue;
            }
            if (++at_ == end_) return false;
            constexpr std::string_view letters = "\"\\/bfnrt";
            constexpr std::string_view signs = "\"\\/\b\f\n\r\t";
            const std::size_t which = letters.find(*at_);
            if (which == letters.npos) return false;
            plain += signs[which];
        }
        if (at_ == end_) return false;
        ++at_;
        text = events_.keep(std::move(plain));
        return true;
    }

    bool digits() {
        const char* const first = at_;
        while (at_ != end_ && *at_ >= '0' && *at_ <= '9') ++at_;
        return at_ != first;
    }
    bool number() {
        const char* const first = at_;
        if (*at_ == '-') ++at_;
        const bool is_zero = at_ != end_ && *at_ == '0';
        if (!digits()) return false;
        const bool has_zero_before = is_zero && at_ - first > (*first == '-' ? 2 : 1);
        if (has_zero_before) return false;
        const bool is_whole = at_ == end_ || (*at_ != '.' && *at_ != 'e' && *at_ != 'E');
        if (at_ != end_ && *at_ == '.') {
            ++at_;
            if (!digits()) return false;
        }
        if (at_ != end_ && (*at_ == 'e' || *at_ == 'E')) {
            ++at_;
            if (at_ != end_ && (*at_ == '+' || *at_ == '-')) ++at_;
            if (!digits()) return false;
        }
        return is_whole ? whole(first) : decimal(first);
    }
    /// As the JSON library has it, a whole number of 64 bits is one, so that -0 is 0.
    bool whole(const char* first) {
        if (*first == '-') {
            std::int64_t number = 0;
            if (std::from_chars(first, at_, number).ec != std::errc()) return decimal(first);
            return events_.whole(static_cast<double>(number));
        }
        std::uint64_t number = 0;
        if (std::from_chars(first, at_, number).ec != std::errc()) return decimal(first);
        return events_.whole(static_cast<double>(number));
    }
    bool decimal(const char* first) {
        double number = 0;
        const auto read = std::from_chars(first, at_, number);
        if (read.ec != std::errc() || read.ptr != at_) return false;
        return events_.number(number, {first, static_cast<std::size_t>(at_ - first)});
    }

    const char* at_;
    const char* end_;
    Events& events_;
    std::string open_;      ///< the brackets that are open
    bool is_first_ = true;  ///< nothing has been read since the last bracket was opened
};

}  // namespace dartwright
