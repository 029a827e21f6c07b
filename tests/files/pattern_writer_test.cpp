#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <limits>
#include <stdexcept>

#include "dartwright/files/pattern_file.hpp"
#include "dartwright/words/converted_length.hpp"
#include "dartwright/words/written_number.hpp"
#include "edited_pattern.hpp"
#include "generated_patterns.hpp"
#include "support/evenly.hpp"

namespace dartwright {
namespace {

/// Every double of two patterns alike, and every name.
void expect_same(const Pattern& a, const Pattern& b) {
    RC_ASSERT(a.name == b.name);
    RC_ASSERT(a.unit == b.unit);
    RC_ASSERT(a.pieces.size() == b.pieces.size());
    for (std::size_t i = 0; i < a.pieces.size(); ++i) RC_ASSERT(a.pieces[i] == b.pieces[i]);
    RC_ASSERT(a.seams == b.seams);
    RC_ASSERT(a.tolerances == b.tolerances);
    RC_ASSERT(a.made == b.made);
    RC_ASSERT(a.cutting == b.cutting);
}

void round_trip(Unit unit) {
    const Pattern pattern = generated::pattern(unit);
    const std::string text = write_pattern(pattern);
    const Pattern read = read_pattern(text, "written");
    expect_same(read, pattern);
    RC_ASSERT(write_pattern(read) == text);
}
RC_GTEST_PROP(PatternWriter, MillimetresComeBackDoubleForDouble, ()) {
    round_trip(Unit::mm);
}
RC_GTEST_PROP(PatternWriter, CentimetresComeBackDoubleForDouble, ()) {
    round_trip(Unit::cm);
}
RC_GTEST_PROP(PatternWriter, InchesComeBackDoubleForDouble, ()) {
    round_trip(Unit::inch);
}

// After an operation lengths may be between those that the unit can say: they move by a rounding, once.
RC_GTEST_PROP(PatternWriter, ComputedLengthsAreWrittenTheSameEverAfter, ()) {
    Pattern pattern = generated::pattern(*rc::gen::element(Unit::cm, Unit::inch));
    for (Piece& piece : pattern.pieces)
        for (Mark& mark : piece.marks)
            if (auto* drill = std::get_if<DrillMark>(&mark.what))
                drill->at = {drill->at.x / 3, drill->at.y / 7};
    const std::string text = write_pattern(pattern);
    const Pattern read = read_pattern(text, "written");
    RC_ASSERT(write_pattern(read) == text);
    for (std::size_t i = 0; i < pattern.pieces.size(); ++i)
        for (std::size_t k = 0; k < pattern.pieces[i].marks.size(); ++k)
            if (const auto* drill = std::get_if<DrillMark>(&pattern.pieces[i].marks[k].what)) {
                const double back = std::get<DrillMark>(read.pieces[i].marks[k].what).at.x;
                RC_ASSERT(back == drill->at.x || back == std::nextafter(drill->at.x, back));
            }
}

// Numbers that nothing touched are kept to the last digit, even where another number has the same
// millimetres and fewer digits.
RC_GTEST_PROP(PatternWriter, NumbersWithAllTheirDigitsAreKept, ()) {
    const std::string unit = *rc::gen::element<std::string>("cm", "in");
    const double share = *testing::evenly(1, 1'000'000'007) / 1'000'000'009.0;
    double number = 0.1 + 300 * share;
    for (int steps = *testing::evenly(0, 5); steps > 0; --steps)
        number = std::nextafter(number, std::numeric_limits<double>::infinity());
    auto whole = edited::tunic_json();
    whole["unit"] = unit;
    whole["pieces"][0]["marks"][1]["drill"] = {number, -number};
    const std::string text = write_pattern(read_pattern(whole.dump(), "read"));
    const auto written = nlohmann::json::parse(text);
    RC_ASSERT(written["pieces"][0]["marks"][1]["drill"][0].get<double>() == number);
    RC_ASSERT(written["pieces"][0]["marks"][1]["drill"][1].get<double>() == -number);
    RC_ASSERT(write_pattern(read_pattern(text, "written")) == text);
}

TEST(PatternWriter, SomeNumbersAreOnlyKeptBecauseTheyAreRemembered) {
    // The doubles next to 1.7 have the same product with 10 as 1.7 has, or as one another.
    const double odd = std::nextafter(1.7, 2);
    const Pattern read =
        read_pattern(edited::with("/pieces/0/marks/1/drill", "[" + decimal(odd) + ", 1]"), "f");
    const double mm = std::get<DrillMark>(read.pieces[0].marks[1].what).at.x;
    ASSERT_EQ(read.as_written.size(), from_mm(mm, Unit::cm) == odd ? 0U : 1U);
    std::size_t remembered = 0;
    double number = 1.6;
    for (int i = 0; i < 1000; ++i, number = std::nextafter(number, 2))
        if (from_mm(to_mm(number, Unit::cm), Unit::cm) != number) ++remembered;
    EXPECT_GT(remembered, 0U);
}

TEST(PatternWriter, TheLayoutIsThatOfTheGuide) {
    EXPECT_EQ(write_pattern(read_pattern(edited::tunic, "tunic")), R"({
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
          {"dart": "hem dart", "point": [9.6, 15], "pivot": [9.6, 18], "back_off": 2.5, "legs": [[[8.2, 5], [9, 10]], [[10.2, 10], [11, 5]]], "to": [11.2, 0], "press": "side", "stitched": 6},
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
      "notches": [
        {"edge": "side", "from": "armhole", "at": 7.5, "kind": "single"}
      ],
      "allowance": {"side": 1.5, "hem": [{"from": "side", "at": 0, "to": 10, "width": 2}]},
      "marks": [
        {"line": [[0, 19.5], [22, 19.5]], "name": "bust line"},
        {"drill": [9.6, 18], "name": "bust point"}
      ]
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
        "items": [
          {"edge": "neck", "to": [20, 0]},
          {"edge": "brim", "to": [0, 0], "curve": [[20, 5], [0, 5]]}
        ]
      }
    },
    {
      "name": "cap",
      "outline": {
        "start": [0, 0],
        "items": [
          {"edge": "crown", "to": [10, 0], "curve": [[0, -6], [10, -6]]},
          {"edge": "crown", "to": [0, 0], "curve": [[10, 6], [0, 6]]}
        ]
      },
      "notches": [
        {"edge": "crown", "from": "start", "at": 3, "kind": "single", "begins": true}
      ]
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
  "made": [
    {"operation": "pivot", "piece": "front", "to": "side@60/armhole"}
  ],
  "cutting": {
    "name": "page",
    "unit": "mm",
    "allowance": {
      "edges": [
        {"edge": "hem", "width": 40},
        {"edge": "side", "piece": "front", "width": 20}
      ],
      "openings": [
        {"edge": "centre back", "width": 25}
      ],
      "seams": [
        {"seam": "neck", "width": 7}
      ],
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
)");
}

TEST(PatternWriter, EaseIsWrittenByThePieceOfOneSideOnly) {
    Pattern pattern = read_pattern(edited::tunic, "tunic");
    // The named side has a piece that the other has too: the other of its pieces names it.
    Seam& seam = pattern.seams[1];
    seam.joins[1] = {{"front", "hem", "side", false}, {"collar", "neck", "start", false}};
    seam.ease = Ease{2, 10, false};
    const Pattern read = read_pattern(write_pattern(pattern), "written");
    EXPECT_EQ(read.seams[1].ease, (Ease{2, 10, false}));
    // With no such piece only the number of the side is left.
    seam.joins[1] = {{"front", "hem", "side", false}};
    EXPECT_EQ(read_pattern(write_pattern(pattern), "written").seams[1].ease, (Ease{2, 10, true}));
}

TEST(PatternWriter, NegativeZeroIsZero) {
    const std::string text =
        write_pattern(read_pattern(edited::with("/pieces/0/marks/1/drill", "[-0.0, -0]"), "f"));
    EXPECT_NE(text.find("{\"drill\": [0, 0], \"name\": \"bust point\"}"), std::string::npos);
}

TEST(PatternWriter, WhatAFileCannotHoldIsRefused) {
    Pattern pattern = read_pattern(edited::tunic, "tunic");
    pattern.pieces[0].notches[0].at = std::numeric_limits<double>::quiet_NaN();
    EXPECT_THROW(write_pattern(pattern), std::invalid_argument);
    pattern.pieces[0].notches[0].at = 1;
    pattern.pieces[0].name = "fa\xE7on";
    EXPECT_THROW(write_pattern(pattern), std::invalid_argument);
}

}  // namespace
}  // namespace dartwright
