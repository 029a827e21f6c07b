// Rules of the trade that the checks and the choices of the program rest on, each with its source.

#include <gtest/gtest.h>

#include "dartwright/checks/check.hpp"
#include "dartwright/checks/measure_line.hpp"
#include "dartwright/checks/walk.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pattern/dart.hpp"

namespace dartwright {
namespace {

const char* const made_up_patterns[] = {"blocks/close-fitting.json", "blocks/three-measure.json",
                                        "workshop/chorus-bodice.json", "workshop/chorus-bodice-inch.json"};

Pattern fixture(const std::string& name) {
    return read_pattern_file(DARTWRIGHT_SOURCE_DIR "/fixtures/" + name);
}

OutlineItem straight(const std::string& edge, Point to) {
    return {EdgeItem{edge, StraightShape{}, 0}, to};
}

int findings_of(const CheckReport& report, const std::string& check_name) {
    int count = 0;
    for (const Finding& finding : report.findings) count += finding.check == check_name;
    return count;
}

// --- Accuracy of a seam --------------------------------------------------------------------------------

/// Two panels joined at a side, the back's longer by so much.
Pattern panels(double longer_mm) {
    Pattern pattern;
    pattern.name = "panels";
    for (const std::string name : {"front", "back"}) {
        Piece piece;
        piece.name = name;
        piece.cut = Cut{};
        piece.grain = Grain{{20, 20}, {20, 300}, "centre"};
        const double height = 400 + (name == "back" ? longer_mm : 0);
        piece.outline.items = {straight("hem", {150, 0}), straight("side", {150, height}),
                               straight("waist", {0, height}), straight("centre", {0, 0})};
        pattern.pieces.push_back(piece);
    }
    Seam seam;
    seam.name = "side";
    seam.joins = {SeamSide{{"front", "side", "hem", false}}, SeamSide{{"back", "side", "hem", false}}};
    pattern.seams = {seam};
    return pattern;
}

// Published: 1/4 in on a princess seam is a fault (fashion-incubator.com).
TEST(seam_length, a_quarter_inch_is_a_fault) {
    const CheckReport report = check(panels(25.4 / 4));
    EXPECT_EQ(findings_of(report, "seam-length"), 1);
    EXPECT_FALSE(report.passed);
}

// Published: seams are true to 1/16 in (Threads no. 200); cut pieces to +-2 mm on side edges and +-1 mm on
// others
// (*Industrial Cutting of Textile Materials*, table 13.1). Common practice, no source: a fitted toile is
// worked to the millimetre. So what we let pass must be within all of these.
TEST(seam_length, what_passes_is_within_every_published_accuracy) {
    const double published_mm[] = {25.4 / 16, 2, 1};
    for (const double accuracy : published_mm) EXPECT_LE(Tolerances{}.seam_mm, accuracy);
    EXPECT_EQ(findings_of(check(panels(0.999)), "seam-length"), 0);
    EXPECT_EQ(findings_of(check(panels(25.4 / 16)), "seam-length"), 1);
}

// Published: drafting is to 1 mm, for errors double on a half draft, and 2 mm made three times passes 1 cm on
// the garment (Gedwoods, 'Constructing the basic bodice block', step 4).
TEST(half_draft, doubles_its_errors_on_the_garment) {
    Pattern half = panels(0);
    for (Piece& piece : half.pieces) piece.cut = Cut{1, "centre", false, {}};
    Pattern wrong = half;
    for (Piece& piece : wrong.pieces) {
        // Front and back together 6 mm too wide: three errors of 2 mm.
        for (const std::size_t item : {0u, 1u}) piece.outline.items[item].to.x += 3;
    }
    EXPECT_NEAR(measure_line(wrong, "hem").total_mm - measure_line(half, "hem").total_mm, 12, 1e-9)
        << "over 1 cm";
}

// --- Corners and mouths --------------------------------------------------------------------------------

// Published: at a seam's end the two angles complement each other, so that the crossing edge runs on smoothly
// (thedailysew.com, February 2018; ithacamaven, 'notches and seam lines').
TEST(seam_corner, angles_complement_each_other_in_the_patterns_we_give) {
    for (const char* const file : made_up_patterns) {
        const Pattern pattern = fixture(file);
        for (const Seam& seam : pattern.seams) {
            for (const double corner : walk_seam(pattern, seam.name).corners_deg)
                EXPECT_NEAR(corner, 180, Tolerances{}.corner_deg) << file << ": " << seam.name;
        }
    }
}

TEST(seam_corner, that_do_not_are_a_fault) {
    Pattern pattern = panels(0);
    pattern.pieces[1].outline.items[1].to = {150, 400};
    pattern.pieces[1].outline.items[2].to = {0, 380};  // the back's waist falls 20 over 150: 7.6 degrees
    EXPECT_EQ(findings_of(check(pattern), "seam-corner"), 1);
}

struct Mouth {
    double first_deg;   ///< interior angle between the edge and the first leg
    double second_deg;  ///< and between the second leg and the edge
};

/// A piece with a dart of legs of 100 mm, 24 degrees, whose edge meets the legs at these angles.
Pattern with_mouth(Mouth mouth) {
    const double half = radians(12);
    const Point a{-100 * std::sin(half), -100 * std::cos(half)};
    const Point b{-a.x, a.y};
    // From a leg the edge leaves at the interior angle, on the side away from the dart.
    const auto leave = [](Point end, double angle) {
        return end + apply(turn_by(angle), 60 * unit(Point{} - end));
    };
    Piece piece;
    piece.name = "skirt";
    piece.cut = Cut{};
    piece.grain = Grain{{0, 30}, {0, 80}, ""};
    const Point first = leave(a, radians(mouth.first_deg));
    const Point last = leave(b, -radians(mouth.second_deg));
    DartItem dart;
    dart.name = "dart";
    piece.outline.start = first;
    piece.outline.items = {straight("waist", a),
                           OutlineItem{dart, b},
                           straight("waist", last),
                           straight("side", {last.x, 120}),
                           straight("top", {first.x, 120}),
                           straight("centre", first)};
    Pattern pattern;
    pattern.name = "panels";
    pattern.pieces = {piece};
    return pattern;
}

// Exact geometry: folded, the two angles lie side by side at the mouth, and the edge runs straight on where
// they add to 180 degrees, however they share it.
TEST(dart_mouth, is_true_when_its_two_interior_angles_add_to_180) {
    for (const Mouth mouth : {Mouth{90, 90}, {80, 100}, {75, 105}, {95, 85}, {110, 70}}) {
        EXPECT_EQ(findings_of(check(with_mouth(mouth)), "dart-mouth"), 0) << mouth.first_deg;
    }
    for (const Mouth mouth : {Mouth{90, 85}, {80, 103}, {78, 78}, {102, 102}, {75, 75}}) {
        const CheckReport report = check(with_mouth(mouth));
        ASSERT_EQ(findings_of(report, "dart-mouth"), 1) << mouth.first_deg;
        for (const Finding& finding : report.findings) {
            if (finding.check != "dart-mouth") continue;
            EXPECT_NEAR(finding.difference.value(), std::abs(mouth.first_deg + mouth.second_deg - 180), 1e-9);
        }
    }
}

// Published: both legs cut to a straight waist close to a V (dresspatternmaking.com, 'curving the waist').
// Exact geometry: straight, each interior angle is 90 degrees and half the dart, so the V is bent by the
// dart's angle.
TEST(dart_mouth, over_a_straight_waist_is_a_v) {
    const CheckReport report = check(with_mouth({102, 102}));
    EXPECT_EQ(findings_of(report, "dart-mouth"), 1);
    const Outline outline = with_mouth({102, 102}).pieces[0].outline;
    EXPECT_NEAR(outline.start.y, outline.items[0].to.y, 1e-12) << "the waist is level to the left";
    EXPECT_NEAR(outline.items[2].to.y, outline.items[1].to.y, 1e-12) << "and to the right";
}

// --- Notches and pressing ------------------------------------------------------------------------------

// Published: one notch on the front armhole, two on the back (NIMI, *Dress Making*, trade theory, p. 44).
TEST(notches, single_in_front_and_double_in_the_back_in_the_patterns_we_give) {
    for (const char* const file : made_up_patterns) {
        const Pattern pattern = fixture(file);
        for (const Piece& piece : pattern.pieces) {
            for (const Notch& notch : piece.notches) {
                if (notch.edge != "armhole") continue;
                EXPECT_EQ(notch.kind, piece.name == "front" ? NotchKind::single : NotchKind::double_) << file;
            }
        }
    }
}

double length_between_items(const Outline& outline, std::size_t from, std::size_t to) {
    double sum = 0;
    for (std::size_t i = from; i != to; i = (i + 1) % outline.items.size()) {
        if (outline.items[i].as_edge()) sum += length_of_item(outline, i);
    }
    return sum;
}

/// The mouth end towards which a dart is pressed: that from which its press edge is reached first on the
/// outline.
Point pressed_to(const Outline& outline, std::size_t dart) {
    const std::string& press = outline.items[dart].as_dart()->press;
    const std::size_t n = outline.items.size();
    const auto is_there = [&](std::size_t i) {
        const EdgeItem* edge = outline.items[i].as_edge();
        return edge && edge->edge == press;
    };
    std::size_t after = (dart + 1) % n;
    while (!is_there(after)) after = (after + 1) % n;
    std::size_t before = (dart + n - 1) % n;
    while (!is_there(before)) before = (before + n - 1) % n;
    const double forward = length_between_items(outline, (dart + 1) % n, after);
    const double back = length_between_items(outline, (before + 1) % n, dart);
    return forward < back ? outline.items[dart].to : start_of_item(outline, dart);
}

/// A dart is upright when its centre line is nearer to the length of the body than to its width. All the
/// patterns stand upright, with the centre line at an end.
void expect_pressed_by_the_rule(const Piece& piece, std::size_t item, const std::string& what) {
    const DartFigures f = figures_of(piece.outline, item);
    const Point pressed = pressed_to(piece.outline, item);
    const Point other = pressed == f.a ? f.b : f.a;
    const Vector axis = middle(f.a, f.b) - f.pivot;
    if (std::abs(axis.y) < std::abs(axis.x)) {
        EXPECT_LT(pressed.y, other.y) << what << ": a level dart goes down";
        return;
    }
    const std::string centre = piece.name == "front" ? "centre front" : "centre back";
    const auto runs = runs_of(piece.outline);
    const double line = end_point(piece.outline, *find_run(runs, centre), RunEnd::start).x;
    EXPECT_LT(std::abs(pressed.x - line), std::abs(other.x - line))
        << what << ": an upright dart goes to the centre";
}

// Published: upright darts are pressed to the centre, level ones down (NIMI, *Dress Making*, trade practical,
// p. 200; Erwin, *Practical Dress Design*, p. 30).
TEST(press, is_to_the_centre_or_down_in_the_patterns_we_give) {
    int darts = 0;
    for (const char* const file : made_up_patterns) {
        for (const Piece& piece : fixture(file).pieces) {
            for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
                const DartItem* dart = piece.outline.items[i].as_dart();
                if (!dart) continue;
                expect_pressed_by_the_rule(piece, i,
                                           std::string(file) + ", " + piece.name + ", " + dart->name);
                ++darts;
            }
        }
    }
    EXPECT_EQ(darts, 15);
}

// The same source, where a moved dart can no longer be pressed the way it was.
TEST(press, of_a_dart_that_now_stands_in_its_old_press_edge_is_chosen_by_the_rule) {
    struct Row {
        const char* dart;
        const char* to;
        const char* press;
        const char* expected;
    };
    for (const Row& row : {Row{"waist dart", "side@60/armhole", "side", "waist"},
                           Row{"waist dart", "shoulder@50%", "shoulder", "centre front"},
                           Row{"bust dart", "waist@40/side", "waist", "centre front"}}) {
        PivotRequest request;
        request.piece = "front";
        request.dart = row.dart;
        request.to = row.to;
        request.press = row.press;
        const Pattern moved = pivot(fixture("blocks/close-fitting.json"), request).pattern;
        const Piece& front = piece_named(moved, "front");
        const std::size_t item = dart_named(front, row.dart);
        EXPECT_EQ(front.outline.items[item].as_dart()->press, row.expected) << row.to;
        expect_pressed_by_the_rule(front, item, row.to);
    }
}

}  // namespace
}  // namespace dartwright
