// pivot, split and merge, as processes.

#include <cmath>

#include "tools/program.hpp"

namespace dartwright {
namespace {

const std::string block = source_folder + "/fixtures/blocks/close-fitting.json";
const std::vector<std::string> waist_dart{"--piece", "front", "--dart", "waist dart"};

std::vector<std::string> words(std::vector<std::string> first, const std::vector<std::string>& more) {
    first.insert(first.end(), waist_dart.begin(), waist_dart.end());
    first.insert(first.end(), more.begin(), more.end());
    return first;
}

Json front_of(const std::string& pattern) {
    const Ended shown = dartwright({"show", "-", "--format", "json"}, pattern);
    return Json::parse(shown.out)["pieces"][0];
}

Json dart_of(const Json& piece, const std::string& name) {
    for (const Json& dart : piece["darts"]) {
        if (dart["name"] == name) return dart;
    }
    return nullptr;
}

// 2 atan(2 / 17.4171): half the mouth over its height above the pivot, as the file has them.
const double waist_dart_deg = 2 * std::atan2(2.0, 17.4171) * 180 / 3.14159265358979323846;

TEST(pivot_command, gives_the_pattern_on_standard_output_and_the_account_beside_it) {
    const Ended ended =
        dartwright(words({"pivot", block}, {"--to", "side@60/armhole", "--name", "side dart"}));
    EXPECT_EQ(ended.status, 0);
    const Json front = front_of(ended.out);
    EXPECT_EQ(dart_of(front, "waist dart"), nullptr);
    EXPECT_NEAR(dart_of(front, "side dart")["angle"].get<double>(), waist_dart_deg, 1e-9);
    EXPECT_EQ(ended.err.find("Moved 13.1° of waist dart on front to side@60/armhole, as side dart.\n"), 0u);
    EXPECT_NE(ended.err.find("  side           19.58  19.58    0.00\n"), std::string::npos) << ended.err;
}

TEST(pivot_command, gives_the_account_on_standard_output_when_the_pattern_has_a_file) {
    Folder folder;
    const Ended ended = dartwright(words(
        {"pivot", block}, {"--to", "side@60/armhole", "-o", folder / "moved.json", "--format", "json"}));
    EXPECT_EQ(ended.status, 0);
    EXPECT_EQ(ended.err, "");
    const Json account = Json::parse(ended.out);
    EXPECT_EQ(account["dartwright_pivot"], 1);
    EXPECT_NEAR(account["angle"].get<double>(), waist_dart_deg, 1e-9);
    EXPECT_NEAR(account["intake_before"].get<double>(), 40, 1e-9);
    EXPECT_EQ(account["angle_left"], 0.0);
    EXPECT_EQ(account["held"][1], "centre front");
    EXPECT_EQ(folder.names(), std::vector<std::string>{"moved.json"});
    EXPECT_EQ(dartwright({"check", folder / "moved.json"}).status, 0);
}

TEST(pivot_command, moves_a_share_an_angle_or_an_intake) {
    const auto left = [](const std::vector<std::string>& part) {
        const Ended ended = dartwright(words({"pivot", block, "--to", "side@6cm/armhole"}, part));
        EXPECT_EQ(ended.status, 0) << ended.err;
        return dart_of(front_of(ended.out), "waist dart");
    };
    EXPECT_NEAR(left({"--share", "25%"})["angle"].get<double>(), 0.75 * waist_dart_deg, 1e-9);
    EXPECT_NEAR(left({"--share", "1/4"})["angle"].get<double>(), 0.75 * waist_dart_deg, 1e-9);
    EXPECT_NEAR(left({"--angle", "5"})["angle"].get<double>(), waist_dart_deg - 5, 1e-9);
    EXPECT_NEAR(left({"--intake", "1in"})["intake"].get<double>(), 40 - 25.4, 1e-9);
}

TEST(pivot_command, takes_each_option_of_the_new_dart) {
    const Ended ended =
        dartwright(words({"pivot", block}, {"--to", "side@2 3/8in/armhole", "--back-off", "3cm", "--name",
                                            "low dart", "--press", "waist", "--hold", "side"}));
    // Cut through the side, both parts have some of it.
    EXPECT_EQ(ended.status, 4);
    EXPECT_TRUE(says_one_line(ended, "hold an edge that lies on one side"));
    const Ended held =
        dartwright(words({"pivot", block}, {"--to", "side@2 3/8in/armhole", "--back-off", "3cm", "--name",
                                            "low dart", "--press", "waist", "--hold", "neck"}));
    ASSERT_EQ(held.status, 0) << held.err;
    const Json dart = dart_of(front_of(held.out), "low dart");
    const double dx = dart["point"][0].get<double>() - dart["pivot"][0].get<double>();
    const double dy = dart["point"][1].get<double>() - dart["pivot"][1].get<double>();
    EXPECT_NEAR(std::hypot(dx, dy), 30, 1e-9);
    EXPECT_NE(held.out.find("\"dart\": \"low dart\""), std::string::npos);
    EXPECT_NE(held.out.find("\"press\": \"waist\"}"), std::string::npos);
}

TEST(pivot_command, opens_in_the_fold_with_a_centre_seam_only) {
    const std::vector<std::string> to{"--to", "centre front@170/neck"};
    const Ended refused = dartwright(words({"pivot", block}, to));
    EXPECT_EQ(refused.status, 4);
    EXPECT_TRUE(says_one_line(refused, "lies inside the fold \"centre front\""));
    EXPECT_EQ(dartwright(words({"pivot", block, "--centre-seam", "centre front"}, to)).status, 0);
}

TEST(pivot_command, pipes_into_check) {
    Folder folder;
    const Ended ended =
        shell("dartwright pivot " + in_shell_quotes(block) +
                  " --piece front --dart 'waist dart' --to shoulder@50% | dartwright check - --format json",
              folder.path());
    EXPECT_EQ(ended.status, 0);
    EXPECT_EQ(Json::parse(ended.out)["files"][0]["passed"], true);
}

struct Refused {
    std::vector<std::string> more;
    int status;
    const char* says;
};
void PrintTo(const Refused& refused, std::ostream* out) {
    *out << refused.says;
}
class pivot_refusals : public testing::TestWithParam<Refused> {};

TEST_P(pivot_refusals, say_why_and_write_nothing) {
    Folder folder;
    std::vector<std::string> more = GetParam().more;
    more.insert(more.end(), {"-o", folder / "moved.json"});
    const Ended ended = dartwright(words({"pivot", block}, more));
    EXPECT_EQ(ended.status, GetParam().status);
    EXPECT_TRUE(says_one_line(ended, GetParam().says));
    EXPECT_EQ(ended.out, "");
    EXPECT_TRUE(folder.names().empty());
}

INSTANTIATE_TEST_SUITE_P(
    all, pivot_refusals,
    testing::Values(
        Refused{{"--to", "side@60/armhole", "--angle", "20"}, 4, "the dart has only 13.1 degrees"},
        Refused{{"--to", "side@60/armhole", "--angle", "-8"}, 2, "expected more than 0"},
        Refused{{"--to", "side@60/armhole", "--share", "0%"}, 2, "expected more than 0"},
        Refused{{"--to", "side@60/armhole", "--share", "101%"}, 4, "move all of it, or less"},
        Refused{{"--to", "side@60/armhole", "--share", "half"}, 2, "expected a per cent such as 50%"},
        Refused{{"--to", "side@60/armhole", "--share", "50%", "--angle", "3"}, 2, "give one"},
        Refused{{"--to", "side@60/armhole", "--back-off", "-3"}, 2, "expected 0 or more"},
        Refused{{"--to", "side@60/armhole", "--back-off", "300"}, 4, "set a back-off of at most"},
        Refused{{"--to", "side@60/armhole", "--name", "bust dart"}, 2, "there is a dart \"bust dart\""},
        Refused{{"--to", "side@60/armhole", "--press", "sleeve"}, 2, "no edge \"sleeve\""},
        Refused{{"--to", "side@60/armhole", "--hold", "sleeve"}, 2, "no edge \"sleeve\""},
        Refused{{"--to", "side@60/armhole", "--centre-seam", "side"}, 2, "there is a seam \"side\""},
        Refused{{"--to", "side@-60/armhole"}, 4, "lies beyond the end"},
        Refused{{"--to", "side@200/armhole"}, 4, "lies beyond the end"},
        Refused{{"--to", "waist@119/side"}, 4, "from the mouth of \"waist dart\""},
        Refused{{"--to", "side@0.5/armhole"}, 4, "side@0/armhole"},
        Refused{{"--to", "side@60"}, 2, "side@60"},
        Refused{{"--to", "side"}, 2, "expected EDGE@DISTANCE/FROM"},
        Refused{{"--to", "side@6ocm/armhole"}, 2, "side"},
        Refused{{"--to", "sleeve@60/armhole"}, 2, "there is \"waist\", \"centre front\""},
        Refused{{"--to", "side@60/neck"}, 2, "there is \"armhole\", \"waist\""},
        Refused{{}, 2, "--to is missing"}));

TEST(pivot_command, answers_unknown_names_with_those_that_exist) {
    const Ended piece =
        dartwright({"pivot", block, "--piece", "frnt", "--dart", "waist dart", "--to", "side@50%"});
    EXPECT_EQ(piece.status, 2);
    EXPECT_TRUE(says_one_line(piece, "no piece \"frnt\" in the pattern; there is \"front\", \"back\""));
    const Ended dart =
        dartwright({"pivot", block, "--piece", "front", "--dart", "side dart", "--to", "side@50%"});
    EXPECT_EQ(dart.status, 2);
    EXPECT_TRUE(says_one_line(dart, "there is \"waist dart\", \"bust dart\""));
}

TEST(split_command, opens_each_share_and_names_it) {
    const Ended ended =
        dartwright(words({"split", block, "--format", "json"},
                         {"--to", "side@60/armhole=50%", "--to", "shoulder@50%=1/4", "--name", "low"}));
    ASSERT_EQ(ended.status, 0) << ended.err;
    const Json account = Json::parse(ended.err);
    EXPECT_EQ(account["dartwright_split"], 1);
    EXPECT_EQ(account["opened"][1]["name"], "shoulder dart");
    EXPECT_NEAR(account["angle_left"].get<double>(), waist_dart_deg / 4, 1e-9);
    const Json front = front_of(ended.out);
    EXPECT_NEAR(dart_of(front, "low")["angle"].get<double>(), waist_dart_deg / 2, 1e-9);
    EXPECT_NEAR(dart_of(front, "shoulder dart")["angle"].get<double>(), waist_dart_deg / 4, 1e-9);
    EXPECT_NEAR(dart_of(front, "waist dart")["angle"].get<double>(), waist_dart_deg / 4, 1e-9);
    EXPECT_EQ(dartwright({"check", "-"}, ended.out).status, 0);
}

TEST(cluster_command, makes_a_row_of_darts_with_equal_legs) {
    Folder folder;
    const Ended ended = dartwright(
        words({"cluster", block, "--format", "json", "-o", folder / "cluster.json"}, {"--apart", "1in"}));
    EXPECT_EQ(ended.status, 0) << ended.err;
    const Json account = Json::parse(ended.out);
    EXPECT_EQ(account["dartwright_cluster"], 1);
    ASSERT_EQ(account["darts"].size(), 3u);
    for (const Json& dart : account["darts"]) {
        EXPECT_NEAR(dart["angle"].get<double>(), waist_dart_deg / 3, 1e-9);
        EXPECT_NEAR(dart["leg"].get<double>(), account["darts"][1]["leg"].get<double>(), 1e-9);
    }
    EXPECT_EQ(dartwright({"check", folder / "cluster.json"}).status, 0);
    EXPECT_EQ(dartwright({"replay", folder / "cluster.json", "--block", block, "--check"}).status, 0);
    EXPECT_EQ(dartwright(words({"cluster", block}, {})).status, 2);
    const auto refused = [](const std::vector<std::string>& more) {
        return dartwright(words({"cluster", block}, more));
    };
    EXPECT_EQ(refused({"--apart", "0"}).status, 2);
    EXPECT_EQ(refused({"--apart", "2cm", "--darts", "1"}).status, 2);
    EXPECT_EQ(refused({"--apart", "2cm", "--darts", "3.5"}).status, 2);
    EXPECT_EQ(refused({"--apart", "20cm"}).status, 4);
    EXPECT_TRUE(says_one_line(refused({"--apart", "20cm"}), "set its darts less than"));
    EXPECT_EQ(refused({"--apart", "20cm"}).out, "");
}

TEST(split_command, refuses_in_one_line) {
    const Ended much =
        dartwright(words({"split", block}, {"--to", "side@60/armhole=70%", "--to", "neck@50%=40%"}));
    EXPECT_EQ(much.status, 4);
    EXPECT_TRUE(says_one_line(much, "add up to 110 %"));
    const Ended none = dartwright(words({"split", block}, {"--to", "side@60/armhole"}));
    EXPECT_EQ(none.status, 2);
    EXPECT_TRUE(says_one_line(none, "expected PLACE=SHARE"));
    const Ended names = dartwright(
        words({"split", block}, {"--to", "side@60/armhole=50%", "--name", "one", "--name", "two"}));
    EXPECT_EQ(names.status, 2);
    EXPECT_TRUE(says_one_line(names, "2 times for 1 place;"));
}

TEST(merge_command, makes_one_dart_of_two) {
    const Ended ended = dartwright(words({"merge", block, "--format", "json"}, {"--with", "bust dart"}));
    ASSERT_EQ(ended.status, 0) << ended.err;
    const Json account = Json::parse(ended.err);
    EXPECT_EQ(account["dartwright_merge"], 1);
    const double both = account["angle"].get<double>() + account["angle_with"].get<double>();
    EXPECT_NEAR(dart_of(front_of(ended.out), "bust dart")["angle"].get<double>(), both, 1e-9);
    EXPECT_NEAR(account["angle"].get<double>(), waist_dart_deg, 1e-9);
    EXPECT_EQ(dartwright({"check", "-"}, ended.out).status, 0);
}

TEST(merge_command, refuses_darts_of_different_pivots) {
    const Ended ended =
        dartwright({"merge", block, "--piece", "back", "--dart", "waist dart", "--with", "shoulder dart"});
    EXPECT_EQ(ended.status, 4);
    EXPECT_TRUE(says_one_line(ended, "169.6 mm apart"));
}

TEST(true_command, trues_a_dart_so_that_it_checks_true) {
    Folder folder;
    for (const char* fault : {"dart-legs", "dart-mouth", "dart-point"}) {
        const std::string file = source_folder + "/fixtures/faults/" + fault + ".json";
        EXPECT_EQ(dartwright({"check", file}).status, 1) << fault;
        const Ended trued = dartwright({"true", file, "--piece", "bodice front", "--dart", "waist dart", "-o",
                                        folder / "trued.json", "--overwrite", "--format", "json"});
        ASSERT_EQ(trued.status, 0) << trued.err;
        const Json account = Json::parse(trued.out);
        EXPECT_EQ(account["dartwright_true"], 1);
        EXPECT_NEAR(account["mouth_after"].get<double>(), 0, 1e-6);
        EXPECT_EQ(dartwright({"check", folder / "trued.json"}).status, 0) << fault;
    }
}

TEST(true_command, draws_an_edge_smooth) {
    Folder folder;
    const std::string file = source_folder + "/fixtures/faults/outline-kink.json";
    const Json checked = Json::parse(dartwright({"check", file, "--format", "json"}).out);
    const Json finding = checked["files"][0]["findings"][0];
    const Ended trued = dartwright(
        {"true", file, "--piece", finding["piece"], "--edge", finding["edge"], "-o", folder / "trued.json"});
    ASSERT_EQ(trued.status, 0) << trued.err;
    EXPECT_NE(trued.out.find("was drawn smooth"), std::string::npos);
    EXPECT_EQ(dartwright({"check", folder / "trued.json"}).status, 0);
}

TEST(true_command, refuses_in_one_line) {
    const Ended both = dartwright(words({"true", block}, {"--edge", "waist"}));
    EXPECT_EQ(both.status, 2);
    EXPECT_TRUE(says_one_line(both, "give one"));
    const Ended legs = dartwright(words({"true", block}, {"--legs", "longest"}));
    EXPECT_EQ(legs.status, 2);
    EXPECT_TRUE(says_one_line(legs, "the nearest is long"));
    const Ended span = dartwright(words({"true", block}, {"--span", "-1"}));
    EXPECT_EQ(span.status, 2);
    EXPECT_TRUE(says_one_line(span, "expected 0, or 1 mm or more"));
}

TEST(true_command, trues_a_seam_and_the_line_across_it) {
    Folder folder;
    const std::string fitted = source_folder + "/fixtures/workshop/after-fitting.json";
    EXPECT_EQ(dartwright({"check", fitted}).status, 1);
    const Ended trued = dartwright({"true", fitted, "--seam", "side", "--end", "armhole", "--move", "front",
                                    "-o", folder / "trued.json", "--format", "json"});
    ASSERT_EQ(trued.status, 0) << trued.err;
    const Json account = Json::parse(trued.out);
    EXPECT_EQ(account["dartwright_true"], 1);
    EXPECT_NEAR(account["difference_before"].get<double>(), -6, 0.01);
    EXPECT_NEAR(account["difference_after"].get<double>(), 0, 1e-6);
    EXPECT_NEAR(account["sides"][0]["moved"].get<double>(), account["difference_before"].get<double>(), 1e-9);
    EXPECT_EQ(account["sides"][1]["moved"], 0.0);
    EXPECT_EQ(account["seams"][0]["name"], "armhole");
    EXPECT_EQ(account["pieces"][1]["name"], "back");
    EXPECT_EQ(dartwright({"check", folder / "trued.json"}).status, 0);
    EXPECT_EQ(dartwright({"replay", folder / "trued.json", "--block", fitted, "--check"}).status, 0);
    const Ended halves = dartwright({"true", fitted, "--seam", "side", "--end", "armhole"});
    EXPECT_NE(halves.err.find("  front: side shorter by 0.30 cm, 4.00 cm of armhole redrawn"),
              std::string::npos)
        << halves.err;
    EXPECT_NE(halves.err.find("  seam armhole: its difference was 0.12 cm and is 0.19 cm\n"),
              std::string::npos);
}

TEST(true_command, refuses_a_seam_in_one_line) {
    const auto refused = [](int status, std::vector<std::string> more, const char* says) {
        more.insert(more.begin(), {"true", block});
        const Ended ended = dartwright(more);
        EXPECT_EQ(ended.status, status) << says;
        EXPECT_TRUE(says_one_line(ended, says));
        EXPECT_EQ(ended.out, "");
    };
    refused(2, {"--seam", "side"}, "--end is missing");
    refused(2, {"--seam", "side", "--end", "neck"}, "there is \"armhole\", \"waist\"");
    refused(2, {"--seam", "sides", "--end", "waist"}, "no seam \"sides\"");
    refused(2, {"--seam", "side", "--end", "waist", "--move", "sleeve"}, "\"front\", \"back\", 1 or 2");
    refused(2, {"--seam", "side", "--end", "waist", "--piece", "front"}, "a seam has both its pieces");
    refused(2, {"--seam", "side", "--end", "waist", "--edge", "side"}, "give one");
    refused(2, {"--end", "waist", "--piece", "front", "--dart", "waist dart"}, "--end goes with --seam");
    refused(2, {"--seam", "side", "--end", "waist", "--span", "0"}, "expected 1 mm or more");
    refused(4, {"--seam", "shoulder", "--end", "neck"}, "\"bust dart\" stands in that corner");
}

TEST(close_command, gathers_and_eases_with_every_seam_as_it_was) {
    const Ended gathered =
        dartwright(words({"close", block, "--format", "json"}, {"--as", "gathers", "--span", "6cm"}));
    ASSERT_EQ(gathered.status, 0) << gathered.err;
    const Json account = Json::parse(gathered.err);
    EXPECT_EQ(account["dartwright_close"], 1);
    EXPECT_NEAR(account["sewn"].get<double>(), 120, 1e-6);
    EXPECT_EQ(dart_of(front_of(gathered.out), "waist dart"), nullptr);
    EXPECT_EQ(dartwright({"check", "-"}, gathered.out).status, 0);
    const Ended eased =
        dartwright({"close", block, "--piece", "back", "--dart", "shoulder dart", "--as", "ease"});
    ASSERT_EQ(eased.status, 0) << eased.err;
    EXPECT_NE(eased.err.find("the stretch is notched on \"shoulder\" of \"front\" as well"),
              std::string::npos);
    EXPECT_EQ(dartwright({"check", "-"}, eased.out).status, 0);
}

TEST(close_command, leaves_a_slash_open_at_the_hem) {
    const std::string skirt = source_folder + "/fixtures/workshop/first-pattern.json";
    const Ended flared = dartwright({"close", skirt, "--piece", "back", "--dart", "waist dart", "--as",
                                     "flare", "--to", "hem@50%", "--format", "json"});
    ASSERT_EQ(flared.status, 0) << flared.err;
    const Json account = Json::parse(flared.err);
    EXPECT_EQ(account["edge"], "hem");
    EXPECT_GT(account["added"].get<double>(), 0);
    EXPECT_EQ(dartwright({"check", "-"}, flared.out).status, 0);
}

TEST(close_command, separates_a_piece_along_a_seam) {
    Folder folder;
    const Ended ended =
        dartwright(words({"close", block, "--format", "json", "-o", folder / "princess.json"},
                         {"--as", "seam", "--with", "bust dart", "--names", "centre front,side front",
                          "--seam", "princess seam", "--round", "5cm"}));
    EXPECT_EQ(ended.status, 0) << ended.err;
    const Json account = Json::parse(ended.out);
    EXPECT_EQ(account["dartwright_close"], 1);
    EXPECT_EQ(account["with"], "bust dart");
    EXPECT_EQ(account["to"], nullptr);
    EXPECT_NEAR(account["angle"].get<double>(), waist_dart_deg, 1e-9);
    EXPECT_EQ(account["parts"][0]["name"], "centre front");
    EXPECT_EQ(account["parts"][0]["fold"], true);
    EXPECT_EQ(account["parts"][1]["quantity"], 2);
    EXPECT_NEAR(account["parts"][0]["seam"].get<double>(), account["parts"][1]["seam"].get<double>(), 1e-6);
    EXPECT_GT(account["rounded_off"].get<double>(), 0);
    EXPECT_EQ(dartwright({"check", folder / "princess.json"}).status, 0);
    const Ended plain = dartwright(words({"close", block}, {"--as", "seam", "--with", "bust dart"}));
    EXPECT_NE(
        plain.err.find("Separated front along waist dart seam, from waist dart (13.1°) through its pivot to "
                       "bust dart (15.7°).\n  front: cut 1 on the fold, "),
        std::string::npos)
        << plain.err;
    EXPECT_NE(plain.err.find("  side front: cut 2, "), std::string::npos) << plain.err;
}

TEST(close_command, makes_a_tuck_that_show_and_check_know) {
    Folder folder;
    const Ended ended = dartwright(words({"close", block, "--format", "json", "-o", folder / "tucked.json"},
                                         {"--as", "tuck", "--stitched", "6cm"}));
    EXPECT_EQ(ended.status, 0) << ended.err;
    EXPECT_EQ(Json::parse(ended.out)["stitched"], 60.0);
    const Ended shown = dartwright({"show", folder / "tucked.json", "--format", "json"});
    EXPECT_EQ(dart_of(Json::parse(shown.out)["pieces"][0], "waist dart")["stitched"], 60.0);
    EXPECT_EQ(dart_of(Json::parse(shown.out)["pieces"][0], "bust dart")["stitched"], nullptr);
    EXPECT_EQ(dartwright({"check", folder / "tucked.json"}).status, 0);
    EXPECT_EQ(dartwright(words({"close", block}, {"--as", "tuck", "--stitched", "2m"})).status, 2);
    EXPECT_EQ(dartwright(words({"close", block}, {"--as", "tuck", "--stitched", "200"})).status, 4);
    EXPECT_EQ(dartwright(words({"close", block}, {"--as", "tuck", "--span", "4cm"})).status, 2);
    EXPECT_EQ(dartwright(words({"close", block}, {"--as", "ease", "--stitched", "4cm"})).status, 2);
}

TEST(close_command, says_what_a_seam_needs) {
    const auto said = [](const std::vector<std::string>& more) {
        return dartwright(words({"close", block, "--as", "seam"}, more));
    };
    EXPECT_EQ(said({}).status, 2);
    EXPECT_EQ(said({}).err,
              "dartwright close: a seam ends in a second dart (--with) or at a place (--to); give one "
              "of them\n");
    EXPECT_EQ(said({"--to", "shoulder@50%", "--names", "one"}).status, 2);
    EXPECT_EQ(said({"--to", "shoulder@50%", "--names", "back,side front"}).status, 2);
    EXPECT_EQ(said({"--to", "shoulder@50%", "--span", "4cm"}).status, 2);
    EXPECT_EQ(said({"--with", "no dart"}).status, 2);
    const Ended third = said({"--to", "armhole@50%"});
    EXPECT_EQ(third.status, 4);
    EXPECT_NE(third.err.find("the dart \"bust dart\" has the same pivot"), std::string::npos) << third.err;
    EXPECT_EQ(third.out, "");
    const Ended gathers = dartwright(words({"close", block}, {"--as", "gathers", "--round", "5cm"}));
    EXPECT_EQ(gathers.status, 2);
    EXPECT_NE(gathers.err.find("--round is for --as seam only"), std::string::npos);
}

TEST(operations, say_what_a_check_finds_that_it_did_not_before) {
    const std::string inch = source_folder + "/fixtures/workshop/chorus-bodice-inch.json";
    const std::vector<std::string> onto_notch{"pivot",  inch,         "--piece", "front",
                                              "--dart", "waist dart", "--to",    "side@2 3/8in/waist"};
    const Ended text = dartwright(onto_notch);
    EXPECT_EQ(text.status, 0);
    EXPECT_NE(text.err.find("  note: check finds notch-in-dart now: "), std::string::npos) << text.err;
    EXPECT_EQ(
        dartwright({"pivot", block, "--piece", "front", "--dart", "waist dart", "--to", "side@60/armhole"})
            .err.find("check finds"),
        std::string::npos);
}

TEST(close_command, refuses_in_one_line) {
    const Ended as = dartwright(words({"close", block}, {"--as", "pleat"}));
    EXPECT_EQ(as.status, 2);
    EXPECT_TRUE(says_one_line(as, "--as is ease, gathers, tuck, flare or seam"));
    const Ended to = dartwright(words({"close", block}, {"--as", "ease", "--to", "waist@50%"}));
    EXPECT_EQ(to.status, 2);
    EXPECT_TRUE(says_one_line(to, "are for a flare"));
    const Ended none = dartwright(words({"close", block}, {"--as", "flare"}));
    EXPECT_EQ(none.status, 2);
    EXPECT_TRUE(says_one_line(none, "--to is missing"));
}

}  // namespace
}  // namespace dartwright
