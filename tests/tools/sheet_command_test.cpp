// sheet: the page to sew by, as HTML and PDF.

#include <gtest/gtest.h>

#include "tools/program.hpp"

namespace dartwright {
namespace {

const std::string bodice = source_folder + "/fixtures/workshop/chorus-bodice.json";

TEST(sheet_command, writes_html_to_standard_output) {
    const Ended ended = dartwright({"sheet", bodice, "--width", "140cm", "--date", "26 November"});
    ASSERT_EQ(ended.status, 0) << ended.err;
    EXPECT_EQ(ended.out.rfind("<!DOCTYPE html>", 0), 0u);
    for (const char* words :
         {"26 November", "Buy 45 cm or more of cloth", "take 44.32 cm", "Darts, in the order of sewing"})
        EXPECT_NE(ended.out.find(words), std::string::npos) << words;
}

TEST(sheet_command, writes_the_same_pdf_twice) {
    const Folder folder;
    for (const char* name : {"a.pdf", "b.pdf"}) {
        const Ended ended = dartwright({"sheet", bodice, "--width", "140cm", "-o", folder / name});
        ASSERT_EQ(ended.status, 0) << ended.err;
    }
    const std::string first = text_of_file(folder / "a.pdf");
    EXPECT_EQ(first.rfind("%PDF", 0), 0u);
    EXPECT_EQ(first, text_of_file(folder / "b.pdf"));
    const Ended again = dartwright({"sheet", bodice, "-o", folder / "a.pdf"});
    EXPECT_EQ(again.status, 2) << "it exists";
    EXPECT_EQ(text_of_file(folder / "a.pdf"), first);
}

// The size of a page as Poppler reads it, in points of 1/72 in (A4: ISO 216; letter: 8.5 by 11 in).
TEST(sheet_command, has_pages_of_the_paper) {
    const Folder folder;
    const auto page_of = [&](const std::vector<std::string>& more) {
        std::vector<std::string> words{"sheet", bodice, "-o", folder / "sheet.pdf", "--overwrite"};
        words.insert(words.end(), more.begin(), more.end());
        EXPECT_EQ(dartwright(words).status, 0);
        return shell("pdfinfo sheet.pdf | grep 'Page size' | head -1", folder.path()).out;
    };
    EXPECT_NE(page_of({}).find("595.276 x 841.89"), std::string::npos);
    EXPECT_NE(page_of({"--paper", "Letter"}).find("612 x 792"), std::string::npos);
    EXPECT_NE(page_of({"--paper", "tabloid"}).find("792 x 1224"), std::string::npos);
    EXPECT_TRUE(says_one_line(dartwright({"sheet", bodice, "-o", folder / "x.pdf", "--paper", "A0"}),
                              "--paper is A4, letter, A3 or tabloid, not 'A0'"));
}

TEST(sheet_command, says_what_is_gathered_and_what_is_a_fault) {
    const Folder folder;
    const std::string gathered = folder / "gathered.json";
    const std::string block = source_folder + "/fixtures/blocks/close-fitting.json";
    ASSERT_EQ(dartwright({"close", block, "--piece", "front", "--dart", "waist dart", "--as", "gathers", "-o",
                          gathered})
                  .status,
              0);
    ASSERT_EQ(dartwright({"sheet", gathered, "-o", folder / "sheet.pdf"}).status, 0);
    const Ended text = shell("pdftotext -layout sheet.pdf -", folder.path());
    EXPECT_NE(text.out.find("gather 14.0 to 10.0 cm"), std::string::npos) << text.out;
    const Ended fault = dartwright({"sheet", source_folder + "/fixtures/faults/seam-length.json"});
    EXPECT_NE(fault.out.find("a fault and not ease"), std::string::npos);
}

// What is printed, read by Poppler.
TEST(print_command, says_what_the_pieces_need) {
    const Folder folder;
    ASSERT_EQ(
        dartwright({"print", bodice, "--open", "--paper", "roll:914", "-o", folder / "pages.pdf"}).status, 0);
    const Ended text = shell("pdftotext pages.pdf - | tr '\\n' ' '", folder.path());
    for (const char* words : {"piece 1 of 2", "piece 2 of 2", "press to centre front", "press to left waist",
                              "press to centre back", "3.4 cm wide, 16.7 cm long", "left and right as drawn"})
        EXPECT_NE(text.out.find(words), std::string::npos) << words << "\n" << text.out;
    EXPECT_EQ(text.out.find("press to right neck"), std::string::npos);
}

TEST(sheet_command, refuses_in_one_line) {
    EXPECT_TRUE(says_one_line(dartwright({"sheet", bodice, "--gap", "5"}), "give its --width too"));
    EXPECT_TRUE(says_one_line(dartwright({"sheet", bodice, "-o", "sheet.doc"}), ".html or .pdf"));
    const Ended narrow = dartwright({"sheet", bodice, "--width", "30cm"});
    EXPECT_EQ(narrow.status, 4);
    EXPECT_TRUE(says_one_line(narrow, "wide"));
}

}  // namespace
}  // namespace dartwright
