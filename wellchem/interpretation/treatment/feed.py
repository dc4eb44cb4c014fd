"""Feed conditions of a stage, held against the water predicted where it stands."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from enum import IntEnum
from math import inf

from wellchem.interpretation.treatment.tables import BEHIND, GRIT, ORGANISMS, SITE, Condition, Ends, conditions
from wellchem.interpretation.treatment.water import Organisms, Water
from wellchem.models.base import Interval
from wellchem.models.finding import FeedCondition


class Holds(IntEnum):
    """Whether a condition holds at a point of the train."""

    HOLDS = 0
    UNTOLD = 1
    FAILS = 2

    @property
    def text(self) -> str:
        """As it is shown."""
        return ("holds", "cannot be told", "does not hold")[self]


def _sum(water: Water, amounts: Sequence[str]) -> Ends | None:
    """Bounds of a sum; what was not measured leaves it open above, and of nothing measured nothing is known."""
    known = [water.amounts[name] for name in amounts if name in water.amounts]
    if not known:
        return None
    low = sum(ends[0] for ends in known)
    return low, sum(ends[1] for ends in known) if len(known) == len(amounts) else inf


def holds(condition: Condition, water: Water) -> tuple[Holds, Ends | None]:
    """Whether a condition holds in a water, and the amount that it was held against."""
    word = condition.amounts[0]
    if word == ORGANISMS:
        if water.organisms is Organisms.FOUND:
            return Holds.FAILS, None
        return (Holds.UNTOLD if water.organisms is Organisms.UNTOLD else Holds.HOLDS), None
    if word.startswith(SITE):
        return Holds.UNTOLD, None
    if word == GRIT:
        if "coarse_screen" in water.passed:
            return Holds.HOLDS, None
        return (Holds.UNTOLD if water.grit is None else Holds.FAILS if water.grit else Holds.HOLDS), None
    if word.startswith(BEHIND):
        return (Holds.HOLDS if word.removeprefix(BEHIND) in water.passed else Holds.FAILS), None
    amount = _sum(water, condition.amounts) or condition.supposed
    if amount is None:
        return Holds.UNTOLD, None
    if amount[0] > condition.maximum or amount[1] < condition.minimum:
        return Holds.FAILS, amount
    within = amount[1] <= condition.maximum and amount[0] >= condition.minimum
    return (Holds.HOLDS if within else Holds.UNTOLD), amount


def asked(stage: str, water: Water) -> Iterable[Condition]:
    """Conditions that a stage asks of a water: where organisms were found, a barrier goes before by-products."""
    found = water.organisms is Organisms.FOUND
    return (one for one in conditions(stage) if not (found and one.unless == ORGANISMS))


def untold(stage: str, water: Water) -> int | None:
    """How many conditions of a stage cannot be told in a water; None where one does not hold."""
    count = 0
    for condition in asked(stage, water):
        state, _ = holds(condition, water)
        if state is Holds.FAILS:
            return None
        count += state is Holds.UNTOLD
    return count


def failing(stage: str, water: Water) -> Iterable[Condition]:
    """Conditions of a stage that do not hold in a water."""
    return (condition for condition in asked(stage, water) if holds(condition, water)[0] is Holds.FAILS)


def shown(stage: str, water: Water) -> tuple[FeedCondition, ...]:
    """Every condition of a stage with what was predicted where it stands."""
    found = []
    for condition in asked(stage, water):
        state, amount = holds(condition, water)
        interval = None if amount is None else Interval(low=amount[0], high=amount[1])
        text = condition.text
        if condition.amounts[0] == ORGANISMS and water.organisms is Organisms.DISINFECTED:
            text = f"{text}. It rests on the disinfection ahead, and on tests behind that"
        elif condition.amounts[0] == ORGANISMS and state is Holds.HOLDS:
            text = f"{text}. None were found in this sample, which is one moment; test again before it is built"
        elif condition.supposed is not None and amount is condition.supposed:
            text = f"{text}. Not measured; what the water of a well usually has was taken"
        found.append(FeedCondition(text=text, status=state.text, amount=interval, source=condition.source))
    return tuple(found)
