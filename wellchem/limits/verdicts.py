"""Where an amount meets a limit: every pair of a sample's amount and a limit in force, and its verdict."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from wellchem.limits.conditions import FALSE, TRUE
from wellchem.limits.observed import BIT, BLOCKING, Flags, Floats, Observed
from wellchem.limits.prepare import FRACTIONS, KINDS, TOLERANCE, Prepared
from wellchem.models.codes import Fraction, LimitKind, Reason, Verdict

ABOVE, BELOW, WITHIN, UNDECIDED = (list(Verdict).index(verdict) for verdict in Verdict)
# A decided result from this share of a health limit on is near it.
NEAR = 0.8
# Pairs worked at a time: few enough to stay in a processor's cache, many enough to cost no overhead.
_CHUNK = 1 << 17

# What a result of one fraction (rows, the last where none is printed) says of a limit on another (columns, likewise):
_SAME, _AT_LEAST, _AT_MOST, _NOTHING, _SUPPOSED = range(5)


@dataclass(frozen=True)
class Pairs:
    """The outcome: a row for each amount and limit that met."""

    row: NDArray[np.int32]  # of Observed
    entry: NDArray[np.int32]  # of Prepared
    verdict: NDArray[np.int8]
    near: Flags
    low: Floats
    high: Floats
    reasons: NDArray[np.int32]
    settled: Flags


@dataclass(frozen=True)
class Situation:
    """Per sample: the day compared with, whether it is the sample's own, and the truth of each condition."""

    day: NDArray[np.int64]
    not_dated: Flags
    conditions: NDArray[np.int8]  # conditions × samples
    today: int


def _fraction_table() -> NDArray[np.int8]:
    total = (Fraction.TOTAL, Fraction.TOTAL_RECOVERABLE)
    table = np.full((len(FRACTIONS) + 1, len(FRACTIONS) + 1), _NOTHING, dtype=np.int8)
    for i, measured in enumerate(FRACTIONS):
        for j, limited in enumerate(FRACTIONS):
            if measured == limited or (measured in total and limited in total):
                table[i, j] = _SAME
            elif limited in total:
                table[i, j] = _AT_LEAST
            elif measured in total:
                table[i, j] = _AT_MOST
    # Free is a part of dissolved.
    free, dissolved = FRACTIONS.index(Fraction.FREE), FRACTIONS.index(Fraction.DISSOLVED)
    table[free, dissolved], table[dissolved, free] = _AT_LEAST, _AT_MOST
    table[-1, :-1] = _SUPPOSED
    table[:, -1] = _SAME
    return table


_FRACTIONS = _fraction_table()


def decide(observed: Observed, prepared: Prepared, situation: Situation) -> Pairs:
    """Every amount against every limit in force that it meets."""
    start = prepared.start
    number = (start[1:] - start[:-1])[observed.code]
    ends = np.cumsum(number)
    total = int(ends[-1]) if len(ends) else 0
    made = Pairs(
        row=np.empty(total, dtype=np.int32),
        entry=np.empty(total, dtype=np.int32),
        verdict=np.empty(total, dtype=np.int8),
        near=np.empty(total, dtype=bool),
        low=np.empty(total),
        high=np.empty(total),
        reasons=np.empty(total, dtype=np.int32),
        settled=np.empty(total, dtype=bool),
    )
    rules = _Rules(observed, prepared, situation)
    filled = 0
    for rows, entries in _joined(observed.code, start, number, ends):
        part = rules.decide(rows, entries)
        until = filled + len(part.row)
        for name in Pairs.__dataclass_fields__:
            getattr(made, name)[filled:until] = getattr(part, name)
        filled = until
    return Pairs(**{name: getattr(made, name)[:filled] for name in Pairs.__dataclass_fields__})


def _joined(
    code: NDArray[np.int32], start: NDArray[np.int64], number: NDArray[np.int64], ends: NDArray[np.int64]
) -> Iterator[tuple[NDArray[np.int32], NDArray[np.int32]]]:
    """Pairs of row and entry, in chunks: each row with all the entries of its code."""
    first = 0
    while first < len(code):
        done = int(ends[first - 1]) if first else 0
        last = max(int(np.searchsorted(ends, done + _CHUNK, side="right")), first + 1)
        part = number[first:last]
        rows = np.repeat(np.arange(first, last, dtype=np.int32), part)
        offset = start[code[first:last]] - (ends[first:last] - part - done)
        entries = (np.repeat(offset, part) + np.arange(len(rows))).astype(np.int32)
        yield rows, entries
        first = last


class _Rules:
    """The limits' bounds made ready for comparison, and the rules on one chunk of pairs."""

    def __init__(self, observed: Observed, prepared: Prepared, situation: Situation) -> None:
        self.observed = observed
        self.prepared = prepared
        self.situation = situation
        maximum = np.where(np.isnan(prepared.maximum), np.inf, prepared.maximum)
        minimum = np.where(np.isnan(prepared.minimum), -np.inf, prepared.minimum)
        wide, narrow = 1 + TOLERANCE, 1 - TOLERANCE
        self.maximum, self.maximum_open = maximum * wide, maximum * narrow
        self.minimum, self.minimum_open = minimum * narrow, minimum * wide
        self.near = np.where((prepared.kind == KINDS.index(LimitKind.HEALTH)) & (maximum > 0), maximum, np.inf)
        self.unconditional = prepared.condition == prepared.conditions.index(())

    def decide(self, rows: NDArray[np.int32], entries: NDArray[np.int32]) -> Pairs:
        """The verdicts of these pairs; those of limits not in force or not applying are left out."""
        prepared, observed, situation = self.prepared, self.observed, self.situation
        sample = observed.sample[rows]
        day = situation.day[sample]
        meets = (prepared.starts[entries] <= day) & (day <= prepared.ends[entries])
        conditional = np.flatnonzero(~self.unconditional[entries])
        truth = situation.conditions[prepared.condition[entries[conditional]], sample[conditional]]
        meets[conditional[truth == FALSE]] = False
        settled = np.ones(len(rows), dtype=bool)
        settled[conditional[truth != TRUE]] = False
        if not meets.all():
            rows, entries, settled, sample, day = rows[meets], entries[meets], settled[meets], sample[meets], day[meets]

        low, high = observed.low[rows], observed.high[rows]
        reasons = observed.reasons[rows]
        self.fractions(rows, entries, low, high, reasons)
        verdict = self.verdicts(rows, entries, low, high)
        verdict[(reasons & BLOCKING) != 0] = UNDECIDED
        # None found past the holding time says nothing: organisms die in the bottle.
        late = ((reasons & BIT[Reason.HOLDING_TIME]) != 0) & (verdict == WITHIN)
        verdict[late & prepared.counts[prepared.shown[entries]]] = UNDECIDED
        explained = BLOCKING | BIT[Reason.DISSOLVED_MEASURED] | BIT[Reason.TOTAL_MEASURED]
        member_missing = (observed.position[rows] < 0) & (high == np.inf)
        spans = np.flatnonzero((verdict == UNDECIDED) & ((reasons & explained) == 0) & ~late & ~member_missing)
        censored = observed.open_high[rows[spans]]
        reasons[spans] |= np.where(censored, BIT[Reason.REPORTING_LIMIT_ABOVE], BIT[Reason.LIMIT_WITHIN_BOUNDS])
        self.other_case(rows, entries, low, high, verdict, settled)

        undated = (day < prepared.stands_from[entries]) & (day < situation.today)
        reasons[undated] |= BIT[Reason.DATE_UNKNOWN]
        reasons[situation.not_dated[sample]] |= BIT[Reason.NOT_DATED]
        reasons[~settled] |= BIT[Reason.CONDITION_UNSETTLED]
        verdict[undated | ~settled] = UNDECIDED
        near = self.nearness(rows, entries, low, high, verdict)
        return Pairs(rows, entries, verdict, near, low, high, reasons, settled)

    def fractions(
        self,
        rows: NDArray[np.int32],
        entries: NDArray[np.int32],
        low: Floats,
        high: Floats,
        reasons: NDArray[np.int32],
    ) -> None:
        """What a part says of the whole: it is at least the part; and the whole of a part: it is at most the whole."""
        says = _FRACTIONS[self.observed.fraction[rows], self.prepared.fraction[entries]]
        part = np.flatnonzero(says)
        says = says[part]
        reasons[part[says == _SUPPOSED]] |= BIT[Reason.FRACTION_NOT_PRINTED]
        lost_high = part[(says == _AT_LEAST) | (says == _NOTHING)]
        high[lost_high] = np.inf
        reasons[lost_high] |= BIT[Reason.DISSOLVED_MEASURED]
        lost_low = part[(says == _AT_MOST) | (says == _NOTHING)]
        low[lost_low] = np.minimum(low[lost_low], 0)
        reasons[lost_low] |= BIT[Reason.TOTAL_MEASURED]

    def verdicts(
        self, rows: NDArray[np.int32], entries: NDArray[np.int32], low: Floats, high: Floats
    ) -> NDArray[np.int8]:
        """Above where all of the bounds is, below likewise, within where none of them is outside; else undecided."""
        observed = self.observed
        above = low > self.maximum[entries]
        above |= observed.open_low[rows] & (low >= self.maximum_open[entries])
        below = high < self.minimum[entries]
        below |= observed.open_high[rows] & (high <= self.minimum_open[entries])
        within = (high <= self.maximum[entries]) & (low >= self.minimum[entries])
        verdict = np.full(len(rows), UNDECIDED, dtype=np.int8)
        verdict[within] = WITHIN
        verdict[below] = BELOW
        verdict[above] = ABOVE
        return verdict

    def other_case(
        self,
        rows: NDArray[np.int32],
        entries: NDArray[np.int32],
        low: Floats,
        high: Floats,
        verdict: NDArray[np.int8],
        settled: Flags,
    ) -> None:
        """An unsettled condition does not matter where the limit under its contrary gives the same verdict."""
        at = np.flatnonzero(~settled & (verdict != UNDECIDED) & (self.prepared.other_case[entries] >= 0))
        contrary = self.prepared.other_case[entries[at]]
        same = self.verdicts(rows[at], contrary, low[at], high[at]) == verdict[at]
        settled[at[same]] = True

    def nearness(
        self,
        rows: NDArray[np.int32],
        entries: NDArray[np.int32],
        low: Floats,
        high: Floats,
        verdict: NDArray[np.int8],
    ) -> Flags:
        """Decided, and within 80 to 100 % of a health limit, or the limit lies within the printed uncertainty."""
        limit = self.near[entries]
        near: Flags = (verdict == WITHIN) & (low >= NEAR * limit)
        stated = self.observed.uncertainty[rows]
        at = np.flatnonzero((stated > 0) & (low == high) & (verdict != UNDECIDED) & np.isfinite(limit))
        near[at] |= np.abs(low[at] - limit[at]) <= stated[at]
        return near
