// Whoever works in inches is answered in inches, by what cuts.

#include "support/readers_unit.hpp"

#include <gtest/gtest.h>

#include "dartwright/cutting/applied_rule.hpp"
#include "dartwright/cutting/lay_pattern.hpp"
#include "dartwright/cutting/markings.hpp"

namespace dartwright::testing {
namespace {

class ReadersUnit : public ::testing::Test {
  protected:
    template <class Cut>
    void ask(const Cut& cut) {
        try {
            for (const std::string& note : cut()) look_at(note);
        } catch (const Error& refused) {
            look_at(refused.in(Unit::inch));
        }
    }
    void look_at(const std::string& answer) {
        EXPECT_FALSE(speaks_of(answer, " mm")) << answer;
        if (speaks_of(answer, " in")) ++with_lengths_;
    }

    std::size_t with_lengths_ = 0;
};

TEST_F(ReadersUnit, ofACuttingLineIsThePatterns) {
    for (const std::string& file : all_fixture_patterns()) {
        SCOPED_TRACE(file);
        const Pattern pattern = in_inches(file);
        for (const Piece& piece : pattern.pieces) {
            for (const double width_mm : {-1.0, 0.0, 12.3, 400.0}) {
                Piece wider = piece;
                for (auto& [edge, width] : wider.allowance) width = width_mm;
                CuttingRequest request = cutting_request(pattern, piece);
                request.tolerances.legs_mm = 0.01;
                request.tolerances.gap_mm = 0.01;
                for (const OutlineItem& item : piece.outline.items)
                    if (item.as_dart()) request.trimmed.push_back({item.as_dart()->name, width_mm});
                ask([&] { return notes_of(cutting_piece(wider, request, marking_request(pattern))); });
                ask([&] { return notes_of(cutting_piece(piece, request, marking_request(pattern))); });
            }
        }
        for (const double width_mm : {-1.0, 150.0, 1400.0}) {
            LayRequest cloth;
            cloth.width_mm = width_mm;
            ask([&] { return lay_pattern(pattern, cloth).notes; });
        }
    }
    EXPECT_GT(with_lengths_, 100u);
}

}  // namespace
}  // namespace dartwright::testing
