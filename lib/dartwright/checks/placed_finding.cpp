#include "dartwright/checks/placed_finding.hpp"

#include <algorithm>
#include <iterator>
#include <stdexcept>
#include <tuple>

#include "dartwright/checks/check.hpp"

namespace dartwright {
namespace {

std::size_t place_on_list(const std::string& check) {
    const std::vector<CheckKind>& kinds = list_of_checks();
    for (std::size_t i = 0; i < kinds.size(); ++i) {
        if (check == kinds[i].name) return i;
    }
    throw std::logic_error("'" + check + "' is not on the list of checks");
}

}  // namespace

PlacedFindings joined(PlacedFindings first, PlacedFindings second) {
    if (first.empty()) return second;
    std::move(second.begin(), second.end(), std::back_inserter(first));
    return first;
}

std::vector<Finding> in_order(PlacedFindings findings) {
    std::stable_sort(findings.begin(), findings.end(), [](const PlacedFinding& a, const PlacedFinding& b) {
        return std::tuple(place_on_list(a.finding.check), a.piece, a.item, a.along) <
               std::tuple(place_on_list(b.finding.check), b.piece, b.item, b.along);
    });
    std::vector<Finding> ordered;
    for (PlacedFinding& placed : findings) {
        place_on_list(placed.finding.check);  // A single finding is never compared.
        ordered.push_back(std::move(placed.finding));
    }
    return ordered;
}

}  // namespace dartwright
