// Whoever works in inches is answered in inches, by checks and comparisons.

#include "support/readers_unit.hpp"

#include <gtest/gtest.h>

#include "dartwright/checks/check.hpp"
#include "dartwright/comparing/compare.hpp"

namespace dartwright::testing {
namespace {

class ReadersUnit : public ::testing::Test {
  protected:
    void look_at(const std::string& answer) {
        EXPECT_FALSE(speaks_of(answer, " mm")) << answer;
        if (speaks_of(answer, " in")) ++with_lengths_;
    }
    void look_at(const std::vector<Loss>& losses) {
        for (const Loss& loss : losses) {
            look_at(loss.message);
            look_at(loss.remedy);
        }
    }

    std::size_t with_lengths_ = 0;
};

TEST_F(ReadersUnit, ofAFindingIsThePatterns) {
    for (const std::string& file : all_fixture_patterns()) {
        SCOPED_TRACE(file);
        for (const Finding& finding : check(in_inches(file)).findings) {
            look_at(finding.message);
            look_at(finding.remedy);
        }
    }
    EXPECT_GT(with_lengths_, 15u);
}

// Each pattern beside those that stand next to it in its folder: most are twins of one of which is true.
TEST_F(ReadersUnit, ofALossIsThatOfThePatternBefore) {
    const std::vector<std::string> files = all_fixture_patterns();
    for (std::size_t i = 1; i < files.size(); ++i) {
        SCOPED_TRACE(files[i]);
        try {
            const Comparison compared = compare(in_inches(files[i - 1]), read_pattern_file(files[i]));
            look_at(compared.losses);
            look_at(compared.changes);
            for (const std::string& note : compared.notes) look_at(note);
        } catch (const Error& refused) {
            look_at(refused.in(Unit::inch));
        }
    }
    EXPECT_GT(with_lengths_, 50u);
}

}  // namespace
}  // namespace dartwright::testing
