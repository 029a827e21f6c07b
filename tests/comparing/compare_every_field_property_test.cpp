// For every field of a pattern that a comparison speaks of: one change of it, larger than its tolerance, is
// never 'everything is kept'; and a pattern compared with itself always is, however it lies.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "dartwright/comparing/compare.hpp"
#include "dartwright/pattern/dart.hpp"
#include "dartwright/pattern/pattern_problems.hpp"
#include "support/evenly.hpp"
#include "support/full_pattern.hpp"
#include "support/generated_pieces.hpp"
#include "support/shape_laws.hpp"

namespace dartwright::testing {
namespace {

struct OneChange {
    const char* field;
    void (*change)(Pattern&, Vector by);
};

DartItem& first_dart(Pattern& pattern) {
    for (OutlineItem& item : pattern.pieces[0].outline.items) {
        if (item.as_dart()) return *item.as_dart();
    }
    throw std::logic_error("no dart");
}
std::size_t first_dart_item(const Pattern& pattern) {
    for (std::size_t i = 0; i < pattern.pieces[0].outline.items.size(); ++i) {
        if (pattern.pieces[0].outline.items[i].as_dart()) return i;
    }
    throw std::logic_error("no dart");
}

/// An edge of the first piece that is called otherwise.
std::string edge_beside(const Pattern& pattern, const std::string& name) {
    for (const Run& run : runs_of(pattern.pieces[0].outline))
        if (run.edge != name) return run.edge;
    throw std::logic_error("one edge");
}

const std::vector<OneChange>& changes() {
    static const std::vector<OneChange> all{
        {"double dart moved",
         [](Pattern& p, Vector by) {
             DoubleDart& dart = p.pieces[0].double_darts[0];
             dart.from = dart.from + by;
             dart.to = dart.to + by;
             for (Point& each : dart.widest) each = each + by;
         }},
        {"double dart, from",
         [](Pattern& p, Vector by) {
             p.pieces[0].double_darts[0].from = p.pieces[0].double_darts[0].from + by;
         }},
        {"double dart, to",
         [](Pattern& p, Vector by) { p.pieces[0].double_darts[0].to = p.pieces[0].double_darts[0].to + by; }},
        {"double dart, widest",
         [](Pattern& p, Vector by) {
             p.pieces[0].double_darts[0].widest[1] = p.pieces[0].double_darts[0].widest[1] + by;
         }},
        {"double dart, press",
         [](Pattern& p, Vector) {
             std::string& press = p.pieces[0].double_darts[0].press;
             press = edge_beside(p, press);
         }},
        {"double dart gone", [](Pattern& p, Vector) { p.pieces[0].double_darts.clear(); }},
        {"double dart new",
         [](Pattern& p, Vector) {
             p.pieces[0].double_darts.push_back(p.pieces[0].double_darts[0]);
             p.pieces[0].double_darts.back().name = "another";
         }},
        {"point beside its pivot",
         [](Pattern& p, Vector by) {
             DartItem& dart = first_dart(p);
             dart.pivot = dart.turning_point();
             dart.point = dart.point + by;
         }},
        {"curved legs",
         [](Pattern& p, Vector by) {
             const DartFigures f = figures_of(p.pieces[0].outline, first_dart_item(p));
             const Vector aside = 8 * norm(by) * unit(perpendicular(f.point - f.a));
             first_dart(p).legs = {
                 {{{between(f.a, f.point, 1.0 / 3) + aside, between(f.a, f.point, 2.0 / 3) + aside}},
                  {{between(f.point, f.b, 1.0 / 3), between(f.point, f.b, 2.0 / 3)}}}};
         }},
        {"press", [](Pattern& p, Vector) { first_dart(p).press = edge_beside(p, first_dart(p).press); }},
        {"stitched",
         [](Pattern& p, Vector) {
             const DartFigures f = figures_of(p.pieces[0].outline, first_dart_item(p));
             first_dart(p).stitched = std::min(f.leg_a, f.leg_b) / 2;
         }},
        {"line moved",
         [](Pattern& p, Vector by) {
             for (Point& each : std::get<LineMark>(p.pieces[0].marks[0].what).points) each = each + by;
         }},
        {"line's point moved",
         [](Pattern& p, Vector by) {
             std::get<LineMark>(p.pieces[0].marks[0].what).points[0] =
                 std::get<LineMark>(p.pieces[0].marks[0].what).points[0] + by;
         }},
        {"hole moved",
         [](Pattern& p, Vector by) {
             std::get<DrillMark>(p.pieces[0].marks[1].what).at =
                 std::get<DrillMark>(p.pieces[0].marks[1].what).at + by;
         }},
        {"mark's name", [](Pattern& p, Vector) { p.pieces[0].marks[0].name = "x"; }},
        {"mark gone", [](Pattern& p, Vector) { p.pieces[0].marks.pop_back(); }},
        {"mark new",
         [](Pattern& p, Vector) {
             p.pieces[0].marks.push_back({DrillMark{{0, 0}}, "x"});
         }},
        {"grain turned",
         [](Pattern& p, Vector) {
             const Grain was = *p.pieces[0].grain;
             p.pieces[0].grain->to = apply(turn_about(was.from, turn_by(0.02)), was.to);
         }},
        {"grain along", [](Pattern& p, Vector) { p.pieces[0].grain->along = edge_beside(p, ""); }},
        {"grain gone", [](Pattern& p, Vector) { p.pieces[0].grain.reset(); }},
        {"quantity", [](Pattern& p, Vector) { p.pieces[0].cut->quantity = 3; }},
        {"same", [](Pattern& p, Vector) { p.pieces[0].cut->same = true; }},
        {"fold", [](Pattern& p, Vector) { p.pieces[0].cut->fold = edge_beside(p, p.pieces[0].cut->fold); }},
        {"second fold",
         [](Pattern& p, Vector) { p.pieces[0].cut->second_fold = edge_beside(p, p.pieces[0].cut->fold); }},
        {"fold's ends",
         [](Pattern& p, Vector) {
             const auto runs = runs_of(p.pieces[0].outline);
             p.pieces[0].cut->ends = {{name_of_end(runs.back(), RunEnd::start), CornerIs::free}};
         }},
        {"cut gone", [](Pattern& p, Vector) { p.pieces[0].cut.reset(); }},
        {"worn", [](Pattern& p, Vector) { p.pieces[0].worn = Worn::back; }},
        {"worn gone", [](Pattern& p, Vector) { p.pieces[0].worn.reset(); }},
        {"side up", [](Pattern& p, Vector) { p.pieces[0].side_up = SideUp::wrong; }},
        {"allowance", [](Pattern& p, Vector) { p.pieces[0].allowance[0].second = Allowance{10.5}; }},
        {"allowance gone", [](Pattern& p, Vector) { p.pieces[0].allowance.clear(); }},
        {"notch gone", [](Pattern& p, Vector) { p.pieces[0].notches.pop_back(); }},
        {"notch moved", [](Pattern& p, Vector by) { p.pieces[0].notches[0].at += norm(by); }},
        {"notch's kind",
         [](Pattern& p, Vector) {
             p.pieces[0].notches[0].kind =
                 p.pieces[0].notches[0].kind == NotchKind::triple ? NotchKind::single : NotchKind::triple;
         }},
        {"notch begins", [](Pattern& p, Vector) { p.pieces.back().notches[0].begins = true; }},
        {"piece gone",
         [](Pattern& p, Vector) {
             p.pieces.pop_back();
             p.seams.clear();
         }},
        {"seam gone", [](Pattern& p, Vector) { p.seams.clear(); }},
        {"seam laid", [](Pattern& p, Vector) { p.seams[0].laid = LaidAs::on_each_other; }},
        {"seam's allowances", [](Pattern& p, Vector) { p.seams[0].allowances_differ = true; }},
        {"seam's ends", [](Pattern& p, Vector) { p.seams[0].ends.clear(); }},
        {"seam's ease",
         [](Pattern& p, Vector by) {
             p.seams[0].ease = Ease{1, norm(by), false};
         }},
        {"seam's piece", [](Pattern& p, Vector) { p.seams[0].joins[1][0].piece = p.pieces[0].name; }},
        {"seam mirrored", [](Pattern& p, Vector) { p.seams[0].joins[0][0].mirrored = true; }},
    };
    return all;
}

Similarity any_lie() {
    Similarity lie;
    lie.angle = real_between(-pi, pi);
    lie.is_reflected = *rc::gen::arbitrary<bool>();
    lie.shift = {real_between(-900, 900), real_between(-900, 900)};
    return lie;
}

// Every change in every case: a number drawn from a range grows with the case, and would seldom reach the
// last.
RC_GTEST_PROP(CompareEveryField, OneChangeIsNeverKept, ()) {
    const GeneratedPiece piece = any_piece(true, *evenly(1, 3));
    const Pattern before = full_pattern(piece);
    RC_PRE(!before.pieces[0].notches.empty());
    const double direction = real_between(-pi, pi);
    const double by = real_between(1.05, 6);
    const bool lies_otherwise = *rc::gen::arbitrary<bool>();
    const Similarity lie = any_lie();
    for (const OneChange& one : changes()) {
        RC_LOG() << one.field << "\n";
        Pattern after = before;
        one.change(after, {by * std::cos(direction), by * std::sin(direction)});
        for (Piece& each : after.pieces) {
            if (!lies_otherwise) break;
            each = image(lie, each);
            if (lie.is_reflected && each.worn)
                each.side_up = each.side_up == SideUp::right ? SideUp::wrong : SideUp::right;
        }
        RC_ASSERT(problems_of(after).empty());
        const Comparison comparison = compare(before, after);
        RC_ASSERT(!comparison.is_unchanged());
        RC_ASSERT(!comparison.losses.empty() || !comparison.changes.empty());
    }
}

RC_GTEST_PROP(CompareEveryField, APatternAndItselfIsUnchanged, ()) {
    const GeneratedPiece piece = any_piece(true, *evenly(1, 3));
    const Pattern before = full_pattern(piece);
    Pattern after = before;
    const Similarity lie = any_lie();
    for (Piece& each : after.pieces) {
        each = image(lie, each);
        if (lie.is_reflected && each.worn) each.side_up = SideUp::wrong;
    }
    if (*rc::gen::arbitrary<bool>()) std::swap(after.seams[0].joins[0], after.seams[0].joins[1]);
    std::swap(after.pieces[0], after.pieces[1]);
    std::reverse(after.pieces[0].marks.begin(), after.pieces[0].marks.end());
    const Comparison comparison = compare(before, after);
    for (const Loss& loss : comparison.losses) RC_LOG() << loss.message << "\n";
    for (const Loss& change : comparison.changes) RC_LOG() << change.message << "\n";
    RC_ASSERT(comparison.is_unchanged());
}

}  // namespace
}  // namespace dartwright::testing
