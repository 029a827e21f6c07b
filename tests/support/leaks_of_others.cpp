// For the leak sanitizer: what a library we use keeps for as long as the program runs. For the thread
// sanitizer: a library that was not built with it, whose locks it does not see. It stands in the program, and
// not in a file that an option names, because the options cannot name every path.

extern "C" const char* __lsan_default_suppressions();
extern "C" const char* __lsan_default_options();
extern "C" const char* __tsan_default_suppressions();

/// Fontconfig holds the fonts that it has found behind offsets, which the sanitizer cannot follow; the amount
/// (some hundred kilobytes) does not grow with the number of drawings. GEOS, by which tests judge, drops the
/// rings that it was putting together when it gives up on a shape.
extern "C" const char* __lsan_default_suppressions() {
    return "leak:libfontconfig\n"
           "leak:geos::operation::overlay::PolygonBuilder::buildMaximalEdgeRings\n"
           "leak:geos::operation::overlay::MaximalEdgeRing::buildMinimalRings\n";
}

/// Pango lets a thread of its own load the fonts.
extern "C" const char* __tsan_default_suppressions() {
    return "race:libfontconfig\ncalled_from_lib:libfontconfig\n";
}

extern "C" const char* __lsan_default_options() {
    return "print_suppressions=0";
}
