#pragma once

// What a command is to the program: its words, its options and the function that runs it. The help of every
// command, the list of commands and the reading of arguments are all made from this one description.

#include <string>
#include <vector>

#include "dartwright/words/unit.hpp"
#include "output.hpp"

namespace dartwright::tools {

/// How the program ends; with many files the highest of 5, 3, 1 and 0.
enum class ExitStatus {
    done = 0,        ///< all true, or done
    faults = 1,      ///< findings of severity fault
    wrong_use = 2,   ///< a bad value, an unknown name, an output that exists
    unreadable = 3,  ///< a file that cannot be read or written, or is not valid
    impossible = 4,  ///< the operation is not possible as asked
    internal = 5
};

struct OptionSpec {
    const char* name;   ///< without the dashes
    char letter;        ///< the short form, or 0
    const char* value;  ///< what its value is called in the help; empty for a flag
    const char* help;
    bool is_repeatable = false;
};

struct Example {
    const char* command;
    const char* explanation;
};

class Arguments;

/// One call of a command.
struct Invocation {
    Output& out;
    std::string subject;   ///< the file worked on, named in messages once it is read
    Unit unit = Unit::mm;  ///< and its unit, in which they speak
    std::string written =
        {};  ///< the file of `-o` once it is in place, named in messages of what went wrong later

    void works_on(const std::string& file, Unit in) {
        subject = file;
        unit = in;
    }
};

struct Command {
    const char* name;
    const char* summary;
    const char* usage;  ///< what follows the command's name
    const char* description;
    std::vector<OptionSpec> options;
    std::vector<Example> examples;
    ExitStatus (*run)(const Arguments& arguments, Invocation& call);
};

Command check_command();
Command walk_command();
Command show_command();
Command measure_command();
Command pivot_command();
Command split_command();
Command cluster_command();
Command merge_command();
Command close_command();
Command true_command();
Command repoint_command();
Command open_command();
Command replay_command();
Command compare_command();
Command cut_command();
Command draw_command();
Command print_command();
Command lay_command();
Command sheet_command();
Command assess_command();

/// Every command, in the order of the help.
std::vector<Command> all_commands();

/// In lines as wide as a terminal of so many columns; 0 for none.
std::string help_of(const Command& command, std::size_t columns);
std::string help_of_program(const std::vector<Command>& commands);

}  // namespace dartwright::tools
