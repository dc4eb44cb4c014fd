"""Rows of limits as a document prints them, checked one by one and converted to the canonical units."""

from __future__ import annotations

import csv
import math
import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from enum import StrEnum
from functools import cache
from pathlib import Path
from typing import TypeVar

from wellchem.errors import LimitsError
from wellchem.limits.conditions import faults
from wellchem.limits.documents import Document, authorities, documents, unknown
from wellchem.models.codes import Checked, Fraction, LimitKind
from wellchem.reference import folder
from wellchem.vocabulary import Vocabulary, bundled

COLUMNS = (
    *("analyte", "limit_term", "kind", "minimum", "maximum", "unit", "basis", "fraction", "combine", "members"),
    *("applies_when", "compliance", "in_force_from", "in_force_to", "source", "locator", "checked", "note"),
)
NEEDED = ("analyte", "limit_term", "kind", "unit")
COMBINES = ("", "sum", "difference", "sum_of_ratios")

_NOT_IN_FORCE = re.compile(r"\)\s*$")
_SLUG = re.compile(r"[^\w.^+-]+")
_AMOUNT = re.compile(r"\s*([0-9.eE+-]+)\s+(.+)")
_Code = TypeVar("_Code", bound=StrEnum)


@dataclass(frozen=True)
class Member:
    """A member of a group limit; `share` is what one canonical unit of it adds to the group's amount."""

    analyte: str
    share: float = 1.0


@dataclass(frozen=True, eq=False)
class LimitRow:
    """One limit: as printed, and its bounds in the analyte's canonical unit and basis."""

    id: str
    authority: str
    analyte: str
    term: str
    kind: LimitKind
    minimum: float | None
    maximum: float | None
    unit: str
    basis: str | None
    fraction: Fraction | None
    canonical_minimum: float | None
    canonical_maximum: float | None
    canonical_unit: str
    combine: str
    members: tuple[Member, ...]
    printed_members: tuple[str, ...]
    applies_when: tuple[str, ...]
    compliance: str
    starts: date | None
    ends: date | None
    source: str
    locator: str
    checked: Checked
    note: str

    @property
    def in_plain_comparison(self) -> bool:
        """Whether results are compared with it: it has a number, and no mark as `(proposed)` ends its term."""
        has_number = self.minimum is not None or self.maximum is not None
        return has_number and not _NOT_IN_FORCE.search(self.term)


@dataclass(frozen=True, eq=False)
class LimitTable:
    """The limits of one authority and the documents that they cite."""

    authority: str
    rows: tuple[LimitRow, ...]
    documents: Mapping[str, Document]


@cache
def table_of(authority: str) -> LimitTable:
    """The bundled limits of an authority. Raises UnknownAuthority."""
    if authority not in authorities():
        raise unknown(authority)
    return _read(folder() / f"{authority}.csv", authority, documents(), bundled())


def load(path: str | Path, authority: str | None = None, vocabulary: Vocabulary | None = None) -> LimitTable:
    """Limits of your own from a CSV file with the columns of the bundled tables.

    `analyte, limit_term, kind, unit` and one of `minimum, maximum` are needed; the other columns may be left out.
    `source` may be the title of a document. `authority` is the name to show; the file's name by default. `vocabulary`
    is one extended by analytes of your own, where the limits are on such.
    Raises LimitsError, which lists every faulty row and why.
    """
    path = Path(path)
    return _read(path, authority or path.stem, {}, vocabulary or bundled())


def own_tables(limits: LimitTable | Iterable[LimitTable] | None) -> tuple[LimitTable, ...]:
    """The tables that a caller passed in: none, one or several."""
    return () if limits is None else (limits,) if isinstance(limits, LimitTable) else tuple(limits)


def _read(path: Path, authority: str, cited: Mapping[str, Document], vocabulary: Vocabulary) -> LimitTable:
    try:
        with path.open(encoding="utf-8-sig", newline="") as lines:
            reader = csv.DictReader(lines)
            header = reader.fieldnames or []
            cells = [(reader.line_num, row) for row in reader]
    except (OSError, UnicodeDecodeError, csv.Error) as error:
        raise LimitsError(f"{path.name} could not be read as a CSV table in UTF-8: {error}") from error
    problems = [f"column {name!r} is missing" for name in NEEDED if name not in header]
    problems += [f"column {name!r} is not one of {', '.join(COLUMNS)}" for name in header if name not in COLUMNS]
    if not problems:
        made = []
        for line, row in cells:
            if any(row.values()):
                parser = _Parser(row, authority, vocabulary, cited)
                parsed = parser.parse()
                problems += [f"line {line}: {fault}" for fault in parser.faults]
                if parsed is not None:
                    made.append((line, parsed))
        rows, doubles = _named(made)
        problems += doubles
    if problems:
        raise LimitsError(f"{path.name} has {len(problems)} fault{'s' * (len(problems) > 1)}:\n" + "\n".join(problems))
    return LimitTable(authority, tuple(rows), cited)


class _Parser:
    """One printed row: what it says, and every fault found on the way."""

    def __init__(
        self, row: Mapping[str, str | None], authority: str, vocabulary: Vocabulary, cited: Mapping[str, Document]
    ) -> None:
        self.row = {name: (row.get(name) or "").strip() for name in COLUMNS}
        self.authority = authority
        self.vocabulary = vocabulary
        self.cited = cited
        self.faults: list[str] = ["more cells than columns"] if None in row else []

    def parse(self) -> LimitRow | None:
        """The row, or None where it has faults."""
        row = self.row
        analyte = row["analyte"]
        if analyte not in self.vocabulary.analytes:
            near = ", ".join(self.vocabulary.suggest(analyte)) if analyte else ""
            self.faults.append(
                f"analyte {analyte!r} is not in the vocabulary" + (f" (nearest: {near})" if near else "")
            )
            return None
        if not row["limit_term"]:
            self.faults.append("limit_term is empty")
        kind = self.code("kind", LimitKind)
        fraction = self.code("fraction", Fraction)
        checked = self.code("checked", Checked)
        minimum, maximum = self.number("minimum"), self.number("maximum")
        if minimum is not None and maximum is not None and minimum >= maximum:
            self.faults.append(f"minimum {minimum:g} is not below maximum {maximum:g}")
        starts, ends = self.day("in_force_from"), self.day("in_force_to")
        if starts and ends and starts > ends:
            self.faults.append(f"in_force_from {starts} is after in_force_to {ends}")
        if self.cited and row["source"] not in self.cited:
            self.faults.append(f"source {row['source']!r} is not among the documents")
        conditions = tuple(part.strip() for part in row["applies_when"].split(";") if part.strip())
        self.faults += [fault for condition in conditions for fault in faults(condition)]
        factor, offset = self.conversion(analyte, row["unit"], row["basis"], minimum is None and maximum is None)
        members = tuple(self.members())
        if self.faults or kind is None:
            return None
        return LimitRow(
            id="",
            authority=self.authority,
            analyte=analyte,
            term=row["limit_term"],
            kind=kind,
            minimum=minimum,
            maximum=maximum,
            unit=row["unit"],
            basis=row["basis"] or None,
            fraction=fraction,
            canonical_minimum=None if minimum is None else minimum * factor + offset,
            canonical_maximum=None if maximum is None else maximum * factor + offset,
            canonical_unit=self.vocabulary.analytes[analyte].unit,
            combine=row["combine"],
            members=members,
            printed_members=tuple(part.strip() for part in row["members"].split(";") if part.strip()),
            applies_when=conditions,
            compliance=row["compliance"],
            starts=starts,
            ends=ends,
            source=row["source"],
            locator=row["locator"],
            checked=checked or Checked.MEMORY,
            note=row["note"],
        )

    def code(self, name: str, codes: type[_Code]) -> _Code | None:
        text = self.row[name]
        if not text:
            if name == "kind":
                self.faults.append("kind is empty")
            return None
        try:
            return codes(text)
        except ValueError:
            self.faults.append(f"{name} {text!r} is not one of {', '.join(codes)}")
            return None

    def number(self, name: str) -> float | None:
        text = self.row[name]
        if not text:
            return None
        try:
            value = float(text)
        except ValueError:
            self.faults.append(f"{name} {text!r} is not a number (write a decimal point and no thousands separator)")
            return None
        if not math.isfinite(value):
            self.faults.append(f"{name} {text!r} is not finite")
            return None
        quantity = self.vocabulary.analytes[self.row["analyte"]].quantity
        if value < 0 and quantity not in ("temperature", "potential", "index"):
            self.faults.append(f"{name} {text} is negative")
        return value

    def day(self, name: str) -> date | None:
        text = self.row[name]
        if not text:
            return None
        try:
            return date.fromisoformat(text)
        except ValueError:
            self.faults.append(f"{name} {text!r} is not a date as 2026-01-31")
            return None

    def conversion(self, analyte: str, unit: str, basis: str, numberless: bool) -> tuple[float, float]:
        """Factor and offset from the printed unit and basis to the canonical ones."""
        if not unit and numberless:
            return 1.0, 0.0
        text = f"{unit} as {basis}" if basis else unit
        meaning = self.vocabulary.unit(text, analyte)
        if not unit or meaning.problem:
            canonical = self.vocabulary.analytes[analyte].unit
            self.faults.append(f"unit {text!r} of {analyte} does not convert to {canonical}")
            return 1.0, 0.0
        return meaning.factor, meaning.offset

    def members(self) -> Iterator[Member]:
        combine = self.row["combine"]
        printed = [part.strip() for part in self.row["members"].split(";") if part.strip()]
        if combine not in COMBINES:
            self.faults.append(f"combine {combine!r} is not one of {', '.join(COMBINES[1:])}, or empty")
            return
        if combine and len(printed) < 2:
            self.faults.append(f"{combine} needs two members or more")
        names = [part.partition(":")[0].strip() for part in printed]
        self.faults += [f"member {name!r} stands twice" for name in sorted({n for n in names if names.count(n) > 1})]
        for name, part in zip(names, printed, strict=True):
            if name not in self.vocabulary.analytes:
                self.faults.append(f"member {name!r} is not in the vocabulary")
                continue
            amount = part.partition(":")[2].strip()
            if combine == "sum_of_ratios":
                found = _AMOUNT.fullmatch(amount)
                try:
                    number = float(found[1]) if found else 0.0
                except ValueError:
                    number = 0.0
                if found is None or not number > 0:
                    self.faults.append(f"member {part!r} needs its own limit, as nitrate:50 mg/L as NO3")
                    continue
                factor, _ = self.conversion(name, found[2], "", False)
                yield Member(name, 1.0 / (number * factor))
            elif amount:
                self.faults.append(f"member {part!r}: only sum_of_ratios takes a number for each member")
            else:
                yield Member(name)


def _named(rows: Sequence[tuple[int, LimitRow]]) -> tuple[list[LimitRow], list[str]]:
    """The rows with an id each, and a fault for each that cannot be told from another or overlaps it in time."""
    shared = Counter(_name(row) for _, row in rows)
    named: dict[str, LimitRow] = {}
    windows: dict[tuple[object, ...], list[tuple[date, date, int]]] = {}
    problems = []
    for line, row in rows:
        name = _name(row)
        if shared[name] > 1:
            name = "/".join(part for part in (name, row.kind, row.fraction or "", _slug(row.unit)) if part)
        if name in named:
            problems.append(f"line {line}: the same limit as another row ({name})")
        named[name] = replace(row, id=name)
        same = windows.setdefault((row.analyte, row.term, row.kind, row.fraction, row.applies_when, row.unit), [])
        starts, ends = row.starts or date.min, row.ends or date.max
        problems += [
            f"line {line}: in force at the same time as line {other}, which is otherwise alike"
            for start, end, other in same
            if starts <= end and start <= ends
        ]
        same.append((starts, ends, line))
    return list(named.values()), problems


def _name(row: LimitRow) -> str:
    dated = f"from-{row.starts}" if row.starts else f"to-{row.ends}" if row.ends else ""
    parts = (row.authority, row.analyte, _slug(row.term), _slug(";".join(row.applies_when)), dated)
    return "/".join(part for part in parts if part)


def _slug(text: str) -> str:
    return _SLUG.sub("-", text.lower().replace("!", "not-")).strip("-")
