#pragma once

// Sentences whose lengths are told in the unit of who reads them. Part of the public interface as what errors
// carry.

#include <string>
#include <vector>

#include "dartwright/words/unit.hpp"

namespace dartwright {

/// A sentence, or a part of one, with the lengths in it as lengths: one that was made where nobody knew the
/// reader's unit is told in it later. Parts are put together with `+`, as strings are.
class Sentence {
  public:
    Sentence() = default;
    Sentence(std::string words);                                   // NOLINT: words are a sentence
    Sentence(const char* words) : Sentence(std::string(words)) {}  // NOLINT

    bool empty() const { return parts_.empty(); }
    /// As text. Those who work in cm speak of mm in sentences; in inches a measure is told to the nearest
    /// 1/32, with `about` where it is none, and a difference in decimals. O(length).
    std::string in(Unit unit) const;

    Sentence& operator+=(const Sentence& more);

  private:
    friend Sentence measure_told(double length_mm, int decimals);
    friend Sentence difference_told(double length_mm, int decimals);
    friend Sentence asked_told(double length_mm);
    friend Sentence width_told(double length_mm);
    friend Sentence most_told(double length_mm, int decimals);
    friend Sentence least_told(double length_mm, int decimals);
    friend Sentence place_told(double x_mm, double y_mm);
    friend Sentence within_told(double length_mm);
    friend Sentence on_edge_told(double distance_mm);

    enum class Kind {
        words,
        measure,
        difference,
        as_asked,
        width,
        at_most,
        at_least,
        place,
        within,
        on_edge
    };
    struct Part {
        Kind kind = Kind::words;
        std::string words = {};
        double mm = 0;
        double y_mm = 0;  ///< of a place
        int decimals = 1;
    };
    static std::string told_in_inches(const Part& part);
    static std::string told_in_mm(const Part& part);
    static Sentence length(Kind kind, double mm, int decimals);

    std::vector<Part> parts_;  // no two of words beside each other, and none of no words
};

inline Sentence operator+(Sentence first, const Sentence& second) {
    first += second;
    return first;
}

/// Lengths of a sentence, with their unit; so many decimals of a millimetre where it is told in mm. Any
/// double. What is measured: `12.3 mm`, `4 5/8 in`, `about 4 5/8 in`.
Sentence measure_told(double length_mm, int decimals = 1);
/// By how much two measures differ: `0.4 mm`, `0.016 in`.
Sentence difference_told(double length_mm, int decimals = 1);
/// Of both: two decimals below 1 mm, where the tolerances lie, and one above.
inline constexpr int by_size = -1;
/// A length that was asked for, or is compared with one: `12.25 mm`, `0.02 in`; four figures in inches.
Sentence asked_told(double length_mm);
/// A width, of an allowance or such: `9.525 mm`, `3/8 in`, `about 25/32 in`.
Sentence width_told(double width_mm);
/// The greatest or least length that will do, never rounded beyond it: `12.2 mm`, `15/32 in`.
Sentence most_told(double length_mm, int decimals = 1);
Sentence least_told(double length_mm, int decimals = 1);
/// The length of a run that a place lies beyond, never rounded beyond it: `186.711022 mm`, `7.35 in`.
Sentence within_told(double length_mm);
/// The distance of a place on an edge, as it is read again: `500`, `19.685in`; seven figures in inches.
Sentence on_edge_told(double distance_mm);
/// A place on the paper: `(391.5, 170.0) mm`, `(15.413, 6.693) in`.
Sentence place_told(double x_mm, double y_mm);

}  // namespace dartwright
