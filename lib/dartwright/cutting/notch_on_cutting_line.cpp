#include "dartwright/cutting/notch_on_cutting_line.hpp"

#include "dartwright/cutting/notch_ray.hpp"

namespace dartwright {

CutNotch notch_on_cutting_line(const CuttingLine& line, const RunPlace& place) {
    cutting::NotchRay ray(line, place);
    for (std::size_t i = 0; i < line.points.size(); ++i) ray.meet(i);
    return ray.notch();
}

}  // namespace dartwright
