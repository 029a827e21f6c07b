// Covered by tests/drawing/sound_entry_test.cpp and tests/files/pattern_reader_test.cpp.
#include "dartwright/pattern/piece_problems.hpp"

#include "dartwright/pattern/outline_problems.hpp"
#include "dartwright/words/quoted.hpp"

namespace dartwright {
namespace {

void look_at_cut(ProblemList& to, const Step& at, const Cut& cut, const KnownRuns& runs) {
    to.wanted(under(at, "quantity"), wanted_instead_of_whole(cut.quantity, 1, largest_quantity),
              cut.quantity);
    if (!cut.fold.empty()) look_for_edge(to, under(at, "fold"), runs, cut.fold);
    if (!cut.second_fold.empty()) {
        const Step second = under(at, "second_fold");
        look_for_edge(to, second, runs, cut.second_fold);
        to.add(second, second_fold_trouble(!cut.fold.empty(), cut.fold, cut.second_fold));
    }
    if (cut.ends.empty()) return;
    const Step ends = under(at, "ends");
    if (cut.fold.empty()) {
        to.add(ends, ends_without_fold());
        return;
    }
    for (const auto& [from, corner] : cut.ends) {
        const auto trouble = trouble_of_end(runs, cut.fold, from);
        if (!trouble) continue;
        const auto second =
            runs.is_sound && !cut.second_fold.empty() ? runs.names.find(cut.second_fold) : std::nullopt;
        if (second) {
            const auto [before, after] = runs.neighbours(*second);
            if (from == before || from == after) continue;
        }
        to.add(under(ends, from), trouble);
    }
}

void look_at_grain(ProblemList& to, const Step& at, const Grain& grain, const KnownRuns& runs) {
    const std::size_t before = to.problems.size();
    to.point(under(at, "from"), grain.from);
    to.point(under(at, "to"), grain.to);
    if (to.problems.size() == before) to.add(under(at, "to"), grain_trouble(grain.from, grain.to));
    if (!grain.along.empty()) look_for_edge(to, under(at, "along"), runs, grain.along);
}

void look_at_double_darts(ProblemList& to, const Step& at, const Piece& piece, const KnownRuns& runs,
                          NameTable& darts) {
    to.entries(at, piece.double_darts.size());
    for (std::size_t i = 0; i < piece.double_darts.size(); ++i) {
        const DoubleDart& dart = piece.double_darts[i];
        const Step step = under(at, i);
        look_at_dart_name(to, under(step, "dart"), darts, dart.name);
        to.point(under(step, "from"), dart.from);
        to.point(under(step, "to"), dart.to);
        to.points(under(step, "widest"), dart.widest);
        look_for_pressed(to, under(step, "press"), runs, dart.press);
    }
}

void look_at_notches(ProblemList& to, const Step& at, const Piece& piece, const KnownRuns& runs) {
    bool has_begun = false;
    to.entries(at, piece.notches.size());
    for (std::size_t i = 0; i < piece.notches.size(); ++i) {
        const Notch& notch = piece.notches[i];
        const Step step = under(at, i);
        look_for_edge(to, under(step, "edge"), runs, notch.edge);
        look_at_end(to, under(step, "from"), runs, notch.edge, notch.from);
        to.length(under(step, "at"), notch.at);
        if (!notch.begins || !runs.is_sound || !runs.names.find(notch.edge)) continue;
        to.add(under(step, "begins"), begins_trouble(notch.edge, runs.names.names().size() == 1, has_begun));
        has_begun = true;
    }
}

void look_at_stretch(ProblemList& to, const Step& at, const AllowanceStretch& stretch,
                     const std::string& edge, const KnownRuns& runs) {
    look_at_end(to, under(at, "from"), runs, edge, stretch.from);
    const std::size_t before = to.problems.size();
    to.length(under(at, "at"), stretch.at);
    to.length(under(at, "to"), stretch.to);
    if (to.problems.size() == before)
        to.wanted(under(at, "to"), wanted_instead_of_stretch_end(stretch.at, stretch.to), stretch.to);
    to.length(under(at, "width"), stretch.width);
}

void look_at_allowances(ProblemList& to, const Step& at, const Piece& piece, const KnownRuns& runs) {
    NameTable edges;
    for (const auto& [edge, allowance] : piece.allowance) {
        const Step step = under(at, edge);
        if (runs.is_sound && !runs.names.find(edge)) to.add(step, not_existing("edge", edge, runs.known()));
        if (!edges.add(edge)) to.add(step, "the key " + in_quotes(edge) + " again", "each key once");
        if (const double* width = std::get_if<double>(&allowance)) {
            to.length(step, *width);
            continue;
        }
        const auto& stretches = std::get<std::vector<AllowanceStretch>>(allowance);
        const std::string what = wanted_of_stretches(stretches.size());
        if (!what.empty()) to.add(step, "an empty list", what);
        to.entries(step, stretches.size());
        for (std::size_t i = 0; i < stretches.size(); ++i)
            look_at_stretch(to, under(step, i), stretches[i], edge, runs);
    }
}

void look_at_marks(ProblemList& to, const Step& at, const Piece& piece) {
    to.entries(at, piece.marks.size());
    for (std::size_t i = 0; i < piece.marks.size(); ++i) {
        const Mark& mark = piece.marks[i];
        const Step step = under(at, i);
        to.name(under(step, "name"), mark.name);
        if (const auto* drill = std::get_if<DrillMark>(&mark.what)) {
            to.point(under(step, "drill"), drill->at);
            continue;
        }
        const auto& line = std::get<LineMark>(mark.what).points;
        const Step drawn = under(step, "line");
        to.entries(drawn, line.size());
        to.points(drawn, line);
        const std::string what = wanted_of_line(line.size());
        if (!what.empty()) to.add(drawn, line.empty() ? "an empty list" : "a list of 1", what);
    }
}

}  // namespace

KnownRuns look_at_piece(ProblemList& to, const Step& at, const Piece& piece) {
    to.piece = piece.name;
    to.name(under(at, "name"), piece.name);
    NameTable darts;
    const KnownRuns runs = look_at_outline(to, under(at, "outline"), piece.outline, darts);
    if (piece.side_up != SideUp::right && !piece.worn) to.add(under(at, "side_up"), side_up_without_worn());
    if (piece.cut) look_at_cut(to, under(at, "cut"), *piece.cut, runs);
    if (piece.grain) look_at_grain(to, under(at, "grain"), *piece.grain, runs);
    look_at_double_darts(to, under(at, "double_darts"), piece, runs, darts);
    look_at_notches(to, under(at, "notches"), piece, runs);
    look_at_allowances(to, under(at, "allowance"), piece, runs);
    look_at_marks(to, under(at, "marks"), piece);
    to.piece.clear();
    return runs;
}

}  // namespace dartwright
