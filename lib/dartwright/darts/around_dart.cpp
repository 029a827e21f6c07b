#include "dartwright/darts/around_dart.hpp"

#include <algorithm>

#include "dartwright/darts/impossible.hpp"
#include "dartwright/darts/phrases.hpp"

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

}  // namespace dartwright
