#pragma once

// An assessment's parts as words: the same in every report.

#include <array>
#include <optional>
#include <string>
#include <utility>

#include "dartwright/assessing/assessment.hpp"
#include "dartwright/assessing/criterion_names.hpp"
#include "dartwright/words/unit.hpp"

namespace dartwright {

inline constexpr std::array<std::pair<Quantity, const char*>, 5> quantity_words{{{Quantity::length, "length"},
                                                                                 {Quantity::area, "area"},
                                                                                 {Quantity::angle, "angle"},
                                                                                 {Quantity::number, "number"},
                                                                                 {Quantity::words, "words"}}};

const char* word_of(Quantity quantity);

inline constexpr std::array<std::pair<UnreadKind, const char*>, 5> unread_kind_words{
    {{UnreadKind::unreadable, "not readable"},
     {UnreadKind::no_pattern, "not a pattern"},
     {UnreadKind::unjudged, "cannot be judged"},
     {UnreadKind::little_memory, "too little memory"},
     {UnreadKind::internal, "internal error"}}};

const char* word_of(UnreadKind kind);

/// A mark as it is written: at most two decimals, `7.5`. Precondition of these three: finite
/// (std::invalid_argument).
std::string marks_text(double marks);
/// A quantity with its unit, rounded to what a ruler shows and a little more: `12.35 mm`, `8.2 cm²`,
/// `11.75°`, `1.005`. The value is in mm, mm² or degrees; lengths and areas are written in the unit.
std::string quantity_text(Quantity quantity, double value, Unit unit = Unit::mm);
/// The same with its sign: `+0.4 mm`; 0 has none.
std::string signed_quantity_text(Quantity quantity, double value, Unit unit = Unit::mm);

/// What was judged: in words, with the piece where those do not say it: `front: the sewn length of the
/// waist`.
std::string what_text(Criterion criterion, const std::string& piece, const std::string& what);
std::string what_text(const JudgedLine& line);
/// What was asked, found, and how far off it is; empty where a line does not say.
std::string expected_text(const JudgedLine& line, Unit unit = Unit::mm);
std::string found_text(const JudgedLine& line, Unit unit = Unit::mm);
std::string difference_text(const JudgedLine& line, Unit unit = Unit::mm);
/// The line on one line: `the dart's place: asked 60 mm, found 63.2 mm, off by +3.2 mm (noted)`.
std::string line_text(const JudgedLine& line, Unit unit = Unit::mm);

/// The name of the file at the end of a path.
std::string name_of_file(const std::string& path);
/// The rungs of a ladder on one line: `full within 1 mm, accepted within 1.59 mm (3/4 of the marks), ...`.
std::string ladder_text(const Ladder& ladder, Quantity quantity, Unit unit = Unit::mm);
/// Both: `Lengths: full within ... . Angles: ... .`
std::string ladders_text(const Ladders& ladders, Unit unit = Unit::mm);

/// `7.5 of 10 marks`, or that it was not marked.
std::string verdict_text(const Assessment& assessment);

}  // namespace dartwright
