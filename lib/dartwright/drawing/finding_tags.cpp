#include "dartwright/drawing/finding_tags.hpp"

#include <algorithm>

#include "dartwright/drawing/table_look.hpp"
#include "dartwright/geometry/elementary.hpp"

namespace dartwright {

namespace {

constexpr double diamond_half = 7;
constexpr double spot_radius = 1.6;
constexpr double ring_radius = 5.2;
constexpr double tag_half = 6;  // of the square kept clear for a tag

bool is_on_piece(const Finding& finding, const std::string& piece) {
    return finding.piece == piece && finding.at && is_finite(*finding.at);
}

DrawnText words_at(Point at, double size_mm, Colour colour, const std::string& words) {
    DrawnText text;
    text.words = words;
    text.at = at;
    text.size_mm = size_mm;
    text.colour = colour;
    return text;
}

void add_tag(DrawnGroup& group, Point centre, std::size_t number, Severity severity) {
    const bool is_fault = severity == Severity::fault;
    DrawnPath shape = circle(centre, ring_radius);
    if (is_fault) {
        const double r = diamond_half;
        shape = polygon(
            {centre + Vector{r, 0}, centre + Vector{0, r}, centre - Vector{r, 0}, centre - Vector{0, r}},
            look::rust);
    } else {
        shape.fill = look::paper;
    }
    shape.stroke = look::solid(look::rust, 0.8);
    group.items.push_back(shape);
    DrawnText text =
        words_at({}, look::small_size, is_fault ? look::paper : look::rust, std::to_string(number));
    text.is_bold = true;
    group.items.push_back(centred(text, centre, 0));
}

TurnedBox box_around(Point centre) {
    return {centre, {1, 0}, tag_half, tag_half};
}

/// Where the tag of a place goes: as near as it meets nothing.
Point tag_place(Point at, const TakenPlaces& taken) {
    Point best = at;
    std::size_t least = 0;
    bool has_best = false;
    for (const double off : {13.0, 18.0, 24.0, 32.0, 42.0, 54.0, 68.0}) {
        for (int step = 0; step < 16; ++step) {
            const double angle = pi / 8 * ((step * 7) % 16) + pi / 4;  // spread about, upper right first
            const Point centre = at + off * Vector{cosine_of(angle), sine_of(angle)};
            // Over words is worse than over lines, both for the tag and for its leader.
            const std::size_t met =
                taken.meetings(box_around(centre), look::clear_of_lines) + 3 * taken.boxes_met(at, centre);
            if (!has_best || met < least) {
                best = centre;
                least = met;
                has_best = true;
            }
            if (met == 0) return centre;
        }
    }
    return best;
}

std::string counted(std::size_t count, const std::string& one) {
    return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
}

std::string heading(const std::vector<Finding>& findings) {
    const auto notes = static_cast<std::size_t>(std::count_if(
        findings.begin(), findings.end(), [](const Finding& f) { return f.severity == Severity::note; }));
    std::string words;
    if (notes < findings.size()) words = counted(findings.size() - notes, "fault") + " (diamonds)";
    if (notes > 0 && !words.empty()) words += ", ";
    if (notes > 0) words += counted(notes, "note") + " (rings)";
    return words;
}

}  // namespace

void take_places_of(const std::vector<Finding>& findings, const std::string& piece, TakenPlaces& taken) {
    for (const Finding& finding : findings) {
        if (!is_on_piece(finding, piece)) continue;
        const Vector half{spot_radius, 0};
        taken.add(*finding.at - half, *finding.at + half);
    }
}

DrawnGroup tags_on_piece(const std::vector<Finding>& findings, const std::string& piece, TakenPlaces& taken) {
    DrawnGroup group{"findings", {}, {}};
    DrawnGroup tags{"tags", {}, {}};
    for (std::size_t i = 0; i < findings.size(); ++i) {
        const Finding& finding = findings[i];
        if (!is_on_piece(finding, piece)) continue;
        const Point centre = tag_place(*finding.at, taken);
        taken.add(box_around(centre));
        taken.add(*finding.at, centre);
        group.items.push_back(polyline({*finding.at, centre}, look::solid(look::rust, 0.6)));
        DrawnPath spot = circle(*finding.at, spot_radius);
        spot.stroke = look::solid(look::rust, 0.8);
        group.items.push_back(spot);
        add_tag(tags, centre, i + 1, finding.severity);
    }
    if (!tags.items.empty()) group.groups.push_back(tags);
    return group;
}

DrawnGroup list_of_findings(const std::vector<Finding>& findings, double width_mm) {
    DrawnGroup group{"list of findings", {}, {}};
    constexpr double indent = 18;
    constexpr double size = look::edge_size;
    constexpr double step = look::line_step_em * size;
    double y = -size;
    DrawnText head = words_at({0, y}, size, look::ink, heading(findings));
    head.is_bold = true;
    group.items.push_back(head);
    y -= 2 * step;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        const Finding& finding = findings[i];
        const double rise = size * (text_ascent_em - text_descent_em) / 2;
        add_tag(group, {diamond_half, y + rise}, i + 1, finding.severity);
        for (const std::string& line : wrapped(finding.message, size, width_mm - indent)) {
            group.items.push_back(words_at({indent, y}, size, look::ink, line));
            y -= step;
        }
        for (const std::string& line : wrapped(finding.remedy, size, width_mm - indent)) {
            group.items.push_back(words_at({indent, y}, size, look::pencil, line));
            y -= step;
        }
        y -= std::max(0.6 * step, 2 * diamond_half - step);
    }
    return group;
}

}  // namespace dartwright
