#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dartwright/cutting/markings.hpp"
#include "dartwright/pattern/allowance.hpp"
#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// What decided the allowance of a run.
enum class DecidedBy {
    fold,       ///< it is on the fold and has none
    edge,       ///< the rule names the edge
    opening,    ///< the rule lists it as left open
    seam,       ///< the rule names a seam that joins it
    joined,     ///< the rule's width for every run that a seam joins
    elsewhere,  ///< the rule's width for every other run
    pattern,    ///< no width of the rule covers it, and the pattern has its own
    nothing     ///< and the pattern has none, over the whole run or a part of it
};

struct DecidedRun {
    std::string edge;
    DecidedBy by = DecidedBy::nothing;
    std::string seam;              ///< by seam or joined: its name
    std::vector<RunWidth> widths;  ///< along the run in the pattern that the rule made
    bool is_undecided = false;     ///< some of it has no width there, or only the one for what is undecided
    std::optional<double> was_mm;  ///< a width of the pattern that the rule put another in the place of
};
/// In a sentence: `the edge "hem"`, `the opening "centre back"`, `the seam "side"`, `cutting rule: all other
/// edges`,
/// ...
std::string to_text(const DecidedRun& run);

struct RuledPiece {
    std::string piece;
    std::vector<DecidedRun> runs;  ///< in outline order
    CuttingRequest request;        ///< for `cutting_line`
};

struct AppliedRule {
    /// The pattern with the widths that the rule gives, and the rule in it.
    Pattern pattern;
    std::vector<RuledPiece> pieces;     ///< in the pattern's order
    std::vector<std::string> warnings;  ///< names in the rule that the pattern does not have
    /// Of these the ones in entries that name a piece the pattern has, so that they are meant for it.
    std::vector<std::string> misnamed;
};

/// Decides the allowance of each run that the rule covers. It wins over the pattern's own; what it does not
/// cover stays as it is in the pattern. An edge on the fold has none, whatever the rule or the pattern says.
///
/// `undecided_mm` is written wherever nothing decides. Applying a rule again changes nothing.
/// O(runs * (entries + seams)).
/// Requires a sound pattern (problems_of is empty) and a sound rule (widths from 0 to 10 m): UnsoundPattern.
/// BadWords for a width for what is undecided that is none, or is over 10 m.
AppliedRule apply_rule(const Pattern& pattern, const CuttingRule& rule,
                       std::optional<double> undecided_mm = std::nullopt);

/// What the pattern's own rule asks of the cutting line of a piece: corners and trimmed darts; the pattern's
/// tolerances. Names that the piece does not have are passed over. For a pattern whose widths are decided.
/// Requires a sound pattern (problems_of is empty): UnsoundPattern.
CuttingRequest cutting_request(const Pattern& pattern, const Piece& piece);
/// And of its markings: how notches are cut, and whether darts are notched.
MarkingRequest marking_request(const Pattern& pattern);

}  // namespace dartwright
