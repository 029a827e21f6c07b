#pragma once

// Marked drafts on disk, a line of JSON each: what was marked is never lost, and a class of any size is put
// together from it with little in memory.

#include <sys/types.h>

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "dartwright/files/assessment_lines.hpp"

namespace dartwright::tools {

struct LinePlace {
    off_t offset = 0;
    std::size_t length = 0;  ///< without the line end
};

/// A file of lines, open for reading and adding. Lines are added whole, and only by one process at a time.
class LinesFile {
  public:
    /// A file without a name, gone with the program.
    static LinesFile temporary();
    /// A new one. FileTrouble if it cannot be opened, or if another process adds to it; WrongUse if there is
    /// such a file already.
    static LinesFile created(const std::string& path);
    /// One begun anew: its lines go to a file beside it, which takes its name with the first draft that is
    /// marked, so that what was kept is there until something else is. FileTrouble as above.
    static LinesFile begun_anew(const std::string& path);
    /// One that exists is gone on with; a last line without its end, torn by a power cut, is taken off.
    static LinesFile resumed(const std::string& path);
    /// For reading only.
    static LinesFile opened(const std::string& path);

    const std::string& path() const { return path_; }
    /// Of a draft that was marked, or could not be read. FileTrouble if it cannot be written.
    LinePlace append(const std::string& line, bool is_marked);
    std::string read(const LinePlace& place) const;
    /// Calls for each line that is not empty, in order, with its number from 1. A last line without its end
    /// is one too.
    void each(const std::function<void(const std::string& line, const LinePlace& place, std::size_t number)>&
                  use) const;

  private:
    class Handle;
    class Beside;
    LinesFile(std::string path, std::shared_ptr<Handle> handle);
    std::string path_;
    std::shared_ptr<Handle> handle_;
    off_t end_ = 0;
    std::shared_ptr<Beside> beside_;  ///< while it has not taken its name
};

/// What is remembered of a line.
struct KeptDraft {
    std::string student;
    std::string file;
    std::string draft_digest;  ///< empty if the draft could not be read
    std::size_t lines_file = 0;
    LinePlace place;
};
KeptDraft kept_draft(const AssessmentLine& line, const LinePlace& place);

/// The drafts of a file in order; of several lines for one file the last counts, where the first stood.
/// FileTrouble for a line that is none, or was marked by another exercise.
std::vector<KeptDraft> drafts_of(const LinesFile& lines, const std::string& exercise_digest);

}  // namespace dartwright::tools
