"""Limits of detection and of reporting whose kind stands in a column of its own, as data standards print them."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from wellchem.reading.rows import Coded, column, constant
from wellchem.reading.tables.cells import Cells, Lexicon
from wellchem.reading.tables.shape import Shape
from wellchem.vocabulary import ColumnRole

_FIELDS = {
    ColumnRole.REPORTING_LIMIT: ("reporting_limit", "reporting_unit"),
    ColumnRole.DETECTION_LIMIT: ("detection_limit", "detection_unit"),
}


def limit_texts(lexicon: Lexicon, cells: Cells, shape: Shape, rows: NDArray[np.int32]) -> dict[str, Coded]:
    """Texts and units of the reporting and the detection limits of rows; the first of each kind stands."""
    columns = cells.grid.columns
    made: dict[str, Coded] = {}
    for number, kind, unit in shape.limits:
        value = column(columns[number], rows)
        units = column(columns[unit], rows) if unit is not None else constant("", len(rows))
        own = shape.taken[number].role if number in shape.taken else ""
        if kind is None:
            roles = np.full(len(rows), own == "detection_limit")
            sure = np.ones(len(rows), bool)
        else:
            words = columns[kind]
            meaning = [limit_role(lexicon, str(text)) for text in words.texts]
            detection = np.array(
                [found is ColumnRole.DETECTION_LIMIT for found in meaning] + [own == "detection_limit"]
            )
            known = np.array([found is not None for found in meaning] + [True])
            roles, sure = detection[words.codes[rows]], known[words.codes[rows]]
        for role, (field, unit_field) in _FIELDS.items():
            mine = sure & (roles if role is ColumnRole.DETECTION_LIMIT else ~roles)
            for name, texts in ((field, value), (unit_field, units)):
                part = texts.kept(mine)
                made[name] = made[name].or_else(part) if name in made else part
    return made


def limit_role(lexicon: Lexicon, text: str) -> ColumnRole | None:
    """What a printed kind of limit is: a reporting limit, a detection limit, or neither."""
    phrase = lexicon.phrase(text)
    if phrase is not None and phrase.limit_role is not None:
        return phrase.limit_role
    found = lexicon.column(text)
    return found.role if found is not None and found.role in _FIELDS else None
