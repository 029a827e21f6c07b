#include <algorithm>
#include <cmath>

#include "dartwright/assessing/checked_draft.hpp"
#include "dartwright/assessing/criterion_names.hpp"
#include "dartwright/assessing/judged_lines.hpp"
#include "dartwright/checks/measure_line.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/allowance.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {
namespace {

// The two units that were taken for one another: what the numbers are in, and what the file says.
struct Mistaken {
    const char* numbers = "";
    const char* said = "";
};
Mistaken mistaken_by(double unit) {
    const double times = unit > 1 ? unit : 1 / unit;
    const Mistaken larger = std::abs(times - 10) < 1     ? Mistaken{"mm", "cm"}
                            : std::abs(times - 2.54) < 1 ? Mistaken{"cm", "inches"}
                                                         : Mistaken{"mm", "inches"};
    return unit > 1 ? larger : Mistaken{larger.said, larger.numbers};
}

std::string unit_words(double unit) {
    const Mistaken mistaken = mistaken_by(unit);
    const std::string size =
        unit > 1 ? text_of("%.4g times full size", unit) : text_of("full size divided by %.4g", 1 / unit);
    return size + ": numbers in " + mistaken.numbers + ", and the file says " + mistaken.said + "?";
}

std::string remedy_of_size(double unit) {
    if (unit == 1)
        return "Print at full scale, without fitting to the page, and measure the test square first.";
    const Mistaken mistaken = mistaken_by(unit);
    return std::string("If the numbers are ") + mistaken.numbers + ", let the file say so; if they are " +
           mistaken.said + ", draw at full size.";
}

std::string size_words(const DraftFacts& facts) {
    const DraftScale& scale = facts.draft.scale;
    const double longest = facts.plan->longest_mm;
    const std::string measure = "the " + facts.plan->longest_edge + " of the " + facts.plan->longest_piece +
                                " measures " + length_words(facts, scale.drawn * longest) + " instead of " +
                                length_words(facts, longest);
    return scale.unit != 1 ? unit_words(scale.unit) + " " + "The" + measure.substr(3) + "." : measure;
}

ScoredLine size_line(const DraftFacts& facts, Criterion criterion) {
    const double longest = facts.plan->longest_mm;
    const double scale = facts.draft.scale.drawn;
    JudgedLine line;
    line.criterion = criterion;
    line.piece = facts.plan->longest_piece;
    line.edge = facts.plan->longest_edge;
    line.what = "the size of the draft, 1 being full size, by the " + line.edge + " of the " + line.piece;
    line.remedy = remedy_of_size(facts.draft.scale.unit);
    ScoredLine out = length_line(facts, std::move(line), {1, scale, (scale - 1) * longest});
    out.line.quantity = Quantity::number;
    out.line.difference = scale - 1;
    if (facts.draft.scale.is_off) out.line.found_words = size_words(facts);
    for (std::size_t i = 0; i < facts.plan->finished.size(); ++i)
        if (facts.plan->finished[i].piece.name == facts.plan->longest_piece)
            out.line.at = middle_of_run(facts, i, facts.plan->longest_edge);
    return out;
}

/// A width along a run, compared stretch by stretch.
struct WidthOff {
    double expected = 0;
    std::optional<double> found;
};

const RunWidth* width_at(const std::vector<RunWidth>& widths, double share) {
    if (widths.empty()) return nullptr;
    const double at = share * widths.back().to_mm;
    for (const RunWidth& each : widths)
        if (at <= each.to_mm) return &each;
    return &widths.back();
}

// A draft of another size may have its widths written at the true one.
double true_width(double expected, double found, double scale) {
    return std::abs(found * scale - expected) < std::abs(found - expected) ? found * scale : found;
}

// Where it is off the most, in the middle of every stretch of either.
std::optional<WidthOff> worst_width(const std::vector<RunWidth>& expected, const std::vector<RunWidth>& found,
                                    double scale) {
    std::optional<WidthOff> worst;
    const auto offer = [&](double share) {
        const RunWidth* asked = width_at(expected, share);
        const RunWidth* drawn = width_at(found, share);
        if (!asked || !asked->width_mm) return;
        const WidthOff here{*asked->width_mm,
                            drawn && drawn->width_mm
                                ? std::optional(true_width(*asked->width_mm, *drawn->width_mm, scale))
                                : std::nullopt};
        if (worst && !worst->found) return;
        if (!worst || !here.found ||
            std::abs(*here.found - here.expected) > std::abs(*worst->found - worst->expected))
            worst = here;
    };
    for (const auto* widths : {&expected, &found})
        for (const RunWidth& each : *widths)
            if (widths->back().to_mm > 0) offer((each.from_mm + each.to_mm) / 2 / widths->back().to_mm);
    return worst;
}

void add_allowances_of(ScoredLines& lines, const DraftFacts& facts, std::size_t index, const Piece& ruled) {
    const ShapedPiece& expected = facts.plan->finished[index];
    const auto& drawn = facts.draft.pieces[index];
    for (const Run& run : expected.runs) {
        const Run* found = drawn ? find_run(drawn->shaped.runs, run.edge) : nullptr;
        const auto widths = found ? widths_along(drawn->shaped.piece, *found) : std::vector<RunWidth>{};
        const auto worst = worst_width(widths_along(ruled, run), widths, facts.draft.scale.drawn);
        if (!worst) continue;
        JudgedLine line;
        line.criterion = Criterion::allowances;
        line.piece = expected.piece.name;
        line.edge = run.edge;
        line.at = middle_of_run(facts, index, run.edge);
        line.what = "the allowance of the " + run.edge;
        line.remedy = "Draw the cutting line " + length_words(facts, worst->expected) + " outside the " +
                      run.edge + ".";
        if (worst->found)
            lines.push_back(length_line(facts, std::move(line),
                                        {worst->expected, *worst->found, *worst->found - worst->expected}));
        else
            lines.push_back(fault_line(std::move(line), length_words(facts, worst->expected),
                                       drawn ? "not decided" : "no such piece"));
    }
}

// What a run of another length, judged as such, makes of a measure along it.
double explained_by_runs(const DraftFacts& facts, const std::string& line, const MeasuredLine& measured) {
    if (!facts.plan->asks(Criterion::lengths) && !facts.plan->asks(Criterion::seams)) return 0;
    double explained = 0;
    for (const RunFact& run : facts.runs) {
        if (run.edge != line || !run.found_mm) continue;
        if (!is_off(facts.lengths(), *run.found_mm - run.expected_mm)) continue;
        for (const MeasuredOnPiece& piece : measured.pieces)
            if (piece.piece == facts.plan->finished[run.piece].piece.name)
                explained += piece.copies * (*run.found_mm - run.expected_mm);
    }
    return explained;
}

ScoredLine measure_of(const DraftFacts& facts, const MeasureTask& task) {
    JudgedLine line;
    line.criterion = Criterion::measure;
    line.edge = task.line;
    const double least = task.wearer_mm + task.ease_mm[0];
    const double most = task.wearer_mm + task.ease_mm[1];
    line.what = "the " + task.line + " all round";
    line.expected_words = length_words(facts, least) + " to " + length_words(facts, most);
    line.remedy = "Measure the wearer and the pattern again: the ease is to be from " +
                  length_words(facts, task.ease_mm[0]) + " to " + length_words(facts, task.ease_mm[1]) + ".";
    try {
        const Pattern drawn = checked_draft(facts);
        if (drawn.pieces.empty()) throw UnknownName("line", task.line, {}, "the draft");
        const MeasuredLine measured = measure_line(drawn, task.line);
        const double found = measured.total_mm - explained_by_runs(facts, task.line, measured);
        const double expected = std::clamp(found, least, most);
        return length_line(facts, std::move(line), {expected, measured.total_mm, found - expected});
    } catch (const UnknownName&) {
    } catch (const Impossible&) {
    }
    const std::string expected = line.expected_words;
    return fault_line(std::move(line), expected, "no line of that name that can be measured");
}

}  // namespace

ScoredLines borne_size(const DraftFacts& facts, Criterion criterion) {
    if (!facts.draft.scale.is_off) return {};
    for (const Criterion first : {Criterion::size, Criterion::lengths, Criterion::measure})
        if (facts.plan->asks(first))
            return first == criterion ? ScoredLines{size_line(facts, criterion)} : ScoredLines{};
    return {};
}

ScoredLines size_lines(const DraftFacts& facts, const MarkedTask&) {
    return {size_line(facts, Criterion::size)};
}

ScoredLines allowances_lines(const DraftFacts& facts, const MarkedTask& task) {
    ScoredLines lines;
    const Pattern& ruled = facts.plan->ruled[task.index];
    for (std::size_t i = 0; i < facts.plan->finished.size(); ++i)
        add_allowances_of(lines, facts, i, ruled.pieces[i]);
    return lines;
}

ScoredLines measure_lines(const DraftFacts& facts, const MarkedTask& task) {
    ScoredLines lines = borne_size(facts, Criterion::measure);
    lines.push_back(measure_of(facts, std::get<MeasureTask>(task.task.what)));
    return lines;
}

}  // namespace dartwright
