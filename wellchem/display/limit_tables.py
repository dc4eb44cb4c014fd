"""Limits as text: each with its citation, or one table over the authorities."""

from __future__ import annotations

from collections.abc import Sequence

from wellchem.display import words
from wellchem.display.text import table
from wellchem.models.limits import Limit


def _force(limit: Limit) -> str:
    start = words.day(limit.in_force_from) if limit.in_force_from else "start not known"
    end = f" to {words.day(limit.in_force_to)}" if limit.in_force_to else ""
    return f"in force from {start}{end}" if limit.in_force_from else f"{start}{end}"


def _line(limit: Limit) -> list[str]:
    fraction = f" {limit.fraction}" if limit.fraction else ""
    members = f" over {', '.join(map(words.label, limit.members))}" if limit.members else ""
    combine = f" ({words.label(limit.combine)}{members})" if limit.combine else ""
    lines = [
        f"{words.label(limit.analyte)}{fraction}, {limit.authority}: {limit.term} {words.bound(limit)}{combine} "
        f"[{words.kind(limit)}]",
        f"    {limit.citation}; {_force(limit)}",
    ]
    if limit.applies_when:
        lines.append(f"    applies when {', '.join(map(words.label, limit.applies_when))}")
    if limit.compliance:
        lines.append(f"    a public system is judged by {limit.compliance}")
    if not limit.compared:
        lines.append("    shown only, not compared with")
    if limit.note:
        lines.append(f"    {limit.note}")
    return lines


def each(limits: Sequence[Limit], standing: Sequence[str]) -> str:
    """Every limit with its citation, then the standing of each authority's numbers."""
    lines = [line for limit in limits for line in _line(limit)] or ["No limit in force is known here."]
    return "\n".join([*lines, "", *standing]) + "\n"


def across(limits: Sequence[Limit]) -> str:
    """One row for each limit: analyte, authority, term, number, kind, since when."""
    rows = [
        (words.label(x.analyte), x.authority, x.term, words.bound(x), words.kind(x), f"{_force(x)}; {x.citation}")
        for x in limits
    ]
    return table(("analyte", "authority", "term", "limit", "kind", "force and citation"), rows, 140) + "\n"
