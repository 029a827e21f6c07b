// The only way in and out of the program: finds the command, runs it, and turns what it throws into one line
// on standard error and the exit status.

#include <unistd.h>

#include <exception>

#include "arguments.hpp"
#include "checked_file.hpp"
#include "command.hpp"
#include "dartwright/drawing/cairo_writer.hpp"
#include "dartwright/words/nearest_word.hpp"
#include "ending.hpp"
#include "kept_memory.hpp"
#include "output.hpp"
#include "signals.hpp"
#include "standard_streams.hpp"

namespace dartwright::tools {

std::vector<Command> all_commands() {
    return {check_command(),   walk_command(),    show_command(),   measure_command(), pivot_command(),
            split_command(),   cluster_command(), merge_command(),  close_command(),   true_command(),
            repoint_command(), open_command(),    replay_command(), compare_command(), cut_command(),
            draw_command(),    print_command(),   lay_command(),    sheet_command(),   assess_command()};
}

namespace {

[[noreturn]] void refuse_unknown(const std::string& word, const std::vector<Command>& commands) {
    const bool is_option = word[0] == '-';
    std::vector<std::string> known{"help"};
    for (const Command& command : commands) known.push_back(command.name);
    if (is_option) known = {"--help", "--version"};
    const std::string nearest = nearest_told(word, known);
    throw WrongUse(std::string("there is no ") + (is_option ? "option " : "command '") + word +
                   (is_option ? "" : "'") + (nearest.empty() ? "; 'dartwright help' lists them" : nearest));
}

ExitStatus run_help(const std::vector<std::string>& words, const std::vector<Command>& commands,
                    Invocation& call) {
    if (words.size() > 2) throw WrongUse("'" + words[2] + "' is one word too many");
    if (words.size() < 2 || words[1] == "help") {
        call.out.write(help_of_program(commands));
        return ExitStatus::done;
    }
    for (const Command& command : commands) {
        if (words[1] != command.name) continue;
        call.out.write(help_of(command, call.out.columns()));
        return ExitStatus::done;
    }
    refuse_unknown(words[1], commands);
}

ExitStatus run_program(const std::vector<std::string>& words, Invocation& call, std::string& name) {
    const std::vector<Command> commands = all_commands();
    if (words.empty()) throw WrongUse("no command is given; 'dartwright help' lists them");
    if (words[0] == "--help" || words[0] == "-h" || words[0] == "help") {
        const bool is_command = words[0] == "help";
        return run_help(is_command ? words : std::vector<std::string>{}, commands, call);
    }
    if (words[0] == "--version") {
        call.out.write("dartwright " DARTWRIGHT_VERSION "\n");
        return ExitStatus::done;
    }
    for (const Command& command : commands) {
        if (words[0] != command.name) continue;
        name += std::string(" ") + command.name;
        const Arguments arguments = read_arguments(command, {words.begin() + 1, words.end()});
        if (!arguments.has("help")) return command.run(arguments, call);
        call.out.write(help_of(command, call.out.columns()));
        return ExitStatus::done;
    }
    refuse_unknown(words[0], commands);
}

}  // namespace

int run(const std::vector<std::string>& words) {
    hold_closed_streams();
    prepare_for_signals();
    Output out(STDOUT_FILENO);
    Invocation call{out, {}};
    std::string name = "dartwright";
    try {
        const ExitStatus status = run_program(words, call, name);
        out.flush();
        return static_cast<int>(status);
    } catch (...) {
        const Ending ending = ending_of(std::current_exception(), call.unit);
        if (is_json_asked_for(words)) {
            say_text(json_line_of(ending, name, call));
            return static_cast<int>(ending.status);
        }
        const bool has_subject = !ending.names_its_file && !call.subject.empty();
        const std::string done = call.written.empty() ? "" : "; " + shown_path(call.written) + " is written";
        say(name + ": " + (has_subject ? call.subject + ": " : ""), ending.words + done);
        return static_cast<int>(ending.status);
    }
}

}  // namespace dartwright::tools

int main(int count, char** words) {
    dartwright::tools::keep_freed_memory();
    return dartwright::tools::run({words + (count > 0 ? 1 : 0), words + count});
}
