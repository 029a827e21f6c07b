#pragma once

#include "geometry/generators.hpp"
#include "support/evenly.hpp"

namespace dartwright::generated {

/// Corners on a small grid, so that every kind of touching turns up often.
inline rc::Gen<Point> grid_point() {
    return rc::gen::map(rc::gen::pair(testing::evenly(0, 7), testing::evenly(0, 7)),
                        [](const std::pair<int, int>& p) {
                            return Point{static_cast<double>(p.first), static_cast<double>(p.second)};
                        });
}

/// Moves a coordinate by a few units in the last place.
inline double nudged(double value, int steps) {
    for (; steps > 0; --steps) value = std::nextafter(value, 1e9);
    for (; steps < 0; ++steps) value = std::nextafter(value, -1e9);
    return value;
}

/// Grid corners divided by 7 and nudged: nearly collinear, nearly touching.
inline rc::Gen<Point> near_grid_point() {
    const auto steps = testing::evenly(-1, 2);
    return rc::gen::map(rc::gen::tuple(grid_point(), steps, steps), [](const std::tuple<Point, int, int>& p) {
        const auto& [place, x, y] = p;
        return Point{nudged(place.x / 7, x), nudged(place.y / 7, y)};
    });
}

inline std::vector<Point> without_repeats(std::vector<Point> p) {
    p.erase(std::unique(p.begin(), p.end()), p.end());
    while (p.size() > 1 && p.front() == p.back()) p.pop_back();
    return p;
}

/// Neighbouring corners differ; there are at least three.
inline rc::Gen<std::vector<Point>> polygon(const rc::Gen<Point>& corner, std::size_t most = 11) {
    return rc::gen::suchThat(rc::gen::mapcat(testing::evenly<std::size_t>(3, most),
                                             [corner](std::size_t n) {
                                                 return rc::gen::map(
                                                     rc::gen::container<std::vector<Point>>(n, corner),
                                                     without_repeats);
                                             }),
                             [](const std::vector<Point>& p) { return p.size() >= 3; });
}

}  // namespace dartwright::generated
