"""What to do today: per hazard and group at risk, whether boiling helps or harms, bathing, infant formula, air."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from wellchem.interpretation.missing import current
from wellchem.interpretation.practice import by, problem_index, problems, rows, source
from wellchem.interpretation.single import Single
from wellchem.interpretation.verdicts import UNDECIDED
from wellchem.interpretation.weighing import POSSIBLE, URGENCIES, applies
from wellchem.interpretation.wording import label, labels, listed
from wellchem.models.codes import Reason, Urgency
from wellchem.models.finding import Action, Problem

_BACTERIA = ("fecal_bacteria", "coliform_bacteria")
# Hazards that a pot on the stove makes worse; where one of these is not known, boiling is no advice.
_MUST_BE_KNOWN = ("nitrate", "lead")

_OTHER_WATER = "Take another water and do not boil this one: boiling {does} {why}."
_OTHER_FORMULA = "With another water, neither with this one nor with this one boiled."
_UNTOLD = "Have {name} measured again so that it can be judged: whether the limit is passed is not known."
_UNTOLD_BACTERIA = (
    "Have bacteria tested again: this report cannot tell. Until then treat the water for drinking as suspect."
)
_UNTOLD_FORM = "Ask the laboratory what the number of {name} stands for: whether the limit is passed turns on it."
_UNTOLD_AMOUNT = "Ask the laboratory down to what amount it looks for {name}: not found, but no number bounds that."
_UNTOLD_MEMBERS = "Have measured what counts with {name}: {members}. Without it the number cannot be judged."
_MEANWHILE = " Until then {who} take another water, for formula too."
_AHEAD = (
    "It is within today's limit and above one that is enacted for later. Plan for another water or for treatment, and "
    "ask {decides}."
)
_ASK = "Ask {decides} what this means for the people who drink the water."
_WHO = {"infants": "infants", "children": "children", "pregnancy": "pregnant women"}


def _against_boiling(single: Single) -> str:
    """What forbids boiling against microbes: hazards that it makes worse, or that nobody has ruled out."""
    care = {row["problem"]: row["boiling"] for row in rows("care")}
    worse = [row for row in problems() if row.kind == "health" and care.get(row.code) in ("harms", "air")]
    found = [row for row in worse if single.certainty(row.code) > POSSIBLE]
    unknown = [name for name in _MUST_BE_KNOWN if not current(single, name) and single.certainty(name) <= POSSIBLE]
    unknown += [label(row.code) for row in worse if single.untold_only(row.code) and row.code not in unknown]
    parts = [f"the {listed(_subject(row.subject) for row in found)} found here"] if found else []
    if unknown:
        parts.append(f"{listed(unknown)}, which {'is' if len(unknown) == 1 else 'are'} not known here")
    if not parts:
        return ""
    does = "concentrates"
    if any(care[row.code] == "air" for row in found):
        does = "concentrates or drives into the air"
    return _OTHER_WATER.format(does=does, why=" and ".join(parts))


def _subject(text: str) -> str:
    """A subject inside a sentence."""
    return text if text.isupper() else text[:1].lower() + text[1:]


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
        if problem.code == "coliform_bacteria" and (
            single.certainty("fecal_bacteria") > POSSIBLE
            or (single.untold_only("fecal_bacteria") and single.untold_only("coliform_bacteria"))
        ):
            continue  # what fecal bacteria ask for goes as far or further
        if single.untold_only(problem.code):
            made.append(_untold(single, problem))
        elif chosen := list(_chosen(single, problem.code)):
            made += [_action(single, problem, row) for row in chosen]
        elif problem.kind == "health":
            text = _AHEAD if single.ahead_only(problem.code) else _ASK
            made.append(_plain(problem, text.format(decides=problem.decides), "within months"))
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


def _plain(problem: Problem, text: str, deadline: str) -> Action:
    return Action(hazard=problem.code, text=text, urgency=problem.urgency, deadline=deadline, group="everyone")


def _untold(single: Single, problem: Problem) -> Action:
    """What to do where the report cannot tell: by the reason, and what the groups at risk do meanwhile."""
    if problem.code in _BACTERIA:
        return _plain(problem, _UNTOLD_BACTERIA, "within days")
    open_ones = [single.comparisons[place] for place in single.deciding(problem.code, UNDECIDED)]
    reasons = {name: words for one in open_ones for name, _, words in (word.partition("=") for word in one.reasons)}
    name = listed(sorted({label(one.analyte) for one in open_ones}))
    if Reason.MEMBERS_MISSING in reasons:
        text = _UNTOLD_MEMBERS.format(name=name, members=labels(reasons[Reason.MEMBERS_MISSING]))
    elif Reason.NO_BOUNDS in reasons and not reasons.keys() & {Reason.REJECTED, Reason.INVALID_SAMPLE}:
        text = _UNTOLD_AMOUNT.format(name=name)
    elif reasons.keys() & {Reason.BASIS_ASSUMED, Reason.UNIT_ASSUMED, Reason.UNIT_MISSING}:
        text = _UNTOLD_FORM.format(name=name)
    else:
        text = _UNTOLD.format(name=name)
    groups = {row["group"] for row in by("urgency", "problem").get(problem.code, ())}
    if at_risk := [word for group, word in _WHO.items() if group in groups and single.waters.counts(group)]:
        text += _MEANWHILE.format(who=listed(at_risk))
    return _plain(problem, text, "within weeks")


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
        if row["boiling"] == "helps" and (against := _against_boiling(single)):
            boiling, formula = against, _OTHER_FORMULA
        bathing = " ".join(part for part in (row["bathing"], row["ventilation"]) if part)
        yield action.model_copy(update={"boiling": boiling, "bathing": bathing, "infant_formula": formula})
