"""Which characters of a page a reader of the paper does not see, or sees struck out."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

from wellchem.reading.pdf.rules import THIN

SAME = 0.02  # parts of full strength within which two colours are one
SPACES = ("DeviceGray", "DeviceRGB", "DeviceCMYK", "CalGray", "CalRGB", "ICCBased")
WHITE, BLACK = (1.0, 1.0, 1.0), (0.0, 0.0, 0.0)
MOST = 0.5  # of a page
ENDS = 0.6  # parts of the type size by which a stroke may reach beyond the text that it strikes out
MIDDLE = (0.12, 0.5)  # between which heights over the baseline, in parts of the size, a stroke goes through the letters

Stroke = tuple[float, float, float]  # y, x0, x1


def beyond(characters: Sequence[Any], visible: tuple[float, float, float, float]) -> NDArray[np.bool_]:
    """Characters that lie wholly outside what viewers show of the page."""
    x0, y0, x1, y1 = visible
    return np.array([c.x1 < x0 or c.x0 > x1 or c.y1 < y0 or c.y0 > y1 for c in characters], dtype=bool)


def unseen(characters: Sequence[Any], shapes: Sequence[Any], pictures: Sequence[Any]) -> NDArray[np.bool_]:
    """Characters (pdfminer's `LTChar`) of the colour of what lies behind them, or not painted and over no picture.

    A layer of unpainted text over a picture is what a machine has recognised in it. Where the colour cannot be told,
    a character is seen.
    """
    hidden = np.zeros(len(characters), dtype=bool)
    thick = [shape for shape in shapes if shape.fill and min(shape.x1 - shape.x0, shape.y1 - shape.y0) > THIN]
    fills = [(shape, _colour(shape.non_stroking_color)) for shape in thick]
    colours = {fill for _, fill in fills} | {WHITE}
    known: dict[Any, tuple[float, ...] | None] = {}
    for at, char in enumerate(characters):
        unpainted = getattr(char, "unpainted", False)
        drawn = char.graphicstate.ncolor
        key = (char.ncs.name, tuple(drawn) if isinstance(drawn, list) else drawn)
        if key not in known:
            known[key] = _colour(drawn) if char.ncs.name in SPACES else None
        colour = known[key]
        if not unpainted and (colour is None or colour not in colours):
            continue
        x, y = (char.x0 + char.x1) / 2, (char.y0 + char.y1) / 2
        if unpainted:
            hidden[at] = not any(_holds(picture, x, y) for picture in pictures)
            continue
        if any(_holds(picture, x, y) for picture in pictures):
            continue
        behind = [fill for shape, fill in fills if _holds(shape, x, y)]
        hidden[at] = all(_same(colour, fill) for fill in (behind or [WHITE]))
    return hidden


def covered(characters: Sequence[Any], shapes: Sequence[Any], size: tuple[float, float]) -> NDArray[np.bool_]:
    """Characters under a white or black box that was drawn after them and lets nothing shine through.

    A box over most of the page is taken for a background that a program draws in an order of its own.
    """
    under = np.zeros(len(characters), dtype=bool)
    lids = [
        shape
        for shape in shapes
        if shape.fill
        and shape.__class__.__name__ == "LTRect"
        and not getattr(shape, "veiled", False)
        and min(shape.x1 - shape.x0, shape.y1 - shape.y0) > THIN
        and shape.width * shape.height < MOST * size[0] * size[1]
        and any(_same(_colour(shape.non_stroking_color), lid) for lid in (WHITE, BLACK))
    ]
    if not lids or not len(characters):
        return under
    x0, x1, y0, y1, drawn = np.array([(c.x0, c.x1, c.y0, c.y1, c.drawn) for c in characters]).T
    middle = (y0 + y1) / 2
    for lid in lids:
        inside = (lid.x0 - 1 <= x0) & (x1 <= lid.x1 + 1) & (lid.y0 <= middle) & (middle <= lid.y1)
        under |= inside & (drawn < lid.drawn)
    return under


def struck(characters: Sequence[Any], shapes: Sequence[Any], strokes: Sequence[Stroke]) -> NDArray[np.bool_]:
    """Characters through whose middle a stroke goes that is as long as their text."""
    out = np.zeros(len(characters), dtype=bool)
    if not len(characters):
        return out
    table = np.array(
        [(c.x0, c.x1, c.matrix[5], c.size, c.matrix[1] == 0 and c._text.strip() != "") for c in characters]
    )
    x0, x1, base, size, level = table.T
    middle = (x0 + x1) / 2
    thin = [shape for shape in shapes if shape.y1 - shape.y0 <= THIN and shape.x1 - shape.x0 > 3]
    lines = {((shape.y0 + shape.y1) / 2, shape.x0, shape.x1): False for shape in thin}
    lines |= dict.fromkeys(strokes, True)
    for (y, begin, end), told in lines.items():
        low, high = (-0.3, 1.0) if told else MIDDLE
        crossed = (level > 0) & (base + low * size < y) & (y < base + high * size) & (begin < middle) & (middle < end)
        if not crossed.any():
            continue
        reach = ENDS * float(size[crossed].max())
        if told or (float(x0[crossed].min()) - begin < reach and end - float(x1[crossed].max()) < reach):
            out |= crossed
    return out


def _holds(shape: Any, x: float, y: float) -> bool:
    return bool(shape.x0 <= x <= shape.x1 and shape.y0 <= y <= shape.y1)


def _same(one: tuple[float, ...] | None, other: tuple[float, ...] | None) -> bool:
    """Whether two colours are one; a colour that cannot be told is another."""
    if one is None or other is None:
        return False
    return max(abs(a - b) for a, b in zip(one, other, strict=True)) <= SAME


def _colour(value: Any) -> tuple[float, ...] | None:
    """A colour as red, green and blue from 0 to 1; None for patterns and what else has no numbers."""
    parts = value if isinstance(value, tuple | list) else (value,)
    if not all(isinstance(part, int | float) for part in parts):
        return (0.0, 0.0, 0.0) if value is None else None
    if len(parts) == 1:
        return (float(parts[0]),) * 3
    if len(parts) == 4:
        return tuple((1 - float(part)) * (1 - float(parts[3])) for part in parts[:3])
    return tuple(float(part) for part in parts) if len(parts) == 3 else None
