#pragma once

// A check's verdicts on seams and darts, as a table for a person and as JSON.

#include <nlohmann/json.hpp>
#include <string>

#include "dartwright/checks/check.hpp"
#include "dartwright/pattern/pattern.hpp"
#include "text_table.hpp"

namespace dartwright::tools {

using Json = nlohmann::ordered_json;

/// One line a seam: its name, both lengths, ease, difference and verdict. Empty if there are no seams.
/// What is not true of a seam is said by the faults among the findings that name it.
std::string seam_table(const std::vector<SeamVerdict>& seams, const std::vector<Finding>& findings, Unit unit,
                       const Ink& ink);
/// One line a dart: where it is, its legs, intake, angle and verdict. Empty if there are no darts.
std::string dart_table(const std::vector<DartVerdict>& darts, Unit unit, const Ink& ink);

Json json_of(const SeamVerdict& seam);
Json json_of(const DartVerdict& dart);
Json json_of(const Finding& finding);
Json json_of(const std::vector<SeamVerdict>& seams);
Json json_of(Point point);

/// The text of a JSON value on one line, or indented. Bytes that are not UTF-8 (of file names) are replaced.
std::string json_line(const Json& value);
std::string json_text(const Json& value);

}  // namespace dartwright::tools
