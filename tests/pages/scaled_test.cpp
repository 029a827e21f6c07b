#include "dartwright/pages/scaled.hpp"

#include <gtest/gtest.h>

namespace dartwright {
namespace {

TEST(scaled, takes_lines_their_widths_and_dashes_along) {
    Stroke stroke;
    stroke.width_mm = 0.5;
    stroke.dash_mm = {4, 2};
    stroke.dash_begin_mm = 3;
    DrawnPath path;
    path.curves = {Line{{0, 0}, {10, 4}}};
    path.stroke = stroke;
    DrawnGroup group;
    group.items.push_back(path);
    const DrawnPath out = std::get<DrawnPath>(scaled(group, 2.5).items.at(0));
    EXPECT_EQ(end_of(out.curves.at(0)), (Point{25, 10}));
    EXPECT_EQ(out.stroke->width_mm, 1.25);
    EXPECT_EQ(out.stroke->dash_mm, (std::vector<double>{10, 5}));
    EXPECT_EQ(out.stroke->dash_begin_mm, 7.5);
}

}  // namespace
}  // namespace dartwright
