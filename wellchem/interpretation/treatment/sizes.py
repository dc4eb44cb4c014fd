"""How big: the sizes of each class of treatment. What is not known makes a range."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from wellchem import chemistry
from wellchem.interpretation.treatment import acidity
from wellchem.interpretation.treatment.devices import (
    aerator,
    cartridges,
    lamp,
    membrane,
    passed,
    soda_ash,
    tap_filter,
)
from wellchem.interpretation.treatment.figures import (
    CUBIC_FOOT,
    DAYS,
    GALLON,
    KILO,
    POUND,
    Use,
    bed,
    figure,
    over,
    plus,
    said,
    span,
    stated,
    times,
)
from wellchem.interpretation.treatment.prediction import DEMANDS, chlorine_demand, weights
from wellchem.interpretation.treatment.tables import Ends, constant
from wellchem.interpretation.treatment.water import UNKNOWN, Water
from wellchem.models.finding import Figure, Source


def hardness_for_sizing(water: Water) -> Ends:
    """Hardness with an allowance for iron and manganese, as the trade sizes by; it is not in the sodium balance."""
    grain = chemistry.hardness_factor("gpg")
    parts = [water.get("total_hardness") or UNKNOWN]
    for metal in ("iron", "manganese"):
        amount = water.get(metal) or (0.0, 0.0)
        parts.append(times(amount, span(f"{metal}_allowance"), (grain, grain)))
    return plus(*parts)


def softener(water: Water, use: Use) -> tuple[Figure, ...]:
    """Load, capacity, days between regenerations, salt and water."""
    allowance, capacity, salt = constant("iron_allowance"), constant("resin_capacity"), constant("resin_salt")
    days, waste = constant("days_between"), constant("softening_waste")
    hardness = hardness_for_sizing(water)
    load = tuple(chemistry.hardness_load(total_hardness=hardness[end], volume=use.daily[end]) for end in (0, 1))
    needed = times((load[0], load[1]), (days.low, days.high))
    year = (load[0] * DAYS / KILO, load[1] * DAYS / KILO)
    own = (
        said("hardness", water.get("total_hardness") or UNKNOWN, "mg/L as CaCO3"),
        said("iron", water.get("iron") or UNKNOWN, "mg/L"),
        stated(allowance),
    )
    daily = (use.daily_said, said("hardness for sizing", hardness, "mg/L as CaCO3"))
    return (
        figure(
            "compensated_hardness",
            "hardness for sizing, with iron and manganese",
            hardness,
            "mg/L as CaCO3",
            "hardness + allowance x iron + allowance x manganese (sizing only, not chemistry)",
            own,
            allowance.source,
        ),
        figure(
            "daily_load", "hardness load a day", (load[0], load[1]), "grain/d", "hardness x litres a day", daily, None
        ),
        figure(
            "resin_volume",
            "resin, for three to seven days between regenerations",
            times(needed, (CUBIC_FOOT / capacity.low,) * 2),
            "L",
            "load x days / capacity",
            (stated(capacity), stated(days)),
            capacity.source,
        ),
        figure(
            "regeneration_days",
            "days between regenerations of one cubic foot (28 L) of resin",
            over((capacity.low, capacity.high), (load[0], load[1])),
            "d",
            "capacity / load",
            (stated(capacity),),
            capacity.source,
        ),
        figure(
            "salt_per_year",
            "salt a year",
            times(year, (salt.low * POUND, salt.high * POUND)),
            "kg",
            "load x 365 x salt dose",
            (stated(salt),),
            salt.source,
        ),
        figure(
            "regeneration_water",
            "regeneration water a year",
            times(year, (waste.low * GALLON, waste.high * GALLON)),
            "L",
            "load x 365 x water for each 1,000 grains",
            (stated(waste),),
            waste.source,
        ),
        *bed(use, "softening"),
    )


def exchanger(water: Water, use: Use) -> tuple[Figure, ...]:
    """Anions that the resin takes, its volume for days between regenerations, and salt; sulfate is taken first."""
    capacity, salt, days = constant("exchange_capacity"), constant("exchange_salt"), constant("days_between")
    parts = [water.get(name) or ((0.0, 0.0) if name == "nitrate" else UNKNOWN) for name in ("nitrate", "sulfate")]
    taken = plus(
        *(
            times(amount, (weights()["total_hardness"] / weights()[name],) * 2)
            for name, amount in zip(("nitrate", "sulfate"), parts, strict=True)
        )
    )
    load = tuple(chemistry.hardness_load(total_hardness=taken[end], volume=use.daily[end]) for end in (0, 1))
    resin = times((load[0], load[1]), (days.low, days.high), (CUBIC_FOOT / capacity.low,) * 2)
    each = salt.low * POUND / capacity.low
    return (
        figure(
            "daily_load",
            "nitrate and sulfate load a day, as CaCO3",
            (load[0], load[1]),
            "grain/d",
            "(nitrate + sulfate in equivalents) x litres a day",
            (use.daily_said, said("nitrate as N", parts[0], "mg/L"), said("sulfate", parts[1], "mg/L")),
            None,
        ),
        figure(
            "resin_volume",
            "resin, for three to seven days between regenerations",
            resin,
            "L",
            "load x days / capacity",
            (stated(capacity), stated(days)),
            capacity.source,
        ),
        figure(
            "salt_per_year",
            "salt a year",
            (load[0] * DAYS * each, load[1] * DAYS * each),
            "kg",
            "load x 365 x salt dose",
            (stated(salt),),
            salt.source,
        ),
        *bed(use, "exchange"),
    )


def oxidiser(water: Water, use: Use) -> tuple[Figure, ...]:
    """Oxidant demand as chlorine and as permanganate, and the bed."""
    return (*demand(water, use, "permanganate"), *demand(water, use, "chlorine"), *bed(use, "oxidising"))


def demand(water: Water, use: Use, oxidant: str) -> tuple[Figure, ...]:
    """Oxidant that the analysed substances take, in the water and a day."""
    needed = chlorine_demand(water, oxidant)
    formula = {"chlorine": "Cl2", "permanganate": "KMnO4"}[oxidant]
    inputs = tuple(said(name, water.amounts[name], "mg/L") for name in DEMANDS if name in water.amounts)
    source = Source(title="balanced equations, IUPAC atomic weights", locator="oxidations.csv", checked="computed")
    text = "iron, manganese, sulfide, nitrite, arsenic, ammonia by stoichiometry; organic matter comes on top"
    return (
        figure(f"{oxidant}_demand", f"{oxidant} demand, as {formula}", needed, "mg/L", text, inputs, source),
        figure(
            f"{oxidant}_a_day",
            f"{oxidant} a day, as {formula}",
            times(needed, use.daily, (1e-3, 1e-3)),
            "g/d",
            "demand x litres a day",
            (use.daily_said,),
            source,
        ),
    )


def chlorinator(water: Water, use: Use) -> tuple[Figure, ...]:
    """Chlorine demand with the residual, and the contact tank."""
    contact, residual, virus = constant("contact_time"), constant("residual"), constant("virus_contact")
    dose = plus(chlorine_demand(water), (residual.low, residual.high))
    return (
        figure(
            "chlorine_dose",
            "chlorine, demand and residual, as Cl2",
            dose,
            "mg/L",
            "stoichiometric demand + residual; found by trial",
            (stated(residual),),
            residual.source,
        ),
        figure(
            "chlorine_a_day",
            "chlorine a day, as Cl2",
            times(dose, use.daily, (1e-3, 1e-3)),
            "g/d",
            "dose x litres a day",
            (use.daily_said,),
            residual.source,
        ),
        figure(
            "contact",
            "residual x contact time",
            times((residual.low, residual.high), (contact.low, contact.high)),
            "mg·min/L",
            "residual x contact time, full mixing not counted",
            (stated(residual), stated(contact), stated(virus)),
            virus.source,
        ),
        figure(
            "contact_tank",
            "contact tank, full mixing not counted",
            times(use.peak, (contact.low, contact.high)),
            "L",
            "peak flow x contact time",
            (use.peak_said, stated(contact)),
            contact.source,
        ),
        *bed(use, "oxidising"),
    )


def neutraliser(water: Water, use: Use) -> tuple[Figure, ...]:
    """Medium dissolved in a year, at most, and the bed."""
    _, gain = acidity.beside_calcite(water)
    source = Source(
        title="calcite equilibrium by the handbook constants", locator="Standard Methods 2330", checked="computed"
    )
    year = (0.0, gain * use.daily[1] * DAYS * 1e-6)
    return (
        figure(
            "medium_per_year",
            "medium dissolved a year, at most",
            year,
            "kg",
            "calcium carbonate to equilibrium x litres a day x 365",
            (use.daily_said, f"up to {gain:.3g} mg/L dissolved"),
            source,
        ),
        *bed(use, "neutralising"),
    )


def adsorber(name: str) -> Callable[[Water, Use], tuple[Figure, ...]]:
    """Bed volume by empty-bed contact time."""

    def sized(water: Water, use: Use) -> tuple[Figure, ...]:
        contact = constant(f"{name}_contact")
        volume = times(use.peak, (contact.low, contact.high))
        return (
            figure(
                "bed_volume",
                "bed, empty-bed contact time at peak flow",
                volume,
                "L",
                "peak flow x contact time",
                (use.peak_said, stated(contact)),
                contact.source,
            ),
        )

    return sized


SIZED: Mapping[str, Callable[[Water, Use], tuple[Figure, ...]]] = {
    "coarse_screen": passed,
    "sediment_filter": cartridges,
    "fine_filter": cartridges,
    "cyst_filter": cartridges,
    "sediment_backwash": lambda water, use: bed(use, "sediment"),
    "aeration": aerator,
    "soda_ash_feed": soda_ash,
    "certified_filter": tap_filter,
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
