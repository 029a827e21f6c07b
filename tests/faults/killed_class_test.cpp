// A class whose marking is ended without warning, wherever: what was marked is kept, and going on from there
// gives the same lines and the same report to the byte.

#include <csignal>

#include "faulty.hpp"

namespace dartwright {
namespace {

const std::string drafts = source_folder + "/fixtures/exercises/chorus-class/drafts";
const std::string class_exercise = source_folder + "/fixtures/exercises/chorus-class/exercise.json";

std::vector<std::string> marking(const Folder& folder, const std::string& jobs) {
    return {"assess",  class_exercise,         drafts,       "--format", "csv",
            "--lines", folder / "class.jsonl", "--resume",   "--jobs",   jobs,
            "-o",      folder / "class.csv",   "--overwrite"};
}

struct Kept {
    std::string lines;
    std::string report;
    std::vector<std::string> names;
};
Kept kept_in(const Folder& folder) {
    return {text_of_file(folder / "class.jsonl"), text_of_file(folder / "class.csv"), folder.names()};
}

void expect_same(const Kept& found, const Kept& whole) {
    EXPECT_EQ(found.lines, whole.lines);
    EXPECT_EQ(found.report, whole.report);
}

TEST(killed_class, is_gone_on_with_to_the_byte) {
    for (const char* jobs : {"1", "4"}) {
        Folder whole_folder;
        Folder count;
        const Ended first = with_faults(marking(whole_folder, jobs), {"FAULT_COUNT=" + (count / "calls")});
        EXPECT_LE(first.status, 3) << first.err;
        const Kept whole = kept_in(whole_folder);
        const long calls = std::stol(text_of_file(count / "calls"));
        EXPECT_GT(calls, static_cast<long>(lines_in(whole.lines)));
        std::size_t killed = 0;
        const long stride = are_tests_long() ? 1 : 7;
        for (long call = 1; call <= calls; call += stride) {
            for (const char* when : {"<", "/", ">"}) {
                Folder folder;
                const std::string fault =
                    "FAULT=" + std::to_string(call) + ":" + when + std::to_string(SIGKILL);
                SCOPED_TRACE(fault);
                if (with_faults(marking(folder, jobs), {fault}).status == 128 + SIGKILL) ++killed;
                EXPECT_EQ(dartwright(marking(folder, jobs)).status, first.status);
                expect_same(kept_in(folder), whole);
            }
        }
        EXPECT_GT(killed, 5U);
    }
}

/// The same draws everywhere: the numbers of Park and Miller (from memory; any would do).
class Draws {
  public:
    explicit Draws(std::uint64_t seed) : at_(seed) {}
    long below(long limit) {
        at_ = at_ * 48271 % 2147483647;
        return static_cast<long>(at_) % limit;
    }

  private:
    std::uint64_t at_;
};

TEST(killed_class, is_gone_on_with_however_often_it_was_killed) {
    Folder whole_folder;
    const Ended first = dartwright(marking(whole_folder, "2"));
    const Kept whole = kept_in(whole_folder);
    for (std::uint64_t seed = 1; seed <= (are_tests_long() ? 100U : 3U); ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        Draws draws(seed);
        Folder folder;
        for (int time = 0; time < 6; ++time) {
            const char* when = std::array{"<", "/", ">"}[static_cast<std::size_t>(draws.below(3))];
            with_faults(marking(folder, "2"), {"FAULT=" + std::to_string(1 + draws.below(12)) + ":" + when +
                                               std::to_string(SIGKILL)});
        }
        EXPECT_EQ(dartwright(marking(folder, "2")).status, first.status);
        expect_same(kept_in(folder), whole);
    }
}

}  // namespace
}  // namespace dartwright
