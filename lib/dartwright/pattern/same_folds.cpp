#include "dartwright/pattern/same_folds.hpp"

#include <algorithm>

namespace dartwright {

bool are_on_the_same_folds(const Cut& a, const Cut& b) {
    return std::minmax(a.fold, a.second_fold) == std::minmax(b.fold, b.second_fold);
}

}  // namespace dartwright
