#pragma once

// Private to this room: what every finding on a dart begins with.

#include "dartwright/checks/piece_context.hpp"
#include "dartwright/checks/placed_finding.hpp"

namespace dartwright {

/// Precondition: the item is a dart.
const DartItem& dart_at(const PieceContext& piece, std::size_t item);
/// A fault that names the piece, the dart and the run that the dart interrupts (none in a corner).
Finding finding_on_dart(const PieceContext& piece, std::size_t item, const char* check);
/// The words of an operation on the dart of the finding, with more about how.
std::vector<std::string> command_for_dart(const char* operation, const Finding& finding,
                                          const std::vector<std::string>& how = {});
/// `PIECE, DART: `, with which the message begins.
std::string subject(const Finding& finding);
PlacedFinding placed(const Finding& finding, const PieceContext& piece, std::size_t item);

}  // namespace dartwright
