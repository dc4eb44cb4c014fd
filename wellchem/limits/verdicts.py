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
Places = NDArray[np.intp]
# Pairs worked at a time: few enough to stay in a processor's cache, many enough to cost no overhead.
CHUNK = 1 << 15

# What explains an undecided verdict without another word.
_EXPLAINED = BLOCKING | BIT[Reason.DISSOLVED_MEASURED] | BIT[Reason.TOTAL_MEASURED] | BIT[Reason.HOLDING_TIME]

# What a result of one fraction (rows, the last where none is printed) says of a limit on another (columns, likewise):
_SAME, _AT_LEAST, _AT_MOST, _NOTHING, _SUPPOSED = range(5)


@dataclass(frozen=True)
class Pairs:
    """Amounts and limits that met, and the outcome."""

    row: Places  # of Observed
    entry: Places  # of Prepared
    sample: NDArray[np.int32]
    verdict: NDArray[np.int8]
    near: Flags
    low: Floats
    high: Floats
    reasons: NDArray[np.int32]
    settled: Flags


@dataclass(frozen=True)
class Situation:
    """Per sample: the day compared with, whether a day of its own was missing, and the truth of each condition."""

    day: NDArray[np.int32]
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


class Decision:
    """Every amount against every limit in force that it meets: a chunk of pairs at a time."""

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
        self.conditional = prepared.condition != prepared.conditions.index(())
        self.blocked = ~observed.usable
        self.late = (observed.reasons & BIT[Reason.HOLDING_TIME]) != 0
        self.measured_spread = bool((observed.uncertainty > 0).any())
        # Limits that cannot be in force on any of the days, or apply nowhere, meet nothing.
        day = situation.day
        possible = (prepared.starts <= day.max(initial=0)) & (prepared.ends >= day.min(initial=0))
        possible &= ~(situation.conditions == FALSE).all(axis=1)[prepared.condition]
        self.entries = np.flatnonzero(possible)
        start = np.searchsorted(self.entries, prepared.start)
        self.first = start[:-1][observed.code]
        self.number = np.diff(start)[observed.code]
        self.ends = np.cumsum(self.number)

    @property
    def most(self) -> int:
        """As many pairs as there can be at most."""
        return int(self.ends[-1]) if len(self.ends) else 0

    def pairs(self) -> Iterator[Pairs]:
        """The pairs, each amount with its limits, in the order of the amounts."""
        first = 0
        while first < len(self.ends):
            done = int(self.ends[first - 1]) if first else 0
            last = max(int(np.searchsorted(self.ends, done + CHUNK, side="right")), first + 1)
            number = self.number[first:last]
            rows = np.repeat(np.arange(first, last), number)
            before = self.ends[first:last] - number - done
            entries = self.entries[np.repeat(self.first[first:last] - before, number) + np.arange(len(rows))]
            yield self._decide(rows, entries)
            first = last

    def _decide(self, rows: Places, entries: Places) -> Pairs:
        prepared, observed, situation = self.prepared, self.observed, self.situation
        sample = observed.sample[rows]
        day = situation.day[sample]
        meets = (prepared.starts[entries] <= day) & (day <= prepared.ends[entries])
        conditional = np.flatnonzero(self.conditional[entries])
        truth = situation.conditions[prepared.condition[entries[conditional]], sample[conditional]]
        meets[conditional[truth == FALSE]] = False
        settled = np.ones(len(rows), dtype=bool)
        settled[conditional[truth != TRUE]] = False
        if not meets.all():
            kept = np.flatnonzero(meets)
            rows, entries, settled, sample, day = rows[kept], entries[kept], settled[kept], sample[kept], day[kept]

        low, high = observed.low[rows], observed.high[rows]
        reasons = observed.reasons[rows]
        self._fractions(rows, entries, low, high, reasons)
        verdict = self._verdicts(rows, entries, low, high)
        verdict[self.blocked[rows]] = UNDECIDED
        # None found past the holding time says nothing: organisms die in the bottle.
        late = np.flatnonzero(self.late[rows] & (verdict == WITHIN))
        verdict[late[prepared.counts[prepared.shown[entries[late]]]]] = UNDECIDED
        self._spans(rows, verdict, high, reasons)
        self._other_case(rows, entries, low, high, verdict, settled)

        undecided = ~settled
        reasons[undecided] |= BIT[Reason.CONDITION_UNSETTLED]
        reasons[situation.not_dated[sample]] |= BIT[Reason.NOT_DATED]
        undated = (day < prepared.stands_from[entries]) & (day < situation.today)
        reasons[undated] |= BIT[Reason.DATE_UNKNOWN]
        verdict[undated | undecided] = UNDECIDED
        near = self._nearness(rows, entries, low, high, verdict)
        return Pairs(rows, entries, sample, verdict, near, low, high, reasons, settled)

    def _fractions(
        self,
        rows: Places,
        entries: Places,
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

    def _spans(self, rows: Places, verdict: NDArray[np.int8], high: Floats, reasons: NDArray[np.int32]) -> None:
        """Say of what is undecided and not yet explained that the limit lies within its bounds."""
        at = np.flatnonzero(verdict == UNDECIDED)
        explained = (reasons[at] & _EXPLAINED) != 0
        explained |= (self.observed.position[rows[at]] < 0) & (high[at] == np.inf)  # the missing members are named
        at = at[~explained]
        censored = self.observed.open_high[rows[at]]
        reasons[at] |= np.where(censored, BIT[Reason.REPORTING_LIMIT_ABOVE], BIT[Reason.LIMIT_WITHIN_BOUNDS])

    def _verdicts(self, rows: Places, entries: Places, low: Floats, high: Floats) -> NDArray[np.int8]:
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

    def _other_case(
        self,
        rows: Places,
        entries: Places,
        low: Floats,
        high: Floats,
        verdict: NDArray[np.int8],
        settled: Flags,
    ) -> None:
        """An unsettled condition does not matter where the limit under its contrary gives the same verdict."""
        at = np.flatnonzero(~settled & (verdict != UNDECIDED) & (self.prepared.other_case[entries] >= 0))
        contrary = self.prepared.other_case[entries[at]]
        same = self._verdicts(rows[at], contrary, low[at], high[at]) == verdict[at]
        settled[at[same]] = True

    def _nearness(
        self,
        rows: Places,
        entries: Places,
        low: Floats,
        high: Floats,
        verdict: NDArray[np.int8],
    ) -> Flags:
        """Decided, and within 80 to 100 % of a health limit, or the limit lies within the printed uncertainty."""
        limit = self.near[entries]
        near: Flags = (verdict == WITHIN) & (low >= NEAR * limit)
        if self.measured_spread:
            stated = self.observed.uncertainty[rows]
            at = np.flatnonzero((stated > 0) & (low == high) & (verdict != UNDECIDED) & np.isfinite(limit))
            near[at] |= np.abs(low[at] - limit[at]) <= stated[at]
        return near
