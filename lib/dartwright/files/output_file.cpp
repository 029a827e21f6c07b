#include "dartwright/files/output_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <optional>

namespace dartwright {
namespace {

std::string reason(int error) {
    switch (error) {
        case ENOENT:
            return "there is no such file";
        case EISDIR:
            return "it is a folder";
        case ENOTDIR:
            return "a part of the path is not a folder";
        case EACCES:
        case EPERM:
            return "no permission";
        case ENOSPC:
            return "the disk is full";
        case EROFS:
            return "the disk can only be read";
        default:
            return std::strerror(error);
    }
}

[[noreturn]] void fail(const std::string& path, const char* what, int error) {
    throw FileTrouble(path + ": cannot be " + what + ": " + reason(error));
}

void write_all(int descriptor, std::string_view text, const std::string& path) {
    while (!text.empty()) {
        const ssize_t written = ::write(descriptor, text.data(), text.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) fail(path, "written", errno);
        text.remove_prefix(static_cast<std::size_t>(written));
    }
}

}  // namespace

// Named, because a class of the header holds them.
namespace output_files {

/// An open file, closed at the end of its scope.
class Descriptor {
  public:
    explicit Descriptor(int descriptor) : descriptor_(descriptor) {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor() {
        if (descriptor_ > STDERR_FILENO) ::close(descriptor_);
    }
    int get() const { return descriptor_; }
    bool is_open() const { return descriptor_ >= 0; }
    /// Closing may be the first to report that the text did not fit.
    int close() {
        const int result = ::close(descriptor_);
        descriptor_ = -1;
        return result;
    }

  private:
    int descriptor_;
};

/// A new file beside the target, removed again unless it took the target's name.
class FileBeside {
  public:
    explicit FileBeside(const std::string& target)
        : target_(target), path_(target + ".XXXXXX"), descriptor_(::mkstemp(path_.data())) {
        if (!descriptor_.is_open()) fail(target, "written", errno);
    }
    FileBeside(const FileBeside&) = delete;
    FileBeside& operator=(const FileBeside&) = delete;
    ~FileBeside() {
        if (!is_in_place_) ::unlink(path_.c_str());
    }
    void write(std::string_view text) { write_all(descriptor_.get(), text, target_); }
    void complete(mode_t mode) {
        if (::fchmod(descriptor_.get(), mode) != 0 || ::fsync(descriptor_.get()) != 0 ||
            descriptor_.close() != 0)
            fail(target_, "written", errno);
    }
    void replace_target() {
        if (::rename(path_.c_str(), target_.c_str()) != 0) fail(target_, "written", errno);
        is_in_place_ = true;
    }
    /// Takes the name only if it is still free.
    void become_target() {
        if (::link(path_.c_str(), target_.c_str()) == 0) return;  // the name beside is removed
        if (errno == EEXIST) throw OutputExists(target_);
        replace_target();  // a file system without links
    }

  private:
    std::string target_;
    std::string path_;
    Descriptor descriptor_;
    bool is_in_place_ = false;
};

}  // namespace output_files

namespace {

using output_files::Descriptor;
using output_files::FileBeside;

/// Permissions of a file made in the usual way.
mode_t mode_of_new_files() {
    const mode_t mask = ::umask(0);
    ::umask(mask);
    return static_cast<mode_t>(0666) & ~mask;
}

std::optional<struct stat> status_of(const std::string& path) {
    struct stat status {};
    if (::stat(path.c_str(), &status) == 0) return status;
    return std::nullopt;
}

}  // namespace

OutputExists::OutputExists(std::string existing)
    : std::runtime_error(existing + ": exists already and is not replaced unless asked"),
      path(std::move(existing)) {}

struct WholeFile::Target {
    std::string path;
    Overwrite overwrite = Overwrite::no;
    std::optional<struct stat> existing;
    std::optional<Descriptor> device;
    std::optional<FileBeside> beside;

    void open() {
        if (existing && S_ISDIR(existing->st_mode)) fail(path, "written", EISDIR);
        if (existing && !S_ISREG(existing->st_mode)) {
            device.emplace(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
            if (!device->is_open()) fail(path, "written", errno);
            return;
        }
        if (existing && overwrite == Overwrite::no) throw OutputExists(path);
        // A file that may not be written is not replaced either, though its folder would allow it.
        if (existing && ::access(path.c_str(), W_OK) != 0) fail(path, "written", errno);
        std::error_code error;
        const auto followed = std::filesystem::canonical(path, error);
        beside.emplace(existing && !error ? followed.string() : path);
    }
};

WholeFile::WholeFile(const std::string& path, Overwrite overwrite)
    : target_(new Target{path, overwrite, status_of(path), {}, {}}) {
    target_->open();
}

WholeFile::~WholeFile() = default;

void WholeFile::write(std::string_view text) {
    if (target_->device)
        write_all(target_->device->get(), text, target_->path);
    else
        target_->beside->write(text);
}

void WholeFile::finish() {
    Target& target = *target_;
    if (target.device) {
        if (target.device->close() != 0) fail(target.path, "written", errno);
        return;
    }
    const std::optional<struct stat>& existing = target.existing;
    target.beside->complete(existing ? existing->st_mode & static_cast<mode_t>(07777) : mode_of_new_files());
    if (existing || target.overwrite == Overwrite::yes)
        target.beside->replace_target();
    else
        target.beside->become_target();
    target.beside.reset();
}

void write_file_whole(const std::string& path, std::string_view text, Overwrite overwrite) {
    if (path == "-") return write_all(STDOUT_FILENO, text, "standard output");
    WholeFile file(path, overwrite);
    file.write(text);
    file.finish();
}

std::string read_text_file(const std::string& path) {
    const bool is_standard_input = path == "-";
    const std::string name = is_standard_input ? "standard input" : path;
    const Descriptor descriptor(is_standard_input ? STDIN_FILENO
                                                  : ::open(path.c_str(), O_RDONLY | O_CLOEXEC));
    if (!descriptor.is_open()) fail(name, "read", errno);
    std::string text;
    std::array<char, 65536> buffer{};
    for (;;) {
        const ssize_t count = ::read(descriptor.get(), buffer.data(), buffer.size());
        if (count < 0 && errno == EINTR) continue;
        if (count < 0) fail(name, "read", errno);
        if (count == 0) return text;
        text.append(buffer.data(), static_cast<std::size_t>(count));
    }
}

}  // namespace dartwright
