#pragma once

// Private to the room: numbers of a request as words that give the same number when they are read again, and
// the reading of them.

#include <optional>
#include <string>
#include <vector>

#include "dartwright/pattern/pattern.hpp"

namespace dartwright {

/// `12.5mm`, `50%` (or a fraction over 1 where no per cent gives the share to the last bit), degrees. All in
/// plain decimals, as places and lengths are read. An angle for which there are no such degrees is written as
/// the nearest, one unit in the last place off.
std::string words_of_length(double mm);
std::string words_of_share(double share);
std::string words_of_angle(double rad);
std::string words_of_angle_deg(double deg);
/// `12.5mm,-3mm`
std::string words_of_point(Point point);

/// Reads the request of an operation of the `made` list, and knows what was not read.
class RequestWords {
  public:
    explicit RequestWords(const Made& made) : made_(made), is_read_(made.request.size()) {}

    bool has(const std::string& key) const;
    /// BadWords if the key is missing.
    std::string required(const std::string& key);
    /// Empty if the key is missing.
    std::string text(const std::string& key);
    /// BadWords if the key is missing or not a whole number.
    int whole(const std::string& key);
    std::optional<double> length_mm(const std::string& key);
    std::optional<Point> point(const std::string& key);
    std::optional<double> share(const std::string& key);
    std::optional<double> angle_rad(const std::string& key);
    std::optional<double> angle_deg(const std::string& key);
    /// BadWords if there is a key that was not asked for.
    void refuse_unread() const;

  private:
    const std::string* find(const std::string& key);

    const Made& made_;
    std::vector<bool> is_read_;
};

}  // namespace dartwright
