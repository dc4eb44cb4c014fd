"""Dates of whole columns: a day and a time of day are each read once, however many texts hold them."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from wellchem.reading.dates import PrintedDate, clock, day_leads, parsed

_SERIAL = re.compile(r"[345]\d{4}(?:\.\d+)?")  # a moment that a spreadsheet left as its number: 1982 to 2064
_SERIAL_ZERO = datetime(1899, 12, 30)
_LONGEST_TIME = 24  # letters; with the longest day before it a text is still no longer than a date can be
_NO_DAY = np.iinfo(np.int64).min  # what numpy takes for no time
NO_CLOCK = -1


@dataclass(frozen=True, eq=False)
class DateTexts:
    """Distinct texts parted at their first blank (or at ISO 8601's T) into a day and what stands behind it.

    `day[i]` and `behind[i]` tell which of `days` and of `rests` text i is made of; `read[k]` is what day k says alone.
    """

    texts: NDArray[Any]
    day: NDArray[np.int64]
    days: NDArray[Any]
    behind: NDArray[np.int64]
    rests: NDArray[Any]
    read: list[PrintedDate | None]

    @classmethod
    def of(cls, texts: NDArray[Any]) -> DateTexts:
        """Parts texts that hold no blanks at their ends."""
        pairs = [text.partition("T" if text[10:11] == "T" else " ")[::2] for text in texts]
        made = np.empty((len(pairs), 2), object)
        made[:] = pairs or np.empty((0, 2), object)
        (day, days), (behind, rests) = (pd.factorize(made[:, at]) for at in (0, 1))
        return cls(texts, day, days, behind, rests, [_day(str(text)) for text in days])


@dataclass(frozen=True, eq=False)
class PrintedDates:
    """Dates of many texts: the moment (NaT where a text is none), whether its time is printed, whether day and month
    could be exchanged."""

    when: NDArray[np.datetime64]
    timed: NDArray[np.bool_]
    either: NDArray[np.bool_]


def parsed_all(printed: DateTexts, day_comes_first: bool) -> PrintedDates:
    """Dates of many texts, each as `parsed` reads it alone; a spreadsheet's serial number of a day is one besides."""
    day, either = np.full(len(printed.days), _NO_DAY), np.zeros(len(printed.days), bool)
    for place, found in enumerate(printed.read):
        if found is not None:
            day[place], either[place] = _moment(found, day_comes_first), found.either is not None
    part = np.array([found is not None and found.timed for found in printed.read], bool)[printed.day]
    day, either = day[printed.day], either[printed.day]
    timed = np.array([text != "" for text in printed.rests], bool)[printed.behind]
    clocks = np.array([seconds_of_day(str(text)) if text else 0 for text in printed.rests], np.int64)[printed.behind]
    alone = np.array([_SERIAL.fullmatch(text) is not None for text in printed.days], bool)[printed.day]
    apart = (day != _NO_DAY) & (clocks != NO_CLOCK) & ~(alone & timed)
    when = np.where(apart, day + clocks, _NO_DAY).view("M8[s]")
    either, timed = either & apart, (timed | part) & apart
    for place in np.flatnonzero(~apart).tolist():
        found = parsed(str(printed.texts[place]))
        if found is not None:
            when[place] = _moment(found, day_comes_first).astype("M8[s]")
            timed[place], either[place] = found.timed, found.either is not None
    return PrintedDates(when, timed, either)


def _moment(found: PrintedDate, day_comes_first: bool) -> np.int64:
    """Seconds from 1970 of the reading that the order of day and month asks for."""
    when = found.either if found.either is not None and day_comes_first else found.when
    return np.datetime64(when, "s").astype(np.int64)


def _day(text: str) -> PrintedDate | None:
    """A day without a time, or a spreadsheet's number of a moment."""
    if _SERIAL.fullmatch(text):
        return PrintedDate(_SERIAL_ZERO + timedelta(seconds=round(float(text) * 86400)), float(text) % 1 > 0)
    found = parsed(text)
    return None if found is None or found.timed else found


def seconds_of_day(text: str) -> int:
    """A time of day in seconds; `NO_CLOCK` where the text is none, or longer than any behind a date."""
    found = clock(text) if len(text) < _LONGEST_TIME else None
    return NO_CLOCK if found is None else found[0] * 3600 + found[1] * 60 + found[2]


def day_first(columns: Iterable[DateTexts]) -> bool | None:
    """Whether the day comes first in dates like 03/04/2024, as the other dates tell; None where none does."""
    told: set[bool | None] = set()
    for printed in columns:
        told.update(day_leads(str(text)) for text in printed.days)
        whole = np.array([found is None for found in printed.read], bool)[printed.day]
        told.update(day_leads(str(text)) for text in printed.texts[whole])
    told.discard(None)
    return told.pop() if len(told) == 1 else None
