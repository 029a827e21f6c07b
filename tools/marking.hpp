#pragma once

// Marks drafts on several threads, and hands them on in the order in which they were given.

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "dartwright/assessing/assess.hpp"
#include "dartwright/files/assessment_lines.hpp"
#include "pattern_paths.hpp"

namespace dartwright::tools {

struct MarkedDraft {
    /// Written as it is to be kept; empty if there is nothing to keep.
    std::string line;
    AssessmentLine read;  ///< what the line says
    /// Known from before, by its file, and unchanged since.
    bool is_kept = false;
    /// A file of a folder that is JSON of another kind.
    bool is_passed_over = false;
};

struct Marking {
    const PreparedExercise& exercise;
    std::string exercise_digest;
    const std::vector<PatternPath>& drafts;
    /// By file as it is written in lines: the digest of the draft that was marked before.
    const std::map<std::string, std::string>& known;
    std::size_t threads = 1;
    /// A descriptor at which there is something to read once no draft is to be waited for; none below 0.
    int stop = -1;
};

/// Hands every draft on in order, on the calling thread, as soon as it and those before it are marked. No new
/// one is begun once `is_to_stop` says so; those begun are handed on, but
/// none from the first on that was still waited for. What `take` throws ends the marking.
/// Where the system gives fewer threads, or none, those there are do the work, the calling one if need be.
void mark_drafts(const Marking& marking, const std::function<bool()>& is_to_stop,
                 const std::function<void(std::size_t index, MarkedDraft draft)>& take);

/// A file's name as lines keep it: bytes that are not UTF-8 become `\xFF`, so that different names stay so.
std::string line_name(const std::string& path);
/// The student's name: the file's, without its folder and ending.
std::string student_of(const std::string& path);

}  // namespace dartwright::tools
