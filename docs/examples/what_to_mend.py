#!/usr/bin/env python3
"""Says what each student of a class is to mend first, those with the fewest marks first.

what_to_mend.py EXERCISE DRAFT... [--program PROGRAM]

A draft may be a file or a folder of them. Exit status as that of `dartwright assess`: 1 if a draft has faults or
could not be marked.
"""

import argparse
import json
import subprocess
import sys


def first_to_mend(draft):
    """The remedy of the criterion that cost most, or None."""
    criteria = [criterion for task in draft["tasks"] for criterion in task["criteria"]]
    dearest = max(criteria, key=lambda criterion: criterion["of"] - criterion["marks"])
    return next((line["remedy"] for line in dearest["lines"] if line["rung"] == dearest["rung"] and line["remedy"]),
                None)


def words_of(draft):
    if draft["unread"]:
        return f"{draft['student']}: not marked: {draft['unread']}"
    if draft["marks"] == draft["of"]:
        return f"{draft['student']}: all {draft['of']:g} marks"
    return f"{draft['student']}: {draft['marks']:g} of {draft['of']:g} marks. {first_to_mend(draft) or ''}".rstrip()


def main():
    words = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    words.add_argument("exercise")
    words.add_argument("draft", nargs="+")
    words.add_argument("--program", default="dartwright")
    asked = words.parse_args()
    done = subprocess.run([asked.program, "assess", asked.exercise, *asked.draft, "--format", "json"],
                          stdout=subprocess.PIPE, encoding="utf-8")
    if not done.stdout:
        return done.returncode
    for draft in sorted(json.loads(done.stdout)["drafts"], key=lambda draft: (draft["marks"] or 0, draft["student"])):
        print(words_of(draft))
    return done.returncode


if __name__ == "__main__":
    sys.exit(main())
