#include "dartwright/assessing/exercise.hpp"

#include <algorithm>

#include "dartwright/assessing/criterion_names.hpp"
#include "dartwright/assessing/operation_deeds.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright {

const char* word_of(Criterion criterion) {
    const auto found = std::find_if(criterion_names.begin(), criterion_names.end(),
                                    [&](const CriterionName& each) { return each.criterion == criterion; });
    return found == criterion_names.end() ? "" : found->word;
}

// The inch fractions are what a tape shows beside 1 mm; the shares are common practice, no source.
const Ladders& usual_ladders() {
    static const Ladders ladders{{{"full", 1, 1}, {"accepted", 25.4 / 16, 0.75}, {"noted", 25.4 / 8, 0.5}},
                                 {{"full", 0.5, 1}, {"accepted", 1, 0.75}, {"noted", 2, 0.5}}};
    return ladders;
}

const Ladders& ladders_of(Hand hand) {
    const auto ladders = [](std::array<double, 3> lengths, std::array<double, 3> angles) {
        Ladders out = usual_ladders();
        for (std::size_t i = 0; i < lengths.size(); ++i) {
            out.lengths[i].within = lengths[i];
            out.angles[i].within = angles[i];
        }
        return out;
    };
    static const Ladders fine = ladders({0.5, 1, 2}, {0.25, 0.5, 1});
    static const Ladders beginner = ladders({2, 3, 6}, {1, 2, 4});
    return hand == Hand::fine ? fine : hand == Hand::beginner ? beginner : usual_ladders();
}

double tolerances_allowed(Hand hand) {
    return hand == Hand::ordinary ? 2 : hand == Hand::beginner ? 4 : 1;
}

Pattern finished_pattern(const Exercise& exercise) {
    Pattern pattern = exercise.pattern;
    for (const Task& task : exercise.tasks) {
        const auto* operation = std::get_if<OperationTask>(&task.what);
        if (!operation) continue;
        const std::string where = "task " + quoted(task.name) + ": ";
        try {
            pattern = done(pattern, operation->operation);
        } catch (const Impossible& error) {
            throw Impossible(where + error.reason_told, error.remedy_told);
        } catch (const BadWords& error) {
            throw BadWords(where + error.told());
        }
    }
    return pattern;
}

}  // namespace dartwright
