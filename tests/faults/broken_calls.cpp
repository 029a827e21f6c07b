// Loaded before the C library into the program under test: counts its calls that open, write and name files,
// and lets one of them fail, or ends the program by a signal just before or after it.
//   FAULT=N:ERROR     the N-th call fails with that error number
//   FAULT=N:<SIGNAL   the signal comes before the N-th call;  N:>SIGNAL after it
//   FAULT=N:/SIGNAL   where the N-th call writes, half of it is written before the signal comes
//   FAULT_ROOM=N      the disk has room for N bytes: what does not fit is not written
//   FAULT_UNKNOWN=1   there are no files without a name, as on some file systems
//   FAULT_LIBRARY=X   no library can be loaded whose name has X in it
//   FAULT_THREADS=N   only the first N threads can be started
//   FAULT_MEMORY=N    nothing of N bytes or more can be had at once
//   FAULT_COUNT=FILE  at the end the number of calls is written to FILE

#include <dlfcn.h>
#include <fcntl.h>
#include <pthread.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <atomic>
#include <cerrno>
#include <climits>
#include <csignal>
#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <utility>

namespace {

std::atomic<long> calls{0};
std::atomic<long> threads{0};

/// A number from the environment; none if there is no such setting.
long number_in(const char* setting, long none) {
    const char* words = std::getenv(setting);
    return words == nullptr ? none : std::strtol(words, nullptr, 10);
}

enum class Kind { none, error, signal_before, signal_after, signal_within };

struct Fault {
    long call = 0;
    Kind kind = Kind::none;
    int number = 0;

    Fault() {
        const char* words = std::getenv("FAULT");
        if (words == nullptr) return;
        char* end = nullptr;
        call = std::strtol(words, &end, 10);
        ++end;
        kind = *end == '<'   ? Kind::signal_before
               : *end == '>' ? Kind::signal_after
               : *end == '/' ? Kind::signal_within
                             : Kind::error;
        if (kind != Kind::error) ++end;
        number = static_cast<int>(std::strtol(end, nullptr, 10));
    }
};

const Fault& fault() {
    static const Fault wanted;
    return wanted;
}

/// The call as the C library has it.
template <typename Function, typename... Arguments>
auto uncounted(const char* name, Arguments... arguments) {
    return reinterpret_cast<Function>(::dlsym(RTLD_NEXT, name))(arguments...);
}

/// The same, or its failure.
template <typename Function, typename... Arguments>
auto called(const char* name, Arguments... arguments) {
    const bool is_this = ++calls == fault().call;
    if (is_this && fault().kind == Kind::error) {
        errno = fault().number;
        return decltype(uncounted<Function>(name, arguments...))(-1);
    }
    if (is_this && fault().kind == Kind::signal_before) std::raise(fault().number);
    const auto result = uncounted<Function>(name, arguments...);
    const int error = errno;
    if (is_this && (fault().kind == Kind::signal_after || fault().kind == Kind::signal_within))
        std::raise(fault().number);
    errno = error;
    return result;
}

bool is_refused_as_unknown(int flags) {
    if ((flags & O_TMPFILE) != O_TMPFILE || std::getenv("FAULT_UNKNOWN") == nullptr) return false;
    errno = EOPNOTSUPP;
    return true;
}

/// How much of a write is done: all, half of it, or what there is room for. Pipes have room.
std::size_t part_of(int descriptor, std::size_t size) {
    if (fault().kind == Kind::signal_within && calls + 1 == fault().call) return size / 2;
    static const long room = number_in("FAULT_ROOM", LONG_MAX);
    static std::atomic<long> left{room};
    struct stat status {};
    if (room == LONG_MAX || ::fstat(descriptor, &status) != 0 || !S_ISREG(status.st_mode)) return size;
    const long wanted = static_cast<long>(size);
    const long before = left.fetch_sub(wanted);
    return static_cast<std::size_t>(before <= 0 ? 0 : before < wanted ? before : wanted);
}

mode_t mode_in(int flags, std::va_list more) {
    return (flags & (O_CREAT | __O_TMPFILE)) != 0 ? va_arg(more, mode_t) : 0;
}

ssize_t no_room() {
    ++calls;
    errno = ENOSPC;
    return -1;
}

struct CountAtEnd {
    CountAtEnd() = default;
    CountAtEnd(const CountAtEnd&) = delete;
    CountAtEnd& operator=(const CountAtEnd&) = delete;
    ~CountAtEnd() {
        const char* path = std::getenv("FAULT_COUNT");
        if (path == nullptr) return;
        const long descriptor = ::syscall(SYS_openat, AT_FDCWD, path, O_WRONLY | O_CREAT | O_TRUNC, 0666);
        char text[32];
        const int length = std::snprintf(text, sizeof text, "%ld", calls.load());
        ::syscall(SYS_write, descriptor, text, static_cast<std::size_t>(length));
        ::syscall(SYS_close, descriptor);
    }
} at_end;

}  // namespace

extern "C" {

int open(const char* path, int flags, ...) {
    std::va_list more;
    va_start(more, flags);
    const mode_t mode = mode_in(flags, more);
    va_end(more);
    if (is_refused_as_unknown(flags)) return -1;
    if ((flags & O_ACCMODE) == O_RDONLY)
        return uncounted<int (*)(const char*, int, ...)>("open", path, flags);
    return called<int (*)(const char*, int, ...)>("open", path, flags, mode);
}
int open64(const char* path, int flags, ...) {
    std::va_list more;
    va_start(more, flags);
    const mode_t mode = mode_in(flags, more);
    va_end(more);
    if (is_refused_as_unknown(flags)) return -1;
    if ((flags & O_ACCMODE) == O_RDONLY)
        return uncounted<int (*)(const char*, int, ...)>("open64", path, flags);
    return called<int (*)(const char*, int, ...)>("open64", path, flags, mode);
}
ssize_t write(int descriptor, const void* buffer, std::size_t size) {
    // Standard error stays, to be read by the test.
    if (descriptor == STDERR_FILENO) return ::syscall(SYS_write, descriptor, buffer, size);
    const std::size_t part = part_of(descriptor, size);
    if (part == 0 && size > 0) return no_room();
    return called<ssize_t (*)(int, const void*, std::size_t)>("write", descriptor, buffer, part);
}
ssize_t pwrite(int descriptor, const void* buffer, std::size_t size, off_t at) {
    const std::size_t part = part_of(descriptor, size);
    if (part == 0 && size > 0) return no_room();
    return called<ssize_t (*)(int, const void*, std::size_t, off_t)>("pwrite", descriptor, buffer, part, at);
}
void* dlopen(const char* file, int flags) {
    const char* refused = std::getenv("FAULT_LIBRARY");
    if (refused != nullptr && file != nullptr && std::strstr(file, refused) != nullptr) return nullptr;
    return uncounted<void* (*)(const char*, int)>("dlopen", file, flags);
}
int pthread_create(pthread_t* thread, const pthread_attr_t* attributes, void* (*begin)(void*), void* given) {
    if (++threads > number_in("FAULT_THREADS", LONG_MAX)) return EAGAIN;
    return uncounted<int (*)(pthread_t*, const pthread_attr_t*, void* (*)(void*), void*)>(
        "pthread_create", thread, attributes, begin, given);
}
void* __libc_malloc(std::size_t size);
void* malloc(std::size_t size) {
    static const long limit = number_in("FAULT_MEMORY", LONG_MAX);
    if (size < static_cast<std::size_t>(limit)) return __libc_malloc(size);
    errno = ENOMEM;
    return nullptr;
}
int fsync(int descriptor) {
    return called<int (*)(int)>("fsync", descriptor);
}
int fchmod(int descriptor, mode_t mode) {
    return called<int (*)(int, mode_t)>("fchmod", descriptor, mode);
}
int ftruncate(int descriptor, off_t size) {
    return called<int (*)(int, off_t)>("ftruncate", descriptor, size);
}
int link(const char* from, const char* to) {
    return called<int (*)(const char*, const char*)>("link", from, to);
}
int linkat(int from_folder, const char* from, int to_folder, const char* to, int flags) {
    return called<int (*)(int, const char*, int, const char*, int)>("linkat", from_folder, from, to_folder,
                                                                    to, flags);
}
int rename(const char* from, const char* to) {
    return called<int (*)(const char*, const char*)>("rename", from, to);
}

}  // extern "C"
