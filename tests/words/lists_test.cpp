#include "dartwright/words/lists.hpp"

#include <gtest/gtest.h>

namespace dartwright {
namespace {

TEST(lists, read_as_sentences_do) {
    EXPECT_EQ(all_of({}), "");
    EXPECT_EQ(all_of({"a"}), "a");
    EXPECT_EQ(all_of({"a", "b"}), "a and b");
    EXPECT_EQ(all_of({"a", "b", "c"}), "a, b and c");
    EXPECT_EQ(any_of({"a"}), "\"a\"");
    EXPECT_EQ(any_of({"a", "b", "c"}), "\"a\", \"b\" or \"c\"");
    EXPECT_EQ(in_a_row({"a", "b", "c"}), "\"a\", \"b\", \"c\"");
}

TEST(lists, of_many_names_tell_some_and_how_many_more) {
    std::vector<std::string> names;
    for (int i = 0; i < 3000; ++i) names.push_back("edge " + std::to_string(i));
    for (const std::string& words : {any_of(names), in_a_row(names)}) {
        EXPECT_LT(words.size(), 300u);
        EXPECT_TRUE(words.starts_with("\"edge 0\", \"edge 1\", ")) << words;
        EXPECT_TRUE(words.ends_with("\"edge 19\" and 2980 more")) << words;
    }
    names.resize(20);
    EXPECT_TRUE(any_of(names).ends_with("\"edge 18\" or \"edge 19\"")) << any_of(names);
}

}  // namespace
}  // namespace dartwright
