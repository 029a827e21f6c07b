#include "dartwright/darts/recording/unit_of_request.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "dartwright/pattern/place.hpp"

namespace dartwright {
namespace {

bool is_length(const std::string& words) {
    try {
        parse_length(words);
        return true;
    } catch (const BadWords&) {
        return false;
    }
}

bool has_no_unit(const std::string& words) {
    return is_length(words) && is_length(words + "mm");
}

std::string point_with_unit(const std::string& words, Unit unit) {
    const std::size_t comma = words.find(',');
    if (comma == std::string::npos) return words;
    const std::size_t second = std::min(words.find_first_not_of(' ', comma + 1), words.size());
    return length_with_unit(words.substr(0, comma), unit) + "," +
           length_with_unit(words.substr(second), unit);
}

// `DISTANCE/FROM`: the longest distance that the words allow, as places are read.
std::string distance_with_unit(const std::string& words, Unit unit) {
    for (std::size_t end = words.size(); end != std::string::npos && end > 0;
         end = words.rfind('/', end - 1)) {
        const std::string distance = words.substr(0, end);
        if (is_length(distance)) return length_with_unit(distance, unit) + words.substr(end);
    }
    return words;
}

// `EDGE@DISTANCE/FROM`, of the longest edge that fits.
std::string place_with_unit(const std::string& words, Unit unit, const Piece& piece) {
    std::size_t before = 0;
    for (const OutlineItem& item : piece.outline.items) {
        const auto* edge = item.as_edge();
        if (!edge || edge->edge.size() < before) continue;
        const std::string start = edge->edge + "@";
        if (words.compare(0, start.size(), start) == 0) before = start.size();
    }
    if (before == 0) return words;
    return words.substr(0, before) + distance_with_unit(words.substr(before), unit);
}

bool is_one_of(std::string_view key, std::initializer_list<std::string_view> keys) {
    return std::find(keys.begin(), keys.end(), key) != keys.end();
}

bool is_length_key(const std::string& key) {
    for (const ToleranceName& tolerance : tolerance_names())
        if (key == std::string("tolerance ") + tolerance.name) return !tolerance.is_angle;
    return is_one_of(key, {"intake", "back_off", "apart", "span", "round", "notch", "stitched"});
}

bool is_place_key(const std::string& key) {
    return key == "to" || key.compare(0, 3, "to ") == 0;
}

// A place of a split has its share behind it.
std::string shared_place_with_unit(const std::string& words, Unit unit, const Piece& piece) {
    const std::size_t sign = words.rfind('=');
    if (sign == std::string::npos) return place_with_unit(words, unit, piece);
    return place_with_unit(words.substr(0, sign), unit, piece) + words.substr(sign);
}

std::string value_with_unit(const Made& made, const std::string& key, const std::string& words, Unit unit,
                            const Piece& piece) {
    if (is_length_key(key)) return length_with_unit(words, unit);
    if (is_one_of(key, {"point", "pivot", "from"})) return point_with_unit(words, unit);
    if (!is_place_key(key)) return words;
    return made.operation == "split" ? shared_place_with_unit(words, unit, piece)
                                     : place_with_unit(words, unit, piece);
}

const Piece* piece_of(const Made& made, const Pattern& pattern) {
    for (const auto& [key, words] : made.request) {
        if (key != "piece") continue;
        for (const Piece& piece : pattern.pieces)
            if (piece.name == words) return &piece;
    }
    return nullptr;
}

}  // namespace

std::string length_with_unit(const std::string& words, Unit unit) {
    return has_no_unit(words) ? words + word_of(unit) : words;
}

Made request_with_unit(const Made& made, Unit unit, const Pattern& pattern) {
    // A seam is trued without naming a piece, and has no places.
    static const Piece no_piece;
    const Piece* piece = piece_of(made, pattern);
    Made out = made;
    for (auto& [key, words] : out.request)
        words = value_with_unit(made, key, words, unit, piece ? *piece : no_piece);
    return out;
}

}  // namespace dartwright
