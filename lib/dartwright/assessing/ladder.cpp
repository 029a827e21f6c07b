#include "dartwright/assessing/ladder.hpp"

#include <cmath>

#include "dartwright/assessing/criterion_names.hpp"

namespace dartwright {

Standing fault_on(const Ladder& ladder) {
    return {ladder.size(), fault_rung, 0};
}

Standing standing(const Ladder& ladder, double difference) {
    for (std::size_t i = 0; i < ladder.size(); ++i)
        if (std::abs(difference) <= ladder[i].within + rung_rounding)
            return {i, ladder[i].name, ladder[i].share};
    return fault_on(ladder);
}

bool is_off(const Ladder& ladder, double difference) {
    return standing(ladder, difference).step > 0;
}

}  // namespace dartwright
