"""Exercises, and drafts judged by them, through the Python module."""

import csv
import json
import os
import pathlib
import tempfile
import unittest
from concurrent.futures import ThreadPoolExecutor

import dartwright
from samples import EXERCISE, FIXTURES


def exercise():
    return dartwright.read_exercise(EXERCISE)


class Exercises(unittest.TestCase):
    def test_says_what_the_file_says(self):
        written = json.loads(EXERCISE.read_text(encoding="utf-8"))
        read = exercise()
        self.assertEqual(read.name, written["name"])
        self.assertEqual(read.unit, written["unit"])
        self.assertEqual([task.name for task in read.tasks], [task["name"] for task in written["tasks"]])
        self.assertEqual(read.tasks[0].marks, written["tasks"][0]["marks"])
        self.assertEqual(read.may_differ, written["may_differ"])
        self.assertEqual(read.of, sum(sum(task.marks.values()) for task in read.tasks))

    def test_text_is_read_as_the_file_is(self):
        text = EXERCISE.read_text(encoding="utf-8")
        self.assertEqual(dartwright.parse_exercise(text, str(EXERCISE)).finished, exercise().finished)

    def test_what_it_names_may_be_kept_to_its_own_folder(self):
        written = json.loads(EXERCISE.read_text(encoding="utf-8"))
        with tempfile.TemporaryDirectory() as name:
            folder = pathlib.Path(name)
            inner = folder / "exercise"
            inner.mkdir()
            for beside, is_kept in ((inner, True), (folder, False)):
                pattern = beside / "pattern.json"
                pattern.write_bytes((EXERCISE.parent / written["pattern"]).read_bytes())
                sent = inner / "sent.json"
                sent.write_text(json.dumps({**written, "pattern": os.path.relpath(pattern, inner)}), "utf-8")
                free = dartwright.read_exercise(sent)
                self.assertEqual(free.finished, exercise().finished)
                for read in (lambda: dartwright.read_exercise(sent, own_folder=True),
                             lambda: dartwright.parse_exercise(sent.read_text("utf-8"), str(sent), own_folder=True)):
                    if is_kept:
                        self.assertEqual(read().finished, free.finished)
                    else:
                        self.assertRaises(dartwright.InvalidFile, read)

    def test_what_is_no_exercise_is_refused(self):
        for text in ("", "{}", '{"dartwright": 1}'):
            with self.assertRaises(dartwright.InvalidFile):
                dartwright.parse_exercise(text)
        with self.assertRaises(dartwright.FileTrouble):
            dartwright.read_exercise("no such file")


class Judging(unittest.TestCase):
    def test_the_finished_pattern_has_all_marks(self):
        judged = dartwright.assess(exercise(), exercise().finished)
        self.assertEqual((judged.marks, judged.of), (exercise().of, exercise().of))
        self.assertIsNone(judged.unread)
        self.assertIsNone(judged.unread_kind)
        self.assertEqual({line.rung for line in all_lines(judged)}, {"full"})
        self.assertEqual([piece.name for piece in judged.pieces],
                         [piece.name for piece in exercise().finished.pieces])

    def test_a_draft_in_which_nothing_was_done_keeps_what_survives(self):
        judged = dartwright.assess(exercise(), exercise().pattern)
        by_task = {task.name: (task.marks, task.of) for task in judged.tasks}
        moved, of = by_task["move the dart"]
        self.assertEqual((moved, of), (0, 18))  # no dart is where it was asked, and the old one is open
        self.assertEqual(by_task["keep the rest"], (10, 10))
        self.assertEqual(judged.marks, sum(marks for marks, _ in by_task.values()))
        self.assertTrue(all(line.remedy for line in all_lines(judged) if line.rung == "fault"))

    def test_marks_add_up(self):
        judged = dartwright.assess(exercise(), exercise().pattern)
        for task in judged.tasks:
            self.assertEqual(task.marks, sum(criterion.marks for criterion in task.criteria))
            self.assertEqual(task.of, sum(criterion.of for criterion in task.criteria))

    def test_a_draft_made_here_is_judged_as_one_from_a_file(self):
        asked = exercise()
        draft = dartwright.apply(asked.pattern, "pivot", piece="front", dart="waist dart",
                                 to="side@2 1/2in/armhole", name="other name", back_off=30)
        with tempfile.TemporaryDirectory() as folder:
            path = pathlib.Path(folder) / "draft.json"
            dartwright.write_pattern(draft, path)
            self.assertEqual(dartwright.assess(asked, dartwright.read_pattern(path)).marks,
                             dartwright.assess(asked, draft).marks)

    def test_a_class_has_the_marks_that_were_worked_out_by_hand(self):
        whole = FIXTURES / "exercises" / "chorus-class"
        asked = dartwright.read_exercise(whole / "exercise.json")
        with (whole / "expected-marks.csv").open(encoding="utf-8", newline="") as table:
            rows = list(csv.DictReader(table))
        self.assertGreater(len(rows), 10)
        for row in rows:
            judged = dartwright.assess(asked, dartwright.read_pattern(whole / "drafts" / f"{row['student']}.json"))
            self.assertEqual((judged.marks, judged.of), (float(row["marks"]), float(row["of"])), row["student"])
            lost = [(criterion.criterion, criterion.rung) for task in judged.tasks for criterion in task.criteria
                    if criterion.marks < criterion.of]
            self.assertEqual(lost, [(row["criterion"], row["rung"])] if row["criterion"] else [], row["student"])

    def test_threads_judge_by_one_exercise(self):
        asked = exercise()
        drafts = [asked.finished, asked.pattern] * 8
        with ThreadPoolExecutor(4) as pool:
            marks = [judged.marks for judged in pool.map(lambda draft: dartwright.assess(asked, draft), drafts)]
        self.assertEqual(marks[:2] * 8, marks)
        self.assertGreater(marks[0], marks[1])


def all_lines(judged):
    return [line for task in judged.tasks for criterion in task.criteria for line in criterion.lines]


if __name__ == "__main__":
    unittest.main()
