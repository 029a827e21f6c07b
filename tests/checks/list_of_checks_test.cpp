#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "checks/checks_document.hpp"
#include "checks/sample_patterns.hpp"
#include "dartwright/drawing/pattern_drawing.hpp"
#include "dartwright/drawing/svg_writer.hpp"

namespace dartwright {
namespace {

const std::string root = DARTWRIGHT_SOURCE_DIR "/";

std::string contents(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    EXPECT_TRUE(file) << path << " is missing";
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

void write(const std::string& path, const std::string& text) {
    std::ofstream file(path, std::ios::binary);
    file << text;
    ASSERT_TRUE(file) << path;
}

std::string figure_of(const CheckKind& kind) {
    const Pattern pattern = read_pattern_file(root + checks_document::fixture_path(kind));
    DrawOptions options;
    options.findings = check(pattern).findings;
    return to_svg(draw_pattern(pattern, options));
}

// Not a test of anything by itself: it writes what the tests below then read.
class Document : public ::testing::Test {
  protected:
    static void SetUpTestSuite() {
        if (!std::getenv("DARTWRIGHT_WRITE_DOCUMENTS")) return;
        write(root + "docs/checks.md", checks_document::text());
        for (const CheckKind& kind : list_of_checks()) {
            write(root + "docs/" + checks_document::figure_path(kind), figure_of(kind));
        }
    }
};

TEST_F(Document, says_what_the_list_and_the_default_tolerances_say) {
    EXPECT_EQ(contents(root + "docs/checks.md"), checks_document::text());
}

TEST_F(Document, has_a_figure_for_every_check_that_marks_its_place) {
    for (const CheckKind& kind : list_of_checks()) {
        const std::string figure = contents(root + "docs/" + checks_document::figure_path(kind));
        EXPECT_NE(figure.find("<svg"), std::string::npos) << kind.name;
        // The first words of the remedy, as far as no line can break.
        const Pattern pattern = read_pattern_file(root + checks_document::fixture_path(kind));
        const std::string remedy = check(pattern).findings.at(0).remedy.substr(0, 15);
        EXPECT_NE(figure.find(remedy), std::string::npos) << kind.name << ": " << remedy;
    }
}

TEST_F(Document, points_to_fixtures_that_exist) {
    for (const CheckKind& kind : list_of_checks()) {
        EXPECT_TRUE(std::filesystem::exists(root + checks_document::fixture_path(kind))) << kind.name;
        EXPECT_TRUE(std::filesystem::exists(root + checks_document::twin_path(kind))) << kind.name;
    }
}

TEST(list_of_checks, has_every_name_once_with_a_definition_and_a_source) {
    std::set<std::string> names;
    for (const CheckKind& kind : list_of_checks()) {
        EXPECT_TRUE(names.insert(kind.name).second) << kind.name;
        EXPECT_FALSE(std::string(kind.definition).empty());
        EXPECT_FALSE(std::string(kind.source).empty());
        EXPECT_NO_THROW(checks_document::default_tolerance(kind));
    }
    EXPECT_EQ(names.size(), checks_document::how_it_judges().size());
}

}  // namespace
}  // namespace dartwright
