#include <algorithm>
#include <set>

#include "dartwright/assessing/criterion_names.hpp"
#include "dartwright/assessing/operation_deeds.hpp"
#include "dartwright/checks/check.hpp"
#include "dartwright/checks/measure_line.hpp"
#include "dartwright/darts/recording/unit_of_request.hpp"
#include "dartwright/files/exercise_reader.hpp"
#include "dartwright/files/pattern_reader.hpp"
#include "dartwright/files/rule_file.hpp"
#include "dartwright/files/rule_reader.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/words/lists.hpp"
#include "dartwright/words/quoted.hpp"

namespace dartwright {
namespace {

using Kind = JsonNode::Kind;

/// More marks than this are a slip of the finger.
constexpr double most_marks = 10'000;

/// The key that says what is asked, and the criteria that such a task may be judged by.
struct TaskKind {
    const char* key;
    std::vector<Criterion> criteria;
    std::vector<Criterion> usual;  ///< what a plain number of marks is divided by
};
const std::vector<TaskKind>& task_kinds() {
    static const std::vector<TaskKind> kinds{
        {"do", {}, {}},  // by what the operation does
        {"keep",
         {Criterion::lengths, Criterion::angles, Criterion::area, Criterion::notches, Criterion::seams},
         {Criterion::lengths, Criterion::angles, Criterion::area, Criterion::notches, Criterion::seams}},
        {"true", {Criterion::check}, {Criterion::check}},
        {"allowances", {Criterion::allowances}, {Criterion::allowances}},
        {"measure", {Criterion::measure}, {Criterion::measure}},
        {"size", {Criterion::size}, {Criterion::size}}};
    return kinds;
}

// A criterion of other tasks.
bool leaves_nothing_to_judge(std::string_view key, const std::vector<std::string>& words) {
    return std::find(words.begin(), words.end(), key) == words.end() &&
           std::any_of(criterion_names.begin(), criterion_names.end(),
                       [key](const CriterionName& each) { return each.word == key; });
}

class TasksRead {
  public:
    TasksRead(Reading& reading, const TasksAsked& asked)
        : reading_(reading), from_(asked.from), pattern_(asked.pattern), is_known_(asked.is_pattern_read) {}

    std::vector<Task> all(const JsonNode& node);

  private:
    Task read(const JsonNode& node);
    const TaskKind* kind_of(const JsonNode& node);
    void read_what(const Fields& fields, const JsonNode& what, Task& task, TaskKind& kind);
    void read_operation(const JsonNode& what, Task& task, TaskKind& kind);
    void do_operation(const JsonNode& what, const Made& made, TaskKind& kind);
    TrueTask read_true(const Fields& fields, const JsonNode& what);
    AllowanceTask read_allowances(const JsonNode& what);
    MeasureTask read_measure(const Fields& fields, const JsonNode& what);
    void read_ease(const JsonNode& node, MeasureTask& task);
    void require_true(const JsonNode& what);
    void read_marks(const JsonNode& node, Task& task, const TaskKind& kind);
    void read_marks_of(const JsonNode& node, Task& task, const TaskKind& kind);
    std::optional<double> read_mark(const JsonNode& node);
    void check_lines();

    Reading& reading_;
    const NamedFrom& from_;
    Pattern pattern_;  ///< as the tasks so far leave it
    bool is_known_ = false;
    std::vector<std::pair<const JsonNode*, std::string>> lines_;  ///< to be measured on the finished pattern
};

std::vector<Task> TasksRead::all(const JsonNode& node) {
    std::vector<Task> tasks;
    std::set<std::string> names;
    for (const JsonNode* child : list_of(reading_, node, "a list of tasks")) {
        tasks.push_back(read(*child));
        const std::string& name = tasks.back().name;
        if (!name.empty() && !names.insert(name).second)
            reading_.add(*member(*child, "name"), "the task " + in_quotes(name) + " again",
                         "a name of its own");
    }
    if (node.kind == Kind::list && tasks.empty()) reading_.reject(node, "one task or more");
    check_lines();
    return tasks;
}

Task TasksRead::read(const JsonNode& node) {
    Task task;
    const TaskKind* found = kind_of(node);
    std::vector<std::string> keys{"name", "words", "marks"};
    for (const TaskKind& each : task_kinds())
        if (!found || found == &each || member(node, each.key)) keys.emplace_back(each.key);
    const std::string key = found ? found->key : "";
    if (key == "true") keys.emplace_back("leave_out");
    if (key == "measure") keys.insert(keys.end(), {"wearer", "ease"});
    const Fields fields(reading_, node, "a task", keys);
    if (!fields.is_object()) return task;
    if (const JsonNode* name = fields.required("name", "the task's name"))
        task.name = read_name(reading_, *name).value_or("");
    if (const JsonNode* words = fields.optional("words")) {
        if (words->kind != Kind::text) reading_.reject(*words, "text in double quotes");
        task.words = words->text;
    }
    const JsonNode* marks = fields.required("marks", "the marks of the task");
    if (!found) return task;
    TaskKind kind = *found;
    const std::size_t problems = reading_.problems.size();
    read_what(fields, *member(node, kind.key), task, kind);
    const bool may_be_judged = reading_.problems.size() == problems && is_known_;
    if (marks && (may_be_judged || key != "do")) read_marks(*marks, task, kind);
    return task;
}

const TaskKind* TasksRead::kind_of(const JsonNode& node) {
    if (node.kind != Kind::object) return nullptr;
    std::vector<std::string> keys;
    const TaskKind* found = nullptr;
    for (const TaskKind& each : task_kinds()) {
        keys.emplace_back(each.key);
        const JsonNode* there = member(node, each.key);
        if (there && found) reading_.add(*there, "a second thing that is asked", "one thing a task");
        if (there && !found) found = &each;
    }
    if (!found) reading_.add(node, "nothing that is asked", any_of(keys));
    return found;
}

void TasksRead::read_what(const Fields& fields, const JsonNode& what, Task& task, TaskKind& kind) {
    const std::string key = kind.key;
    if (key == "do") read_operation(what, task, kind);
    if (key == "keep") task.what = KeepTask{};
    if (key == "size") task.what = SizeTask{};
    if (key == "keep" || key == "size") require_true(what);
    if (key == "true") task.what = read_true(fields, what);
    if (key == "allowances") task.what = read_allowances(what);
    if (key == "measure") task.what = read_measure(fields, what);
}

void TasksRead::require_true(const JsonNode& what) {
    if (what.kind != Kind::boolean || !what.boolean) reading_.reject(what, "true");
}

void TasksRead::read_operation(const JsonNode& what, Task& task, TaskKind& kind) {
    const std::size_t problems = reading_.problems.size();
    const Made made = request_with_unit(read_made(reading_, what), reading_.unit, pattern_);
    task.what = OperationTask{made};
    if (reading_.problems.size() == problems && is_known_) do_operation(what, made, kind);
}

void TasksRead::do_operation(const JsonNode& what, const Made& made, TaskKind& kind) {
    std::string why;
    try {
        const Pattern before = std::move(pattern_);
        pattern_ = done(before, made);
        kind.criteria = criteria_of(deeds_of(made, {before, pattern_}));
        for (const Criterion each : kind.criteria)
            if (each != Criterion::shape || kind.criteria.size() == 1) kind.usual.push_back(each);
        return;
    } catch (const Impossible& error) {
        why = error.in(reading_.unit);
    } catch (const BadWords& error) {
        why = error.in(reading_.unit);
    }
    // What follows begins with a pattern that nobody knows.
    is_known_ = false;
    reading_.add(what, why, "an operation that can be done to the pattern as the tasks before leave it");
}

TrueTask TasksRead::read_true(const Fields& fields, const JsonNode& what) {
    require_true(what);
    TrueTask task;
    const JsonNode* left_out = fields.optional("leave_out");
    if (!left_out) return task;
    std::vector<std::string> known;
    for (const CheckKind& each : list_of_checks()) known.emplace_back(each.name);
    for (const JsonNode* child : list_of(reading_, *left_out, "a list of checks"))
        if (const auto name = read_known_name(reading_, *child, "check", known))
            task.leave_out.push_back(*name);
    return task;
}

AllowanceTask TasksRead::read_allowances(const JsonNode& what) {
    if (what.kind != Kind::text) return {read_cutting(reading_, what)};
    std::string text;
    try {
        text = read_named_file(from_, std::string(what.text));
        return {read_rule(text, path_of_named(from_, std::string(what.text)))};
    } catch (const FileTrouble& trouble) {
        reading_.add(what, trouble.what(), "a cutting rule, or the name of its file beside the exercise");
    } catch (const InvalidPattern& invalid) {
        if (is_json_with(text, "dartwright_rule"))
            add_problems_of(reading_, what, invalid);
        else
            reading_.add(what, path_in_quotes(invalid.file) + ", which is no cutting rule",
                         "a cutting rule, or the name of its file beside the exercise");
    }
    return {};
}

MeasureTask TasksRead::read_measure(const Fields& fields, const JsonNode& what) {
    MeasureTask task;
    task.line = read_name(reading_, what).value_or("");
    if (const JsonNode* wearer = fields.required("wearer", "the wearer's measure"))
        task.wearer_mm = read_length(reading_, *wearer).value_or(0);
    if (const JsonNode* ease = fields.required("ease", "the least and the most ease")) read_ease(*ease, task);
    if (!task.line.empty()) lines_.emplace_back(&what, task.line);
    return task;
}

void TasksRead::read_ease(const JsonNode& node, MeasureTask& task) {
    if (node.kind != Kind::list || node.children.size() != 2) {
        reading_.reject(node, "the least and the most ease, as [4, 6]");
        return;
    }
    const auto least = read_coordinate(reading_, *node.children[0]);
    const auto most = read_coordinate(reading_, *node.children[1]);
    if (!least || !most) return;
    if (*least > *most) reading_.reject(node, "the least ease first");
    task.ease_mm = {*least, *most};
}

// Once all tasks are read, since a later one may make the line.
void TasksRead::check_lines() {
    if (!is_known_) return;
    for (const auto& [node, line] : lines_) {
        try {
            measure_line(pattern_, line);
        } catch (const UnknownName& unknown) {
            reading_.add(*node, "no such line as " + in_quotes(line), any_of(unknown.known));
        } catch (const Impossible& error) {
            reading_.add(*node, error.in(reading_.unit), "a line that can be measured");
        }
    }
}

std::optional<double> TasksRead::read_mark(const JsonNode& node) {
    if (node.kind == Kind::number && node.number > 0 && node.number <= most_marks) return node.number;
    reading_.reject(node, "marks of more than 0, as a number");
    return std::nullopt;
}

void TasksRead::read_marks(const JsonNode& node, Task& task, const TaskKind& kind) {
    if (node.kind == Kind::object) return read_marks_of(node, task, kind);
    const auto marks = read_mark(node);
    if (!marks) return;
    const double each = *marks / static_cast<double>(kind.usual.size());
    for (const Criterion criterion : kind.usual) task.marks.push_back({criterion, each});
}

void TasksRead::read_marks_of(const JsonNode& node, Task& task, const TaskKind& kind) {
    std::vector<std::string> words;
    for (const Criterion criterion : kind.criteria) words.emplace_back(word_of(criterion));
    std::vector<std::string> known = words;
    for (const JsonNode* child : node.children) {
        if (!leaves_nothing_to_judge(child->key, words)) continue;
        known.emplace_back(child->key);
        reading_.add(*child, in_quotes(child->key) + ", by which this task leaves nothing to judge",
                     "marks for " + any_of(words));
    }
    const Fields fields(reading_, node, "the marks of this task", known);
    for (const JsonNode* child : node.children) {
        const auto found = std::find(words.begin(), words.end(), child->key);
        if (found == words.end()) continue;
        const Criterion criterion = kind.criteria[static_cast<std::size_t>(found - words.begin())];
        if (const auto marks = read_mark(*child)) task.marks.push_back({criterion, *marks});
    }
    if (node.children.empty()) reading_.reject(node, "marks for one of these or more: " + any_of(words));
}

}  // namespace

std::vector<Task> read_tasks(Reading& reading, const JsonNode& node, const TasksAsked& asked) {
    return TasksRead(reading, asked).all(node);
}

}  // namespace dartwright
