"""The practitioner's half of the page: tables, evidence, chemistry, train, sizes and where each number comes from."""

from __future__ import annotations

from collections.abc import Iterable

from wellchem.display import plots, words
from wellchem.display.markup import figure, items, paragraph, table, tag
from wellchem.models.codes import CheckStatus, LimitKind, Verdict
from wellchem.models.finding import Computed, Figure, Interpretation, Problem, Stage
from wellchem.models.limits import Comparison

_STATUS = {
    CheckStatus.PASS: "passes",
    CheckStatus.WARN: "look again",
    CheckStatus.FAIL: "fails",
    CheckStatus.NOT_POSSIBLE: "not possible",
}
_WORST_FIRST = (CheckStatus.FAIL, CheckStatus.WARN, CheckStatus.PASS, CheckStatus.NOT_POSSIBLE)


class _Sources:
    """Documents cited on the page: a number in a table or a list, and the document once, at the end."""

    def __init__(self) -> None:
        self._numbers: dict[str, int] = {}

    def number(self, source: object) -> str:
        """The number of a document and the place in it, `[3]`; nothing for none."""
        text = str(source or "")
        return f"[{self._numbers.setdefault(text, len(self._numbers) + 1)}]" if text else ""

    def listed(self) -> tuple[str, ...]:
        """All that were cited, by their numbers."""
        return tuple(f"[{number}] {text}" for text, number in self._numbers.items())


def _checks(finding: Interpretation, sources: _Sources) -> str:
    """What the checks found, the failed first; those that this report does not allow in one paragraph."""
    rows = []
    for check in sorted(finding.checks, key=lambda one: _WORST_FIRST.index(one.status)):
        if check.status is CheckStatus.NOT_POSSIBLE:
            continue
        strong = "strong-row" if check.status in (CheckStatus.FAIL, CheckStatus.WARN) else ""
        rows.append(((check.title, _STATUS[check.status], check.text, sources.number(check.source)), strong))
    lacking = [f"{check.title}: {check.text}" for check in finding.checks if check.status is CheckStatus.NOT_POSSIBLE]
    shown = table(("check", "outcome", "what was found", "source"), rows)
    return shown + (paragraph(f"Not possible with this report. {' '.join(lacking)}") if lacking else "")


def _signs(finding: Interpretation) -> str:
    rows = []
    for sign in finding.signs:
        evidence = "; ".join(part.text for part in sign.evidence)
        rows.append(((sign.title, str(sign.certainty), sign.text, sign.question, evidence), ""))
    return table(("sign", "how sure", "what it may mean", "question", "evidence"), rows)


def _comparison(finding: Interpretation, item: Comparison, sources: _Sources) -> tuple[tuple[str, ...], str]:
    results = [finding.sample.results[index] for index in item.results]
    reported = "; ".join(words.amount(result) for result in results)
    state = words.verdict(item) if item.condition_settled else "condition not settled: decides nothing"
    notes = [words.reason(code) for code in item.reasons] + ([item.later] if item.later else [])
    limit = f"{item.limit.term} {words.bound(item.limit)} ({words.kind(item.limit)})"
    if item.limit.applies_when:
        limit += f"; applies when {', '.join(map(words.label, item.limit.applies_when))}"
    if item.limit.compliance:
        notes.append(f"a public system is judged by {item.limit.compliance}")
    cells = (
        words.label(item.analyte),
        "; ".join(words.printed(result) for result in results),
        reported,
        limit,
        words.times(item.ratio),
        "; ".join([state, *notes]),
        sources.number(item.limit.citation.short),
    )
    return cells, "strong-row" if item.verdict in (Verdict.ABOVE, Verdict.BELOW) else ""


def _evidence(finding: Interpretation, problem: Problem, sources: _Sources) -> Iterable[str]:
    for evidence in problem.evidence:
        places = "; ".join(words.places(finding, evidence.results))
        limits = "; ".join(
            f"{finding.comparisons[i].limit.term} {words.bound(finding.comparisons[i].limit)} "
            f"{sources.number(finding.comparisons[i].limit.citation.short)}"
            for i in evidence.comparisons
        )
        rests = " | ".join(part for part in (places, limits) if part)
        rests = f"{rests} {sources.number(evidence.source)}".strip()
        yield f"{evidence.text} — {rests}." if rests else evidence.text


def _values(values: Iterable[Computed], sources: _Sources) -> str:
    return table(
        ("value", "result", "from", "source", "notes"),
        (
            (
                (
                    item.label,
                    words.computed(item),
                    ", ".join(map(words.label, item.inputs)),
                    sources.number(item.source),
                    "; ".join(item.notes),
                ),
                "",
            )
            for item in values
        ),
    )


def _size(item: Figure, sources: _Sources) -> tuple[tuple[str, ...], str]:
    us = words.interval(item.low_us, item.high_us, item.unit_us) if item.unit_us else ""
    cells = (
        item.label,
        words.computed(item),
        us,
        item.formula,
        ", ".join(map(words.label, item.inputs)),
        sources.number(item.source),
    )
    return cells, ""


def _stage(finding: Interpretation, number: int, stage: Stage, sources: _Sources) -> str:
    facts = [
        f"Answers: {'; '.join(words.heading(finding, code) for code in stage.answers)}" if stage.answers else "",
        *(f"Adds: {text}" for text in stage.adds),
        f"Ask for: {stage.certification}" if stage.certification else "",
        f"Upkeep: {stage.maintenance}" if stage.maintenance else "",
        f"How it fails: {stage.failure}" if stage.failure else "",
        f"Tests: {stage.tests}" if stage.tests else "",
    ]
    feed = table(
        ("feed-water condition", "predicted there", "holds?", "source"),
        (
            (
                (
                    c.text,
                    words.interval(c.amount.low, c.amount.high) if c.amount else "",
                    c.status,
                    sources.number(c.source),
                ),
                "",
            )
            for c in stage.feed
        ),
    )
    sizes = table(("size", "SI", "US", "formula", "from", "source"), (_size(size, sources) for size in stage.sizes))
    head = tag("h3", f"{number}. {stage.title}, {stage.where}")
    return f"{head}{paragraph(stage.why)}{items(facts)}{feed}{sizes}"


def _ions(finding: Interpretation) -> str:
    parts = [item for item in finding.ion_balance if item.name.startswith(("cation:", "anion:"))]
    cations = [item for item in parts if item.name.startswith("cation:")]
    anions = [item for item in parts if item.name.startswith("anion:")]
    return plots.ions(cations, anions)


def _after(item: Comparison) -> tuple[tuple[str, ...], str]:
    """One limit against the water predicted behind the train."""
    amount = words.interval(item.amount.low, item.amount.high, item.unit) if item.amount else ""
    state = words.verdict(item) if item.condition_settled else "condition not settled: decides nothing"
    return (words.title(item.analyte), amount, f"{item.limit.term} {words.bound(item.limit)}", state), ""


def _treatment(finding: Interpretation, sources: _Sources) -> str:
    treatment = finding.treatment
    parts = [paragraph(treatment.text), items(treatment.steps_first)]
    parts.append(figure(plots.train(finding), "The train, with the water predicted behind each stage as intervals."))
    parts += [_stage(finding, number, stage, sources) for number, stage in enumerate(treatment.stages, 1)]
    if treatment.unanswered:
        titles = "; ".join(words.heading(finding, code) for code in treatment.unanswered)
        parts.append(paragraph(f"Not answered by this train: {titles}."))
    if treatment.runner_up:
        parts.append(paragraph(f"Runner-up: {'; '.join(treatment.runner_up_titles)}. {treatment.runner_up_why}"))
    if finding.treated is not None:
        parts.append(tag("h3", "Predicted water behind the whole train"))
        against = [_after(item) for item in finding.treated_comparisons if item.limit.kind is not LimitKind.GOAL]
        parts.append(table(("analyte", "predicted", "limit", "verdict, from the worst end"), against))
        judged = {item.analyte for item in finding.treated_comparisons if item.limit.kind is not LimitKind.GOAL}
        others = (f"{words.label(r.analyte)} {words.amount(r)}" for r in finding.treated.results)
        rest = "; ".join(
            text for r, text in zip(finding.treated.results, others, strict=True) if r.analyte not in judged
        )
        parts.append(paragraph(f"Without a limit here: {rest}." if rest else ""))
        parts.append(paragraph("A prediction from published ranges: confirm it by a test of the treated water."))
    return "".join(parts)


def render(finding: Interpretation) -> str:
    """The practitioner's half as HTML."""
    assumed = [
        f"{words.printed(result)}: {', '.join(words.label(str(a)) for a in result.assumptions)}"
        for result in finding.sample.results
        if result.assumptions
    ]
    sources = _Sources()
    tests = (
        ((item.title, item.decision, item.bottle, item.holding_time, sources.number(item.source)), "")
        for item in finding.missing
        if not item.field  # the household's half asks the questions
    )
    parts = [
        tag("h1", "For the practitioner"),
        paragraph(words.about(finding.sample), "about"),
        tag("h2", "Can the report be trusted"),
        _checks(finding, sources),
        *((tag("h2", "Signs in the numbers"), _signs(finding)) if finding.signs else ()),
        tag("h2", "Results against limits"),
        figure(
            plots.against_limits(finding),
            "The strictest health limit and the strictest other limit of each analyte that this report can meet.",
        ),
        table(
            ("analyte", "printed", "reported", "limit", "ratio", "verdict", "source"),
            (_comparison(finding, item, sources) for item in words.ranked(finding)),
        ),
        tag("h2", "Evidence of each problem"),
    ]
    for problem in finding.problems:
        parts.append(tag("h3", f"{problem.title} ({problem.kind}, {problem.certainty})"))
        parts.append(items(_evidence(finding, problem, sources)))
    parts += [
        tag("h2", "Chemistry"),
        figure(
            _ions(finding), "Ions in milliequivalents per litre; a censored ion is drawn at the middle of its bounds."
        ),
        _values((*finding.hardness, *finding.ion_balance, *finding.scaling, *finding.corrosion), sources),
        tag("h2", "Tests that would change a decision"),
        table(("test", "decision it changes", "bottle", "holding time", "source"), tests),
        tag("h2", "Treatment to consider"),
        _treatment(finding, sources),
        tag("h2", "What was supposed, and versions"),
        items(assumed) or paragraph("Nothing had to be supposed in reading the results."),
        items(finding.standing),
        tag("h2", "Sources"),
        items(sources.listed(), css="plain"),
        tag("h3", "Documents compared with"),
        items(words.documents(finding)),
        paragraph(
            f"Limits as in force on {words.day(finding.on)}; library {finding.library_version}, schema "
            f"{finding.schema_version}, limits {finding.limits_version}.",
            "source",
        ),
    ]
    return "".join(parts)
