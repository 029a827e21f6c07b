#include "dartwright/words/nearest_word.hpp"

#include <gtest/gtest.h>

namespace dartwright {
namespace {

TEST(nearest_told, is_told_only_of_near_words) {
    const std::vector<std::string> commands{"check", "pivot", "split", "compare", "cut"};
    EXPECT_EQ(nearest_told("chekc", commands), "; the nearest is check");
    EXPECT_EQ(nearest_told("pivott", commands), "; the nearest is pivot");
    EXPECT_EQ(nearest_told("comp", commands), "; the nearest is compare") << "it begins so";
    EXPECT_EQ(nearest_told("cat", commands), "; the nearest is cut");
    for (const char* far : {"help", "bodice", "x", "", "rotate", "c"})
        EXPECT_EQ(nearest_told(far, commands), "") << far;
    EXPECT_EQ(nearest_told("check", {}), "");
    EXPECT_EQ(nearest_told(std::string(1000000, 'c'), commands), "");
    EXPECT_EQ(nearest_told(".jpg", {".svg", ".png", ".pdf"}), "");
    EXPECT_EQ(nearest_told(".pgn", {".svg", ".png", ".pdf"}), "; the nearest is .png");
}

}  // namespace
}  // namespace dartwright
