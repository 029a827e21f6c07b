#pragma once

#include <optional>
#include <string>

#include "dartwright/cutting/lay_pattern.hpp"
#include "dartwright/pages/document.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

struct SheetRequest {
    std::string date;  ///< as it shall stand there; none if empty
    std::optional<PatternLay> cloth;
};

/// The page to sew by: cautions, what a check finds wrong, the cloth and how its fold is squared, what is
/// carried over to it, darts and seams in the order of sewing (see sewing_plan.hpp). Every figure is that of
/// the pattern, in its unit.
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
Document sewing_sheet(const Pattern& pattern, const SheetRequest& request);

}  // namespace dartwright
