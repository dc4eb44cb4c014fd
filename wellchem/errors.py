"""Every error that the library raises. Each message says what was wrong, where, and what to do."""

from typing import Any


class WellchemError(Exception):
    """Base of all errors of this library."""


class ReadError(WellchemError):
    """A source could not be read.

    `source` names the file; `advice` says what its holder can do.
    """

    advice = "Check the file."

    def __init__(self, source: str, detail: str = "", advice: str = "") -> None:
        self.source = source
        self.detail = detail
        self.advice = advice or self.advice
        what = (self.__doc__ or "").strip().splitlines()[0].rstrip(".")
        super().__init__(f"{source}: {what}{f' ({detail})' if detail else ''}. {self.advice}")


class MissingFile(ReadError):
    """There is no such file."""

    advice = "Check the path."


class EmptyFile(ReadError):
    """The file is empty."""

    advice = "Ask the laboratory to send it again."


class CorruptFile(ReadError):
    """The file is damaged or is not what its name says."""

    advice = "Open it in its own program and save it again, or ask the laboratory for a new copy."


class EncryptedFile(ReadError):
    """The file is protected by a password."""

    advice = "Save a copy without the password and read that."


class NoText(ReadError):
    """The pages are pictures without text (a scan or a photograph)."""

    advice = "Ask the laboratory for the electronic report, or run text recognition over it and check every number."


class NothingFound(ReadError):
    """No analyte result was recognised in it.

    `unread` holds what was printed there, each with its place and reason (wellchem.models.sample.Unread).
    """

    unread: tuple[Any, ...] = ()

    advice = "See the unread list for what it holds; a missing spelling or header word can be added as one row of data."


class UnknownFormat(ReadError):
    """The format is not one that can be read."""

    advice = "Give delimited text, a spreadsheet or a PDF with text, or name it with format=."


class MissingExtra(ReadError):
    """A package that this format needs is not installed."""

    advice = "Install the extra that the message names."


class UnitError(WellchemError, ValueError):
    """A unit is unknown, or cannot be right for the analyte."""


class UnknownAnalyte(WellchemError, KeyError):
    """A name is not in the vocabulary; the message gives the nearest names."""

    def __str__(self) -> str:
        return str(self.args[0]) if self.args else ""


class NotASample(WellchemError, TypeError):
    """Something else was given than the sample that is needed."""


class AmbiguousResult(WellchemError, LookupError):
    """More than one result of the sample fits what was asked for."""


class ValueUnread(WellchemError, ValueError):
    """A value given by hand could not be understood."""


class FrameError(WellchemError, ValueError):
    """A frame does not have the columns or types that the schema states."""


class LimitsError(WellchemError, ValueError):
    """A table of limits breaks the schema; the message lists each faulty row and why."""


class UnknownAuthority(WellchemError, KeyError):
    """No limits of that authority are known; the message lists those that are."""

    def __str__(self) -> str:
        return str(self.args[0]) if self.args else ""
