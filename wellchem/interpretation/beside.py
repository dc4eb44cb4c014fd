"""What else reports hold of the same well: other samples, duplicates of this one, and the blanks of its report."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import date
from functools import cache

from wellchem.errors import WellchemError
from wellchem.interpretation.practice import by, level
from wellchem.models.codes import Role, SamplingPoint
from wellchem.models.sample import Report, Result, Sample

_NEAR = 0.001  # degrees: some hundred metres
_TWIN = re.compile(r"[\s_/-]*(fd|dup|duplicate|d|rep|replicate)?[\s_-]*\d?", re.IGNORECASE)
_IN_A_BLANK = frozenset({"concentration", "activity", "count"})


@dataclass(frozen=True)
class Beside:
    """Other samples of the well, the nearest in time first; duplicates of this sample; blanks; and how many samples
    of the report may be of the same well, which it does not say."""

    samples: tuple[Sample, ...] = ()
    duplicates: tuple[Sample, ...] = ()
    blanks: tuple[Sample, ...] = ()
    untold: int = 0


def beside(sample: Sample, reports: Report | Iterable[Report] | None) -> Beside:
    """What the reports hold besides the sample. Raises WellchemError where something is no report."""
    given = (reports,) if isinstance(reports, Report) else tuple(reports or ())
    if any(not isinstance(one, Report) for one in given):
        raise WellchemError("reports= takes what wellchem.read gives: a Report, or several")
    own = tuple(one for one in given if sample in one.samples or (sample.source and one.source == sample.source))
    rest = {id(other): (other, one in own) for one in given for other in one.samples if not _same(sample, other)}
    told = [(other, _one_well(sample, other, together)) for other, together in rest.values()]
    near = sorted((other for other, same in told if same), key=lambda other: abs(days_between(sample, other) or 10**6))
    control = [one for report in own for one in report.quality_control]
    return Beside(
        samples=tuple(near[: int(level("other_samples_most"))]),
        duplicates=tuple(one for one in control if one.role is Role.DUPLICATE and _twin(one, sample)),
        blanks=tuple(one for one in control if one.role is Role.BLANK),
        untold=sum(same is None for _, same in told),
    )


def days_between(sample: Sample, other: Sample) -> int | None:
    """Days by which another sample was taken later; None where one has no date, but for two of one report."""
    if sample.collected is None and other.collected is None and sample.source == other.source:
        return 0
    if sample.collected is None or other.collected is None:
        return None
    first, second = (date(one.year, one.month, one.day) for one in (sample.collected, other.collected))
    return (second - first).days


def point_of(sample: Sample) -> SamplingPoint | None:
    """Where in the house a sample was taken, by its point or by a site that is the name of one."""
    return sample.point or (_point(sample.site) if sample.site else None)


def name_of(sample: Sample) -> str:
    """A sample inside a sentence: its name, day and point."""
    parts = [sample.id or sample.site or ""]
    parts += [str(sample.collected.strftime("%Y-%m-%d"))] if sample.collected else ["without a date"]
    point = point_of(sample)
    return ", ".join(part for part in (*parts, point.replace("_", " ") if point else "") if part)


@cache
def _point(text: str) -> SamplingPoint | None:
    from wellchem.vocabulary import bundled

    return bundled().point(text)


def _site(sample: Sample) -> str:
    """The site of a sample, as far as it names a place and no tap of a house."""
    text = " ".join((sample.site or "").casefold().split())
    return "" if not text or text in by("sites", "word") or _point(sample.site or "") else text


def _same(sample: Sample, other: Sample) -> bool:
    """Whether this is the sample itself, also from another file."""
    if sample is other or sample == other:
        return True
    alike = sample.id == other.id and sample.collected == other.collected
    return alike and bool(sample.results) and _numbers(sample) == _numbers(other)


def _numbered(text: str) -> tuple[str, ...]:
    """Which well a name is of, where it counts wells: `MW-2`, `Well no. 3`."""
    words = "|".join(row["word"] for row in by("sites", "tells")["number"])
    return tuple(re.findall(rf"\b(?:{words})\b\W*(?:no\b|nr\b)?\W*(\d+|[a-z]\b)", text.casefold()))


def _numbers(sample: Sample) -> list[tuple[str, str]]:
    return sorted((one.analyte, f"{one.fraction} {one.censoring} {one.low} {one.high}") for one in sample.results)


def _one_well(sample: Sample, other: Sample, together: bool) -> bool | None:
    """Whether two samples are of one well; None where nothing says so. Different points without a site are of one
    house where one report holds them `together`."""
    pairs = ((sample.latitude, other.latitude), (sample.longitude, other.longitude))
    if any(one is not None and two is not None and abs(one - two) > _NEAR for one, two in pairs):
        return False
    if _numbered(f"{sample.id} {sample.site or ''}") != _numbered(f"{other.id} {other.site or ''}"):
        return None  # two wells of one property
    sites = _site(sample), _site(other)
    if all(sites):
        return sites[0] == sites[1]
    if any(sites) or not together:
        return None
    points = point_of(sample), point_of(other)
    return True if None not in points and points[0] is not points[1] else None


def _twin(duplicate: Sample, sample: Sample) -> bool:
    """Whether a duplicate is one of this sample: by its key, by its name, or by the site and day of the sample."""
    key = sample.key
    if (key and duplicate.key.rpartition("/")[0] == key) or (sample.id and duplicate.site == sample.id):
        return True
    if sample.id and duplicate.id.startswith(sample.id):
        return _TWIN.fullmatch(duplicate.id.removeprefix(sample.id)) is not None
    return bool(_site(sample)) and _site(sample) == _site(duplicate) and days_between(sample, duplicate) == 0


def in_a_blank(result: Result, blanks: Iterable[Sample]) -> Result | None:
    """The blank's result that holds most of what a result is of; None where none holds any."""
    from wellchem.vocabulary import bundled

    if bundled().analytes[result.analyte].quantity not in _IN_A_BLANK:
        return None
    held = [one for blank in blanks for one in blank.results if one.analyte == result.analyte and found(one)]
    return max(held, key=_most, default=None)


def found(result: Result) -> bool:
    """Whether a result surely holds something of its analyte."""
    return result.detected is True and (result.low or 0.0) > 0.0 and "R" not in result.qualifiers


def _most(result: Result) -> float:
    return result.high if result.high is not None else result.low or 0.0


def blank_explains(result: Result, blank: Result) -> bool:
    """Whether a result is no more than so many times its blank, so that the blank may be all of it."""
    table = by("blanks", "analyte")
    (row,) = table.get(result.analyte) or table["*"]
    return (result.low or 0.0) <= float(row["times"]) * _most(blank)


def difference(one: Result, other: Result) -> tuple[float, float]:
    """The least relative difference of two results [%], and how many times the permitted one it is.

    Permitted are 20 %, or the reporting limit where one of the two lies below five times that.
    """
    low, high = one.low or 0.0, _most(one)
    other_low, other_high = other.low or 0.0, _most(other)
    gap = max(0.0, low - other_high, other_low - high)
    middle = (low + high + other_low + other_high) / 4.0
    relative = 100.0 * gap / middle if gap > 0.0 and middle > 0.0 else 0.0
    limit = max((given for given in (one.reporting_limit, other.reporting_limit) if given), default=0.0)
    near = limit > 0.0 and min(low, other_low) < level("duplicate_near_limit") * limit
    return relative, gap / limit if near else relative / level("duplicate_tolerance")


def pairs(sample: Sample, duplicates: Iterable[Sample]) -> Iterable[tuple[int, Result]]:
    """Results of the sample, by place, with what a duplicate says of the same analyte and fraction."""
    for duplicate in duplicates:
        for other in duplicate.results:
            for place, one in enumerate(sample.results):
                alike = (one.analyte, one.fraction, one.measured) == (other.analyte, other.fraction, other.measured)
                if alike and one.interval is not None and other.interval is not None:
                    yield place, other


def contrary(one: Result, other: Result) -> float:
    """How many times the permitted difference two results of a duplicate lie apart; organisms found in one and not in
    the other are contrary, whatever their number."""
    from wellchem.vocabulary import bundled

    if bundled().analytes[one.analyte].quantity == "count":
        return 3.0 if found(one) is not found(other) and min(_most(one), _most(other)) <= 0.0 else 0.0
    return difference(one, other)[1]


def in_doubt(sample: Sample, near: Beside) -> Collection[int]:
    """Places of results that a blank may explain, or that a duplicate contradicts."""
    doubted = set()
    for place, one in enumerate(sample.results):
        blank = in_a_blank(one, near.blanks) if found(one) else None
        if blank is not None and blank_explains(one, blank):
            doubted.add(place)
    return doubted | {
        place for place, other in pairs(sample, near.duplicates) if contrary(sample.results[place], other) > 1
    }
