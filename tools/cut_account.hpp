#pragma once

// What `cut` says of the cutting pieces it made.

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "dartwright/checks/finding.hpp"
#include "dartwright/cutting/applied_rule.hpp"
#include "text_table.hpp"

namespace dartwright::tools {

/// A notch that is cut deeper than the allowance is wide where it stands.
struct DeepNotch {
    Notch notch;
    double depth_mm = 0;
    double width_mm = 0;
};

struct CutPiece {
    const Piece* piece = nullptr;  ///< with its decided allowances
    RuledPiece ruled;
    CuttingLine line;
    double area_mm2 = 0;
    double across_mm = 0;  ///< of the box round the cutting line
    double up_mm = 0;
    std::vector<DeepNotch> deep_notches;
};

struct CutPattern {
    std::string rule;  ///< its name; empty if there is none
    std::optional<double> undecided_mm;
    std::vector<CutPiece> pieces;
    std::vector<Finding> seams;  ///< joined edges with allowances that differ
    std::vector<std::string> warnings;
};

/// The cutting pieces of what a rule was applied to. Precondition: `applied` outlives the result.
CutPattern cut_pattern(const AppliedRule& applied, std::optional<double> undecided_mm);

std::string text_of(const CutPattern& cut, Unit unit, const Ink& ink);
nlohmann::ordered_json json_of(const CutPattern& cut);

}  // namespace dartwright::tools
