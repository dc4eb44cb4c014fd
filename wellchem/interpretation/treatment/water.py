"""The water at one point of a train: bounds of every amount, and what happened to it on the way."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from enum import IntEnum
from functools import cache
from math import inf

from wellchem import chemistry
from wellchem.interpretation import practice
from wellchem.interpretation.practice import level
from wellchem.interpretation.table import IN_THE_FIELD
from wellchem.interpretation.treatment.tables import Ends
from wellchem.models.codes import Censoring, Fraction, Measured
from wellchem.models.sample import Result, Sample

UNKNOWN: Ends = (0.0, inf)
_DAY = timedelta(days=1)
_TOP_PH = 14.0
_DOUBTFUL = frozenset({"H", "CG"})  # holding time passed, plate overgrown: none found tells nothing
# Organisms that tell of others which cause disease; their finding keeps the water from membranes, carbon and resins.
INDICATORS = ("e_coli", "fecal_coliform", "total_coliform", "enterococci")
# What the species of arsenic is told by.
SPECIES = frozenset({"arsenic", "arsenic_iii", "arsenic_v", "dissolved_oxygen", "nitrate", "iron"})
_RANK = {Fraction.TOTAL: 0, Fraction.TOTAL_RECOVERABLE: 1, None: 2, Fraction.DISSOLVED: 3, Fraction.FREE: 4}


class Organisms(IntEnum):
    """What is known of organisms at a point of the train."""

    NONE_FOUND = 0
    DISINFECTED = 1
    UNTOLD = 2
    FOUND = 3


@dataclass(frozen=True)
class Water:
    """Amounts by analyte in canonical units; `dissolved` is the share of iron and manganese that is dissolved,
    `oxidised` whether arsenic III was turned into arsenic V on the way, `passed` the stages ahead of this point,
    `grit` whether sand or sediment is seen.
    """

    amounts: Mapping[str, Ends]
    organisms: Organisms
    dissolved: Mapping[str, Ends]
    oxidised: bool
    passed: tuple[str, ...] = ()
    grit: bool | None = None

    def get(self, analyte: str) -> Ends | None:
        """Bounds of an amount, or None where nothing is known of it."""
        return self.amounts.get(analyte)

    def of(self, analytes: frozenset[str]) -> Water:
        """The same water, narrowed to some amounts."""
        return replace(self, amounts={name: ends for name, ends in self.amounts.items() if name in analytes})


@cache
def organism(analyte: str) -> bool:
    """Whether an analyte is a count of organisms."""
    return practice.groups().get(analyte) == "microbiology"


def usable(result: Result) -> bool:
    """Whether a result says how much of an analyte the whole water holds."""
    unusable = result.censoring is Censoring.NOT_REPORTED or result.fraction is Fraction.SUSPENDED
    return not unusable and "R" not in result.qualifiers


def bounds_of(result: Result) -> Ends:
    """Bounds of a result; an unknown high end is open."""
    least = 1.0 if result.censoring is Censoring.PRESENT else 0.0
    doubtful = organism(result.analyte) and not _DOUBTFUL.isdisjoint(result.qualifiers)
    if result.censoring is Censoring.ABSENT:
        return 0.0, inf if doubtful else 0.0
    low = least if result.low is None else max(result.low, least if least else result.low)
    high = inf if result.high is None or doubtful else result.high
    return low, max(low, high)


def standing(sample: Sample) -> dict[str, tuple[Result, ...]]:
    """The results that stand for each analyte: the whole water before a part of it, the laboratory's but for what is
    measured in the field."""
    found: dict[str, list[Result]] = {}
    for result in sample.results:
        if usable(result):
            found.setdefault(result.analyte, []).append(result)

    def rank(result: Result) -> tuple[int, bool]:
        in_the_field = result.measured is Measured.FIELD
        return _RANK.get(result.fraction, 9), in_the_field != (result.analyte in IN_THE_FIELD)

    chosen = {}
    for analyte, results in found.items():
        if len(results) > 1:
            best = min(map(rank, results))
            results = [result for result in results if rank(result) == best]
        chosen[analyte] = tuple(results)
    return chosen


def hull(results: tuple[Result, ...]) -> Ends:
    """Bounds that hold all of several results."""
    if len(results) == 1:
        return bounds_of(results[0])
    ends = [bounds_of(result) for result in results]
    return min(low for low, _ in ends), max(high for _, high in ends)


def raw_water(
    sample: Sample,
    *,
    found: bool = False,
    suspect: bool = False,
    grit: bool | None = None,
    chlorinated: bool | None = None,
) -> Water:
    """The water of a sample, with what is known of it besides its results: organisms `found` in it or `suspect`, sand
    or sediment seen, chlorine in it."""
    chosen = standing(sample)
    amounts = {analyte: hull(results) for analyte, results in chosen.items()}
    amounts.update(_worked_out(amounts))
    if chlorinated:
        amounts.setdefault("free_chlorine", UNKNOWN)
    if "ph" in amounts:
        low, high = amounts["ph"]
        amounts["ph"] = (min(low, _TOP_PH), min(high, _TOP_PH))
    organisms = Organisms.FOUND if found else _organisms(amounts, suspect or _late(sample))
    return Water(amounts, organisms, _dissolved(sample, amounts), False, grit=grit)


def _late(sample: Sample) -> bool:
    """Whether coliforms were analysed past their holding time, so that finding none tells nothing."""
    end = sample.analysed or sample.received
    if sample.collected is None or end is None:
        return False
    latest = sample.collected if isinstance(sample.collected, datetime) else _midnight(sample.collected) + _DAY
    earliest = end if isinstance(end, datetime) else _midnight(end)
    (row,) = practice.by("holding_times", "analyte")["total_coliform"]
    return earliest.replace(tzinfo=None) - latest.replace(tzinfo=None) > timedelta(hours=float(row["hours"]))


def _midnight(day: date) -> datetime:
    return datetime(day.year, day.month, day.day)


def _worked_out(amounts: Mapping[str, Ends]) -> dict[str, Ends]:
    """What follows from other results where it was not printed."""
    found: dict[str, Ends] = {}

    def total(parts: Mapping[str, float]) -> Ends:
        ends = [(amounts[name], factor) for name, factor in parts.items() if name in amounts]
        return sum(low * factor for (low, _), factor in ends), sum(high * factor for (_, high), factor in ends)

    if "total_hardness" not in amounts and {"calcium", "magnesium"} <= amounts.keys():
        found["total_hardness"] = total(hardness_factors())
    if "total_alkalinity" not in amounts and "bicarbonate" in amounts:
        found["total_alkalinity"] = total(
            {
                "bicarbonate": chemistry.basis_factor("HCO3", "CaCO3"),
                "carbonate": chemistry.basis_factor("CO3", "CaCO3"),
            }
        )
    if "uv_transmittance" not in amounts and "uv_absorbance_254" in amounts:
        low, high = amounts["uv_absorbance_254"]
        found["uv_transmittance"] = (100.0 * 10.0**-high, 100.0 * 10.0**-low)
    if "sulfide" not in amounts and "hydrogen_sulfide" in amounts:
        found["sulfide"] = total({"hydrogen_sulfide": chemistry.basis_factor("H2S", "S")})
    return found


@cache
def hardness_factors() -> Mapping[str, float]:
    """Hardness as CaCO3 in each mg of calcium and magnesium."""
    return {"calcium": chemistry.basis_factor("Ca", "CaCO3"), "magnesium": chemistry.basis_factor("Mg", "CaCO3")}


def _organisms(amounts: Mapping[str, Ends], suspect: bool) -> Organisms:
    counts = [amounts[name] for name in INDICATORS if name in amounts]
    if any(low > 0.0 for low, _ in counts):
        return Organisms.FOUND
    decisive = amounts.get("total_coliform")
    if suspect or decisive is None or any(high > 0.0 for _, high in counts):
        return Organisms.UNTOLD
    return Organisms.NONE_FOUND


def _dissolved(sample: Sample, amounts: Mapping[str, Ends]) -> dict[str, Ends]:
    """Share of iron and manganese that is dissolved: known only where dissolved metal was measured."""
    shares = {}
    for metal in ("iron", "manganese"):
        parts = tuple(one for one in sample.all(metal, fraction=Fraction.DISSOLVED) if usable(one))
        if parts and amounts[metal][1] < inf:
            (low, high), (least, most) = hull(parts), amounts[metal]
            shares[metal] = (min(low / most, 1.0) if most else 1.0, min(high / least, 1.0) if least else 1.0)
        else:
            shares[metal] = (0.0, 1.0)
    return shares


def with_oxygen(water: Water) -> bool:
    """Whether the water holds oxygen, so that its arsenic is arsenic V: oxygen or nitrate measured, and little iron."""
    oxygen, nitrate, iron = (water.get(name) for name in ("dissolved_oxygen", "nitrate", "iron"))
    oxygenated = oxygen is not None and oxygen[0] > level("reducing_oxygen_below")
    nitrified = nitrate is not None and nitrate[0] > level("reducing_nitrate_below")
    return (oxygenated or nitrified) and iron is not None and iron[1] <= level("reducing_iron_above")


def arsenic_is_oxidised(water: Water) -> bool:
    """Whether what arsenic there is can be taken for arsenic V."""
    total, oxidised, reduced = (water.get(name) for name in ("arsenic", "arsenic_v", "arsenic_iii"))
    by_species = reduced is not None and total is not None and total[0] > 0.0 and reduced[1] <= 0.1 * total[0]
    by_rest = oxidised is not None and total is not None and total[1] > 0.0 and oxidised[0] >= 0.9 * total[1]
    return water.oxidised or by_species or by_rest or with_oxygen(water)
