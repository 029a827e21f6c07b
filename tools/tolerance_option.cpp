#include "tolerance_option.hpp"

#include <algorithm>

#include "dartwright/pattern/pattern_rules.hpp"
#include "dartwright/pattern/place.hpp"
#include "dartwright/words/nearest_word.hpp"

namespace dartwright::tools {

namespace {

const ToleranceName& tolerance_named(const std::string& name) {
    std::vector<std::string> names;
    std::string list;
    for (const ToleranceName& tolerance : tolerance_names()) {
        if (name == tolerance.name) return tolerance;
        names.push_back(tolerance.name);
        list += (list.empty() ? "" : ", ") + names.back();
    }
    throw WrongUse("there is no tolerance '" + name + "'" + nearest_told(name, names) + " (there are " +
                   list + ")");
}

}  // namespace

OptionSpec tolerance_option() {
    return {"tolerance", 0, "NAME=VALUE",
            "a tolerance in place of the file's, in mm or with a unit, of angles in degrees (seam=2, "
            "corner=3); may be given for several: seam, legs, notch, corner, mouth, kink, grain, gap, fold",
            true};
}

std::map<std::string, double> tolerances_given(const Arguments& arguments) {
    std::map<std::string, double> given;
    for (const std::string& words : arguments.values("tolerance")) {
        const std::size_t sign = words.find('=');
        if (sign == std::string::npos) throw WrongUse("--tolerance is NAME=VALUE, not '" + words + "'");
        const ToleranceName& tolerance = tolerance_named(words.substr(0, sign));
        const std::string value = words.substr(sign + 1);
        const double number = tolerance.is_angle ? parse_angle_deg(value) : parse_length(value);
        if (!(number >= 0)) throw WrongUse("--tolerance " + words + ": a tolerance is not below 0");
        constexpr double greatest_deg = 180;
        if (number > (tolerance.is_angle ? greatest_deg : largest_length_mm))
            throw WrongUse("--tolerance " + words + ": a tolerance is " +
                           (tolerance.is_angle ? "180 degrees" : "10 m") + " at most");
        if (!given.emplace(tolerance.name, number).second)
            throw WrongUse(std::string("--tolerance ") + tolerance.name + " is given twice");
    }
    return given;
}

Pattern with_tolerances(Pattern pattern, const std::map<std::string, double>& given) {
    for (const auto& [name, value] : given) pattern.tolerances[name] = value;
    return pattern;
}

}  // namespace dartwright::tools
