#include "dartwright/drawing/label_places.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright {
namespace {

using testing::log_between;
using testing::real_between;

Point any_point() {
    // Some on a coarse grid, so that boxes and lines also touch and lie on each other.
    const bool is_on_grid = *rc::gen::arbitrary<bool>();
    const Point p{real_between(-300, 300), real_between(-300, 300)};
    return is_on_grid ? Point{std::round(p.x / 50) * 50, std::round(p.y / 50) * 50} : p;
}

TurnedBox any_box() {
    const double angle = *rc::gen::arbitrary<bool>() ? 0 : real_between(-pi, pi);
    return {any_point(), {std::cos(angle), std::sin(angle)}, log_between(0.1, 150), log_between(0.1, 30)};
}

// What is held is found by a tree; asking each in turn is the truth.
RC_GTEST_PROP(LabelPlaces, MeetingsAreThoseOfEachHeld, ()) {
    TakenPlaces taken;
    std::vector<std::pair<Point, Point>> stretches;
    std::vector<TurnedBox> boxes;
    const int count = *testing::evenly(0, 60);
    for (int i = 0; i < count; ++i) {
        const Point from = any_point();
        const Point to = *testing::evenly(0, 8) == 0 ? from : any_point();
        stretches.push_back({from, to});
        taken.add(from, to);
        boxes.push_back(any_box());
        taken.add(boxes.back());
    }
    const TurnedBox asked = any_box();
    const double margin = *rc::gen::arbitrary<bool>() ? 0 : real_between(0, 20);
    std::size_t met = 0;
    for (const auto& [from, to] : stretches) met += is_meeting(grown(asked, margin), from, to) ? 1 : 0;
    for (const TurnedBox& box : boxes) met += is_meeting(grown(asked, margin), box) ? 1 : 0;
    RC_ASSERT(taken.meetings(asked, margin) == met);
    // What was met last is asked first, so that several are asked.
    for (int times = 0; times < 6; ++times) {
        Label words(1);
        words[0].words = "waist dart";
        words[0].at = any_point();
        words[0].size_mm = log_between(1, 20);
        words[0].angle_rad = real_between(-pi, pi);
        RC_ASSERT(taken.is_clear(words, margin) == (taken.meetings(words, margin) == 0));
    }
    for (int times = 0; times < 6; ++times) {
        const Point from = any_point();
        const Point to = any_point();
        std::size_t boxes_met = 0;
        for (const TurnedBox& box : boxes) boxes_met += is_meeting(box, from, to) ? 1 : 0;
        RC_ASSERT(taken.boxes_met(from, to) == boxes_met);
        RC_ASSERT(taken.is_clear_of_boxes(from, to) == (boxes_met == 0));
    }
}

// To the last bit: a place is chosen by the one and drawn by the other.
RC_GTEST_PROP(LabelPlaces, BoxesOfAMeasuredBlockAreThoseOfItsLabel, ()) {
    std::vector<DrawnText> lines(static_cast<std::size_t>(*testing::evenly(1, 6)));
    for (DrawnText& line : lines) {
        line.words = std::string(static_cast<std::size_t>(*testing::evenly(0, 12)), 'w');
        line.size_mm = log_between(1, 20);
        line.is_bold = *rc::gen::arbitrary<bool>();
    }
    const BlockPlace place{any_point(), real_between(-pi, pi)};
    const MeasuredBlock block(lines);
    const std::vector<TurnedBox> boxes = block.boxes(place);
    const Label label = block.label(place);
    RC_ASSERT(boxes.size() == label.size());
    for (std::size_t k = 0; k < boxes.size(); ++k) {
        const TurnedBox truth = box_of(label[k]);
        RC_ASSERT(boxes[k].centre == truth.centre);
        RC_ASSERT(boxes[k].along == truth.along);
        RC_ASSERT(boxes[k].half_length == truth.half_length);
        RC_ASSERT(boxes[k].half_height == truth.half_height);
    }
}

// What touches meets, whatever the last bits of the numbers.
RC_GTEST_PROP(LabelPlaces, TheLastBitDecidesNothing, ()) {
    const double width = log_between(1, 100);
    const double x = real_between(-1000, 1000);
    const double off = real_between(-1e-9, 1e-9);
    const TurnedBox left{{x - width, 3}, {1, 0}, width, 5};
    const TurnedBox right{{x + width + off, 3}, {1, 0}, width, 5};
    RC_ASSERT(is_meeting(left, right));
    RC_ASSERT(is_meeting(left, Point{x + off, -50}, Point{x + off, 50}));
    RC_ASSERT(!is_meeting(left, Point{x + 1e-3, -50}, Point{x + 1e-3, 50}));
}

}  // namespace
}  // namespace dartwright
