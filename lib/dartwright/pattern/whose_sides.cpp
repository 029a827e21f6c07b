#include "dartwright/pattern/whose_sides.hpp"

#include <algorithm>

namespace dartwright {
namespace {

const std::string& name_of(const OutlineItem& item) {
    return item.as_edge() ? item.as_edge()->edge : item.as_dart()->name;
}

bool has_sides(const Piece& piece) {
    const auto is_sided = [](const std::string& name) { return !sided_name(name).side.empty(); };
    return std::any_of(piece.outline.items.begin(), piece.outline.items.end(),
                       [&](const OutlineItem& item) { return is_sided(name_of(item)); }) ||
           std::any_of(piece.double_darts.begin(), piece.double_darts.end(),
                       [&](const DoubleDart& dart) { return is_sided(dart.name); });
}

bool was_opened(const Pattern& pattern, const std::string& piece) {
    return std::any_of(pattern.made.begin(), pattern.made.end(), [&](const Made& made) {
        return made.operation == "open" &&
               std::find(made.request.begin(), made.request.end(),
                         std::pair<std::string, std::string>{"piece", piece}) != made.request.end();
    });
}

}  // namespace

SidedName sided_name(const std::string& name) {
    for (const std::string side : {"left", "right"})
        if (name.size() > side.size() + 1 && name.compare(0, side.size() + 1, side + " ") == 0)
            return {side, name.substr(side.size() + 1)};
    return {"", name};
}

std::optional<WhoseSides> whose_sides(const Pattern& pattern, const Piece& piece) {
    if (!has_sides(piece)) return std::nullopt;
    if (piece.worn) return WhoseSides::wearers;
    return was_opened(pattern, piece.name) ? WhoseSides::as_drawn : WhoseSides::not_said;
}

std::string words_of(WhoseSides sides) {
    switch (sides) {
        case WhoseSides::wearers:
            return "left and right are the wearer's";
        case WhoseSides::as_drawn:
            return "left and right as drawn";
        case WhoseSides::not_said:
            break;
    }
    return "it is not said whose left and right";
}

}  // namespace dartwright
