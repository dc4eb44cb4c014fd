"""Limits prepared once for comparison: arrays grouped by analyte, and the amounts that are worked out for groups.

An *entry* is one limit as it meets one amount. Most limits are one entry. A class limit (each pesticide by itself)
has an entry for each member. A group limit (a sum, a difference, a sum of ratios) meets the amount of its members
together, which has a code of its own, and where the group is itself an analyte the printed total as well.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from wellchem.errors import LimitsError
from wellchem.limits.conditions import READ
from wellchem.limits.relations import relations
from wellchem.limits.rows import LimitRow, LimitTable, Member
from wellchem.models.codes import Fraction, LimitKind
from wellchem.vocabulary import Vocabulary

FIRST_DAY, LAST_DAY = -(10**7), 10**7

# Bounds are compared with this relative tolerance, so that a number printed in another unit keeps its verdict.
# It is far below the digits of any laboratory.
TOLERANCE = 1e-9

_EPOCH = date(1970, 1, 1).toordinal()


@dataclass(frozen=True)
class Term:
    """One member of an amount: its code and what one unit of it adds, at least and at most."""

    code: int
    least: float
    most: float


@dataclass(frozen=True)
class Amount:
    """An amount worked out from the members' results of one sample.

    `code` is what the entries that meet it are grouped under. `instead_of` is the analyte that must not have a usable
    result of its own in the sample, or -1. `minuend`: the first term less all the others. `decided_only`: it is told
    only where it decides.
    """

    code: int
    terms: tuple[Term, ...]
    instead_of: int
    derived: bool = False
    minuend: bool = False
    decided_only: bool = False


@dataclass(frozen=True, eq=False)
class Prepared:
    """Limits as arrays. Entries are sorted by code; entries of a code are `start[code]` to `start[code + 1]`."""

    limits: tuple[LimitRow, ...]
    tables: tuple[LimitTable, ...]
    vocabulary: Vocabulary
    analytes: tuple[str, ...]
    codes: dict[str, int]
    counts: NDArray[np.bool_]  # by code: whether whole organisms are counted
    signed: NDArray[np.bool_]  # by code: whether it may be below nought
    dimensioned: NDArray[np.bool_]  # by code: whether a number without a unit says nothing
    indexed: NDArray[np.bool_]  # by code: whether amounts or conditions need it by sample
    start: NDArray[np.int64]
    limit: NDArray[np.int32]
    shown: NDArray[np.int32]  # code of the analyte that the comparison is of
    minimum: NDArray[np.float64]
    maximum: NDArray[np.float64]
    fraction: NDArray[np.int8]
    kind: NDArray[np.int8]
    authority: NDArray[np.int16]
    condition: NDArray[np.int16]
    starts: NDArray[np.int32]
    ends: NDArray[np.int32]
    stands_from: NDArray[np.int32]
    other_case: NDArray[np.intp]  # entry of the same limit under the contrary condition, or -1
    conditions: tuple[tuple[str, ...], ...]
    derived: tuple[Amount, ...]
    groups: tuple[Amount, ...]


FRACTIONS = tuple(Fraction)
KINDS = tuple(LimitKind)
_DIMENSIONED = ("concentration", "activity", "conductance", "fibres", "dose", "absorption")


def days(day: date | None, otherwise: int) -> int:
    """Days since 1970-01-01; a time of day is left out."""
    return otherwise if day is None else day.toordinal() - _EPOCH


@lru_cache(maxsize=32)
def prepare(tables: tuple[LimitTable, ...], vocabulary: Vocabulary) -> Prepared:
    """The limits of some authorities that results are compared with, as arrays.

    Raises LimitsError where a table's limits are on analytes that the vocabulary does not have.
    """
    return _Preparation(tables, vocabulary).finish()


class _Preparation:
    def __init__(self, tables: tuple[LimitTable, ...], vocabulary: Vocabulary) -> None:
        self.tables = tables
        self.vocabulary = vocabulary
        self.analytes = sorted(vocabulary.analytes)
        named = {name for table in tables for row in table.rows for name in (row.analyte, *map(_analyte, row.members))}
        if unknown := sorted(named - set(self.analytes)):
            raise LimitsError(f"limits on analytes that the vocabulary does not have: {', '.join(unknown)}")
        self.codes = {analyte: code for code, analyte in enumerate(self.analytes)}
        self.entries: list[tuple[int, int, int]] = []  # code met, limit, analyte shown
        self.groups: dict[tuple[object, ...], Amount] = {}

    def finish(self) -> Prepared:
        authority_of: list[int] = []
        limits: list[LimitRow] = []
        stands_from: list[int] = []
        for position, table in enumerate(self.tables):
            for row in table.rows:
                if row.in_plain_comparison:
                    self.enter(row, len(limits))
                    limits.append(row)
                    authority_of.append(position)
                    document = table.documents.get(row.source)
                    stands_from.append(days(document.stands_from if document else None, LAST_DAY))
        self.entries.sort()
        codes = len(self.codes) + len(self.groups)
        met = np.array([code for code, _, _ in self.entries], dtype=np.int64)
        limit = np.array([index for _, index, _ in self.entries], dtype=np.int32)
        rows = [limits[index] for index in limit]
        conditions = sorted({row.applies_when for row in rows} | {()})
        derived = tuple(self.relation(index) for index in range(len(relations())))
        indexed = np.zeros(codes, dtype=bool)
        for amount in (*derived, *self.groups.values()):
            indexed[[term.code for term in amount.terms]] = True
            if amount.instead_of >= 0:
                indexed[amount.instead_of] = True
        indexed[[self.codes[analyte] for analyte in READ]] = True
        known = [self.vocabulary.analytes[analyte] for analyte in self.analytes]

        def of(*quantities: str) -> NDArray[np.bool_]:
            return np.array([one.quantity in quantities for one in known] + [False] * len(self.groups))

        return Prepared(
            limits=tuple(limits),
            tables=self.tables,
            vocabulary=self.vocabulary,
            analytes=tuple(self.analytes),
            codes=self.codes,
            counts=of("count"),
            signed=np.array([one.possible[0] < 0.0 for one in known] + [False] * len(self.groups)),
            dimensioned=of(*_DIMENSIONED),
            indexed=indexed,
            start=np.searchsorted(met, np.arange(codes + 1)),
            limit=limit,
            shown=np.array([shown for _, _, shown in self.entries], dtype=np.int32),
            minimum=np.array([_number(row.canonical_minimum) for row in rows], dtype=np.float64),
            maximum=np.array([_number(row.canonical_maximum) for row in rows], dtype=np.float64),
            fraction=np.array([FRACTIONS.index(row.fraction) if row.fraction else -1 for row in rows], dtype=np.int8),
            kind=np.array([KINDS.index(row.kind) for row in rows], dtype=np.int8),
            authority=np.array([authority_of[index] for index in limit], dtype=np.int16),
            condition=np.array([conditions.index(row.applies_when) for row in rows], dtype=np.int16),
            starts=np.array([days(row.starts, FIRST_DAY) for row in rows], dtype=np.int32),
            ends=np.array([days(row.ends, LAST_DAY) for row in rows], dtype=np.int32),
            stands_from=np.array(
                [FIRST_DAY if limits[index].starts else stands_from[index] for index in limit], dtype=np.int32
            ),
            other_case=self.other_cases(rows),
            conditions=tuple(conditions),
            derived=derived,
            groups=tuple(self.groups.values()),
        )

    def enter(self, row: LimitRow, index: int) -> None:
        """The entries of one limit."""
        code = self.codes[row.analyte]
        members = tuple(member.analyte for member in row.members)
        if members and not row.combine:
            self.entries += [(self.codes[member], index, self.codes[member]) for member in members]
        elif members:
            self.entries.append((self.group(row), index, code))
        if row.analyte not in members:
            self.entries.append((code, index, code))

    def group(self, row: LimitRow) -> int:
        """Code of the amount of a group limit; limits over the same members share it."""
        terms = [Term(self.codes[member.analyte], member.share, member.share) for member in row.members]
        minuend = row.combine == "difference"
        # Sorted, so that the order of the members changes no digit of the sum.
        terms = (
            terms[:1] + sorted(terms[1:], key=lambda term: term.code)
            if minuend
            else sorted(terms, key=lambda t: t.code)
        )
        of_its_own = -1 if row.analyte in {member.analyte for member in row.members} else self.codes[row.analyte]
        key = (tuple(terms), minuend, of_its_own)
        if key not in self.groups:
            code = len(self.codes) + len(self.groups)
            self.groups[key] = Amount(code, tuple(terms), of_its_own, minuend=minuend)
        return self.groups[key].code

    def relation(self, index: int) -> Amount:
        """The amount that a relation gives for an analyte without a result of its own."""
        relation = relations()[index]
        code = self.codes[relation.analyte]
        members = zip(relation.members, relation.least, relation.most, strict=True)
        terms = tuple(Term(self.codes[member], abs(least), abs(most)) for member, least, most in members)
        less = min(relation.least) < 0
        return Amount(code, terms, code, derived=True, minuend=less, decided_only=relation.decided_only)

    def other_cases(self, rows: list[LimitRow]) -> NDArray[np.intp]:
        """For each entry the one that has the contrary condition, and other numbers."""
        places: dict[tuple[object, ...], int] = {}
        for place, ((code, _, _), row) in enumerate(zip(self.entries, rows, strict=True)):
            places.setdefault((code, *_case(row), frozenset(row.applies_when)), place)
        found = np.full(len(rows), -1, dtype=np.intp)
        for place, ((code, _, _), row) in enumerate(zip(self.entries, rows, strict=True)):
            if len(row.applies_when) == 1:
                condition = row.applies_when[0]
                contrary = condition[1:] if condition.startswith("!") else f"!{condition}"
                found[place] = places.get((code, *_case(row), frozenset({contrary})), -1)
        return found


def _case(row: LimitRow) -> tuple[object, ...]:
    return (row.authority, row.kind, row.fraction, row.starts, row.ends)


def _analyte(member: Member) -> str:
    return member.analyte


def _number(bound: float | None) -> float:
    return float("nan") if bound is None else bound
