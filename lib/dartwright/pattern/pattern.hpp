#pragma once

#include <map>
#include <string>
#include <vector>

#include "dartwright/pattern/cutting_rule.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/made.hpp"
#include "dartwright/pattern/piece.hpp"
#include "dartwright/pattern/run.hpp"
#include "dartwright/pattern/seam.hpp"
#include "dartwright/pattern/tolerances.hpp"

namespace dartwright {

struct Pattern {
    std::string name;
    Unit unit = Unit::mm;
    std::vector<Piece> pieces;
    std::vector<Seam> seams;
    std::map<std::string, double> tolerances;  ///< only those that were set, by name; mm or degrees
    std::vector<Made> made;
    std::optional<CuttingRule> cutting;  ///< how it is cut; names in it need not exist
    /// Numbers of the file that the conversion to mm and back would not give again to the last digit,
    /// by their value in mm; the writer uses them for numbers that nothing touched.
    std::map<double, double> as_written;
};

/// Looked up by name; UnknownName if there is none.
const Piece& piece_named(const Pattern& pattern, const std::string& name);
std::size_t piece_index(const Pattern& pattern, const std::string& name);
const Run& run_named(const std::vector<Run>& runs, const std::string& edge, const std::string& piece);
std::size_t dart_named(const Piece& piece, const std::string& name);
const Seam& seam_named(const Pattern& pattern, const std::string& name);

}  // namespace dartwright
