#include "dartwright/drawing/svg_writer.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <set>

#include "drawing/svg_reading.hpp"

namespace dartwright {
namespace {

using namespace testing_svg;

Drawing square_drawing() {
    Drawing drawing;
    drawing.width_mm = 140;
    drawing.height_mm = 120.5;
    drawing.title = "a square of 100 mm";
    DrawnPath square = polygon({{10, 10}, {110, 10}, {110, 110}, {10, 110}}, {1, 2, 3});
    square.stroke = Stroke{{255, 0, 128}, 0.5, {3, 2}};
    drawing.groups.push_back({"square", {square}, {}});
    return drawing;
}

Drawing with_words(const std::string& words) {
    Drawing drawing = square_drawing();
    DrawnText text;
    text.words = words;
    text.at = {20, 30};
    drawing.title = words;
    drawing.groups.push_back({words, {text}, {}});
    return drawing;
}

TEST(svg_writer, has_its_true_size_in_mm) {
    const pugi::xml_document document = parsed(to_svg(square_drawing()));
    const pugi::xml_node svg = document.child("svg");
    EXPECT_STREQ(svg.attribute("width").value(), "140mm");
    EXPECT_STREQ(svg.attribute("height").value(), "120.5mm");
    EXPECT_STREQ(svg.attribute("viewBox").value(), "0 0 140 120.5");
    EXPECT_STREQ(svg.child("title").text().get(), "a square of 100 mm");
}

TEST(svg_writer, paths_keep_their_places_with_y_turned_down) {
    const pugi::xml_document document = parsed(to_svg(square_drawing()));
    const pugi::xml_node path = group_titled(document.child("svg"), "square").child("path");
    EXPECT_STREQ(path.attribute("d").value(), "M10 110.5 L110 110.5 L110 10.5 L10 10.5 Z");
    EXPECT_STREQ(path.attribute("fill").value(), "#010203");
    EXPECT_STREQ(path.attribute("stroke").value(), "#ff0080");
    EXPECT_STREQ(path.attribute("stroke-dasharray").value(), "3 2");
}

TEST(svg_writer, dashes_begin_where_the_line_does) {
    const auto offset_of = [](double begin_mm) {
        Stroke stroke{{0, 0, 0}, 0.5, {3, 2}};
        stroke.dash_begin_mm = begin_mm;
        const DrawnGroup line{"line", {polyline({{0, 0}, {50, 0}}, stroke)}, {}};
        const pugi::xml_document document = parsed(to_svg(Drawing{60, 10, {}, "", {line}}));
        const pugi::xml_node path = group_titled(document.child("svg"), "line").child("path");
        return std::string(path.attribute("stroke-dashoffset").value());
    };
    EXPECT_EQ(offset_of(0), "") << "as if nothing were said";
    EXPECT_EQ(offset_of(3.5), "3.5");
}

TEST(svg_writer, same_drawing_same_bytes) {
    EXPECT_EQ(to_svg(square_drawing()), to_svg(square_drawing()));
}

TEST(svg_writer, markup_in_names_stays_words) {
    const std::string words = "</text><script>alert('&')</script> \"waist\" ]]>";
    const std::string svg = to_svg(with_words(words));
    EXPECT_EQ(svg.find("<script"), std::string::npos);
    const pugi::xml_document document = parsed(svg);
    const pugi::xml_node group = group_titled(document.child("svg"), words);
    ASSERT_TRUE(group);
    EXPECT_EQ(words_in(group), std::vector<std::string>{words});
}

TEST(svg_writer, names_in_any_script_and_with_controls_are_safe) {
    const pugi::xml_document document = parsed(to_svg(with_words("пе\x01ред\x1B\xFF 前")));
    EXPECT_TRUE(group_titled(document.child("svg"), "перед\xEF\xBF\xBD 前"));
}

TEST(svg_writer, ids_are_xml_names_and_differ) {
    Drawing drawing = square_drawing();
    for (const char* name : {"1 side", "1-side", "", "перед", "front"})
        drawing.groups.push_back({name, {}, {{"outline", {}, {}}}});
    const pugi::xml_document document = parsed(to_svg(drawing));
    std::set<std::string> ids;
    std::size_t count = 0;
    for (const auto& found : document.select_nodes("//g")) {
        const std::string id = found.node().attribute("id").value();
        EXPECT_EQ(id.rfind("g-", 0), 0u) << id;
        EXPECT_EQ(id.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789.-"), std::string::npos) << id;
        ids.insert(id);
        ++count;
    }
    EXPECT_EQ(count, 11u);
    EXPECT_EQ(ids.size(), count);
    EXPECT_EQ(ids.count("g-front.outline"), 1u);
}

TEST(svg_writer, refuses_numbers_that_are_none) {
    Drawing drawing = square_drawing();
    DrawnText text;
    text.at = {std::numeric_limits<double>::quiet_NaN(), 0};
    drawing.groups.push_back({"words", {text}, {}});
    EXPECT_THROW(to_svg(drawing), std::invalid_argument);
}

}  // namespace
}  // namespace dartwright
