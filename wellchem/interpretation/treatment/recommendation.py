"""The train as models: what comes first, each stage with its conditions and the water behind it, what stays open."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import inf

from wellchem.interpretation.treatment import feed, figures, sizes
from wellchem.interpretation.treatment.aims import Aim, Outcome, aims
from wellchem.interpretation.treatment.effects import effects
from wellchem.interpretation.treatment.search import Train, search
from wellchem.interpretation.treatment.tables import Ends, StageKind, conditions, removal, rows, stages
from wellchem.interpretation.treatment.water import Water, organism, raw_water
from wellchem.models.codes import Certainty, SamplingPoint
from wellchem.models.finding import Computed, Problem, Source, Stage, Treatment
from wellchem.models.household import Household, Observation
from wellchem.models.limits import Comparison
from wellchem.models.sample import Sample

_ALTERED = frozenset({"softened", "chlorinated", "after_membrane"})
_MICROBES = frozenset({"fecal_bacteria", "coliform_bacteria", "protozoa", "other_organisms"})
_OF_CHLORINE = "disinfection_by_products"  # not of the raw water, where the sample was chlorinated
_FROM_THE_PIPES = frozenset({"lead", "copper", "corrosive_metals", "copper_staining", "zinc"})
_CONFIRM = "A prediction from published ranges: a test of the treated water has to confirm it."
_BEHIND_TREATMENT = (
    "This sample is, or may be, from behind treatment: a train is chosen from the raw water. Have that sampled first."
)
# What a sample from behind treatment tells all the same: the plumbing gives it on the way to the tap.
_AT_THE_TAP = frozenset({"lead", "copper"})
_WITHHELD = "No train is chosen from this sample: it is from behind treatment."
_CONDITIONAL = (
    "Conditional: chosen as if this were the raw water, which it may not be. Nothing is to be built on it before the "
    "raw water was sampled."
)
_NOT_RAW = "This sample may not be the raw water: what that would call for cannot be told from it."
IMPLAUSIBLE = "implausible"  # a sign beside those of the table: a value out of the range of ground water
_RAW_POINTS = (SamplingPoint.WELL_HEAD, SamplingPoint.BEFORE_TREATMENT)
_SLIP = (
    "A value of this report is out of the range of ground water: ask the laboratory for its unit before anything is "
    "built on it."
)
_NOTHING = "No problem of this report calls for a stage of treatment; what was not tested is not covered by that."
_CHOICE = {
    "hardness": "Softening for hardness alone is a matter of choice, never urgent.",
    "": "It is a matter of choice, never urgent: another water for drinking does as well.",
}
_HARD_TAP = "Leave the cold tap for drinking unsoftened, so that it stays hard."
_SOFT_TAP = "What stands behind it needs softened water, so the tap with it is softened too."
_DECIDE = (
    "The health authority, local code and licensed professionals decide what is built; classes are named here, not "
    "makes."
)


def recommend(
    sample: Sample,
    problems: Sequence[Problem],
    comparisons: Sequence[Comparison],
    household: Household | None = None,
    signs: Sequence[str] = (),
) -> Treatment:
    """The smallest train that clears the problems at the worst end of its predicted water, with sizes.

    Parameters
    ----------
    sample : Sample
        The raw water.
    problems, comparisons
        Of that sample. Problems that are only possible call for a test, not for a stage.
    household : Household, optional
        What sizes and the sodium of a diet depend on.
    signs : codes of signs
        Of those that the sample is not the raw water, a note comes first.

    Returns
    -------
    Treatment
        Steps that come first, the train, what it leaves unanswered, and the runner-up with why it lost.
    """
    home = household or Household()
    microbes = [problem.certainty for problem in problems if problem.code in _MICROBES]
    found = any(certainty is not Certainty.POSSIBLE for certainty in microbes)
    raw = raw_water(sample, found=found, suspect=bool(microbes), grit=_grit(home), chlorinated=home.chlorinated)
    behind = sample.point is SamplingPoint.AFTER_TREATMENT
    meant = [one for one in problems if one.code in _AT_THE_TAP] if behind else problems
    if "chlorinated" in signs:
        meant = [one for one in meant if one.code != _OF_CHLORINE]
    sought = aims(meant, comparisons, home, raw)
    best, second = search(sought, raw)
    unanswered = tuple(aim.code for aim in best.left(sought, Outcome.UNANSWERED))
    return Treatment(
        steps_first=_steps(sample, problems, home, signs),
        stages=tuple(_stages(best, raw, sought, home)),
        unanswered=unanswered,
        runner_up=second.stages if second else (),
        runner_up_titles=tuple(stages()[code].title for code in second.stages) if second else (),
        runner_up_why=_why_lost(best, second, sought) if second else "",
        text=" ".join(
            (
                *_caveat(sample, behind or _altered(sample, home, signs), bool(sought)),
                *((_text(best, sought),) if sought or not (behind or _altered(sample, home, signs)) else ()),
                *_ruled_out(best, sought, raw),
                *_open_conditions(best, raw),
                *((_CONFIRM, _DECIDE) if sought else ()),
            )
        ),
    )


def _caveat(sample: Sample, altered: bool, sought: bool) -> Iterable[str]:
    """What holds of a train from water that is, or may be, from behind treatment."""
    if sample.point is SamplingPoint.AFTER_TREATMENT:
        yield _WITHHELD
    elif altered:
        yield _CONDITIONAL if sought else _NOT_RAW


def _altered(sample: Sample, home: Household, signs: Sequence[str]) -> bool:
    """Whether the sample may not be the raw water. At the well head soft water with sodium is that of nature."""
    at_the_well = sample.point in _RAW_POINTS
    if _ALTERED.intersection(signs) - ({"softened"} if at_the_well else set()):
        return True
    return bool(home.treatment) and not at_the_well


def _grit(home: Household) -> bool | None:
    """Whether people see sand or sediment; None where they were not asked."""
    return None if home.observations is None else Observation.SEDIMENT in home.observations


def _steps(sample: Sample, problems: Sequence[Problem], home: Household, signs: Sequence[str]) -> tuple[str, ...]:
    """What comes before any equipment."""
    codes = {problem.code for problem in problems}
    found = []
    if sample.point is SamplingPoint.AFTER_TREATMENT or _altered(sample, home, signs):
        found.append(_BEHIND_TREATMENT)
    if IMPLAUSIBLE in signs:
        found.append(_SLIP)
    if home.treatment:
        found.append(f"Treatment is in place ({', '.join(home.treatment)}): sample ahead of it and behind it first.")
    for row in rows("first_steps"):
        if codes and (row["problems"] == "any" or codes & set(row["problems"].split("|"))):
            found.append(row["text"])
    possible = [problem.title for problem in problems if problem.certainty is Certainty.POSSIBLE]
    if possible:
        found.append(f"Test first, before a stage is chosen for it: {'; '.join(possible)}.")
    return tuple(found)


def _stages(train: Train, raw: Water, sought: Sequence[Aim], home: Household) -> Iterable[Stage]:
    use = figures.use_of(home)
    water = raw
    for code, behind in zip(train.stages, train.waters, strict=True):
        kind = stages()[code]
        answered = [aim for aim in sought if code in aim.stages]
        sized = sizes.SIZED.get(code)
        yield Stage(
            code=code,
            title=kind.title,
            where=kind.where,
            answers=tuple(aim.code for aim in answered),
            why=_why(kind, answered, sought, train),
            feed=feed.shown(code, water),
            adds=(kind.adds, *effects(code, raw, water, behind, home)),
            certification=kind.certification,
            maintenance=kind.maintenance,
            failure=kind.failure,
            tests=kind.tests,
            after=tuple(_after(kind, raw, water, behind, sought)),
            sizes=sized(water, use) if sized else (),
            sources=tuple(_sources(code, water)),
        )
        water = behind


def _why(kind: StageKind, answered: Sequence[Aim], sought: Sequence[Aim], train: Train) -> str:
    parts = [kind.why]
    if answered and all(aim.optional for aim in answered):
        parts.append(_CHOICE["hardness" if any(aim.code == "hardness" for aim in answered) else ""])
    if kind.process == "soften":
        parts.append(_SOFT_TAP if _helped(kind.code, train) else _HARD_TAP)
    if kind.disinfects:
        parts.append("It comes after the well has been mended, and mends no way in from the surface.")
    if not answered:
        helped = [stages()[code].title for code in _helped(kind.code, train)]
        parts.append(f"It stands here for what comes behind it: {'; '.join(helped)}." if helped else "")
    pipes = [aim.title for aim in sought if aim.code in _FROM_THE_PIPES]
    if pipes and kind.code == next((code for code in train.stages if stages()[code].place == "entry"), None):
        parts.append("Metals that the plumbing gives pass all treatment at the entry, or come in behind it.")
    return " ".join(part for part in parts if part)


def _helped(code: str, train: Train) -> list[str]:
    """Stages behind one whose conditions it brings about."""
    later = train.stages[train.stages.index(code) + 1 :]
    return [other for other in later if any(_touches(code, word) for one in conditions(other) for word in one.amounts)]


def _touches(code: str, word: str) -> bool:
    if word == "organisms":
        return stages()[code].disinfects
    if word == "ph":
        return stages()[code].group == "neutralising"
    return word == f"behind:{code}" or removal(code, word) is not None


def _after(kind: StageKind, raw: Water, water: Water, behind: Water, sought: Sequence[Aim]) -> Iterable[Computed]:
    """The analytes that the problems rest on and those that the stage changed, the former first."""
    concerned = [target.analyte for aim in sought for target in aim.targets]
    changed = [name for name, ends in behind.amounts.items() if ends != water.amounts.get(name)]
    parts = [part for aim in sought for target in aim.targets for part in target.parts]
    for name in dict.fromkeys((*concerned, *parts, *changed)):
        ends = behind.get(name)
        if ends is None or (name not in changed and name not in concerned):
            continue
        row = removal(kind.code, name)
        yield Computed(
            name=name,
            label=_label(name),
            low=figures.rounded(ends[0]),
            high=None if ends[1] == inf else figures.rounded(ends[1]),
            unit=_unit(name),
            text="no count is predicted; tests decide" if organism(name) and ends[1] > 0.0 else "",
            source=row.source if row is not None and name in changed else None,
            inputs=(_ends_text("ahead of the stage", water.get(name)), _ends_text("raw water", raw.get(name))),
        )


def _ends_text(label: str, ends: Ends | None) -> str:
    if ends is None:
        return f"{label}: not measured"
    if ends[1] == inf:
        return f"{label}: at least {ends[0]:.4g}"
    return f"{label}: {ends[0]:.4g}" if ends[0] == ends[1] else f"{label}: {ends[0]:.4g} to {ends[1]:.4g}"


def _label(name: str) -> str:
    from wellchem.vocabulary import bundled

    known = bundled().analytes.get(name)
    return known.label if known else name.replace("_", " ")


def _unit(name: str) -> str:
    from wellchem.vocabulary import bundled

    known = bundled().analytes.get(name)
    if known is None:
        return ""
    return known.unit + (f" as {known.basis}" if known.basis else "")


def _sources(code: str, water: Water) -> Iterable[Source]:
    """Documents behind the stage and what it takes out of this water."""
    found = (removal(code, name) for name in water.amounts)
    return dict.fromkeys((stages()[code].source, *(row.source for row in found if row is not None)))


def _titles(found: Iterable[Aim]) -> str:
    return "; ".join(aim.title for aim in found)


def _text(train: Train, sought: Sequence[Aim]) -> str:
    if not sought:
        return _NOTHING
    cleared, untold, lost = (train.left(sought, state) for state in Outcome)
    barrier = [aim for aim in cleared if aim.code in _MICROBES or aim.code == "iron_bacteria"]
    cleared = [aim for aim in cleared if aim not in barrier]
    parts = []
    if train.stages:
        names = ", ".join(stages()[code].title for code in train.stages)
        parts.append(f"The smallest train found, behind the pressure tank and in this order: {names}.")
    else:
        parts.append("No train was found: that is the answer for this water.")
    if cleared:
        parts.append(f"The predicted water keeps the limits at the worst end of its range for: {_titles(cleared)}.")
    if barrier:
        parts.append(f"A barrier stands against: {_titles(barrier)}. Only repeated tests behind it prove it.")
    if untold:
        parts.append(f"Answered, but whether it is enough cannot be told before a test: {_titles(untold)}.")
    if lost:
        parts.append(f"Not answered by any train found: {_titles(lost)}. Look to what comes first, or another source.")
    return " ".join(parts)


def _ruled_out(train: Train, sought: Sequence[Aim], raw: Water) -> Iterable[str]:
    """Why the stages that answer what is left unanswered cannot take this water."""
    lost = train.left(sought, Outcome.UNANSWERED)
    stages_out = {code: None for aim in lost for code in stages() if code in aim.stages and code not in train.stages}
    why = [
        f"{stages()[code].title} ({'; '.join(one.text for one in failing)})"
        for code in stages_out
        if (failing := [one for one in feed.failing(code, raw) if one.amounts[0] in raw.amounts])
    ]
    if why:
        yield f"Ruled out as the water comes, by what the stage asks of it: {', '.join(why)}."


def _open_conditions(train: Train, raw: Water) -> tuple[str, ...]:
    """What has to be measured before the train can be relied on."""
    wanted: dict[str, None] = {}
    for code, water in zip(train.stages, (raw, *train.waters), strict=False):
        for condition in feed.asked(code, water):
            if feed.holds(condition, water)[0] is feed.Holds.UNTOLD:
                wanted.update(dict.fromkeys(name for name in condition.amounts if raw.get(name) is None))
    known = [_label(name) for name in wanted if _unit(name)]
    if "organisms" in wanted:
        known.insert(0, "bacteria")
    return (f"Feed conditions that this report leaves open; have measured first: {', '.join(known)}.",) if known else ()


def _why_lost(best: Train, second: Train, sought: Sequence[Aim]) -> str:
    """Why the runner-up is not the answer."""
    for state, what in ((Outcome.UNANSWERED, "leaves unanswered"), (Outcome.UNTOLD, "leaves untold before a test")):
        more = [aim for aim in second.left(sought, state) if aim not in best.left(sought, state)]
        if more:
            return f"It {what}: {_titles(more)}."
    if second.score.pieces > best.score.pieces:
        return f"It takes more equipment ({second.score.pieces} pieces against {best.score.pieces})."
    if second.score.preference > best.score.preference:
        return "It does as much with as little; the other is the more usual choice for this."
    if second.score.conditions_untold > best.score.conditions_untold:
        open_, fewer = second.score.conditions_untold, best.score.conditions_untold
        return f"More of its feed conditions cannot be told ({open_} against {fewer})."
    return "It does as much with as little."
