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
    passing_.resize(begins_.size() - 1);
    rightmost_.resize(sides_.size());
    for (std::size_t band = 0; band < passing_.size(); ++band) sort_passing(band);
}

double PolygonIndex::left_of(std::uint32_t side) const {
    return std::min(polygon_[side].x, polygon_[next_of(polygon_, side)].x);
}
double PolygonIndex::right_of(std::uint32_t side) const {
    return std::max(polygon_[side].x, polygon_[next_of(polygon_, side)].x);
}

// The band grows with y, so that a side with its ends in other bands on either side passes every point of
// this.
void PolygonIndex::sort_passing(std::size_t band) {
    const auto from = sides_.begin() + begins_[band];
    const auto to = sides_.begin() + begins_[band + 1];
    const auto passing = std::partition(from, to, [&](std::uint32_t side) {
        const auto [low, high] = std::minmax(polygon_[side].y, polygon_[next_of(polygon_, side)].y);
        return band_of(low) == band || band_of(high) == band;
    });
    std::sort(passing, to, [&](std::uint32_t a, std::uint32_t b) { return left_of(a) < left_of(b); });
    passing_[band] = static_cast<std::uint32_t>(passing - sides_.begin());
    double rightmost = -INFINITY;
    for (auto side = passing; side != to; ++side)
        rightmost_[static_cast<std::size_t>(side - sides_.begin())] = rightmost =
            std::max(rightmost, right_of(*side));
}

// Rounding cannot put a point into another band than a side that it is level with: the band grows with y.
std::size_t PolygonIndex::band_of(double y) const {
    return static_cast<std::size_t>((y - low_) * bands_per_mm_);
}

Where PolygonIndex::where(Point p) const {
    if (!(p.y >= low_ && p.y <= high_)) return Where::outside;
    SideCount count(p);
    const std::size_t band = band_of(p.y);
    const auto is_on_side = [&](std::size_t k) {
        return count.pass(polygon_[sides_[k]], polygon_[next_of(polygon_, sides_[k])]);
    };
    for (std::size_t k = begins_[band]; k < passing_[band]; ++k)
        if (is_on_side(k)) return Where::boundary;
    // Those that begin right of the point are met by its ray; of the others, those that end left of it not.
    const auto from = sides_.begin() + passing_[band];
    const auto to = sides_.begin() + begins_[band + 1];
    const auto right =
        std::upper_bound(from, to, p.x, [&](double x, std::uint32_t side) { return x < left_of(side); });
    for (auto k = static_cast<std::size_t>(right - sides_.begin());
         k > passing_[band] && rightmost_[k - 1] >= p.x; --k)
        if (is_on_side(k - 1)) return Where::boundary;
    const bool is_turned = (to - right) % 2 != 0;
    return (count.where() == Where::inside) != is_turned ? Where::inside : Where::outside;
}

}  // namespace dartwright
