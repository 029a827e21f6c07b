// compare: what of one pattern another has kept, and what was moved.

#include "arguments.hpp"
#include "checked_file.hpp"
#include "comparison_json.hpp"
#include "comparison_text.hpp"
#include "dartwright/comparing/compare.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "tolerance_option.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

ExitStatus run_compare(const Arguments& arguments, Invocation& call) {
    require_positional(arguments, 2, 2, "the two pattern files, before and after");
    const Format format = format_of(arguments);
    const auto tolerances = tolerances_given(arguments);
    const std::string& first = arguments.positional[0];
    const std::string& second = arguments.positional[1];
    if (first == "-" && second == "-")
        throw WrongUse("only one of the two patterns can come from standard input");
    const Pattern before = read_pattern_file(first);
    const Pattern after = read_pattern_file(second);
    call.works_on(shown_path(first) + ", " + shown_path(second), before.unit);
    const Comparison comparison = compare(before, after, tolerances_of(with_tolerances(before, tolerances)));
    if (format == Format::json) {
        call.out.write(json_text(json_of(comparison)));
    } else {
        const Ink ink(call.out.is_coloured());
        call.out.write(ink(Paint::heading, shown_path(first) + " and " + shown_path(second)) + "\n" +
                       text_of(comparison, before.unit, ink));
    }
    return comparison.is_kept() ? ExitStatus::done : ExitStatus::faults;
}

}  // namespace

Command compare_command() {
    OptionSpec tolerance = tolerance_option();
    return {
        "compare",
        "say what of one pattern another has kept, and what was moved",
        "BEFORE AFTER [OPTIONS]",
        "Compares two patterns piece by piece: the sewn length of every edge, the angle of the darts about "
        "each "
        "pivot, the area of cloth, the difference of every seam, the distance of every notch from both ends, "
        "and "
        "the shape of every part between mouths. Pieces may lie turned, shifted or the other way up, in "
        "another "
        "order, in another unit. Pieces, edges, darts and seams are matched by their names. Exit status 1 if "
        "anything was lost. What is otherwise and costs no shape (a point, legs, marks, allowances, how it "
        "is cut or sewn) is said too, and is no loss: with nothing lost the status is 0. Tolerances are "
        "those of BEFORE: seam for lengths, "
        "notch for notches and pivots, "
        "grain "
        "for angles, fold for shapes.",
        {format_option(), tolerance},
        {{"dartwright compare bodice.json moved.json", "whether moving the darts has lost anything"},
         {"dartwright compare block.json draft.json --tolerance seam=2 --format json",
          "the same for another program, lengths within 2 mm"}},
        run_compare};
}

}  // namespace dartwright::tools
