#include "dartwright/assessing/checked_draft.hpp"

#include <algorithm>

#include "dartwright/pattern/pattern_problems.hpp"
#include "dartwright/pattern/same_folds.hpp"

namespace dartwright {
namespace {

// A seam can be walked from an end only if the run that names it is there.
bool can_be_walked(const Pattern& pattern, const Seam& seam) {
    for (const SeamSide& side : seam.joins)
        for (const SeamPart& part : side) {
            const std::vector<Run> runs = runs_of(piece_named(pattern, part.piece).outline);
            const Run* run = find_run(runs, part.edge);
            if (!run || !end_named(*run, part.from)) return false;
        }
    return true;
}

Pattern assembled(const DraftFacts& facts) {
    Pattern pattern;
    pattern.name = "draft";
    for (std::size_t i = 0; i < facts.plan->finished.size(); ++i) {
        if (!facts.draft.pieces[i]) continue;
        pattern.pieces.push_back(facts.draft.pieces[i]->shaped.piece);
        const std::optional<Cut>& expected = facts.plan->finished[i].piece.cut;
        std::optional<Cut>& cut = pattern.pieces.back().cut;
        if (cut && expected && are_on_the_same_folds(*cut, *expected)) cut->ends = expected->ends;
    }
    for (const SeamFact& seam : facts.seams)
        if (seam.is_there && can_be_walked(pattern, *seam.seam)) pattern.seams.push_back(*seam.seam);
    return pattern;
}

std::string unescaped(const std::string& step) {
    std::string out;
    for (std::size_t i = 0; i < step.size(); ++i) {
        const bool is_escape = step[i] == '~' && i + 1 < step.size();
        out += !is_escape ? step[i] : step[++i] == '1' ? '/' : '~';
    }
    return out;
}

/// `/pieces/2/notches/0/from` is "pieces", "2", "notches", "0", "from".
std::vector<std::string> steps_of(const std::string& pointer) {
    std::vector<std::string> steps;
    for (std::size_t at = 0; at < pointer.size();) {
        const std::size_t end = std::min(pointer.find('/', at + 1), pointer.size());
        steps.push_back(unescaped(pointer.substr(at + 1, end - at - 1)));
        at = end;
    }
    return steps;
}

template <class List>
bool erase_at(List& list, const std::string& index) {
    const std::size_t at = std::stoul(index);
    if (at >= list.size()) return false;
    list.erase(list.begin() + static_cast<std::ptrdiff_t>(at));
    return true;
}

bool name_otherwise(std::string& name) {
    name = other_name(name);
    return true;
}

bool leave_out_of_item(OutlineItem& item, const std::string& key) {
    DartItem* dart = item.as_dart();
    if (!dart) {
        // A gap was closed by an item that is now shorter than what is eased into it.
        if (key == "fullness") item.as_edge()->fullness = 0;
        return key == "fullness";
    }
    if (key == "dart") return name_otherwise(dart->name);
    if (key == "press") dart->press.clear();
    if (key == "stitched") dart->stitched.reset();
    return key == "press" || key == "stitched";
}

// Of two edges that became one, the first keeps its width.
bool leave_out_allowance(Piece& piece, const std::string& edge) {
    for (std::size_t i = piece.allowance.size(); i-- > 0;) {
        if (piece.allowance[i].first != edge) continue;
        piece.allowance.erase(piece.allowance.begin() + static_cast<std::ptrdiff_t>(i));
        return true;
    }
    return false;
}

// Keys under the piece.
bool leave_out_of_piece(Piece& piece, const std::vector<std::string>& keys) {
    const std::string& first = keys[0];
    if (first == "cut" && piece.cut) {
        if (keys.size() > 1 && keys[1] == "ends")
            piece.cut->ends.clear();
        else
            piece.cut.reset();
        return true;
    }
    if (first == "allowance" && keys.size() > 1) return leave_out_allowance(piece, keys[1]);
    if (first == "notches" && keys.size() > 1) return erase_at(piece.notches, keys[1]);
    if (first == "double_darts" && keys.size() > 2 && keys[2] == "dart")
        return name_otherwise(piece.double_darts[std::stoul(keys[1])].name);
    if (first == "double_darts" && keys.size() > 2 && keys[2] == "press") {
        piece.double_darts[std::stoul(keys[1])].press.clear();
        return true;
    }
    if (first == "grain" && piece.grain) {
        piece.grain->along.clear();
        return keys.back() == "along";
    }
    if (first == "outline" && keys.size() > 3 && keys[1] == "items")
        return leave_out_of_item(piece.outline.items[std::stoul(keys[2])], keys[3]);
    return false;
}

bool leave_out(Pattern& pattern, const std::string& pointer) {
    const std::vector<std::string> keys = steps_of(pointer);
    if (keys.size() > 2 && keys[0] == "pieces")
        return leave_out_of_piece(pattern.pieces[std::stoul(keys[1])], {keys.begin() + 2, keys.end()});
    if (keys.size() < 2 || keys[0] != "seams") return false;
    Seam& seam = pattern.seams[std::stoul(keys[1])];
    if (keys.size() > 2 && keys[2] == "ends" && !seam.ends.empty()) {
        seam.ends.clear();
        return true;
    }
    return erase_at(pattern.seams, keys[1]);
}

}  // namespace

Pattern checked_draft(const DraftFacts& facts) {
    Pattern pattern = assembled(facts);
    if (pattern.pieces.empty()) return pattern;
    for (auto problems = problems_of(pattern); !problems.empty(); problems = problems_of(pattern))
        // The last first, so that the places of the others stay.
        if (!leave_out(pattern, problems.back().pointer)) break;
    return pattern;
}

}  // namespace dartwright
