#include "dartwright/files/exercise_reader.hpp"

#include <algorithm>

#include "dartwright/assessing/criterion_names.hpp"
#include "dartwright/assessing/unearned_marks.hpp"
#include "dartwright/darts/recording/unit_of_request.hpp"
#include "dartwright/files/exercise_file.hpp"
#include "dartwright/files/output_file.hpp"
#include "dartwright/files/pattern_reader.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/words/clean_text.hpp"
#include "dartwright/words/lists.hpp"
#include "dartwright/words/quoted.hpp"

namespace dartwright {
namespace {

constexpr int exercise_version = 1;

using Kind = JsonNode::Kind;

/// Up to and with its last slash, so that a name can follow; empty for the present folder.
std::string folder_of(const std::string& file) {
    const std::size_t slash = file.rfind('/');
    return slash == std::string::npos ? std::string() : file.substr(0, slash + 1);
}

struct PatternAsked {
    Pattern pattern;
    bool is_read = false;
};

PatternAsked read_pattern_there(Reading& reading, const JsonNode& node, const NamedFrom& from) {
    if (node.kind != Kind::text) {
        const std::size_t problems = reading.problems.size();
        PatternAsked out{read_carried_pattern(reading, node), false};
        out.is_read = reading.problems.size() == problems;
        return out;
    }
    std::string text;
    try {
        text = read_named_file(from, std::string(node.text));
        return {read_pattern(text, path_of_named(from, std::string(node.text))), true};
    } catch (const FileTrouble& trouble) {
        reading.add(node, clean_text(trouble.what()),
                    "a pattern, or the name of a pattern file beside the exercise");
    } catch (const InvalidPattern& invalid) {
        if (is_json_with(text, "dartwright"))
            add_problems_of(reading, node, invalid);
        else
            reading.add(node, path_in_quotes(invalid.file) + ", which is no pattern file",
                        "a pattern file; dartwright check says what keeps it from being one");
    }
    return {};
}

enum class LadderOf { lengths, angles };

// A number, or text with a unit or without.
std::optional<double> read_within(Reading& reading, const JsonNode& node, LadderOf of) {
    if (node.kind != Kind::text)
        return of == LadderOf::lengths ? read_length(reading, node) : read_angle_deg(reading, node);
    const char* expected =
        of == LadderOf::lengths ? "a length, as a number or as \"1mm\" or \"1/16in\"" : "an angle in degrees";
    try {
        const std::string words(node.text);
        const double value = of == LadderOf::lengths ? parse_length(length_with_unit(words, reading.unit))
                                                     : parse_angle_deg(words);
        const double most = of == LadderOf::lengths ? largest_length_mm : 180;
        if (value >= 0 && value <= most) return value;
    } catch (const BadWords&) {
    }
    reading.reject(node, expected);
    return std::nullopt;
}

std::optional<double> read_share(Reading& reading, const JsonNode& node) {
    try {
        const double share = node.kind == Kind::text     ? parse_share(std::string(node.text))
                             : node.kind == Kind::number ? node.number
                                                         : -1;
        if (share >= 0 && share <= 1) return share;
    } catch (const BadWords&) {
    }
    reading.reject(node, "a share of the marks from \"0%\" to \"100%\"");
    return std::nullopt;
}

Rung read_rung(Reading& reading, const JsonNode& node, LadderOf of) {
    const Fields fields(reading, node, "a rung", {"rung", "within", "marks"});
    Rung rung;
    if (const JsonNode* name = fields.required("rung", "the rung's name"))
        rung.name = read_name(reading, *name).value_or("");
    if (rung.name == fault_rung)
        reading.add(*member(node, "rung"), "\"fault\", which is what lies beyond the last rung",
                    "another name");
    if (const JsonNode* within = fields.required("within", "the greatest difference on the rung"))
        rung.within = read_within(reading, *within, of).value_or(0);
    if (const JsonNode* marks = fields.required("marks", "the share of the marks that it keeps"))
        rung.share = read_share(reading, *marks).value_or(0);
    return rung;
}

// In order, with what differs from rung to rung going the right way.
void check_order(Reading& reading, JsonNodes nodes, const Ladder& ladder) {
    for (std::size_t i = 0; i < ladder.size(); ++i) {
        const auto same = [&](const Rung& each) { return each.name == ladder[i].name; };
        const auto end = ladder.begin() + static_cast<std::ptrdiff_t>(i);
        if (!ladder[i].name.empty() && std::any_of(ladder.begin(), end, same))
            reading.add(*nodes[i], "the rung " + in_quotes(ladder[i].name) + " again", "a name of its own");
        if (i == 0) continue;
        if (ladder[i].within <= ladder[i - 1].within)
            reading.add(*nodes[i], "a rung that is no wider than the one before",
                        "rungs with growing \"within\"");
        if (ladder[i].share > ladder[i - 1].share)
            reading.add(*nodes[i], "a rung that keeps more than the one before",
                        "rungs with falling \"marks\"");
    }
}

Ladder read_ladder(Reading& reading, const JsonNode& node, LadderOf of) {
    Ladder ladder;
    const std::size_t problems = reading.problems.size();
    JsonNodes nodes = list_of(reading, node, "a list of rungs");
    for (const JsonNode* child : nodes) ladder.push_back(read_rung(reading, *child, of));
    if (reading.problems.size() > problems) return ladder;
    if (ladder.empty()) reading.reject(node, "one rung or more");
    check_order(reading, nodes, ladder);
    return ladder;
}

std::vector<Freedom> read_freedoms(Reading& reading, const JsonNode& node) {
    std::vector<Freedom> out;
    std::vector<std::string> words;
    for (const FreedomName& each : freedom_names) words.emplace_back(each.word);
    for (const JsonNode* child : list_of(reading, node, "a list of what may differ")) {
        const auto found = std::find_if(
            freedom_names.begin(), freedom_names.end(),
            [&](const FreedomName& each) { return child->kind == Kind::text && child->text == each.word; });
        if (found == freedom_names.end()) {
            reading.reject(*child, any_of(words));
        } else if (std::find(out.begin(), out.end(), found->freedom) != out.end()) {
            reading.add(*child, in_words(*child) + " again", "each once");
        } else {
            out.push_back(found->freedom);
        }
    }
    return out;
}

Hand read_hand(Reading& reading, const JsonNode& node) {
    std::vector<std::string> words;
    for (const HandName& each : hand_names) {
        if (node.kind == Kind::text && node.text == each.word) return each.hand;
        words.emplace_back(each.word);
    }
    reading.reject(node, any_of(words));
    return Hand::unsaid;
}

const JsonNode& marks_node(const JsonNode& root, std::size_t task) {
    return *member(*member(root, "tasks")->children[task], "marks");
}

/// A plain number of marks is divided by what the finished pattern leaves to judge.
void divide_again(Task& task, const std::vector<Criterion>& without) {
    double all = 0;
    for (const CriterionMarks& each : task.marks) all += each.marks;
    std::erase_if(task.marks, [&](const CriterionMarks& each) {
        return std::find(without.begin(), without.end(), each.criterion) != without.end();
    });
    for (CriterionMarks& each : task.marks) each.marks = all / static_cast<double>(task.marks.size());
}

/// Those that a plain number leaves out of their own accord; whether there was one.
bool leave_out_unearned(const JsonNode& root, Exercise& exercise,
                        const std::vector<UnearnedMarks>& unearned) {
    bool is_changed = false;
    for (std::size_t i = 0; i < exercise.tasks.size(); ++i) {
        if (marks_node(root, i).kind != Kind::number) continue;
        std::vector<Criterion> without;
        for (const UnearnedMarks& each : unearned)
            if (each.task == i && each.criterion) without.push_back(*each.criterion);
        if (without.empty() || without.size() == exercise.tasks[i].marks.size()) continue;
        divide_again(exercise.tasks[i], without);
        is_changed = true;
    }
    return is_changed;
}

void add_unearned(Reading& reading, const JsonNode& root, const Exercise& exercise,
                  const UnearnedMarks& unearned) {
    const JsonNode& marks = marks_node(root, unearned.task);
    const JsonNode* own = unearned.criterion && marks.kind == Kind::object
                              ? member(marks, word_of(*unearned.criterion))
                              : nullptr;
    reading.add(own ? *own : marks,
                "marks of the task " + in_quotes(exercise.tasks[unearned.task].name) + " for " + unearned.why,
                unearned.way_out);
}

/// What nobody would have to earn is refused; a plain number is divided by the rest.
void leave_earned_marks(Reading& reading, const JsonNode& root, Exercise& exercise) {
    try {
        std::vector<UnearnedMarks> unearned = unearned_marks(prepared(exercise));
        while (!unearned.empty() && leave_out_unearned(root, exercise, unearned))
            unearned = unearned_marks(prepared(exercise));
        for (const UnearnedMarks& each : unearned) add_unearned(reading, root, exercise, each);
    } catch (const Impossible& error) {
        reading.add(*member(root, "pattern"), error.in(exercise.unit),
                    "a pattern that drafts can be held against");
    } catch (const BadWords& error) {
        reading.add(*member(root, "tasks"), error.in(exercise.unit), "tasks that can be done");
    }
}

Exercise read_exercise_root(Reading& reading, const JsonNode& root, const NamedFrom& from) {
    const Fields fields(
        reading, root, "an exercise",
        {"dartwright_exercise", "name", "words", "unit", "pattern", "tasks", "hand", "ladder", "may_differ"});
    Exercise exercise;
    exercise.ladders = usual_ladders();
    if (!fields.is_object()) return exercise;
    if (const JsonNode* version = fields.required("dartwright_exercise", "the version of the format: 1")) {
        if (version->kind != Kind::number || version->number != exercise_version)
            reading.reject(*version, "1, the version of the format");
    }
    if (const JsonNode* name = fields.required("name", "the exercise's name"))
        exercise.name = read_name(reading, *name).value_or("");
    if (const JsonNode* words = fields.optional("words")) {
        if (words->kind != Kind::text) reading.reject(*words, "text in double quotes");
        exercise.words = words->text;
    }
    exercise.unit = reading.unit = read_unit(reading, fields);
    PatternAsked pattern;
    if (const JsonNode* node = fields.required("pattern", "the pattern to begin with, or its file"))
        pattern = read_pattern_there(reading, *node, from);
    if (const JsonNode* hand = fields.optional("hand")) exercise.hand = read_hand(reading, *hand);
    exercise.ladders = ladders_of(exercise.hand);
    if (const JsonNode* ladder = fields.optional("ladder"))
        exercise.ladders = read_ladders(reading, *ladder, exercise.ladders);
    if (const JsonNode* node = fields.required("tasks", "the list of tasks"))
        exercise.tasks = read_tasks(reading, *node, {from, pattern.pattern, pattern.is_read});
    if (const JsonNode* node = fields.optional("may_differ"))
        exercise.may_differ = read_freedoms(reading, *node);
    exercise.pattern = std::move(pattern.pattern);
    if (reading.problems.empty() && pattern.is_read) leave_earned_marks(reading, root, exercise);
    return exercise;
}

}  // namespace

Ladders read_ladders(Reading& reading, const JsonNode& node, Ladders ladders) {
    const Fields fields(reading, node, "the ladders", {"lengths", "angles"});
    if (const JsonNode* lengths = fields.optional("lengths"))
        ladders.lengths = read_ladder(reading, *lengths, LadderOf::lengths);
    if (const JsonNode* angles = fields.optional("angles"))
        ladders.angles = read_ladder(reading, *angles, LadderOf::angles);
    return ladders;
}

void add_problems_of(Reading& reading, const JsonNode& node, const InvalidPattern& invalid) {
    for (const FileProblem& problem : invalid.problems) {
        const std::string where = problem.pointer.empty() ? "" : " at " + problem.pointer;
        reading.add(node, path_in_quotes(invalid.file) + " with " + problem.found + where,
                    problem.expected + " there");
    }
    if (invalid.more > 0)
        reading.add(node, path_in_quotes(invalid.file) + " with " + std::to_string(invalid.more) + " more",
                    "a file without problems");
}

Exercise read_exercise(std::string_view text, const std::string& file, NamedFiles named) {
    JsonTree tree = parse_json(text, "an exercise file");
    Reading reading;
    reading.problems = std::move(tree.problems);
    Exercise exercise;
    if (tree.root) exercise = read_exercise_root(reading, *tree.root, {folder_of(file), named});
    if (!reading.problems.empty()) throw InvalidPattern(file, in_order(std::move(reading.problems)));
    return exercise;
}

Exercise read_exercise_file(const std::string& path, NamedFiles named) {
    return read_exercise(read_text_file(path), path == "-" ? "standard input" : path, named);
}

}  // namespace dartwright
