#pragma once

#include "dartwright/pattern/piece.hpp"

namespace dartwright {

/// Whether both are cut on the same folds: of two folds neither is the first. Without a fold only on none.
bool are_on_the_same_folds(const Cut& a, const Cut& b);

}  // namespace dartwright
