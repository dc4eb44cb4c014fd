"""Checks of how a report was made: times, qualifiers, repeats, reporting limits, age, plausible values, the point."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import product

import numpy as np

from wellchem.interpretation import signs
from wellchem.interpretation.checks_sums import FAIL, NOT_POSSIBLE, PASS, WARN, Outcome, Status
from wellchem.interpretation.practice import by, level, number, rows, signed
from wellchem.interpretation.table import BLANK, ESTIMATED, HELD, OVER, REJECTED, UNREPORTED, Bools, Floats, Rows
from wellchem.interpretation.waters import HOURS_A_DAY, Waters, choose
from wellchem.models.codes import SamplingPoint

_BACTERIA = ("total_coliform", "e_coli", "fecal_coliform")
_STEADY_POINTS = (SamplingPoint.TAP_FIRST_DRAW, SamplingPoint.TAP_FLUSHED, SamplingPoint.WELL_HEAD)

# By the code of a point; the last place, -1, is that of none.
_STEADY = np.array([*(point in _STEADY_POINTS for point in SamplingPoint), False], dtype=bool)


def _nothing(waters: Waters) -> tuple[np.ndarray, np.ndarray]:
    return np.full(waters.size, np.nan), np.full(waters.size, np.nan)


def too_late(waters: Waters, analyte: str) -> Bools:
    """Where a test of the analyte was surely begun after its holding time, or its qualifier says so."""
    least, _ = waters.held
    flagged = (waters.table.standing(analyte).flags & HELD) != 0
    if row := by("holding_times", "analyte").get(analyte):
        flagged |= least > _permitted(waters, row[0])
    return np.asarray(flagged, dtype=bool)


def _permitted(waters: Waters, row: Mapping[str, str]) -> Floats:
    return np.where(waters.chlorinated, float(row["hours_chlorinated"]), float(row["hours"]))


def holding_time(waters: Waters) -> Outcome:
    """Hours from collection to analysis, against what each test allows. Bacteria fail; nitrate is a warning."""
    least, most = waters.held
    status = np.full(waters.size, NOT_POSSIBLE, dtype=np.int8)
    for row in rows("holding_times"):
        if not waters.table.holds(row["analyte"]):
            continue
        measured = waters.table.standing(row["analyte"]).measured
        permitted = _permitted(waters, row)
        late = too_late(waters, row["analyte"])
        passed = FAIL if row["analyte"] in _BACTERIA else WARN
        unknown = np.isnan(most)
        found = choose([~measured, late, unknown, most <= permitted], [NOT_POSSIBLE, passed, NOT_POSSIBLE, PASS], WARN)
        # The worst of the tests that can be judged.
        status = np.where(_order(found) > _order(status), found, status).astype(np.int8)
    names = tuple(row["analyte"] for row in rows("holding_times"))
    return Outcome(status, least, most, "h", "collection to analysis", names)


def _order(status: Status) -> Status:
    return np.array([1, 2, 3, 0], dtype=np.int8)[status]


def _decisive(waters: Waters) -> Bools:
    """Rows that a health limit was compared with, by the table's places."""
    verdicts, order = waters.verdicts, waters.table.order
    compared = np.zeros(int(order.max(initial=-1)) + 2, dtype=bool)
    row = verdicts.row[verdicts.settled & verdicts.health]
    compared[row[(row >= 0) & (row < len(compared))]] = True
    return compared[order]


def qualifiers(waters: Waters) -> Outcome:
    """Rejected results, blank-affected ones on health limits, and late bacteria or nitrate that find little, fail."""
    table = waters.table
    serious = (table.flags & REJECTED) != 0
    serious |= ((table.flags & BLANK) != 0) & _decisive(waters)
    for name in (*_BACTERIA, "nitrate", "nitrite"):
        span = table.rows(name)
        serious[span] |= ((table.flags[span] & HELD) != 0) & (table.low[span] <= 0.0)
    light = (table.flags & (REJECTED | HELD | BLANK | ESTIMATED | OVER)) != 0
    hit: tuple[Rows, ...] = tuple(np.array([place]) for place in np.flatnonzero(light)) if waters.size == 1 else ()
    conditions = [_in_sample(waters, serious), _in_sample(waters, light)]
    return Outcome(choose(conditions, [FAIL, WARN], PASS), *_nothing(waters), rows=hit)


def _in_sample(waters: Waters, rows_hit: Bools) -> Bools:
    return np.bincount(waters.table.sample[rows_hit], minlength=waters.size) > 0


def duplicates(waters: Waters) -> Outcome:
    """The largest relative difference of two results of one analyte, fraction, place of measurement and of taking."""
    table = waters.table
    low, high = _nothing(waters)
    code = np.repeat(np.arange(len(table.analytes)), np.diff(table.start))
    kept = (table.flags & (REJECTED | UNREPORTED)) == 0
    places = np.flatnonzero(kept & ~np.isnan(table.low) & ~np.isnan(table.high))
    kind = (code[places] * 8 + table.fraction[places] + 1) * 2 + table.field_measured[places]
    kind = kind * (len(SamplingPoint) + 1) + table.point[places] + 1
    group = kind * waters.size + table.sample[places]
    order = np.argsort(group, kind="stable")
    places, group = places[order], group[order]
    pair = np.flatnonzero(group[1:] == group[:-1])
    status = np.full(waters.size, NOT_POSSIBLE, dtype=np.int8)
    if not len(pair):
        return Outcome(status, low, high, "%", "relative difference")
    one, other = places[pair], places[pair + 1]
    sample = table.sample[one]
    gap = np.maximum(0.0, np.maximum(table.low[one] - table.high[other], table.low[other] - table.high[one]))
    middle = (table.low[one] + table.high[one] + table.low[other] + table.high[other]) / 4.0
    with np.errstate(divide="ignore", invalid="ignore"):
        least = np.where(gap > 0.0, 100.0 * gap / middle, 0.0)
    largest = np.full(waters.size, -np.inf)
    np.maximum.at(largest, sample, least)
    paired = largest > -np.inf
    status = choose([~paired, largest > level("duplicate_tolerance")], [NOT_POSSIBLE, WARN], PASS)
    status = np.where(paired & (largest > 2.0 * level("duplicate_tolerance")), FAIL, status).astype(np.int8)
    far = least > level("duplicate_tolerance")
    pairs = zip(one[far].tolist(), other[far].tolist(), strict=True) if waters.size == 1 else ()
    hit = tuple(np.array([place]) for both in pairs for place in both)
    shown = np.where(paired, largest, np.nan)
    return Outcome(status, shown, shown, "%", "relative difference", rows=hit)


def reporting_limits(waters: Waters) -> Outcome:
    """How many comparisons with limits cannot be decided; with health limits it fails."""
    verdicts = waters.verdicts
    open_ones = verdicts.untold
    health = np.bincount(verdicts.sample[open_ones & verdicts.health], minlength=waters.size)
    other = np.bincount(verdicts.sample[open_ones & ~verdicts.health], minlength=waters.size)
    any_made = np.bincount(verdicts.sample[verdicts.settled], minlength=waters.size) > 0
    status = choose([~any_made, health > 0, other > 0], [NOT_POSSIBLE, FAIL, WARN], PASS)
    figure = (health + other).astype(np.float64)
    hit: tuple[Rows, ...] = ()
    if waters.size == 1:
        back = {source: place for place, source in enumerate(waters.table.order.tolist())}
        unsettled = sorted(set(verdicts.row[open_ones].tolist()))
        hit = tuple(np.array([back[row]]) for row in unsettled if row in back)
    return Outcome(status, figure, figure, "1", "comparisons that cannot be decided", rows=hit)


def age(waters: Waters) -> Outcome:
    """Days from collection to the date compared with."""
    low = (waters.day - HOURS_A_DAY - waters.dates.collected.high) / HOURS_A_DAY
    high = (waters.day - waters.dates.collected.low) / HOURS_A_DAY
    low = np.maximum(low, 0.0)
    conditions = [np.isnan(low), low > level("age_fail_days"), low > level("age_warn_days")]
    return Outcome(choose(conditions, [NOT_POSSIBLE, FAIL, WARN], PASS), low, high, "d", "age of the sample")


def implausible(waters: Waters, analyte: str) -> Bools:
    """Where a value is out of the range of ground water."""
    if not waters.table.holds(analyte):
        return np.zeros(waters.size, dtype=bool)
    known = waters.found.get(f"implausible {analyte}")
    if not isinstance(known, np.ndarray):
        waters.found[f"implausible {analyte}"] = known = _implausible(waters, analyte)
    return known


def _implausible(waters: Waters, analyte: str) -> Bools:
    found = np.zeros(waters.size, dtype=bool)
    column = waters.table.most(analyte)
    for row in by("plausible", "analyte").get(analyte, ()):
        least, most = number(row["lowest"]), number(row["highest"])
        if most is not None:
            found |= column.low > most
        if least is not None:
            found |= column.measured & (column.high < least)
    return found


def plausible(waters: Waters) -> Outcome:
    """Values out of the range of ground water warn; below nought, or a pH out of 0 to 14, fails."""
    table = waters.table
    low, high = _nothing(waters)
    unusual = np.zeros(waters.size, dtype=bool)
    hit: list[Rows] = []
    named: list[str] = []
    for row in rows("plausible"):
        if table.holds(row["analyte"]) and (found := implausible(waters, row["analyte"])).any():
            unusual |= found
            column = table.most(row["analyte"])
            low, high = np.where(found, column.low, low), np.where(found, column.high, high)
            hit.append(np.where(found, column.row, -1))
            named.append(row["analyte"])
    # Negative concentrations and counts: only activities, potentials, indices and the like may lie below nought.
    beyond = table.high < 0.0
    for name in table.analytes:
        if name in signed():
            beyond[table.rows(name)] = False
    ph = table.rows("ph")
    beyond[ph] = (table.high[ph] < 0.0) | (table.low[ph] > 14.0)
    impossible = np.bincount(table.sample[beyond], minlength=waters.size) > 0
    status = choose([impossible, unusual], [FAIL, WARN], PASS)
    return Outcome(status, low, high, "", "value", tuple(named), tuple(hit))


def raw_water(waters: Waters) -> Outcome:
    """Signs, or the report's own word, that the water was treated before it was sampled."""
    treated = signs.softened(waters) | signs.chlorinated(waters) | signs.after_membrane(waters)
    treated |= waters.dates.point == tuple(SamplingPoint).index(SamplingPoint.AFTER_TREATMENT)
    low, high = _nothing(waters)
    return Outcome(choose([treated], [WARN], PASS), low, high)


def sampling_point(waters: Waters) -> Outcome:
    """Whether lead and copper can be traced to the pipe or the well."""
    low, high = _nothing(waters)
    if not (waters.table.holds("lead") or waters.table.holds("copper")):
        return Outcome(np.full(waters.size, NOT_POSSIBLE, dtype=np.int8), low, high, analytes=("lead", "copper"))
    measured = waters.table.standing("lead").measured | waters.table.standing("copper").measured
    told = _STEADY[waters.dates.point]
    for name, point in product(("lead", "copper"), _STEADY_POINTS):
        told |= waters.table.taken(name, point).measured
    return Outcome(choose([~measured, told], [NOT_POSSIBLE, PASS], WARN), low, high, analytes=("lead", "copper"))
