#include "dartwright/comparing/compared_darts.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>
#include <unordered_map>

#include "dartwright/comparing/placed_dart.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/run_index.hpp"

namespace dartwright {
namespace {

DartSeen seen(const ShapedPiece& shaped, const PlacedDart& placed, std::size_t item) {
    const DartFigures figures = figures_of(shaped.piece.outline, item);
    DartSeen out;
    out.place = place_words(placed);
    if (placed.run) out.edge = placed.run->edge;
    if (placed.run && placed.run->length > 0) out.share = placed.distance / placed.run->length;
    out.angle_rad = figures.angle_rad;
    out.intake_mm = figures.intake;
    out.back_off_mm = figures.back_off;
    return out;
}

DartChange change_of(const ComparedDart& dart, const RunIndex& runs_before, const Tolerances& tolerances) {
    if (!dart.after) return DartChange::gone;
    if (!dart.before) return DartChange::opened;
    if (dart.before->edge != dart.after->edge) return DartChange::moved;
    const Run* run = runs_before.find(dart.before->edge);
    const double length = run ? run->length : 0;
    if (std::abs(dart.before->share - dart.after->share) * length > tolerances.notch_mm)
        return DartChange::moved;
    const bool is_same =
        std::abs(dart.before->angle_rad - dart.after->angle_rad) <= radians(tolerances.grain_deg) &&
        std::abs(dart.before->intake_mm - dart.after->intake_mm) <= tolerances.notch_mm &&
        std::abs(dart.before->back_off_mm - dart.after->back_off_mm) <= tolerances.notch_mm;
    return is_same ? DartChange::kept : DartChange::changed;
}

std::vector<std::size_t> dart_items(const Piece& piece) {
    std::vector<std::size_t> items;
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        if (piece.outline.items[i].as_dart()) items.push_back(i);
    }
    return items;
}

const std::string& dart_name(const Piece& piece, std::size_t item) {
    return piece.outline.items[item].as_dart()->name;
}

// Outline items of the darts by their names.
using DartIndex = std::unordered_map<std::string_view, std::size_t>;
DartIndex index_of_darts(const Piece& piece) {
    DartIndex out;
    for (const std::size_t item : dart_items(piece)) out.emplace(dart_name(piece, item), item);
    return out;
}
std::optional<std::size_t> item_of(const DartIndex& darts, const std::string& name) {
    const auto found = darts.find(name);
    return found == darts.end() ? std::nullopt : std::optional(found->second);
}

struct Pivot {
    Point at;
    std::vector<std::size_t> items;
    double angle_rad = 0;
};

std::vector<Pivot> pivots_of(const Piece& piece) {
    std::vector<Pivot> pivots;
    for (const std::size_t item : dart_items(piece)) {
        const DartFigures figures = figures_of(piece.outline, item);
        auto same = std::find_if(pivots.begin(), pivots.end(), [&figures](const Pivot& pivot) {
            return distance(pivot.at, figures.pivot) <= one_point_mm;
        });
        if (same == pivots.end()) same = pivots.insert(same, {figures.pivot, {}, 0});
        same->items.push_back(item);
        same->angle_rad += figures.angle_rad;
    }
    return pivots;
}

bool touches(const ComparedPart& part, const PlacedDart& placed, const Tolerances& tolerances) {
    return std::any_of(part.stretches.begin(), part.stretches.end(), [&](const PartStretch& stretch) {
        const auto is_at = [&](const Run& run, double distance, double share) {
            return stretch.edge == run.edge && std::abs(share * run.length - distance) <= tolerances.notch_mm;
        };
        return is_at(*placed.run, placed.distance, stretch.from_share) ||
               is_at(*placed.run, placed.distance, stretch.to_share) ||
               (placed.distance == placed.run->length && stretch.edge == placed.run->after &&
                stretch.from_share == 0);
    });
}

// The pivot nearest to where one of the motions carries the place, and how far off it is.
struct Found {
    std::optional<std::size_t> pivot;
    double strays_mm = std::numeric_limits<double>::infinity();
};
void look(Found& found, const std::vector<Pivot>& pivots, Point carried) {
    for (std::size_t i = 0; i < pivots.size(); ++i) {
        const double off = distance(pivots[i].at, carried);
        if (off < found.strays_mm) found = {i, off};
    }
}

class PivotSearch {
  public:
    PivotSearch(const PieceBothWays& both, const std::vector<ComparedPart>& parts,
                const Tolerances& tolerances)
        : both_(both),
          parts_(parts),
          tolerances_(tolerances),
          placed_(placed_darts(both.before.piece.outline, both.before.runs)),
          after_(pivots_of(both.after.piece)),
          darts_after_(index_of_darts(both.after.piece)) {}

    Found partner_of(const Pivot& pivot) const {
        const Found beside = carried(pivot, true);
        if (beside.strays_mm <= tolerances_.notch_mm) return beside;
        const Found anywhere = carried(pivot, false);
        if (anywhere.strays_mm <= tolerances_.notch_mm) return anywhere;
        return named_like(pivot, parts_.empty() ? 0 : beside.strays_mm);
    }
    const std::vector<Pivot>& after() const { return after_; }

  private:
    bool is_beside(const ComparedPart& part, const Pivot& pivot) const {
        return std::any_of(pivot.items.begin(), pivot.items.end(), [&](std::size_t item) {
            return placed_[item].run && touches(part, placed_[item], tolerances_);
        });
    }
    Found carried(const Pivot& pivot, bool only_beside) const {
        Found found;
        for (const ComparedPart& part : parts_) {
            if (only_beside && !is_beside(part, pivot)) continue;
            look(found, after_, apply(part.motion, pivot.at));
        }
        return found;
    }
    Found named_like(const Pivot& pivot, double strays_mm) const {
        for (const std::size_t item : pivot.items) {
            const auto dart = item_of(darts_after_, dart_name(both_.before.piece, item));
            for (std::size_t i = 0; dart && i < after_.size(); ++i) {
                const std::vector<std::size_t>& items = after_[i].items;
                if (std::find(items.begin(), items.end(), *dart) != items.end()) return {i, strays_mm};
            }
        }
        return {};
    }

    const PieceBothWays& both_;
    const std::vector<ComparedPart>& parts_;
    const Tolerances& tolerances_;
    std::vector<PlacedDart> placed_;  // before, by item
    std::vector<Pivot> after_;
    DartIndex darts_after_;
};

std::vector<std::string> names_of(const Piece& piece, const Pivot& pivot) {
    std::vector<std::string> names;
    for (const std::size_t item : pivot.items) names.push_back(dart_name(piece, item));
    return names;
}

}  // namespace

std::vector<ComparedDart> compared_darts(const PieceBothWays& both, const Tolerances& tolerances) {
    const ShapedPiece& before = both.before;
    const ShapedPiece& after = both.after;
    const std::vector<PlacedDart> placed_before = placed_darts(before.piece.outline, before.runs);
    const std::vector<PlacedDart> placed_after = placed_darts(after.piece.outline, after.runs);
    const DartIndex darts_before = index_of_darts(before.piece);
    const DartIndex darts_after = index_of_darts(after.piece);
    std::vector<ComparedDart> darts;
    for (const std::size_t item : dart_items(before.piece)) {
        ComparedDart dart;
        dart.name = dart_name(before.piece, item);
        dart.before = seen(before, placed_before[item], item);
        if (const auto same = item_of(darts_after, dart.name))
            dart.after = seen(after, placed_after[*same], *same);
        darts.push_back(dart);
    }
    for (const std::size_t item : dart_items(after.piece)) {
        ComparedDart dart;
        dart.name = dart_name(after.piece, item);
        if (item_of(darts_before, dart.name)) continue;
        dart.after = seen(after, placed_after[item], item);
        darts.push_back(dart);
    }
    const RunIndex runs_before(before.runs);
    for (ComparedDart& dart : darts) dart.change = change_of(dart, runs_before, tolerances);
    return darts;
}

std::vector<ComparedPivot> compared_pivots(const PieceBothWays& both, const std::vector<ComparedPart>& parts,
                                           const Tolerances& tolerances) {
    const PivotSearch search(both, parts, tolerances);
    std::vector<bool> is_taken(search.after().size());
    std::vector<ComparedPivot> out;
    for (const Pivot& pivot : pivots_of(both.before.piece)) {
        ComparedPivot compared;
        compared.darts_before = names_of(both.before.piece, pivot);
        compared.angle_rad.before = pivot.angle_rad;
        const Found found = search.partner_of(pivot);
        if (found.pivot && !is_taken[*found.pivot]) {
            is_taken[*found.pivot] = true;
            const Pivot& partner = search.after()[*found.pivot];
            compared.darts_after = names_of(both.after.piece, partner);
            compared.angle_rad.after = partner.angle_rad;
            compared.strays_mm = found.strays_mm;
        }
        out.push_back(compared);
    }
    for (std::size_t i = 0; i < is_taken.size(); ++i) {
        if (is_taken[i]) continue;
        out.push_back(
            {{}, names_of(both.after.piece, search.after()[i]), {{}, search.after()[i].angle_rad}, {}});
    }
    return out;
}

}  // namespace dartwright
