#pragma once

// A small valid pattern and edits of it, so that each case of a table shows the one thing that is wrong.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <ostream>
#include <string>
#include <vector>

#include "dartwright/files/pattern_file.hpp"

namespace dartwright {

inline std::ostream& operator<<(std::ostream& out, const FileProblem& p) {
    return out << p.pointer << ": found " << p.found << "; expected " << p.expected;
}

namespace edited {

/// A page's tunic: every key of the format is in it once.
inline const char* const tunic = R"({
  "dartwright": 1,
  "name": "page's tunic",
  "unit": "cm",
  "pieces": [
    {
      "name": "front",
      "worn": "front",
      "side_up": "wrong",
      "cut": {"quantity": 1, "fold": "centre front", "second_fold": "shoulder", "ends": {"neck": "free"}},
      "grain": {"from": [3, 8], "to": [3, 30], "along": "centre front"},
      "outline": {
        "start": [0, 0],
        "items": [
          {"edge": "hem", "to": [8, 0]},
          {"dart": "hem dart", "point": [9.6, 15], "pivot": [9.6, 18], "back_off": 2.5,
           "legs": [[[8.2, 5], [9, 10]], [[10.2, 10], [11, 5]]], "to": [11.2, 0], "press": "side", "stitched": 6},
          {"edge": "hem", "to": [21, 1], "through": [[13, 0.1], [16, 0.4]]},
          {"edge": "side", "to": [23, 20], "fullness": 0.5},
          {"edge": "armhole", "to": [18, 37], "curve": [[18, 20], [16.8, 28]]},
          {"edge": "shoulder", "to": [7, 41]},
          {"edge": "neck", "to": [0, 33], "curve": [[6.5, 36], [3.5, 33]]},
          {"edge": "centre front", "to": [0, 0]}
        ]
      },
      "double_darts": [
        {"dart": "waist dart", "from": [15, 5], "to": [15, 25], "widest": [[14, 15], [16, 15]], "press": "side"}
      ],
      "notches": [{"edge": "side", "from": "armhole", "at": 7.5, "kind": "single"}],
      "allowance": {"side": 1.5, "hem": [{"from": "side", "at": 0, "to": 10, "width": 2}]},
      "marks": [{"line": [[0, 19.5], [22, 19.5]], "name": "bust line"}, {"drill": [9.6, 18], "name": "bust point"}]
    },
    {
      "name": "back",
      "cut": {"quantity": 2, "same": true},
      "outline": {
        "start": [0, 0],
        "items": [
          {"edge": "hem", "to": [20, 0]},
          {"edge": "side", "to": [22, 20]},
          {"edge": "centre back", "to": [0, 0]}
        ]
      }
    },
    {
      "name": "collar",
      "outline": {
        "start": [0, 0],
        "items": [{"edge": "neck", "to": [20, 0]}, {"edge": "brim", "to": [0, 0], "curve": [[20, 5], [0, 5]]}]
      }
    },
    {
      "name": "cap",
      "outline": {
        "start": [0, 0],
        "items": [{"edge": "crown", "to": [10, 0], "curve": [[0, -6], [10, -6]]},
                  {"edge": "crown", "to": [0, 0], "curve": [[10, 6], [0, 6]]}]
      },
      "notches": [{"edge": "crown", "from": "start", "at": 3, "begins": true}]
    }
  ],
  "seams": [
    {"name": "side", "joins": [
      {"piece": "front", "edge": "side", "from": "hem"},
      {"piece": "back", "edge": "side", "from": "hem"}
    ], "ease": {"piece": "back", "amount": 0.5}, "laid": "on each other", "allowances_differ": true, "ends": {"armhole": "free"}},
    {"name": "neck", "joins": [
      [
        {"piece": "front", "edge": "neck", "from": "centre front"},
        {"piece": "back", "edge": "hem", "from": "centre back"}
      ],
      {"piece": "collar", "edge": "neck", "from": "start"}
    ]},
    {"name": "centre back", "joins": [
      {"piece": "back", "edge": "centre back", "from": "side"},
      {"piece": "back", "edge": "centre back", "from": "side", "mirrored": true}
    ], "ease": {"side": 2, "amount": 0}}
  ],
  "tolerances": {"seam": 0.1, "corner": 3},
  "made": [{"operation": "pivot", "piece": "front", "to": "side@60/armhole"}],
  "cutting": {
    "name": "page", "unit": "mm",
    "allowance": {
      "edges": [{"edge": "hem", "width": 40}, {"edge": "side", "piece": "front", "width": 20}],
      "openings": [{"edge": "centre back", "width": 25}],
      "seams": [{"seam": "neck", "width": 7}],
      "joined": 15,
      "elsewhere": 10
    },
    "corners": [
      {"between": ["side", "hem"], "piece": "front", "kind": "mirrored", "whose": "hem"},
      {"between": ["neck", "brim"], "kind": "blunted", "limit": 12}
    ],
    "notches": {"form": "V", "depth": 5, "width": 4},
    "darts": {"notched": true, "trim": {"wider_than": 30, "allowance": 15}}
  }
}
)";

inline nlohmann::ordered_json tunic_json() {
    return nlohmann::ordered_json::parse(tunic);
}

/// The tunic with the value at a pointer set to other JSON, or taken away (empty text). A pointer whose last
/// part does not exist yet adds it.
inline std::string with(const std::string& pointer, const std::string& value) {
    auto whole = tunic_json();
    const nlohmann::ordered_json::json_pointer place(pointer);
    if (!value.empty()) {
        whole[place] = nlohmann::ordered_json::parse(value);
    } else if (auto& parent = whole.at(place.parent_pointer()); parent.is_object()) {
        parent.erase(place.back());
    } else {
        parent.erase(std::stoul(place.back()));
    }
    return whole.dump();
}

/// The problems of a file; none if it can be read.
inline std::vector<FileProblem> problems_of(const std::string& text) {
    try {
        read_pattern(text, "tunic.json");
        return {};
    } catch (const InvalidPattern& invalid) {
        return invalid.problems;
    }
}

/// One value of the tunic changed, and the one problem that it makes.
struct Edit {
    const char* pointer;
    const char* value;
    FileProblem problem;
};
inline void expect_problem(const Edit& edit) {
    SCOPED_TRACE(std::string(edit.pointer) + " = " + edit.value);
    const auto problems = problems_of(with(edit.pointer, edit.value));
    ASSERT_EQ(problems.size(), 1U) << ::testing::PrintToString(problems);
    EXPECT_EQ(problems[0].pointer, edit.problem.pointer);
    EXPECT_EQ(problems[0].found, edit.problem.found);
    EXPECT_EQ(problems[0].expected, edit.problem.expected);
}

}  // namespace edited
}  // namespace dartwright
