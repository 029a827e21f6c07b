#include <algorithm>

#include "dartwright/files/json_lines.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/files/rule_writer.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {
namespace {

class Writer {
  public:
    explicit Writer(const Pattern& pattern) : pattern_(pattern) {}

    std::string text() const {
        std::vector<std::string> members{
            with_key("dartwright", "1"),
            with_key("name", json_text(pattern_.name)),
            with_key("unit", json_text(word_of(pattern_.unit))),
            with_key("pieces", list_by_line(each(pattern_.pieces, &Writer::piece), 2)),
        };
        if (!pattern_.seams.empty())
            members.push_back(with_key("seams", list_by_line(each(pattern_.seams, &Writer::seam), 2)));
        if (!pattern_.tolerances.empty()) members.push_back(with_key("tolerances", tolerances()));
        if (!pattern_.made.empty())
            members.push_back(with_key("made", list_by_line(each(pattern_.made, &Writer::made), 2)));
        if (pattern_.cutting)
            members.push_back(with_key("cutting", object_by_line(rule_members(*pattern_.cutting, 4), 2)));
        return object_by_line(members, 0) + "\n";
    }

  private:
    template <typename Value>
    std::vector<std::string> each(const std::vector<Value>& values,
                                  std::string (Writer::*write)(const Value&) const) const {
        std::vector<std::string> out;
        for (const Value& value : values) out.push_back((this->*write)(value));
        return out;
    }

    std::string length(double mm) const { return written_length(mm, pattern_.unit, pattern_.as_written); }
    std::string point(Point p) const { return in_brackets(length(p.x) + ", " + length(p.y)); }
    template <typename Points>
    std::string points(const Points& list) const {
        std::vector<std::string> out;
        for (const Point p : list) out.push_back(point(p));
        return in_brackets(joined(out, ", "));
    }

    std::string item(const OutlineItem& item) const {
        MemberLine line;
        if (const EdgeItem* edge = item.as_edge()) {
            line.put_text("edge", edge->edge).put("to", point(item.to));
            if (const auto* cubic = std::get_if<CubicShape>(&edge->shape))
                line.put("curve", points(cubic->controls));
            if (const auto* spline = std::get_if<SplineShape>(&edge->shape))
                line.put("through", points(spline->through));
            if (edge->fullness != 0) line.put("fullness", length(edge->fullness));
            return line.text();
        }
        const DartItem& dart = *item.as_dart();
        line.put_text("dart", dart.name).put("point", point(dart.point));
        if (dart.pivot) line.put("pivot", point(*dart.pivot));
        if (dart.back_off) line.put("back_off", length(*dart.back_off));
        if (dart.legs)
            line.put("legs", in_brackets(points((*dart.legs)[0]) + ", " + points((*dart.legs)[1])));
        line.put("to", point(item.to)).put_text_if_any("press", dart.press);
        if (dart.stitched) line.put("stitched", length(*dart.stitched));
        return line.text();
    }

    std::string ends(const std::map<std::string, CornerIs>& corners) const {
        MemberLine line;
        for (const auto& [edge, corner] : corners)
            line.put_named(edge, corner == CornerIs::free ? "\"free\"" : "\"smooth\"");
        return line.text();
    }

    std::string cut(const Cut& cut) const {
        MemberLine line;
        line.put("quantity", std::to_string(cut.quantity)).put_text_if_any("fold", cut.fold);
        line.put_text_if_any("second_fold", cut.second_fold);
        if (cut.same) line.put("same", "true");
        if (!cut.ends.empty()) line.put("ends", ends(cut.ends));
        return line.text();
    }

    std::string double_dart(const DoubleDart& dart) const {
        MemberLine line;
        line.put_text("dart", dart.name).put("from", point(dart.from)).put("to", point(dart.to));
        line.put("widest", points(dart.widest)).put_text_if_any("press", dart.press);
        return line.text();
    }

    std::string notch(const Notch& notch) const {
        const char* kind = notch.kind == NotchKind::single    ? "single"
                           : notch.kind == NotchKind::double_ ? "double"
                                                              : "triple";
        MemberLine line;
        line.put_text("edge", notch.edge).put_text("from", notch.from).put("at", length(notch.at));
        line.put_text("kind", kind);
        if (notch.begins) line.put("begins", "true");
        return line.text();
    }

    std::string stretch(const AllowanceStretch& stretch) const {
        MemberLine line;
        line.put_text("from", stretch.from).put("at", length(stretch.at)).put("to", length(stretch.to));
        return line.put("width", length(stretch.width)).text();
    }

    std::string allowance(const std::vector<std::pair<std::string, Allowance>>& by_edge) const {
        MemberLine line;
        for (const auto& [edge, allowance] : by_edge) {
            if (const double* width = std::get_if<double>(&allowance)) {
                line.put_named(edge, length(*width));
                continue;
            }
            const auto& stretches = std::get<std::vector<AllowanceStretch>>(allowance);
            line.put_named(edge, in_brackets(joined(each(stretches, &Writer::stretch), ", ")));
        }
        return line.text();
    }

    std::string mark(const Mark& mark) const {
        MemberLine line;
        if (const auto* drawn = std::get_if<LineMark>(&mark.what))
            line.put("line", points(drawn->points));
        else
            line.put("drill", point(std::get<DrillMark>(mark.what).at));
        return line.put_text("name", mark.name).text();
    }

    std::string piece(const Piece& piece) const {
        constexpr std::size_t indent = 6;  // of a piece's members
        std::vector<std::string> members{with_key("name", json_text(piece.name))};
        if (piece.worn) {
            members.push_back(with_key("worn", *piece.worn == Worn::front ? "\"front\"" : "\"back\""));
            if (piece.side_up == SideUp::wrong) members.push_back(with_key("side_up", "\"wrong\""));
        }
        if (piece.cut) members.push_back(with_key("cut", cut(*piece.cut)));
        if (piece.grain) {
            MemberLine grain;
            grain.put("from", point(piece.grain->from)).put("to", point(piece.grain->to));
            members.push_back(with_key("grain", grain.put_text_if_any("along", piece.grain->along).text()));
        }
        const std::vector<std::string> outline{
            with_key("start", point(piece.outline.start)),
            with_key("items", list_by_line(each(piece.outline.items, &Writer::item), indent + 2))};
        members.push_back(with_key("outline", object_by_line(outline, indent)));
        const auto put_list = [&](const char* key, const std::vector<std::string>& elements) {
            if (!elements.empty()) members.push_back(with_key(key, list_by_line(elements, indent)));
        };
        put_list("double_darts", each(piece.double_darts, &Writer::double_dart));
        put_list("notches", each(piece.notches, &Writer::notch));
        if (!piece.allowance.empty()) members.push_back(with_key("allowance", allowance(piece.allowance)));
        put_list("marks", each(piece.marks, &Writer::mark));
        return object_by_line(members, indent - 2);
    }

    std::string part(const SeamPart& part) const {
        MemberLine line;
        line.put_text("piece", part.piece).put_text("edge", part.edge).put_text("from", part.from);
        if (part.mirrored) line.put("mirrored", "true");
        return line.text();
    }

    /// A name that says which side is eased: a piece of that side that is not on the other too.
    const SeamPart* part_of_one_side(const Seam& seam, int side) const {
        const SeamSide& own = seam.joins[side == 1 ? 0 : 1];
        const SeamSide& other = seam.joins[side == 1 ? 1 : 0];
        const auto found = std::find_if(own.begin(), own.end(), [&](const SeamPart& part) {
            return std::none_of(other.begin(), other.end(),
                                [&](const SeamPart& o) { return o.piece == part.piece; });
        });
        return found == own.end() ? nullptr : &*found;
    }

    std::string ease(const Seam& seam) const {
        const SeamPart* part = seam.ease->by_side ? nullptr : part_of_one_side(seam, seam.ease->side);
        MemberLine line;
        if (part)
            line.put_text("piece", part->piece);
        else
            line.put("side", std::to_string(seam.ease->side));
        return line.put("amount", length(seam.ease->amount)).text();
    }

    std::string seam(const Seam& seam) const {
        constexpr std::size_t indent = 4;  // of a seam
        std::vector<std::string> sides;
        for (const SeamSide& side : seam.joins) {
            const auto parts = each(side, &Writer::part);
            sides.push_back(parts.size() == 1 ? parts[0] : list_by_line(parts, indent + 2));
        }
        MemberLine line;
        line.put_text("name", seam.name).put("joins", list_by_line(sides, indent));
        if (seam.ease) line.put("ease", ease(seam));
        if (seam.laid == LaidAs::on_each_other) line.put_text("laid", "on each other");
        if (seam.allowances_differ) line.put("allowances_differ", "true");
        if (!seam.ends.empty()) line.put("ends", ends(seam.ends));
        return line.text();
    }

    std::string tolerances() const {
        MemberLine line;
        for (const ToleranceName& tolerance : tolerance_names()) {
            const auto set = pattern_.tolerances.find(tolerance.name);
            if (set == pattern_.tolerances.end()) continue;
            line.put(tolerance.name, tolerance.is_angle ? decimal(set->second) : length(set->second));
        }
        return line.text();
    }

    std::string made(const Made& made) const {
        MemberLine line;
        line.put_text("operation", made.operation);
        for (const auto& [key, value] : made.request) line.put_named(key, json_text(value));
        return line.text();
    }

    const Pattern& pattern_;
};

}  // namespace

std::string write_pattern(const Pattern& pattern) {
    return Writer(pattern).text();
}

}  // namespace dartwright
