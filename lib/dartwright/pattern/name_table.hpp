#pragma once

// Private to the library.

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace dartwright {

/// Names in their order and where each stands. Few are looked through, many are hashed: O(1) each. The text
/// must stay where it is meanwhile.
class NameTable {
  public:
    std::optional<std::size_t> find(std::string_view name) const {
        if (names_.size() > most_looked_through) {
            const auto found = places_.find(name);
            return found == places_.end() ? std::nullopt : std::optional(found->second);
        }
        const auto found = std::find(names_.begin(), names_.end(), name);
        if (found == names_.end()) return std::nullopt;
        return static_cast<std::size_t>(found - names_.begin());
    }
    /// False if it was there already; it then keeps its first place.
    bool add(std::string_view name) {
        if (names_.empty()) names_.reserve(most_looked_through);
        const bool is_new = !find(name);
        names_.push_back(name);
        if (names_.size() == most_looked_through + 1)
            for (std::size_t i = 0; i < names_.size(); ++i) places_.emplace(names_[i], i);
        else if (names_.size() > most_looked_through)
            places_.emplace(name, names_.size() - 1);
        return is_new;
    }
    const std::vector<std::string_view>& names() const { return names_; }

  private:
    static constexpr std::size_t most_looked_through = 16;
    std::vector<std::string_view> names_;
    std::unordered_map<std::string_view, std::size_t> places_;
};

}  // namespace dartwright
