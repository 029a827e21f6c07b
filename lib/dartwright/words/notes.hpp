#pragma once

// Private to the library.

#include <string>
#include <vector>

#include "dartwright/words/sentence.hpp"

namespace dartwright {

/// Where an operation leaves what it has to say: a list of texts in one reader's unit. It must outlive this.
class Notes {
  public:
    Notes(std::vector<std::string>& told, Unit unit) : told_(told), unit_(unit) {}
    void push_back(const Sentence& note) const { told_.push_back(note.in(unit_)); }
    void push_back(const std::vector<Sentence>& notes) const {
        for (const Sentence& note : notes) push_back(note);
    }

  private:
    std::vector<std::string>& told_;
    Unit unit_;
};

}  // namespace dartwright
