#include "dartwright/comparing/compared_notches.hpp"

#include <algorithm>
#include <string_view>
#include <unordered_map>

#include "dartwright/checks/notches_along.hpp"
#include "dartwright/pattern/run_index.hpp"

namespace dartwright {
namespace {

using NotchesByEdge = std::unordered_map<std::string_view, std::vector<const Notch*>>;

NotchesByEdge notches_by_edge(const Piece& piece) {
    NotchesByEdge out;
    for (const Notch& notch : piece.notches) out[notch.edge].push_back(&notch);
    return out;
}

std::vector<WalkedNotch> notches_on(const NotchesByEdge& all, const Run& run) {
    std::vector<WalkedNotch> notches;
    const auto of_run = all.find(run.edge);
    if (of_run == all.end()) return notches;
    for (const Notch* notch : of_run->second) {
        if (const auto at = distance_on_run(*notch, run)) notches.push_back({nullptr, notch, *at, *at});
    }
    std::stable_sort(notches.begin(), notches.end(),
                     [](const WalkedNotch& a, const WalkedNotch& b) { return a.on_run < b.on_run; });
    return notches;
}

// The notches of one run in both patterns, paired in order.
class NotchesOfRun {
  public:
    struct Side {
        const Run& run;
        const NotchesByEdge& notches;
    };
    NotchesOfRun(const Side& before, const Side& after)
        : run_before_(before.run),
          run_after_(after.run),
          before_(notches_on(before.notches, before.run)),
          after_(notches_on(after.notches, after.run)) {}

    std::vector<ComparedNotch> compared() const {
        const NotchPairs pairs = paired(WalkedSeam{}, before_, after_);
        std::vector<ComparedNotch> out;
        for (const NotchPairs::Pair& pair : pairs.pairs)
            out.push_back(notch(&before_[pair.first], &after_[pair.second]));
        for (const std::size_t i : pairs.left_over_first) out.push_back(notch(&before_[i], nullptr));
        for (const std::size_t i : pairs.left_over_second) out.push_back(notch(nullptr, &after_[i]));
        return out;
    }

  private:
    ComparedNotch notch(const WalkedNotch* before, const WalkedNotch* after) const {
        ComparedNotch out;
        out.edge = run_before_.edge;
        out.from = {name_of_end(run_before_, RunEnd::start), name_of_end(run_before_, RunEnd::end)};
        if (before) {
            out.kind_before = before->notch->kind;
            out.at_mm[0].before = before->on_run;
            out.at_mm[1].before = run_before_.length - before->on_run;
        }
        if (after) {
            out.kind_after = after->notch->kind;
            out.at_mm[0].after = after->on_run;
            out.at_mm[1].after = run_after_.length - after->on_run;
        }
        return out;
    }

    const Run& run_before_;
    const Run& run_after_;
    std::vector<WalkedNotch> before_;
    std::vector<WalkedNotch> after_;
};

}  // namespace

std::vector<ComparedNotch> compared_notches(const PieceBothWays& both) {
    std::vector<ComparedNotch> out;
    const RunIndex runs_after(both.after.runs);
    const NotchesByEdge before = notches_by_edge(both.before.piece);
    const NotchesByEdge after = notches_by_edge(both.after.piece);
    for (const Run& run : both.before.runs) {
        const Run* same = runs_after.find(run.edge);
        if (!same) continue;
        for (ComparedNotch& each : NotchesOfRun({run, before}, {*same, after}).compared())
            out.push_back(std::move(each));
    }
    return out;
}

}  // namespace dartwright
