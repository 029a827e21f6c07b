#include "dartwright/darts/redrawing/around_dart.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/errors.hpp"

namespace dartwright {

AroundDart around_dart(const Outline& outline, std::size_t dart) {
    Chain chain = chain_of(outline);
    std::rotate(chain.begin(), chain.begin() + static_cast<std::ptrdiff_t>(dart), chain.end());
    AroundDart out{{chain.begin() + 1, chain.end()}, *chain.front().item.as_dart(), chain.front().rank};
    const EdgeItem* before = out.chain.empty() ? nullptr : out.chain.back().item.as_edge();
    const EdgeItem* after = out.chain.empty() ? nullptr : out.chain.front().item.as_edge();
    if (!before || !after) {
        throw Impossible("another dart stands at the mouth of " + quoted(out.dart.name),
                         "make one dart of the two, or draw an edge between them");
    }
    return out;
}

bool is_in_one_run(const AroundDart& around) {
    return around.chain.front().item.as_edge()->edge == around.chain.back().item.as_edge()->edge;
}

Vector direction_before(const AroundDart& around) {
    const ChainItem& last = around.chain.back();
    return tangent_at_end(curves_of(*last.item.as_edge(), last.start, last.item.to).back());
}

Vector direction_after(const AroundDart& around) {
    const ChainItem& first = around.chain.front();
    return tangent_at_start(curves_of(*first.item.as_edge(), first.start, first.item.to).front());
}

double mouth_corner_deg(const AroundDart& around, const DartFigures& figures) {
    const Vector closed = apply(closing_about_point(figures), direction_after(around));
    return degrees(std::abs(angle_from(direction_before(around), closed)));
}

}  // namespace dartwright
