"""One sample from results and comparisons to what a practitioner needs next."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import date, datetime
from typing import TYPE_CHECKING

import wellchem
from wellchem import limits as limits_room
from wellchem import schema
from wellchem.errors import NotASample
from wellchem.interpretation import computed, verdicts
from wellchem.interpretation.actions import action_models
from wellchem.interpretation.beside import Beside, beside, in_doubt
from wellchem.interpretation.checking import check_models
from wellchem.interpretation.checks_report import implausible
from wellchem.interpretation.evidence import problem_models, sign_models
from wellchem.interpretation.missing import (
    at_risk_at_once,
    current,
    missing_tests,
    near_limits,
    not_established,
    untested_near,
)
from wellchem.interpretation.others import weighed
from wellchem.interpretation.practice import by, feared, rows, source
from wellchem.interpretation.single import Single
from wellchem.interpretation.table import from_sample
from wellchem.interpretation.treatment import IMPLAUSIBLE, recommend, treat
from wellchem.interpretation.untold import unbounded, untold_limits
from wellchem.interpretation.waters import Waters, dates_of_sample, day_hours
from wellchem.interpretation.weighing import find
from wellchem.interpretation.wording import label, listed, result
from wellchem.models.codes import Certainty, CheckStatus, SamplingPoint
from wellchem.models.finding import Caution, Interpretation, Problem
from wellchem.models.household import Household
from wellchem.models.sample import Report, Sample

if TYPE_CHECKING:
    import numpy as np

    from wellchem.limits import LimitTable

_INFORMS = (
    "This is information, not a certificate: the health authority, a certified laboratory, local code and licensed "
    "professionals decide. What was not tested is not known."
)
_NOT_KNOWN = "Not established by this report: {names}. Until it is, nothing can be concluded about drinking this water."
_NOT_KNOWN_BESIDE = (
    "Not established by this report: {names}. What was found is to be acted on; whether more is wrong is not known."
)
_UNDATED = (
    "The report has no date of collection: how old its results are cannot be told, so none of them is established for "
    "the water of today."
)
_NO_LIMIT = (
    "Tested, but not judged here, because none of the authorities looked to has a limit in force that this report "
    "meets: {names}. Ask the health authority."
)
_NEGATIVE = (
    "Bacteria were not found in this one sample. One negative test never establishes that there are none: they come "
    "and go with rain and season."
)
_ILLNESS = (
    "Somebody fell ill: see a physician, name the water, and take water from another source until it is cleared up."
)
_SLIPPED = (
    "Out of the range of ground water: {shown}. A slip of units is likely: ask the laboratory today, and act as the "
    "number says until it has answered."
)
_NEAR = (
    "Within its limit, but near it: {names}. It may be above on another day: a further sample has to tell. Ask the "
    "health authority{meanwhile}."
)
_NEAR_MEANWHILE = " whether {who} had better take another water meanwhile"
_UNTOLD = (
    "Tested, but this report cannot tell whether it is above a limit for health: {names}. Until it is measured again "
    "or the laboratory has answered, count it as not tested."
)
_TREATED = "The sample may not be the raw water of the well: what it shows may be the treatment."


def interpret(
    sample: Sample,
    authorities: Iterable[str] = ("us-epa",),
    on: date | str | None = None,
    household: Household | None = None,
    limits: LimitTable | Iterable[LimitTable] | None = None,
    reports: Report | Iterable[Report] | None = None,
) -> Interpretation:
    """Interpret one sample: what can be trusted, what is wrong, what to do today, what is missing, what to install.

    Parameters
    ----------
    sample : Sample
        As read from a report, or from `Sample.from_values`.
    authorities : names of authorities
        Whose limits are looked to; `wellchem.limits.authorities()` lists them.
    on : date, "collected" or None
        The day whose law is meant: a date, the sample's day of collection, or today. The age of the report is judged
        by the date, or by today.
    household : Household or None
        What is known of the people, the well and what they notice. What is not said of infants, children and
        pregnancy is taken as present.
    limits : LimitTable or several, or None
        Limits of your own, compared besides.
    reports : Report or several, or None
        The report that the sample is from, and others: their other samples of the same well confirm, contradict or
        add to what this one shows, its duplicates and blanks are weighed. Without them the sample stands by itself.

    Returns
    -------
    Interpretation
        With the versions of the library, the schema and the limits, and the date compared with.

    Raises
    ------
    NotASample
        Where a report or a frame is given.
    UnknownAuthority
        Where the limits of an authority are not known.
    WellchemError
        Where `reports` holds something else than reports.
    """
    if not isinstance(sample, Sample):
        raise NotASample(
            f"interpret takes one Sample, not {type(sample).__name__}: `report.samples` are those of a report; "
            "frames go to `wellchem.checks` and `wellchem.problems`"
        )
    looked_to = (authorities,) if isinstance(authorities, str) else tuple(authorities)
    asked = _asked(sample, on)

    def alone(one: Sample, near: Beside) -> Single:
        comparisons = limits_room.compare_sample(one, looked_to, asked, household, limits)
        waters = Waters(
            table=from_sample(one, in_doubt(one, near)),
            verdicts=verdicts.from_comparisons(comparisons, asked),
            dates=dates_of_sample(one),
            day=_hours(date.today() if on == "collected" else asked),
            household=household or Household(),
        )
        found = find(waters)
        return Single(one, comparisons, waters, found, found, near)

    near = beside(sample, reports)
    if sample.point is None and household is not None and household.sampling_point is not None:
        sample = sample.model_copy(update={"point": household.sampling_point})
    single = alone(sample, near)
    if around := tuple(alone(one, beside(one, reports)) for one in (*near.samples, *near.duplicates)):
        single = replace(single, findings=weighed(single, around), others=around)
    waters, comparisons = single.waters, single.comparisons
    found = problem_models(single)
    signs = sign_models(single)
    made = check_models(single)
    slip = [IMPLAUSIBLE] if any(one.code == "plausible" and one.status in _OUT_OF_RANGE for one in made) else []
    treatment = recommend(sample, found, comparisons, household, (*(sign.code for sign in signs), *slip))
    treated = treat(sample, treatment) if treatment.stages else None
    return Interpretation(
        sample=sample,
        household=household,
        authorities=looked_to,
        on=asked,
        standing=tuple(limits_room.standing(name) for name in looked_to if name in limits_room.authorities()),
        comparisons=comparisons,
        checks=made,
        problems=found,
        actions=action_models(single, found),
        missing=missing_tests(single, looked_to),
        signs=signs,
        treatment=treatment,
        treated=treated,
        treated_comparisons=(
            limits_room.compare_sample(treated, looked_to, asked, household, limits) if treated is not None else ()
        ),
        cautions=_cautions(single, found, any(sign.code in _ALTERED for sign in signs)),
        hardness=computed.hardness_values(waters),
        ion_balance=computed.balance_values(waters),
        scaling=computed.scaling_values(waters),
        corrosion=computed.corrosion_values(waters),
        library_version=wellchem.__version__,
        schema_version=schema.VERSION,
        limits_version=limits_room.version(),
    )


_OUT_OF_RANGE = (CheckStatus.WARN, CheckStatus.FAIL)
_ALTERED = ("softened", "chlorinated", "after_membrane")


def _asked(sample: Sample, on: date | str | None) -> date:
    """The date that is meant. Raises ValueError for a text that is none."""
    if on == "collected":
        collected = sample.collected
        return date.today() if collected is None else date(collected.year, collected.month, collected.day)
    if isinstance(on, str):
        return date.fromisoformat(on)
    if isinstance(on, datetime):
        return on.date()
    return on or date.today()


def _hours(asked: date) -> np.ndarray[tuple[int], np.dtype[np.float64]]:
    import numpy as np

    return np.array([day_hours(asked)])


def _cautions(single: Single, found: Iterable[Problem], altered: bool) -> tuple[Caution, ...]:
    """What holds of the whole report, then the cautions of each hazard, once each."""
    made = [Caution(code="informs", text=_INFORMS, decides="the local health authority")]
    if single.waters.observed("illness"):
        made.append(Caution(code="illness", text=_ILLNESS, decides="a physician"))
    if open_ones := (*not_established(single), *untested_near(single)):
        bad = any(problem.kind == "health" and problem.certainty is not Certainty.POSSIBLE for problem in found)
        text = (_NOT_KNOWN_BESIDE if bad else _NOT_KNOWN).format(
            names="; ".join(open_ones) if any("," in one for one in open_ones) else ", ".join(open_ones)
        )
        made.append(Caution(code="not_established", text=text, decides="a certified laboratory"))
    if single.sample.collected is None:
        made.append(Caution(code="undated", text=_UNDATED, decides="the laboratory"))
    if current(single, "bacteria") and not any(problem.code in _BACTERIA for problem in found):
        row = by("cautions", "problem")["coliform_bacteria"][0]
        made.append(Caution(code="one_negative", text=_NEGATIVE, hazard="coliform_bacteria", source=source(row)))
    if shown := _slipped(single):
        made.append(Caution(code="slipped", text=_SLIPPED.format(shown=shown), decides="the laboratory"))
    if near := _near(single, found):
        made.append(Caution(code="near", text=near, decides="the local health authority"))
    if names := _untold(single, found):
        made.append(Caution(code="untold", text=_UNTOLD.format(names=names), decides="a certified laboratory"))
    if names := _without_limit(single):
        made.append(Caution(code="no_limit", text=_NO_LIMIT.format(names=names), decides="the local health authority"))
    if altered or single.sample.point is SamplingPoint.AFTER_TREATMENT:
        made.append(Caution(code="maybe_treated", text=_TREATED, decides="the household"))
    for problem in found:
        made += problem.cautions
    return tuple(dict.fromkeys(made))


_BACTERIA = ("fecal_bacteria", "coliform_bacteria")


def _slipped(single: Single) -> str:
    """Results out of the range of ground water, as printed."""
    names = [row["analyte"] for row in rows("plausible") if bool(implausible(single.waters, row["analyte"])[0])]
    return "; ".join(result(single.sample.results[place]) for place in single.results(names))


def _told(single: Single, found: Iterable[Problem]) -> frozenset[str]:
    """Analytes that a problem speaks of."""
    return frozenset(
        single.sample.results[place].analyte for one in found for part in one.evidence for place in part.results
    )


def _untold(single: Single, found: Iterable[Problem]) -> str:
    """What was measured and cannot be judged against a health limit, and no problem speaks of."""
    names = ({item.analyte for item in untold_limits(single)} | unbounded(single)) - _told(single, found)
    return listed(sorted(map(label, names))) if names else ""


def _near(single: Single, found: Iterable[Problem]) -> str:
    """What is near a health limit without being a problem already, and who might take another water meanwhile."""
    told = _told(single, found)
    near = [item for item in near_limits(single) if item.analyte not in told]
    if not near:
        return ""
    who = dict.fromkeys(group for item in near for group in at_risk_at_once(single, item))
    meanwhile = _NEAR_MEANWHILE.format(who=listed(sorted(map(label, who)))) if who else ""
    return _NEAR.format(names=listed(sorted({label(item.analyte) for item in near})), meanwhile=meanwhile)


def _without_limit(single: Single) -> str:
    """What was found and met no limit, nor a threshold of practice."""
    met = [one for one in single.comparisons if one.condition_settled]
    told = {row["analyte"] for row in rows("rules")}
    told |= {single.sample.results[place].analyte for one in met for place in one.results}
    told |= {member.partition(":")[0] for one in met for member in one.limit.members}
    table = single.waters.table
    names = [name for name in table.analytes if name in feared() and table.most(name).low[0] > 0.0]
    return ", ".join(sorted(label(name) for name in names if name not in told))
