#include "dartwright/pattern/pattern_problems.hpp"

#include <utility>

#include "dartwright/pattern/piece_problems.hpp"
#include "dartwright/pattern/put_right.hpp"
#include "dartwright/pattern/rule_problems.hpp"
#include "dartwright/pattern/seam_problems.hpp"
#include "dartwright/pattern/sound_entry.hpp"
#include "dartwright/words/quoted.hpp"

namespace dartwright {
namespace {

void look_at_made(ProblemList& to, const Step& at, const Made& made) {
    to.name(under(at, "operation"), made.operation);
    NameTable keys;
    keys.add("operation");
    for (const auto& [key, value] : made.request)
        if (!keys.add(key)) to.add(under(at, key), "the key " + in_quotes(key) + " again", "each key once");
}

void look_at_pattern(ProblemList& to, const Pattern& pattern) {
    const Step root;
    to.name(under(root, "name"), pattern.name);
    const Step pieces = under(root, "pieces");
    const std::string what = wanted_of_pieces(pattern.pieces.size());
    if (!what.empty()) to.add(pieces, "an empty list", what);
    to.entries(pieces, pattern.pieces.size());
    NameTable piece_names;
    std::vector<KnownRuns> runs;
    runs.reserve(pattern.pieces.size());
    for (std::size_t i = 0; i < pattern.pieces.size(); ++i) {
        const Piece& piece = pattern.pieces[i];
        const Step step = under(pieces, i);
        if (!piece_names.add(piece.name) && !piece.name.empty())
            to.add(under(step, "name"), named_again("piece", piece.name));
        runs.push_back(look_at_piece(to, step, piece));
    }
    const Step seams = under(root, "seams");
    to.entries(seams, pattern.seams.size());
    NameTable seam_names;
    for (std::size_t i = 0; i < pattern.seams.size(); ++i) {
        const Step step = under(seams, i);
        const std::string& name = pattern.seams[i].name;
        if (!seam_names.add(name) && !name.empty()) to.add(under(step, "name"), named_again("seam", name));
        look_at_seam(to, step, pattern.seams[i], piece_names, runs);
    }
    look_at_own_tolerances(to, under(root, "tolerances"), pattern);
    const Step made_list = under(root, "made");
    to.entries(made_list, pattern.made.size());
    for (std::size_t i = 0; i < pattern.made.size(); ++i)
        look_at_made(to, under(made_list, i), pattern.made[i]);
    if (pattern.cutting) look_at_rule(to, under(root, "cutting"), *pattern.cutting);
}

/// Problems in the message of an exception; a million are a message of 65 MB.
constexpr std::size_t most_told = 100;

void refuse(std::vector<PatternProblem> problems) {
    if (!problems.empty()) throw UnsoundPattern(std::move(problems));
}

std::string lines_of(const std::vector<PatternProblem>& problems) {
    std::string lines;
    for (const PatternProblem& problem : problems) {
        if (!lines.empty()) lines += '\n';
        const std::size_t told = static_cast<std::size_t>(&problem - problems.data());
        if (told == most_told) return lines + "and " + std::to_string(problems.size() - told) + " more";
        if (!problem.pointer.empty()) lines += problem.pointer + ": ";
        lines += "found " + problem.found + "; expected " + problem.expected;
    }
    return lines;
}

}  // namespace

std::vector<PatternProblem> problems_of(const Pattern& pattern) {
    ProblemList list;
    look_at_pattern(list, pattern);
    return std::move(list.problems);
}

std::vector<PatternProblem> problems_of(const Piece& piece) {
    ProblemList list;
    look_at_piece(list, Step{}, piece);
    return std::move(list.problems);
}

Pattern sound_within(Pattern pattern, double largest_mm) {
    Pattern right = put_right_within(std::move(pattern), largest_mm);
    ProblemList list;
    list.largest_mm = largest_mm;
    look_at_pattern(list, right);
    refuse(std::move(list.problems));
    return right;
}

UnsoundPattern::UnsoundPattern(std::vector<PatternProblem> problems_)
    : Error(ErrorKind::bad_pattern, lines_of(problems_)), problems(std::move(problems_)) {}

void require_sound(const Pattern& pattern) {
    refuse(problems_of(pattern));
}

void require_sound(const Piece& piece) {
    refuse(problems_of(piece));
}

void require_sound(const CuttingRule& rule) {
    if (rule.name.empty()) {
        // One that is made for once and never written.
        CuttingRule named = rule;
        named.name = "rule";
        return require_sound(named);
    }
    ProblemList list;
    const Step root;
    look_at_rule(list, under(root, "cutting"), rule);
    refuse(std::move(list.problems));
}

void require_sound(const Tolerances& tolerances) {
    ProblemList list;
    const Step root;
    look_at_tolerances(list, under(root, "tolerances"), tolerances);
    refuse(std::move(list.problems));
}

}  // namespace dartwright
