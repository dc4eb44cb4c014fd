"""Invented waters of `expected_trains.toml` as samples, and what is recommended for them."""

import random
import tomllib
from functools import cache
from math import inf
from pathlib import Path

from wellchem.interpretation import practice
from wellchem.interpretation.treatment import recommend
from wellchem.limits import compare_sample
from wellchem.models.codes import Censoring, Certainty, Fraction, ProblemKind, Urgency
from wellchem.models.finding import Problem
from wellchem.models.household import Household
from wellchem.models.sample import Result, Sample
from wellchem.vocabulary import bundled

_FILE = Path(__file__).parent / "interpretation" / "treatment" / "expected_trains.toml"
EXPECTED = tomllib.loads(_FILE.read_text(encoding="utf-8"))


def result(name, value):
    """A result in canonical units: a number, a pair of bounds, or `present`."""
    fraction = None
    if name.endswith("_dissolved"):
        name, fraction = name.removesuffix("_dissolved"), Fraction.DISSOLVED
    elif bundled().analytes[name].group == "metal":
        fraction = Fraction.TOTAL
    analyte = bundled().analytes[name]
    about = {"analyte": name, "fraction": fraction, "unit": analyte.unit, "basis": analyte.basis}
    if value == "present":
        return Result(**about, censoring=Censoring.PRESENT, low=1, high=None)
    if isinstance(value, list | tuple):
        low, high = value
        kind = Censoring.LEFT if low == 0 else Censoring.INTERVAL
        return Result(
            **about, censoring=kind, low=low, high=None if high == inf else high, value=high if low == 0 else None
        )
    return Result(**about, censoring=Censoring.NONE, value=value, low=value, high=value)


def sample(results):
    return Sample(id="invented", key="invented", results=tuple(result(name, value) for name, value in results.items()))


def problem(code, kind="health", certainty=Certainty.LIKELY):
    return Problem(
        code=code,
        title=code.replace("_", " "),
        kind=ProblemKind(kind),
        certainty=certainty,
        urgency=Urgency.SOON,
        text="",
    )


def recommended(results, problems, authorities=("us-epa",), household=None):
    """Sample, comparisons and treatment of a water whose problems are given."""
    water = sample(results)
    found = [problem(code, kind) for code, kind in problems.items()]
    comparisons = compare_sample(water, authorities=tuple(authorities))
    return water, comparisons, recommend(water, found, comparisons, Household(**(household or {})))


@cache
def scenario(name):
    """Sample, comparisons and treatment of a water of the file."""
    row = EXPECTED[name]
    return recommended(row["results"], row["problems"], row.get("authorities", ("us-epa",)), row.get("household"))


AMOUNTS = {
    "ph": (5.0, 8.6),
    "total_alkalinity": (5, 400),
    "total_hardness": (5, 500),
    "sodium": (2, 300),
    "chloride": (2, 500),
    "sulfate": (1, 600),
    "nitrate": (0.05, 40),
    "iron": (0.01, 12),
    "manganese": (0.005, 1.5),
    "arsenic": (0.0005, 0.1),
    "lead": (0.0005, 0.1),
    "copper": (0.01, 4),
    "uranium": (0.001, 0.1),
    "fluoride": (0.1, 6),
    "sulfide": (0.01, 3),
    "tannin": (0.05, 3),
    "turbidity": (0.1, 8),
    "radon_222": (1, 900),
    "benzene": (0.0001, 0.05),
    "total_dissolved_solids": (50, 2500),
}
RAISED = {
    "nitrate": ("nitrate", 10),
    "iron": ("iron", 0.3),
    "manganese_staining": ("manganese", 0.05),
    "manganese_health": ("manganese", 0.3),
    "arsenic": ("arsenic", 0.01),
    "lead": ("lead", 0.015),
    "copper": ("copper", 1.3),
    "uranium": ("uranium", 0.03),
    "fluoride": ("fluoride", 4),
    "hydrogen_sulfide": ("sulfide", 0.05),
    "tannin": ("tannin", 0.5),
    "turbidity": ("turbidity", 4),
    "radon": ("radon_222", 148),
    "volatile_organics": ("benzene", 0.005),
    "hardness": ("total_hardness", 120),
    "chloride": ("chloride", 250),
    "dissolved_solids": ("total_dissolved_solids", 1000),
}
KINDS = {row.code: row.kind for row in practice.problems()}


def random_water(number):
    """Results of a random water, the problems that its amounts raise, and a household; a third is not measured."""
    dice = random.Random(number)
    results = {name: float(f"{low * (high / low) ** dice.random():.4g}") for name, (low, high) in AMOUNTS.items()}
    results = {name: value for name, value in results.items() if dice.random() < 0.67}
    bacteria = dice.choice([None, 0, 0, 3, 250, "present"])
    problems = {code: KINDS[code] for code, (name, level) in RAISED.items() if results.get(name, 0) > level}
    if results.get("ph", 7) < 6.5:
        problems["low_ph"] = "equipment"
    if bacteria is not None:
        results |= {"total_coliform": bacteria, "e_coli": bacteria}
        if bacteria:
            problems |= {"fecal_bacteria": "health", "coliform_bacteria": "health"}
    household = {"people": dice.choice([None, 2, 5]), "infants": dice.choice([None, True, False])}
    return results, problems, household


@cache
def drawn(number):
    """Sample, comparisons and treatment of a random water."""
    results, problems, household = random_water(number)
    return recommended(results, problems, household=household)
