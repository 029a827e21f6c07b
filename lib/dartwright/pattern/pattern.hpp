#pragma once

#include <exception>
#include <map>
#include <string>
#include <vector>

#include "dartwright/pattern/cutting_rule.hpp"
#include "dartwright/pattern/piece.hpp"
#include "dartwright/pattern/run.hpp"

namespace dartwright {

/// One run of a seam's side and from which end it is walked.
struct SeamPart {
    std::string piece;
    std::string edge;
    std::string from;
    bool mirrored = false;
    friend bool operator==(const SeamPart&, const SeamPart&) = default;
};
using SeamSide = std::vector<SeamPart>;  ///< in walking order; one or more

struct Ease {
    int side = 1;          ///< 1 or 2: the side that is meant to be longer
    double amount = 0;     ///< mm, not negative
    bool by_side = false;  ///< the file named the side by number rather than by piece
    friend bool operator==(const Ease&, const Ease&) = default;
};

/// How the two pieces of a seam lie when it is sewn: opened flat, or one on the other (facing, collar, cuff,
/// lining).
enum class LaidAs { flat, on_each_other };

struct Seam {
    std::string name;
    std::array<SeamSide, 2> joins;
    std::optional<Ease> ease;
    std::map<std::string, CornerIs> ends;
    LaidAs laid = LaidAs::flat;
    bool allowances_differ = false;  ///< two widths of allowance are meant (a flat-felled seam)
    friend bool operator==(const Seam&, const Seam&) = default;
};

/// Trade tolerances; lengths in mm, angles in degrees. Each answers a trade question only.
struct Tolerances {
    double seam_mm = 1;
    double legs_mm = 0.5;
    double notch_mm = 1;
    double corner_deg = 2;
    double mouth_deg = 2;
    double kink_deg = 2;
    double grain_deg = 0.5;
    double gap_mm = 0.1;
    double fold_mm = 0.5;
    friend bool operator==(const Tolerances&, const Tolerances&) = default;
};
/// Every tolerance by its name, for files, options and documents.
struct ToleranceName {
    const char* name;
    double Tolerances::*value;
    bool is_angle;
    const char* meaning;
};
const std::vector<ToleranceName>& tolerance_names();

/// One operation of the `made` list: its name and its request, as words (lengths with their unit).
struct Made {
    std::string operation;
    std::vector<std::pair<std::string, std::string>> request;
    friend bool operator==(const Made&, const Made&) = default;
};

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

/// The defaults with the pattern's own values put in.
Tolerances tolerances_of(const Pattern& pattern);

/// A name that does not exist; the message lists those that do.
class UnknownName : public std::exception {
  public:
    UnknownName(std::string kind, std::string name, std::vector<std::string> known, std::string where);
    const char* what() const noexcept override { return message_.c_str(); }
    std::string kind, name;
    std::vector<std::string> known;

  private:
    std::string message_;
};

/// Looked up by name; UnknownName if there is none.
const Piece& piece_named(const Pattern& pattern, const std::string& name);
std::size_t piece_index(const Pattern& pattern, const std::string& name);
const Run& run_named(const std::vector<Run>& runs, const std::string& edge, const std::string& piece);
std::size_t dart_named(const Piece& piece, const std::string& name);
const Seam& seam_named(const Pattern& pattern, const std::string& name);

}  // namespace dartwright
