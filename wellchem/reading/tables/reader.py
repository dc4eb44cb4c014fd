"""What is known while grids are read one after the other: the sample, the section, what is claimed and printed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import reduce
from typing import Any

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import LayoutKind, Role, UnreadReason
from wellchem.reading.dates import visit_in
from wellchem.reading.grid import Source
from wellchem.reading.ledger import Ledger
from wellchem.reading.rows import (
    TEXT_FIELDS,
    Coded,
    Loose,
    PrintedRows,
    Table,
    constant,
    of,
)
from wellchem.reading.tables.carry import Carried
from wellchem.reading.tables.cells import Cells, Lexicon
from wellchem.reading.tables.dated import clause_begun, dates_said, with_dates
from wellchem.reading.tables.headers import Header
from wellchem.reading.tables.heads import IDENTIFYING, Said, said_in, unlabelled_in
from wellchem.reading.tables.samples import IDENTITY, OTHER_ID, OTHER_TYPE, SampleBook
from wellchem.reading.tables.sheets import named_sheets
from wellchem.vocabulary import Vocabulary


@dataclass
class Section:
    """What a title says of the rows beneath it."""

    fraction: str = ""
    measured: str = ""
    role: str = ""
    basis: str = ""
    unit: str = ""
    name: str = ""  # the analyte of a table that has no column of names
    apart: str = ""  # the title of limits, statistics or earlier results, which are nobody's sample
    of_surrogates: bool = False  # whether its quality control ends with the next title
    of_lines: bool = False  # whether running lines gave results under it: then a table beneath is another part


@dataclass
class Labelled:
    """What labels have said so far: by the column in which they stand, up to which row of which grid."""

    grid: int = -1
    row: int = -1
    said: dict[int, dict[str, str]] = field(default_factory=dict)


@dataclass
class Reader:
    """Everything that is known while the grids are read one after the other."""

    source: Source
    vocabulary: Vocabulary
    lexicon: Lexicon = field(init=False)
    ledger: Ledger = field(init=False)
    named: frozenset[int] = field(init=False)  # grids whose sheet is named after their water
    samples: SampleBook = field(default_factory=SampleBook)
    parts: list[PrintedRows] = field(default_factory=list)
    tables: list[Table] = field(default_factory=list)
    loose: list[Loose] = field(default_factory=list)
    quoted: list[int] = field(default_factory=list)  # printed rows of sentences in paragraphs
    legend: dict[str, str] = field(default_factory=dict)
    entries: list[dict[str, str]] = field(default_factory=list)
    said: dict[str, str] = field(default_factory=dict)
    in_words: dict[str, str] = field(default_factory=dict)
    clause: tuple[int, int, str] = (-1, -1, "")
    section: Section = field(default_factory=Section)
    carried: Carried | None = None
    heard: list[tuple[int, Said]] = field(default_factory=list)
    labelled: Labelled = field(default_factory=Labelled)
    beneath: tuple[int, int] = (-1, -1)  # grid and row of the last label that a result above it took
    unit_note: str = ""
    water: str = ""  # the title of a sheet that is named after its water
    block: int = 0
    results_since_head: bool = False
    printed: int = 0

    def __post_init__(self) -> None:
        self.lexicon = Lexicon(self.vocabulary)
        self.ledger = Ledger(self.source.grids)
        self.named = named_sheets(self.source, self.lexicon)

    def cells(self, grid: int) -> Cells:
        """A grid with its lines."""
        return Cells(self.source.grids[grid], self.lexicon)

    def header_rows(self, grid: int, cells: Cells, rows: range) -> None:
        """Claim the rows of a header; what they say of a sample is heard."""
        if self.section.of_lines:
            self.section.measured = ""
        for row in rows:
            self.hear(grid, cells, row)
            self.layout_row(grid, row, LayoutKind.HEADER)

    def hear(self, grid: int, cells: Cells, row: int) -> None:
        """Take what a row says of samples as labels and texts."""
        told = said_in(cells, row)
        if any(said.text for said in told) and not any(said.field.startswith("date_") for said in told):
            self.hear_dates(grid, row, " ".join(cell.text for cell in cells.line(row)))
        for said in (*unlabelled_in(cells, row, told), *told):
            if said.text:
                self.say(said.field, said.text)
                self.heard.append((grid, said))
            self.ledger.layout(grid, slice(row, row + 1), said.columns, LayoutKind.SAMPLE_HEAD)

    def heard_in(self, grid: int, first: int, last: int) -> dict[str, str]:
        """What rows of this grid said within some columns since the last table."""
        return {said.field: said.text for at, said in self.heard if at == grid and first <= said.columns[0] <= last}

    def say(self, field_name: str, text: str) -> None:
        """Take what a report says of a sample; another identity begins another sample's block."""
        known = self.said.get(field_name)
        if known == text:
            return
        if field_name in IDENTIFYING and self.results_since_head:
            keep = ("laboratory", "date_received") if field_name == "sample_id" else ("laboratory",)
            self.said = {name: self.said[name] for name in keep if name in self.said}
            self.section = Section()
            self.block += 1
            self.results_since_head = False
        elif field_name in self.in_words:
            del self.in_words[field_name]  # a label's text comes before a line's
        elif known is not None and field_name not in IDENTIFYING and not self.results_since_head:
            return  # the first text stands: a report's own dates come before those of its foot
        elif known is not None and field_name == "sample_id":
            self.say_also("site", known)
        if field_name == "sample_type" or field_name == "sample_id":
            meaning = self.lexicon.phrase(text)
            if field_name == "sample_id" and self.section.role and not (meaning and meaning.role):
                self.section = Section()
        self.said[field_name] = text

    def hear_dates(self, grid: int, row: int, text: str) -> bool:
        """Take the dates that a line of words gives; its sentence may have begun in the row above.

        A label's date stands before it. Two days for one thing, and no results between them, are of two samples: none
        is taken.
        """
        begun = self.clause[2] if self.clause[:2] == (grid, row - 1) else ""
        told, self.clause = dates_said(self.lexicon, begun, text), (grid, row, clause_begun(text))
        for field_name, date in told.items():
            if field_name in self.said and field_name not in self.in_words:
                continue
            again = self.in_words.get(field_name, date) != date and not self.results_since_head
            self.said.pop(field_name, None)
            if not again:
                self.say(field_name, date)
            self.in_words[field_name] = "" if again else date
        return bool(told)

    def say_also(self, field_name: str, text: str) -> None:
        """Take something said only where nothing else is said of it."""
        self.said.setdefault(field_name, text)

    def loose_row(self, grid: int, row: int, columns: list[int], reason: UnreadReason, detail: str = "") -> None:
        """Leave some cells of a row unread."""
        text = " | ".join(self.source.grids[grid].columns[column].text(row) for column in columns)
        self.loose.append(Loose(reason, text, grid, row, columns[0] if columns else 0, detail))
        self.ledger.unread(grid, slice(row, row + 1), columns)

    def layout_row(self, grid: int, row: int, kind: LayoutKind) -> None:
        """Claim what is left of a row as layout."""
        self.ledger.layout(grid, slice(row, row + 1), range(self.source.grids[grid].width), kind)

    def samples_of(self, identity: dict[str, Coded], own: dict[str, str], count: int) -> NDArray[np.int32]:
        """Samples of rows of a table: from its columns, from its column's heading, else from what was said before."""
        said = with_dates(self.lexicon, {**self.said, **own})
        if "point" in own and "sample_id" not in own:  # a heading that names the point names the sample too
            said.setdefault("sample_id", own["point"])
        if self.water and not {"sample_id", "site"} & {*said, *identity}:
            said["site"] = self.water
        self.results_since_head = True
        identity = self._one_type(identity)
        if identity:
            return self.samples.many(identity, said, self.block)
        return np.full(count, self.samples.one(said, self.block), np.int32)

    def _one_type(self, identity: dict[str, Coded]) -> dict[str, Coded]:
        """The columns that say a kind of sample as one column of its role."""
        kinds = {
            # "Matrix spike KB-1" says what it is as a sample's own name does.
            "sample_type": lambda text: self.vocabulary.sample_role(text) or self.vocabulary.id_role(text),
            OTHER_TYPE: self.vocabulary.sample_role,
            OTHER_ID: self.vocabulary.id_role,
        }
        types = [self._roles(identity[name], role_of) for name, role_of in kinds.items() if name in identity]
        if not types:
            return identity
        others = {name: text for name, text in identity.items() if name not in kinds}
        return {**others, "sample_type": reduce(Coded.or_else, types)}

    def _roles(self, types: Coded, role_of: Callable[[str], Role | None]) -> Coded:
        """Kinds of sample by their role alone: two routine kinds of one sample number are one sample."""
        roles = [role_of(str(text)) for text in types.texts]
        made = of(["" if role is None or role is Role.ROUTINE else str(role) for role in roles])
        return types.reworded(made)

    def samples_apart(self, identity: dict[str, Coded], count: int) -> NDArray[np.int32]:
        """Samples of rows that are a sample each, even where they say nothing of themselves."""
        if any(name in identity for name in IDENTITY):
            return self.samples_of(identity, {}, count)
        said = with_dates(self.lexicon, dict(self.said))
        self.results_since_head = True
        sections = np.arange(self.block + 1, self.block + 1 + count, dtype=np.int32)
        self.block += count
        return self.samples.apart(self._one_type(identity), said, sections)

    def emit(
        self,
        grid: int,
        rows: NDArray[np.int32],
        column: int,
        texts: dict[str, Coded],
        sample: NDArray[np.int32],
        *,
        native: NDArray[np.bool_] | None = None,
    ) -> NDArray[np.int32]:
        """Add printed rows and return their numbers. `texts` gives the printed fields; the section fills others."""
        count = len(rows)
        filled: dict[str, Any] = {}
        given = {
            "fraction": self.section.fraction,
            "measured": self.section.measured,
            "basis": self.section.basis,
        }
        for name in TEXT_FIELDS:
            mine = texts.get(name)
            default = given.get(name, "")
            if mine is None:
                mine = constant(default, count)
            elif default:
                mine = mine.or_else(constant(default, count))
            filled[name] = mine
        if over := self.section.unit or self.unit_note:
            filled["unit"] = filled["unit"].or_else(self.unit_where_possible(over, filled["name"]))
        if self.section.apart:
            filled["statistic"] = filled["statistic"].or_else(constant(self.section.apart, count))
        if (told := self.source.grids[grid].statistics.get(column)) is not None:
            filled["statistic"] = filled["statistic"].or_else(of([told.get(row, "") for row in rows.tolist()]))
        if self.section.role and self.section.role != Role.ROUTINE:
            filled["quality_control"] = filled["quality_control"].or_else(constant(self.section.role, count))
        self.parts.append(
            PrintedRows(
                **filled,
                native=np.zeros(count, bool) if native is None else native,
                sample=sample,
                table=np.full(count, len(self.tables), np.int32),
                grid=np.full(count, grid, np.int32),
                row=rows.astype(np.int32),
                column=np.full(count, column, np.int32),
            )
        )
        numbers = np.arange(self.printed, self.printed + count, dtype=np.int32)
        self.printed += count
        return numbers

    def unit_where_possible(self, unit: str, name: Coded) -> Coded:
        """The unit of a heading, a title or a note for the names that it can be meant for."""
        meant = [self._is_meant_for(str(text), unit) for text in name.texts]
        return constant(unit, len(name)).kept(np.array([*meant, True])[name.codes])

    def _is_meant_for(self, name: str, unit: str) -> bool:
        """Whether a unit printed over many names is this one's: mg/L is none of pH, nor where the name has its own."""
        found = self.vocabulary.name(name, unit=unit)
        if found is None or self.vocabulary.unit(unit, found.analyte, found).problem is None:
            return True
        return not found.unit and self.vocabulary.analytes[found.analyte].quantity in ("concentration", "activity")

    def open_grid(self, grid: int) -> None:
        """A new sheet begins without the titles of the last one; a page goes on where the last one ended."""
        here = self.source.grids[grid]
        self.samples.visit = visit_in(here.sheet or "")
        self.water = (here.sheet or "") if grid in self.named else ""
        if grid and here.page is None and here.sheet != self.source.grids[grid - 1].sheet:
            self.section = Section()
            self.carried = None
        if here.page is None and (title := here.sheet or ""):
            phrase = self.lexicon.phrase(title)
            if phrase is not None and phrase.role is not None and phrase.role is not Role.ROUTINE:
                self.section.role = str(phrase.role)
            elif self.vocabulary.label_role(title):
                self.section.apart = title
            elif self.lexicon.is_name(title):
                self.section.name = title
            elif self.water:
                self.said = {name: text for name, text in self.said.items() if name not in IDENTIFYING}

    def close_section(self) -> None:
        """An unknown title ends what the last one said of the fraction; quality control goes on."""
        self.section = Section(role="" if self.section.of_surrogates else self.section.role)

    def carry(self, grid: int, header: Header, reached_end: bool) -> None:
        """Keep a header for the next grid of the same source, where its table may go on."""
        self.carried = Carried(self.source.grids[grid], grid, header) if reached_end else None

    def carried_to(self, grid: int, cells: Cells, row: int) -> Header | None:
        """The header of the table that goes on here from an earlier grid of the pages, if it does."""
        if self.carried is None or self.source.grids[grid].page is None or grid == self.carried.grid:
            return None
        return self.carried.at(cells, row)
