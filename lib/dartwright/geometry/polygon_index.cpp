#include "dartwright/geometry/polygon_index.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/geometry/side_count.hpp"

namespace dartwright {
namespace {

/// A side lies in so many bands on the average at most, so that a polygon of long upright sides takes no more
/// memory than its corners are worth.
constexpr double most_bands_of_side = 8;

std::size_t next_of(std::span<const Point> polygon, std::size_t i) {
    return i + 1 == polygon.size() ? 0 : i + 1;
}

}  // namespace

PolygonIndex::PolygonIndex(std::span<const Point> polygon) : polygon_(polygon) {
    if (polygon.empty()) return;
    low_ = high_ = polygon.front().y;
    double risen = 0;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        low_ = std::min(low_, polygon[i].y);
        high_ = std::max(high_, polygon[i].y);
        risen += std::abs(polygon[next_of(polygon, i)].y - polygon[i].y);
    }
    const auto sides = static_cast<double>(polygon.size());
    const double least_height = std::max((high_ - low_) / sides, risen / (most_bands_of_side * sides));
    bands_per_mm_ = least_height > 0 && std::isfinite(1 / least_height) ? 1 / least_height : 0;
    begins_.assign(band_of(high_) + 2, 0);
    const auto each_band = [&](const auto& take) {
        for (std::size_t i = 0; i < polygon.size(); ++i) {
            const auto [from, to] = std::minmax(polygon[i].y, polygon[next_of(polygon, i)].y);
            const std::size_t last = band_of(to);
            for (std::size_t band = band_of(from); band <= last; ++band) take(band, i);
        }
    };
    each_band([&](std::size_t band, std::size_t) { ++begins_[band + 1]; });
    for (std::size_t band = 1; band < begins_.size(); ++band) begins_[band] += begins_[band - 1];
    sides_.resize(begins_.back());
    std::vector<std::uint32_t> next(begins_.begin(), begins_.end() - 1);
    each_band([&](std::size_t band, std::size_t i) { sides_[next[band]++] = static_cast<std::uint32_t>(i); });
}

// Rounding cannot put a point into another band than a side that it is level with: the band grows with y.
std::size_t PolygonIndex::band_of(double y) const {
    return static_cast<std::size_t>((y - low_) * bands_per_mm_);
}

Where PolygonIndex::where(Point p) const {
    if (!(p.y >= low_ && p.y <= high_)) return Where::outside;
    SideCount count(p);
    const std::size_t band = band_of(p.y);
    for (std::size_t k = begins_[band]; k < begins_[band + 1]; ++k)
        if (count.pass(polygon_[sides_[k]], polygon_[next_of(polygon_, sides_[k])])) return Where::boundary;
    return count.where();
}

}  // namespace dartwright
