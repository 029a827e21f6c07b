"""Operations on a pattern, asked for in the words that its `made` list has."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from numbers import Integral, Real
from typing import Any, Union

from dartwright._dartwright import Operation, Pattern, perform

Word = Union[str, float, Fraction, tuple[float, float]]
"""Text as it is written for the program; a number, which is mm or, of an angle, degrees; a share such as
`Fraction(1, 3)`; or a point, mm."""

Words = Union[Word, list[Any], None]
"""A word, a list of them for a numbered key, or None for none."""

# The keys of a `made` list that are written with an underscore; in the others it stands for a space.
_WITH_UNDERSCORE = frozenset({"back_off", "centre_seam"})


def _key(name: str) -> str:
    name = name.rstrip("_")
    return name if name in _WITH_UNDERSCORE else name.replace("_", " ")


def _number(value: float) -> str:
    # Plain decimals: an exponent is no length. The text gives the same number when it is read.
    return format(Decimal(repr(float(value))), "f")


def _text(value: Word) -> str:
    if isinstance(value, str):
        return value
    if isinstance(value, Fraction):
        return f"{value.numerator}/{value.denominator}"
    if isinstance(value, Integral) and not isinstance(value, bool):
        return str(int(value))
    if isinstance(value, Real) and not isinstance(value, bool):
        return _number(float(value))
    if isinstance(value, tuple) and len(value) == 2:
        return ",".join(_number(coordinate) + "mm" for coordinate in value)
    raise TypeError(f"{value!r} is no word of a request; expected text, a number, a Fraction or a point")


def _words(name: str, value: Words) -> Iterator[tuple[str, str]]:
    if isinstance(value, list):
        for number, one in enumerate(value, start=1):
            key = _key(name) if number == 1 else f"{_key(name)} {number}"
            if one is not None:
                yield key, _text(one)
    elif value is not None:
        yield _key(name), _text(value)


def apply(pattern: Pattern, operation: str, /, **words: Words) -> Pattern:
    """Does an operation, and gives the new pattern; the operation is the last of its `made` list.

    The words are those of the program's options and of the `made` list:

        apply(block, "pivot", piece="front", dart="waist dart", to="side@60/armhole", share="50%")
        apply(block, "split", piece="front", dart="waist dart", to=["side@60/armhole=60%", "shoulder@50%=40%"])
        apply(block, "close", piece="front", dart="waist dart", as_="gathers", span=60)
        apply(block, "repoint", piece="front", dart="waist dart", back_off=25)
        apply(block, "true", seam="side", end="waist", tolerance_seam=2)

    Numbers are mm or, of an angle, degrees; `to=[...]` says `to`, `to 2`, ... of a list; an underscore at the end
    of a name keeps it apart from Python's own words, and None leaves a word out. BadWords, UnknownName,
    Impossible.
    """
    request = {key: text for name, value in words.items() for key, text in _words(name, value)}
    return perform(pattern, Operation(operation, request))
