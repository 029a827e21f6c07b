#include "unforeseen.hpp"

#include <new>

namespace dartwright::tools {
namespace {

constexpr const char* internal_error = "internal error";

}  // namespace

Unforeseen unforeseen(const std::exception_ptr& thrown, const std::string& doing) {
    try {
        std::rethrow_exception(thrown);
    } catch (const std::bad_alloc&) {
        // Nothing is wrong with the program or the file: with more memory, or fewer --jobs, it may be done.
        return {ExitStatus::unreadable, "out of memory" + doing};
    } catch (const std::exception& error) {
        return {ExitStatus::internal, internal_error + doing + ": " + error.what()};
    } catch (...) {
        return {ExitStatus::internal, internal_error + doing + ": of no kind that is known"};
    }
}

}  // namespace dartwright::tools
