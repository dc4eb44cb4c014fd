"""Checks of one sample against what else its report holds: duplicates, blanks, other samples of the well."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from wellchem.interpretation import beside, checks_report, wording
from wellchem.interpretation.checks_sums import FAIL, NOT_POSSIBLE, PASS, WARN, Outcome
from wellchem.interpretation.others import differing
from wellchem.interpretation.single import Single
from wellchem.interpretation.waters import Waters
from wellchem.models.sample import Result

_UNTOLD = "Whether other samples of the report are of the same well it does not say: ask, and name the site of each."


def nothing(waters: Waters) -> Outcome:
    """Of samples in a frame: each stands by itself."""
    status, blank = np.full(waters.size, NOT_POSSIBLE, dtype=np.int8), np.full(waters.size, np.nan)
    return Outcome(status, blank, blank)


def _outcome(status: int, said: Iterable[str] = (), places: Iterable[int] = (), figure: float = np.nan) -> Outcome:
    return Outcome(
        np.array([status], dtype=np.int8),
        np.array([figure]),
        np.array([figure]),
        "%",
        "relative difference",
        said=tuple(dict.fromkeys(said)),
        places=tuple(dict.fromkeys(places)),
    )


def duplicates(single: Single) -> Outcome:
    """Two results of one analyte in the sample, and the results of its duplicates."""
    own = checks_report.duplicates(single.waters)
    found = list(beside.pairs(single.sample, single.beside.duplicates))
    if not found:
        return own
    apart = [beside.contrary(single.sample.results[place], other) for place, other in found]
    worst = max(apart)
    status = FAIL if worst > 2.0 else WARN if worst > 1.0 else PASS
    figures = [beside.difference(single.sample.results[place], other)[0] for place, other in found]
    shown = [pair for pair, far in zip(found, apart, strict=True) if far > 1.0] or found[:3]
    said = [f"{_both(single.sample.results[place], other)} in a duplicate" for place, other in shown]
    own_status = int(own.status[0])
    if own_status not in (NOT_POSSIBLE, PASS) and own_status > status:
        return own
    return _outcome(status, said, (place for place, _ in shown), max(figures))


def _both(one: Result, other: Result) -> str:
    return f"{wording.result(one)} here and {wording.result(other)}"


def blanks(single: Single) -> Outcome:
    """What blanks hold of what the sample holds: a little of it puts the sample's result in doubt."""
    if not single.beside.blanks:
        return nothing(single.waters)
    status, said, places = PASS, [], []
    for place, one in enumerate(single.sample.results):
        blank = beside.in_a_blank(one, single.beside.blanks) if beside.found(one) else None
        if blank is None:
            continue
        doubtful = beside.blank_explains(one, blank)
        status = max(status, FAIL if doubtful else WARN)
        places.append(place)
        said.append(f"{_both(one, blank)} in a blank{' (in doubt)' if doubtful else ''}")
    return _outcome(status, said, places)


def other_samples(single: Single) -> Outcome:
    """Verdicts on health limits against those of the other samples of the well."""
    if not single.beside.samples:
        return _outcome(NOT_POSSIBLE, [_UNTOLD] if single.beside.untold else ())
    alike, apart = differing(single)
    if not (alike or apart):
        return _outcome(NOT_POSSIBLE, ["None has a verdict on what was judged here."])
    return _outcome(WARN if apart else PASS, apart or alike)
