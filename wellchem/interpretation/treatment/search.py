"""The train is found: the smallest ordered set of stages whose predicted water clears the problems.

Stages keep the trade's order, so a train is a set. Sets are walked stage by stage, each prefix predicted once; a branch
is left where it can no longer be better than what was found.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from wellchem.interpretation.treatment import feed
from wellchem.interpretation.treatment.aims import Aim, Outcome, outcome
from wellchem.interpretation.treatment.prediction import predict
from wellchem.interpretation.treatment.tables import BEHIND, ENTRY, ORGANISMS, TAP, StageKind, removal, stages
from wellchem.interpretation.treatment.water import Water

_MORE_PIECES = 3  # a runner-up may be that much larger
_CHANGES_PH = ("neutralise", "neutralise_blend", "soda_ash", "aerate")


@dataclass(frozen=True)
class Score:
    """How good a train is, the most weighty first; less is better."""

    health_unanswered: int
    health_untold: int
    other_unanswered: int
    other_untold: int
    pieces: int
    preference: int
    conditions_untold: int

    @property
    def key(self) -> tuple[int, ...]:
        """For comparison."""
        return (*self.answered, self.pieces, self.preference, self.conditions_untold)

    @property
    def answered(self) -> tuple[int, ...]:
        """What it leaves of the problems."""
        return (self.health_unanswered, self.health_untold, self.other_unanswered, self.other_untold)


@dataclass(frozen=True)
class Train:
    """A set of stages in order, with the water behind each and what it makes of each problem."""

    stages: tuple[str, ...]
    waters: tuple[Water, ...]
    outcomes: tuple[Outcome, ...]
    score: Score

    def left(self, aims: Sequence[Aim], state: Outcome) -> list[Aim]:
        """Problems with one outcome."""
        return [aim for aim, found in zip(aims, self.outcomes, strict=True) if found is state]


def candidates(aims: Sequence[Aim], raw: Water) -> tuple[StageKind, ...]:
    """Stages that answer a problem, and those that bring about a feed condition which does not hold in the raw water."""
    chosen = {code for aim in aims for code in aim.stages}
    pending = list(chosen)
    while pending:
        stage = pending.pop()
        for condition in feed.failing(stage, raw):
            for helper in _helpers(stage, condition.amounts):
                if helper not in chosen:
                    chosen.add(helper)
                    pending.append(helper)
    return tuple(kind for code, kind in stages().items() if code in chosen)


def _helpers(stage: str, amounts: Sequence[str]) -> list[str]:
    """Stages ahead of a stage that change what its condition looks at."""
    word = amounts[0]
    if word.startswith(BEHIND):
        return [word.removeprefix(BEHIND)]
    ahead = [kind for kind in stages().values() if kind.order < stages()[stage].order and kind.place == ENTRY]
    if word == ORGANISMS:
        return [kind.code for kind in ahead if kind.disinfects]
    if word == "ph":
        return [kind.code for kind in ahead if kind.process in _CHANGES_PH[:-1]]
    return [kind.code for kind in ahead if any(_lowers(kind.code, name) for name in amounts)]


def _lowers(stage: str, analyte: str) -> bool:
    row = removal(stage, analyte)
    return row is not None and row.most > 0.0


def search(aims: Sequence[Aim], raw: Water) -> tuple[Train, Train | None]:
    """The best train and the runner-up: the next best that does not merely add to it. Without problems no stage."""
    walk = _Walk(tuple(aims), raw, candidates(aims, raw))
    walk.step(0, (), (), 0)
    found = sorted(walk.found, key=lambda train: train.score.key)
    best = found[0]
    chosen = _with_options(best, found, aims)
    second = next((train for train in found[1:] if not set(best.stages) <= set(train.stages)), None)
    return chosen, second if second is not None and second.stages else None


def _with_options(best: Train, found: Sequence[Train], aims: Sequence[Aim]) -> Train:
    """The smallest train that holds the best one, answers no less, and meets what is a matter of choice as well."""

    def unmet(train: Train) -> tuple[int, ...]:
        return tuple(state for aim, state in zip(aims, train.outcomes, strict=True) if aim.optional)

    larger = [
        train
        for train in found
        if set(best.stages) <= set(train.stages) and train.score.answered <= best.score.answered
    ]
    return min(larger, key=lambda train: (unmet(train), train.score.key))


@dataclass
class _Walk:
    """The walk over sets of candidates, in order: each is taken or left."""

    aims: tuple[Aim, ...]
    raw: Water
    kinds: tuple[StageKind, ...]

    def __post_init__(self) -> None:
        self.found: list[Train] = []
        self._best: tuple[int, ...] | None = None
        codes = [kind.code for kind in self.kinds]
        self._later = [frozenset(codes[place:]) for place in range(len(codes) + 1)]

    def step(self, place: int, taken: tuple[str, ...], waters: tuple[Water, ...], untold: int) -> None:
        """Take or leave the candidate at a place."""
        if self._hopeless(place, taken):
            return
        if place == len(self.kinds):
            self._keep(taken, waters, untold)
            return
        kind, water = self.kinds[place], waters[-1] if waters else self.raw
        if self._admits(kind, taken):
            open_conditions = feed.untold(kind.code, water)
            if open_conditions is not None:
                behind = predict(kind.code, water)
                self.step(place + 1, (*taken, kind.code), (*waters, behind), untold + open_conditions)
        self.step(place + 1, taken, waters, untold)

    def _admits(self, kind: StageKind, taken: tuple[str, ...]) -> bool:
        """A train holds one of each group of alternatives."""
        return not kind.group or all(stages()[code].group != kind.group for code in taken)

    def _hopeless(self, place: int, taken: tuple[str, ...]) -> bool:
        """Whether nothing that can still be added makes this better than what was found, or worth a mention.

        A problem counts as lost when every stage that answers it was left.
        """
        if self._best is None:
            return False
        open_stages = self._later[place].union(taken)
        lost = [not aim.optional and not aim.stages & open_stages for aim in self.aims]
        health = sum(gone and aim.health for gone, aim in zip(lost, self.aims, strict=True))
        other = sum(gone and not aim.health for gone, aim in zip(lost, self.aims, strict=True))
        if (health, other) > (self._best[0], self._best[2]) and health >= self._best[0] and other >= self._best[2]:
            return True
        pieces = sum(stages()[code].pieces for code in taken)
        return pieces > self._best[4] + _MORE_PIECES + self._options

    @property
    def _options(self) -> int:
        return 2 if any(aim.optional for aim in self.aims) else 0

    def _keep(self, taken: tuple[str, ...], waters: tuple[Water, ...], untold: int) -> None:
        at_entry = self.raw
        for code, water in zip(taken, waters, strict=True):
            if stages()[code].place == ENTRY:
                at_entry = water
        at = {ENTRY: at_entry, TAP: waters[-1] if waters else self.raw}
        outcomes = tuple(outcome(aim, taken, self.raw, at) for aim in self.aims)
        counted = [(aim.health, state) for aim, state in zip(self.aims, outcomes, strict=True) if not aim.optional]
        score = Score(
            health_unanswered=sum(health and state is Outcome.UNANSWERED for health, state in counted),
            health_untold=sum(health and state is Outcome.UNTOLD for health, state in counted),
            other_unanswered=sum(not health and state is Outcome.UNANSWERED for health, state in counted),
            other_untold=sum(not health and state is Outcome.UNTOLD for health, state in counted),
            pieces=sum(stages()[code].pieces for code in taken),
            preference=sum(stages()[code].preference for code in taken),
            conditions_untold=untold,
        )
        self.found.append(Train(taken, waters, outcomes, score))
        if self._best is None or score.key < self._best:
            self._best = score.key
