#include "dartwright/darts/separating/separated_contents.hpp"

#include <algorithm>
#include <set>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/separating/grain_within.hpp"
#include "dartwright/words/notes.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {
namespace {

class Contents {
  public:
    Contents(const Piece& whole, const Separation& s, const PartsWanted& wanted, Notes notes)
        : whole_(whole), s_(s), wanted_(wanted), notes_(notes), border_(border()) {}

    std::array<Piece, 2> pieces() {
        const std::string crossed = crossed_double_dart(whole_, border_);
        if (!crossed.empty()) {
            throw Impossible("the seam would cross the dart " + quoted(crossed), "end it at another place");
        }
        for (std::size_t k = 0; k < 2; ++k) {
            pieces_[k].name = wanted_.names[k];
            pieces_[k].outline = s_.parts[k].outline;
            pieces_[k].worn = whole_.worn;
            pieces_[k].side_up = whole_.side_up;
        }
        cut();
        grain();
        for (const DoubleDart& dart : whole_.double_darts) {
            const bool is_first = is_turning(border_, middle(dart.widest[0], dart.widest[1]));
            pieces_[is_first ? 0 : 1].double_darts.push_back(dart);
        }
        place_marks();
        for (const Notch& notch : whole_.notches) place_notch(notch);
        for (const auto& [edge, allowance] : whole_.allowance) divide_allowance(edge, allowance);
        add_seam_notches();
        add_seam_allowance();
        for (std::size_t k = 0; k < 2; ++k) press_darts(k);
        return pieces_;
    }

  private:
    TurningPart border() const {
        TurningPart part;
        part.polygon = s_.parts[0].polygon;
        part.held_polygon = s_.parts[1].polygon;
        add_wedge(part, s_.dart);
        if (s_.with) add_wedge(part, *s_.with);
        if (!s_.with) part.inner_borders.push_back({s_.dart.pivot, s_.target});
        return part;
    }

    static void add_wedge(TurningPart& part, const DartFigures& dart) {
        part.wedges.push_back({dart.pivot, dart.a, dart.b});
        part.inner_borders.push_back({dart.pivot, dart.a});
        part.inner_borders.push_back({dart.pivot, dart.b});
    }

    // Corners of the fold that a part has: its own, as they were said to be, and that with the new seam,
    // which need not be square to the fold.
    std::map<std::string, CornerIs> fold_ends(const std::string& fold, std::size_t part) {
        std::map<std::string, CornerIs> ends;
        const Run& whole = *find_run(s_.whole_runs, fold);
        for (const PartOfRun& each : parts_of_run(s_, fold)) {
            if (each.part != part) continue;
            for (const auto& [name, corner] : whole_.cut->ends) {
                const auto end = end_named(whole, name);
                if (end && (*end == RunEnd::start ? each.has_start : each.has_end))
                    ends.emplace(name_of_end(*each.run, *end), corner);
            }
            for (const RunEnd end : {RunEnd::start, RunEnd::end}) free_at_seam(ends, *each.run, end, part);
        }
        return ends;
    }

    void free_at_seam(std::map<std::string, CornerIs>& ends, const Run& run, RunEnd end, std::size_t part) {
        const std::string there = name_of_end(run, end);
        const std::vector<std::string>& edges = s_.parts[part].seam_edges;
        if (std::find(edges.begin(), edges.end(), there) == edges.end()) return;
        if (!ends.emplace(there, CornerIs::free).second) return;
        notes_.push_back("the seam meets the fold of " + quoted(wanted_.names[part]) + " at " +
                         text_of("%.1f degrees", degrees(corner_angle(s_.parts[part].outline, run, end))) +
                         "; whether it is to be square is not judged");
    }

    // A fold stays with the part that has it; one without it is cut as a pair for each copy of the whole.
    void cut() {
        if (!whole_.cut) return;
        for (std::size_t k = 0; k < 2; ++k) {
            Cut cut = *whole_.cut;
            std::vector<std::string> kept;
            cut.ends.clear();
            for (const std::string& fold : fold_edges(whole_)) {
                if (find_run(s_.parts[k].runs, fold)) {
                    kept.push_back(fold);
                    cut.ends.merge(fold_ends(fold, k));
                } else {
                    cut.quantity *= 2;
                }
            }
            cut.fold = kept.empty() ? "" : kept.front();
            cut.second_fold = kept.size() < 2 ? "" : kept.back();
            pieces_[k].cut = cut;
        }
    }

    // A hole in the seam that was rounded away lies on no cloth of one of the parts, or of both.
    void place_marks() {
        MarksOfParts marks = marks_of_parts(whole_.marks, border_);
        pieces_[0].marks = std::move(marks.turning);
        pieces_[1].marks = std::move(marks.held);
        if (s_.rounded_off_mm == 0) return;
        for (Piece& piece : pieces_) {
            const std::vector<Point> cloth =
                flat_outline(piece.outline, DartsDrawn::to_pivots, decision_chord_error_mm).points;
            const auto is_off = [&](const Mark& mark) {
                const auto* drill = std::get_if<DrillMark>(&mark.what);
                if (!drill || !(drill->at == s_.dart.pivot)) return false;
                return where_in_polygon(cloth, drill->at) == Where::outside;
            };
            for (const Mark& mark : piece.marks) {
                if (is_off(mark))
                    notes_.push_back("the mark " + quoted(mark.name) + " is beyond the rounded seam of " +
                                     quoted(piece.name) + " and was left out there");
            }
            std::erase_if(piece.marks, is_off);
        }
    }

    static std::vector<Point> cloth_of(const Outline& outline) {
        return flat_outline(outline, DartsDrawn::to_points, decision_chord_error_mm).points;
    }

    // The part that is held keeps the arrow that was drawn, or as much of it as the seam has left clear; who
    // drew it nearer to an edge than we would meant that.
    std::optional<Grain> own_grain(std::size_t part, const std::vector<Point>& cloth) const {
        if (part != wanted_.held) return std::nullopt;
        const double drawn_mm = grain_clearance(cloth_of(whole_.outline), *whole_.grain);
        return grain_kept_within(cloth, *whole_.grain, std::min(grain_clear_mm, drawn_mm));
    }

    void grain() {
        if (!whole_.grain) return;
        for (std::size_t k = 0; k < 2; ++k) {
            const std::vector<Point> cloth = cloth_of(s_.parts[k].outline);
            const std::optional<Grain> own = own_grain(k, cloth);
            pieces_[k].grain = own ? *own : grain_within(cloth, whole_.grain->to - whole_.grain->from);
            const std::string& along = whole_.grain->along;
            pieces_[k].grain->along = find_run(s_.parts[k].runs, along) ? along : "";
        }
    }

    // A distance from an end of the whole's run, as it is from an end of the part's: the same end where the
    // part has it, else its other one.
    struct FromEnd {
        std::string from;
        double at = 0;
    };
    static FromEnd on_part(const PartOfRun& part, RunEnd from, double at, double whole_mm) {
        const bool is_kept = from == RunEnd::start ? part.has_start : part.has_end;
        if (is_kept) return {name_of_end(*part.run, from), at};
        const double on_run = (from == RunEnd::start ? at : whole_mm - at) - part.begins;
        if (from == RunEnd::start) return {name_of_end(*part.run, RunEnd::start), on_run};
        return {name_of_end(*part.run, RunEnd::end), part.run->length - on_run};
    }

    double whole_length(const std::string& edge) const { return find_run(s_.whole_runs, edge)->length; }

    void place_notch(const Notch& notch) {
        const Run& run = *find_run(s_.whole_runs, notch.edge);
        const RunEnd from = end_named(run, notch.from).value_or(RunEnd::start);
        const double on_run = from == RunEnd::start ? notch.at : run.length - notch.at;
        const std::vector<PartOfRun> parts = parts_of_run(s_, notch.edge);
        const PartOfRun& part = parts.size() == 2 && on_run > parts[1].begins ? parts[1] : parts[0];
        const FromEnd place = on_part(part, from, notch.at, run.length);
        pieces_[part.part].notches.push_back({notch.edge, place.from, place.at, notch.kind});
    }

    void divide_allowance(const std::string& edge, const Allowance& allowance) {
        for (const PartOfRun& part : parts_of_run(s_, edge)) {
            if (const double* width = std::get_if<double>(&allowance)) {
                pieces_[part.part].allowance.push_back({edge, *width});
                continue;
            }
            std::vector<AllowanceStretch> stretches;
            for (const AllowanceStretch& each : std::get<std::vector<AllowanceStretch>>(allowance)) {
                if (const auto stretch = on_part(part, each, edge)) stretches.push_back(*stretch);
            }
            if (!stretches.empty()) pieces_[part.part].allowance.push_back({edge, stretches});
        }
    }

    // What of a stretch lies on the part, measured from the whole's end if the part has it, else from its
    // other.
    std::optional<AllowanceStretch> on_part(const PartOfRun& part, const AllowanceStretch& stretch,
                                            const std::string& edge) const {
        const RunEnd from = end_named(*find_run(s_.whole_runs, edge), stretch.from).value_or(RunEnd::start);
        const double whole_mm = whole_length(edge);
        const bool is_forward = from == RunEnd::start;
        const double low = is_forward ? part.begins : whole_mm - part.begins - part.run->length;
        const double at = std::max(stretch.at, low);
        const double to = std::min(stretch.to, low + part.run->length);
        if (at >= to) return std::nullopt;
        const FromEnd begin = on_part(part, from, at, whole_mm);
        return AllowanceStretch{begin.from, begin.at, begin.at + (to - at), stretch.width};
    }

    void add_seam_notches() {
        const NotchesOfSeam at = notches_of_seam(s_, wanted_.notch_mm);
        if (wanted_.notch_mm > std::min(s_.dart_leg_mm, s_.target_leg_mm) / 2) {
            notes_.push_back("the seam's notches are " + measure_told(s_.dart_leg_mm - at.from_dart_end) +
                             " and " + measure_told(s_.target_leg_mm - at.from_target_end) +
                             " from the pivot: half of a leg at most");
        }
        for (std::size_t k = 0; k < 2; ++k) {
            const SeparatedPart& part = s_.parts[k];
            const RunEnd dart_end = k == 0 ? RunEnd::end : RunEnd::start;
            const RunEnd target_end = k == 0 ? RunEnd::start : RunEnd::end;
            const Run& at_dart = *find_run(part.runs, part.seam_edges.front());
            const Run& at_target = *find_run(part.runs, part.seam_edges.back());
            pieces_[k].notches.push_back(
                {at_dart.edge, name_of_end(at_dart, dart_end), at.from_dart_end, NotchKind::single});
            pieces_[k].notches.push_back(
                {at_target.edge, name_of_end(at_target, target_end), at.from_target_end, NotchKind::single});
        }
    }

    // The seam is given the width that every edge with an allowance has; if they differ, it stays undecided.
    void add_seam_allowance() {
        std::set<double> widths;
        for (const auto& [edge, allowance] : whole_.allowance) {
            const double* width = std::get_if<double>(&allowance);
            if (width && *width > 0) widths.insert(*width);
        }
        if (widths.size() != 1) {
            notes_.push_back("decide the allowance of the new seam");
            return;
        }
        notes_.push_back("the new seam has the allowance of the other edges, " + width_told(*widths.begin()));
        for (std::size_t k = 0; k < 2; ++k) {
            for (const std::string& edge : s_.parts[k].seam_edges)
                pieces_[k].allowance.push_back({edge, *widths.begin()});
        }
    }

    // A dart that was pressed towards an edge of the other part is pressed towards the seam.
    void press_darts(std::size_t k) {
        for (OutlineItem& item : pieces_[k].outline.items) {
            DartItem* dart = item.as_dart();
            if (dart) press(k, dart->name, dart->press);
        }
        for (DoubleDart& dart : pieces_[k].double_darts) press(k, dart.name, dart.press);
    }
    void press(std::size_t k, const std::string& dart, std::string& edge) {
        if (edge.empty() || find_run(s_.parts[k].runs, edge)) return;
        edge = s_.parts[k].seam_edges.front();
        notes_.push_back(quoted(dart) + " is pressed towards " + quoted(edge));
    }

    const Piece& whole_;
    const Separation& s_;
    const PartsWanted& wanted_;
    Notes notes_;
    TurningPart border_;
    std::array<Piece, 2> pieces_;
};

}  // namespace

std::array<Piece, 2> separated_pieces(const Piece& whole, const Separation& separation,
                                      const PartsWanted& wanted, Notes notes) {
    return Contents(whole, separation, wanted, notes).pieces();
}

std::string end_in_part(const Separation& s, const std::string& edge, RunEnd end) {
    const std::vector<PartOfRun> parts = parts_of_run(s, edge);
    return name_of_end(end == RunEnd::start ? *parts.front().run : *parts.back().run, end);
}

NotchesOfSeam notches_of_seam(const Separation& s, double wanted_mm) {
    return {s.dart_leg_mm - std::min(wanted_mm, s.dart_leg_mm / 2),
            s.target_leg_mm - std::min(wanted_mm, s.target_leg_mm / 2)};
}

}  // namespace dartwright
