#include "dartwright/pages/paper.hpp"

namespace dartwright {

const std::vector<Paper>& papers() {
    constexpr double inch = 25.4;
    static const std::vector<Paper> known{{"A4", 210, 297},
                                          {"letter", 8.5 * inch, 11 * inch},
                                          {"A3", 297, 420},
                                          {"tabloid", 11 * inch, 17 * inch},
                                          {"A0", 841, 1189}};
    return known;
}

}  // namespace dartwright
