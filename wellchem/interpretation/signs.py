"""Signs in the numbers: that the sample is not raw well water, and where the water's salts and nitrogen may come from.

Each sign is possible or likely, with its question to the household; none renames the sample.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

import numpy as np

from wellchem import chemistry
from wellchem.interpretation.practice import by, level
from wellchem.interpretation.table import Bools, Column, Floats
from wellchem.interpretation.waters import Waters, once
from wellchem.interpretation.working import worked_out
from wellchem.models.codes import Fraction, SamplingPoint

_BY_PRODUCTS = ("total_trihalomethanes", "chloroform", "bromodichloromethane", "haloacetic_acids_5")


def _hardness_below(waters: Waters, value: float) -> Bools:
    return waters.worked("hardness").high < value


@once
def softened(waters: Waters) -> Bools:
    """Hardness near nil, and sodium in its place; not where the water holds next to nothing at all."""
    return _hardness_below(waters, level("softened_hardness_below")) & waters.above(
        "sodium", level("softened_sodium_above")
    )


@once
def chlorinated(waters: Waters) -> Bools:
    """Chlorine, or what it forms."""
    found = waters.chlorinated
    for name in _BY_PRODUCTS:
        found = found | waters.above(name, 0.0)
    return found


@once
def after_membrane(waters: Waters) -> Bools:
    """Next to nothing dissolved."""
    return waters.below("specific_conductance", level("membrane_conductance_below")) | waters.below(
        "total_dissolved_solids", level("membrane_solids_below")
    )


@once
def _ratios(waters: Waters) -> tuple[Floats, Floats, Floats, Floats]:
    """Bounds of chloride over bromide by mass, and of sodium over chloride in equivalents."""
    chloride, bromide = waters.table.standing("chloride"), waters.table.standing("bromide")
    sodium = waters.table.standing("sodium")
    salt = {"chloride": (chloride.low, chloride.high)}
    halides = worked_out(
        chemistry.chloride_bromide_ratio, salt | {"bromide": (bromide.low, bromide.high)}, ("chloride", "bromide")
    )
    soda = worked_out(
        chemistry.sodium_chloride_ratio, salt | {"sodium": (sodium.low, sodium.high)}, ("sodium", "chloride")
    )
    return halides.low, halides.high, soda.low, soda.high


def _between(low: Floats, high: Floats, name: str) -> Bools:
    """Where an interval lies inside a range of the levels."""
    return (low >= level(f"{name}_low")) & (high <= level(f"{name}_high"))


def _fits(low: Floats, high: Floats, name: str) -> Bools:
    """Where an interval lies inside a range of the levels, or nothing is known."""
    return np.isnan(low) | _between(low, high, name)


@once
def road_salt(waters: Waters) -> Bools:
    """Much chloride, sodium with it, and a chloride to bromide ratio of halite (or a salted road and no bromide)."""
    halide_low, _, soda_low, soda_high = _ratios(waters)
    salty = waters.above("chloride", level("salt_chloride_above")) & _fits(soda_low, soda_high, "salt_sodium_ratio")
    told = np.isnan(halide_low) & waters.near("road_salt")
    # A bromide below detection leaves the ratio open upwards.
    return salty & ((halide_low >= level("salt_bromide_ratio_low")) | told)


@once
def sea_water(waters: Waters) -> Bools:
    """Much chloride and the sea's proportions (or the sea near and no bromide)."""
    halide_low, halide_high, soda_low, soda_high = _ratios(waters)
    salty = waters.above("chloride", level("salt_chloride_above")) & _fits(soda_low, soda_high, "sea_sodium_ratio")
    told = np.isnan(halide_low) & waters.near("sea")
    return salty & (_between(halide_low, halide_high, "sea_bromide_ratio") | told)


@once
def deep_brine(waters: Waters) -> Bools:
    """Much chloride, and more bromide against it than in the sea."""
    _, halide_high, _, _ = _ratios(waters)
    return waters.above("chloride", level("salt_chloride_above")) & (halide_high < level("brine_bromide_ratio_below"))


@once
def _waste_marks(waters: Waters) -> np.ndarray[tuple[int, ...], np.dtype[np.int64]]:
    """How many marks of household waste water there are."""
    halide_low, halide_high, _, _ = _ratios(waters)
    chloride = waters.above("chloride", level("sewage_chloride_above"))
    marks = [
        waters.above("nitrate", level("nitrate_background")),
        waters.above("ammonia", level("sewage_ammonia_above")),
        waters.above("boron", level("sewage_boron_above")) & chloride,
        waters.above("anionic_surfactants", level("sewage_surfactants_above")),
        waters.above("total_coliform", 0.0) | waters.above("e_coli", 0.0),
        chloride & (_between(halide_low, halide_high, "sewage_bromide_ratio") | waters.near("septic")),
    ]
    return np.asarray(np.sum(marks, axis=0), dtype=np.int64)


@once
def septic_effluent(waters: Waters) -> Bools:
    """Three marks of household waste water together, or two with a septic system near."""
    return _waste_marks(waters) >= (2 if waters.near("septic") else 3)


def farming(waters: Waters) -> Bools:
    """Nitrate beyond background without the marks of waste water."""
    return waters.above("nitrate", level("nitrate_background")) & ~septic_effluent(waters)


@once
def _reduced(waters: Waters) -> tuple[Bools, Bools, Bools]:
    """Dissolved iron or manganese; nitrate or oxygen used up; ammonia, methane or sulfide."""
    table = waters.table
    metal = np.zeros(waters.size, dtype=bool)
    for name in ("iron", "manganese"):
        dissolved, total = table.standing(name, Fraction.DISSOLVED), table.standing(name)
        low = np.where(dissolved.measured, dissolved.low, total.low)
        metal |= low > level(f"reducing_{name}_above")
    used_up = waters.below("nitrate", level("reducing_nitrate_below"))
    used_up |= waters.below("dissolved_oxygen", level("reducing_oxygen_below"))
    gases = np.zeros(waters.size, dtype=bool)
    for name in ("ammonia", "methane", "sulfide"):
        gases |= waters.above(name, level(f"reducing_{name}_above"))
    gases |= waters.above("hydrogen_sulfide", level("reducing_sulfide_above"))
    return metal, used_up, gases


def reducing_water(waters: Waters) -> Bools:
    """Two of: dissolved iron or manganese; nitrate or oxygen used up; ammonia, sulfide or methane."""
    metal, used_up, gases = _reduced(waters)
    return (metal & (used_up | gases)) | (used_up & gases)


def galvanic_lead(waters: Waters) -> Bools:
    """Lead found in water with much chloride against sulfate."""
    chloride, sulfate = waters.table.standing("chloride"), waters.table.standing("sulfate")
    ratio = worked_out(
        chemistry.chloride_sulfate_mass_ratio,
        {"chloride": (chloride.low, chloride.high), "sulfate": (sulfate.low, sulfate.high)},
        ("chloride", "sulfate"),
    )
    return waters.above("lead", 0.0) & (ratio.low > level("galvanic_ratio_above"))


def _drawn(waters: Waters) -> Iterable[tuple[Column, Column, float]]:
    """Lead and copper, first drawn and flushed, where their printed names tell the two apart, and how many times the
    other one is much more."""
    first, flushed = SamplingPoint.TAP_FIRST_DRAW, SamplingPoint.TAP_FLUSHED
    for name in ("lead", "copper"):
        (row,) = by("traces", "problem")[name]
        if waters.table.holds(name):
            yield waters.table.taken(name, first), waters.table.taken(name, flushed), float(row["times"])


def metal_of_the_plumbing(waters: Waters) -> Bools:
    """Lead or copper that falls as the tap runs."""
    falls = np.zeros(waters.size, dtype=bool)
    for first, flushed, times in _drawn(waters):
        falls |= first.low > times * flushed.high
    return falls


def metal_of_the_well(waters: Waters) -> Bools:
    """Lead or copper that stays as the tap runs."""
    stays = np.zeros(waters.size, dtype=bool)
    for first, flushed, times in _drawn(waters):
        stays |= first.high < times * flushed.low
    return stays


SIGNS: Mapping[str, Callable[[Waters], Bools]] = {
    "softened": softened,
    "chlorinated": chlorinated,
    "after_membrane": after_membrane,
    "road_salt": road_salt,
    "sea_water": sea_water,
    "deep_brine": deep_brine,
    "septic_effluent": septic_effluent,
    "farming": farming,
    "reducing_water": reducing_water,
    "galvanic_lead": galvanic_lead,
    "metal_of_the_plumbing": metal_of_the_plumbing,
    "metal_of_the_well": metal_of_the_well,
}


def _halite(waters: Waters) -> Bools:
    low, high, _, _ = _ratios(waters)
    return road_salt(waters) & _between(low, high, "salt_bromide_ratio")


def _sea(waters: Waters) -> Bools:
    low, high, _, _ = _ratios(waters)
    return sea_water(waters) & _between(low, high, "sea_bromide_ratio")


# Signs of origin that several lines of evidence make likely; the others stay possible.
LIKELY: Mapping[str, Callable[[Waters], Bools]] = {
    "road_salt": _halite,
    "sea_water": _sea,
    "septic_effluent": lambda waters: _waste_marks(waters) >= 4,
    "reducing_water": lambda waters: np.all(_reduced(waters), axis=0),
}

INPUTS: Mapping[str, tuple[str, ...]] = {
    "softened": ("total_hardness", "calcium", "magnesium", "sodium"),
    "chlorinated": ("free_chlorine", "total_chlorine", "chloramine", *_BY_PRODUCTS),
    "after_membrane": ("specific_conductance", "total_dissolved_solids"),
    "road_salt": ("chloride", "sodium", "bromide"),
    "sea_water": ("chloride", "sodium", "bromide"),
    "deep_brine": ("chloride", "bromide"),
    "septic_effluent": (
        "nitrate",
        "ammonia",
        "boron",
        "anionic_surfactants",
        "total_coliform",
        "e_coli",
        "chloride",
        "bromide",
    ),
    "farming": ("nitrate",),
    "reducing_water": ("iron", "manganese", "nitrate", "dissolved_oxygen", "ammonia", "methane", "sulfide"),
    "galvanic_lead": ("lead", "chloride", "sulfate"),
    "metal_of_the_plumbing": ("lead", "copper"),
    "metal_of_the_well": ("lead", "copper"),
}
