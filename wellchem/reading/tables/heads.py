"""What a report says of its samples outside the tables of results: labels and what stands beside them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from wellchem.reading.dates import clock, parsed
from wellchem.reading.tables.cells import Cell, Cells, Kind, Lexicon
from wellchem.vocabulary import ColumnRole, PhraseKind

_COLON = re.compile(r"(?<!\d):(?!//)|:(?=\s)")
_NUMBERED = re.compile(r"^[(\[](?=[^()]*\d)[\w./ -]{3,30}[)\]]$")
_CONTINUED = re.compile(
    r"\s*[(\[]\s*(?:cont(?:'?d|inued|\.)?|suite|fortsetzung|continuaci[oó]n)\.?\s*[)\]]$", re.IGNORECASE
)
_WORDS = 5
_SHORT = 40  # letters that a text behind a label has at most where other words stand before the label
_NUMBER_BEHIND = re.compile(r"^(?P<site>.*?\S)\s*[(\[](?P<number>(?=[^()]*\d)[\w./ -]{3,30})[)\]]$")
_LABELLED_NUMBER = re.compile(r"^(?P<site>.*?\S)\s*[(\[](?P<label>[^\d()\[\]]+?)\s*(?P<number>(?=\S*\d)[\w./-]+)[)\]]$")


@dataclass(frozen=True)
class Said:
    """One thing said: the field, its text, and the columns of the cells that say it."""

    field: str
    text: str
    columns: tuple[int, ...]


def said_in(cells: Cells, row: int) -> list[Said]:
    """Everything that one row says of a sample or a report as label and text."""
    return said_of(cells.lexicon, cells.line(row))


def said_of(lexicon: Lexicon, line: Sequence[Cell]) -> list[Said]:
    """The same of some cells of a row."""
    made: list[Said] = []
    running: list[Said] = []
    place = 0
    while place < len(line):
        cell = line[place]
        if found := _barred(lexicon, cell):
            running += found
            place += 1
            continue
        inside = pairs_in(lexicon, cell.text)
        if inside and inside[-1][1]:
            made += [Said(field, text, (cell.column,)) for field, text in inside]
            place += 1
            if place < len(line) and (whole := _rest_of_day(made[-1], line[place])):
                made[-1] = whole
                place += 1
            continue
        if inside:  # the last label's text stands in the cell to the right
            made += [Said(field, text, (cell.column,)) for field, text in inside[:-1]]
            field = inside[-1][0]
        else:
            field = label(lexicon, cell.text) if not cell.kind & Kind.VALUE else ""
        if not field:
            place += 1
            continue
        follower = line[place + 1] if place + 1 < len(line) else None
        if follower and _can_follow(lexicon, follower, ":" in cell.text):
            made.append(Said(field, follower.text.strip(" :"), (cell.column, follower.column)))
            place += 2
            if place < len(line) and (whole := _rest_of_day(made[-1], line[place])):
                made[-1] = whole
                place += 1
        else:
            made.append(Said(field, "", (cell.column,)))
            place += 1
    told = [_first_page(said) for said in (*running, *_plausible(made, line))]
    return [part for said in told for part in _number_apart(lexicon, said)]


def _number_apart(lexicon: Lexicon, said: Said) -> list[Said]:
    """A sample's name and the labelled number in brackets behind it: "House well (Lab no. 7781)"."""
    found = _LABELLED_NUMBER.match(said.text) if said.field in IDENTIFYING else None
    if found is None:
        return [said]
    words = found["label"].strip(" :.#=")
    column = lexicon.column(words) or lexicon.column(f"{words}.")
    if label(lexicon, words) != "sample_id" and (column is None or column.role is not ColumnRole.SAMPLE_ID):
        return [said]
    return [Said("site", found["site"], said.columns), Said("sample_id", found["number"], said.columns)]


def _first_page(said: Said) -> Said:
    """A sample's name without the remark that its report goes on from another page: "W-1 (continued)"."""
    return replace(said, text=_CONTINUED.sub("", said.text)) if said.field in IDENTIFYING else said


def _rest_of_day(said: Said, cell: Cell) -> Said | None:
    """The whole of a day whose text, or whose time, goes on in the cell to the right ("3." | "September 2026")."""
    whole = f"{said.text} {cell.text}"
    if not said.field.startswith("date_") or (both := parsed(whole)) is None:
        return None
    day = parsed(said.text)
    if day is not None and (day.timed or not both.timed or clock(cell.text) is None):
        return None
    return Said(said.field, whole, (*said.columns, cell.column))


def _barred(lexicon: Lexicon, cell: Cell) -> list[Said]:
    """What one text says of a sample in parts with bars between: "Kitchen (W-01) | Sampled: 5 May 2024"."""
    first, *others = [part.strip() for part in cell.text.split("|")]
    pairs = [pair for part in others for pair in pairs_in(lexicon, part) if pair[1]]
    if not first or not pairs:
        return []
    own = pairs_in(lexicon, first)
    if not own and any(field == "date_collected" for field, _ in pairs):
        found = _NUMBER_BEHIND.match(first)
        own = [("site", found["site"]), ("sample_id", found["number"])] if found else [("site", first)]
    return [Said(field, text, (cell.column,)) for field, text in (*own, *pairs)]


def _can_follow(lexicon: Lexicon, cell: Cell, colon: bool) -> bool:
    """Whether a cell can be the text of the label to its left: no label itself, nor, without a colon, a header word."""
    if not colon and cell.kind & (Kind.NAME | Kind.HEADER):
        return False
    return not label(lexicon, cell.text) and not pairs_in(lexicon, cell.text)


def _plausible(said: list[Said], line: Sequence[Cell]) -> list[Said]:
    """Nothing where the row is made of labels alone (a header) or where a label stands alone without a text."""
    if said and all(not one.text for one in said):
        return []
    if not any(":" in cell.text for cell in line):  # labels without a colon: a row of pairs and nothing else
        told = {column for one in said if one.text for column in one.columns}
        if told != {cell.column for cell in line}:
            return []
    return [one for one in said if one.text or len(line) > 1]


def label(lexicon: Lexicon, text: str) -> str:
    """The field that a label names, empty where it is none."""
    if len(text) > 60:
        return ""
    found = lexicon.phrase(text.strip(" :"))
    if found and found.kind is PhraseKind.SAMPLE_HEAD and found.field:
        return str(found.field)
    return ""


def pairs_in(lexicon: Lexicon, text: str) -> list[tuple[str, str]]:
    """Labels with a colon inside one text, each with what follows it: "Sample: W-1  Collected: 5 May 2024"."""
    if ":" not in text:
        return []
    marks: list[tuple[int, int, str]] = []  # start of the label, end of the colon, field
    last = 0
    for colon in _COLON.finditer(text):
        before = text[last : colon.start()]
        words = list(re.finditer(r"\S+", before))
        for count in range(min(_WORDS, len(words)), 0, -1):
            start = words[-count].start()
            field = label(lexicon, before[start:])
            if field:
                marks.append((last + start, colon.end(), field))
                last = colon.end()
                break
    if not marks:
        return []
    ends = [start for start, _, _ in marks[1:]] + [len(text)]
    pairs = [(field, text[after:end].strip(" \t|;,")) for (_, after, field), end in zip(marks, ends, strict=True)]
    pairs = [part for pair in pairs for part in _with_day(lexicon, *pair)]
    short = all(0 < len(said) <= _SHORT and not said.endswith(".") for _, said in pairs)
    if text[: marks[0][0]].strip() and not short:
        return []  # a sentence with a colon in it
    return pairs


def _with_day(lexicon: Lexicon, field: str, text: str) -> list[tuple[str, str]]:
    """What a label of a sample's name says: a labelled day behind the name is the sample's too."""
    named, comma, rest = text.partition(",")
    word, _, day = rest.strip().partition(" ")
    said = label(lexicon, word) if field in IDENTIFYING and comma and named.strip() else ""
    if said.startswith("date_") and parsed(day.strip()):
        return [(field, named.strip()), (said, day.strip())]
    return [(field, text)]


def unlabelled_in(cells: Cells, row: int, told: list[Said]) -> list[Said]:
    """What stands without a label before a sample's labelled day of collection: its site, its number in parentheses."""
    fields = {said.field for said in told}
    if "date_collected" not in fields or fields & set(IDENTIFYING):
        return []
    taken = {column for said in told for column in said.columns}
    made: list[Said] = []
    for cell in cells.line(row):
        if cell.column in taken or ":" in cell.text or cell.kind & (Kind.VALUE | Kind.NAME | Kind.HEADER):
            continue
        phrase = cells.lexicon.phrase(cell.text)
        if _NUMBERED.match(cell.text):
            made.append(Said("sample_id", cell.text.strip("()[] "), (cell.column,)))
        elif phrase is not None and phrase.kind is PhraseKind.MATRIX:
            made.append(Said("matrix", cell.text, (cell.column,)))
        elif not made and cell.column < min(taken) and len(cell.text) < 60:
            made.append(Said("site", cell.text, (cell.column,)))
    return made


IDENTIFYING = (str(ColumnRole.SAMPLE_ID), str(ColumnRole.SITE))
