"""What to do today: per hazard and group at risk, whether boiling helps or harms, bathing, infant formula, air."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from wellchem.interpretation.missing import current
from wellchem.interpretation.practice import by, problem_index, problems, source
from wellchem.interpretation.single import Single
from wellchem.interpretation.verdicts import UNDECIDED
from wellchem.interpretation.weighing import NONE, POSSIBLE, URGENCIES, applies
from wellchem.interpretation.wording import label
from wellchem.models.codes import Urgency
from wellchem.models.finding import Action, Problem

MICROBES = ("fecal_bacteria", "coliform_bacteria", "other_organisms")
# Hazards that a pot on the stove makes worse; where one of these is not known, boiling is no advice.
_MUST_BE_KNOWN = ("nitrate", "lead")

_OTHER_WATER = "Take another water and do not boil this one: boiling concentrates {why}."
_OTHER_FORMULA = "With another water, neither with this one nor with this one boiled."
_UNTOLD = "Have {name} measured again so that it can be judged: whether it is above the limit is not known."
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
    """Actions for the problems found, the most urgent first; what a hazard asks of boiling stands with its first."""
    made: list[Action] = []
    for problem in found:
        if problem.kind != "health" and problem.code not in by("care", "problem"):
            continue
        if problem.code == "coliform_bacteria" and single.certainty("fecal_bacteria") > POSSIBLE:
            continue  # what fecal bacteria ask for goes further
        if single.certainty(problem.code) == POSSIBLE and single.deciding(problem.code, UNDECIDED):
            made.append(_untold(problem))
        else:
            made += [_action(single, problem, row) for row in _chosen(single, problem.code)]
    made.sort(key=lambda one: -URGENCIES.index(one.urgency))
    return tuple(_with_care(single, made))


def _action(single: Single, problem: Problem, row: Mapping[str, str]) -> Action:
    urgency = Urgency(row["urgency"])
    if single.certainty(problem.code) == POSSIBLE and urgency is Urgency.NOW:
        urgency = Urgency.SOON
    return Action(
        hazard=problem.code,
        text=row["action"],
        urgency=urgency,
        deadline=row["deadline"],
        group=row["group"],
        source=source(row),
    )


def _untold(problem: Problem) -> Action:
    """What to do where the report cannot tell."""
    text = _UNTOLD_BACTERIA if problem.code in MICROBES else _UNTOLD.format(name=label(problem.code))
    return Action(hazard=problem.code, text=text, urgency=problem.urgency, deadline="within weeks", group="everyone")


def _with_care(single: Single, actions: Iterable[Action]) -> Iterable[Action]:
    said: set[str] = set()
    for action in actions:
        care = by("care", "problem").get(action.hazard, ())
        if not care or action.hazard in said:
            yield action
            continue
        said.add(action.hazard)
        row = care[0]
        boiling, formula = row["boiling_text"], row["infant_formula"]
        if action.hazard in MICROBES and (why := _against_boiling(single)):
            boiling, formula = _OTHER_WATER.format(why=why), _OTHER_FORMULA
        bathing = " ".join(part for part in (row["bathing"], row["ventilation"]) if part)
        yield action.model_copy(update={"boiling": boiling, "bathing": bathing, "infant_formula": formula})
