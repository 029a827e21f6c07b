#pragma once

// Private to the room: `notch_on_cutting_line` for many places of one line.

#include <memory>

#include "dartwright/cutting/notch_on_cutting_line.hpp"

namespace dartwright {

/// Gives the answers of `notch_on_cutting_line`. The line must outlive it.
class NotchesOnCuttingLine {
  public:
    explicit NotchesOnCuttingLine(const CuttingLine& line);
    NotchesOnCuttingLine(const NotchesOnCuttingLine&) = delete;
    NotchesOnCuttingLine& operator=(const NotchesOnCuttingLine&) = delete;
    ~NotchesOnCuttingLine();

    /// O(sides) for the first few; then O(log sides) and the sides that lie as near as the line does.
    CutNotch at(const RunPlace& place);

  private:
    struct Sides;
    const CuttingLine& line_;
    std::size_t asked_ = 0;
    std::unique_ptr<const Sides> sides_;
};

}  // namespace dartwright
