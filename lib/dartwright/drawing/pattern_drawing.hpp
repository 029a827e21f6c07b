#pragma once

#include <string>
#include <vector>

#include "dartwright/checks/check.hpp"
#include "dartwright/drawing/drawing.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

struct DrawOptions {
    bool lengths = true;  ///< sewn lengths beside the edges, dart figures
    bool names = true;
    std::vector<Finding> findings;  ///< marked at their place, numbered, with a list
};

/// The pattern's pieces set out side by side as they lie on the cutting table.
Drawing draw_pattern(const Pattern& pattern, const DrawOptions& options);
/// Before and after laid over each other, pieces matched by name; a piece's after-outline is laid so that its
/// unmoved part coincides.
Drawing draw_overlay(const Pattern& before, const Pattern& after, const DrawOptions& options);

}  // namespace dartwright
