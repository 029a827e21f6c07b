// Covered by tests/files/output_file_test.cpp.
#include "dartwright/files/unfinished_files.hpp"

#include <unistd.h>

#include <array>
#include <atomic>
#include <cerrno>
#include <climits>
#include <cstring>

#include "dartwright/files/output_file.hpp"

namespace dartwright {
namespace {

enum class PlaceIs { free, being_filled, filled };
static_assert(std::atomic<PlaceIs>::is_always_lock_free, "a signal handler may not wait");

struct NamePlace {
    std::atomic<PlaceIs> is{PlaceIs::free};
    std::array<char, PATH_MAX> path{};
};
std::array<NamePlace, 8> places;

}  // namespace

UnfinishedFile::UnfinishedFile(const std::string& path) {
    if (path.size() >= PATH_MAX) return;
    for (std::size_t i = 0; i < places.size(); ++i) {
        PlaceIs expected = PlaceIs::free;
        if (!places[i].is.compare_exchange_strong(expected, PlaceIs::being_filled)) continue;
        std::memcpy(places[i].path.data(), path.c_str(), path.size() + 1);
        places[i].is = PlaceIs::filled;
        place_ = static_cast<int>(i);
        return;
    }
}

UnfinishedFile::~UnfinishedFile() {
    if (place_ >= 0) places[static_cast<std::size_t>(place_)].is = PlaceIs::free;
}

void remove_unfinished_files() noexcept {
    const int error = errno;
    for (NamePlace& place : places)
        if (place.is == PlaceIs::filled) ::unlink(place.path.data());
    errno = error;
}

}  // namespace dartwright
