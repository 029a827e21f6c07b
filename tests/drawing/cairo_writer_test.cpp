#include "dartwright/drawing/cairo_writer.hpp"

#include <gtest/gtest.h>

#include <cstdint>
#include <cstdio>
#include <limits>

namespace dartwright {
namespace {

Drawing square_drawing() {
    Drawing drawing;
    drawing.width_mm = 140.3;
    drawing.height_mm = 120;
    drawing.title = "square";
    DrawnPath square = polygon({{10, 10}, {110, 10}, {110, 110}, {10, 110}}, {200, 180, 150});
    DrawnText text;
    text.words = "waist & <side> перед \x01";
    text.at = {20, 50};
    text.halo = Colour{255, 255, 255};
    drawing.groups.push_back({"square", {square, text}, {}});
    return drawing;
}

std::uint32_t big_endian(const std::string& bytes, std::size_t at) {
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < 4; ++i) value = (value << 8) | static_cast<unsigned char>(bytes[at + i]);
    return value;
}

TEST(cairo_writer, png_has_its_size_at_the_resolution) {
    const std::string png = to_png(square_drawing(), 2);
    ASSERT_EQ(png.substr(0, 8), "\x89PNG\r\n\x1A\n");
    EXPECT_EQ(big_endian(png, 16), 281u);  // 280.6 rounded up
    EXPECT_EQ(big_endian(png, 20), 240u);
}

TEST(cairo_writer, pdf_page_is_exactly_the_drawing) {
    const std::string pdf = to_pdf(square_drawing());
    const std::size_t at = pdf.find("/MediaBox");
    ASSERT_NE(at, std::string::npos);
    double width = 0;
    double height = 0;
    ASSERT_EQ(std::sscanf(pdf.c_str() + at, "/MediaBox [ 0 0 %lf %lf ]", &width, &height), 2);
    // Six decimals of a point are written: a thousandth of the thickness of a hair.
    EXPECT_NEAR(width, 140.3 * 72 / 25.4, 1e-5);
    EXPECT_NEAR(height, 120 * 72 / 25.4, 1e-5);
}

TEST(cairo_writer, same_drawing_same_bytes) {
    EXPECT_EQ(to_pdf(square_drawing()), to_pdf(square_drawing()));
    EXPECT_EQ(to_png(square_drawing(), 3), to_png(square_drawing(), 3));
    EXPECT_NE(to_pdf(square_drawing()).find("/CreationDate (20000101000000Z"), std::string::npos);
}

TEST(cairo_writer, pictures_too_large_say_how_large) {
    try {
        to_png(square_drawing(), 300);
        FAIL() << "nothing was thrown";
    } catch (const PictureTooLarge& too_large) {
        EXPECT_EQ(too_large.width_pixels, 42090);
        EXPECT_EQ(too_large.height_pixels, 36000);
    }
    EXPECT_THROW(to_png(square_drawing(), 1e300), PictureTooLarge);
}

TEST(cairo_writer, refuses_what_cannot_be_drawn) {
    EXPECT_THROW(to_png(square_drawing(), 0), std::invalid_argument);
    EXPECT_THROW(to_png(square_drawing(), std::numeric_limits<double>::quiet_NaN()), std::invalid_argument);
    EXPECT_THROW(to_pdf(Drawing{}), std::invalid_argument);
}

}  // namespace
}  // namespace dartwright
