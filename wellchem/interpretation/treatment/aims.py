"""What a train has to bring about: for each problem, bounds that the predicted water has to keep."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import IntEnum
from functools import cache
from math import inf

from wellchem.interpretation import practice
from wellchem.interpretation.treatment.tables import ENTRY, TAP, Ends, answers, places, plumbing_metals
from wellchem.interpretation.treatment.water import Water, organism
from wellchem.models.codes import Certainty, LimitKind, ProblemKind, Urgency, Verdict
from wellchem.models.finding import Problem
from wellchem.models.household import Household
from wellchem.models.limits import Comparison

MICROBES = frozenset({"fecal_bacteria", "coliform_bacteria", "protozoa", "other_organisms", "iron_bacteria"})
OPTIONAL = frozenset(
    {"hardness", "sodium_diet"}
)  # a matter of choice: it shapes no train, and is met where the train allows
_AT_THE_PHYSICIAN = "sodium_diet"
# What comes first says it all: no train is sought for it alone.
TOLD = frozenset({"sodium_taste", "heater_odor", "flooded_well"})


class Outcome(IntEnum):
    """What a train makes of a problem: cleared at the worst end, answered but not to be told, or not answered."""

    CLEARED = 0
    UNTOLD = 1
    UNANSWERED = 2


@dataclass(frozen=True)
class Target:
    """Bounds of an amount, `parts` being the analytes of a limit over several; `text` says where they come from."""

    analyte: str
    minimum: float
    maximum: float
    text: str
    amount: Ends | None = None
    parts: tuple[str, ...] = ()


@dataclass(frozen=True)
class Aim:
    """One problem with its targets, and where its water is drawn. `barrier` tells that organisms are the problem: no
    count is predicted behind a barrier, so the barrier itself is the answer."""

    code: str
    title: str
    health: bool
    optional: bool
    place: str
    targets: tuple[Target, ...]
    stages: frozenset[str]
    barrier: bool


def aims(
    problems: Sequence[Problem], comparisons: Sequence[Comparison], household: Household, water: Water
) -> tuple[Aim, ...]:
    """The problems that a train is sought for: what is only possible is tested first."""
    found = []
    for problem in problems:
        if problem.certainty is Certainty.POSSIBLE or problem.code in TOLD:
            continue
        if problem.code == _AT_THE_PHYSICIAN and household.sodium_restricted is not True:
            continue
        targets = (*_from_limits(problem.code, comparisons, water), *_from_rules(problem.code, water, household))
        found.append(
            Aim(
                code=problem.code,
                title=problem.title,
                health=problem.kind is ProblemKind.HEALTH,
                optional=problem.code in OPTIONAL or problem.urgency is Urgency.OPTIONAL,
                place=places().get(problem.code, TAP),
                targets=targets,
                stages=answering(problem.code),
                barrier=problem.code in MICROBES or (bool(targets) and all(organism(one.analyte) for one in targets)),
            )
        )
    return tuple(found)


@cache
def answering(problem: str) -> frozenset[str]:
    """Stages that answer a problem."""
    return frozenset(code for code, codes in answers().items() if problem in codes)


@cache
def _catalogue_place(code: str) -> int:
    return practice.problem_index().get(code, -2)


def _from_limits(code: str, comparisons: Sequence[Comparison], water: Water) -> list[Target]:
    """The limits that the raw water does not surely keep. Of a range that an authority gives for taste or appearance,
    two rows in the tables, the upper end counts.
    """
    found: dict[tuple[str, str], Target] = {}
    for one in comparisons:
        if one.verdict is Verdict.WITHIN or not one.condition_settled or one.amount is None:
            continue
        if practice.problem_of(one.analyte, one.limit.kind.value, one.verdict.value) != _catalogue_place(code):
            continue
        limit = one.limit
        low = -inf if limit.canonical_minimum is None else limit.canonical_minimum
        high = inf if limit.canonical_maximum is None else limit.canonical_maximum
        if high <= 0.0 or (one.amount.high == inf and one.analyte not in water.amounts):
            continue  # absence is the barrier's; a sum with a member that was not measured judges no train
        parts = tuple(name for name in (part.split(":")[0] for part in limit.members) if name in water.amounts)
        text = f"{limit.term} of {limit.authority}"
        amount = (one.amount.low, one.amount.high)
        target = Target(one.analyte, low, high, text, amount, parts if one.analyte not in water.amounts else ())
        # A limit on a class holds for each of its members.
        key = (limit.id if limit.kind is LimitKind.HEALTH else limit.authority, one.analyte)
        if key not in found or target.maximum > found[key].maximum:
            found[key] = target
    return list(found.values())


def _from_rules(code: str, water: Water, household: Household) -> list[Target]:
    """The thresholds of practice that the raw water is surely beyond."""
    found = []
    for row in practice.by("rules", "problem").get(code, ()):
        amount = water.get(row["analyte"])
        if amount is None or row["certainty"] == Certainty.POSSIBLE.value:
            continue
        if row["when"] == "infants?" and household.infants is not True:
            continue
        above, below = practice.number(row["above"]), practice.number(row["below"])
        if above is not None and above > 0.0 and amount[0] > above:
            found.append(Target(row["analyte"], -inf, above, row["text"]))
        elif below is not None and amount[1] < below:
            found.append(Target(row["analyte"], below, inf, row["text"]))
    return found


def kept(target: Target, raw: Water, water: Water) -> bool | None:
    """Whether a water keeps a target: at its worst end (True), at no end (False), or not to be told (None)."""
    amount = water.get(target.analyte)
    if target.parts and target.amount is not None:
        amount = _scaled(target, raw, water)
    if amount is None:
        return None
    if amount[0] > target.maximum or amount[1] < target.minimum:
        return False
    return True if amount[1] <= target.maximum and amount[0] >= target.minimum else None


def _scaled(target: Target, raw: Water, water: Water) -> Ends:
    """A limit over several analytes: the share of it that is left lies between those of its members."""
    assert target.amount is not None
    shares = []
    for name in target.parts:
        (low, high), (left_low, left_high) = raw.amounts[name], water.amounts[name]
        shares.append((left_low / low if low > 0.0 else 0.0, left_high / high if 0.0 < high < inf else 1.0))
    least, most = min(low for low, _ in shares), max(high for _, high in shares)
    return target.amount[0] * least, target.amount[1] * most


def outcome(aim: Aim, train: Sequence[str], raw: Water, at: Mapping[str, Water]) -> Outcome:
    """What a train makes of a problem. `at` gives the water where a problem's water is drawn, by place."""
    working = aim.stages.intersection(train)
    if aim.barrier:
        return Outcome.CLEARED if working else Outcome.UNANSWERED
    water = at[aim.place]
    states = [kept(target, raw, water) for target in aim.targets]
    if aim.place == ENTRY:
        # What the plumbing gives behind the entry follows the water's corrosiveness: a test decides, no prediction.
        pairs = zip(states, aim.targets, strict=True)
        states = [None if target.analyte in plumbing_metals() else state for state, target in pairs]
    if aim.health and aim.place == TAP and not working:
        # What brings it down by the way, a softener say, is not kept for it: people leave the drinking tap past it.
        return Outcome.UNANSWERED
    if states and all(state is True for state in states):
        return Outcome.CLEARED
    if not working or any(state is False for state in states):
        return Outcome.UNANSWERED
    return Outcome.UNTOLD
