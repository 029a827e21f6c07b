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
    for (const char* words : {"26 November", "Buy 45 cm or more of cloth", "take 44.32 cm", "Darts, in the order of sewing"})
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

TEST(sheet_command, refuses_in_one_line) {
    EXPECT_TRUE(says_one_line(dartwright({"sheet", bodice, "--gap", "5"}), "give its --width too"));
    EXPECT_TRUE(says_one_line(dartwright({"sheet", bodice, "-o", "sheet.doc"}), ".html or .pdf"));
    const Ended narrow = dartwright({"sheet", bodice, "--width", "30cm"});
    EXPECT_EQ(narrow.status, 4);
    EXPECT_TRUE(says_one_line(narrow, "wide"));
}

}  // namespace
}  // namespace dartwright
