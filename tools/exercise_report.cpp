#include "exercise_report.hpp"

#include "dartwright/files/assessment_words.hpp"
#include "dartwright/words/clean_text.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {
namespace {

const char* word_of_hand(Hand hand) {
    for (const HandName& each : hand_names)
        if (each.hand == hand) return each.word;
    return nullptr;
}

Json ladder_json(const Ladder& ladder) {
    Json rungs = Json::array();
    for (const Rung& rung : ladder)
        rungs.push_back({{"rung", rung.name}, {"within", rung.within}, {"marks", rung.share}});
    return rungs;
}

}  // namespace

std::string untouched_text(const Assessment& untouched) {
    return "The pattern as it is handed out gets " + verdict_text(untouched) + ".";
}

std::string exercise_text(const PreparedExercise& exercise, const Ink& ink) {
    const Assessment untouched = assess(exercise, exercise.exercise.pattern);
    const Assessment finished = assess(exercise, exercise.finished);
    const Exercise& of = exercise.exercise;
    std::string text = ink(Paint::heading, clean_text(of.name)) + "\n";
    if (const char* hand = word_of_hand(of.hand)) text += "  hand: " + std::string(hand) + "\n";
    text += "  lengths: " + clean_text(ladder_text(of.ladders.lengths, Quantity::length, of.unit)) +
            "\n  angles: " + clean_text(ladder_text(of.ladders.angles, Quantity::angle)) + "\n\n";
    TextTable table(
        {{"task", Align::left}, {"judged by", Align::left}, {"marks"}, {"as handed out"}, {"finished"}});
    for (std::size_t i = 0; i < untouched.tasks.size(); ++i) {
        std::string task = clean_text(untouched.tasks[i].name);
        for (std::size_t k = 0; k < untouched.tasks[i].criteria.size(); ++k) {
            const JudgedCriterion& criterion = untouched.tasks[i].criteria[k];
            table.add({{std::exchange(task, "")},
                       {word_of(criterion.criterion)},
                       {marks_text(criterion.of)},
                       {marks_text(criterion.marks)},
                       {marks_text(finished.tasks[i].criteria[k].marks)}});
        }
    }
    return text + table.text(ink) + "\n  " + untouched_text(untouched) + "\n  The finished one gets " +
           verdict_text(finished) + ".\n";
}

std::string exercise_json(const PreparedExercise& exercise) {
    const Assessment untouched = assess(exercise, exercise.exercise.pattern);
    const Assessment finished = assess(exercise, exercise.finished);
    const Exercise& of = exercise.exercise;
    const char* hand = word_of_hand(of.hand);
    Json tasks = Json::array();
    for (std::size_t i = 0; i < untouched.tasks.size(); ++i) {
        Json criteria = Json::array();
        for (std::size_t k = 0; k < untouched.tasks[i].criteria.size(); ++k) {
            const JudgedCriterion& criterion = untouched.tasks[i].criteria[k];
            criteria.push_back({{"criterion", word_of(criterion.criterion)},
                                {"of", criterion.of},
                                {"untouched", criterion.marks},
                                {"finished", finished.tasks[i].criteria[k].marks}});
        }
        tasks.push_back({{"name", untouched.tasks[i].name}, {"criteria", criteria}});
    }
    const Json json{
        {"dartwright_assess_exercise", 1},
        {"exercise", of.name},
        {"hand", hand ? Json(hand) : Json()},
        {"ladder",
         {{"lengths", ladder_json(of.ladders.lengths)}, {"angles", ladder_json(of.ladders.angles)}}},
        {"of", untouched.of},
        {"untouched", untouched.marks},
        {"finished", finished.marks},
        {"tasks", tasks}};
    return json_line(json) + "\n";
}

}  // namespace dartwright::tools
