#include "dartwright/files/rule_writer.hpp"

#include "dartwright/files/json_lines.hpp"
#include "dartwright/files/rule_file.hpp"

namespace dartwright {
namespace {

template <typename Names, typename Kind>
const char* word_for(const Names& names, Kind wanted) {
    const char* word = "";
    for (const auto& [kind, name] : names) {
        if (kind == wanted) word = name;
    }
    return word;
}

class RuleWriter {
  public:
    RuleWriter(const CuttingRule& rule, std::size_t indent) : rule_(rule), indent_(indent) {}

    std::vector<std::string> members() const {
        std::vector<std::string> out{with_key("name", json_text(rule_.name)),
                                     with_key("unit", json_text(word_of(rule_.unit)))};
        const std::vector<std::string> widths = allowance();
        if (!widths.empty()) out.push_back(with_key("allowance", object_by_line(widths, indent_)));
        std::vector<std::string> corners;
        for (const CornerRule& each : rule_.corners) corners.push_back(corner(each));
        if (!corners.empty()) out.push_back(with_key("corners", list_by_line(corners, indent_)));
        if (rule_.notches) out.push_back(with_key("notches", notches(*rule_.notches)));
        if (rule_.darts != DartRule{}) out.push_back(with_key("darts", darts(rule_.darts)));
        return out;
    }

  private:
    std::string length(double mm) const { return written_length(mm, rule_.unit, rule_.as_written); }

    void put_widths(std::vector<std::string>& out, const char* key, const char* what,
                    const std::vector<RuleWidth>& entries) const {
        std::vector<std::string> lines;
        for (const RuleWidth& entry : entries) {
            MemberLine line;
            line.put_text(what, entry.name).put_text_if_any("piece", entry.piece);
            lines.push_back(line.put("width", length(entry.width_mm)).text());
        }
        if (!lines.empty()) out.push_back(with_key(key, list_by_line(lines, indent_ + 2)));
    }

    std::vector<std::string> allowance() const {
        const AllowanceRule& allowance = rule_.allowance;
        std::vector<std::string> out;
        put_widths(out, "edges", "edge", allowance.edges);
        put_widths(out, "openings", "edge", allowance.openings);
        put_widths(out, "seams", "seam", allowance.seams);
        if (allowance.joined_mm) out.push_back(with_key("joined", length(*allowance.joined_mm)));
        if (allowance.elsewhere_mm) out.push_back(with_key("elsewhere", length(*allowance.elsewhere_mm)));
        return out;
    }

    std::string corner(const CornerRule& corner) const {
        MemberLine line;
        line.put("between", in_brackets(json_text(corner.between[0]) + ", " + json_text(corner.between[1])));
        line.put_text_if_any("piece", corner.piece);
        line.put_text("kind", word_for(rule_corner_names, corner.kind))
            .put_text_if_any("whose", corner.whose);
        if (corner.limit_mm) line.put("limit", length(*corner.limit_mm));
        return line.text();
    }

    std::string notches(const NotchRule& notches) const {
        MemberLine line;
        line.put_text("form", word_for(notch_form_names, notches.form))
            .put("depth", length(notches.depth_mm));
        if (notches.width_mm) line.put("width", length(*notches.width_mm));
        return line.text();
    }

    std::string darts(const DartRule& darts) const {
        MemberLine line;
        if (darts.is_notched) line.put("notched", *darts.is_notched ? "true" : "false");
        if (darts.trim) {
            MemberLine trim;
            trim.put("wider_than", length(darts.trim->wider_than_mm));
            line.put("trim", trim.put("allowance", length(darts.trim->allowance_mm)).text());
        }
        return line.text();
    }

    const CuttingRule& rule_;
    std::size_t indent_;
};

}  // namespace

std::vector<std::string> rule_members(const CuttingRule& rule, std::size_t indent) {
    return RuleWriter(rule, indent).members();
}

std::string write_rule(const CuttingRule& rule) {
    std::vector<std::string> members = rule_members(rule, 2);
    members.insert(members.begin(), with_key("dartwright_rule", "1"));
    return object_by_line(members, 0) + "\n";
}

}  // namespace dartwright
