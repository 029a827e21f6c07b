#include "dartwright/files/output_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>
#include <optional>

#include "dartwright/files/file_beside.hpp"
#include "dartwright/files/file_trouble.hpp"

namespace dartwright {
namespace {

constexpr mode_t new_file_mode = 0666;
constexpr mode_t all_permissions = 07777;

/// Of links in a row; more are a circle, as the system has it.
constexpr int most_links = 40;

/// Where links lead; the last of them may name a file that is not there yet.
std::string followed(const std::string& path) {
    std::filesystem::path at = path;
    for (int i = 0; i < most_links; ++i) {
        std::error_code error;
        const std::filesystem::path target = std::filesystem::read_symlink(at, error);
        if (error) return at.string();
        at = target.is_absolute() ? target : at.parent_path() / target;
    }
    fail_file(path, "written", ELOOP);
}

std::optional<struct stat> status_of(const std::string& path) {
    struct stat status {};
    if (::stat(path.c_str(), &status) == 0) return status;
    return std::nullopt;
}

}  // namespace

OutputExists::OutputExists(std::string existing)
    : Error(ErrorKind::output_exists, existing + ": exists already and is not replaced unless asked"),
      path(std::move(existing)) {}

struct WholeFile::Target {
    std::string path;
    Overwrite overwrite = Overwrite::no;
    std::optional<struct stat> existing;
    std::optional<Descriptor> device;
    std::optional<FileBeside> beside;

    mode_t existing_mode() const { return existing->st_mode & all_permissions; }

    void open() {
        if (existing && S_ISDIR(existing->st_mode)) fail_file(path, "written", EISDIR);
        if (existing && !S_ISREG(existing->st_mode)) {
            device.emplace(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
            if (!device->is_open()) fail_file(path, "written", errno);
            return;
        }
        if (existing && overwrite == Overwrite::no) throw OutputExists(path);
        // A file that may not be written is not replaced either, though its folder would allow it.
        if (existing && ::access(path.c_str(), W_OK) != 0) fail_file(path, "written", errno);
        beside.emplace(followed(path), existing ? existing_mode() : new_file_mode);
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

Kept WholeFile::finish() {
    Target& target = *target_;
    if (target.device) {
        if (target.device->close() != 0) fail_file(target.path, "written", errno);
        return Kept::on_disk;
    }
    const Kept kept =
        target.beside->complete(target.existing ? std::optional(target.existing_mode()) : std::nullopt);
    if (target.existing || target.overwrite == Overwrite::yes)
        target.beside->replace_target();
    else
        target.beside->become_target();
    target.beside.reset();
    return kept;
}

Kept write_file_whole(const std::string& path, std::string_view text, Overwrite overwrite) {
    if (path == "-") {
        write_all(STDOUT_FILENO, text, "standard output");
        return Kept::on_disk;
    }
    WholeFile file(path, overwrite);
    file.write(text);
    return file.finish();
}

std::string read_text_file(const std::string& path) {
    const bool is_standard_input = path == "-";
    const std::string name = is_standard_input ? "standard input" : path;
    const Descriptor descriptor(is_standard_input ? STDIN_FILENO
                                                  : ::open(path.c_str(), O_RDONLY | O_CLOEXEC));
    if (!descriptor.is_open()) fail_file(name, "read", errno);
    return read_all(descriptor.get(), name);
}

}  // namespace dartwright
