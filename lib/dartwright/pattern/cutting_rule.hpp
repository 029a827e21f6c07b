#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "dartwright/words/unit.hpp"

namespace dartwright {

/// A width for what has the name: an edge, or a seam.
struct RuleWidth {
    std::string name;
    std::string piece;  ///< of an edge: only on this piece; empty for every piece that has such an edge
    double width_mm = 0;
    friend bool operator==(const RuleWidth&, const RuleWidth&) = default;
};

/// Whole runs and their widths, the most specific first: of several that cover a run the first in this order
/// decides, and of edges that which names the piece.
struct AllowanceRule {
    std::vector<RuleWidth> edges;
    std::vector<RuleWidth> openings;     ///< edges that are left open, such as a centre back with a zip
    std::vector<RuleWidth> seams;        ///< every run that the seam of this name joins
    std::optional<double> joined_mm;     ///< every run that any seam joins
    std::optional<double> elsewhere_mm;  ///< every other; what no width covers stays as the pattern says
    friend bool operator==(const AllowanceRule&, const AllowanceRule&) = default;
};

enum class RuleCornerKind { met, squared, mirrored, carried_on, blunted };

/// How the allowances meet at the corner of two edges, in whichever order they are named.
struct CornerRule {
    std::array<std::string, 2> between;
    std::string piece;  ///< only on this piece; empty for every piece that has such a corner
    RuleCornerKind kind = RuleCornerKind::met;
    std::string whose;  ///< one of the two, the edge of which the kind speaks; empty for `met` and `blunted`
    std::optional<double> limit_mm;  ///< blunted: how far from the corner of the stitching line it is cut off
    friend bool operator==(const CornerRule&, const CornerRule&) = default;
};
/// Whether the kind speaks of one of the two edges, which then must be named.
constexpr bool speaks_of_one_edge(RuleCornerKind kind) {
    return kind != RuleCornerKind::met && kind != RuleCornerKind::blunted;
}

enum class NotchForm {
    slit,  ///< one cut
    v,
    t,   ///< a slit with a bar across its end
    box  ///< square
};

/// How notches are cut.
struct NotchRule {
    NotchForm form = NotchForm::slit;
    double depth_mm = 0;             ///< from the cutting line inwards
    std::optional<double> width_mm;  ///< at the cutting line, of a T at its bar; a slit has none
    friend bool operator==(const NotchRule&, const NotchRule&) = default;
};

/// A dart with a wider intake is cut open, so far outside its legs.
struct DartTrim {
    double wider_than_mm = 0;
    double allowance_mm = 0;
    friend bool operator==(const DartTrim&, const DartTrim&) = default;
};

struct DartRule {
    std::optional<bool> is_notched;  ///< at both mouth ends; what is made of the rule says, if absent
    std::optional<DartTrim> trim;
    friend bool operator==(const DartRule&, const DartRule&) = default;
};

/// A ready-made rule: how a workshop cuts, for any pattern that has edges and seams of these names.
struct CuttingRule {
    std::string name;
    Unit unit = Unit::mm;  ///< in which it is written
    AllowanceRule allowance;
    std::vector<CornerRule> corners;  ///< the others are met; of several for one corner the first counts
    std::optional<NotchRule> notches;
    DartRule darts;
    /// Numbers of the file that the conversion to mm and back would not give again, as Pattern has them.
    std::map<double, double> as_written;
    /// What was remembered of the file's digits may differ.
    friend bool operator==(const CuttingRule& a, const CuttingRule& b) {
        return a.name == b.name && a.unit == b.unit && a.allowance == b.allowance && a.corners == b.corners &&
               a.notches == b.notches && a.darts == b.darts;
    }
};

/// The words of a rule file: `met`, `carried on`, ...; `slit`, `V`, `T`, `box`.
struct RuleCornerName {
    RuleCornerKind kind;
    const char* word;
};
inline constexpr std::array<RuleCornerName, 5> rule_corner_names{{{RuleCornerKind::met, "met"},
                                                                  {RuleCornerKind::squared, "squared"},
                                                                  {RuleCornerKind::mirrored, "mirrored"},
                                                                  {RuleCornerKind::carried_on, "carried on"},
                                                                  {RuleCornerKind::blunted, "blunted"}}};
struct NotchFormName {
    NotchForm form;
    const char* word;
};
inline constexpr std::array<NotchFormName, 4> notch_form_names{
    {{NotchForm::slit, "slit"}, {NotchForm::v, "V"}, {NotchForm::t, "T"}, {NotchForm::box, "box"}}};

}  // namespace dartwright
