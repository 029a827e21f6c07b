#pragma once

// Exercises of one to four tasks done one after the other, as a teacher may set them: over generated pieces
// of several shapes and the blocks of the fixtures, with everything asked that the reader leaves to be asked.

#include <optional>
#include <string>
#include <vector>

#include "assessing/drafts.hpp"
#include "dartwright/assessing/operation_deeds.hpp"
#include "dartwright/files/json_lines.hpp"
#include "dartwright/files/output_file.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/place.hpp"
#include "support/evenly.hpp"

namespace dartwright::testing {

struct Steps {
    Pattern block;
    std::vector<Made> made;
};

inline std::string made_json(const Made& made) {
    std::string out = "{\"operation\": " + json_text(made.operation);
    for (const auto& [key, value] : made.request) out += ", " + json_text(key) + ": " + json_text(value);
    return out + "}";
}

/// The pattern after the steps, one of them left out or put in the place of another; empty where they cannot
/// be done.
inline std::optional<Pattern> all_done(const Pattern& block, const std::vector<Made>& made) {
    try {
        Pattern pattern = block;
        for (const Made& each : made) pattern = done(pattern, each);
        return pattern;
    } catch (const Impossible&) {
    } catch (const BadWords&) {
    }
    return std::nullopt;
}

inline Pattern any_block() {
    static const std::vector<Pattern> blocks = [] {
        std::vector<Pattern> out;
        for (const char* name : {"workshop/chorus-bodice.json", "workshop/chorus-bodice-inch.json",
                                 "blocks/close-fitting.json", "blocks/three-measure.json"})
            out.push_back(read_pattern_file(std::string(DARTWRIGHT_SOURCE_DIR "/fixtures/") + name));
        return out;
    }();
    if (*evenly(0, 4) == 0) return blocks[any_index_of(blocks)];
    GeneratedPiece generated = any_piece(true, *evenly(1, 4));
    constexpr double least_mm = 250;
    if (generated.size_mm < least_mm)
        generated.pattern = image({0, 1.5 * least_mm / generated.size_mm, false, {}}, generated.pattern);
    return generated.pattern;
}

inline std::vector<std::string> darts_of(const Piece& piece) {
    std::vector<std::string> names;
    for (const OutlineItem& item : piece.outline.items)
        if (const DartItem* dart = item.as_dart()) names.push_back(dart->name);
    return names;
}

inline std::string text_mm(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.6fmm", value);
    return text;
}
inline std::string text_share(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.4f", value);
    return text;
}

/// A place that lies 25 mm and more from every mouth, so that each dart can be told from the other.
inline std::string any_clear_place(const Piece& piece) {
    double at = 0;
    const std::string place = any_place(piece, &at);
    if (place.empty()) return {};
    const std::vector<Run> runs = runs_of(piece.outline);
    const Run& run = *find_run(runs, place.substr(0, place.find('@')));
    for (const double mouth : dart_distances(piece.outline, run))
        if (std::abs(mouth - at) < 25) return {};
    return place;
}

inline std::optional<Made> any_made(const Pattern& pattern, int number) {
    const Piece& piece = pattern.pieces[any_index_of(pattern.pieces)];
    const std::vector<std::string> darts = darts_of(piece);
    const std::string name = "made " + std::to_string(number);
    Made made;
    made.request = {{"piece", piece.name}};
    const int kind = *evenly(0, 10);
    if (kind == 9) {
        made.operation = "open";
        return made;
    }
    if (darts.empty()) return std::nullopt;
    const std::string& dart = darts[any_index_of(darts)];
    if (kind < 3) {
        made.operation = "pivot";
        made.request.insert(made.request.end(),
                            {{"dart", dart}, {"to", any_clear_place(piece)}, {"name", name}});
        if (*evenly(0, 2) == 0) made.request.push_back({"share", text_share(real_between(0.3, 0.7))});
        if (*evenly(0, 2) == 0) made.request.push_back({"back_off", text_mm(real_between(5, 40))});
    } else if (kind == 3) {
        made.operation = "split";
        const double share = real_between(0.3, 0.7);
        made.request.push_back({"dart", dart});
        made.request.push_back({"to", any_clear_place(piece) + "=" + text_share(share)});
        made.request.push_back({"name", name});
        made.request.push_back({"to 2", any_clear_place(piece) + "=" + text_share(1 - share)});
        made.request.push_back({"name 2", name + " b"});
    } else if (kind < 6) {
        made.operation = "merge";
        made.request.push_back({"dart", dart});
        made.request.push_back({"with", darts[any_index_of(darts)]});
        if (*evenly(0, 3) == 0) made.request.push_back({"name", name});
    } else if (kind == 6) {
        made.operation = "close";
        made.request.push_back({"dart", dart});
        made.request.push_back({"as", *rc::gen::element<std::string>("ease", "gathers", "tuck", "seam")});
        if (made.request.back().second == "seam") made.request.push_back({"to", any_clear_place(piece)});
    } else if (kind == 7) {
        made.operation = "true";
        if (*evenly(0, 2) == 0)
            made.request.push_back({"dart", dart});
        else
            made.request.push_back({"edge", runs_of(piece.outline).front().edge});
    } else {
        made.operation = "repoint";
        made.request.push_back({"dart", dart});
        made.request.push_back({"back_off", text_mm(real_between(5, 60))});
    }
    return made;
}

inline Steps any_steps() {
    Steps steps{any_block(), {}};
    const int count = *evenly(1, 5);
    Pattern pattern = steps.block;
    for (int tried = 0; tried < 12 * count && int(steps.made.size()) < count; ++tried) {
        const auto made = any_made(pattern, tried);
        if (!made) continue;
        const auto after = all_done(pattern, {*made});
        if (!after) continue;
        pattern = *after;
        steps.made.push_back(*made);
    }
    return steps;
}

inline std::string any_marks(const Pattern& before, const Pattern& after, const Made& made) {
    if (*evenly(0, 3) > 0) return "12";
    std::string out;
    for (const Criterion each : criteria_of(deeds_of(made, {before, after})))
        if (*evenly(0, 2) == 0) out += (out.empty() ? "{" : ", ") + json_text(word_of(each)) + ": 3";
    return out.empty() ? "7" : out + "}";
}

/// The exercise of the steps as its file; what must be kept, be true and be measured is asked besides.
inline std::string exercise_text(const Steps& steps) {
    std::string tasks;
    Pattern before = steps.block;
    for (std::size_t i = 0; i < steps.made.size(); ++i) {
        const Pattern after = done(before, steps.made[i]);
        tasks += "{\"name\": \"task " + std::to_string(i) + "\", \"do\": " + made_json(steps.made[i]) +
                 ", \"marks\": " + any_marks(before, after, steps.made[i]) + "},\n";
        before = after;
    }
    tasks += "{\"name\": \"keep\", \"keep\": true, \"marks\": 10}";
    for (const char* more : {"{\"name\": \"true\", \"true\": true, \"marks\": 3}",
                             "{\"name\": \"size\", \"size\": true, \"marks\": 2}"})
        if (*evenly(0, 2) == 0) tasks += std::string(",\n") + more;
    Pattern block = steps.block;
    block.made.clear();
    return "{\"dartwright_exercise\": 1, \"name\": \"generated\", \"unit\": \"mm\", \"pattern\": " +
           write_pattern(block) + ", \"tasks\": [" + tasks + "]}";
}

/// Steps, and the exercise as the reader accepts it.
struct AcceptedExercise {
    Steps steps;
    PreparedExercise exercise;
};
/// Empty if the reader refuses it for marks that nobody would have to earn; for nothing else may it.
inline std::optional<AcceptedExercise> accepted_exercise() {
    Steps steps = any_steps();
    if (steps.made.empty()) return std::nullopt;
    const std::string text = exercise_text(steps);
    try {
        return AcceptedExercise{std::move(steps), prepared(read_exercise(text, "exercise.json"))};
    } catch (const InvalidPattern& refused) {
        for (const FileProblem& each : refused.problems)
            if (each.found.find("marks of the task") != 0) throw;
        return std::nullopt;
    }
}

/// What `draw` gives, tried until it gives something; of every size from the first case on, since small
/// numbers alone make no exercise.
template <class Draw>
auto drawn(Draw draw) {
    return *rc::gen::resize(rc::kNominalSize, rc::gen::exec([draw] {
                                constexpr int most_tries = 60;
                                for (int i = 0; i < most_tries; ++i)
                                    if (auto found = draw()) return *found;
                                RC_DISCARD("nothing was drawn");
                            }));
}
inline AcceptedExercise any_accepted_exercise() {
    return drawn([] { return accepted_exercise(); });
}

}  // namespace dartwright::testing
