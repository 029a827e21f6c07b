// A closed dart makes a cone. Published: the sector of cloth left has the angle T = 2 pi sin h, h being half
// the cone's angle at its tip (Dr. Math, 'BuildCone'); a disc of radius 10 closed to a base of radius 6 has
// 144 degrees taken out (mathwords.com, 'cone angle').

#include <gtest/gtest.h>

#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/piece.hpp"
#include "dartwright/pattern/run.hpp"

namespace dartwright {
namespace {

constexpr double radius_mm = 100;

Point on_rim(double angle_deg) {
    return {radius_mm * std::cos(radians(angle_deg)), radius_mm * std::sin(radians(angle_deg))};
}

/// A disc with a dart to its centre. The rim is in arcs of 12 degrees or less, drawn as cubics with handles
/// of 4/3 tan(arc/4): those are true circles to 1e-7 mm here.
Outline disc_without(double taken_out_deg) {
    Outline outline;
    outline.start = on_rim(taken_out_deg);
    constexpr int arcs = 30;
    const double step = (360 - taken_out_deg) / arcs;
    const double handle = 4.0 / 3 * std::tan(radians(step) / 4);
    for (int k = 0; k < arcs; ++k) {
        const Point from = on_rim(taken_out_deg + k * step);
        const Point to = on_rim(taken_out_deg + (k + 1) * step);
        const CubicShape arc{
            {from + handle * perpendicular(from - Point{}), to - handle * perpendicular(to - Point{})}};
        outline.items.push_back({EdgeItem{"rim", arc, 0}, to});
    }
    DartItem dart;
    dart.name = "dart";
    outline.items.push_back({dart, outline.start});
    return outline;
}

struct Cone {
    double taken_out_deg;
    double half_angle_deg;
};

double half_angle_of(double cloth_rad) {
    return degrees(std::asin(cloth_rad / (2 * pi)));
}

// Half angles by exact geometry, from the published relation.
TEST(cone, half_angle_from_what_the_dart_takes_out) {
    for (const Cone cone :
         {Cone{10, 76.4638}, {15, 73.4022}, {30, 66.4435}, {60, 56.4427}, {90, 48.5904}, {144, 36.8699}}) {
        const Outline outline = disc_without(cone.taken_out_deg);
        const DartFigures f = figures_of(outline, outline.items.size() - 1);
        EXPECT_NEAR(degrees(f.angle_rad), cone.taken_out_deg, 1e-10);
        EXPECT_NEAR(half_angle_of(2 * pi - f.angle_rad), cone.half_angle_deg, 0.5e-4);
    }
    // Half the disc: the angle between the legs is 180 degrees either way round.
    const Outline outline = disc_without(180);
    const DartFigures f = figures_of(outline, outline.items.size() - 1);
    EXPECT_NEAR(half_angle_of(2 * pi - std::abs(f.angle_rad)), 30, 1e-10);
}

TEST(cone, a_disc_of_10_without_144_degrees_closes_to_a_base_of_6) {
    const Outline outline = disc_without(144);
    Piece piece;
    piece.outline = outline;
    const double rim = runs_of(outline).at(0).length;
    EXPECT_NEAR(rim / (2 * pi), 60, 1e-6) << "the rim closed is the base's circle";
    // Exact geometry: height 8 on a slope of 10; the side of a cone has the area pi x base x slope.
    const double height = radius_mm * std::cos(std::asin(rim / (2 * pi) / radius_mm));
    EXPECT_NEAR(height, 80, 1e-6);
    EXPECT_NEAR(cloth_area(piece), pi * 60 * 100, 1e-3);
}

}  // namespace
}  // namespace dartwright
