#pragma once

// The cloth that pieces are laid on, as the options say it.

#include "arguments.hpp"
#include "dartwright/cutting/lay.hpp"

namespace dartwright::tools {

/// `--width LENGTH`, `--opened`, `--one-way`, `--gap LENGTH`.
OptionSpec width_option(const char* help);
OptionSpec opened_option();
OptionSpec one_way_option();
OptionSpec gap_option();

/// WrongUse without a width.
LayRequest lay_request(const Arguments& arguments);

}  // namespace dartwright::tools
