"""Refusals as Python's exceptions."""

import copy
import pickle
import tempfile
import unittest

import dartwright
from samples import block


class Errors(unittest.TestCase):
    def refused(self, kind, call):
        with self.assertRaises(kind) as caught:
            call()
        self.assertIsInstance(caught.exception, dartwright.Error)
        self.assertIs(type(caught.exception), kind)
        return caught.exception

    def test_an_unknown_name_lists_those_that_exist(self):
        error = self.refused(dartwright.UnknownName, lambda: block().piece("frnt"))
        self.assertEqual((error.kind, error.name, error.known), ("piece", "frnt", ["front", "back"]))
        self.assertEqual(str(error), 'no piece "frnt" in the pattern; there is "front", "back"')
        self.assertIsInstance(error, LookupError)
        self.refused(dartwright.UnknownName, lambda: block().piece("front").dart("dart"))
        self.refused(dartwright.UnknownName, lambda: block().piece("front").run("hem"))
        self.refused(dartwright.UnknownName, lambda: block().piece("front").edge_points("hem"))
        self.refused(dartwright.UnknownName, lambda: block().seam("hem"))
        self.refused(dartwright.UnknownName, lambda: dartwright.walk(block(), "hem"))

    def test_bad_words_say_what_was_expected(self):
        error = self.refused(dartwright.BadWords, lambda: dartwright.apply(block(), "fold"))
        self.assertIn('there is "pivot"', str(error))
        self.assertIsInstance(error, ValueError)
        self.refused(dartwright.BadWords, lambda: dartwright.apply(block(), "pivot", piece="front"))
        self.refused(dartwright.BadWords, lambda: dartwright.apply(block(), "open", piece="front", dart="x"))

    def test_the_impossible_has_a_reason_and_a_remedy(self):
        error = self.refused(dartwright.Impossible, lambda: dartwright.apply(
            block(), "pivot", piece="front", dart="waist dart", to="centre front@50%"))
        self.assertEqual(error.reason, 'the place lies inside the fold "centre front"')
        self.assertIn("open the piece", error.remedy)
        self.assertEqual(str(error), f"{error.reason}; {error.remedy}")
        beyond = self.refused(dartwright.Impossible, lambda: dartwright.apply(
            block(), "pivot", piece="front", dart="waist dart", to="side@900/armhole"))
        self.assertIn("lies beyond the end", beyond.reason)

    def test_an_unsound_value_says_where_and_what_was_expected(self):
        for bad in (float("nan"), float("inf"), -1.0, 1e200):
            with self.assertRaises(ValueError) as caught:
                dartwright.check(block(), tolerances={"seam": bad})
            self.assertIn("seam", str(caught.exception))
            with self.assertRaises(ValueError) as caught:
                dartwright.cutting_line(block(), "front", undecided_mm=bad)
            self.assertIn("is no width; expected 0 or more", str(caught.exception))

    def test_an_invalid_file_has_all_its_problems(self):
        error = self.refused(dartwright.InvalidFile,
                             lambda: dartwright.parse_pattern('{"dartwright": 1, "unit": "ell"}', "draft"))
        self.assertEqual(error.file, "draft")
        self.assertIn(("/unit", '"ell"'), [(problem.pointer, problem.found) for problem in error.problems])
        self.assertEqual(len(str(error).splitlines()), len(error.problems))
        self.assertIsInstance(error, ValueError)

    def test_any_text_is_refused_as_a_pattern(self):
        for text in ("", "\0", "[", "\N{PILE OF POO}", "[" * 100_000):
            self.refused(dartwright.InvalidFile, lambda: dartwright.parse_pattern(text))

    def test_a_file_that_is_not_there_is_an_os_error(self):
        error = self.refused(dartwright.FileTrouble, lambda: dartwright.read_pattern("no such file"))
        self.assertIsInstance(error, OSError)
        self.assertIn("no such file", str(error))
        with tempfile.TemporaryDirectory() as folder:
            self.refused(dartwright.FileTrouble, lambda: dartwright.read_pattern(folder))
            self.refused(dartwright.FileTrouble, lambda: dartwright.write_pattern(block(), folder + "/a/b"))

    def test_a_name_of_any_bytes_can_be_told(self):
        error = self.refused(dartwright.FileTrouble, lambda: dartwright.read_pattern(b"no\xff\xfe"))
        self.assertTrue(str(error))

    def test_what_is_no_text_and_no_pattern_is_a_type_error(self):
        for wrong in (3, None, object()):
            with self.assertRaises(TypeError):
                dartwright.parse_pattern(wrong)
        with self.assertRaises(TypeError):
            dartwright.check(None)

    def test_errors_can_be_sent_to_another_process(self):
        first = self.refused(dartwright.Impossible, lambda: dartwright.apply(
            block(), "pivot", piece="front", dart="waist dart", to="centre front@50%"))
        second = self.refused(dartwright.UnknownName, lambda: block().piece("frnt"))
        third = self.refused(dartwright.InvalidFile, lambda: dartwright.parse_pattern("{}"))
        fourth = self.refused(dartwright.OutputExists, lambda: dartwright.write_pattern(block(), __file__))
        for error in (first, second, third, fourth):
            again = pickle.loads(pickle.dumps(copy.copy(error)))
            self.assertEqual((str(again), vars(again)), (str(error), vars(error)))


if __name__ == "__main__":
    unittest.main()
