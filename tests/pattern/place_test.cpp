#include "dartwright/pattern/place.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <iomanip>
#include <sstream>

#include "dartwright/pattern/pattern.hpp"
#include "pattern/sample_outlines.hpp"
#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright {
namespace {

std::vector<dartwright::Run> plain_runs() {
    return runs_of(sample::square({"hem", "side", "armhole", "centre"}));
}

Place read(const std::string& text) {
    return parse_place(text, plain_runs(), "front");
}

// The sewn distance in mm from the run's anticlockwise start.
double distance_of(const std::string& text) {
    const auto runs = plain_runs();
    const Place place = parse_place(text, runs, "front");
    return distance_from_start(place, *find_run(runs, place.edge));
}

template <class Ask>
std::string refusal(const Ask& ask) {
    try {
        ask();
    } catch (const std::exception& refused) {
        return refused.what();
    }
    return "not refused";
}

TEST(parse_place, reads_millimetres_centimetres_and_inches) {
    EXPECT_DOUBLE_EQ(distance_of("side@60/hem"), 60);
    EXPECT_DOUBLE_EQ(distance_of("side@60mm/hem"), 60);
    EXPECT_DOUBLE_EQ(distance_of("side@60 mm/hem"), 60);
    EXPECT_DOUBLE_EQ(distance_of("side@6cm/hem"), 60);
    EXPECT_DOUBLE_EQ(distance_of("side@2in/hem"), 50.8);
    EXPECT_DOUBLE_EQ(distance_of("side@2 3/8in/hem"), 2.375 * 25.4);
    EXPECT_DOUBLE_EQ(distance_of("side@2 3/8 in/hem"), 2.375 * 25.4);
    EXPECT_DOUBLE_EQ(distance_of("side@3/8in/hem"), 0.375 * 25.4);
    EXPECT_DOUBLE_EQ(distance_of("side@+.5in/hem"), 12.7);
    EXPECT_DOUBLE_EQ(distance_of("side@1.in/hem"), 25.4);
}

TEST(parse_point, reads_two_lengths_of_any_unit) {
    EXPECT_EQ(parse_point("391.5,-17"), (Point{391.5, -17}));
    EXPECT_EQ(parse_point("2cm, 3/8in"), (Point{20, 0.375 * 25.4}));
    for (const char* wrong : {"", ",", "3", "3,", ",3", "3,4,5", "3;4", "3,50%", "a,b", "3 4"}) {
        EXPECT_NE(refusal([wrong] { parse_point(wrong); }).find("expected X,Y such as"), std::string::npos)
            << wrong;
    }
}

TEST(parse_place, measures_from_the_neighbour_that_is_named) {
    EXPECT_DOUBLE_EQ(distance_of("side@60/armhole"), 40);
    EXPECT_DOUBLE_EQ(distance_of("side@60/end"), 40);
    EXPECT_DOUBLE_EQ(distance_of("side@60/start"), 60);
    EXPECT_DOUBLE_EQ(distance_of("side@25%/armhole"), 75);
    EXPECT_DOUBLE_EQ(distance_of("side@25 %/hem"), 25);
    EXPECT_DOUBLE_EQ(distance_of("side@50%"), 50);
    EXPECT_DOUBLE_EQ(distance_of("side@50%/armhole"), 50);
    EXPECT_DOUBLE_EQ(distance_of("side@0/hem"), 0);
    EXPECT_DOUBLE_EQ(distance_of("side@0/armhole"), 100);
    EXPECT_DOUBLE_EQ(distance_of("side@100/armhole"), 0);
    EXPECT_DOUBLE_EQ(distance_of("side@100%/hem"), 100);
    EXPECT_DOUBLE_EQ(distance_of("side@-0/hem"), 0);
}

TEST(parse_place, takes_the_longest_known_edge_that_an_at_sign_follows) {
    const auto runs = runs_of(sample::square({"a", "a@5", "a@5@6", "side/b"}));
    const auto edge = [&](const std::string& text) { return parse_place(text, runs, "p").edge; };
    EXPECT_EQ(edge("a@5/side/b"), "a");
    EXPECT_EQ(edge("a@5@5/a"), "a@5");
    EXPECT_EQ(edge("a@5@6@7/side/b"), "a@5@6");
    EXPECT_EQ(edge("side/b@1/a"), "side/b");
    EXPECT_EQ(parse_place("a@5/side/b", runs, "p").from, "side/b");
    EXPECT_EQ(parse_place("a@5/a@5", runs, "p").from, "a@5");
    EXPECT_EQ(distance_from_start(parse_place("a@5/a@5", runs, "p"), runs[0]), 95);
}

TEST(parse_place, takes_names_with_spaces_digits_and_any_letters) {
    const auto runs = runs_of(sample::square({"left side", "Taille längs", "袖ぐり", "2nd panel"}));
    const auto from = [&](const std::string& text) {
        const Place place = parse_place(text, runs, "p");
        return distance_from_start(place, *find_run(runs, place.edge));
    };
    EXPECT_EQ(from("left side@10/Taille längs"), 90);
    EXPECT_EQ(from("Taille längs@10/袖ぐり"), 90);
    EXPECT_EQ(from("袖ぐり@10/2nd panel"), 90);
    EXPECT_EQ(from("2nd panel@10/left side"), 90);
    EXPECT_EQ(from("left side@60/2nd panel"), 60) << "not 60/2 mm: no name or sign follows it";
}

TEST(parse_place, an_edge_with_a_number_for_a_name_is_where_it_is_measured_from) {
    const auto runs = runs_of(sample::square({"hem", "side", "2", "centre"}));
    EXPECT_EQ(distance_from_start(parse_place("side@60mm/2", runs, "p"), runs[1]), 40);
    EXPECT_EQ(distance_from_start(parse_place("side@60/2", runs, "p"), runs[1]), 40);
    EXPECT_EQ(distance_from_start(parse_place("side@1/2/2", runs, "p"), runs[1]), 99.5);
    EXPECT_EQ(distance_from_start(parse_place("2@60/2/side", runs, "p"), runs[2]), 30);
    const auto named = runs_of(sample::square({"1", "3", "2", "2/2"}));
    EXPECT_EQ(distance_from_start(parse_place("3@60/2", named, "p"), named[1]), 40);
    EXPECT_EQ(distance_from_start(parse_place("3@60/1", named, "p"), named[1]), 60);
    EXPECT_EQ(distance_from_start(parse_place("2@6/2/2", named, "p"), named[2]), 94) << "from 2/2";
    EXPECT_THROW(parse_place("2@60/2", named, "p"), BadWords)
        << "2 is not beside itself: 60/2 is the number 30";
}

TEST(parse_place, what_was_written_in_inches_is_answered_in_inches) {
    try {
        distance_of("side@20in/hem");
        ADD_FAILURE() << "not refused";
    } catch (const BeyondTheRun& refused) {
        for (const Unit unit : {Unit::mm, Unit::cm, Unit::inch}) {
            EXPECT_EQ(refused.in(unit),
                      "the place side@20in/hem lies beyond the end of \"side\", which is 3.937 in long");
        }
    }
    try {
        distance_of("side@200/hem");
        ADD_FAILURE() << "not refused";
    } catch (const BeyondTheRun& refused) {
        EXPECT_EQ(refused.in(Unit::cm),
                  "the place side@200/hem lies beyond the end of \"side\", which is 100.000000 mm long");
        EXPECT_EQ(refused.in(Unit::inch),
                  "the place side@7.874016in/hem lies beyond the end of \"side\", which is 3.937 in long");
    }
}

TEST(parse_place, says_which_edges_there_are) {
    const std::string message = refusal([] { read("waist@60/side"); });
    EXPECT_EQ(message, R"(no edge "waist" in piece "front"; there is "hem", "side", "armhole", "centre")");
    EXPECT_EQ(refusal([] { read("Side@60/hem"); }),
              R"(no edge "Side" in piece "front"; there is "hem", "side", "armhole", "centre")");
    EXPECT_EQ(refusal([] { read("@60/hem"); }),
              R"(no edge "" in piece "front"; there is "hem", "side", "armhole", "centre")");
    EXPECT_EQ(refusal([] { parse_place("side@60/hem", {}, "front"); }),
              R"(no edge "side" in piece "front"; there are none)");
}

TEST(parse_place, says_which_neighbours_there_are) {
    EXPECT_EQ(refusal([] { distance_of("side@60/centre"); }),
              R"(no end "centre" in edge "side"; there is "hem", "armhole")");
    EXPECT_EQ(refusal([] { distance_of("side@50%/"); }), "not refused") << "the middle needs no end";
    EXPECT_EQ(refusal([] { read("side@60"); }),
              R"("side@60" does not say from which end to measure; expected side@60/hem or side@60/armhole)");
    EXPECT_EQ(
        refusal([] { read("side@30%"); }),
        R"("side@30%" does not say from which end to measure; expected side@30%/hem or side@30%/armhole)");
}

TEST(parse_place, refuses_what_is_no_place) {
    for (const char* const text : {"", "side", "side/hem", "60"}) {
        EXPECT_THROW(read(text), BadWords) << text;
    }
    EXPECT_EQ(refusal([] { read("side"); }),
              R"("side" is not a place; expected EDGE@DISTANCE/FROM such as side@60/armhole)");
}

TEST(parse_place, refuses_what_is_no_distance) {
    for (const char* const text :
         {"side@", "side@/hem", "side@nan/hem", "side@inf/hem", "side@-inf/hem", "side@infinity/hem",
          "side@1e3/hem", "side@1e400/hem", "side@0x10/hem", "side@1,5/hem", "side@60m/hem", "side@60ft/hem",
          "side@ 60/hem", "side@--60/hem", "side@.in/hem", "side@2 /hem", "side@1/0in", "side@3 1/0in/hem",
          "side@６０/hem"}) {
        EXPECT_ANY_THROW(distance_of(text)) << text;
    }
    EXPECT_THROW(read("side@nan/hem"), BadWords);
    EXPECT_THROW(read("side@1e400/hem"), BadWords);
    EXPECT_THROW(read("side@0x10/hem"), BadWords);
    EXPECT_THROW(read("side@" + std::string(400, '9') + "/hem"), BadWords) << "beyond all numbers";
}

TEST(distance_from_start, refuses_places_off_the_run) {
    for (const char* const text : {"side@-1/hem", "side@-1%/hem", "side@101/armhole", "side@100.1%/hem",
                                   "side@11cm/hem", "side@4in/hem"}) {
        EXPECT_THROW(distance_of(text), BeyondTheRun) << text;
    }
    const std::string message = refusal([] { distance_of("side@101/armhole"); });
    EXPECT_EQ(message,
              R"(the place side@101/armhole lies beyond the end of "side", which is 100.000000 mm long)");
}

TEST(distance_from_start, forgives_the_rounding_of_a_written_length) {
    EXPECT_EQ(distance_of("side@100.0000009/hem"), 100);
    EXPECT_EQ(distance_of("side@-0.0000009/hem"), 0);
    EXPECT_THROW(distance_of("side@100.000002/hem"), BeyondTheRun);
}

// The text of a place was once put in a buffer of 32 characters.
TEST(to_text, of_very_large_and_very_small_numbers_is_whole) {
    EXPECT_EQ(to_text(Place{"side", {1e40, false}, "hem"}),
              "side@10000000000000000303786028427003666890752/hem")
        << "the double next to 1e40, in full";
    EXPECT_EQ(to_text(Place{"side", {1.25e-40, false}, "hem"}), "side@0." + std::string(39, '0') + "125/hem");
    EXPECT_EQ(refusal([] { distance_of("side@" + std::string(40, '9') + "/hem"); }),
              "the place side@10000000000000000303786028427003666890752/hem lies beyond the end of \"side\", "
              "which is 100.000000 mm long");
}

TEST(parse_length, takes_lengths_only) {
    EXPECT_DOUBLE_EQ(parse_length("60"), 60);
    EXPECT_DOUBLE_EQ(parse_length("-3.5mm"), -3.5);
    EXPECT_DOUBLE_EQ(parse_length("6 cm"), 60);
    EXPECT_DOUBLE_EQ(parse_length("2 3/8in"), 60.325);
    EXPECT_DOUBLE_EQ(parse_length("-1/2in"), -12.7);
    for (const char* const text :
         {"", "-", "50%", "1e400", "nan", "inf", "0x1", "6 0", "6cm ", "6cmm", "3/0in"})
        EXPECT_THROW(parse_length(text), BadWords) << text;
}

TEST(parse_share, takes_per_cents_and_fractions) {
    EXPECT_DOUBLE_EQ(parse_share("50%"), 0.5);
    EXPECT_DOUBLE_EQ(parse_share("1/3"), 1.0 / 3);
    EXPECT_DOUBLE_EQ(parse_share("33 1/3%"), 1.0 / 3);
    for (const char* const text : {"", "50", "0.5", "5cm", "1/0", "nan%", "%"})
        EXPECT_THROW(parse_share(text), BadWords) << text;
}

TEST(parse_angle, takes_plain_degrees) {
    EXPECT_DOUBLE_EQ(parse_angle_deg("12.5"), 12.5);
    EXPECT_DOUBLE_EQ(parse_angle_deg("-8"), -8);
    for (const char* const text : {"", "-", "8deg", "1e1", "nan", "8 "})
        EXPECT_THROW(parse_angle_deg(text), BadWords) << text;
}

TEST(measure_at_start, takes_the_longest_and_says_how_long_it_is) {
    EXPECT_EQ(measure_at_start("2 3/8in/hem")->characters, 7u);
    EXPECT_EQ(measure_at_start("60/armhole")->characters, 2u);
    EXPECT_EQ(measure_at_start("hem"), std::nullopt);
}

RC_GTEST_PROP(place_property, what_is_written_is_read_to_the_last_digit, ()) {
    const auto runs = plain_runs();
    const double value = testing::real_between(0, 1) * testing::log_between(1e-30, 100);
    const Place place{"side", {value, false}, *rc::gen::arbitrary<bool>() ? "hem" : "armhole"};
    const Place back = parse_place(to_text(place), runs, "front");
    RC_ASSERT(back.edge == place.edge && back.from == place.from);
    RC_ASSERT(back.distance.value == value && !back.distance.is_share);
}

RC_GTEST_PROP(place_property, shares_are_written_and_read_to_rounding, ()) {
    const double share = testing::real_between(0, 1);
    const Place back = parse_place(to_text({"side", {share, true}, "hem"}), plain_runs(), "front");
    RC_ASSERT(back.distance.is_share);
    RC_ASSERT(std::abs(back.distance.value - share) <= 4e-16);
}

// Measured from either end, a place is the same; at any joint, on any generated outline.
RC_GTEST_PROP(place_property, the_two_ends_give_one_place, ()) {
    const Outline outline = testing::any_piece(true, 2).pattern.pieces[0].outline;
    const auto runs = runs_of(outline);
    const auto& run = runs[testing::any_index_of(runs)];
    const double at = testing::real_between(0, 1) * run.length;
    const Place from_start{run.edge, {at, false}, name_of_end(run, RunEnd::start)};
    const Place from_end{run.edge, {run.length - at, false}, name_of_end(run, RunEnd::end)};
    RC_ASSERT(std::abs(distance_from_start(from_start, run) - at) <= 1e-12 * run.length);
    RC_ASSERT(std::abs(distance_from_start(from_end, run) - at) <= 1e-12 * run.length);
}

// Whatever the text, it is a place or refused in words; never another exception.
RC_GTEST_PROP(place_property, any_text_is_read_or_refused, (const std::string& tail)) {
    try {
        const Place place = parse_place("side@" + tail, plain_runs(), "front");
        RC_ASSERT(std::isfinite(place.distance.value));
        RC_ASSERT(place.edge == "side");
    } catch (const BadWords&) {
        RC_SUCCEED("refused");
    }
}

}  // namespace
}  // namespace dartwright
