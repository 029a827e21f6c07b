#include "marking.hpp"

#include <algorithm>
#include <atomic>
#include <condition_variable>
#include <exception>
#include <filesystem>
#include <limits>
#include <mutex>
#include <new>
#include <system_error>
#include <thread>

#include "awaited_text.hpp"
#include "checked_file.hpp"
#include "dartwright/files/output_file.hpp"
#include "dartwright/words/utf8.hpp"
#include "draft_file.hpp"
#include "unforeseen.hpp"

namespace dartwright::tools {
namespace {

/// Drafts that may be marked ahead of one that takes long, a thread.
constexpr std::size_t ahead_of_slowest = 16;

/// The digest is empty where the bytes themselves could not be had, or the program failed: it is tried again.
AssessmentLine unread(UnreadKind kind, std::string reason, std::string digest = {}) {
    AssessmentLine line;
    line.draft_digest = std::move(digest);
    line.assessment.unread = std::move(reason);
    line.assessment.unread_kind = kind;
    return line;
}

/// For what lies in no file; called while it is handled.
AssessmentLine unread_for_now(const std::string& doing) {
    const Unforeseen what = unforeseen(std::current_exception(), doing);
    return unread(what.status == ExitStatus::internal ? UnreadKind::internal : UnreadKind::little_memory,
                  what.words);
}

AssessmentLine judged(const Marking& marking, const std::string& text, const std::string& shown) {
    const char* doing = " while reading it";
    try {
        const DraftRead draft = read_draft(text, shown);
        doing = " while judging it";
        AssessmentLine line{"", digest_of(text), assess(marking.exercise, draft.pattern)};
        if (line.assessment.unread.empty())
            line.assessment.notes.insert(line.assessment.notes.end(), draft.notes.begin(), draft.notes.end());
        return line;
    } catch (const InvalidPattern& invalid) {
        return unread(UnreadKind::no_pattern, first_problem(invalid), digest_of(text));
    } catch (...) {
        // One draft that defeats the program does not take the others' marks with it.
        return unread_for_now(doing);
    }
}

MarkedDraft finished(const Marking& marking, const std::string& path, AssessmentLine line) {
    line.exercise_digest = marking.exercise_digest;
    line.assessment.file = line_name(path);
    line.assessment.student = student_of(line.assessment.file);
    MarkedDraft draft;
    draft.line = write_assessment_line(line);
    // What is shown is what was kept, so that a report made later from the lines is the same.
    draft.read = read_assessment_line(draft.line, shown_path(path));
    return draft;
}

/// Empty if the marking was stopped while the draft was waited for.
std::optional<MarkedDraft> mark(const Marking& marking, const PatternPath& path) {
    if (!path.trouble.empty())
        return finished(marking, path.path, unread(UnreadKind::unreadable, path.trouble));
    std::string text;
    try {
        std::optional<std::string> read = awaited_text(path.path, marking.stop);
        if (!read) return std::nullopt;
        text = std::move(*read);
    } catch (const FileTrouble& trouble) {
        return finished(marking, path.path,
                        unread(UnreadKind::unreadable, without_name(trouble.what(), path.path)));
    } catch (const std::bad_alloc&) {
        return finished(marking, path.path, unread_for_now(" while reading it"));
    }
    MarkedDraft draft;
    const auto known = marking.known.find(line_name(path.path));
    draft.is_kept = known != marking.known.end() && known->second == digest_of(text);
    if (draft.is_kept) return draft;
    AssessmentLine line = judged(marking, text, shown_path(path.path));
    draft.is_passed_over = path.is_from_folder && !line.assessment.unread.empty() && is_other_json(text);
    return draft.is_passed_over ? draft : finished(marking, path.path, std::move(line));
}

/// What the threads share.
class Desk {
  public:
    Desk(const Marking& marking, const std::function<bool()>& is_to_stop)
        : marking_(marking), is_to_stop_(is_to_stop), most_ahead_(ahead_of_slowest * marking.threads) {}

    void work() {
        while (const std::optional<std::size_t> index = next()) mark_at(*index);
    }

    /// The next draft in order; empty when there is none left or the marking was stopped before it.
    std::optional<MarkedDraft> take() {
        std::unique_lock<std::mutex> held(mutex_);
        changed_.wait(held, [&] {
            return trouble_ || done_.count(taken_) != 0 ||
                   (is_over_ && taken_ >= std::min(begun_, stopped_before_));
        });
        if (trouble_) std::rethrow_exception(trouble_);
        const auto found = done_.find(taken_);
        if (found == done_.end()) return std::nullopt;
        MarkedDraft draft = std::move(found->second);
        done_.erase(found);
        ++taken_;
        changed_.notify_all();
        return draft;
    }

    /// Where there is no thread to mark it: the next draft, on the calling one.
    void mark_one() {
        if (const std::optional<std::size_t> index = next()) mark_at(*index);
    }

    void stop() {
        const std::lock_guard<std::mutex> held(mutex_);
        is_over_ = true;
        changed_.notify_all();
    }

  private:
    void mark_at(std::size_t index) {
        try {
            std::optional<MarkedDraft> draft = mark(marking_, marking_.drafts[index]);
            const std::lock_guard<std::mutex> held(mutex_);
            if (draft)
                done_.emplace(index, std::move(*draft));
            else
                stop_before(index);
        } catch (...) {
            const std::lock_guard<std::mutex> held(mutex_);
            trouble_ = std::current_exception();
        }
        changed_.notify_all();
    }

    std::optional<std::size_t> next() {
        std::unique_lock<std::mutex> held(mutex_);
        changed_.wait(held, [&] { return is_over_ || begun_ < taken_ + most_ahead_; });
        if (!is_over_ && (begun_ == marking_.drafts.size() || is_to_stop_())) {
            is_over_ = true;
            changed_.notify_all();
        }
        if (is_over_) return std::nullopt;
        return begun_++;
    }

    void stop_before(std::size_t index) {
        is_over_ = true;
        stopped_before_ = std::min(stopped_before_, index);
    }

    const Marking& marking_;
    const std::function<bool()>& is_to_stop_;
    std::size_t most_ahead_;
    std::mutex mutex_;
    std::condition_variable changed_;
    std::map<std::size_t, MarkedDraft> done_;
    std::size_t begun_ = 0;
    std::size_t taken_ = 0;
    /// Those after it are not handed on, so that lines are kept in order.
    std::size_t stopped_before_ = std::numeric_limits<std::size_t>::max();
    bool is_over_ = false;
    std::exception_ptr trouble_;
};

/// Threads that are waited for whatever happens; as many of those wanted as the system gives.
class Threads {
  public:
    Threads(Desk& desk, std::size_t wanted) : desk_(desk) {
        threads_.reserve(wanted);
        try {
            while (threads_.size() < wanted) threads_.emplace_back([&] { desk_.work(); });
        } catch (const std::system_error&) {
            // So many processes and no more, or no memory for a stack: those there are do the work.
        } catch (const std::bad_alloc&) {
        }
    }
    bool are_any() const { return !threads_.empty(); }
    Threads(const Threads&) = delete;
    Threads& operator=(const Threads&) = delete;
    ~Threads() {
        desk_.stop();
        for (std::thread& thread : threads_) thread.join();
    }

  private:
    Desk& desk_;
    std::vector<std::thread> threads_;
};

}  // namespace

std::string line_name(const std::string& path) {
    constexpr const char* hex = "0123456789ABCDEF";
    std::string name;
    std::string_view rest = path;
    while (const auto bad = first_malformed_utf8(rest)) {
        const auto byte = static_cast<unsigned char>(rest[*bad]);
        name += rest.substr(0, *bad);
        ((name += "\\x") += hex[byte / 16]) += hex[byte % 16];
        rest.remove_prefix(*bad + 1);
    }
    return name += rest;
}

std::string student_of(const std::string& path) {
    return path == "-" ? "standard input" : std::filesystem::path(path).stem().string();
}

void mark_drafts(const Marking& marking, const std::function<bool()>& is_to_stop,
                 const std::function<void(std::size_t, MarkedDraft)>& take) {
    Desk desk(marking, is_to_stop);
    const Threads threads(desk, std::max<std::size_t>(1, std::min(marking.threads, marking.drafts.size())));
    std::size_t index = 0;
    for (;;) {
        if (!threads.are_any()) desk.mark_one();
        std::optional<MarkedDraft> draft = desk.take();
        if (!draft) return;
        take(index++, std::move(*draft));
    }
}

}  // namespace dartwright::tools
