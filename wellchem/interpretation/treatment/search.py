"""The train is found: the smallest ordered set of stages whose predicted water clears the problems.

Stages keep the trade's order, so a train is a set. Sets are walked stage by stage, each prefix predicted once; a branch
is left where it can no longer be better than what was found.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from wellchem.interpretation.treatment import feed
from wellchem.interpretation.treatment.aims import Aim, Outcome, outcome
from wellchem.interpretation.treatment.prediction import BALANCED, predict
from wellchem.interpretation.treatment.tables import (
    BEHIND,
    ENTRY,
    GRIT,
    ORGANISMS,
    TAP,
    StageKind,
    conditions,
    removal,
    stages,
)
from wellchem.interpretation.treatment.water import SPECIES, Water

_MORE_PIECES = 2  # a runner-up may be that much larger
_CHANGES_PH = ("neutralise", "neutralise_blend", "soda_ash", "aerate")


@dataclass(frozen=True)
class Score:
    """How good a train is, the most weighty first; less is better. `pieces` leaves out stages that
    serve what is a matter of choice; `choices_unmet` are such matters that the train does not meet."""

    health_unanswered: int
    health_untold: int
    other_unanswered: int
    other_untold: int
    pieces: int
    choices_unmet: int
    preference: int
    conditions_untold: int

    @property
    def key(self) -> tuple[int, ...]:
        """For comparison."""
        return (*self.answered, self.pieces, self.choices_unmet, self.preference, self.conditions_untold)

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
    """Stages that answer a problem, and those that bring about a feed condition that fails in the raw water."""
    chosen = {code for aim in aims for code in aim.stages}
    pending = list(chosen)
    while pending:
        stage = pending.pop()
        for condition in feed.failing(stage, raw):
            for enabling in _enabling(stage, condition.amounts):
                if enabling not in chosen:
                    chosen.add(enabling)
                    pending.append(enabling)
    return tuple(kind for code, kind in stages().items() if code in chosen)


def _enabling(stage: str, amounts: Sequence[str]) -> list[str]:
    """Stages ahead of a stage that change what its condition looks at."""
    word = amounts[0]
    if word.startswith(BEHIND):
        return [word.removeprefix(BEHIND)]
    ahead = [kind for kind in stages().values() if kind.order < stages()[stage].order and kind.place == ENTRY]
    if word == GRIT:
        return ["coarse_screen"]
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
    kinds = candidates(aims, raw)
    narrow = raw.of(_looked_at(aims, kinds))
    found = _walked(tuple(aims), narrow, kinds, strict=True)
    if not found or any(state is Outcome.UNANSWERED for state in found[0].outcomes):
        found = _walked(tuple(aims), narrow, kinds, strict=False)
    best = found[0]
    chosen = set(best.stages) - _by_choice(aims)
    second = next((train for train in found[1:] if not chosen <= set(train.stages)), None)
    return replace(best, waters=_waters(best.stages, raw)), second if second is not None and second.stages else None


def _by_choice(aims: Sequence[Aim]) -> frozenset[str]:
    """Stages that serve what is a matter of choice."""
    return frozenset(code for aim in aims if aim.optional for code in aim.stages)


def _working(aim: Aim, kinds: Sequence[StageKind]) -> frozenset[str]:
    """Stages that answer a problem, or lower what it is judged by ahead of where it is judged."""
    judged = {name for target in aim.targets for name in (target.analyte, *target.parts)}
    lowering = {
        kind.code
        for kind in kinds
        if (aim.place == TAP or kind.place == ENTRY) and any(_lowers(kind.code, name) for name in judged)
    }
    return aim.stages | (lowering if not aim.barrier else set())


def _waters(taken: Sequence[str], water: Water) -> tuple[Water, ...]:
    """The whole water behind each stage."""
    found = []
    for code in taken:
        water = predict(code, water)
        found.append(water)
    return tuple(found)


def _looked_at(aims: Sequence[Aim], kinds: Sequence[StageKind]) -> frozenset[str]:
    """Amounts on which anything depends in choosing a train."""
    targets = {name for aim in aims for one in aim.targets for name in (one.analyte, *one.parts)}
    fed = {name for kind in kinds for condition in conditions(kind.code) for name in condition.amounts}
    return frozenset(targets | fed | SPECIES | BALANCED)


def _walked(aims: tuple[Aim, ...], raw: Water, kinds: tuple[StageKind, ...], *, strict: bool) -> list[Train]:
    """Trains from the best on. A strict walk keeps to those with a stage for every problem that has one."""
    walk = _Walk(aims, raw, kinds, strict)
    walk.step(0, (), (), 0)
    return sorted(walk.found, key=lambda train: train.score.key)


@dataclass
class _Walk:
    """The walk over sets of candidates, in order: each is taken or left."""

    aims: tuple[Aim, ...]
    raw: Water
    kinds: tuple[StageKind, ...]
    strict: bool

    def __post_init__(self) -> None:
        self.found: list[Train] = []
        self._best: Score | None = None
        codes = [kind.code for kind in self.kinds]
        self._group = {kind.code: kind.group for kind in self.kinds}
        self._later = [frozenset(codes[place:]) for place in range(len(codes) + 1)]
        self._ideal = self._with_all(codes)
        self._by_choice = _by_choice(self.aims)
        self._working = [_working(aim, self.kinds) for aim in self.aims]

    def _with_all(self, codes: Sequence[str]) -> tuple[Outcome, ...]:
        """What no train can better: every candidate at once, whatever its feed conditions, on water that suits them."""
        water = replace(self.raw, oxidised=True, dissolved=dict.fromkeys(self.raw.dissolved, (1.0, 1.0)))
        return _outcomes(self.aims, tuple(codes), _waters(codes, water), self.raw)

    def step(self, place: int, taken: tuple[str, ...], waters: tuple[Water, ...], untold: int) -> None:
        """Leave or take the candidate at a place."""
        if place == len(self.kinds):
            self._keep(taken, waters, untold)
            return
        if not self._hopeless(place + 1, taken):
            self.step(place + 1, taken, waters, untold)
        kind, water = self.kinds[place], waters[-1] if waters else self.raw
        with_it = (*taken, kind.code)
        if self._admits(kind, taken) and not self._hopeless(place + 1, with_it):
            open_conditions = feed.untold(kind.code, water)
            if open_conditions is not None:
                self.step(place + 1, with_it, (*waters, predict(kind.code, water)), untold + open_conditions)

    def _admits(self, kind: StageKind, taken: tuple[str, ...]) -> bool:
        """A train holds one of each group of alternatives."""
        return not kind.group or all(self._group[code] != kind.group for code in taken)

    def _hopeless(self, place: int, taken: tuple[str, ...]) -> bool:
        """Whether nothing that can still be added makes this better than what was found, or worth a mention.

        A problem counts as lost when every stage that works on it was left, or shut out by an alternative.
        """
        open_stages = set(taken)
        shut = {self._group[code] for code in taken} - {""}
        open_stages.update(self._later[place] if not shut else self._not_shut(place, shut))
        lost = [bool(working) and working.isdisjoint(open_stages) for working in self._working]
        if self.strict and any(gone and not aim.optional for gone, aim in zip(lost, self.aims, strict=True)):
            return True
        if self._best is None:
            return False
        pairs = zip(lost, self._ideal, strict=True)
        bound = _left(self.aims, [Outcome.UNANSWERED if gone else state for gone, state in pairs])
        if bound > self._best.answered:
            return True
        # A larger train can only be better where it may leave less.
        return bound >= self._best.answered and self._pieces(taken) > self._best.pieces + _MORE_PIECES

    def _not_shut(self, place: int, shut: set[str]) -> Iterable[str]:
        """Candidates from a place on that are no alternative to one of these groups."""
        return (code for code in self._later[place] if self._group[code] not in shut)

    def _pieces(self, taken: Sequence[str]) -> int:
        return sum(stages()[code].pieces for code in taken if code not in self._by_choice)

    def _keep(self, taken: tuple[str, ...], waters: tuple[Water, ...], untold: int) -> None:
        outcomes = _outcomes(self.aims, taken, waters, self.raw)
        preference = sum(stages()[code].preference for code in taken)
        unmet = sum(aim.optional and state > 0 for aim, state in zip(self.aims, outcomes, strict=True))
        score = Score(*_left(self.aims, outcomes), self._pieces(taken), unmet, preference, untold)
        self.found.append(Train(taken, waters, outcomes, score))
        if self._best is None or score.key < self._best.key:
            self._best = score


def _outcomes(
    aims: Sequence[Aim], taken: tuple[str, ...], waters: tuple[Water, ...], raw: Water
) -> tuple[Outcome, ...]:
    """What a train makes of each problem."""
    at_entry = raw
    for code, water in zip(taken, waters, strict=True):
        if stages()[code].place == ENTRY:
            at_entry = water
    at = {ENTRY: at_entry, TAP: waters[-1] if waters else raw}
    return tuple(outcome(aim, taken, raw, at) for aim in aims)


def _left(aims: Sequence[Aim], outcomes: Sequence[Outcome]) -> tuple[int, int, int, int]:
    """Problems of health and others that are unanswered or untold; what is a matter of choice is not counted."""
    counts = [0, 0, 0, 0]
    for aim, state in zip(aims, outcomes, strict=True):
        if state and not aim.optional:
            counts[(0 if aim.health else 2) + (state is Outcome.UNTOLD)] += 1
    return counts[0], counts[1], counts[2], counts[3]
