"""Problems and signs of one sample with their evidence: which printed cells and which limits each rests on."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

import numpy as np

from wellchem.interpretation import others, wording
from wellchem.interpretation.amounts import DERIVED
from wellchem.interpretation.checks_report import implausible
from wellchem.interpretation.conditions import holds
from wellchem.interpretation.practice import by, level, problem_index, problems, rows, source
from wellchem.interpretation.signs import INPUTS, LIKELY
from wellchem.interpretation.single import Single, fired
from wellchem.interpretation.table import IN_DOUBT
from wellchem.interpretation.verdicts import AHEAD, BEYOND, UNDECIDED
from wellchem.interpretation.weighing import CERTAINTIES, NONE, POSSIBLE, URGENCIES
from wellchem.models.codes import Certainty, ProblemKind
from wellchem.models.finding import Caution, Evidence, Problem, Sign
from wellchem.models.household import Household

_NOT_TOLD = "This report cannot tell; a further test has to. "
_UNTOLD_TITLE = "{subject} (this report cannot tell)"
_ELSEWHERE = "This sample does not show it, another of the same well does. "
_ELSEWHERE_TITLE = "{subject} (found in another sample of this well)"
_AHEAD_TITLE = "{subject} (within today's limit, above one that is enacted for later)"


def _evidence(single: Single, code: str) -> Iterable[Evidence]:
    certainty = single.certainty(code)
    for state in (BEYOND, AHEAD, UNDECIDED) if certainty > POSSIBLE else (BEYOND, UNDECIDED):
        for place in single.deciding(code, state):
            item = single.comparisons[place]
            if state == UNDECIDED and item.limit.kind != "health":
                continue
            ahead = f", but above what it has enacted: {item.later}" if state == AHEAD else ""
            ahead = f"; enacted {item.later}" if state == BEYOND and item.later else ahead
            yield Evidence(text=f"{wording.comparison(item)}{ahead}.", results=item.results, comparisons=(place,))
    for row in by("rules", "problem").get(code, ()):
        if fired(single, row):
            analytes = single.waters.worked(row["analyte"]).inputs if row["analyte"] in DERIVED else (row["analyte"],)
            yield Evidence(text=row["text"], results=single.results(analytes), source=source(row))
    for row in by("observations", "problem").get(code, ()):
        disproved = bool(row["disproved_by"]) and bool(holds(row["disproved_by"], single.waters)[0][0])
        if single.waters.observed(row["observation"]) and not disproved:
            yield Evidence(text=f"Noticed: {row['text']}")
    if code == "flooded_well":
        yield Evidence(text=_flooded(single.waters.household))
    if code in ("surface_connection", "corrosive_metals"):
        yield from _together(single, code)
    yield from _doubts(single, code)
    for row in rows("interactions"):
        needed = row["problems"].split(";")
        if code in needed and all(_stands(single, other) for other in needed):
            yield Evidence(text=row["text"], source=source(row))


def _doubts(single: Single, code: str) -> Iterable[Evidence]:
    """What blanks, duplicates and the range of ground water leave in doubt, and what other samples of the well say."""
    names = {single.comparisons[place].analyte for place in single.deciding(code, BEYOND)}
    names |= {row["analyte"] for row in by("rules", "problem").get(code, ()) if fired(single, row)}
    table = single.waters.table
    for place in np.flatnonzero(table.flags & IN_DOUBT):
        read = int(table.order[place])
        one = single.sample.results[read]
        if one.analyte in names:
            text = f"In doubt: a blank of the report or a duplicate does not bear out {wording.result(one)}."
            yield Evidence(text=text, results=(read,))
    for name in sorted(names):
        if bool(implausible(single.waters, name)[0]):
            slip = "is out of the range of ground water: a slip of units is likely. Ask the laboratory."
            yield Evidence(text=f"{wording.title(name)} {slip}", results=single.results((name,)))
    yield from others.evidence(single, code)


def _stands(single: Single, word: str) -> bool:
    """Whether a problem is likely or certain, or a sign (`sign:x`) is seen."""
    kind, _, sign = word.partition(":")
    return bool(single.signs[sign][0]) if kind == "sign" else single.certainty(word) > POSSIBLE


_RESTS_ON = {
    "surface_connection": ("fecal_bacteria", "coliform_bacteria"),
    "corrosive_metals": ("lead", "copper", "low_ph", "corrosive_water"),
}


def _flooded(home: Household) -> str:
    """What is said of the flood."""
    when = f", last on {home.flooded.isoformat()}" if isinstance(home.flooded, date) else "; when is not said"
    return f"The well is said to have been under water{when}."


def _together(single: Single, code: str) -> Iterable[Evidence]:
    """What a problem that several make rests on: the results and limits of the others, and the well."""
    home = single.waters.household
    if code == "surface_connection":
        depth = float(single.waters.depth[0])
        told = (
            (home.surface_influenced is True, "The well is said to be under the influence of surface water."),
            (bool(home.flooded), _flooded(home)),
            (home.well_cap_sound is False, "The well cap is not sound."),
            (home.bacteria_return is True, "Bacteria were found again after the well was disinfected."),
            (home.bacteria_after_rain is True, "Bacteria are found after rain or thaw."),
            (depth <= level("shallow_well_depth"), f"The well is shallow: {depth:g} m."),
            (home.well_type is not None, f"The well: {home.well_type}."),
        )
        yield from (Evidence(text=text) for holds_so, text in told if holds_so)
    for other in _RESTS_ON[code]:
        if single.certainty(other) > POSSIBLE:
            limits = single.deciding(other, BEYOND)
            read = [place for limit in limits for place in single.comparisons[limit].results]
            read += single.results(
                row["analyte"] for row in by("rules", "problem").get(other, ()) if fired(single, row)
            )
            title = problems()[problem_index()[other]].title
            yield Evidence(text=f"With it: {title.lower()}.", results=tuple(dict.fromkeys(read)), comparisons=limits)


def cautions(code: str) -> tuple[Caution, ...]:
    """Cautions of a problem: every page with the hazard carries them, whoever lives there."""
    return tuple(
        Caution(
            code=f"{code}_{row['group']}",
            text=row["text"],
            hazard=code,
            group=row["group"],
            decides=row["decides"],
            source=source(row),
        )
        for row in by("cautions", "problem").get(code, ())
    )


def problem_models(single: Single) -> tuple[Problem, ...]:
    """Problems of the sample: health first, then by urgency and certainty."""
    made = []
    for place, row in enumerate(problems()):
        certainty = int(single.findings.certainty[place, 0])
        if certainty == NONE:
            continue
        untold, elsewhere = single.untold_only(row.code), single.elsewhere(row.code)
        title = _AHEAD_TITLE if single.ahead_only(row.code) else row.title
        title = _ELSEWHERE_TITLE if elsewhere else _UNTOLD_TITLE if untold else title
        made.append(
            Problem(
                code=row.code,
                title=title.format(subject=row.subject),
                kind=ProblemKind(row.kind),
                certainty=CERTAINTIES[certainty - 1],
                urgency=URGENCIES[int(single.findings.urgency[place, 0])],
                text=(_ELSEWHERE if elsewhere else _NOT_TOLD if untold else "") + row.text,
                noticed=row.noticed,
                evidence=tuple(_evidence(single, row.code)),
                cautions=cautions(row.code),
                decides=row.decides,
            )
        )
    return tuple(sorted(made, key=lambda one: (one.kind != "health", -URGENCIES.index(one.urgency), -_sure(one))))


def _sure(problem: Problem) -> int:
    return CERTAINTIES.index(problem.certainty)


def sign_models(single: Single) -> tuple[Sign, ...]:
    """Signs of treatment and origin, and what people notice where the numbers disagree."""
    table = {row["code"]: row for row in rows("signs")}
    made = []
    for code, sign in single.signs.items():
        if not bool(sign[0]):
            continue
        row = table[code]
        read = single.results(INPUTS[code])
        shown = ", ".join(wording.result(single.sample.results[place]) for place in read)
        made.append(
            Sign(
                code=code,
                title=row["title"],
                certainty=Certainty.LIKELY
                if code in LIKELY and bool(LIKELY[code](single.waters)[0])
                else Certainty.POSSIBLE,
                text=row["text"],
                question=row["question"],
                evidence=(Evidence(text=f"{shown}.", results=read, source=source(row)),),
            )
        )
    return (*made, *_disagreements(single))


def _disagreements(single: Single) -> Iterable[Sign]:
    for row in rows("observations"):
        if not row["disproved_by"] or not single.waters.observed(row["observation"]):
            continue
        if bool(holds(row["disproved_by"], single.waters)[0][0]):
            analyte = row["disproved_by"].split("<")[0]
            yield Sign(
                code=f"disagrees_{row['observation']}",
                title=f"What is noticed and the numbers disagree: {row['observation'].replace('_', ' ')}",
                certainty=Certainty.POSSIBLE,
                text=row["disagreement"],
                question="Where and when was the sample taken, and what is noticed there?",
                evidence=(Evidence(text=row["text"], results=single.results((analyte,))),),
            )
