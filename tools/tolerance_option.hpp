#pragma once

#include "arguments.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright::tools {

/// `--tolerance NAME=VALUE`, repeatable: the value in mm or with a unit, of angles in degrees.
OptionSpec tolerance_option();

/// The tolerances given, by name, in mm or degrees. WrongUse: no such tolerance, given twice, or below 0;
/// BadWords: not a length or an angle.
std::map<std::string, double> tolerances_given(const Arguments& arguments);

/// The pattern with these in place of its own.
Pattern with_tolerances(Pattern pattern, const std::map<std::string, double>& given);

}  // namespace dartwright::tools
