// A student's part of the page for a class.

#include <algorithm>
#include <cmath>

#include "dartwright/assessing/lost_marks.hpp"
#include "dartwright/files/assessment_words.hpp"
#include "dartwright/pages/class_page.hpp"
#include "dartwright/pages/html_parts.hpp"
#include "dartwright/pages/overlay_picture.hpp"

namespace dartwright {
namespace {

using html::column_head;
using html::element;

/// A number with its unit, which stays on one line; longer words are broken.
bool is_short(const std::string& words) {
    constexpr std::size_t longest_number = 16;
    return words.size() <= longest_number;
}

/// Lines that cost marks, numbered in their order: in the table, the pictures and the list of what to mend.
class Part {
  public:
    Part(const Assessment& assessment, std::size_t number, const std::string& label, const ClassPage& page)
        : of_(assessment), id_("student-" + std::to_string(number)), label_(label), page_(page) {
        for (const JudgedTask& task : of_.tasks)
            for (const JudgedCriterion& criterion : task.criteria)
                for (const JudgedLine* line : costly_lines(criterion)) costly_.push_back(line);
    }

    std::string html() const {
        std::string out = element("h2 id=\"" + id_ + "-title\"",
                                  html::name(label_) + ": " + markup_text(verdict_text(of_)));
        out += element("p class=\"quiet\"", "File: " + html::name(name_of_file(of_.file)));
        if (!of_.unread.empty())
            out += element("p class=\"caution\"", "Not marked: " + markup_text(of_.unread));
        else
            out += notes() + pictures() + to_mend() + lines_table() + seams_table();
        out += element("p class=\"back\"", "<a href=\"#class\">To the marks of the class</a>");
        return element("article class=\"student\" id=\"" + id_ + "\" aria-labelledby=\"" + id_ + "-title\"",
                       "\n" + out);
    }

  private:
    /// 0 if the line cost nothing.
    std::size_t number_of(const JudgedLine& line) const {
        const auto found = std::find(costly_.begin(), costly_.end(), &line);
        return found == costly_.end() ? 0 : static_cast<std::size_t>(found - costly_.begin()) + 1;
    }

    std::string notes() const {
        std::string items;
        for (const std::string& note : of_.notes) items += element("li", markup_text(note));
        return items.empty() ? "" : element("ul", "\n" + items);
    }

    std::string pictures() const {
        std::vector<PictureTag> tags;
        for (std::size_t i = 0; i < costly_.size(); ++i)
            if (costly_[i]->at) tags.push_back({i + 1, *costly_[i]->at, costly_[i]->piece});
        std::string figures;
        for (std::size_t i = 0; i < of_.pieces.size(); ++i)
            figures += overlay_picture(of_.pieces[i], tags_on(of_.pieces, i, tags));
        if (figures.empty()) return "";
        return element("h3", "The draft laid on what was asked") +
               element("p class=\"key\"",
                       overlay_key() + " Numbers mark the places of what is to be mended.") +
               element("div class=\"pieces\"", "\n" + figures);
    }

    std::string to_mend() const {
        std::string items;
        for (std::size_t i = 0; i < costly_.size(); ++i) {
            const JudgedLine& line = *costly_[i];
            std::string words = "<a href=\"#" + id_ + "-line-" + std::to_string(i + 1) + "\">" +
                                markup_text(what_text(line)) + "</a>";
            const bool is_sentence = !line.what.empty() && line.what.back() == '.';
            // Said once, however many things it mends.
            const auto first = std::find_if(costly_.begin(), costly_.end(), [&](const JudgedLine* each) {
                return each->remedy == line.remedy;
            });
            const std::size_t said = static_cast<std::size_t>(first - costly_.begin());
            const std::string remedy =
                said < i ? "as for " + std::to_string(said + 1) + "." : markup_text(line.remedy);
            if (!line.remedy.empty()) words += (is_sentence ? " " : ": ") + remedy;
            items += element("li", words);
        }
        if (items.empty()) return element("p", "Nothing is to be mended.");
        return element("h3", "To mend") + element("ol", "\n" + items) +
               element("p class=\"quiet\"", markup_text(ladders_text(page_.ladders, page_.unit)));
    }

    std::string line_row(const JudgedCriterion& criterion, std::size_t index) const {
        const JudgedLine& line = criterion.lines[index];
        const std::size_t number = number_of(line);
        const std::string id = number == 0 ? "" : " id=\"" + id_ + "-line-" + std::to_string(number) + "\"";
        const std::string span =
            criterion.lines.size() > 1 ? " rowspan=\"" + std::to_string(criterion.lines.size()) + "\"" : "";
        std::string cells;
        if (index == 0) cells += element("td" + span, word_of(criterion.criterion));
        cells += element("td class=\"number\"", number == 0 ? "" : std::to_string(number));
        cells += element("th scope=\"row\"", markup_text(what_text(line)));
        for (const std::string& words : {expected_text(line, page_.unit), found_text(line, page_.unit),
                                         difference_text(line, page_.unit)})
            cells +=
                element(is_short(words) ? "td class=\"number\"" : "td class=\"said\"", markup_text(words));
        cells += element(number == 0 ? "td" : "td class=\"lost\"", markup_text(line.rung));
        if (index == 0) cells += element("td class=\"number\"" + span, of_words(criterion));
        return element((is_calm(criterion) ? "tr class=\"calm\"" : "tr") + id, "\n" + cells);
    }

    /// Many lines and nothing to mend: on paper one line says so, or each student would have four pages.
    bool is_calm(const JudgedCriterion& criterion) const {
        constexpr std::size_t most_printed = 2;
        const auto is_costly = [&](const JudgedLine& line) { return number_of(line) != 0; };
        return criterion.lines.size() > most_printed &&
               std::none_of(criterion.lines.begin(), criterion.lines.end(), is_costly);
    }

    static std::string brief_row(const JudgedCriterion& criterion) {
        const std::string words = std::to_string(criterion.lines.size()) + " measures, all as asked";
        return element("tr class=\"brief\"", "\n" + element("td", word_of(criterion.criterion)) +
                                                 element("td", "") +
                                                 element("th scope=\"row\" colspan=\"4\"", words) +
                                                 element("td", markup_text(criterion.rung)) +
                                                 element("td class=\"number\"", of_words(criterion)));
    }

    static std::string of_words(const JudgedCriterion& criterion) {
        return marks_text(criterion.marks) + " of " + marks_text(criterion.of);
    }

    std::string criterion_rows(const JudgedCriterion& criterion) const {
        std::string rows;
        if (is_calm(criterion)) rows += brief_row(criterion);
        for (std::size_t i = 0; i < criterion.lines.size(); ++i) rows += line_row(criterion, i);
        if (!rows.empty()) return rows;
        // Judged, and nothing to show for it: its marks still count.
        return element("tr", "\n" + element("td", word_of(criterion.criterion)) +
                                 element("td colspan=\"5\"", "") +
                                 element("td", markup_text(criterion.rung)) +
                                 element("td class=\"number\"", of_words(criterion)));
    }

    /// On paper the heads of a table stand on each of its pages, and the student's name with them.
    std::string name_again(int columns) const {
        return element("tr class=\"again\"",
                       element("td colspan=\"" + std::to_string(columns) + "\"", html::name(label_)));
    }

    std::string lines_table() const {
        std::string out =
            html::caption("What was judged, line by line") +
            element("thead", "\n" + name_again(8) +
                                 element("tr", "\n" + column_head("Judged by") + column_head("No.", true) +
                                                   column_head("What") + column_head("Asked", true) +
                                                   column_head("Found", true) + column_head("Off by", true) +
                                                   column_head("Rung") + column_head("Marks", true)));
        for (const JudgedTask& task : of_.tasks) {
            std::string words = markup_text(task.name) + ": " + marks_text(task.marks) + " of " +
                                marks_text(task.of) + " marks";
            if (!task.words.empty()) words += " (" + markup_text(task.words) + ")";
            std::string rows =
                element("tr class=\"task\"", "\n" + element("th colspan=\"8\" scope=\"rowgroup\"", words));
            for (const JudgedCriterion& criterion : task.criteria) rows += criterion_rows(criterion);
            out += element("tbody", "\n" + rows);
        }
        return element("h3 class=\"lines\"", "Line by line") +
               html::table("", "Line by line: " + label_, out);
    }

    std::string seams_table() const {
        if (of_.seams.empty()) return "";
        const auto length = [&](double mm) {
            return element("td class=\"number\"", quantity_text(Quantity::length, mm, page_.unit));
        };
        std::string rows;
        for (const WalkedLengths& seam : of_.seams) {
            const std::string difference =
                signed_quantity_text(Quantity::length, seam.difference_mm, page_.unit);
            rows += element(
                "tr", "\n" + element("th scope=\"row\"", markup_text(seam.name)) + length(seam.first_mm) +
                          length(seam.second_mm) + length(seam.ease_mm) +
                          element("td class=\"number\"", difference) +
                          (seam.is_true ? element("td", "true") : element("td class=\"lost\"", "not true")));
        }
        const std::string heads = column_head("Seam") + column_head("First side", true) +
                                  column_head("Second side", true) + column_head("Ease", true) +
                                  column_head("Difference", true) + column_head("Verdict");
        return element("h3", "The walk of each seam") +
               html::table("", "The walk of each seam: " + label_,
                           html::caption("Sewn lengths of both sides, darts closed") +
                               element("thead", "\n" + name_again(6) + element("tr", "\n" + heads)) +
                               element("tbody", "\n" + rows));
    }

    const Assessment& of_;
    std::string id_;
    const std::string& label_;
    const ClassPage& page_;
    std::vector<const JudgedLine*> costly_;
};

}  // namespace

std::string class_page_student(const Assessment& assessment, std::size_t number, const std::string& label,
                               const ClassPage& page) {
    return Part(assessment, number, label, page).html();
}

}  // namespace dartwright
