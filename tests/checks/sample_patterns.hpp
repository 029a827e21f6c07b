#pragma once

// Small patterns of the workshop, built in code: skirt panels for a chorus and a bodice with a waist dart.
// Each is true as it stands; tests put one thing wrong.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "dartwright/checks/check.hpp"
#include "dartwright/files/pattern_file.hpp"

namespace dartwright::sample {

inline OutlineItem line(std::string edge, Point to) {
    return {EdgeItem{std::move(edge), StraightShape{}, 0}, to};
}
inline OutlineItem curve(std::string edge, Point to, Point first, Point second) {
    return {EdgeItem{std::move(edge), CubicShape{{first, second}}, 0}, to};
}

struct PanelSize {
    double width = 200;
    double height = 400;
};
/// A panel with edges hem, side, waist and `centre`, cut on the fold there.
inline Piece panel(const std::string& name, const std::string& centre, PanelSize size = {}) {
    Piece piece;
    piece.name = name;
    piece.cut = Cut{1, centre, false, {}};
    piece.grain = Grain{{50, 80}, {50, 300}, centre};
    piece.outline.start = {0, 0};
    piece.outline.items = {line("hem", {size.width, 0}), line("side", {size.width, size.height}),
                           line("waist", {0, size.height}), line(centre, {0, 0})};
    return piece;
}

inline Seam side_seam() {
    Seam seam;
    seam.name = "side";
    seam.joins[0] = {{"front", "side", "hem", false}};
    seam.joins[1] = {{"back", "side", "hem", false}};
    return seam;
}

/// Two panels joined at the side.
inline Pattern skirt(PanelSize front = {}, PanelSize back = {}) {
    Pattern pattern;
    pattern.name = "chorus skirt";
    pattern.pieces = {panel("front", "centre front", front), panel("back", "centre back", back)};
    pattern.seams = {side_seam()};
    return pattern;
}

inline DartItem waist_dart() {
    DartItem dart;
    dart.name = "waist dart";
    dart.point = {100, 150};
    return dart;
}

/// A bodice front whose waist is square to both legs of its dart at the mouth (80, 0), (120, 0).
inline Pattern bodice() {
    Piece piece;
    piece.name = "front";
    piece.cut = Cut{2, "", false, {}};
    piece.grain = Grain{{30, 50}, {30, 300}, "centre front"};
    piece.outline.start = {0, 10};
    piece.outline.items = {curve("waist", {80, 0}, {30, 10}, {50, 4}),
                           {waist_dart(), {120, 0}},
                           curve("waist", {200, 10}, {150, 4}, {170, 10}),
                           line("side", {200, 350}),
                           line("top", {0, 350}),
                           line("centre front", {0, 10})};
    Pattern pattern;
    pattern.name = "chorus bodice";
    pattern.pieces = {piece};
    return pattern;
}
inline DartItem& dart_of_bodice(Pattern& pattern) {
    return *pattern.pieces[0].outline.items[1].as_dart();
}

inline std::vector<std::string> checks_of(const CheckReport& report) {
    std::vector<std::string> names;
    for (const Finding& finding : report.findings) names.push_back(finding.check);
    return names;
}
using Names = std::vector<std::string>;

/// The only finding of the pattern; fails and gives an empty one if there is not exactly one.
inline Finding only_finding(const Pattern& pattern) {
    const CheckReport report = check(pattern);
    EXPECT_EQ(report.findings.size(), 1u) << ::testing::PrintToString(checks_of(report));
    return report.findings.size() == 1 ? report.findings[0] : Finding{};
}

inline Pattern fixture(const std::string& name) {
    return read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/" + name);
}

}  // namespace dartwright::sample
