"""Texts beside values as they are to be read: units apart from values, flags the other way round."""

from __future__ import annotations

import re

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import Censoring
from wellchem.reading.rows import Coded, of
from wellchem.reading.tables.cells import Cells, Kind

_BOUNDED = (Censoring.LEFT, Censoring.RIGHT, Censoring.INTERVAL)
_BRACKETS = re.compile(r"(.*?\S)\s*[(\[]([^()\[\]]*\d[^()\[\]]*)[)\]]")
# The same where the heading tells it: "61.0 (-)", "-0.12 ± 0.44 (0.91) U", "0.9 / 1.5", "12/50".
_TOLD = re.compile(r"(?P<value>.*\S)\s*[(\[](?P<inside>[^()\[\]]*)[)\]]\s*(?P<mark>[A-Za-z*]{0,3})")
_STROKE = re.compile(r"(?P<value>.*?\S)(?:\s+/\s+|(?<=\d)/(?=\d))(?P<inside>[^/]*)(?P<mark>)")


def are_units(cells: Cells, coded: Coded) -> NDArray[np.bool_]:
    """For each text, and for none, whether it is a unit and nothing else."""
    kinds = [cells.lexicon.kind(str(text)) for text in coded.texts]
    return np.array([bool(kind & Kind.UNIT) and not kind & Kind.VALUE for kind in kinds] + [False])


def apart(cells: Cells, value: Coded, unit: Coded) -> tuple[Coded, Coded]:
    """Values and units, where a number slipped into the unit's cell beside an empty one ("0.247 mg/L")."""
    empty = value.codes < 0
    if not empty.any():
        return value, unit
    held = [cells.lexicon.vocabulary.value(str(text)) for text in unit.texts]
    both = np.array([one is not None and one.number is not None and bool(one.unit_text) for one in held] + [False])
    slipped = empty & both[unit.codes]
    return (value.or_else(unit.kept(slipped)), unit.kept(~slipped)) if slipped.any() else (value, unit)


def in_unit_of(cells: Cells, heading: str, coded: Coded) -> Coded:
    """Limits and uncertainties in the unit that their heading prints: "5" under "RL (µg/L)", "12" under "U (%)"."""
    found = cells.lexicon.column(heading)
    if found is None or not found.unit_text:
        return coded
    known = [cells.lexicon.vocabulary.value(str(text)) for text in coded.texts]
    bare = [one is not None and not one.unit_text for one in known]
    texts = (f"{text} {found.unit_text}" if plain else str(text) for plain, text in zip(bare, coded.texts, strict=True))
    return coded.reworded(of(list(texts)))


def limits_behind(cells: Cells, index: int, body: int) -> bool:
    """Whether most cells of a column have a number in brackets behind them, and one shows that these are limits.

    It is a bound, or a range that the result lies outside of; an uncertainty or a range of confidence never is.
    """
    texts = [text for row in range(body, min(body + 200, cells.height)) if (text := cells.text(row, index))]
    parts = [found for text in texts if (found := _BRACKETS.fullmatch(text))]
    return len(parts) > 2 and len(parts) * 3 > len(texts) * 2 and any(_outside(cells, *part.groups()) for part in parts)


def _outside(cells: Cells, value: str, inside: str) -> bool:
    found, bounds = cells.lexicon.vocabulary.value(value), cells.lexicon.vocabulary.value(inside)
    if found is None or found.number is None or bounds is None or bounds.censoring not in _BOUNDED:
        return False
    return bounds.note != "range" or not (bounds.low or 0.0) <= found.number <= (bounds.high or 0.0)


def behind(value: Coded) -> tuple[Coded, Coded]:
    """Values without what stands behind them, in brackets or behind a stroke, and that."""
    parts = [_TOLD.fullmatch(str(text)) or _STROKE.fullmatch(str(text)) for text in value.texts]
    plain = of(
        [
            f"{found['value']} {found['mark']}".strip() if found else str(text)
            for found, text in zip(parts, value.texts, strict=True)
        ]
    )
    inside = of([found["inside"].strip() if found else "" for found in parts])
    return value.reworded(plain), value.reworded(inside)


def inverted(flags: Coded) -> Coded:
    """Flags of a column that asks whether the analyte was *not* detected, as words of detection."""
    made = of(["ND" if str(text).casefold() in ("true", "t", "yes", "y", "1") else "" for text in flags.texts])
    return flags.reworded(made)


def not_reportable(flags: Coded) -> Coded:
    """The answers of a column that asks whether a result is the one to report, as words of its status."""
    made = of(["not reportable" if str(t).casefold() in ("false", "f", "no", "n", "0") else "" for t in flags.texts])
    return flags.reworded(made)
