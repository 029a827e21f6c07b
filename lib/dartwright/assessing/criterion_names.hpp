#pragma once

#include <array>
#include <string>
#include <vector>

#include "dartwright/assessing/exercise.hpp"

namespace dartwright {

/// The words of an exercise file and of reports: `place`, `angle`, ...
struct CriterionName {
    Criterion criterion;
    const char* word;
};
inline constexpr std::array<CriterionName, 16> criterion_names{{{Criterion::place, "place"},
                                                                {Criterion::angle, "angle"},
                                                                {Criterion::legs, "legs"},
                                                                {Criterion::mouth, "mouth"},
                                                                {Criterion::pivot, "pivot"},
                                                                {Criterion::gone, "gone"},
                                                                {Criterion::shape, "shape"},
                                                                {Criterion::lengths, "lengths"},
                                                                {Criterion::angles, "angles"},
                                                                {Criterion::area, "area"},
                                                                {Criterion::notches, "notches"},
                                                                {Criterion::seams, "seams"},
                                                                {Criterion::check, "check"},
                                                                {Criterion::allowances, "allowances"},
                                                                {Criterion::measure, "measure"},
                                                                {Criterion::size, "size"}}};
const char* word_of(Criterion criterion);

struct FreedomName {
    Freedom freedom;
    const char* word;
};
inline constexpr std::array<FreedomName, 4> freedom_names{{{Freedom::back_off, "back_off"},
                                                           {Freedom::names, "names"},
                                                           {Freedom::grain, "grain"},
                                                           {Freedom::notches, "notches"}}};

struct HandName {
    Hand hand;
    const char* word;
};
inline constexpr std::array<HandName, 3> hand_names{
    {{Hand::fine, "fine"}, {Hand::ordinary, "ordinary"}, {Hand::beginner, "beginner"}}};

/// What was found where a criterion has nothing to look at; it earns nothing.
inline constexpr const char* nothing_to_judge = "nothing to judge";

/// What is beyond the last rung of a ladder.
inline constexpr const char* fault_rung = "fault";

}  // namespace dartwright
