"""The characters of a page as arrays: where they stand, in which direction, and what they are."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from wellchem.reading.pdf.symbol_fonts import decoded

Floats = NDArray[np.float64]
USUAL_BLANK = 0.28  # parts of the type size: a blank's width where a font draws none (Helvetica's; common practice)


@dataclass(frozen=True)
class Frame:
    """How a page is turned so that its text is upright: quarter turns of the text against the page's own axes."""

    turns: int
    width: float
    height: float

    def into(self, x0: Any, top: Any, x1: Any, bottom: Any) -> tuple[Any, Any, Any, Any]:
        """A box of the page in the upright frame."""
        if self.turns == 1:
            return self.height - bottom, x0, self.height - top, x1
        if self.turns == 2:
            return self.width - x1, self.height - bottom, self.width - x0, self.height - top
        if self.turns == 3:
            return top, self.width - x1, bottom, self.width - x0
        return x0, top, x1, bottom

    def back(self, x0: Any, top: Any, x1: Any, bottom: Any) -> tuple[Any, Any, Any, Any]:
        """A box of the upright frame on the page."""
        if self.turns == 1:
            return top, self.height - x1, bottom, self.height - x0
        if self.turns == 2:
            return self.width - x1, self.height - bottom, self.width - x0, self.height - top
        if self.turns == 3:
            return self.width - bottom, x0, self.width - top, x1
        return x0, top, x1, bottom


@dataclass(frozen=True)
class Characters:
    """Characters in the order in which they were drawn."""

    text: list[str]
    box: Floats  # x0, top, x1, bottom on the page
    origin: Floats  # x, y of the baseline's start on the page without a rise, y downwards
    size: Floats
    turn: NDArray[np.int8]  # quarter turns of the text against the page; -1 slanted
    font: NDArray[np.intp]  # number of the font
    blank: Floats  # width of a blank in each character's font and size, in points


def gather(characters: Iterable[Any], height: float, left: float, top: float) -> Characters:
    """Characters (pdfminer's `LTChar`) of a page of that height whose corner is at (left, top)."""
    text: list[str] = []
    numbers: list[tuple[float, ...]] = []
    fonts: dict[str, int] = {}
    font: list[int] = []
    for char in characters:
        written = char._text
        if not written or written == "\xad":
            continue
        name = char.fontname
        text.append(decoded(written, str(name)))
        a, b, _, _, e, f = char.matrix
        numbers.append((char.x0, char.y0, char.x1, char.y1, char.size, a, b, e, f))
        font.append(fonts.setdefault(name, len(fonts)))
    x0, y0, x1, y1, size, a, b, e, f = np.array(numbers, dtype=np.float64).reshape(-1, 9).T
    angle = np.degrees(np.arctan2(b, a))
    quarter = np.round(angle / 90.0)
    turn = np.where(np.abs(angle - 90.0 * quarter) < 8.0, np.mod(quarter, 4), -1).astype(np.int8)
    # pdfminer's size is the height of the box, which for sideways text is its width.
    sideways = turn % 2 == 1
    size = np.maximum(np.where(sideways, x1 - x0, size), 0.1)
    which = np.array(font, dtype=np.intp)
    return Characters(
        text,
        np.stack([x0 + left, height - y1 + top, x1 + left, height - y0 + top], axis=1),
        np.stack([e + left, height - f + top], axis=1),
        size,
        turn,
        which,
        _blanks(text, np.where(sideways, y1 - y0, x1 - x0) / size, which) * size,
    )


def _blanks(text: list[str], widths: Floats, font: NDArray[np.intp]) -> Floats:
    """A blank's width in parts of the size: that of the font's blanks, or of all letters in a typewriter's font."""
    found = np.full(len(text), USUAL_BLANK)
    blank = np.array([character == " " for character in text], dtype=bool)
    for number in np.unique(font):
        own = font == number
        drawn = widths[own & blank]
        if len(drawn):
            found[own] = float(np.median(drawn))
        elif own.sum() > 9 and np.ptp(widths[own]) < 0.01:
            found[own] = float(widths[own][0])
    return np.asarray(np.clip(found, 0.15, 0.7))


def descents(font: NDArray[np.intp], ratio: Floats) -> Floats:
    """How far each font's box reaches below its baseline: the usual ratio of the font, so that a rise shows."""
    usual = np.empty(int(font.max()) + 1)
    rounded = np.round(ratio, 2)
    for number in np.unique(font):
        values, counts = np.unique(rounded[font == number], return_counts=True)
        usual[number] = values[counts.argmax()]
    return np.asarray(usual[font])
