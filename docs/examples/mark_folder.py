#!/usr/bin/env python3
"""Marks a folder of drafts by the block that they were made from, with the standard library alone.

mark_folder.py BLOCK FOLDER [--program PROGRAM]

Writes a table (CSV) to standard output, a row for every draft: is it true, did it keep what moving darts must
keep, and what to mend first. A draft that cannot be read is a row with the reason. Exit status 1 if a draft did
not pass, 3 if one could not be read.
"""

import argparse
import csv
import json
import os
import pathlib
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor

COLUMNS = ["draft", "true", "kept", "faults", "losses", "mend first", "cannot be read"]


def told(program, *words):
    """What the program says as JSON; or None and why not."""
    done = subprocess.run([program, *words, "--format", "json"], capture_output=True, encoding="utf-8")
    if done.returncode in (0, 1):
        return json.loads(done.stdout), None
    return None, done.stderr.strip()


def safe(text):
    """A spreadsheet takes text that begins so for a formula."""
    return "'" + text if text.startswith(("=", "+", "-", "@", "\t", "\r")) else text


def row_of(program, block, draft):
    row = dict.fromkeys(COLUMNS, "") | {"draft": safe(draft.name)}
    checked, trouble = told(program, "check", str(draft))
    compared = None
    if checked:
        compared, trouble = told(program, "compare", str(block), str(draft))
    if not compared:
        return row | {"cannot be read": safe(trouble)}
    faults = [each for each in checked["files"][0]["findings"] if each["severity"] == "fault"]
    wrong = [*compared["losses"], *faults]
    return row | {"true": "no" if faults else "yes", "kept": "yes" if compared["kept"] else "no",
                  "faults": len(faults), "losses": len(compared["losses"]),
                  "mend first": safe(f"{wrong[0]['message']} {wrong[0]['remedy']}") if wrong else ""}


def main():
    words = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    words.add_argument("block", type=pathlib.Path)
    words.add_argument("folder", type=pathlib.Path)
    words.add_argument("--program", default="dartwright")
    asked = words.parse_args()
    drafts = sorted(asked.folder.glob("*.json"))
    if not drafts:
        words.error(f"{asked.folder}: no drafts; expected files that end in .json")
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        rows = list(pool.map(lambda draft: row_of(asked.program, asked.block, draft), drafts))
    table = csv.DictWriter(sys.stdout, COLUMNS, lineterminator="\n")
    table.writeheader()
    table.writerows(rows)
    if any(row["cannot be read"] for row in rows):
        return 3
    return 1 if any("no" in (row["true"], row["kept"]) for row in rows) else 0


if __name__ == "__main__":
    sys.exit(main())
