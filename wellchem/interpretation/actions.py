"""What to do today: per hazard and group at risk, whether boiling helps or harms, bathing, infant formula, air."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from wellchem.interpretation.missing import current
from wellchem.interpretation.practice import by, problem_index, problems, source
from wellchem.interpretation.problems import NONE, POSSIBLE, URGENCIES, applies
from wellchem.interpretation.single import Single
from wellchem.interpretation.verdicts import UNDECIDED
from wellchem.models.codes import Urgency
from wellchem.models.finding import Action, Problem

MICROBES = ("fecal_bacteria", "coliform_bacteria", "other_organisms")
# Hazards that a pot on the stove makes worse; where one of these is not known, boiling is no advice.
_MUST_BE_KNOWN = ("nitrate", "lead")

_OTHER_WATER = "Take another water and do not boil this one: boiling concentrates {why}."
_UNTOLD = "Have {name} measured again with a reporting limit below the limit: until then nothing is known of it."
_UNTOLD_BACTERIA = "Have bacteria tested again: this report cannot tell."


def _against_boiling(single: Single) -> str:
    """What forbids boiling against microbes: hazards that it concentrates, or that nobody has ruled out."""
    found = [
        row.title.lower()
        for row in problems()
        if row.kind == "health"
        and single.certainty(row.code) > NONE
        and any(care["boiling"] in ("harms", "air") for care in by("care", "problem").get(row.code, ()))
    ]
    unknown = [f"{name}, which is not known here" for name in _MUST_BE_KNOWN if not current(single, name)]
    return " and ".join(found + unknown)


@dataclass(frozen=True)
class _Care:
    """What a hazard means for boiling, bathing and infant formula."""

    boiling: str = ""
    bathing: str = ""
    infant_formula: str = ""


def _cares(single: Single, code: str) -> _Care:
    """The care that a hazard asks for; against microbes boiling helps only where nothing forbids it."""
    care = by("care", "problem").get(code)
    if not care:
        return _Care()
    row = care[0]
    boiling = row["boiling_text"]
    if code in MICROBES and (why := _against_boiling(single)):
        boiling = _OTHER_WATER.format(why=why)
    bathing = " ".join(part for part in (row["bathing"], row["ventilation"]) if part)
    return _Care(boiling, bathing, row["infant_formula"])


def _chosen(single: Single, code: str) -> Iterable[Mapping[str, str]]:
    """Of each group that is not ruled out the row that applies at the highest amount."""
    best: dict[str, Mapping[str, str]] = {}
    for row in by("urgency", "problem").get(code, ()):
        if single.waters.member(row["group"]) is False:
            continue
        if bool(applies(row, single.waters, single.findings.ratio[problem_index()[code]])[0]):
            best[row["group"]] = row
    return best.values()


def action_models(single: Single, found: Iterable[Problem]) -> tuple[Action, ...]:
    """Actions for the problems found, the most urgent first."""
    made: list[Action] = []
    for problem in found:
        if problem.kind != "health" and problem.code not in by("care", "problem"):
            continue
        care = _cares(single, problem.code)
        if single.certainty(problem.code) == POSSIBLE and single.deciding(problem.code, UNDECIDED):
            made.append(_untold(problem, care))
            continue
        for row in _chosen(single, problem.code):
            urgency = Urgency(row["urgency"])
            if single.certainty(problem.code) == POSSIBLE and urgency is Urgency.NOW:
                urgency = Urgency.SOON
            made.append(
                Action(
                    hazard=problem.code,
                    text=row["action"],
                    urgency=urgency,
                    deadline=row["deadline"],
                    group=row["group"],
                    source=source(row),
                    boiling=care.boiling,
                    bathing=care.bathing,
                    infant_formula=care.infant_formula,
                )
            )
    return tuple(sorted(made, key=lambda one: -URGENCIES.index(one.urgency)))


def _untold(problem: Problem, care: _Care) -> Action:
    """What to do where the report cannot tell."""
    text = _UNTOLD_BACTERIA if problem.code in MICROBES else _UNTOLD.format(name=problem.code.replace("_", " "))
    return Action(
        hazard=problem.code,
        text=text,
        urgency=problem.urgency,
        deadline="within weeks",
        group="everyone",
        boiling=care.boiling,
        bathing=care.bathing,
        infant_formula=care.infant_formula,
    )
