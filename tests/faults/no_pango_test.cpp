// The libraries that draw and set words are loaded when they are needed, and may not be there.

#include "tools/program.hpp"

namespace dartwright {
namespace {

const std::filesystem::path broken_calls = DARTWRIGHT_BROKEN_CALLS;

Ended without(const std::string& libraries, const std::vector<std::string>& words) {
    Process process = dartwright_with(words);
    process.folder = broken_calls.parent_path().string();
    process.settings = {"LD_PRELOAD=./" + broken_calls.filename().string(), "FAULT_LIBRARY=" + libraries};
    return support::run(process);
}

Ended without_pango(const std::vector<std::string>& words) {
    return without("pangocairo", words);
}

TEST(no_pango, svg_is_drawn_with_the_same_places) {
    for (const std::vector<std::string>& words :
         std::vector<std::vector<std::string>>{{"draw", bodice}, {"draw", bodice, "--cutting"}}) {
        const Ended ended = without_pango(words);
        EXPECT_EQ(ended.status, 0) << ended.err;
        EXPECT_EQ(ended.out, dartwright(words).out);
        EXPECT_FALSE(ended.out.empty());
    }
}

TEST(no_pango, pictures_with_words_are_refused_in_one_line) {
    Folder folder;
    for (const std::vector<std::string>& words : std::vector<std::vector<std::string>>{
             {"draw", bodice, "-o", folder / "a.png"},
             {"draw", bodice, "-o", folder / "a.pdf"},
             {"print", bodice, "-o", folder / "b.pdf"},
             {"sheet", bodice, "--width", "140cm", "-o", folder / "c.pdf"}}) {
        const Ended ended = without_pango(words);
        EXPECT_EQ(ended.status, 3);
        EXPECT_TRUE(says_one_line(ended, "Pango")) << ended.err;
        EXPECT_EQ(ended.err.find("internal"), ended.err.npos) << ended.err;
    }
    EXPECT_TRUE(folder.names().empty());
}

TEST(no_pango, it_is_not_needed_where_nothing_is_drawn) {
    EXPECT_EQ(without_pango({"check", bodice}).out, dartwright({"check", bodice}).out);
}

TEST(no_cairo, what_draws_is_refused_in_one_line) {
    Folder folder;
    for (const std::vector<std::string>& words : std::vector<std::vector<std::string>>{
             {"draw", bodice},
             {"draw", bodice, "-o", folder / "a.png"},
             {"print", bodice, "-o", folder / "b.pdf"},
             {"sheet", bodice, "--width", "140cm", "-o", folder / "c.pdf"}}) {
        const Ended ended = without("cairo", words);
        EXPECT_EQ(ended.status, 3);
        EXPECT_TRUE(says_one_line(ended, "Cairo (Debian's package libcairo2) cannot be loaded")) << ended.err;
        EXPECT_EQ(ended.err.find("internal"), ended.err.npos) << ended.err;
    }
    EXPECT_TRUE(folder.names().empty());
}

TEST(no_cairo, it_is_not_needed_where_nothing_is_drawn) {
    for (const std::vector<std::string>& words : std::vector<std::vector<std::string>>{
             {"check", bodice}, {"show", bodice}, {"compare", bodice, bodice}}) {
        const Ended ended = without("cairo", words);
        EXPECT_EQ(ended.status, 0) << ended.err;
        EXPECT_EQ(ended.out, dartwright(words).out);
    }
}

// Those who make packages read it there.
TEST(no_pango, what_is_loaded_later_stands_in_the_program) {
    const Ended ended = shell(
        "readelf --notes '" DARTWRIGHT_PROGRAM "'; readelf -p .note.dlopen '" DARTWRIGHT_PROGRAM "'", "/");
    EXPECT_EQ(ended.status, 0) << ended.err;
    EXPECT_NE(ended.out.find("FDO"), ended.out.npos) << ended.out;
    for (const char* library : {"libpangocairo-1.0.so.0", "libcairo.so.2"})
        EXPECT_NE(ended.out.find("\"soname\":[\"" + std::string(library) + "\"]"), ended.out.npos)
            << ended.out;
}

}  // namespace
}  // namespace dartwright
