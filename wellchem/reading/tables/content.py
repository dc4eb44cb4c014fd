"""Tables without a header: roles follow from what the columns hold; and samples as columns under rows of labels."""

from __future__ import annotations

from wellchem.models.codes import LayoutKind
from wellchem.reading.rows import TakenColumn
from wellchem.reading.tables.bare import is_limit, to_choose
from wellchem.reading.tables.cells import Cell, Cells, Kind
from wellchem.reading.tables.headers import SYMBOL, Header, names_beneath, names_down
from wellchem.reading.tables.heads import label
from wellchem.reading.tables.shape import BESIDE, LAYOUT, OWN, Shape, ValueColumn, are_marks, stand_beside
from wellchem.vocabulary import ColumnRole

_LOOK = 10


def columns_of_samples_at(cells: Cells, row: int) -> tuple[Header, Shape] | None:
    """Rows of labels ("Sample ID", "Collected") with a text for each column, above rows of analytes.

    A row of header words for the columns beside them ("Analyte", "Units") may stand among the labels or under them.
    """
    label_column = _label_column(cells, row)
    if label_column is None:
        return None
    line = tuple(cell for cell in cells.line(row) if cell.column >= label_column)
    samples = {cell.column for cell in line[1:] if not cell.kind & Kind.HEADER or _symbol(cells, row, cell)}
    last = row
    while (
        last + 1 < cells.height
        and last - row < _LOOK
        and (
            _labels(cells, last + 1, label_column)
            or _words_beside(cells, last + 1, samples)
            or _days_over(cells, last + 1, samples)
            or _unknown_label(cells, last + 1, label_column, samples)
        )
    ):
        last += 1
    named = _named_column(cells, last + 1, label_column)
    if named is None or _goes_on_apart(cells, last + 1, label_column, samples):
        return None
    used: set[int] = set()
    for data in range(last + 1, min(last + 1 + _LOOK, cells.height)):
        used.update(c.column for c in cells.line(data) if c.kind & Kind.VALUE and not c.kind & Kind.UNIT)
    apart = cells.lexicon.vocabulary.label_role
    values = [
        cell.column
        for cell in line[1:]
        if cell.column in samples & used and (not apart(cell.text) or _symbol(cells, row, cell))
    ]
    if not values:
        return None
    shape = Shape(0, cells.width - 1, named, {}, [])
    shape.taken[named] = TakenColumn(
        named, cells.text(row, named), "name", "holds analyte names under labels of samples"
    )
    for column in values:
        said: dict[str, str] = {}
        for above in range(row, last + 1):
            field = label(cells.lexicon, cells.text(above, label_column))
            text = cells.text(above, column)
            if not field and not cells.text(above, label_column) and cells.lexicon.kind(text) & Kind.DATE:
                field = str(ColumnRole.DATE_COLLECTED)
            if field and text:
                said.setdefault(field, text)
        shape.values.append(ValueColumn(column, said=said))
        shape.taken[column] = TakenColumn(column, cells.text(row, column), "value", "values of one sample")
    for column in range(cells.width):
        if column in values or column == named:
            continue
        role = _role_by_words(cells, column, row, last, label_column)
        if role in BESIDE:
            name = BESIDE[role]
            stand_beside(shape, name, column, name in OWN)
            shape.taken[column] = TakenColumn(column, "", BESIDE[role], "header words or content")
        else:
            shape.layout[column] = LayoutKind.LIMIT if role is ColumnRole.LIMIT else LayoutKind.ADMINISTRATIVE
            shape.taken[column] = TakenColumn(column, "", str(role or "unassigned"), "header words or content")
    return Header(row, last, {}, "vertical"), shape


def _label_column(cells: Cells, row: int) -> int | None:
    """The column of the labels, behind which the samples stand: the first of the row.

    Behind what is said of them all ("Site | Plover Farm | Sample | PF-1 | PF-2") if the next row has its label there.
    """
    line = cells.line(row)
    if len(line) > 2 and _labels(cells, row, line[0].column):
        return line[0].column
    for place in range(len(line) - 3, 1, -1):
        column, behind = line[place].column, [cell.column for cell in line[place:]]
        further = cells.line(row + 1) if row + 1 < cells.height else ()
        if [cell.column for cell in further] == behind and all(_labels(cells, at, column) for at in (row, row + 1)):
            return column
    return None


def _labels(cells: Cells, row: int, first: int) -> bool:
    """Whether a row has a label of a sample's head in this column and goes on with texts."""
    line = [cell for cell in cells.line(row) if cell.column >= first]
    if len(line) < 2 or line[0].column != first or line[0].kind & Kind.NAME:
        return False
    if not label(cells.lexicon, line[0].text):
        return False
    apart = cells.lexicon.vocabulary.label_role  # "Mean" or "MCL" may stand among the samples
    if any(cell.text.endswith(":") for cell in line[1:]):  # labels with what they say beside them
        return False
    others = [
        cell for cell in line[1:] if _symbol(cells, row, cell) or (not apart(cell.text) and not _beside(cells, cell))
    ]
    return bool(others) and not any(
        label(cells.lexicon, cell.text) or cell.kind & (Kind.NAME | Kind.HEADER)
        for cell in others
        if not _symbol(cells, row, cell)
    )


def _symbol(cells: Cells, row: int, cell: Cell) -> bool:
    """Whether what looks like an element's symbol calls a sample: names of analytes stand down another column."""
    if not SYMBOL.match(cell.text):
        return False
    down = names_down(cells, row + 1)
    return down is not None and down < cell.column


def _beside(cells: Cells, cell: Cell) -> bool:
    """Whether a cell begins the heading of a column beside the samples: of limits, units, methods."""
    found = cells.lexicon.column(cell.text)
    return found is not None and (found.role in BESIDE or found.role in LAYOUT)


def _days_over(cells: Cells, row: int, samples: set[int]) -> bool:
    """Whether a row holds days over the samples and words over the columns beside them, without a label."""
    line = cells.line(row)
    return any(cell.column in samples for cell in line) and all(
        cell.kind & Kind.DATE if cell.column in samples else not cell.kind & (Kind.NAME | Kind.NUMBER) for cell in line
    )


def _words_beside(cells: Cells, row: int, samples: set[int]) -> bool:
    """Whether a row holds header words of the columns beside the samples and nothing of the samples."""
    line = cells.line(row)
    return bool(line) and all(cell.column not in samples and cell.kind & Kind.HEADER for cell in line)


def _goes_on_apart(cells: Cells, row: int, label_column: int, samples: set[int]) -> bool:
    """Whether the row beneath has labels beside labels, or heads a table of one sample or of more than results."""
    labels = [cell.column for cell in cells.line(row) if label(cells.lexicon, cell.text)]
    if label_column in labels and len(labels) > 1:
        return True
    heads = [cells.lexicon.column(cell.text) for cell in cells.line(row) if cell.column in samples]
    results = [head is not None and head.role is ColumnRole.VALUE for head in heads]
    return results == [True] or any(head is not None for head, result in zip(heads, results, strict=True) if not result)


def _unknown_label(cells: Cells, row: int, first: int, samples: set[int]) -> bool:
    """Whether a row says something of the samples under a label that is not known."""
    line = cells.line(row)
    if len(line) < 2 or line[0].column != first or {cell.column for cell in line[1:]} != samples:
        return False
    return not line[0].kind & (Kind.NAME | Kind.VALUE)


def _named_column(cells: Cells, row: int, last: int) -> int | None:
    """The column at or left of the labels that holds analyte names in the next rows; letters alone are none."""
    for column in range(last + 1):
        names, filled = names_beneath(cells, row, column)
        texts = [cells.text(below, column) for below in range(row, min(row + _LOOK, cells.height))]
        worded = any(len(text) > 1 and cells.lexicon.is_name(text) for text in texts)
        if worded and names * 2 >= filled and texts[0]:
            return column
    return None


def _role_by_words(cells: Cells, column: int, first: int, last: int, label_column: int) -> ColumnRole | None:
    words = [text for row in range(first, last + 1) if (text := cells.text(row, column))]
    if column == label_column:  # labels of the samples over the heading of a column
        words = [text for text in words if not label(cells.lexicon, text)]
    for text in dict.fromkeys((" ".join(words), *words)):
        found = cells.lexicon.column(text) if text else None
        if found is not None:
            return found.role
    texts = [text for row in range(last + 1, min(last + 30, cells.height)) if (text := cells.text(row, column))]
    if are_marks(cells, set(texts)):
        return ColumnRole.QUALIFIER  # U is a unit of enzymes too
    units = sum(bool(cells.lexicon.kind(text) & Kind.UNIT) for text in texts)
    return ColumnRole.UNIT if units * 2 > len(texts) else None


def list_at(cells: Cells, row: int) -> tuple[Header, list[Shape]] | None:
    """A list without a header that begins at this row: names, values and perhaps units in columns of their own.

    Several such lists may stand beside each other. The rows must show it themselves: where two columns could be the
    value of a name, they are told to be ambiguous.
    """
    line = cells.line(row)
    if len(line) < 2 or not line[0].kind & Kind.NAME or line[0].kind & Kind.VALUE:
        return None
    first = line[0].column
    last = row
    while last + 1 < cells.height and last - row < 200 and _goes_on(cells, last + 1, first):
        last += 1
    kinds: dict[int, list[Kind]] = {}
    for data in range(row, last + 1):
        for cell in cells.line(data):
            kinds.setdefault(cell.column, []).append(cell.kind)
    limits = {
        cell.column for at in range(row, last + 1) for cell in cells.line(at) if is_limit(cells.lexicon, cell.text)
    }
    names = [column for column, of in sorted(kinds.items()) if _most(of, Kind.NAME, Kind.VALUE)]
    shapes = [
        _list_shape(
            kinds,
            limits,
            start,
            names[place + 1] - 1 if place + 1 < len(names) else cells.width - 1,
            leftmost=place == 0,
        )
        for place, start in enumerate(names)
    ]
    if not names or names[0] != first or not all(shape.values or shape.ambiguous for shape in shapes):
        return None
    if not _speaks_of_results(cells, row, last, names):
        return None
    if to_choose(cells.lexicon, [cell.text for cell in line]):
        return None
    columns = {value.column for shape in shapes for value in shape.values} | {c for s in shapes for c in s.ambiguous}
    if not any(cell.column in columns and cell.kind & Kind.VALUE for cell in line):
        return None
    return Header(row, row - 1, {}, "vertical"), shapes


def _speaks_of_results(cells: Cells, first: int, last: int, names: list[int]) -> bool:
    """Whether a list is one of results and not of abbreviations: it has a number, or names longer than symbols."""
    rows = range(first, last + 1)
    if any(
        cell.column not in names and any(c.isdigit() for c in cell.text) for row in rows for cell in cells.line(row)
    ):
        return True
    return all(len(cells.text(row, column)) > 3 for row in rows for column in names if cells.text(row, column))


def _goes_on(cells: Cells, row: int, first: int) -> bool:
    """Whether a row can be a further row of a list whose names stand in this column."""
    line = cells.line(row)
    if not line:
        return False
    cell = line[0]
    other = cell.kind & (Kind.VALUE | Kind.PHRASE | Kind.HEADER) and not cell.kind & Kind.NAME
    return cell.column == first and not other


def _most(kinds: list[Kind], wanted: Kind, unwanted: Kind) -> bool:
    return sum(bool(kind & wanted and not kind & unwanted) for kind in kinds) * 2 > len(kinds)


def _list_shape(kinds: dict[int, list[Kind]], limits: set[int], first: int, last: int, leftmost: bool) -> Shape:
    """The shape of one list whose names stand in its first column; the first list takes what stands left of it.

    A column in which limits are called so (`limits`) is theirs.
    """
    shape = Shape(0 if leftmost else first, last, first, {}, [])
    shape.taken[first] = TakenColumn(first, "", "name", "holds analyte names")
    columns = [column for column in sorted(kinds) if first < column <= last]
    values = [column for column in columns if _most(kinds[column], Kind.VALUE, Kind.UNIT) and column not in limits]
    units = [column for column in columns if _most(kinds[column], Kind.UNIT, Kind.VALUE)]
    if len(values) == 1:
        shape.values.append(ValueColumn(values[0], {"unit": units[:1]} if units else {}, note=str(values[0] + 1)))
        shape.taken[values[0]] = TakenColumn(values[0], "", "value", "the only column that holds values")
        if units:
            shape.taken[units[0]] = TakenColumn(units[0], "", "unit", "holds units")
    shape.ambiguous = values if len(values) > 1 else []
    for column in shape.ambiguous:
        shape.taken[column] = TakenColumn(column, "", "ambiguous", "several columns could be the result")
    for column in shape.columns():
        if column not in shape.taken:
            kind = LayoutKind.LIMIT if column in limits else LayoutKind.ADMINISTRATIVE
            shape.layout[column] = kind
            role, why = ("limit", "a word in it") if column in limits else ("unassigned", "no header")
            shape.taken[column] = TakenColumn(column, "", role, why)
    return shape
