"""The stub says of the compiled part what is so: its names, its parameters, and the types of its values."""

import ast
import inspect
import pathlib
import re
import types
import typing
import unittest

import dartwright
from dartwright import _dartwright
from samples import BODICE, EXERCISE, FIXTURES, block, moved_block

PACKAGE = pathlib.Path(dartwright.__file__).parent
STUB = ast.parse((PACKAGE / "_dartwright.pyi").read_text(encoding="utf-8"))
CLASSES = {node.name: node for node in STUB.body if isinstance(node, ast.ClassDef)}
FUNCTIONS = {node.name: node for node in STUB.body if isinstance(node, ast.FunctionDef)}


def public(names):
    return {name for name in names if not name.startswith("_")}


def members(stub_class):
    return {node.name: node for node in stub_class.body if isinstance(node, ast.FunctionDef)}


def parameters_of_stub(function):
    return [each.arg for each in [*function.args.args, *function.args.kwonlyargs] if each.arg != "self"]


def parameters_of_doc(function):
    """From the first line of the docstring, where the compiled part says them: `name(a: int, b: str) -> c`."""
    inside = re.fullmatch(r"\w+\((.*)\) -> .*", function.__doc__.splitlines()[0]).group(1)
    return [name for name in re.findall(r"(?:^|, )(\w+): ", inside) if name != "self"]


def docstrings():
    for name, value in vars(dartwright).items():
        if name in dartwright.__all__ and (inspect.isclass(value) or inspect.isroutine(value)):
            yield name, value.__doc__
    for class_name in CLASSES:
        for name, value in vars(getattr(dartwright, class_name)).items():
            if not name.startswith("_"):
                yield f"{class_name}.{name}", value.__doc__


class Names(unittest.TestCase):
    def test_the_stub_has_the_names_of_the_module(self):
        self.assertEqual(public(vars(_dartwright)), {*CLASSES, *FUNCTIONS})
        for name, node in CLASSES.items():
            self.assertEqual(public(vars(getattr(_dartwright, name))), public(members(node)), name)

    def test_the_package_gives_every_name(self):
        self.assertEqual(public(vars(_dartwright)) - set(dartwright.__all__), set())
        self.assertEqual([name for name in dartwright.__all__ if not hasattr(dartwright, name)], [])
        self.assertTrue((PACKAGE / "py.typed").is_file())

    def test_parameters_are_those_of_the_module(self):
        functions = {name: (node, getattr(_dartwright, name)) for name, node in FUNCTIONS.items()}
        for class_name, node in CLASSES.items():
            for name, member in members(node).items():
                if not member.decorator_list and name != "__init__":
                    functions[f"{class_name}.{name}"] = (member, getattr(getattr(_dartwright, class_name), name))
        for name, (node, function) in functions.items():
            self.assertEqual(parameters_of_stub(node), parameters_of_doc(function), name)

    def test_classes_say_that_they_are_of_the_package(self):
        for name in CLASSES:
            self.assertEqual(getattr(dartwright, name).__module__, "dartwright")


class Docstrings(unittest.TestCase):
    def test_everything_has_one(self):
        count = 0
        for name, text in docstrings():
            count += 1
            own = [line for line in (text or "").splitlines() if line and " -> " not in line]
            self.assertTrue(own, name)
        self.assertGreater(count, 200)

    def test_numbers_say_their_unit(self):
        for name, text in docstrings():
            for ending, unit in (("_mm", "mm"), ("_mm2", "mm^2"), ("_deg", "degrees")):
                if name.endswith(ending):
                    self.assertRegex(text, rf"\b{re.escape(unit)}|None as", name)


class Types(unittest.TestCase):
    """Every value that can be reached from some samples is of the type that the stub says."""

    def setUp(self):
        source = (PACKAGE / "_dartwright.pyi").read_text(encoding="utf-8")
        self.namespace = {}
        exec(compile("from __future__ import annotations\n" + source, "stub", "exec"), self.namespace)
        self.seen = set()

    def check_value(self, value, kind, where):
        origin = typing.get_origin(kind)
        if origin in (typing.Union, types.UnionType):
            kinds = [each for each in typing.get_args(kind) if each is not type(None)]
            if value is not None:
                self.check_value(value, kinds[0], where)
        elif origin is typing.Literal:
            self.assertIn(value, typing.get_args(kind), where)
        elif origin is list:
            self.assertIs(type(value), list, where)
            for each in value:
                self.check_value(each, typing.get_args(kind)[0], where)
        elif origin is tuple:
            self.assertIs(type(value), tuple, where)
            for each, each_kind in zip(value, typing.get_args(kind), strict=True):
                self.check_value(each, each_kind, where)
        elif origin is dict:
            self.assertIs(type(value), dict, where)
            for key, each in value.items():
                self.check_value(key, typing.get_args(kind)[0], where)
                self.check_value(each, typing.get_args(kind)[1], where)
        elif kind.__name__ in CLASSES:
            self.check_object(value, kind, where)
        else:
            self.assertIs(type(value), kind, where)

    def check_object(self, value, kind, where):
        self.assertIs(type(value), getattr(dartwright, kind.__name__), where)
        self.seen.add(kind.__name__)
        for name, member in vars(kind).items():
            if isinstance(member, property):
                hint = typing.get_type_hints(member.fget, self.namespace)["return"]
                self.check_value(getattr(value, name), hint, f"{where}.{name}")

    def check(self, value):
        self.check_object(value, self.namespace[type(value).__name__], type(value).__name__)

    def test_values_are_what_the_stub_says(self):
        exercise = dartwright.read_exercise(EXERCISE)
        faulty = dartwright.read_pattern(FIXTURES / "faults" / "seam-length.json")
        bodice = dartwright.read_pattern(BODICE)
        self.check(exercise)
        self.check(moved_block())
        self.check(bodice)
        self.check(dartwright.check(block()))
        self.check(dartwright.check(faulty))
        self.check(dartwright.walk(moved_block(), "side"))
        self.check(dartwright.measure(block(), "bust line"))
        self.check(dartwright.compare(block(), moved_block()))
        self.check(dartwright.compare(dartwright.read_pattern(FIXTURES / "faults" / "seam-length.true.json"), faulty))
        self.check(dartwright.cutting_line(bodice, "front"))
        self.check(dartwright.cutting_line(faulty, faulty.pieces[0].name))
        slit = dartwright.read_pattern(FIXTURES / "corners" / "slit.json")
        self.check(dartwright.cutting_line(slit, slit.pieces[0].name))
        self.check(dartwright.assess(exercise, exercise.pattern))
        self.assertEqual(set(CLASSES) - self.seen, set())

    def test_values_show_their_fields(self):
        dart = block().piece("front").darts[0]
        self.assertTrue(repr(dart).startswith("Dart(name='"))
        self.assertEqual(repr(block()), "<Pattern 'close-fitting block, bust 88', pieces ['front', 'back']>")
        for name in CLASSES:
            fields = getattr(getattr(dartwright, name), "__match_args__", None)
            if fields is not None:
                self.assertEqual(set(fields), public(vars(getattr(dartwright, name))), name)
        match dart:
            case dartwright.Dart(name, mouth):
                self.assertEqual((name, mouth), (dart.name, dart.mouth))
        self.assertEqual(dart, block().piece("front").darts[0])
        self.assertNotEqual(dart, block().piece("front").darts[1])


if __name__ == "__main__":
    unittest.main()
