"""Numbers, intervals, results and codes as a reader meets them."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable
from datetime import date, datetime

from wellchem.models.base import Interval
from wellchem.models.codes import Censoring, LimitKind, Verdict
from wellchem.models.finding import Caution, Computed, Figure, Interpretation, MissingTest, Problem
from wellchem.models.limits import Comparison, Limit
from wellchem.models.sample import Origin, Result, Sample

SYMBOLS = {
    "e_coli": "E. coli",
    "ph": "pH",
    "pfas_sum": "PFAS sum",
    "chromium_vi": "hexavalent chromium",
    "nitrate_nitrite_ratio_sum": "sum of the ratios of nitrate and nitrite",
    **{name: name.upper() for name in ("pfoa", "pfos", "pfna", "pfbs", "pfba", "pfas")},
    "pfhxs": "PFHxS",
}

NOTICE = (
    "This is information, not a certificate. The health authority, a certified laboratory, local code and licensed "
    "professionals decide. Limits of public systems are used as a measure; state, provincial and local limits were "
    "not checked and may be stricter."
)


def unit(text: str | None) -> str:
    """A unit behind a number: nothing for a pure number, `per 100 mL` for a count."""
    if text in (None, "", "1"):
        return ""
    return f" per {text[2:].strip('()')}" if text.startswith("1/") else f" {text}"


def label(key: str) -> str:
    """An analyte's or a code's key as words."""
    return SYMBOLS.get(key, key.replace("_", " "))


def title(key: str) -> str:
    """A key as the words at the start of a line."""
    text = label(key)
    return text if key == "ph" else text[:1].upper() + text[1:]


_ACRONYMS = frozenset({"us", "epa", "who", "eu"})
_NAMED = {"england-private": "England, private supplies"}


def authority(code: str) -> str:
    """An authority's key as its name."""
    return _NAMED.get(code) or " ".join(part.upper() if part in _ACRONYMS else part.title() for part in code.split("-"))


def reason(code: str) -> str:
    """Why a comparison is undecided, or what it rests on, as words."""
    kind, _, names = code.partition("=")
    return label(kind) + (f": {', '.join(map(label, names.split(',')))}" if names else "")


def number(value: float | None, digits: int = 3) -> str:
    """A number with `digits` significant digits, without an exponent where one is not needed."""
    if value is None or math.isnan(value):
        return "unknown"
    if math.isinf(value):
        return "no upper bound" if value > 0 else "no lower bound"
    if value == 0:
        return "0"
    if not 1e-9 <= abs(value) < 1e7:
        return f"{value:.{digits - 1}e}"
    decimals = max(0, digits - 1 - math.floor(math.log10(abs(value))))
    rounded = round(value, digits - 1 - math.floor(math.log10(abs(value))))
    text = f"{rounded:.{decimals}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def interval(low: float | None, high: float | None, of: str = "") -> str:
    """Two bounds as a reader writes them: `0.3`, `below 0.05`, `at least 2420`, `0.3 to 1`; `of` is their unit."""
    tail = unit(of)
    low_open = low is None or math.isnan(low) or math.isinf(low)
    high_open = high is None or math.isnan(high) or math.isinf(high)
    if low_open and high_open:
        return "unknown"
    if high_open:
        return f"at least {number(low)}{tail}"
    if low_open:
        return f"at most {number(high)}{tail}"
    if low == high or number(low) == number(high):
        return f"{number(low)}{tail}"
    return f"{number(low)} to {number(high)}{tail}"


def computed(item: Computed | Figure) -> str:
    """A computed value with its unit."""
    text = getattr(item, "text", "")
    return text or interval(item.low, item.high, item.unit)


def in_us_units(item: Figure) -> str:
    """A size in US units, or nothing where they are the same."""
    return interval(item.low_us, item.high_us, item.unit_us) if item.unit_us and item.unit_us != item.unit else ""


def printed(result: Result) -> str:
    """What the laboratory printed, name, value and unit."""
    value, unit = result.printed.value, result.printed.unit
    parts = (result.printed.name or label(result.analyte), value, "" if value.endswith(unit) else unit)
    return " ".join(part for part in parts if part)


def amount(result: Result) -> str:
    """A result in canonical unit, with its bounds."""
    if result.censoring is Censoring.NOT_REPORTED:
        return "not reported"
    if result.censoring in (Censoring.PRESENT, Censoring.ABSENT):
        return result.censoring.value
    tail = unit(result.unit) + (f" as {result.basis}" if result.basis else "")
    if result.censoring is Censoring.LEFT and result.value is not None:
        return f"<{number(result.value)}{tail}"
    if result.censoring is Censoring.RIGHT and result.value is not None:
        return f">{number(result.value)}{tail}"
    return f"{interval(result.low, result.high)}{tail}"


def bound(limit: Limit) -> str:
    """A limit's own number as its document prints it."""
    tail = unit(limit.unit) + (f" as {limit.basis}" if limit.basis and limit.basis not in limit.unit else "")
    if limit.minimum is not None and limit.maximum is not None:
        return f"{number(limit.minimum)} to {number(limit.maximum)}{tail}"
    if limit.minimum is not None:
        return f"at least {number(limit.minimum)}{tail}"
    if limit.maximum == 0:
        return f"none in {limit.unit[2:].strip('()')}" if limit.unit.startswith("1/") else f"0{tail}"
    return f"{number(limit.maximum)}{tail}"


def verdict(comparison: Comparison) -> str:
    """A verdict as words; never an assurance."""
    words = {
        Verdict.ABOVE: "above",
        Verdict.BELOW: "below the minimum",
        Verdict.WITHIN: "within",
        Verdict.UNDECIDED: "cannot be told",
    }[comparison.verdict]
    return f"{words}, near" if comparison.near and comparison.verdict is Verdict.WITHIN else words


def kind(limit: Limit) -> str:
    """What a limit protects, as words."""
    return {
        LimitKind.HEALTH: "health",
        LimitKind.AESTHETIC: "taste, color, staining",
        LimitKind.OPERATIONAL: "operation",
        LimitKind.GOAL: "goal",
    }[limit.kind]


def times(ratio: Interval | None) -> str:
    """A ratio to a limit, `1.2 ×`."""
    if ratio is None:
        return ""
    if math.isinf(ratio.high):
        return f"at least {number(ratio.low, 2)}\u00a0×" if ratio.low > 0 else ""
    if ratio.low == 0 and ratio.high > 0:
        return f"up to {number(ratio.high, 2)}\u00a0×"
    return f"{interval(float(number(ratio.low, 2)), float(number(ratio.high, 2)))}\u00a0×"


def day(moment: date | datetime | None) -> str:
    """A date, with its time where one is known."""
    if moment is None:
        return "date not printed"
    if isinstance(moment, datetime) and (moment.hour or moment.minute):
        return moment.strftime("%Y-%m-%d %H:%M")
    return moment.strftime("%Y-%m-%d")


def about(sample: Sample) -> str:
    """One line on a sample."""
    parts = [f"Sample {sample.id}" if sample.id else "Sample without a name"]
    parts += [sample.site] if sample.site else []
    parts += [label(sample.point)] if sample.point else []
    parts += [f"collected {day(sample.collected)}"]
    parts += [sample.laboratory] if sample.laboratory else []
    return ", ".join(parts)


def place(origin: Origin | None) -> str:
    """Page or sheet, row and column of a source that the reader has in hand."""
    names = ("page", "sheet", "row", "column")
    return ", ".join(f"{name} {getattr(origin, name)}" for name in names if getattr(origin, name, None) is not None)


def places(finding: Interpretation, indices: Iterable[int]) -> tuple[str, ...]:
    """Printed cells of results, each with its place in the report."""
    results = [finding.sample.results[index] for index in indices]
    return tuple(f"{printed(r)} ({place(r.origin)})" if place(r.origin) else printed(r) for r in results)


_ORDER = (Verdict.ABOVE, Verdict.BELOW, Verdict.UNDECIDED, Verdict.WITHIN)


def ranked(finding: Interpretation) -> list[Comparison]:
    """Comparisons with what is above first, then what cannot be told; unsettled conditions last."""
    return sorted(finding.comparisons, key=lambda item: (not item.condition_settled, _ORDER.index(item.verdict)))


_DECIDES = re.compile(r"(^|\. )(Whether|Which|Where) ")


def _tells(found: re.Match[str]) -> str:
    return f"{found[1]}The test tells {found[2].lower()} "


def asked(item: MissingTest) -> str:
    """A test or a question, and the decision that it changes."""
    if item.title.endswith("?"):
        return f"{item.title} It tells {item.decision[:1].lower()}{item.decision[1:]}"
    return f"{item.title}: {_DECIDES.sub(_tells, item.decision)}"


def heading(finding: Interpretation, hazard: str) -> str:
    """What a problem is called on this page."""
    return next((problem.title for problem in finding.problems if problem.code == hazard), title(hazard))


_MEASURE = {
    LimitKind.HEALTH: "limit for health",
    LimitKind.AESTHETIC: "level for taste, color or stains",
    LimitKind.OPERATIONAL: "level for pipes and treatment",
    LimitKind.GOAL: "goal for health",
}


def _measured_by(item: Comparison) -> str:
    """A comparison in plain words, with what is enacted for later."""
    verdicts = {
        Verdict.ABOVE: "is above",
        Verdict.BELOW: "is below",
        Verdict.WITHIN: "is within",
        Verdict.UNDECIDED: "cannot be judged by",
    }
    measure = f"the {_MEASURE[item.limit.kind]}, {bound(item.limit)} ({authority(item.limit.authority)})"
    later = f"; {item.later}" if item.later else ""
    return f"{title(item.analyte)} {verdicts[item.verdict]} {measure}{later}."


def found(finding: Interpretation, problem: Problem) -> str:
    """The printed results that a problem rests on, and what they are measured by first."""
    indices = dict.fromkeys(index for part in problem.evidence for index in part.results)
    results = "; ".join(dict.fromkeys(printed(finding.sample.results[index]) for index in indices))
    first = problem.evidence[0].text if problem.evidence else ""
    if problem.evidence and problem.evidence[0].comparisons:
        first = _measured_by(finding.comparisons[problem.evidence[0].comparisons[0]])
    return " ".join(part for part in (f"On the report: {results}." if results else "", first) if part)


def general(finding: Interpretation) -> tuple[Caution, ...]:
    """Cautions of the whole report; those of a hazard stand with its problem."""
    own = {caution for problem in finding.problems for caution in problem.cautions}
    return tuple(caution for caution in finding.cautions if caution not in own)


_NAMED_TESTS = 5


def no_action(finding: Interpretation) -> str:
    """What is said where no action follows from what was tested."""
    said = {caution.code for caution in general(finding)}
    if "not_established" in said:
        first = "The first step is to have tested what this report does not establish; the list below says how."
        # Beside a caution that asks for something this would contradict it.
        if said - {"informs", "not_established", "one_negative"}:
            return first
        return f"{first} What was tested and can be judged calls for no other step today."
    further = "further " if said - {"informs"} else ""
    tests = [item.title for item in finding.missing if not item.field and not item.code.startswith("routine_")]
    if not tests:
        return f"No {further}step for today follows from what was tested. Read next what was not tested."
    named = "; ".join(tests[:_NAMED_TESTS]) + ("; and more in the list below" if len(tests) > _NAMED_TESTS else "")
    return (
        f"What was tested, and can be judged, calls for no {further}step today. What was not says nothing of the "
        f"water yet. Have tested next: {named}."
    )


def documents(finding: Interpretation) -> tuple[str, ...]:
    """Every document that a comparison cites, once, with its edition and address."""
    return tuple(dict.fromkeys(item.limit.citation.document for item in finding.comparisons))
