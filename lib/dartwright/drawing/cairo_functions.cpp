#include "dartwright/drawing/cairo_functions.hpp"

namespace dartwright {

namespace {

#define DARTWRIGHT_CAIRO_FILE "libcairo.so.2"

[[gnu::section(".note.dlopen"), gnu::used, gnu::aligned(4)]] constexpr auto note_of_cairo = loading_note(
    R"([{"feature":"pictures","description":"Pictures and pages","priority":"required","soname":[")" DARTWRIGHT_CAIRO_FILE
    R"("]}])");

}  // namespace

const LoadedLibrary& cairo_library() {
    static const LoadedLibrary loaded(DARTWRIGHT_CAIRO_FILE);
    return loaded;
}

const CairoFunctions& cairo() {
    static const CairoFunctions functions;
    return functions;
}

CairoMissing::CairoMissing(const std::string& reason)
    : Error(ErrorKind::library_missing,
            "nothing can be drawn, since Cairo (Debian's package libcairo2) cannot be loaded: " + reason) {}

}  // namespace dartwright
