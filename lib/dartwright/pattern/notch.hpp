#pragma once

#include <string>

namespace dartwright {

enum class NotchKind { single, double_, triple };

struct Notch {
    std::string edge;
    std::string from;  ///< neighbouring edge at the end measured from
    double at = 0;     ///< sewn distance, mm
    NotchKind kind = NotchKind::single;
    bool begins = false;  ///< a seam walks this closed run from here; only on a run that is the whole outline
    friend bool operator==(const Notch&, const Notch&) = default;
};

}  // namespace dartwright
