#include "dartwright/darts/account.hpp"

namespace dartwright {

std::vector<RunChange> run_changes(const std::vector<Run>& before, const std::vector<Run>& after) {
    std::vector<RunChange> out;
    for (const Run& run : before) {
        const Run* same = find_run(after, run.edge);
        out.push_back({run.edge, run.length, same ? same->length : 0});
    }
    for (const Run& run : after) {
        if (!find_run(before, run.edge)) out.push_back({run.edge, 0, run.length});
    }
    return out;
}

}  // namespace dartwright
