// The cutting line over darts that stand in a row, from mouth end to mouth end.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/cutting/cutting_line.hpp"
#include "dartwright/geometry/motion.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/mirrored.hpp"
#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright {
namespace {

using testing::real_between;

struct DartFigure {
    Vector point;  // from its first mouth end
    double angle_rad = 0;
};

struct HemWidths {
    double before_mm = 15;
    double after_mm = 15;
};

void add_edge(Piece& piece, const char* edge, Point to, double width_mm) {
    piece.outline.items.push_back({EdgeItem{edge, StraightShape{}, 0}, to});
    piece.allowance.emplace_back(edge, width_mm);
}

// A straight hem, darts in a row from (100, 0) on, each with legs of one length, and the hem again.
Piece hem_with(const std::vector<DartFigure>& darts, HemWidths widths) {
    Piece piece;
    piece.name = "skirt";
    piece.outline.start = {0, 0};
    add_edge(piece, "hem before", {100, 0}, widths.before_mm);
    Point end{100, 0};
    for (const DartFigure& figure : darts) {
        DartItem dart;
        dart.name = "dart " + std::to_string(piece.outline.items.size());
        dart.point = end + figure.point;
        dart.press = "hem before";
        end = apply(turn_about(dart.point, turn_by(figure.angle_rad)), end);
        piece.outline.items.push_back({dart, end});
    }
    add_edge(piece, "hem after", {end.x + 100, end.y}, widths.after_mm);
    add_edge(piece, "right", {end.x + 100, 300}, 0);
    add_edge(piece, "top", {0, 300}, 0);
    add_edge(piece, "left", {0, 0}, 0);
    return piece;
}

void expect_none_given_up(const CuttingLine& line) {
    for (const std::string& note : line.notes)
        EXPECT_EQ(note.find("do not come to"), std::string::npos) << note;
}

double folded_depth(const CutDart& dart) {
    return distance(dart.point, dart.tip);
}

// The line came over the second leg in the same stretch as over the first, and was not looked for there: the
// second dart of every two went square across, without its cap.
TEST(DartsInARow, HaveEachItsCap) {
    const double half = std::atan2(2, 50);
    const std::vector<DartFigure> two{{{2, 50}, 2 * half}, {{2, 50}, 2 * half}};
    Piece piece = hem_with(two, {});
    piece.outline.items[2].as_dart()->press = "hem after";
    const CuttingLine line = cutting_line(piece);
    expect_none_given_up(line);
    ASSERT_EQ(line.darts.size(), 2U);
    for (const CutDart& dart : line.darts) EXPECT_TRUE(dart.is_capped);
    EXPECT_NEAR(folded_depth(line.darts[0]), folded_depth(line.darts[1]), 1e-6);

    // It is its own mirror image.
    const CuttingLine image = cutting_line(mirrored(MirrorLine{}, piece));
    EXPECT_NEAR(signed_area(line.points), signed_area(image.points), 1e-3);
}

// A step no higher than the line is exact on both sides is drawn as none, from whichever side it is met.
constexpr double step_mm2 = 2 * cutting_line_error_mm * 200;

DartFigure any_dart_figure() {
    return {{real_between(-15, 15), real_between(30, 100)}, real_between(0.01, 0.12)};
}

// The sharpest turn of the line; there and straight back is pi.
double sharpest_turn_rad(const std::vector<Point>& line) {
    double sharpest = 0;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const Point here = line[(i + 1) % line.size()];
        const Vector in = here - line[i];
        const Vector out = line[(i + 2) % line.size()] - here;
        if (norm(in) > 0 && norm(out) > 0) sharpest = std::max(sharpest, std::abs(angle_from(in, out)));
    }
    return sharpest;
}

void expect_same_in_mirror(const Piece& piece) {
    const CuttingLine line = cutting_line(piece);
    const CuttingLine image = cutting_line(mirrored(MirrorLine{}, piece));
    EXPECT_NEAR(signed_area(line.points), signed_area(image.points), 1e-3);
    EXPECT_LT(sharpest_turn_rad(line.points), radians(155.0));
}

DartFigure leaning(double by_mm) {
    return {{by_mm + 3, 50}, 0.12};
}

// The edge without allowance begins on the leg; that was taken for another crossing, and what lies between
// for a hook that is left out. 37 mm2 of the allowance went with it, mirrored none, and a slit of no width
// stayed.
TEST(DartsInARow, TouchALegWithoutComingOverIt) {
    for (const double by_mm : {-20.0, -5.0, 5.0, 20.0}) {
        for (const HemWidths widths : {HemWidths{15, 0}, HemWidths{0, 15}}) {
            for (const char* press : {"hem before", "hem after"}) {
                Piece piece = hem_with({leaning(by_mm)}, widths);
                piece.outline.items[1].as_dart()->press = press;
                expect_same_in_mirror(piece);
            }
        }
    }
}

// A step that lies on the leg: the line was parted at its near end, mirrored at its far one.
TEST(DartsInARow, ArePartedAtTheFarEndOfAStepOnTheLeg) {
    for (const HemWidths widths : {HemWidths{5, 10}, HemWidths{10, 5}, HemWidths{15, 0}}) {
        Piece piece = hem_with({{{0, 50}, 0.1}}, widths);
        // Square to the second leg.
        const Point end = piece.outline.items[1].to;
        const Vector leg = end - piece.outline.items[1].as_dart()->point;
        piece.outline.items[2].to = end + 2 * Vector{-leg.y, leg.x};
        piece.outline.items[3].to.x = piece.outline.items[2].to.x;
        expect_same_in_mirror(piece);
    }
}

// Beside an edge without allowance the folded dart brings the line back along itself. To rounding it did not
// cross itself, and a spike of no width stood out by 20 mm.
TEST(DartsInARow, LeaveNoSpikeBesideNoAllowance) {
    Piece piece = hem_with({leaning(0)}, {0, 20});
    piece.outline.items[0].to = {129.94666586663357, 0};
    piece.outline.items[1].as_dart()->point = {136.5239632041355, 67.05498191729093};
    piece.outline.items[1].to = {143.10126054163743, 0};
    piece.outline.items[2].to = {163.0057364899294, 1.952392692023282};
    piece.outline.items[3].to.x = piece.outline.items[2].to.x;
    expect_same_in_mirror(piece);
}

// Beside an edge without allowance one by one: legs that cross at such a mouth end are a limit of the notes.
// So is pressing towards that edge, where cloth hangs on by a point.
RC_GTEST_PROP(DartsInARow, AreCutTheSameInTheMirror, ()) {
    std::vector<DartFigure> darts;
    const int count = *testing::evenly(1, 3);
    for (int k = 0; k < count; ++k) darts.push_back(any_dart_figure());
    const bool may_be_none = count == 1 && *rc::gen::arbitrary<bool>();
    HemWidths widths;
    widths.before_mm = real_between(3, 15);
    widths.after_mm = may_be_none ? 0 : real_between(3, 15);
    const Piece piece = hem_with(darts, widths);
    RC_PRE(is_simple(flat_outline(piece.outline, DartsDrawn::to_points, 1e-3).points));
    for (const DartFigure& dart : darts)
        RC_LOG() << dart.point.x << ", " << dart.point.y << "  " << dart.angle_rad << "\n";
    RC_LOG() << widths.before_mm << " " << widths.after_mm << "\n";
    const CuttingLine line = cutting_line(piece);
    const CuttingLine image = cutting_line(mirrored(MirrorLine{}, piece));
    RC_LOG() << signed_area(line.points) << " " << signed_area(image.points) << "\n";
    RC_ASSERT(is_simple(line.points));
    RC_ASSERT(std::abs(signed_area(line.points) - signed_area(image.points)) < step_mm2);
}

RC_GTEST_PROP(DartsInARow, AreComeOverAtTheirLegs, ()) {
    std::vector<DartFigure> darts;
    const int count = *testing::evenly(2, 3);
    for (int k = 0; k < count; ++k) darts.push_back(any_dart_figure());
    const bool is_one_width = *rc::gen::arbitrary<bool>();
    HemWidths widths;
    widths.before_mm = real_between(5, 15);
    widths.after_mm = is_one_width ? widths.before_mm : real_between(5, 15);
    const Piece piece = hem_with(darts, widths);
    RC_PRE(is_simple(flat_outline(piece.outline, DartsDrawn::to_points, 1e-3).points));
    for (const DartFigure& dart : darts)
        RC_LOG() << dart.point.x << ", " << dart.point.y << "  " << dart.angle_rad << "\n";
    RC_LOG() << widths.before_mm << " " << widths.after_mm << "\n";
    const CuttingLine line = cutting_line(piece);
    for (const std::string& note : line.notes) {
        RC_LOG() << note << "\n";
        RC_ASSERT(note.find("do not come to") == std::string::npos);
    }
    RC_ASSERT(is_simple(line.points));
    const CuttingLine image = cutting_line(mirrored(MirrorLine{}, piece));
    RC_LOG() << signed_area(line.points) << " " << signed_area(image.points) << "\n";
    RC_ASSERT(std::abs(signed_area(line.points) - signed_area(image.points)) < step_mm2);
}

}  // namespace
}  // namespace dartwright
