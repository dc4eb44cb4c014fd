"""How a delimited file is written: its delimiter and whether quotes mean anything in it."""

from __future__ import annotations

import csv
import dataclasses
import io
import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

SAMPLE = 1 << 16
LINES = 400
CANDIDATES = ("\t", ";", "|", ",")  # of two that fit equally well, the one that figures and prose hold less often
DECIMAL_COMMA = re.compile(r"(?<=\d),(?=\d)")
WORDED_COMMA = re.compile(r"^.*[^\W\d].*?(?<=\d),(?=\d)", re.MULTILINE)
OTHER_COMMA = re.compile(r"(?<!\d),(?!\s|$)|,(?![\d\s]|$)|\d,\d+,\d", re.MULTILINE)
DIRECTIVE = re.compile(r"sep=(.)\s*\n", re.IGNORECASE)


@dataclass(frozen=True)
class Dialect:
    """A delimiter (empty where every line is one cell), the quotes' meaning, and the usual number of cells in a row."""

    delimiter: str
    quoted: bool
    blank_before_quote: bool
    width: int

    def records(self, text: str) -> Iterator[list[str]]:
        """Records of a text; a blank line is an empty record. `csv.Error` where a quote is never closed."""
        if not self.delimiter:
            return ([line] for line in text.split("\n"))
        return csv.reader(
            io.StringIO(text, newline=""),
            delimiter=self.delimiter,
            quoting=csv.QUOTE_MINIMAL if self.quoted else csv.QUOTE_NONE,
            skipinitialspace=self.blank_before_quote,
            strict=False,
        )

    def cells(self, text: str) -> list[list[str]]:
        """Stripped cells of every record. Raises what `records` does."""
        return [[cell.strip() for cell in record] for record in self.records(text)]

    def comments(self, text: bytes) -> list[str]:
        """Leading lines that begin with `#` and are no header (a header has as many cells as the rows have)."""
        lines: list[str] = []
        position = 0
        while text.startswith(b"#", position):
            end = text.find(b"\n", position)
            end = len(text) if end < 0 else end
            line = text[position:end].decode("utf-8")
            if self.width > 1 and line.count(self.delimiter) == self.width - 1:
                break
            lines.append(line)
            position = end + 1
        return lines


def find_dialect(data: bytes) -> tuple[Dialect, float]:
    """The dialect that cuts the head of a UTF-8 text most evenly, and the share of its lines that are cut so."""
    head = data[:SAMPLE].decode("utf-8", errors="ignore")
    directive = DIRECTIVE.match(head)
    lines = head.split("\n")
    if len(data) > SAMPLE:
        lines = lines[:-1] or lines
    lines = [line for line in lines[:LINES] if not line.startswith("#")] or lines
    head = "\n".join(lines)
    quoted = b'"' in data
    fits = []
    for delimiter in (directive[1],) if directive else CANDIDATES:
        fits.append(_fit(head, Dialect(delimiter, quoted, False, 0)))
        if delimiter + ' "' in head:
            fits.append(_fit(head, Dialect(delimiter, quoted, True, 0)))
    score, covered, dialect = max(fits, key=lambda fit: fit[0])
    return (dialect, covered) if score > 0 else (Dialect("", False, False, 1), 0.0)


def _running(head: str) -> bool:
    """Whether a text is running lines with decimal commas ("Fer : 0,3 mg/l"): no comma of it parts anything else.

    Every comma stands between figures, or before a blank as in a sentence, and words stand before most of the first.
    """
    lines = sum(DECIMAL_COMMA.search(line) is not None for line in head.split("\n"))
    return lines > 0 and not OTHER_COMMA.search(head) and len(WORDED_COMMA.findall(head)) * 2 > lines


def _fit(head: str, dialect: Dialect) -> tuple[float, float, Dialect]:
    """How well a dialect cuts: the share of rows whose width returns, weighted by that width; and that share."""
    if dialect.delimiter == "," and _running(head):
        return 0.0, 0.0, dialect
    # A decimal comma between figures says nothing for a comma where another delimiter is about.
    if dialect.delimiter == "," and any(head.count(other) >= head.count("\n") / 2 > 0 for other in "\t;|"):
        head = DECIMAL_COMMA.sub(".", head)
    try:
        records = [record for record in dialect.records(head) if any(cell.strip() for cell in record)]
    except csv.Error:
        return 0.0, 0.0, dialect
    widths = Counter(map(len, records))
    total = sum(widths.values())
    # Prose has commas too, but seldom the same number of them in every line; a file of a few lines has no choice.
    steady = {width: count for width, count in widths.items() if width > 1 and (count > 1 or total < 4)}
    if not steady:
        return 0.0, 0.0, dialect
    covered = sum(steady.values()) / total
    mean = sum(width * count for width, count in steady.items()) / sum(steady.values())
    usual = max(steady, key=lambda width: (steady[width] * width, width))
    # A delimiter that cuts through quotes leaves halves of them.
    torn = sum(any(cell.count('"') % 2 for cell in record) for record in records) > total / 2
    return covered * (mean - 1) ** (0.25 if torn else 0.5), covered, dataclasses.replace(dialect, width=usual)
