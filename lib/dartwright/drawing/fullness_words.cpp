#include "dartwright/drawing/fullness_words.hpp"

#include <array>

#include "dartwright/words/lengths.hpp"

namespace dartwright {
namespace {

std::string marked_end_words(const Run& run, const StretchEnd& end, RunEnd nearer) {
    if (end.kind == StretchEnd::Kind::notch) return "the " + ordinal_words(end.notch) + " notch";
    return end_words(run, nearer);
}

std::string counted_from(const Run& run, const StretchEnds& ends) {
    const bool is_notch_first = ends.from.kind == StretchEnd::Kind::notch;
    const bool is_notch_last = ends.to.kind == StretchEnd::Kind::notch;
    // An end that is named already says from where the notches are counted, if it is the one they begin at.
    if (!is_notch_first && ends.from.kind == StretchEnd::Kind::run_end) return "";
    return ends.notches > 1 && (is_notch_first || is_notch_last) && !run.before.empty() &&
                   run.before != run.edge
               ? ", counted from " + end_words(run, RunEnd::start)
               : "";
}

std::string measured_place(const Run& run, const FullStretch& stretch, Unit unit) {
    const std::string from = ruler_words(stretch.from_mm, unit);
    return "from " + from + " to " + ruler_words(stretch.to_mm, unit) + " from " +
           end_words(run, RunEnd::start);
}

}  // namespace

std::string ordinal_words(std::size_t number) {
    static constexpr std::array<const char*, 9> words{"first", "second",  "third",  "fourth", "fifth",
                                                      "sixth", "seventh", "eighth", "ninth"};
    if (number >= 1 && number <= words.size()) return words[number - 1];
    const std::size_t tens = number / 10 % 10;
    const std::size_t last = tens == 1 ? 0 : number % 10;
    return std::to_string(number) + (last == 1 ? "st" : last == 2 ? "nd" : last == 3 ? "rd" : "th");
}

std::string end_words(const Run& run, RunEnd end) {
    const std::string name = name_of_end(run, end);
    if (name == "start" || name == "end" || name.empty())
        return end == RunEnd::start ? "one end" : "the other end";
    return "the " + name + " end";
}

std::string fullness_verb(const FullStretch& stretch) {
    return stretch.is_gathered() ? "gather" : "ease in";
}

std::string fullness_figures(const FullStretch& stretch, Unit unit) {
    if (!stretch.is_gathered()) return "ease in " + length_words(stretch.fullness_mm, unit);
    const std::string flat = ruler_figure(stretch.flat_mm(), unit);
    return "gather " + flat + " to " + ruler_words(stretch.sewn_mm(), unit);
}

std::string fullness_place(const Piece& piece, const Run& run, const FullStretch& stretch, Unit unit) {
    using Kind = StretchEnd::Kind;
    const StretchEnds ends = ends_of_stretch(piece, run, stretch);
    if (ends.from.kind == Kind::unmarked || ends.to.kind == Kind::unmarked) {
        const bool is_whole = stretch.sewn_mm() >= run.length - notch_marks_mm;
        return is_whole ? "along the whole edge" : measured_place(run, stretch, unit);
    }
    if (ends.from.kind == Kind::run_end && ends.to.kind == Kind::run_end) return "along the whole edge";
    const bool are_both_notches = ends.from.kind == Kind::notch && ends.to.kind == Kind::notch;
    if (are_both_notches && ends.notches == 2) return "between the notches";
    return "between " + marked_end_words(run, ends.from, RunEnd::start) + " and " +
           marked_end_words(run, ends.to, RunEnd::end) + counted_from(run, ends);
}

std::vector<std::string> taken_in_words(const Piece& piece, const std::vector<Run>& runs, Unit unit) {
    std::vector<std::string> lines;
    for (const FullStretch& stretch : full_stretches(piece, runs)) {
        const std::string figures = fullness_figures(stretch, unit);
        const Run& run = *find_run(runs, stretch.edge);
        lines.push_back(stretch.edge + ": " + figures + " " + fullness_place(piece, run, stretch, unit));
    }
    for (const OutlineItem& item : piece.outline.items) {
        const DartItem* dart = item.as_dart();
        if (dart && dart->stitched)
            lines.push_back(dart->name + ": a tuck, stitched " + ruler_words(*dart->stitched, unit));
    }
    return lines;
}

}  // namespace dartwright
