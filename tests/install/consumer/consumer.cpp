// A program of someone else's: moves a dart of the block named on its command line and draws the result.
#include <cstdio>
#include <dartwright/darts/pivot.hpp>
#include <dartwright/drawing/cairo_writer.hpp>
#include <dartwright/drawing/pattern_drawing.hpp>
#include <dartwright/files/pattern_file.hpp>

int main(int, char** arguments) {
    const auto block = dartwright::read_pattern_file(arguments[1]);
    const auto [moved, account] = dartwright::pivot(
        block, {.piece = "front", .dart = "waist dart", .to = "side@60/armhole", .name = "side dart"});
    const auto picture = dartwright::to_pdf(dartwright::draw_pattern(moved, {}));
    std::printf("%s %.2f %s\n", account.new_dart.c_str(), account.angle_rad * 57.29577951308232,
                picture.substr(0, 4).c_str());
}
