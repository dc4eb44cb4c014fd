"""What stands above a header, over the columns of one sample each: its name and its day."""

from __future__ import annotations

from dataclasses import replace

from wellchem.reading.tables.cells import Cells, Kind
from wellchem.reading.tables.dated import dates_said
from wellchem.reading.tables.headers import Header
from wellchem.reading.tables.heads import label, pairs_in
from wellchem.reading.tables.shape import R, Shape

_ROWS = 4  # rows above a header in which its samples are named

Said = dict[int, dict[str, str]]


def samples_above(cells: Cells, header: Header) -> tuple[Header, Said]:
    """A header that repeats its word for results, with the samples named above as the headings of its groups.

    Each row above, behind a label or without one, has one cell over the columns of each result: "Location | MW-1 | |
    MW-2" and "Date | 5/1/2026 | | 5/2/2026" over "Analyte | Result | RL | Result | RL".
    """
    values = header.columns(R.VALUE)
    words = {header.heads[column].text.casefold() for column in values}
    if len(values) < 2 or len(words) > 1 or any(header.heads[column].group for column in values):
        return header, {}
    said: Said = {column: {} for column in values}
    for row in range(header.first - 1, max(header.first - 1 - _ROWS, -1), -1):
        line = list(cells.line(row))
        field = label(cells.lexicon, line[0].text) if line else ""
        if field and line[0].column < values[0]:
            line = line[1:]
        if [cell.column for cell in line] != values:
            break
        dated = all(cell.kind & Kind.DATE for cell in line)
        field = field or ("date_collected" if dated else "sample_id")
        for cell in line:
            said[cell.column].setdefault(field, cell.text)
    if not all(said.values()):
        return header, {}
    heads = dict(header.heads)
    ends = [*values[1:], max(heads) + 1]
    for start, end in zip(values, ends, strict=True):
        group = next(iter(sorted(said[start].items(), key=lambda pair: pair[0].startswith("date"))))[1]
        heads.update({c: replace(head, group=group) for c, head in header.heads.items() if start <= c < end})
    return replace(header, heads=heads), said


def titled(cells: Cells, header: Header, shapes: list[Shape]) -> None:
    """Name the samples of tables side by side that list the same analytes, by what stands above each of them."""
    if any({"sample_id", "site"} & shape.said.keys() for shape in shapes) or not _same_names(cells, header, shapes):
        return
    found: list[dict[str, str]] = [{} for _ in shapes]
    for row in range(header.first - 1, max(header.first - 1 - _ROWS, -1), -1):
        line = cells.line(row)
        owners = [next((i for i, s in enumerate(shapes) if cell.column in s.columns()), -1) for cell in line]
        if owners != list(range(len(shapes))):
            break
        for owner, cell in zip(owners, line, strict=True):
            if cell.kind & Kind.DATE:
                found[owner].setdefault("date_collected", cell.text)
            elif days := dates_said(cells.lexicon, "", cell.text):
                found[owner] = {**days, **found[owner]}
            elif pairs := pairs_in(cells.lexicon, cell.text):
                found[owner] = {**{field: text for field, text in pairs if text}, **found[owner]}
            elif not cell.kind & (Kind.NAME | Kind.UNIT | Kind.HEADER | Kind.PHRASE):
                found[owner].setdefault("site", cell.text)
    if any(len({one.get(field) for one in found} - {None}) == len(shapes) for field in ("site", "sample_id")):
        for shape, told in zip(shapes, found, strict=True):
            shape.said = {**told, **shape.said}


def _same_names(cells: Cells, header: Header, shapes: list[Shape]) -> bool:
    """Whether every table lists an analyte that the first one lists."""
    rows = range(header.last + 1, cells.height)
    names = [
        {text for row in rows if (text := cells.text(row, shape.name)) and cells.lexicon.is_name(text)}
        if shape.name is not None
        else set()
        for shape in shapes
    ]
    return all(names[0] & other for other in names)
