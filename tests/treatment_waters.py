"""Invented waters of `expected_trains.toml` as samples, and what is recommended for them."""

import tomllib
from functools import cache
from math import inf
from pathlib import Path

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
