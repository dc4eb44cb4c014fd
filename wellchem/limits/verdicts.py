"""Where an amount meets a limit: every pair of a sample's amount and a limit in force, and its verdict."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, TypeVar

import numpy as np
from numpy.typing import NDArray

from wellchem.limits.conditions import FALSE, TRUE
from wellchem.limits.observed import BIT, BLOCKING, Flags, Floats, Observed
from wellchem.limits.prepare import FIRST_DAY, FRACTIONS, KINDS, LAST_DAY, TOLERANCE, Prepared
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
    verdict: NDArray[np.int8]
    near: Flags
    low: Floats
    high: Floats
    reasons: NDArray[np.int32]
    settled: Flags

    def take(self, places: Places) -> Pairs:
        """Some of them."""
        return Pairs(*(getattr(self, name)[places] for name in Pairs.__dataclass_fields__))


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
    return table.reshape(-1)


_FRACTIONS = _fraction_table()
_T = TypeVar("_T", bound=np.generic)


def pick(values: NDArray[_T], places: NDArray[Any]) -> NDArray[_T]:
    """`values[places]`; without the check of the bounds it is the fastest way to gather."""
    return values.take(places, mode="clip")


class Decision:
    """Every amount against every limit in force that it meets: a chunk of pairs at a time.

    What is rare (an open bound, a minimum, a condition, a doubtful date) is worked on its few pairs only.
    """

    def __init__(self, observed: Observed, prepared: Prepared, situation: Situation) -> None:
        self.observed = observed
        self.prepared = prepared
        self.situation = situation
        maximum = np.where(np.isnan(prepared.maximum), np.inf, prepared.maximum)
        minimum = np.where(np.isnan(prepared.minimum), -np.inf, prepared.minimum)
        more, less = 1 + TOLERANCE, 1 - TOLERANCE
        self.maximum, self.maximum_open = maximum * more, maximum * less
        self.minimum, self.minimum_open = minimum * less, minimum * more
        health = (prepared.kind == KINDS.index(LimitKind.HEALTH)) & (maximum > 0)
        self.near = np.where(health, maximum, np.inf)
        self.has_minimum = _some(minimum > -np.inf)
        # Places in the flat table of fractions: its last row and column stand for a fraction that is not said.
        wide = len(FRACTIONS) + 1
        self.measured = wide * (observed.fraction.astype(np.intp) % wide)
        self.limited = prepared.fraction.astype(np.intp) % wide
        self.conditional = prepared.condition != prepared.conditions.index(())
        self.day = situation.day[observed.sample]
        # Limits that cannot be in force on any of the days, or apply nowhere, meet nothing.
        first, last = situation.day.min(initial=LAST_DAY), situation.day.max(initial=FIRST_DAY)
        possible = (prepared.starts <= last) & (prepared.ends >= first)
        possible &= ~(situation.conditions == FALSE).all(axis=1)[prepared.condition]
        self.entries = np.flatnonzero(possible)
        self.law_changes = bool(((prepared.starts > first) | (prepared.ends < last))[possible].any())
        self.undated = np.minimum(prepared.stands_from, situation.today)
        start = np.searchsorted(self.entries, prepared.start)
        self.first = start[:-1][observed.code]
        self.number = np.diff(start)[observed.code]
        self.ends = np.cumsum(self.number)
        self.open_low = _some(observed.open_low)
        self.blocked = _some(~observed.usable)
        self.late = _some((observed.reasons & BIT[Reason.HOLDING_TIME]) != 0)
        self.not_dated = _some(situation.not_dated[observed.sample])
        self.decided_only = _some(observed.decided_only)
        self.spread = _some(observed.uncertainty > 0)
        self.supposed = _some((observed.reasons & (BIT[Reason.UNIT_ASSUMED] | BIT[Reason.BASIS_ASSUMED])) != 0)

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
            entries = pick(self.entries, np.repeat(self.first[first:last] - before, number) + np.arange(len(rows)))
            yield self._decide(rows, entries)
            first = last

    def _decide(self, rows: Places, entries: Places) -> Pairs:
        rows, entries, unsettled = self._meeting(rows, entries)
        low, high = pick(self.observed.low, rows), pick(self.observed.high, rows)
        reasons = pick(self.observed.reasons, rows)
        self._fractions(rows, entries, low, high, reasons)
        verdict = self._verdicts(rows, entries, low, high)
        for place in _marked(self.blocked, rows):
            verdict[place] = UNDECIDED
        for late in _marked(self.late, rows):
            # None found past the holding time says nothing: organisms die in the bottle.
            late = late[self.prepared.counts[self.prepared.shown[entries[late]]] & (verdict[late] == WITHIN)]
            verdict[late] = UNDECIDED
        self._spans(rows, verdict, high, reasons)
        unsettled = self._other_case(rows, entries, low, high, verdict, unsettled)

        settled = np.ones(len(rows), dtype=bool)
        settled[unsettled] = False
        reasons[unsettled] |= BIT[Reason.CONDITION_UNSETTLED]
        verdict[unsettled] = UNDECIDED
        for place in _marked(self.not_dated, rows):
            reasons[place] |= BIT[Reason.NOT_DATED]
        undated = np.flatnonzero(pick(self.day, rows) < pick(self.undated, entries))
        reasons[undated] |= BIT[Reason.DATE_UNKNOWN]
        verdict[undated] = UNDECIDED
        near = self._nearness(rows, entries, low, high, verdict)
        made = Pairs(rows, entries, verdict, near, low, high, reasons, settled)
        for place in _marked(self.decided_only, rows):
            told = np.ones(len(rows), dtype=bool)
            told[place] = verdict[place] != UNDECIDED
            made = made.take(np.flatnonzero(told))
        return made

    def _meeting(self, rows: Places, entries: Places) -> tuple[Places, Places, Places]:
        """The pairs whose limit is in force and applies, and the places among them where that is not settled."""
        prepared = self.prepared
        if self.law_changes:
            day = pick(self.day, rows)
            met = np.flatnonzero((pick(prepared.starts, entries) <= day) & (day <= pick(prepared.ends, entries)))
            if len(met) < len(rows):
                rows, entries = pick(rows, met), pick(entries, met)
        conditional = np.flatnonzero(pick(self.conditional, entries))
        sample = self.observed.sample[rows[conditional]]
        truth = self.situation.conditions[prepared.condition[entries[conditional]], sample]
        unsettled, no = conditional[truth != TRUE], conditional[truth == FALSE]
        if len(no):
            applies = np.ones(len(rows), dtype=bool)
            applies[no] = False
            doubtful = np.zeros(len(rows), dtype=bool)
            doubtful[unsettled] = True
            rows, entries, unsettled = rows[applies], entries[applies], np.flatnonzero(doubtful[applies])
        return rows, entries, unsettled

    def _fractions(self, rows: Places, entries: Places, low: Floats, high: Floats, reasons: NDArray[np.int32]) -> None:
        """What a part says of the whole: it is at least the part; and the whole of a part: it is at most the whole."""
        says = pick(_FRACTIONS, pick(self.measured, rows) + pick(self.limited, entries))
        part = np.flatnonzero(says)
        says = says[part]
        reasons[part[says == _SUPPOSED]] |= BIT[Reason.FRACTION_NOT_PRINTED]
        lost_high = part[(says == _AT_LEAST) | (says == _NOTHING)]
        high[lost_high] = np.inf
        reasons[lost_high] |= BIT[Reason.DISSOLVED_MEASURED]
        lost_low = part[(says == _AT_MOST) | (says == _NOTHING)]
        low[lost_low] = np.minimum(low[lost_low], 0)
        reasons[lost_low] |= BIT[Reason.TOTAL_MEASURED]

    def _verdicts(self, rows: Places, entries: Places, low: Floats, high: Floats) -> NDArray[np.int8]:
        """Above where all of the bounds is, below likewise, within where none of them is outside; else undecided."""
        maximum = pick(self.maximum, entries)
        above = low > maximum
        within = high <= maximum
        for place in _marked(self.open_low, rows):
            above[place] |= low[place] >= self.maximum_open[entries[place]]
        within &= ~above
        verdict: NDArray[np.int8] = UNDECIDED + (WITHIN - UNDECIDED) * within.view(np.int8)
        verdict += (ABOVE - UNDECIDED) * above.view(np.int8)
        for place in _marked(self.has_minimum, entries):
            entry, least, most = entries[place], low[place], high[place]
            below = most < self.minimum[entry]
            below |= self.observed.open_high[rows[place]] & (most <= self.minimum_open[entry])
            verdict[place[(verdict[place] == WITHIN) & (least < self.minimum[entry])]] = UNDECIDED
            verdict[place[below]] = BELOW
        return verdict

    def _spans(self, rows: Places, verdict: NDArray[np.int8], high: Floats, reasons: NDArray[np.int32]) -> None:
        """Say of what is undecided and not yet explained that the limit lies within its bounds."""
        at = np.flatnonzero(verdict == UNDECIDED)
        explained = (reasons[at] & _EXPLAINED) != 0
        explained |= (self.observed.position[rows[at]] < 0) & (high[at] == np.inf)  # the missing members are named
        at = at[~explained]
        censored = self.observed.open_high[rows[at]]
        reasons[at] |= np.where(censored, BIT[Reason.REPORTING_LIMIT_ABOVE], BIT[Reason.LIMIT_WITHIN_BOUNDS])

    def _other_case(
        self,
        rows: Places,
        entries: Places,
        low: Floats,
        high: Floats,
        verdict: NDArray[np.int8],
        unsettled: Places,
    ) -> Places:
        """What stays unsettled: a condition does not matter where the limit under its contrary says the same."""
        contrary = self.prepared.other_case[entries[unsettled]]
        asked = (verdict[unsettled] != UNDECIDED) & (contrary >= 0)
        at, contrary = unsettled[asked], contrary[asked]
        same = self._verdicts(rows[at], contrary, low[at], high[at]) == verdict[at]
        asked[asked] = same
        left: Places = unsettled[~asked]
        return left

    def _nearness(self, rows: Places, entries: Places, low: Floats, high: Floats, verdict: NDArray[np.int8]) -> Flags:
        """Decided, and within 80 to 100 % of a health limit, or the limit lies within the printed uncertainty."""
        limit = pick(self.near, entries)
        near: Flags = (verdict == WITHIN) & (low >= NEAR * limit)
        for place in _marked(self.supposed, rows):
            # Bounds that span the usual forms: it is near where it is near in one of them.
            near[place] |= (verdict[place] == WITHIN) & (high[place] >= NEAR * limit[place]) & (low[place] > 0)
        for place in _marked(self.spread, rows):
            place = place[(low[place] == high[place]) & (verdict[place] != UNDECIDED) & np.isfinite(limit[place])]
            near[place] |= np.abs(low[place] - limit[place]) <= self.observed.uncertainty[rows[place]]
        return near


def _some(marks: Flags) -> Flags | None:
    """The marks, or None where nothing is marked at all."""
    return marks if marks.any() else None


def _marked(marks: Flags | None, places: Places) -> Iterator[Places]:
    """Once, the positions in `places` of what is marked; not at all where nothing is marked anywhere."""
    if marks is not None:
        yield np.flatnonzero(pick(marks, places))
