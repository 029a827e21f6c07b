// Whoever works in inches is answered in inches: every operation over every dart, edge and seam of the
// fixtures, with requests that are granted and that are refused.

#include <gtest/gtest.h>

#include "dartwright/darts/close_flare.hpp"
#include "dartwright/darts/close_gathers.hpp"
#include "dartwright/darts/close_seam.hpp"
#include "dartwright/darts/close_tuck.hpp"
#include "dartwright/darts/cluster.hpp"
#include "dartwright/darts/merge.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/repoint.hpp"
#include "dartwright/darts/split.hpp"
#include "dartwright/darts/true_dart.hpp"
#include "dartwright/darts/true_edge.hpp"
#include "dartwright/darts/true_seam.hpp"
#include "dartwright/pattern/place.hpp"
#include "support/readers_unit.hpp"

namespace dartwright::testing {
namespace {

class Answers {
  public:
    explicit Answers(Pattern pattern) : pattern_(std::move(pattern)) { pattern_.unit = Unit::inch; }

    void ask_all() {
        for (const Piece& piece : pattern_.pieces) {
            ask([&] { return open(pattern_, {piece.name, Worn::front, {}, {}}); });
            const std::vector<Run> runs = runs_of(piece.outline);
            for (const Run& run : runs) {
                for (const double span_mm : {0.1, 3.3, 40.0})
                    ask([&] { return true_edge(pattern_, {piece.name, run.edge, span_mm}); });
            }
            for (const OutlineItem& item : piece.outline.items) {
                if (const DartItem* dart = item.as_dart()) ask_of_dart(piece, dart->name, runs);
            }
        }
        for (const Seam& seam : pattern_.seams) ask_of_seam(seam);
    }
    std::size_t with_lengths() const { return with_lengths_; }
    std::size_t all() const { return all_; }

  private:
    template <class Operation>
    void ask(const Operation& operation) {
        try {
            for (const std::string& note : operation().account.notes) look_at(note);
        } catch (const Error& error) {
            look_at(error.in(Unit::inch));
            EXPECT_EQ(error.in(Unit::mm), error.what());
        }
    }

    void look_at(const std::string& answer) {
        ++all_;
        EXPECT_FALSE(speaks_of(answer, " mm")) << answer;
        if (speaks_of(answer, " in")) ++with_lengths_;
    }

    void ask_of_dart(const Piece& piece, const std::string& dart, const std::vector<Run>& runs) {
        for (const Run& run : runs) {
            for (const double share : {0.03, 0.5, 1.4}) {
                const std::string to = run.edge + "@" + std::to_string(share * run.length) + "/" +
                                       name_of_end(run, RunEnd::start);
                ask([&] { return pivot(pattern_, {piece.name, dart, to, {}, {}, "", "", "", "cf"}); });
                ask([&] { return pivot(pattern_, {piece.name, dart, to, {}, 200.0, "", "", "", ""}); });
                ask([&] { return close_as_flare(pattern_, {piece.name, dart, to, "", 33.3}); });
                CloseSeamRequest seam{piece.name, dart, "", to, "", "", "", "", {}, 33.3};
                ask([&] { return close_as_seam(pattern_, seam); });
                seam.round_mm = 500.5;
                ask([&] { return close_as_seam(pattern_, seam); });
            }
        }
        for (const OutlineItem& item : piece.outline.items) {
            const DartItem* other = item.as_dart();
            if (other) ask([&] { return merge(pattern_, {piece.name, dart, other->name, "", ""}); });
        }
        for (const double mm : {-1.0, 0.3, 12.3, 111.1}) {
            ask([&] { return cluster(pattern_, {piece.name, dart, 3, mm, "", {}, {}, "", ""}); });
            ask([&] { return close_as_tuck(pattern_, {piece.name, dart, mm}); });
            ask([&] { return close_as_gathers(pattern_, {piece.name, dart, TakenIn::ease, mm}); });
            ask([&] { return true_dart(pattern_, {piece.name, dart, TrueLegs::mean, mm}); });
            RepointRequest aimed{piece.name, dart, mm, {}, {}, {}, 40};
            ask([&] { return repoint(pattern_, aimed); });
            aimed.back_off_mm = {};
            aimed.point = Point{mm, 2 * mm};
            ask([&] { return repoint(pattern_, aimed); });
            aimed.pivot = aimed.point;
            aimed.point = {};
            ask([&] { return repoint(pattern_, aimed); });
        }
    }

    void ask_of_seam(const Seam& seam) {
        for (const SeamSide& side : seam.joins) {
            for (const SeamPart& part : side) {
                const Piece& piece = pattern_.pieces[piece_index(pattern_, part.piece)];
                const std::vector<Run> runs = runs_of(piece.outline);
                const Run* run = find_run(runs, part.edge);
                if (!run) continue;
                for (const RunEnd end : {RunEnd::start, RunEnd::end}) {
                    for (const double span_mm : {1.0, 30.3})
                        ask([&] {
                            return true_seam(pattern_, {seam.name, name_of_end(*run, end), "both", span_mm});
                        });
                }
            }
        }
    }

    Pattern pattern_;
    std::size_t all_ = 0;
    std::size_t with_lengths_ = 0;
};

TEST(readers_unit, who_works_in_inches_is_answered_in_inches) {
    std::size_t with_lengths = 0;
    for (const std::string& file : all_fixture_patterns()) {
        SCOPED_TRACE(file);
        Answers answers(read_pattern_file(file));
        answers.ask_all();
        EXPECT_GT(answers.all(), 0u);
        with_lengths += answers.with_lengths();
    }
    EXPECT_GT(with_lengths, 500u) << "else it was not asked for what has lengths";
}

}  // namespace
}  // namespace dartwright::testing
