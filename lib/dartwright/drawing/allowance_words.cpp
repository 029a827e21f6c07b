#include "dartwright/drawing/allowance_words.hpp"

#include <algorithm>
#include <map>
#include <optional>

#include "dartwright/drawing/choice.hpp"
#include "dartwright/drawing/text_box.hpp"
#include "dartwright/pattern/allowance.hpp"
#include "dartwright/words/lengths.hpp"

namespace dartwright {

namespace {

/// The edges of one width, or without one.
struct WidthAndEdges {
    std::optional<double> width_mm;
    std::vector<std::string> edges;
    double length_mm = 0;
};

void add_edge(std::vector<WidthAndEdges>& all, const RunWidth& part, const std::string& edge) {
    const auto same = std::find_if(all.begin(), all.end(), [&](const WidthAndEdges& each) {
        return each.width_mm.has_value() == part.width_mm.has_value() &&
               (!part.width_mm || std::abs(*each.width_mm - *part.width_mm) < reads_alike_mm);
    });
    WidthAndEdges& found = same == all.end() ? all.emplace_back() : *same;
    found.width_mm = part.width_mm;
    found.length_mm += part.to_mm - part.from_mm;
    if (found.edges.empty() || found.edges.back() != edge) found.edges.push_back(edge);
}

bool is_none(const WidthAndEdges& each) {
    return each.width_mm && *each.width_mm < reads_alike_mm;
}

/// Words that stay together in a line of the label: who reads `side 1.8 cm` under `left` takes it for
/// another edge. What is wider than a line is parted as any words are.
std::string together(const std::string& words) {
    constexpr double room_for_a_comma = 0.5;
    if (text_width(words, 1) > widest_label_in_sizes - room_for_a_comma) return words;
    std::string whole;
    for (const char letter : words) whole += letter == ' ' ? std::string("\u00a0") : std::string(1, letter);
    return whole;
}

std::string names_in_line(const std::vector<std::string>& names) {
    std::string words;
    for (const std::string& name : names) words += (words.empty() ? "" : ", ") + together(name);
    return words;
}

// An edge of two widths stands with each as a part of it.
void name_parts(std::vector<WidthAndEdges>& all) {
    std::map<std::string, int> times;
    for (const WidthAndEdges& each : all)
        for (const std::string& edge : each.edges) ++times[edge];
    for (WidthAndEdges& each : all)
        for (std::string& edge : each.edges)
            if (times[edge] > 1) edge = "part of " + edge;
}

std::vector<WidthAndEdges> widths_of(const CuttingPiece& cut) {
    std::vector<WidthAndEdges> all;
    for (const Run& run : runs_of(cut.piece.outline)) {
        if (is_fold_edge(cut.piece, run.edge)) continue;
        for (RunWidth part : widths_along(cut.piece, run)) {
            if (!part.width_mm) part.width_mm = cut.undecided_mm;
            add_edge(all, part, run.edge);
        }
    }
    return all;
}

/// `hem 4 cm`, `neck, waist none`
std::string width_of_edges(const WidthAndEdges& each, Unit unit) {
    std::vector<std::string> names = each.edges;
    names.back() += " " + (is_none(each) ? "none" : width_words(*each.width_mm, unit));
    return names_in_line(names);
}

std::string list_of_widths(const std::vector<WidthAndEdges>& all, Unit unit, std::size_t first) {
    std::string words;
    for (std::size_t i = first; i < all.size(); ++i)
        words += (words.empty() ? "" : "; ") + width_of_edges(all[i], unit);
    return words;
}

std::vector<WidthAndEdges> none_last(std::vector<WidthAndEdges> all) {
    std::stable_partition(all.begin(), all.end(), [](const WidthAndEdges& each) { return !is_none(each); });
    return all;
}

/// What is decided, the width of the longest stretch of edges first. A few edges are all named; where one
/// width has more than a reader keeps in mind, the others are named.
std::string decided_words(const std::vector<WidthAndEdges>& all, Unit unit, bool is_all) {
    constexpr std::size_t most_named = 3;
    if (all.empty() || (all.size() == 1 && is_none(all.front())))
        return is_all || all.empty() ? "no allowance" : "no allowance at " + names_in_line(all.front().edges);
    const WidthAndEdges& longest = all.front();
    if (is_none(longest)) {
        const bool is_short = longest.edges.size() <= most_named;
        const std::vector<WidthAndEdges> wide(all.begin() + 1, all.end());
        return "allowance: " + list_of_widths(wide, unit, 0) + "; " +
               (is_short || !is_all ? width_of_edges(longest, unit) : "none elsewhere");
    }
    const std::string width = width_words(*longest.width_mm, unit);
    if (all.size() == 1 && is_all) return "allowance " + width + " all round";
    if (longest.edges.size() <= most_named) return "allowance: " + list_of_widths(none_last(all), unit, 0);
    if (all.size() == 1) return "allowance " + width + " everywhere else";
    return "allowance " + width + " everywhere but: " + list_of_widths(all, unit, 1);
}

}  // namespace

std::vector<std::string> allowance_words(const CuttingPiece& piece, Unit unit) {
    std::vector<WidthAndEdges> all = widths_of(piece);
    std::stable_sort(all.begin(), all.end(), [](const WidthAndEdges& a, const WidthAndEdges& b) {
        return in_steps(a.length_mm) > in_steps(b.length_mm);
    });
    name_parts(all);
    std::vector<std::string> lines;
    for (const WidthAndEdges& each : all)
        if (!each.width_mm) lines.push_back("not decided, cut without: " + names_in_line(each.edges));
    std::erase_if(all, [](const WidthAndEdges& each) { return !each.width_mm; });
    const bool is_all = lines.empty();
    if (all.empty() && !is_all) return {"allowance " + lines.front()};
    lines.insert(lines.begin(), decided_words(all, unit, is_all));
    return lines;
}

}  // namespace dartwright
