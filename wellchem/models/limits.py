"""A limit with its citation, and the comparison of a result with it."""

from __future__ import annotations

from datetime import date

from wellchem.models.base import Interval, Model
from wellchem.models.codes import Checked, Fraction, LimitKind, Verdict


class Citation(Model):
    """Where a reader finds a limit: document, edition, place, and whether the row was seen there."""

    source: str
    title: str
    publisher: str = ""
    edition: str = ""
    locator: str = ""
    url: str = ""
    checked: Checked = Checked.MEMORY

    @property
    def seen(self) -> str:
        """How the row was checked, as words."""
        return {
            Checked.PAGE: "seen in the document",
            Checked.TRANSPOSITION: "seen in another edition or in a law that takes it over",
            Checked.MEMORY: "from memory, not seen in the document",
        }[self.checked]

    @property
    def short(self) -> str:
        """Title, place and how it was checked; the edition is left to a list of documents."""
        return ", ".join(part for part in (self.title, self.locator) if part) + f" [{self.seen}]"

    @property
    def document(self) -> str:
        """Publisher, title, edition and address."""
        return ", ".join(part for part in (self.publisher, self.title, self.edition, self.url) if part)

    def __str__(self) -> str:
        return ", ".join(part for part in (self.title, self.edition, self.locator) if part) + f" [{self.seen}]"


class Limit(Model):
    """One limit of one authority, in the unit that its document prints and in the canonical one."""

    id: str
    authority: str
    analyte: str
    term: str
    kind: LimitKind
    minimum: float | None = None
    maximum: float | None = None
    unit: str = ""
    basis: str | None = None
    fraction: Fraction | None = None
    canonical_minimum: float | None = None
    canonical_maximum: float | None = None
    canonical_unit: str = ""
    combine: str = ""
    members: tuple[str, ...] = ()
    applies_when: tuple[str, ...] = ()
    compliance: str = ""
    in_force_from: date | None = None
    in_force_to: date | None = None
    compared: bool = True
    note: str = ""
    citation: Citation


class Comparison(Model):
    """What one result, or the results of a group, shows against one limit."""

    analyte: str
    fraction: Fraction | None = None
    verdict: Verdict
    near: bool = False
    ratio: Interval | None = None
    amount: Interval | None = None
    unit: str = ""
    limit: Limit
    on: date | None = None
    date_known: bool = True
    condition_settled: bool = True
    reasons: tuple[str, ...] = ()
    later: str = ""
    results: tuple[int, ...] = ()
