"""Checks and problems of many samples at once: a row per sample and check, or problem."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date, timedelta
from typing import TYPE_CHECKING

import numpy as np
import pandas as pd

from wellchem import limits as limits_room
from wellchem import schema
from wellchem.interpretation import table, verdicts
from wellchem.interpretation.checking import STATUSES, outcomes
from wellchem.interpretation.practice import problem_index, rows
from wellchem.interpretation.practice import problems as catalogue
from wellchem.interpretation.verdicts import AHEAD, BEYOND
from wellchem.interpretation.waters import Waters, dates_of_frames, day_hours
from wellchem.interpretation.weighing import CERTAINTIES, NONE, URGENCIES, beyond, find
from wellchem.models.household import Household

if TYPE_CHECKING:
    from wellchem.limits import LimitTable

_NEEDED = ("sample", "analyte", "fraction", "censoring", "low", "high", "qualifiers", "assumptions", "measured", "role")


def _waters(
    frame: pd.DataFrame,
    samples: pd.DataFrame | None,
    authorities: Iterable[str],
    on: date | str | None,
    household: Household | None,
    limits: LimitTable | Iterable[LimitTable] | None,
) -> tuple[Waters, list[str]]:
    """All that the rules look at, and the names of the limits by the codes of the verdicts."""
    schema.check(frame, "results", _NEEDED)
    if samples is not None:
        schema.check(samples, "samples", ("sample", "collected"))
    compared = limits_room.compare(frame, authorities, on, household, limits)
    results = table.from_frame(frame)
    dates = dates_of_frames(frame, samples, results)
    # By the law of its day or of another: how old a report is, is told from the date meant, or from today.
    day = np.full(results.size, day_hours(on if isinstance(on, date) else date.today()))
    latest = float(np.nan_to_num(dates.collected.low, nan=0.0).max(initial=0.0))
    undated = bool(np.isnan(dates.collected.low).any())
    last = date(1970, 1, 1) + timedelta(hours=latest) if on == "collected" and not undated else _day(on)
    waters = Waters(
        table=results,
        verdicts=verdicts.from_frame(compared, results.keys, last),
        dates=dates,
        day=day,
        household=household or Household(),
    )
    return waters, [str(name) for name in table.codes(compared["limit"])[1]]


def _day(on: date | str | None) -> date:
    return on if isinstance(on, date) else date.today()


def checks(
    frame: pd.DataFrame,
    samples: pd.DataFrame | None = None,
    authorities: Iterable[str] = ("us-epa",),
    on: date | str | None = None,
    household: Household | None = None,
    limits: LimitTable | Iterable[LimitTable] | None = None,
) -> pd.DataFrame:
    """Checks of every sample of a results frame.

    Parameters
    ----------
    frame : frame of results (wellchem.schema)
    samples : frame of samples, or None
        Dates of receipt and analysis; without it holding times cannot be judged.
    authorities, on, household, limits
        As in `interpret`.

    Returns
    -------
    frame of checks (wellchem.schema)
        A row per sample and check, samples in the order of their keys' first categories. Each sample stands by itself:
        its blanks, its duplicates and the well's other samples are weighed by `interpret(reports=)`.

    Raises
    ------
    FrameError
        Where a frame lacks a column.
    UnknownAuthority
        Where the limits of an authority are not known.
    """
    waters, _ = _waters(frame, samples, authorities, on, household, limits)
    found = outcomes(waters)
    size, texts = waters.size, {row["code"]: [row[status.value] for status in STATUSES] for row in rows("checks")}
    sentences = list(dict.fromkeys(text for group in texts.values() for text in group))
    place = {text: index for index, text in enumerate(sentences)}
    units = list(dict.fromkeys(outcome.unit for outcome in found.values()))
    status = np.stack([outcome.status for outcome in found.values()])
    text = np.stack([np.array([place[one] for one in texts[code]])[found[code].status] for code in found])
    unit = np.repeat([units.index(outcome.unit) for outcome in found.values()], size).reshape(len(found), size)
    data = {
        "sample": _categorical(np.tile(np.arange(size), (len(found), 1)), waters.table.keys),
        "code": _categorical(np.repeat(np.arange(len(found)), size).reshape(len(found), size), list(found)),
        "status": _categorical(status, [one.value for one in STATUSES]),
        "low": np.stack([outcome.low for outcome in found.values()]).T.ravel(),
        "high": np.stack([outcome.high for outcome in found.values()]).T.ravel(),
        "unit": _categorical(unit, units),
        "text": _categorical(text, sentences),
    }
    return schema.conform("checks", data, size * len(found))


def _categorical(codes: np.ndarray, words: Iterable[object]) -> pd.Categorical[str]:
    """Codes by check and sample as a column, a sample's rows together."""
    return pd.Categorical.from_codes(np.asarray(codes).T.ravel(), categories=pd.Index([str(word) for word in words]))


def problems(
    frame: pd.DataFrame,
    samples: pd.DataFrame | None = None,
    authorities: Iterable[str] = ("us-epa",),
    on: date | str | None = None,
    household: Household | None = None,
    limits: LimitTable | Iterable[LimitTable] | None = None,
) -> pd.DataFrame:
    """Problems of every sample of a results frame: takes and raises what `checks` does.

    Each sample stands by itself. What is in a blank does not lower a certainty here, a second sample of the same well
    does not make a problem certain, nor does one of another day show what this one lacks: no column says which blank
    belongs to which sample. `interpret(sample, reports=)` weighs them, one well at a time.

    Returns
    -------
    frame of problems (wellchem.schema)
        A row per sample and problem found; `evidence` names the limits beyond which results lie, or that cannot be
        judged, and the thresholds of practice as `practice:analyte`.
    """
    waters, limit_names = _waters(frame, samples, authorities, on, household, limits)
    found = find(waters)
    sample, problem = np.nonzero(found.certainty.T > NONE)
    certainty = found.certainty[problem, sample]
    data = {
        "sample": pd.Categorical.from_codes(sample, categories=pd.Index([str(key) for key in waters.table.keys])),
        "code": pd.Categorical.from_codes(problem, categories=pd.Index([row.code for row in catalogue()])),
        "kind": pd.Categorical([row.kind for row in catalogue()])[problem],
        "certainty": pd.Categorical.from_codes(certainty - 1, categories=pd.Index([str(word) for word in CERTAINTIES])),
        "urgency": pd.Categorical.from_codes(
            found.urgency[problem, sample], categories=pd.Index([str(word) for word in URGENCIES])
        ),
        "evidence": _evidence(waters, limit_names, sample, problem),
    }
    return schema.conform("problems", data, len(sample))


def _evidence(
    waters: Waters, limit_names: Sequence[str], sample: np.ndarray, problem: np.ndarray
) -> pd.Categorical[str]:
    """Limits and thresholds that each problem rests on, one text per distinct set."""
    made = waters.verdicts
    count = len(catalogue())
    names = {name: place for place, name in enumerate(limit_names)}
    pairs = sample * count + problem
    hit = np.flatnonzero(made.counts & np.isin(made.state, (BEYOND, AHEAD)) | made.untold)
    key, word = [made.sample[hit] * count + made.problem[hit]], [made.limit[hit]]
    for row in rows("rules"):
        where = np.flatnonzero(beyond(row, waters))
        place = names.setdefault(f"practice:{row['analyte']}", len(names))
        key.append(where * count + problem_index()[row["problem"]])
        word.append(np.full(len(where), place))
    keys, words = np.concatenate(key), np.concatenate(word)
    kept = np.isin(keys, pairs)
    keys, words = keys[kept], words[kept]
    both = np.sort(keys * len(names) + words)
    both = both[np.diff(both, prepend=-1) > 0]
    keys, words = both // len(names), both % len(names)
    start = np.searchsorted(keys, pairs, side="left")
    length = np.searchsorted(keys, pairs, side="right") - start
    # Runs of words are told apart word by word: a code stands for what has been read of a run so far.
    run, runs = np.zeros(len(pairs), dtype=np.int64), [""]
    spelled = list(names)
    for position in range(int(length.max(initial=0))):
        longer = np.flatnonzero(length > position)
        step = run[longer] * len(spelled) + words[start[longer] + position]
        codes, distinct = pd.factorize(step)
        run[longer] = codes + len(runs)
        runs += [f"{runs[old // len(spelled)]};{spelled[old % len(spelled)]}".lstrip(";") for old in distinct.tolist()]
    return pd.Categorical.from_codes(run, categories=pd.Index(runs, dtype="str")).remove_unused_categories()
