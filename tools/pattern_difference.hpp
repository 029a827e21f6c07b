#pragma once

// How far the texts of two pattern files differ.

#include <string>

namespace dartwright::tools {

struct PatternDifference {
    double most = 0;  ///< the largest difference of two numbers that stand at one place, in the files' unit
    std::string
        place;  ///< JSON pointer of the first thing other than a number that differs; empty if there is none
    std::string found;  ///< what the first file has there, and the second
    std::string expected;
};

/// Precondition: both are texts that write_pattern gave.
PatternDifference pattern_difference(const std::string& first, const std::string& second);

}  // namespace dartwright::tools
