// The grain arrow of the parts of a piece that a seam separated, measured by GEOS, a library that shares no
// code with this one: how far it stays from the outline, and whether there was room for that.

#include <geos_c.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "dartwright/darts/close_seam.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "support/evenly.hpp"
#include "support/generated_chains.hpp"
#include "support/generated_half.hpp"

namespace dartwright::testing {
namespace {

/// The cloth of a piece, its darts cut out to their points.
class Cloth {
  public:
    explicit Cloth(const Outline& outline)
        : geos_(GEOS_init_r()), points_(flat_outline(outline, DartsDrawn::to_points, chord_error_mm).points) {
        const auto count = static_cast<unsigned>(points_.size());
        GEOSCoordSequence* ring = GEOSCoordSeq_create_r(geos_, count + 1, 2);
        for (unsigned i = 0; i <= count; ++i)
            GEOSCoordSeq_setXY_r(geos_, ring, i, points_[i % count].x, points_[i % count].y);
        shape_ = GEOSGeom_createPolygon_r(geos_, GEOSGeom_createLinearRing_r(geos_, ring), nullptr, 0);
        border_ = GEOSBoundary_r(geos_, shape_);
    }
    Cloth(const Cloth&) = delete;
    Cloth& operator=(const Cloth&) = delete;
    ~Cloth() {
        GEOSGeom_destroy_r(geos_, border_);
        GEOSGeom_destroy_r(geos_, shape_);
        GEOS_finish_r(geos_);
    }

    /// From the arrow to the outline; 0 where it does not lie inside.
    double clearance(const Grain& grain) const {
        GEOSGeometry* arrow = stretch(grain.from, grain.to);
        double off = 0;
        if (GEOSContains_r(geos_, shape_, arrow) == 1) GEOSDistance_r(geos_, border_, arrow, &off);
        GEOSGeom_destroy_r(geos_, arrow);
        return off;
    }

    double width_across(Vector along) const {
        double low = INFINITY;
        double high = -INFINITY;
        for (const Point p : points_) {
            low = std::min(low, cross(along, p - Point{}));
            high = std::max(high, cross(along, p - Point{}));
        }
        return high - low;
    }

    /// The longest stretch along the direction that stays so far from the outline, of a hundred lines.
    double longest_clear(Vector along, double clear_mm) const {
        GEOSGeometry* inner =
            GEOSBufferWithStyle_r(geos_, shape_, -clear_mm, 100, GEOSBUF_CAP_ROUND, GEOSBUF_JOIN_ROUND, 10);
        double longest = 0;
        const Vector left{-along.y, along.x};
        const double width = width_across(along);
        double low = INFINITY;
        for (const Point p : points_) low = std::min(low, cross(along, p - Point{}));
        constexpr int lines = 100;
        constexpr double far_mm = 20000;
        for (int k = 1; k < lines; ++k) {
            const Point at = Point{} + (low + width * k / lines) * left;
            GEOSGeometry* line = stretch(at - far_mm * along, at + far_mm * along);
            GEOSGeometry* met = GEOSIntersection_r(geos_, inner, line);
            for (int i = 0; met && i < GEOSGetNumGeometries_r(geos_, met); ++i) {
                double length = 0;
                GEOSLength_r(geos_, GEOSGetGeometryN_r(geos_, met, i), &length);
                longest = std::max(longest, length);
            }
            if (met) GEOSGeom_destroy_r(geos_, met);
            GEOSGeom_destroy_r(geos_, line);
        }
        GEOSGeom_destroy_r(geos_, inner);
        return longest;
    }

  private:
    static constexpr double chord_error_mm = 0.005;

    GEOSGeometry* stretch(Point from, Point to) const {
        GEOSCoordSequence* ends = GEOSCoordSeq_create_r(geos_, 2, 2);
        GEOSCoordSeq_setXY_r(geos_, ends, 0, from.x, from.y);
        GEOSCoordSeq_setXY_r(geos_, ends, 1, to.x, to.y);
        return GEOSGeom_createLineString_r(geos_, ends);
    }

    GEOSContextHandle_t geos_;
    std::vector<Point> points_;
    GEOSGeometry* shape_ = nullptr;
    GEOSGeometry* border_ = nullptr;
};

/// 5 mm, as `close` is documented; and what is left of it where a piece is narrow.
constexpr std::array<double, 4> margins_mm{5, 2.5, 1.25, 0.625};
/// What the chords of curves may hide.
constexpr double seen_mm = 0.03;

struct Asked {
    std::size_t parts = 0;
    std::size_t wide = 0;  ///< with room for the whole margin
};

// Each part has an arrow in the direction of the whole's; where stretches of four times a margin keep it on a
// strip as wide as a sixty-fourth of the part, so does the arrow. The part that is held may keep an arrow
// that was drawn nearer to the outline.
void expect_clear_arrows(const Pattern& before, const Pattern& after, Asked& asked) {
    const Piece& whole = before.pieces[0];
    const Vector along = unit(whole.grain->to - whole.grain->from);
    const double drawn_mm = Cloth(whole.outline).clearance(*whole.grain);
    for (std::size_t k = 0; k < 2; ++k) {
        const Piece& part = after.pieces[k];
        ASSERT_TRUE(part.grain);
        const Vector is_along = unit(part.grain->to - part.grain->from);
        EXPECT_NEAR(cross(along, is_along), 0, 1e-9);
        EXPECT_GT(dot(along, is_along), 0);
        const Cloth cloth(part.outline);
        const double clear_mm = cloth.clearance(*part.grain);
        ++asked.parts;
        for (const double margin_mm : margins_mm) {
            if (cloth.longest_clear(along, margin_mm + cloth.width_across(along) / 128 + seen_mm) <
                4 * margin_mm)
                continue;
            if (margin_mm == margins_mm[0]) ++asked.wide;
            const bool is_as_drawn = cross(along, part.grain->from - whole.grain->from) < 1e-6 &&
                                     cross(along, part.grain->from - whole.grain->from) > -1e-6;
            EXPECT_GE(clear_mm, (is_as_drawn ? std::min(margin_mm, drawn_mm) : margin_mm) - seen_mm)
                << part.name << ", margin " << margin_mm;
            break;
        }
    }
}

RC_GTEST_PROP(GrainOfParts, StaysClearOfTheOutlineWhereThereIsRoom, ()) {
    const int darts = *evenly(1, 4);
    const GeneratedPiece generated = any_piece(*rc::gen::arbitrary<bool>(), darts);
    Pattern pattern = generated.pattern;
    if (*rc::gen::arbitrary<bool>()) pattern = any_chain(pattern, *evenly(0, 3));
    // A grain that nobody placed well: near an edge, across the seam, over a dart.
    if (*rc::gen::arbitrary<bool>()) {
        const double turn = real_between(0, 2 * pi);
        const Point at = generated.pivot +
                         real_between(0, 0.4) * generated.size_mm * Vector{std::cos(turn), std::sin(turn)};
        const double way = real_between(0, 2 * pi);
        const Vector half =
            real_between(0.02, 0.3) * generated.size_mm * Vector{std::cos(way), std::sin(way)};
        pattern.pieces[0].grain = Grain{at - half, at + half, ""};
    }
    Asked asked;
    // Most places are not seen from the pivot: another is tried.
    for (int tries = 0; tries < 8 && asked.parts == 0; ++tries) {
        CloseSeamRequest request;
        request.piece = "piece";
        request.dart = any_dart(pattern.pieces[0]);
        if (*rc::gen::arbitrary<bool>()) request.to = any_place(pattern.pieces[0]);
        if (request.to.empty()) request.with = any_dart(pattern.pieces[0]);
        if (request.with == request.dart) continue;
        if (*rc::gen::arbitrary<bool>()) request.hold = runs_of(pattern.pieces[0].outline)[0].edge;
        try {
            expect_clear_arrows(pattern, close_as_seam(pattern, request).pattern, asked);
        } catch (const Impossible&) {
        }
    }
    RC_ASSERT(!::testing::Test::HasFailure());
    RC_CLASSIFY(asked.parts > 0, "separated");
    RC_CLASSIFY(asked.wide > 0, "with room for 5 mm");
    RC_CLASSIFY(asked.wide < asked.parts, "too narrow for 5 mm");
}

TEST(grain_of_parts, of_the_bodices_stays_clear_of_every_edge) {
    Asked asked;
    for (const char* name : {"blocks/close-fitting.json", "blocks/three-measure.json",
                             "workshop/chorus-bodice.json", "workshop/chorus-bodice-inch.json"}) {
        const Pattern pattern = read_pattern_file(std::string(DARTWRIGHT_SOURCE_DIR) + "/fixtures/" + name);
        for (const std::size_t piece : {0u, 1u}) {
            Pattern alone = pattern;
            alone.pieces = {pattern.pieces[piece]};
            alone.seams.clear();
            for (const OutlineItem& item : alone.pieces[0].outline.items) {
                if (!item.as_dart()) continue;
                for (const auto& run : runs_of(alone.pieces[0].outline)) {
                    CloseSeamRequest request;
                    request.piece = alone.pieces[0].name;
                    request.dart = item.as_dart()->name;
                    request.to = run.edge + "@50%";
                    try {
                        expect_clear_arrows(alone, close_as_seam(alone, request).pattern, asked);
                    } catch (const Impossible&) {
                    }
                }
            }
        }
    }
    EXPECT_GE(asked.wide, 20u);
}

}  // namespace
}  // namespace dartwright::testing
