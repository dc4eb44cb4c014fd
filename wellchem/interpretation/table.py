"""Results of many samples as arrays: which result stands for an analyte, and its bounds, one row per sample.

The rows of a results frame are sorted by analyte once; a column is then made for an analyte when a rule asks for it. A
single sample is a table of one.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from typing import Any

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from wellchem.models.codes import Censoring, Fraction, Measured, Role, SamplingPoint
from wellchem.models.sample import Sample

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]
Rows = NDArray[np.int64]

LEFT, RIGHT, PRESENT, ABSENT, UNREPORTED = 1, 2, 4, 8, 16
ESTIMATED, BLANK, OVER, HELD, REJECTED, NOT_DETECTED, BOUNDED, IN_DOUBT = 32, 64, 128, 256, 512, 1024, 2048, 4096
DOUBTFUL = ESTIMATED | BLANK | OVER | HELD | IN_DOUBT  # detected and usable, but no second witness

_CENSORING = {
    Censoring.NONE: 0,
    Censoring.LEFT: LEFT,
    Censoring.RIGHT: RIGHT,
    Censoring.INTERVAL: BOUNDED,
    Censoring.PRESENT: PRESENT,
    Censoring.ABSENT: ABSENT,
    Censoring.NOT_REPORTED: UNREPORTED,
}
_QUALIFIERS = {"J": ESTIMATED, "B": BLANK, "E": OVER, "H": HELD, "R": REJECTED, "U": NOT_DETECTED}
_FRACTIONS = tuple(Fraction)
_POINTS = tuple(SamplingPoint)
_WHOLE = {Fraction.TOTAL: 0, Fraction.TOTAL_RECOVERABLE: 1, None: 2, Fraction.DISSOLVED: 4, Fraction.FREE: 5}
# Rank of each fraction by its code; a missing one has code -1, the last place.
_RANK = np.array([*(_WHOLE.get(fraction, 9) for fraction in _FRACTIONS), _WHOLE[None]], dtype=np.int64)
_DISSOLVED = _FRACTIONS.index(Fraction.DISSOLVED)
_SUSPENDED = _FRACTIONS.index(Fraction.SUSPENDED)
_NOWHERE = np.zeros(0, dtype=np.int64)
# pH and the like change on the way to the laboratory; for the rest the laboratory's number stands.
IN_THE_FIELD = frozenset({"ph", "temperature", "dissolved_oxygen", "oxidation_reduction_potential", "free_chlorine"})


@dataclass(frozen=True, eq=False)
class Column:
    """One analyte over all samples: bounds of the result that stands for it, that result's row, and its flags."""

    low: Floats
    high: Floats
    row: Rows
    flags: NDArray[np.int32]

    @cached_property
    def measured(self) -> Bools:
        """Where there is a result that can be used."""
        return self.row >= 0

    @cached_property
    def bounded(self) -> Bools:
        """Where both bounds are known."""
        return self.measured & ~np.isnan(self.low) & ~np.isnan(self.high)


@dataclass(frozen=True, eq=False)
class Table:
    """Rows of results, sorted by analyte, over `size` samples. `order` leads back to the rows of the source."""

    keys: NDArray[Any]
    analytes: tuple[str, ...]
    start: Rows
    order: Rows
    sample: Rows
    low: Floats
    high: Floats
    fraction: NDArray[np.int8]
    field_measured: Bools
    flags: NDArray[np.int32]
    basis_assumed: Bools
    point: NDArray[np.int8]  # where the printed name says that the water was taken (a code of SamplingPoint), or -1
    worked: dict[str, object] = field(default_factory=dict, repr=False)  # what was worked out of it, by name
    _made: dict[tuple[str, str], Column] = field(default_factory=dict, repr=False)
    _usable: dict[str, NDArray[np.int64]] = field(default_factory=dict, repr=False)

    @cached_property
    def size(self) -> int:
        """Number of samples."""
        return len(self.keys)

    @cached_property
    def _blank(self) -> Column:
        """The column of an analyte that no sample has."""
        nothing = np.full(self.size, np.nan)
        return Column(nothing, nothing, np.full(self.size, -1), np.zeros(self.size, dtype=np.int32))

    def holds(self, analyte: str) -> bool:
        """Whether any sample has a row of the analyte."""
        return analyte in self._place

    def rows(self, analyte: str) -> slice:
        """Places of an analyte's rows."""
        place = self._place.get(analyte)
        return slice(0, 0) if place is None else slice(int(self.start[place]), int(self.start[place + 1]))

    @cached_property
    def _place(self) -> dict[str, int]:
        return {analyte: place for place, analyte in enumerate(self.analytes)}

    def usable(self, analyte: str) -> NDArray[np.int64]:
        """Places of the analyte's rows that say something of the whole water: not rejected, reported, not suspended."""
        if analyte not in self._place:
            return _NOWHERE
        if analyte not in self._usable:
            span = self.rows(analyte)
            kept = (self.flags[span] & (REJECTED | UNREPORTED)) == 0
            self._usable[analyte] = np.flatnonzero(kept & (self.fraction[span] != _SUSPENDED)) + span.start
        return self._usable[analyte]

    @cached_property
    def _fractions(self) -> frozenset[int]:
        """Codes of the fractions that any row names."""
        return frozenset(np.flatnonzero(np.bincount(self.fraction + 1)).tolist())

    @cached_property
    def _points(self) -> frozenset[int]:
        """Codes of the points that any row names."""
        return frozenset(np.flatnonzero(np.bincount(self.point + 1)).tolist())

    def standing(self, analyte: str, fraction: Fraction | None = None) -> Column:
        """The result that stands for an analyte: total before dissolved, or of one fraction; the first of equals."""
        if analyte not in self._place or not (fraction is None or self.names(fraction)):
            return self._blank
        key = (analyte, fraction.value if fraction else "")
        if key not in self._made:
            self._made[key] = self._standing(analyte, fraction)
        return self._made[key]

    def taken(self, analyte: str, point: SamplingPoint) -> Column:
        """The result of an analyte whose printed name says that the water was taken there; the first of several."""
        if analyte not in self._place or _POINTS.index(point) + 1 not in self._points:
            return self._blank
        places = self.usable(analyte)
        places = places[self.point[places] == _POINTS.index(point)][::-1]
        row = np.full(self.size, -1, dtype=np.int64)
        row[self.sample[places]] = places
        return self._column(row)

    def names(self, fraction: Fraction) -> bool:
        """Whether any row names the fraction."""
        return any(code + 1 in self._fractions for code in _meant(fraction))

    def _standing(self, analyte: str, fraction: Fraction | None) -> Column:
        places = self.usable(analyte)
        if fraction is not None:
            places = places[np.isin(self.fraction[places], _meant(fraction))]
        row = np.full(self.size, -1, dtype=np.int64)
        if self._alone(places, row):
            return self._column(row)
        rank = 2 * _RANK[self.fraction[places]]
        rank += self.field_measured[places] ^ (analyte in IN_THE_FIELD)
        # Written from the last choice to the first, and from the last of equals, so that the first stays.
        for worth in np.flatnonzero(np.bincount(rank))[::-1]:
            equals = places[rank == worth][::-1]
            row[self.sample[equals]] = equals
        return self._column(row)

    def _alone(self, places: Rows, row: Rows) -> bool:
        """Write into `row` each sample's first of some rows, and tell whether it is its only one."""
        row[self.sample[places][::-1]] = places[::-1]
        return len(places) == np.count_nonzero(row >= 0)

    def _column(self, row: Rows) -> Column:
        found = row >= 0
        if not len(self.low):
            blank = np.full(self.size, np.nan)
            return Column(blank, blank, row, np.zeros(self.size, dtype=np.int32))
        return Column(
            np.where(found, self.low[row], np.nan),
            np.where(found, self.high[row], np.nan),
            row,
            np.where(found, self.flags[row], 0).astype(np.int32),
        )

    def most(self, analyte: str) -> Column:
        """The most that any usable result of the analyte shows: the highest low end and the highest high end."""
        if analyte not in self._place:
            return self._blank
        key = (analyte, "most")
        if key not in self._made:
            places = self.usable(analyte)
            least, greatest = self.low[places], self.high[places]
            least = np.where(np.isnan(least), -np.inf, least)
            greatest = np.where(np.isnan(greatest), np.inf, greatest)
            row, sample = np.full(self.size, -1, dtype=np.int64), self.sample[places]
            low, high = np.full(self.size, np.nan), np.full(self.size, np.nan)
            if self._alone(places, row):
                low[sample], high[sample] = least, greatest
            else:
                low[sample] = high[sample] = -np.inf
                np.maximum.at(low, sample, least)
                np.maximum.at(high, sample, greatest)
                top = places[least == low[sample]]
                row[self.sample[top][::-1]] = top[::-1]
            flags = np.zeros(self.size, dtype=np.int32)
            flags[sample] = self.flags[row[sample]]
            self._made[key] = Column(low, high, row, flags)
        return self._made[key]

    def in_field(self, column: Column) -> Bools:
        """Where the result of a column was measured in the field."""
        if not len(self.field_measured):
            return np.zeros(self.size, dtype=bool)
        return np.asarray(column.measured & self.field_measured[column.row])

    def filtered(self, column: Column) -> Bools:
        """Where the result of a column is of filtered water."""
        if not len(self.fraction):
            return np.zeros(self.size, dtype=bool)
        return np.asarray(column.measured & (self.fraction[column.row] == _DISSOLVED))

    def witnesses(self, analyte: str, above: float | None, below: float | None) -> Rows:
        """How many sound results of the analyte, by sample, lie beyond a threshold."""
        places = self.usable(analyte)
        beyond = np.ones(len(places), dtype=bool)
        if above is not None:
            beyond &= self.low[places] > above
        if below is not None:
            beyond &= self.high[places] < below
        sound = beyond & ((self.flags[places] & (DOUBTFUL | LEFT | BOUNDED)) == 0)
        return np.bincount(self.sample[places[sound]], minlength=self.size).astype(np.int64)


def _meant(fraction: Fraction) -> list[int]:
    """Codes of a fraction; total recoverable counts as total."""
    named = [fraction, Fraction.TOTAL_RECOVERABLE] if fraction is Fraction.TOTAL else [fraction]
    return [_FRACTIONS.index(one) for one in named]


@lru_cache(1 << 14)
def _named_point(name: str) -> int:
    """Where a printed name says that the water was taken: `Lead, first draw`; -1 where it does not."""
    if not name:
        return -1
    from wellchem.vocabulary import bundled

    meaning = bundled().name(name)
    return -1 if meaning is None or meaning.point is None else _POINTS.index(meaning.point)


def _flags_of(qualifiers: str) -> int:
    return sum({_QUALIFIERS.get(code, 0) for code in qualifiers.split(";")})


def _made(
    keys: NDArray[Any],
    analytes: Sequence[str],
    code: NDArray[np.int64],
    sample: Rows,
    low: Floats,
    high: Floats,
    fraction: NDArray[np.int8],
    field_measured: Bools,
    flags: NDArray[np.int32],
    basis_assumed: Bools,
    point: NDArray[np.int8],
    kept: Bools,
) -> Table:
    """A table from the kept rows, sorted by analyte; what is present or absent gets the bounds that it has."""
    order = np.flatnonzero(kept & (code >= 0))
    order = order[np.argsort(code[order].astype(np.int16), kind="stable")]
    start = np.searchsorted(code[order], np.arange(len(analytes) + 1))
    low, high, flags = low[order], high[order], flags[order]
    none, some = (flags & ABSENT) != 0, (flags & PRESENT) != 0
    low = np.where(np.isnan(low) & none, 0.0, np.where(np.isnan(low) & some, 1.0, low))
    high = np.where(np.isnan(high) & none, 0.0, np.where(np.isnan(high) & some, np.inf, high))
    return Table(
        keys=keys,
        analytes=tuple(analytes),
        start=start.astype(np.int64),
        order=order,
        sample=sample[order],
        low=low,
        high=high,
        fraction=fraction[order],
        field_measured=field_measured[order],
        flags=flags,
        basis_assumed=basis_assumed[order],
        point=point[order],
    )


def from_sample(sample: Sample, in_doubt: Collection[int] = ()) -> Table:
    """The table of one sample; `in_doubt` are places of results that a blank or a duplicate does not bear out."""
    results = sample.results
    analytes = list(dict.fromkeys(result.analyte for result in results))
    place = {analyte: index for index, analyte in enumerate(analytes)}
    return _made(
        keys=np.array([sample.key], dtype=object),
        analytes=analytes,
        code=np.array([place[result.analyte] for result in results], dtype=np.int64),
        sample=np.zeros(len(results), dtype=np.int64),
        low=np.array([np.nan if result.low is None else result.low for result in results], dtype=np.float64),
        high=np.array([np.nan if result.high is None else result.high for result in results], dtype=np.float64),
        fraction=np.array(
            [-1 if result.fraction is None else _FRACTIONS.index(result.fraction) for result in results], dtype=np.int8
        ),
        field_measured=np.array([result.measured is Measured.FIELD for result in results], dtype=bool),
        flags=np.array(
            [
                _CENSORING[result.censoring]
                | _flags_of(";".join(result.qualifiers))
                | (IN_DOUBT if place in in_doubt else 0)
                for place, result in enumerate(results)
            ],
            dtype=np.int32,
        ),
        basis_assumed=np.array(
            [any(assumed.code == "basis" for assumed in result.assumptions) for result in results], dtype=bool
        ),
        point=np.array([_named_point(result.printed.name) for result in results], dtype=np.int8),
        kept=np.ones(len(results), dtype=bool),
    )


def codes(series: pd.Series) -> tuple[NDArray[np.int64], list[Any]]:
    """Codes and categories of a text column; -1 where missing."""
    if isinstance(series.dtype, pd.CategoricalDtype):
        return series.cat.codes.to_numpy().astype(np.int64), series.cat.categories.to_numpy(dtype=object).tolist()
    codes, categories = pd.factorize(series)
    return np.asarray(codes, dtype=np.int64), list(categories)


def _spread(series: pd.Series, meaning: Any, missing: Any, dtype: Any) -> NDArray[Any]:
    """What each text means, worked out once per distinct text."""
    code, words = codes(series)
    return np.array([*(meaning(word) for word in words), missing], dtype=dtype)[code]


def from_frame(frame: pd.DataFrame) -> Table:
    """The table of every sample of a results frame; quality control is left out."""
    code, analytes = codes(frame["analyte"])
    sample, keys = codes(frame["sample"])
    first = np.full(len(keys) + 1, -1, dtype=np.int64)
    first[sample[::-1]] = np.arange(len(sample))[::-1]
    present = np.flatnonzero(first[: len(keys)] >= 0)
    present = present[np.argsort(first[present])]  # samples in the order of their first rows
    narrowed = np.full(len(keys) + 1, -1, dtype=np.int64)
    narrowed[present] = np.arange(len(present))
    water = {Role.ROUTINE.value, Role.DUPLICATE.value, Role.PREDICTED.value}
    censoring = {word.value: flag for word, flag in _CENSORING.items()}
    flags = _spread(frame["censoring"], lambda text: censoring[str(text)], 0, np.int32)
    return _made(
        keys=np.array(keys, dtype=object)[present] if len(keys) else np.array([], dtype=object),
        analytes=[str(analyte) for analyte in analytes],
        code=code,
        sample=narrowed[sample],
        low=frame["low"].to_numpy(dtype=np.float64, na_value=np.nan),
        high=frame["high"].to_numpy(dtype=np.float64, na_value=np.nan),
        fraction=_spread(frame["fraction"], lambda text: _FRACTIONS.index(Fraction(text)), -1, np.int8),
        field_measured=_spread(frame["measured"], lambda text: text == Measured.FIELD.value, False, bool),
        flags=flags | _spread(frame["qualifiers"], lambda text: _flags_of(str(text)), 0, np.int32),
        basis_assumed=_spread(frame["assumptions"], lambda text: "basis=" in str(text), False, bool),
        point=_spread(frame["printed_name"], lambda text: _named_point(str(text)), -1, np.int8)
        if "printed_name" in frame
        else np.full(len(frame), -1, dtype=np.int8),
        kept=_spread(frame["role"], lambda text: str(text) in water, True, bool) & (sample >= 0),
    )
