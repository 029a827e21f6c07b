#pragma once

#include <string_view>
#include <unordered_map>

#include "dartwright/pattern/run.hpp"

namespace dartwright {

/// Runs by their names, for many questions: O(1) each, where `find_run` goes through the list. The runs must
/// stay where they are meanwhile.
class RunIndex {
  public:
    explicit RunIndex(const std::vector<Run>& runs) {
        by_name_.reserve(runs.size());
        for (const Run& run : runs) by_name_.emplace(run.edge, &run);
    }
    /// The first run of that name, or null.
    const Run* find(const std::string& edge) const {
        const auto found = by_name_.find(edge);
        return found == by_name_.end() ? nullptr : found->second;
    }

  private:
    std::unordered_map<std::string_view, const Run*> by_name_;
};

}  // namespace dartwright
