// The library's exceptions as those of `dartwright/errors.py`.

#include "bindings.hpp"
#include "dartwright/files/output_file.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern_problems.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright::python {
namespace {

// File names may hold any bytes: those that are no UTF-8 are carried as Python itself carries them.
py::object text(std::string_view bytes) {
    PyObject* decoded =
        PyUnicode_DecodeUTF8(bytes.data(), static_cast<Py_ssize_t>(bytes.size()), "surrogateescape");
    if (!decoded) throw py::error_already_set();
    return py::reinterpret_steal<py::object>(decoded);
}

template <class... Arguments>
void set_error(const char* name, const Arguments&... arguments) {
    const py::object type = py::module_::import("dartwright.errors").attr(name);
    PyErr_SetObject(type.ptr(), type(arguments...).ptr());
}

py::object problems_of(const InvalidPattern& error) {
    py::list problems;
    for (const FileProblem& problem : error.problems)
        problems.append(py::make_tuple(text(problem.pointer), text(problem.found), text(problem.expected)));
    return problems;
}

void translate(std::exception_ptr thrown) {
    try {
        if (thrown) std::rethrow_exception(thrown);
    } catch (const InvalidPattern& error) {
        set_error("InvalidFile", text(error.what()), text(error.file), problems_of(error));
    } catch (const FileTrouble& error) {
        set_error("FileTrouble", text(error.what()));
    } catch (const OutputExists& error) {
        set_error("OutputExists", text(error.what()), text(error.path));
    } catch (const UnknownName& error) {
        set_error("UnknownName", text(error.what()), text(error.kind), text(error.name), error.known);
    } catch (const BadWords& error) {
        set_error("BadWords", text(error.what()));
    } catch (const UnsoundPattern& error) {
        PyErr_SetString(PyExc_ValueError, error.what());
    } catch (const Impossible& error) {
        set_error("Impossible", text(error.what()), text(error.reason), text(error.remedy));
    }
}

}  // namespace

void bind_errors() {
    py::register_exception_translator(translate);
}

}  // namespace dartwright::python
