"""Patterns, checks and operations through the Python module."""

import copy
import json
import math
import os
import pathlib
import pickle
import tempfile
import unittest
from concurrent.futures import ThreadPoolExecutor
from fractions import Fraction

import dartwright
from samples import BLOCK, BODICE, FIXTURES, block, moved_block


def area_of(points):
    """By the shoelace formula (exact geometry)."""
    following = points[1:] + points[:1]
    return sum(a[0] * b[1] - a[1] * b[0] for a, b in zip(points, following)) / 2


class Reading(unittest.TestCase):
    def test_every_true_fixture_survives_a_round_trip(self):
        count = 0
        for path in sorted([*FIXTURES.glob("blocks/*.json"), *FIXTURES.glob("workshop/*.json")]):
            try:
                pattern = dartwright.read_pattern(path)
            except dartwright.InvalidFile:  # a rule or an exercise
                continue
            count += 1
            text = dartwright.pattern_text(pattern)
            again = dartwright.parse_pattern(text)
            self.assertEqual(dartwright.pattern_text(again), text, path)
            self.assertEqual(again, pattern, path)
        self.assertGreater(count, 3)

    def test_says_what_the_file_says(self):
        written = json.loads(BLOCK.read_text(encoding="utf-8"))
        pattern = block()
        self.assertEqual(pattern.name, written["name"])
        self.assertEqual(pattern.unit, written["unit"])
        self.assertEqual([piece.name for piece in pattern.pieces], [piece["name"] for piece in written["pieces"]])
        self.assertEqual([seam.name for seam in pattern.seams], [seam["name"] for seam in written["seams"]])
        side = pattern.seam("side").joins[0][0]
        self.assertEqual((side.piece, side.edge), ("front", "side"))
        self.assertEqual(pattern.made, [])

    def test_says_what_the_optional_keys_say(self):
        plain = block()
        front, seam = plain.piece("front"), plain.seam("side")
        self.assertEqual(front.cut.fold, "centre front")
        self.assertIsNone(front.cut.second_fold)
        self.assertEqual((seam.laid, seam.allowances_differ), ("flat", False))
        self.assertEqual({notch.begins for piece in plain.pieces for notch in piece.notches}, {False})
        written = json.loads(BLOCK.read_text(encoding="utf-8"))
        piece = next(each for each in written["pieces"] if each["name"] == "front")
        piece["cut"]["second_fold"] = "waist"
        side = next(each for each in written["seams"] if each["name"] == "side")
        side.update({"laid": "on each other", "allowances_differ": True})
        pattern = dartwright.parse_pattern(json.dumps(written))
        seam = pattern.seam("side")
        self.assertEqual(pattern.piece("front").cut.second_fold, "waist")
        self.assertEqual((seam.laid, seam.allowances_differ), ("on each other", True))
        cylinder = dartwright.read_pattern(FIXTURES / "faults" / "notch-place.closed.true.json")
        begins = [notch for piece in cylinder.pieces for notch in piece.notches if notch.begins]
        self.assertEqual(len(begins), 1)

    def test_takes_any_kind_of_path(self):
        for path in (BLOCK, str(BLOCK), os.fsencode(BLOCK)):
            self.assertEqual(dartwright.read_pattern(path), block())

    def test_a_dash_is_a_file_of_that_name(self):
        before = os.getcwd()
        with tempfile.TemporaryDirectory() as folder:
            os.chdir(folder)
            try:
                dartwright.write_pattern(block(), "-")
                self.assertEqual(os.listdir(), ["-"])
                self.assertEqual(dartwright.read_pattern("-"), block())
            finally:
                os.chdir(before)

    def test_a_file_is_replaced_only_when_told(self):
        with tempfile.TemporaryDirectory() as folder:
            path = pathlib.Path(folder) / "modèle 模.json"
            dartwright.write_pattern(block(), path)
            with self.assertRaises(dartwright.OutputExists) as caught:
                dartwright.write_pattern(moved_block(), path)
            self.assertEqual(caught.exception.path, str(path))
            self.assertIsInstance(caught.exception, FileExistsError)
            self.assertEqual(dartwright.read_pattern(path), block())
            dartwright.write_pattern(moved_block(), path, overwrite=True)
            self.assertEqual(dartwright.read_pattern(path), moved_block())

    def test_a_pattern_is_a_value(self):
        pattern = moved_block()
        self.assertEqual(copy.deepcopy(pattern), pattern)
        self.assertEqual(pickle.loads(pickle.dumps(pattern)), pattern)
        self.assertNotEqual(pattern, block())
        with self.assertRaises(AttributeError):
            pattern.name = "other"

    def test_a_part_outlives_the_pattern_that_it_came_from(self):
        self.assertEqual(block().pieces[0].notches, block().piece("front").notches)
        joined = block().seams[0].joins
        self.assertEqual([side[0].piece for side in joined], ["front", "back"])
        report = dartwright.compare(block(), moved_block()).pieces[0].notches[0].at_mm
        self.assertEqual(report[0].difference, report[0].after - report[0].before)


class Pieces(unittest.TestCase):
    def test_points_enclose_the_cloth_and_the_wedges(self):
        # The bodice's side dart has a pivot; a wedge is the triangle A, Q, B (exact geometry).
        for piece in dartwright.read_pattern(BODICE).pieces:
            points = piece.outline_points(0.001, darts_to="pivots")
            self.assertTrue(all(math.isfinite(x) and math.isfinite(y) for x, y in points))
            # Curves lie within 0.001 mm of the polygon, so areas within that times the length round it.
            around = sum(math.dist(a, b) for a, b in zip(points, points[1:] + points[:1]))
            self.assertAlmostEqual(area_of(points), piece.area_mm2, delta=0.001 * around)

    def test_a_coarser_chord_error_gives_fewer_points(self):
        piece = block().piece("front")
        self.assertLess(len(piece.outline_points(1)), len(piece.outline_points(0.001)))

    def test_an_edge_is_as_long_as_its_run(self):
        piece = block().piece("front")
        for run in piece.runs:
            lines = piece.edge_points(run.edge, 1e-4)
            length = sum(math.dist(a, b) for line in lines for a, b in zip(line, line[1:]))
            self.assertAlmostEqual(length, run.length_mm, delta=0.01)
            self.assertEqual(piece.run(run.edge), run)

    def test_a_darts_figures_agree_with_its_points(self):
        dart = block().piece("front").dart("waist dart")
        a, b = dart.mouth
        self.assertAlmostEqual(math.dist(a, b), dart.intake_mm, delta=1e-9)
        self.assertAlmostEqual(math.dist(a, dart.point), dart.legs_mm[0], delta=1e-9)
        # The triangle A, Q, B (exact geometry).
        angle = 2 * math.degrees(math.asin(dart.intake_mm / 2 / math.dist(a, dart.pivot)))
        self.assertAlmostEqual(angle, dart.angle_deg, delta=1e-6)

    def test_a_chord_error_that_is_none_is_refused(self):
        for wrong in (0, -1, math.nan, math.inf):
            with self.assertRaises(dartwright.BadWords):
                block().piece("front").outline_points(wrong)
        with self.assertRaises(dartwright.BadWords):
            block().piece("front").outline_points(darts_to="seams")


class Checks(unittest.TestCase):
    def test_a_true_block_is_true(self):
        report = dartwright.check(block())
        self.assertTrue(report.passed)
        self.assertEqual([seam.name for seam in report.seams], ["side", "shoulder", "centre back"])
        self.assertEqual(len(report.darts), 4)

    def test_a_seam_that_does_not_match_is_found(self):
        report = dartwright.check(dartwright.read_pattern(FIXTURES / "faults" / "seam-length.json"))
        finding = report.findings[0]
        self.assertFalse(report.passed)
        self.assertEqual((finding.check, finding.severity, finding.seam), ("seam-length", "fault", "side"))
        self.assertAlmostEqual(finding.difference, 3, delta=1e-9)  # the fixture's side is 3 mm longer
        self.assertIsNone(finding.dart)
        self.assertTrue(finding.remedy)

    def test_tolerances_go_before_the_patterns_own(self):
        pattern = dartwright.read_pattern(FIXTURES / "faults" / "seam-length.json")
        lenient = dartwright.check(pattern, {"seam": 5})
        self.assertNotIn("seam-length", [finding.check for finding in lenient.findings])
        with self.assertRaises(dartwright.UnknownName):
            dartwright.check(pattern, {"seams": 5})
        with self.assertRaises(dartwright.BadWords):
            dartwright.check(pattern, {"seam": -1})

    def test_a_seam_is_walked(self):
        walk = dartwright.walk(moved_block(), "side")
        self.assertEqual([row.mark for row in walk.rows], ["start", "notch", "dart", "end"])
        self.assertEqual(walk.rows[2].sides_mm[1], None)
        self.assertAlmostEqual(walk.difference_mm, 0, delta=1e-6)

    def test_a_line_is_measured_across_pieces(self):
        line = dartwright.measure(moved_block(), "bust line")
        self.assertAlmostEqual(line.total_mm, sum(piece.total_mm for piece in line.pieces), delta=1e-9)
        self.assertAlmostEqual(line.total_mm, dartwright.measure(block(), "bust line").total_mm, delta=0.1)
        with self.assertRaises(dartwright.Impossible):
            dartwright.measure_level(block(), "side@6000/armhole")


class Operations(unittest.TestCase):
    def test_a_moved_dart_keeps_what_it_must(self):
        comparison = dartwright.compare(block(), moved_block())
        self.assertTrue(comparison.is_kept, comparison.losses)
        changes = {dart.name: dart.change for dart in comparison.pieces[0].darts}
        self.assertEqual(changes, {"waist dart": "gone", "bust dart": "kept", "side dart": "opened"})

    def test_the_words_may_be_numbers_fractions_and_points(self):
        half = dartwright.apply(block(), "pivot", piece="front", dart="waist dart", to="side@60/armhole",
                                share=Fraction(1, 2), name="side dart", hold=None)
        whole_deg = block().piece("front").dart("waist dart").angle_deg
        self.assertAlmostEqual(half.piece("front").dart("side dart").angle_deg, whole_deg / 2, delta=1e-9)
        six = dartwright.apply(block(), "pivot", piece="front", dart="waist dart", to="side@60/armhole", angle=6,
                               name="side dart")
        self.assertAlmostEqual(six.piece("front").dart("side dart").angle_deg, 6, delta=1e-9)
        pointed = dartwright.apply(block(), "repoint", piece="front", dart="waist dart", back_off=25.5)
        self.assertAlmostEqual(pointed.piece("front").dart("waist dart").back_off_mm, 25.5, delta=1e-6)
        x, y = block().piece("front").dart("waist dart").point
        moved = dartwright.apply(block(), "repoint", piece="front", dart="waist dart", point=(x, y - 1e-7))
        self.assertAlmostEqual(moved.piece("front").dart("waist dart").point[1], y - 1e-7, delta=1e-9)

    def test_every_operation_can_be_asked_for(self):
        split = dartwright.apply(block(), "split", piece="front", dart="waist dart",
                                 to=["side@60/armhole=60%", "shoulder@50%=40%"], name=["under arm", None])
        self.assertEqual(len(split.piece("front").darts), 3)
        self.assertIn("under arm", [dart.name for dart in split.piece("front").darts])
        merged = dartwright.apply(block(), "merge", piece="front", dart="waist dart", with_="bust dart")
        self.assertEqual(len(merged.piece("front").darts), 1)
        gathered = dartwright.apply(block(), "close", piece="front", dart="waist dart", as_="gathers", span=60)
        self.assertEqual([dart.name for dart in gathered.piece("front").darts], ["bust dart"])
        opened = dartwright.apply(dartwright.read_pattern(BODICE), "open", piece="front")
        self.assertIn("left side", [run.edge for run in opened.piece("front").runs])
        trued = dartwright.apply(moved_block(), "true", piece="front", dart="side dart", legs="mean",
                                 tolerance_legs=0.4)
        self.assertEqual(trued.made[-1].operation, "true")
        self.assertEqual(trued.made[-1].words["tolerance legs"], "0.4")

    def test_what_was_made_can_be_made_again(self):
        moved = moved_block()
        self.assertEqual(dartwright.replay(block(), moved.made), moved)
        by_words = dartwright.Operation("pivot", moved.made[0].words)
        self.assertEqual(by_words, moved.made[0])
        self.assertEqual(dartwright.perform(block(), by_words), moved)

    def test_the_pattern_that_was_given_is_not_changed(self):
        before = block()
        dartwright.apply(before, "repoint", piece="front", dart="waist dart", back_off=30)
        self.assertEqual(before, block())

    def test_words_of_another_kind_are_refused(self):
        for wrong in (True, {"a": 1}, (1, 2, 3), b"front"):
            with self.assertRaises(TypeError):
                dartwright.apply(block(), "pivot", piece=wrong)

    def test_threads_work_on_one_pattern(self):
        pattern = block()
        shares = [Fraction(part, 20) for part in range(1, 20)]

        def angle(share):
            moved = dartwright.apply(pattern, "pivot", piece="front", dart="waist dart", to="side@60/armhole",
                                     share=share, name="side dart")
            return moved.piece("front").dart("side dart").angle_deg

        with ThreadPoolExecutor(4) as pool:
            angles = list(pool.map(angle, shares))
        whole = pattern.piece("front").dart("waist dart").angle_deg
        for share, found in zip(shares, angles):
            self.assertAlmostEqual(found, whole * share, delta=1e-9)


def square(allowance):
    """A square of 100 mm, with that allowance on its named edges."""
    corners = {"lower": [100, 0], "right": [100, 100], "upper": [0, 100], "left": [0, 0]}
    piece = {"name": "square", "cut": {"quantity": 1}, "grain": {"from": [50, 20], "to": [50, 80]},
             "outline": {"start": [0, 0], "items": [{"edge": edge, "to": to} for edge, to in corners.items()]},
             "allowance": allowance}
    return dartwright.parse_pattern(json.dumps({"dartwright": 1, "name": "square", "unit": "mm", "pieces": [piece],
                                                "seams": []}))


class Cutting(unittest.TestCase):
    def test_an_even_allowance_makes_a_larger_square(self):
        # 10 mm round a square of 100 mm, corners met: a square of 120 mm (exact geometry).
        line = dartwright.cutting_line(square(dict.fromkeys(["lower", "right", "upper", "left"], 10)), "square")
        self.assertAlmostEqual(area_of(line.points), 120 * 120, delta=1e-6)
        self.assertEqual([corner.kind for corner in line.corners], ["met"] * 4)
        self.assertEqual(line.undecided, [])

    def test_an_edge_that_nothing_decides_is_told(self):
        line = dartwright.cutting_line(square({"upper": 10}), "square")
        self.assertAlmostEqual(area_of(line.points), 100 * 110, delta=1e-6)
        self.assertEqual(sorted(stretch.edge for stretch in line.undecided), ["left", "lower", "right"])
        self.assertEqual({(stretch.start_mm, stretch.end_mm) for stretch in line.undecided}, {(0, 100)})
        decided = dartwright.cutting_line(square({"upper": 10}), "square", undecided_mm=10)
        self.assertAlmostEqual(area_of(decided.points), 120 * 120, delta=1e-6)

    def test_what_cannot_be_cut_is_refused(self):
        with self.assertRaises(dartwright.UnknownName):
            dartwright.cutting_line(square({}), "sleeve")
        with self.assertRaises(dartwright.Impossible):
            dartwright.cutting_line(square({"upper": 90}), "square")


if __name__ == "__main__":
    unittest.main()
