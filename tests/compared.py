"""Results of one invented sample, and what they are against limits: helps for the tests of tests/limits."""

from datetime import date
from math import inf

from wellchem.limits import compare_sample, load
from wellchem.models.codes import Censoring
from wellchem.models.limits import Comparison
from wellchem.models.sample import Assumption, Result, Sample
from wellchem.vocabulary import bundled

TODAY = date(2026, 5, 1)
HEADER = (
    "analyte,limit_term,kind,minimum,maximum,unit,basis,fraction,combine,members,applies_when,"
    "compliance,in_force_from,in_force_to,source,locator,checked,note"
)


def amount(analyte, low=None, high=None, *, unit=None, basis=None, **about):
    """A result in canonical unit from numbers in `unit` (default canonical); `high` is `low` where it is not given."""
    known = bundled().analytes[analyte]
    factor = 1.0
    if unit:
        meaning = bundled().unit(f"{unit} as {basis}" if basis else unit, analyte)
        assert not meaning.problem, (unit, basis, analyte)
        factor = meaning.factor
    about["assumptions"] = tuple(Assumption(code=c, value=v) for c, v in about.get("assumptions", {}).items())
    return Result(
        analyte=analyte,
        low=None if low is None else low * factor,
        high=low * factor if high is None and low is not None else None if high is None else high * factor,
        unit=known.unit,
        basis=known.basis,
        **about,
    )


def below(analyte, bound, **about):
    """Not detected: less than `bound`."""
    return amount(analyte, 0.0, bound, censoring=Censoring.LEFT, **about)


def over(analyte, bound, **about):
    """Above the range: more than `bound`."""
    return amount(analyte, bound, inf, censoring=Censoring.RIGHT, **about)


def present(analyte, **about):
    return amount(analyte, censoring=Censoring.PRESENT, **about)


def absent(analyte, **about):
    return amount(analyte, censoring=Censoring.ABSENT, **about)


def sample(*results, **about):
    return Sample(**{"key": "w1", "results": results, **about})


def against(table, *results, on=TODAY, household=None, **about):
    """Comparisons of a sample with one table of limits of the test's own."""
    return compare_sample(sample(*results, **about), (), on=on, household=household, limits=table)


def against_authority(authority, *results, on=TODAY, household=None, **about) -> dict[str, Comparison]:
    """Comparisons with one authority's bundled limits, by the limit's id; of two of one id the last."""
    made = compare_sample(sample(*results, **about), (authority,), on=on, household=household)
    return {one.limit.id.removeprefix(f"{authority}/"): one for one in made}


def table(folder, *rows, authority="our-own"):
    """A table of limits from lines of CSV in the order of HEADER."""
    path = folder / f"{authority}.csv"
    path.write_text("\n".join((HEADER, *rows)) + "\n", encoding="utf-8")
    return load(path)


def limit_line(analyte, maximum="", unit="mg/L", *, minimum="", kind="health", term="limit", **cells):
    """One line of such a table."""
    row = {
        "analyte": analyte,
        "limit_term": term,
        "kind": kind,
        "minimum": minimum,
        "maximum": maximum,
        "unit": unit,
        "in_force_from": "2000-01-01",
        "source": "rules of an invented county",
        **cells,
    }
    return ",".join(str(row.get(name, "")) for name in HEADER.split(","))
