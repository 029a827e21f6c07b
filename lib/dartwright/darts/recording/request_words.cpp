#include "dartwright/darts/recording/request_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/point.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {
namespace {

std::string plain(double value) {
    if (!std::isfinite(value)) throw BadWords("a number asked for is not finite; expected one that is");
    return plain_decimal(value);
}

// Of the numbers within two steps of `near`, the shortest for which `gives` is true; empty if there is none.
template <class Gives>
std::string shortest_near(double near, const Gives& gives) {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    const double below = std::nextafter(near, -infinity);
    const double above = std::nextafter(near, infinity);
    std::string best;
    for (const double candidate :
         {near, below, above, std::nextafter(below, -infinity), std::nextafter(above, infinity)}) {
        const std::string words = plain(candidate);
        if (gives(candidate) && (best.empty() || words.size() < best.size())) best = words;
    }
    return best;
}

}  // namespace

std::string words_of_length(double mm) {
    return plain(mm) + "mm";
}

std::string words_of_share(double share) {
    const std::string per_cent = shortest_near(share * 100, [share](double p) { return p / 100 == share; });
    return per_cent.empty() ? plain(share) + "/1" : per_cent + "%";
}

std::string words_of_angle(double rad) {
    const std::string exact = shortest_near(degrees(rad), [rad](double deg) { return radians(deg) == rad; });
    return exact.empty() ? plain(degrees(rad)) : exact;
}

std::string words_of_angle_deg(double deg) {
    return plain(deg);
}

std::string words_of_point(Point point) {
    return words_of_length(point.x) + "," + words_of_length(point.y);
}

bool RequestWords::has(const std::string& key) const {
    return std::any_of(made_.request.begin(), made_.request.end(),
                       [&key](const auto& entry) { return entry.first == key; });
}

const std::string* RequestWords::find(const std::string& key) {
    for (std::size_t i = 0; i < made_.request.size(); ++i) {
        if (made_.request[i].first != key) continue;
        is_read_[i] = true;
        return &made_.request[i].second;
    }
    return nullptr;
}

std::string RequestWords::required(const std::string& key) {
    if (const std::string* words = find(key)) return *words;
    throw BadWords(quoted(key) + " is missing from the request");
}

std::string RequestWords::text(const std::string& key) {
    const std::string* words = find(key);
    return words ? *words : "";
}

int RequestWords::whole(const std::string& key) {
    return parse_whole(required(key));
}

std::optional<double> RequestWords::length_mm(const std::string& key) {
    const std::string* words = find(key);
    return words ? std::optional(parse_length(*words)) : std::nullopt;
}

std::optional<Point> RequestWords::point(const std::string& key) {
    const std::string* words = find(key);
    return words ? std::optional(parse_point(*words)) : std::nullopt;
}

std::optional<double> RequestWords::share(const std::string& key) {
    const std::string* words = find(key);
    return words ? std::optional(parse_share(*words)) : std::nullopt;
}

std::optional<double> RequestWords::angle_deg(const std::string& key) {
    const std::string* words = find(key);
    return words ? std::optional(parse_angle_deg(*words)) : std::nullopt;
}

std::optional<double> RequestWords::angle_rad(const std::string& key) {
    const auto deg = angle_deg(key);
    return deg ? std::optional(radians(*deg)) : std::nullopt;
}

void RequestWords::refuse_unread() const {
    for (std::size_t i = 0; i < made_.request.size(); ++i) {
        if (is_read_[i]) continue;
        throw BadWords("the request has " + quoted(made_.request[i].first) + ", which " + made_.operation +
                       " does not know");
    }
}

}  // namespace dartwright
