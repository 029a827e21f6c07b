#include "dartwright/pages/overlay_picture.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "dartwright/geometry/elementary.hpp"
#include "dartwright/pages/html_parts.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {
namespace {

/// The longer side of a picture is drawn some 400 pixels long, so that a ten-thousandth of it cannot be seen.
std::string number(double value) {
    return shortest_decimals(value, 1);
}

Box box_of(const OverlaidPiece& piece) {
    constexpr double infinity = std::numeric_limits<double>::infinity();
    Box box{{infinity, infinity}, {-infinity, -infinity}};
    for (const std::vector<Point>* points : {&piece.found, &piece.expected})
        for (const Point p : *points) {
            box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
            box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
        }
    return box;
}

/// 0 within the piece's box.
double distance_from(const OverlaidPiece& piece, Point at) {
    const Box box = box_of(piece);
    const double aside = std::max({box.low.x - at.x, at.x - box.high.x, 0.0});
    const double above = std::max({box.low.y - at.y, at.y - box.high.y, 0.0});
    return hypotenuse(aside, above);
}

std::size_t nearest_piece(const std::vector<OverlaidPiece>& pieces, Point at) {
    std::size_t nearest = 0;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const double away = distance_from(pieces[i], at);
        if (away < least) {
            least = away;
            nearest = i;
        }
    }
    return nearest;
}

std::string polygon_of(const char* kind, const std::vector<Point>& points) {
    if (points.empty()) return "";
    std::string places;
    for (const Point p : points) {
        if (!places.empty()) places += ' ';
        places += number(p.x) + "," + number(-p.y);
    }
    return std::string("<polygon class=\"") + kind + "\" points=\"" + places + "\"/>\n";
}

/// Rings of one size on paper, moved apart along a row where several mark one place.
std::string tags_of(const std::vector<PictureTag>& tags, double size) {
    const double radius = 0.035 * size;
    std::string out;
    std::vector<Point> taken;
    for (const PictureTag& tag : tags) {
        Point at = tag.at;
        const auto is_near = [&](Point other) { return distance(at, other) < 1.9 * radius; };
        while (std::any_of(taken.begin(), taken.end(), is_near)) at = at + Vector{2 * radius, 0};
        taken.push_back(at);
        const std::string x = number(at.x);
        out += "<circle class=\"tag\" cx=\"" + x + "\" cy=\"" + number(-at.y) + "\" r=\"" + number(radius) +
               "\"/><text x=\"" + x + "\" y=\"" + number(-at.y + 0.37 * radius) + "\" font-size=\"" +
               number(1.05 * radius) + "\">" + std::to_string(tag.number) + "</text>\n";
    }
    return out;
}

std::string title_of(const OverlaidPiece& piece, const std::vector<PictureTag>& tags) {
    std::string words = "The piece " + piece.name + " as drafted, with what was asked laid over it";
    for (std::size_t i = 0; i < tags.size(); ++i)
        words += (i == 0 ? "; marked are " : ", ") + std::to_string(tags[i].number);
    return words;
}

}  // namespace

std::vector<PictureTag> tags_on(const std::vector<OverlaidPiece>& pieces, std::size_t index,
                                const std::vector<PictureTag>& tags) {
    const auto is_named = [&](const PictureTag& tag) {
        return std::any_of(pieces.begin(), pieces.end(),
                           [&](const OverlaidPiece& piece) { return piece.name == tag.piece; });
    };
    std::vector<PictureTag> found;
    for (const PictureTag& tag : tags) {
        const bool is_here =
            is_named(tag) ? pieces[index].name == tag.piece : nearest_piece(pieces, tag.at) == index;
        if (is_here) found.push_back(tag);
    }
    return found;
}

std::string overlay_picture(const OverlaidPiece& piece, const std::vector<PictureTag>& tags) {
    if (piece.found.empty() && piece.expected.empty()) return "";
    const Box box = box_of(piece);
    const double size = std::max({box.high.x - box.low.x, box.high.y - box.low.y, 1.0});
    const double margin = 0.06 * size;
    const std::string view = number(box.low.x - margin) + " " + number(-box.high.y - margin) + " " +
                             number(box.high.x - box.low.x + 2 * margin) + " " +
                             number(box.high.y - box.low.y + 2 * margin);
    const std::string picture =
        "<svg class=\"overlay\" viewBox=\"" + view + "\" role=\"img\" preserveAspectRatio=\"xMinYMid\">" +
        html::element("title", markup_text(title_of(piece, tags))) + polygon_of("found", piece.found) +
        polygon_of("asked", piece.expected) + tags_of(tags, size) + "</svg>\n";
    std::string words = html::name(piece.name);
    if (piece.draft_name != piece.name && !piece.draft_name.empty())
        words += ", in the draft " + html::name(piece.draft_name);
    return html::element("figure", "\n" + picture + html::element("figcaption", words));
}

std::string overlay_key() {
    const auto sample = [](const char* kind) {
        return std::string("<svg viewBox=\"0 0 48 12\" aria-hidden=\"true\"><line class=\"") + kind +
               "\" x1=\"2\" x2=\"46\" y1=\"6\" y2=\"6\"/></svg>";
    };
    return sample("found") + " Heavy line: the draft. " + sample("asked") +
           " Thin broken line: what was asked.";
}

}  // namespace dartwright
