#include "dartwright/darts/replay.hpp"

#include <algorithm>
#include <iterator>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/recording/made_operations.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/pattern/sound_entry.hpp"

namespace dartwright {
namespace {

// What goes wrong in `doing` is said of the step.
template <class Doing>
auto said_of_step(std::size_t number, const Made& made, const Doing& doing) {
    const std::string where = "operation " + std::to_string(number) + ", " + made.operation + ": ";
    try {
        return doing();
    } catch (const Impossible& error) {
        throw Impossible(where + error.reason_told, error.remedy_told);
    } catch (const BadWords& error) {
        throw BadWords(where + error.told());
    } catch (const UnknownName& error) {
        throw BadWords(where + error.told());
    }
}

void refuse_other_beginning(const Pattern& block, const std::vector<Made>& made) {
    const bool is_beginning =
        block.made.size() <= made.size() && std::equal(block.made.begin(), block.made.end(), made.begin());
    if (is_beginning) return;
    throw BadWords("the block was made by " + std::to_string(block.made.size()) +
                   " operations with which the pattern's list does not begin; expected the block that the "
                   "pattern was made from");
}

}  // namespace

ReplayResult replay(const Pattern& block, const std::vector<Made>& made,
                    const std::function<Pattern(const Pattern&)>& between) {
    require_sound(block);
    refuse_other_beginning(block, made);
    std::vector<MadeOperation> operations;
    for (std::size_t i = block.made.size(); i < made.size(); ++i) {
        operations.push_back(said_of_step(i + 1, made[i], [&] { return read_operation(made[i]); }));
    }
    ReplayResult out{block, {made.begin() + static_cast<std::ptrdiff_t>(block.made.size()), made.end()}};
    for (std::size_t i = 0; i < operations.size(); ++i) {
        const std::size_t number = block.made.size() + i + 1;
        if (i > 0 && between) out.pattern = between(out.pattern);
        out.pattern = said_of_step(number, out.steps[i], [&] { return operations[i](out.pattern); });
    }
    out.pattern.made = made;
    return out;
}

Pattern performed(const Pattern& pattern, const Made& operation) {
    const SoundEntry sound(pattern);
    const MadeOperation perform = read_operation(operation);
    Pattern out = perform(pattern);
    const auto is_tolerance = [](const auto& word) { return word.first.starts_with("tolerance "); };
    std::copy_if(operation.request.begin(), operation.request.end(),
                 std::back_inserter(out.made.back().request), is_tolerance);
    return out;
}

void add_tolerances(Made& made, const std::map<std::string, double>& tolerances) {
    for (const ToleranceName& tolerance : tolerance_names()) {
        const auto given = tolerances.find(tolerance.name);
        if (given == tolerances.end()) continue;
        made.request.emplace_back(
            std::string("tolerance ") + tolerance.name,
            tolerance.is_angle ? words_of_angle_deg(given->second) : words_of_length(given->second));
    }
}

}  // namespace dartwright
