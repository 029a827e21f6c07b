#include "dartwright/cutting/applied_rule.hpp"

#include <algorithm>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/sound_entry.hpp"

namespace dartwright {
namespace {

bool joins(const Seam& seam, const std::string& piece, const std::string& edge) {
    return std::any_of(seam.joins.begin(), seam.joins.end(), [&](const SeamSide& side) {
        return std::any_of(side.begin(), side.end(),
                           [&](const SeamPart& part) { return part.piece == piece && part.edge == edge; });
    });
}

bool is_on_fold(const Piece& piece, const std::string& edge) {
    return is_fold_edge(piece, edge);
}

/// The entry for the edge: that which names the piece rather than one for every piece.
const RuleWidth* entry_for(const std::vector<RuleWidth>& entries, const std::string& piece,
                           const std::string& edge) {
    const RuleWidth* found = nullptr;
    for (const RuleWidth& entry : entries) {
        if (entry.name != edge) continue;
        if (entry.piece == piece) return &entry;
        if (entry.piece.empty() && !found) found = &entry;
    }
    return found;
}

struct Decision {
    DecidedBy by = DecidedBy::nothing;
    std::string seam;
    std::optional<double> width_mm;
};

Decision decision_by_seams(const Pattern& pattern, const AllowanceRule& rule, const Piece& piece,
                           const std::string& edge) {
    std::string first_joining;
    for (const Seam& seam : pattern.seams) {
        if (!joins(seam, piece.name, edge)) continue;
        if (first_joining.empty()) first_joining = seam.name;
        if (const RuleWidth* entry = entry_for(rule.seams, {}, seam.name))
            return {DecidedBy::seam, seam.name, entry->width_mm};
    }
    if (!first_joining.empty() && rule.joined_mm) return {DecidedBy::joined, first_joining, rule.joined_mm};
    if (rule.elsewhere_mm) return {DecidedBy::elsewhere, {}, rule.elsewhere_mm};
    return {};
}

Decision decision_for(const Pattern& pattern, const AllowanceRule& rule, const Piece& piece,
                      const std::string& edge) {
    if (is_on_fold(piece, edge)) return {DecidedBy::fold, {}, std::nullopt};
    if (const RuleWidth* entry = entry_for(rule.edges, piece.name, edge))
        return {DecidedBy::edge, {}, entry->width_mm};
    if (const RuleWidth* entry = entry_for(rule.openings, piece.name, edge))
        return {DecidedBy::opening, {}, entry->width_mm};
    return decision_by_seams(pattern, rule, piece, edge);
}

void set_allowance(Piece& piece, const std::string& edge, Allowance allowance) {
    for (auto& [name, own] : piece.allowance) {
        if (name != edge) continue;
        own = std::move(allowance);
        return;
    }
    piece.allowance.emplace_back(edge, std::move(allowance));
}

void drop_allowance(Piece& piece, const std::string& edge) {
    std::erase_if(piece.allowance, [&](const auto& own) { return own.first == edge; });
}

bool is_undecided(const RunWidth& stretch) {
    return !stretch.width_mm;
}

/// The run's widths as the pattern file has them: one, or stretches from its start.
Allowance allowance_from(const Run& run, const std::vector<RunWidth>& widths) {
    if (widths.size() == 1) return *widths[0].width_mm;
    std::vector<AllowanceStretch> stretches;
    for (const RunWidth& each : widths)
        stretches.push_back({name_of_end(run, RunEnd::start), each.from_mm, each.to_mm, *each.width_mm});
    return stretches;
}

/// Puts the width wherever the run has none.
void fill(Piece& piece, const Run& run, double width_mm) {
    std::vector<RunWidth> widths = widths_along(piece, run);
    if (std::none_of(widths.begin(), widths.end(), is_undecided)) return;
    for (RunWidth& each : widths) each.width_mm = each.width_mm.value_or(width_mm);
    set_allowance(piece, run.edge, allowance_from(run, widths));
}

bool has_corner(const Piece& piece, const CornerRule& corner) {
    const std::string& first = corner.between[0];
    const std::string& second = corner.between[1];
    const std::vector<Run> runs = runs_of(piece.outline);
    return std::any_of(runs.begin(), runs.end(), [&](const Run& run) {
        return (run.edge == first && run.after == second) || (run.edge == second && run.after == first);
    });
}

CornerKind cutting_kind(RuleCornerKind kind) {
    switch (kind) {
        case RuleCornerKind::squared:
            return CornerKind::squared;
        case RuleCornerKind::mirrored:
            return CornerKind::mirrored;
        case RuleCornerKind::carried_on:
            return CornerKind::carried_on;
        case RuleCornerKind::blunted:
            return CornerKind::blunted;
        case RuleCornerKind::met:
            break;
    }
    return CornerKind::met;
}

std::vector<DartTrimming> trimmed_darts(const Piece& piece, const DartTrim& trim) {
    std::vector<DartTrimming> out;
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        const DartItem* dart = piece.outline.items[i].as_dart();
        if (dart && figures_of(piece.outline, i).intake > trim.wider_than_mm)
            out.push_back({dart->name, trim.allowance_mm});
    }
    return out;
}

std::string widths_name(const char* entry, const std::string& name) {
    return std::string("the ") + entry + " " + quoted(name);
}

class Ruler {
  public:
    Ruler(const Pattern& pattern, const CuttingRule& rule, std::optional<double> undecided_mm)
        : before_(pattern), rule_(rule), undecided_mm_(undecided_mm) {
        out_.pattern = pattern;
        out_.pattern.cutting = rule;
    }

    AppliedRule applied() {
        for (Piece& piece : out_.pattern.pieces) out_.pieces.push_back(ruled(piece));
        warn();
        return std::move(out_);
    }

  private:
    RuledPiece ruled(Piece& piece) {
        RuledPiece out;
        out.piece = piece.name;
        for (const Run& run : runs_of(piece.outline)) out.runs.push_back(decided(piece, run));
        out.request = cutting_request(out_.pattern, piece);
        return out;
    }

    DecidedRun decided(Piece& piece, const Run& run) {
        const Decision decision = decision_for(before_, rule_.allowance, piece, run.edge);
        const std::vector<RunWidth> before = widths_along(piece, run);
        DecidedRun out{run.edge, decision.by, decision.seam, {}, false, {}};
        if (before.size() == 1) out.was_mm = before[0].width_mm;
        if (decision.by == DecidedBy::fold) {
            const bool is_none = before.size() == 1 && before[0].width_mm.value_or(0) == 0;
            if (!is_none) drop_allowance(piece, run.edge);
            out.widths = {{0, run.length, 0.0}};
            return out;
        }
        if (decision.width_mm) {
            set_allowance(piece, run.edge, *decision.width_mm);
        } else {
            out.is_undecided = std::any_of(before.begin(), before.end(), is_undecided);
            out.by = out.is_undecided ? DecidedBy::nothing : DecidedBy::pattern;
            if (undecided_mm_) fill(piece, run, *undecided_mm_);
        }
        out.widths = widths_along(piece, run);
        return out;
    }

    void warn() {
        for (const RuleWidth& entry : rule_.allowance.edges) warn_of_edge(entry, "edge");
        for (const RuleWidth& entry : rule_.allowance.openings) warn_of_edge(entry, "opening");
        for (const RuleWidth& entry : rule_.allowance.seams) {
            const bool is_there = std::any_of(before_.seams.begin(), before_.seams.end(),
                                              [&](const Seam& seam) { return seam.name == entry.name; });
            if (!is_there) out_.warnings.push_back("the pattern has no seam " + quoted(entry.name));
        }
        for (const CornerRule& corner : rule_.corners) warn_of_corner(corner);
    }

    const Piece* piece_named_in_rule(const std::string& name) const {
        const auto found = std::find_if(before_.pieces.begin(), before_.pieces.end(),
                                        [&](const Piece& piece) { return piece.name == name; });
        return found == before_.pieces.end() ? nullptr : &*found;
    }

    /// `is_on` says whether a piece has what the entry names.
    template <typename IsOn>
    void warn_unless_there(const std::string& piece, const std::string& what, const IsOn& is_on) {
        if (piece.empty()) {
            if (std::none_of(before_.pieces.begin(), before_.pieces.end(), is_on))
                out_.warnings.push_back("no piece has " + what);
            return;
        }
        const Piece* found = piece_named_in_rule(piece);
        if (!found) {
            out_.warnings.push_back("the pattern has no piece " + quoted(piece));
        } else if (!is_on(*found)) {
            out_.warnings.push_back(quoted(piece) + " has no " + what.substr(what.find(' ') + 1));
            out_.misnamed.push_back(out_.warnings.back());
        }
    }

    void warn_of_edge(const RuleWidth& entry, const std::string& kind) {
        const std::string what =
            (kind == "edge" ? "an edge " : "an edge to leave open, ") + quoted(entry.name);
        warn_unless_there(entry.piece, what, [&](const Piece& piece) {
            return find_run(runs_of(piece.outline), entry.name) != nullptr;
        });
        for (const Piece& piece : before_.pieces) {
            const bool is_meant = entry.piece.empty() || entry.piece == piece.name;
            if (is_meant && is_on_fold(piece, entry.name) && entry.width_mm > 0)
                out_.warnings.push_back(quoted(entry.name) + " of " + quoted(piece.name) +
                                        " is on the fold and has no allowance");
        }
    }

    void warn_of_corner(const CornerRule& corner) {
        const std::string what =
            "a corner of " + quoted(corner.between[0]) + " and " + quoted(corner.between[1]);
        warn_unless_there(corner.piece, what, [&](const Piece& piece) { return has_corner(piece, corner); });
    }

    const Pattern& before_;
    const CuttingRule& rule_;
    std::optional<double> undecided_mm_;
    AppliedRule out_;
};

}  // namespace

std::string to_text(const DecidedRun& run) {
    switch (run.by) {
        case DecidedBy::fold:
            return "the fold, which has none";
        case DecidedBy::edge:
            return widths_name("edge", run.edge);
        case DecidedBy::opening:
            return widths_name("opening", run.edge);
        case DecidedBy::seam:
            return widths_name("seam", run.seam);
        case DecidedBy::joined:
            return "cutting rule: every seam, here " + quoted(run.seam);
        case DecidedBy::elsewhere:
            return "cutting rule: all other edges";
        case DecidedBy::pattern:
            return "the pattern's own";
        case DecidedBy::nothing:
            break;
    }
    return "nothing";
}

AppliedRule apply_rule(const Pattern& pattern, const CuttingRule& rule, std::optional<double> undecided_mm) {
    const SoundEntry sound(pattern, rule);
    refuse_bad_undecided(undecided_mm);
    return Ruler(pattern, rule, undecided_mm).applied();
}

CuttingRequest cutting_request(const Pattern& pattern, const Piece& piece) {
    const SoundEntry sound(pattern);
    CuttingRequest request;
    request.tolerances = tolerances_of(pattern);
    request.unit = pattern.unit;
    if (!pattern.cutting) return request;
    for (const bool names_piece : {true, false}) {
        for (const CornerRule& corner : pattern.cutting->corners) {
            if (corner.piece != (names_piece ? piece.name : "") || !has_corner(piece, corner)) continue;
            request.corners.push_back(
                {corner.between, cutting_kind(corner.kind), corner.whose, corner.limit_mm});
        }
    }
    const auto& trim = pattern.cutting->darts.trim;
    if (trim) request.trimmed = trimmed_darts(piece, *trim);
    return request;
}

MarkingRequest marking_request(const Pattern& pattern) {
    MarkingRequest request;
    if (!pattern.cutting) return request;
    if (const auto& notches = pattern.cutting->notches) {
        request.notches.form = notches->form;
        request.notches.depth_mm = notches->depth_mm;
        request.notches.width_mm = notches->width_mm.value_or(request.notches.width_mm);
    }
    request.are_darts_notched = pattern.cutting->darts.is_notched.value_or(request.are_darts_notched);
    return request;
}

}  // namespace dartwright
