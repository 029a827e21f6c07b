#pragma once

#include <string>
#include <vector>

namespace dartwright {

/// Letters to change, add, drop or swap with their neighbour to make one word of the other. O(product of the
/// lengths).
std::size_t letters_apart(const std::string& a, const std::string& b);

/// The known word that is nearest; the first of several. Precondition: there is one
/// (std::invalid_argument).
std::string nearest_word(const std::string& word, const std::vector<std::string>& known);

/// For the end of a refusal: `; the nearest is pivot`, or nothing where none is near, which is a third of its
/// letters apart at most, one at least, or where one begins the other.
std::string nearest_told(const std::string& word, const std::vector<std::string>& known);

}  // namespace dartwright
