"""What is not known: tests that would change a decision, the most valuable first, and questions to the household."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from functools import cache

import numpy as np

from wellchem.interpretation.checks_report import too_late
from wellchem.interpretation.conditions import holds
from wellchem.interpretation.others import of_the_same_water
from wellchem.interpretation.practice import by, level, problem_of, problems, rows, source
from wellchem.interpretation.signs import chlorinated
from wellchem.interpretation.single import Single
from wellchem.interpretation.untold import settled, untold_limits
from wellchem.interpretation.verdicts import UNDECIDED
from wellchem.interpretation.waters import HOURS_A_DAY
from wellchem.interpretation.weighing import CERTAIN, LIKELY, POSSIBLE
from wellchem.interpretation.wording import label, labels, listed, title
from wellchem.limits.documents import short_name
from wellchem.models.codes import Fraction, Reason, SamplingPoint, Urgency
from wellchem.models.finding import MissingTest
from wellchem.models.limits import Comparison

# Without these, and current, nothing good may be said of a well.
CORE = ("bacteria", "nitrate", "arsenic", "lead")
_DAYS_A_MONTH = 30.5
_CONFIRM = "Whether it holds: one sample is one moment. A second one, well apart, before money is spent."
# A confirmation stands below the core tests and above the rest; what people answer costs nothing.
_CONFIRM_VALUE, _LOWER_VALUE, _MEMBERS_VALUE, _WATCH_VALUE, _ROUTINE_VALUE = 83, 87, 33, 37, 10
_WATCH_SOON_VALUE = 81
_MEMBERS = "what was measured cannot settle it, because not all that counts was measured."
_COARSE = "It was not found, but with a reporting limit that tells infants, children and pregnant women nothing."
_POINTS = frozenset(point.value for point in SamplingPoint)
_RISK = ("infants", "children", "pregnancy")
_NEAR = 0.8  # as comparisons call a result near


def _measured(single: Single, analyte: str) -> bool:
    """Whether the sample has a usable, bounded result; `iron:dissolved` asks for a fraction, `lead:tap_flushed` for
    one that was taken there, by the sample or by its printed name.
    """
    name, _, which = analyte.partition(":")
    table = single.waters.table
    if which in _POINTS:
        whole = single.sample.point == which
        column = table.standing(name) if whole else table.taken(name, SamplingPoint(which))
    else:
        column = table.standing(name, Fraction(which) if which else None)
    return bool(column.bounded[0] or (column.low[0] > 0.0))


def _undecided(single: Single, analyte: str) -> bool:
    """Whether a health limit cannot be judged against this analyte's result."""
    verdicts = single.waters.verdicts
    places = np.flatnonzero(verdicts.untold & verdicts.health)
    return any(single.comparisons[place].analyte == analyte for place in places)


def _old(single: Single, months: float) -> bool:
    """Whether the sample is older than a test holds, or has no date."""
    collected = single.waters.dates.collected.high[0]
    if months == 0.0:
        return False
    # No date: nothing shows that it is old, and `age` says that it cannot be told.
    return bool(single.waters.day[0] - HOURS_A_DAY - collected > months * _DAYS_A_MONTH * HOURS_A_DAY)


def _spoiled(single: Single, code: str) -> str:
    """Why a bacteria test that found none says nothing, or an empty text."""
    if code != "bacteria":
        return ""
    if single.certainty("fecal_bacteria") > POSSIBLE or single.certainty("coliform_bacteria") > POSSIBLE:
        return ""
    if bool(too_late(single.waters, "total_coliform")[0] or too_late(single.waters, "e_coli")[0]):
        return "It was begun too late, and found none: that says nothing."
    if bool(chlorinated(single.waters)[0]):
        return "There was chlorine in the sample: that it found none says nothing of the well."
    return ""


def _why_lacking(single: Single, wanted: Iterable[str]) -> str:
    """Why a test does not suffice, by what the report says of its analytes."""
    lacking = [name for name in wanted if not _measured(single, name)]
    names = {name.partition(":")[0] for name in wanted}
    given = [one for one in single.sample.results if one.analyte in names]
    if not given:
        return "It was not tested."
    if any(single.waters.table.standing(name).measured[0] for name in names):
        parts = (name.partition(":") for name in lacking)
        words = (f"{which.removeprefix('tap_').replace('_', ' ')} {label(name)}".strip() for name, _, which in parts)
        return f"Not tested, or without a number: {', '.join(words)}."
    qualifiers = {code for one in given for code in one.qualifiers}
    if "CG" in qualifiers:
        return "The laboratory could not read the sample."
    return "The laboratory rejected the result." if "R" in qualifiers else "The report gives no result of it."


def why_missing(single: Single, row: Mapping[str, str]) -> str:
    """Why a test of the table is asked for again, or an empty text where its result holds."""
    wanted = _wanted(row)
    have = [_measured(single, name) for name in wanted]
    enough = all(have) if row["need"] == "all" else any(have)
    if row["code"] == "bacteria" and single.certainty("fecal_bacteria") > POSSIBLE:
        enough = True
    if not wanted:
        return "This report does not tell it."
    if not enough:
        return _why_lacking(single, wanted)
    if _old(single, float(row["valid_months"])):
        return "The result is too old."
    return _spoiled(single, row["code"])


def current(single: Single, code: str) -> bool:
    """Whether a core test is made, not stale, valid, and judged against its limits, here or in another sample of the
    same water."""
    return _current_here(single, code) or any(_current_here(other, code) for other in of_the_same_water(single))


def _current_here(single: Single, code: str) -> bool:
    row = by("missing", "code")[code][0]
    analytes = row["analytes"].split(";")
    if code == "lead" and _too_coarse(single):
        return False
    if why_missing(single, row):
        return False
    # What is found above in another way is known, whatever else stays open.
    known = code in ("nitrate", "arsenic", "lead") and single.certainty(code) > POSSIBLE
    return known or not any(_undecided(single, analyte) for analyte in analytes)


def _too_coarse(single: Single) -> bool:
    """Whether lead was not found, but with a reporting limit that says nothing to those who bear none."""
    lead = single.waters.table.most("lead")
    unseen = bool(lead.bounded[0] and lead.low[0] <= 0.0 and level("lead_reporting_limit") < lead.high[0] < np.inf)
    return unseen and any(single.waters.counts(group) for group in _RISK)


def not_established(single: Single) -> tuple[str, ...]:
    """Core tests that are missing, stale, spoiled or undecided; all of them where the report has no date."""
    undated = single.sample.collected is None
    return tuple(code for code in CORE if undated or not current(single, code))


def untested_near(single: Single) -> tuple[str, ...]:
    """Tests that something near the well calls for and that are not made, or whose result no longer holds."""
    return tuple(
        row["title"][:1].lower() + row["title"][1:] if row["title"][1:2].islower() else row["title"]
        for row in rows("missing")
        if "nearby:" in row["when"]
        and bool(holds(row["when"], single.waters, single.present)[0][0])
        and why_missing(single, row)
        and not _made_elsewhere(single, row)
    )


def missing_tests(single: Single, authorities: Iterable[str]) -> tuple[MissingTest, ...]:
    """Tests and questions, the most valuable first."""
    members = _members(single)
    tests = list(_tests(single, members))
    lacking = members.keys() - {frozenset(_wanted(row)) for row, _ in tests}
    found = [
        *(test for _, test in tests),
        *_untold(single, frozenset(row["code"] for row, _ in tests)),
        *(members[names] for names in members if names in lacking),
        *_confirmations(single),
        *_watched(single),
        *_questions(single),
        *_routine(authorities),
    ]
    once: dict[str, MissingTest] = {}
    for test in found:
        once.setdefault(test.code, test)  # two authorities may ask for one test
    return tuple(sorted(once.values(), key=lambda one: -one.value))


def _wanted(row: Mapping[str, str]) -> list[str]:
    """Analytes of a test of the table."""
    return [name for name in row["analytes"].split(";") if name]


def _tests(
    single: Single, members: Mapping[frozenset[str], MissingTest]
) -> Iterable[tuple[Mapping[str, str], MissingTest]]:
    """Tests of the table with their rows. Where the members of a group's limit are what a test measures, it is asked
    for once, for both ends.
    """
    present = single.present
    for row in rows("missing"):
        if not bool(holds(row["when"], single.waters, present)[0][0]):
            continue
        if not (why := why_missing(single, row)) or _made_elsewhere(single, row):
            continue
        same = members.get(frozenset(_wanted(row)))
        test = MissingTest(
            code=row["code"],
            title=row["title"],
            decision=f"{why} {row['decision']}" + (f" {same.decision}" if same else ""),
            value=max(int(row["value"]), same.value if same else 0),
            bottle=row["bottle"],
            holding_time=row["holding_time"],
            source=source(row),
        )
        yield row, test


def _made_elsewhere(single: Single, row: Mapping[str, str]) -> bool:
    """Whether another sample of the same water has the test, in force and judged."""
    names = _wanted(row)
    return any(
        not why_missing(other, row) and not any(_undecided(other, name) for name in names)
        for other in of_the_same_water(single)
    )


@cache
def _test_of() -> Mapping[str, Mapping[str, str]]:
    """The first test of the table that asks for an analyte."""
    return {name: row for row in reversed(rows("missing")) for name in row["analytes"].split(";")}


_AGAIN = {
    "lower_limit": "{name} again, measured so that it can be judged",
    "again": "{name} again, so that it can be judged",
    "ask_laboratory": "{name}: ask the laboratory",
}


def _untold(single: Single, asked: frozenset[str]) -> Iterable[MissingTest]:
    """What is asked for where a result cannot be judged against a health limit: by the reason. `asked` are the tests of
    the table that are asked for anyway."""
    tests = _test_of()
    if _too_coarse(single):
        lead = tests["lead"]
        yield MissingTest(
            code="lower_limit_lead",
            title=_AGAIN["lower_limit"].format(name=title("lead")),
            decision=_COARSE,
            value=_LOWER_VALUE,
            bottle=lead["bottle"],
            holding_time=lead["holding_time"],
            source=source(lead),
        )
    for item in untold_limits(single):
        # The table has the weightiest reason last.
        said = {word.partition("=")[0] for word in item.reasons}
        why = next((row for row in reversed(rows("reasons")) if row["reason"] in said), rows("reasons")[0])
        row = tests.get(item.analyte)
        by_row = row is not None and (row["when"] == "always" or row["code"] in asked)
        if by_row and not _measured(single, item.analyte):
            continue  # asked for by that row, which says why
        yield MissingTest(
            code=f"{why['code']}_{item.analyte}",
            title=_AGAIN[why["code"]].format(name=title(item.analyte)),
            decision=why["decision"],
            value=_LOWER_VALUE if row is None else max(int(row["value"]) - 1, 1),
            bottle=row["bottle"] if row else "",
            holding_time=row["holding_time"] if row else "",
            source=source(row) if row else None,
        )


def _members(single: Single) -> dict[frozenset[str], MissingTest]:
    """What to test where members of group limits were not measured, and without them the sums cannot be judged: by the
    members, since one bottle settles all limits that lack the same."""
    verdicts = single.waters.verdicts
    lacked: dict[str, list[int]] = {}
    for place in np.flatnonzero(
        verdicts.counts & verdicts.health & verdicts.incomplete & (verdicts.state == UNDECIDED) & ~settled(single)
    ):
        reasons = single.comparisons[place].reasons
        names = next(word.partition("=")[2] for word in reasons if word.startswith(Reason.MEMBERS_MISSING.value))
        lacked.setdefault(names, []).append(int(place))
    found = {}
    for names, places in lacked.items():
        items = [single.comparisons[place] for place in places]
        urgent = bool(verdicts.untold[places].any()) or any(
            one.ratio is not None and one.ratio.low >= _NEAR for one in items
        )
        limits = dict.fromkeys(f"{label(one.analyte)} ({short_name(one.limit.authority)})" for one in items)
        words = labels(names)
        found[frozenset(names.split(","))] = MissingTest(
            code=f"members_{items[0].analyte}",
            title=f"{words[:1].upper()}{words[1:]}, for a limit that counts several together",
            decision=f"Whether the limit on {listed(limits)} is passed: {_MEMBERS}",
            value=_LOWER_VALUE - 1 if urgent else _MEMBERS_VALUE,
        )
    return found


def _confirmations(single: Single) -> Iterable[MissingTest]:
    """A second sample for health problems that rest on one, and for bacteria, which come and go."""
    tests = _test_of()
    for problem in problems():
        certainty = single.certainty(problem.code)
        if problem.kind != "health" or certainty != LIKELY or not problem.analytes:
            continue
        if problem.code == "coliform_bacteria" and single.certainty("fecal_bacteria") == CERTAIN:
            continue
        row = next((tests[name] for name in problem.analytes if name in tests), None)
        yield MissingTest(
            code=f"confirm_{problem.code}",
            title=f"{problem.subject}, a second sample",
            decision=_CONFIRM,
            value=_CONFIRM_VALUE,
            bottle=row["bottle"] if row else "",
            holding_time=row["holding_time"] if row else "",
            source=source(row) if row else None,
        )


def near_limits(single: Single) -> tuple[Comparison, ...]:
    """Results within a health limit but near it, or whose uncertainty spans it."""
    return tuple(
        item
        for item in single.comparisons
        if item.near and item.condition_settled and item.verdict == "within" and item.limit.kind == "health"
    )


def at_risk_at_once(single: Single, item: Comparison) -> tuple[str, ...]:
    """Groups that are reckoned with and would have to act on the day on which this limit is passed."""
    code = problems()[problem_of(item.analyte, item.limit.kind.value, "above")].code
    return tuple(
        row["group"]
        for row in by("urgency", "problem").get(code, ())
        if row["group"] in _RISK and row["above_ratio"] == "1" and row["urgency"] == Urgency.NOW
        if single.waters.counts(row["group"])
    )


def _watched(single: Single) -> Iterable[MissingTest]:
    """What is near its limit is to be followed: within months where somebody would have to act at once."""
    for item in near_limits(single):
        at_risk = at_risk_at_once(single, item)
        when = "within three months" if at_risk else "within the year"
        who = f" {listed(at_risk).capitalize()} would have to act that day." if at_risk else ""
        yield MissingTest(
            code=f"watch_{item.analyte}",
            title=f"{title(item.analyte)} again {when}: it is near its limit",
            decision=f"Whether it rises above its limit, {item.limit.term} ({short_name(item.limit.authority)}).{who}",
            value=_WATCH_SOON_VALUE if at_risk else _WATCH_VALUE,
        )


_DATED = ("flooded",)  # "yes" leaves open when
# Fields of the household that a report may fill.
_PRINTED: Mapping[str, Callable[[Single], bool]] = {
    "well_depth": lambda single: not np.isnan(single.waters.depth[0]),
    "sampling_point": lambda single: single.sample.point is not None,
}


def _questions(single: Single) -> Iterable[MissingTest]:
    for row in rows("questions"):
        said = getattr(single.waters.household, row["field"])
        unknown = said is None or (said is True and row["field"] in _DATED)
        if row["field"] in _PRINTED and _PRINTED[row["field"]](single):
            continue  # the report says it
        if unknown and bool(holds(row["when"], single.waters)[0][0]):
            yield MissingTest(
                code=f"ask_{row['field']}",
                title=row["title"],
                decision=row["decision"],
                value=int(row["value"]),
                field=row["field"],
            )


def _routine(authorities: Iterable[str]) -> Iterable[MissingTest]:
    """What each authority advises a private well to have tested, and how often."""
    for name in authorities:
        for row in by("routine", "authority").get(name, ()):
            yield MissingTest(
                code=f"routine_{name}",
                title=f"The routine of a private well ({short_name(name)})",
                decision=row["text"],
                value=_ROUTINE_VALUE,
                source=source(row),
            )
