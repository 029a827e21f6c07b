#include "dartwright/drawing/svg_writer.hpp"

#include <cstdio>
#include <locale>
#include <pugixml.hpp>
#include <set>
#include <sstream>

#include "dartwright/drawing/text_box.hpp"
#include "dartwright/words/clean_text.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {

namespace {

/// A tenth of a micrometre: finer than any plotter, and short to write.
constexpr int decimals = 4;

std::string number(double value) {
    return shortest_decimals(value, decimals);
}

std::string colour_text(Colour colour) {
    char text[8];
    std::snprintf(text, sizeof text, "#%02x%02x%02x", colour.red, colour.green, colour.blue);
    return text;
}

std::string id_part(const std::string& name) {
    std::string part;
    for (const char c : name) {
        const bool is_plain =
            (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
        if (is_plain)
            part += c;
        else if (part.empty() || part.back() != '-')
            part += '-';
    }
    return part.empty() ? "-" : part;
}

class SvgWriter {
  public:
    explicit SvgWriter(const Drawing& drawing) : drawing_(drawing) {}

    std::string write() {
        pugi::xml_node declaration = document_.append_child(pugi::node_declaration);
        declaration.append_attribute("version") = "1.0";
        declaration.append_attribute("encoding") = "UTF-8";
        pugi::xml_node svg = document_.append_child("svg");
        svg.append_attribute("xmlns") = "http://www.w3.org/2000/svg";
        const std::string width = number(drawing_.width_mm);
        const std::string height = number(drawing_.height_mm);
        set(svg, "width", width + "mm");
        set(svg, "height", height + "mm");
        set(svg, "viewBox", "0 0 " + width + " " + height);
        set(svg, "font-family", text_faces_svg);
        add_title(svg, drawing_.title);
        pugi::xml_node ground = svg.append_child("rect");
        set(ground, "width", width);
        set(ground, "height", height);
        set(ground, "fill", colour_text(drawing_.background));
        for (const DrawnGroup& group : drawing_.groups) add(svg, group, "");
        std::ostringstream stream;
        stream.imbue(std::locale::classic());
        document_.save(stream, " ", pugi::format_indent, pugi::encoding_utf8);
        return stream.str();
    }

  private:
    static void set(pugi::xml_node node, const char* name, const std::string& value) {
        node.append_attribute(name).set_value(value.c_str());
    }

    static void add_title(pugi::xml_node node, const std::string& title) {
        const std::string words = clean_text(title);
        if (!words.empty()) node.append_child("title").text().set(words.c_str());
    }

    std::string place(Point p) const { return number(p.x) + " " + number(drawing_.height_mm - p.y); }

    std::string unused_id(const std::string& wanted) {
        std::string id = wanted;
        for (int count = 2; !used_ids_.insert(id).second; ++count) id = wanted + "-" + std::to_string(count);
        return id;
    }

    void add(pugi::xml_node parent, const DrawnGroup& group, const std::string& outer_id) {
        const std::string part = id_part(clean_text(group.name));
        // An XML name must not begin with a digit or a dash.
        std::string wanted = outer_id.empty() ? "g-" : outer_id;
        wanted += outer_id.empty() ? part : "." + part;
        pugi::xml_node node = parent.append_child("g");
        const std::string id = unused_id(wanted);
        set(node, "id", id);
        add_title(node, group.name);
        if (group.clip) add_clip(node, *group.clip, id);
        for (const DrawnItem& item : group.items) {
            if (const DrawnPath* path = std::get_if<DrawnPath>(&item))
                add(node, *path);
            else
                add(node, std::get<DrawnText>(item));
        }
        for (const DrawnGroup& inner : group.groups) add(node, inner, id);
    }

    void add_clip(pugi::xml_node node, const Box& clip, const std::string& id) {
        const std::string clip_id = unused_id(id + ".clip");
        pugi::xml_node path = node.append_child("clipPath");
        set(path, "id", clip_id);
        pugi::xml_node rectangle = path.append_child("rect");
        set(rectangle, "x", number(clip.low.x));
        set(rectangle, "y", number(drawing_.height_mm - clip.high.y));
        set(rectangle, "width", number(clip.high.x - clip.low.x));
        set(rectangle, "height", number(clip.high.y - clip.low.y));
        set(node, "clip-path", "url(#" + clip_id + ")");
    }

    std::string path_data(const DrawnPath& path) const {
        std::string data = "M";
        data += place(start_of(path.curves.front()));
        for (const Curve& curve : path.curves) {
            if (const Line* line = std::get_if<Line>(&curve)) {
                data += " L" + place(line->b);
            } else {
                const auto& p = std::get<Cubic>(curve).p;
                data += " C" + place(p[1]) + " " + place(p[2]) + " " + place(p[3]);
            }
        }
        if (path.is_closed) data += " Z";
        return data;
    }

    void add(pugi::xml_node parent, const DrawnPath& path) const {
        if (path.curves.empty()) return;
        pugi::xml_node node = parent.append_child("path");
        set(node, "d", path_data(path));
        set(node, "fill", path.fill ? colour_text(*path.fill) : "none");
        if (path.fill) set(node, "fill-rule", "evenodd");
        if (!path.stroke) return;
        set(node, "stroke", colour_text(path.stroke->colour));
        set(node, "stroke-width", number(path.stroke->width_mm));
        set(node, "stroke-linecap", path.stroke->dash_mm.empty() ? "round" : "butt");
        set(node, "stroke-linejoin", "round");
        std::string dashes;
        for (const double dash : path.stroke->dash_mm) {
            if (!dashes.empty()) dashes += ' ';
            dashes += number(dash);
        }
        if (!dashes.empty()) set(node, "stroke-dasharray", dashes);
        if (path.stroke->dash_begin_mm != 0)
            set(node, "stroke-dashoffset", number(path.stroke->dash_begin_mm));
    }

    void add(pugi::xml_node parent, const DrawnText& text) const {
        pugi::xml_node node = parent.append_child("text");
        set(node, "x", number(text.at.x));
        set(node, "y", number(drawing_.height_mm - text.at.y));
        set(node, "font-size", number(text.size_mm));
        if (text.is_bold) set(node, "font-weight", "bold");
        if (text.anchor != Anchor::start)
            set(node, "text-anchor", text.anchor == Anchor::middle ? "middle" : "end");
        if (text.angle_rad != 0)
            set(node, "transform", "rotate(" + number(-degrees(text.angle_rad)) + " " + place(text.at) + ")");
        set(node, "fill", colour_text(text.colour));
        if (text.halo) {
            set(node, "stroke", colour_text(*text.halo));
            set(node, "stroke-width", number(halo_width_em * text.size_mm));
            set(node, "stroke-linejoin", "round");
            set(node, "paint-order", "stroke");
        }
        node.text().set(clean_text(text.words).c_str());
    }

    const Drawing& drawing_;
    pugi::xml_document document_;
    std::set<std::string> used_ids_;
};

}  // namespace

std::string to_svg(const Drawing& drawing) {
    require_drawable(drawing);
    return SvgWriter(drawing).write();
}

}  // namespace dartwright
