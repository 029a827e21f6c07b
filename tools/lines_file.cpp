#include "lines_file.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <filesystem>
#include <map>
#include <string_view>

#include "arguments.hpp"
#include "checked_file.hpp"
#include "dartwright/files/file_trouble.hpp"
#include "dartwright/files/unfinished_files.hpp"

namespace dartwright::tools {

class LinesFile::Handle {
  public:
    explicit Handle(int handle) : handle_(handle) {}
    Handle(const Handle&) = delete;
    Handle& operator=(const Handle&) = delete;
    ~Handle() {
        if (handle_ >= 0) ::close(handle_);
    }
    int get() const { return handle_; }

  private:
    int handle_;
};

namespace {

[[noreturn]] void fail(const std::string& path, const char* what) {
    const int error = errno;
    fail_file(shown_path(path), what, error);
}

int opened_handle(const std::string& path, int flags) {
    // The other end of a pipe is not waited for.
    const int handle = ::open(path.c_str(), flags | O_CLOEXEC | O_NONBLOCK, 0666);
    if (handle < 0) fail(path, (flags & O_RDWR) != 0 ? "written" : "read");
    struct stat status {};
    if (::fstat(handle, &status) != 0 || !S_ISREG(status.st_mode)) {
        ::close(handle);
        throw FileTrouble(shown_path(path) + ": is not a file of lines");
    }
    return handle;
}

void lock(const std::string& path, int handle) {
    if (::flock(handle, LOCK_EX | LOCK_NB) == 0) return;
    throw FileTrouble(shown_path(path) + ": another process adds lines to it");
}

/// Where the last line end stands, or the beginning.
off_t end_of_whole_lines(const std::string& path, int handle) {
    off_t end = ::lseek(handle, 0, SEEK_END);
    std::array<char, 4096> buffer{};
    while (end > 0) {
        const off_t from =
            end > static_cast<off_t>(buffer.size()) ? end - static_cast<off_t>(buffer.size()) : 0;
        const ssize_t count = ::pread(handle, buffer.data(), static_cast<std::size_t>(end - from), from);
        if (count <= 0) fail(path, "read");
        for (ssize_t i = count; i > 0; --i)
            if (buffer[static_cast<std::size_t>(i - 1)] == '\n') return from + i;
        end = from;
    }
    return 0;
}

/// What every line begins with. A file that ends otherwise is somebody's own, and nothing is cut off it.
constexpr std::string_view line_lead = "{\"dartwright_assess\":";

/// Where the lines end that are whole; a torn one after them is to be taken off.
off_t end_to_resume(const std::string& path, int handle) {
    const off_t end = end_of_whole_lines(path, handle);
    std::array<char, line_lead.size()> lead{};
    const ssize_t count = ::pread(handle, lead.data(), lead.size(), end);
    if (count < 0) fail(path, "read");
    const std::string_view torn(lead.data(), static_cast<std::size_t>(count));
    if (torn != line_lead.substr(0, torn.size()))
        throw FileTrouble(shown_path(path) +
                          ": its last line is no draft that was marked; expected a file of --lines");
    return end;
}

}  // namespace

/// The file beside, removed again unless it took the name.
class LinesFile::Beside {
  public:
    Beside(std::string name, std::string target, std::shared_ptr<Handle> old)
        : name_(std::move(name)), target_(std::move(target)), old_(std::move(old)), unfinished_(name_) {}
    Beside(const Beside&) = delete;
    Beside& operator=(const Beside&) = delete;
    ~Beside() {
        if (!is_in_place_) ::unlink(name_.c_str());
    }
    int old_handle() const { return old_->get(); }
    void take_name(const std::string& shown) {
        if (::rename(name_.c_str(), target_.c_str()) != 0) fail(shown, "written");
        is_in_place_ = true;
    }

  private:
    std::string name_;
    std::string target_;
    std::shared_ptr<Handle> old_;  ///< locked
    UnfinishedFile unfinished_;
    bool is_in_place_ = false;
};

LinesFile::LinesFile(std::string path, std::shared_ptr<Handle> handle)
    : path_(std::move(path)), handle_(std::move(handle)), end_(::lseek(handle_->get(), 0, SEEK_END)) {}

LinesFile LinesFile::temporary() {
    std::error_code error;
    const auto folder = std::filesystem::temp_directory_path(error);
    std::string name = ((error ? std::filesystem::path("/tmp") : folder) / "dartwright-XXXXXX").string();
    const int handle = ::mkostemp(name.data(), O_CLOEXEC);
    if (handle < 0) fail(name, "written");
    ::unlink(name.c_str());
    return {"the lines of this run", std::make_shared<Handle>(handle)};
}

LinesFile LinesFile::created(const std::string& path) {
    std::error_code unknown;
    if (std::filesystem::exists(path, unknown)) {
        throw WrongUse(shown_path(path) +
                       ": exists already; --resume goes on with it, and --anew begins it anew");
    }
    auto handle = std::make_shared<Handle>(opened_handle(path, O_RDWR | O_CREAT | O_EXCL));
    lock(path, handle->get());
    return {path, std::move(handle)};
}

LinesFile LinesFile::begun_anew(const std::string& path) {
    std::error_code unknown;
    if (!std::filesystem::exists(path, unknown)) return created(path);
    // Nobody adds to the old one meanwhile, and it is a file of lines or empty.
    auto old = std::make_shared<Handle>(opened_handle(path, O_RDWR));
    lock(path, old->get());
    end_to_resume(path, old->get());
    const std::string target = std::filesystem::canonical(path).string();
    const std::size_t slash = target.rfind('/');
    std::string name = target.substr(0, slash + 1) + ".dartwright-XXXXXX";
    auto handle = std::make_shared<Handle>(::mkostemp(name.data(), O_CLOEXEC));
    if (handle->get() < 0) fail(path, "written");
    auto beside = std::make_shared<Beside>(std::move(name), target, std::move(old));
    lock(path, handle->get());
    struct stat status {};
    if (::fstat(beside->old_handle(), &status) == 0)
        static_cast<void>(::fchmod(handle->get(), status.st_mode & static_cast<mode_t>(07777)));
    LinesFile lines(path, std::move(handle));
    lines.beside_ = std::move(beside);
    return lines;
}

LinesFile LinesFile::resumed(const std::string& path) {
    auto handle = std::make_shared<Handle>(opened_handle(path, O_RDWR | O_CREAT));
    lock(path, handle->get());
    if (::ftruncate(handle->get(), end_to_resume(path, handle->get())) != 0) fail(path, "written");
    return {path, std::move(handle)};
}

LinesFile LinesFile::opened(const std::string& path) {
    return {path, std::make_shared<Handle>(opened_handle(path, O_RDONLY))};
}

LinePlace LinesFile::append(const std::string& line, bool is_marked) {
    const std::string text = line + "\n";
    if (beside_ && is_marked) {
        beside_->take_name(path_);
        beside_.reset();
    }
    std::size_t written = 0;
    while (written < text.size()) {
        const ssize_t count = ::pwrite(handle_->get(), text.data() + written, text.size() - written,
                                       end_ + static_cast<off_t>(written));
        if (count < 0 && errno == EINTR) continue;
        if (count < 0) fail(path_, "written");
        written += static_cast<std::size_t>(count);
    }
    const LinePlace place{end_, line.size()};
    end_ += static_cast<off_t>(text.size());
    return place;
}

std::string LinesFile::read(const LinePlace& place) const {
    std::string text(place.length, '\0');
    std::size_t got = 0;
    while (got < text.size()) {
        const ssize_t count = ::pread(handle_->get(), text.data() + got, text.size() - got,
                                      place.offset + static_cast<off_t>(got));
        if (count < 0 && errno == EINTR) continue;
        if (count <= 0) fail(path_, "read");
        got += static_cast<std::size_t>(count);
    }
    return text;
}

void LinesFile::each(
    const std::function<void(const std::string&, const LinePlace&, std::size_t)>& use) const {
    std::string text;
    off_t start = 0;
    std::size_t number = 0;
    const auto take = [&](std::size_t length) {
        ++number;
        const std::string line = text.substr(0, length);
        if (!line.empty()) use(line, {start, length}, number);
    };
    while (start < end_) {
        const off_t from = start + static_cast<off_t>(text.size());
        const std::size_t wanted = std::min<std::size_t>(65536, static_cast<std::size_t>(end_ - from));
        const std::size_t searched = text.size();
        if (wanted > 0) text += read({from, wanted});
        std::size_t end = text.find('\n', searched);
        if (end == std::string::npos) {
            if (wanted > 0) continue;
            take(text.size());
            return;
        }
        while (end != std::string::npos) {
            take(end);
            text.erase(0, end + 1);
            start += static_cast<off_t>(end) + 1;
            end = text.find('\n');
        }
    }
}

KeptDraft kept_draft(const AssessmentLine& line, const LinePlace& place) {
    return {line.assessment.student, line.assessment.file, line.draft_digest, 0, place};
}

namespace {

AssessmentLine line_in(const std::string& text, const std::string& where) {
    try {
        return read_assessment_line(text, where);
    } catch (const InvalidPattern& invalid) {
        throw FileTrouble(first_problem_of_other(invalid));
    }
}

}  // namespace

std::vector<KeptDraft> drafts_of(const LinesFile& lines, const std::string& exercise_digest) {
    std::vector<KeptDraft> drafts;
    std::map<std::string, std::size_t> by_file;
    lines.each([&](const std::string& text, const LinePlace& place, std::size_t number) {
        const std::string where = shown_path(lines.path()) + ": line " + std::to_string(number);
        const AssessmentLine line = line_in(text, where);
        if (line.exercise_digest != exercise_digest)
            throw FileTrouble(where +
                              ": the draft was marked by another exercise, or before this one was changed");
        const auto [known, is_new] = by_file.emplace(line.assessment.file, drafts.size());
        if (is_new)
            drafts.push_back(kept_draft(line, place));
        else
            drafts[known->second] = kept_draft(line, place);
    });
    return drafts;
}

}  // namespace dartwright::tools
