#include "class_report.hpp"

#include "arguments.hpp"
#include "assessment_text.hpp"
#include "dartwright/files/class_csv.hpp"
#include "dartwright/files/class_junit.hpp"
#include "dartwright/files/class_tap.hpp"
#include "dartwright/pages/class_page.hpp"
#include "dartwright/words/nearest_word.hpp"
#include "exercise_report.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {
namespace {

class TextReport : public ClassReport {
  public:
    TextReport(Sink sink, Unit unit, const Ink& ink) : sink_(std::move(sink)), unit_(unit), ink_(ink) {}
    void begin(const ClassSummary&) override {}
    void add(const ReportedDraft& draft) override {
        if (draft.number > 1) sink_("\n");
        sink_(text_of(draft.assessment, draft.label, unit_, ink_));
    }
    void end() override {}

  private:
    Sink sink_;
    Unit unit_;
    Ink ink_;
};

class JsonReport : public ClassReport {
  public:
    JsonReport(Sink sink, const ReportedClass& of) : sink_(std::move(sink)), of_(of) {}
    void begin(const ClassSummary&) override {
        sink_("{\"dartwright_assess\": 1, \"exercise\": " + json_line(Json(of_.exercise.name)));
        if (of_.untouched)
            sink_(", \"untouched\": " +
                  json_line(Json{{"marks", of_.untouched->marks}, {"of", of_.untouched->of}}));
        Json passed_over = Json::array();
        for (const PassedOver& each : of_.passed_over)
            passed_over.push_back({{"file", each.file}, {"why", each.why}});
        sink_(", \"passed_over\": " + json_line(passed_over) + ", \"drafts\": [");
    }
    void add(const ReportedDraft& draft) override {
        sink_(draft.number == 1 ? "\n" : ",\n");
        sink_(draft.line);
    }
    void end() override { sink_("\n]}\n"); }

  private:
    Sink sink_;
    ReportedClass of_;
};

class CsvReport : public ClassReport {
  public:
    CsvReport(Sink sink, const Exercise& exercise) : sink_(std::move(sink)) {
        for (const Task& task : exercise.tasks) tasks_.push_back(task.name);
    }
    void begin(const ClassSummary&) override { sink_(class_csv_head(tasks_)); }
    void add(const ReportedDraft& draft) override {
        sink_(class_csv_row(draft.assessment, draft.label, tasks_));
    }
    void end() override {}

  private:
    Sink sink_;
    std::vector<std::string> tasks_;
};

class JunitReport : public ClassReport {
  public:
    JunitReport(Sink sink, const Exercise& exercise)
        : sink_(std::move(sink)), exercise_(exercise.name), unit_(exercise.unit) {}
    void begin(const ClassSummary&) override { sink_(class_junit_begin(exercise_)); }
    void add(const ReportedDraft& draft) override {
        sink_(class_junit_student(draft.assessment, draft.label, unit_));
    }
    void end() override { sink_(class_junit_end()); }

  private:
    Sink sink_;
    std::string exercise_;
    Unit unit_;
};

class TapReport : public ClassReport {
  public:
    TapReport(Sink sink, Unit unit) : sink_(std::move(sink)), tap_(unit) {}
    void begin(const ClassSummary&) override { sink_(tap_.begin()); }
    void add(const ReportedDraft& draft) override { sink_(tap_.student(draft.assessment, draft.label)); }
    void end() override { sink_(tap_.end()); }

  private:
    Sink sink_;
    ClassTap tap_;
};

class HtmlReport : public ClassReport {
  public:
    HtmlReport(Sink sink, const ReportedClass& of)
        : sink_(std::move(sink)),
          page_{of.exercise.name, of.exercise.words, of.exercise.ladders,
                of.untouched ? untouched_text(*of.untouched) : std::string(), of.exercise.unit} {}
    bool needs_summary() const override { return true; }
    void begin(const ClassSummary& summary) override { sink_(class_page_begin(page_, summary)); }
    void add(const ReportedDraft& draft) override {
        sink_(class_page_student(draft.assessment, draft.number, draft.label, page_));
    }
    void end() override { sink_(class_page_end()); }

  private:
    Sink sink_;
    ClassPage page_;
};

}  // namespace

const std::vector<std::string>& class_formats() {
    static const std::vector<std::string> formats{"text", "json", "csv", "junit", "tap", "html"};
    return formats;
}

std::unique_ptr<ClassReport> class_report(const std::string& format, const ReportedClass& of, Sink sink,
                                          const Ink& ink) {
    if (format == "text") return std::make_unique<TextReport>(std::move(sink), of.exercise.unit, ink);
    if (format == "json") return std::make_unique<JsonReport>(std::move(sink), of);
    if (format == "csv") return std::make_unique<CsvReport>(std::move(sink), of.exercise);
    if (format == "junit") return std::make_unique<JunitReport>(std::move(sink), of.exercise);
    if (format == "tap") return std::make_unique<TapReport>(std::move(sink), of.exercise.unit);
    if (format == "html") return std::make_unique<HtmlReport>(std::move(sink), of);
    throw WrongUse("--format is text, json, csv, junit, tap or html, not '" + format + "'" +
                   nearest_told(format, class_formats()));
}

}  // namespace dartwright::tools
