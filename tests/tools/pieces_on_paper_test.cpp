// draw --cutting and print: the pieces as they are cut, as a picture and on pages.

#include <gtest/gtest.h>

#include <pugixml.hpp>

#include "tools/program.hpp"

namespace dartwright {
namespace {

std::vector<std::string> labels_of_layers(const pugi::xml_node& group) {
    std::vector<std::string> labels;
    for (const pugi::xml_node inner : group.children("g")) {
        labels.push_back(inner.child_value("title"));
    }
    return labels;
}

bool has_words(const pugi::xml_node& node, const std::string& words) {
    return !node.select_node((".//*[local-name()='text'][contains(., '" + words + "')]").c_str())
                .node()
                .empty();
}

TEST(draw_command, draws_a_cut_piece_in_named_layers_at_true_size) {
    const Ended drawn =
        dartwright({"draw", bodice, "--cutting", "--size", "size 12", "--date", "spring term"});
    ASSERT_EQ(drawn.status, 0) << drawn.err;
    pugi::xml_document document;
    ASSERT_TRUE(document.load_string(drawn.out.c_str()));
    const pugi::xml_node svg = document.child("svg");
    const std::string width = svg.attribute("width").value();
    ASSERT_EQ(width.substr(width.size() - 2), "mm");
    std::istringstream box(svg.attribute("viewBox").value());
    double left = 1, top = 1, box_width = 0;
    box >> left >> top >> box_width;
    EXPECT_NEAR(std::stod(width), box_width, 1e-9) << "a unit of the picture is a millimetre";
    const std::vector<std::string> layers = labels_of_layers(svg);
    for (const char* piece : {"front", "back"})
        EXPECT_EQ(std::count(layers.begin(), layers.end(), piece), 1) << piece;
    for (const pugi::xml_node layer : svg.children("g")) {
        if (std::string(layer.child_value("title")) != "front") continue;
        const std::vector<std::string> inner = labels_of_layers(layer);
        for (const char* name :
             {"cutting line", "stitching line", "darts", "notches", "grain", "fold", "words"})
            EXPECT_EQ(std::count(inner.begin(), inner.end(), name), 1) << name;
        for (const char* words : {"front", "cut 1 on the fold", "size 12", "spring term", "allowance"})
            EXPECT_TRUE(has_words(layer, words)) << words;
    }
}

TEST(print_command, says_on_which_pages_a_piece_is) {
    const Folder folder;
    const Ended printed = dartwright({"print", bodice, "-o", folder / "pages.pdf", "--format", "json"});
    ASSERT_EQ(printed.status, 0) << printed.err;
    const Json account = Json::parse(printed.out);
    EXPECT_EQ(account["paper"], "A4");
    EXPECT_EQ(account["page"], Json({210, 297}));
    EXPECT_EQ(account["pages"], account["tiles"].size() + 1) << "and the cover";
    ASSERT_EQ(account["pieces"].size(), 2u);
    for (const Json& piece : account["pieces"]) {
        EXPECT_FALSE(piece["tiles"].empty());
        for (const Json& tile : piece["tiles"])
            EXPECT_EQ(std::count(account["tiles"].begin(), account["tiles"].end(), tile), 1) << tile;
    }
}

TEST(print_command, says_where_no_allowance_is_decided) {
    const Folder folder;
    Json pattern = Json::parse(text_of_file(bodice));
    pattern["pieces"][0]["allowance"].erase("waist");
    const std::string words = "front: no allowance is decided for waist: there is none there";
    const Ended printed = dartwright({"print", "-", "-o", folder / "pages.pdf"}, pattern.dump());
    ASSERT_EQ(printed.status, 0) << printed.err;
    EXPECT_NE(printed.out.find("note: " + words), std::string::npos) << printed.out;
    const Ended drawn = dartwright({"draw", "-", "--cutting", "-o", folder / "bodice.svg"}, pattern.dump());
    EXPECT_NE((drawn.out + drawn.err).find(words), std::string::npos) << drawn.out << drawn.err;
}

TEST(print_command, leaves_an_existing_file_and_writes_nothing_where_it_refuses) {
    const Folder folder;
    const Ended narrow = dartwright({"print", bodice, "-o", folder / "roll.pdf", "--paper", "roll:20cm"});
    EXPECT_EQ(narrow.status, 4);
    EXPECT_TRUE(says_one_line(narrow, "front"));
    EXPECT_FALSE(std::filesystem::exists(folder / "roll.pdf"));
    write_text(folder / "kept.pdf", "kept");
    EXPECT_EQ(dartwright({"print", bodice, "-o", folder / "kept.pdf"}).status, 2);
    EXPECT_EQ(text_of_file(folder / "kept.pdf"), "kept");
    EXPECT_TRUE(says_one_line(dartwright({"print", bodice, "-o", folder / "x.pdf", "--paper", "A5"}), "A4"));
}

TEST(print_command, writes_pages_only_to_a_name_that_says_so) {
    const Folder folder;
    const std::string pattern = text_of_file(bodice);
    write_text(folder / "bodice.json", pattern);
    const Ended ended =
        dartwright({"print", folder / "bodice.json", "-o", folder / "bodice.json", "--overwrite"});
    EXPECT_EQ(ended.status, 2);
    EXPECT_TRUE(says_one_line(ended, ".pdf"));
    EXPECT_EQ(text_of_file(folder / "bodice.json"), pattern);
}

TEST(print_command, finds_pieces_with_commas_in_their_names) {
    const Folder folder;
    std::string pattern = text_of_file(bodice);
    for (std::size_t at = 0; (at = pattern.find("\"front\"", at)) != std::string::npos; at += 9)
        pattern.replace(at, 7, "\"front, left\"");
    write_text(folder / "bodice.json", pattern);
    const Ended printed = dartwright({"print", folder / "bodice.json", "--pieces", "back, front, left", "-o",
                                      folder / "pages.pdf", "--format", "json"});
    ASSERT_EQ(printed.status, 0) << printed.err;
    const Json account = Json::parse(printed.out);
    ASSERT_EQ(account["pieces"].size(), 2u);
    EXPECT_EQ(account["pieces"][1]["name"], "front, left");
    EXPECT_TRUE(says_one_line(
        dartwright({"print", folder / "bodice.json", "--pieces", "front", "-o", folder / "x.pdf"}),
        "front, left"));
}

}  // namespace
}  // namespace dartwright
