#pragma once

// Runs a program as a process of its own: its words, what it reads, and what it wrote.

#include <fcntl.h>
#include <linux/securebits.h>
#include <poll.h>
#include <sys/prctl.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <stdexcept>
#include <string>
#include <system_error>
#include <vector>

namespace dartwright::support {

struct Process {
    std::vector<std::string> words;      ///< the program's path, then its arguments
    std::string input;                   ///< what it reads on standard input
    std::string folder;                  ///< where it runs; the test's own if empty
    std::string output_device;           ///< a file that standard output goes to; captured if empty
    std::vector<std::string> settings;   ///< `NAME=VALUE` of its environment
    bool is_without_privileges = false;  ///< run as `owner()`, with no more rights than that user has
};

/// Whose the program is: who may reach it, whatever the folders above it are open to.
inline uid_t owner_of(const std::string& program) {
    struct stat status {};
    if (::stat(program.c_str(), &status) != 0)
        throw std::system_error(errno, std::generic_category(), program);
    return status.st_uid;
}

/// Makes a file or folder the program's owner's; only root can, and only root need.
inline void give_to_owner_of(const std::string& program, const std::string& path) {
    if (::geteuid() == 0 && ::lchown(path.c_str(), owner_of(program), static_cast<gid_t>(-1)) != 0)
        throw std::system_error(errno, std::generic_category(), path);
}

struct Ended {
    int status = 0;  ///< exit status, or 128 and the signal
    std::string out;
    std::string err;
};

/// An open file, closed at the end of its scope.
class Handle {
  public:
    explicit Handle(int handle) : handle_(handle) {
        if (handle < 0) throw std::system_error(errno, std::generic_category(), "no handle");
    }
    Handle(const Handle&) = delete;
    Handle& operator=(const Handle&) = delete;
    ~Handle() { close(); }
    int get() const { return handle_; }
    bool is_open() const { return handle_ >= 0; }
    void close() {
        if (handle_ >= 0) ::close(handle_);
        handle_ = -1;
    }

  private:
    int handle_;
};

struct Pipe {
    static std::array<int, 2> made() {
        std::array<int, 2> ends{-1, -1};
        if (::pipe2(ends.data(), O_CLOEXEC) != 0)
            throw std::system_error(errno, std::generic_category(), "no pipe");
        return ends;
    }
    explicit Pipe(std::array<int, 2> ends = made()) : to_read(ends[0]), to_write(ends[1]) {}
    Handle to_read;
    Handle to_write;
};

/// What root may do beyond any owner is gone with the next program: it runs as this user, and when that is
/// root too, without the capabilities that root is given. Another user could not reach a program below /root.
inline bool give_up_privileges(uid_t user) {
    if (::geteuid() != 0) return true;
    // Refused only to a root that was not given capabilities, and has none to lose.
    ::prctl(PR_SET_SECUREBITS, SECBIT_NOROOT);
    ::prctl(PR_CAP_AMBIENT, PR_CAP_AMBIENT_CLEAR_ALL, 0, 0, 0);
    return ::setuid(user) == 0;
}

[[noreturn]] inline void become(const Process& process, Pipe& in, Pipe& out, Pipe& err) {
    constexpr int cannot_start = 127;
    ::signal(SIGPIPE, SIG_DFL);
    ::dup2(in.to_read.get(), STDIN_FILENO);
    ::dup2(err.to_write.get(), STDERR_FILENO);
    const int device =
        process.output_device.empty() ? out.to_write.get() : ::open(process.output_device.c_str(), O_WRONLY);
    ::dup2(device, STDOUT_FILENO);
    if (!process.folder.empty() && ::chdir(process.folder.c_str()) != 0) ::_exit(cannot_start);
    for (const std::string& setting : process.settings) ::putenv(const_cast<char*>(setting.c_str()));
    if (process.is_without_privileges && !give_up_privileges(owner_of(process.words[0])))
        ::_exit(cannot_start);
    std::vector<char*> words;
    for (const std::string& word : process.words) words.push_back(const_cast<char*>(word.c_str()));
    words.push_back(nullptr);
    ::execvp(words[0], words.data());
    ::_exit(cannot_start);
}

/// Reads what is there; closes the handle at the end.
inline void gather(Handle& handle, std::string& text) {
    std::array<char, 65536> buffer{};
    const ssize_t count = ::read(handle.get(), buffer.data(), buffer.size());
    if (count > 0) text.append(buffer.data(), static_cast<std::size_t>(count));
    if (count == 0 || (count < 0 && errno != EINTR)) handle.close();
}

inline void feed(Handle& handle, const std::string& text, std::size_t& fed) {
    const ssize_t count = ::write(handle.get(), text.data() + fed, text.size() - fed);
    if (count > 0) fed += static_cast<std::size_t>(count);
    if (fed == text.size() || (count < 0 && errno != EINTR && errno != EAGAIN)) handle.close();
}

/// Feeds and reads until the process has closed both outputs.
inline void converse(Handle& in, Handle& out, Handle& err, const std::string& input, Ended& ended) {
    std::size_t fed = 0;
    ::fcntl(in.get(), F_SETFL, O_NONBLOCK);
    while (out.is_open() || err.is_open()) {
        if (in.is_open() && fed == input.size()) in.close();
        std::array<pollfd, 3> ready{{{in.get(), POLLOUT, 0}, {out.get(), POLLIN, 0}, {err.get(), POLLIN, 0}}};
        if (::poll(ready.data(), ready.size(), -1) < 0 && errno != EINTR)
            throw std::system_error(errno, std::generic_category(), "poll");
        if (ready[0].revents != 0) feed(in, input, fed);
        if (ready[1].revents != 0) gather(out, ended.out);
        if (ready[2].revents != 0) gather(err, ended.err);
    }
}

inline Ended run(const Process& process) {
    ::signal(SIGPIPE, SIG_IGN);
    Pipe in;
    Pipe out;
    Pipe err;
    const pid_t child = ::fork();
    if (child < 0) throw std::system_error(errno, std::generic_category(), "fork");
    if (child == 0) become(process, in, out, err);
    in.to_read.close();
    out.to_write.close();
    err.to_write.close();
    Ended ended;
    converse(in.to_write, out.to_read, err.to_read, process.input, ended);
    int status = 0;
    while (::waitpid(child, &status, 0) < 0 && errno == EINTR) continue;
    ended.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    return ended;
}

}  // namespace dartwright::support
