"""Sizes of what is no bed of media: chemical feeds, aerators, cartridges, lamps, membranes."""

from __future__ import annotations

from math import ceil

from wellchem import chemistry
from wellchem.interpretation.treatment import acidity
from wellchem.interpretation.treatment.figures import DAYS, Use, figure, over, said, stated, times
from wellchem.interpretation.treatment.tables import constant
from wellchem.interpretation.treatment.water import UNKNOWN, Water
from wellchem.models.finding import Figure, Source


def soda_ash(water: Water, use: Use) -> tuple[Figure, ...]:
    """Sodium carbonate from the acidity to the target pH, in the water, a day and a year."""
    target = constant("soda_ash_target")
    each = chemistry.molar_mass("Na2CO3")
    least, most = acidity.soda_ash(water)
    dose = least * each, most * each
    source = Source(
        title="carbonate equilibrium by the handbook constants", locator="Standard Methods 2330", checked="computed"
    )
    return (
        figure(
            "soda_ash_dose",
            "soda ash, as Na2CO3",
            dose,
            "mg/L",
            "acidity to the target pH / (2 - charge of a mole of carbon at it) x 106 g/mol; found by trial",
            (
                said("pH", water.get("ph") or UNKNOWN, ""),
                said("alkalinity", water.get("total_alkalinity") or UNKNOWN, "mg/L as CaCO3"),
                stated(target),
            ),
            source,
        ),
        figure(
            "soda_ash_a_day",
            "soda ash a day",
            times(dose, use.daily, (1e-3, 1e-3)),
            "g/d",
            "dose x litres a day",
            (use.daily_said,),
            source,
        ),
        figure(
            "soda_ash_per_year",
            "soda ash a year",
            times(dose, use.daily, (DAYS * 1e-6,) * 2),
            "kg",
            "dose x litres a day x 365",
            (use.daily_said,),
            source,
        ),
    )


def aerator(water: Water, use: Use) -> tuple[Figure, ...]:
    """Flow through the aerator, which is the well pump's where it is said, and the air that it asks for."""
    ratio = constant("air_to_water")
    flow, told = (use.peak, use.peak_said) if use.pump is None else ((use.pump,) * 2, f"pump {use.pump:g} L/min")
    return (
        figure("flow", "service flow of the second pump", use.peak, "L/min", "peak demand", (use.peak_said,), None),
        figure(
            "air_flow",
            "air, while water flows in",
            times(flow, (ratio.low, ratio.high)),
            "L/min of air",
            "flow into the aerator x air-to-water ratio",
            (told, stated(ratio)),
            ratio.source,
        ),
    )


def passed(water: Water, use: Use) -> tuple[Figure, ...]:
    """Flow that a screen or cartridge has to pass."""
    return (figure("flow", "flow to be passed", use.peak, "L/min", "peak demand", (use.peak_said,), None),)


def cartridges(water: Water, use: Use) -> tuple[Figure, ...]:
    """Flow to be passed, and elements of ten inches side by side for it."""
    each = constant("cartridge_flow")
    fewest, most = over(use.peak, (each.low, each.high))
    return (
        *passed(water, use),
        figure(
            "elements",
            "elements of 10 in (254 mm), rounded up",
            (float(ceil(fewest)), float(ceil(most))),
            "elements",
            "peak flow / flow of one element",
            (use.peak_said, stated(each)),
            each.source,
        ),
    )


def tap_filter(water: Water, use: Use) -> tuple[Figure, ...]:
    """Days between cartridges: certified capacity against the litres drunk, at the latest six months."""
    each, capacity, latest = constant("drinking_use"), constant("tap_capacity"), constant("tap_latest")
    made = times(use.people, (each.low, each.high))
    days = over((capacity.low, capacity.high), made)
    people = said("people", use.people, "")
    return (
        figure("production", "water a day", made, "L/d", "people x litres each", (people, stated(each)), each.source),
        figure(
            "cartridge_days",
            "days between cartridges; the certificate's own capacity goes before the range",
            (min(days[0], latest.low), min(days[1], latest.high)),
            "d",
            "certified capacity / litres a day, at the latest six months",
            (stated(capacity), stated(latest)),
            capacity.source,
        ),
    )


def lamp(water: Water, use: Use) -> tuple[Figure, ...]:
    """Dose, and the flow at which it must hold."""
    dose = constant("ultraviolet_dose")
    return (
        figure(
            "dose",
            "ultraviolet dose, at the end of the lamp's life",
            (dose.low, dose.high),
            "mJ/cm²",
            "",
            (),
            dose.source,
        ),
        figure("flow", "flow at which the dose must hold", use.peak, "L/min", "peak demand", (use.peak_said,), None),
    )


def membrane(water: Water, use: Use) -> tuple[Figure, ...]:
    """Water to be made a day, and what goes to the drain for it."""
    each, waste = constant("drinking_use"), constant("membrane_waste_share")
    made = times(use.people, (each.low, each.high))
    share = (waste.low / 100.0, waste.high / 100.0)
    drained = times(made, (share[0] / (1.0 - share[0]), share[1] / (1.0 - share[1])))
    people = said("people", use.people, "")
    return (
        figure(
            "production",
            "water to be made a day",
            made,
            "L/d",
            "people x litres each",
            (people, stated(each)),
            each.source,
        ),
        figure(
            "waste",
            "waste water a day",
            drained,
            "L/d",
            "production x share / (1 - share)",
            (stated(waste),),
            waste.source,
        ),
    )
