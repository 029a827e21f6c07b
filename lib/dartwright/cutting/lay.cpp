#include "dartwright/cutting/lay.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <stdexcept>

#include "dartwright/cutting/lay_columns.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/geometry/motion.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pattern/pattern_rules.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/words/sentence.hpp"

namespace dartwright {
namespace {

using cutting::PieceColumns;
using cutting::Strip;

// A piece one way round, its box at the origin.
struct Way {
    LaidPiece piece;
    PieceColumns columns;
};
// One placement to be made, in any of its ways.
struct Placement {
    std::vector<Way> ways;
    double area_mm2 = 0;
};
struct Placed {
    std::size_t way = 0;
    std::size_t column = 0;
    double y = 0;
    double top = std::numeric_limits<double>::infinity();
};

enum class Face { up, down };

std::vector<Point> turned(const std::vector<Point>& polygon, Turn turn, Face face) {
    std::vector<Point> out;
    for (const Point p : polygon) {
        const Vector v = apply(turn, p - Point{});
        out.push_back({face == Face::down ? -v.x : v.x, v.y});
    }
    if (face == Face::down) std::reverse(out.begin(), out.end());
    return out;
}

Box box_round(const std::vector<Point>& polygon) {
    Box box{polygon.front(), polygon.front()};
    for (const Point p : polygon) {
        box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
        box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
    }
    return box;
}

void shift(std::vector<Point>& polygon, Vector by) {
    for (Point& p : polygon) p = p + by;
}

Way way_of(const LayPiece& piece, Turn turn, Face face) {
    Way way;
    way.piece.name = piece.name;
    way.piece.polygon = turned(piece.polygon, turn, face);
    const Box box = box_round(way.piece.polygon);
    shift(way.piece.polygon, Point{} - box.low);
    way.piece.is_mirrored = face == Face::down;
    way.piece.grain = apply(turn, piece.grain);
    way.columns = cutting::columns_of(way.piece.polygon, lay_step_mm);
    return way;
}

Turn half_turned(Turn turn) {
    return {-turn.cosine, -turn.sine};
}

// The fold lies along x = 0 with the piece to its right: its direction is down, or up with the face down.
std::vector<Way> ways_on_fold(const LayPiece& piece, bool is_one_way) {
    const Turn down = turn_between(piece.fold->along, {0, -1});
    std::vector<Way> ways{way_of(piece, down, Face::up), way_of(piece, half_turned(down), Face::down)};
    for (Way& way : ways) way.piece.is_on_fold = true;
    if (is_one_way) std::erase_if(ways, [](const Way& way) { return way.piece.grain.y < 0; });
    return ways;
}

struct WaysWanted {
    bool is_one_way = false;
    bool may_face_up = true;
    bool may_face_down = true;
};
std::vector<Way> ways_along_grain(const LayPiece& piece, const WaysWanted& wanted) {
    const Turn up = turn_between(piece.grain, {0, 1});
    std::vector<Way> ways;
    for (const Face face : {Face::up, Face::down}) {
        if (!(face == Face::up ? wanted.may_face_up : wanted.may_face_down)) continue;
        ways.push_back(way_of(piece, up, face));
        if (!wanted.is_one_way) ways.push_back(way_of(piece, half_turned(up), face));
    }
    return ways;
}

class Placements {
  public:
    Placements(const LayRequest& request, std::vector<std::string>& notes)
        : request_(request), notes_(notes) {}

    void add(const LayPiece& piece) {
        if (piece.fold) {
            if (!request_.is_folded) {
                throw Impossible(quoted(piece.name) + " is on a fold and the cloth is not folded",
                                 "open the piece first");
            }
            repeat(piece.quantity, "on the fold", ways_on_fold(piece, request_.is_one_way));
        } else if (request_.is_folded) {
            add_to_folded(piece);
        } else {
            const int down = piece.are_alike ? 0 : piece.quantity / 2;
            repeat(piece.quantity - down, "from the single ply", ways(piece, true, false));
            repeat(down, "from the single ply", ways(piece, false, true));
        }
    }
    std::vector<Placement> all;

  private:
    std::vector<Way> ways(const LayPiece& piece, bool up, bool down) const {
        return ways_along_grain(piece, {request_.is_one_way, up, down});
    }

    void add_to_folded(const LayPiece& piece) {
        const int pairs = piece.are_alike ? 0 : piece.quantity / 2;
        const int single = piece.quantity - 2 * pairs;
        repeat(pairs, "through both plies", ways(piece, true, true));
        repeat(single, "through the upper ply only", ways(piece, true, false));
        if (single == 0) return;
        notes_.push_back(quoted(piece.name) +
                         " is cut through the upper ply only, and the cloth under it is left; less may do "
                         "with the cloth opened");
    }

    void repeat(int times, const char* how, std::vector<Way> ways) {
        for (Way& way : ways) way.piece.how = how;
        const double area = ways.empty() ? 0 : signed_area(ways.front().piece.polygon);
        for (int i = 0; i < times; ++i) all.push_back({ways, area});
    }

    const LayRequest& request_;
    std::vector<std::string>& notes_;
};

Placed best_place(const Strip& strip, const Placement& placement) {
    Placed best;
    for (std::size_t w = 0; w < placement.ways.size(); ++w) {
        const Way& way = placement.ways[w];
        const std::size_t places = way.piece.is_on_fold
                                       ? std::min<std::size_t>(strip.places_across(way.columns), 1)
                                       : strip.places_across(way.columns);
        for (std::size_t column = 0; column < places; ++column) {
            const auto y = strip.lowest(way.columns, column, best.top - way.columns.height);
            if (y && *y + way.columns.height < best.top) best = {w, column, *y, *y + way.columns.height};
        }
    }
    return best;
}

using Order = std::vector<std::size_t>;

std::vector<Order> orders_of(const std::vector<Placement>& placements) {
    constexpr std::size_t most_for_all = 4;
    Order order(placements.size());
    std::iota(order.begin(), order.end(), 0);
    std::vector<Order> orders;
    if (order.size() <= most_for_all) {
        do orders.push_back(order);
        while (std::next_permutation(order.begin(), order.end()));
        return orders;
    }
    const auto add_sorted = [&](auto size_of) {
        Order sorted = order;
        std::stable_sort(sorted.begin(), sorted.end(), [&](std::size_t a, std::size_t b) {
            return size_of(placements[a]) > size_of(placements[b]);
        });
        orders.push_back(sorted);
        std::stable_partition(sorted.begin(), sorted.end(),
                              [&](std::size_t i) { return placements[i].ways.front().piece.is_on_fold; });
        orders.push_back(std::move(sorted));
    };
    add_sorted([](const Placement& p) { return p.area_mm2; });
    add_sorted([](const Placement& p) { return p.ways.front().columns.height; });
    add_sorted([](const Placement& p) { return p.ways.front().columns.width; });
    return orders;
}

struct Laid {
    std::vector<Placed> places;  ///< by placement
    double length_mm = std::numeric_limits<double>::infinity();
};

Laid laid_in(const Order& order, const std::vector<Placement>& placements, Strip strip) {
    Laid laid{std::vector<Placed>(placements.size()), 0};
    for (const std::size_t i : order) {
        const Placed place = best_place(strip, placements[i]);
        strip.take(placements[i].ways[place.way].columns, place.column, place.y);
        laid.places[i] = place;
        laid.length_mm = std::max(laid.length_mm, place.top);
    }
    return laid;
}

bool do_overlap(const std::vector<Point>& a, const std::vector<Point>& b) {
    const Box first = box_round(a);
    const Box second = box_round(b);
    if (first.high.x < second.low.x || second.high.x < first.low.x || first.high.y < second.low.y ||
        second.high.y < first.low.y)
        return false;
    for (std::size_t i = 0; i < a.size(); ++i) {
        const Segment side{a[i], a[(i + 1) % a.size()]};
        for (std::size_t k = 0; k < b.size(); ++k) {
            if (meeting_of(side, {b[k], b[(k + 1) % b.size()]}) == Meeting::crossing) return true;
        }
    }
    return where_in_polygon(a, b.front()) == Where::inside || where_in_polygon(b, a.front()) == Where::inside;
}

void require_apart(const std::vector<LaidPiece>& pieces) {
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        for (std::size_t k = 0; k < i; ++k) {
            if (do_overlap(pieces[i].polygon, pieces[k].polygon))
                throw std::logic_error("a lay put two pieces over each other");
        }
    }
}

void refuse_bad_request(const LayRequest& request) {
    if (!(request.width_mm > 0 && request.width_mm <= largest_length_mm)) {
        throw BadWords("the cloth is " + asked_told(request.width_mm) +
                       " wide; expected more than 0, 10 m at most");
    }
    if (!(request.gap_mm >= 0 && request.gap_mm <= largest_length_mm)) {
        throw BadWords("the gap between pieces is " + asked_told(request.gap_mm) +
                       "; expected 0 or more, 10 m at most");
    }
}

void refuse_too_wide(const std::vector<Placement>& placements, double width_mm, bool is_folded) {
    for (const Placement& placement : placements) {
        double narrowest = std::numeric_limits<double>::infinity();
        for (const Way& way : placement.ways) narrowest = std::min(narrowest, way.columns.width);
        if (narrowest <= width_mm) continue;
        const char* cloth = is_folded ? " of folded cloth" : " of cloth";
        throw Impossible(
            quoted(placement.ways.front().piece.name) + " is " + measure_told(narrowest) +
                " wide across the grain and there are " + measure_told(width_mm) + cloth,
            "lay it on cloth at least " + least_told(is_folded ? 2 * narrowest : narrowest, 0) + " wide");
    }
}

void add_bound(Lay& lay, const std::vector<Placement>& placements) {
    for (const Placement& placement : placements) {
        lay.area_mm2 += placement.area_mm2;
        lay.bound_mm = std::max(lay.bound_mm, placement.ways.front().columns.height);
    }
    lay.bound_mm = std::max(lay.bound_mm, lay.area_mm2 / lay.width_mm);
}

}  // namespace

Lay lay(const std::vector<LayPiece>& pieces, const LayRequest& request) {
    refuse_bad_request(request);
    Lay result;
    result.width_mm = request.is_folded ? request.width_mm / 2 : request.width_mm;
    Placements placements(request, result.notes);
    for (const LayPiece& piece : pieces) placements.add(piece);
    refuse_too_wide(placements.all, result.width_mm, request.is_folded);
    Laid best;
    for (const Order& order : orders_of(placements.all)) {
        Laid laid = laid_in(order, placements.all, Strip(result.width_mm, lay_step_mm, request.gap_mm));
        if (laid.length_mm < best.length_mm) best = std::move(laid);
    }
    for (std::size_t i = 0; i < placements.all.size(); ++i) {
        const Placed& place = best.places[i];
        LaidPiece piece = placements.all[i].ways[place.way].piece;
        shift(piece.polygon, {static_cast<double>(place.column) * lay_step_mm, place.y});
        result.pieces.push_back(std::move(piece));
    }
    result.length_mm = placements.all.empty() ? 0 : best.length_mm;
    add_bound(result, placements.all);
    require_apart(result.pieces);
    return result;
}

}  // namespace dartwright
