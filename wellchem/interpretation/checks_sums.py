"""Checks that numbers of one report agree with each other: charges, sums, parts and wholes."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from wellchem import chemistry
from wellchem.interpretation.amounts import alkalinity
from wellchem.interpretation.practice import level
from wellchem.interpretation.table import LEFT, Bools, Floats, Rows
from wellchem.interpretation.waters import Waters, choose
from wellchem.interpretation.working import Amount, worked_out
from wellchem.models.codes import Fraction

PASS, WARN, FAIL, NOT_POSSIBLE = 0, 1, 2, 3
Status = NDArray[np.int8]


@dataclass(frozen=True, eq=False)
class Outcome:
    """Status by sample, the figure that decides with its bounds, and the analytes looked at."""

    status: Status
    low: Floats
    high: Floats
    unit: str = "1"
    label: str = ""
    analytes: tuple[str, ...] = ()
    rows: tuple[Rows, ...] = ()
    notes: tuple[str, ...] = ()
    said: tuple[str, ...] = ()
    places: tuple[int, ...] = ()  # of results in the sample


def _within(amount: Amount, least: float, greatest: float, slack: float) -> Status:
    """Pass inside a range, fail outside it by more than a slack, else a warning: a little off, or cannot be told."""
    inside = (amount.low >= least) & (amount.high <= greatest)
    outside = (amount.high < least - slack) | (amount.low > greatest + slack)
    return choose([~amount.known, inside, outside], [NOT_POSSIBLE, PASS, FAIL], WARN)


def ion_balance(waters: Waters) -> Outcome:
    """Cations against anions over the permitted difference."""
    positive, negative = waters.worked("cations"), waters.worked("anions")
    inputs, taken = positive.inputs + negative.inputs, positive.taken + negative.taken
    label = "difference over the permitted one"
    if not (positive.known & negative.known).any():
        status, nothing = np.full(waters.size, NOT_POSSIBLE, dtype=np.int8), np.full(waters.size, np.nan)
        return Outcome(status, nothing, nothing, "1", label, inputs, notes=taken)

    def signed(cations: Floats, anions: Floats) -> Floats:
        size = np.asarray(chemistry.charge_imbalance(cations=cations, anions=anions))
        return np.copysign(size, cations - anions)

    low = np.asarray(signed(positive.low, negative.high))
    high = np.asarray(signed(positive.high, negative.low))
    amount = Amount(low, high, inputs)
    status = _within(amount, -1.0, 1.0, level("slightly_off") - 1.0)
    return Outcome(status, low, high, "1", label, inputs, notes=taken)


def dissolved_solids(waters: Waters) -> Outcome:
    """Measured over calculated dissolved solids."""
    measured, worked = waters.table.standing("total_dissolved_solids"), waters.worked("calculated_solids")
    given = {"measured": (measured.low, measured.high), "calculated": (worked.low, worked.high)}
    amount = worked_out(chemistry.dissolved_solids_ratio, given, ("total_dissolved_solids", *worked.inputs))
    status = _within(amount, *chemistry.acceptance("measured_over_calculated_solids"), level("ratio_slack"))
    return Outcome(status, amount.low, amount.high, "1", "measured over calculated", amount.inputs, notes=worked.taken)


def conductance(waters: Waters) -> Outcome:
    """A hundred times the ion sums over conductance; the sum that fits better decides."""
    measured = waters.table.standing("specific_conductance")
    least, greatest = chemistry.acceptance("ion_sum_x100_over_conductance")
    found = []
    for name in ("cations", "anions"):
        ions = waters.worked(name)
        given = {"ion_sum": (ions.low, ions.high), "conductance": (measured.low, measured.high)}
        amount = worked_out(chemistry.ion_conductance_ratio, given, ("specific_conductance", *ions.inputs))
        found.append((amount, _within(amount, least, greatest, level("ratio_slack"))))
    (first, one), (second, other) = found
    better = one <= other
    return Outcome(
        np.where(better, one, other).astype(np.int8),
        np.where(better, first.low, second.low),
        np.where(better, first.high, second.high),
        "1",
        "100 times the ion sum over conductance",
        (*first.inputs, *second.inputs[1:]),
    )


def solids_conductance(waters: Waters) -> Outcome:
    """Dissolved solids over conductance."""
    solids = waters.table.standing("total_dissolved_solids")
    measured = waters.table.standing("specific_conductance")
    given = {"dissolved_solids": (solids.low, solids.high), "conductance": (measured.low, measured.high)}
    names = ("total_dissolved_solids", "specific_conductance")
    amount = worked_out(chemistry.dissolved_solids_conductance_ratio, given, names)
    least, greatest = chemistry.acceptance("measured_solids_over_conductance")
    status = _within(amount, least, greatest, level("sulfate_heavy") - greatest)
    return Outcome(status, amount.low, amount.high, "mg/L per µS/cm", "dissolved solids over conductance", names)


def hardness(waters: Waters) -> Outcome:
    """Printed hardness less that of calcium and magnesium."""
    printed, worked = waters.table.standing("total_hardness"), waters.worked("calculated_hardness")
    low, high = printed.low - worked.high, printed.high - worked.low
    share = level("hardness_tolerance") / 100.0
    permitted = np.maximum(np.maximum(printed.high, worked.high) * share, level("hardness_tolerance_least"))
    inside = (low >= -permitted) & (high <= permitted)
    outside = (low > permitted) | (high < -permitted)
    status = choose([np.isnan(low) | np.isnan(high), inside, outside], [NOT_POSSIBLE, PASS, FAIL], WARN)
    inputs = ("total_hardness", *worked.inputs)
    return Outcome(status, low, high, "mg/L as CaCO3", "printed less calculated", inputs)


def dissolved_total(waters: Waters) -> Outcome:
    """The largest excess of a dissolved result over its total."""
    status = np.full(waters.size, NOT_POSSIBLE, dtype=np.int8)
    low, high = np.full(waters.size, np.nan), np.full(waters.size, np.nan)
    share = 1.0 + level("dissolved_tolerance") / 100.0
    rows: list[Rows] = []
    named: list[str] = []
    for analyte in waters.table.analytes if waters.table.names(Fraction.DISSOLVED) else ():
        part = waters.table.standing(analyte, Fraction.DISSOLVED)
        if not part.measured.any():
            continue
        whole = waters.table.standing(analyte, Fraction.TOTAL)
        both = part.bounded & whole.bounded
        if not both.any():
            continue
        over = both & (part.low > whole.high * share)
        may_be = both & ~over & (part.high > whole.high * share) & ((part.flags & LEFT) == 0)
        found = choose([~both, over, may_be], [NOT_POSSIBLE, FAIL, WARN], PASS)
        # Of several analytes the worst counts; not possible is the least of all.
        worse = both & (_severity(found) > _severity(status))
        with np.errstate(divide="ignore", invalid="ignore"):
            low = np.where(worse, part.low / whole.high, low)
            high = np.where(worse, part.high / whole.low, high)
        status = np.where(worse, found, status).astype(np.int8)
        rows += [np.where(both & (found == FAIL), part.row, -1), np.where(both & (found == FAIL), whole.row, -1)]
        named.append(analyte)
    return Outcome(status, low, high, "1", "dissolved over total", tuple(named), tuple(rows))


def _severity(status: Status) -> Status:
    return np.array([1, 2, 3, 0], dtype=np.int8)[status]


def disagreeing(waters: Waters, analyte: str) -> Bools:
    """Where the dissolved result of an analyte exceeds its total."""
    if not waters.table.names(Fraction.DISSOLVED):
        return np.zeros(waters.size, dtype=bool)
    part = waters.table.standing(analyte, Fraction.DISSOLVED)
    whole = waters.table.standing(analyte, Fraction.TOTAL)
    return part.low > whole.high * (1.0 + level("dissolved_tolerance") / 100.0)


# What contains what: the whole, and its parts.
_NITROGEN = (
    ("nitrate_plus_nitrite", ("nitrate", "nitrite")),
    ("kjeldahl_nitrogen", ("ammonia", "organic_nitrogen")),
    ("total_nitrogen", ("kjeldahl_nitrogen", "nitrate", "nitrite")),
)


def nitrogen(waters: Waters) -> Outcome:
    """The largest share by which parts of nitrogen exceed their whole; two parts must also make the sum up."""
    status = np.full(waters.size, NOT_POSSIBLE, dtype=np.int8)
    low, high = np.full(waters.size, np.nan), np.full(waters.size, np.nan)
    share = 1.0 + level("nitrogen_tolerance") / 100.0
    for name, parts in _NITROGEN:
        if not waters.table.holds(name):
            continue
        whole = waters.table.standing(name)
        columns = [waters.table.standing(part) for part in parts]
        some = whole.bounded & np.any([column.measured for column in columns], axis=0)
        every = whole.bounded & np.all([column.bounded for column in columns], axis=0) & (name != "total_nitrogen")
        least = np.sum([np.nan_to_num(column.low) for column in columns], axis=0)
        greatest = np.sum([np.nan_to_num(column.high, posinf=np.inf) for column in columns], axis=0)
        over = some & (least > whole.high * share)
        under = every & (greatest * share < whole.low)
        found = choose([~some, over | under], [NOT_POSSIBLE, FAIL], PASS)
        worse = _severity(found) > _severity(status)
        low, high = np.where(worse, least - whole.high, low), np.where(worse, greatest - whole.low, high)
        status = np.where(worse, found, status).astype(np.int8)
    names = tuple(dict.fromkeys(name for whole, parts in _NITROGEN for name in (whole, *parts)))
    return Outcome(status, low, high, "mg/L as N", "parts less whole", names)


def coliform_consistency(waters: Waters) -> Outcome:
    """E. coli, and fecal coliform, against total coliform."""
    total = waters.table.standing("total_coliform")
    status = np.full(waters.size, NOT_POSSIBLE, dtype=np.int8)
    low, high = np.full(waters.size, np.nan), np.full(waters.size, np.nan)
    for name in ("e_coli", "fecal_coliform"):
        if not waters.table.holds(name):
            continue
        part = waters.table.standing(name)
        both = part.measured & total.measured & ~np.isnan(part.low) & ~np.isnan(total.high)
        over = both & (part.low > total.high)
        found = choose([~both, over], [NOT_POSSIBLE, FAIL], PASS)
        worse = _severity(found) > _severity(status)
        low, high = np.where(worse, part.low, low), np.where(worse, part.high, high)
        status = np.where(worse, found, status).astype(np.int8)
    return Outcome(status, low, high, "per 100 mL", "E. coli", ("e_coli", "fecal_coliform", "total_coliform"))


def alkalinity_ph(waters: Waters) -> Outcome:
    """Carbonate, hydroxide and phenolphthalein alkalinity against pH, and parts against the whole."""
    ph = waters.table.standing("ph")
    status = np.full(waters.size, NOT_POSSIBLE, dtype=np.int8)
    asked = (
        ("carbonate", level("phenolphthalein_ph")),
        ("phenolphthalein_alkalinity", level("phenolphthalein_ph")),
        ("hydroxide", level("hydroxide_ph")),
    )
    for name, least in asked:
        if not waters.table.holds(name):
            continue
        part = waters.table.standing(name)
        both = part.measured & ph.bounded & ~np.isnan(part.low)
        # Laboratories measure pH hours after the titration's water was drawn: half a unit is allowed.
        contrary = both & (part.low > 0.0) & (ph.high < least - 0.5)
        found = choose([~both, contrary], [NOT_POSSIBLE, FAIL], PASS)
        if name == "phenolphthalein_alkalinity":
            found = np.where(part.low > alkalinity(waters.table)[1], FAIL, found).astype(np.int8)
        status = np.where(_severity(found) > _severity(status), found, status).astype(np.int8)
    names = ("ph", "total_alkalinity", *(name for name, _ in asked))
    return Outcome(status, ph.low, ph.high, "1", "pH", names)
