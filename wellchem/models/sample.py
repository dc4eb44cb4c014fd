"""What a report says: results with their origin, samples, what could not be read, and how the file was understood."""

from __future__ import annotations

from datetime import date, datetime
from typing import TYPE_CHECKING, Any

from pydantic import Field

from wellchem.errors import AmbiguousResult
from wellchem.models.base import Interval, Model
from wellchem.models.codes import (
    Censoring,
    Fraction,
    LayoutKind,
    Measured,
    Role,
    SamplingPoint,
    UnreadReason,
)

if TYPE_CHECKING:
    import pandas as pd


class Origin(Model):
    """The place in a source: file, page or sheet, row and column counted from 1, the box on a page in points."""

    source: str
    page: int | None = None
    sheet: str | None = None
    row: int | None = None
    column: int | None = None
    box: tuple[float, float, float, float] | None = None

    def __str__(self) -> str:
        parts = [self.source]
        parts += [f"page {self.page}"] if self.page is not None else []
        parts += [f"sheet {self.sheet}"] if self.sheet is not None else []
        parts += [f"row {self.row}"] if self.row is not None else []
        parts += [f"column {self.column}"] if self.column is not None else []
        return ", ".join(parts)


class Printed(Model):
    """What the laboratory printed, letter by letter."""

    name: str = ""
    value: str = ""
    unit: str = ""


class Assumption(Model):
    """Something that was not printed and had to be supposed: `unit=mg/L`."""

    code: str
    value: str

    def __str__(self) -> str:
        return f"{self.code}={self.value}"


class Result(Model):
    """One analyte's result in canonical unit and basis, bounded, with what was printed and where."""

    analyte: str
    fraction: Fraction | None = None
    basis: str | None = None
    censoring: Censoring = Censoring.NONE
    value: float | None = None
    low: float | None = None
    high: float | None = None
    unit: str | None = None
    uncertainty: float | None = None
    reporting_limit: float | None = None
    detection_limit: float | None = None
    qualifiers: tuple[str, ...] = ()
    method: str | None = None
    measured: Measured | None = None
    assumptions: tuple[Assumption, ...] = ()
    printed: Printed = Printed()
    origin: Origin | None = None

    @property
    def interval(self) -> Interval | None:
        """Bounds of the result, or None where it bounds nothing."""
        if self.low is None and self.high is None:
            return None
        return Interval(
            low=float("-inf") if self.low is None else self.low,
            high=float("inf") if self.high is None else self.high,
        )

    @property
    def detected(self) -> bool | None:
        """True where the analyte was found, False where it was not, None where nothing was reported."""
        if self.censoring is Censoring.NOT_REPORTED:
            return None
        if self.censoring is Censoring.NONE and "U" in self.qualifiers:
            return False
        return self.censoring not in (Censoring.LEFT, Censoring.ABSENT)


class Sample(Model):
    """One sample of water: what the report says of it, and its results."""

    id: str = ""
    key: str = ""
    role: Role = Role.ROUTINE
    site: str | None = None
    point: SamplingPoint | None = None
    matrix: str | None = None
    collected: date | datetime | None = None
    received: date | datetime | None = None
    analysed: date | datetime | None = None
    preserved: str | None = None
    laboratory: str | None = None
    latitude: float | None = None
    longitude: float | None = None
    well_depth: float | None = Field(default=None, description="metres")
    aquifer: str | None = None
    results: tuple[Result, ...] = ()
    source: str = ""

    def all(
        self,
        analyte: str,
        *,
        fraction: Fraction | str | None = None,
        basis: str | None = None,
        measured: Measured | str | None = None,
    ) -> tuple[Result, ...]:
        """Every result of the analyte, narrowed by what is given."""
        return tuple(
            result
            for result in self.results
            if result.analyte == analyte
            and (fraction is None or result.fraction == fraction)
            and (basis is None or result.basis == basis)
            and (measured is None or result.measured == measured)
        )

    def get(
        self,
        analyte: str,
        *,
        fraction: Fraction | str | None = None,
        basis: str | None = None,
        measured: Measured | str | None = None,
    ) -> Result | None:
        """The one result that fits, or None. Raises AmbiguousResult where two fit."""
        found = self.all(analyte, fraction=fraction, basis=basis, measured=measured)
        if len(found) > 1:
            what = "; ".join(f"{r.printed.name or r.analyte} {r.printed.value} {r.printed.unit}" for r in found)
            raise AmbiguousResult(
                f"{len(found)} results of {analyte} fit in sample {self.id!r}: {what}. "
                "Narrow with fraction=, basis= or measured=, or take all()."
            )
        return found[0] if found else None

    @classmethod
    def from_values(cls, values: dict[str, Any], **about: Any) -> Sample:
        """A sample from printed names and values, through the same vocabulary as a report.

        `values` maps a printed name to a number or a text ("2.4 mg/L", "<0.5 µg/L", "Absent"); `about` gives fields
        of the sample (id, site, collected, point ...). Raises UnknownAnalyte, UnitError or ValueUnread.
        """
        from wellchem.normalise import sample_from_values  # the one way up: a model that makes itself

        return sample_from_values(values, **about)


class Unread(Model):
    """Something printed that did not become a result, with its place and the reason."""

    reason: UnreadReason
    text: str
    detail: str = ""
    suggestions: tuple[str, ...] = ()
    origin: Origin | None = None


class ColumnRole(Model):
    """Which role one column of a grid took, and why."""

    column: int
    header: str
    role: str
    why: str


class TableExplanation(Model):
    """How one table was understood."""

    page: int | None = None
    sheet: str | None = None
    first_row: int
    last_row: int
    layout: str
    columns: tuple[ColumnRole, ...] = ()
    results: int = 0
    unread: int = 0
    notes: tuple[str, ...] = ()


class Layout(Model):
    """Cells or words that are part of the layout, by kind, with how many there are."""

    kind: LayoutKind
    cells: int


class Explanation(Model):
    """How a file was understood: its format, each table, and the account of every non-empty cell or word."""

    format: str
    encoding: str | None = None
    delimiter: str | None = None
    decimal: str | None = None
    tables: tuple[TableExplanation, ...] = ()
    layout: tuple[Layout, ...] = ()
    cells: int = Field(default=0, description="non-empty cells or words in the source")
    cells_in_results: int = 0
    cells_in_quality_control: int = 0
    cells_unread: int = 0
    notes: tuple[str, ...] = ()

    @property
    def balanced(self) -> bool:
        """Whether every non-empty cell or word is claimed exactly once."""
        claimed = self.cells_in_results + self.cells_in_quality_control + self.cells_unread
        return self.cells == claimed + sum(part.cells for part in self.layout)


class Report(Model):
    """One file, read: the household's samples apart from the laboratory's own, and what was not understood."""

    source: str
    samples: tuple[Sample, ...] = ()
    quality_control: tuple[Sample, ...] = ()
    unread: tuple[Unread, ...] = ()
    explanation: Explanation
    library_version: str = ""
    schema_version: str = ""

    def to_frame(self) -> pd.DataFrame:
        """The results frame of every sample, quality control with its role (see wellchem.schema)."""
        from wellchem.schema import results_frame

        return results_frame((*self.samples, *self.quality_control))
