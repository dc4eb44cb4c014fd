"""Marks that choose a word: boxes printed before words, and columns headed by the words."""

from __future__ import annotations

import re

import numpy as np
from numpy.typing import NDArray

from wellchem.reading.rows import Coded, any_holds, of
from wellchem.reading.tables.cells import Cells

BOX = re.compile(r"^(?:\[\s*[xX✓✗]?\s*\]|[☐☑☒□■])\s*\w")
_EACH = re.compile(r"\[\s*[xX✓✗]?\s*\]|[☐☑☒□■]")
_BOXES = "[☐☑☒□■"
_TICKED = re.compile(r"^(?:\[\s*[xX✓]\s*\]|[☑☒])\s*(\w.*)$")
_MARK = re.compile(r"[\[(]?\s*(?:[x✓✔✗●•*■☑☒]|yes|y|true|oui|ja|s[ií])\s*[\])]?", re.IGNORECASE)
_NO_MARK = re.compile(r"[\[(]?\s*(?:[-–—.☐□○]*|no|n|false|non|nein)\s*[\])]?", re.IGNORECASE)


def ticked_words(cells: Cells, rows: NDArray[np.int32], value: Coded) -> Coded:
    """Values, where boxes to tick stand for words ("[ ] Present  [X] Absent"): the word behind the one ticked box."""
    if not any_holds(value.texts, _BOXES):
        return value
    # A cell that holds several boxes says itself which word is ticked.
    alone = [bool(BOX.match(str(text))) and len(_EACH.findall(str(text))) == 1 for text in value.texts]
    boxed = np.array([*alone, False])[value.codes]
    if not boxed.any():
        return value
    words = [""] * len(rows)
    for place in np.flatnonzero(boxed):
        ticked = [match[1] for cell in cells.line(int(rows[place])) if (match := _TICKED.match(cell.text))]
        words[place] = ticked[0] if len(ticked) == 1 else ""
    return of(words).or_else(value)


def ticked_columns(cells: Cells, rows: NDArray[np.int32], ticks: dict[int, str]) -> Coded:
    """The word of the one column that is marked in each row; what is printed there where that is not one mark."""
    words = []
    for row in rows:
        held = {column: text for column in ticks if not _NO_MARK.fullmatch(text := cells.text(int(row), column))}
        column, text = next(iter(held.items()), (0, ""))
        marked = bool(_MARK.fullmatch(text)) or text.casefold() == ticks.get(column, "").casefold()
        words.append(ticks[column] if len(held) == 1 and marked else " | ".join(held.values()))
    return of(words)
