#include "dartwright/files/assessment_lines.hpp"
#include "dartwright/files/assessment_words.hpp"
#include "dartwright/files/reading.hpp"
#include "dartwright/words/lists.hpp"

namespace dartwright {
namespace {

constexpr int line_version = 1;
using Kind = JsonNode::Kind;

std::string any_text(Reading& reading, const JsonNode* node) {
    if (!node) return {};
    if (node->kind == Kind::text) return std::string(node->text);
    reading.reject(*node, "text in double quotes");
    return {};
}

std::string text_or_none(Reading& reading, const JsonNode* node) {
    return !node || node->kind == Kind::null ? std::string{} : any_text(reading, node);
}

double any_number(Reading& reading, const JsonNode* node) {
    if (!node) return 0;
    if (node->kind == Kind::number) return node->number;
    reading.reject(*node, "a number");
    return 0;
}

std::optional<double> number_or_none(Reading& reading, const JsonNode* node) {
    if (!node || node->kind == Kind::null) return std::nullopt;
    return any_number(reading, node);
}

double marks_in(Reading& reading, const JsonNode* node) {
    const double marks = any_number(reading, node);
    if (marks < 0) reading.reject(*node, "marks that are not negative");
    return marks;
}

/// Two numbers; whatever their size, for a draft may be drawn in a wrong unit.
std::array<double, 2> two_numbers(Reading& reading, const JsonNode& node, const char* expected) {
    if (node.kind == Kind::list && node.children.size() == 2)
        return {any_number(reading, node.children[0]), any_number(reading, node.children[1])};
    reading.reject(node, expected);
    return {};
}

Point point_in(Reading& reading, const JsonNode& node) {
    const auto [x, y] = two_numbers(reading, node, "a point [x, y]");
    return {x, y};
}

template <typename Names>
auto word_in(Reading& reading, const JsonNode* node, const Names& names) {
    std::vector<std::string> words;
    for (const auto& [kind, word] : names) {
        if (node && node->kind == Kind::text && node->text == word) return kind;
        words.emplace_back(word);
    }
    if (node) reading.reject(*node, any_of(words));
    const auto [first, first_word] = names[0];
    return first;
}

template <typename Read>
auto list_in(Reading& reading, const JsonNode* node, const char* expected, const Read& read) {
    std::vector<decltype(read(reading, *node))> values;
    if (!node) return values;
    for (const JsonNode* child : list_of(reading, *node, expected, ListLength::any))
        values.push_back(read(reading, *child));
    return values;
}

JudgedLine judged_line(Reading& reading, const JsonNode& node) {
    const Fields fields(reading, node, "what was judged",
                        {"criterion", "what", "piece", "edge", "dart", "seam", "quantity", "expected",
                         "found", "difference", "expected_words", "found_words", "rung", "at", "remedy"});
    JudgedLine line;
    line.criterion = word_in(reading, fields.required("criterion", "what it was judged by"), criterion_names);
    line.what = any_text(reading, fields.required("what", "what was judged, in words"));
    line.piece = text_or_none(reading, fields.optional("piece"));
    line.edge = text_or_none(reading, fields.optional("edge"));
    line.dart = text_or_none(reading, fields.optional("dart"));
    line.seam = text_or_none(reading, fields.optional("seam"));
    line.quantity = word_in(reading, fields.required("quantity", "what its numbers are"), quantity_words);
    line.expected = number_or_none(reading, fields.optional("expected"));
    line.found = number_or_none(reading, fields.optional("found"));
    line.difference = number_or_none(reading, fields.optional("difference"));
    line.expected_words = text_or_none(reading, fields.optional("expected_words"));
    line.found_words = text_or_none(reading, fields.optional("found_words"));
    line.rung = any_text(reading, fields.required("rung", "the rung of the ladder"));
    const JsonNode* at = fields.optional("at");
    if (at && at->kind != Kind::null) line.at = point_in(reading, *at);
    line.remedy = text_or_none(reading, fields.optional("remedy"));
    return line;
}

JudgedCriterion judged_criterion(Reading& reading, const JsonNode& node) {
    const Fields fields(reading, node, "a criterion", {"criterion", "marks", "of", "rung", "lines"});
    JudgedCriterion criterion;
    criterion.criterion = word_in(reading, fields.required("criterion", "its name"), criterion_names);
    criterion.marks = marks_in(reading, fields.required("marks", "the marks kept"));
    criterion.of = marks_in(reading, fields.required("of", "the marks there are"));
    criterion.rung = any_text(reading, fields.required("rung", "the worst of its lines"));
    criterion.lines = list_in(reading, fields.required("lines", "a list of what was judged"),
                              "a list of what was judged", judged_line);
    return criterion;
}

JudgedTask judged_task(Reading& reading, const JsonNode& node) {
    const Fields fields(reading, node, "a task", {"name", "words", "marks", "of", "criteria"});
    JudgedTask task;
    task.name = any_text(reading, fields.required("name", "the task's name"));
    task.words = text_or_none(reading, fields.optional("words"));
    task.marks = marks_in(reading, fields.required("marks", "the marks kept"));
    task.of = marks_in(reading, fields.required("of", "the marks there are"));
    task.criteria = list_in(reading, fields.required("criteria", "a list of criteria"), "a list of criteria",
                            judged_criterion);
    return task;
}

OverlaidPiece overlaid_piece(Reading& reading, const JsonNode& node) {
    const Fields fields(reading, node, "a piece", {"name", "draft_name", "found", "expected"});
    OverlaidPiece piece;
    piece.name = any_text(reading, fields.required("name", "the piece's name in the exercise"));
    piece.draft_name = any_text(reading, fields.required("draft_name", "its name in the draft"));
    piece.found =
        list_in(reading, fields.required("found", "a list of points"), "a list of points", point_in);
    piece.expected =
        list_in(reading, fields.required("expected", "a list of points"), "a list of points", point_in);
    return piece;
}

WalkedLengths walked_lengths(Reading& reading, const JsonNode& node) {
    const Fields fields(reading, node, "a seam", {"name", "lengths", "ease", "difference", "passed"});
    WalkedLengths seam;
    seam.name = any_text(reading, fields.required("name", "the seam's name"));
    if (const JsonNode* lengths = fields.required("lengths", "the lengths of its two sides")) {
        const auto [first, second] = two_numbers(reading, *lengths, "the lengths of its two sides");
        seam.first_mm = first;
        seam.second_mm = second;
    }
    seam.ease_mm = any_number(reading, fields.required("ease", "the ease asked"));
    seam.difference_mm = any_number(reading, fields.required("difference", "how far it is off"));
    if (const JsonNode* passed = fields.required("passed", "true or false"))
        seam.is_true = read_flag(reading, *passed).value_or(true);
    return seam;
}

void read_version(Reading& reading, const Fields& fields) {
    const JsonNode* version = fields.required("dartwright_assess", "the version of the format: 1");
    if (version && (version->kind != Kind::number || version->number != line_version))
        reading.reject(*version, "1, the version of the format");
}

AssessmentLine read_root(Reading& reading, const JsonNode& root) {
    const Fields fields(
        reading, root, "a marked draft",
        {"dartwright_assess", "student", "file", "exercise_digest", "draft_digest", "unread", "unread_kind",
         "another_pattern", "marks", "of", "tasks", "notes", "pieces", "seams"});
    read_version(reading, fields);
    AssessmentLine line;
    Assessment& of = line.assessment;
    of.student = any_text(reading, fields.required("student", "the student's name"));
    of.file = any_text(reading, fields.required("file", "the draft's file"));
    line.exercise_digest =
        any_text(reading, fields.required("exercise_digest", "which exercise it was judged by"));
    line.draft_digest = text_or_none(reading, fields.optional("draft_digest"));
    of.unread = text_or_none(reading, fields.optional("unread"));
    if (const JsonNode* kind = fields.optional("unread_kind"); kind && kind->kind != Kind::null)
        of.unread_kind = word_in(reading, kind, unread_kind_words);
    if (const JsonNode* another = fields.optional("another_pattern"))
        of.is_another_pattern = read_flag(reading, *another).value_or(false);
    of.marks = marks_in(reading, fields.required("marks", "the marks kept"));
    of.of = marks_in(reading, fields.required("of", "the marks there are"));
    of.tasks = list_in(reading, fields.required("tasks", "a list of tasks"), "a list of tasks", judged_task);
    const auto note = [](Reading& to, const JsonNode& node) { return any_text(to, &node); };
    of.notes = list_in(reading, fields.required("notes", "a list of notes"), "a list of notes", note);
    of.pieces =
        list_in(reading, fields.required("pieces", "a list of pieces"), "a list of pieces", overlaid_piece);
    of.seams =
        list_in(reading, fields.required("seams", "a list of seams"), "a list of seams", walked_lengths);
    return line;
}

}  // namespace

AssessmentLine read_assessment_line(std::string_view text, const std::string& place) {
    JsonTree tree = parse_json(text, "a marked draft");
    Reading reading;
    reading.problems = std::move(tree.problems);
    AssessmentLine line;
    if (tree.root) line = read_root(reading, *tree.root);
    if (!reading.problems.empty()) throw InvalidPattern(place, in_order(std::move(reading.problems)));
    return line;
}

}  // namespace dartwright
