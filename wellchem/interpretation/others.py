"""What other samples of the same well make of one sample's findings: they confirm, contradict or add, never clear."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

import numpy as np

from wellchem.interpretation import wording
from wellchem.interpretation.amounts import DERIVED
from wellchem.interpretation.beside import days_between, name_of, point_of
from wellchem.interpretation.checks_report import implausible
from wellchem.interpretation.checks_sums import disagreeing
from wellchem.interpretation.practice import by, groups, level, problem_index, problems, source
from wellchem.interpretation.single import Single, fired
from wellchem.interpretation.table import BOUNDED, DOUBTFUL, LEFT, RIGHT
from wellchem.interpretation.treatment.tables import plumbing_metals
from wellchem.interpretation.verdicts import BEYOND, WITHIN
from wellchem.interpretation.weighing import CERTAIN, LIKELY, NONE, POSSIBLE, SOON, Findings
from wellchem.models.codes import Role, SamplingPoint
from wellchem.models.finding import Evidence
from wellchem.models.sample import Sample

_PLANNED = 1


def weighed(single: Single, others: tuple[Single, ...]) -> Findings:
    """The sample's findings with what the others confirm or add."""
    alone = single.alone
    certainty, urgency, ratio = alone.certainty.copy(), alone.urgency.copy(), alone.ratio.copy()
    for place, row in enumerate(problems()):
        if certainty[place, 0] >= LIKELY:
            if any(confirms(single, row.code, other) for other in others):
                certainty[place, 0] = CERTAIN
            continue
        for other in others if row.kind == "health" else ():
            sure = suggests(single, row.code, other)
            if sure == NONE:
                continue
            soon = int(other.alone.urgency[place, 0])
            soon = max(min(soon, SOON) if sure == POSSIBLE else soon, _PLANNED)
            certainty[place, 0] = max(certainty[place, 0], sure)
            urgency[place, 0] = max(urgency[place, 0], soon)
            ratio[place, 0] = np.fmax(ratio[place, 0], other.alone.ratio[place, 0])
    return replace(alone, certainty=certainty, urgency=urgency, ratio=ratio)


def of_the_same_water(single: Single) -> tuple[Single, ...]:
    """The others but for those that a treatment stands between."""
    return tuple(other for other in single.others if _treated(other) == _treated(single))


def confirms(single: Single, code: str, other: Single) -> bool:
    """Whether a sound result of another sample shows what a sound result of this one does."""
    if not _separate(other.sample, single.sample):
        return False
    both = _grounds(single, code, sound=True) & _grounds(other, code, sound=True)
    waters = single.waters
    return any(not (implausible(waters, name)[0] or disagreeing(waters, name)[0]) for name in both)


def suggests(single: Single, code: str, other: Single) -> int:
    """How sure a problem is that only another sample shows.

    It is likely where the two are of one water: what was not judged here, or comes and goes (organisms, metals of
    the plumbing) and was found no earlier than here. Else it is possible: a test within undoes no other.
    """
    if other.alone.of(code)[0] < LIKELY:
        return NONE
    days = days_between(single.sample, other.sample)
    if days is None or _treated(other) != _treated(single):
        return POSSIBLE
    names = _grounds(other, code)
    unsteady = all(groups().get(name) == "microbiology" or name in plumbing_metals() for name in names)
    if days >= 0 and unsteady:
        return LIKELY
    open_here = not names & _within(single, names)
    return LIKELY if open_here and abs(days) <= level("other_samples_days") else POSSIBLE


def evidence(single: Single, code: str) -> Iterable[Evidence]:
    """What the others say of a problem."""
    own = _grounds(single, code)
    for other in single.others:
        who = _who(other.sample)
        if other.alone.of(code)[0] >= LIKELY:
            after = " It confirms this one." if confirms(single, code, other) else ""
            yield Evidence(text=f"{who}: {_shown(other, code)}.{after}")
        elif met := _within(other, own):
            yield Evidence(
                text=f"{who} was within: {_results(other, met)}. It takes nothing "
                "back: have the difference explained, and a further sample taken."
            )
    yield from _traced(single, code)


def differing(single: Single) -> tuple[list[str], list[str]]:
    """Analytes that another sample judges as this one does, and those that it judges otherwise, with its name."""
    alike: list[str] = []
    apart: list[str] = []
    for other in single.others:
        if other.sample.role is Role.DUPLICATE:
            continue  # the check of repeated results tells of it
        mine, theirs = _judged(single), _judged(other)
        for name in sorted(mine.keys() & theirs.keys()):
            shown = f"{_results(single, {name})} here, {_results(other, {name})} there ({name_of(other.sample)})"
            (alike if mine[name] == theirs[name] else apart).append(shown)
    return alike, apart


def _traced(single: Single, code: str) -> Iterable[Evidence]:
    """What a metal at two points of one house tells of where it comes from."""
    for row in by("traces", "problem").get(code, ()):
        for one, other in _at(single, row["point"], row["other"]):
            here, there = (found.waters.table.most(row["analyte"]) for found in (one, other))
            if not (here.bounded[0] and there.bounded[0]):
                continue
            more = float(row["times"])
            text = row["more"] if here.low[0] > more * there.high[0] else ""
            text = row["alike"] if 0.0 < here.high[0] < more * there.low[0] else text
            if text:
                shown = f"{_results(one, {row['analyte']})} against {_results(other, {row['analyte']})}"
                yield Evidence(text=f"{text} ({shown}).", source=source(row))


def _treated(single: Single) -> bool:
    return point_of(single.sample) is SamplingPoint.AFTER_TREATMENT


def _who(sample: Sample) -> str:
    kind = "A duplicate of this sample" if sample.role is Role.DUPLICATE else "Another sample of this well"
    return f"{kind} ({name_of(sample)})"


def _separate(other: Sample, sample: Sample) -> bool:
    """Whether another sample was taken by itself; a laboratory's repeat of one bottle was not."""
    return other.role is Role.ROUTINE or (other.collected is not None and other.id not in ("", sample.id))


def _at(single: Single, point: str, other: str) -> Iterable[tuple[Single, Single]]:
    """Pairs of samples at two kinds of points, the one of the first kind ahead; this sample is one of each pair."""
    points, against = point.split("|"), other.split("|")
    for found in single.others:
        days = days_between(single.sample, found.sample)
        if days is None or abs(days) > level("trace_days"):
            continue
        for one, two in ((single, found), (found, single)):
            if point_of(one.sample) in points and point_of(two.sample) in against:
                yield one, two


def _grounds(single: Single, code: str, *, sound: bool = False) -> set[str]:
    """Analytes whose results put a sample beyond a limit or threshold; only by `sound` results where asked."""
    names = set()
    for place in single.deciding(code, BEYOND):
        one = single.comparisons[place]
        if not sound or any(_sound(single, row) for row in one.results):
            names.add(one.analyte)
    for row in by("rules", "problem").get(code, ()):
        if row["analyte"] not in DERIVED and fired(single, row):
            read = single.results((row["analyte"],))
            if not sound or any(_sound(single, place) for place in read):
                names.add(row["analyte"])
    return names


def _sound(single: Single, place: int) -> bool:
    """Whether a result of the sample is a witness: a number, without a qualifier or a blank that leaves it in doubt."""
    table = single.waters.table
    (flags,) = table.flags[table.order == place]
    counted = groups().get(single.sample.results[place].analyte) == "microbiology"
    return not int(flags) & (DOUBTFUL | LEFT | BOUNDED | (0 if counted else RIGHT))


def _within(single: Single, names: set[str]) -> set[str]:
    """Those of some analytes that a health limit was decided of, and every one as within."""
    judged = _judged(single)
    return {name for name in names if judged.get(name) == {WITHIN}}


def _judged(single: Single) -> Mapping[str, set[int]]:
    """States against health limits by analyte, of decided comparisons."""
    verdicts, found = single.waters.verdicts, dict[str, set[int]]()
    for place in np.flatnonzero(verdicts.counts & verdicts.health & np.isin(verdicts.state, (WITHIN, BEYOND))):
        found.setdefault(single.comparisons[place].analyte, set()).add(int(verdicts.state[place]))
    return found


def _results(single: Single, names: Iterable[str]) -> str:
    return ", ".join(wording.result(single.sample.results[place]) for place in single.results(sorted(names)))


def _shown(single: Single, code: str) -> str:
    """What another sample shows of a problem: its verdicts, else its results, else the problem's title."""
    verdicts = [wording.comparison(single.comparisons[place]) for place in single.deciding(code, BEYOND)]
    names = _results(single, _grounds(single, code))
    title = problems()[problem_index()[code]].title.lower()
    return "; ".join(part for part in (names, "; ".join(dict.fromkeys(verdicts))) if part) or title
