// Loses 77 bytes, to see that the leak sanitizer finds what is ours.

#include <array>

namespace {

// Kept in nothing that the sanitizer could find: neither a register nor the stack of the caller.
[[gnu::noinline]] int lose() {
    const auto* lost = new std::array<volatile char, 77>{};
    return (*lost)[0];
}

}  // namespace

int main() {
    return lose();
}
