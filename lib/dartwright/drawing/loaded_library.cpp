#include "dartwright/drawing/loaded_library.hpp"

namespace dartwright {

LoadedLibrary::LoadedLibrary(const char* file) : handle_(dlopen(file, RTLD_NOW | RTLD_LOCAL)) {
    if (handle_ != nullptr) return;
    const char* const reason = dlerror();
    trouble_ = reason == nullptr ? std::string(file) + " is not there" : reason;
}

void* LoadedLibrary::function(const char* name) const {
    return handle_ == nullptr ? nullptr : dlsym(handle_, name);
}

}  // namespace dartwright
