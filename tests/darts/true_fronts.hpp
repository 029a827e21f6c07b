#pragma once

// Fronts with nothing to find, for operations to meet kinds of darts on, and what is kept on them.

#include <algorithm>
#include <cmath>

#include "darts/plain_front.hpp"
#include "dartwright/checks/check.hpp"
#include "dartwright/darts/pivot.hpp"

namespace dartwright::true_fronts {

using Names = std::vector<std::string>;

inline const Point bust{100, 200};

// A front of straight edges with nothing to find. Each leg of its darts is square to the edge at its mouth,
// and no point is backed off, so that any mouth closes smooth (exact geometry). The shoulder dart aims at
// the waist dart.
inline constexpr const char* true_front = R"({
  "dartwright": 1, "name": "true front", "unit": "mm",
  "pieces": [{
    "name": "front",
    "cut": {"quantity": 2},
    "grain": {"from": [20, 50], "to": [20, 300], "along": "centre front"},
    "outline": {"start": [0, 8], "items": [
      {"edge": "waist", "to": [80, 0]},
      {"dart": "waist dart", "point": [100, 200], "to": [120, 0], "press": "centre front"},
      {"edge": "waist", "to": [200, 8]},
      {"edge": "side", "to": [200, 300]},
      {"edge": "armhole", "to": [150, 397]},
      {"edge": "shoulder", "to": [120, 400]},
      {"dart": "shoulder dart", "point": [100, 200], "to": [80, 400], "press": "neck"},
      {"edge": "shoulder", "to": [60, 398]},
      {"edge": "neck", "to": [0, 340]},
      {"edge": "centre front", "to": [0, 8]}
    ]},
    "notches": [{"edge": "side", "from": "waist", "at": 70, "kind": "single"},
                {"edge": "centre front", "from": "waist", "at": 120, "kind": "double"},
                {"edge": "waist", "from": "side", "at": 30, "kind": "single"}]
  }],
  "seams": []
})";

inline Pattern two_darts() {
    return read_pattern(true_front, "true-front.json");
}
inline Piece& piece_of(Pattern& pattern) {
    return pattern.pieces[0];
}
inline DartItem& dart_of(Pattern& pattern, const std::string& name) {
    Piece& piece = piece_of(pattern);
    return *piece.outline.items[dart_named(piece, name)].as_dart();
}

// The same front without its shoulder dart: the shoulder is one straight edge.
inline Pattern one_dart() {
    Pattern pattern = two_darts();
    std::vector<OutlineItem>& items = piece_of(pattern).outline.items;
    items.erase(items.begin() + 5, items.begin() + 7);
    return pattern;
}

inline const double waist_angle = 2 * std::atan2(20, 200);

inline PivotRequest moving(const std::string& dart, const std::string& to) {
    PivotRequest request;
    request.piece = "front";
    request.dart = dart;
    request.to = to;
    return request;
}

inline Names checks_of(const Pattern& pattern) {
    Names names;
    for (const Finding& finding : check(pattern).findings) names.push_back(finding.check);
    return names;
}

inline bool is_said(const std::vector<std::string>& notes, const std::string& words) {
    return std::any_of(notes.begin(), notes.end(),
                       [&](const std::string& note) { return note.find(words) != note.npos; });
}

inline double sum_of_angles(const Pattern& pattern) {
    double sum = 0;
    const Outline& outline = pattern.pieces[0].outline;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        if (outline.items[i].as_dart()) sum += figures_of(outline, i).angle_rad;
    }
    return sum;
}

// Sewn lengths, angles, cloth, notches.
inline void expect_kept(const Pattern& before, const Pattern& after) {
    const std::vector<Run> runs = runs_of(after.pieces[0].outline);
    ASSERT_EQ(runs.size(), runs_of(before.pieces[0].outline).size());
    for (const Run& run : runs_of(before.pieces[0].outline)) {
        const Run* same = find_run(runs, run.edge);
        ASSERT_NE(same, nullptr) << run.edge;
        EXPECT_NEAR(same->length, run.length, 1e-9) << run.edge;
    }
    EXPECT_NEAR(sum_of_angles(after), sum_of_angles(before), 1e-12);
    EXPECT_NEAR(cloth_area(after.pieces[0]), cloth_area(before.pieces[0]), 1e-6);
    EXPECT_EQ(after.pieces[0].notches, before.pieces[0].notches);
}

inline void expect_near(Point a, Point b, const std::string& what) {
    EXPECT_LE(distance(a, b), 1e-9) << what << " (" << a.x << ", " << a.y << ")";
}

}  // namespace dartwright::true_fronts
