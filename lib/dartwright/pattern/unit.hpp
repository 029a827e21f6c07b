#pragma once

namespace dartwright {

enum class Unit { mm, cm, inch };
/// Millimetres of one unit, exact by definition (1 in = 25.4 mm).
constexpr double mm_in(Unit unit) {
    return unit == Unit::mm ? 1.0 : unit == Unit::cm ? 10.0 : 25.4;
}

}  // namespace dartwright
