"""What dartwright refuses, each with what a program needs to go on."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple


class Error(Exception):
    """Anything that dartwright refuses; its text is what is said to a person."""


class FileProblem(NamedTuple):
    """One thing wrong with a file."""

    pointer: str
    """Where: a JSON pointer, such as `/pieces/0/name`."""
    found: str
    expected: str


class InvalidFile(Error, ValueError):
    """A file that is not valid, with its problems in the file's order, a hundred at most; the message says how
    many more."""

    def __init__(self, message: str, file: str = "", problems: Iterable[tuple[str, str, str]] = ()) -> None:
        super().__init__(message)
        self.file = file
        self.problems = [FileProblem(*problem) for problem in problems]


class FileTrouble(Error, OSError):
    """A file that cannot be read or written."""


class OutputExists(Error, FileExistsError):
    """An output that exists already and was not to be replaced."""

    def __init__(self, message: str, path: str = "") -> None:
        super().__init__(message)
        self.path = path


class UnknownName(Error, LookupError):
    """A name that does not exist, with those that do."""

    def __init__(self, message: str, kind: str = "", name: str = "", known: Iterable[str] = ()) -> None:
        super().__init__(message)
        self.kind = kind
        """What was looked for: `piece`, `edge`, `dart`, ..."""
        self.name = name
        self.known = list(known)


class BadWords(Error, ValueError):
    """Words that are no length, share, place, angle or operation; the text says what was expected."""


class Impossible(Error):
    """An operation that geometry does not allow as asked."""

    def __init__(self, message: str, reason: str = "", remedy: str = "") -> None:
        super().__init__(message)
        self.reason = reason
        self.remedy = remedy
        """The nearest thing that would work; empty if there is none."""
