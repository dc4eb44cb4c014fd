"""The tables of `reference_limits/practice`: thresholds, urgency, care, missing tests, each with its source."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from wellchem.models.finding import Source
from wellchem.reference import folder


@cache
def rows(table: str) -> tuple[Mapping[str, str], ...]:
    """Rows of one table of practice, as text by column."""
    with (folder() / "practice" / f"{table}.csv").open(encoding="utf-8", newline="") as lines:
        return tuple(MappingProxyType(row) for row in csv.DictReader(lines))


@cache
def documents() -> Mapping[str, str]:
    """Title of each document by its id, with publisher and edition."""
    return MappingProxyType(
        {
            row["id"]: ", ".join(part for part in (row["title"], row["publisher"], row["edition"]) if part)
            for row in rows("sources")
        }
    )


@cache
def _source(document: str, locator: str, checked: str) -> Source:
    return Source(title=documents()[document], locator=locator, checked=checked)


def source(row: Mapping[str, str]) -> Source:
    """The document behind a row."""
    return _source(row["source"], row["locator"], row["checked"])


@cache
def level(code: str) -> float:
    """A threshold of `levels.csv`. Raises KeyError for an unknown code."""
    return _levels()[code]


@cache
def _levels() -> dict[str, float]:
    return {row["code"]: float(row["value"]) for row in rows("levels")}


def number(text: str) -> float | None:
    """A number of a table, or None where the cell is empty."""
    return float(text) if text else None


@cache
def by(table: str, column: str) -> Mapping[str, tuple[Mapping[str, str], ...]]:
    """Rows of a table grouped by one of its columns, in order."""
    grouped: dict[str, list[Mapping[str, str]]] = {}
    for row in rows(table):
        grouped.setdefault(row[column], []).append(row)
    return MappingProxyType({key: tuple(group) for key, group in grouped.items()})


@dataclass(frozen=True)
class ProblemKindRow:
    """One problem of `problems.csv`: what it is and which limits raise it."""

    code: str
    title: str
    subject: str
    kind: str
    limits: frozenset[str]
    analytes: tuple[str, ...]
    undecided: str
    decides: str
    text: str
    noticed: str


@cache
def problems() -> tuple[ProblemKindRow, ...]:
    """The catalogue of problems, in order."""
    return tuple(
        ProblemKindRow(
            code=row["code"],
            title=row["title"],
            subject=row["subject"],
            kind=row["kind"],
            limits=frozenset(filter(None, row["limits"].split(";"))),
            analytes=tuple(filter(None, row["analytes"].split(";"))),
            undecided="" if row["undecided"] == "detected" else row["undecided"],
            decides=row["decides"],
            text=row["text"],
            noticed=row["noticed"],
        )
        for row in rows("problems")
    )


@cache
def problem_index() -> Mapping[str, int]:
    """Position of each problem in the catalogue."""
    return MappingProxyType({problem.code: place for place, problem in enumerate(problems())})


@cache
def problem_of(analyte: str, kind: str, verdict: str) -> int:
    """Position of the problem that a limit of this analyte and kind raises; -1 where none is.

    A name in the catalogue goes before a group, a group before the rest; `ph<` and `ph>` take one side only. A health
    goal raises what a health limit would.
    """
    if kind == "goal":
        kind = "health"
    side = "<" if verdict == "below" else ">"
    group = groups().get(analyte, "")
    for wanted in ((analyte, analyte + side), (f"@{group}",), ("*",)):
        for place, problem in enumerate(problems()):
            if kind in problem.limits and any(name in problem.analytes for name in wanted):
                return place
        if wanted[0] == analyte and any(
            kind in problem.limits and any(name in problem.analytes for name in (analyte + "<", analyte + ">"))
            for problem in problems()
        ):
            return -1  # the other side of a limit that counts on one side
    return -1


@cache
def groups() -> Mapping[str, str]:
    """Group of each analyte of the vocabulary."""
    from wellchem.vocabulary import bundled

    return MappingProxyType({key: analyte.group for key, analyte in bundled().analytes.items()})


@cache
def feared() -> frozenset[str]:
    """Analytes that people fear, and would take for cleared where nothing is said of them."""
    from wellchem.vocabulary import bundled

    return frozenset(key for key, analyte in bundled().analytes.items() if "feared" in analyte.traits)


@cache
def signed() -> frozenset[str]:
    """Analytes of which a report may print a number below zero."""
    from wellchem.vocabulary import bundled

    return frozenset(key for key, analyte in bundled().analytes.items() if analyte.possible[0] < 0.0)
