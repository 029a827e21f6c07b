#pragma once

// Private to this room: how a measure spreads over a class, as a small picture in a page.

#include <string>
#include <vector>

#include "dartwright/assessing/class_summary.hpp"
#include "dartwright/assessing/exercise.hpp"

namespace dartwright {

/// An inline SVG: bars for how many drafts lie how far off, what was asked in the middle, broken lines at the
/// rungs. Bars at the two ends hold all that lies beyond. Lengths are written in the unit. Precondition: the
/// measure has differences (std::invalid_argument).
std::string spread_plot(const MeasureSummary& measure, const Ladders& ladders, Unit unit = Unit::mm);

}  // namespace dartwright
