#include <algorithm>

#include "command.hpp"

namespace dartwright::tools {

namespace {

// Where it is not read on a terminal. Narrower than the least, the options' column would have no room; lines
// wider than the most are hard to read.
constexpr std::size_t usual_width = 79;
constexpr std::size_t least_width = 50;
constexpr std::size_t most_width = 99;

std::size_t width_on(std::size_t columns) {
    return columns == 0 ? usual_width : std::clamp(columns - 1, least_width, most_width);
}

std::string option_words(const OptionSpec& option) {
    std::string words = option.letter != 0 ? std::string("-") + option.letter + ", " : std::string();
    words += std::string("--") + option.name;
    if (*option.value != '\0') words += std::string(" ") + option.value;
    return words;
}

/// The words wrapped at the line's width, every line but the first indented.
std::string wrapped(const std::string& words, std::size_t indent, std::size_t line_width) {
    std::size_t column = indent;
    std::string text;
    std::size_t begin = 0;
    while (begin < words.size()) {
        const std::size_t end = std::min(words.find(' ', begin), words.size());
        const std::string word = words.substr(begin, end - begin);
        if (column > indent && column + 1 + word.size() > line_width) {
            text += '\n';
            text.append(indent, ' ');
            column = indent;
        } else if (column > indent) {
            text += " ";
            ++column;
        }
        text += word;
        column += word.size();
        begin = end + 1;
    }
    return text;
}

std::string option_lines(const std::vector<OptionSpec>& options, std::size_t line_width) {
    std::size_t width = 0;
    for (const OptionSpec& option : options) width = std::max(width, option_words(option).size());
    // What is wider stands on a line of its own.
    constexpr std::size_t widest = 28;
    const std::size_t indent = std::min(width, widest) + 4;
    std::string text;
    for (const OptionSpec& option : options) {
        std::string words = std::string("  ") + option_words(option);
        if (words.size() + 2 > indent)
            words += "\n" + std::string(indent, ' ');
        else
            words.resize(indent, ' ');
        text += words + wrapped(option.help, indent, line_width) + "\n";
    }
    return text;
}

}  // namespace

std::string help_of(const Command& command, std::size_t columns) {
    const std::size_t line_width = width_on(columns);
    std::string text = std::string("dartwright ") + command.name + ": " + command.summary +
                       "\n\nUsage:\n  dartwright " + command.name + " " + command.usage + "\n\n" +
                       wrapped(command.description, 0, line_width) + "\n\nOptions:\n";
    std::vector<OptionSpec> options = command.options;
    options.push_back({"help", 'h', "", "print this help"});
    text += option_lines(options, line_width) + "\nExamples:\n";
    for (const Example& example : command.examples) {
        text += std::string("  ") + example.command + "\n      " +
                wrapped(example.explanation, 6, line_width) + "\n";
    }
    return text;
}

std::string help_of_program(const std::vector<Command>& commands) {
    std::string text =
        "dartwright: check pattern pieces and move their darts\n\n"
        "Usage:\n  dartwright COMMAND [ARGUMENTS]\n\nCommands:\n";
    for (const Command& command : commands) {
        std::string name = std::string("  ") + command.name;
        name.resize(11, ' ');
        text += name + command.summary + "\n";
    }
    text +=
        "\nOptions:\n"
        "  --help     print this help; 'dartwright help COMMAND' has the command's\n"
        "             options and examples\n"
        "  --version  print the version\n"
        "\nA FILE of '-' is standard input. A length is in mm, or has its unit: 60, 6cm,\n"
        "'2 3/8in'. A PLACE on an outline is EDGE@DISTANCE/FROM: side@60/armhole is\n"
        "60 mm along the side from its armhole end, darts closed; waist@50% is the\n"
        "middle of the waist.\n"
        "\nExit status: 0 all true or done; 1 faults were found; 2 wrong use; 3 a file\n"
        "cannot be read or written, or is not valid; 4 not possible as asked; 5 internal\n"
        "error. With many files it is the highest of 5, 3, 1 and 0.\n";
    return text;
}

}  // namespace dartwright::tools
