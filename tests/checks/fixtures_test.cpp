#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <set>

#include "checks/sample_patterns.hpp"

namespace dartwright {
namespace {

const std::filesystem::path folder = DARTWRIGHT_SOURCE_DIR "/fixtures/faults";
const std::string twin_ending = ".true";

std::string stem_of(const std::filesystem::path& file) {
    return file.stem().string();
}
bool is_twin(const std::string& stem) {
    return stem.size() > twin_ending.size() &&
           stem.compare(stem.size() - twin_ending.size(), twin_ending.size(), twin_ending) == 0;
}

// `CHECK.KIND` is a second fixture of one check, of another kind of thing that it judges.
std::string check_of(const std::string& fault) {
    return fault.substr(0, fault.find('.'));
}

// Every check of the list, and every name found in the folder: a check without a fixture fails, and so does a
// fixture without a check or a twin.
std::vector<std::string> names_of_faults() {
    std::set<std::string> names;
    for (const CheckKind& kind : list_of_checks()) names.insert(kind.name);
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        const std::string stem = stem_of(entry.path());
        names.insert(is_twin(stem) ? stem.substr(0, stem.size() - twin_ending.size()) : stem);
    }
    return {names.begin(), names.end()};
}

class Fault : public ::testing::TestWithParam<std::string> {};

TEST_P(Fault, is_the_only_one_of_its_fixture) {
    const CheckReport report = check(read_pattern_file((folder / (GetParam() + ".json")).string()));
    ASSERT_FALSE(report.findings.empty());
    for (const Finding& finding : report.findings) {
        EXPECT_EQ(finding.check, check_of(GetParam())) << finding.message;
        EXPECT_EQ(finding.severity, Severity::fault) << finding.message;
        EXPECT_FALSE(finding.message.empty());
        EXPECT_FALSE(finding.remedy.empty());
        EXPECT_FALSE(finding.piece.empty());
    }
    EXPECT_FALSE(report.passed);
}

TEST_P(Fault, is_not_in_its_twin) {
    const CheckReport report =
        check(read_pattern_file((folder / (GetParam() + twin_ending + ".json")).string()));
    EXPECT_EQ(sample::checks_of(report), sample::Names{});
    EXPECT_TRUE(report.passed);
    for (const SeamVerdict& seam : report.seams) EXPECT_TRUE(seam.passed);
    for (const DartVerdict& dart : report.darts) EXPECT_TRUE(dart.passed);
}

// What the kinds of one check are told by.
TEST(Faults, of_a_kind_are_said_in_its_words) {
    const std::vector<std::array<const char*, 2>> words{
        {"seam-corner.juts-out", "hem juts out at the seam"},
        {"seam-corner.cuts-in", "hem cuts in at the seam"},
        {"seam-corner.laid", "do not lie on each other there"},
        {"seam-corner.free", "hem juts out at the seam"},
        {"seam-corner.smooth", "hem juts out at the seam"},
        {"seam-allowance.flat-felled", "the allowance is 6.0 mm on skirt front and 18.0 mm on skirt back"},
        {"notch-place.closed", "30.0 mm too far back"},
        {"fold-corner.second", "opened out at crosswise"},
        {"fold-straight.bowed", "leaves the straight line between its ends"}};
    for (const auto& [name, said] : words) {
        const CheckReport report =
            check(read_pattern_file((folder / (name + std::string(".json"))).string()));
        ASSERT_EQ(report.findings.size(), 1u) << name;
        EXPECT_NE(report.findings[0].message.find(said), std::string::npos) << report.findings[0].message;
    }
}

// Four pieces meet at the hem band: nothing is asked of the corner unless the seam says so.
TEST(Faults, of_a_corner_where_four_pieces_meet_is_a_note_where_nothing_is_said) {
    Pattern pattern = read_pattern_file((folder / "seam-corner.smooth.json").string());
    pattern.seams[0].ends.clear();
    const CheckReport report = check(pattern);
    ASSERT_EQ(sample::checks_of(report), sample::Names{"seam-corner"});
    EXPECT_EQ(report.findings[0].severity, Severity::note);
    EXPECT_TRUE(report.passed);
}

INSTANTIATE_TEST_SUITE_P(fixtures, Fault, ::testing::ValuesIn(names_of_faults()), [](const auto& test) {
    std::string name = test.param;
    std::replace_if(
        name.begin(), name.end(), [](char c) { return c == '-' || c == '.'; }, '_');
    return name;
});

}  // namespace
}  // namespace dartwright
