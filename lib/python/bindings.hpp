#pragma once

// What the parts of the Python module share: how values become Python's, and the parts themselves.

#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include <array>
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>

#include "dartwright/pattern/pattern.hpp"

namespace pybind11::detail {

/// A point or a displacement is a pair of numbers there, which every other library takes.
template <class Pair>
struct pair_caster {
    static constexpr auto name = const_name("tuple[float, float]");
    static handle cast(const Pair& pair, return_value_policy, handle) {
        return make_tuple(pair.x, pair.y).release();
    }
};
template <>
struct type_caster<dartwright::Point> : pair_caster<dartwright::Point> {};
template <>
struct type_caster<dartwright::Vector> : pair_caster<dartwright::Vector> {};

/// Two of a kind are a pair too.
template <class Type>
struct type_caster<std::array<Type, 2>> {
    static constexpr auto name = const_name("tuple[") + make_caster<Type>::name + const_name(", ") +
                                 make_caster<Type>::name + const_name("]");
    template <class Pair>
    static handle cast(Pair&& pair, return_value_policy policy, handle parent) {
        // What goes with a temporary must not be referred to.
        if (!std::is_lvalue_reference_v<Pair>) policy = return_value_policy_override<Type>::policy(policy);
        return make_tuple(reinterpret_steal<object>(
                              make_caster<Type>::cast(std::forward<Pair>(pair)[0], policy, parent)),
                          reinterpret_steal<object>(
                              make_caster<Type>::cast(std::forward<Pair>(pair)[1], policy, parent)))
            .release();
    }
};

}  // namespace pybind11::detail

namespace dartwright::python {

namespace py = pybind11;

/// While the library works other threads of Python may run.
using Unlocked = py::call_guard<py::gil_scoped_release>;

/// Shows, compares and matches objects of a class by the fields in its `__match_args__`.
void show_and_compare_by_fields(const py::object& bound, const py::list& fields);

/// A class of values that are read and never changed, built up field by field in the order of its text.
template <class T>
class Value {
  public:
    Value(py::module_& module, const char* name, const char* doc) : bound_(module, name, doc) {}
    Value(const Value&) = delete;
    Value& operator=(const Value&) = delete;
    ~Value() { show_and_compare_by_fields(bound_, fields_); }

    /// A member as it is, or what a function makes of the whole value.
    template <class Read>
    Value& field(const char* name, const Read& read, const char* doc) {
        if constexpr (std::is_member_object_pointer_v<Read>) {
            bound_.def_readonly(name, read, doc);
        } else {
            bound_.def_property_readonly(
                name, py::cpp_function(read, py::return_value_policy::reference_internal), doc);
        }
        fields_.append(name);
        return *this;
    }
    py::class_<T>& bound() { return bound_; }

  private:
    py::class_<T> bound_;
    py::list fields_;
};

/// None for a text that does not apply.
inline std::optional<std::string> text_or_none(const std::string& text) {
    if (text.empty()) return std::nullopt;
    return text;
}

/// Tolerances by name, mm or degrees, over the pattern's own. BadWords for a name that there is none of or a
/// value that is none.
Tolerances tolerances_with(const Pattern& pattern, const std::map<std::string, double>& given);

/// For the library, to which `-` is standard input or output; here it is a file of that name, as elsewhere in
/// Python.
std::string path_of(const std::filesystem::path& path);

const char* word_of(NotchKind kind);

void bind_errors();
void bind_pieces(py::module_& module);
void bind_patterns(py::module_& module);
void bind_checks(py::module_& module);
void bind_comparison(py::module_& module);
void bind_cutting(py::module_& module);
void bind_exercises(py::module_& module);

}  // namespace dartwright::python
