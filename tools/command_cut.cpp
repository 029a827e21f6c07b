// cut: decides every allowance by a rule, and says what the cutting pieces come out as.

#include "arguments.hpp"
#include "checked_file.hpp"
#include "cut_account.hpp"
#include "dartwright/files/rule_file.hpp"
#include "dartwright/pattern/place.hpp"
#include "result_file.hpp"
#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

std::optional<double> undecided_of(const Arguments& arguments) {
    const auto words = arguments.value("undecided");
    if (!words) return std::nullopt;
    const double width_mm = parse_length(*words);
    if (width_mm < 0) throw WrongUse("--undecided is " + *words + "; expected a width that is not negative");
    return width_mm;
}

AppliedRule applied(const Arguments& arguments, const Pattern& pattern, std::optional<double> undecided_mm) {
    const auto path = arguments.value("rule");
    if (!path) {
        AppliedRule own = apply_rule(pattern, pattern.cutting.value_or(CuttingRule{}), undecided_mm);
        if (!pattern.cutting) own.pattern.cutting.reset();
        return own;
    }
    AppliedRule applied = apply_rule(pattern, read_rule_file(*path), undecided_mm);
    if (!applied.misnamed.empty()) throw WrongUse(shown_path(*path) + ": " + applied.misnamed.front());
    return applied;
}

ExitStatus run_cut(const Arguments& arguments, Invocation& call) {
    require_positional(arguments, 1, 1, "the pattern file");
    const Format format = format_of(arguments);
    const std::optional<double> undecided_mm = undecided_of(arguments);
    const std::string& path = arguments.positional[0];
    if (path == "-" && arguments.value("rule") == "-")
        throw WrongUse("standard input (-) can be read once only");
    const Pattern pattern = read_pattern_file(path);
    call.works_on(shown_path(path), pattern.unit);
    const AppliedRule result = applied(arguments, pattern, undecided_mm);
    const CutPattern cut = cut_pattern(result, undecided_mm);
    const Ink ink(!is_to_standard_output(arguments) && call.out.is_coloured());
    write_result(arguments, call, write_pattern(result.pattern),
                 format == Format::json ? json_text(json_of(cut)) : text_of(cut, pattern.unit, ink));
    return ExitStatus::done;
}

}  // namespace

Command cut_command() {
    return {
        "cut",
        "decide every allowance by a cutting rule, and say how the cutting pieces come out",
        "FILE [--rule RULE] [-o CUT] [OPTIONS]",
        "Gives every run that the rule covers its allowance, and keeps the pattern's own elsewhere; an edge "
        "on "
        "the fold has none. Without --rule the pattern's own rule is taken, if it carries one. The pattern "
        "with its allowances and the rule goes to standard output and the account of the cutting pieces to "
        "standard error; with -o the pattern goes to the file and the account to standard output. Cutters "
        "and pins hurt: your workshop's rules and a qualified teacher come first.",
        {{"rule", 0, "FILE", "the file of a cutting rule: widths by edge and seam, corners, notches, darts"},
         {"undecided", 0, "WIDTH", "the allowance wherever nothing decides it, such as 10mm"},
         output_option("write the pattern to this file; it comes whole or not at all"),
         overwrite_option(),
         format_option()},
        {{"dartwright cut bodice.json --rule toile.json -o cut.json", "by a rule of the workshop"},
         {"dartwright cut bodice.json --undecided 10mm --format json -o cut.json",
          "by the pattern's own allowances; the account as JSON, with the points of the cutting lines"}},
        run_cut};
}

}  // namespace dartwright::tools
