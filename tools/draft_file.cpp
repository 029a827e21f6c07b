#include "draft_file.hpp"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <regex>

#include "dartwright/files/pattern_file.hpp"

namespace dartwright::tools {
namespace {

using Tree = nlohmann::json;
using Pointer = Tree::json_pointer;

/// A file with more slips than this is not a draft with a slip.
constexpr std::size_t most_left_out = 12;

/// What a pattern can do without, as the beginning of a place in its file; empty for anything else.
std::string part_left_out(const std::string& pointer) {
    static const std::regex parts(
        "/pieces/[0-9]+/(notches/[0-9]+|marks/[0-9]+|double_darts/[0-9]+|allowance/[^/]+|grain/along|cut/"
        "ends)|"
        "/pieces/[0-9]+/cut/fold|/seams/[0-9]+");
    std::smatch found;
    return std::regex_search(pointer, found, parts, std::regex_constants::match_continuous) ? found.str()
                                                                                            : "";
}

bool take_out(Tree& tree, const std::string& part) {
    const Pointer pointer(part);
    if (!tree.contains(pointer)) return false;
    Tree& parent = tree[pointer.parent_pointer()];
    if (parent.is_array())
        parent.erase(std::stoul(pointer.back()));
    else
        parent.erase(pointer.back());
    return true;
}

}  // namespace

DraftRead read_draft(const std::string& text, const std::string& file) {
    try {
        return {read_pattern(text, file), {}};
    } catch (const InvalidPattern& invalid) {
        Tree tree = Tree::parse(text, nullptr, false);
        std::vector<std::string> left_out;
        DraftRead draft;
        for (const FileProblem& problem : invalid.problems) {
            const std::string part = part_left_out(problem.pointer);
            if (part.empty() || tree.is_discarded() || invalid.problems.size() > most_left_out) throw;
            draft.notes.push_back("Left out: " + problem.pointer + ": found " + problem.found +
                                  "; expected " + problem.expected + ".");
            if (std::find(left_out.begin(), left_out.end(), part) == left_out.end()) left_out.push_back(part);
        }
        // From the end, so that places before stay what they are.
        for (auto part = left_out.rbegin(); part != left_out.rend(); ++part)
            if (!take_out(tree, *part)) throw;
        draft.pattern = read_pattern(tree.dump(), file);
        return draft;
    }
}

}  // namespace dartwright::tools
