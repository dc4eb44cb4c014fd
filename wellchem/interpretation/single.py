"""One sample with all that was concluded of it, and which of its results and limits raise a problem."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from wellchem.interpretation.beside import Beside
from wellchem.interpretation.conditions import holds
from wellchem.interpretation.practice import by, problem_index, problems
from wellchem.interpretation.signs import SIGNS
from wellchem.interpretation.table import Bools
from wellchem.interpretation.verdicts import AHEAD, BEYOND, UNDECIDED
from wellchem.interpretation.waters import Waters
from wellchem.interpretation.weighing import POSSIBLE, Findings, beyond
from wellchem.models.limits import Comparison
from wellchem.models.sample import Sample


@dataclass(frozen=True, eq=False)
class Single:
    """A sample with all that was concluded of it so far, what else its report holds, and the well's other samples."""

    sample: Sample
    comparisons: tuple[Comparison, ...]
    waters: Waters
    findings: Findings  # with what the other samples say of it
    alone: Findings  # by itself
    beside: Beside
    others: tuple[Single, ...] = ()  # each by itself

    def results(self, analytes: Iterable[str]) -> tuple[int, ...]:
        """Places in the sample of the usable results of some analytes."""
        table = self.waters.table
        found = [place for analyte in analytes for place in table.usable(analyte).tolist()]
        return tuple(dict.fromkeys(self._order[place] for place in found))

    def source_rows(self, places: Iterable[int]) -> tuple[int, ...]:
        """Places in the sample of rows of the table."""
        return tuple(dict.fromkeys(self._order[place] for place in places if place >= 0))

    @cached_property
    def _order(self) -> list[int]:
        order: list[int] = self.waters.table.order.tolist()
        return order

    def certainty(self, code: str) -> int:
        """How sure a problem is, as a number."""
        return int(self.findings.certainty[problem_index()[code], 0])

    @cached_property
    def signs(self) -> Mapping[str, Bools]:
        """Signs of treatment and origin by their code."""
        return {code: test(self.waters) for code, test in SIGNS.items()}

    @cached_property
    def present(self) -> Mapping[str, Bools]:
        """Problems that are likely or certain, and signs, by the words of the tables' conditions."""
        found = {f"problem:{row.code}": sure for row, sure in zip(problems(), self._sure, strict=True)}
        return found | {f"sign:{code}": sign for code, sign in self.signs.items()}

    @property
    def _sure(self) -> Bools:
        return np.asarray(self.findings.certainty > POSSIBLE, dtype=bool)

    def ahead_only(self, code: str) -> bool:
        """Whether a problem rests on a limit enacted for later alone."""
        if not self.deciding(code, AHEAD) or self.deciding(code, BEYOND):
            return False
        return not any(fired(self, row) for row in by("rules", "problem").get(code, ()))

    def untold_only(self, code: str) -> bool:
        """Whether a problem is only possible, because a result cannot be judged."""
        return self.certainty(code) == POSSIBLE and bool(self.deciding(code, UNDECIDED))

    def elsewhere(self, code: str) -> bool:
        """Whether only another sample of the well shows a problem."""
        alone = int(self.alone.of(code)[0])
        return alone <= POSSIBLE and self.certainty(code) > alone

    def deciding(self, code: str, state: int) -> tuple[int, ...]:
        """Comparisons that raise a problem: decided ones (BEYOND), or those that a result leaves open (UNDECIDED)."""
        return tuple(self._raising.get((problem_index()[code], state), ()))

    @cached_property
    def _raising(self) -> Mapping[tuple[int, int], Sequence[int]]:
        """Places of the comparisons that raise each problem, in each state."""
        verdicts = self.waters.verdicts
        raising: dict[tuple[int, int], list[int]] = {}
        meant = verdicts.untold | (verdicts.counts & (verdicts.state != UNDECIDED))
        for place in np.flatnonzero(meant).tolist():
            raising.setdefault((int(verdicts.problem[place]), int(verdicts.state[place])), []).append(place)
        return raising


def fired(single: Single, row: Mapping[str, str]) -> bool:
    """Whether a threshold of practice is passed in this sample."""
    return bool(beyond(row, single.waters)[0]) and bool(holds(row["when"], single.waters)[0][0])
