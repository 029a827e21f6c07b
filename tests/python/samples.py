"""Patterns that the tests read, and a helper to open them."""

import pathlib

import dartwright

FIXTURES = pathlib.Path(__file__).resolve().parent.parent.parent / "fixtures"
BLOCK = FIXTURES / "blocks" / "close-fitting.json"
BODICE = FIXTURES / "workshop" / "chorus-bodice.json"
EXERCISE = FIXTURES / "exercises" / "bust-dart-to-side.json"


def block():
    return dartwright.read_pattern(BLOCK)


def moved_block():
    return dartwright.apply(block(), "pivot", piece="front", dart="waist dart", to="side@60/armhole",
                            name="side dart", press="waist")
