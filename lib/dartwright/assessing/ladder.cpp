#include "dartwright/assessing/ladder.hpp"

#include <algorithm>
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

Ladder ladder_from(const Ladder& ladder, double tolerance) {
    Ladder out = ladder;
    const double first = ladder.front().within;
    out.front().within = tolerance;
    for (std::size_t i = 1; i < out.size(); ++i) {
        const double wider = first > 0 ? tolerance * (out[i].within / first) : tolerance + out[i].within;
        out[i].within = std::max(out[i].within, wider);
    }
    return out;
}

bool is_off(const Ladder& ladder, double difference) {
    return standing(ladder, difference).step > 0;
}

}  // namespace dartwright
