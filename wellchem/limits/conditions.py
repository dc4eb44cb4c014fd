"""When a limit applies: a closed set of predicates that the report, the sample or the household can settle.

Each predicate is true, false or unsettled (1, 0, -1). What settles nothing here is unsettled: the limit is then shown
with its condition and decides nothing. The predicates and how they are read are rows of `predicates.csv`.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import SamplingPoint
from wellchem.models.household import Household
from wellchem.reference import folder

TRUE, FALSE, UNSETTLED = 1, 0, -1
# Analytes whose results settle a predicate.
READ = ("ph", "total_hardness", "free_chlorine", "total_chlorine")

Truth = NDArray[np.int8]
Bounds = tuple[NDArray[np.float64], NDArray[np.float64]]

_DRAWN = {SamplingPoint.TAP_FIRST_DRAW: "first-draw", SamplingPoint.TAP_FLUSHED: "flushed"}
# Treatment in place, by the codes of the stages of treatment and a few that no household's train is made of.
_CHLORINE = frozenset({"chlorination"})
_DISINFECTANT = _CHLORINE | {"chloramination", "chlorine_dioxide", "ozonation", "ultraviolet"}
_OTHER = frozenset({"coagulation"})


@dataclass(frozen=True)
class Setting:
    """What is known of each sample besides its limits: bounds of results, days, points; and of the household."""

    samples: int
    bounds: Callable[[str], Bounds]  # per sample, NaN where there is no result
    day: NDArray[np.int64]  # compared with, days since 1970-01-01
    collected: NDArray[np.int64]  # days since 1970-01-01, or a negative number far off
    point: NDArray[np.int8]  # index into SamplingPoint, or -1
    household: Household


@cache
def predicates() -> Mapping[str, str]:
    """The predicates' codes with the argument that each takes, or an empty text."""
    with (folder() / "predicates.csv").open(encoding="utf-8", newline="") as lines:
        return {row["code"]: row["argument"] for row in csv.DictReader(lines)}


def faults(condition: str) -> list[str]:
    """What is wrong with a printed condition (`!chlorinated`, `ph-below:8.0`)."""
    code, _, argument = condition.removeprefix("!").partition(":")
    if code not in predicates():
        return [f"applies_when {condition!r} is not one of {', '.join(predicates())}"]
    wanted = predicates()[code]
    if bool(wanted) != bool(argument):
        return [f"applies_when {condition!r} " + (f"needs {wanted} after a colon" if wanted else "takes no argument")]
    try:
        if wanted.startswith("number"):
            float(argument)
        elif wanted == "date":
            date.fromisoformat(argument)
        elif wanted and argument not in [word.strip() for word in wanted.split(",")]:
            return [f"applies_when {condition!r}: {argument!r} is not one of {wanted}"]
    except ValueError:
        return [f"applies_when {condition!r}: {argument!r} is not a {wanted}"]
    return []


def settle(conditions: tuple[tuple[str, ...], ...], setting: Setting) -> NDArray[np.int8]:
    """For each conjunction of predicates (rows) and each sample (columns): 1 true, 0 false, -1 unsettled."""
    single = {
        condition: _truth(condition, setting) for condition in sorted({c for all_of in conditions for c in all_of})
    }
    table = np.full((len(conditions), setting.samples), TRUE, dtype=np.int8)
    for index, all_of in enumerate(conditions):
        for condition in all_of:
            truth = single[condition]
            row = table[index]
            row[(truth == UNSETTLED) & (row == TRUE)] = UNSETTLED
            row[truth == FALSE] = FALSE
    return table


def _truth(condition: str, setting: Setting) -> Truth:
    code, _, argument = condition.removeprefix("!").partition(":")
    truth = _RULES.get(code, _never)(setting, argument)
    if condition.startswith("!"):
        return np.where(truth == UNSETTLED, truth, 1 - truth).astype(np.int8)
    return truth


def _all(setting: Setting, answer: bool | None) -> Truth:
    return np.full(setting.samples, UNSETTLED if answer is None else int(answer), dtype=np.int8)


def _never(setting: Setting, argument: str) -> Truth:
    return _all(setting, None)


def _below(analyte: str) -> Callable[[Setting, str], Truth]:
    """True where the whole of the analyte's bounds is below the number, false where none of it is."""

    def rule(setting: Setting, argument: str) -> Truth:
        low, high = setting.bounds(analyte)
        truth = _all(setting, None)
        truth[high < float(argument)] = TRUE
        truth[low >= float(argument)] = FALSE
        return truth

    return rule


def _ph_above(setting: Setting, argument: str) -> Truth:
    low, high = setting.bounds("ph")
    truth = _all(setting, None)
    truth[low > float(argument)] = TRUE
    truth[high <= float(argument)] = FALSE
    return truth


def _drawn(setting: Setting, code: str) -> Truth:
    truth = _all(setting, None)
    for index, point in enumerate(SamplingPoint):
        if point is not SamplingPoint.TAP and point is not SamplingPoint.AFTER_TREATMENT:
            truth[setting.point == index] = int(_DRAWN.get(point) == code)
    return truth


def _in_place(household: Household, means: frozenset[str]) -> bool | None:
    """Whether a treatment of the kind is in place: false only where all that the household states is understood."""
    stated = frozenset(household.treatment or ())
    if household.treatment is None or (not stated & means and stated - _stages() - _DISINFECTANT - _OTHER):
        return None
    return bool(stated & means)


@cache
def _stages() -> frozenset[str]:
    with (folder() / "practice" / "treatment" / "stages.csv").open(encoding="utf-8", newline="") as lines:
        return frozenset(row["code"] for row in csv.DictReader(lines))


def _chlorinated(setting: Setting, argument: str) -> Truth:
    household = setting.household
    stated = household.chlorinated
    truth = _all(setting, _in_place(household, _CHLORINE) if stated is None else stated)
    for analyte in ("free_chlorine", "total_chlorine"):
        truth[setting.bounds(analyte)[0] > 0] = TRUE
    return truth


def _disinfected(setting: Setting, argument: str) -> Truth:
    chlorinated = _chlorinated(setting, "")
    other = _all(setting, _in_place(setting.household, _DISINFECTANT))
    return np.where(chlorinated == TRUE, chlorinated, other)


def _chlorine_dioxide(setting: Setting, argument: str) -> Truth:
    stated = _in_place(setting.household, frozenset({"chlorine_dioxide"}))
    return _all(setting, False if stated is None and setting.household.chlorinated else stated)


def _chlorate_forming(setting: Setting, argument: str) -> Truth:
    chlorine, dioxide = _chlorinated(setting, ""), _chlorine_dioxide(setting, "")
    return np.where((chlorine == TRUE) | (dioxide == TRUE), TRUE, np.minimum(chlorine, dioxide)).astype(np.int8)


def _filtration(setting: Setting, argument: str) -> Truth:
    """A household's own filters are none of the works that the limits mean; no treatment at all settles it."""
    untreated = setting.household.treatment == ()
    return _all(setting, (argument == "none") if untreated else None)


def _in_operation_before(setting: Setting, argument: str) -> Truth:
    threshold = date.fromisoformat(argument).toordinal() - date(1970, 1, 1).toordinal()
    first_known = np.where(setting.collected > -(10**6), np.minimum(setting.collected, setting.day), setting.day)
    truth = _all(setting, None)
    truth[first_known < threshold] = TRUE
    if setting.household.well_age is not None:
        built = setting.day - setting.household.well_age * 365.25
        truth[built < threshold] = TRUE
        truth[built >= threshold] = FALSE
    return truth


def _said(answer: Callable[[Household], bool | None]) -> Callable[[Setting, str], Truth]:
    return lambda setting, argument: _all(setting, answer(setting.household))


def _young_children(household: Household) -> bool | None:
    if household.infants or household.children:
        return True
    return False if household.infants is False and household.children is False else None


_RULES: dict[str, Callable[[Setting, str], Truth]] = {
    "aluminum-coagulant": _said(lambda household: _in_place(household, frozenset({"coagulation"}))),
    "private-well": _said(lambda household: True),
    "bottled": _said(lambda household: False),
    "surface-influenced": _said(lambda household: household.surface_influenced),
    "chlorinated": _chlorinated,
    "chloraminated": _said(lambda household: _in_place(household, frozenset({"chloramination"}))),
    "ozonated": _said(lambda household: _in_place(household, frozenset({"ozonation"}))),
    "disinfected": _disinfected,
    "chlorate-forming-disinfection": _chlorate_forming,
    "chlorite-forming-disinfection": _chlorine_dioxide,
    "filtration": _filtration,
    "in-operation-before": _in_operation_before,
    "ph-below": _below("ph"),
    "ph-above": _ph_above,
    "hardness-below": _below("total_hardness"),
    "bottle-fed-infants": _said(lambda household: household.infants),
    "young-children": _said(_young_children),
    "sodium-restricted-diet": _said(lambda household: household.sodium_restricted),
    "first-draw": lambda setting, argument: _drawn(setting, "first-draw"),
    "flushed": lambda setting, argument: _drawn(setting, "flushed"),
}
