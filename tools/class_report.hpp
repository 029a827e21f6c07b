#pragma once

// A class in one of the formats, written draft by draft.

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "dartwright/assessing/class_summary.hpp"
#include "dartwright/assessing/exercise.hpp"
#include "text_table.hpp"

namespace dartwright::tools {

using Sink = std::function<void(std::string_view)>;

/// One draft of the report.
struct ReportedDraft {
    const Assessment& assessment;
    const std::string& line;   ///< as it is kept
    const std::string& label;  ///< names the student apart from all others
    std::size_t number = 0;    ///< from 1
};

/// A file of a folder that was not marked.
struct PassedOver {
    std::string file;
    std::string why;
};
/// What is reported besides the drafts.
struct ReportedClass {
    const Exercise& exercise;
    std::vector<PassedOver> passed_over = {};
    std::optional<Assessment> untouched = {};  ///< what the pattern gets as it is handed out
};

class ClassReport {
  public:
    virtual ~ClassReport() = default;
    /// Whether `begin` has to know the summary of the class.
    virtual bool needs_summary() const { return false; }
    virtual void begin(const ClassSummary& summary) = 0;
    virtual void add(const ReportedDraft& draft) = 0;
    virtual void end() = 0;
};

/// `text`, `json`, `csv`, `junit`, `tap` and `html`.
const std::vector<std::string>& class_formats();
/// WrongUse for a format that is none.
std::unique_ptr<ClassReport> class_report(const std::string& format, const ReportedClass& of, Sink sink,
                                          const Ink& ink);

}  // namespace dartwright::tools
