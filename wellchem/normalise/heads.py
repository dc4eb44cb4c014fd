"""What a report says of each sample, understood: dates in the report's own order, role, sampling point, matrix."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime

from wellchem.models.codes import Role, SamplingPoint
from wellchem.reading.dates import clock, day_first, parsed
from wellchem.reading.rows import SampleHeads
from wellchem.vocabulary import Vocabulary

_NUMBER = re.compile(r"[-+]?\d+(?:[.,]\d+)?")
_FEET = re.compile(r"\b(?:ft|feet|foot|pieds?|fu(?:ß|ss)|pies)\b|'", re.IGNORECASE)
_METRES = re.compile(r"\b(?:m|metres?|meters?|mètres?|metros?)\b", re.IGNORECASE)
_METRES_A_FOOT = 0.3048  # international foot, exact


@dataclass(frozen=True)
class Head:
    """One sample: its texts and their meanings. `assumptions` hold for every result of it."""

    sample_id: str
    site: str
    point: SamplingPoint | None
    role: Role
    collected: datetime | None
    collected_timed: bool
    received: datetime | None
    analysed: datetime | None
    laboratory: str
    preserved: str
    matrix: str
    water: bool
    latitude: float | None
    longitude: float | None
    well_depth: float | None
    aquifer: str
    assumptions: tuple[str, ...] = ()


def heads_of(vocabulary: Vocabulary, printed: SampleHeads, decimal_comma: bool) -> list[Head]:
    """Every sample of a reading."""
    dates = [str(t) for c in (printed.date_collected, printed.date_received, printed.date_analysed) for t in c.texts]
    order = day_first(dates)
    cache: dict[tuple[str, str], tuple[datetime | None, bool, bool]] = {}

    def date_of(text: str, time: str = "") -> tuple[datetime | None, bool, bool]:
        if (text, time) not in cache:
            cache[text, time] = _date(text, time, decimal_comma if order is None else order, order is None)
        return cache[text, time]

    roles: dict[str, Role | None] = {}

    def role_of(text: str, *, id_only: bool = False) -> Role | None:
        if not text:
            return None
        key = f"{id_only}{text}"
        if key not in roles:
            roles[key] = vocabulary.sample_role(text) if not id_only else vocabulary.id_role(text)
        return roles[key]

    made = []
    for row in range(len(printed)):
        collected, timed, supposed = date_of(printed.date_collected[row], printed.time_collected[row])
        received, _, _ = date_of(printed.date_received[row])
        analysed, _, _ = date_of(printed.date_analysed[row])
        kind = role_of(printed.sample_type[row])
        named = role_of(printed.sample_id[row], id_only=True) or role_of(printed.site[row], id_only=True)
        role = kind if kind not in (None, Role.ROUTINE) else named or kind or Role.ROUTINE
        matrix = printed.matrix[row]
        water = vocabulary.is_water(matrix) if matrix else None
        point = printed.point[row]
        made.append(
            Head(
                printed.sample_id[row],
                printed.site[row],
                SamplingPoint(point)
                if point in SamplingPoint._value2member_map_
                else vocabulary.point(point)
                if point
                else None,
                role or Role.ROUTINE,
                collected,
                timed,
                received,
                analysed,
                printed.laboratory[row],
                printed.preserved[row],
                matrix,
                water is not False,
                _coordinate(printed.latitude[row], 90.0),
                _coordinate(printed.longitude[row], 180.0),
                _metres(printed.well_depth[row]),
                printed.aquifer[row],
                (("date_order=dmy" if decimal_comma else "date_order=mdy"),) if supposed else (),
            )
        )
    return made


def _date(text: str, time: str, day_comes_first: bool, undecided: bool) -> tuple[datetime | None, bool, bool]:
    """The date, whether its time is printed, and whether the order of day and month had to be supposed."""
    found = parsed(text) if text else None
    if found is None:
        return None, False, False
    when = found.either if found.either is not None and day_comes_first else found.when
    timed = found.timed
    if time and not timed and (at := clock(time)) is not None:
        when, timed = when.replace(hour=at[0], minute=at[1], second=at[2]), True
    return when, timed, undecided and found.either is not None


def _number(text: str) -> float | None:
    found = _NUMBER.search(text)
    return float(found[0].replace(",", ".")) if found else None


def _coordinate(text: str, most: float) -> float | None:
    """Decimal degrees; anything else printed there is left."""
    number = _number(text) if re.fullmatch(r"[-+]?\d+(?:[.,]\d+)?°?\s*[NSEWO]?", text) else None
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
