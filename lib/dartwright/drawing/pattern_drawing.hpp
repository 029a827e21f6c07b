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

/// The pattern's pieces set out side by side as they lie on the cutting table, at true size, with a bar of
/// 100 mm, or 4 in. Each piece is a layer of its name, in it the layers `paper`, `marks`, `outline`, `darts`,
/// `caps`, `notches`, `grain`, `fold`, `words` and `findings`, those left out that it has nothing for. Words
/// are put where they meet no line and no other words; where a piece is too crowded for that they stand off
/// with a leader. O(words times lines) a piece.
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
Drawing draw_pattern(const Pattern& pattern, const DrawOptions& options);
/// Before and after laid over each other in their own coordinates, so that the part that an operation left in
/// place coincides. Pieces are matched by name: each has a layer `before` (dashed) and `after`, or, if only
/// one of the patterns has it, `before only` or `after only`. Lengths, names and findings are those of
/// `after`.
/// Requires sound patterns (problems_of is empty): UnsoundPattern.
Drawing draw_overlay(const Pattern& before, const Pattern& after, const DrawOptions& options);

}  // namespace dartwright
