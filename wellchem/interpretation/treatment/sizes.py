"""How big: figures of sizing for each class of treatment. What is not known makes a range."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from math import inf, pi, sqrt

from wellchem import chemistry
from wellchem.interpretation.treatment import acidity
from wellchem.interpretation.treatment.prediction import DEMANDS, chlorine_demand, weights
from wellchem.interpretation.treatment.tables import Constant, Ends, constant, rows
from wellchem.interpretation.treatment.water import UNKNOWN, Water
from wellchem.models.finding import Figure, Source
from wellchem.models.household import Household

DAYS = 365.0  # a year
_KILO = 1000.0


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


def _times(*parts: Ends) -> Ends:
    low = high = 1.0
    for part in parts:
        low, high = low * part[0], high * part[1]
    return low, high


def _over(part: Ends, by: Ends) -> Ends:
    return (part[0] / by[1] if by[1] < inf else 0.0), (part[1] / by[0] if by[0] > 0.0 else inf)


def _plus(*parts: Ends) -> Ends:
    return sum(low for low, _ in parts), sum(high for _, high in parts)


def _of(code: str) -> Ends:
    found = constant(code)
    return found.low, found.high


def figure(
    name: str, label: str, value: Ends, unit: str, formula: str, inputs: tuple[str, ...], source: Source | None
) -> Figure:
    """A figure in SI and US units; an end without bound is left out."""
    us, factor = _customary().get(unit, ("", 1.0))
    low, high = (None if end == inf else end for end in value)

    def customary(end: float | None) -> float | None:
        return None if end is None or not us else end * factor

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


def _said(label: str, ends: Ends, unit: str) -> str:
    if ends[1] == inf:
        return f"{label} at least {ends[0]:.3g} {unit}" if ends[0] > 0.0 else f"{label} not known"
    return f"{label} {ends[0]:.3g} {unit}" if ends[0] == ends[1] else f"{label} {ends[0]:.3g} to {ends[1]:.3g} {unit}"


def _constant_said(found: Constant) -> str:
    return f"{found.meaning}: {found.low:g} {found.unit}" if found.low == found.high else (
        f"{found.meaning}: {found.low:g} to {found.high:g} {found.unit}"
    )


GALLONS_A_FOOT = 40.745847  # L/(min m²) for each gpm/ft², exact: NIST Handbook 44, Appendix C
CUBIC_FOOT = 28.316846592  # L, exact: NIST Handbook 44, Appendix C
_POUND = 0.45359237  # kg, exact: NIST Handbook 44, Appendix C
_GALLON = 3.785411784  # L, exact: NIST Handbook 44, Appendix C


def bed(use: Use, name: str) -> tuple[Figure, ...]:
    """Area and diameter of a bed by its service flow, and the backwash flow that it asks of the pump."""
    rate, wash = constant(f"{name}_rate"), constant(f"{name}_backwash")
    area = _over(use.peak, _times((rate.low, rate.high), (GALLONS_A_FOOT,) * 2))
    across = tuple(sqrt(4.0 * end / pi) * _KILO for end in area)
    needed = _times(area, (wash.low, wash.high), (GALLONS_A_FOOT,) * 2)
    pump = "pump flow not said" if use.pump is None else f"pump {use.pump:g} L/min"
    told = "" if use.pump is None else (
        "; the pump gives it" if use.pump >= needed[1] else "; the pump does not give it" if use.pump < needed[0]
        else "; whether the pump gives it cannot be told"
    )
    return (
        figure("bed_diameter", "bed diameter, one vessel", (across[0], across[1]), "mm", "peak flow / service rate",
               (use.peak_said, _constant_said(rate)), rate.source),
        figure("backwash_flow", f"backwash flow{told}", needed, "L/min", "bed area x backwash rate",
               (pump, _constant_said(wash)), wash.source),
    )  # fmt: skip


def backwash_held(use: Use, name: str) -> tuple[bool | None, Ends]:
    """Whether the pump gives the backwash flow, and that flow."""
    found = bed(use, name)[1]
    needed = (found.low or 0.0, inf if found.high is None else found.high)
    if use.pump is None:
        return None, needed
    return (True if use.pump >= needed[1] else False if use.pump < needed[0] else None), needed


def hardness_for_sizing(water: Water) -> Ends:
    """Hardness with an allowance for iron and manganese, as the trade sizes by; it is not in the sodium balance."""
    grain = chemistry.hardness_factor("gpg")
    parts = [water.get("total_hardness") or UNKNOWN]
    for metal in ("iron", "manganese"):
        amount = water.get(metal) or (0.0, 0.0)
        parts.append(_times(amount, _of(f"{metal}_allowance"), (grain, grain)))
    return _plus(*parts)


def softener(water: Water, use: Use) -> tuple[Figure, ...]:
    """Load, capacity, days between regenerations, salt and water."""
    allowance, capacity, salt = constant("iron_allowance"), constant("resin_capacity"), constant("resin_salt")
    days, waste = constant("days_between"), constant("softening_waste")
    hardness = hardness_for_sizing(water)
    load = tuple(chemistry.hardness_load(total_hardness=hardness[end], volume=use.daily[end]) for end in (0, 1))
    needed = _times((load[0], load[1]), (days.low, days.high))
    year = (load[0] * DAYS / _KILO, load[1] * DAYS / _KILO)
    own = (
        _said("hardness", water.get("total_hardness") or UNKNOWN, "mg/L as CaCO3"),
        _said("iron", water.get("iron") or UNKNOWN, "mg/L"),
        _constant_said(allowance),
    )
    daily = (use.daily_said, _said("hardness for sizing", hardness, "mg/L as CaCO3"))
    return (
        figure("compensated_hardness", "hardness for sizing, with iron and manganese", hardness, "mg/L as CaCO3",
               "hardness + allowance x iron + allowance x manganese (sizing only, not chemistry)", own,
               allowance.source),
        figure("daily_load", "hardness load a day", (load[0], load[1]), "grain/d", "hardness x litres a day", daily, None),
        figure("resin_volume", "resin, for three to seven days between regenerations",
               _times(needed, (CUBIC_FOOT / capacity.low,) * 2), "L", "load x days / capacity",
               (_constant_said(capacity), _constant_said(days)), capacity.source),
        figure("regeneration_days", "days between regenerations of one cubic foot (28 L) of resin",
               _over((capacity.low, capacity.high), (load[0], load[1])), "d", "capacity / load",
               (_constant_said(capacity),), capacity.source),
        figure("salt_per_year", "salt a year", _times(year, (salt.low * _POUND, salt.high * _POUND)), "kg",
               "load x 365 x salt dose", (_constant_said(salt),), salt.source),
        figure("regeneration_water", "regeneration water a year", _times(year, (waste.low * _GALLON, waste.high * _GALLON)),
               "L", "load x 365 x water for each 1,000 grains", (_constant_said(waste),), waste.source),
        *bed(use, "softening"),
    )  # fmt: skip


def exchanger(water: Water, use: Use) -> tuple[Figure, ...]:
    """Anions that the resin takes, its volume for days between regenerations, and salt; sulfate is taken first."""
    capacity, salt, days = constant("exchange_capacity"), constant("exchange_salt"), constant("days_between")
    parts = [water.get(name) or ((0.0, 0.0) if name == "nitrate" else UNKNOWN) for name in ("nitrate", "sulfate")]
    taken = _plus(*(
        _times(amount, (weights()["total_hardness"] / weights()[name],) * 2)
        for name, amount in zip(("nitrate", "sulfate"), parts, strict=True)
    ))  # fmt: skip
    load = tuple(chemistry.hardness_load(total_hardness=taken[end], volume=use.daily[end]) for end in (0, 1))
    resin = _times((load[0], load[1]), (days.low, days.high), (CUBIC_FOOT / capacity.low,) * 2)
    each = salt.low * _POUND / capacity.low
    return (
        figure("daily_load", "nitrate and sulfate load a day, as CaCO3", (load[0], load[1]), "grain/d",
               "(nitrate + sulfate in equivalents) x litres a day",
               (use.daily_said, _said("nitrate as N", parts[0], "mg/L"), _said("sulfate", parts[1], "mg/L")), None),
        figure("resin_volume", "resin, for three to seven days between regenerations", resin, "L",
               "load x days / capacity", (_constant_said(capacity), _constant_said(days)), capacity.source),
        figure("salt_per_year", "salt a year", (load[0] * DAYS * each, load[1] * DAYS * each), "kg",
               "load x 365 x salt dose", (_constant_said(salt),), salt.source),
        *bed(use, "exchange"),
    )  # fmt: skip


def oxidiser(water: Water, use: Use) -> tuple[Figure, ...]:
    """Oxidant demand as chlorine and as permanganate, and the bed."""
    return (*demand(water, use, "permanganate"), *demand(water, use, "chlorine"), *bed(use, "oxidising"))


def demand(water: Water, use: Use, oxidant: str) -> tuple[Figure, ...]:
    """Oxidant that the analysed substances take, in the water and a day."""
    needed = chlorine_demand(water, oxidant)
    formula = {"chlorine": "Cl2", "permanganate": "KMnO4"}[oxidant]
    inputs = tuple(_said(name, water.amounts[name], "mg/L") for name in DEMANDS if name in water.amounts)
    source = Source(title="balanced equations, IUPAC atomic weights", locator="oxidations.csv", checked="computed")
    text = "iron, manganese, sulfide, nitrite, arsenic, ammonia by stoichiometry; organic matter and a residual come on top"
    return (
        figure(f"{oxidant}_demand", f"{oxidant} demand, as {formula}", needed, "mg/L", text, inputs, source),
        figure(f"{oxidant}_a_day", f"{oxidant} a day, as {formula}", _times(needed, use.daily, (1e-3, 1e-3)), "g/d",
               "demand x litres a day", (use.daily_said,), source),
    )  # fmt: skip


def chlorinator(water: Water, use: Use) -> tuple[Figure, ...]:
    """Chlorine demand with the residual, and the contact tank."""
    contact, residual = constant("contact_time"), constant("residual")
    dose = _plus(chlorine_demand(water), (residual.low, residual.high))
    return (
        figure("chlorine_dose", "chlorine, demand and residual, as Cl2", dose, "mg/L",
               "stoichiometric demand + residual; found by trial", (_constant_said(residual),), residual.source),
        figure("contact_tank", "contact tank, full mixing not counted", _times(use.peak, (contact.low, contact.high)), "L",
               "peak flow x contact time", (use.peak_said, _constant_said(contact)), contact.source),
        *bed(use, "oxidising"),
    )  # fmt: skip


def neutraliser(water: Water, use: Use) -> tuple[Figure, ...]:
    """Medium dissolved in a year, at most, and the bed."""
    _, gain = acidity.beside_calcite(water)
    source = Source(title="calcite equilibrium by the handbook constants", locator="Standard Methods 2330", checked="computed")
    year = (0.0, gain * use.daily[1] * DAYS * 1e-6)
    return (
        figure("medium_per_year", "medium dissolved a year, at most", year, "kg",
               "calcium carbonate to equilibrium x litres a day x 365",
               (use.daily_said, f"up to {gain:.3g} mg/L dissolved"), source),
        *bed(use, "neutralising"),
    )  # fmt: skip


def lamp(water: Water, use: Use) -> tuple[Figure, ...]:
    """Dose, and the flow at which it must hold."""
    dose = constant("ultraviolet_dose")
    return (
        figure("dose", "ultraviolet dose, at the end of the lamp's life", (dose.low, dose.high), "mJ/cm²", "", (), dose.source),
        figure("flow", "flow at which the dose must hold", use.peak, "L/min", "peak demand", (use.peak_said,), None),
    )


def adsorber(name: str) -> Callable[[Water, Use], tuple[Figure, ...]]:
    """Bed volume by empty-bed contact time."""

    def sized(water: Water, use: Use) -> tuple[Figure, ...]:
        contact = constant(f"{name}_contact")
        volume = _times(use.peak, (contact.low, contact.high))
        return (
            figure("bed_volume", "bed, empty-bed contact time at peak flow", volume, "L", "peak flow x contact time",
                   (use.peak_said, _constant_said(contact)), contact.source),
        )  # fmt: skip

    return sized


def membrane(water: Water, use: Use) -> tuple[Figure, ...]:
    """Water to be made a day, and what goes to the drain for it."""
    each, waste = constant("drinking_use"), constant("membrane_waste_share")
    made = _times(use.people, (each.low, each.high))
    share = (waste.low / 100.0, waste.high / 100.0)
    drained = _times(made, (share[0] / (1.0 - share[0]), share[1] / (1.0 - share[1])))
    people = _said("people", use.people, "")
    return (
        figure("production", "water to be made a day", made, "L/d", "people x litres each", (people, _constant_said(each)),
               each.source),
        figure("waste", "waste water a day", drained, "L/d", "production x share / (1 - share)",
               (_constant_said(waste),), waste.source),
    )  # fmt: skip


SIZED: Mapping[str, Callable[[Water, Use], tuple[Figure, ...]]] = {
    "softening": softener,
    "nitrate_exchange": exchanger,
    "tannin_exchange": lambda water, use: bed(use, "exchange"),
    "uranium_exchange": lambda water, use: bed(use, "exchange"),
    "oxidising_filter": oxidiser,
    "aerated_filter": lambda water, use: bed(use, "oxidising"),
    "chlorination": chlorinator,
    "neutralising_calcite": neutraliser,
    "neutralising_blend": neutraliser,
    "ultraviolet": lamp,
    "carbon": lambda water, use: (*adsorber("carbon")(water, use), *bed(use, "carbon")),
    "arsenic_adsorption": adsorber("adsorption"),
    "reverse_osmosis": membrane,
    "distillation": lambda water, use: membrane(water, use)[:1],
}
# The bed whose backwash the pump must give, by stage.
BEDS = {
    "softening": "softening",
    "nitrate_exchange": "exchange",
    "tannin_exchange": "exchange",
    "uranium_exchange": "exchange",
    "oxidising_filter": "oxidising",
    "aerated_filter": "oxidising",
    "chlorination": "oxidising",
    "neutralising_calcite": "neutralising",
    "neutralising_blend": "neutralising",
    "carbon": "carbon",
}
