#pragma once

// Private to this room: the problems that are found in a pattern, each with the way to its value.

#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "dartwright/pattern/pattern_problems.hpp"
#include "dartwright/pattern/pattern_rules.hpp"

namespace dartwright {

/// A step of the way to a value; the words of the way are made only where there is a problem.
struct Step {
    const Step* from = nullptr;
    std::string_view key;
    std::size_t index = 0;  // where there is no key
};
inline Step under(const Step& from, std::string_view key) {
    return {&from, key.data() ? key : std::string_view("", 0), 0};
}
inline Step under(const Step& from, std::size_t index) {
    return {&from, {}, index};
}

/// What is right costs no words: a rule is asked for them only where it is broken.
struct ProblemList {
    double largest_mm = largest_length_mm;  ///< of a length, and of a coordinate from zero
    std::vector<PatternProblem> problems;
    /// Where the problems are that are added next.
    std::string piece = {};
    std::string seam = {};
    std::optional<std::size_t> item = {};

    void add(const Step& at, std::string found, std::string expected);
    void add(const Step& at, PerhapsComplaint complaint);
    /// A problem unless nothing is wanted instead.
    void wanted(const Step& at, const std::string& what, double number);
    /// Whether it is a name.
    bool name(const Step& at, const std::string& name);
    void length(const Step& at, double mm) {
        if (mm >= 0 && mm <= largest_mm) return;
        wanted(at, wanted_instead_of_length_within(mm, largest_mm), mm);
    }
    void length(const Step& at, const std::optional<double>& mm) {
        if (mm) length(at, *mm);
    }
    void coordinate(const Step& at, double mm) {
        if (std::abs(mm) <= largest_mm) return;
        wanted(at, wanted_instead_of_coordinate_within(mm, largest_mm), mm);
    }
    void point(const Step& at, Point p) {
        coordinate(under(at, 0), p.x);
        coordinate(under(at, 1), p.y);
    }
    void entries(const Step& at, std::size_t count);
    template <class Points>
    void points(const Step& at, const Points& points) {
        for (std::size_t i = 0; i < points.size(); ++i) point(under(at, i), points[i]);
    }
};

}  // namespace dartwright
