#pragma once

// Private to the room.

#include <memory>
#include <vector>

#include "dartwright/drawing/words_along.hpp"

namespace dartwright {

/// The darts of a drawing, of which words are to be read as those of one.
class WedgeIndex {
  public:
    explicit WedgeIndex(std::vector<Wedge> wedges);
    WedgeIndex(const WedgeIndex&) = delete;
    WedgeIndex& operator=(const WedgeIndex&) = delete;
    ~WedgeIndex();

    /// Whether every other wedge lies farther from the words by `clearly_mm` or more. O(log n) and what lies
    /// as near.
    bool is_nearest(std::size_t mine, Point words, double clearly_mm) const;

  private:
    struct Tree;
    std::vector<Wedge> wedges_;
    std::unique_ptr<const Tree> tree_;
};

}  // namespace dartwright
