"""Comparisons as arrays: which sample, which limit, what was found; of a frame, or of one sample."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from typing import Any

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from wellchem.interpretation.coming import coming
from wellchem.interpretation.practice import problem_of
from wellchem.interpretation.table import Bools, Floats, Rows, codes
from wellchem.models.codes import LimitKind, Reason, Verdict
from wellchem.models.limits import Comparison

# Ahead: within what is in force, beyond what the authority has enacted for later.
WITHIN, UNDECIDED, BEYOND, AHEAD = 0, 1, 2, 3
_STATE = {Verdict.WITHIN: WITHIN, Verdict.UNDECIDED: UNDECIDED, Verdict.ABOVE: BEYOND, Verdict.BELOW: BEYOND}


@dataclass(frozen=True, eq=False)
class Verdicts:
    """One row per comparison. `problem` is the place in the catalogue that the limit raises, or -1; rows that a
    condition leaves open carry `settled` false and decide nothing."""

    sample: Rows
    state: NDArray[np.int8]
    problem: NDArray[np.int64]
    settled: Bools
    goal: Bools  # a goal, of itself no limit: it counts where no health limit on the analyte is in force
    incomplete: Bools  # a group limit of which a member was not measured
    derived: Bools  # of an analyte that was not measured itself, but bounded by what another shows
    health: Bools
    limit: Rows
    low: Floats
    high: Floats
    ratio_low: Floats
    ratio_high: Floats
    row: Rows

    @cached_property
    def counts(self) -> Bools:
        """Rows that decide."""
        return self.settled & (self.problem >= 0)

    @cached_property
    def untold(self) -> Bools:
        """Rows that a measured result leaves open. Of a group limit with a member unmeasured, where what was measured
        bounds it (gross alpha without uranium).
        """
        open_ones = self.counts & (self.state == UNDECIDED) & ~self.goal
        return np.asarray(open_ones & (~self.incomplete | np.isfinite(self.high)))


def _covered(key: Rows, goal: Bools, health: Bools) -> Bools:
    """Goals beside which a health limit on the same analyte and sample stands: the limit decides, not the goal."""
    limited = np.zeros(int(key.max(initial=-1)) + 1, dtype=bool)
    limited[key[health]] = True
    covered, goals = np.zeros(len(goal), dtype=bool), np.flatnonzero(goal)
    covered[goals] = limited[key[goals]]
    return covered


def _says(reason: Reason, words: object) -> bool:
    return reason.value in str(words)


def _ahead(state: NDArray[np.int8], health: Bools, low: Floats, later: Floats) -> NDArray[np.int8]:
    return np.where(health & (state == WITHIN) & (low > later), AHEAD, state).astype(np.int8)


def _later(analyte: str, authority: str, limit: str, on: date) -> float:
    found = coming(analyte, authority, limit, on)
    return np.inf if found is None or found.canonical_maximum is None else found.canonical_maximum


def from_comparisons(comparisons: Sequence[Comparison], on: date) -> Verdicts:
    """The comparisons of one sample. `row` is the first result's place in the sample, -1 for a group."""
    limits = {name: place for place, name in enumerate(dict.fromkeys(one.limit.id for one in comparisons))}
    analytes = {name: place for place, name in enumerate(dict.fromkeys(one.analyte for one in comparisons))}
    analyte = np.array([analytes[one.analyte] for one in comparisons], dtype=np.int64)
    settled = np.array([one.condition_settled and one.limit.compared for one in comparisons], dtype=bool)
    health = np.array([one.limit.kind is LimitKind.HEALTH for one in comparisons], dtype=bool)
    goal = np.array([one.limit.kind is LimitKind.GOAL for one in comparisons], dtype=bool)
    state = np.array([_STATE[one.verdict] for one in comparisons], dtype=np.int8)
    reasons = [";".join(one.reasons) for one in comparisons]
    low = np.array([one.amount.low if one.amount else np.nan for one in comparisons], dtype=np.float64)
    later = [_later(one.analyte, one.limit.authority, one.limit.id, on) if one.later else np.inf for one in comparisons]
    return Verdicts(
        sample=np.zeros(len(comparisons), dtype=np.int64),
        state=_ahead(state, health & settled, low, np.array(later, dtype=np.float64)),
        problem=np.array(
            [problem_of(one.analyte, one.limit.kind.value, one.verdict.value) for one in comparisons], dtype=np.int64
        ),
        settled=settled & ~_covered(analyte, goal, health & settled),
        goal=goal,
        incomplete=np.array([Reason.MEMBERS_MISSING.value in text for text in reasons], dtype=bool),
        derived=np.array([Reason.DERIVED_FROM.value in text for text in reasons], dtype=bool),
        health=health,
        limit=np.array([limits[one.limit.id] for one in comparisons], dtype=np.int64),
        low=low,
        high=np.array([one.amount.high if one.amount else np.nan for one in comparisons], dtype=np.float64),
        ratio_low=np.array([one.ratio.low if one.ratio else np.nan for one in comparisons], dtype=np.float64),
        ratio_high=np.array([one.ratio.high if one.ratio else np.nan for one in comparisons], dtype=np.float64),
        row=np.array([one.results[0] if len(one.results) == 1 else -1 for one in comparisons], dtype=np.int64),
    )


def from_frame(frame: pd.DataFrame, keys: NDArray[Any], on: date) -> Verdicts:
    """The comparisons of a frame; `keys` are the samples in the table's order, `on` the last day compared with."""
    sample_code, names = codes(frame["sample"])
    place = {str(key): index for index, key in enumerate(keys)}
    where = np.array([*(place.get(name, -1) for name in names), -1], dtype=np.int64)[sample_code]
    analyte, analytes = codes(frame["analyte"])
    kind, kinds = codes(frame["kind"])
    verdict, verdicts = codes(frame["verdict"])
    limit, limits = codes(frame["limit"])
    authority, authorities = codes(frame["authority"])
    reason, reasons = codes(frame["reasons"])
    meaning = np.array([problem_of(a, k, v) for a in analytes for k in kinds for v in verdicts], dtype=np.int64)
    meant = (analyte * len(kinds) + kind) * len(verdicts) + verdict
    states = np.array([_STATE[Verdict(word)] for word in verdicts], dtype=np.int8)
    health = np.array([word == LimitKind.HEALTH for word in kinds], dtype=bool)[kind]
    goal = np.array([word == LimitKind.GOAL for word in kinds], dtype=bool)[kind]
    settled = frame["settled"].to_numpy(dtype=bool) & (where >= 0)
    key = np.where(settled, where * len(analytes) + analyte, 0)
    low = frame["low"].to_numpy(dtype=np.float64)
    # Each pair of a limit and an analyte that it meets (a class limit meets several) is asked for once.
    pair = limit * len(analytes) + analyte
    met = np.flatnonzero(np.bincount(pair[health], minlength=0))
    of_limit = np.full(len(limits), -1, dtype=np.int64)
    of_limit[limit] = authority
    later = np.full(len(limits) * len(analytes) + 1, np.inf)
    for one in met.tolist():
        name = str(limits[one // len(analytes)])
        later[one] = _later(
            str(analytes[one % len(analytes)]), str(authorities[of_limit[one // len(analytes)]]), name, on
        )
    return Verdicts(
        sample=where,
        state=_ahead(states[verdict], health & settled, low, later[pair]),
        problem=meaning[meant],
        settled=settled & ~_covered(key, goal, health & settled),
        goal=goal,
        incomplete=np.array([*(_says(Reason.MEMBERS_MISSING, word) for word in reasons), False], dtype=bool)[reason],
        derived=np.array([*(_says(Reason.DERIVED_FROM, word) for word in reasons), False], dtype=bool)[reason],
        health=health,
        limit=limit,
        low=low,
        high=frame["high"].to_numpy(dtype=np.float64),
        ratio_low=frame["ratio_low"].to_numpy(dtype=np.float64),
        ratio_high=frame["ratio_high"].to_numpy(dtype=np.float64),
        row=frame["result"].to_numpy(dtype=np.int64, na_value=-1),
    )
