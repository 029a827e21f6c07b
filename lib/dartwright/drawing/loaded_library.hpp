#pragma once

// A shared library that is loaded when it is first needed: linked, it would cost every start of a program the
// loading of it, whether or not anything is drawn.

#include <dlfcn.h>

#include <cstddef>
#include <cstdint>
#include <string>

namespace dartwright {

/// Private to this room. Loaded when it is made, and kept until the process ends.
class LoadedLibrary {
  public:
    explicit LoadedLibrary(const char* file);
    bool is_there() const { return handle_ != nullptr; }
    /// Why it is not there; empty if it is.
    const std::string& trouble() const { return trouble_; }
    /// Null if it has no function of that name, or is not there.
    void* function(const char* name) const;

  private:
    void* handle_;
    std::string trouble_;
};

/// A function of a library under its own type. `Missing` is thrown, with the reason, where there is none.
template <typename Function, typename Missing>
class LoadedFunction {
  public:
    LoadedFunction(const LoadedLibrary& library, const char* name)
        : function_(reinterpret_cast<Function*>(library.function(name))) {
        if (!library.is_there()) throw Missing(library.trouble());
        if (function_ == nullptr) throw Missing(std::string("it has no ") + name);
    }
    operator Function*() const { return function_; }

  private:
    Function* function_;
};

/// So that those who make packages see what is loaded: the ELF note for that, of the layout of the UAPI
/// group's "dlopen metadata for ELF files" (from memory, not verified). To stand in the section .note.dlopen.
template <std::size_t bytes>
struct LoadingNote {
    std::uint32_t name_bytes = 4;
    std::uint32_t text_bytes = bytes;
    std::uint32_t type = 0x407C0C0A;
    char name[4] = {'F', 'D', 'O', 0};
    char text[(bytes + 3) / 4 * 4] = {};
};

template <std::size_t bytes>
constexpr LoadingNote<bytes> loading_note(const char (&words)[bytes]) {
    LoadingNote<bytes> note;
    for (std::size_t i = 0; i < bytes; ++i) note.text[i] = words[i];
    return note;
}

}  // namespace dartwright
