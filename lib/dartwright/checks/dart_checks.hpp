#pragma once

// Private to this room.

#include "dartwright/checks/piece_context.hpp"
#include "dartwright/checks/placed_finding.hpp"

namespace dartwright {

/// dart-legs, dart-mouth, dart-point and dart-crossing of all darts of the piece, those with two points too.
/// Precondition: it is closed.
///
/// A mouth is judged closed as sewn, about the point. Darts that follow one another without an edge between
/// have one mouth, judged once, in the name of the first. The point is not judged against the bisector where
/// the legs differ, nor for lying outside where the dart crosses something: the first finding says it. What a
/// dart crosses is told once, for the first place.
PlacedFindings dart_findings(const PieceContext& piece, const Tolerances& tolerances);

}  // namespace dartwright
