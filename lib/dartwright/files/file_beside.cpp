// Covered by tests/files/output_file_test.cpp.
#include "dartwright/files/file_beside.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <random>

#include "dartwright/files/file_trouble.hpp"

namespace dartwright {
namespace {

std::string folder_beside(const std::string& path) {
    const std::size_t slash = path.rfind('/');
    if (slash == std::string::npos) return ".";
    return slash == 0 ? "/" : path.substr(0, slash);
}

/// Short, so that a target's name may be as long as the file system allows.
std::string name_beside(const std::string& target) {
    constexpr const char* letters = "0123456789abcdefghijklmnopqrstuv";
    std::random_device random;
    std::string name = folder_beside(target) + "/.dartwright-";
    for (int i = 0; i < 10; ++i) name += letters[random() % 32U];
    return name;
}

std::string name_of_open(int descriptor) {
    return "/proc/self/fd/" + std::to_string(descriptor);
}

/// Open without a name, or -1 where there is no such thing or no way to give it a name later.
int open_nameless(const std::string& target, mode_t mode) {
    const int descriptor = ::open(folder_beside(target).c_str(), O_TMPFILE | O_WRONLY | O_CLOEXEC, mode);
    if (descriptor < 0 || ::access(name_of_open(descriptor).c_str(), F_OK) == 0) return descriptor;
    ::close(descriptor);
    return -1;
}

bool link_open_file(int descriptor, const std::string& path) {
    return ::linkat(AT_FDCWD, name_of_open(descriptor).c_str(), AT_FDCWD, path.c_str(), AT_SYMLINK_FOLLOW) ==
           0;
}

/// No signal ends the process between a name and the one that it is to become.
class SignalsHeld {
  public:
    SignalsHeld() {
        sigset_t all;
        sigfillset(&all);
        ::pthread_sigmask(SIG_SETMASK, &all, &before_);
    }
    SignalsHeld(const SignalsHeld&) = delete;
    SignalsHeld& operator=(const SignalsHeld&) = delete;
    ~SignalsHeld() { ::pthread_sigmask(SIG_SETMASK, &before_, nullptr); }

  private:
    sigset_t before_{};
};

constexpr int tries_for_a_name = 100;

}  // namespace

FileBeside::FileBeside(const std::string& target, mode_t mode)
    : target_(target), descriptor_(open_nameless(target, mode)) {
    if (!descriptor_.is_open()) open_named(mode);
}

void FileBeside::open_named(mode_t mode) {
    for (int i = 0; i < tries_for_a_name; ++i) {
        std::string path = name_beside(target_);
        const SignalsHeld held;
        const int descriptor = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
        if (descriptor < 0 && errno == EEXIST) continue;
        if (descriptor < 0) fail_file(target_, "written", errno);
        descriptor_.take(descriptor);
        unfinished_.emplace(path);
        path_ = std::move(path);
        return;
    }
    fail_file(target_, "written", EEXIST);
}

FileBeside::~FileBeside() {
    if (!path_.empty()) ::unlink(path_.c_str());
}

void FileBeside::write(std::string_view text) {
    write_all(descriptor_.get(), text, target_);
}

Kept FileBeside::complete(std::optional<mode_t> mode) {
    // A disk that knows no permissions refuses them; the text is what was asked for.
    if (mode && ::fchmod(descriptor_.get(), *mode) != 0 && errno != EPERM && errno != ENOTSUP)
        fail_file(target_, "written", errno);
    Kept kept = Kept::on_disk;
    if (::fsync(descriptor_.get()) != 0) {
        if (errno != EINVAL && errno != ENOTSUP && errno != ENOSYS) fail_file(target_, "written", errno);
        kept = Kept::perhaps_not_on_disk;
    }
    // A nameless file is needed open; it is on a disk that has been asked already.
    if (!path_.empty() && descriptor_.close() != 0) fail_file(target_, "written", errno);
    return kept;
}

void FileBeside::replace_target() {
    const SignalsHeld held;
    for (int i = 0; path_.empty(); ++i) {
        const std::string path = name_beside(target_);
        if (link_open_file(descriptor_.get(), path))
            path_ = path;
        else if (errno != EEXIST || i == tries_for_a_name)
            fail_file(target_, "written", errno);
    }
    if (::rename(path_.c_str(), target_.c_str()) != 0) fail_file(target_, "written", errno);
    path_.clear();
    unfinished_.reset();
}

void FileBeside::become_target() {
    const bool is_linked = path_.empty() ? link_open_file(descriptor_.get(), target_)
                                         : ::link(path_.c_str(), target_.c_str()) == 0;
    if (is_linked) return;  // a name beside is removed
    if (errno == EEXIST) throw OutputExists(target_);
    if (path_.empty()) fail_file(target_, "written", errno);
    replace_target();  // a file system without links
}

}  // namespace dartwright
