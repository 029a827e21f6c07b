#include "bindings.hpp"

#include <algorithm>
#include <cmath>

#include "dartwright/pattern/place.hpp"

namespace dartwright::python {
namespace {

std::string shown(const py::object& self) {
    std::string text = py::str(py::type::of(self).attr("__name__"));
    text += '(';
    const char* separator = "";
    for (const py::handle field : py::type::of(self).attr("__match_args__")) {
        text += separator + std::string(py::str(field)) + '=' + std::string(py::repr(self.attr(field)));
        separator = ", ";
    }
    return text + ')';
}

bool are_equal(const py::object& self, const py::object& other) {
    const py::tuple fields = py::type::of(self).attr("__match_args__");
    return std::all_of(fields.begin(), fields.end(),
                       [&](const py::handle field) { return self.attr(field).equal(other.attr(field)); });
}

const ToleranceName& tolerance_named(const std::string& name) {
    std::vector<std::string> known;
    for (const ToleranceName& each : tolerance_names()) {
        if (each.name == name) return each;
        known.emplace_back(each.name);
    }
    throw UnknownName("tolerance", name, known, "");
}

}  // namespace

void show_and_compare_by_fields(const py::object& bound, const py::list& fields) {
    bound.attr("__match_args__") = py::tuple(fields);
    bound.attr("__repr__") = py::cpp_function(shown, py::name("__repr__"), py::is_method(bound));
    bound.attr("__eq__") = py::cpp_function(
        [](const py::object& self, const py::object& other) -> py::object {
            if (!py::type::of(self).is(py::type::of(other)))
                return py::reinterpret_borrow<py::object>(Py_NotImplemented);
            return py::bool_(are_equal(self, other));
        },
        py::name("__eq__"), py::is_method(bound));
    bound.attr("__hash__") = py::none();
}

Tolerances tolerances_with(const Pattern& pattern, const std::map<std::string, double>& given) {
    Tolerances tolerances = tolerances_of(pattern);
    for (const auto& [name, value] : given) {
        if (!std::isfinite(value) || value < 0)
            throw BadWords("the tolerance \"" + name + "\" is " + std::to_string(value) +
                           "; expected a number that is not negative");
        tolerances.*tolerance_named(name).value = value;
    }
    return tolerances;
}

std::string path_of(const std::filesystem::path& path) {
    return path == "-" ? "./-" : path.string();
}

const char* word_of(NotchKind kind) {
    return kind == NotchKind::single ? "single" : kind == NotchKind::double_ ? "double" : "triple";
}

PYBIND11_MODULE(_dartwright, module) {
    module.doc() = "The compiled part of dartwright; programs import `dartwright`.";
    // Classes are said to be of the package, from which programs import them.
    const py::object own_name = module.attr("__name__");
    module.attr("__name__") = "dartwright";
    module.attr("__version__") = DARTWRIGHT_VERSION;
    bind_errors();
    bind_pieces(module);
    bind_patterns(module);
    bind_checks(module);
    bind_comparison(module);
    bind_cutting(module);
    bind_exercises(module);
    module.attr("__name__") = own_name;
}

}  // namespace dartwright::python
