"""The Python of the documents does what they print.

A fenced block marked `python` is run with what the blocks before it in its document left; one without a mark that
follows at once is what it prints.
"""

import contextlib
import io
import os
import pathlib
import re
import tempfile
import unittest

from samples import FIXTURES

DOCUMENTS = sorted((FIXTURES.parent / "docs").glob("**/*.md"))
BLOCKS = re.compile(r"^```python\n(.*?)^```\n(?:\n^```\n(.*?)^```$)?", re.MULTILINE | re.DOTALL)


def run(document):
    """How many blocks it has; AssertionError where one prints something else."""
    names = {}
    blocks = BLOCKS.findall(document.read_text(encoding="utf-8"))
    for source, shown in blocks:
        printed = io.StringIO()
        with contextlib.redirect_stdout(printed):
            exec(compile(source, document.name, "exec"), names)
        if printed.getvalue() != shown:
            raise AssertionError(f"{document.name} shows\n{shown}\nbut prints\n{printed.getvalue()}")
    return len(blocks)


class Documents(unittest.TestCase):
    def test_print_what_they_show(self):
        before = os.getcwd()
        with tempfile.TemporaryDirectory() as folder:
            (pathlib.Path(folder) / "fixtures").symlink_to(FIXTURES)
            os.chdir(folder)
            try:
                self.assertGreater(sum(map(run, DOCUMENTS)), 3)
            finally:
                os.chdir(before)


if __name__ == "__main__":
    unittest.main()
