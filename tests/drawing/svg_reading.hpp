#pragma once

// What the tests read back from an SVG.

#include <gtest/gtest.h>

#include <cstdlib>
#include <pugixml.hpp>
#include <sstream>
#include <string>
#include <vector>

#include "dartwright/geometry/point.hpp"

namespace dartwright::testing_svg {

/// Parsed strictly; the test fails if the text is not well-formed.
inline pugi::xml_document parsed(const std::string& svg) {
    pugi::xml_document document;
    const pugi::xml_parse_result result =
        document.load_buffer(svg.data(), svg.size(), pugi::parse_full, pugi::encoding_utf8);
    EXPECT_TRUE(result) << result.description() << " at " << result.offset;
    return document;
}

/// The group with that title directly inside the node.
inline pugi::xml_node group_titled(pugi::xml_node parent, const std::string& title) {
    for (const pugi::xml_node node : parent.children("g"))
        if (node.child("title").text().get() == title) return node;
    return {};
}

/// The points that a path's data names, control points too, with y turned up again.
inline std::vector<Point> points_of_path(const std::string& data) {
    std::string numbers = data;
    for (char& c : numbers)
        if (c == 'M' || c == 'L' || c == 'C' || c == 'Z') c = ' ';
    std::istringstream stream(numbers);
    stream.imbue(std::locale::classic());
    std::vector<Point> points;
    for (double x, y; stream >> x >> y;) points.push_back({x, -y});
    return points;
}

inline std::vector<std::string> words_in(pugi::xml_node node) {
    std::vector<std::string> words;
    for (const auto& found : node.select_nodes(".//text")) words.push_back(found.node().text().get());
    return words;
}

}  // namespace dartwright::testing_svg
