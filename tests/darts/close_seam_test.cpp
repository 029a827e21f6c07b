// A piece separated along a seam through a dart's pivot: examples by hand, and what must hold for every
// piece.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <numeric>

#include "darts/plain_front.hpp"
#include "dartwright/checks/check.hpp"
#include "dartwright/darts/close_seam.hpp"
#include "dartwright/darts/replay.hpp"
#include "dartwright/darts/separating/rounded_corners.hpp"
#include "dartwright/geometry/arc_length.hpp"
#include "support/generated_chains.hpp"
#include "support/generated_pieces.hpp"
#include "support/shape_laws.hpp"

namespace dartwright {
namespace {

CloseSeamRequest princess(const std::string& to = "shoulder@50%") {
    CloseSeamRequest request;
    request.piece = "front";
    request.dart = "waist dart";
    request.to = to;
    request.first_name = "centre front";
    request.second_name = "side front";
    request.seam = "princess seam";
    return request;
}

const Run& run_of(const std::vector<Run>& runs, const std::string& edge) {
    return run_named(runs, edge, "part");
}

// What a check finds; the plain front itself has a neck that is not square to its fold, and a straight waist
// that closes to a corner.
std::vector<std::string> found_in(const Pattern& pattern) {
    std::vector<std::string> out;
    for (const Finding& finding : check(pattern).findings) out.push_back(finding.check);
    return out;
}
const std::vector<std::string> found_before{"dart-mouth", "fold-corner"};
const std::vector<std::string> found_after{"seam-corner", "fold-corner"};

TEST(CloseSeam, SeparatesTheFrontFromTheWaistToTheShoulder) {
    const CloseSeamResult closed = close_as_seam(plain(), princess());
    ASSERT_EQ(closed.pattern.pieces.size(), 2u);
    const Piece& centre = closed.pattern.pieces[0];
    const Piece& side = closed.pattern.pieces[1];
    EXPECT_EQ(centre.name, "centre front");
    EXPECT_EQ(side.name, "side front");
    EXPECT_EQ(centre.cut->quantity, 1);
    EXPECT_EQ(centre.cut->fold, "centre front");
    EXPECT_EQ(side.cut->quantity, 2);
    EXPECT_EQ(side.cut->fold, "");
    // From (80, 0) to the pivot (100, 200) is sqrt(20^2 + 200^2), and on to (105, 400) sqrt(5^2 + 200^2).
    const double seam_mm = std::hypot(20, 200) + std::hypot(5, 200);
    EXPECT_NEAR(closed.account.parts[0].seam_mm, seam_mm, 1e-9);
    EXPECT_NEAR(closed.account.parts[1].seam_mm, seam_mm, 1e-9);
    const auto side_runs = runs_of(side.outline);
    EXPECT_NEAR(run_of(side_runs, "waist").length, 80, 1e-9);
    EXPECT_NEAR(run_of(side_runs, "shoulder").length, 45, 1e-9);
    const auto centre_runs = runs_of(centre.outline);
    EXPECT_NEAR(run_of(centre_runs, "shoulder").length, 45, 1e-9);
    for (const RunChange& run : closed.account.runs)
        EXPECT_NEAR(run.before_mm, run.after_mm, 1e-9) << run.edge;
}

TEST(CloseSeam, NotchesBothSidesAlikeToEachSideOfThePivot) {
    const CloseSeamResult closed = close_as_seam(plain(), princess());
    for (const Piece& piece : closed.pattern.pieces) {
        const std::vector<Notch>& notches = piece.notches;
        ASSERT_GE(notches.size(), 2u);
        EXPECT_EQ(notches[notches.size() - 2].edge, "princess seam at waist");
        EXPECT_EQ(notches[notches.size() - 2].from, "waist");
        EXPECT_NEAR(notches[notches.size() - 2].at, std::hypot(20, 200) - 50, 1e-9);
        EXPECT_EQ(notches.back().edge, "princess seam at shoulder");
        EXPECT_EQ(notches.back().from, "shoulder");
        EXPECT_NEAR(notches.back().at, std::hypot(5, 200) - 50, 1e-9);
    }
}

TEST(CloseSeam, DividesLinesHolesAndNotchesBetweenTheParts) {
    const CloseSeamResult closed = close_as_seam(plain(), princess());
    const Piece& centre = closed.pattern.pieces[0];
    const Piece& side = closed.pattern.pieces[1];
    const auto names = [](const Piece& piece) {
        std::vector<std::string> out;
        for (const Mark& mark : piece.marks) out.push_back(mark.name);
        return out;
    };
    EXPECT_EQ(names(centre), (std::vector<std::string>{"bust line", "midriff", "held hole"}));
    EXPECT_EQ(names(side), (std::vector<std::string>{"bust line", "midriff", "hole"}));
    EXPECT_EQ(side.notches.front().edge, "side");
    // The midriff ends at the legs, 10 mm to each side of the dart's middle at half its height.
    EXPECT_NEAR(std::get<LineMark>(centre.marks[1].what).points.back().x, 90, 1e-9);
    EXPECT_NEAR(std::get<LineMark>(side.marks[1].what).points.front().x, 110, 1e-9);
}

TEST(CloseSeam, KeepsTheGrainsDirectionInBothParts) {
    const CloseSeamResult closed = close_as_seam(plain(), princess());
    EXPECT_EQ(closed.pattern.pieces[0].grain, plain().pieces[0].grain);
    const Grain& grain = *closed.pattern.pieces[1].grain;
    EXPECT_NEAR(grain.from.x, grain.to.x, 1e-9);
    EXPECT_GT(grain.to.y - grain.from.y, 100);
    EXPECT_EQ(grain.along, "");
    EXPECT_EQ(found_in(plain()), found_before);
    EXPECT_EQ(found_in(closed.pattern), found_after);
}

TEST(CloseSeam, RoundsTheCornerAndStaysTrue) {
    CloseSeamRequest request = princess();
    request.round_mm = 60;
    const CloseSeamResult closed = close_as_seam(plain(), request);
    EXPECT_NEAR(closed.account.parts[0].seam_mm, closed.account.parts[1].seam_mm, 1e-7);
    EXPECT_GT(closed.account.rounded_off_mm, 0);
    EXPECT_LT(closed.account.rounded_off_mm, 1);
    EXPECT_EQ(found_in(closed.pattern), found_after);
    const auto runs = runs_of(closed.pattern.pieces[0].outline);
    EXPECT_NEAR(run_of(runs, "princess seam").length, closed.account.parts[0].seam_mm, 1e-12);
}

TEST(CloseSeam, MakesTheShoulderSeamOneOfTwoPartsInWalkingOrder) {
    Pattern pattern = plain();
    Piece band = pattern.pieces[0];
    band.name = "band";
    band.cut->fold = "";
    band.grain->along = "";
    pattern.pieces.push_back(band);
    pattern.seams.push_back(
        {"shoulder",
         {SeamSide{{"front", "shoulder", "neck", false}}, SeamSide{{"band", "shoulder", "neck", false}}},
         {},
         {{"neck", CornerIs::free}, {"armhole", CornerIs::free}}});
    const CloseSeamResult closed = close_as_seam(pattern, princess());
    const SeamSide expected{{"centre front", "shoulder", "neck", false},
                            {"side front", "shoulder", "princess seam at shoulder", false}};
    EXPECT_EQ(closed.pattern.seams[0].joins[0], expected);
    EXPECT_EQ(closed.pattern.seams[0].joins[1], pattern.seams[0].joins[1]);
    EXPECT_EQ(closed.pattern.seams[0].ends, pattern.seams[0].ends);
    EXPECT_EQ(closed.pattern.seams[1].name, "princess seam");
    const Pattern written = read_pattern(write_pattern(closed.pattern), "written.json");
    EXPECT_EQ(found_in(written), (std::vector<std::string>{"dart-mouth", "seam-corner", "fold-corner"}));
}

TEST(CloseSeam, LeavesFreeWhatEndsInACorner) {
    const CloseSeamResult closed = close_as_seam(plain(), princess("shoulder@0/neck"));
    const Seam& seam = closed.pattern.seams.back();
    // One part has the shoulder beside the seam's end and the other the neck.
    EXPECT_EQ(seam.ends,
              (std::map<std::string, CornerIs>{{"neck", CornerIs::free}, {"shoulder", CornerIs::free}}));
    EXPECT_EQ(found_in(closed.pattern), found_after);
}

TEST(CloseSeam, DividesAnAllowanceThatIsGivenInStretches) {
    Pattern pattern = plain();
    pattern.pieces[0].allowance = {
        {"shoulder", std::vector<AllowanceStretch>{{"neck", 0, 30, 10}, {"neck", 30, 90, 15}}},
        {"side", 15.0}};
    const CloseSeamResult closed = close_as_seam(pattern, princess());
    using Stretches = std::vector<AllowanceStretch>;
    const auto& centre = closed.pattern.pieces[0].allowance;
    EXPECT_EQ(std::get<Stretches>(centre[0].second), (Stretches{{"neck", 0, 30, 10}, {"neck", 30, 45, 15}}));
    const auto& side = closed.pattern.pieces[1].allowance;
    EXPECT_EQ(std::get<Stretches>(side[0].second), (Stretches{{"princess seam at shoulder", 0, 45, 15}}));
    EXPECT_EQ(side.back().first, "princess seam at shoulder");
    EXPECT_EQ(std::get<double>(side.back().second), 15);
}

// Nothing turns, so that a fold may be divided; both parts are cut on their part of it.
TEST(CloseSeam, OfAYokeEndsInTheFoldAndDividesIt) {
    CloseSeamRequest request = princess("centre front@100/neck");
    request.hold = "neck";
    const CloseSeamResult closed = close_as_seam(plain(), request);
    double fold_mm = 0;
    for (const Piece& piece : closed.pattern.pieces) {
        EXPECT_EQ(piece.cut->fold, "centre front");
        EXPECT_EQ(piece.cut->quantity, 1);
        EXPECT_EQ(piece.cut->ends.at("princess seam at centre front"), CornerIs::free);
        const auto runs = runs_of(piece.outline);
        fold_mm += run_of(runs, "centre front").length;
    }
    EXPECT_NEAR(fold_mm, 340, 1e-9);
    const std::string text = write_pattern(closed.pattern);
    EXPECT_EQ(write_pattern(read_pattern(text, "yoke.json")), text);
}

TEST(CloseSeam, SaysWhenItsNotchesCannotBeAsFarFromThePivotAsAsked) {
    CloseSeamRequest request = princess();
    request.notch_mm = 150;
    bool is_said = false;
    for (const std::string& note : close_as_seam(plain(), request).account.notes)
        is_said = is_said || note.find("half of a leg at most") != std::string::npos;
    EXPECT_TRUE(is_said);
}

TEST(CloseSeam, SaysWhyNot) {
    const auto reason = [](CloseSeamRequest request) {
        try {
            close_as_seam(plain(), request);
        } catch (const std::exception& error) {
            return std::string(error.what());
        }
        return std::string("done");
    };
    EXPECT_TRUE(
        contains(reason(princess("waist@20/centre front")), "both ends of the seam lie in \"waist\""));
    CloseSeamRequest both = princess();
    both.with = "waist dart";
    EXPECT_TRUE(contains(reason(both), "not both"));
    both.to.clear();
    EXPECT_TRUE(contains(reason(both), "with itself"));
    CloseSeamRequest named = princess();
    named.seam = "side";
    EXPECT_EQ(reason(named), "done");  // its edges are "side at waist" and so on
    named.round_mm = 50;
    EXPECT_TRUE(contains(reason(named), "there is an edge \"side\" already"));
    named = princess();
    named.round_mm = 300;
    EXPECT_TRUE(contains(reason(named), "longer than the seam"));
    named.round_mm = 0;
    EXPECT_TRUE(contains(reason(named), "expected more than 0"));
    named = princess();
    named.second_name = named.first_name;
    EXPECT_TRUE(contains(reason(named), "two names"));
}

}  // namespace

namespace testing {
namespace {

RC_GTEST_PROP(RoundedCorners, AreAsLongAsEachOtherAndLeaveTheLegsSmoothly, ()) {
    const auto any_corner = [] {
        const double in = real_between(0, 2 * pi);
        const double turn = real_between(-radians(120), radians(120));
        return StraightCorner{{real_between(-500, 500), real_between(-500, 500)},
                              {std::cos(in), std::sin(in)},
                              {std::cos(in + turn), std::sin(in + turn)}};
    };
    const StraightCorner first = any_corner();
    const StraightCorner second = any_corner();
    const double span = log_between(1, 500);
    const RoundedCorners rounded = rounded_corners(first, second, span);
    for (std::size_t k = 0; k < 2; ++k) {
        const StraightCorner& corner = k == 0 ? first : second;
        const Curve curve = rounded.curves[k];
        RC_ASSERT(std::abs(length(curve) - rounded.length_mm) <= 1e-8 * span);
        RC_ASSERT(rounded.length_mm <= 2 * span * (1 + 1e-9));
        RC_ASSERT(norm(tangent_at_start(curve) - corner.in) <= 1e-9);
        RC_ASSERT(norm(tangent_at_end(curve) - corner.out) <= 1e-9);
        // It stays by its corner: never further to the outside than a little of the span.
        const double side = angle_from(corner.in, corner.out) >= 0 ? -1 : 1;
        for (int i = 1; i < 20; ++i) {
            const Vector off = point_at(curve, i / 20.0) - corner.corner;
            RC_ASSERT(side * cross(corner.in, off) <= 0.035 * span);
            RC_ASSERT(side * cross(corner.out, off) <= 0.035 * span);
            RC_ASSERT(norm(off) <= span * (1 + 1e-9));
        }
    }
}

struct Separated {
    GeneratedPiece before;
    CloseSeamRequest request;
    CloseSeamResult result;
    double angle_rad = 0;  ///< of the darts in the seam
};

Separated any_separated(bool may_round) {
    Separated out;
    const bool is_to_dart = *rc::gen::arbitrary<bool>();
    out.before = any_piece(true, is_to_dart ? 2 : 1);
    const Piece& piece = out.before.pattern.pieces[0];
    out.request.piece = "piece";
    out.request.dart = out.before.darts[0];
    if (is_to_dart) out.request.with = out.before.darts[1];
    if (!is_to_dart) out.request.to = any_place(piece);
    RC_PRE(is_to_dart || !out.request.to.empty());
    if (may_round) out.request.round_mm = out.before.size_mm * real_between(0.02, 0.2);
    out.request.notch_mm = real_between(1, 100);
    try {
        out.result = close_as_seam(out.before.pattern, out.request);
    } catch (const Impossible&) {
        RC_DISCARD("both ends in one edge, a place hidden by a curve, or a seam that turns back");
    }
    for (const std::string& dart : out.before.darts)
        out.angle_rad += figures_of(piece.outline, dart_named(piece, dart)).angle_rad;
    return out;
}

double run_length(const Piece& piece, const std::string& edge) {
    const std::vector<Run> runs = runs_of(piece.outline);
    const Run* run = find_run(runs, edge);
    return run ? run->length : 0;
}

RC_GTEST_PROP(CloseSeamKeeps, EveryRunInTheTwoPartsTogether, ()) {
    const Separated s = any_separated(*rc::gen::arbitrary<bool>());
    for (const Run& run : runs_of(s.before.pattern.pieces[0].outline)) {
        double after = 0;
        for (const Piece& piece : s.result.pattern.pieces) after += run_length(piece, run.edge);
        RC_ASSERT(std::abs(after - run.length) <= length_rounding(run.length));
    }
}

RC_GTEST_PROP(CloseSeamMakes, TwoSidesAsLongAsEachOther, ()) {
    const Separated s = any_separated(*rc::gen::arbitrary<bool>());
    const Seam& seam = s.result.pattern.seams.back();
    std::array<double, 2> lengths{};
    for (std::size_t k = 0; k < 2; ++k) {
        for (const SeamPart& part : seam.joins[k])
            lengths[k] += run_length(piece_named(s.result.pattern, part.piece), part.edge);
        RC_ASSERT(std::abs(lengths[k] - s.result.account.parts[k].seam_mm) <= 1e-9);
    }
    RC_ASSERT(std::abs(lengths[0] - lengths[1]) <= 1e-8 * s.before.size_mm);
}

// The cloth that is cut away is that of the darts, and no other.
RC_GTEST_PROP(CloseSeamKeeps, ClothAreaWithoutRounding, ()) {
    const Separated s = any_separated(false);
    const double before = cloth_area(s.before.pattern.pieces[0]);
    double after = 0;
    for (const Piece& piece : s.result.pattern.pieces) after += cloth_area(piece);
    RC_ASSERT(std::abs(after - before) <= 1e-11 * before);
}

// Around the pivot there is what the darts leave of the full turn.
RC_GTEST_PROP(CloseSeamKeeps, TheAngleAboutThePivot, ()) {
    const Separated s = any_separated(false);
    double around = 0;
    for (const SeamSide& side : s.result.pattern.seams.back().joins) {
        const Piece& piece = piece_named(s.result.pattern, side[0].piece);
        const std::vector<Run> runs = runs_of(piece.outline);
        const Run& run = run_named(runs, side[0].edge, piece.name);
        const RunEnd at_pivot = end_named(run, side[0].from) == RunEnd::start ? RunEnd::end : RunEnd::start;
        RC_ASSERT(distance(end_point(piece.outline, run, at_pivot), s.before.pivot) == 0);
        around += corner_angle(piece.outline, run, at_pivot);
    }
    RC_ASSERT(std::abs(around + s.angle_rad - 2 * pi) <= 1e-9);
}

// Every old notch is where it was on the cloth, and the new ones lie opposite each other.
RC_GTEST_PROP(CloseSeamKeeps, NotchesOnTheirPlaces, ()) {
    const Separated s = any_separated(*rc::gen::arbitrary<bool>());
    const auto places = [&s](const Piece& piece, bool is_new) {
        std::vector<Point> out;
        const std::vector<Run> runs = runs_of(piece.outline);
        for (const Notch& notch : piece.notches) {
            if ((notch.edge.rfind(s.request.dart + " seam", 0) == 0) != is_new) continue;
            const Run& run = run_named(runs, notch.edge, piece.name);
            const bool is_start = end_named(run, notch.from) == RunEnd::start;
            out.push_back(
                place_on_run(piece.outline, run, is_start ? notch.at : run.length - notch.at).point);
        }
        return out;
    };
    std::vector<Point> after;
    for (const Piece& piece : s.result.pattern.pieces) {
        for (const Point p : places(piece, false)) after.push_back(p);
        RC_ASSERT(places(piece, true).size() == 2u);
    }
    const std::vector<Point> before = places(s.before.pattern.pieces[0], false);
    RC_ASSERT(after.size() == before.size());
    for (const Point p : before) {
        const auto nearest = *std::min_element(
            after.begin(), after.end(), [p](Point a, Point b) { return distance(a, p) < distance(b, p); });
        RC_ASSERT(distance(nearest, p) <= 1e-7);
    }
    for (const Finding& finding : check(s.result.pattern).findings)
        RC_ASSERT(finding.check.rfind("notch-", 0) != 0 || finding.check == "notch-in-dart");
}

RC_GTEST_PROP(CloseSeamMakes, APatternThatCanBeReadAndReplayed, ()) {
    const Separated s = any_separated(*rc::gen::arbitrary<bool>());
    const std::string text = write_pattern(s.result.pattern);
    RC_ASSERT(write_pattern(read_pattern(text, "written.json")) == text);
    RC_ASSERT(write_pattern(replay(s.before.pattern, s.result.pattern.made).pattern) == text);
}

}  // namespace
}  // namespace testing
}  // namespace dartwright
