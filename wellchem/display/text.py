"""An interpretation as plain text for a terminal or a pipe."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Sequence

from wellchem.display import words
from wellchem.models.codes import CheckStatus
from wellchem.models.finding import Interpretation, Problem, Stage
from wellchem.models.limits import Comparison

_STATUS = {
    CheckStatus.PASS: "passes",
    CheckStatus.WARN: "look again",
    CheckStatus.FAIL: "fails",
    CheckStatus.NOT_POSSIBLE: "not possible",
}


# Columns of a table in characters: the least that the last one has, and that another is made narrow to.
_LAST, _NARROWEST = 24, 10


def table(header: Sequence[str], rows: Iterable[Sequence[str]], width: int = 100) -> str:
    """Aligned columns; the last one is wrapped to the width."""
    body = [[str(cell) for cell in row] for row in rows]
    if not body:
        return ""
    wide = [max(len(header[i]), *(len(row[i]) for row in body)) for i in range(len(header))]
    wide = [min(size, 44) for size in wide[:-1]]
    room = width - _LAST - 2 * len(wide)
    while sum(wide) > room and max(wide) > _NARROWEST:
        wide[wide.index(max(wide))] -= 1
    rest = max(_LAST, width - sum(wide) - 2 * len(wide))

    def line(cells: Sequence[str]) -> list[str]:
        columns = [textwrap.wrap(cell, size) or [""] for cell, size in zip(cells, [*wide, rest], strict=True)]
        tall = max(len(column) for column in columns)
        padded = [column + [""] * (tall - len(column)) for column in columns]
        return [
            "  ".join(part.ljust(size) for part, size in zip(parts, [*wide, 0], strict=True)).rstrip()
            for parts in zip(*padded, strict=True)
        ]

    out = line(header)
    out.append("  ".join("-" * size for size in [*wide, min(rest, _LAST)]))
    for row in body:
        out += line(row)
    return "\n".join(out)


class _Writer:
    def __init__(self, width: int) -> None:
        self.width = width
        self.lines: list[str] = []

    def head(self, title: str) -> None:
        self.lines += ["", title.upper(), "=" * len(title)]

    def say(self, text: str, indent: int = 0, mark: str = "") -> None:
        first = " " * indent + mark
        self.lines += textwrap.wrap(
            text, self.width, initial_indent=first, subsequent_indent=" " * len(first), break_long_words=False
        ) or [""]

    def raw(self, text: str) -> None:
        if text:
            self.lines += text.splitlines()


def _problem(out: _Writer, finding: Interpretation, number: int, problem: Problem) -> None:
    out.say(f"{number}. {problem.title}  [{problem.kind}; {problem.certainty}; {words.label(problem.urgency)}]")
    out.say(problem.text, 3)
    if problem.noticed:
        out.say(f"What people notice: {problem.noticed}", 3)
    for evidence in problem.evidence:
        out.say(evidence.text + (f" ({evidence.source})" if evidence.source else ""), 3, "- ")
        for place in words.places(finding, evidence.results):
            out.say(place, 5, "from ")
        for index in evidence.comparisons:
            item = finding.comparisons[index]
            out.say(f"{item.limit.term} {words.bound(item.limit)}: {item.limit.citation.short}", 5, "limit ")
    for caution in problem.cautions:
        out.say(caution.text, 3, "! ")
    if problem.decides:
        out.say(f"Who decides: {problem.decides}", 3)


def _stage(out: _Writer, number: int, stage: Stage) -> None:
    out.say(f"{number}. {stage.title} ({stage.where})")
    if stage.why:
        out.say(stage.why, 3)
    for condition in stage.feed:
        out.say(f"feed water, {condition.text}: {condition.status}", 3, "- ")
    for figure in stage.sizes:
        us = words.in_us_units(figure)
        out.say(f"{figure.label}: {words.computed(figure)}{f' ({us})' if us else ''}", 3, "- ")
    for title, text in (
        *(("adds", text) for text in stage.adds),
        ("ask for", stage.certification),
        ("upkeep", stage.maintenance),
        ("how it fails", stage.failure),
        ("tests", stage.tests),
    ):
        if text:
            out.say(f"{title}: {text}", 3, "- ")


def _first(out: _Writer, finding: Interpretation) -> None:
    if not finding.actions:
        out.say(words.no_action(finding))
    for action in finding.actions:
        hazard = words.heading(finding, action.hazard)
        out.say(f"{hazard}: {action.text}", 0, f"[{action.deadline}] ")
        uses = (("boiling", action.boiling), ("bathing", action.bathing), ("infant formula", action.infant_formula))
        for title, text in uses:
            if text:
                out.say(f"{title}: {text}", 4, "- ")


def _missing(out: _Writer, finding: Interpretation) -> None:
    for item in finding.missing:
        extra = "; ".join(part for part in (item.bottle, item.holding_time) if part)
        out.say(words.asked(item) + (f" ({extra})" if extra else ""), 0, "- ")


def _problems(out: _Writer, finding: Interpretation) -> None:
    if not finding.problems:
        out.say("None found among what was reported. That is not a statement about what was not tested.")
    for number, problem in enumerate(finding.problems, 1):
        _problem(out, finding, number, problem)


def _checks(out: _Writer, finding: Interpretation) -> None:
    rows = [(check.title, _STATUS[check.status], check.text) for check in finding.checks]
    out.raw(table(("check", "outcome", "what was found"), rows, out.width))


def _signs(out: _Writer, finding: Interpretation) -> None:
    for sign in finding.signs:
        out.say(f"{sign.title} [{sign.certainty}]: {sign.text} {sign.question}".strip(), 0, "- ")


def _comparison(finding: Interpretation, item: Comparison) -> tuple[str, ...]:
    reported = "; ".join(words.amount(finding.sample.results[index]) for index in item.results)
    if not reported and item.amount is not None:
        reported = words.interval(item.amount.low, item.amount.high, item.unit)
    state = words.verdict(item) if item.condition_settled else "condition not settled, decides nothing"
    reasons = f" ({'; '.join(map(words.reason, item.reasons))})" if item.reasons else ""
    later = f" {item.later}" if item.later else ""
    limit = f"{item.limit.term} {words.bound(item.limit)}"
    return words.label(item.analyte), reported, limit, f"{state}{reasons}{later}; {item.limit.citation.short}"


def _comparisons(out: _Writer, finding: Interpretation) -> None:
    rows = [_comparison(finding, item) for item in words.ranked(finding)]
    out.raw(table(("analyte", "result", "limit", "verdict and citation"), rows, out.width))


def _chemistry(out: _Writer, finding: Interpretation) -> None:
    values = (*finding.hardness, *finding.ion_balance, *finding.scaling, *finding.corrosion)
    rows = [(item.label, words.computed(item), str(item.source or "")) for item in values]
    out.raw(table(("value", "result", "source"), rows, out.width))


def _treatment(out: _Writer, finding: Interpretation) -> None:
    treatment = finding.treatment
    if treatment.text:
        out.say(treatment.text)
    for step in treatment.steps_first:
        out.say(step, 0, "first: ")
    for number, stage in enumerate(treatment.stages, 1):
        _stage(out, number, stage)
    for code in treatment.unanswered:
        out.say(f"not answered by this train: {words.heading(finding, code)}", 0, "- ")
    if treatment.runner_up:
        out.say(f"Runner-up: {'; '.join(treatment.runner_up_titles)}. {treatment.runner_up_why}")


def _cautions(out: _Writer, finding: Interpretation) -> None:
    for caution in words.general(finding):
        out.say(caution.text, 0, "! ")


def _standing(out: _Writer, finding: Interpretation) -> None:
    for text in finding.standing:
        out.say(text)
    for text in words.documents(finding):
        out.say(text, 0, "document: ")


_SECTIONS = (
    ("Before anything else", _cautions),
    ("What to do first", _first),
    ("Not tested, or not known", _missing),
    ("Problems", _problems),
    ("Can the report be trusted", _checks),
    ("Signs in the numbers", _signs),
    ("Results against limits", _comparisons),
    ("Chemistry", _chemistry),
    ("Treatment to consider", _treatment),
    ("Standing of the limits", _standing),
)


def render(finding: Interpretation, width: int = 100) -> str:
    """The whole interpretation as text, what to do first."""
    out = _Writer(width)
    out.say(words.about(finding.sample))
    out.say(
        f"Compared with {', '.join(map(words.authority, finding.authorities))} as in force on {words.day(finding.on)}."
    )
    out.say(words.NOTICE)
    for title, section in _SECTIONS:
        part = _Writer(width)
        section(part, finding)
        if part.lines:
            out.head(title)
            out.lines += part.lines
    return "\n".join(out.lines) + "\n"
