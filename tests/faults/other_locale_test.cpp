// A program that has the library in it may have set a locale with decimal commas, in C or in C++: what is
// written is the same to the byte.

#include <array>
#include <cstdint>
#include <map>

#include "tools/program.hpp"

namespace dartwright {
namespace {

const std::filesystem::path other_locale = DARTWRIGHT_OTHER_LOCALE;
const std::string drafts = source_folder + "/fixtures/exercises/chorus-class/drafts";
const std::string block = source_folder + "/fixtures/blocks/close-fitting.json";

/// The numbers' part of a locale as the C library of Debian 12 reads it (the layout from memory; the program
/// is ended if it is not so): a magic number, how many fields, where each begins, the fields. Decimal point,
/// separator of thousands, grouping, the first two as wide characters, the coding.
std::string numbers_of_locale() {
    constexpr std::uint32_t magic = 0x20031114;
    const std::array<std::uint32_t, 8> head{magic, 6, 32, 34, 36, 40, 44, 48};
    std::string text(reinterpret_cast<const char*>(head.data()), sizeof head);
    text += std::string(",\0.\0\3\0\0\0", 8);
    const std::array<std::uint32_t, 2> wide{',', '.'};
    text.append(reinterpret_cast<const char*>(wide.data()), sizeof wide);
    return text += std::string("UTF-8\0", 6);
}

Ended with_commas(const std::vector<std::string>& words, const Folder& locales) {
    Process process = dartwright_with(words);
    process.folder = other_locale.parent_path().string();
    process.settings = {"LD_PRELOAD=./" + other_locale.filename().string(), "LOCPATH=" + locales.path()};
    return support::run(process);
}

/// Every writer of the library, and what is said of it; those that write a file end in `-o` and its ending.
std::vector<std::vector<std::string>> all_writers() {
    std::vector<std::vector<std::string>> all{
        {"check", bodice},
        {"check", bodice, "--format", "json"},
        {"check", source_folder + "/fixtures/faults", source_folder + "/fixtures/workshop"},
        {"check", source_folder + "/fixtures/faults", "--format", "json"},
        {"show", bodice},
        {"show", bodice, "--format", "json"},
        {"walk", bodice},
        {"walk", bodice, "--format", "json"},
        {"compare", block, bodice},
        {"compare", block, bodice, "--format", "json"},
        {"pivot", block, "--piece", "front", "--dart", "waist dart", "--to", "side@60.5/armhole"},
        {"pivot", block, "--piece", "front", "--dart", "waist dart", "--to", "side@6000.25/armhole"},
        {"pivot", block, "--piece", "front", "--dart", "waist dart", "--to", "side@60/armhole", "--angle",
         "170"},
        {"split", block, "--piece", "front", "--dart", "waist dart", "--to", "side@60/armhole=37.5%", "--to",
         "armhole@50%=20%"},
        {"close", block, "--piece", "front", "--dart", "waist dart", "--as", "gathers"},
        {"true", block, "--piece", "front", "--dart", "waist dart", "--span", "0.01"},
        {"repoint", block, "--piece", "front", "--dart", "waist dart", "--back-off", "12.5"},
        {"cut", bodice, "--rule", source_folder + "/fixtures/rules/toile.json"},
        {"lay", bodice, "--width", "140cm"},
        {"lay", bodice, "--width", "140cm", "--format", "json"},
        {"draw", bodice},
        {"draw", bodice, "--cutting"},
        {"draw", bodice, "-o", "drawn.png"},
        {"draw", bodice, "-o", "drawn.pdf"},
        {"print", bodice, "-o", "pages.pdf"},
        {"sheet", bodice, "--width", "140cm", "-o", "sheet.html"},
        {"sheet", bodice, "--width", "140cm", "-o", "sheet.pdf"},
        {"assess", exercise, "--exercise"},
        {"assess", exercise, "--exercise", "--format", "json"},
    };
    for (const char* format : {"text", "json", "csv", "junit", "tap", "html"})
        all.push_back({"assess", exercise, drafts, "--format", format});
    return all;
}

TEST(other_locale, changes_no_byte_of_what_is_written) {
    Folder locales;
    std::filesystem::create_directories(locales / "comma");
    locales.add("comma/LC_NUMERIC", numbers_of_locale());
    std::size_t with_decimals = 0;
    for (std::vector<std::string> words : all_writers()) {
        Folder folder;
        const bool has_file = words[words.size() - 2] == "-o";
        if (has_file) words.back() = folder / words.back();
        std::array<Ended, 2> ended;
        std::array<std::string, 2> files;
        for (const std::size_t i : {0U, 1U}) {
            ended[i] = i == 0 ? dartwright(words) : with_commas(words, locales);
            if (has_file) {
                files[i] = text_of_file(words.back());
                std::filesystem::remove(words.back());
            }
        }
        std::string told;
        for (const std::string& word : words) told += word + " ";
        SCOPED_TRACE(told);
        EXPECT_LE(ended[0].status, 4) << ended[0].err;
        EXPECT_NE(ended[0].out + ended[0].err + files[0], "");
        EXPECT_EQ(ended[1].status, ended[0].status) << ended[1].err;
        EXPECT_EQ(ended[1].out, ended[0].out);
        EXPECT_EQ(ended[1].err, ended[0].err);
        EXPECT_TRUE(files[1] == files[0]);
        if ((ended[0].out + ended[0].err).find_first_of('.') != std::string::npos) ++with_decimals;
    }
    EXPECT_GT(with_decimals, 20U);
}

}  // namespace
}  // namespace dartwright
