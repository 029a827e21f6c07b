#pragma once

// Private to the library.

#include "dartwright/pattern/pattern_problems.hpp"

namespace dartwright {

/// The pattern put right; UnsoundPattern if it has problems then, with a limit of one's own instead of 10 m,
/// whole metres. For drafts in a mistaken unit, which are to be judged.
Pattern sound_within(Pattern pattern, double largest_mm);

/// Stands at the top of a public function that takes a pattern: UnsoundPattern if it has problems. While one
/// stands, those of the functions that are called from there on the same thread ask nothing, so that a
/// pattern is looked at once however many functions share the work.
class SoundEntry {
  public:
    template <class... Values>
    explicit SoundEntry(const Values&... values) {
        if (depth() == 0) (require_sound(values), ...);
        ++depth();
    }
    ~SoundEntry() { --depth(); }
    SoundEntry(const SoundEntry&) = delete;
    SoundEntry& operator=(const SoundEntry&) = delete;

  private:
    static int& depth() {
        thread_local int entries = 0;
        return entries;
    }
};

}  // namespace dartwright
