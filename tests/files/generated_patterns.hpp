#pragma once

// Generated patterns: every key, shapes of every kind, names in several scripts, coordinates with all their
// digits or few. Pieces are stars about a centre, so that their outlines run anticlockwise.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "dartwright/pattern/pattern.hpp"
#include "dartwright/words/converted_length.hpp"
#include "geometry/generators.hpp"
#include "support/evenly.hpp"

namespace dartwright::generated {

/// A number as a file could hold it, in millimetres: a few digits, or all of them.
inline double file_length(Unit unit, double low_mm, double high_mm) {
    const double low = low_mm / mm_in(unit);
    const double high = high_mm / mm_in(unit);
    const double value = low + (high - low) * *testing::evenly(0, 1'000'003) / 1'000'003.0;
    const bool is_short = *rc::gen::arbitrary<bool>();
    return to_mm(is_short ? std::round(value * 100) / 100 : value, unit);
}
inline Point file_point(Unit unit, double size_mm) {
    const double x = file_length(unit, -size_mm, size_mm);
    return {x, file_length(unit, -size_mm, size_mm)};
}

inline std::string file_name(const std::string& kind, std::size_t number) {
    const std::string ornament = *rc::gen::element<std::string>("", " à la reine", " «вытачка»",
                                                                " \"quoted\"", " back\\slash", " 前", " ~/");
    return kind + " " + std::to_string(number) + ornament;
}

struct Star {
    Unit unit;
    Point centre;
    /// The place in a direction, drawn to the file's numbers.
    Point at(double angle, double radius) const {
        const auto drawn = [&](double mm) { return to_mm(from_mm(mm, unit), unit); };
        return {drawn(centre.x + radius * std::cos(angle)), drawn(centre.y + radius * std::sin(angle))};
    }
};

inline OutlineItem star_item(const Star& star, const std::string& edge, double from, double to,
                             double radius) {
    OutlineItem item{EdgeItem{edge, StraightShape{}, 0}, star.at(to, radius)};
    EdgeItem& drawn = *item.as_edge();
    const double third = (to - from) / 3;
    const int kind = *testing::evenly(0, 3);
    if (kind == 1)
        drawn.shape = CubicShape{{star.at(from + third, radius * 1.1), star.at(to - third, radius * 1.1)}};
    if (kind == 2)
        drawn.shape = SplineShape{{star.at(from + third, radius * 1.05), star.at(to - third, radius)}};
    if (*testing::evenly(0, 4) == 0) drawn.fullness = file_length(star.unit, 0.1, radius * 0.01);
    return item;
}

inline OutlineItem star_dart(const Star& star, const std::string& name, double from, double to, double radius,
                             const std::string& press) {
    const double middle = (from + to) / 2;
    DartItem dart{name, star.at(middle, radius / 2), {}, {}, {}, {}};
    if (*rc::gen::arbitrary<bool>()) dart.pivot = star.at(middle, radius / 3);
    if (*rc::gen::arbitrary<bool>()) dart.back_off = file_length(star.unit, 0, 50);
    if (*rc::gen::arbitrary<bool>())
        dart.legs = {{{star.at(from, radius * 0.9), star.at(middle, radius * 0.6)},
                      {star.at(middle, radius * 0.6), star.at(to, radius * 0.9)}}};
    if (*rc::gen::arbitrary<bool>()) dart.press = press;
    if (*rc::gen::arbitrary<bool>()) dart.stitched = file_length(star.unit, radius * 0.05, radius * 0.2);
    return {dart, star.at(to, radius)};
}

/// Every edge in several items, so that even one edge goes round the centre, with darts within the edges and
/// between them.
inline Outline star_outline(const Star& star, double radius, const std::vector<std::string>& edges) {
    constexpr int parts = 4;
    const double step = 2 * pi / static_cast<double>(edges.size() * parts);
    std::vector<OutlineItem> items;
    std::size_t darts = 0;
    for (std::size_t i = 0; i < edges.size(); ++i) {
        for (int part = 0; part < parts; ++part) {
            const double from = static_cast<double>(i * parts + static_cast<std::size_t>(part)) * step;
            const bool has_dart = *testing::evenly(0, 4) == 0;
            const double end = from + step * (has_dart ? 0.9 : 1);
            items.push_back(star_item(star, edges[i], from, end, radius));
            if (!has_dart) continue;
            const std::string name = file_name("dart", darts++);
            items.push_back(star_dart(star, name, end, from + step, radius, edges.front()));
        }
    }
    Outline outline{star.at(0, radius), std::move(items)};
    outline.items.back().to = outline.start;
    return outline;
}

/// The name of the end of a run in a piece with the edges in order.
inline std::string end_name(const std::vector<std::string>& edges, std::size_t edge) {
    const bool at_start = *rc::gen::arbitrary<bool>();
    if (edges.size() < 3) return at_start ? "start" : "end";
    return at_start ? edges[(edge + edges.size() - 1) % edges.size()] : edges[(edge + 1) % edges.size()];
}

struct GeneratedPiece {
    Piece piece;
    std::vector<std::string> edges;
};
inline GeneratedPiece piece(Unit unit, std::size_t number) {
    GeneratedPiece out;
    const auto count = static_cast<std::size_t>(*testing::evenly(1, 7));
    for (std::size_t i = 0; i < count; ++i) out.edges.push_back(file_name("edge", i));
    const auto some_edge = [&] {
        return static_cast<std::size_t>(*testing::evenly<int>(0, static_cast<int>(count)));
    };
    Piece& made = out.piece;
    made.name = file_name("piece", number);
    made.outline = star_outline({unit, file_point(unit, 500)}, file_length(unit, 100, 900), out.edges);
    if (*rc::gen::arbitrary<bool>()) {
        made.cut = Cut{*testing::evenly(1, 9), "", *rc::gen::arbitrary<bool>(), {}};
        const std::size_t fold = some_edge();
        if (*rc::gen::arbitrary<bool>()) made.cut->fold = out.edges[fold];
        if (!made.cut->fold.empty() && *rc::gen::arbitrary<bool>())
            made.cut->ends = {{end_name(out.edges, fold), CornerIs::free}};
    }
    if (*rc::gen::arbitrary<bool>()) {
        const Point from = file_point(unit, 500);
        made.grain =
            Grain{from, from + Vector{0, 100}, *rc::gen::arbitrary<bool>() ? out.edges[some_edge()] : ""};
        made.grain->to.y = to_mm(from_mm(made.grain->to.y, unit), unit);
    }
    if (*rc::gen::arbitrary<bool>())
        made.double_darts.push_back({"double dart",
                                     file_point(unit, 90),
                                     file_point(unit, 90),
                                     {{file_point(unit, 90), file_point(unit, 90)}},
                                     out.edges[some_edge()]});
    for (int i = *testing::evenly(0, 4); i > 0; --i) {
        const std::size_t edge = some_edge();
        made.notches.push_back({out.edges[edge], end_name(out.edges, edge), file_length(unit, 0, 300),
                                *rc::gen::element(NotchKind::single, NotchKind::double_, NotchKind::triple)});
    }
    for (std::size_t i = 0; i < count; ++i) {
        const int kind = *testing::evenly(0, 3);
        if (kind == 1) made.allowance.emplace_back(out.edges[i], file_length(unit, 0, 40));
        if (kind == 2) {
            const AllowanceStretch stretch{end_name(out.edges, i), file_length(unit, 0, 40),
                                           file_length(unit, 50, 90), file_length(unit, 0, 40)};
            made.allowance.emplace_back(out.edges[i], std::vector<AllowanceStretch>{stretch});
        }
    }
    if (*rc::gen::arbitrary<bool>())
        made.marks.push_back({DrillMark{file_point(unit, 500)}, file_name("drill", 0)});
    if (*rc::gen::arbitrary<bool>())
        made.marks.push_back({LineMark{{file_point(unit, 500), file_point(unit, 500), file_point(unit, 500)}},
                              file_name("line", 0)});
    return out;
}

inline SeamSide side(const std::vector<GeneratedPiece>& pieces) {
    SeamSide parts;
    for (int i = *testing::evenly(1, 4); i > 0; --i) {
        const auto& of =
            pieces[static_cast<std::size_t>(*testing::evenly<int>(0, static_cast<int>(pieces.size())))];
        const auto edge =
            static_cast<std::size_t>(*testing::evenly<int>(0, static_cast<int>(of.edges.size())));
        parts.push_back(
            {of.piece.name, of.edges[edge], end_name(of.edges, edge), *rc::gen::arbitrary<bool>()});
    }
    return parts;
}

inline Pattern pattern(Unit unit) {
    Pattern made;
    made.name = file_name("pattern", 0);
    made.unit = unit;
    std::vector<GeneratedPiece> pieces;
    const auto count = static_cast<std::size_t>(*testing::evenly(1, 4));
    for (std::size_t i = 0; i < count; ++i) {
        pieces.push_back(piece(unit, i));
        made.pieces.push_back(pieces.back().piece);
    }
    for (int i = *testing::evenly(0, 4); i > 0; --i) {
        Seam seam{file_name("seam", made.seams.size()), {{side(pieces), side(pieces)}}, {}, {}};
        if (*rc::gen::arbitrary<bool>())
            seam.ease = Ease{*testing::evenly(1, 3), file_length(unit, 0, 30), true};
        if (*rc::gen::arbitrary<bool>()) seam.ends = {{seam.joins[0][0].from, CornerIs::smooth}};
        made.seams.push_back(seam);
    }
    for (const ToleranceName& tolerance : tolerance_names())
        if (*rc::gen::arbitrary<bool>())
            made.tolerances[tolerance.name] =
                tolerance.is_angle ? *testing::evenly(0, 1800) / 10.0 : file_length(unit, 0, 9);
    for (int i = *testing::evenly(0, 3); i > 0; --i)
        made.made.push_back(
            {file_name("operation", 1), {{"to", file_name("place", 2)}, {"a", ""}, {"share", "50%"}}});
    return made;
}

}  // namespace dartwright::generated
