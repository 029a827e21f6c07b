#pragma once

#include <rapidcheck.h>

namespace dartwright::testing {

/// A whole number of [low, high), each as likely as the other in every case of a property. `rc::gen::inRange`
/// grows with the case: in half of the cases it gives nothing but the low one of two, and hardly ever the
/// last entry of a table or the far end of a range.
template <class Whole>
rc::Gen<Whole> evenly(Whole low, Whole high) {
    return rc::gen::resize(rc::kNominalSize, rc::gen::inRange(low, high));
}

/// An index of the table, which has an entry at least.
template <class Table>
std::size_t any_index_of(const Table& table) {
    return *evenly<std::size_t>(0, table.size());
}

}  // namespace dartwright::testing
