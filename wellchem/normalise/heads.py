"""What a report says of each sample, understood: dates in the report's own order, role, sampling point, matrix.

Columns with an entry a sample; each distinct text is understood once.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import Role, SamplingPoint
from wellchem.normalise.numbers import plain_numbers
from wellchem.reading.date_columns import NO_CLOCK, DateTexts, PrintedDates, day_first, parsed_all, seconds_of_day
from wellchem.reading.rows import Coded, SampleHeads, of
from wellchem.vocabulary import Vocabulary

ROLES = tuple(Role)
Times = NDArray[np.datetime64]

_DIGITS = str.maketrans("123456789", "000000000")
_NUMBER = re.compile(r"[-+]?\d+(?:[.,]\d+)?")
_DEGREES = re.compile(r"[-+]?\d+(?:[.,]\d+)?°?\s*[NSEWO]?")
_FEET = re.compile(r"\b(?:ft|feet|foot|pieds?|fu(?:ß|ss)|pies)\b|'", re.IGNORECASE)
_METRES = re.compile(r"\b(?:m|metres?|meters?|mètres?|metros?)\b", re.IGNORECASE)
_METRES_A_FOOT = 0.3048  # international foot, exact


@dataclass(frozen=True, eq=False)
class Heads:
    """The samples. `assumptions` hold for every result of a sample; `role` indexes ROLES; depth is in metres."""

    printed: SampleHeads
    point: Coded
    role: NDArray[np.int8]
    water: NDArray[np.bool_]
    collected: Times
    collected_timed: NDArray[np.bool_]
    received: Times
    received_timed: NDArray[np.bool_]
    analysed: Times
    analysed_timed: NDArray[np.bool_]
    latitude: NDArray[np.float64]
    longitude: NDArray[np.float64]
    well_depth: NDArray[np.float64]
    assumptions: Coded


def heads_of(vocabulary: Vocabulary, printed: SampleHeads, decimal_comma: bool, day_leads: bool | None = None) -> Heads:
    """Every sample of a reading.

    The order of day and month is what the report prints of it (`day_leads`), else what a date decides, else what puts
    no sample's receipt before its collection; a decimal comma lets the day come first where nothing does.
    """
    columns = [_Dates(column) for column in (printed.date_collected, printed.date_received, printed.date_analysed)]
    order = _order(columns) if day_leads is None else day_leads
    first = decimal_comma if order is None else order
    collected, received, analysed = (column.read(first) for column in columns)
    times, timed = _with_times(collected, printed.time_collected)
    points = _mapped(
        printed.point, lambda text: text if text in SamplingPoint._value2member_map_ else vocabulary.point(text)
    )
    # A point of sampling that is no part of the plumbing is the place: "Point de prélèvement: Ferme du Moulin".
    printed = replace(printed, site=printed.site.or_else(printed.point.kept(points.codes < 0)))
    supposed = (collected.either | received.either | analysed.either) & (order is None)
    assumed = Coded(np.where(supposed, 0, -1).astype(np.int32), of([f"date_order={'dmy' if first else 'mdy'}"]).texts)
    return Heads(
        printed,
        points,
        _roles(vocabulary, printed),
        _each(printed.matrix, lambda text: vocabulary.is_water(text) is not False, True, np.bool_),
        times,
        timed,
        received.when,
        received.timed,
        analysed.when,
        analysed.timed,
        _coordinates(printed.latitude, 90.0),
        _coordinates(printed.longitude, 180.0),
        _each(printed.well_depth, _metres, np.nan, np.float64),
        assumed,
    )


class _Dates:
    """A column of dates, its texts parted once for however often they are read."""

    def __init__(self, column: Coded) -> None:
        self.column, self.printed = column, DateTexts.of(column.texts)

    def read(self, day_comes_first: bool) -> PrintedDates:
        """The date of each row."""
        found = parsed_all(self.printed, day_comes_first)
        lookup = self.column.lookup
        return PrintedDates(
            lookup(found.when, np.datetime64("NaT")), lookup(found.timed, False), lookup(found.either, False)
        )


def _order(columns: list[_Dates]) -> bool | None:
    """Whether the day comes first in dates such as 03/04/2024, None where nothing tells."""
    told = day_first(column.printed for column in columns)
    if told is not None or not any(parsed_all(column.printed, True).either.any() for column in columns):
        return told
    backwards = {}
    for first in (True, False):
        collected, *later = (column.read(first).when.astype("M8[D]") for column in columns)
        backwards[first] = any((collected > days).any() for days in later)
    return backwards[False] if backwards[True] != backwards[False] else None


def _with_times(dates: PrintedDates, times: Coded) -> tuple[Times, NDArray[np.bool_]]:
    """Moments with the time of day of a column of their own where the date prints none, and whether one is printed."""
    seconds = times.lookup(np.array([seconds_of_day(str(text)) for text in times.texts], np.int64), NO_CLOCK)
    own = (seconds != NO_CLOCK) & ~dates.timed & ~np.isnat(dates.when)
    return dates.when + np.where(own, seconds, 0).astype("m8[s]"), dates.timed | own


def _each(column: Coded, of_text: Callable[[str], Any], missing: Any, kind: Any) -> NDArray[Any]:
    """A number or truth for each row from its text."""
    values = [missing if (value := of_text(str(text))) is None else value for text in column.texts]
    return column.lookup(np.array(values, kind), missing)


def _mapped(column: Coded, of_text: Callable[[str], Any]) -> Coded:
    """Another text for each row, from its text."""
    made = of([str(value) if (value := of_text(str(text))) else "" for text in column.texts])
    return column.reworded(made)


def _roles(vocabulary: Vocabulary, printed: SampleHeads) -> NDArray[np.int8]:
    """Role of each sample: of its type's cell, else of a name built of a quality-control code."""
    routine = ROLES.index(Role.ROUTINE)

    def index(role: Role | None) -> int:
        return routine if role is None else ROLES.index(role)

    # The tables room says roles in their own words where several kinds of one role are one sample.
    words = {str(one): one for one in ROLES}
    role = _each(
        printed.sample_type, lambda text: index(words.get(text) or vocabulary.sample_role(text)), routine, np.int8
    )
    coded = _each(printed.matrix, lambda text: index(vocabulary.matrix_role(text)), routine, np.int8)
    role = np.where(role == routine, coded, role).astype(np.int8)
    for column in (printed.sample_id, printed.site):
        patterns = "\n".join(column.texts).translate(_DIGITS).split("\n") if len(column.texts) else []
        if len(patterns) != len(column.texts):  # a line end inside a text
            patterns = [str(text).translate(_DIGITS) for text in column.texts]
        of_pattern = {pattern: index(_id_role(vocabulary, pattern)) for pattern in set(patterns)}
        named = column.lookup(np.array([*map(of_pattern.__getitem__, patterns)], np.int8), routine)
        role = np.where(role == routine, named, role).astype(np.int8)
    return role


@lru_cache(4096)
def _id_role(vocabulary: Vocabulary, pattern: str) -> Role | None:
    """Role of identifiers of one pattern; which digits they hold tells nothing."""
    return vocabulary.id_role(pattern)


def _number(text: str) -> float | None:
    found = _NUMBER.search(text)
    return float(found[0].replace(",", ".")) if found else None


def _coordinates(column: Coded, most: float) -> NDArray[np.float64]:
    """Decimal degrees of each row; most are printed as numbers alone."""
    degrees = plain_numbers(column.texts)
    for place in np.flatnonzero(~(np.abs(degrees) <= most)):
        found = _coordinate(str(column.texts[place]), most)
        degrees[place] = np.nan if found is None else found
    return column.lookup(degrees, np.nan)


def _coordinate(text: str, most: float) -> float | None:
    """Decimal degrees; anything else printed there is left."""
    number = _number(text) if _DEGREES.fullmatch(text) else None
    if number is None or abs(number) > most:
        return None
    return -number if text[-1:] in "SW" and number > 0 else number


def _metres(text: str) -> float | None:
    """A depth with its unit, in metres; without a unit nothing is known."""
    number = _number(text) if text else None
    if number is None:
        return None
    if _FEET.search(text):
        return number * _METRES_A_FOOT
    return number if _METRES.search(text) else None
