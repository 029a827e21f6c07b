#include "dartwright/pages/class_page.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/files/assessment_words.hpp"
#include "dartwright/pages/class_page_look.hpp"
#include "dartwright/pages/html_parts.hpp"
#include "dartwright/pages/spread_plot.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {
namespace {

using html::column_head;
using html::element;

/// Measures that cost marks and stand in the table; what fewer drafts lost can be read in their own parts.
constexpr std::size_t most_faults_shown = 15;
/// Plots on a page; an exercise judges some dozens of things.
constexpr std::size_t most_plots_shown = 80;

std::string counted(std::size_t count, const char* one, const char* more) {
    return std::to_string(count) + " " + (count == 1 ? one : more);
}

std::string head(const ClassPage& page) {
    const std::string policy = std::string("default-src 'none'; style-src 'unsafe-inline'; script-src '") +
                               look::class_page_script_hash + "'; base-uri 'none'; form-action 'none'";
    return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
           "<meta http-equiv=\"Content-Security-Policy\" content=\"" +
           policy + "\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n" +
           element("title", markup_text(page.title) + ": the class") +
           element("style", look::class_page_style) + "</head>\n";
}

std::string count_words(const ClassCount& count) {
    std::string words = counted(count.all, "draft", "drafts") + ": " +
                        counted(count.with_all_marks, "has", "have") + " all marks, " +
                        counted(count.with_faults, "has a fault", "have faults");
    if (count.unread > 0) words += ", " + counted(count.unread, "was", "were") + " not marked";
    return words + ".";
}

std::string marks_cell(const std::optional<double>& marks, double of) {
    if (!marks) return element("td class=\"number quiet\" data-value=\"-1\"", "\u2013");
    const std::string kind = *marks >= of ? "number" : *marks > 0 ? "number part" : "number lost";
    return element("td class=\"" + kind + "\" data-value=\"" + shortest_decimals(*marks, 4) + "\"",
                   marks_text(*marks));
}

std::string student_row(const StudentSummary& student, const std::string& label, std::size_t number,
                        const std::vector<TaskSummary>& tasks) {
    const std::string link =
        "<a href=\"#student-" + std::to_string(number) + "\">" + html::name(label) + "</a>";
    std::string row = element("th scope=\"row\" data-value=\"" + markup_text(label) + "\"", link) +
                      element("td class=\"number\"", std::to_string(number));
    if (student.unread.empty()) {
        row += marks_cell(student.marks, student.of);
    } else {
        row += element("td class=\"lost\" data-value=\"-1\"", "not marked");
    }
    for (std::size_t i = 0; i < tasks.size(); ++i) {
        // A task that came up after this draft is one that it has not.
        const bool is_known = student.unread.empty() && i < student.task_marks.size();
        row += marks_cell(is_known ? student.task_marks[i] : std::nullopt, tasks[i].of);
    }
    return element("tr", "\n" + row);
}

std::string marks_table(const ClassSummary& summary) {
    double of = 0;
    for (const TaskSummary& task : summary.tasks) of += task.of;
    std::string heads =
        column_head("Student") + column_head("No.", true) + column_head("Marks of " + marks_text(of), true);
    for (const TaskSummary& task : summary.tasks)
        heads += column_head(task.name + ", of " + marks_text(task.of), true);
    const std::vector<std::string> labels = labels_of(summary.students);
    std::string rows;
    for (std::size_t i = 0; i < labels.size(); ++i)
        rows += student_row(summary.students[i], labels[i], i + 1, summary.tasks);
    const std::string caption =
        "Marks by student and task. Underlined: some were lost; bold: all were lost. Where the browser runs "
        "scripts, the heads of the columns sort the table.";
    return html::table(" id=\"marks\" class=\"sorted\"", "Marks by student and task",
                       html::caption(caption) + element("thead", "\n" + element("tr", "\n" + heads)) +
                           element("tbody", "\n" + rows));
}

std::string what_of(const MeasureSummary& measure) {
    return markup_text(what_text(measure.criterion, measure.piece, measure.what));
}

// A cell that says its column where the screen is too narrow for columns.
std::string labelled(const char* column, const char* kind = "") {
    const std::string of_kind = *kind ? std::string(" class=\"") + kind + "\"" : "";
    return "td" + of_kind + " data-column=\"" + column + "\"";
}

std::string faults_table(const ClassSummary& summary) {
    const std::vector<const MeasureSummary*> faults = commonest_faults(summary);
    if (faults.empty()) return element("p", "Nobody lost a mark.");
    std::string rows;
    for (std::size_t i = 0; i < faults.size() && i < most_faults_shown; ++i) {
        const MeasureSummary& fault = *faults[i];
        rows += element("tr",
                        "\n" + element("th scope=\"row\"", what_of(fault)) +
                            element(labelled("Task"), markup_text(fault.task)) +
                            element(labelled("Judged by"), word_of(fault.criterion)) +
                            element(labelled("With a fault", "number"), std::to_string(fault.with_fault)) +
                            element(labelled("On a lower rung", "number"), std::to_string(fault.on_a_rung)) +
                            element(labelled("Remedy", "words"), markup_text(fault.remedy)));
    }
    const std::string heads = column_head("What") + column_head("Task") + column_head("Judged by") +
                              column_head("With a fault", true) + column_head("On a lower rung", true) +
                              column_head("Remedy");
    std::string out =
        html::table(" class=\"cards\"", "What cost marks most often",
                    html::caption("What cost marks, in how many drafts") +
                        element("thead", "\n" + element("tr", "\n" + heads)) + element("tbody", "\n" + rows));
    if (faults.size() > most_faults_shown)
        out += element("p class=\"quiet\"",
                       counted(faults.size() - most_faults_shown, "more thing", "more things") +
                           " cost marks; they stand with the students.");
    return out;
}

std::string spread_row(const MeasureSummary& measure, const ClassPage& page) {
    const Spread spread = spread_of(measure.differences);
    const auto cell = [&](double value) {
        return element("td class=\"number\"",
                       markup_text(signed_quantity_text(measure.quantity, value, page.unit)));
    };
    const std::string expected =
        measure.expected ? quantity_text(measure.quantity, *measure.expected, page.unit) : "";
    return element("tr", "\n" + element("th scope=\"row\"", what_of(measure)) +
                             element("td class=\"number\"", markup_text(expected)) +
                             element("td class=\"number\"", std::to_string(measure.differences.size())) +
                             cell(spread.least) + cell(spread.median) + cell(spread.greatest) +
                             element("td", spread_plot(measure, page.ladders, page.unit)));
}

/// Whether any draft was off by more than is shown of a number.
bool is_spread(const MeasureSummary& measure) {
    constexpr float shown = 0.005F;
    return std::any_of(measure.differences.begin(), measure.differences.end(),
                       [](float difference) { return std::abs(difference) >= shown; });
}

std::string together_words(const std::vector<const MeasureSummary*>& measures) {
    std::string items;
    for (std::size_t i = 0; i < measures.size() && i < most_plots_shown; ++i)
        items += element("li", what_of(*measures[i]));
    const std::string title = "No draft was off in " + counted(measures.size(), "measure", "measures") +
                              (measures.size() > most_plots_shown ? ", among them:" : ":");
    return element("p", title) + element("ul class=\"columns\"", "\n" + items);
}

std::string spread_table(const ClassSummary& summary, const ClassPage& page) {
    std::string rows;
    std::size_t plots = 0;
    std::vector<const MeasureSummary*> together;
    for (const MeasureSummary& measure : summary.measures) {
        if (measure.differences.empty()) continue;
        if (!is_spread(measure))
            together.push_back(&measure);
        else if (++plots <= most_plots_shown)
            rows += spread_row(measure, page);
    }
    if (plots == 0 && together.empty()) return element("p", "Nothing was measured.");
    const std::string heads = column_head("Measure") + column_head("Asked", true) +
                              column_head("Drafts", true) + column_head("Lowest", true) +
                              column_head("Middle", true) + column_head("Highest", true) +
                              column_head("Spread");
    const std::string caption =
        "How far each measure was off, found less asked. In the plots the upright line is what was asked, "
        "the "
        "broken lines are the rungs of the ladder, and a bar's height is how many drafts lie there.";
    std::string out;
    if (plots > 0)
        out += html::table("", "Spread of each measure",
                           html::caption(caption) + element("thead", "\n" + element("tr", "\n" + heads)) +
                               element("tbody", "\n" + rows));
    if (plots > most_plots_shown)
        out += element(
            "p class=\"quiet\"",
            counted(plots - most_plots_shown, "more measure is", "more measures are") + " not shown.");
    return together.empty() ? out : out + together_words(together);
}

std::string section(const char* id, const char* title, const std::string& inside) {
    const std::string name(id);
    return element("section id=\"" + name + "\" aria-labelledby=\"" + name + "-title\"",
                   "\n" + element("h2 id=\"" + name + "-title\"", title) + inside);
}

}  // namespace

std::string class_page_begin(const ClassPage& page, const ClassSummary& summary) {
    std::string body = "<body>\n<a class=\"skip\" href=\"#main\">Skip to the marks</a>\n";
    std::string words = element("h1", html::name(page.title));
    if (!page.words.empty()) words += element("p", markup_text(page.words));
    words += element("p", count_words(count_of(summary.students)));
    if (!page.note.empty()) words += element("p class=\"quiet\"", markup_text(page.note));
    words += element("p class=\"quiet\"", markup_text(ladders_text(page.ladders, page.unit)));
    body += element("header", "\n" + words);
    const std::string links = element("li", "<a href=\"#class\">Marks of the class</a>") +
                              element("li", "<a href=\"#faults\">What cost marks most often</a>") +
                              element("li", "<a href=\"#spread\">Spread of each measure</a>") +
                              element("li", "<a href=\"#student-1\">The first student</a>");
    body += element("nav aria-label=\"Parts of this page\"", "\n" + element("ul", "\n" + links));
    body += "<main id=\"main\" tabindex=\"-1\">\n";
    body += section("class", "Marks of the class", marks_table(summary));
    body += section("faults", "What cost marks most often", faults_table(summary));
    body += section("spread", "Spread of each measure", spread_table(summary, page));
    return head(page) + body;
}

std::string class_page_end() {
    return "</main>\n" + element("script", look::class_page_script) + "</body>\n</html>\n";
}

}  // namespace dartwright
