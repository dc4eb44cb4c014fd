"""What a report names without telling enough of it to be judged."""

from __future__ import annotations

from math import isfinite

import numpy as np

from wellchem.interpretation.coming import coming
from wellchem.interpretation.practice import feared, problems
from wellchem.interpretation.single import Single
from wellchem.interpretation.table import Bools
from wellchem.interpretation.verdicts import UNDECIDED
from wellchem.interpretation.weighing import POSSIBLE
from wellchem.models.codes import Censoring
from wellchem.models.limits import Comparison


def untold_limits(single: Single) -> tuple[Comparison, ...]:
    """Comparisons with a health limit, or with a goal that a health limit is enacted for later beside, that this report
    leaves open though what they ask for was measured."""
    verdicts = single.waters.verdicts
    open_ones = verdicts.counts & (verdicts.state == UNDECIDED) & ~verdicts.incomplete
    places = np.flatnonzero(verdicts.untold & verdicts.health & ~verdicts.incomplete & ~settled(single))
    goals = (place for place in np.flatnonzero(open_ones & verdicts.goal) if _open_later(single, int(place)))
    return tuple(single.comparisons[place] for place in (*places, *goals))


def _open_later(single: Single, place: int) -> bool:
    """Whether a limit that is enacted for later, where only a goal is in force, may be passed."""
    item = single.comparisons[place]
    if not item.later or item.amount is None or item.on is None:
        return False
    limit = coming(item.analyte, item.limit.authority, item.limit.id, item.on)
    return limit is not None and limit.canonical_maximum is not None and item.amount.high > limit.canonical_maximum


def settled(single: Single) -> Bools:
    """Comparisons of an amount that another result bounds, where the problem is decided without it."""
    verdicts = single.waters.verdicts
    decided = np.array([single.certainty(row.code) > POSSIBLE for row in problems()], dtype=bool)
    return np.asarray(verdicts.derived & decided[verdicts.problem])


def unbounded(single: Single) -> frozenset[str]:
    """What people fear and the report names without saying anything of its amount: not reported, or not found without
    a number. Such a row must not pass for a result, whatever limits are in force."""
    results = [one for one in single.sample.results if one.analyte in feared()]
    bounded = {
        one.analyte
        for one in results
        if one.censoring in (Censoring.PRESENT, Censoring.ABSENT)
        or (one.low is not None and one.low > 0.0)
        or (one.high is not None and isfinite(one.high))
    }
    return frozenset(one.analyte for one in results) - bounded
