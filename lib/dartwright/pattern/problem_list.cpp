// Covered by tests/drawing/sound_entry_test.cpp and tests/files/pattern_reader_test.cpp.
#include "dartwright/pattern/problem_list.hpp"

#include <charconv>
#include <utility>

#include "dartwright/words/quoted.hpp"

namespace dartwright {
namespace {

std::string pointer_to(const Step& step) {
    if (!step.from) return {};
    std::string out = pointer_to(*step.from) + '/';
    if (!step.key.data()) return out + std::to_string(step.index);
    for (const char c : step.key) {
        if (c == '~')
            out += "~0";
        else if (c == '/')
            out += "~1";
        else
            out += c;
    }
    return out;
}

std::string in_words(double number) {
    if (std::isnan(number)) return "not a number";
    if (std::isinf(number)) return number > 0 ? "infinity" : "minus infinity";
    std::array<char, 32> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), number).ptr;
    return {text.data(), end};
}

}  // namespace

void ProblemList::add(const Step& at, std::string found, std::string expected) {
    problems.push_back({pointer_to(at), piece, seam, item, std::move(found), std::move(expected)});
}

void ProblemList::add(const Step& at, PerhapsComplaint complaint) {
    if (complaint) add(at, std::move(complaint->found), std::move(complaint->expected));
}

void ProblemList::wanted(const Step& at, const std::string& what, double number) {
    if (!what.empty()) add(at, in_words(number), what);
}

bool ProblemList::name(const Step& at, const std::string& name) {
    const std::string what = wanted_instead_of_name(name);
    if (!what.empty()) add(at, in_quotes(name), what);
    return what.empty();
}

void ProblemList::entries(const Step& at, std::size_t count) {
    const std::string what = wanted_of_entries(count);
    if (!what.empty()) add(at, "a list of " + std::to_string(count), what);
}

}  // namespace dartwright
