#include "dartwright/checks/check.hpp"

#include <algorithm>

#include "dartwright/checks/cut_checks.hpp"
#include "dartwright/checks/dart_checks.hpp"
#include "dartwright/checks/notch_checks.hpp"
#include "dartwright/checks/outline_checks.hpp"
#include "dartwright/checks/seam_checks.hpp"
#include "dartwright/pattern/sound_entry.hpp"

namespace dartwright {
namespace {

PlacedFindings piece_findings(const PieceContext& piece, const Tolerances& tolerances) {
    if (!piece.is_closed) return gap_findings(piece, tolerances);
    return joined(joined(outline_findings(piece, tolerances), dart_findings(piece, tolerances)),
                  joined(notch_findings(piece, tolerances), cut_findings(piece, tolerances)));
}

bool is_fault(const Finding& finding) {
    return finding.severity == Severity::fault;
}

SeamVerdict verdict_on(const WalkedSeam& seam, const std::vector<Finding>& findings) {
    SeamVerdict verdict;
    verdict.name = seam.seam->name;
    verdict.ease = seam.ease;
    verdict.side_names = side_names(*seam.seam);
    if (!seam.is_measurable) {
        verdict.passed = false;
        return verdict;
    }
    verdict.lengths = {seam.sides[0].length, seam.sides[1].length};
    verdict.difference = seam.difference();
    verdict.passed = std::none_of(findings.begin(), findings.end(), [&verdict](const Finding& finding) {
        return is_fault(finding) && finding.seam == verdict.name;
    });
    return verdict;
}

// A dart of a piece that does not close has its figures but was not judged, and so has not passed.
DartVerdict verdict_on(const PieceContext& piece, std::size_t item, const std::vector<Finding>& findings) {
    const DartFigures dart = piece.is_closed ? *piece.darts[item] : figures_of(piece.outline(), item);
    DartVerdict verdict;
    verdict.piece = piece.name();
    verdict.name = piece.outline().items[item].as_dart()->name;
    verdict.legs = {dart.leg_a, dart.leg_b};
    verdict.intake = dart.intake;
    verdict.angle_deg = degrees(dart.angle_rad);
    const bool has_fault = std::any_of(findings.begin(), findings.end(), [&verdict](const Finding& finding) {
        return is_fault(finding) && finding.piece == verdict.piece && finding.dart == verdict.name;
    });
    verdict.passed = piece.is_closed && !has_fault;
    return verdict;
}

std::vector<DartVerdict> verdicts_on_darts(const std::vector<PieceContext>& pieces,
                                           const std::vector<Finding>& findings) {
    std::vector<DartVerdict> verdicts;
    for (const PieceContext& piece : pieces) {
        for (std::size_t i = 0; i < piece.outline().items.size(); ++i) {
            if (piece.outline().items[i].as_dart()) verdicts.push_back(verdict_on(piece, i, findings));
        }
    }
    return verdicts;
}

}  // namespace

CheckReport check(const Pattern& pattern, const Tolerances& tolerances) {
    const SoundEntry sound(pattern, tolerances);
    const std::vector<PieceContext> pieces = contexts_of(pattern, tolerances);
    PlacedFindings findings;
    for (const PieceContext& piece : pieces) {
        findings = joined(std::move(findings), piece_findings(piece, tolerances));
    }
    std::vector<WalkedSeam> seams;
    for (const Seam& seam : pattern.seams) seams.push_back(walked_seam(pieces, seam));
    for (const WalkedSeam& seam : seams) {
        if (!seam.is_measurable) continue;
        findings = joined(std::move(findings), seam_findings(seam, seams, tolerances));
        findings = joined(std::move(findings), notch_findings(seam, tolerances));
    }
    CheckReport report;
    report.name = pattern.name;
    report.findings = in_order(std::move(findings));
    for (const WalkedSeam& seam : seams) report.seams.push_back(verdict_on(seam, report.findings));
    report.darts = verdicts_on_darts(pieces, report.findings);
    report.passed = std::none_of(report.findings.begin(), report.findings.end(), is_fault);
    return report;
}

CheckReport check(const Pattern& pattern) {
    return check(pattern, tolerances_of(pattern));
}

}  // namespace dartwright
