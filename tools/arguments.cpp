#include "arguments.hpp"

#include <boost/program_options/errors.hpp>
#include <boost/program_options/option.hpp>
#include <boost/program_options/options_description.hpp>
#include <boost/program_options/parsers.hpp>
#include <boost/program_options/positional_options.hpp>

#include "dartwright/words/nearest_word.hpp"
#include "dartwright/words/utf8.hpp"

namespace dartwright::tools {

namespace po = boost::program_options;

namespace {

constexpr const char* positional_key = "(words)";

po::options_description description_of(const Command& command) {
    po::options_description described;
    auto add = described.add_options();
    add("help,h", "");
    add(positional_key, po::value<std::vector<std::string>>());
    for (const OptionSpec& option : command.options) {
        std::string names = option.name;
        if (option.letter != 0) names += std::string(",") + option.letter;
        if (*option.value == '\0') {
            add(names.c_str(), "");
        } else {
            add(names.c_str(), po::value<std::string>(), "");
        }
    }
    return described;
}

std::string unknown_option(const Command& command, const std::string& option) {
    std::vector<std::string> known{"--help"};
    for (const OptionSpec& spec : command.options) {
        known.push_back(std::string("--") + spec.name);
        if (spec.letter != 0) known.push_back(std::string("-") + spec.letter);
    }
    const std::string written = option.substr(0, option.find('='));
    const std::string nearest = nearest_told(written, known);
    return "there is no option " + written +
           (nearest.empty() ? std::string("; 'dartwright ") + command.name + " --help' lists them" : nearest);
}

po::parsed_options parsed(const Command& command, const std::vector<std::string>& words) {
    const po::options_description described = description_of(command);
    po::positional_options_description positional;
    positional.add(positional_key, -1);
    // Shortened options are not guessed at: an option that comes later would change what they mean.
    const int style = po::command_line_style::unix_style & ~po::command_line_style::allow_guessing;
    try {
        return po::command_line_parser(words).options(described).positional(positional).style(style).run();
    } catch (const po::unknown_option& error) {
        throw WrongUse(unknown_option(command, error.get_option_name()));
    } catch (const po::invalid_command_line_syntax& error) {
        const bool is_missing = error.kind() == po::invalid_syntax::missing_parameter ||
                                error.kind() == po::invalid_syntax::empty_adjacent_parameter;
        throw WrongUse(error.get_option_name() + (is_missing ? " needs a value" : " takes no value"));
    } catch (const po::error& error) {
        throw WrongUse(error.what());
    }
}

// Names and places are compared with those of files, which are UTF-8; the name of a file may be any bytes.
void require_utf8(const Command& command, const Arguments& arguments) {
    for (const OptionSpec& option : command.options) {
        const auto found = arguments.options.find(option.name);
        if (found == arguments.options.end() || std::string_view(option.value) == "FILE") continue;
        for (const std::string& value : found->second) {
            const auto bad = first_malformed_utf8(value);
            if (!bad) continue;
            throw WrongUse(std::string("--") + option.name + " is not UTF-8 text: byte " +
                           std::to_string(*bad + 1) + " of its value does not belong there");
        }
    }
}

void require_single(const Command& command, const Arguments& arguments) {
    for (const OptionSpec& option : command.options) {
        const auto found = arguments.options.find(option.name);
        if (found == arguments.options.end() || option.is_repeatable) continue;
        if (found->second.size() > 1) throw WrongUse(std::string("--") + option.name + " is given twice");
    }
}

}  // namespace

std::optional<std::string> Arguments::value(const std::string& option) const {
    const auto found = options.find(option);
    if (found == options.end()) return std::nullopt;
    return found->second.back();
}

std::vector<std::string> Arguments::values(const std::string& option) const {
    const auto found = options.find(option);
    return found == options.end() ? std::vector<std::string>{} : found->second;
}

std::string Arguments::required(const std::string& option) const {
    const std::optional<std::string> given = value(option);
    if (!given) throw WrongUse((option == "output" ? "-o" : "--" + option) + " is missing");
    return *given;
}

Arguments read_arguments(const Command& command, const std::vector<std::string>& words) {
    Arguments arguments;
    for (const po::option& option : parsed(command, words).options) {
        if (option.position_key >= 0 || option.string_key == positional_key) {
            arguments.positional.insert(arguments.positional.end(), option.value.begin(), option.value.end());
        } else {
            arguments.options[option.string_key].push_back(option.value.empty() ? "" : option.value.front());
        }
    }
    require_single(command, arguments);
    require_utf8(command, arguments);
    return arguments;
}

void require_positional(const Arguments& arguments, std::size_t least, std::size_t most, const char* what) {
    const std::size_t given = arguments.positional.size();
    if (given < least) throw WrongUse(std::string(what) + " is missing");
    if (given > most) throw WrongUse("'" + arguments.positional[most] + "' is one word too many");
}

Format format_of(const Arguments& arguments) {
    const std::string format = arguments.value("format").value_or("text");
    if (format == "text") return Format::text;
    if (format == "json") return Format::json;
    throw WrongUse("--format is text or json, not '" + format + "'" + nearest_told(format, {"text", "json"}));
}

OptionSpec format_option() {
    return {"format", 0, "text|json", "how the result is written; json has lengths in mm, angles in degrees"};
}

}  // namespace dartwright::tools
