"""A report that was read, as text: the cleaned results of each sample, quality control, the unread list."""

from __future__ import annotations

from collections import Counter

from wellchem.display import words
from wellchem.display.text import table
from wellchem.models.sample import Report, Sample, TableExplanation


def _sample(sample: Sample, width: int) -> str:
    rows = []
    for result in sample.results:
        extra = [*result.qualifiers, *(f"supposed {assumption}" for assumption in result.assumptions)]
        rows.append(
            (
                words.label(result.analyte),
                result.fraction or "",
                words.amount(result),
                words.printed(result),
                words.place(result.origin),
                "; ".join(extra),
            )
        )
    return table(("analyte", "fraction", "result", "printed", "place", "qualifiers, suppositions"), rows, width)


def _table(number: int, part: TableExplanation) -> list[str]:
    where = f"page {part.page}" if part.page is not None else f"sheet {part.sheet}" if part.sheet else "file"
    rows = f"rows {part.first_row} to {part.last_row}"
    lines = [f"table {number}: {where}, {rows}, {part.layout}; {part.results} results, {part.unread} unread"]
    for column in part.columns:
        lines.append(f"  column {column.column} {column.header!r}: {words.label(column.role)} ({column.why})")
    lines += [f"  {note}" for note in part.notes]
    return lines


def render(report: Report, explain: bool = False, width: int = 120) -> str:
    """The report as text; `explain` adds how each table was understood and the account of every cell or word."""
    lines = [report.source]
    for sample in report.samples:
        lines += ["", words.about(sample), _sample(sample, width)]
    for sample in report.quality_control:
        lines += ["", f"Quality control, {sample.role}: {words.about(sample)}", _sample(sample, width)]
    if report.unread:
        counts = ", ".join(f"{words.label(k)} {n}" for k, n in Counter(u.reason for u in report.unread).most_common())
        rows = [
            (
                words.label(u.reason),
                u.text[:60],
                words.place(u.origin),
                "; ".join([u.detail, *u.suggestions]).strip("; "),
            )
            for u in report.unread
        ]
        lines += ["", f"Unread: {counts}", table(("reason", "text", "place", "detail, nearest names"), rows, width)]
    if explain:
        told = report.explanation
        lines += ["", "How it was understood", f"format {told.format}"]
        for name in ("encoding", "delimiter", "decimal"):
            if value := getattr(told, name):
                lines.append(f"{name} {value!r}")
        for number, part in enumerate(told.tables, 1):
            lines += _table(number, part)
        layout = ", ".join(f"{words.label(part.kind)} {part.cells}" for part in told.layout)
        lines.append(
            f"{told.cells} cells or words: {told.cells_in_results} in results, {told.cells_in_quality_control} in "
            f"quality control, {told.cells_unread} unread{f'; layout: {layout}' if layout else ''}"
        )
        lines += told.notes
    return "\n".join(lines) + "\n"
