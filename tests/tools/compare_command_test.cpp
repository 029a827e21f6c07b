// compare, as a process.

#include "tools/program.hpp"

namespace dartwright {
namespace {

const std::string block = source_folder + "/fixtures/blocks/close-fitting.json";

std::string moved_block() {
    return dartwright({"pivot", block, "--piece", "front", "--dart", "waist dart", "--to", "side@60/armhole"})
        .out;
}

TEST(compare_command, says_what_was_moved_and_that_all_is_kept) {
    const Ended ended = dartwright({"compare", block, "-"}, moved_block());
    EXPECT_EQ(ended.status, 0) << ended.err;
    EXPECT_EQ(ended.err, "");
    EXPECT_NE(ended.out.find("; moved, now 13.1° at side@60/armhole\n"), std::string::npos) << ended.out;
    EXPECT_NE(ended.out.find("\neverything is kept\n"), std::string::npos) << ended.out;
}

TEST(compare_command, gives_the_same_to_a_program) {
    const Ended ended = dartwright({"compare", block, "-", "--format", "json"}, moved_block());
    EXPECT_EQ(ended.status, 0);
    const Json comparison = Json::parse(ended.out);
    EXPECT_EQ(comparison["dartwright_compare"], 1);
    EXPECT_EQ(comparison["kept"], true);
    EXPECT_EQ(comparison["losses"], Json::array());
    const Json& front = comparison["pieces"][0];
    EXPECT_EQ(front["name"], "front");
    EXPECT_EQ(front["darts"][0]["change"], "moved");
    EXPECT_EQ(front["darts"][0]["after"]["place"], "side@60/armhole");
    EXPECT_NEAR(front["area"]["difference"].get<double>(), 0, 1e-6);
    EXPECT_NEAR(front["pivots"][0]["difference"].get<double>(), 0, 1e-9);
    EXPECT_EQ(front["mirrored"], false);
}

TEST(compare_command, ends_with_1_and_names_each_loss) {
    const std::string text =
        replaced(text_of_file(block), "\"from\": \"waist\", \"at\": 8,", "\"from\": \"waist\", \"at\": 8.3,");
    const Ended ended = dartwright({"compare", block, "-", "--format", "json"}, text);
    EXPECT_EQ(ended.status, 1);
    const Json losses = Json::parse(ended.out)["losses"];
    ASSERT_EQ(losses.size(), 2u);
    EXPECT_EQ(losses[0]["what"], "notch-place");
    EXPECT_EQ(losses[0]["piece"], "front");
    EXPECT_EQ(losses[0]["edge"], "side");
    EXPECT_NEAR(std::abs(losses[0]["difference"].get<double>()), 3, 1e-9);
    EXPECT_EQ(losses[0]["allowed"], 1.0);
    EXPECT_EQ(dartwright({"compare", block, "-", "--tolerance", "notch=4"}, text).status, 0);
}

TEST(compare_command, refuses_in_one_line) {
    const Ended one = dartwright({"compare", block});
    EXPECT_EQ(one.status, 2);
    EXPECT_TRUE(says_one_line(one, "the two pattern files"));
    const Ended twice = dartwright({"compare", "-", "-"});
    EXPECT_EQ(twice.status, 2);
    EXPECT_TRUE(says_one_line(twice, "only one of the two"));
    const Ended none = dartwright({"compare", block, "no-such.json"});
    EXPECT_EQ(none.status, 3);
    EXPECT_TRUE(says_one_line(none, "no-such.json"));
}

}  // namespace
}  // namespace dartwright
