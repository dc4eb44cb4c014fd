"""Figures of sizing in SI and US units, what the household draws, and the bed that every filter is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from math import inf, pi, sqrt

from wellchem.interpretation.treatment.tables import Constant, Ends, constant, rows, share
from wellchem.models.finding import Figure, Source
from wellchem.models.household import Household

DAYS = 365.0  # a year
KILO = 1000.0


@dataclass(frozen=True)
class Use:
    """What the household draws: litres a day, litres a minute at the peak and from the pump, people."""

    daily: Ends
    daily_said: str
    peak: Ends
    peak_said: str
    pump: float | None
    people: Ends


def use_of(household: Household) -> Use:
    """The household's use, from what it says, else from published figures."""
    if household.daily_use is not None:
        daily, said = (household.daily_use,) * 2, f"use {household.daily_use:g} L/d (household)"
    elif household.people:
        one = constant("use_per_person")
        daily = household.people * one.low, household.people * one.high
        said = f"{household.people} people, {one.low:g} to {one.high:g} L/d each ({one.source.title})"
    else:
        all_ = constant("use_per_household")
        daily, said = (all_.low, all_.high), f"people not said: {all_.low:g} to {all_.high:g} L/d ({all_.source.title})"
    peak = constant("peak_demand")
    if household.peak_demand is not None:
        demand, told = (household.peak_demand,) * 2, f"peak demand {household.peak_demand:g} L/min (household)"
    else:
        demand, told = (peak.low, peak.high), f"peak demand not said: {peak.low:g} to {peak.high:g} L/min"
    people = (float(household.people),) * 2 if household.people else (1.0, 6.0)
    return Use(daily, said, demand, told, household.pump_flow, people)


@cache
def _customary() -> Mapping[str, tuple[str, float]]:
    """US unit of each SI unit, and what one SI unit is in it."""
    return {row["unit"]: (row["unit_us"], float(row["factor"])) for row in rows("customary_units")}


def times(*parts: Ends) -> Ends:
    """Product of bounds that are not negative."""
    low = high = 1.0
    for part in parts:
        low, high = share(low, part[0]), share(high, part[1])
    return low, high


def over(part: Ends, by: Ends) -> Ends:
    """Quotient of bounds that are not negative."""
    return (part[0] / by[1] if by[1] > 0.0 else inf), (part[1] / by[0] if by[0] > 0.0 else inf)


def plus(*parts: Ends) -> Ends:
    """Sum of bounds."""
    return sum(low for low, _ in parts), sum(high for _, high in parts)


def span(code: str) -> Ends:
    """Range of a constant."""
    found = constant(code)
    return found.low, found.high


def rounded(value: float) -> float:
    """Six significant digits, far beyond what any range tells."""
    return float(f"{value:.6g}")


def figure(
    name: str, label: str, value: Ends, unit: str, formula: str, inputs: tuple[str, ...], source: Source | None
) -> Figure:
    """A figure in SI and US units; an end without bound is left out."""
    us, factor = _customary().get(unit, ("", 1.0))
    low, high = (None if end == inf else rounded(end) for end in value)

    def customary(end: float | None) -> float | None:
        return None if end is None or not us else rounded(end * factor)

    return Figure(
        name=name,
        label=label,
        low=low,
        high=high,
        unit=unit,
        low_us=customary(low),
        high_us=customary(high),
        unit_us=us,
        formula=formula,
        inputs=inputs,
        source=source,
    )


def said(label: str, ends: Ends, unit: str) -> str:
    """An input as it is shown."""
    if ends[1] == inf:
        return f"{label} at least {ends[0]:.3g} {unit}" if ends[0] > 0.0 else f"{label} not known"
    return f"{label} {ends[0]:.3g} {unit}" if ends[0] == ends[1] else f"{label} {ends[0]:.3g} to {ends[1]:.3g} {unit}"


def stated(found: Constant) -> str:
    """A constant as it is shown."""
    value = f"{found.low:g}" if found.low == found.high else f"{found.low:g} to {found.high:g}"
    return f"{found.meaning}: {value} {found.unit}"


GALLONS_A_FOOT = 40.745847  # L/(min m²) for each gpm/ft², exact: NIST Handbook 44, Appendix C
CUBIC_FOOT = 28.316846592  # L, exact: NIST Handbook 44, Appendix C
POUND = 0.45359237  # kg, exact: NIST Handbook 44, Appendix C
GALLON = 3.785411784  # L, exact: NIST Handbook 44, Appendix C


def bed(use: Use, name: str) -> tuple[Figure, ...]:
    """Area and diameter of a bed by its service flow, and the backwash flow that it asks of the pump."""
    rate, wash = constant(f"{name}_rate"), constant(f"{name}_backwash")
    area = over(use.peak, times((rate.low, rate.high), (GALLONS_A_FOOT,) * 2))
    across = tuple(sqrt(4.0 * end / pi) * KILO for end in area)
    needed = times(area, (wash.low, wash.high), (GALLONS_A_FOOT,) * 2)
    pump = "pump flow not said" if use.pump is None else f"pump {use.pump:g} L/min"
    told = (
        ""
        if use.pump is None
        else (
            "; the pump gives it"
            if use.pump >= needed[1]
            else "; the pump does not give it"
            if use.pump < needed[0]
            else "; whether the pump gives it cannot be told"
        )
    )
    return (
        figure(
            "bed_diameter",
            "bed diameter, one vessel",
            (across[0], across[1]),
            "mm",
            "peak flow / service rate",
            (use.peak_said, stated(rate)),
            rate.source,
        ),
        figure(
            "backwash_flow",
            f"backwash flow{told}",
            needed,
            "L/min",
            "bed area x backwash rate",
            (pump, stated(wash)),
            wash.source,
        ),
    )
