"""What the rules look at: the results as a table, the comparisons, the dates, and the household."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime
from functools import cached_property, wraps
from typing import Any, TypeVar

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from wellchem.interpretation import amounts
from wellchem.interpretation.practice import groups
from wellchem.interpretation.table import Bools, Floats, Table, codes
from wellchem.interpretation.verdicts import Verdicts
from wellchem.interpretation.working import Amount
from wellchem.models.codes import SamplingPoint
from wellchem.models.household import Household
from wellchem.models.sample import Sample

HOURS_A_DAY = 24.0
# Groups of which an unknown household is taken to have a member; the others only where it says so.
SUPPOSED = ("infants", "children", "pregnancy")
_EPOCH = date(1970, 1, 1)


@dataclass(frozen=True, eq=False)
class Moment:
    """Earliest and latest hour, since 1970, of something that the report dates; NaN where it does not."""

    low: Floats
    high: Floats


@dataclass(frozen=True, eq=False)
class Dates:
    """Collection, receipt and analysis by sample, where the sample was taken (a code of SamplingPoint, or -1), and the
    depth of the well [m] that the report prints."""

    collected: Moment
    received: Moment
    analysed: Moment
    point: NDArray[np.int8]
    depth: Floats


def _moment(given: date | datetime | None) -> tuple[float, float]:
    if given is None:
        return np.nan, np.nan
    start = (date(given.year, given.month, given.day) - _EPOCH).days * HOURS_A_DAY
    if isinstance(given, datetime):
        hour = start + given.hour + given.minute / 60.0 + given.second / 3600.0
        return hour, hour
    return start, start + HOURS_A_DAY


def dates_of_sample(sample: Sample) -> Dates:
    """Dates of one sample."""
    moments = [_moment(given) for given in (sample.collected, sample.received, sample.analysed)]
    made = [Moment(np.array([low]), np.array([high])) for low, high in moments]
    point = -1 if sample.point is None else tuple(SamplingPoint).index(sample.point)
    depth = np.array([np.nan if sample.well_depth is None else sample.well_depth])
    return Dates(made[0], made[1], made[2], np.array([point], dtype=np.int8), depth)


def _moments(series: pd.Series, first: NDArray[np.int64], timed: Bools | None) -> Moment:
    """Hours of a column of times; midnight, where nothing says that it is timed, is a whole day."""
    seconds = series.to_numpy(dtype="datetime64[s]")[first]
    known = ~np.isnat(seconds) & (first >= 0)
    hour = np.where(known, seconds.astype(np.int64) / 3600.0, np.nan)
    exact = timed if timed is not None else (hour % HOURS_A_DAY) != 0.0
    return Moment(hour, np.where(exact, hour, np.floor(hour / HOURS_A_DAY) * HOURS_A_DAY + HOURS_A_DAY))


def _first_rows(frame: pd.DataFrame, keys: NDArray[Any]) -> NDArray[np.int64]:
    """The first row of each sample in a frame, -1 where it has none."""
    code, names = codes(frame["sample"])
    first = np.full(len(names) + 1, -1, dtype=np.int64)
    first[code[::-1]] = np.arange(len(frame))[::-1]
    first[-1] = -1
    place = {str(name): index for index, name in enumerate(names)}
    return first[[place.get(str(key), -1) for key in keys]]


def dates_of_frames(results: pd.DataFrame, samples: pd.DataFrame | None, table: Table) -> Dates:
    """Dates of the samples of a frame: of the samples frame where there is one, else of the results."""
    source = results if samples is None else samples
    first = _first_rows(source, table.keys)
    blank = Moment(np.full(table.size, np.nan), np.full(table.size, np.nan))
    timed = source["collected_timed"].to_numpy(dtype=bool)[first] if "collected_timed" in source else None
    moments = {
        name: _moments(source[name], first, timed if name == "collected" else None) if name in source else blank
        for name in ("collected", "received", "analysed")
    }
    point = np.full(table.size, -1, dtype=np.int8)
    if "point" in source:
        code, names = codes(source["point"])
        words = [point.value for point in SamplingPoint]
        meaning = np.array([*(words.index(str(name)) for name in names), -1], dtype=np.int8)
        point = np.where(first >= 0, meaning[code[first]], -1).astype(np.int8)
    depth = np.full(table.size, np.nan)
    if "well_depth" in source:
        depth = np.where(first >= 0, source["well_depth"].to_numpy(dtype=np.float64, na_value=np.nan)[first], np.nan)
    return Dates(moments["collected"], moments["received"], moments["analysed"], point, depth)


@dataclass(frozen=True, eq=False)
class Waters:
    """Samples with all that the rules may ask of them. `day` is the date compared with, in hours since 1970."""

    table: Table
    verdicts: Verdicts
    dates: Dates
    day: Floats
    household: Household = field(default_factory=Household)
    found: dict[str, object] = field(default_factory=dict, repr=False)  # what rules found, by the function's name

    @cached_property
    def size(self) -> int:
        """Number of samples."""
        return self.table.size

    def worked(self, name: str) -> Amount:
        """A worked-out amount by the name of its function in `amounts`."""
        made: Amount = getattr(amounts, name)(self.table)
        return made

    def ends(self, name: str) -> tuple[Floats, Floats]:
        """Bounds by sample of an analyte at its most, or of a derived amount."""
        if name in amounts.DERIVED:
            amount = self.worked(name)
            return amount.low, amount.high
        column = self.table.most(name)
        return column.low, column.high

    def tells(self, name: str) -> bool:
        """Whether any sample may have the amount."""
        return name in amounts.DERIVED or self.table.holds(name)

    def above(self, name: str, value: float) -> Bools:
        """Where the amount is surely above a value."""
        if not self.tells(name):
            return np.zeros(self.size, dtype=bool)
        return self.ends(name)[0] > value

    def below(self, name: str, value: float) -> Bools:
        """Where the amount is surely below a value; a metal measured only filtered may be higher unfiltered."""
        if not self.tells(name):
            return np.zeros(self.size, dtype=bool)
        under = self.ends(name)[1] < value
        if groups().get(name) == "metal" and under.any():
            under &= ~self.table.filtered(self.table.standing(name))
        return np.asarray(under)

    def member(self, group: str) -> bool | None:
        """Whether the household has a member of a group at risk; None where it does not say."""
        return True if group == "everyone" else getattr(self.household, group)

    def counts(self, group: str) -> bool:
        """Whether a group at risk is to be reckoned with: present, or not ruled out where it is supposed."""
        member = self.member(group)
        return member is True or (member is None and group in SUPPOSED)

    @property
    def depth(self) -> Floats:
        """Depth of the well [m]: as the household says, else as the report prints; NaN where neither does."""
        said = self.household.well_depth
        return self.dates.depth if said is None else np.full(self.size, said)

    def observed(self, *observations: str) -> bool:
        """Whether the household notices one of these."""
        return bool(set(self.household.observations or ()) & set(observations))

    def near(self, *places: str) -> bool:
        """Whether one of these lies near the well."""
        return bool(set(self.household.nearby or ()) & set(places))

    @cached_property
    def chlorinated(self) -> Bools:
        """Where the water is said or seen to hold chlorine."""
        seen = self.above("free_chlorine", 0.0) | self.above("total_chlorine", 0.0) | self.above("chloramine", 0.0)
        return seen | bool(self.household.chlorinated)

    @cached_property
    def held(self) -> tuple[Floats, Floats]:
        """Hours from collection to analysis, by its bounds; the high end is unknown where only receipt is dated."""
        collected, received, analysed = self.dates.collected, self.dates.received, self.dates.analysed
        end = np.where(np.isnan(analysed.low), received.low, analysed.low)
        return np.maximum(end - collected.high, 0.0), analysed.high - collected.low


_T = TypeVar("_T")


def once(function: Callable[[Waters], _T]) -> Callable[[Waters], _T]:
    """Works a rule out once per waters; what it gives is not to be changed."""

    @wraps(function)
    def kept(waters: Waters) -> _T:
        if function.__qualname__ not in waters.found:
            waters.found[function.__qualname__] = function(waters)
        made: _T = waters.found[function.__qualname__]  # type: ignore[assignment]
        return made

    return kept


def day_hours(on: date) -> float:
    """Hours since 1970 at the end of a date."""
    return ((on - _EPOCH).days + 1) * HOURS_A_DAY


def choose(conditions: Sequence[Bools], values: Sequence[int], default: int) -> NDArray[np.int8]:
    """The first value whose condition holds, by sample."""
    chosen = np.full(conditions[0].shape, default, dtype=np.int8)
    for condition, value in zip(reversed(conditions), reversed(values), strict=True):
        chosen[condition] = value
    return chosen
