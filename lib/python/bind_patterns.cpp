// Patterns: their parts, reading and writing, and what operations make of them.

#include <pybind11/stl/filesystem.h>

#include "bindings.hpp"
#include "dartwright/darts/replay.hpp"
#include "dartwright/files/output_file.hpp"
#include "dartwright/files/pattern_file.hpp"

namespace dartwright::python {
namespace {

Pattern read(const std::filesystem::path& path) {
    return read_pattern_file(path_of(path));
}

void write(const Pattern& pattern, const std::filesystem::path& path, bool overwrite) {
    write_file_whole(path_of(path), write_pattern(pattern), overwrite ? Overwrite::yes : Overwrite::no);
}

py::dict words_of(const Made& made) {
    py::dict words;
    for (const auto& [key, value] : made.request) words[py::str(key)] = value;
    return words;
}

Made made_of(const std::string& operation, const py::dict& words) {
    Made made{operation, {}};
    for (const auto& [key, value] : words)
        made.request.emplace_back(py::cast<std::string>(key), py::cast<std::string>(value));
    return made;
}

std::vector<std::string> names_of(const std::vector<Piece>& pieces) {
    std::vector<std::string> names;
    for (const Piece& piece : pieces) names.push_back(piece.name);
    return names;
}

void bind_seams(py::module_& module) {
    Value<SeamPart>(module, "SeamPart", "One run of a seam's side.")
        .field("piece", &SeamPart::piece, "The piece that the run is on.")
        .field("edge", &SeamPart::edge, "The run.")
        .field("walked_from", &SeamPart::from, "The neighbouring edge at the end where walking begins.")
        .field("mirrored", &SeamPart::mirrored, "It is the run of the piece's mirror image.");
    Value<Seam>(module, "Seam", "Two sides that are sewn together.")
        .field("name", &Seam::name, "Its name.")
        .field("joins", &Seam::joins, "The two sides, each the runs of it in walking order.")
        .field(
            "ease_mm",
            [](const Seam& seam) {
                if (!seam.ease) return 0.0;
                return seam.ease->side == 2 ? seam.ease->amount : -seam.ease->amount;
            },
            "How much longer the second side is meant to be, mm; negative when it is the first.")
        .field(
            "laid",
            [](const Seam& seam) {
                return std::string(seam.laid == LaidAs::flat ? "flat" : "on each other");
            },
            "How the two pieces lie when it is sewn: `flat` or `on each other`.")
        .field("allowances_differ", &Seam::allowances_differ,
               "Its two sides are meant to have allowances of two widths.");
    Value<Made> made(module, "Operation", "An operation as a pattern's `made` list has it.");
    made.field("operation", &Made::operation, "Its name: `pivot`, `split`, ...")
        .field("words", words_of, "Its request: the words by their keys, lengths with their unit.");
    made.bound().def(py::init(&made_of), py::arg("operation"), py::arg("words"));
}

void bind_pattern(py::module_& module) {
    py::class_<Pattern>(
        module, "Pattern",
        "Pieces and the seams that join them. It is never changed; operations give a new one.")
        .def_readonly("name", &Pattern::name, "Its name.")
        .def_property_readonly(
            "unit", [](const Pattern& pattern) { return dartwright::word_of(pattern.unit); },
            "The unit of its file: `mm`, `cm` or `in`. Lengths here are mm whatever it is.")
        .def_readonly("pieces", &Pattern::pieces, "Its pieces, in the file's order.")
        .def_readonly("seams", &Pattern::seams, "Its seams, in the file's order.")
        .def_readonly("tolerances", &Pattern::tolerances, "Those that the file sets, by name, mm or degrees.")
        .def_readonly("made", &Pattern::made, "The operations that made it from its block, in order.")
        .def(
            "piece",
            [](const Pattern& pattern, const std::string& name) { return piece_named(pattern, name); },
            py::arg("name"), "The piece of that name. UnknownName.")
        .def(
            "seam", [](const Pattern& pattern, const std::string& name) { return seam_named(pattern, name); },
            py::arg("name"), "The seam of that name. UnknownName.")
        .def(
            "__eq__",
            [](const Pattern& self, const Pattern& other) {
                return &self == &other || write_pattern(self) == write_pattern(other);
            },
            py::is_operator())
        .def("__repr__",
             [](const Pattern& self) {
                 return "<Pattern " + std::string(py::repr(py::str(self.name))) + ", pieces " +
                        std::string(py::repr(py::cast(names_of(self.pieces)))) + ">";
             })
        .def(py::pickle([](const Pattern& self) { return write_pattern(self); },
                        [](const std::string& text) { return dartwright::read_pattern(text, "pickle"); }))
        .attr("__hash__") = py::none();
}

void bind_operations(py::module_& module) {
    module.def("perform", &performed, py::arg("pattern"), py::arg("operation"), Unlocked(),
               "Does one operation, as a `made` list has it, and adds it to the pattern's own list as\n"
               "the operation itself writes it there. BadWords, UnknownName, Impossible.");
    module.def(
        "replay",
        [](const Pattern& block, const std::vector<Made>& made) { return replay(block, made).pattern; },
        py::arg("block"), py::arg("made"), Unlocked(),
        "Does the operations of a `made` list again, from the block. If the block was made by operations\n"
        "itself, the list must begin with these. BadWords and Impossible say which operation.");
}

}  // namespace

void bind_patterns(py::module_& module) {
    bind_seams(module);
    bind_pattern(module);
    bind_operations(module);
    module.def("read_pattern", read, py::arg("path"), Unlocked(),
               "Reads a pattern file. FileTrouble; InvalidFile with all that is wrong with it.");
    module.def(
        "parse_pattern",
        [](const std::string& text, const std::string& name) { return dartwright::read_pattern(text, name); },
        py::arg("text"), py::arg("name") = "text", Unlocked(),
        "Reads a pattern from the text of a pattern file; `name` is for messages. InvalidFile.");
    module.def(
        "pattern_text", &write_pattern, py::arg("pattern"), Unlocked(),
        "The canonical text of a pattern file: reading it gives the same pattern, and writing that the\n"
        "same text.");
    module.def(
        "write_pattern", write, py::arg("pattern"), py::arg("path"), py::kw_only(),
        py::arg("overwrite") = false, Unlocked(),
        "Writes a pattern file whole, or leaves the old one as it was. OutputExists if there is one and\n"
        "it is not to be replaced; FileTrouble.");
}

}  // namespace dartwright::python
