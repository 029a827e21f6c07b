#pragma once

#include "dartwright/checks/finding.hpp"
#include "dartwright/drawing/label_places.hpp"

namespace dartwright {

/// Findings are numbered from 1 in their order. A fault's tag is a filled diamond, a note's an open ring, so
/// that the two differ without colour.

/// Takes the places of a piece's findings, so that words keep off them.
void take_places_of(const std::vector<Finding>& findings, const std::string& piece, TakenPlaces& taken);

/// Tags of the findings on one piece, each with a leader to its place, in the piece's coordinates. Findings
/// on other pieces or without a place have none; they are in the list all the same.
DrawnGroup tags_on_piece(const std::vector<Finding>& findings, const std::string& piece, TakenPlaces& taken);

/// Every finding with its number, message and remedy, wrapped to the width. The upper left corner of the
/// list lies at the origin.
DrawnGroup list_of_findings(const std::vector<Finding>& findings, double width_mm);

}  // namespace dartwright
