// The figures of docs/cutting-corners.md, worked out by hand: exact geometry. The slanted edges of its
// patterns run as the long sides of right-angled triangles of whole numbers (3, 4, 5; 5, 12, 13; 7, 24, 25;
// 9, 40, 41).

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>

#include "dartwright/cutting/applied_rule.hpp"
#include "dartwright/cutting/cutting_line.hpp"
#include "dartwright/files/pattern_file.hpp"

namespace dartwright {
namespace {

const std::string root = DARTWRIGHT_SOURCE_DIR;

/// A section of the page with the pattern of its picture.
class Corners : public ::testing::Test {
  protected:
    void read(const std::string& name, const std::string& heading) {
        pattern_ = read_pattern_file(root + "/fixtures/corners/" + name + ".json");
        std::ifstream file(root + "/docs/cutting-corners.md");
        const std::string page{std::istreambuf_iterator<char>(file), {}};
        const std::size_t start = page.find("\n## " + heading + "\n");
        ASSERT_NE(start, std::string::npos) << heading;
        section_ = page.substr(start, page.find("\n## ", start + 1) - start);
    }

    CuttingLine line_of(const std::string& piece) const {
        for (const Piece& each : pattern_.pieces)
            if (each.name == piece) return cutting_line(each, cutting_request(pattern_, each));
        throw std::runtime_error("no piece " + piece);
    }

    /// As the figure stands in the page, to a tenth of a millimetre.
    bool says(double mm) const {
        char words[32];
        std::snprintf(words, sizeof words, " %.1f mm", mm);
        return section_.find(words) != std::string::npos;
    }
    /// A row of the section's table that has the words in this order.
    bool has_row(const std::string& first, const std::string& second) const {
        const std::size_t row = section_.find("\n| " + first);
        if (row == std::string::npos) return false;
        const std::size_t end = section_.find('\n', row + 1);
        return section_.substr(row, end - row).find("| " + second) != std::string::npos;
    }

    Pattern pattern_;
    std::string section_;
};

bool has_point(const CuttingLine& line, Point p) {
    return std::any_of(line.points.begin(), line.points.end(),
                       [&](Point each) { return distance(each, p) < 1e-9; });
}

bool has_corner(const CuttingLine& line, const std::string& first, CornerKind kind, bool is_step) {
    return std::any_of(line.corners.begin(), line.corners.end(), [&](const CutCorner& corner) {
        return corner.edges[0] == first && corner.kind == kind && corner.is_step == is_step;
    });
}

// 20 below and 40 beside a square corner. In the other piece the line 20 beside an edge along (3, 4)
// comes down to the hem's at (-40, -20), and beyond the hem at (135, -20).
TEST_F(Corners, that_are_met) {
    read("met", "Met");
    const CuttingLine widths = line_of("of two widths");
    EXPECT_TRUE(has_point(widths, {160, -20}));
    EXPECT_TRUE(says(std::hypot(40, 20)));
    const CuttingLine angles = line_of("of two angles");
    EXPECT_TRUE(has_point(angles, {-40, -20}));
    EXPECT_TRUE(has_point(angles, {135, -20}));
    EXPECT_TRUE(has_row("of two angles, hem and other side", "20 and 20 mm | 53.1° | 44.7 mm"));
    EXPECT_TRUE(has_row("of two angles, hem and side", "20 and 20 mm | 126.9° | 22.4 mm"));
    EXPECT_NEAR(std::hypot(10, 20), 22.4, 0.05);
    EXPECT_NEAR(degrees(std::acos(0.6)), 53.1, 0.05);
    EXPECT_NEAR(degrees(2 * std::asin(1 / sharpest_corner)), 29.0, 0.05);
    EXPECT_NE(section_.find("sharper than 29.0°"), std::string::npos);
}

// The tops lie along (4, 3), so that their lines 12 out are 15 higher, straight above the seam.
TEST_F(Corners, that_are_squared_off_lie_on_each_other) {
    read("squared", "Squared off");
    const CuttingLine side = line_of("side panel");
    EXPECT_TRUE(has_point(side, {100, 115}));
    EXPECT_TRUE(has_point(side, {110, 115}));
    const CuttingLine centre = line_of("centre panel");
    EXPECT_TRUE(has_point(centre, {0, 115}));
    EXPECT_TRUE(has_point(centre, {-10, 115}));
    EXPECT_TRUE(has_row("side panel", "53.1° | 15.0 mm | 22.5 mm"));
    EXPECT_TRUE(has_row("centre panel", "126.9° | 15.0 mm | 7.5 mm"));
    // 10 farther along (4, 3) is 7.5 higher.
    pattern_.cutting->corners.clear();
    EXPECT_TRUE(has_point(line_of("side panel"), {110, 122.5}));
    EXPECT_TRUE(has_point(line_of("centre panel"), {-10, 107.5}));
}

// The sides lie along (7, 24): 12 out is 12.5 along the hem, and 40 up or down is 35/3 along it.
TEST_F(Corners, that_are_mirrored_fold_onto_the_piece) {
    read("mirrored", "Mirrored");
    const double slant = 40 * 7.0 / 24;
    const CuttingLine narrow = line_of("narrow hem");
    EXPECT_TRUE(has_point(narrow, {110 + 12.5, 0}));
    EXPECT_TRUE(has_point(narrow, {110 + 12.5 + slant, -40}));
    EXPECT_TRUE(has_point(narrow, {-12.5 - slant, -40}));
    const CuttingLine wide = line_of("wide hem");
    EXPECT_TRUE(has_point(wide, {180 + 12.5, 0}));
    EXPECT_TRUE(has_point(wide, {180 + 12.5 - slant, -40}));
    EXPECT_TRUE(has_row("narrow hem", "106.3° | 12.5 mm | 24.2 mm | 23.3 mm too short"));
    EXPECT_TRUE(has_row("wide hem", "73.7° | 12.5 mm | 0.8 mm | 23.3 mm too long"));
    EXPECT_NEAR(degrees(std::atan2(24, 7)), 73.7, 0.05);
    EXPECT_TRUE(says(12.5 + slant) && says(12.5 - slant) && says(2 * slant));
    pattern_.cutting->corners.clear();
    EXPECT_TRUE(has_point(line_of("narrow hem"), {110 + 12.5 - slant, -40}));
    EXPECT_TRUE(has_point(line_of("wide hem"), {180 + 12.5 + slant, -40}));
}

// The side lies along (5, 12), its line 40 out; square to it is along (12, -5).
TEST_F(Corners, that_are_carried_on) {
    read("carried-on", "Carried on");
    const CuttingLine met = line_of("met");
    EXPECT_TRUE(has_corner(met, "bound edge", CornerKind::met, true));
    EXPECT_TRUE(has_point(met, {90, 0}));
    EXPECT_TRUE(has_point(met, {90 + 40 * 12.0 / 13, -40 * 5.0 / 13}));
    EXPECT_TRUE(says(40 * 5.0 / 13));
    const CuttingLine carried = line_of("carried on");
    EXPECT_TRUE(has_corner(carried, "bound edge", CornerKind::carried_on, false));
    EXPECT_TRUE(has_point(carried, {90 + 40 * 13.0 / 12, 0}));
    EXPECT_TRUE(says(40 * 13.0 / 12));
    EXPECT_TRUE(has_point(line_of("on the fold"), {0, 75 + 13}));
    EXPECT_TRUE(says(13));
    // The wider cannot go on to a line that it does not meet.
    pattern_.cutting->corners.at(0).whose = "side";
    const CuttingLine wider = line_of("carried on");
    EXPECT_TRUE(has_corner(wider, "bound edge", CornerKind::met, true));
    EXPECT_EQ(wider.notes.size(), 1u);
}

// Edges along (12, 5) and (40, 9) to both sides of a level line: lines 20 out come to it 52 and 820/9 out.
TEST_F(Corners, that_are_blunted) {
    read("blunted", "Blunted");
    const CuttingLine collar = line_of("collar end");
    const double half_collar = (52 - 30) * 5.0 / 12;
    EXPECT_TRUE(has_point(collar, {-30, half_collar}));
    EXPECT_TRUE(has_point(collar, {-30, -half_collar}));
    EXPECT_TRUE(collar.notes.empty());
    EXPECT_TRUE(has_row("collar end, as asked", "45.2° | 52.0 mm | 30.0 mm | 18.3 mm"));
    EXPECT_NEAR(degrees(2 * std::atan2(5, 12)), 45.2, 0.05);
    EXPECT_TRUE(says(2 * half_collar));
    const CuttingLine pennant = line_of("pennant");
    EXPECT_TRUE(has_point(pennant, {-80, (820.0 / 9 - 80) * 9 / 40}));
    EXPECT_TRUE(has_point(pennant, {-80, -2.5}));
    EXPECT_EQ(pennant.notes.size(), 1u);
    EXPECT_TRUE(has_row("pennant, unasked", "25.4° | 91.1 mm | 80.0 mm | 5.0 mm"));
    EXPECT_NEAR(degrees(2 * std::atan2(9, 40)), 25.4, 0.05);
    EXPECT_TRUE(says(820.0 / 9));
}

// A limit nearer than the allowance counts as the allowance; a corner met within it is met.
TEST_F(Corners, that_are_blunted_no_nearer_than_the_allowance) {
    read("blunted", "Blunted");
    pattern_.cutting->corners.at(0).limit_mm = 7;
    const CuttingLine raised = line_of("collar end");
    EXPECT_TRUE(has_point(raised, {-20, (52 - 20) * 5.0 / 12}));
    ASSERT_EQ(raised.notes.size(), 1u);
    EXPECT_NE(raised.notes[0].find("cannot be cut off nearer than its wider allowance"), std::string::npos);
    pattern_.cutting->corners.at(0).limit_mm.reset();
    EXPECT_TRUE(line_of("collar end").notes.empty());
    EXPECT_TRUE(has_point(line_of("collar end"), {-20, (52 - 20) * 5.0 / 12}));
    pattern_.cutting->corners.at(0).limit_mm = 60;
    const CuttingLine met = line_of("collar end");
    EXPECT_TRUE(has_point(met, {-52, 0}));
    EXPECT_TRUE(std::none_of(met.corners.begin(), met.corners.end(),
                             [](const CutCorner& corner) { return corner.kind == CornerKind::blunted; }));
}

// The side of the second piece turns by the angle whose cosine is 24/25.
TEST_F(Corners, that_are_stepped) {
    read("step", "The step");
    const CuttingLine straight = line_of("straight");
    EXPECT_TRUE(has_corner(straight, "opening", CornerKind::met, true));
    EXPECT_TRUE(has_point(straight, {140, 70}));
    EXPECT_TRUE(has_point(straight, {112, 70}));
    const CuttingLine turned = line_of("turned");
    EXPECT_TRUE(has_corner(turned, "opening", CornerKind::met, true));
    EXPECT_TRUE(has_point(turned, {140, 70}));
    EXPECT_TRUE(has_point(turned, {100 + 12 / 0.96, 70}));
    EXPECT_TRUE(has_row("straight", "0° | 12.0 mm | 28.0 mm"));
    EXPECT_TRUE(has_row("turned", "16.3° | 12.5 mm | 27.5 mm"));
    EXPECT_NEAR(degrees(std::acos(0.96)), 16.3, 0.05);
    // The side's line, at 112.5 level with the corner, goes 7 across for 24 down: it is at 140 farther below.
    EXPECT_TRUE(says((140 - 112.5) * 24 / 7));
}

}  // namespace
}  // namespace dartwright
