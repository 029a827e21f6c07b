#pragma once

namespace dartwright {

enum class Unit { mm, cm, inch };
/// Millimetres of one unit, exact by definition (1 in = 25.4 mm).
constexpr double mm_in(Unit unit) {
    return unit == Unit::mm ? 1.0 : unit == Unit::cm ? 10.0 : 25.4;
}
/// The unit's word, in files and for people: `mm`, `cm`, `in`.
constexpr const char* word_of(Unit unit) {
    return unit == Unit::mm ? "mm" : unit == Unit::cm ? "cm" : "in";
}

}  // namespace dartwright
