#include "dartwright/pattern/pattern.hpp"

namespace dartwright {
namespace {

std::string listed(const std::vector<std::string>& names) {
    if (names.empty()) return "there are none";
    std::string out = "there is ";
    for (std::size_t i = 0; i < names.size(); ++i) out += (i ? ", \"" : "\"") + names[i] + "\"";
    return out;
}

template <typename Things>
std::vector<std::string> names_of(const Things& things) {
    std::vector<std::string> out;
    for (const auto& thing : things) out.push_back(thing.name);
    return out;
}

}  // namespace

const std::vector<ToleranceName>& tolerance_names() {
    static const std::vector<ToleranceName> names{
        {"seam", &Tolerances::seam_mm, false, "difference in length of a seam's two sides"},
        {"legs", &Tolerances::legs_mm, false, "difference of a dart's two legs"},
        {"notch", &Tolerances::notch_mm, false, "distance by which paired notches miss each other"},
        {"corner", &Tolerances::corner_deg, true, "angles that meet at a seam's or fold's end, against 180"},
        {"mouth", &Tolerances::mouth_deg, true, "kink of the edge over a closed dart"},
        {"kink", &Tolerances::kink_deg, true, "corner inside one run"},
        {"grain", &Tolerances::grain_deg, true, "grain against the edge it runs along"},
        {"gap", &Tolerances::gap_mm, false, "distance by which an outline does not close"},
        {"fold", &Tolerances::fold_mm, false, "deviation of a fold edge from a straight line"},
    };
    return names;
}

Tolerances tolerances_of(const Pattern& pattern) {
    Tolerances out;
    for (const ToleranceName& each : tolerance_names()) {
        const auto set = pattern.tolerances.find(each.name);
        if (set != pattern.tolerances.end()) out.*each.value = set->second;
    }
    return out;
}

UnknownName::UnknownName(std::string kind_, std::string name_, std::vector<std::string> known_,
                         std::string where)
    : kind(std::move(kind_)), name(std::move(name_)), known(std::move(known_)) {
    message_ =
        "no " + kind + " \"" + name + "\"" + (where.empty() ? "" : " in " + where) + "; " + listed(known);
}

std::size_t piece_index(const Pattern& pattern, const std::string& name) {
    for (std::size_t i = 0; i < pattern.pieces.size(); ++i) {
        if (pattern.pieces[i].name == name) return i;
    }
    throw UnknownName("piece", name, names_of(pattern.pieces), "the pattern");
}

const Piece& piece_named(const Pattern& pattern, const std::string& name) {
    return pattern.pieces[piece_index(pattern, name)];
}

const Run& run_named(const std::vector<Run>& runs, const std::string& edge, const std::string& piece) {
    if (const Run* run = find_run(runs, edge)) return *run;
    std::vector<std::string> known;
    for (const Run& run : runs) known.push_back(run.edge);
    throw UnknownName("edge", edge, known, "piece \"" + piece + "\"");
}

std::size_t dart_named(const Piece& piece, const std::string& name) {
    if (const auto index = find_dart(piece, name)) return *index;
    std::vector<std::string> known;
    for (const OutlineItem& item : piece.outline.items) {
        if (const DartItem* dart = item.as_dart()) known.push_back(dart->name);
    }
    throw UnknownName("dart", name, known, "piece \"" + piece.name + "\"");
}

const Seam& seam_named(const Pattern& pattern, const std::string& name) {
    for (const Seam& seam : pattern.seams) {
        if (seam.name == name) return seam;
    }
    throw UnknownName("seam", name, names_of(pattern.seams), "the pattern");
}

}  // namespace dartwright
