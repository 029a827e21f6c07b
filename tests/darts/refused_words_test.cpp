// Names and numbers that no pattern file could hold, or with which nothing can be drawn, are refused in
// words. All were found by tests/fuzz/operate_fuzz.cpp.

#include <gtest/gtest.h>

#include <limits>

#include "darts/plain_front.hpp"
#include "dartwright/darts/close_gathers.hpp"
#include "dartwright/darts/close_seam.hpp"
#include "dartwright/darts/close_tuck.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/repoint.hpp"
#include "dartwright/darts/true_dart.hpp"
#include "dartwright/darts/true_edge.hpp"

namespace dartwright {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();

template <class Operation>
std::string refusal(const Operation& operation) {
    try {
        operation();
    } catch (const BadWords& refused) {
        return refused.what();
    }
    return "not refused";
}

PivotRequest to_side() {
    PivotRequest request;
    request.piece = "front";
    request.dart = "waist dart";
    request.to = "side@50%";
    return request;
}

TEST(RefusedWords, NamesWithControlCharacters) {
    PivotRequest request = to_side();
    request.name = "new\ndart";
    const std::string words = refusal([&] { pivot(plain(), request); });
    EXPECT_TRUE(contains(words, "the name \"new?dart\" has control characters"));
    EXPECT_EQ(words.find('\n'), words.npos) << "one line";
    request.name = "";
    request.centre_seam = "centre\x7f";
    EXPECT_TRUE(contains(refusal([&] { pivot(plain(), request); }), "control characters"));
    CloseSeamRequest seam;
    seam.piece = "front";
    seam.dart = "waist dart";
    seam.to = "shoulder@50%";
    for (std::string CloseSeamRequest::*const name :
         {&CloseSeamRequest::first_name, &CloseSeamRequest::second_name, &CloseSeamRequest::seam}) {
        CloseSeamRequest bad = seam;
        bad.*name = "\x01";
        EXPECT_TRUE(contains(refusal([&] { close_as_seam(plain(), bad); }), "control characters"));
    }
}

TEST(RefusedWords, NamesOfNothingButBlanks) {
    PivotRequest request = to_side();
    request.name = "  ";
    EXPECT_TRUE(contains(refusal([&] { pivot(plain(), request); }), "is blank"));
    CloseSeamRequest seam;
    seam.piece = "front";
    seam.dart = "waist dart";
    seam.to = "shoulder@50%";
    seam.seam = " ";
    EXPECT_TRUE(contains(refusal([&] { close_as_seam(plain(), seam); }), "is blank"));
}

TEST(RefusedWords, BackOffsThatAreNoNumbers) {
    PivotRequest request = to_side();
    request.back_off_mm = not_a_number;
    EXPECT_TRUE(contains(refusal([&] { pivot(plain(), request); }), "expected 0 or more"));
    RepointRequest aimed{"front", "waist dart", not_a_number, {}, {}, {}};
    EXPECT_TRUE(contains(refusal([&] { repoint(plain(), aimed); }), "expected 0 or more"));
}

TEST(RefusedWords, SpansThatTheListOfOperationsCouldNotHold) {
    EXPECT_TRUE(contains(refusal([] {
                             true_dart(plain(), {"front", "waist dart", TrueLegs::drawn, infinity});
                         }),
                         "not finite"));
    EXPECT_TRUE(contains(refusal([] { true_edge(plain(), {"front", "side", infinity}); }), "not finite"));
}

TEST(RefusedWords, SpansOfLessThanAMillimetre) {
    for (const double span : {1e-300, 1e-9, 0.5}) {
        EXPECT_TRUE(contains(refusal([&] {
                                 true_dart(plain(), {"front", "waist dart", TrueLegs::mean, span});
                             }),
                             "expected 0, or 1 mm or more"));
        EXPECT_TRUE(contains(refusal([&] {
                                 close_as_gathers(plain(), {"front", "waist dart", TakenIn::gathers, span});
                             }),
                             "expected 1 mm or more"));
    }
    EXPECT_NO_THROW(true_dart(plain(), {"front", "waist dart", TrueLegs::mean, 1}));
}

// The waist runs down to the mouth from both sides: drawn smooth across the folded dart it lies higher, and
// the legs are shorter.
TEST(TruedTuck, IsSewnToItsPointWhereItsLegsBecomeTooShort) {
    Pattern pattern = plain();
    Outline& outline = pattern.pieces[0].outline;
    outline.start = {0, 60};
    outline.items.back().to = {0, 60};
    outline.items[2].to = {200, 60};
    const double leg = figures(pattern, "waist dart").leg_a;
    const Pattern tuck = close_as_tuck(pattern, {"front", "waist dart", leg - 0.01}).pattern;
    const TrueDartResult trued = true_dart(tuck, {"front", "waist dart"});
    const Piece& piece = trued.pattern.pieces[0];
    ASSERT_LT(figures(trued.pattern, "waist dart").leg_a, leg - 0.01);
    EXPECT_FALSE(piece.outline.items[dart_named(piece, "waist dart")].as_dart()->stitched);
    EXPECT_TRUE(contains(trued.account.notes.back(), "it is sewn to its point"));
    EXPECT_NO_THROW(read_pattern(write_pattern(trued.pattern), "trued.json"));
}

}  // namespace
}  // namespace dartwright
