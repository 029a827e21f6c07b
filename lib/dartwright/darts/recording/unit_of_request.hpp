#pragma once

// Private to the library: a request whose lengths without a unit of their own are meant in another than mm,
// as in an exercise.

#include <string>

#include "dartwright/pattern/pattern.hpp"
#include "dartwright/words/unit.hpp"

namespace dartwright {

/// A length as people write it, with the unit if it has none of its own: `5` is `5cm`, `5mm` stays. What is
/// no length, such as `50%`, stays as it is.
std::string length_with_unit(const std::string& words, Unit unit);

/// The request with the unit written to its places, lengths and points that have none, so that it is read as
/// it was meant; angles, shares, counts and names stay. Names of edges are looked up in the pattern that the
/// operation is done to; without the piece a request stays as it is, and is refused as before. O(n) in the
/// items of the piece's outline.
Made request_with_unit(const Made& made, Unit unit, const Pattern& pattern);

}  // namespace dartwright
