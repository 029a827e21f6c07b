// Lengths, areas and crossings against GEOS, a library of plane geometry that shares no code with this one,
// on a fine polygon drawn here.

#include <geos_c.h>
#include <gtest/gtest.h>

#include <filesystem>

#include "dartwright/checks/check.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "outside/unrolled.hpp"

namespace dartwright {
namespace {

class Geos {
  public:
    Geos() : context_(GEOS_init_r()) {}
    ~Geos() { GEOS_finish_r(context_); }
    Geos(const Geos&) = delete;
    Geos& operator=(const Geos&) = delete;
    double length(const std::vector<Point>& points) const {
        GEOSGeometry* line = GEOSGeom_createLineString_r(context_, sequence(points));
        double out = -1;
        GEOSLength_r(context_, line, &out);
        GEOSGeom_destroy_r(context_, line);
        return out;
    }
    struct Polygon {
        double area = -1;
        bool is_valid = false;
    };
    Polygon polygon(std::vector<Point> points) const {
        points.push_back(points.front());
        GEOSGeometry* ring = GEOSGeom_createLinearRing_r(context_, sequence(points));
        GEOSGeometry* shape = GEOSGeom_createPolygon_r(context_, ring, nullptr, 0);
        Polygon out;
        GEOSArea_r(context_, shape, &out.area);
        out.is_valid = GEOSisValid_r(context_, shape) == 1;
        GEOSGeom_destroy_r(context_, shape);
        return out;
    }

  private:
    GEOSCoordSequence* sequence(const std::vector<Point>& points) const {
        const auto count = static_cast<unsigned>(points.size());
        GEOSCoordSequence* out = GEOSCoordSeq_create_r(context_, count, 2);
        for (unsigned i = 0; i < count; ++i) GEOSCoordSeq_setXY_r(context_, out, i, points[i].x, points[i].y);
        return out;
    }
    GEOSContextHandle_t context_;
};

constexpr int parts = 4000;
/// A chord for an arc of 0.1 mm on a curve of radius 20 mm is short by a millionth of it; areas likewise.
constexpr double relative = 2e-6;

std::vector<Point> points_of(const Outline& outline, std::size_t item) {
    std::vector<Point> out{start_of_item(outline, item)};
    for (const Curve& curve : curves_of_item(outline, item)) {
        const unrolled::Stretch stretch = unrolled::stretch(curve);
        const int count = std::holds_alternative<Line>(curve) ? 1 : parts;
        for (int k = 1; k <= count; ++k) {
            const unrolled::Place p = stretch.at(unrolled::Real(k) / count);
            out.push_back({double(p.x), double(p.y)});
        }
    }
    return out;
}

std::vector<Point> polygon_of(const Outline& outline, DartsDrawn darts) {
    std::vector<Point> out;
    for (std::size_t i = 0; i < outline.items.size(); ++i) {
        std::vector<Point> points{start_of_item(outline, i)};
        if (const DartItem* dart = outline.items[i].as_dart()) {
            points.push_back(darts == DartsDrawn::to_points ? dart->point : dart->turning_point());
        } else {
            points = points_of(outline, i);
            points.pop_back();
        }
        out.insert(out.end(), points.begin(), points.end());
    }
    return out;
}

std::vector<std::string> files() {
    std::vector<std::string> out;
    for (const auto& entry :
         std::filesystem::recursive_directory_iterator(DARTWRIGHT_SOURCE_DIR "/fixtures")) {
        const std::string path = entry.path().string();
        if (entry.path().extension() == ".json" && path.find(".expected.") == std::string::npos &&
            path.find("/fixtures/rules/") == std::string::npos &&
            path.find("/fixtures/exercises/") == std::string::npos)
            out.push_back(path);
    }
    std::sort(out.begin(), out.end());
    return out;
}

template <class Ask>
int for_each_closed_piece(const Ask& ask) {
    int pieces = 0;
    for (const std::string& file : files()) {
        const Pattern pattern = read_pattern_file(file);
        for (const Piece& piece : pattern.pieces) {
            if (gap_of(piece.outline) > 0) continue;
            ask(file, pattern, piece);
            ++pieces;
        }
    }
    return pieces;
}

TEST(geos, agrees_on_the_length_of_every_edge_of_every_pattern_we_give) {
    const Geos geos;
    const int pieces =
        for_each_closed_piece([&](const std::string& file, const Pattern&, const Piece& piece) {
            for (const auto& run : runs_of(piece.outline)) {
                double expected = 0;
                for (const std::size_t item : run.items) {
                    expected += geos.length(points_of(piece.outline, item));
                    expected -= piece.outline.items[item].as_edge()->fullness;
                }
                EXPECT_NEAR(run.length, expected, relative * expected)
                    << file << ": " << piece.name << ", " << run.edge;
            }
        });
    EXPECT_GE(pieces, 40);
}

TEST(geos, agrees_on_the_area_of_every_piece_of_every_pattern_we_give) {
    const Geos geos;
    for_each_closed_piece([&](const std::string& file, const Pattern&, const Piece& piece) {
        const double drawn = geos.polygon(polygon_of(piece.outline, DartsDrawn::to_points)).area;
        const Geos::Polygon cloth = geos.polygon(polygon_of(piece.outline, DartsDrawn::to_pivots));
        double inner = 0;
        for (const DoubleDart& dart : piece.double_darts)
            inner += geos.polygon({dart.from, dart.widest[0], dart.to, dart.widest[1]}).area;
        if (!cloth.is_valid) return;  // what crosses itself has no one area
        EXPECT_NEAR(signed_area(piece.outline, DartsDrawn::to_points), drawn, relative * drawn) << file;
        EXPECT_NEAR(cloth_area(piece), cloth.area - inner, relative * cloth.area) << file;
    });
}

// A piece whose legs are drawn to the points is a simple polygon for GEOS exactly where no check says that
// its outline or a dart crosses.
TEST(geos, agrees_on_what_crosses_itself) {
    const Geos geos;
    int crossed = 0;
    for_each_closed_piece([&](const std::string& file, const Pattern& pattern, const Piece& piece) {
        bool is_crossing = false;
        for (const Finding& finding : check(pattern).findings) {
            const bool is_of_kind = finding.check == "outline-crossing" || finding.check == "dart-crossing";
            is_crossing |= is_of_kind && finding.piece == piece.name;
        }
        crossed += is_crossing;
        EXPECT_EQ(geos.polygon(polygon_of(piece.outline, DartsDrawn::to_points)).is_valid, !is_crossing)
            << file << ": " << piece.name;
    });
    EXPECT_GE(crossed, 2);
}

}  // namespace
}  // namespace dartwright
