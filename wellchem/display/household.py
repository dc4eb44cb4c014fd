"""The household's half of the page: what to do today, what is not known, what was found, in plain words."""

from __future__ import annotations

from html import escape

from wellchem.display import words
from wellchem.display.markup import items, paragraph, table, tag
from wellchem.models.codes import Certainty, ProblemKind, Urgency
from wellchem.models.finding import Action, Interpretation, Problem

_KIND = {
    ProblemKind.HEALTH: "health",
    ProblemKind.AESTHETIC: "taste, smell, stains",
    ProblemKind.EQUIPMENT: "pipes and appliances",
}
_SURE = {
    Certainty.CERTAIN: "sure enough to act on",
    Certainty.LIKELY: "likely, to be confirmed",
    Certainty.POSSIBLE: "possible, to be found out",
}


def _action(finding: Interpretation, action: Action) -> str:
    urgent = "tag strong" if action.urgency is Urgency.NOW else "tag"
    hazard = tag("strong", f"{words.heading(finding, action.hazard)}: ")
    return f"<li>{tag('span', action.deadline, urgent)}{hazard}{escape(action.text)}</li>"


def _uses(finding: Interpretation) -> str:
    rows = [
        ((words.heading(finding, a.hazard), a.boiling, a.bathing, a.infant_formula), "")
        for a in finding.actions
        if a.boiling or a.bathing or a.infant_formula
    ]
    return table(("hazard", "boiling", "bathing and washing", "infant formula"), rows)


def _problem(finding: Interpretation, problem: Problem) -> str:
    strong = "tag strong" if problem.kind is ProblemKind.HEALTH else "tag"
    parts = [
        f"<h3>{tag('span', _KIND[problem.kind], strong)}{tag('span', _SURE[problem.certainty], 'tag')}"
        f"{escape(problem.title)}</h3>",
        paragraph(words.found(finding, problem)),
        paragraph(problem.text),
        paragraph(f"What you may notice: {problem.noticed}" if problem.noticed else ""),
        *(paragraph(caution.text, "caution") for caution in problem.cautions),
        paragraph(f"Who decides: {problem.decides}" if problem.decides else "", "source"),
    ]
    return f'<div class="problem">{"".join(parts)}</div>'


def render(finding: Interpretation) -> str:
    """The household's half as HTML."""
    tests = [item for item in finding.missing if not item.field]
    questions = [item for item in finding.missing if item.field]
    parts = [
        tag("h1", f"Your well water: {finding.sample.site or finding.sample.id or 'one report'}"),
        paragraph(words.about(finding.sample), "about"),
        f'<div class="notice">{paragraph(words.NOTICE)}</div>',
        tag("h2", "What to do first"),
    ]
    parts += (paragraph(caution.text, "caution") for caution in words.general(finding) if caution.code != "informs")
    if finding.actions:
        steps = "".join(_action(finding, action) for action in finding.actions)
        parts.append(f'<div class="first"><ol>{steps}</ol></div>')
        parts.append(_uses(finding))
    else:
        parts.append(paragraph(words.no_action(finding)))
    parts.append(tag("h2", "What was not tested, or cannot be told"))
    parts.append(
        items(map(words.asked, tests))
        or paragraph("Every test of the usual routine is there; a well changes, so repeat it as the routine says.")
    )
    asked = [words.asked(item) for item in questions]
    asked += [f"{sign.title}: {sign.question}" for sign in finding.signs if sign.question]
    if asked:
        parts.append(tag("h3", "Questions that would change the advice"))
        parts.append(items(asked))
    parts.append(tag("h2", "What was found"))
    if finding.problems:
        parts += (_problem(finding, problem) for problem in finding.problems)
    else:
        parts.append(
            paragraph("No problem was found among what was tested. This says nothing about what was not tested.")
        )
    if finding.treatment.stages or finding.treatment.steps_first:
        parts.append(tag("h2", "What could be done about it"))
        parts.append(items(finding.treatment.steps_first))
        parts.append(items((f"{s.title} ({s.where}). {s.why}" for s in finding.treatment.stages), ordered=True))
        parts.append(
            paragraph(
                "Sizes, sequence and products are for a licensed professional to settle; test the water again after "
                "anything is installed, and as often as its maker and your health authority say."
            )
        )
    return "".join(parts)
