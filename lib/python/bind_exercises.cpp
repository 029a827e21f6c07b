// Exercises, and drafts judged by them.

#include <pybind11/stl/filesystem.h>

#include "bindings.hpp"
#include "dartwright/assessing/assess.hpp"
#include "dartwright/assessing/criterion_names.hpp"
#include "dartwright/files/assessment_words.hpp"
#include "dartwright/files/exercise_file.hpp"

namespace dartwright::python {
namespace {

NamedFiles named(bool in_own_folder) {
    return in_own_folder ? NamedFiles::in_own_folder : NamedFiles::anywhere;
}

PreparedExercise read(const std::filesystem::path& path, bool in_own_folder) {
    return prepared(read_exercise_file(path_of(path), named(in_own_folder)));
}

PreparedExercise parse(const std::string& text, const std::string& file, bool in_own_folder) {
    return prepared(read_exercise(text, file, named(in_own_folder)));
}

const char* kind_of(const Task& task) {
    constexpr std::array kinds{"operation", "keep", "true", "allowances", "measure", "size"};
    static_assert(kinds.size() == std::variant_size_v<decltype(Task::what)>);
    return kinds[task.what.index()];
}

py::dict marks_of(const Task& task) {
    py::dict marks;
    for (const CriterionMarks& each : task.marks) marks[word_of(each.criterion)] = each.marks;
    return marks;
}

double all_marks(const PreparedExercise& exercise) {
    double all = 0;
    for (const Task& task : exercise.exercise.tasks) {
        for (const CriterionMarks& each : task.marks) all += each.marks;
    }
    return all;
}

std::vector<std::string> words_of(const std::vector<Freedom>& freedoms) {
    std::vector<std::string> words;
    for (const FreedomName& name : freedom_names) {
        for (const Freedom freedom : freedoms) {
            if (freedom == name.freedom) words.emplace_back(name.word);
        }
    }
    return words;
}

void bind_exercise(py::module_& module) {
    Value<Task>(module, "Task", "One thing that an exercise asks.")
        .field("name", &Task::name, "Its name.")
        .field(
            "words", [](const Task& task) { return text_or_none(task.words); }, "For the student, or None.")
        .field("kind", kind_of, "`operation`, `keep`, `true`, `allowances`, `measure` or `size`.")
        .field("marks", marks_of, "The marks of each criterion, by its name.");
    py::class_<PreparedExercise>(module, "Exercise",
                                 "What is asked of a class, ready to judge any number of drafts by.")
        .def_property_readonly(
            "name", [](const PreparedExercise& self) { return self.exercise.name; }, "Its name.")
        .def_property_readonly(
            "words", [](const PreparedExercise& self) { return text_or_none(self.exercise.words); },
            "To the class, or None.")
        .def_property_readonly(
            "unit", [](const PreparedExercise& self) { return dartwright::word_of(self.exercise.unit); },
            "The unit of its file: `mm`, `cm` or `in`.")
        .def_property_readonly(
            "pattern", [](const PreparedExercise& self) -> const Pattern& { return self.exercise.pattern; },
            "The pattern to begin with.")
        .def_property_readonly(
            "finished", [](const PreparedExercise& self) -> const Pattern& { return self.finished; },
            "The pattern after all that the tasks ask.")
        .def_property_readonly(
            "tasks",
            [](const PreparedExercise& self) -> const std::vector<Task>& { return self.exercise.tasks; },
            "Its tasks, in order.")
        .def_property_readonly(
            "may_differ", [](const PreparedExercise& self) { return words_of(self.exercise.may_differ); },
            "What is no fault where it differs: `back_off`, `names`, `grain`, `notches`.")
        .def_property_readonly("of", all_marks, "All marks together.")
        .def("__repr__", [](const PreparedExercise& self) {
            return "<Exercise " + std::string(py::repr(py::str(self.exercise.name))) + ">";
        });
}

void bind_lines(py::module_& module) {
    const auto text = [](std::string JudgedLine::*member) {
        return [member](const JudgedLine& line) { return text_or_none(line.*member); };
    };
    Value<JudgedLine>(module, "JudgedLine", "One thing that was judged. What does not apply is None.")
        .field(
            "criterion", [](const JudgedLine& line) { return dartwright::word_of(line.criterion); },
            "What it belongs to, such as `place`.")
        .field("piece", text(&JudgedLine::piece), "The piece, as the exercise calls it.")
        .field("edge", text(&JudgedLine::edge), "The run.")
        .field("dart", text(&JudgedLine::dart), "The dart.")
        .field("seam", text(&JudgedLine::seam), "The seam.")
        .field("what", &JudgedLine::what, "What was judged, in words.")
        .field(
            "quantity", [](const JudgedLine& line) { return dartwright::word_of(line.quantity); },
            "What the numbers are: `length` (mm), `area` (mm^2), `angle` (degrees), `number`, or `words`.")
        .field("expected", &JudgedLine::expected, "Mm, mm^2, degrees or a plain number.")
        .field("found", &JudgedLine::found, "In the draft.")
        .field("difference", &JudgedLine::difference, "Found less expected, or how far it is off.")
        .field("expected_words", text(&JudgedLine::expected_words),
               "Where there is no number, or it needs words.")
        .field("found_words", text(&JudgedLine::found_words), "In the draft.")
        .field("rung", &JudgedLine::rung, "Of the ladder; `fault` beyond it.")
        .field("at", &JudgedLine::at, "The place in the draft as it was drawn, mm.")
        .field("remedy", text(&JudgedLine::remedy), "One sentence, or None when nothing is to be mended.");
}

void bind_assessment(py::module_& module) {
    Value<JudgedCriterion>(module, "JudgedCriterion", "A criterion of a task, and the lines that decided.")
        .field(
            "criterion", [](const JudgedCriterion& each) { return dartwright::word_of(each.criterion); },
            "Its name, such as `place`.")
        .field("marks", &JudgedCriterion::marks, "Marks that were kept.")
        .field("of", &JudgedCriterion::of, "Marks that there are.")
        .field("rung", &JudgedCriterion::rung, "The worst of its lines.")
        .field("lines", &JudgedCriterion::lines, "What was judged.");
    Value<JudgedTask>(module, "JudgedTask", "A task as a draft fulfils it.")
        .field("name", &JudgedTask::name, "Its name.")
        .field(
            "words", [](const JudgedTask& task) { return text_or_none(task.words); },
            "For the student, or None.")
        .field("marks", &JudgedTask::marks, "Marks that were kept.")
        .field("of", &JudgedTask::of, "Marks that there are.")
        .field("criteria", &JudgedTask::criteria, "What it is judged by.");
    Value<OverlaidPiece>(module, "OverlaidPiece", "A piece of the draft with the expected one laid over it.")
        .field("name", &OverlaidPiece::name, "As the exercise calls it.")
        .field("draft_name", &OverlaidPiece::draft_name, "As the draft calls it.")
        .field("found", &OverlaidPiece::found, "The draft's outline, a closed polygon, mm.")
        .field("expected", &OverlaidPiece::expected,
               "The finished pattern's, laid on it with the best rigid fit, mm.");
    Value<WalkedLengths>(module, "WalkedLengths", "A seam of the draft, walked.")
        .field("name", &WalkedLengths::name, "The seam.")
        .field(
            "lengths_mm",
            [](const WalkedLengths& seam) {
                return std::array{seam.first_mm, seam.second_mm};
            },
            "Sewn lengths of its sides, mm.")
        .field("ease_mm", &WalkedLengths::ease_mm, "Asked, mm; positive when the second side is the longer.")
        .field("difference_mm", &WalkedLengths::difference_mm, "Second less first less ease, mm.")
        .field("is_true", &WalkedLengths::is_true, "Its sides match.");
    Value<Assessment>(module, "Assessment", "How a draft was judged.")
        .field(
            "unread", [](const Assessment& all) { return text_or_none(all.unread); },
            "Why it could not be judged, or None; then it has no marks and no tasks.")
        .field(
            "unread_kind",
            [](const Assessment& all) {
                return all.unread_kind ? std::optional<std::string>(dartwright::word_of(*all.unread_kind))
                                       : std::nullopt;
            },
            "Of which kind that is: `not a pattern` or `cannot be judged`; or None.")
        .field("marks", &Assessment::marks, "Marks that were kept.")
        .field("of", &Assessment::of, "Marks that there are.")
        .field("tasks", &Assessment::tasks, "Each task, in order.")
        .field("notes", &Assessment::notes,
               "What is no fault: turned, mirrored, matched by shape, another way.")
        .field("pieces", &Assessment::pieces, "The pieces, for a picture.")
        .field("seams", &Assessment::seams, "The draft's seams, walked.");
}

}  // namespace

void bind_exercises(py::module_& module) {
    bind_exercise(module);
    bind_lines(module);
    bind_assessment(module);
    module.def("read_exercise", read, py::arg("path"), py::kw_only(), py::arg("own_folder") = false,
               Unlocked(),
               "Reads an exercise file; files that it names lie where they do seen from it, and with "
               "`own_folder` in\n"
               "its folder or below it, wherever links lead: for one that somebody else sent. FileTrouble;\n"
               "InvalidFile; BadWords, UnknownName and Impossible name the task.");
    module.def(
        "parse_exercise", parse, py::arg("text"), py::arg("file") = "text", py::kw_only(),
        py::arg("own_folder") = false, Unlocked(),
        "Reads an exercise from the text of an exercise file that lies at `file`, with `own_folder` as\n"
        "above. InvalidFile.");
    module.def(
        "assess", &assess, py::arg("exercise"), py::arg("draft"), Unlocked(),
        "Judges a draft, wherever it lies, turned or turned over, in any unit, with any names that its "
        "shape\n"
        "allows to match. One that cannot be judged says why in `unread`. Several threads may judge by one\n"
        "exercise.");
}

}  // namespace dartwright::python
