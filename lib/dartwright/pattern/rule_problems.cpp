// Covered by tests/drawing/sound_entry_test.cpp and tests/files/pattern_reader_test.cpp.
#include "dartwright/pattern/rule_problems.hpp"

#include <algorithm>

namespace dartwright {
namespace {

void look_at_tolerance(ProblemList& to, const Step& at, const ToleranceName& tolerance, double value) {
    if (tolerance.is_angle)
        to.wanted(at, wanted_instead_of_angle(value), value);
    else
        to.length(at, value);
}

void look_at_widths(ProblemList& to, const Step& at, const std::vector<RuleWidth>& widths, const char* key) {
    to.entries(at, widths.size());
    for (std::size_t i = 0; i < widths.size(); ++i) {
        const Step step = under(at, i);
        to.name(under(step, key), widths[i].name);
        to.length(under(step, "width"), widths[i].width_mm);
    }
}

}  // namespace

void look_at_tolerances(ProblemList& to, const Step& at, const Tolerances& tolerances) {
    for (const ToleranceName& named : tolerance_names())
        look_at_tolerance(to, under(at, named.name), named, tolerances.*named.value);
}

void look_at_own_tolerances(ProblemList& to, const Step& at, const Pattern& pattern) {
    for (const auto& [name, value] : pattern.tolerances) {
        const Step step = under(at, name);
        const auto& all = tolerance_names();
        const auto named = std::find_if(
            all.begin(), all.end(), [&name = name](const ToleranceName& one) { return name == one.name; });
        if (named != all.end()) {
            look_at_tolerance(to, step, *named, value);
            continue;
        }
        std::vector<std::string> known;
        for (const ToleranceName& one : all) known.emplace_back(one.name);
        to.add(step, not_existing("tolerance", name, known));
    }
}

void look_at_rule(ProblemList& to, const Step& at, const CuttingRule& rule) {
    to.name(under(at, "name"), rule.name);
    const Step allowance = under(at, "allowance");
    look_at_widths(to, under(allowance, "edges"), rule.allowance.edges, "edge");
    look_at_widths(to, under(allowance, "openings"), rule.allowance.openings, "edge");
    look_at_widths(to, under(allowance, "seams"), rule.allowance.seams, "seam");
    to.length(under(allowance, "joined"), rule.allowance.joined_mm);
    to.length(under(allowance, "elsewhere"), rule.allowance.elsewhere_mm);
    const Step corners = under(at, "corners");
    to.entries(corners, rule.corners.size());
    for (std::size_t i = 0; i < rule.corners.size(); ++i) {
        const Step corner = under(corners, i);
        to.length(under(corner, "limit"), rule.corners[i].limit_mm);
    }
    if (rule.notches) {
        const Step notches = under(at, "notches");
        to.length(under(notches, "depth"), rule.notches->depth_mm);
        to.length(under(notches, "width"), rule.notches->width_mm);
    }
    if (!rule.darts.trim) return;
    const Step darts = under(at, "darts");
    const Step trim = under(darts, "trim");
    to.length(under(trim, "wider_than"), rule.darts.trim->wider_than_mm);
    to.length(under(trim, "allowance"), rule.darts.trim->allowance_mm);
}

}  // namespace dartwright
