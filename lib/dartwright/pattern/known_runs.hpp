#pragma once

// Private to this room: the runs of an outline by their names, and what refers to them.

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "dartwright/pattern/name_table.hpp"
#include "dartwright/pattern/outline.hpp"
#include "dartwright/pattern/problem_list.hpp"

namespace dartwright {

/// The runs of one outline, for the names elsewhere. Without an edge, with a name that is none, or one that
/// recurs, neighbours mean nothing.
struct KnownRuns {
    NameTable names;
    bool is_sound = false;
    std::vector<std::string> known() const { return {names.names().begin(), names.names().end()}; }
    std::array<std::string_view, 2> neighbours(std::size_t run) const {
        const auto& all = names.names();
        return {all[(run + all.size() - 1) % all.size()], all[(run + 1) % all.size()]};
    }
};

/// The names of the edge items, in outline order.
std::vector<std::string_view> edges_of(const Outline& outline);

/// What is wrong with `from` as a name of an end of the edge; nothing of an edge that is not known.
PerhapsComplaint trouble_of_end(const KnownRuns& runs, const std::string& edge, const std::string& from);

void look_for_edge(ProblemList& to, const Step& at, const KnownRuns& runs, const std::string& edge);
void look_at_end(ProblemList& to, const Step& at, const KnownRuns& runs, const std::string& edge,
                 const std::string& from);

}  // namespace dartwright
