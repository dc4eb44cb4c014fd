"""What is wrong with the water, how sure, and how soon to act, for many samples at once.

Findings come from limits, from the thresholds of `rules.csv`, from what people notice, and from a few rules that weigh
several numbers. Raising a result only ever adds to them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache

import numpy as np
from numpy.typing import NDArray

from wellchem.interpretation import amounts
from wellchem.interpretation.checks_report import implausible, too_late
from wellchem.interpretation.checks_sums import disagreeing
from wellchem.interpretation.conditions import holds
from wellchem.interpretation.practice import by, groups, level, number, problem_index, problems, rows
from wellchem.interpretation.signs import chlorinated
from wellchem.interpretation.table import BOUNDED, DOUBTFUL, LEFT, RIGHT, Bools, Floats
from wellchem.interpretation.verdicts import AHEAD, BEYOND
from wellchem.interpretation.waters import HOURS_A_DAY, Waters, day_hours
from wellchem.models.codes import Certainty, SamplingPoint, Urgency
from wellchem.models.household import WellType

NONE, POSSIBLE, LIKELY, CERTAIN = 0, 1, 2, 3
CERTAINTIES = (Certainty.POSSIBLE, Certainty.LIKELY, Certainty.CERTAIN)
URGENCIES = (Urgency.OPTIONAL, Urgency.PLANNED, Urgency.SOON, Urgency.NOW)
_RANK = {urgency.value: rank for rank, urgency in enumerate(URGENCIES)}
SOON = _RANK[Urgency.SOON.value]

Grid = NDArray[np.int8]

OPEN_WELLS = (WellType.DUG, WellType.DRIVEN, WellType.BORED, WellType.SPRING)


@dataclass(frozen=True, eq=False)
class Findings:
    """Certainty, urgency and worst ratio to a health limit, by problem (row of the catalogue) and sample (column)."""

    certainty: Grid
    urgency: Grid
    ratio: Floats

    def of(self, code: str) -> Grid:
        """Certainty of one problem by sample."""
        row: Grid = self.certainty[problem_index()[code]]
        return row


@dataclass(eq=False)
class _Weighing:
    """Evidence as it is gathered: certainty so far, sound witnesses, whether people notice it, the worst ratio."""

    certainty: Grid
    witnesses: NDArray[np.int16]
    open_ended: NDArray[np.bool_]  # decided by a result that a bound, not a number, puts beyond
    ratio: Floats
    ratio_untold: Floats  # the worst that an undecided result may be
    untold: NDArray[np.bool_]  # a result that cannot be judged raises it

    def raise_to(self, problem: int, where: Bools, certainty: int) -> None:
        row = self.certainty[problem]
        np.maximum(row, np.where(where, certainty, NONE).astype(np.int8), out=row)

    def decided(self, code: str) -> Bools:
        return np.asarray(self.certainty[problem_index()[code]] >= LIKELY, dtype=bool)


def find(waters: Waters) -> Findings:
    """Problems of every sample."""
    shape = (len(problems()), waters.size)
    weighing = _Weighing(
        np.zeros(shape, dtype=np.int8),
        np.zeros(shape, dtype=np.int16),
        np.ones(shape, dtype=bool),
        np.full(shape, np.nan),
        np.full(shape, np.nan),
        np.zeros(shape, dtype=bool),
    )
    _from_limits(waters, weighing)
    _from_rules(waters, weighing)
    _from_observations(waters, weighing)
    _from_several(waters, weighing)
    weighing.ratio = np.where(weighing.certainty == POSSIBLE, weighing.ratio_untold, weighing.ratio)
    urgency, acute = _urgency(waters, weighing)
    _certain(waters, weighing, acute)
    return Findings(weighing.certainty, urgency, weighing.ratio)


def _from_limits(waters: Waters, weighing: _Weighing) -> None:
    """Decided verdicts are likely; of undecided ones on health limits, those with something found, or asked always."""
    verdicts = waters.verdicts
    # A goal is no limit: where nothing else is in force, what it is passed by is to be found out.
    aimed = np.flatnonzero(verdicts.counts & (verdicts.state == BEYOND) & verdicts.goal)
    weighing.certainty[verdicts.problem[aimed], verdicts.sample[aimed]] = POSSIBLE
    past = np.flatnonzero(verdicts.counts & (verdicts.state == BEYOND) & ~verdicts.goal)
    problem, sample = verdicts.problem[past], verdicts.sample[past]
    weighing.certainty[problem, sample] = LIKELY
    # Without an upper end only because something else was not measured: what was measured tells the ratio.
    endless = np.isnan(verdicts.ratio_high) | (np.isinf(verdicts.ratio_high) & (verdicts.incomplete | verdicts.derived))
    worst = np.where(endless, verdicts.ratio_low, verdicts.ratio_high)[past]
    ratio = np.full(weighing.ratio.shape, -np.inf)
    health = verdicts.health[past]
    np.maximum.at(ratio, (problem[health], sample[health]), np.nan_to_num(worst[health], nan=1.0, posinf=np.inf))
    weighing.ratio[:] = np.where(ratio > -np.inf, ratio, np.nan)
    _count_witnesses(waters, weighing, past)
    ahead = np.flatnonzero(verdicts.counts & (verdicts.state == AHEAD))
    weighing.certainty[verdicts.problem[ahead], verdicts.sample[ahead]] = LIKELY
    undecided = verdicts.untold & verdicts.health
    # Asked always, or where what lies near the well or is noticed makes it likely: though nothing was found.
    always = np.zeros(weighing.certainty.shape, dtype=bool)
    for place, row in enumerate(problems()):
        if row.undecided:
            always[place] = holds(row.undecided, waters)[0]
    asked = always[verdicts.problem, verdicts.sample]
    shown = np.flatnonzero(undecided & (asked | (verdicts.low > 0.0) | verdicts.incomplete | verdicts.derived))
    where = np.zeros(weighing.certainty.shape, dtype=bool)
    where[verdicts.problem[shown], verdicts.sample[shown]] = True
    np.fmax.at(weighing.ratio_untold, (verdicts.problem[shown], verdicts.sample[shown]), verdicts.ratio_high[shown])
    weighing.untold = where
    np.maximum(weighing.certainty, where.astype(np.int8) * POSSIBLE, out=weighing.certainty)


def _count_witnesses(waters: Waters, weighing: _Weighing, past: NDArray[np.int64]) -> None:
    """Sound results beyond the same limit: two of them confirm each other."""
    verdicts, table = waters.verdicts, waters.table
    place = np.full(int(table.order.max(initial=-1)) + 2, -1, dtype=np.int64)
    place[table.order] = np.arange(len(table.order))
    row = verdicts.row[past]
    alone = (row >= 0) & (row < len(place) - 1)
    past, row = past[alone], place[row[alone]]
    past, row = past[row >= 0], row[row >= 0]
    flags = table.flags[row]
    problem, sample = verdicts.problem[past], verdicts.sample[past]
    # Organisms counted beyond a range were grown and seen; a chemical beyond a range has no number.
    counted = np.array([groups().get(name) == "microbiology" for name in table.analytes], dtype=bool)
    counted = counted[np.searchsorted(table.start, row, side="right") - 1]
    exact = (flags & (LEFT | BOUNDED)) == 0
    exact &= counted | ((flags & RIGHT) == 0)
    weighing.open_ended[problem[exact], sample[exact]] = False
    sound = exact & ((flags & DOUBTFUL) == 0)
    limits = int(verdicts.limit.max(initial=-1)) + 1
    key = (sample[sound] * limits + verdicts.limit[past][sound]) * len(problems()) + problem[sound]
    unique, count = np.unique(key, return_counts=True)
    found = unique % len(problems()), unique // len(problems()) // max(limits, 1)
    np.maximum.at(weighing.witnesses, found, count.astype(np.int16))


def beyond(row: Mapping[str, str], waters: Waters) -> Bools:
    """Where an amount is surely past the threshold of a rule, whatever its condition."""
    above = number(row["above"])
    return waters.below(row["analyte"], float(row["below"])) if above is None else waters.above(row["analyte"], above)


def _from_rules(waters: Waters, weighing: _Weighing) -> None:
    """Thresholds of practice; a rule whose group is only not ruled out is possible."""
    for row in rows("rules"):
        problem = problem_index()[row["problem"]]
        if not waters.tells(row["analyte"]) or not (hit := beyond(row, waters)).any():
            continue
        above, below = number(row["above"]), number(row["below"])
        met, weak = holds(row["when"], waters)
        certainty = POSSIBLE if weak or row["certainty"] == Certainty.POSSIBLE.value else LIKELY
        weighing.raise_to(problem, hit & met, certainty)
        if row["analyte"] in amounts.DERIVED:
            # No witness where a result that went into it is out of range.
            doubted = [implausible(waters, name) for name in waters.worked(row["analyte"]).inputs]
            sound = (hit & met & ~np.any(doubted, axis=0)).astype(np.int16)
        else:
            sound = np.where(met, waters.table.witnesses(row["analyte"], above, below), 0).astype(np.int16)
            flags = waters.table.most(row["analyte"]).flags
            counted = groups().get(row["analyte"]) == "microbiology"
            bound = (flags & (LEFT | BOUNDED | (0 if counted else RIGHT))) != 0
            weighing.open_ended[problem] &= ~(hit & met & ~bound)
        # Hardness that was titrated and hardness from calcium and magnesium are two methods.
        other_method = row["problem"] == "hardness"
        gathered = weighing.witnesses[problem]
        weighing.witnesses[problem] = gathered + sound if other_method else np.maximum(gathered, sound)


def _from_observations(waters: Waters, weighing: _Weighing) -> None:
    """What people notice raises a problem where no number disproves it, and is a witness where a number shows it."""
    for row in rows("observations"):
        if not waters.observed(row["observation"]) or not row["problem"]:
            continue
        problem = problem_index()[row["problem"]]
        disproved = holds(row["disproved_by"], waters)[0] if row["disproved_by"] else np.zeros(waters.size, dtype=bool)
        kind = problems()[problem].kind
        if kind != "health":
            weighing.witnesses[problem] += (weighing.certainty[problem] >= LIKELY).astype(np.int16)
        certainty = LIKELY if row["certainty"] == Certainty.LIKELY.value else POSSIBLE
        weighing.raise_to(problem, ~disproved, certainty)


def _from_several(waters: Waters, weighing: _Weighing) -> None:
    """Problems that several findings together make."""
    index = problem_index()
    home = waters.household
    exposed = (waters.depth <= level("shallow_well_depth")) | (
        home.surface_influenced is True
        or bool(home.flooded)
        or home.well_cap_sound is False
        or home.well_type in OPEN_WELLS
    )
    fecal, coliform = weighing.decided("fecal_bacteria"), weighing.decided("coliform_bacteria")
    weighing.raise_to(index["surface_connection"], fecal & exposed, LIKELY)
    weighing.raise_to(index["surface_connection"], coliform & exposed, POSSIBLE)
    if home.surface_influenced is True or home.bacteria_return is True or home.bacteria_after_rain is True:
        weighing.raise_to(index["surface_connection"], np.ones(waters.size, dtype=bool), LIKELY)
    elif home.flooded or home.well_cap_sound is False or home.well_type in OPEN_WELLS:
        # A way in is to be looked for whatever one sample found.
        weighing.raise_to(index["surface_connection"], np.ones(waters.size, dtype=bool), POSSIBLE)
    if home.flooded:
        weighing.raise_to(index["flooded_well"], ~_flood_is_past(waters, weighing, home.flooded), LIKELY)
    metal = weighing.decided("lead") | weighing.decided("copper")
    aggressive = weighing.decided("low_ph") | weighing.decided("corrosive_water")
    weighing.raise_to(index["corrosive_metals"], metal & aggressive, LIKELY)


def _flood_is_past(waters: Waters, weighing: _Weighing, flooded: date | bool) -> Bools:
    """Where a sample of long after the flood was sound and found no bacteria: the way in is still looked for."""
    if not isinstance(flooded, date):
        return np.zeros(waters.size, dtype=bool)
    since = waters.dates.collected.low - day_hours(flooded) >= level("flood_past") * HOURS_A_DAY
    test = waters.table.standing("total_coliform")
    treated = waters.dates.point == tuple(SamplingPoint).index(SamplingPoint.AFTER_TREATMENT)
    sound = ~(too_late(waters, "total_coliform") | chlorinated(waters) | treated)
    index = problem_index()
    suspect = weighing.certainty[[index["fecal_bacteria"], index["coliform_bacteria"]]].any(axis=0)
    return np.asarray(since & test.bounded & (test.high <= 0.0) & sound & ~suspect)


def _urgency(waters: Waters, weighing: _Weighing) -> tuple[Grid, NDArray[np.bool_]]:
    """Urgency by the table of hazard, group and amount; and where a hazard is acute and to be acted on at once."""
    urgency = np.zeros(weighing.certainty.shape, dtype=np.int8)
    acute = np.zeros(weighing.certainty.shape, dtype=bool)
    present = weighing.certainty > NONE
    for problem in np.flatnonzero(present.any(axis=1)).tolist():
        found = present[problem]
        for row in by("urgency", "problem").get(problems()[problem].code, ()):
            if not waters.counts(row["group"]):
                continue
            rank = _RANK[row["urgency"]]
            met = found & applies(row, waters, weighing.ratio[problem])
            np.maximum(urgency[problem], np.where(met, rank, 0).astype(np.int8), out=urgency[problem])
            if row["nature"] == "acute" and row["urgency"] == Urgency.NOW.value:
                acute[problem] |= met
    health = _of_health()
    # What cannot be told from this report is to be tested soon; it is no emergency yet.
    possible = weighing.certainty == POSSIBLE
    urgency = np.where(possible & health, np.minimum(urgency, SOON), urgency)
    urgency = np.where(possible & health & weighing.untold, SOON, urgency)
    urgency = np.where(present & health, np.maximum(urgency, 1), urgency).astype(np.int8)
    return urgency, acute & ~possible


@cache
def _of_health() -> Bools:
    return np.array([row.kind == "health" for row in problems()], dtype=bool)[:, None]


def applies(row: Mapping[str, str], waters: Waters, ratio: Floats) -> Bools:
    """Where a row of the urgency table applies: by ratio to the limit, by amount, or to every finding."""
    met = np.ones(waters.size, dtype=bool)
    if row["above_ratio"] and float(row["above_ratio"]) > 0.0:
        met &= ratio >= float(row["above_ratio"])  # no number is not
    if row["analyte"]:
        met &= waters.table.most(row["analyte"]).low >= float(row["above_amount"])
    return met


def _certain(waters: Waters, weighing: _Weighing, acute: NDArray[np.bool_]) -> None:
    """Likely becomes certain by a second sound result, or where the hazard is acute.

    Never on a bound alone, nor on a number out of the range of ground water, which may be a slip of units.
    """
    slipped = np.zeros(weighing.certainty.shape, dtype=bool)
    at_odds = np.zeros(weighing.certainty.shape, dtype=bool)
    for place in np.flatnonzero(((weighing.witnesses >= 2) | acute).any(axis=1)):
        for analyte in problems()[place].analytes:
            name = analyte.rstrip("<>")
            if waters.table.holds(name):
                slipped[place] |= implausible(waters, name)
                at_odds[place] |= disagreeing(waters, name)
    confirmed = (weighing.witnesses >= 2) & ~at_odds
    certain = (weighing.certainty == LIKELY) & (confirmed | (acute & ~weighing.open_ended)) & ~slipped
    weighing.certainty[certain] = CERTAIN
