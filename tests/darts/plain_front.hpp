#pragma once

// A plain front typed by hand, and what tests of operations ask of a pattern and of words.

#include <gtest/gtest.h>

#include <string>

#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright {

// A plain front, 200 mm by 400 mm, with a dart of 40 mm in its straight waist.
inline const char* const front = R"({
  "dartwright": 1, "name": "plain", "unit": "mm",
  "pieces": [{
    "name": "front",
    "cut": {"quantity": 1, "fold": "centre front"},
    "grain": {"from": [20, 50], "to": [20, 350], "along": "centre front"},
    "outline": {"start": [0, 0], "items": [
      {"edge": "waist", "to": [80, 0]},
      {"dart": "waist dart", "point": [100, 180], "pivot": [100, 200], "to": [120, 0], "press": "side"},
      {"edge": "waist", "to": [200, 0]},
      {"edge": "side", "to": [200, 300]},
      {"edge": "armhole", "to": [150, 400]},
      {"edge": "shoulder", "to": [60, 400]},
      {"edge": "neck", "to": [0, 340]},
      {"edge": "centre front", "to": [0, 0]}
    ]},
    "notches": [{"edge": "side", "from": "waist", "at": 50, "kind": "single"}],
    "marks": [{"line": [[0, 250], [200, 250]], "name": "bust line"},
              {"line": [[0, 100], [200, 100]], "name": "midriff"},
              {"drill": [180, 20], "name": "hole"}, {"drill": [20, 20], "name": "held hole"}]
  }],
  "seams": []
})";

inline Pattern plain() {
    return read_pattern(front, "plain.json");
}

inline DartFigures figures(const Pattern& pattern, const std::string& dart) {
    const Piece& piece = pattern.pieces[0];
    return figures_of(piece.outline, dart_named(piece, dart));
}

inline ::testing::AssertionResult contains(const std::string& text, const std::string& part) {
    if (text.find(part) != std::string::npos) return ::testing::AssertionSuccess();
    return ::testing::AssertionFailure() << "\"" << text << "\" does not say \"" << part << "\"";
}

}  // namespace dartwright
