#pragma once

#include <string>
#include <string_view>

namespace dartwright::tools {

/// Standard output, buffered. A reader that has gone (a closed pipe) is no error: what follows is dropped,
/// and the command may stop early. Any other failure is FileTrouble. What a terminal would obey is left out
/// of all that is written (clean_for_terminal).
class Output {
  public:
    explicit Output(int descriptor) : descriptor_(descriptor) {}
    void write(std::string_view text);
    void flush();
    bool is_reader_gone() const { return reader_gone_; }
    /// Whether colours may be used: a terminal that knows them, and `NO_COLOR` unset or empty.
    bool is_coloured() const;
    /// Of the terminal; 0 if it is none, or does not say.
    std::size_t columns() const;

  private:
    int descriptor_;
    std::string waiting_;
    bool reader_gone_ = false;
};

/// One line on standard error, whatever is in the words: a line end in them becomes a blank. Standard output
/// should be flushed before, so that the two keep their order on a terminal.
void say(const std::string& prefix, const std::string& words);
/// Text of several lines on standard error, without what a terminal would obey.
void say_text(const std::string& text);

}  // namespace dartwright::tools
