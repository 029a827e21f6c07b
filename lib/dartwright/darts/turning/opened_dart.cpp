#include "dartwright/darts/turning/opened_dart.hpp"

#include <algorithm>

#include "dartwright/darts/phrases.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright {
namespace {

bool is_name_taken(const Piece& piece, const std::string& name, std::size_t except) {
    const auto found = find_dart(piece, name);
    const bool is_double = std::any_of(piece.double_darts.begin(), piece.double_darts.end(),
                                       [&](const DoubleDart& each) { return each.name == name; });
    return is_double || (found && *found != except);
}

}  // namespace

std::string name_chosen(const Piece& piece, std::size_t dart, const NameQuestion& question) {
    const std::size_t none = piece.outline.items.size();
    const std::size_t leaves = question.is_all ? dart : none;
    require_name(question.wanted);
    if (!question.wanted.empty()) {
        if (!is_name_taken(piece, question.wanted, leaves)) return question.wanted;
        throw BadWords("there is a dart " + quoted(question.wanted) + " in " + quoted(piece.name) +
                       " already; expected another name");
    }
    if (question.is_all) return piece.outline.items[dart].as_dart()->name;
    std::string name = derived_name("", question.edge, " dart");
    for (int number = 2; is_name_taken(piece, name, none); ++number)
        name = derived_name("", question.edge, " dart " + std::to_string(number));
    return name;
}

double back_off_chosen(std::optional<double> wanted_mm, const DartFigures& old, double leg_mm) {
    const double back_off = wanted_mm.value_or(old.back_off);
    if (wanted_mm && !(back_off >= 0)) {
        throw BadWords("the back-off is " + asked_told(back_off) + "; expected 0 or more");
    }
    if (back_off > leg_mm / 2) {
        throw Impossible("the point would back off " + measure_told(back_off) + " on a dart whose leg is " +
                             measure_told(leg_mm) + " from the pivot",
                         "set a back-off of at most " + most_told(leg_mm / 2));
    }
    return back_off;
}

OutlineItem opened_dart(const DartItem& old, const NewDart& fresh, PairOfPoints mouth) {
    const Point pivot = old.turning_point();
    DartItem dart;
    dart.name = fresh.name;
    dart.press = fresh.press;
    dart.pivot = old.pivot;
    dart.back_off = old.back_off;
    if (dart.back_off && *dart.back_off > fresh.back_off) dart.back_off = fresh.back_off;
    dart.point = pivot;
    if (fresh.back_off != 0) {
        const double angle = angle_from(mouth.first - pivot, mouth.second - pivot);
        const Vector along = apply(turn_by(angle / 2), unit(mouth.first - pivot));
        dart.pivot = pivot;
        dart.point = pivot + fresh.back_off * along;
    }
    if (old.stitched && *old.stitched < distance(dart.point, mouth.first)) dart.stitched = old.stitched;
    return {dart, mouth.second};
}

}  // namespace dartwright
