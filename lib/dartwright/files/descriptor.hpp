#pragma once

#include <unistd.h>

namespace dartwright {

/// An open file, closed at the end of its scope; the three standard ones stay open.
class Descriptor {
  public:
    explicit Descriptor(int descriptor) : descriptor_(descriptor) {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor() {
        if (descriptor_ > STDERR_FILENO) ::close(descriptor_);
    }
    int get() const { return descriptor_; }
    /// Precondition: none is open yet.
    void take(int descriptor) { descriptor_ = descriptor; }
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

}  // namespace dartwright
